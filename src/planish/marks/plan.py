"""The library laid out for scoring: segments of years in which one set of expectations holds."""

import math
from bisect import bisect_right
from collections import defaultdict
from collections.abc import Iterable
from itertools import accumulate, pairwise

import msgspec

from planish.library.cycles import Letter, expand
from planish.library.loader import Library
from planish.library.rows import Role, Sign
from planish.marks.codes import join_codes
from planish.marks.contents import Contents
from planish.marks.forms import FormCurve
from planish.marks.layout import Layouts
from planish.marks.seen import fold
from planish.marks.segment import (
    DYNAMIC,
    MAKERS,
    OPEN_END,
    PLACES,
    REGISTER_GRID,
    Expected,
    Segment,
    Way,
    make_segment,
    presence,
)
from planish.marks.thesaurus import Thesaurus

__all__ = [
    "MAKERS",
    "OPEN_END",
    "PLACES",
    "REGISTER_GRID",
    "Expected",
    "Plan",
    "Segment",
    "Way",
    "presence",
]

#: shares of completeness whose chances are kept
_KEPT = 64
#: roles whose words name a place
_PLACE_WORDS = frozenset({"town", "town-2", "town-word", "origin", "retailer"})


class Chances(msgspec.Struct, frozen=True):
    """Of each expected role, by its place in ``Plan.expected``, for one share of completeness.

    absent: log chance that it is not on the list; odds and presence: that it is; bases: for each
    segment, the log chance that none of its roles is.
    """

    absent: tuple[float, ...]
    odds: tuple[float, ...]
    presence: tuple[float, ...]
    bases: tuple[float, ...]


def _weight(rows: tuple[tuple[int, int, float], ...], year: int, otherwise: float) -> float:
    for low, high, weight in rows:
        if low <= year <= high:
            return weight
    return otherwise


def parse_forms(text: str) -> dict[str, float]:
    """``initials=0.9;name=0.1`` as numbers.

    Raises:
        ValueError: a part is not ``word=number``.
    """
    found: dict[str, float] = {}
    for part in filter(None, (p.strip() for p in text.split(";"))):
        name, _, share = part.partition("=")
        found[name.strip()] = float(share)
    return found


class Letterform(msgspec.Struct, frozen=True):
    """What a date letter looks like, whichever office struck it."""

    letters: tuple[str, ...]
    styles: tuple[str, ...]
    case: str
    doubtful: bool
    slack: int


