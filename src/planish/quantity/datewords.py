"""Dates in the words of catalogues and clients, turned into EDTF.

Only words with one meaning are read. "Late Victorian" or "early 19th century" are refused, because
whoever wrote them alone knows which years were meant.
"""

import calendar
import re

from planish.quantity.edtf import bounds
from planish.quantity.errors import QuantityError
from planish.quantity.numbers import plain

_WHAT = "date"
_MONTHS = [name.lower() for name in calendar.month_name[1:]]
_MONTH = {name[:n]: k for k, name in enumerate(_MONTHS, 1) for n in (3, len(name))} | {"sept": 9}

_YEARS = re.compile(r"[0-9]{4}[?~%]?[-/][0-9]{4}[?~%]?")
_ABOUT = re.compile(r"(?:circa|ca\.?|c\.|c(?=[ 0-9])|about|around|approximately|approx\.?)\s*")
_PERHAPS = re.compile(r"(?:probably|possibly|perhaps|prob\.?|poss\.?)\s+")

_TO = r"\s*(?:-|–|—|/|\bto\b|\band\b|\buntil\b|\bto about\b)\s*"
_ERA = re.compile(
    r"\b(georgian|victorian|edwardian|regency|elizabethan|jacobean|stuart|tudor|colonial|federal"
    r"|queen|king|george|william|anne|charles|art|deco|nouveau|modern|antique|vintage)\b"
)
_EARLY = re.compile(r"\b(early|mid|middle|late|first|second|third|last|quarter|half|turn)\b")


def to_edtf(text: str) -> str:
    """The EDTF string of a text; what is EDTF already comes back as it is.

    Raises:
        QuantityError: the words cannot be read or have no single meaning.

    >>> to_edtf("between 1784 and 1821"), to_edtf("c.1890s"), to_edtf("1894-95")
    ('1784/1821', '189X~', '1894/1895')
    """
    whole = plain(text, _WHAT)
    if short := _short_second_year(whole):
        return short
    try:
        bounds(whole)
    except QuantityError as fault:
        # figures and signs alone: either "1784-1821" or a slip in EDTF, best told as such
        if re.fullmatch(r"[0-9X.?~%/-]+", whole) and not _YEARS.fullmatch(whole):
            raise _refused(whole.lower(), whole, fault) from None
    else:
        return whole
    low = whole.lower().rstrip(".").strip()
    qualifier = ""
    if match := _PERHAPS.match(low):
        qualifier, low = "?", low[match.end() :]
    for pattern, shape in _SIDES:
        if match := pattern.fullmatch(low):
            return _one_sided(match[1], shape, qualifier, whole)
    if match := re.fullmatch(rf"(?:between|from)\s+(.+?){_TO}(.+)", low):
        return _interval(match[1], match[2], qualifier, whole)
    if edtf := _single(low, qualifier, whole):
        return edtf
    if match := re.fullmatch(rf"(.+?){_TO}(.+)", low):
        return _interval(match[1], match[2], qualifier, whole)
    raise _refused(low, whole)


_BEFORE, _BY, _AFTER, _FROM = "before", "by", "after", "from"
_SIDES = (
    (re.compile(r"(?:before|pre|prior to|earlier than)[ -]+(.+)"), _BEFORE),
    (re.compile(r"(?:by|until|up to|not after|no later than|not later than)\s+(.+)"), _BY),
    (re.compile(r"(.+?)\s+(?:or|and) (?:earlier|before)"), _BY),
    (re.compile(r"(?:after|post|later than)[ -]+(.+)"), _AFTER),
    (re.compile(r"(?:since|from|not before|no earlier than|not earlier than)\s+((?!.*\bto\b).+)"), _FROM),
    (re.compile(r"(.+?)\s+(?:or|and) (?:later|after|onwards)"), _FROM),
    (re.compile(r"(.+?)\s+onwards?"), _FROM),
)  # fmt: skip


def _one_sided(word: str, shape: str, qualifier: str, whole: str) -> str:
    date = _need(word, qualifier, whole)
    if shape in (_BY, _FROM):
        return f"../{date}" if shape == _BY else f"{date}/.."
    match = re.fullmatch(r"([0-9]{4})([?~%]?)|([0-9]{2,3}X{1,2})([?~%]?)", date)
    if not match:
        other = "by" if shape == _BEFORE else "from"
        fault = f"'{shape}' a month or day needs care: is it included?"
        raise QuantityError(_WHAT, whole, fault, f"write '{other}' and the last or first day meant")
    figures, mark = match[1] or match[3], match[2] or match[4] or ""
    if shape == _BEFORE:
        return f"../{int(figures.replace('X', '0')) - 1:04d}{mark}"
    return f"{int(figures.replace('X', '9')) + 1:04d}{mark}/.."


