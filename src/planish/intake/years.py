"""Years as registers write them: a run of years out of words and figures.

Widths of centuries, decades and their parts are common practice: a quarter is 25 years, a half 50,
"early", "mid" and "late" a third of the century each.
"""

import re

import msgspec

from planish.quantity import QuantityError, UncertainDate


class Years(msgspec.Struct, frozen=True):
    """First and last year; None is open or not known. exact: False where the words say about."""

    first: int | None
    last: int | None
    exact: bool


class YearsError(ValueError):
    """Words that are no years: what, and how to mend it."""

    def __init__(self, what: str, mend: str) -> None:
        self.what, self.mend = what, mend
        super().__init__(f"{what}; {mend}")


_MEND = "write years as 1790, 1790-1805, c. 1850, 1790s or 18th c., or leave it empty"
# fl. (floruit), active, working, and the same in German, French, Italian, Spanish, Dutch
_WORKED = re.compile(
    r"^(?:fl(?:\.|oruit)?|active|act\.|working|worked|w\.|recorded|rec\.|documented|entered|ent\.|"
    r"reg\.|registered|tätig|nachweisbar|erwähnt|actif|active|attivo|activo|werkzaam|verksam)\b[.:]?"
    r"\s*(?:in\b|um\b|ab\b|vers\b|dal\b)?\s*"
)
_ABOUT = re.compile(
    r"\b(?:um|gegen|vers|verso|hacia|omstreeks|omkring|env\.|environ|etwa)\s+(?=\d)"
)
_BORN = re.compile(r"\b(?:b|born|geb|d|died|gest|né|née|†|\*)\b\.?\s*\d")
_OPEN_END = re.compile(r"^(.+?)\s*(?:-|–|—)\s*(?:\?|\.\.\.?|…|present|today|heute|now)?$")
_OPEN_START = re.compile(r"^(?:\?|\.\.\.?|…)?\s*(?:-|–|—)\s*(.+)$")
_FROM = re.compile(r"^(?:ab|seit|dès|depuis|dal|desde|vanaf)\s+(.+)$")
_UNTIL = re.compile(r"^(?:bis|vor|jusqu'en|jusqu'à|avant|fino al|hasta|tot)\s+(.+)$")
_CENTURY = re.compile(
    r"(?P<part>(?:early|mid|middle|late|first|second|1st|2nd|third|3rd|last|fourth|4th|"
    r"anfang|mitte|ende|début|milieu|fin|frühes|spätes)\b[- ]*"
    r"(?:(?P<unit>half|quarter|third)\b)?\s*(?:of\s+)?(?:the\s+|des\s+|du\s+)?)?"
    r"(?P<number>\d{1,2}|[ivx]+)\s*(?:st|nd|rd|th|e|è|ème|eme|\.)?\s*"
    r"(?P<word>c\.?|cent\.?|century|centuries|jh\.?|jhdt\.?|jahrhunderts?|s\.|siècle|sec\.?|secolo|"
    r"siglo|eeuw)"
)
_ROMAN = {"i": 1, "v": 5, "x": 10}
_PARTS = {
    "early": (0, 33), "anfang": (0, 33), "début": (0, 33), "frühes": (0, 33),
    "mid": (33, 67), "middle": (33, 67), "mitte": (33, 67), "milieu": (33, 67),
    "late": (67, 100), "ende": (67, 100), "fin": (67, 100), "spätes": (67, 100),
}  # fmt: skip
_ORDER = {"first": 0, "1st": 0, "second": 1, "2nd": 1, "third": 2, "3rd": 2, "fourth": 3, "4th": 3,
          "last": -1}  # fmt: skip
_SHARES = {"half": 50, "quarter": 25, "third": 33}
_DAY = re.compile(r"^\d{1,2}[./-]\d{1,2}[./-](\d{4})$")


