"""The weight statement: gross, deductions, net, fine silver, each with its uncertainty.

Method: net = gross - deductions; fine = net x fineness / 1000. Uncertainty by the first-order rule
of JCGM 100:2008 (GUM), section 5: a balance reads to its step (rectangular), limits are
rectangular, everything else as stated; ``stated`` says when the figures are drawn instead. A mark
alone is no proof of fineness.
"""

from functools import lru_cache

import msgspec

from planish.metal.deductions import Ask, Deduction, Method, asks_for
from planish.metal.lines import Line, shown
from planish.metal.netting import Sum, fine_sum, net_sum
from planish.metal.stated import Stated
from planish.metal.weighing import Alloy, Weighing
from planish.quantity import Mass, Measured, QuantityError

__all__ = ["GRAMS_PER_OZT", "Alloy", "Weighing", "WeightStatement", "weigh"]

GRAMS_PER_OZT = Mass.of(1, "ozt").grams

_LOOSE = 0.10  # a net weight less sure than this (one standard uncertainty) is said aloud


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

    @property
    def net_stated(self) -> Stated | None:
        """The net weight with its 95 % interval [g], and by which rule."""
        return _net_stated(self.weighing, self.deductions) if self.net is not None else None

    @property
    def fine_stated(self) -> Stated | None:
        """The fine silver with its 95 % interval [g], and by which rule."""
        if self.fine is None or self.alloy is None:
            return None
        return _fine_stated(self.weighing, self.deductions, self.alloy)


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
    net_total: Sum | None = None
    fine_total: Sum | None = None
    if plated:
        notes.append(
            "plated: the layer of silver has practically no value as metal (common practice)"
        )
    elif not asks:
        net = gross - off
        net_total = net_sum(weighing, deductions)
        lines.append(_net_line(net, gross, deductions))
        if net_total.measured.relative > _LOOSE:
            share = round(100 * net_total.measured.relative)
            notes.append(
                f"the standard uncertainty of the net weight is {share} % of it: empty and weigh"
                " what is joined"
            )
        if alloy:
            fine = net * alloy.fineness.share
            fine_total = fine_sum((net_total,), (alloy,))
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
        net_measured=net_total.measured if net_total else None,
        fine=fine,
        fine_measured=fine_total.measured if fine_total else None,
        lines=tuple(lines),
        asks=asks,
        notes=tuple(notes),
    )


@lru_cache(maxsize=256)
def _net_stated(weighing: Weighing, deductions: tuple[Deduction, ...]) -> Stated:
    return net_sum(weighing, deductions).stated()


@lru_cache(maxsize=256)
def _fine_stated(weighing: Weighing, deductions: tuple[Deduction, ...], alloy: Alloy) -> Stated:
    return fine_sum((net_sum(weighing, deductions),), (alloy,)).stated()


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


def _deduction_notes(gross: Mass, deductions: tuple[Deduction, ...]) -> list[str]:
    notes = []
    for deduction in deductions:
        if deduction.method is Method.RULE_OF_THUMB and deduction.best.grams:
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