class Plan:
    """Segments of all systems, the letters of all offices and the thesaurus."""

    def __init__(self, library: Library) -> None:
        self.library = library
        self.thesaurus = Thesaurus(library.devices)
        self.layouts = Layouts(library.layouts)
        self.offices = {o.id: o for o in library.offices}
        self.letters: dict[str, list[Letter]] = defaultdict(list)
        for cycle in library.cycles:
            self.letters[cycle.office].extend(expand(cycle))
        for letters in self.letters.values():
            letters.sort(key=lambda at: at.first_year)
        self._starts = {o: [at.first_year for at in ls] for o, ls in self.letters.items()}
        self.cycles = {c.id: c for c in library.cycles}
        self.letterforms: list[Letterform] = []
        self._form_index: dict[Letterform, int] = {}
        self.contents = Contents()
        #: the codes of years of an expected role: number of the content -> the sign
        self.codes: dict[int, dict[int, Sign]] = defaultdict(dict)
        self.expected: list[Expected] = []
        self.uses: dict[int, list[tuple[int, float]]] = defaultdict(list)
        self._alike: dict[tuple[str, float, str, tuple[Way, ...]], Expected] = {}
        self.known_words, self.place_words = self._words()
        self.any_words = self.known_words | self.place_words
        self.segments = tuple(self._lay_out())
        #: for each expected role, a segment that holds it
        self.segment_of = {e.index: g for g in reversed(self.segments) for e in g.expected}
        #: for each expected role that is the same in all years, the segments that hold it
        self.holders: dict[int, list[int]] = defaultdict(list)
        for segment in self.segments:
            for index in segment.steady:
                self.holders[index].append(segment.at)
        #: for each segment the place of its ware in ``wares``
        numbers: dict[tuple[str, str, bool], int] = {}
        self.ware_of = [numbers.setdefault(g.ware, len(numbers)) for g in self.segments]
        self.wares = tuple(numbers)
        self.countries = frozenset(g.system.country for g in self.segments)
        classes: dict[tuple[tuple[str, float], ...], int] = {}
        #: for each expected role, a number that those share which are written alike
        self.form_class = [
            classes.setdefault(tuple(sorted(e.forms.items())), len(classes)) for e in self.expected
        ]
        #: places of the roles that are written in some form, or name a place
        self.formed = frozenset(at for at in self.holders if self.expected[at].forms)
        self.placed = frozenset(e.index for e in self.expected if e.role in PLACES)
        #: for each dated role, a segment that holds it
        self.dated_holders = tuple(
            {g.dated.index: g for g in self.segments if g.dated is not None}.values()
        )
        self._chances: dict[float, Chances] = {}
        self._scales: dict[tuple[float, str], list[float]] = {}

    def chances(self, complete: float) -> Chances:
        """Chances of the roles where that share of the marks is on the list."""
        found = self._chances.get(complete)
        if found is None:
            if len(self._chances) >= _KEPT:
                self._chances.clear()
            shown = [presence(e, complete) for e in self.expected]
            absent = [math.log1p(-p) for p in shown]
            found = self._chances[complete] = Chances(
                tuple(absent),
                tuple(p / (1 - p) for p in shown),
                tuple(shown),
                tuple(math.fsum(absent[e.index] for e in g.expected) for g in self.segments),
            )
        return found

    def scale(self, complete: float, form: FormCurve) -> list[float]:
        """For each segment, its years' prior weight with none of its roles on the list.

        The weight is taken at the best chance of the form, and of the places of the marks.
        """
        key = (complete, form.row.id if form.row else "")
        found = self._scales.get(key)
        if found is None:
            if len(self._scales) >= _KEPT:
                self._scales.clear()
            bases = self.chances(complete).bases
            found = self._scales[key] = [
                g.below[-1] * math.exp(b + form.form_top(g.year_from, g.year_to, g.system.country))
                for g, b in zip(self.segments, bases, strict=True)
            ]
        if not form.placed.steps:
            return found
        tops = form.placed.tops()
        return [
            scale * tops.get(g.system.country, 1.0)
            for g, scale in zip(self.segments, found, strict=True)
        ]

    def letter_of(self, office: str, year: int) -> Letter | None:
        """The date letter in use in an assay year, if known."""
        starts = self._starts.get(office)
        if not starts:
            return None
        at = bisect_right(starts, year) - 1
        if at < 0:
            return None
        letter = self.letters[office][at]
        known = letter.letters and letter.first_year <= year <= letter.last_year
        return letter if known else None

    def _letterforms(self, office: str, first: int, last: int) -> tuple[int, ...]:
        found: list[int] = []
        for year in range(first, last + 1):
            letter = self.letter_of(office, year)
            if letter is None:
                found.append(-1)
                continue
            form = Letterform(
                tuple(fold(t) for t in letter.letters),
                letter.styles,
                letter.case,
                letter.doubtful,
                self.cycles[letter.cycle].slack,
            )
            if form not in self._form_index:
                self._form_index[form] = len(self.letterforms)
                self.letterforms.append(form)
            found.append(self._form_index[form])
        return tuple(found)

    def _code_numbers(
        self, index: int, by_year: dict[int, Sign], first: int, after: int
    ) -> tuple[int, ...]:
        """For each year the number of the content that is its code."""
        found = []
        for year in range(first, after):
            sign = by_year[year]
            number = self.contents.add(sign.kind, sign.value)
            self.codes[index][number] = sign
            found.append(number)
        return tuple(found)

    def _words(self) -> tuple[frozenset[str], frozenset[str]]:
        """Folded words that say what the metal is, and words of place and origin.

        A place is struck by retailers and makers of every kind of ware: it is read as a name,
        while a word of quality on the wrong metal is a rare thing.
        """
        quality: set[str] = set()
        places: set[str] = set()

        def add(found: set[str], texts: Iterable[str], least: int, *, figures: bool) -> None:
            for text in texts:
                plain = "".join(c for c in fold(text) if c.isalnum())
                if len(plain) >= least and (figures or any(c.isalpha() for c in plain)):
                    found.add(plain)

        for word in self.library.words:
            found = places if word.kind == "origin" else quality
            add(found, (word.text, *word.also.split(";")), 3, figures=False)
        for sign in self.library.signs:
            if sign.kind == "text":
                found = places if sign.role in _PLACE_WORDS else quality
                add(found, sign.value.split("|"), 2, figures=True)
        return frozenset(quality), frozenset(places - quality)

    def _lay_out(self) -> list[Segment]:
        roles: dict[str, list[Role]] = defaultdict(list)
        signs: dict[str, list[Sign]] = defaultdict(list)
        weights: dict[str, list[tuple[int, int, float]]] = defaultdict(list)
        for role in self.library.roles:
            roles[role.system].append(role)
        for sign in self.library.signs:
            signs[sign.system].append(sign)
        for w in self.library.weights:
            weights[w.target].append((w.year_from, w.year_to or OPEN_END, w.weight))
        found: list[Segment] = []
        for system in self.library.systems:
            named = {s.office for s in signs[system.id]} | {r.office for r in roles[system.id]}
            offices = sorted(named - {""}) or [""]
            for office in offices:
                at = self.offices.get(office)
                low = max(system.year_from, at.opened if at else 0)
                high = min(
                    system.year_to or OPEN_END, (at.closed if at and at.closed else OPEN_END)
                )
                here_roles = [r for r in roles[system.id] if r.office in ("", office)]
                coded = join_codes([s for s in signs[system.id] if s.office in ("", office)])
                here_signs = coded.signs
                edges = {low, high + 1}
                rows: list[Role | Sign] = [*here_roles, *here_signs]
                for row in rows:
                    edges.update((row.year_from, (row.year_to or OPEN_END) + 1))
                cuts = sorted(e for e in edges if low <= e <= high + 1)
                here = tuple(weights[office]) if office else ()
                whole = tuple(weights[system.id])
                for first, after in pairwise(cuts):
                    expected = self._expected(here_roles, here_signs, first)
                    if not expected:
                        continue
                    dated = any(w.kind == "cycle" for e in expected for w in e.ways)
                    letters = self._letterforms(office, first, after - 1) if dated else ()
                    code = next((e for e in expected for w in e.ways if w.kind == "code"), None)
                    if code:
                        letters = self._code_numbers(code.index, coded.by_year, first, after)
                    below = tuple(
                        accumulate(
                            (
                                _weight(here, y, 1.0) * _weight(whole, y, system.weight)
                                for y in range(first, after)
                            ),
                            initial=0.0,
                        )
                    )
                    found.append(
                        make_segment(
                            number=len(found),
                            system=system,
                            office=at,
                            years=(first, after - 1),
                            expected=expected,
                            below=below,
                            letters=letters,
                        )
                    )
        return found

    def _expected(self, roles: list[Role], signs: list[Sign], year: int) -> tuple[Expected, ...]:
        def holds(row: Role | Sign) -> bool:
            return row.year_from <= year <= (row.year_to or OPEN_END)

        # an office's own row goes before the system's
        chosen: dict[str, Role] = {}
        for role in roles:
            if holds(role) and (role.role not in chosen or role.office):
                chosen[role.role] = role
        found: list[Expected] = []
        for name, role in chosen.items():
            kept = [s for s in signs if s.role == name and holds(s)]
            total = math.fsum(s.share for s in kept) or 1.0
            ways = tuple(
                Way(
                    s.kind,
                    s.value,
                    s.share / total,
                    s.fineness,
                    s.id,
                    s.sources,
                    -1 if s.kind in DYNAMIC else self.contents.add(s.kind, s.value),
                )
                for s in kept
            )
            forms = parse_forms(role.forms)
            if ways or forms:
                # one object for what is alike, so that its price is worked out once
                key = (name, role.presence, role.forms, ways)
                if key not in self._alike:
                    self._alike[key] = Expected(
                        name,
                        role.presence,
                        ways,
                        forms,
                        role.sources,
                        any(w.kind in DYNAMIC for w in ways),
                        len(self.expected),
                    )
                    self.expected.append(self._alike[key])
                    for way in ways:
                        if way.content >= 0 and way.share > 0:
                            self.uses[way.content].append((len(self.expected) - 1, way.share))
                found.append(self._alike[key])
        return tuple(found)
