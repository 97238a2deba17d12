"""How well an observed mark fits a way of showing a role.

Every figure is a likelihood ratio: chance of the mark as observed if it is that sign, over its
chance as a mark taken at random (``FORM_AT_LARGE`` and flat contents). Values above one speak for.
"""

import math
import re

from planish.marks.contents import ALPHABET, DEVICES, NEVER, NUMBERS
from planish.marks.letters import STYLE_AT_LARGE, case_given, seen_given, style_given
from planish.marks.makercurves import MakerCurves
from planish.marks.plan import MAKERS, PLACES, Expected, Plan, Segment, Way
from planish.marks.register import Register
from planish.marks.seen import FORM_AT_LARGE, Seen, fold

# A mark that no role explains, by form: pattern numbers and retailers are common, a stray assay
# device is rare. Common practice.
STRAY = {"device": 0.02, "letter": 0.10, "initials": 0.06, "figures": 0.30, "word": 0.02,
         "name": 0.25, "mixed": 0.20, "illegible": 0.5}  # fmt: skip
_HINT_RIGHT, _HINT_WRONG, _HINT_STRAY = 6.0, 0.12, 0.25
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
        self.makers = MakerCurves(seen, register, plan.layouts)

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

    def may_be_code(self, i: int, index: int) -> bool:
        """Whether a mark may be the code of some year in an expected role."""
        codes = self.plan.codes[index]
        return any(number in codes for number in self._contents[i])

    def contents(self, i: int) -> dict[int, float]:
        """Ratios of all the contents that a mark may show."""
        return self._contents[i]

    def stills(self, i: int) -> dict[int, float]:
        """``still`` of all the roles of which a mark may be a way, by place."""
        return self._still[i]

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
        name = segment.office_name
        if name and (town in name or name in town):
            return 0.9 * DEVICES / FORM_AT_LARGE["device"]
        return NEVER * 10

    # -- makers ---------------------------------------------------------------------------------

    def maker_form(self, i: int, expected: Expected) -> float:
        """Ratio of the mark's form alone as a maker's mark."""
        key = (i, self.plan.form_class[expected.index])
        found = self._forms.get(key)
        if found is None:
            found = self._forms[key] = self._maker_form(i, expected.forms)
        return found

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
                maker *= self.makers.of(segment).known(year)[i]
            total += maker
        if self.seen[i].town and expected.role in PLACES:
            total = self.town(i, segment)
        return total * self.hint(i, expected.role)

    def steady(self, i: int, expected: Expected, script: float, town: float | None) -> float:
        """Ratio of a mark as a role that is no maker's and does not change with the year.

        script: ``script`` of the mark in the country; town: ``town`` of the mark in the segment,
        None for a mark that names no town.
        """
        if town is not None and expected.role in PLACES:
            total = town
        else:
            total = self.still(i, expected.index)
            if expected.forms:
                total += self.maker_form(i, expected) * script
        return total * self.hint(i, expected.role)

    def way(self, i: int, way: Way, segment: Segment, year: int) -> float:
        """Ratio of a mark as one way in a year."""
        if way.kind == "cycle":
            return self.letterform(i, segment.letters[year - segment.year_from])
        if way.kind == "code":
            return self.fixed(i, segment.letters[year - segment.year_from])
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
