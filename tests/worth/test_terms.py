import datetime as dt
from decimal import Decimal

import pytest

from planish.worth import Basis, Conversions, build
from planish.worth.sales import Sale
from planish.worth.series import read_series
from planish.worth.table import read_row
from planish.worth.terms import ready
from planish.worth.timing import Clock

SPOT = read_series("month,silver\n2021-05,27.50\n2026-05,78.01\n", "own table")["silver"]
CLOCK = Clock(effective=dt.date(2026, 5, 31), metal=SPOT, metal_currency="USD")
BASE = {"venue": "room", "currency": "USD", "basis": "with-premium", "price": "600", "lot": "1",
        "date": "2021-05-10", "net_g": "622.07", "fineness": "925"}  # fmt: skip


def sale(key: str, **cells: str) -> Sale:
    return read_row({**BASE, "id": key, **cells}, 0, dt.date(2026, 11, 25))


def test_a_sale_near_melt_moves_with_the_metal() -> None:
    """The figures of shared check time-metal-01; at 1.18 times melt the whole move counts."""
    made = ready([sale("a")], Basis.WITH_PREMIUM, "USD", Conversions(), CLOCK)
    (row,) = build(made.comparables, Basis.WITH_PREMIUM, "USD", Conversions()).rows

    assert float(row.adjusted.amount) == pytest.approx(1534.435697, abs=1e-6)
    assert [why for _, why in made.untimed] == [
        "no line for the market: no index of the premium over melt is given"
    ]


def test_the_level_goes_before_the_metal() -> None:
    given = Conversions(premium=Decimal("0.2"))
    hammer = sale("a", basis="hammer", price="500")
    made = ready([hammer], Basis.WITH_PREMIUM, "USD", given, CLOCK)
    (row,) = build(made.comparables, Basis.WITH_PREMIUM, "USD", given).rows

    assert float(row.adjusted.amount) == pytest.approx(1534.435697, abs=1e-6)


def test_copies_count_once_and_later_sales_not_at_all() -> None:
    rows = [sale(f"s{n:02}") for n in range(50)]
    rows.append(sale("later", date="2026-06-01", lot="9", price="10"))
    made = ready(rows, Basis.WITH_PREMIUM, "USD", Conversions(), CLOCK)

    assert [c.id for c in made.comparables] == ["s00"]
    assert made.future == ("later",)
    assert "50 times" in made.groups[0].flags[0]


def test_what_lacks_a_price_of_metal_is_named_and_stays_as_it_is() -> None:
    made = ready([sale("a", date="2015-01-01")], Basis.WITH_PREMIUM, "USD", Conversions(), CLOCK)

    assert made.untimed[0][0] == "a"
    assert "no value near this date" in made.untimed[0][1]
    assert made.comparables[0].adjustments == ()


def test_what_cannot_be_brought_to_the_level_is_left_to_the_grid_to_name() -> None:
    made = ready([sale("a", basis="hammer")], Basis.WITH_PREMIUM, "USD", Conversions(), CLOCK)
    grid = build(made.comparables, Basis.WITH_PREMIUM, "USD", Conversions())

    assert [o.comparable.id for o in grid.left_out] == ["a"]
