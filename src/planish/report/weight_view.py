"""The weight statement and the value of the metal, as printed."""

from decimal import Decimal

from planish.metal import MetalValue, WeightStatement
from planish.quantity import Component, Mass, Measured, Money
from planish.quantity.numbers import digits
from planish.report.view import Step, Weighed
from planish.report.words import day, grams, joined, ounces, pennyweights, share


def weighed(statement: WeightStatement) -> tuple[Weighed, ...]:
    """Gross at the top, what comes off, what stays, the silver in it."""
    weighing = statement.weighing
    places = _places(statement)
    budget = {c.name: c.uncertainty for c in _budget(statement.net_measured)}
    lines = [
        _line(
            "gross",
            "Gross weight, all parts together",
            weighing.gross,
            places,
            how=joined(
                weighing.balance,
                f"read to {weighing.resolution.written()}" if weighing.resolution else "",
                sep="; ",
            ),
            u=_of_balance(budget),
        )
    ]
    for n, off in enumerate(statement.deductions, 1):
        limits = (
            f"{grams(off.low, places)} to {grams(off.high, places)} g"
            if off.low is not None and off.high is not None
            else ""
        )
        lines.append(
            _line(
                "off",
                off.what,
                off.best,
                places,
                how=joined(str(off.method.value).replace("-", " "), limits, off.source),
                u=budget.get(f"{n}: {off.what}"),
            )
        )
    if statement.net is not None:
        u = statement.net_measured.uncertainty if statement.net_measured else None
        lines.append(_line("net", "Silver alloy", statement.net, places, u=u))
    if statement.fine is not None and statement.alloy is not None:
        alloy = statement.alloy
        doubt = f" ± {digits(alloy.plus_minus)}" if alloy.plus_minus else ""
        u = statement.fine_measured.uncertainty if statement.fine_measured else None
        lines.append(
            _line(
                "fine",
                f"Fine silver at {digits(alloy.fineness.permille)}{doubt} parts per thousand",
                statement.fine,
                places,
                how=alloy.basis,
                u=u,
            )
        )
    return tuple(lines)


def _budget(measured: Measured | None) -> tuple[Component, ...]:
    return measured.budget() if measured else ()


def _of_balance(budget: dict[str, float]) -> float | None:
    """Uncertainty of the reading itself: all components that belong to no deduction."""
    own = [u for name, u in budget.items() if not name[:1].isdigit()]
    return sum(u * u for u in own) ** 0.5 if own else None


def _places(statement: WeightStatement) -> int:
    """Decimals of a gram that the balance showed; one where it is not said."""
    step = statement.weighing.resolution
    shown = statement.weighing.gross.grams.normalize()
    if step is not None and step.grams > 0:
        shown = step.grams.normalize()
    exponent = shown.as_tuple().exponent
    return min(3, max(0 if step is not None else 1, -exponent if isinstance(exponent, int) else 1))


def _line(
    kind: str, what: str, mass: Mass, places: int, *, how: str = "", u: float | None = None
) -> Weighed:
    size = ""
    if u is not None and u > 0:
        # two figures of uncertainty at most (GUM 7.2.6)
        size = f"{u:.2g}" if u < 10 else f"{u:.0f}"
        size = f"{Decimal(size):f}"
    return Weighed(
        kind=kind,
        what=what,
        how=how,
        grams=grams(mass, places),
        plus_minus=size,
        ozt=ounces(mass),
        dwt=pennyweights(mass),
    )


def metal_steps(value: MetalValue, statement: WeightStatement) -> tuple[Step, ...]:
    """The metal's value written out, each figure following from those printed above it."""
    if value.value is None or statement.fine is None:
        return ()
    price, unit = value.price, value.price.per
    fine = statement.fine.to(unit)
    figure = f"{fine:.4f}" if unit != "g" else f"{fine:.2f}"
    steps = [
        Step(
            sign="",
            what="Fine silver",
            figure=f"{figure} {unit}",
            note=f"{grams(statement.fine, 2)} g" + _ounce(unit),
        ),
        Step(
            sign="×",
            what=f"Price of fine silver, per {unit}, {day(price.date.isoformat())}",
            figure=str(price.price),
            note=joined(price.source, price.quoted),
        ),
        Step(
            sign="=",
            what="Metal, in full",
            figure=str(value.value),
            kind="result",
            note=_formula(value),
        ),
    ]
    return (*steps, *_payout(value))


def _formula(value: MetalValue) -> str:
    """The reckoning in exact figures, as the bench states it."""
    return next((line.formula for line in value.lines if line.label == "metal value"), "")


def _ounce(unit: str) -> str:
    return "; 1 ozt = 31.1034768 g" if unit == "ozt" else ""


def _payout(value: MetalValue) -> list[Step]:
    if value.payable is None or value.value is None:
        return []
    steps: list[Step] = []
    paid: Money | None = None
    for line in value.lines:
        if line.label == "payout":
            paid = Money(line.figure, line.unit)
            part = paid / value.value
            steps.append(
                Step(
                    sign="×",
                    what="Share that a buyer of metal would pay",
                    figure=share(part),
                    note=line.note,
                )
            )
        elif paid is not None and line.label.startswith("less "):
            steps.append(
                Step(
                    sign="−",
                    what=line.label.removeprefix("less ").capitalize(),
                    figure=str(Money(line.figure, line.unit)),
                    note=line.note,
                )
            )
    steps.append(Step(sign="=", what="Metal, payable", figure=str(value.payable), kind="result"))
    return steps


def metal_notes(value: MetalValue) -> tuple[str, ...]:
    """Uncertainty of the figure, and the bench's warnings."""
    notes = list(value.warnings)
    if value.measured is not None and value.value is not None and value.measured.uncertainty:
        size = Money.of(round(value.measured.uncertainty, 2), value.value.currency)
        notes.insert(
            0,
            f"The figure in full is sure to ± {size} (one standard uncertainty of weight and"
            " fineness; the price is taken as exact).",
        )
    return tuple(notes)
