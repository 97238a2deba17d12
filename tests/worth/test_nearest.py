"""The grouped search against the plain sum of the formula, on rows with gaps and ties."""

import math
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

np = pytest.importorskip("numpy", reason="the search over millions of sales needs numpy")

from planish.quantity import Mass, Money, UncertainDate  # noqa: E402  # after the skip
from planish.worth.comparables import Basis  # noqa: E402  # as above
from planish.worth.nearest import Columns, Wanted, nearest_sales  # noqa: E402  # as above
from planish.worth.sales import Sale  # noqa: E402  # as above
from planish.worth.traits import Traits  # noqa: E402  # as above

value = st.sampled_from([0.0, 0.5, 1.0, 2.5, 7.0, math.nan])
code = st.integers(-1, 3)
row = st.tuples(value, value, code, code)
weight = st.sampled_from([0.0, 0.25, 1.0, 4.0])


def plain(rows: list[Any], wanted: Wanted, unknown: float) -> list[float]:
    """sqrt(sum w (x - x0)^2 + sum u [differs]) row by row, as the formula says."""
    found = []
    for lead, number, form, maker in rows:
        total = 0.0
        for name, x in (("lead", lead), ("number", number)):
            if name in wanted.numbers:
                square = unknown if math.isnan(x) else (x - wanted.numbers[name]) ** 2
                total += wanted.weights[name] * square
        for name, c in (("form", form), ("maker", maker)):
            if name in wanted.words:
                differs = unknown if c < 0 else float(c != wanted.words[name])
                total += wanted.weights[name] * differs
        found.append(math.sqrt(total))
    return found


def columns(rows: list[Any]) -> Columns:
    lead, number, form, maker = (np.array(c) for c in zip(*rows, strict=True))
    return Columns.of({"lead": lead, "number": number}, {"form": form, "maker": maker})


@settings(max_examples=300, deadline=None)
@given(
    rows=st.lists(row, min_size=1, max_size=60),
    numbers=st.dictionaries(st.sampled_from(["lead", "number"]), st.sampled_from([0.0, 1.0, 2.5])),
    words=st.dictionaries(st.sampled_from(["form", "maker"]), st.integers(0, 4)),
    weights=st.fixed_dictionaries(dict.fromkeys(("lead", "number", "form", "maker"), weight)),
    unknown=st.sampled_from([0.0, 1.0, 2.0]),
    count=st.integers(1, 8),
)
def test_the_best_are_the_best_in_the_order_given(
    *,
    rows: list[Any],
    numbers: dict[str, float],
    words: dict[str, int],
    weights: dict[str, float],
    unknown: float,
    count: int,
) -> None:
    wanted = Wanted(numbers=numbers, words=words, weights=weights)
    far = plain(rows, wanted, unknown)
    best = sorted(range(len(rows)), key=lambda n: (far[n], n))[:count]
    found = columns(rows).nearest(wanted, count, unknown)

    assert found.rows.tolist() == best
    assert found.distance.tolist() == pytest.approx([far[n] for n in best], abs=1e-12)


@pytest.mark.parametrize("weights", [{"form": 9.0, "lead": 1.0, "number": 1.0, "maker": 0.5},
                                     {"form": 0.01, "lead": 0.1, "number": 1.0, "maker": 0.5}])  # fmt: skip
def test_many_rows_with_groups_of_many_pieces(weights: dict[str, float]) -> None:
    chance = np.random.default_rng(3)
    n = 60_000
    numbers = {"lead": chance.normal(5, 1, n), "number": chance.normal(0, 1, n)}
    numbers["lead"][::97] = np.nan
    words = {"form": chance.integers(0, 4, n), "maker": chance.integers(0, 40_000, n)}
    made = Columns.of(numbers, words)
    single = {name: c.astype(np.float32).astype(float) for name, c in numbers.items()}
    seen = 0
    for at in (1, 500, 59_999):
        wanted = Wanted(
            numbers={name: float(c[at]) for name, c in single.items()},
            words={name: int(c[at]) for name, c in words.items()},
            weights=weights,
        )
        squares = sum(
            weights[name] * np.where(np.isnan(c), 1.0, (c - c[at]) ** 2)
            for name, c in single.items()
        ) + sum(weights[name] * (c != c[at]) for name, c in words.items())
        best = np.lexsort((np.arange(n), squares))[:20]
        found = made.nearest(wanted)
        seen += found.seen
        assert found.rows.tolist() == best.tolist()
        assert found.rows[0] == at
    if weights["form"] > 1:
        assert seen < 3 * n / 4  # other forms are never entered


def sale(key: str, form: str, grams: int, maker: str = "") -> Sale:
    return Sale(
        id=key,
        date=UncertainDate("2020"),
        venue="room",
        price=Money.of(100, "GBP"),
        basis=Basis.HAMMER,
        traits=Traits(form=form, maker=maker, net=Mass.of(grams)),
    )


def test_sales_by_form_weight_and_maker() -> None:
    kept = [
        sale("a", "teapot", 500, "A. Smith"),
        sale("b", "Teapot", 510, "B. Jones"),
        sale("c", "salver", 500, "A. Smith"),
        sale("d", "teapot", 900),
    ]
    weights = {"form": 4.0, "ln net g": 1.0, "maker": 0.5}
    piece = sale("x", "teapot", 500, "a.  smith")
    assert [s.id for s in nearest_sales(kept, piece, weights, 3)] == ["a", "b", "d"]
    assert [s.id for s in nearest_sales(kept, piece, {"maker": 1.0}, 2)] == ["a", "c"]
    strange = sale("x", "epergne", 500)
    assert [s.id for s in nearest_sales(kept, strange, weights, 2)] == ["a", "c"]
    assert nearest_sales([], piece, weights) == []


@pytest.mark.parametrize(("count", "weight"), [(0, 1.0), (1, -1.0)])
def test_a_count_of_none_or_a_weight_below_zero_is_refused(count: int, weight: float) -> None:
    wanted = Wanted(numbers={"lead": 0.0}, words={}, weights={"lead": weight})
    with pytest.raises(ValueError, match="above zero"):
        columns([(0.0, 0.0, 0, 0)]).nearest(wanted, count)


def test_columns_of_different_lengths_are_refused() -> None:
    with pytest.raises(ValueError, match="one length"):
        Columns.of({"a": np.zeros(2)}, {"b": np.zeros(3, int)})
