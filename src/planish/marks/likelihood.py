"""How well an observed mark fits a way of showing a role.

Every figure is a likelihood ratio: chance of the mark as observed if it is that sign, over its
chance as a mark taken at random (``FORM_AT_LARGE`` and flat contents). Values above one speak for.
"""

import math
import re
from bisect import bisect_right
from itertools import accumulate

from planish.library.rows import Maker
from planish.marks.contents import ALPHABET, DEVICES, NEVER, NUMBERS
from planish.marks.letters import STYLE_AT_LARGE, case_given, seen_given, style_given
from planish.marks.plan import MAKERS, PLACES, Expected, Plan, Segment, Way
from planish.marks.register import Candidate, Register, phases
from planish.marks.seen import FORM_AT_LARGE, Seen, fold

# A mark that no role explains, by form: pattern numbers and retailers are common, a stray assay
# device is rare. Common practice.
STRAY = {"device": 0.02, "letter": 0.10, "initials": 0.06, "figures": 0.30, "word": 0.02,
         "name": 0.25, "mixed": 0.20, "illegible": 0.5}  # fmt: skip
_HINT_RIGHT, _HINT_WRONG, _HINT_STRAY = 6.0, 0.12, 0.25
#: makers at work in a country at any time that a register does not list: the share of pieces by a
#: listed maker is listed / (listed + this)
_UNLISTED = 120.0
_CONTENT_CAP = 3000.0
#: with more candidates than this, working years are taken to five years
_FEW, _COARSE = 20, 5
_NO_ONE_TOWN = frozenset({"national", "several towns"})
#: how many makers were at work is taken every forty years
_ACTIVE_GRID = 40
_DEFAULT_FORMS = {"initials": 0.9, "name": 0.06, "device": 0.02, "letter": 0.01, "mixed": 0.01}


