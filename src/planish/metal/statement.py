"""The weight statement: gross, deductions, net, fine silver, each with its uncertainty.

Method: net = gross - deductions; fine = net x fineness / 1000. Uncertainty by the first-order rule
of JCGM 100:2008 (GUM), section 5: a balance reads to its step (rectangular), limits are
rectangular, everything else as stated. A mark alone is no proof of fineness.
"""

from decimal import Decimal

import msgspec

from planish.metal.deductions import Ask, Deduction, Method, asks_for
from planish.metal.lines import Line, shown
from planish.quantity import Fineness, Mass, Measured, QuantityError

GRAMS_PER_OZT = Mass.of(1, "ozt").grams

_LOOSE = 0.10  # a net weight less sure than this (one standard uncertainty) is said aloud


class Weighing(msgspec.Struct, frozen=True, kw_only=True):
    """What the balance showed.

    gross: the reading, all parts together.
    resolution: step of the display.
    plus_minus: standard uncertainty of the balance beyond its step, as calibrated.
    balance: which, and how it was checked.
    """

    gross: Mass
    resolution: Mass | None = None
    plus_minus: Mass | None = None
    balance: str = ""

    def __post_init__(self) -> None:
        if self.gross.grams <= 0:
            fault = "a piece weighs more than nothing"
            raise QuantityError("weight", self.gross, fault, "weigh again")


class Alloy(msgspec.Struct, frozen=True, kw_only=True):
    """The fineness to reckon with.

    fineness: silver in parts per thousand.
    plus_minus: its standard uncertainty [‰].
    basis: mark, test, or both.
    """

    fineness: Fineness
    plus_minus: Decimal = Decimal(0)
    basis: str = ""


class WeightStatement(msgspec.Struct, frozen=True, kw_only=True):
    """The result. While something is asked, net and fine are None: gross weight misleads.

    net, fine: best figures, exact. net_measured, fine_measured: the same [g] with their budgets.
    lines: each works out from those above it.
    """

    piece: str
    weighing: Weighing
    deductions: tuple[Deduction, ...]
    alloy: Alloy | None
    net: Mass | None
    net_measured: Measured | None
    fine: Mass | None
    fine_measured: Measured | None
    lines: tuple[Line, ...]
    asks: tuple[Ask, ...]
    notes: tuple[str, ...]

    @property
    def gross(self) -> Mass:
        """The reading of the balance."""
        return self.weighing.gross


def weigh(
    piece: str,
    weighing: Weighing,
    *,
    words: str = "",
    deductions: tuple[Deduction, ...] = (),
    alloy: Alloy | None = None,
    plated: bool = False,
) -> WeightStatement:
    """The weight statement of a piece.

    words: form, marks and materials in any words; they decide which deductions are due.
    plated: silver over another metal; then no fine silver is stated.

    Raises:
        QuantityError: more comes off than was weighed.
    """
    gross = weighing.gross
    off = Mass.total(d.best for d in deductions)
    if off >= gross:
        fault = f"the deductions ({off.written(places=2)}) leave nothing of the gross weight"
        raise QuantityError("weight", gross.written(), fault, "check the units and figures")
    asks = asks_for(f"{piece} {words}", deductions)
    lines = [_gross_line(weighing), *(_deduction_line(d) for d in deductions)]
    notes = list(_deduction_notes(gross, deductions))
    net = fine = None
    net_measured = fine_measured = None
    if plated:
        notes.append(
            "plated: the layer of silver has practically no value as metal (common practice)"
        )
    elif not asks:
        net = gross - off
        net_measured = _net_measured(weighing, deductions)
        lines.append(_net_line(net, gross, deductions))
        if net_measured.relative > _LOOSE:
            share = round(100 * net_measured.relative)
            notes.append(
                f"the standard uncertainty of the net weight is {share} % of it: empty and weigh"
                " what is joined"
            )
        if alloy:
            fine = net * alloy.fineness.share
            unsure = {"fineness": alloy.plus_minus} if alloy.plus_minus else {}
            content = Measured.with_parts(alloy.fineness.permille, unsure)
            fine_measured = net_measured * content / 1000
            lines += _fine_lines(net, fine, alloy)
            notes += _alloy_notes(alloy)
        else:
            notes.append("no fineness is given, so fine silver is not stated")
    return WeightStatement(
        piece=piece,
        weighing=weighing,
        deductions=deductions,
        alloy=alloy,
        net=net,
        net_measured=net_measured,
        fine=fine,
        fine_measured=fine_measured,
        lines=tuple(lines),
        asks=asks,
        notes=tuple(notes),
    )


