"""What a person types in one line, and what is refused with a reason."""

import datetime as dt
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.library import load
from planish.metal import Alloy, Deduction, Kind, Method, Weighing
from planish.metal.entry import (
    read_alloy,
    read_deduction,
    read_degrees,
    read_part,
    read_price,
    read_rest,
    share_of,
    split_off,
)
from planish.quantity import Mass, Money, QuantityError

GROSS = Mass.of(900)
DAY = dt.date(2026, 5, 14)


def taken(text: str) -> Deduction:
    return read_deduction(split_off(text), GROSS, load().metals)


def grams(mass: Mass | None) -> float | None:
    return None if mass is None else float(mass.grams)


@pytest.mark.parametrize(
    ("text", "kind", "best", "low", "high", "sure", "method"),
    [
        ("steel blades = 6 x 24g..30g by rule", "steel", 162, 144, 180, None, Method.RULE_OF_THUMB),
        ("blades=6x24..30g by rule", "steel", 162, 144, 180, None, Method.RULE_OF_THUMB),
        ("turquoise=2.4g +-0.05g weighed", "stone", 2.4, None, None, 0.05, Method.WEIGHED),
        ("turquoise=12ct ± 1ct measured", "stone", 2.4, None, None, 0.2, Method.MEASURED),
        ("pitch=80%..90% by rule", "filler", 765, 720, 810, None, Method.RULE_OF_THUMB),
        ("pitch=80..90% by rule", "filler", 765, 720, 810, None, Method.RULE_OF_THUMB),
        ("cement=12cm3 of cement", "filler", 25.8, None, None, 2.425, Method.MEASURED),
        ("handle=3oz weighed on the bench balance", "wood", 85.0486, None, None, None, Method.WEIGHED),
        ("no filler=0g seen from below", "filler", 0, None, None, None, Method.RULE_OF_THUMB),
        # hollow-handled knives: 12 to 25 g of silver each, so 900 less 144 to 300 g
        ("handles=12 x knife", "steel", 678, 600, 756, None, Method.RULE_OF_THUMB),
    ],
)  # fmt: skip
def test_deductions(  # noqa: PLR0917  # a row of the table
    text: str, kind: str, best: float, low: float | None, high: float | None,
    sure: float | None, method: Method,
) -> None:  # fmt: skip
    found = taken(text)

    assert found.kind is Kind(kind)
    assert grams(found.best) == pytest.approx(best, abs=1e-3)
    assert (grams(found.low), grams(found.high)) == (low, high)
    assert grams(found.plus_minus) == pytest.approx(sure, abs=1e-3)
    assert found.method is method
    assert found.source


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("steel", "what is how much"),
        ("steel=", "what is how much"),
        ("=4g", "what is how much"),
        ("steel=heavy", "figure is needed"),
        ("steel=4 bushels", "not known"),
        ("steel=30g..24g by rule", "smaller first"),
        ("steel=4cm3 of cheese", "none of that name"),
        ("steel=4cm3 of pewter", "several go by that name"),
        ("steel=-4g", "negative"),
        ("steel=4g +-x weighed", "figure is needed"),
    ],
)
def test_what_cannot_be_read_is_refused_in_one_line(text: str, says: str) -> None:
    with pytest.raises(QuantityError, match=says) as fault:
        taken(text)
    assert "\n" not in str(fault.value)


def test_a_deduction_names_its_part() -> None:
    off = split_off("lid: ivory button = 3g..5g by rule")

    assert (off.part, off.what, off.figure) == ("lid", "ivory button", "3g..5g by rule")
    assert split_off("pitch=4g").part == ""


def test_parts() -> None:
    default = Alloy(fineness=read_alloy("sterling").fineness, basis="mark")

    def weighed(mass: Mass) -> Weighing:
        return Weighing(gross=mass, balance="bench")

    lid = read_part("lid=84.2g at 800", default, weighed)
    pot = read_part("tea pot = 13 ozt 5 dwt", default, weighed)
    blade = read_part("blade=52g other", default, weighed)

    assert (lid.name, lid.weighing.balance) == ("lid", "bench")
    assert lid.alloy is not None
    assert lid.alloy.fineness.permille == 800
    assert pot.alloy == default
    assert pot.weighing.gross == Mass.parse("13 ozt 5 dwt")
    assert blade.other
    assert blade.alloy is None
    assert read_part("tray=52g plated", default, weighed).plated
    with pytest.raises(QuantityError, match="what weighs how much"):
        read_part("lid", default, weighed)


def test_fineness_with_its_uncertainty() -> None:
    found = read_alloy("830 +- 5", "touch")

    assert (found.fineness.permille, found.plus_minus, found.basis) == (830, 5, "touch")
    assert read_alloy("84 zolotnik ± 8 ‰").plus_minus == 8


def test_prices() -> None:
    found = read_price("USD 30/ozt on 2026-05-02 from my refiner", today=DAY)

    assert found.price == Money.of(30, "USD")
    assert (found.per, found.date, found.source) == ("ozt", dt.date(2026, 5, 2), "my refiner")
    assert read_price("£900 per kg", today=DAY).date == DAY
    for text, says in (
        ("USD 30", "how much silver"), ("30/ozt", "no currency"), ("USD 30/ozt on may", "no day"),
        ("USD 30/furlong", "not known"),
    ):  # fmt: skip
        with pytest.raises(QuantityError, match=says):
            read_price(text, today=DAY)


def test_shares_degrees_and_the_rest() -> None:
    assert share_of("85%") == share_of("0.85") == Decimal("0.85")
    assert read_degrees("20") == (20.0, 0.5)
    assert read_degrees("21.5 °C ± 1") == (21.5, 1.0)
    rest = read_rest(["turquoise=2.4g +-0.1g at 2.6..2.9", "steel = 5 g at 7.85"])
    assert rest is not None
    assert rest.mass == pytest.approx(7.4)
    assert rest.volume == pytest.approx(2.4 / 2.75 + 5 / 7.85)
    assert read_rest([]) is None
    for bad in ("warm", "20 21"):
        with pytest.raises(QuantityError, match="no temperature"):
            read_degrees(bad)
    with pytest.raises(QuantityError, match="mass and density"):
        read_rest(["turquoise=2.4g"])


@given(st.text(max_size=60))
def test_nothing_typed_breaks_it(text: str) -> None:
    for read in (
        lambda: taken(text), lambda: taken(f"x={text}"), lambda: read_alloy(text),
        lambda: read_price(text, today=DAY), lambda: share_of(text), lambda: read_degrees(text),
        lambda: read_rest([text]), lambda: read_part(text, None, lambda m: Weighing(gross=m)),
    ):  # fmt: skip
        try:
            read()
        except QuantityError as fault:
            assert "\n" not in str(fault)  # noqa: PT017  # either a result or one line


_NUMBERS = st.decimals(min_value="0.01", max_value="99", places=2)


@given(_NUMBERS, _NUMBERS, st.integers(1, 24), st.sampled_from(["g", "ozt", "dwt", "ct"]))
def test_limits_read_as_typed(a: Decimal, b: Decimal, count: int, unit: str) -> None:
    low, high = sorted((a, b))
    found = taken(f"steel={count} x {low}{unit}..{high}{unit} by rule")

    assert found.low == Mass.of(low, unit) * count
    assert found.high == Mass.of(high, unit) * count