def years(text: str) -> Years:
    """The run of years that a text means.

    Raises:
        YearsError: it has no single meaning as years of work.

    >>> years("fl. 1820-35"), years("18th c.").first
    (Years(first=1820, last=1835, exact=True), 1701)
    """
    low = " ".join(text.casefold().replace("\u00a0", " ").split()).strip(" ,;()[]")
    if not low:
        raise YearsError("no years", _MEND)
    if len(low) > 100:
        raise YearsError(f"{low[:40]}... is no year", _MEND)
    if _BORN.search(low):
        raise YearsError(f"{text.strip()[:40]} tells of birth or death", "write the years of work")
    worked = _WORKED.sub("", low)
    if found := _century(worked):
        return found
    if day := _DAY.match(worked):
        return Years(int(day[1]), int(day[1]), exact=True)
    said = _ABOUT.sub("c. ", worked)
    said = re.sub(r"\s*[–—]\s*", "-", said)
    said = re.sub(r"(?<=\d)\s+-\s*(?=\d)|(?<=\d)-\s+(?=\d)", "-", said)
    for pattern, first in ((_FROM, True), (_UNTIL, False)):
        if match := pattern.match(said):
            return _side(match[1], text, first=first)
    if (match := _OPEN_END.match(said)) and re.search(r"\d", match[1]):
        return _side(match[1], text, first=True)
    if match := _OPEN_START.match(said):
        return _side(match[1], text, first=False)
    return _span(said, text)


def _side(words: str, text: str, *, first: bool) -> Years:
    found = _century(words) or _span(words, text)
    return (
        Years(found.first, None, exact=found.exact)
        if first
        else Years(None, found.last, exact=found.exact)
    )


def _span(said: str, text: str) -> Years:
    # after a hyphen 01 to 12 would be a month; in a register 1801-05 is a run of years
    if match := re.fullmatch(r"(c\. ?|ca\.? ?)?(\d{2})(\d{2})[-/](\d{2})", said):
        about, century, start, end = match.groups()
        if end > start:
            return Years(int(century + start), int(century + end), exact=not about)
    try:
        date = UncertainDate.parse(said)
    except QuantityError:
        raise YearsError(f"{text.strip()[:40]} is no year", _MEND) from None
    first, last = date.earliest, date.latest
    return Years(
        first.year if first else None, last.year if last else None, exact=not date.qualifier
    )


def _century(words: str) -> Years | None:
    """A century or a part of it, or two centuries; the eighteenth runs from 1701 to 1800."""
    ends = re.split(r"\s*(?:/|\bto\b|\bbis\b|-)\s*(?=\d|[ivx]+\b|early|mid|late)", words)
    if len(ends) == 2 and (last := _CENTURY.fullmatch(ends[1])):
        first = _CENTURY.fullmatch(ends[0]) or _CENTURY.fullmatch(f"{ends[0]} {last['word']}")
        if first and (a := _years_of(first)) and (b := _years_of(last)):
            return Years(a.first, b.last, exact=False)
    match = _CENTURY.fullmatch(words)
    return _years_of(match) if match else None


def _years_of(match: re.Match[str]) -> Years | None:
    number = match["number"]
    century = int(number) if number.isdigit() else _roman(number)
    if not 11 <= century <= 21:
        return None
    start = (century - 1) * 100
    part = (match["part"] or "").split()
    low, high = 0, 100
    if part:
        word = re.split(r"[- ]", part[0])[0]
        unit = match["unit"]
        if word in _PARTS:
            low, high = _PARTS[word]
        elif word in _ORDER and unit:
            share = _SHARES[unit]
            count = 100 // share
            at = _ORDER[word] if _ORDER[word] >= 0 else count - 1
            if at >= count:
                return None
            low, high = at * share, 100 if at == count - 1 else (at + 1) * share
        else:
            return None
    return Years(start + low + 1, start + high, exact=False)


def _roman(text: str) -> int:
    total = 0
    for at, letter in enumerate(text):
        value = _ROMAN[letter]
        after = _ROMAN[text[at + 1]] if at + 1 < len(text) else 0
        total += -value if value < after else value
    return total
