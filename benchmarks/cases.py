"""Cases that people really had, answered by planish and compared with the answers on record.

    python benchmarks/cases.py CASES.jsonl [--kind marks|metal] [--markdown] [--show ID]

CASES: one case a line with ``situation``, ``form``, ``observed_marks`` (``text`` or ``device``, and
``shape``, ``where``, ``legibility`` where known), ``other_observations``, ``established_answer`` and
``answer_confidence``. Only the first four go to the reader, as one description: "Marks: ...; ... .
SITUATION. OTHER OBSERVATIONS".

Compared, field by field, with what planish would say: a value is said where the readings give it
more two thirds of the probability or more, years as the shortest list of readings that holds 80 %. A wider
answer agrees; a narrower one, or another one, disagrees; nothing said is silent. Where the answer on
record is unresolved, agreeing is stopping short: no reading at 80 % or more, no maker at two thirds.
"""

import argparse
import json
import re
import sys
import unicodedata
from collections import defaultdict
from collections.abc import Callable, Iterable
from pathlib import Path
from typing import Any, NamedTuple

import cases_metal

from planish.marks import Reading, ReadingFinding, checks, describe, shipped_reader

#: "likely" of the IPCC's guidance note on uncertainty (2010) begins at 66 %
_SAID = 0.66
_HELD = 0.8
_SHORT = 0.8
_PREPOSITIONS = frozenset(["on", "in", "under", "below", "above", "inside", "beside"])
_GRACE = 2
_MAKERS = 5
#: words of a case's answer -> ISO 3166-1 alpha-2, in the order in which they are tried
_COUNTRIES = {
    "south west africa": "NA", "namibia": "NA", "united states": "US", "great britain": "GB",
    "scotland": "GB", "england": "GB", "ireland": "IE", "germany": "DE", "bohemia": "CZ AT",
    "denmark": "DK", "russia": "RU", "netherlands": "NL", "france": "FR", "switzerland": "CH",
    "ottoman": "TR", "austria": "AT", "siam": "TH", "philippines": "PH", "poland": "PL",
    "china": "CN", "mexico": "MX", "morocco": "MA",
}  # fmt: skip
_SMALL_WORDS = frozenset(
    [
        "and",
        "co",
        "sons",
        "son",
        "bros",
        "brothers",
        "ltd",
        "the",
        "as",
        "stamped",
        "most",
        "likely",
        "london",
        "sheffield",
        "lexington",
    ]
)


class Compared(NamedTuple):
    """One field: what came out, and why."""

    field: str
    verdict: str  # agreed, silent or disagreed
    why: str


class Judged(NamedTuple):
    """One case."""

    id: str
    verdict: str
    fields: tuple[Compared, ...]
    best: str


def described(case: dict[str, Any]) -> str:
    """A case as a user would type it: the marks as a list, then what is told beside them."""
    marks = []
    for mark in case["observed_marks"]:
        words = mark.get("text") or mark.get("device") or ""
        if mark.get("shape"):
            words += f" in a {mark['shape']}"
        if mark.get("legibility"):
            words += f" ({mark['legibility']})"
        if where := mark.get("where"):
            placed = where.split()[0] in _PREPOSITIONS or " on " in where
            words += f", {where}" if placed else f", on the {where}"
        marks.append(words)
    told = [case.get("situation") or "", case.get("other_observations") or ""]
    parts = [f"Marks: {'; '.join(marks)}"] if marks else []
    return ". ".join([*parts, *(t.rstrip(".") for t in told if t)])


def masses(finding: ReadingFinding, of: Callable[[Reading], str | None]) -> dict[str, float]:
    """Probability of each value of a field; readings that say none are left out."""
    found: dict[str, float] = defaultdict(float)
    for reading in finding.readings:
        value = of(reading)
        if value:
            found[value] += reading.probability
    return dict(found)


def stated(found: dict[str, float]) -> tuple[str | None, float]:
    """The value that is said, and its probability."""
    if not found:
        return None, 0.0
    value = max(found, key=lambda v: found[v])
    return (value if found[value] >= _SAID else None), found[value]


def years_held(finding: ReadingFinding) -> tuple[int, int] | None:
    """First and last year of the likeliest readings that hold 80 %; None where they hold less."""
    low, high, held = 9999, 0, 0.0
    for reading in finding.readings:
        if reading.year_from is None:
            continue
        low, high = min(low, reading.year_from), max(high, reading.year_to or 9999)
        held += reading.probability
        if held >= _HELD:
            return low, high
    return None


def _field(field: str, found: dict[str, float], right: set[str]) -> Compared:
    said, p = stated(found)
    told = ", ".join(f"{v} {m:.0%}" for v, m in sorted(found.items(), key=lambda x: -x[1])[:3])
    if said is None:
        return Compared(field, "silent", f"no value at two thirds ({told or 'none'})")
    verdict = "agreed" if said in right else "disagreed"
    return Compared(field, verdict, f"{said} {p:.0%}; on record {' or '.join(sorted(right))}")


