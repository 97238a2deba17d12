"""Net weight and fine silver as sums over uncertain inputs, for the linear rule and for drawing.

The net weight is a constant and a sum of inputs, each times a figure; fine silver is a net weight
times a fineness, summed over the parts. Both ways to reckon start from the same terms, so they can
only differ where the linear rule fails.
"""

import math
from collections.abc import Sequence

import msgspec

from planish.metal.deductions import Deduction, Method
from planish.metal.montecarlo import Input, Shape
from planish.metal.stated import Stated, state
from planish.metal.weighing import Alloy, Weighing
from planish.quantity import Mass, Measured

_ZERO = Mass.of(0)


class Term(msgspec.Struct, frozen=True):
    """An input times a figure."""

    factor: float
    input: Input


class Net(msgspec.Struct, frozen=True):
    """A net weight [g]: a constant and terms; then times the fineness, where one is given."""

    constant: float
    terms: tuple[Term, ...]
    fineness: Input | None = None


class Sum(msgspec.Struct, frozen=True):
    """A sum of net weights, or of the fine silver in them [g]."""

    nets: tuple[Net, ...]
    measured: Measured

    def stated(self) -> Stated:
        """The sum with its 95 % interval, by the room's rule.

        Raises:
            QuantityError: the limits leave hardly any combination possible.
        """
        inputs: dict[str, Input] = {}
        for net in self.nets:
            for term in net.terms:
                inputs.setdefault(term.input.name, term.input)
            if net.fineness:
                inputs.setdefault(net.fineness.name, net.fineness)
        at = {name: n for n, name in enumerate(inputs)}
        plan = [
            (
                net.constant,
                tuple((term.factor, at[term.input.name]) for term in net.terms),
                at[net.fineness.name] if net.fineness else None,
            )
            for net in self.nets
        ]

        def model(*drawn: float) -> float:
            total = 0.0
            for constant, terms, fineness in plan:
                net = constant + sum(factor * drawn[n] for factor, n in terms)
                if net <= 0:  # a part that weighs nothing cannot be
                    return -1.0
                total += net if fineness is None else net * drawn[fineness] / 1000
            return total

        return state(self.measured, tuple(inputs.values()), model, floor=0.0)


def net_sum(weighing: Weighing, deductions: Sequence[Deduction], part: str = "") -> Sum:
    """The net weight: gross less all deductions.

    part: name of the part, which keeps its readings apart from those of others. The calibration of
    a balance bears the balance's name alone, so that it counts once for all that was weighed on it.
    """
    gross = weighing.gross
    lead = f"{part}, " if part else ""
    step = float(weighing.resolution.grams) if weighing.resolution else 0.0
    constant = float((gross - Mass.total(d.best for d in deductions)).grams)
    terms: list[Term] = []
    if step:
        terms.append(Term(1.0, _reading(f"{lead}step of the balance", step, weighing.readings)))
    if weighing.repeatability and weighing.repeatability.grams:
        spread = float(weighing.repeatability.grams) * math.sqrt(weighing.readings)
        name = f"{lead}repeatability of the balance"
        terms.append(Term(1.0, Input(name=name, middle=0.0, spread=spread)))
    same_balance = _ZERO
    for n, deduction in enumerate(deductions, 1):
        found = _unsure(f"{lead}{n}: {deduction.what}", deduction, step, float(gross.grams))
        if found is not None:
            constant += found.middle
            terms.append(Term(-1.0, found))
        if _on_the_same_balance(deduction):
            same_balance += deduction.best
    if weighing.plus_minus and weighing.plus_minus.grams:
        scale = float(weighing.plus_minus / gross)
        name = f"calibration of {weighing.balance or 'the balance'}"
        load = float((gross - same_balance).grams)
        # one error for all that is weighed on that balance, in units of its own size
        terms.append(Term(load * scale, Input(name=name, middle=0.0, spread=1.0)))
    net = Net(constant, tuple(terms))
    return Sum((net,), _linear(net))


def fine_sum(nets: Sequence[Sum], alloys: Sequence[Alloy], parts: Sequence[str] = ()) -> Sum:
    """The fine silver in net weights, each with its alloy.

    parts: names that keep the finenesses apart; without them all share one.
    """
    names = [f"{part}, fineness" for part in parts] or ["fineness"] * len(alloys)
    found = []
    for sum_, alloy, name in zip(nets, alloys, names, strict=True):
        fineness = Input(
            name=name,
            middle=float(alloy.fineness.permille),
            spread=float(alloy.plus_minus),
            low=0.0,
            high=1000.0,
        )
        found += [msgspec.structs.replace(net, fineness=fineness) for net in sum_.nets]
    return _added(tuple(found))


def together(nets: Sequence[Sum]) -> Sum:
    """The net weight of several parts."""
    return _added(tuple(net for one in nets for net in one.nets))


def _added(nets: tuple[Net, ...]) -> Sum:
    return Sum(nets, sum((_linear(net) for net in nets), Measured(0.0)))


def _on_the_same_balance(deduction: Deduction) -> bool:
    """Whether it was weighed as the piece was: no uncertainty of its own is given."""
    weighed = deduction.method is Method.WEIGHED and deduction.mass is not None
    return weighed and deduction.plus_minus is None


def _reading(name: str, step: float, readings: int) -> Input:
    """The step of a display: a rectangle for one reading, nearly normal for a sum of several."""
    if readings == 1:
        return Input(name=name, middle=0.0, spread=step / 2, shape=Shape.RECTANGULAR)
    return Input(name=name, middle=0.0, spread=step * math.sqrt(readings / 12))


def _unsure(name: str, deduction: Deduction, step: float, gross: float) -> Input | None:
    """A deduction as an input; None where it has no uncertainty."""
    best = float(deduction.best.grams)
    if deduction.low is not None and deduction.high is not None:
        half = float((deduction.high - deduction.low).grams) / 2
        if not half:
            return None
        shape = Shape.RECTANGULAR
        return Input(name=name, middle=best, spread=half, shape=shape, low=0.0, high=gross)
    if deduction.plus_minus is not None and deduction.plus_minus.grams:
        spread = float(deduction.plus_minus.grams)
        return Input(name=name, middle=best, spread=spread, low=0.0, high=gross)
    if _on_the_same_balance(deduction) and best and step:
        shape = Shape.RECTANGULAR
        return Input(name=name, middle=best, spread=step / 2, shape=shape)
    return None


def _linear(net: Net) -> Measured:
    """By the linear rule."""
    found = Measured(net.constant)
    for term in net.terms:
        middle = term.input.middle
        one = Measured.with_parts(middle, {term.input.name: term.input.uncertainty})
        found += one * term.factor
    if net.fineness is None:
        return found
    unsure = {net.fineness.name: net.fineness.spread} if net.fineness.spread else {}
    return found * Measured.with_parts(net.fineness.middle, unsure) / 1000
