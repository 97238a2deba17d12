"""Per year, how well a mark fits the makers that a register knows for a country and place.

The ratio is the chance of the mark under "a listed maker of this country, place and year, or one
whom the register does not list", over its chance as letters taken at random.
"""

import re
from bisect import bisect_left, bisect_right
from collections import defaultdict
from collections.abc import Sequence
from itertools import accumulate

from planish.library.rows import Maker
from planish.marks.contents import ALPHABET
from planish.marks.layout import FLAT, Layouts, features
from planish.marks.layout import Steps as LayoutSteps
from planish.marks.plan import REGISTER_GRID, Segment
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
_FIRST, _LAST = 1280, 2040
_PLATE_TOO = re.compile(r"silver and plate|plate and|fused plate|plated")
_PLATE_ONLY = re.compile(r"^(?:plate|electroplate|fused plate|plated wares?)\b", re.IGNORECASE)

#: year -> change of a sum in that year
Steps = dict[int, float]
#: (years in which a ratio changes, ratio from then on)
Curve = tuple[list[int], list[float]]


def place_fit(maker: Maker, office: str) -> float:
    """Chance, relative, that a maker of that place marked at the office (a folded name)."""
    if not office or not maker.place or office in fold(maker.place):
        return 1.0
    return _ELSEWHERE


def trade_fit(maker: Maker, *, plated: bool) -> float:
    """Chance, relative, that a maker of these wares marked solid or plated ware."""
    if not maker.wares:
        return 0.05 if plated else 1.0
    only = bool(_PLATE_ONLY.match(maker.wares)) and "silver" not in maker.wares
    if plated:
        return 1.0 if only else 0.6 if _PLATE_TOO.search(maker.wares) else 0.05
    return 0.08 if only else 1.0


def _add(steps: Steps, other: Steps, weight: float) -> None:
    for year, change in other.items():
        steps[year] = steps.get(year, 0.0) + weight * change


