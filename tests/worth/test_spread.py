"""Median, range and rounding."""

import json
import math
import random
import statistics
from decimal import Decimal
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.worth import Spread, predicted, significant, weighted_median
from planish.worth.student import t_quantile

CHECKS = Path(__file__).resolve().parents[3] / "shared" / "facts" / "worth" / "checks.jsonl"

prices = st.decimals(min_value="1", max_value="100000", places=2)
weights = st.integers(min_value=1, max_value=5)
ONE = Decimal(1)


@given(st.lists(prices, min_size=1, max_size=12))
def test_with_equal_weights_it_is_the_median(values: list[Decimal]) -> None:
    assert weighted_median([(v, ONE) for v in values]) == statistics.median(values)


@given(st.lists(st.tuples(prices, weights), min_size=1, max_size=8), st.randoms())
def test_a_weight_of_two_is_two_sales_in_any_order(
    pairs: list[tuple[Decimal, int]], turn: random.Random
) -> None:
    repeated = [v for v, w in pairs for _ in range(w)]
    shuffled = [(v, Decimal(w)) for v, w in pairs]
    turn.shuffle(shuffled)

    assert weighted_median(shuffled) == statistics.median(repeated)


def test_the_range_of_one_sale_is_that_of_the_belief_alone() -> None:
    """t(6) at 90 % is 1.440 (printed tables); half-width 1.440 x 0.30 x sqrt(2)."""
    found = predicted([(Decimal(500), ONE)], 0.80, Spread(sd=0.30, weight=6))

    assert found.half_width == pytest.approx(1.440 * 0.30 * math.sqrt(2), abs=1e-3)
    assert found.dof == pytest.approx(6)


def test_without_belief_it_is_the_usual_prediction_interval() -> None:
    """mean +- t(n - 1) s sqrt(1 + 1/n), of any textbook, on logarithms."""
    values = [Decimal(v) for v in (420, 515, 480, 610, 390)]
    logs = [math.log(v) for v in values]
    found = predicted([(v, ONE) for v in values], 0.80, Spread(sd=1.0, weight=1e-12))

    expected = t_quantile(0.9, 4) * statistics.stdev(logs) * math.sqrt(1 + 1 / 5)
    assert found.half_width == pytest.approx(expected, rel=1e-6)


def test_more_sales_alike_narrow_the_range() -> None:
    widths = [
        predicted([(Decimal(500 + k), ONE) for k in range(n)], 0.80, Spread()).half_width
        for n in (1, 2, 3, 5, 10, 30)
    ]

    assert widths == sorted(widths, reverse=True)


@pytest.mark.parametrize(
    ("truth", "n", "low", "high"),
    # where the belief (0.30) is right the range holds what it says; where the market is wilder it
    # holds less, which is why the belief is printed
    [(0.30, 1, 0.76, 0.90), (0.30, 5, 0.74, 0.86), (0.15, 5, 0.93, 1.0), (0.45, 5, 0.60, 0.78)],
)
def test_what_the_range_holds(truth: float, n: int, low: float, high: float) -> None:
    chance, trials, held = random.Random(20260514), 1500, 0  # noqa: S311  # no secret
    for _ in range(trials):
        sales = [(Decimal(repr(math.exp(chance.gauss(6, truth)))), ONE) for _ in range(n)]
        middle = math.log(float(weighted_median(sales)))
        held += abs(chance.gauss(6, truth) - middle) <= predicted(sales, 0.80, Spread()).half_width

    assert low <= held / trials <= high


def test_what_has_no_range_is_refused() -> None:
    with pytest.raises(ValueError, match="no median"):
        weighted_median([])
    with pytest.raises(ValueError, match="no range"):
        predicted([], 0.8, Spread())
    with pytest.raises(ValueError, match="no range"):
        predicted([(ONE, ONE)], 80, Spread())


def test_figures_are_rounded_to_two() -> None:
    """Shared check round-01: 87, 410, 1900, 23000 (common practice)."""
    assert [significant(Decimal(v), 2) for v in ("87.3", "412", "1873", "23455")] == [
        87, 410, 1900, 23000,
    ]  # fmt: skip
    assert significant(Decimal("0.0455"), 2) == Decimal("0.046")
    assert significant(Decimal(0), 2) == 0


def test_shared_check_values_of_ranges_and_rounding() -> None:
    if not CHECKS.exists():
        pytest.skip("no shared check values beside this checkout")
    rows = {r["id"]: r for r in map(json.loads, CHECKS.read_text(encoding="utf-8").splitlines())}
    few = rows["range-02"]
    half = t_quantile(0.9, few["inputs"]["df"]) * few["inputs"]["sd_log"]
    assert few["inputs"]["value"] * math.exp(-half) == pytest.approx(
        few["expected"]["low"], abs=0.01
    )
    assert few["inputs"]["value"] * math.exp(half) == pytest.approx(
        few["expected"]["high"], abs=0.01
    )
    rounding = rows["round-01"]
    got = [significant(Decimal(str(v)), 2) for v in rounding["inputs"]["values"]]
    assert got == rounding["expected"]["rounded"]