def _gross_line(weighing: Weighing) -> Line:
    step = f"read to {weighing.resolution.written()}" if weighing.resolution else ""
    note = "; ".join(word for word in (weighing.balance, step) if word)
    return Line(label="gross weight", figure=weighing.gross.grams, unit="g", note=note)


def _deduction_line(deduction: Deduction) -> Line:
    formula = ""
    if deduction.low is not None and deduction.high is not None:
        formula = f"({shown(deduction.low.grams)} + {shown(deduction.high.grams)}) / 2"
    return Line(
        label=f"less {deduction.what}",
        figure=deduction.best.grams,
        unit="g",
        formula=formula,
        note=f"{deduction.method.value}: {deduction.source}",
    )


def _net_line(net: Mass, gross: Mass, deductions: tuple[Deduction, ...]) -> Line:
    parts = [shown(m.grams) for m in (gross, *(d.best for d in deductions))]
    return Line(label="net weight", figure=net.grams, unit="g", formula=" - ".join(parts))


def _fine_lines(net: Mass, fine: Mass, alloy: Alloy) -> list[Line]:
    permille = shown(alloy.fineness.permille)
    formula = f"{shown(net.grams)} × {permille} / 1000"
    return [
        Line(label="fine silver", figure=fine.grams, unit="g", formula=formula, note=alloy.basis),
        Line(
            label="fine silver",
            figure=fine.to("ozt"),
            unit="ozt",
            formula=f"{formula} / {shown(GRAMS_PER_OZT)}",
        ),
    ]


def _net_measured(weighing: Weighing, deductions: tuple[Deduction, ...]) -> Measured:
    step = weighing.resolution.grams if weighing.resolution else Decimal(0)
    net = Measured.read_off(weighing.gross.grams, step, "step of the balance")
    if weighing.plus_minus:
        net += Measured.of(0, balance=weighing.plus_minus.grams)
    for n, deduction in enumerate(deductions, 1):
        name = f"{n}: {deduction.what}"
        if deduction.low is not None and deduction.high is not None:
            net -= Measured.between(deduction.low.grams, deduction.high.grams, name)
        elif deduction.plus_minus is not None:
            size = {name: deduction.plus_minus.grams}
            net -= Measured.with_parts(deduction.best.grams, size)
        elif deduction.method is Method.WEIGHED and deduction.best.grams:
            net -= Measured.read_off(deduction.best.grams, step, name)
        else:
            net -= deduction.best.grams
    return net


def _deduction_notes(gross: Mass, deductions: tuple[Deduction, ...]) -> list[str]:
    notes = []
    for deduction in deductions:
        if deduction.method is Method.RULE_OF_THUMB:
            notes.append(f"'{deduction.what}' is an estimate until it is taken out and weighed")
        known = deduction.plus_minus or deduction.low or deduction.method is Method.WEIGHED
        if not known and deduction.best.grams:
            notes.append(
                f"'{deduction.what}' has no stated uncertainty: the net looks surer than it is"
            )
        if deduction.high is not None and deduction.high > gross:
            notes.append(f"the upper limit of '{deduction.what}' is above the gross weight")
    return notes


def _alloy_notes(alloy: Alloy) -> list[str]:
    notes = [
        "solder and repairs lower the yield below the fineness (from memory: 1 to 3 % by weight)"
    ]
    if not alloy.plus_minus:
        notes.append("the fineness is taken as exact")
    if not alloy.basis or ("mark" in alloy.basis.lower() and "test" not in alloy.basis.lower()):
        notes.append("a mark alone is no proof of fineness: test where much depends on it")
    return notes