def _country(answer: dict[str, Any], finding: ReadingFinding) -> Iterable[Compared]:
    words = str(answer.get("country", "")).casefold()
    right = {c for w, iso in _COUNTRIES.items() if w in words for c in iso.split()}
    if not right:
        return
    found = masses(finding, lambda r: r.country)
    if words.startswith("not "):
        said, p = stated(found)
        verdict = "disagreed" if said in right else "agreed" if said else "silent"
        yield Compared("country", verdict, f"{said} {p:.0%}; on record {words}")
    else:
        wide = {r.country for r in finding.readings if _names(r.system_label, words)}
        yield _field("country", found, right | {c for c in wide if c})


def _names(label: str, words: str) -> bool:
    """Whether a system of several countries ("Germany and Austria") names one on record."""
    return any(w in words and w in label.casefold() for w in _COUNTRIES)


def _office(answer: dict[str, Any], finding: ReadingFinding) -> Iterable[Compared]:
    if answer.get("office"):
        yield _field("office", masses(finding, lambda r: r.office), {answer["office"]})


def _kind(answer: dict[str, Any], finding: ReadingFinding, failed: list[str]) -> Iterable[Compared]:
    words = str(answer.get("solid_or_plated", "")).casefold()
    if not words:
        return
    found = masses(finding, lambda r: r.kind if r.kind != "unknown" else None)
    said, p = stated(found)
    if "unproven" in words:
        # a reading shown with a contradiction or a failed check is no proof, and says so
        doubts = [*(c.says for c in finding.contradictions), *failed]
        sure = p >= _SHORT and not doubts and not (said == "plated" and "plate" in words)
        told = f"{said} {p:.0%}" + (f", but: {doubts[0]}" if doubts else "")
        yield Compared("kind", "disagreed" if sure else "agreed", f"{told}; on record {words}")
        return
    right = set()
    if "solid" in words:
        right.add("solid")
    if any(w in words for w in ("plated", "alloy", "pewter")):
        right |= {"plated", "base"}
    yield _field("kind", found, right)


def _years(answer: dict[str, Any], finding: ReadingFinding) -> Iterable[Compared]:
    low, high = answer.get("year_from"), answer.get("year_to")
    if low is None and high is None:
        return
    record = f"on record {low or ''}-{high or ''}"
    held = years_held(finding)
    if held is None or held[1] - held[0] > 9000:
        yield Compared("years", "silent", f"the readings hold no years; {record}")
        return
    told = f"{held[0]}-{held[1]}; {record}"
    low, high = int(low or high or 0), int(high or low or 0)
    if held[0] > high + _GRACE or held[1] < low - _GRACE:
        yield Compared("years", "disagreed", told)
    elif held[0] <= low + _GRACE and held[1] >= high - _GRACE:
        yield Compared("years", "agreed", told)
    else:
        yield Compared("years", "disagreed", f"narrower: {told}")


def _fineness(answer: dict[str, Any], finding: ReadingFinding) -> Iterable[Compared]:
    said = answer.get("fineness")
    words = str(said).replace("coin silver", "900")
    right = {str(int(n)) for n in re.findall(r"\b\d{3}\b|^0$", words)}
    if said is None or not right or "if the" in words or "presumed" in words:
        return
    if right == {"0"}:
        found = masses(finding, lambda r: r.kind if r.kind != "unknown" else None)
        yield _field("fineness", {("0" if k != "solid" else k): m for k, m in found.items()}, {"0"})
    else:
        if "better" in words:
            right |= {"830", "835", "900", "925"}
        found = masses(finding, lambda r: f"{r.fineness:.0f}" if r.fineness else None)
        yield _field("fineness", found, right)


def _name(text: str) -> set[str]:
    plain = unicodedata.normalize("NFKD", text).encode("ascii", "ignore").decode().casefold()
    return {w for w in re.findall(r"[a-z]+", plain) if w not in _SMALL_WORDS}


def _maker(answer: dict[str, Any], finding: ReadingFinding) -> Iterable[Compared]:
    name = answer.get("maker")
    best = finding.best
    if not name or best is None:
        return
    named = best.makers
    sure = named[0] if named and named[0].probability * best.probability >= _SAID else None
    if name == "unidentified":
        verdict = "disagreed" if sure else "agreed"
        yield Compared("maker", verdict, f"{sure.name if sure else 'none named'}; on record none")
        return
    # a claim of the writer counts: it is shown beside the reading
    claims = [c.says for c in finding.observed.claims if c.about == "maker"]
    wanted = [_name(n) for n in name.split(";")]
    told = [m.name for m in named[:_MAKERS]] + claims
    hit = next((t for t in told for w in wanted if w and w & _name(t) in (w, _name(t))), None)
    if hit:
        yield Compared("maker", "agreed", f"{hit}; on record {name}")
    elif sure:
        yield Compared("maker", "disagreed", f"{sure.name}; on record {name}")
    else:
        yield Compared("maker", "silent", f"{', '.join(told[:3]) or 'none'}; on record {name}")


