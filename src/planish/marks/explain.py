"""The ledger: how each mark, and each mark not seen, moves each reading.

The likelihood of a reading is the prior-weighted mean over its years. It is split into steps: the
marks join one by one, in an order that does not depend on how they were entered, then the absence
of each expected mark is counted. Each step is a line; the lines multiply out to the whole.
"""

import math
from collections.abc import Sequence

from planish.evidence import Hypothesis, Ledger, LedgerLine, decibans, log_sum_exp
from planish.library.rows import Form
from planish.marks.cells import FORM_AT_LARGE, UNKNOWN_WEIGHT, Scorer
from planish.marks.forms import FormCurve
from planish.marks.placement import NOWHERE
from planish.marks.plan import Segment
from planish.marks.seen import Seen
from planish.marks.spans import Span

_LEAST = -700.0
#: absences that move all readings alike within this [dB] share one line
_ALIKE = 0.2
#: roles whose absence gets a line of its own
_NAMED = frozenset(
    [
        "standard",
        "town",
        "date",
        "sponsor",
        "maker",
        "duty",
        "import",
        "fineness",
        "assay-master",
        "plate-quality",
    ]
)
#: the hypothesis that the marks belong to no system here: every line is worth 0 dB to it, so a
#: line's decibans for a reading are its weight against chance marks
NONE = "none"


def _parts(span: Span) -> list[tuple[Segment, int, int]]:
    """The span's years by segment."""
    parts = [
        (g, max(g.year_from, span.year_from), min(g.year_to, span.year_to)) for g in span.segments
    ]
    return [(g, low, high) for g, low, high in parts if low <= high]


def mean_log(scorer: Scorer, span: Span, include: Sequence[int], enforce: frozenset[str]) -> float:
    """Log of the mean likelihood ratio over the span's years, weighted by prior and form."""
    values: list[float] = []
    priors: list[float] = []
    for segment, low, high in _parts(span):
        for run in scorer.score(segment, low, high, include, enforce):
            weight = math.log(segment.mass(run.year_from, run.year_to))
            weight += scorer.form.at(run.year_from, segment.system.country)
            priors.append(weight)
            values.append(run.value + weight)
    return max(_LEAST, log_sum_exp(values) - log_sum_exp(priors))


def prior_weight(span: Span) -> float:
    """Prior weight of the span: the sum over its years."""
    return math.fsum(g.mass(low, high) for g, low, high in _parts(span))


def shown(seen: Seen) -> str:
    """A mark in words, as observed."""
    mark = seen.mark
    what = mark.device or (mark.text or "a mark not read")
    extra = [
        x
        for x in (
            mark.style.value if mark.style else "",
            mark.case.value if mark.case else "",
            f"in {mark.outline}" if mark.outline else "",
            mark.legibility.value if mark.legibility and mark.legibility != "clear" else "",
        )
        if x
    ]
    quoted = what if mark.device or not mark.text else f'"{what}"'
    return quoted + (f" ({', '.join(extra)})" if extra else "")


_ROLE_WORDS = {
    "standard": "standard mark", "town": "town mark", "date": "date letter",
    "sponsor": "sponsor's mark", "maker": "maker's mark", "duty": "duty mark",
    "fineness": "fineness mark", "assay-master": "assay master's mark", "import": "import mark",
}  # fmt: skip


def role_words(role: str) -> str:
    """A role as people say it."""
    return _ROLE_WORDS.get(role, role.replace("-", " ") + " mark")


