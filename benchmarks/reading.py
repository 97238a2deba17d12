"""Time the reading engine: import, layout of the library, and one reading after another."""

import argparse
import json
import platform
import random
import statistics
import subprocess
import sys
import time
from collections.abc import Callable, Sequence
from pathlib import Path

SEED = 20_260_101
INVENTED = 60
SHARED = Path(__file__).resolve().parents[2] / "shared" / "museum" / "records.jsonl"


def import_seconds() -> float:
    """Seconds that a fresh interpreter takes to import the engine; the best of three [s]."""
    code = (
        "import time; t = time.perf_counter(); import planish.marks; print(time.perf_counter() - t)"
    )
    runs = [
        subprocess.run(  # noqa: S603  # our own interpreter
            [sys.executable, "-c", code], capture_output=True, text=True, check=True
        )
        for _ in range(3)
    ]
    return min(float(r.stdout) for r in runs)


def invented(count: int) -> list[tuple[str, str | None]]:
    """Descriptions made up from the library's own devices, words and letters, by a fixed seed."""
    from planish.library import load  # noqa: PLC0415  # imported after it was timed
    from planish.marks.where import forms  # noqa: PLC0415  # as above

    library = load()
    chance = random.Random(SEED)  # noqa: S311  # the same marks in every run
    devices = sorted(d.label for d in library.devices)
    words = sorted({w.text for w in library.words})
    known = forms(library)
    made: list[tuple[str, str | None]] = []
    for _ in range(count):
        marks = [chance.choice(devices) for _ in range(chance.randint(0, 3))]
        if chance.random() < 0.4:
            marks.append(chance.choice(words))
        style = chance.choice(["", "script ", "black letter ", "italic "])
        marks.append(f"{style}{chance.choice('abcdefghklmnopqrstuvABCDEFGHKLMN')}")
        marks.append("".join(chance.choice("ABCDEFGHIJKLMNOPRSTW") for _ in range(2)))
        chance.shuffle(marks)
        made.append((", ".join(marks), chance.choice(known) if known else None))
    return made


def described(file: Path) -> list[tuple[str, str | None]]:
    """Descriptions of a file of pieces, or of museum records (``marks_text_blind``)."""
    rows = [json.loads(line) for line in file.read_text(encoding="utf-8").splitlines() if line]
    return [
        (r.get("description") or r.get("marks_text_blind") or "", r.get("form") or r.get("object"))
        for r in rows
    ]


def made_up_makers(count: int) -> list[object]:
    """Makers made up by a fixed seed: two to four initials, or a name, with a place and years."""
    from planish.library.rows import Confidence, Maker  # noqa: PLC0415  # imported after it was timed

    chance = random.Random(SEED)  # noqa: S311  # the same makers in every run
    letters = "ABCDEFGHIKLMNPRSTW"
    made: list[object] = []
    for n in range(count):
        first, last = chance.choice(letters), chance.choice(letters)
        name = last + "".join(chance.choice("aeioulnrst") for _ in range(chance.randint(4, 9)))
        begun = chance.randint(1650, 1950)
        mark = chance.choice(
            (
                first + last,
                f"{first}·{last}",
                f"{first}.{name.upper()}",
                f"{first}{last}/{last}{first}",
            )
        )
        made.append(
            Maker(
                id=f"made-{n}", name=f"{first}. {name}", marks=mark,
                place=chance.choice(("London", "Birmingham", "Sheffield", "New York", "Boston", "Paris")),
                country=chance.choice(("GB", "GB", "GB", "US", "US", "FR")),
                year_from=begun, year_to=begun + chance.randint(3, 40),
                source="practice", confidence=Confidence.PRACTICE,
            )
        )  # fmt: skip
    return made


