"""Contradictions of a composition: marks against tests, and tests against each other.

Two rules, both on what each test says alone, to one who knows nothing else:

*marks-against-test*: marks say with better odds than one that the piece is of some composition, and a
test speaks against that composition and for others by 10 dB or more ("strong").
*surface-against-core* (or *tests-disagree*): one test alone makes silver of one kind likelier than it
was, another makes it unlikely by 10 dB or more, and the first is not merely weak. A test of the
surface and one of the core disagree when a piece is plated: that is told with the contradiction.
"""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from math import log10

from planish.evidence import Contradiction, LedgerLine
from planish.library.rows import Composition, MetalTest
from planish.metal.composition_prior import Claim
from planish.metal.testlog import Entry

#: "strong" in the words of the ledger [dB]
_STRONG = 10.0
#: a surface test rarely speaks for silver by more than some dB: it is common [dB]
_SOME = 3.0
_SURFACE = frozenset({"surface", "streak", "xrf-beside"})

Told = tuple[Entry, LedgerLine, Sequence[float]]


def conflicts(
    compositions: Sequence[Composition],
    claims: Iterable[Claim],
    told: Sequence[Told],
    tests: Mapping[str, MetalTest],
) -> tuple[Contradiction, ...]:
    """All contradictions, marks first."""
    claimed = _claimed(claims)
    found = list(_marks(compositions, claimed, told)) if claimed else []
    found += _between(compositions, told, tests)
    return tuple(found)


def _claimed(claims: Iterable[Claim]) -> tuple[str, float | None] | None:
    """What the marks say with better odds than one: the kind, and the fineness where told."""
    kinds: dict[str, float] = defaultdict(float)
    finenesses: dict[float, float] = defaultdict(float)
    for claim in claims:
        if claim.kind != "unknown":
            kinds[claim.kind] += claim.probability
        if claim.fineness is not None:
            finenesses[claim.fineness] += claim.probability
    if not kinds:
        return None
    kind = max(kinds, key=lambda k: kinds[k])
    if kinds[kind] <= 0.5:
        return None
    fine = max(finenesses, key=lambda f: finenesses[f], default=None)
    return kind, fine if fine is not None and finenesses[fine] > 0.5 else None


def _agrees(row: Composition, claimed: tuple[str, float | None]) -> bool:
    """Whether a composition is what the marks say, or near enough that they need not be false."""
    kind, fine = claimed
    if kind in ("solid", "filled"):
        if row.kind not in ("solid", "filled"):
            return False
        return (
            fine is None
            or row.low is None
            or row.high is None
            or row.low - 6 <= fine <= row.high + 6
        )
    return row.kind in (("plated",) if kind == "plated" else ("base", "plated"))


def _ratio(
    rows: Sequence[Composition],
    chances: Sequence[float],
    inside: Sequence[bool],
    shares: Mapping[str, float],
) -> tuple[float, str]:
    """Decibans for those inside against those outside by their shares; the best one outside."""
    sums = {True: [0.0, 0.0], False: [0.0, 0.0]}
    for row, p, within in zip(rows, chances, inside, strict=True):
        sums[within][0] += shares[row.id] * p
        sums[within][1] += shares[row.id]
    if not sums[True][1] or not sums[False][1]:
        return 0.0, ""
    outside = [
        (shares[r.id] * p, r.label) for r, p, w in zip(rows, chances, inside, strict=True) if not w
    ]
    ratio = (sums[True][0] / sums[True][1]) / (sums[False][0] / sums[False][1])
    return 10.0 * log10(max(ratio, 1e-30)), max(outside)[1]


def _marks(
    rows: Sequence[Composition],
    claimed: tuple[str, float | None],
    told: Sequence[Told],
) -> Iterable[Contradiction]:
    kind, fine = claimed
    words = {"solid": "silver", "filled": "filled silver", "plated": "plate", "base": "base metal"}[
        kind
    ]
    says = f"the marks say {words}" + (f" of {fine:g}" if fine else "")
    shares = {row.id: row.share for row in rows}
    # marks of silver on a filled piece are true of its skin, but what they promise is not there
    judged = [kind != "solid" or row.kind != "filled" for row in rows]
    rows = [row for row, j in zip(rows, judged, strict=True) if j]
    inside = [_agrees(row, claimed) for row in rows]
    for _, line, chances in told:
        alone = [p for p, j in zip(chances, judged, strict=True) if j]
        weight, other = _ratio(rows, alone, inside, shares)
        # one composition that the marks do not rule out may explain the test well enough
        best_in = max((p for p, w in zip(alone, inside, strict=True) if w), default=0.0)
        best_out = max((p for p, w in zip(alone, inside, strict=True) if not w), default=0.0)
        apart = 10.0 * log10(max(best_out, 1e-30) / max(best_in, 1e-30))
        if weight <= -_STRONG and apart >= _STRONG:
            against = f"{line.observed} speaks against that and for {other}"
            yield Contradiction(
                between=("marks", line.key),
                says=f"{says}; {against} ({-weight:.0f} dB)",
                rule="marks-against-test",
                sources=line.sources,
            )


def _between(
    rows: Sequence[Composition], told: Sequence[Told], tests: Mapping[str, MetalTest]
) -> list[Contradiction]:
    solid = [row.kind == "solid" for row in rows]
    shares = {row.id: row.share for row in rows}
    weighed = [(e, line, *_ratio(rows, alone, solid, shares)) for e, line, alone in told]
    best = [_best_solid(rows, alone) for _, _, alone in told]
    found: list[Contradiction] = []
    for (entry, line, weight, _), silver in zip(weighed, best, strict=True):
        if weight < _SOME:
            continue
        for other, against, counter, instead in weighed:
            if counter > -_STRONG or other.test == entry.test:
                continue
            surface = tests[entry.test].meets in _SURFACE
            core = tests[other.test].meets not in _SURFACE or other.where != "surface"
            plate = surface and core
            says = f"{line.observed} speaks for {silver}; {against.observed} speaks for {instead}"
            if plate:
                says += ": both hold only if the silver is a skin (plate)"
            found.append(
                Contradiction(
                    between=(line.key, against.key),
                    says=says,
                    rule="surface-against-core" if plate else "tests-disagree",
                    sources=tuple(dict.fromkeys((*line.sources, *against.sources))),
                )
            )
    return found


def _best_solid(rows: Sequence[Composition], alone: Sequence[float]) -> str:
    silver = [(p * r.share, r.label) for r, p in zip(rows, alone, strict=True) if r.kind == "solid"]
    return max(silver)[1]
