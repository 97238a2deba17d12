"""What no single history explains: marks against marks, and claims against marks."""

import math

from planish.evidence import Contradiction, percent
from planish.marks.explain import shown
from planish.marks.likelihood import Likelihood
from planish.marks.observation import Claim
from planish.marks.plan import Plan, Segment
from planish.marks.reading import Reading
from planish.marks.spans import Posterior

#: a mark is telling if some role anywhere fits it this well [likelihood ratio]
_TELLING = 60.0
_RULED_OUT = 0.02
_GRACE = 1


def unexplained(marks: Likelihood, best: Reading, plan: Plan) -> list[Contradiction]:
    """Telling marks that the best reading leaves stray."""
    found = []
    for assigned in best.assigned:
        if assigned.role != "stray" or assigned.probability < 0.5:
            continue
        at = assigned.mark
        seen = marks.seen[at]
        if seen.form not in ("device", "word"):
            continue
        ratio, segment, role, sources = _elsewhere(marks, at, plan)
        if segment is None or ratio < _TELLING:
            continue
        found.append(
            Contradiction(
                between=(shown(seen), best.label),
                says=f"{shown(seen)} has no place in this reading; it belongs to "
                f"{segment.system.label} as {role.replace('-', ' ')}: another history (added, "
                "transposed or imitated marks, or parts of two pieces) or a misread mark",
                rule="every mark of a set must fit one history",
                sources=sources,
            )
        )
    return found


def _elsewhere(
    marks: Likelihood, i: int, plan: Plan
) -> tuple[float, Segment | None, str, tuple[str, ...]]:
    """The role anywhere that a mark fits best."""
    content, ratio = max(
        ((c, r) for c, r in marks.contents(i).items() if plan.uses.get(c)),
        key=lambda cr: cr[1],
        default=(-1, 0.0),
    )
    coded = max(
        (
            (index, c, r)
            for index, codes in plan.codes.items()
            for c, r in marks.contents(i).items()
            if c in codes and r > ratio
        ),
        key=lambda found: found[2],
        default=None,
    )
    if coded:
        index, content, ratio = coded
        sources = plan.codes[index][content].sources
    elif content < 0:
        return 0.0, None, "", ()
    else:
        index, _ = max(plan.uses[content], key=lambda use: use[1])
        sources = next(w for w in plan.expected[index].ways if w.content == content).sources
    return ratio, plan.segment_of.get(index), plan.expected[index].role, sources


def claims_against(
    claims: tuple[Claim, ...], post: Posterior, best: Reading
) -> list[Contradiction]:
    """Claims of date that the marks rule out."""
    found = []
    total = math.fsum(c.probability for c in post.cells)
    for claim in claims:
        if claim.about != "date" or claim.year_from is None or total < 0.5:
            continue
        low, high = claim.year_from, claim.year_to or claim.year_from
        agree = math.fsum(c.share(low - _GRACE, high + _GRACE) for c in post.cells)
        if agree / total < _RULED_OUT:
            found.append(
                Contradiction(
                    between=(f"claim: {claim.says}", best.label),
                    says=f"the marks leave {percent(agree / total)} for {low}"
                    + (f"-{high}" if high != low else ""),
                    rule="a claim is kept apart from the marks and compared with them",
                    sources=best.sources,
                )
            )
    return found