def _short(case: dict[str, Any], finding: ReadingFinding) -> Iterable[Compared]:
    if case.get("answer_confidence") != "unresolved":
        return
    top = finding.readings[0]
    far = top.kind != "unknown" and top.probability >= _SHORT
    told = f"{top.label} {top.probability:.0%}; on record unresolved"
    yield Compared("stops short", "disagreed" if far else "agreed", told)


def judge_metal(case: dict[str, Any]) -> Judged:
    """Weigh the tests of a case and compare."""
    found = cases_metal.weighed(case, described(case))
    fields = tuple(Compared(*said) for said in cases_metal.compare(case, found))
    verdicts = {f.verdict for f in fields}
    verdict = next((v for v in ("disagreed", "agreed") if v in verdicts), "silent")
    kind, p = found.kinds[0]
    return Judged(case["id"], verdict, fields, f"{kind} {p:.0%}, {found.best.label}")


def judge(case: dict[str, Any]) -> tuple[Judged, ReadingFinding]:
    """Read a case and compare."""
    reader = shipped_reader()
    finding = reader.read(describe(described(case), case["form"]), case["form"])
    failed = [c.asks for c in checks(finding, reader.library, reader.plan) if c.answer == "no"]
    answer = case["established_answer"]
    fields = [*_short(case, finding)]
    for compare in (_country, _office, _years, _fineness, _maker):
        fields += compare(answer, finding)
    fields += _kind(answer, finding, failed)
    verdicts = {f.verdict for f in fields}
    verdict = next((v for v in ("disagreed", "agreed") if v in verdicts), "silent")
    top = finding.readings[0]
    said = f"{top.kind}, {top.country or '-'}, {top.label}, {top.probability:.0%}"
    return Judged(case["id"], verdict, tuple(fields), said), finding


def _row(judged: Judged) -> list[str]:
    by = {
        v: [f for f in judged.fields if f.verdict == v] for v in ("agreed", "silent", "disagreed")
    }
    telling = by["disagreed"] or by["silent"] or by["agreed"]
    why = "; ".join(f"{f.field}: {f.why}" for f in telling) or "nothing on record to compare"
    counts = [" ".join(f.field for f in found) or "-" for found in by.values()]
    return [judged.id, judged.verdict, *counts, why]


def main() -> None:
    """Print the table and the counts."""
    parser = argparse.ArgumentParser(description=__doc__.split("\n", maxsplit=1)[0])
    parser.add_argument("cases", type=Path)
    parser.add_argument("--kind", default="marks")
    parser.add_argument("--markdown", action="store_true")
    parser.add_argument("--show", metavar="ID", help="one case in full, as read")
    args = parser.parse_args()
    cases = [json.loads(line) for line in args.cases.read_text(encoding="utf-8").splitlines()]
    cases = [c for c in cases if c["kind"] == args.kind and args.show in (None, c["id"])]
    if not cases:
        sys.exit(f"{args.cases}: no case of kind {args.kind}; name one that is there")
    judged = []
    for case in cases:
        if args.kind == "metal":
            judged.append(judge_metal(case))
            continue
        found, finding = judge(case)
        judged.append(found)
        if args.show:
            _show(case, finding)
    head = ["case", "verdict", "agreed", "silent", "disagreed", "why"]
    rows = [head, *(_row(j) for j in judged)]
    if args.markdown:
        rows.insert(1, ["---"] * len(head))
    for row in rows:
        print("| " + " | ".join(row) + " |" if args.markdown else "\t".join(row))
    print()
    for verdict in ("agreed", "silent", "disagreed"):
        fields = sum(f.verdict == verdict for j in judged for f in j.fields)
        print(f"{verdict}: {sum(j.verdict == verdict for j in judged)} cases, {fields} fields")


def _show(case: dict[str, Any], finding: ReadingFinding) -> None:
    print(described(case))
    for mark in finding.observed.marks:
        print("  mark:", mark)
    for claim in finding.observed.claims:
        print("  claim:", claim.about, claim.says, claim.year_from, claim.year_to)
    print("  searched:", [s.note for s in finding.observed.searched])
    print("  unread:", finding.observed.unread)
    print("  not used:", finding.not_used)
    for reading in finding.readings[:6]:
        makers = ", ".join(f"{m.name} {m.probability:.2f}" for m in reading.makers[:3])
        print(
            f"  {reading.probability:.3f} {reading.kind} {reading.country} {reading.label} [{makers}]"
        )
        print("      ", "; ".join(f"{a.shown}={a.role}" for a in reading.assigned))
    print("  contradictions:", [c.says for c in finding.contradictions])
    print()


if __name__ == "__main__":
    main()