class Likelihood:
    """Ratios of one set of marks against any way; caches what does not change with the year."""

    def __init__(self, seen: tuple[Seen, ...], plan: Plan, register: Register) -> None:
        self.seen, self.plan, self.register = seen, plan, register
        self._contents = [plan.contents.ratios(mark) for mark in seen]
        self._still = [self._add_up(ratios) for ratios in self._contents]
        self._forms: dict[tuple[int, int], float] = {}
        self._scripts: dict[tuple[int, str], float] = {}
        self._letters: dict[tuple[int, int], float] = {}
        self._curves: dict[tuple[int, str, str, bool], tuple[list[int], list[float]]] = {}
        self.candidates: list[dict[str, list[Candidate]]] = []
        for mark in seen:
            by_country: dict[str, list[Candidate]] = {}
            for candidate in register.candidates(mark):
                by_country.setdefault(candidate.maker.country, []).append(candidate)
            self.candidates.append(by_country)

    def hint(self, i: int, role: str) -> float:
        """Ratio for what the observer called the mark."""
        roles = self.seen[i].roles
        if not roles:
            return 1.0
        # "pseudo" stands for pseudo-2, pseudo-lion and the like as well
        return (
            _HINT_RIGHT if role in roles or role.split("-", maxsplit=1)[0] in roles else _HINT_WRONG
        )

    def stray(self, i: int) -> float:
        """Ratio for a mark that no role explains."""
        mark = self.seen[i]
        return STRAY[mark.form] * (_HINT_STRAY if mark.roles else 1.0)

    def fixed(self, i: int, content: int) -> float:
        """Ratio for a way that does not change with the year."""
        return self._contents[i].get(content, NEVER)

    def contents(self, i: int) -> dict[int, float]:
        """Ratios of all the contents that a mark may show."""
        return self._contents[i]

    def still(self, i: int, index: int) -> float:
        """Ratio for all the ways of an expected role that do not change with the year."""
        return self._still[i].get(index, NEVER)

    def _add_up(self, ratios: dict[int, float]) -> dict[int, float]:
        total: dict[int, float] = {}
        for content, ratio in ratios.items():
            if ratio > NEVER:
                for index, share in self.plan.uses.get(content, ()):
                    total[index] = total.get(index, 0.0) + share * ratio
        return total

    # -- ways that change with the year ---------------------------------------------------------

    def letterform(self, i: int, at: int) -> float:
        """Ratio of a mark as the date letter with that index; -1 = letter not known."""
        key = (i, at)
        if key not in self._letters:
            self._letters[key] = self._letterform(self.seen[i], at)
        return self._letters[key]

    def _letterform(self, mark: Seen, at: int) -> float:
        if mark.form == "illegible":
            return 1.0
        if mark.form != "letter" or not mark.letters:
            return 0.02 if at >= 0 else NEVER
        if at < 0:
            return 0.3
        true = self.plan.letterforms[at]
        said, state = mark.letters[0]
        if said is None:
            chance = 1.0 / ALPHABET
        else:
            chance = math.fsum(seen_given(said, t, state) for t in true.letters)
            chance /= len(true.letters)
            if true.doubtful:
                chance = 0.6 * chance + 0.4 / ALPHABET
            if true.slack:
                chance = 0.75 * chance + 0.25 / ALPHABET
        style = mark.mark.style.value if mark.mark.style else None
        ratio = chance * ALPHABET / FORM_AT_LARGE["letter"]
        ratio *= style_given(style, true.styles) / STYLE_AT_LARGE[style]
        case = mark.mark.case.value if mark.mark.case else None
        return ratio * case_given(case, true.case, sure=mark.mark.case_sure)

    def year_figures(self, i: int, kind: str, year: int) -> float:
        """Ratio of a mark with the year in figures."""
        mark = self.seen[i]
        if mark.form == "illegible":
            return 1.0
        wanted = "figures" if kind == "year" else "mixed"
        if mark.form != wanted or mark.year is None:
            return NEVER
        return (0.97 if mark.year == year else 0.0001) * NUMBERS / FORM_AT_LARGE[wanted]

    def town(self, i: int, segment: Segment) -> float:
        """Ratio of a town mark that the observer names by its town."""
        town = fold(self.seen[i].town)
        names = [fold(segment.office.name)] if segment.office else []
        if any(town in name or name in town for name in names):
            return 0.9 * DEVICES / FORM_AT_LARGE["device"]
        return NEVER * 10

    # -- makers ---------------------------------------------------------------------------------

    def maker_form(self, i: int, expected: Expected) -> float:
        """Ratio of the mark's form alone as a maker's mark."""
        key = (i, expected.index)
        if key not in self._forms:
            self._forms[key] = self._maker_form(i, expected.forms)
        return self._forms[key]

    def _maker_form(self, i: int, forms: dict[str, float]) -> float:
        mark = self.seen[i]
        if mark.form == "illegible":
            return 1.0
        share = (forms or _DEFAULT_FORMS).get(mark.form, 0.0)
        if mark.form == "word":
            share = max(share, 0.003)
        elif mark.form == "figures":
            share = max(share, 0.0005)
        elif mark.form == "device" and mark.town:
            share = 0.0
        else:
            share = max(share, 0.004)
        return max(share / FORM_AT_LARGE[mark.form], NEVER)

    def maker_known(self, i: int, segment: Segment, year: int) -> float:
        """Ratio for the register's makers of that country, place and year."""
        country = segment.system.country
        active = float(self.register.active(country, _grid(year)))
        listed = active / (active + _UNLISTED)
        if not self.candidates[i].get(country):
            return 1.0 - listed
        starts, values = self.curve(i, segment)
        known = sum(1 for letter, _ in self.seen[i].letters if letter)
        size = min(_CONTENT_CAP, (ALPHABET - 2.0) ** max(1, known))
        hit = values[bisect_right(starts, year) - 1]
        return 1.0 - listed + size * hit / (active + _UNLISTED)

    def curve(self, i: int, segment: Segment) -> tuple[list[int], list[float]]:
        """Steps (from year, value) of the sum over candidate makers of fit, place and activity."""
        country, office = segment.system.country, segment.office
        plated = segment.system.kind != "solid"
        key = (i, country, office.id if office else "", plated)
        if key not in self._curves:
            steps: dict[int, float] = {0: 0.0}
            name = fold(office.name) if office and office.kind not in _NO_ONE_TOWN else ""
            candidates = self.candidates[i][country]
            grid = 1 if len(candidates) <= _FEW else _COARSE
            for candidate in candidates:
                weight = candidate.fit * place_fit(candidate.maker, name)
                weight *= trade_fit(candidate.maker, plated=plated)
                for low, high, chance in phases(candidate.maker):
                    first, after = low // grid * grid, (high + 1) // grid * grid
                    steps[first] = steps.get(first, 0.0) + weight * chance
                    steps[after] = steps.get(after, 0.0) - weight * chance
            starts = sorted(steps)
            values = [max(0.0, v) for v in accumulate(steps[y] for y in starts)]
            self._curves[key] = (starts, values)
        return self._curves[key]

    def maker_cuts(self, segment: Segment) -> set[int]:
        """Years at which the makers' part of the likelihood changes."""
        cuts: set[int] = set()
        for i in range(len(self.seen)):
            if segment.system.country in self.candidates[i]:
                cuts.update(self.curve(i, segment)[0])
                cuts.update(range(_grid(segment.year_from), segment.year_to + 1, _ACTIVE_GRID))
        return cuts

    def maker_top(self, i: int, segment: Segment) -> float:
        """The best makers' ratio over the segment's years."""
        starts, _ = self.curve(i, segment)
        inside = [y for y in starts if segment.year_from < y <= segment.year_to]
        grid = range(_grid(segment.year_from), segment.year_to + 1, _ACTIVE_GRID)
        years = {segment.year_from, *inside, *(y for y in grid if y > segment.year_from)}
        return max(self.maker_known(i, segment, y) for y in years)

    def script(self, i: int, country: str) -> float:
        """Ratio for the script of a maker's letters."""
        key = (i, country)
        if key not in self._scripts:
            self._scripts[key] = script_fit(self.seen[i], country)
        return self._scripts[key]

    def role(self, i: int, expected: Expected, segment: Segment, year: int) -> float:
        """Ratio of a mark as the role in a year, over all its ways."""
        total = self.still(i, expected.index)
        if expected.moves:
            total += math.fsum(
                way.share * self.way(i, way, segment, year)
                for way in expected.ways
                if way.content < 0
            )
        if expected.forms:
            maker = self.maker_form(i, expected)
            maker *= self.script(i, segment.system.country)
            if expected.role in MAKERS:
                maker *= self.maker_known(i, segment, year)
            total += maker
        if self.seen[i].town and expected.role in PLACES:
            total = self.town(i, segment)
        return total * self.hint(i, expected.role)

    def way(self, i: int, way: Way, segment: Segment, year: int) -> float:
        """Ratio of a mark as one way in a year."""
        if way.kind == "cycle":
            return self.letterform(i, segment.letters[year - segment.year_from])
        if way.kind in ("year", "initials-year"):
            return self.year_figures(i, way.kind, year)
        return self.fixed(i, way.content)


