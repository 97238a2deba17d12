"""Numbers classified: every number among the marks gets its rival meanings, with reasons.

A number on silver may be a fineness, grams of silver on plate, a pattern number, a year, a patent,
a registered design, a weight or a size. How often each is met is common practice; what is listed,
and what stands beside the number, is the evidence.
"""

import math
import re
from collections.abc import Sequence
from itertools import pairwise

import msgspec

from planish.evidence import Finding, Hypothesis, Ledger, LedgerLine
from planish.library.loader import Library
from planish.marks.designs import Registered, patent_year, registered_year
from planish.marks.figures import Figures, figures
from planish.marks.number_rules import LAST_YEAR, ORNAMENT, PRACTICE, PRIOR, RULES, Asked
from planish.marks.number_tables import FINE, MEANINGS, Line, Tables, letters_of
from planish.marks.observation import Mark
from planish.quantity import Mass, QuantityError

_SETTLED = 0.8
#: numbers of German registrations and patents run apart from those of the United States
_GERMAN = re.compile(r"\bD\.?\s?R\.?\s?(?:G\.?\s?M|P)\b")


class NumberFinding(msgspec.Struct, frozen=True, kw_only=True):
    """What one number may mean.

    mark: place of its mark in the list given. shown: the number as it stands. year: the earliest
    year of making that it allows, if it is what it most likely is; sources: those of the year.
    """

    mark: int
    shown: str
    finding: Finding
    year: int | None = None
    sources: tuple[str, ...] = ()

    @property
    def best(self) -> Hypothesis:
        """The likeliest meaning."""
        return self.finding.hypotheses[0]


def classify(
    marks: Sequence[Mark],
    library: Library,
    country: str | None = None,
    tables: Tables | None = None,
) -> tuple[NumberFinding, ...]:
    """A finding for each number among the marks: rival meanings, likeliest first.

    country: ISO 3166-1 alpha-2 where the marks' country is known. tables: the library laid out, if it
    is at hand.
    """
    found = figures(marks)
    if not found:
        return ()
    tables = tables or Tables(library)
    beside = _beside(marks)
    return tuple(
        _dated(f, tables) if f.date else _weighed(Asked(f, marks[f.mark], beside, tables, country))
        for f in found
    )


def _beside(marks: Sequence[Mark]) -> frozenset[str]:
    """Words and wordings among the marks, letters only."""
    found: set[str] = set()
    for mark in marks:
        if mark.text:
            tokens = [letters_of(t) for t in mark.text[:400].split()]
            words = [t for t in tokens if t and not any(c.isdecimal() for c in t)]
            found.update(words)
            found.add("".join(words))
            found.update(a + b for a, b in pairwise(words))
    return frozenset(found - {""})


def _dated(found: Figures, tables: Tables) -> NumberFinding:
    """A patent date: month, day and year after PAT leave nothing else."""
    date = found.date
    if date is None:  # pragma: no cover - the caller asks only for dates
        raise ValueError("no date")
    row = next((r for r in tables.library.designs if r.record == "us-patent-day"), None)
    lines = [Line(f"PAT, then month and day: {found.shown}", "a date of a patent", {"patent": 60},
                  PRACTICE)]  # fmt: skip
    if date.tuesday is not None and row is not None:
        says = "a Tuesday" if date.tuesday else "no Tuesday"
        lines.append(
            Line(f"{date.says} was {says}", "patents of the United States are issued on Tuesdays",
                 {"patent": 5.0 if date.tuesday else -5.0}, row.sources)
        )  # fmt: skip
    labels = {**MEANINGS, "patent": f"patent of {date.says}: made then or later"}
    return NumberFinding(
        mark=found.mark, shown=found.shown, finding=_finding(found.shown, lines, labels),
        year=date.year, sources=lines[-1].sources,
    )  # fmt: skip


def _weighed(asked: Asked) -> NumberFinding:
    lines = [line for rule in RULES if (line := rule(asked)) is not None]
    labels, years = _labels(asked)
    finding = _finding(asked.figures.shown, lines, labels)
    told = years.get(finding.hypotheses[0].key)
    return NumberFinding(
        mark=asked.figures.mark,
        shown=asked.figures.shown,
        finding=finding,
        year=told.surely_from if told else None,
        sources=told.sources if told else (),
    )


