"""Comparables and adjustments: what they refuse."""

from collections.abc import Callable
from decimal import Decimal

import pytest

from planish.quantity import Money, QuantityError
from planish.worth import Adjustment, Comparable

Sale = Callable[..., Comparable]


@pytest.mark.parametrize("price", ["0", "-5"])
def test_a_price_is_above_zero(sale: Sale, price: str) -> None:
    with pytest.raises(QuantityError, match="not above zero"):
        sale("a", price)


@pytest.mark.parametrize("weight", ["0", "-1", "NaN"])
def test_a_weight_is_above_zero(sale: Sale, weight: str) -> None:
    with pytest.raises(QuantityError, match="not above zero"):
        sale("a", "100", weight=Decimal(weight))


@pytest.mark.parametrize("premium", ["-0.1", "1", "25"])
def test_a_premium_is_a_share(sale: Sale, premium: str) -> None:
    with pytest.raises(QuantityError, match=r"0\.25 for 25 %"):
        sale("a", "100", premium=Decimal(premium))


def test_an_adjustment_has_one_figure_a_reason_and_a_source() -> None:
    usd = Money.of(5, "USD")
    for figures in ({}, {"factor": Decimal(1), "amount": usd}):
        with pytest.raises(QuantityError, match="one figure"):
            Adjustment(because="x", source="y", **figures)  # type: ignore[arg-type]
    for factor in ("0", "-1", "Infinity"):
        with pytest.raises(QuantityError, match="above zero"):
            Adjustment(because="x", source="y", factor=Decimal(factor))
    for because, source in (("", "y"), ("x", " ")):
        with pytest.raises(QuantityError, match="no reason or source"):
            Adjustment(because=because, source=source, factor=Decimal(1))


def test_percent_is_a_factor() -> None:
    assert Adjustment.percent(-10, "monogram", "paired sales").factor == Decimal("0.9")
    assert Adjustment.percent(12.5, "case", "judgment").factor == Decimal("1.125")
    with pytest.raises(QuantityError):
        Adjustment.percent(-100, "gone", "judgment")
