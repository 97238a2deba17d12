"""Patent dates as they are struck: ``PAT. JUL. 13.80``, ``PATD MAR 5 72``, ``PAT. 1895``."""

import datetime as dt
import re

import msgspec

_NAMES = ("JAN", "FEB", "MAR", "APR", "MAY", "JUN", "JUL", "AUG", "SEP", "OCT", "NOV", "DEC")
_FULL = ("January", "February", "March", "April", "May", "June", "July", "August", "September",
         "October", "November", "December")  # fmt: skip
_MONTH = r"(?P<month>JAN|FEB|MAR|APR|MAY|JUN|JUL|AUG|SEP|OCT|NOV|DEC)[A-Z]*"
_GAP = r"[\s.,/·'’]*"
_DAY = r"(?P<day>\d{1,2})(?:ST|ND|RD|TH)?"
_YEAR = r"(?P<year>1[6-9]\d\d|20\d\d|\d\d)(?!\d)"
_FORMS = (
    re.compile(rf"\b{_MONTH}{_GAP}{_DAY}[\s.,/·'’]+{_YEAR}"),
    re.compile(rf"(?<!\d){_DAY}{_GAP}{_MONTH}{_GAP}{_YEAR}"),
    re.compile(rf"\b{_MONTH}{_GAP}(?P<year>1[6-9]\d\d|20\d\d)(?!\d)"),
)
_WORD = re.compile(r"\bPAT(?:D|ENT|ENTED|S|TD)?\b")
#: two figures are a year from 1842, the first law on patents for designs, to 1941: dates were
#: struck until the number was asked for in 1927, and for some years more (common practice)
_FIRST = 1842
#: patents of the United States are issued on Tuesdays, by the table's row since 1848
_TUESDAY, _TUESDAYS_FROM = 1, 1848


class PatentDate(msgspec.Struct, frozen=True, kw_only=True):
    """A date found in a text of capitals: where it stands, and what it says.

    date: None where only month and year are told. tuesday: whether it is a day of issue of the
    United States office; None where that cannot be told.
    """

    start: int
    end: int
    year: int
    date: dt.date | None = None
    says: str
    tuesday: bool | None = None


def _full_year(text: str) -> int:
    """Two figures as a year of the patents."""
    if len(text) == 4:
        return int(text)
    short = int(text)
    return 1800 + short if 1800 + short >= _FIRST else 1900 + short


def _date(year: int, month: int, day: int) -> dt.date | None:
    try:
        return dt.date(year, month, day)
    except ValueError:
        return None


def _tuesday(date: dt.date | None) -> bool | None:
    if date is None or date.year < _TUESDAYS_FROM:
        return None
    return date.weekday() == _TUESDAY


def patent_dates(text: str) -> tuple[PatentDate, ...]:
    """Dates in a text (capitals) that speaks of a patent; none in one that does not.

    >>> [d.says for d in patent_dates("STERLING PAT. JUL. 13.80")]
    ['13 July 1880']
    """
    word = _WORD.search(text)
    if word is None:
        return ()
    found: list[PatentDate] = []
    taken = bytearray(len(text))
    for form in _FORMS:
        for match in form.finditer(text):
            if any(taken[match.start() : match.end()]):
                continue
            if (date := _read(match)) is not None:
                found.append(date)
                taken[date.start : date.end] = b"\1" * (date.end - date.start)
    return tuple(sorted(found, key=lambda d: d.start))


def _read(match: re.Match[str]) -> PatentDate | None:
    parts = match.groupdict()
    month = _NAMES.index(parts["month"]) + 1
    day = int(parts["day"]) if parts.get("day") else None
    year = _full_year(parts["year"])
    date = _date(year, month, day) if day is not None else None
    if day is not None and date is None:
        return None
    name = _FULL[month - 1]
    return PatentDate(
        start=match.start(),
        end=match.end(),
        year=year,
        date=date,
        says=f"{day} {name} {year}" if day else f"{name} {year}",
        tuesday=_tuesday(date),
    )
