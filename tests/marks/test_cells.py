"""One-to-one assignment of marks to roles, priced exactly."""

import itertools
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.marks.cells import matchings

WEIGHTS = st.floats(0.0, 5.0)


def by_hand(weights: list[dict[int, float]], stray: list[float]) -> float:
    """All one-to-one assignments, written out."""
    total = 0.0
    choices = [[None, *row] for row in weights]
    for chosen in itertools.product(*choices):
        used = [r for r in chosen if r is not None]
        if len(used) == len(set(used)):
            total += math.prod(
                stray[i] if r is None else weights[i][r] for i, r in enumerate(chosen)
            )
    return total


@given(
    st.lists(
        st.tuples(st.dictionaries(st.integers(0, 3), WEIGHTS, max_size=4), WEIGHTS), max_size=4
    )
)
def test_matchings_against_writing_them_all_out(rows: list[tuple[dict[int, float], float]]) -> None:
    weights, stray = [w for w, _ in rows], [s for _, s in rows]
    assert matchings(weights, stray) == pytest.approx(by_hand(weights, stray))


def test_two_marks_do_not_share_a_role() -> None:
    assert matchings([{0: 1.0}, {0: 1.0}], [0.0, 0.0]) == 0.0
    assert matchings([{0: 1.0}, {1: 1.0}], [0.0, 0.0]) == 1.0


def test_nothing_to_assign() -> None:
    assert matchings([], []) == 1.0