def _finding(shown: str, lines: Sequence[Line], labels: dict[str, str]) -> Finding:
    logs = {
        m: math.log10(p) + math.fsum(line.decibans.get(m, 0.0) for line in lines) / 10
        for m, p in PRIOR.items()
    }
    top = max(logs.values())
    weights = {m: 10 ** (v - top) for m, v in logs.items()}
    total = math.fsum(weights.values())
    hypotheses = sorted(
        (Hypothesis(key=m, label=labels[m], probability=w / total, prior=PRIOR[m])
         for m, w in weights.items()),
        key=lambda h: -h.probability,
    )  # fmt: skip
    ledger = Ledger(
        tuple(
            LedgerLine(
                key=f"number:{n}",
                observed=line.observed,
                because=line.because,
                likelihood_db={m: line.decibans.get(m, 0.0) for m in PRIOR},
                sources=line.sources,
            )
            for n, line in enumerate(lines)
        )
    )
    return Finding(about=f"the number {shown}", hypotheses=tuple(hypotheses), ledger=ledger)


def _labels(asked: Asked) -> tuple[dict[str, str], dict[str, Registered]]:
    """Each meaning with what the number then says, and the earliest year of making it allows."""
    found = asked.figures
    labels = dict(MEANINGS)
    years: dict[str, Registered] = {}
    for meaning, row in reversed(asked.rows):
        if meaning in FINE:
            fine = f"{row.fineness:g} in 1000" if row.fineness is not None else "silver"
            labels[meaning] = f"fineness: {fine}, {row.meaning}".rstrip(", ")
        elif row.meaning:
            labels[meaning] = f"{MEANINGS[meaning]}: {row.meaning}"
    if (design := _design(found, asked.tables)) is not None:
        labels["design"] = f"{design.says}: made then or later"
        years["design"] = design
    if (patent := _patent(asked)) is not None:
        labels["patent"] = f"{patent.says}: made then or later"
        years["patent"] = patent
    if found.value is not None and labels["year"] == MEANINGS["year"]:
        labels["year"] = f"the year {found.value}"
    try:
        grams = Mass.parse_scratch(found.number.replace(".", "-")).grams
        ounces, pennyweights = found.groups[:2]
        labels["weight"] = f"weight: {ounces} oz {pennyweights} dwt troy = {grams:.0f} g when made"
    except (QuantityError, ValueError):
        pass
    return labels, years


def _design(found: Figures, tables: Tables) -> Registered | None:
    return registered_year(found.value, tables.library.designs) if found.value else None


def _patent(asked: Asked) -> Registered | None:
    """The year of a patent number, or the year itself after PAT."""
    value = asked.figures.value
    if value is None or _GERMAN.search(asked.figures.before):
        return None
    if len(asked.figures.groups[0]) == 4 and 1836 <= value <= LAST_YEAR:
        return Registered(
            year=value, surely_from=value, says=f"patent of {value}", sources=PRACTICE
        )
    ornament = True if ORNAMENT.search(asked.figures.before) else None
    return patent_year(value, asked.tables.library.designs, ornament=ornament)


def earliest_year(
    marks: Sequence[Mark], library: Library, tables: Tables | None = None
) -> tuple[int, str, tuple[str, ...]] | None:
    """The earliest year of making that numbers and words of registration allow, with the reason.

    None where nothing among the marks bounds the year. A registration bounds from below only.
    """
    found: list[tuple[int, str, tuple[str, ...]]] = []
    tables = tables or Tables(library)
    for number in classify(marks, library, tables=tables):
        best = number.best
        if number.year is not None and best.probability >= _SETTLED:
            found.append((number.year, f"{number.shown}: {best.label}", number.sources))
    for word in sorted(_beside(marks)):
        rows = [r for r in tables.words.get(word, ()) if r.kind == "patent"]
        first = tables.first_year(word)
        if rows and first is not None:
            says = f"{word}: {rows[0].meaning}; not met before {first[0]}"
            found.append((first[0], says, first[1].sources))
    return max(found, key=lambda f: f[0], default=None)
