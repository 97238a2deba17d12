"""Wear study: hide or blur each mark and each letter of full British sets, one and two at a time.

    python benchmarks/wear.py RECORDS.jsonl

RECORDS are museum records with fields id, marks_text_blind, place, year_from, year_to, mark_kinds
(the shared museum file). For each full set (fineness, town and date letter, years stated) every
single mark and every pair is hidden, and every mark is blurred (legibility obscure, letters
unsure). Printed: how office, years, probability mass on the true years and sure-and-wrong fall.
"""

import itertools
import json
import sys
from collections.abc import Iterator
from pathlib import Path

import msgspec

from planish.marks import Legibility, Observed, Reader, ReadingFinding, describe, shipped_reader

_OFFICES = ("London", "Birmingham", "Sheffield", "Chester", "Edinburgh", "Glasgow", "Dublin",
            "Exeter", "Newcastle", "York")  # fmt: skip
_SURE = 0.95


def full_sets(path: Path) -> Iterator[tuple[dict[str, str], Observed]]:
    """Records with a full set and a stated date."""
    for line in path.read_text(encoding="utf-8").splitlines():
        record = json.loads(line)
        kinds = set(record.get("mark_kinds") or [])
        if not {"fineness", "town_or_office_mark", "date_letter"} <= kinds:
            continue
        if not record.get("year_from") or record.get("date_basis") != "stated":
            continue
        yield record, describe(record["marks_text_blind"])


def variants(observed: Observed) -> Iterator[tuple[str, Observed]]:
    """The set whole, with each mark or pair hidden, with each mark blurred."""
    marks = observed.marks
    yield "whole", observed
    for i in range(len(marks)):
        kept = tuple(m for n, m in enumerate(marks) if n != i)
        if kept:
            yield "one hidden", msgspec.structs.replace(observed, marks=kept)
        blurred = msgspec.structs.replace(marks[i], legibility=Legibility.OBSCURE, doubtful=True)
        yield (
            "one blurred",
            msgspec.structs.replace(observed, marks=(*marks[:i], blurred, *marks[i + 1 :])),
        )
    for i, j in itertools.combinations(range(len(marks)), 2):
        kept = tuple(m for n, m in enumerate(marks) if n not in (i, j))
        if kept:
            yield "two hidden", msgspec.structs.replace(observed, marks=kept)


def judge(record: dict[str, str], finding: ReadingFinding) -> dict[str, float]:
    """One answer against the curators: office, years (one year of grace), mass, sure and wrong."""
    low, high = int(record["year_from"]) - 1, int(record["year_to"]) + 1
    office = next((o for o in _OFFICES if o in (record.get("place") or "")), None)

    def covers(a: int | None, b: int | None) -> bool:
        return a is not None and b is not None and a <= high and b >= low

    top = finding.readings[0]
    years = covers(top.year_from, top.year_to)
    right_place = office is None or top.office == office
    wrong = top.year_from is not None and (not years or top.kind in ("plated", "base"))
    return {
        "office": float(right_place),
        "years": float(years),
        "mass": sum(r.probability for r in finding.readings if covers(r.year_from, r.year_to)),
        "width": float((top.year_to or 0) - (top.year_from or 0) + 1) if top.year_from else 0.0,
        "sure_wrong": float(top.probability >= _SURE and wrong),
        "sure": float(top.probability >= _SURE),
    }


def main() -> None:
    """Run the study and print the table."""
    reader: Reader = shipped_reader()
    rows: dict[str, list[dict[str, float]]] = {}
    bad: list[str] = []
    for record, observed in full_sets(Path(sys.argv[1])):
        for kind, changed in variants(observed):
            finding = reader.read(changed, record["object"], explain=False)
            verdict = judge(record, finding)
            rows.setdefault(kind, []).append(verdict)
            if verdict["sure_wrong"]:
                top = finding.readings[0]
                bad.append(f"{record['id']} ({kind}): {top.label} at {top.probability:.3f}")
    print(
        f"{'':12} {'sets':>6} {'office':>7} {'years':>7} {'mass':>7} {'width':>6} {'sure':>6} {'wrong':>6}"
    )
    for kind, found in rows.items():
        n = len(found)
        mean = {k: sum(r[k] for r in found) / n for k in found[0]}
        widths = sorted(r["width"] for r in found)
        print(
            f"{kind:12} {n:6} {mean['office']:7.3f} {mean['years']:7.3f} {mean['mass']:7.3f}"
            f" {widths[n // 2]:6.0f} {sum(r['sure'] for r in found):6.0f}"
            f" {sum(r['sure_wrong'] for r in found):6.0f}"
        )
    for line in bad:
        print("sure and wrong:", line)


if __name__ == "__main__":
    main()
