"""A simulated assay study: is the composition finding right as often as it says?

    python benchmarks/assay.py [--pieces 5000] [--seed 1] [--jobs 1] [--shift] [--json]

Pieces are drawn over all compositions by the library's shares and made by physics
(assay_pieces.py), half of them with marks, which are sometimes false. Each goes to a tester with some
of the instruments; one half of the testers follow the next test advised until enough is known, the
other half do two to five tests at random, some of them twice. What the finding says is then compared
with what the piece is: for the leading kind (solid, plated, filled, base), for the leading
composition, and for every composition that is given a probability of 2 % or more. A band counts with
100 statements. Exit code 1 where a band is off by more than 0.05, or one in a thousand plated pieces
or more is called solid at 0.95.

--shift draws pieces by other shares than the library's (half, as many or twice each), to show what
wrong shares cost; no bound is promised there.
"""

import argparse
import json
import math
import random
import sys
import time
from collections import Counter
from concurrent.futures import ProcessPoolExecutor
from itertools import pairwise
from pathlib import Path
from typing import Any, NamedTuple

sys.path.insert(0, str(Path(__file__).parent))
from assay_pieces import Piece, instruments, marks, piece, read

from planish.metal.composition import shipped_composition_bench
from planish.metal.composition_next import TestAdviser
from planish.metal.composition_prior import Claim
from planish.metal.testlog import Entry, Where

BANDS = (0.0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 0.99, 1.0)
#: fewer statements than this make no band
LEAST = 100
_SURE = 0.95
_OFF = 0.05
_MOST_TESTS = 7
_EYES = ("magnet", "look", "edges", "inside", "filling", "sound", "thermal", "tarnish")
_TOOLS = ("xrf", "density", "conductivity", "assay")
_DROPS = ("touchstone", "dichromate", "nitric", "notch")
_ADVISER: list[TestAdviser] = []


class Result(NamedTuple):
    """One piece: what it was, and what was said of it."""

    made: str
    kind: str
    policy: str
    tests: int
    harmful: int
    said: dict[str, float]
    kinds: dict[str, float]
    log: tuple[Entry, ...]
    claims: tuple[Claim, ...]


def adviser() -> TestAdviser:
    """The adviser over the shipped bench, made once in a process."""
    if not _ADVISER:
        _ADVISER.append(TestAdviser(shipped_composition_bench()))
    return _ADVISER[0]


def draw(r: random.Random, *, shift: bool) -> tuple[Piece, tuple[Claim, ...]]:
    """A piece with what its marks say."""
    rows = adviser().bench.compositions
    shares = [row.share for row in rows]
    if shift:
        fixed = random.Random(7)  # noqa: S311  # a study that repeats
        shares = [s * fixed.choice([0.5, 1.0, 2.0]) for s in shares]
    marked = r.random() < 0.5
    while True:
        row = r.choices(rows, shares)[0]
        made = piece(row.id, row.kind, r)
        if not marked:
            return made, ()
        said = marks(made, r)
        if said:
            if r.random() < 0.03:  # a mark read wrongly: as if another piece's
                other = r.choices(rows, shares)[0]
                said = marks(piece(other.id, other.kind, r), r) or said
            return made, (Claim(kind=said[0], fineness=said[1], probability=0.97),)


class _Tester:
    """One tester at one piece."""

    def __init__(self, made: Piece, r: random.Random) -> None:
        self.made, self.r = made, r
        self.how = instruments(r)
        chances = zip(_TOOLS, (0.5, 0.7, 0.4, 0.1), strict=True)
        self.have = {tool for tool, p in chances if r.random() < p}
        self.have |= set(_DROPS) if r.random() < 0.5 else set()
        self.consent = r.random() < 0.5
        self.entries: list[Entry] = []

    def do(self, test: str, where: Where, spot: str) -> None:
        """Make a test; half of the X-ray shots tell what is beside silver."""
        agreed = self.consent or None
        shown = read(test, where.value, self.made, self.how, self.r)
        self.entries.append(Entry(test=test, where=where, spot=spot, agreed=agreed, **shown))
        if test == "xrf" and self.r.random() < 0.5:
            beside = read("xrf-beside", where.value, self.made, self.how, self.r)
            self.entries.append(Entry(test="xrf-beside", where=where, spot=spot, **beside))

    def advised(self, claims: tuple[Claim, ...]) -> None:
        """Follow the advice until nothing is advised."""
        advise = adviser()
        without = {*_TOOLS, *_DROPS} - self.have
        for _ in range(_MOST_TESTS):
            found = advise.bench.weigh(self.entries, claims)
            first = advise.advise(found, without=without, consent=self.consent).first
            if first is None:
                return
            self.do(first.test, first.where, first.spot)

    def at_random(self) -> None:
        """Two to five tests, whatever comes."""
        pool = [*_EYES, *sorted(self.have - {"assay"})] * 2
        for n in range(self.r.randint(2, 5)):
            test = self.r.choice(pool)
            where = Where.SURFACE
            if test in ("notch", "nitric") or (test == "dichromate" and self.consent):
                where = Where.CUT
            elif test == "xrf" and self.r.random() < 0.4:
                where = Where.WORN
            self.do(test, where, self.r.choice(["rim", "foot", f"place {n}"]))


