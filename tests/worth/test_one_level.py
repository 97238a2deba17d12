"""One level a grid: what cannot be brought to it is named; premiums by slices; dated exchange."""

import json
from collections.abc import Callable
from decimal import Decimal
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.quantity import Money, UncertainDate
from planish.worth import Basis, Comparable, Conversions, Crossing, build
from planish.worth.exchange import Exchange
from planish.worth.levels import refusals
from planish.worth.series import read_series

Sale = Callable[..., Comparable]
SHARED = Path(__file__).resolve().parents[3] / "shared"
CHECKS = SHARED / "facts" / "worth" / "checks.jsonl"
RATES = "month,GBP_per_usd\n2020-01,0.8\n2020-02,0.75\n"


class Slices:
    """A premium of 25 % to 1,000 of the hammer price, 10 % on what is above, no more charges."""

    source = "own conditions of sale"

    def paid(self, hammer: Decimal, /) -> Decimal:
        low = min(hammer, Decimal(1000))
        return hammer + low * Decimal("0.25") + (hammer - low) * Decimal("0.1")

    def hammer(self, paid: Decimal, /) -> Decimal:
        low = paid / Decimal("1.25")
        return low if low <= 1000 else 1000 + (paid - 1250) / Decimal("1.1")


def table() -> Exchange:
    return Exchange.of(read_series(RATES, "own rates").values())


def test_a_grid_that_mixes_bases_names_every_row_that_stays_out(sale: Sale) -> None:
    mixed = [
        sale("hammer", "100", basis=Basis.HAMMER),
        sale("asked", "300", basis=Basis.RETAIL_ASKED),
        sale("unsold", "90", basis=Basis.UNSOLD),
        sale("paid", "125", basis=Basis.WITH_PREMIUM),
    ]
    told = refusals(mixed, Basis.HAMMER, "USD", Conversions())

    assert [r.id for r in told] == ["asked", "paid", "unsold"]
    assert "give a crossing" in str(told[0])
    assert "premium is not given" in str(told[1])
    assert [o.comparable.id for o in build(mixed, Basis.HAMMER, "USD", Conversions()).left_out] == [
        r.id for r in told
    ]
    shop = Crossing(
        start=Basis.RETAIL_ASKED, end=Basis.HAMMER, factor=Decimal("0.5"), source="own books"
    )
    given_ = Conversions(premium=Decimal("0.25"), crossings=(shop,))
    assert [r.id for r in refusals(mixed, Basis.HAMMER, "USD", given_)] == ["unsold"]


def test_a_currency_without_a_rate_names_the_row(sale: Sale) -> None:
    rows = [
        sale("a", "100", currency="GBP", date=UncertainDate("2020-01-15")),
        sale("b", "100", currency="GBP", date=UncertainDate("2021-01-15")),
        sale("c", "100", currency="CHF", date=UncertainDate("2020-01-15")),
    ]
    given_ = Conversions(exchange=table())
    told = refusals(rows, Basis.WITH_PREMIUM, "USD", given_)

    assert [r.id for r in told] == ["b", "c"]
    assert "no value near this date" in told[0].because
    assert "CHF" in told[1].because
    (row,) = build(rows, Basis.WITH_PREMIUM, "USD", given_).rows
    assert row.adjusted == Money(Decimal(125), "USD")
    assert "GBP_per_usd of 2020-01" in row.steps[0].source


@given(st.decimals(min_value=1, max_value=10**6, places=2))
def test_the_currency_of_entry_is_of_no_account(amount: Decimal) -> None:
    day = UncertainDate("2020-01-15")
    entered = [
        Comparable(id=c, date=day, venue="x", price=Money(a, c), basis=Basis.HAMMER)
        for a, c in ((amount, "USD"), (amount * Decimal("0.8"), "GBP"))
    ]
    rows = build(entered, Basis.HAMMER, "USD", Conversions(exchange=table())).rows
    assert abs(rows[0].adjusted.amount - rows[1].adjusted.amount) < Decimal("1e-20")


@pytest.mark.parametrize(("hammer", "paid"), [("800", "1000"), ("3000", "3450")])
def test_a_premium_by_slices_goes_both_ways(sale: Sale, hammer: str, paid: str) -> None:
    given_ = Conversions(schedules={"": Slices()}, commission=Decimal("0.1"))
    total = sale("a", paid, basis=Basis.WITH_PREMIUM)
    fallen = sale("b", hammer, basis=Basis.HAMMER)

    def to(comparable: Comparable, basis: Basis) -> Decimal:
        (row,) = build([comparable], basis, "USD", given_).rows
        assert "own conditions of sale" in [s.source for s in row.steps]
        return row.adjusted.amount

    assert to(total, Basis.HAMMER) == pytest.approx(Decimal(hammer))
    assert to(fallen, Basis.WITH_PREMIUM) == pytest.approx(Decimal(paid))
    assert to(total, Basis.NET_TO_SELLER) == pytest.approx(Decimal(hammer) * Decimal("0.9"))


def test_a_venues_own_slices_go_first_and_a_sales_own_premium_before_both(sale: Sale) -> None:
    given_ = Conversions(premium=Decimal("0.2"), schedules={"a. room": Slices()})
    rows = build(
        [
            sale("a", "800", basis=Basis.HAMMER, venue="A.  Room"),
            sale("b", "800", basis=Basis.HAMMER, venue="B. Room"),
            sale("c", "800", basis=Basis.HAMMER, venue="A. Room", premium=Decimal("0.5")),
        ],
        Basis.WITH_PREMIUM,
        "USD",
        given_,
    ).rows
    assert [float(r.adjusted.amount) for r in rows] == [1000, 960, 1200]


@pytest.mark.skipif(not CHECKS.exists(), reason="the worked checks lie beside the checkout")
def test_grid_02_an_amount_goes_before_a_factor(sale: Sale) -> None:
    """Shared check grid-02, derived there: 1000 + 200, then 10 % more, is 1320 and not 1300."""
    from planish.worth import Adjustment  # noqa: PLC0415  # for this check alone

    lines = (
        line for line in CHECKS.read_text(encoding="utf-8").splitlines() if '"grid-02"' in line
    )
    row = json.loads(next(lines))
    ten = Adjustment.percent(100 * row["inputs"]["percent"], "better state", "check")
    metal = Adjustment(
        because="metal", amount=Money.of(row["inputs"]["metal"], "USD"), source="check"
    )
    comparable = sale("a", str(row["inputs"]["price"]), adjustments=(ten, metal))
    (found,) = build([comparable], Basis.WITH_PREMIUM, "USD", Conversions()).rows

    assert float(found.adjusted.amount) == pytest.approx(row["expected"]["money_first"])