def ledger(
    scorer: Scorer,
    top: Sequence[Span],
    labels: Sequence[str],
    unknown: float,
) -> tuple[tuple[Hypothesis, ...], Ledger]:
    """Hypotheses with priors and the lines that lead from priors to probabilities."""
    seen = scorer.marks.seen
    order = sorted(range(len(seen)), key=lambda i: (-_weight(scorer, i), seen[i].key))
    all_roles = {e.role for s in top for g in s.segments for e in g.expected}
    roles = [*sorted(all_roles & _NAMED), ""]
    before = dict.fromkeys((s.key for s in top), 0.0)
    lines: list[LedgerLine] = []
    if scorer.form.row:
        lines.append(_form_line(scorer.form, scorer.form.row, top))
    if scorer.form.placed is not NOWHERE:
        lines.append(_place_line(scorer.form, top))
    nothing: frozenset[str] = frozenset()
    for count, i in enumerate(order, 1):
        now = {s.key: mean_log(scorer, s, order[:count], nothing) for s in top}
        lines.append(
            LedgerLine(
                key=f"mark:{i}",
                observed=shown(seen[i]),
                because=_because(scorer, i, top[0]) if top else "",
                likelihood_db={**{k: decibans(now[k] - before[k]) for k in now}, NONE: 0.0},
                sources=_sources(scorer, i, top[0]) if top else (),
            )
        )
        before = now
    enforced: set[str] = set()
    rest = dict.fromkeys(before, 0.0)
    for role in roles:
        enforced |= {role} if role else all_roles
        now = {s.key: mean_log(scorer, s, order, frozenset(enforced)) for s in top}
        moved = {k: decibans(now[k] - before[k]) for k in now}
        before = now
        if not role or max(moved.values()) - min(moved.values()) <= _ALIKE:
            rest = {k: rest[k] + moved[k] for k in rest}
            continue
        lines.append(
            LedgerLine(
                key=f"absent:{role}",
                observed=f"{role_words(role)}: seen or not",
                because="an expected mark that was not seen counts against",
                likelihood_db={**moved, NONE: 0.0},
                sources=("practice",),
            )
        )
    lines.append(
        LedgerLine(
            key="absent:rest",
            observed="other marks of a set: seen or not",
            because="expected marks that were not seen count against",
            likelihood_db={**rest, NONE: 0.0},
            sources=("practice",),
        )
    )
    hypotheses = tuple(
        Hypothesis(key=s.key, label=label, probability=s.probability, prior=prior_weight(s))
        for s, label in zip(top, labels, strict=True)
    )
    none = Hypothesis(
        key=NONE,
        label="marks of no system in the library, or none at all",
        probability=unknown,
        prior=UNKNOWN_WEIGHT,
    )
    return (*hypotheses, none), Ledger(tuple(lines))


def _form_line(form: FormCurve, row: Form, top: Sequence[Span]) -> LedgerLine:
    """The form's years: the mean over each span's years of its chance."""
    weights: dict[str, float] = {NONE: decibans(FORM_AT_LARGE)}
    for span in top:
        years = [(g, y) for g, low, high in _parts(span) for y in range(low, high + 1)]
        mean = log_sum_exp(
            math.log(g.prior(y)) + form.form_at(y, g.system.country) for g, y in years
        )
        mean -= math.log(prior_weight(span))
        weights[span.key] = decibans(mean)
    return LedgerLine(
        key="form",
        observed=f"form: {row.words.split(';')[0]}",
        because=f"in use about {row.year_from}-{row.year_to}",
        likelihood_db=weights,
        sources=row.sources,
    )


def _place_line(form: FormCurve, top: Sequence[Span]) -> LedgerLine:
    """The places of the marks: what they add to the form, over each span's years."""
    weights: dict[str, float] = {NONE: 0.0}
    for span in top:
        years = [(g, y) for g, low, high in _parts(span) for y in range(low, high + 1)]
        priors = [math.log(g.prior(y)) + form.form_at(y, g.system.country) for g, y in years]
        both = [math.log(g.prior(y)) + form.at(y, g.system.country) for g, y in years]
        weights[span.key] = decibans(log_sum_exp(both) - log_sum_exp(priors))
    return LedgerLine(
        key="places",
        observed=f"marked on: {form.placed.told}",
        because="where such pieces were marked changed with time",
        likelihood_db=weights,
        sources=tuple(dict.fromkeys(s for row in form.placed.rows for s in row.sources)),
    )


def _weight(scorer: Scorer, i: int) -> float:
    """How telling a mark is anywhere, for a stable order."""
    form = scorer.marks.seen[i].form
    rank = {"device": 5, "word": 6, "letter": 3, "figures": 2, "initials": 1, "name": 1}
    return rank.get(form, 0)


def _best_role(scorer: Scorer, i: int, span: Span) -> tuple[str, float, tuple[str, ...]]:
    best: tuple[str, float, tuple[str, ...]] = ("stray", scorer.marks.stray(i), ())
    year = span.best_year
    for segment in span.segments:
        if not segment.year_from <= year <= segment.year_to:
            continue
        for expected in segment.expected:
            p = scorer.marks.role(i, expected, segment, year) * expected.presence
            if p > best[1]:
                ways = sorted(
                    expected.ways,
                    key=lambda w: -w.share * scorer.marks.way(i, w, segment, year),
                )
                sources = ways[0].sources if ways else expected.sources
                if ways and ways[0].kind == "cycle" and segment.office:
                    letter = scorer.marks.plan.letter_of(segment.office.id, year)
                    if letter:
                        sources = scorer.marks.plan.cycles[letter.cycle].sources
                best = (expected.role, p, sources)
    return best


def _because(scorer: Scorer, i: int, span: Span) -> str:
    role, _, _ = _best_role(scorer, i, span)
    return (
        "explained by no role of the first reading" if role == "stray" else f"as {role_words(role)}"
    )


def _sources(scorer: Scorer, i: int, span: Span) -> tuple[str, ...]:
    return _best_role(scorer, i, span)[2]