def study(number: int, seed: int, *, shift: bool = False) -> Result:
    """One piece, tested."""
    r = random.Random(seed * 1_000_003 + number)  # noqa: S311  # a study that repeats
    made, claims = draw(r, shift=shift)
    tester = _Tester(made, r)
    policy = "advised" if number % 2 else "random"
    if policy == "advised":
        tester.advised(claims)
    else:
        tester.at_random()
    bench = adviser().bench
    found = bench.weigh(tester.entries, claims)
    return Result(
        made=made.made,
        kind=made.kind,
        policy=policy,
        tests=len(tester.entries),
        harmful=sum(bench.tests[e.test].harm > 0 for e in tester.entries),
        said={h.key: h.probability for h in found.finding.hypotheses},
        kinds=dict(found.kinds),
        log=tuple(tester.entries),
        claims=claims,
    )


class Band(NamedTuple):
    """A band of a table of calibration."""

    low: float
    high: float
    n: int
    said: float
    right: float

    @property
    def off(self) -> float:
        """Share right less probability said."""
        return self.right - self.said

    @property
    def error(self) -> float:
        """Standard error of the share right, were the probabilities true."""
        return math.sqrt(max(self.said * (1 - self.said), 1e-4) / self.n)


def bands(statements: list[tuple[float, bool]]) -> list[Band]:
    """The table of calibration."""
    found = []
    for low, high in pairwise(BANDS):
        inside = [(p, ok) for p, ok in statements if low <= p < high or p == high == 1.0]
        if inside:
            n = len(inside)
            said, right = sum(p for p, _ in inside) / n, sum(ok for _, ok in inside) / n
            found.append(Band(low, high, n, said, right))
    return found


def tables(results: list[Result]) -> dict[str, list[Band]]:
    """Calibration of the leading kind, the leading composition, and all compositions."""
    kind, best, every = [], [], []
    for r in results:
        top = max(r.kinds, key=lambda k, r=r: r.kinds[k])  # type: ignore[misc]  # bound at once
        kind.append((r.kinds[top], top == r.kind))
        first = max(r.said, key=lambda k, r=r: r.said[k])  # type: ignore[misc]  # bound at once
        best.append((r.said[first], first == r.made))
        every += [(p, k == r.made) for k, p in r.said.items() if p >= 0.02]
    return {
        "leading kind": bands(kind),
        "leading composition": bands(best),
        "every composition": bands(every),
    }


def summary(results: list[Result]) -> dict[str, Any]:
    """What is measured beside the tables."""
    called = Counter(r.kind for r in results if r.kinds.get("solid", 0.0) >= _SURE)
    n = Counter(r.kind for r in results)
    out: dict[str, Any] = {"pieces": len(results)}
    for kind in ("plated", "base", "filled", "solid"):
        out[f"{kind} called solid at 0.95 or more"] = [called[kind], n[kind]]
    for policy in ("advised", "random"):
        some = [r for r in results if r.policy == policy]
        tops = [max(r.kinds.items(), key=lambda item: item[1]) for r in some]
        right = sum(kind == r.kind for (kind, _), r in zip(tops, some, strict=True))
        out[policy] = {
            "pieces": len(some),
            "tests a piece": round(sum(r.tests for r in some) / len(some), 2),
            "harmful tests a piece": round(sum(r.harmful for r in some) / len(some), 3),
            "kind right": round(right / len(some), 3),
            "kind at 0.95 or more": round(sum(p >= _SURE for _, p in tops) / len(some), 3),
        }
    return out


def _one(job: tuple[int, int, bool]) -> Result:
    return study(job[0], job[1], shift=job[2])


def run(pieces: int, seed: int, *, jobs: int = 1, shift: bool = False) -> list[Result]:
    """The whole study."""
    work = [(n, seed, shift) for n in range(pieces)]
    if jobs == 1:
        return [_one(job) for job in work]
    with ProcessPoolExecutor(jobs) as pool:
        return list(pool.map(_one, work, chunksize=50))


def _print(found: dict[str, list[Band]], told: dict[str, Any]) -> None:
    for name, table in found.items():
        print(f"\n{name}\n\n| said | n | mean said | right | off | 2 s.e. |")
        print("| --- | --- | --- | --- | --- | --- |")
        for b in table:
            few = "" if b.n >= LEAST else " (few)"
            cells = f"{b.said:.3f} | {b.right:.3f} | {b.off:+.3f} | {2 * b.error:.3f}"
            print(f"| {b.low:.2f}-{b.high:.2f} | {b.n}{few} | {cells} |")
    print()
    for key, value in told.items():
        print(f"{key}: {value}")


def main() -> None:
    """Print the tables; exit 1 where a bound is broken."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").split("\n", maxsplit=1)[0])
    parser.add_argument("--pieces", type=int, default=5000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--jobs", type=int, default=1)
    parser.add_argument("--shift", action="store_true")
    parser.add_argument("--json", action="store_true")
    args = parser.parse_args()
    start = time.perf_counter()
    results = run(args.pieces, args.seed, jobs=args.jobs, shift=args.shift)
    found, told = tables(results), summary(results)
    worst = max((abs(b.off) for t in found.values() for b in t if b.n >= LEAST), default=0.0)
    told["worst band"] = round(worst, 3)
    told["seconds"] = round(time.perf_counter() - start, 1)
    if args.json:
        shown = {name: [b._asdict() for b in table] for name, table in found.items()}
        print(json.dumps({**told, "tables": shown}, indent=1))
    else:
        _print(found, told)
    wrong, plated = told["plated called solid at 0.95 or more"]
    sys.exit(1 if not args.shift and (worst > _OFF or wrong * 1000 >= plated) else 0)


if __name__ == "__main__":
    main()
