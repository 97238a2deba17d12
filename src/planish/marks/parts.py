"""Marks by part: a lid, a body or a handle may each tell its own history."""

from itertools import combinations

import msgspec

from planish.evidence import Contradiction
from planish.marks.observation import Observed
from planish.marks.reading import PartReading

_SETTLED = 0.6
_APART = 3


def groups(observed: Observed) -> dict[str, Observed]:
    """The marks of each part, where more than one part bears marks; else empty.

    A mark with no part named belongs to the body.
    """
    names = {mark.part or "body" for mark in observed.marks}
    if len(names) < 2:
        return {}
    return {
        name: msgspec.structs.replace(
            observed,
            marks=tuple(m for m in observed.marks if (m.part or "body") == name),
            # a part seldom carries the whole set: part marking of lids and handles
            complete=0.6 * observed.complete,
            claims=(),
        )
        for name in sorted(names)
    }


def apart(parts: tuple[PartReading, ...]) -> list[Contradiction]:
    """Parts whose settled readings no single history explains."""
    settled = [p for p in parts if p.place >= _SETTLED and p.reading.kind != "unknown"]
    return [
        Contradiction(
            between=(f"{one.part}: {one.reading.label}", f"{other.part}: {other.reading.label}"),
            says=f"{one.part} and {other.part} read apart: {why}; parts of two pieces, a later "
            "replacement, or a misread mark",
            rule="parts made together carry marks of one history",
            sources=("practice",),
        )
        for one, other in combinations(settled, 2)
        if (why := _differ(one, other))
    ]


def _differ(one: PartReading, other: PartReading) -> str:
    """Why two parts do not belong to one history; blank if they may."""
    a, b = one.reading, other.reading
    if a.kind != b.kind:
        return f"{one.part} {a.kind}, {other.part} {b.kind}"
    if a.country and b.country and a.country != b.country:
        return f"marks of {a.system_label} and of {b.system_label}"
    if a.office and b.office and a.office != b.office:
        return f"{a.office} and {b.office}"
    if min(a.probability, b.probability) < _SETTLED:
        return ""
    if None in (a.year_from, a.year_to, b.year_from, b.year_to):
        return ""
    gap = max((a.year_from or 0) - (b.year_to or 0), (b.year_from or 0) - (a.year_to or 0))
    return f"{gap} years between them" if gap > _APART else ""