def _interval(first: str, second: str, qualifier: str, whole: str) -> str:
    start = _need(first, qualifier, whole)
    if (short := re.fullmatch(r"([0-9]{2})(s?)", second)) and re.match(r"[0-9]{2}", start):
        second = start[:2] + second
    # "c. 1890-1900" is about both years
    if start.endswith(("~", "%")) and not short:
        second = second if _ABOUT.match(second) else f"c. {second}"
    end = _need(second, qualifier, whole)
    if start.endswith(("~", "%")) and short and end[-1] not in "?~%":
        end += "~"
    return f"{start}/{end}"


def _need(text: str, qualifier: str, whole: str) -> str:
    found = _single(text.strip(), qualifier, whole)
    if found is None:
        raise _refused(text, whole)
    return found


def _single(text: str, qualifier: str, whole: str) -> str | None:
    """One date without sides: year, decade, century, month or day in words."""
    marks = set(qualifier)
    if match := _ABOUT.match(text):
        marks.add("~")
        text = text[match.end() :]
    text = text.removeprefix("the ").strip()
    if match := re.fullmatch(r"(.+?)\s*([?~%])", text):
        marks.add(match[2])
        text = match[1]
    mark = "%" if "%" in marks or {"?", "~"} <= marks else next(iter(marks), "")
    if years := _short_second_year(text):
        return "/".join(year + mark for year in years.split("/"))
    if re.fullmatch(r"[0-9]{4}|[0-9]{4}-[0-9]{2}(-[0-9]{2})?|[0-9]{3}x|[0-9]{2}xx", text):
        return text.upper() + mark
    if re.fullmatch(r"[0-9]{5,}", text):
        return text + mark  # refused by the type, which names the bounds
    if match := re.fullmatch(r"([0-9]{3})0'?s", text):
        if match[1].endswith("0"):
            fault = f"'{text}' may be ten years or a hundred"
            raise QuantityError(_WHAT, whole, fault, f"write {match[1]}X or {match[1][:2]}XX")
        return f"{match[1]}X{mark}"
    if match := re.fullmatch(r"([0-9]{1,2})(?:st|nd|rd|th)\s+(?:century|cent\.?|c\.?)", text):
        return f"{int(match[1]) - 1:02d}XX{mark}"
    if day := _day_in_words(text):
        return day + mark
    return None


def _day_in_words(text: str) -> str | None:
    words = re.sub(r"[,.]|(?<=[0-9])(?:st|nd|rd|th)\b|\bof\b", " ", text).split()
    months = [n for n, word in enumerate(words) if word in _MONTH]
    if len(months) != 1 or not re.fullmatch(r"[0-9]{4}", words[-1]):
        return None
    month, rest = _MONTH[words[months[0]]], [w for w in words[:-1] if w not in _MONTH]
    if not rest:
        return f"{words[-1]}-{month:02d}"
    if len(rest) == 1 and re.fullmatch(r"[0-9]{1,2}", rest[0]):
        return f"{words[-1]}-{month:02d}-{int(rest[0]):02d}"
    return None


def _short_second_year(text: str) -> str | None:
    """``1894/1895`` for "1894-95" or "1894/95": two figures that can only be a later year.

    After a hyphen, 01 to 12 is a month.
    """
    match = re.fullmatch(r"([0-9]{2})([0-9]{2})([-/])([0-9]{2})([?~%]?)", text)
    if not match or match[4] <= match[2] or (match[3] == "-" and match[4] <= "12"):
        return None
    return f"{match[1]}{match[2]}{match[5]}/{match[1]}{match[4]}{match[5]}"


def _refused(text: str, whole: str, edtf: QuantityError | None = None) -> QuantityError:
    """Why words are not read, by what they seem to be."""
    if re.search(r"[0-9]{1,2}[/.-][0-9]{1,2}[/.-][0-9]{4}", text):
        fault = "day and month may stand either way round"
        return QuantityError(_WHAT, whole, fault, "write year-month-day, like 1884-05-30")
    if re.search(r"\bb\.?c\.?e?\b", text):
        fault = "years before our era are not kept"
        return QuantityError(_WHAT, whole, fault, "put the date into the description")
    if edtf:
        return edtf
    words = set(re.findall(r"[a-z-]+", text))
    if _EARLY.search(text) or _ERA.search(text):
        fault = "words for a period have no fixed years"
        return QuantityError(_WHAT, whole, fault, "give the years you mean, like 1870/1901")
    if words & {"unknown", "undated", "nd", "none"} or text in ("n.d", "?"):
        fault = "this is no date"
        return QuantityError(_WHAT, whole, fault, "leave it out, or give bounds like ../1890")
    remedy = "write it like 1884, c. 1884, 1880s, 1820-1830 or before 1838"
    return QuantityError(_WHAT, whole, "this is not read as a date", remedy)
