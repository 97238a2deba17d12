"""The weight statement of a piece in parts: lid, base, blade, insert, each with its own weighing."""

from collections.abc import Iterator, Sequence
from functools import lru_cache

import msgspec

from planish.metal.deductions import Ask, Deduction, asks_for
from planish.metal.lines import Line, shown
from planish.metal.netting import Sum, fine_sum, net_sum, together
from planish.metal.stated import Stated
from planish.metal.statement import WeightStatement, weigh
from planish.metal.weighing import Alloy, Weighing
from planish.quantity import Mass, Measured, QuantityError

#: parts that were also weighed together must agree within so many standard uncertainties
_AGREE = 3.0


class Part(msgspec.Struct, frozen=True, kw_only=True):
    """A part as weighed.

    words: form, marks and materials of this part, which decide what deductions are due.
    plated: silver over another metal. other: it holds no silver: a blade, an insert, a liner.
    """

    name: str
    weighing: Weighing
    deductions: tuple[Deduction, ...] = ()
    alloy: Alloy | None = None
    words: str = ""
    plated: bool = False
    other: bool = False


class PieceStatement(msgspec.Struct, frozen=True, kw_only=True):
    """The parts and their sums. While a part is asked about, no sum of net or fine is stated.

    parts: a statement each, under the part's name. given: the parts as given.
    gross: of all parts. net, fine: of the parts that are of silver, exact.
    net_measured, fine_measured: the same [g]; one balance's calibration counts once.
    lines: the sums, each worked out from the parts'.
    """

    piece: str
    given: tuple[Part, ...]
    parts: tuple[WeightStatement, ...]
    gross: Mass
    net: Mass | None
    net_measured: Measured | None
    fine: Mass | None
    fine_measured: Measured | None
    lines: tuple[Line, ...]
    asks: tuple[Ask, ...]
    notes: tuple[str, ...]

    @property
    def alloy(self) -> Alloy | None:
        """The fineness that all parts of silver share; None where they differ."""
        alloys = {p.alloy for p in self.given if not p.other and not p.plated}
        return next(iter(alloys)) if len(alloys) == 1 else None

    @property
    def deductions(self) -> tuple[Deduction, ...]:
        """What comes off, over all parts."""
        return tuple(d for p in self.given for d in p.deductions)

    @property
    def net_stated(self) -> Stated | None:
        """The net weight with its 95 % interval [g], and by which rule."""
        return None if self.net is None else _stated(_silver(self.given), fine=False)

    @property
    def fine_stated(self) -> Stated | None:
        """The fine silver with its 95 % interval [g], and by which rule."""
        return None if self.fine is None else _stated(_silver(self.given), fine=True)


def weigh_parts(
    piece: str, parts: Sequence[Part], *, words: str = "", whole: Weighing | None = None
) -> PieceStatement:
    """The weight statement of a piece in parts.

    words: of the piece as a whole; a deduction that they make due may be given for any part, and is
    settled by a part that holds no silver (the blade weighed apart).
    whole: all parts weighed together, to check the sum with.

    Raises:
        QuantityError: no part, a name twice, or more comes off a part than it weighs.
    """
    given = tuple(parts)
    names = [p.name for p in given]
    if not given:
        raise QuantityError("parts", piece, "no part was weighed", "weigh at least one")
    for name in names:
        if names.count(name) > 1:
            fault = "two parts bear this name"
            raise QuantityError("part", name, fault, "name them apart, as 'left handle'")
    single = tuple(
        _other(p)
        if p.other
        else weigh(
            p.name,
            p.weighing,
            words=p.words,
            deductions=p.deductions,
            alloy=p.alloy,
            plated=p.plated,
        )
        for p in given
    )
    off = tuple(d for p in given for d in p.deductions)
    # what was taken apart and weighed by itself is settled
    due = () if any(p.other for p in given) else asks_for(f"{piece} {words}", off)
    asks = tuple(dict.fromkeys([*(a for s in single for a in s.asks), *due]))
    gross = Mass.total(p.weighing.gross for p in given)
    silver = _silver(given)
    stated = [s for s, p in zip(single, given, strict=True) if not p.other and not p.plated]
    notes = list(_notes(given, silver, whole))
    lines = [_line("gross weight", [p.weighing.gross for p in given], gross)]
    net = fine = None
    net_measured = fine_measured = None
    if silver and not asks and all(s.net is not None for s in stated):
        nets = [s.net for s in stated if s.net is not None]
        net = Mass.total(nets)
        net_measured = _nets(silver).measured
        lines.append(_line("net weight", nets, net))
        if all(s.fine is not None for s in stated):
            fines = [s.fine for s in stated if s.fine is not None]
            fine = Mass.total(fines)
            fine_measured = _fines(silver).measured
            lines += [_line("fine silver", fines, fine), _ounces(fine)]
        else:
            notes.append("a part has no fineness, so the fine silver of the whole is not stated")
    return PieceStatement(
        piece=piece,
        given=given,
        parts=single,
        gross=gross,
        net=net,
        net_measured=net_measured,
        fine=fine,
        fine_measured=fine_measured,
        lines=tuple(lines),
        asks=asks,
        notes=tuple(notes),
    )


def _other(part: Part) -> WeightStatement:
    """A part without silver: weighed, and nothing more."""
    bare = weigh("part", part.weighing, plated=True)
    return msgspec.structs.replace(
        bare, piece=part.name, notes=("this part holds no silver and counts for nothing",)
    )


def _silver(given: tuple[Part, ...]) -> tuple[Part, ...]:
    return tuple(p for p in given if not p.other and not p.plated)


def _nets(silver: tuple[Part, ...]) -> Sum:
    return together([net_sum(p.weighing, p.deductions, p.name) for p in silver])


def _fines(silver: tuple[Part, ...]) -> Sum:
    nets = [net_sum(p.weighing, p.deductions, p.name) for p in silver]
    alloys = [p.alloy for p in silver if p.alloy is not None]
    one = len(set(alloys)) == 1  # the same alloy, told by one mark or test: one error for all
    return fine_sum(nets, alloys, () if one else [p.name for p in silver])


@lru_cache(maxsize=64)
def _stated(silver: tuple[Part, ...], *, fine: bool) -> Stated:
    return (_fines(silver) if fine else _nets(silver)).stated()


def _line(label: str, masses: Sequence[Mass], sum_: Mass) -> Line:
    formula = " + ".join(shown(m.grams) for m in masses)
    return Line(label=label, figure=sum_.grams, unit="g", formula=formula)


def _ounces(fine: Mass) -> Line:
    formula = f"{shown(fine.grams)} / {shown(Mass.of(1, 'ozt').grams)}"
    return Line(label="fine silver", figure=fine.to("ozt"), unit="ozt", formula=formula)


def _notes(
    given: tuple[Part, ...], silver: tuple[Part, ...], whole: Weighing | None
) -> Iterator[str]:
    if not silver:
        yield "no part is of silver"
    if len({p.alloy.fineness for p in silver if p.alloy}) > 1:
        yield "the parts differ in fineness: look whether they began together"
    if whole is None:
        return
    apart = Mass.total(p.weighing.gross for p in given)
    sure = (
        sum((net_sum(p.weighing, (), p.name).measured for p in given), Measured(0.0))
        - net_sum(whole, (), "together").measured
    )
    if abs(sure.value) > max(_AGREE * sure.uncertainty, 0.0005):
        yield (
            f"the parts weigh {apart.written(places=2)} one by one, but {whole.gross.written(places=2)}"
            " together: weigh again, or name the part that is missing"
        )