def registers(
    pieces: Sequence[tuple[str, str | None]], counts: Sequence[int]
) -> list[dict[str, object]]:
    """Whole readings with registers of several sizes, beside RapidFuzz scanning each for the maker.

    RapidFuzz (ratio, best five) gets the first text mark alone and the register's marks: what a
    plain fuzzy look-up would do, with no reading of anything else.
    """
    from rapidfuzz import fuzz, process  # noqa: PLC0415  # a peer, for this table only

    from planish.marks import Reader, describe  # noqa: PLC0415  # imported after it was timed

    rows: list[dict[str, object]] = []
    for count in counts:
        makers = made_up_makers(count)
        start = time.perf_counter()
        reader = Reader(more_makers=makers)  # type: ignore[arg-type]  # made above
        built = time.perf_counter() - start
        marks = [m.marks for m in reader.register.makers]

        def scan(text: str, _form: str | None, marks: list[str] = marks) -> object:
            first = next((m.text for m in describe(text).marks if m.text), None)
            return first and process.extract(first, marks, scorer=fuzz.ratio, limit=5)

        rows.append(
            {
                "makers": len(marks),
                "built_s": round(built, 2),
                "read": timed(pieces, lambda t, f, r=reader: r.read(describe(t), f, explain=False)),
                "whole": timed(pieces, lambda t, f, r=reader: r.read(describe(t), f)),
                "scan": timed(pieces, scan),
            }
        )
    return rows


def timed(
    pieces: Sequence[tuple[str, str | None]], work: Callable[[str, str | None], object]
) -> dict[str, float]:
    """Readings a second, median and 95th percentile [ms] of one pass."""
    took = []
    for text, form in pieces:
        start = time.perf_counter()
        work(text, form)
        took.append(time.perf_counter() - start)
    return {
        "pieces": len(took),
        "per_second": round(len(took) / sum(took), 1),
        "median_ms": round(statistics.median(took) * 1000, 1),
        "p95_ms": round(statistics.quantiles(took, n=20)[-1] * 1000, 1),
    }


def main() -> None:
    """Run the benchmark and print its table."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("records", nargs="?", type=Path, help="a file of pieces, one JSON a line")
    parser.add_argument("--count", type=int, default=INVENTED, help="invented sets of marks")
    parser.add_argument("--makers", type=int, nargs="*", metavar="N",
                        help="also with N made-up makers joined to the register, beside RapidFuzz")  # fmt: skip
    parser.add_argument("--json", action="store_true", help="print JSON")
    asked = parser.parse_args()
    result: dict[str, object] = {
        "machine": f"{platform.machine()}, Python {platform.python_version()}",
        "import_s": round(import_seconds(), 3),
    }
    from planish.marks import Reader, describe  # noqa: PLC0415  # imported after it was timed

    start = time.perf_counter()
    reader = Reader()
    result["layout_s"] = round(time.perf_counter() - start, 3)
    sets = {"invented": invented(asked.count)}
    if asked.records:
        sets[asked.records.name] = described(asked.records)
    elif SHARED.is_file():
        sets["museum"] = described(SHARED)
    works: dict[str, Callable[[str, str | None], object]] = {
        "describe": lambda text, _form: describe(text),
        "read, no ledger": lambda text, form: reader.read(describe(text), form, explain=False),
        "read, whole": lambda text, form: reader.read(describe(text), form),
    }
    result["sets"] = {
        name: {label: timed(pieces, work) for label, work in works.items()}
        for name, pieces in sets.items()
    }
    if asked.makers is not None:
        pieces = sets.get("museum") or next(iter(sets.values()))
        result["registers"] = registers(pieces, asked.makers or (1_000, 10_000, 100_000))
    print(json.dumps(result) if asked.json else _table(result))


def _table(result: dict[str, object]) -> str:
    lines = [
        str(result["machine"]),
        f"import {result['import_s']} s, layout of the library {result['layout_s']} s",
        "",
        "| marks | work | pieces | a second | median ms | 95 % ms |",
        "| --- | --- | --- | --- | --- | --- |",
    ]
    sets = result["sets"]
    assert isinstance(sets, dict)  # noqa: S101  # made above
    lines += [
        f"| {name} | {label} | {t['pieces']} | {t['per_second']} | {t['median_ms']} | {t['p95_ms']} |"
        for name, works in sets.items()
        for label, t in works.items()
    ]
    rows = result.get("registers")
    if isinstance(rows, list):
        lines += [
            "",
            "| makers | built s | read, no ledger: median, 95 % ms | read, whole: median, 95 % ms | RapidFuzz scan alone: median, 95 % ms |",
            "| --- | --- | --- | --- | --- |",
        ]
        lines += [
            f"| {r['makers']} | {r['built_s']} | "
            + " | ".join(
                f"{r[k]['median_ms']}, {r[k]['p95_ms']}" for k in ("read", "whole", "scan")
            )
            + " |"
            for r in rows
        ]
    return "\n".join(lines)


if __name__ == "__main__":
    main()
