"""Weight formulas on real stones, and the law of the identification on stones drawn from itself.

    .venv/bin/python benchmarks/stones.py [--json]

The stones: carat and measurements of 53,940 round brilliant diamonds, data set ``diamonds`` as carried
by plotnine (one of the development packages; only its data file is read). Kept are those whose depth
agrees within one point with the depth stated in percent and that are round within 5 %.

The identification is run on invented stones, drawn from the library's own chances with a fixed seed.
That shows whether the arithmetic keeps its word, not whether the chances are those of the world.
"""

import argparse
import csv
import importlib.util
import json
import random
import statistics
import sys
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import NamedTuple

from planish.library import load
from planish.stones import Observation, identify, priors, weigh
from planish.stones.likelihood import OTHER, answers_on, clues_of

SEED = 5
LOOKS = ("colour", "lustre", "transparency", "loupe", "feel")


class Stone(NamedTuple):
    """One row of the data set: stated carat, cut grade, measurements [mm]."""

    carat: float
    grade: str
    x: float
    y: float
    z: float


def data_file() -> Path | None:
    """Where plotnine keeps the data, or None where it is not installed; nothing is imported."""
    found = importlib.util.find_spec("plotnine")
    if found is None or found.origin is None:
        return None
    file = Path(found.origin).parent / "data" / "diamonds.csv"
    return file if file.exists() else None


def stones(file: Path, *, cleaned: bool = True) -> Iterator[Stone]:
    """The stones with all three measurements; cleaned of typing errors."""
    with file.open(encoding="utf-8", newline="") as lines:
        for row in csv.DictReader(lines):
            x, y, z = (float(row[k]) for k in "xyz")
            if not x * y * z:
                continue
            off = abs(float(row["depth"]) - 100 * z / ((x + y) / 2)) > 1.0
            oval = abs(x - y) / ((x + y) / 2) > 0.05
            if not (cleaned and (off or oval)):
                yield Stone(float(row["carat"]), row["cut"], x, y, z)


def errors(rows: Sequence[Stone], constant: float) -> list[float]:
    """Estimate over truth, less one, of the round-brilliant formula, in percent, sorted."""
    return sorted(100 * (constant * ((s.x + s.y) / 2) ** 2 * s.z / s.carat - 1) for s in rows)


def summary(found: Sequence[float], half_width: float) -> dict[str, float]:
    """Median and spread of errors [%], and the share within 2, 3, 5 % and within the interval."""
    count = len(found)

    def within(limit: float) -> float:
        return 100 * sum(abs(e) <= limit for e in found) / count

    def quantile(share: float) -> float:
        at = share * (count - 1)
        low = int(at)
        return found[low] + (at - low) * (found[min(low + 1, count - 1)] - found[low])

    return {
        "n": count,
        "median": statistics.median(found),
        "mean abs": statistics.fmean(abs(e) for e in found),
        "sd": statistics.pstdev(found),
        "p2.5": quantile(0.025),
        "p97.5": quantile(0.975),
        "within 2": within(2),
        "within 3": within(3),
        "within 5": within(5),
        "in interval": within(100 * half_width),
    }


def constant() -> float:
    """The shipped constant of the round brilliant of diamond."""
    return next(f.factor for f in load().factors if f.id == "round-brilliant.diamond")


def weights(file: Path) -> dict[str, dict[str, float]]:
    """The table: all stones, cleaned ones, and these by cut grade."""
    k = constant()
    usual = weigh("round brilliant", "6.50x6.50x3.95mm ±0", material="diamond").half_width
    clean = list(stones(file))
    sets = {"all": list(stones(file, cleaned=False)), "cleaned": clean}
    for grade in ("Ideal", "Premium", "Very Good", "Good", "Fair"):
        sets[grade] = [s for s in clean if s.grade == grade]
    return {name: summary(errors(rows, k), usual) for name, rows in sets.items()}


def drawn(count: int) -> dict[str, tuple[int, float, float]]:
    """Bands of stated probability: stones, mean probability stated, share that was right."""
    library, dice = load(), random.Random(SEED)  # noqa: S311  # invented stones, no secret
    clues, prior = clues_of(library), priors()
    rows = {m.id: m for m in library.materials}
    names = [n for n in prior if n != OTHER]
    bands: dict[str, list[tuple[float, bool]]] = {}
    for _ in range(count):
        true = rows[dice.choices(names, [prior[n] for n in names])[0]]
        seen = []
        for test in library.gemtests:
            if test.id not in LOOKS or dice.random() < 0.25:
                continue
            chances = answers_on(test, true, clues) or {}
            answer = (
                dice.choice(list(test.answers))
                if dice.random() < test.error
                else dice.choices(list(chances), list(chances.values()))[0]
            )
            seen.append(Observation(test=test.id, answer=answer, shown=answer))
        if dice.random() < 0.5:
            side = abs(dice.gauss(0, 1))
            low, high = true.sg - true.sg_low, true.sg_high - true.sg
            up = dice.random() * (low + high) < high
            sg = true.sg + (high if up else -low) / 2 * side + dice.gauss(0, 0.05)
            seen.append(Observation(test="sg", low=sg, high=sg, u=0.05, shown=f"{sg:.2f}"))
        best = identify(seen, ahead=False).best
        band = f"{min(int(best.probability * 5), 4) * 20:02d}-{min(int(best.probability * 5), 4) * 20 + 20} %"
        bands.setdefault(band, []).append((best.probability, best.key == true.id))
    return {
        band: (
            len(found),
            100 * statistics.fmean(p for p, _ in found),
            100 * statistics.fmean(right for _, right in found),
        )
        for band, found in sorted(bands.items())
    }


def main() -> int:
    """Print the tables."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--json", action="store_true")
    parser.add_argument("--drawn", type=int, default=2000, metavar="N", help="invented stones")
    asked = parser.parse_args()
    file = data_file()
    table = weights(file) if file else {}
    bands = drawn(asked.drawn)
    if asked.json:
        print(json.dumps({"weights": table, "identification": bands}))
        return 0
    if not table:
        print("plotnine is not installed: no stones to weigh", file=sys.stderr)
    else:
        heads = list(next(iter(table.values())))
        print(
            "Round brilliants, errors in percent", "| set | " + " | ".join(heads) + " |", sep="\n"
        )
        print("| --- " * (len(heads) + 1) + "|")
        for name, row in table.items():
            cells = [f"{row[h]:,.0f}" if h == "n" else f"{row[h]:.2f}" for h in heads]
            print(f"| {name} | " + " | ".join(cells) + " |")
    print("\nIdentification of invented stones", "| stated | n | mean | right |", sep="\n")
    for band, (count, stated, right) in bands.items():
        print(f"| {band} | {count} | {stated:.0f} | {right:.0f} |")
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
