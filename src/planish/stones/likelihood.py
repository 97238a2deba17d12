"""How likely an observation is on each material.

Specific gravity: a two-piece normal curve with its top at the usual figure and the limits at two
standard deviations, widened by the uncertainty of the weighing. Refractive index: even between the
material's lowest and highest, blurred by the uncertainty. Answers in words: the library's chances.
Each is mixed with the test's chance of error, so that no single observation decides alone.
Judgment throughout; the law of the finding (evidence/finding.py) does the rest.
"""

import math
from collections.abc import Mapping
from functools import cache

from planish.library import Library
from planish.library.stone_rows import GemTest, Material, chances
from planish.stones.observation import OVER, SCALE_END, Observation

#: the hypothesis that it is none of the materials of the library
OTHER = "other"
_STEEL = 5.5  # hardness of a steel point, Mohs (common practice)
_SPANS = {"sg": (0.9, 7.9), "ri": (1.33, 1.85)}
#: chance of any reading on what gives none, such as metal and wood (judgment)
_HARDLY = 0.2
_NARROWEST = {"sg": 0.01, "ri": 0.002}


def _normal(x: float) -> float:
    return 0.5 * math.erfc(-x / math.sqrt(2))


def gravity_density(row: Material, figure: float, u: float) -> float:
    """Density [per unit] of a reading of specific gravity on a material."""
    low = math.hypot(max((row.sg - row.sg_low) / 2, _NARROWEST["sg"]), u)
    high = math.hypot(max((row.sg_high - row.sg) / 2, _NARROWEST["sg"]), u)
    side = low if figure < row.sg else high
    top = math.sqrt(2 / math.pi) / (low + high)
    return top * math.exp(-0.5 * ((figure - row.sg) / side) ** 2)


def index_density(row: Material, figure: float, u: float) -> float:
    """Density [per unit] of one reading of the index on a material.

    Where none can be read, a reading is mostly an error: even, and seldom.
    """
    if row.ri_low is None or row.ri_high is None:
        low, high = _SPANS["ri"]
        return _HARDLY / (high - low)
    width = max(row.ri_high - row.ri_low, _NARROWEST["ri"])
    middle = (row.ri_low + row.ri_high) / 2
    low, high = middle - width / 2, middle + width / 2
    return (_normal((high - figure) / u) - _normal((low - figure) / u)) / width


def _edges_density(row: Material, seen: Observation) -> float:
    """Density of two edges: those of a crystal stand near the ends of its span."""
    if row.ri_low is None or row.ri_high is None:
        low, high = _SPANS["ri"]
        return _HARDLY * 2.0 / (high - low) ** 2
    gap = max((row.ri_high - row.ri_low) / 2, 2 * _NARROWEST["ri"])
    u = math.hypot(seen.u, gap / 2)
    at_low = math.exp(-0.5 * ((seen.low - row.ri_low) / u) ** 2)
    at_high = math.exp(-0.5 * ((seen.high - row.ri_high) / u) ** 2)
    return at_low * at_high / (2 * math.pi * u * u)


def _over_chance(row: Material) -> float:
    if row.ri_low is None or row.ri_high is None:
        return 0.3
    width = max(row.ri_high - row.ri_low, 0.01)
    return min(1.0, max(0.0, (row.ri_high - SCALE_END) / width))


Clues = Mapping[tuple[str, str], Mapping[str, float]]


def clues_of(library: Library) -> Clues:
    """The library's clues: chances of each answer by test and target."""
    return {(c.test, c.target): _shares(c.chances) for c in library.clues}


@cache
def _shares(text: str) -> Mapping[str, float]:
    found = chances(text)
    total = math.fsum(found.values())
    return {word: figure / total for word, figure in found.items()}


@cache
def _count(values: str) -> int:
    """How many answers a test has."""
    return sum(bool(value.strip()) for value in values.split(";"))


def answers_on(test: GemTest, row: Material, clues: Clues) -> Mapping[str, float] | None:
    """Chance of each answer of a test in words on a material, without error; None if not told."""
    if test.id in ("colour", "lustre", "transparency"):
        return _shares(str(getattr(row, test.id)))
    if test.id == "scratch":
        middle = sum(row.mohs) / 2
        soft = 1.0 / (1.0 + math.exp((middle - _STEEL) / 0.4))
        return {"scratched": soft, "not": 1.0 - soft}
    for target in (row.id, row.kind, "*"):
        if (test.id, target) in clues:
            return clues[test.id, target]
    return None


def likelihood(seen: Observation, test: GemTest, row: Material | None, clues: Clues) -> float:
    """Chance (of an answer) or density (of a figure) on a material; None stands for all others.

    Always above zero.
    """
    if test.id in _SPANS and seen.answer != OVER:
        low, high = _SPANS[test.id]
        edges = test.id == "ri" and seen.low < seen.high
        even = 2.0 / (high - low) ** 2 if edges else 1.0 / (high - low)
        if row is None:
            return even
        middle = (seen.low + seen.high) / 2
        # a range of gravity is a figure with limits
        u = math.hypot(seen.u, (seen.high - seen.low) / math.sqrt(12))
        if edges:
            own = _edges_density(row, seen)
        elif test.id == "ri":
            own = index_density(row, middle, seen.u)
        else:
            own = gravity_density(row, middle, u)
        return (1.0 - test.error) * own + test.error * even
    if seen.answer == OVER:
        own = 0.2 if row is None else _over_chance(row)
        return (1.0 - test.error) * own + test.error * 0.2
    even = 1.0 / _count(test.values)
    told = None if row is None else answers_on(test, row, clues)
    if told is None:
        return even
    return (1.0 - test.error) * told.get(seen.answer, 0.0) + test.error * even
