"""When the form of a piece was in use: evidence of date beside the marks."""

import math
from collections.abc import Iterable

import msgspec

from planish.library.rows import Form
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

    def at(self, year: int, country: str = "") -> float:
        """Log chance in a year, for marks of a country."""
        log = self.logs[min(max(year - FIRST, 0), LAST - FIRST)]
        if self.countries and country and country not in self.countries:
            log += _ELSEWHERE
        return log


FLAT = FormCurve(None, (0.0,) * (LAST - FIRST + 1))


def _named(form: Form, said: frozenset[str]) -> int:
    """How many words of the form's fullest name are said; 0 unless all of one name are."""
    return max(
        (
            len(name)
            for text in form.words.split(";")
            if (name := set(words(text))) and name <= said
        ),
        default=0,
    )


def _singular(word: str) -> str:
    return word[:-1] if len(word) > 3 and word.endswith("s") and not word.endswith("ss") else word


def form_curve(text: str | None, forms: Iterable[Form]) -> FormCurve:
    """The curve of the form that ``text`` names most fully; flat if it names none."""
    if not text:
        return FLAT
    plain = words(text.replace("-", " "))
    said = frozenset(plain) | frozenset(map(_singular, plain))
    best = max(forms, key=lambda f: _named(f, said), default=None)
    if best is None or not _named(best, said):
        return FLAT
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
