"""The grid and the opinion: worked examples and laws."""

import datetime as dt
import json
import math
import random
from collections.abc import Callable
from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import Any

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.quantity import Money, QuantityError, UncertainDate
from planish.worth import (
    Adjustment,
    Basis,
    Comparable,
    Concluded,
    Conversions,
    Floor,
    Opinion,
    Row,
    Spread,
    Task,
    build,
    opinion,
)

CHECKS = Path(__file__).resolve().parents[3] / "shared" / "facts" / "worth" / "checks.jsonl"
Sale = Callable[..., Comparable]
TASK = Task(
    type_of_value="fair market value",
    date=dt.date(2026, 5, 14),
    market="auction, New York",
    basis=Basis.WITH_PREMIUM,
    currency="USD",
)
NONE = Conversions()


def _usd(amount: str | int) -> Money:
    return Money.of(Decimal(amount), "USD")


def _grid_01(sale: Sale) -> list[Comparable]:
    """Three sales with a money line each, then percentages."""
    table = {
        "a": ("1400", "180", ("-6", "10", "0")),
        "b": ("2100", "95", ("4", "0", "-20")),
        "c": ("1150", "260", ("8", "-5", "12")),
    }
    return [
        sale(
            key,
            price,
            adjustments=(
                *(
                    Adjustment.percent(Decimal(p), why, "a test")
                    for p, why in zip(percents, ("weight", "condition", "maker"), strict=True)
                ),
                Adjustment(because="metal", amount=_usd(metal), source="a test"),
            ),
        )
        for key, (price, metal, percents) in table.items()
    ]


def test_the_grid_of_a_worked_example(sale: Sale) -> None:
    """Shared check grid-01: money line first, then percent lines multiply."""
    rows = build(_grid_01(sale), Basis.WITH_PREMIUM, "USD", NONE).rows

    assert [float(r.adjusted.amount) for r in rows] == pytest.approx([1633.72, 1826.24, 1620.2592])
    assert [r.net for r in rows] == pytest.approx([0.166943, -0.130362, 0.408921], abs=1e-6)
    assert [r.gross for r in rows] == pytest.approx([0.278138, 0.306609, 0.445411], abs=1e-6)


def test_shared_check_values_of_grids(sale: Sale) -> None:
    if not CHECKS.exists():
        pytest.skip("no shared check values beside this checkout")
    rows = {r["id"]: r for r in map(json.loads, CHECKS.read_text(encoding="utf-8").splitlines())}
    expected = rows["grid-01"]["expected"]
    grid = build(_grid_01(sale), Basis.WITH_PREMIUM, "USD", NONE).rows

    assert [float(r.adjusted.amount) for r in grid] == pytest.approx(
        expected["adjusted"], abs=0.005
    )
    assert [r.net for r in grid] == pytest.approx(expected["net_adjustment"], abs=1e-6)
    assert [r.gross for r in grid] == pytest.approx(expected["gross_adjustment_log"], abs=1e-6)


def test_an_amount_goes_before_a_factor(sale: Sale) -> None:
    """Shared check grid-02: (1000 + 200) x 1.1 = 1320, whichever was written first."""
    lines = (
        Adjustment.percent(10, "condition", "a test"),
        Adjustment(because="metal", amount=_usd(200), source="a test"),
    )
    for adjustments in (lines, lines[::-1]):
        (row,) = build([sale("a", "1000", adjustments=adjustments)], TASK.basis, "USD", NONE).rows
        assert row.adjusted == _usd(1320)


def test_a_plain_opinion_says_all_that_it_must(sale: Sale) -> None:
    result = opinion([sale("a", "480"), sale("b", "520"), sale("c", "610")], TASK)

    assert result.computed == _usd(520)
    assert result.value == _usd(520)
    assert result.low is not None
    assert result.high is not None
    assert result.low < result.value < result.high
    assert (result.type_of_value, result.date) == ("fair market value", dt.date(2026, 5, 14))
    assert (result.market, result.currency) == ("auction, New York", "USD")
    assert result.approach == "sales comparison"
    assert result.level == 0.8
    assert len(result.reasons) == 3
    assert "USD 520.00" in result.reasons[1]
    assert not any("only" in w for w in result.warnings)


@pytest.mark.parametrize("count", [1, 2])
def test_one_or_two_comparables_are_told_and_widen_the_range(sale: Sale, count: int) -> None:
    few = opinion([sale(str(k), "500") for k in range(count)], TASK)
    many = opinion([sale(str(k), "500") for k in range(6)], TASK)

    assert any(w.startswith(f"only {count} of the comparables") for w in few.warnings)
    assert few.low is not None
    assert few.high is not None
    assert many.low is not None
    assert many.high is not None
    assert few.low < many.low
    assert few.high > many.high


