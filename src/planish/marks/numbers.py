"""Numbers classified: every number seen gets its rival meanings, with reasons.

A number on silver may be a fineness, a pattern or stock number, a year, a patent date, a registered
design, a weight, grams of silver on plate, or a size. The priors are common practice; what stands
beside the number (plate words, a fineness word, "Rd", "PAT") is the evidence.
"""

import re

from planish.evidence import Finding, Hypothesis, Ledger, LedgerLine
from planish.library.loader import Library
from planish.library.rows import Design, Word
from planish.marks.observation import Mark
from planish.marks.seen import fold

_MEANINGS = {
    "fineness": "fineness",
    "pattern": "pattern, stock or order number",
    "year": "a year",
    "patent": "patent date or number",
    "design": "registered design",
    "weight": "weight, scratched or stamped",
    "plating": "grams of silver on a set, or plating grade",
    "size": "size or capacity",
}
_PRIOR = {
    "fineness": 0.15, "pattern": 0.55, "year": 0.05, "patent": 0.02, "design": 0.05, "weight": 0.08,
    "plating": 0.05, "size": 0.05,
}  # fmt: skip
_PLATING_GRAMS = (12, 18, 20, 24, 30, 36, 40, 45, 50, 60, 80, 84, 90, 100, 110, 120, 150)
_PLATED = ("plate", "base")


def _words_of(library: Library, kinds: tuple[str, ...]) -> dict[str, Word]:
    found: dict[str, Word] = {}
    for word in library.words:
        if word.kind in kinds:
            for text in (word.text, *word.also.split(";")):
                key = "".join(c for c in fold(text) if c.isalnum())
                if key:
                    found.setdefault(key, word)
    return found


def _lines(
    text: str, figures: str, beside: set[str], library: Library
) -> list[tuple[str, str, dict[str, float], tuple[str, ...]]]:
    """(observed, because, decibans by meaning, sources) of one number."""
    lines: list[tuple[str, str, dict[str, float], tuple[str, ...]]] = []
    value = int(figures)
    finenesses = _words_of(library, ("fineness",))
    if row := finenesses.get(figures):
        lines.append(
            (f"{text} is a fineness number", row.meaning or "listed fineness", {"fineness": 16.0},
             row.sources)
        )  # fmt: skip
    elif not 600 <= value <= 1000:
        lines.append(
            (f"{text} is no fineness known here", "not in the table of fineness marks",
             {"fineness": -20.0}, ("practice",))
        )  # fmt: skip
    if re.match(r"^\s*0?[.,]\d{3}", text) or "/1000" in text:
        lines.append((f"{text} is written as a fraction", "", {"fineness": 20.0}, ("practice",)))
    if value in _PLATING_GRAMS:
        lines.append(
            (f"{text} is a usual plating figure", "grams of silver on a dozen of each",
             {"plating": 12.0}, ("practice",))
        )  # fmt: skip
    plated = {w for w in beside if w in _words_of(library, _PLATED)}
    if plated:
        word = min(plated)
        lines.append(
            (f"{word} stands beside it", "a plate or base-metal word: no fineness of the body",
             {"fineness": -15.0, "plating": 6.0}, _words_of(library, _PLATED)[word].sources)
        )  # fmt: skip
    if any(w in finenesses and not w.isdigit() for w in beside):
        lines.append(
            ("a fineness word stands beside it", "the fineness is said already",
             {"fineness": -8.0, "pattern": 3.0}, ("practice",))
        )  # fmt: skip
    if len(figures) == 4 and 1500 <= value <= 2035:
        lines.append(
            (f"{text} could be a year", "four figures in range", {"year": 4.0}, ("practice",))
        )
    else:
        lines.append(
            (f"{text} is no year", "not four figures in range", {"year": -25.0}, ("practice",))
        )
    if re.search(r"\bR\.?D\b|\bRD\.?\s*NO|REGD|REGISTERED", " ".join(beside)):
        lines.append(("Rd stands before it", "registered design", {"design": 25.0}, ("practice",)))
    elif not 5 <= len(figures) <= 7:
        lines.append(
            (
                "no Rd before it",
                "Rd numbers have up to seven figures",
                {"design": -12.0},
                ("practice",),
            )
        )
    if any(w.startswith("PAT") for w in beside):
        lines.append(("PAT stands beside it", "patent", {"patent": 15.0}, ("practice",)))
    if re.search(r"\b(?:OZ|DWT|GR?|GRAMS?)\b", text, re.IGNORECASE):
        lines.append(("a unit of weight stands with it", "", {"weight": 22.0}, ("practice",)))
    if re.search(r"\b(?:PINTS?|PT|CM|ML|CL|IN|INCH)\b", fold(text)):
        lines.append(("a unit of size stands with it", "", {"size": 22.0}, ("practice",)))
    return lines


def registered_year(number: int, designs: tuple[Design, ...]) -> tuple[int, Design] | None:
    """Year in which a registered-design number falls, by the first number of each year."""
    starts = sorted(
        (int(d.key_2 or d.value), int(d.key_1), d)
        for d in designs
        if d.record.startswith("Rd") and (d.key_2 or d.value).isdigit() and d.key_1.isdigit()
    )
    found = None
    for first, year, row in starts:
        if first <= number:
            found = (year, row)
    return found


def classify(marks: tuple[Mark, ...], library: Library) -> tuple[Finding, ...]:
    """A finding for each number among the marks: rival meanings, best first."""
    found: list[Finding] = []
    texts = [m.text for m in marks if m.text]
    for at, text in enumerate(texts):
        for match in re.finditer(r"[.,]?\d[\d.,/]*", text):
            shown = match.group(0).strip(",")
            figures = shown.split("/")[0].strip(".,").replace(",", "").replace(".", "")
            if not figures.isdigit() or len(figures) > 9:
                continue
            rest = text[: match.start()] + " " + text[match.end() :]
            near = [rest, *(t for n, t in enumerate(texts) if n != at)]
            beside = {"".join(c for c in fold(w) if c.isalnum()) for t in near for w in t.split()}
            beside |= {"".join(c for c in fold(t) if c.isalnum()) for t in near}
            unit = re.match(r"\s*\w+", text[match.end() :])
            whole = shown + (unit.group(0) if unit else "")
            found.append(_finding(shown, _lines(whole, figures, beside - {""}, library)))
    return tuple(found)


def _finding(shown: str, rows: list[tuple[str, str, dict[str, float], tuple[str, ...]]]) -> Finding:
    weights = {
        m: p * 10 ** (sum(row[2].get(m, 0.0) for row in rows) / 10) for m, p in _PRIOR.items()
    }
    total = sum(weights.values())
    hypotheses = sorted(
        (
            Hypothesis(key=m, label=_MEANINGS[m], probability=w / total, prior=_PRIOR[m])
            for m, w in weights.items()
        ),
        key=lambda h: -h.probability,
    )
    lines = tuple(
        LedgerLine(
            key=f"line:{n}",
            observed=observed,
            because=because,
            likelihood_db={m: db.get(m, 0.0) for m in _PRIOR},
            sources=sources,
        )
        for n, (observed, because, db, sources) in enumerate(rows)
    )
    return Finding(about=f"the number {shown}", hypotheses=tuple(hypotheses), ledger=Ledger(lines))
