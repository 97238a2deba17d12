"""A result as it is stated: figure, standard uncertainty, 95 % interval, and by which rule.

The rule, everywhere in this room: the linear rule of the GUM is used unless something speaks against
it. What may: a relative standard uncertainty above 10 %; an input known by its limits only that bears
more than 30 % of the variance, where the result is less sure than 1 %; a bound (nothing weighs less
than nought) within reach. Then the inputs are
drawn 20,000 times, and the linear interval stands only if it agrees with the drawn one (JCGM 101,
clause 8). The limits of 10 % and 30 % are judgments; they only decide what is checked.
"""

import math
from collections.abc import Callable, Sequence
from enum import StrEnum

import msgspec

from planish.metal.montecarlo import (
    SEED,
    Input,
    Sample,
    Shape,
    agrees,
    coverage_factor,
    simulate,
)
from planish.quantity import Component, Measured

#: relative standard uncertainty, and share of the variance, above which the linear rule is checked
LOOSE, MUCH = 0.10, 0.30
#: relative standard uncertainty below which the shape of an input does not matter
SMALL = 0.01
#: a share of the variance below which a bound of an input does not matter
_LITTLE = 0.01


class Rule(StrEnum):
    """How an interval was found."""

    LINEAR = "linear"
    CHECKED = "linear, checked by simulation"
    SIMULATED = "simulated"


class Stated(msgspec.Struct, frozen=True, kw_only=True):
    """A figure that may be printed.

    value, uncertainty: best value and standard uncertainty.
    low, high: 95 % coverage interval.
    rule, because: which rule gave it, and why.
    budget: shares of the variance, by the linear rule.
    sample: what the draws said, where they were made.
    """

    value: float
    uncertainty: float
    low: float
    high: float
    rule: Rule
    because: str
    budget: tuple[Component, ...] = ()
    sample: Sample | None = None

    def times(self, factor: float) -> "Stated":
        """The same in another unit, or multiplied by an exact figure above zero."""
        sample = self.sample and msgspec.structs.replace(
            self.sample,
            mean=self.sample.mean * factor,
            uncertainty=self.sample.uncertainty * factor,
            low=self.sample.low * factor,
            high=self.sample.high * factor,
        )
        return Stated(
            value=self.value * factor,
            uncertainty=self.uncertainty * factor,
            low=self.low * factor,
            high=self.high * factor,
            rule=self.rule,
            because=self.because,
            budget=tuple(Component(c.name, c.uncertainty * factor, c.share) for c in self.budget),
            sample=sample,
        )


def doubts(measured: Measured, inputs: Sequence[Input], floor: float | None) -> tuple[str, ...]:
    """What speaks against the linear rule for a result; nothing where nothing does.

    floor: a value that the result cannot fall below.
    """
    shares = {c.name: c.share for c in measured.budget()}
    found = []
    if measured.relative > LOOSE:
        found.append(f"its standard uncertainty is {100 * measured.relative:.0f} % of it")
    for one in inputs:
        share = shares.get(one.name, 0.0)
        by_limits = one.shape is Shape.RECTANGULAR and share > MUCH
        if by_limits and measured.relative > SMALL:
            found.append(f"'{one.name}' is known by its limits only")
        if share > _LITTLE and one.near_bound:
            found.append(f"'{one.name}' comes near a bound")
    if floor is not None and measured.value - 3 * measured.uncertainty < floor:
        found.append("it comes near nought")
    return tuple(found)


def linear(model: Callable[..., float], inputs: Sequence[Input]) -> Measured:
    """A result by the linear rule, slopes by central difference (GUM 5.1.3, note 2)."""
    middles = [i.middle for i in inputs]
    parts = []
    for n, one in enumerate(inputs):
        u = one.uncertainty
        if not u:
            continue
        up, down = list(middles), list(middles)
        up[n], down[n] = up[n] + u / 2, down[n] - u / 2
        parts.append((one.name, model(*up) - model(*down)))
    return Measured(model(*middles), tuple(sorted(parts)))


def effective_freedom(measured: Measured, inputs: Sequence[Input]) -> float:
    """Effective degrees of freedom. Source: Welch and Satterthwaite, GUM equation G.2b."""
    by = {i.name: i.freedom for i in inputs if i.freedom < math.inf}
    below = sum(u**4 / by[name] for name, u in measured.parts if name in by)
    return measured.uncertainty**4 / below if below else math.inf


def state(
    measured: Measured,
    inputs: Sequence[Input],
    model: Callable[..., float],
    *,
    floor: float | None = None,
    freedom: float = math.inf,
    seed: int = SEED,
) -> Stated:
    """State a result by the rule above.

    measured: the linear result. inputs, model: the same as distributions and as a function of them.
    freedom: effective degrees of freedom of the linear result.

    Raises:
        QuantityError: hardly any combination of the inputs is possible.
    """
    value, u = measured.value, measured.uncertainty
    factor = coverage_factor(freedom)
    why = doubts(measured, inputs, floor)
    if not why or not u:
        because = "the uncertainty is small and nothing comes near a bound"
        return _linear(measured, factor, Rule.LINEAR, because)
    accept = None if floor is None else lambda y: y > floor
    sample = simulate(model, inputs, accept=accept, seed=seed)
    reasons = "; ".join(why)
    if agrees(value, u, sample, factor):
        because = f"{reasons}; {sample.draws:,} draws gave the same interval (JCGM 101, clause 8)"
        return _linear(measured, factor, Rule.CHECKED, because, sample)
    return Stated(
        value=sample.mean,
        uncertainty=sample.uncertainty,
        low=sample.low,
        high=sample.high,
        rule=Rule.SIMULATED,
        because=f"{reasons}; the linear interval differs (JCGM 101, clause 8)",
        budget=measured.budget(),
        sample=sample,
    )


def _linear(
    measured: Measured, factor: float, rule: Rule, because: str, sample: Sample | None = None
) -> Stated:
    reach = factor * measured.uncertainty
    return Stated(
        value=measured.value,
        uncertainty=measured.uncertainty,
        low=measured.value - reach,
        high=measured.value + reach,
        rule=rule,
        because=because,
        budget=measured.budget(),
        sample=sample,
    )
