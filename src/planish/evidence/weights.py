"""Weights of evidence.

The unit is the deciban: ten times the common logarithm of a likelihood ratio.
Source of the measure: I. J. Good, "Probability and the Weighing of Evidence" (1950), after
A. M. Turing's use of ban and deciban; the definition is also in Good, "Studies in the History of
Probability and Statistics XXXVII", Biometrika 66 (1979), 393-396.
"""

import math
from collections.abc import Iterable, Sequence

_LOG10 = math.log(10.0)

# Common practice: the words that the bench prints beside a weight. The bounds are those of
# H. Jeffreys, "Theory of Probability", appendix B (half-bans: 5, 10, 15, 20 dB), from memory.
_WORDS: tuple[tuple[float, str], ...] = (
    (20.0, "decisive"),
    (10.0, "strong"),
    (5.0, "some"),
    (1.0, "slight"),
)


def decibans(log_ratio: float) -> float:
    """Decibans [dB] of a natural-log likelihood ratio."""
    return 10.0 * log_ratio / _LOG10


def likelihood_ratio(weight_db: float) -> float:
    """Likelihood ratio of a weight in decibans."""
    return float(10.0 ** (weight_db / 10.0))


def probability(odds_db: float) -> float:
    """Probability of odds given in decibans."""
    if odds_db > 0:
        return 1.0 / (1.0 + likelihood_ratio(-odds_db))
    ratio = likelihood_ratio(odds_db)
    return ratio / (1.0 + ratio)


def in_words(weight_db: float) -> str:
    """Plain word for a weight: decisive, strong, some, slight or none.

    >>> in_words(-12.0)
    'strong'
    """
    for bound, word in _WORDS:
        if abs(weight_db) >= bound:
            return word
    return "none"


def log_sum_exp(values: Iterable[float]) -> float:
    """Natural log of the sum of exponentials; minus infinity for no values."""
    kept = [v for v in values if v > -math.inf]
    if not kept:
        return -math.inf
    top = max(kept)
    return top + math.log(math.fsum(math.exp(v - top) for v in kept))


def normalise(log_weights: Sequence[float]) -> list[float]:
    """Probabilities, summing to one, of natural-log weights.

    Raises:
        ValueError: no weight is above minus infinity.
    """
    total = log_sum_exp(log_weights)
    if total == -math.inf:
        raise ValueError("no hypothesis has any weight")
    return [math.exp(v - total) if v > -math.inf else 0.0 for v in log_weights]
