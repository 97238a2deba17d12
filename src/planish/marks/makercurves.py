"""Per year, how well a mark fits the makers that a register knows for a country and place.

The ratio is the chance of the mark under "a listed maker of this country, place and year, or one
whom the register does not list", over its chance as letters taken at random.
"""

import re
from bisect import bisect_left, bisect_right
from collections import defaultdict
from itertools import accumulate

from planish.library.rows import Maker
from planish.marks.contents import ALPHABET
from planish.marks.plan import Segment
from planish.marks.register import Candidate, Register, phases
from planish.marks.seen import Seen, fold

#: makers at work in a country at any time that a register does not list: the share of pieces by a
#: listed maker is listed / (listed + this). Common practice; docs/honesty.md
_UNLISTED = 120.0
_CONTENT_CAP = 3000.0
#: a maker of another town marked at this office, relative to one of the town (common practice)
_ELSEWHERE = 0.12
#: with more candidates than this, working years are taken to five years
_FEW, _COARSE = 20, 5
#: how many makers were at work is taken every forty years
_ACTIVE_GRID, _FIRST, _LAST = 40, 1280, 2040
_NO_ONE_TOWN = frozenset({"national", "several towns"})
_PLATE_TOO = re.compile(r"silver and plate|plate and|fused plate|plated")
_PLATE_ONLY = re.compile(r"^(?:plate|electroplate|fused plate|plated wares?)\b", re.IGNORECASE)

Steps = dict[int, float]


def office_name(segment: Segment) -> str:
    """Folded name of the segment's town; blank where the office is no one town."""
    office = segment.office
    return fold(office.name) if office and office.kind not in _NO_ONE_TOWN else ""


def place_fit(maker: Maker, office: str) -> float:
    """Chance, relative, that a maker of that place marked at the office (a folded name)."""
    if not office or not maker.place or office in fold(maker.place):
        return 1.0
    return _ELSEWHERE


def trade_fit(maker: Maker, *, plated: bool) -> float:
    """Chance, relative, that a maker of these wares marked solid or plated ware."""
    only = bool(_PLATE_ONLY.match(maker.wares)) and "silver" not in maker.wares
    if plated:
        return 1.0 if only else 0.6 if _PLATE_TOO.search(maker.wares) else 0.05
    return 0.08 if only else 1.0


def _add(steps: Steps, candidate: Candidate, weight: float, grid: int) -> None:
    for low, high, chance in phases(candidate.maker):
        first, after = low // grid * grid, (high + 1) // grid * grid
        steps[first] = steps.get(first, 0.0) + weight * chance
        steps[after] = steps.get(after, 0.0) - weight * chance


class MakerCurves:
    """Ratios of some marks by country, office, plated or solid, and year."""

    def __init__(self, seen: tuple[Seen, ...], register: Register) -> None:
        self.seen, self.register = seen, register
        self.candidates: list[dict[str, list[Candidate]]] = []
        for mark in seen:
            by_country: dict[str, list[Candidate]] = defaultdict(list)
            for candidate in register.candidates(mark):
                by_country[candidate.maker.country].append(candidate)
            self.candidates.append(dict(by_country))
        self._steps: dict[tuple[int, str, bool], tuple[Steps, dict[str, Steps]]] = {}
        self._ratios: dict[tuple[int, str, str, bool], tuple[list[int], list[float]]] = {}

    def known(self, i: int, segment: Segment, year: int) -> float:
        """Ratio in a year."""
        starts, ratios = self._curve(i, segment)
        return ratios[bisect_right(starts, year) - 1]

    def top(self, i: int, segment: Segment) -> float:
        """The best ratio over the segment's years."""
        starts, ratios = self._curve(i, segment)
        first = bisect_right(starts, segment.year_from) - 1
        return max(ratios[first : bisect_right(starts, segment.year_to)])

    def cuts(self, segment: Segment) -> list[int]:
        """Years of the segment at which a ratio changes."""
        found: list[int] = []
        for i, by_country in enumerate(self.candidates):
            if segment.system.country in by_country:
                starts, _ = self._curve(i, segment)
                found += starts[
                    bisect_right(starts, segment.year_from) : bisect_left(
                        starts, segment.year_to + 1
                    )
                ]
        return found

    def _curve(self, i: int, segment: Segment) -> tuple[list[int], list[float]]:
        country, office = segment.system.country, office_name(segment)
        plated = segment.system.kind != "solid"
        key = (i, country, office, plated)
        if key not in self._ratios:
            self._ratios[key] = self._ratio_steps(
                i, country, self._hits(i, country, office, plated)
            )
        return self._ratios[key]

    def _ratio_steps(self, i: int, country: str, hits: Steps) -> tuple[list[int], list[float]]:
        known = sum(1 for letter, _ in self.seen[i].letters if letter)
        size = min(_CONTENT_CAP, (ALPHABET - 2.0) ** max(1, known))
        steps = dict.fromkeys(range(_FIRST, _LAST, _ACTIVE_GRID), 0.0)
        steps[0] = 0.0
        for year, change in hits.items():
            steps[year] = steps.get(year, 0.0) + change
        starts = sorted(steps)
        ratios = []
        for year, hit in zip(starts, accumulate(steps[y] for y in starts), strict=True):
            active = float(self.register.active(country, year // _ACTIVE_GRID * _ACTIVE_GRID))
            unlisted = _UNLISTED / (active + _UNLISTED)
            ratios.append(unlisted + size * max(0.0, hit) / (active + _UNLISTED))
        return starts, ratios

    def _hits(self, i: int, country: str, office: str, plated: bool) -> Steps:  # noqa: FBT001
        """Changes by year of the sum over candidates of fit, place, trade and activity."""
        key = (i, country, plated)
        if key not in self._steps:
            self._steps[key] = self._by_place(i, country, plated=plated)
        everywhere, places = self._steps[key]
        hits = dict(everywhere)
        for place, steps in places.items():
            share = 1.0 if not office or office in place else _ELSEWHERE
            for year, change in steps.items():
                hits[year] = hits.get(year, 0.0) + share * change
        return hits

    def _by_place(self, i: int, country: str, *, plated: bool) -> tuple[Steps, dict[str, Steps]]:
        everywhere: Steps = {}
        places: dict[str, Steps] = {}
        candidates = self.candidates[i].get(country, [])
        grid = 1 if len(candidates) <= _FEW else _COARSE
        for candidate in candidates:
            weight = candidate.fit * trade_fit(candidate.maker, plated=plated)
            place = fold(candidate.maker.place)
            steps = places.setdefault(place, {}) if place else everywhere
            _add(steps, candidate, weight, grid)
        return everywhere, places