def test_without_comparables_there_is_a_floor_and_no_opinion(sale: Sale) -> None:
    floor = Floor(amount=_usd(410), note="fine silver at the price of 2026-05-13")
    for comparables in ([], [sale("a", "500", basis=Basis.UNSOLD)]):
        result = opinion(comparables, TASK, floor=floor)
        assert (result.value, result.low, result.high, result.level) == (None, None, None, None)
        assert result.approach == "none"
        assert result.floor == floor
        assert "no value is reckoned" in result.reasons[0]
        assert "USD 410.00" in result.reasons[1]


def test_a_concluded_figure_stands_beside_the_reckoned_one(sale: Sale) -> None:
    own = Concluded(value=_usd(550), reasons=("the finest of the four",))
    result = opinion([sale("a", "480"), sale("b", "520"), sale("c", "610")], TASK, concluded=own)

    assert result.value == _usd(550)
    assert result.computed == _usd(520)
    assert any("+5.8 % from the weighted median" in r for r in result.reasons)
    assert result.reasons[-1] == "the finest of the four"
    assert not any("lies outside" in w for w in result.warnings)


def test_a_concluded_figure_outside_the_range_is_told(sale: Sale) -> None:
    far = Concluded(value=_usd(5500), low=_usd(5000), high=_usd(6000), reasons=("a hunch",))
    result = opinion([sale("a", "480"), sale("b", "520"), sale("c", "610")], TASK, concluded=far)

    assert any("lies outside" in w for w in result.warnings)
    assert (result.low, result.high, result.level) == (_usd(5000), _usd(6000), None)


def test_a_concluded_figure_without_sales_is_told() -> None:
    own = Concluded(value=_usd(550), approach="cost", reasons=("maker's price list",))
    result = opinion([], TASK, concluded=own)

    assert (result.value, result.approach) == (_usd(550), "cost")
    assert any("no comparable supports" in w for w in result.warnings)


def test_concluded_figures_are_checked() -> None:
    with pytest.raises(QuantityError, match="does not hold the value"):
        Concluded(value=_usd(5), low=_usd(6), high=_usd(7), reasons=("x",))
    with pytest.raises(QuantityError, match="needs a reason"):
        Concluded(value=_usd(5), reasons=(" ",))
    with pytest.raises(QuantityError, match="stands alone"):
        Concluded(value=_usd(5), low=_usd(4), reasons=("x",))
    with pytest.raises(QuantityError, match="GBP"):
        Concluded(value=_usd(5), low=Money.of(4, "GBP"), high=_usd(6), reasons=("x",))


def test_a_value_below_the_metal_is_told(sale: Sale) -> None:
    sales = [sale("a", "480"), sale("b", "520"), sale("c", "610")]
    above = opinion(sales, TASK, floor=Floor(amount=_usd(900), note="x"))
    within = opinion(sales, TASK, floor=Floor(amount=_usd(500), note="x"))
    below = opinion(sales, TASK, floor=Floor(amount=_usd(50), note="x"))

    assert any("is below the metal's" in w for w in above.warnings)
    assert any("reaches below the metal's" in w for w in within.warnings)
    assert not any("below the metal's" in w for w in below.warnings)
    assert above.value == within.value == below.value  # a floor is a note, never a correction


def test_old_and_later_sales_and_twins_are_told(sale: Sale) -> None:
    result = opinion(
        [
            sale("old", "500", date=UncertainDate("2021-03")),
            sale("later", "500", date=UncertainDate("2026-06-01")),
            sale("x", "510", venue="A room"),
            sale("y", "510", venue="a  Room"),
            sale("unsold", "510", basis=Basis.UNSOLD),
        ],
        TASK,
    )

    for said in (
        "more than 365 days old: old;",
        "sold after the effective date 2026-05-14: later",
        "x and y may be one sale",
        "unsold is left out",
        "sold prices alone run high",
    ):
        assert any(said in w for w in result.warnings), said


def test_what_cannot_be_reckoned_is_refused(sale: Sale) -> None:
    with pytest.raises(QuantityError, match="bear this id"):
        opinion([sale("a", "1"), sale("a", "2")], TASK)
    for amount, says in ((Money.of(5, "GBP"), "another currency"), (_usd(-10), "leave nothing")):
        line = Adjustment(because="metal", amount=amount, source="x")
        with pytest.raises(QuantityError, match=says):
            opinion([sale("a", "10", adjustments=(line,))], TASK)
    with pytest.raises(QuantityError, match="the opinion is in USD"):
        opinion([], TASK, floor=Floor(amount=Money.of(5, "GBP"), note="x"))


