"""Marks, their reading and its ledger, as printed."""

import math

from planish.evidence import SETTLED, Finding, LedgerLine, decibans, in_words, likelihood_ratio
from planish.marks.explain import role_words, shown
from planish.marks.observation import Mark, Observed
from planish.marks.reading import Assigned, NextLook, Reading, ReadingFinding
from planish.marks.seen import Seen
from planish.report.citations import Citations
from planish.report.rows import mark_row
from planish.report.view import (
    Against,
    Evidence,
    LedgerView,
    Line,
    Look,
    MarkRow,
    ReadingView,
    Rival,
)
from planish.report.words import joined, likely, percent, sentence, signed

#: weight of evidence at the end of a ledger's bar [dB]; beyond it the bar is full
_FULL_BAR = 20.0
_RIVALS = 5
_MAKERS = 4
#: a maker less probable than this is not printed
_LEAST = 0.02
#: lines of marks not seen that move less than this are told together [dB]
_SLIGHTEST = 1.0

_KINDS = {"plated": "plated", "base": "base metal"}
_NOT_READ = "explained by no role of this reading"


def mark_rows(marks: tuple[Mark, ...], best: Reading | None) -> tuple[MarkRow, ...]:
    """Each mark drawn as seen, and what the likeliest reading takes it for."""
    taken = {a.shown: a for a in best.assigned} if best else {}
    return tuple(
        mark_row(str(n), mark, read_as=what, sure=sure)
        for n, mark in enumerate(marks, 1)
        for what, sure in (_read_as(mark, taken),)
    )


def _read_as(mark: Mark, taken: dict[str, Assigned]) -> tuple[str, str]:
    found = taken.get(shown(Seen(mark=mark, form="")))
    if found is None:
        return "", ""
    if found.role == "stray":
        return _NOT_READ, ""
    return role_words(found.role), likely(found.probability)


def searched(observed: Observed) -> tuple[Line, ...]:
    """Where marks were looked for, "nothing found" included."""
    return tuple(
        Line(
            label=s.place,
            value=joined("seen" if s.found else "searched, nothing found", s.note, sep="; "),
        )
        for s in observed.searched
    )


def reading(found: ReadingFinding, cite: Citations) -> ReadingView:
    """The reading as sentences; the confirmed one is set by the caller."""
    best = found.best
    if best is None:
        return ReadingView()
    unknown = best.kind == "unknown"
    return ReadingView(
        sentence="Not settled: no reading of these marks stands out."
        if unknown
        else sentence(("" if settled(best) else "Not settled; the likeliest: ") + labelled(best)),
        chance=_chance(best),
        makers=tuple(
            Rival(
                sentence=joined(m.name, joined(m.place, m.years), m.why, sep="; "),
                words=likely(m.probability),
                percent=percent(m.probability),
                share=round(m.probability, 4),
            )
            for m in best.makers[:_MAKERS]
            if m.probability >= _LEAST
        ),
        rivals=tuple(
            Rival(
                sentence=labelled(r),
                words=likely(r.probability),
                percent=percent(r.probability),
                share=round(r.probability, 4),
            )
            for r in found.readings[1 : 1 + _RIVALS]
        ),
        contradictions=tuple(
            Against(
                between=" against ".join(c.between),
                says=sentence(c.says),
                source=cite.cite(c.sources),
            )
            for c in found.contradictions
        ),
        looks=tuple(_look(n) for n in found.next_look[:1]),
        notes=tuple(f"Left out of the reading: {text}." for text in found.not_used),
    )


def _chance(best: Reading) -> str:
    """The probability of the likeliest reading, with what it is the probability of."""
    what = "that no system of the library explains the marks" if best.kind == "unknown" else ""
    what = what or ("of this reading" if settled(best) else "of this likeliest reading")
    return f"Probability {what}: {percent(best.probability)} ({likely(best.probability)})"


def settled(r: Reading) -> bool:
    """Whether a reading is sure enough to be printed as the one read."""
    return r.probability >= SETTLED


def labelled(r: Reading) -> str:
    """A reading as one phrase; what is no solid silver says so."""
    word = _KINDS.get(r.kind, "")
    if not word or word in r.label:
        return r.label
    return f"{r.label} ({word})"


def _look(n: NextLook) -> Look:
    return Look(
        look_for=sentence(n.look_for).rstrip("."),
        where=sentence("; ".join(n.where)) if n.where else "",
        settles=tuple(
            Line(label=f"{o.if_seen} ({percent(o.chance)})", value=o.then)
            for o in n.outcomes
            if o.chance >= _LEAST or o is n.outcomes[0]
        ),
    )


def ledger(title: str, finding: Finding, cite: Citations) -> LedgerView | None:
    """The ledger of a finding for its likeliest hypothesis against the others shown.

    The weight of a line is how far it moves the balance after the lines above it, so that the
    lines add up exactly: weight = 10 log10 (odds after / odds before), odds by Bayes' rule.
    """
    if not finding.hypotheses or not finding.ledger.lines:
        return None
    first = finding.hypotheses[0]
    logs = {h.key: math.log(h.prior) if h.prior > 0 else -math.inf for h in finding.hypotheses}
    balance = start = _odds(logs, first.key)
    lines: list[Evidence] = []
    slight: list[LedgerLine] = []
    together = 0.0
    for line in finding.ledger.lines:
        for key in logs:
            logs[key] += math.log(likelihood_ratio(line.likelihood_db.get(key, 0.0)))
        after = _odds(logs, first.key)
        weight, balance = after - balance, after
        if abs(weight) < _SLIGHTEST and line.key.startswith("absent:"):
            slight.append(line)
            together += weight
        else:
            lines.append(_evidence(line, weight, cite))
    if slight:
        names = dict.fromkeys(line.observed.partition(":")[0] for line in slight)
        what = LedgerLine(
            key="absent:slight",
            observed=joined(*names) + ": seen or not",
            because="expected of a full set; each moves less than one deciban",
            likelihood_db={},
            sources=tuple(dict.fromkeys(s for line in slight for s in line.sources)),
        )
        lines.append(_evidence(what, together, cite))
    rivals = "; ".join(h.label for h in finding.hypotheses[1:])
    return LedgerView(
        title=title,
        hypothesis=first.label,
        against=rivals,
        lines=tuple(lines),
        before=signed(start) if rivals else "",
        after=signed(balance) if rivals else "",
    )


def _evidence(line: LedgerLine, weight: float, cite: Citations) -> Evidence:
    return Evidence(
        observed=line.observed,
        because=line.because,
        sources=cite.cite(line.sources),
        decibans=signed(weight),
        word=in_words(weight),
        share=round(max(-1.0, min(1.0, weight / _FULL_BAR)), 4),
    )


def _odds(logs: dict[str, float], key: str) -> float:
    """Balance [dB] of one hypothesis against the others together; nought without others."""
    rest = [v for k, v in logs.items() if k != key and v > -math.inf]
    if not rest or logs[key] == -math.inf:
        return 0.0
    top = max(rest)
    return decibans(logs[key] - top - math.log(math.fsum(math.exp(v - top) for v in rest)))