class Ratios:
    """Ratios of all marks for one country, town, and solid or plated ware, by year."""

    __slots__ = ("_marks", "_size", "_unlisted")

    def __init__(self, size: int, unlisted: Curve, marks: Sequence[tuple[int, Curve]]) -> None:
        self._size, self._unlisted, self._marks = size, unlisted, marks

    def known(self, year: int) -> list[float]:
        """The ratio of each mark in a year."""
        starts, ratios = self._unlisted
        found = [ratios[bisect_right(starts, year) - 1]] * self._size
        for i, (starts, ratios) in self._marks:
            found[i] = ratios[bisect_right(starts, year) - 1]
        return found

    def top(self, low: int, high: int) -> list[float]:
        """The best ratio of each mark over some years, taken to the register's grid."""
        low, high = (
            low // REGISTER_GRID * REGISTER_GRID,
            (high // REGISTER_GRID + 1) * REGISTER_GRID - 1,
        )
        starts, ratios = self._unlisted
        first = bisect_right(starts, low) - 1
        found = [max(ratios[first : bisect_right(starts, high)])] * self._size
        for i, (starts, ratios) in self._marks:
            first = bisect_right(starts, low) - 1
            found[i] = max(ratios[first : bisect_right(starts, high)])
        return found

    def cuts(self, low: int, high: int) -> set[int]:
        """Years after ``low`` at which a ratio changes for want or wealth of listed makers."""
        found: set[int] = set()
        for _, (starts, _) in self._marks:
            found.update(starts[bisect_right(starts, low) : bisect_left(starts, high + 1)])
        return found

    def grid_cuts(self, low: int, high: int) -> set[int]:
        """Years after ``low`` at which the number of listed makers at work changes."""
        starts, ratios = self._unlisted
        return {
            year
            for year, before, now in zip(starts[1:], ratios, ratios[1:], strict=False)
            if low < year <= high and before != now
        }


class MakerCurves:
    """Ratios of some marks by country, town, plated or solid, and year."""

    def __init__(
        self, seen: tuple[Seen, ...], register: Register, layouts: Layouts | None = None
    ) -> None:
        self.seen, self.register, self.layouts = seen, register, layouts
        self.candidates: list[dict[str, list[Candidate]]] = []
        for mark in seen:
            by_country: dict[str, list[Candidate]] = defaultdict(list)
            for candidate in register.candidates(mark):
                by_country[candidate.maker.country].append(candidate)
            self.candidates.append(dict(by_country))
        laid_out = [
            layouts.countries if layouts and m.form == "initials" and features(m.mark) else ()
            for m in seen
        ]
        #: countries of which some listed maker may have struck a mark, or whose layouts are known
        self.countries = frozenset(c for by in (*self.candidates, *laid_out) for c in by)
        self._ratios: dict[tuple[str, str, bool], Ratios] = {}
        self._plain: dict[str, Curve] = {}
        self._places: dict[tuple[int, str], dict[tuple[str, float, float], Steps]] = {}
        self._curves: dict[tuple[int, str, frozenset[str], bool], Curve] = {}

    def of(self, segment: Segment) -> Ratios:
        """The ratios of all marks in a segment's country, town and ware."""
        return self.ratios(segment.ware)

    def ratios(self, ware: tuple[str, str, bool]) -> Ratios:
        """The ratios of all marks for a country, town, and whether plated."""
        found = self._ratios.get(ware)
        if found is None:
            country = ware[0]
            if country in self.countries:
                found = self._work_out(*ware)
            else:
                # where no listed maker may be meant, neither town nor ware matters
                plain = (country, "", False)
                if plain not in self._ratios:
                    self._ratios[plain] = self._work_out(*plain)
                found = self._ratios[plain]
            self._ratios[ware] = found
        return found

    def _work_out(self, country: str, town: str, plated: bool) -> Ratios:  # noqa: FBT001
        marks = []
        for i, by_country in enumerate(self.candidates):
            layout = self._layout(i, country)
            if country in by_country:
                curve = self._curve(i, country, town, plated=plated)
            elif layout is not FLAT:
                curve = self._unlisted(country)
            else:
                continue
            marks.append((i, _times(curve, layout)))
        return Ratios(len(self.seen), self._unlisted(country), marks)

    def _layout(self, i: int, country: str) -> LayoutSteps:
        """How well the layout of the letters fits the country, by year."""
        if self.layouts is None or self.seen[i].form != "initials":
            return FLAT
        return self.layouts.steps(self.seen[i].mark, country)

    def _unlisted(self, country: str) -> Curve:
        if country not in self._plain:
            self._plain[country] = unlisted_curve(self.register, country)
        return self._plain[country]

    def _curve(self, i: int, country: str, town: str, *, plated: bool) -> Curve:
        """The ratio of a mark whose letters some makers of the country have."""
        if (i, country) not in self._places:
            self._places[i, country] = self._by_place(self.candidates[i][country])
        places = self._places[i, country]
        near = frozenset(p for p, _, _ in places if not town or not p or town in p)
        key = (i, country, near, plated)
        if key not in self._curves:
            hits: Steps = {}
            for (place, solid_fit, plated_fit), steps in places.items():
                _add(hits, steps, (1.0 if place in near else _ELSEWHERE)
                     * (plated_fit if plated else solid_fit))  # fmt: skip
            self._curves[key] = self._from_hits(i, country, hits)
        return self._curves[key]

    def _from_hits(self, i: int, country: str, hits: Steps) -> Curve:
        known = sum(1 for letter, _ in self.seen[i].letters if letter)
        size = min(_CONTENT_CAP, (ALPHABET - 2.0) ** max(1, known))
        starts = sorted({0, *range(_FIRST, _LAST, REGISTER_GRID), *hits})
        others = self.register.others(country)
        ratios = []
        for year, hit in zip(starts, accumulate(hits.get(y, 0.0) for y in starts), strict=True):
            listed = others[min(year // REGISTER_GRID, len(others) - 1)] + _UNLISTED
            ratios.append((_UNLISTED + size * hit) / listed if hit > 0 else _UNLISTED / listed)
        return starts, ratios

    @staticmethod
    def _by_place(candidates: Sequence[Candidate]) -> dict[tuple[str, float, float], Steps]:
        """Changes by year of the fit times the chance of being at work, by place and trade."""
        grid = 1 if len(candidates) <= _FEW else _COARSE
        found: dict[tuple[str, float, float], Steps] = {}
        for candidate in candidates:
            maker = candidate.maker
            key = (
                fold(maker.place), trade_fit(maker, plated=False), trade_fit(maker, plated=True)
            )  # fmt: skip
            steps = found.get(key)
            if steps is None:
                steps = found[key] = {}
            for low, high, chance in phases(maker):
                first, after = low // grid * grid, (high + 1) // grid * grid
                if first != after:
                    weight = candidate.fit * chance
                    steps[first] = steps.get(first, 0.0) + weight
                    steps[after] = steps.get(after, 0.0) - weight
        return found


def _times(curve: Curve, layout: LayoutSteps) -> Curve:
    """A ratio by year, times that of the layout."""
    if layout is FLAT:
        return curve
    (starts, ratios), (edges, fits) = curve, layout
    years = sorted({*starts, *edges})
    return years, [
        ratios[bisect_right(starts, y) - 1] * fits[bisect_right(edges, y) - 1] for y in years
    ]


def unlisted_curve(register: Register, country: str) -> Curve:
    """The ratio of a mark that no listed maker of the country has."""
    others = register.others(country)
    starts = [0, *range(_FIRST, _LAST, REGISTER_GRID)]
    return starts, [_UNLISTED / (others[y // REGISTER_GRID] + _UNLISTED) for y in starts]