@pytest.mark.parametrize(
    "change",
    [{"type_of_value": " "}, {"market": ""}, {"currency": "usd"}, {"basis": Basis.UNSOLD}],
)
def test_a_task_names_its_value_market_and_currency(change: dict[str, Any]) -> None:
    with pytest.raises(QuantityError):
        msgspec.structs.replace(TASK, **change)


def test_it_is_stored_and_read_back_equal(sale: Sale) -> None:
    result = opinion(_grid_01(sale), TASK, floor=Floor(amount=_usd(100), note="x"))

    assert msgspec.json.decode(msgspec.json.encode(result), type=Opinion) == result


# laws

prices = st.decimals(min_value="5", max_value="100000", places=2)
factors = st.decimals(min_value="0.2", max_value="4", places=3)
lines = st.one_of(
    factors.map(lambda f: Adjustment(because="trait", factor=f, source="test")),
    st.decimals(min_value=0, max_value=500, places=2).map(
        lambda a: Adjustment(because="metal", amount=Money(a, "USD"), source="test")
    ),
)


@st.composite
def _comparables(draw: st.DrawFn) -> list[Comparable]:
    count = draw(st.integers(min_value=1, max_value=7))
    return [
        Comparable(
            id=f"c{k}",
            date=UncertainDate("2026-03"),
            venue=f"room {k}",
            price=Money(draw(prices), "USD"),
            basis=draw(st.sampled_from([Basis.HAMMER, Basis.WITH_PREMIUM, Basis.NET_TO_SELLER])),
            weight=draw(st.sampled_from([Decimal(1), Decimal("0.5"), Decimal(2)])),
            adjustments=tuple(draw(st.lists(lines, max_size=4))),
        )
        for k in range(count)
    ]


GIVEN = Conversions(premium=Decimal("0.26"), commission=Decimal("0.15"))


def _worked_again(row: Row) -> Fraction:
    """The row multiplied out in fractions from what it prints."""
    value = Fraction(row.comparable.price.amount)
    for step in row.steps:
        value *= Fraction(step.factor)
    value += sum((Fraction(a.amount.amount) for a in row.amounts if a.amount), Fraction(0))
    for line in row.factors:
        value *= Fraction(line.factor or 1)
    return value


@given(_comparables())
def test_every_row_multiplies_out(comparables: list[Comparable]) -> None:
    result = opinion(comparables, TASK, GIVEN)

    assert len(result.grid) == len(comparables)
    for row in result.grid:
        assert len(row.amounts) + len(row.factors) == len(row.comparable.adjustments)
        again = _worked_again(row)
        assert abs(Fraction(row.adjusted.amount) - again) <= again / 10**9
        assert row.gross >= abs(math.log1p(row.net)) - 1e-9


@given(_comparables(), st.randoms())
def test_the_order_of_comparables_is_of_no_account(
    comparables: list[Comparable], turn: random.Random
) -> None:
    first = opinion(comparables, TASK, GIVEN)
    turn.shuffle(comparables)

    assert opinion(comparables, TASK, GIVEN) == first


@given(_comparables())
def test_the_opinion_lies_among_the_adjusted_prices(comparables: list[Comparable]) -> None:
    result = opinion(comparables, TASK, GIVEN)
    adjusted = [row.adjusted for row in result.grid]

    assert result.computed is not None
    assert min(a.amount for a in adjusted) <= result.computed.amount
    assert result.computed.amount <= max(a.amount for a in adjusted)
    assert result.low is not None
    assert result.value is not None
    assert result.high is not None
    assert result.low <= result.value <= result.high
    assert result.low < result.computed < result.high


@given(_comparables(), st.data())
def test_a_dearer_sale_never_lowers_the_opinion(
    comparables: list[Comparable], data: st.DataObject
) -> None:
    before = opinion(comparables, TASK, GIVEN).computed
    k = data.draw(st.integers(min_value=0, max_value=len(comparables) - 1))
    comparables[k] = msgspec.structs.replace(comparables[k], price=comparables[k].price * 2)
    after = opinion(comparables, TASK, GIVEN).computed

    assert before is not None
    assert after is not None
    assert before <= after


@given(
    _comparables(),
    st.floats(min_value=0.05, max_value=0.5),
    st.floats(min_value=0.05, max_value=0.5),
)
def test_a_wilder_market_widens_the_range(
    comparables: list[Comparable], a: float, b: float
) -> None:
    calm, wild = (
        opinion(comparables, TASK, GIVEN, spread=Spread(sd=sd, source="test"))
        for sd in sorted((a, b))
    )

    assert calm.computed == wild.computed
    assert calm.high is not None
    assert wild.high is not None
    # rounding to two or three figures may hide a small change, never turn it round by more
    assert float(calm.high.amount) <= float(wild.high.amount) * 1.051
