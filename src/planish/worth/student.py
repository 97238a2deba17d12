"""Quantiles of Student's t, by the standard library alone.

Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.5.8 (continued fraction of
the incomplete beta function, evaluated from the front by Lentz's method) and 26.7.1.
"""

import math
from functools import lru_cache

_TINY = 1e-300


@lru_cache(maxsize=1024)
def t_quantile(probability: float, dof: float) -> float:
    """T with ``probability`` below it, for ``dof`` degrees of freedom (need not be whole).

    Raises:
        ValueError: the probability is not inside 0 to 1, or dof not above zero.

    >>> round(t_quantile(0.95, 10), 3)
    1.812
    """
    if not 0 < probability < 1 or not dof > 0:
        raise ValueError(f"no quantile of t at {probability} for {dof} degrees of freedom")
    if probability < 0.5:
        return -t_quantile(1 - probability, dof)
    low, high = 0.0, 1.0
    while t_below(high, dof) < probability:
        high *= 2
    for _ in range(200):
        middle = (low + high) / 2
        if middle in (low, high):
            break
        low, high = (middle, high) if t_below(middle, dof) < probability else (low, middle)
    return (low + high) / 2


def t_below(t: float, dof: float) -> float:
    """Probability below ``t``."""
    inside = _beta_share(0.5, dof / 2, t * t / (dof + t * t))
    return 0.5 + math.copysign(0.5 * inside, t)


def _beta_share(a: float, b: float, x: float) -> float:
    """Regularised incomplete beta function I_x(a, b)."""
    if x <= 0 or x >= 1:
        return 0.0 if x <= 0 else 1.0
    front = math.exp(
        math.lgamma(a + b) - math.lgamma(a) - math.lgamma(b) + a * math.log(x) + b * math.log1p(-x)
    )
    # the fraction converges fast below the mean; above it the mirror image is used
    if x < (a + 1) / (a + b + 2):
        return front * _fraction(a, b, x) / a
    return 1 - front * _fraction(b, a, 1 - x) / b


def _fraction(a: float, b: float, x: float) -> float:
    c, d = 1.0, 1 - (a + b) * x / (a + 1)
    d = 1 / (d if abs(d) > _TINY else _TINY)
    value = d
    for m in range(1, 400):
        even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m))
        odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1))
        for term in (even, odd):
            d = 1 + term * d
            d = 1 / (d if abs(d) > _TINY else _TINY)
            c = 1 + term / c
            c = c if abs(c) > _TINY else _TINY
            value *= c * d
        if abs(c * d - 1) < 1e-15:
            break
    return value
