"""Weights of evidence against their definition (I. J. Good 1950) and each other."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.evidence import (
    decibans,
    in_words,
    likelihood_ratio,
    log_sum_exp,
    normalise,
    probability,
)


def test_ten_decibans_is_a_factor_of_ten() -> None:
    # definition of the ban: ten decibans for a ratio of ten
    assert likelihood_ratio(10.0) == pytest.approx(10.0)
    assert decibans(math.log(10.0)) == pytest.approx(10.0)


def test_jeffreys_words() -> None:
    # H. Jeffreys, Theory of Probability, appendix B: half-ban steps (from memory)
    assert [in_words(x) for x in (0.4, 3.0, 7.0, -12.0, 25.0)] == [
        "none",
        "slight",
        "some",
        "strong",
        "decisive",
    ]


def test_even_odds_are_a_half() -> None:
    assert probability(0.0) == pytest.approx(0.5)
    assert probability(-400.0) == pytest.approx(0.0, abs=1e-30)


@given(st.floats(-200, 200))
def test_odds_and_ratio_are_inverse(weight: float) -> None:
    assert decibans(math.log(likelihood_ratio(weight))) == pytest.approx(weight, abs=1e-9)


@given(st.lists(st.floats(-600, 600), min_size=1, max_size=20))
def test_normalise_sums_to_one(logs: list[float]) -> None:
    assert math.fsum(normalise(logs)) == pytest.approx(1.0)


def test_nothing_to_normalise_is_refused() -> None:
    with pytest.raises(ValueError, match="no hypothesis"):
        normalise([-math.inf])


def test_log_sum_exp_of_nothing() -> None:
    assert log_sum_exp([]) == -math.inf
