"""A reading of the marks as the metal bench takes it: plain claims of kind and fineness."""

import re
from collections import defaultdict

from planish.marks import ReadingFinding
from planish.metal.composition_prior import Claim

#: words of a maker that own to a filling; they stand beside the word for silver
_FILLED = re.compile(
    r"\b(weighted|loaded|cement|reinforced|filled|gef[uü]llt|beschwert)\b", re.IGNORECASE
)
#: how far a mark of that kind is believed to belong to the whole piece (judgment)
_BELIEVED = 0.95


def claims_of(found: ReadingFinding) -> tuple[Claim, ...]:
    """What a reading says of kind and fineness; without marks, nothing.

    Readings of one kind and fineness count together; what they leave is ``unknown``.
    """
    if not found.observed.marks:
        return ()
    masses: dict[tuple[str, float | None], float] = defaultdict(float)
    for reading in found.readings:
        if reading.kind != "unknown":
            masses[reading.kind, reading.fineness] += reading.probability
    shown = " ".join(mark.text or "" for mark in found.observed.marks)
    if _FILLED.search(shown):
        fine = max(masses, key=lambda k: masses[k], default=("", None))[1]
        return (Claim(kind="filled", fineness=fine, probability=_BELIEVED),)
    total = sum(masses.values())
    scale = 1.0 / total if total > 1.0 else 1.0
    return tuple(
        Claim(kind=kind, fineness=fine, probability=p * scale)
        for (kind, fine), p in sorted(masses.items(), key=lambda item: -item[1])
    )
