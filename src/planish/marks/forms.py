"""When the form of a piece was in use: evidence of date beside the marks."""

import math
from collections.abc import Iterable

import msgspec

from planish.library.rows import Form
from planish.marks.placement import NOWHERE, Placed
from planish.marks.thesaurus import words

FIRST, LAST = 1300, 2040
_BEFORE = 0.02
_EDGE, _SOFT = 15, 0.4
#: log chance of a form outside its countries (common practice)
_ELSEWHERE = math.log(0.12)


class FormCurve(msgspec.Struct, frozen=True):
    """Log chance of the form per year, relative to its years of use; row is None if unknown."""

    row: Form | None
    logs: tuple[float, ...]
    #: years at which the chance changes
    cuts: tuple[int, ...] = ()

    #: countries where the form is at home; empty = anywhere
    countries: frozenset[str] = frozenset()
    #: what the places of the marks on the form say
    placed: Placed = NOWHERE

    def at(self, year: int, country: str = "") -> float:
        """Log chance of form and places in a year, for marks of a country."""
        return self.form_at(year, country) + self.placed.at(year, country)

    def form_at(self, year: int, country: str = "") -> float:
        """Log chance of the form alone."""
        log = self.logs[min(max(year - FIRST, 0), LAST - FIRST)]
        if self.countries and country and country not in self.countries:
            log += _ELSEWHERE
        return log

    def form_top(self, low: int, high: int, country: str = "") -> float:
        """The best log chance of the form alone over some years."""
        years = (low, *(y for y in self.cuts if low < y <= high))
        return max(self.form_at(y, country) for y in years)


FLAT = FormCurve(None, (0.0,) * (LAST - FIRST + 1))


class FormBook:
    """The forms with their names in words; build once, look up many."""

    def __init__(self, forms: Iterable[Form]) -> None:
        self._forms = tuple(
            (form, tuple(n for t in form.words.split(";") if (n := frozenset(words(t)))))
            for form in forms
        )
        self._curves: dict[str, FormCurve] = {}

    def curve(self, text: str | None) -> FormCurve:
        """The curve of the form that ``text`` names most fully; flat if it names none."""
        if not text:
            return FLAT
        plain = words(text.replace("-", " "))
        said = frozenset(plain) | frozenset(map(_singular, plain))
        best: Form | None = None
        most = 0
        for form, names in self._forms:
            # how many words of the form's fullest name are said; 0 unless all of one name are
            count = max((len(name) for name in names if name <= said), default=0)
            if count > most:
                best, most = form, count
        if best is None:
            return FLAT
        if best.id not in self._curves:
            self._curves[best.id] = _curve(best)
        return self._curves[best.id]


def _singular(word: str) -> str:
    return word[:-1] if len(word) > 3 and word.endswith("s") and not word.endswith("ss") else word


def form_curve(text: str | None, forms: Iterable[Form]) -> FormCurve:
    """As ``FormBook.curve``, for one look-up."""
    return FormBook(forms).curve(text)


def with_places(curve: FormCurve, where: Placed) -> FormCurve:
    """The curve with what the places of the marks say."""
    if where is NOWHERE:
        return curve
    cuts = tuple(sorted({*curve.cuts, *where.cuts}))
    return msgspec.structs.replace(curve, placed=where, cuts=cuts)


def _curve(best: Form) -> FormCurve:
    """The curve of a form."""
    logs = []
    for year in range(FIRST, LAST + 1):
        if best.year_from <= year <= best.year_to:
            chance = 1.0
        elif best.year_from - _EDGE <= year < best.year_from:
            chance = _SOFT
        elif best.year_to < year <= best.year_to + _EDGE:
            chance = max(_SOFT, best.later)
        else:
            chance = _BEFORE if year < best.year_from else best.later
        logs.append(math.log(chance))
    cuts = tuple(FIRST + n for n in range(1, len(logs)) if logs[n] != logs[n - 1])
    home = frozenset(filter(None, best.countries.split(";")))
    return FormCurve(best, tuple(logs), cuts, home)
