"""Propagation of distributions by drawing them, and the test whether the linear rule would do.

Method: JCGM 101:2008 (Supplement 1 to the GUM): drawing (clause 7), the probabilistically symmetric
coverage interval (7.7), and the comparison with the linear rule (clause 8).
"""

import math
import random
from collections.abc import Callable, Sequence
from enum import StrEnum

import msgspec

from planish.quantity import QuantityError

#: draws of one run, and the seed that makes it the same every time
DRAWS, SEED = 20_000, 20260514
COVERAGE = 0.95
#: significant figures of a standard uncertainty that count (JCGM 101, 7.9.2)
DIGITS = 2
#: how sure an end of the drawn interval must be before it speaks against the linear rule: so many of
#: its own standard errors (judgment)
_SURE = 3.0
#: density of the standard normal distribution at its 2.5 % point
_DENSITY = 0.05844
#: coverage factor of a normal distribution at 95 %
NORMAL_95 = 1.959964
#: draws asked for at most by what a bound throws away, as a multiple
_PATIENCE = 50

# GUM table G.2: t for 95 % by degrees of freedom
_T95 = {1: 12.71, 2: 4.30, 3: 3.18, 4: 2.78, 5: 2.57, 6: 2.45, 7: 2.36, 8: 2.31, 9: 2.26, 10: 2.23,
        12: 2.18, 15: 2.13, 20: 2.09, 25: 2.06, 30: 2.04, 40: 2.02, 50: 2.01, 100: 1.984}  # fmt: skip


def coverage_factor(freedom: float) -> float:
    """Coverage factor for 95 % at so many effective degrees of freedom, the next lower of the table.

    Source: GUM, table G.2.
    """
    below = [n for n in _T95 if n <= freedom]
    if freedom > max(_T95):
        return NORMAL_95
    return _T95[max(below)] if below else _T95[1]


class Shape(StrEnum):
    """How an input is spread about its middle (JCGM 101, table 1)."""

    NORMAL = "normal"
    RECTANGULAR = "rectangular"
    STUDENT = "student"


class Input(msgspec.Struct, frozen=True, kw_only=True):
    """One uncertain input.

    name: as in the budget.
    middle: best value.
    spread: standard uncertainty; for a rectangle half its width.
    freedom: degrees of freedom, where it is of Student's shape.
    low, high: bounds that it cannot pass; what lies beyond is drawn again.
    """

    name: str
    middle: float
    spread: float
    shape: Shape = Shape.NORMAL
    freedom: float = math.inf
    low: float = -math.inf
    high: float = math.inf

    @property
    def uncertainty(self) -> float:
        """Standard uncertainty, bounds left aside (GUM 4.3.7)."""
        return self.spread / math.sqrt(3) if self.shape is Shape.RECTANGULAR else self.spread

    @property
    def near_bound(self) -> bool:
        """Whether a bound cuts off what three standard uncertainties reach."""
        if self.shape is Shape.RECTANGULAR:
            return self.middle - self.spread < self.low or self.middle + self.spread > self.high
        reach = 3 * self.uncertainty
        return self.middle - reach < self.low or self.middle + reach > self.high

    def draws(self, number: int, at: random.Random) -> list[float]:
        """So many values of it.

        Raises:
            QuantityError: its bounds leave next to nothing to draw.
        """
        one = self._one(at)
        bounded = self.low > -math.inf or self.high < math.inf
        if not bounded:
            return [one() for _ in range(number)]
        found: list[float] = []
        for _ in range(_PATIENCE * number):
            value = one()
            if self.low <= value <= self.high:
                found.append(value)
                if len(found) == number:
                    return found
        fault = f"the bounds of '{self.name}' leave next to nothing of its range"
        raise QuantityError("uncertainty", self.name, fault, "check the figure and its limits")

    def _one(self, at: random.Random) -> Callable[[], float]:
        middle, spread = self.middle, self.spread
        if self.shape is Shape.RECTANGULAR:
            return lambda: at.uniform(middle - spread, middle + spread)
        if self.shape is Shape.NORMAL or math.isinf(self.freedom):
            return lambda: at.gauss(middle, spread)
        half, scale = self.freedom / 2, 2 / self.freedom
        return lambda: middle + at.gauss(0, spread) / math.sqrt(at.gammavariate(half, scale))


class Sample(msgspec.Struct, frozen=True, kw_only=True):
    """What the draws say of a result.

    mean, uncertainty: mean and standard deviation of the draws.
    low, high: 95 % of them lie between, as many below as above.
    refused: share of draws that the result's own bound ruled out.
    """

    mean: float
    uncertainty: float
    low: float
    high: float
    draws: int
    seed: int
    refused: float = 0.0


def simulate(
    model: Callable[..., float],
    inputs: Sequence[Input],
    *,
    accept: Callable[[float], bool] | None = None,
    draws: int = DRAWS,
    seed: int = SEED,
) -> Sample:
    """Draw the inputs, work out the model for each draw, and describe the results.

    model: takes the inputs in their order. accept: whether a result can be at all.

    Raises:
        QuantityError: hardly any result can be.
    """
    at = random.Random(seed)  # noqa: S311  # statistics, not secrets
    columns = [i.draws(draws, at) for i in inputs]
    found = sorted(map(model, *columns)) if columns else [model()] * draws
    kept = [y for y in found if accept(y)] if accept else found
    if len(kept) < draws // _PATIENCE:
        fault = "hardly any combination of the figures within their limits is possible"
        raise QuantityError("uncertainty", "simulation", fault, "check the figures and limits")
    mean = math.fsum(kept) / len(kept)
    variance = math.fsum((y - mean) ** 2 for y in kept) / max(1, len(kept) - 1)
    low, high = _interval(kept)
    return Sample(
        mean=mean,
        uncertainty=math.sqrt(variance),
        low=low,
        high=high,
        draws=draws,
        seed=seed,
        refused=1 - len(kept) / draws,
    )


def _interval(found: Sequence[float]) -> tuple[float, float]:
    """The probabilistically symmetric interval of sorted results. Source: JCGM 101, 7.7."""
    inside = int(COVERAGE * len(found) + 0.5)
    below = (len(found) - inside) // 2
    return found[max(0, below - 1)], found[min(len(found) - 1, below + inside - 1)]


def tolerance(uncertainty: float, digits: int = DIGITS) -> float:
    """Half a unit in the last of the significant figures of an uncertainty. Source: JCGM 101, 7.9.2.

    >>> tolerance(2.0), round(tolerance(0.035, digits=2), 6)
    (0.05, 0.0005)
    """
    if uncertainty <= 0:
        return 0.0
    power = math.floor(math.log10(uncertainty)) - digits + 1
    if round(uncertainty / 10.0**power) >= 10**digits:
        power += 1
    return 0.5 * 10.0**power


def agrees(value: float, uncertainty: float, sample: Sample, factor: float = NORMAL_95) -> bool:
    """Whether the linear rule's 95 % interval stands up to the drawn one.

    Source: JCGM 101, 8.1.3: both ends differ by no more than the numerical tolerance. To it comes
    three times the standard error that so few draws leave in an end of the interval, about a
    twentieth of the uncertainty for 20,000 draws, lest chance decide.
    """
    tail = (1 - COVERAGE) / 2
    noise = uncertainty * math.sqrt(tail * (1 - tail) / sample.draws) / _DENSITY
    reach, near = factor * uncertainty, tolerance(uncertainty) + _SURE * noise
    return abs(value - reach - sample.low) <= near and abs(value + reach - sample.high) <= near
