"""Which test to do next, and whether it is worth its harm.

For each test not yet made: the expected information, in bits, on the answer that matters (which
silver, or plated, filled, base), that is the mutual information between what the test may show and
the answer (C. E. Shannon, Bell System Technical Journal 27, 1948); less what it costs: ``effort`` and
``harm`` of the table ``tests``. A test that leaves something behind is advised only if it is worth its
harm, the owner's consent is on record, and no test that leaves nothing is worth doing first. Where
nothing is worth it, enough is known.
"""

import math
from collections import defaultdict
from collections.abc import Iterable, Sequence
from itertools import pairwise

import msgspec

from planish.library.rows import MetalTest
from planish.metal.composition import CompositionBench, CompositionFinding
from planish.metal.composition_likelihood import Shown
from planish.metal.testlog import PLUS_MINUS, Entry, Where

#: limits of what figures tell apart, in the unit of the test: midway between the materials
_BOUNDS = {
    "xrf": (2.0, 30.0, 65.0, 77.0, 81.5, 85.5, 88.8, 91.3, 93.8, 96.6, 98.7),
    "density": (5.0, 7.0, 7.55, 8.2, 8.6, 8.85, 9.1, 9.7, 10.05, 10.19, 10.28, 10.35, 10.43),
    "conductivity": (4.0, 7.5, 13.0, 22.0, 45.0, 70.0, 85.0, 92.0, 99.0),
    "touchstone": (650.0, 780.0, 850.0, 890.0, 940.0, 980.0),
    "assay": (300.0, 780.0, 815.0, 832.5, 855.0, 887.5, 912.0, 938.0, 954.0, 980.0),
}
#: standard uncertainty that a test is expected to have
_TYPICAL = {**PLUS_MINUS, "density": 0.05, "xrf": 0.6}
#: tests that may be made at several places, with what they meet there
_PLACES = {
    "xrf": (Where.SURFACE, Where.WORN),
    "dichromate": (Where.SURFACE, Where.CUT),
    "nitric": (Where.CUT,),
    "notch": (Where.CUT,),
}
#: shown with a shot of X-rays, never asked for alone
_NOT_ALONE = frozenset({"xrf-beside"})
#: harm of filing, added where a test asks for a filed place and does not count it already [bits]
_FILING = 0.3
#: least expected information worth naming [bits]; judgment
WORTH = 0.05
#: from here on the kind is taken as known, and only finer questions remain
SURE = 0.99
#: histories less likely than this are left out of the reckoning
_KEEP = 1e-6


class Outcome(msgspec.Struct, frozen=True, kw_only=True):
    """What one outcome would settle: its chance, and the likeliest answer with it."""

    shows: str
    chance: float
    then: str
    probability: float


class NextTest(msgspec.Struct, frozen=True, kw_only=True):
    """A test not yet made.

    information: expected [bits]; cost: harm and effort [bits]. held_back: why it is not advised
    (worth less than it costs, consent, harmless tests first); blank where it is.
    """

    test: str
    label: str
    where: Where
    spot: str
    done: str
    information: float
    cost: float
    harm: float
    leaves: str
    caution: str
    held_back: str
    outcomes: tuple[Outcome, ...]
    sources: tuple[str, ...] = ()

    @property
    def worth(self) -> float:
        """Information less cost [bits]."""
        return self.information - self.cost


class Advice(msgspec.Struct, frozen=True, kw_only=True):
    """What to do next: ``advised`` best first; ``held_back`` with the reasons; ``enough`` in words."""

    advised: tuple[NextTest, ...]
    held_back: tuple[NextTest, ...]
    enough: str

    @property
    def first(self) -> NextTest | None:
        """The test to do next, if any."""
        return self.advised[0] if self.advised else None


