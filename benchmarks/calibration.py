"""Calibration on records that others have attributed: reliability, and cross-validated estimates.

    python benchmarks/calibration.py RECORDS.jsonl [--svg diagram.svg]

RECORDS: museum records, one JSON a line (id, object, marks_text_blind, country, place, year_from,
year_to, date_basis, institution). A reading is right where it names the curators' country and its
years touch theirs, with one year of grace; records with neither are left out.

Two things are estimated, each on all institutions but one fold and tried on that fold (five folds,
whole institutions): a weight per country (how often the records' benches meet it, against the
shipped priors, shrunk by adding three pieces to both) and one exponent on the
probabilities (below one: the engine is too sure). Printed: mean probability put on what is right,
log score and Brier score of the first reading, shipped and cross-validated, and the reliability of
the first reading by band, as shipped.
"""

import argparse
import json
import math
from collections import Counter, defaultdict
from pathlib import Path
from typing import NamedTuple

from planish.marks import describe, shipped_reader

_ISO = {"england": "GB", "scotland": "GB", "wales": "GB", "usa": "US", "russia/ussr": "RU",
        "ireland": "IE", "france": "FR", "germany": "DE", "denmark": "DK", "australia": "AU"}  # fmt: skip
_FOLDS, _PRIOR_PIECES = 5, 3.0
_EXPONENTS = (0.6, 0.7, 0.8, 0.9, 1.0, 1.1, 1.25, 1.4, 1.6)
_FLOOR = 0.005


class Read(NamedTuple):
    """A record's readings: (probability, country, right), and the record's own country."""

    fold: int
    country: str | None
    readings: list[tuple[float, str | None, bool]]


def load(path: Path) -> list[Read]:
    """Read every record that can be judged."""
    reader = shipped_reader()
    folds: dict[str, int] = {}
    found: list[Read] = []
    for line in path.read_text(encoding="utf-8").splitlines():
        record = json.loads(line)
        country = _ISO.get((record.get("country") or "").lower())
        dated = record.get("date_basis") == "stated" and record.get("year_from") is not None
        if country is None and not dated:
            continue
        fold = folds.setdefault(record["institution"], len(folds)) % _FOLDS
        low, high = (
            (int(record["year_from"]) - 1, int(record["year_to"]) + 1) if dated else (0, 9999)
        )
        out = reader.read(describe(record["marks_text_blind"]), record["object"], explain=False)
        readings = [
            (
                r.probability,
                r.country,
                (country is None or r.country == country)
                and (not dated or ((r.year_from or 9999) <= high and (r.year_to or 0) >= low)),
            )
            for r in out.readings
        ]
        found.append(Read(fold, country, readings))
    return found


def adjusted(
    read: Read, weights: dict[str | None, float], exponent: float
) -> list[tuple[float, bool]]:
    """Probabilities with other priors and an exponent; what is not among the readings stays wrong."""
    rest = max(0.0, 1.0 - math.fsum(p for p, _, _ in read.readings))
    scaled = [(weights.get(c, 1.0) * p**exponent, right) for p, c, right in read.readings]
    total = math.fsum(p for p, _ in scaled) + rest**exponent
    return [(p / total, right) for p, right in scaled]


def country_weights(reads: list[Read]) -> dict[str | None, float]:
    """Ratio of the countries' share in the records to that in the readings, shrunk."""
    seen = Counter(r.country for r in reads if r.country)
    expected: dict[str | None, float] = defaultdict(float)
    for r in reads:
        for p, country, _ in r.readings:
            expected[country] += p
    return {
        c: (seen[c] + _PRIOR_PIECES) / (expected[c] + _PRIOR_PIECES)
        for c in expected
        if expected[c] > 0 and c is not None
    }


