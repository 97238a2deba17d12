"""Student's t against printed tables and closed forms."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.worth.student import t_below, t_quantile


@pytest.mark.parametrize(
    ("probability", "dof", "t"),
    # critical values of Student's t, NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2
    [
        (0.90, 1, 3.078), (0.90, 2, 1.886), (0.90, 5, 1.476), (0.90, 10, 1.372), (0.90, 30, 1.310),
        (0.95, 1, 6.314), (0.95, 5, 2.015), (0.95, 10, 1.812), (0.95, 30, 1.697),
        (0.975, 1, 12.706), (0.975, 10, 2.228), (0.975, 30, 2.042), (0.975, 100, 1.984),
        (0.995, 3, 5.841), (0.995, 20, 2.845),
    ],
)  # fmt: skip
def test_printed_critical_values(probability: float, dof: float, t: float) -> None:
    assert t_quantile(probability, dof) == pytest.approx(t, abs=6e-4)


inside = st.floats(min_value=0.001, max_value=0.999)


@given(inside)
def test_closed_forms(p: float) -> None:
    """One degree of freedom is Cauchy; for two, t = (2p - 1) / sqrt(2 p (1 - p))."""
    assert t_quantile(p, 1) == pytest.approx(math.tan(math.pi * (p - 0.5)), rel=1e-8, abs=1e-9)
    assert t_quantile(p, 2) == pytest.approx(
        (2 * p - 1) / math.sqrt(2 * p * (1 - p)), rel=1e-8, abs=1e-9
    )


@given(inside, st.floats(min_value=0.5, max_value=500))
def test_quantile_and_probability_undo_each_other(p: float, dof: float) -> None:
    assert t_below(t_quantile(p, dof), dof) == pytest.approx(p, abs=1e-9)


def test_what_has_no_quantile_is_refused() -> None:
    for p, dof in ((0, 5), (1, 5), (0.5, 0), (float("nan"), 5)):
        with pytest.raises(ValueError, match="no quantile"):
            t_quantile(p, dof)