class TestAdviser:
    """Next tests over one bench; what each test shows on each history is reckoned once."""

    __test__ = False  # no test of the test runner's

    def __init__(self, bench: CompositionBench) -> None:
        self.bench = bench
        answers = [_answer(row.kind, row.fineness) for row in bench.compositions]
        names = sorted(set(answers))
        self._answers = tuple(names)
        self._of_history = [names.index(answers[h.hypothesis]) for h in bench.histories]
        self._tables: dict[tuple[str, Where], tuple[tuple[float, ...], ...]] = {}

    def advise(
        self,
        found: CompositionFinding,
        *,
        without: Iterable[str] = (),
        consent: bool = False,
    ) -> Advice:
        """What to test next.

        without: ids of tests that cannot be made. consent: whether the owner agreed, on record, to
        tests that leave something behind.
        """
        barred = set(without)
        made = {(e.test, _place(e)) for e in found.weighed}
        alive = [(i, w) for i, w in enumerate(found.weights) if w > _KEEP]
        tests = []
        for test in self.bench.tests.values():
            if test.id in barred or test.id in _NOT_ALONE or test.meets == "unweighed":
                continue
            places = _PLACES.get(test.id, (Where.SURFACE,))
            tests += [self._judge(test, w, alive) for w in places if (test.id, w) not in made]
        tests.sort(key=lambda t: -t.worth)
        return self._sorted(found, tests, consent=consent)

    def _sorted(
        self, found: CompositionFinding, tests: Sequence[NextTest], *, consent: bool
    ) -> Advice:
        advised: list[NextTest] = []
        held: list[NextTest] = []
        harmless = any(t.harm == 0.0 and _worth_doing(t) for t in tests)
        for test in tests:
            reason = _held_back(test, consent=consent, harmless=harmless)
            if reason:
                held.append(msgspec.structs.replace(test, held_back=reason))
            else:
                advised.append(test)
        chance = found.kinds[0][1]
        enough = ""
        if not advised:
            best = found.best
            if chance >= SURE or best.probability >= SURE:
                enough = "enough is known: no test is worth what it costs"
            elif any("consent" in t.held_back for t in held):
                enough = "not settled, and what would settle it needs the owner's consent"
            else:
                enough = "not settled, and no test here would change that by what it costs"
        worthy = [t for t in held if t.information >= WORTH]
        return Advice(advised=tuple(advised), held_back=tuple(worthy), enough=enough)

    def _chances(self, test: MetalTest, where: Where) -> tuple[tuple[float, ...], ...]:
        """Chance of each outcome on each history; equal rows are the same object."""
        key = (test.id, where)
        if key not in self._tables:
            responses = self.bench.responses
            if test.id in _BOUNDS:
                rows = tuple(_shares(test.id, at) for at in responses.figures(test.id, where))
            else:
                made = {
                    m: tuple(responses.table(test.id, m)[r] for r in test.choices)
                    for m in set(responses.met(test, where))
                }
                rows = tuple(made[m] for m in responses.met(test, where))
            self._tables[key] = rows
        return self._tables[key]

    def _judge(self, test: MetalTest, where: Where, alive: Sequence[tuple[int, float]]) -> NextTest:
        n = len(_BOUNDS[test.id]) + 1 if test.id in _BOUNDS else len(test.choices)
        joint = [[0.0] * n for _ in self._answers]
        rows, answers = self._chances(test, where), self._of_history
        # histories with one answer and one row of chances count together
        grouped: dict[tuple[int, tuple[float, ...]], float] = defaultdict(float)
        for at, weight in alive:
            grouped[answers[at], rows[at]] += weight
        for (answer, chances), weight in grouped.items():
            row = joint[answer]
            for k, p in enumerate(chances):
                row[k] += weight * p
        filing = _FILING if where is Where.CUT and test.id != "notch" else 0.0
        harm = test.harm + filing
        return NextTest(
            test=test.id, label=test.label, where=where, spot=_spot(test, where), done=test.done,
            information=_information(joint), cost=harm + test.effort, harm=harm,
            leaves=test.leaves + (" and a filed notch" if filing else ""), caution=test.caution,
            held_back="", outcomes=self._outcomes(test, joint), sources=test.sources,
        )  # fmt: skip

    def _outcomes(self, test: MetalTest, joint: Sequence[Sequence[float]]) -> tuple[Outcome, ...]:
        names = _bands(test) if test.id in _BOUNDS else [r.replace("-", " ") for r in test.choices]
        found = []
        for k, name in enumerate(names):
            chance = sum(row[k] for row in joint)
            if chance < 0.005:
                continue
            best = max(range(len(joint)), key=lambda a: joint[a][k])
            found.append(
                Outcome(shows=name, chance=chance, then=self._answers[best],
                        probability=joint[best][k] / chance)
            )  # fmt: skip
        return tuple(sorted(found, key=lambda o: -o.chance))


def _shares(test: str, at: Shown) -> tuple[float, ...]:
    """Chance of each band of a figure."""
    scale = math.sqrt(2.0 * (at.variance + _TYPICAL[test] ** 2))
    steps = [0.5 * math.erfc((at.mean - bound) / scale) for bound in _BOUNDS[test]]
    cut = [0.0, *steps, 1.0]
    n = len(cut) - 1
    return tuple((1.0 - at.slip) * (b - a) + at.slip / n for a, b in pairwise(cut))


def _answer(kind: str, fineness: float | None) -> str:
    """What matters: the silver's standard, or that it is none."""
    if kind != "solid" or fineness is None:
        return {"plated": "plated", "base": "base metal", "filled": "filled"}.get(kind, kind)
    # 830 and 835, 950 and 958 are worth the same to anybody
    group = {830.0: "830 or 835", 835.0: "830 or 835", 950.0: "950 or 958", 958.0: "950 or 958"}
    if fineness == 700.0:
        return "silver below 800"
    return f"silver {group.get(fineness, f'{fineness:g}')}"


def _place(entry: Entry) -> Where:
    places = _PLACES.get(entry.test, (Where.SURFACE,))
    return entry.where if entry.where in places else places[0]


def _spot(test: MetalTest, where: Where) -> str:
    if where is Where.WORN:
        return "where it is worn most: heel of a spoon, rim, foot, raised ornament"
    if where is Where.CUT and test.id != "notch":
        return "a small filed notch at a hidden edge"
    return test.where


def _bands(test: MetalTest) -> list[str]:
    bounds = _BOUNDS[test.id]
    unit = test.unit
    middle = [f"{a:g} to {b:g} {unit}" for a, b in pairwise(bounds)]
    return [f"below {bounds[0]:g} {unit}", *middle, f"above {bounds[-1]:g} {unit}"]


def _information(joint: Sequence[Sequence[float]]) -> float:
    """Mutual information of rows and columns [bits]."""
    rows = [sum(row) for row in joint]
    columns = [sum(column) for column in zip(*joint, strict=True)]
    total = sum(rows)
    return sum(
        p / total * math.log2(p * total / (r * c))
        for row, r in zip(joint, rows, strict=True)
        for p, c in zip(row, columns, strict=True)
        if p > 0.0
    )


def _worth_doing(test: NextTest) -> bool:
    return test.worth > 0.0 and test.information >= WORTH


def _held_back(test: NextTest, *, consent: bool, harmless: bool) -> str:
    if not _worth_doing(test):
        return "would tell less than it costs"
    if test.harm <= 0.0:
        return ""
    if harmless:
        return f"leaves {test.leaves}: do first what leaves nothing"
    if not consent:
        return f"leaves {test.leaves}: needs the owner's consent on record"
    return ""