def scores(pairs: list[list[tuple[float, bool]]]) -> tuple[float, float, float]:
    """Mean mass on the right, mean log of it, Brier score of the first reading."""
    mass = [math.fsum(p for p, right in pair if right) for pair in pairs]
    first = [max(pair, key=lambda pr: pr[0]) for pair in pairs]
    return (
        math.fsum(mass) / len(mass),
        math.fsum(math.log(max(m, _FLOOR)) for m in mass) / len(mass),
        math.fsum((p - right) ** 2 for p, right in first) / len(first),
    )


def fit(reads: list[Read]) -> tuple[dict[str | None, float], float]:
    """Country weights, then the exponent with the best log score."""
    weights = country_weights(reads)
    best = max(_EXPONENTS, key=lambda t: scores([adjusted(r, weights, t) for r in reads])[1])
    return weights, best


def bands(pairs: list[list[tuple[float, bool]]]) -> list[tuple[str, int, float, float]]:
    """(band, number, mean stated, share right) of the first readings."""
    by_band: dict[int, list[tuple[float, bool]]] = defaultdict(list)
    for pair in pairs:
        top = max(pair, key=lambda pr: pr[0])
        by_band[min(9, int(top[0] * 10))].append(top)
    return [
        (
            f"{10 * b}-{10 * b + 10} %",
            len(tops),
            sum(p for p, _ in tops) / len(tops),
            sum(right for _, right in tops) / len(tops),
        )
        for b, tops in sorted(by_band.items())
    ]


def diagram(rows: list[tuple[str, int, float, float]]) -> str:
    """Reliability diagram as SVG: stated across, right upward, size by number."""
    dots = "".join(
        f'<circle cx="{40 + 300 * stated:.1f}" cy="{320 - 300 * right:.1f}" '
        f'r="{2 + math.sqrt(n):.1f}" fill="#1F4E79"><title>{band}: {right:.2f} of {n}</title></circle>'
        for band, n, stated, right in rows
    )
    return (
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 360 360" font-family="sans-serif" '
        'font-size="11"><title>Stated probability against share right</title>'
        '<path d="M40 20V320H340" fill="none" stroke="#5B6672"/>'
        '<path d="M40 320L340 20" stroke="#5B6672" stroke-dasharray="4 4"/>'
        f'{dots}<text x="150" y="345">stated</text>'
        '<text x="14" y="190" transform="rotate(-90 14 190)">right</text></svg>'
    )


def main() -> None:
    """Estimate, cross-validate, print."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("records", type=Path)
    parser.add_argument("--svg", type=Path, help="write the reliability diagram here")
    asked = parser.parse_args()
    reads = load(asked.records)
    shipped = [adjusted(r, {}, 1.0) for r in reads]
    held: list[list[tuple[float, bool]]] = []
    exponents = []
    for fold in range(_FOLDS):
        weights, exponent = fit([r for r in reads if r.fold != fold])
        exponents.append(exponent)
        held += [adjusted(r, weights, exponent) for r in reads if r.fold == fold]
    print(f"{len(reads)} records; exponents by fold {exponents}")
    weights, exponent = fit(reads)
    print("on all:", f"exponent {exponent};", "country weights",
          {c: round(w, 2) for c, w in sorted(weights.items(), key=lambda cw: -cw[1]) if abs(w - 1) > 0.15})  # fmt: skip
    print("| | mass on the right | log score | Brier, first reading |\n| --- | --- | --- | --- |")
    for name, pairs in (("as shipped", shipped), ("cross-validated", held)):
        mass, log, brier = scores(pairs)
        print(f"| {name} | {mass:.3f} | {log:.3f} | {brier:.3f} |")
    rows = bands(shipped)
    print("\n| stated | records | mean stated | right |\n| --- | --- | --- | --- |")
    for band, n, stated, right in rows:
        print(f"| {band} | {n} | {stated:.2f} | {right:.2f} |")
    if asked.svg:
        asked.svg.write_text(diagram(rows), encoding="utf-8")


if __name__ == "__main__":
    main()
