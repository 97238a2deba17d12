"""What the appraiser should look at again: where the benches and the appraiser do not agree."""

import math
import re
from collections.abc import Iterator

from planish.case.kinds import Belonging, ReadingKind, TestKind
from planish.case.model import Confirmed, Piece
from planish.evidence import percent
from planish.marks import Reading, ReadingFinding

#: a confirmed reading to which the engine gives less than this is told (judgment: one in ten)
UNLIKELY = 0.10
#: a test and a stated fineness that lie further apart than this many standard uncertainties
_FAR = 2.0
# materials that trade law restricts somewhere (CITES appendices and national ivory laws)
_RESTRICTED = re.compile(
    r"\b(ivory|tortoise-?shell|turtle ?shell|coral|whale ?bone|baleen|rhinoceros|rosewood|shagreen)\b",
    re.IGNORECASE,
)


def agreement(confirmed: Confirmed | None, finding: ReadingFinding) -> float | None:
    """Probability that the readings give to what was confirmed; None where there is nothing read."""
    if confirmed is None or not finding.observed.marks:
        return None
    return min(1.0, math.fsum(r.probability for r in finding.readings if _agrees(confirmed, r)))


def _agrees(confirmed: Confirmed, reading: Reading) -> bool:
    if _side(reading.kind) != _side(confirmed.kind.value):
        return False
    if confirmed.country and reading.country and confirmed.country != reading.country:
        return False
    if confirmed.office and reading.office and not _same(confirmed.office, reading.office):
        return False
    # an assay year begins in one calendar year and ends in the next
    low, high = confirmed.year_from, confirmed.year_to
    begins, ends = reading.year_from, reading.year_to
    after = low is not None and ends is not None and ends + 1 < low
    before = high is not None and begins is not None and begins > high
    return not (after or before)


def _side(kind: str) -> str:
    """Silver or not: the same words stand on bare and on silvered base metal."""
    return "base" if kind == ReadingKind.PLATED.value else kind


def _same(one: str, other: str) -> bool:
    a, b = one.casefold(), other.casefold()
    return a in b or b in a


def doubts(piece: Piece, finding: ReadingFinding, agreed: float | None) -> list[str]:
    """Warnings on one piece, in words."""
    return [
        *_of_reading(piece, finding, agreed),
        *_of_tests(piece),
        *_of_law(piece),
        *(
            f"part '{p.name}' is {p.belongs.value}: say so in the title"
            for p in piece.parts
            if p.belongs in (Belonging.REPLACED, Belonging.ASSOCIATED)
        ),
    ]


def _of_reading(piece: Piece, finding: ReadingFinding, agreed: float | None) -> Iterator[str]:
    best = finding.best
    if (
        piece.confirmed is not None
        and agreed is not None
        and agreed < UNLIKELY
        and best is not None
    ):
        yield (
            f"the confirmed reading ({piece.confirmed.kind.value}"
            + (f", {piece.confirmed.office}" if piece.confirmed.office else "")
            + f") has a probability of {percent(agreed)} by the marks; likeliest by the marks:"
            f" {best.kind}, {best.label} ({percent(best.probability)})"
        )
    for contradiction in finding.contradictions:
        yield f"contradiction: {contradiction.says}"
    if finding.observed.unread:
        yield f"not understood in the marks' text: {'; '.join(finding.observed.unread)}"
    if piece.confirmed is None and best is not None and finding.observed.marks:
        yield f"the reading is not confirmed; likeliest: {best.label} ({percent(best.probability)})"


def _of_tests(piece: Piece) -> Iterator[str]:
    stated = piece.weight.fineness if piece.weight else None
    if stated is None and piece.confirmed:
        stated = piece.confirmed.fineness
    for test in piece.tests:
        if test.fineness is not None and stated is not None:
            spread = math.hypot(test.plus_minus or 0.0, _spread(piece))
            if abs(test.fineness - stated) > _FAR * spread:
                yield (
                    f"the {test.kind.value} test gives {test.fineness:g} parts per thousand,"
                    f" {stated:g} is stated: say which holds, and why"
                )
        if test.kind is TestKind.TOUCH and test.consent is None:
            yield "a touch test leaves a trace and uses acid: record the owner's consent"


def _spread(piece: Piece) -> float:
    return (piece.weight.fineness_plus_minus or 0.0) if piece.weight else 0.0


def _of_law(piece: Piece) -> Iterator[str]:
    named = {w.casefold() for w in piece.restricted}
    found = {m.casefold() for m in _RESTRICTED.findall(piece.materials or "")}
    for material in sorted(named | found):
        yield (
            f"{material}: trade in it may be restricted or need papers; check the law of the place"
            " before any sale or journey"
        )
