"""How well an observed mark fits a way of showing a role.

Every figure is a likelihood ratio: chance of the mark as observed if it is that sign, over its
chance as a mark taken at random (``FORM_AT_LARGE`` and flat contents). Values above one speak for.
"""

import math
import re

from planish.library.rows import Maker, Office
from planish.marks.letters import STYLE_AT_LARGE, case_given, seen_given, style_given
from planish.marks.plan import MAKERS, PLACES, Expected, Plan, Segment, Way
from planish.marks.register import Candidate, Register, phases
from planish.marks.seen import FORM_AT_LARGE, Seen, fold
from planish.marks.thesaurus import UNRELATED

# Size of the flat contents: how many devices, words and numbers a chance mark is drawn from.
_DEVICES, _WORDS, _NUMBERS, _ALPHABET = 120.0, 300.0, 200.0, 24.0
_NEVER = 1e-6
# A mark that no role explains, by form: pattern numbers and retailers are common, a stray assay
# device is rare. Common practice.
STRAY = {"device": 0.02, "letter": 0.10, "initials": 0.06, "figures": 0.30, "word": 0.02,
         "name": 0.25, "mixed": 0.20, "illegible": 0.5}  # fmt: skip
_HINT_RIGHT, _HINT_WRONG, _HINT_STRAY = 6.0, 0.12, 0.25
#: share of pieces whose maker stands in a register of the country, for a register of many rows
_COVERED, _FULL_REGISTER = 0.3, 60.0
_CONTENT_CAP = 3000.0
_FIRST_YEAR, _YEARS = 1300, 740
_DEFAULT_FORMS = {"initials": 0.9, "name": 0.06, "device": 0.02, "letter": 0.01, "mixed": 0.01}


