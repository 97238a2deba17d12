"""Materials that law protects: the rule, its date, what it asks, and who must be asked.

No legal advice: the rows say what was known when they were last looked at (``checked``). Wording is
matched, so a flag says "look at this", and no flag says nothing.
"""

import re
from functools import cache

import msgspec

from planish.library import Library, load
from planish.library.stone_rows import Protection
from planish.quantity import QuantityError
from planish.stones.names import find_material

#: stands beside every flag
CHECK = "law changes: check the law of each place concerned, and ask a licensed practitioner"
_NEGATION = r"\b(?:no|not|non|without|never|free of)\s+(?:\w+\s+(?:or|nor)\s+)*"
_SIGNS = {"<": "under", "<=": "at most", ">=": "at least"}


class Limit(msgspec.Struct, frozen=True):
    """A figure on which an exception hangs: ``ivory volume``, ``<``, ``10``, ``%``."""

    about: str
    sign: str
    figure: str
    unit: str = ""

    @property
    def asks(self) -> str:
        """The question that it puts."""
        if self.sign == "<" and not self.unit:
            return f"{self.about} before {self.figure}?"
        return f"{self.about} {_SIGNS[self.sign]} {self.figure} {self.unit}".rstrip() + "?"


class Flag(msgspec.Struct, frozen=True, kw_only=True):
    """A rule that may touch a piece.

    id: of the library's row. because: the words that called for it. place: ISO 3166-1 code, EU, or
    blank for a treaty. regime: the law. rule, allowed: in words. limits: figures of the exceptions.
    date_from, date_to: in force, blank where not known. checked: year and month of the row.
    """

    id: str
    because: str
    materials: tuple[str, ...]
    place: str
    regime: str
    rule: str
    allowed: str
    limits: tuple[Limit, ...]
    date_from: str
    date_to: str
    checked: str
    sources: tuple[str, ...]
    confidence: str
    caution: str = CHECK

    @property
    def asks(self) -> tuple[str, ...]:
        """Questions whose answers the exceptions hang on."""
        return tuple(limit.asks for limit in self.limits)


def limits_of(text: str) -> tuple[Limit, ...]:
    """The limits of a row: ``made<1947-03-03;ivory volume<10 %``.

    >>> limits_of("ivory volume<10 %")[0].asks
    'ivory volume under 10 %?'
    """
    found = []
    for part in filter(None, (p.strip() for p in text.split(";"))):
        match = re.fullmatch(r"([a-z ]+?)(<=|>=|<)([\d.-]+)(?: (\S+))?", part)
        if match:
            found.append(Limit(match[1], match[2], match[3], match[4] or ""))
    return tuple(found)


def restricted(words: str, *, place: str = "", library: Library | None = None) -> tuple[Flag, ...]:
    """Rules that the words of a material or of a whole description call for, treaties first.

    words: a material's id or name, or free text ("teapot with ivory insulators"). place: only rules of
    this country (ISO 3166-1 alpha-2, EU) and treaties. Denials ("no ivory") and names of other
    materials ("vegetable ivory") call for nothing.

    Raises:
        QuantityError: the place is no code of a place that rows are about.

    >>> [f.id for f in restricted("walrus ivory", place="GB")]
    ['cites-walrus']
    >>> restricted("Queen Anne teapot, pearwood handle")
    ()
    """
    library = library or load()
    wanted = place.strip().upper()
    places = sorted({p.place for p in library.protections if p.place})
    if wanted and wanted not in places:
        fault = "the library holds no law of that place"
        raise QuantityError("place", place, fault, f"it holds {', '.join(places)} and treaties")
    try:
        material = find_material(words, library).id
    except QuantityError:
        material = ""
    flags = []
    for row in library.protections:
        if wanted and row.place and row.place != wanted:
            continue
        called = material if material in row.about else _called(row, words)
        if called:
            flags.append(_flag(row, called))
    return tuple(sorted(flags, key=lambda f: f.place))


@cache
def _phrases(words: str) -> tuple[str, ...]:
    return tuple(w.strip().lower() for w in words.split(";") if w.strip())


def _pattern(word: str) -> str:
    return r"(?<!\w)" + re.escape(word).replace(r"\ ", r"[\s-]+") + r"(?:s|es)?(?!\w)"


def _called(row: Protection, words: str) -> str:
    """The word of the row that stands in a text and is meant; blank if none is."""
    low = " ".join(words.lower().replace("é", "e").replace("’", "'").split())
    calls = tuple(c for c in _phrases(row.words) if re.split(r"[\s-]", c)[0] in low)
    if not calls:
        return ""
    for phrase in _phrases(row.unless):
        stem = re.escape(phrase).replace(r"\ ", r"[\s-]+")
        if any(re.search(rf"\b{re.escape(call)}", phrase) for call in calls) or not any(
            re.search(_pattern(call), low) for call in calls
        ):
            low = re.sub(rf"(?<!\w){stem}\w*", " ", low)
            continue
        for call in calls:
            # "imitation carved ivory", but not "celluloid and ivory"
            between = r"[\s-]+(?:(?!and\b|with\b|or\b)\w+[\s-]+)?"
            low = re.sub(rf"(?<!\w){stem}\w*{between}{_pattern(call)}", " ", low)
            low = re.sub(rf"{_pattern(call)}[\s-]+{stem}\w*", " ", low)
    for call in calls:
        low = re.sub(_NEGATION + _pattern(call), " ", low)
        if re.search(_pattern(call), low):
            return call
    return ""


def _flag(row: Protection, because: str) -> Flag:
    return Flag(
        id=row.id,
        because=because,
        materials=row.about,
        place=row.place,
        regime=row.regime,
        rule=row.rule,
        allowed=row.allowed,
        limits=limits_of(row.limits),
        date_from=row.date_from,
        date_to=row.date_to,
        checked=row.checked,
        sources=row.sources,
        confidence=row.confidence.value,
    )