#: the most that a script can speak for a country
SCRIPT_TOP = 3.0
_CYRILLIC = frozenset({"RU", "BG", "RS", "UA"})
_ENGLISH = frozenset({"GB", "IE", "US", "CA", "AU", "NZ", "IN", "HK", "ZA", ""})
_FIRM_ENGLISH = re.compile(r"&|\bAND\b|\bBROS\b|\bSONS?\b|\bLTD\b|\bMFG\b|\bCO\b")


def script_fit(seen: Seen, country: str) -> float:
    """Chance, relative, of a maker's letters in their script and firm words, by country.

    Curators sometimes print Cyrillic initials in Latin letters, so Latin letters speak only
    mildly against a Cyrillic country (common practice).
    """
    text = seen.mark.text or ""
    if any("\u0400" <= c <= "\u04ff" for c in text):
        return SCRIPT_TOP if country in _CYRILLIC else 0.005
    if not any(c.isalpha() for c in text):
        return 1.0
    if country in _CYRILLIC:
        return 0.5
    if country not in _ENGLISH and len(seen.letters) > 3 and _FIRM_ENGLISH.search(fold(text)):
        return 0.3
    return 1.0


def _grid(year: int) -> int:
    return year // _ACTIVE_GRID * _ACTIVE_GRID


def place_fit(maker: Maker, office: str) -> float:
    """Chance, relative, that a maker of that place marked at the office (a folded name)."""
    if not office or not maker.place:
        return 1.0
    return 1.0 if office in fold(maker.place) else 0.12


_PLATE_TOO = re.compile(r"silver and plate|plate and|fused plate|plated")
_PLATE_ONLY = re.compile(r"^(?:plate|electroplate|fused plate|plated wares?)\b", re.IGNORECASE)


def trade_fit(maker: Maker, *, plated: bool) -> float:
    """Chance, relative, that a maker of these wares marked solid or plated ware."""
    only = bool(_PLATE_ONLY.match(maker.wares)) and "silver" not in maker.wares
    if plated:
        return 1.0 if only else 0.6 if _PLATE_TOO.search(maker.wares) else 0.05
    return 0.08 if only else 1.0
