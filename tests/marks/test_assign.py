"""One-to-one assignment of marks to roles, priced exactly."""

import itertools
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.marks.assign import Pools, table

WEIGHTS = st.floats(0.0, 5.0)
ROWS = st.lists(st.lists(WEIGHTS, min_size=4, max_size=4), max_size=4)
FOUR = st.lists(WEIGHTS, min_size=4, max_size=4)


def by_hand(rows: list[list[float]], marks: tuple[int, ...] = (0, 1, 2, 3)) -> float:
    """All one-to-one assignments, written out; a role may stay empty."""
    total = 0.0
    for chosen in itertools.product((None, *marks), repeat=len(rows)):
        used = [i for i in chosen if i is not None]
        if len(used) == len(set(used)):
            total += math.prod(row[i] for row, i in zip(rows, chosen, strict=True) if i is not None)
    return total


def pools(rows: list[list[float]]) -> Pools:
    return Pools(4, lambda role: [(1 << i, w) for i, w in enumerate(rows[role])])


@given(ROWS)
def test_sum_against_writing_all_out(rows: list[list[float]]) -> None:
    assert pools(rows).of(tuple(range(len(rows)))).whole == pytest.approx(by_hand(rows))


@given(ROWS, st.sets(st.integers(0, 3)))
def test_marks_left_out(rows: list[list[float]], out: set[int]) -> None:
    rest = tuple(i for i in range(4) if i not in out)
    found = pools(rows).of(tuple(range(len(rows)))).without(sum(1 << i for i in out))
    assert found == pytest.approx(by_hand(rows, rest))


@given(ROWS, FOUR, FOUR, st.sets(st.integers(0, 3)), st.sets(st.integers(0, 3)))
def test_date_and_maker_added_year_by_year(
    rows: list[list[float]], date: list[float], maker: list[float], moving: set[int], out: set[int]
) -> None:
    """The linear form is the sum with the date and the maker's mark as two more roles."""
    pool = pools(rows).of(tuple(range(len(rows))))
    marks = tuple(i for i in range(4) if i not in out)
    sums = table(pool, marks, sum(1 << i for i in out), date, sorted(moving))

    def with_maker(alone: float, rest: list[float]) -> float:
        return alone + math.fsum(m * r for m, r in zip(maker, rest, strict=True))

    total = with_maker(sums.alone, sums.by_maker)
    total += math.fsum(date[i] * with_maker(alone, rest) for i, alone, rest in sums.moving)
    assert total == pytest.approx(by_hand([*rows, date, maker], marks))


def test_two_marks_do_not_share_a_role() -> None:
    pool = Pools(4, lambda _: [(1, 1.0), (2, 1.0)]).of((0,))
    assert pool.taken == {0: 1.0, 1: 1.0, 2: 1.0}


def test_nothing_to_assign() -> None:
    assert pools([]).of(()).whole == 1.0