class Likelihood:
    """Ratios of one set of marks against any way; caches what does not change with the year."""

    def __init__(self, seen: tuple[Seen, ...], plan: Plan, register: Register) -> None:
        self.seen, self.plan, self.register = seen, plan, register
        self._fixed: dict[tuple[int, str, str], float] = {}
        self._letters: dict[tuple[int, int], float] = {}
        self._curves: dict[tuple[int, str, str, bool], list[float]] = {}
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
        return _HINT_RIGHT if role in roles else _HINT_WRONG

    def stray(self, i: int) -> float:
        """Ratio for a mark that no role explains."""
        mark = self.seen[i]
        return STRAY[mark.form] * (_HINT_STRAY if mark.roles else 1.0)

    def fixed(self, i: int, kind: str, value: str) -> float:
        """Ratio for a way that does not change with the year."""
        key = (i, kind, value)
        if key not in self._fixed:
            self._fixed[key] = self._ratio(self.seen[i], kind, value)
        return self._fixed[key]

    def _ratio(self, mark: Seen, kind: str, value: str) -> float:
        if mark.form == "illegible":
            return 1.0
        at_large = FORM_AT_LARGE[mark.form]
        if kind == "device":
            if mark.form != "device":
                return _NEVER
            if mark.town:
                return _NEVER  # a town mark known by its town: judged by office
            return mark.devices.get(value, UNRELATED) * _DEVICES / at_large
        if kind in ("text", "number"):
            return self._text(mark, value, at_large)
        if kind == "letter":
            if mark.form != "letter":
                return _NEVER
            if not value:
                return 1.0 / at_large
            letter = mark.letters[0] if mark.letters else (None, "clear")
            options = [fold(v) for v in value.split()]
            chance = math.fsum(seen_given(letter[0], v, letter[1]) for v in options) / len(options)
            return chance * _ALPHABET / at_large
        if kind == "figures":
            return 1.0 / at_large if mark.form == "figures" else _NEVER
        if kind in ("initials", "name"):
            return 0.95 / at_large if mark.form == kind else 0.02
        return _NEVER

    @staticmethod
    def _text(mark: Seen, value: str, at_large: float) -> float:
        best = 0.0
        for option in value.split("|"):
            plain = "".join(c for c in fold(option) if c.isalnum())
            if not plain:
                continue
            if plain.isdigit():
                number = (
                    mark.number.lstrip("0") if mark.form in ("figures", "mixed", "word") else ""
                )
                hit = number == plain or (number == plain + "1000")
                size = _NUMBERS
            else:
                hit = mark.plain == plain or (
                    mark.lost and len(mark.plain) >= 3 and _gapped(mark.plain, plain)
                )
                size = _WORDS if len(plain) > 2 else _ALPHABET ** len(plain)
                if len(plain) == 1:
                    size = _ALPHABET
            if hit:
                best = max(best, 0.9 * size / at_large)
        return best or _NEVER

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
            return 0.02 if at >= 0 else _NEVER
        if at < 0:
            return 0.3
        true = self.plan.letterforms[at]
        said, state = mark.letters[0]
        if said is None:
            chance = 1.0 / _ALPHABET
        else:
            chance = math.fsum(seen_given(said, t, state) for t in true.letters)
            chance /= len(true.letters)
            if true.doubtful:
                chance = 0.6 * chance + 0.4 / _ALPHABET
            if true.slack:
                chance = 0.75 * chance + 0.25 / _ALPHABET
        style = mark.mark.style.value if mark.mark.style else None
        ratio = chance * _ALPHABET / FORM_AT_LARGE["letter"]
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
            return _NEVER
        return (0.97 if mark.year == year else 0.0001) * _NUMBERS / FORM_AT_LARGE[wanted]

    def town(self, i: int, segment: Segment) -> float:
        """Ratio of a town mark that the observer names by its town."""
        town = fold(self.seen[i].town)
        names = [fold(segment.office.name)] if segment.office else []
        if any(town in name or name in town for name in names):
            return 0.9 * _DEVICES / FORM_AT_LARGE["device"]
        return _NEVER * 10

    # -- makers ---------------------------------------------------------------------------------

    def maker_form(self, i: int, forms: dict[str, float]) -> float:
        """Ratio of the mark's form alone as a maker's mark."""
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
        return max(share / FORM_AT_LARGE[mark.form], _NEVER)

    def maker_known(self, i: int, segment: Segment, year: int) -> float:
        """Ratio for the register's makers of that country, place and year."""
        country = segment.system.country
        rows = self.register.count(country)
        covered = _COVERED * (1.0 - math.exp(-rows / _FULL_REGISTER))
        if not self.candidates[i].get(country):
            return 1.0 - covered
        curve = self._curve(i, country, segment.office, plated=segment.system.kind != "solid")
        at = min(max(year - _FIRST_YEAR, 0), len(curve) - 1)
        active = max(4.0, float(self.register.active(country, year)))
        known = sum(1 for letter, _ in self.seen[i].letters if letter)
        size = min(_CONTENT_CAP, (_ALPHABET - 2.0) ** max(1, known))
        return 1.0 - covered + covered * size * curve[at] / active

    def _curve(self, i: int, country: str, office: Office | None, *, plated: bool) -> list[float]:
        """Per year, the sum over candidate makers of fit, place and activity."""
        key = (i, country, office.id if office else "", plated)
        if key not in self._curves:
            steps = [0.0] * (_YEARS + 2)
            name = fold(office.name) if office else ""
            for candidate in self.candidates[i][country]:
                weight = candidate.fit * place_fit(candidate.maker, name)
                weight *= trade_fit(candidate.maker, plated=plated)
                for low, high, chance in phases(candidate.maker):
                    first = max(low - _FIRST_YEAR, 0)
                    after = min(high + 1 - _FIRST_YEAR, _YEARS + 1)
                    if first < after:
                        steps[first] += weight * chance
                        steps[after] -= weight * chance
            total = 0.0
            curve = []
            for step in steps:
                total += step
                curve.append(max(0.0, total))
            self._curves[key] = curve
        return self._curves[key]

    def role(self, i: int, expected: Expected, segment: Segment, year: int) -> float:
        """Ratio of a mark as the role in a year, over all its ways."""
        total = math.fsum(
            way.share * self.way(i, way, segment, year) for way in expected.ways if way.share
        )
        if expected.forms:
            maker = self.maker_form(i, expected.forms)
            if expected.role in MAKERS:
                maker *= self.maker_known(i, segment, year)
            total = total + maker if expected.ways else maker
        if self.seen[i].town and expected.role in PLACES:
            total = self.town(i, segment)
        return total * self.hint(i, expected.role)

    def way(self, i: int, way: Way, segment: Segment, year: int) -> float:
        """Ratio of a mark as one way in a year."""
        if way.kind == "cycle":
            return self.letterform(i, segment.letters[year - segment.year_from])
        if way.kind in ("year", "initials-year"):
            return self.year_figures(i, way.kind, year)
        return self.fixed(i, way.kind, way.value)


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


def _gapped(seen: str, true: str) -> bool:
    """Whether a text with ``?`` for lost letters may be the true one."""
    if len(seen) == len(true):
        return all(a in ("?", b) for a, b in zip(seen, true, strict=True))
    kept = seen.replace("?", "")
    at = 0
    for c in true:
        if at < len(kept) and kept[at] == c:
            at += 1
    return at == len(kept) and len(kept) * 2 >= len(true)
