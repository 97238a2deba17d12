"""Registered designs and patents: what year a number or a diamond mark stands for.

All tables are rows of the library (``designs*.csv``). A registration gives the earliest year of
making, never the year of making: designs stayed in use for years.
"""

import datetime as dt
import re
from bisect import bisect_right
from collections.abc import Iterable

import msgspec

from planish.library.rows import Design

#: lists of registered numbers differ by thousands before 1935, as their rows say
_DOUBTED = "plus or minus"
_OLD, _NEW = "1842-1867", "1868-1883"
#: "1 to 6 March 1878 only": days, and a month where one is named, to which a row is bound
_BOUND = re.compile(r"(\d+) to (\d+)(?: ([A-Z][a-z]+))?")
_MONTHS = ("January", "February", "March", "April", "May", "June", "July", "August", "September",
           "October", "November", "December")  # fmt: skip


class DiamondError(ValueError):
    """Letters that no diamond mark can hold: what, where, how to mend it."""

    def __init__(self, where: str, what: str, mend: str) -> None:
        self.where, self.what, self.mend = where, what, mend
        super().__init__(f"diamond mark, {where}: {what}; {mend}")


class Registered(msgspec.Struct, frozen=True, kw_only=True):
    """The year of a number. surely_from: the same less the doubt of the table."""

    year: int
    surely_from: int
    says: str
    sources: tuple[str, ...]


class Diamond(msgspec.Struct, frozen=True, kw_only=True):
    """A diamond mark decoded.

    days: every date that its letters can mean, earliest first; mostly one.
    """

    pattern: str
    material: str
    days: tuple[dt.date, ...]
    parcel: str
    says: str
    sources: tuple[str, ...]

    @property
    def year(self) -> int:
        """The year of registration: the earliest year of making."""
        return self.days[0].year


def _series(record: str, designs: Iterable[Design]) -> list[tuple[int, int, Design]]:
    """(first number, year, row) of a running series, by number."""
    return sorted(
        ((int(d.key_2), int(d.key_1[:4]), d) for d in designs if d.record == record),
        key=lambda row: row[0],
    )


def _find(record: str, number: int, designs: Iterable[Design]) -> tuple[int, Design] | None:
    rows = _series(record, designs)
    at = bisect_right([first for first, _, _ in rows], number) - 1
    if at < 0:
        return None
    _, year, row = rows[at]
    if row.value and number > int(row.value):
        return None
    return year, row


def registered_year(number: int, designs: Iterable[Design]) -> Registered | None:
    """The year in which a registered design of this number falls; None outside the tables.

    >>> from planish.library import load
    >>> registered_year(631976, load().designs).year
    1914
    """
    hit = _find("rd-number", number, designs)
    if hit is None or number > _top_of_series(number, designs):
        return None
    year, row = hit
    doubt = _DOUBTED in row.detail
    says = f"registered design {number} falls in {year}"
    if doubt:
        says += ", by lists that may be a year out"
    return Registered(
        year=year, surely_from=year - doubt, says=says, sources=(*row.sources, *_rule(designs))
    )


def _top_of_series(number: int, designs: Iterable[Design]) -> int:
    """The last number that the table answers for: the first series ended below 2,000,000."""
    starts = [first for first, _, _ in _series("rd-number", designs)]
    second = [s for s in starts if s >= 2_000_000]
    if number >= 2_000_000 or not second:
        return 10_000_000
    # the last row of the first series has no last number; the series was near its end
    return max(s for s in starts if s < 2_000_000) + 15_000


def _rule(designs: Iterable[Design]) -> tuple[str, ...]:
    return next((d.sources for d in designs if d.record == "meaning" and d.key_1 == "all"), ())


def patent_year(
    number: int, designs: Iterable[Design], *, ornament: bool | None = None
) -> Registered | None:
    """The year of a United States patent number; None beyond the tables.

    ornament: True for the series of patents for designs, False for the series of inventions; None
    where the mark does not tell, and then the earlier of the two.
    """
    rows = tuple(designs)
    names = {"us-patent": "invention", "us-design-patent": "design"}
    found: list[tuple[int, Design, str]] = []
    for record, name in names.items():
        if ornament is not None and ornament != (name == "design"):
            continue
        last = max((first for first, _, _ in _series(record, rows)), default=0)
        hit = _find(record, number, rows)
        # beyond the first number of the last year the table does not say where that year ends
        if hit and number <= last:
            found.append((*hit, name))
    if not found:
        return None
    found.sort(key=lambda f: f[0])
    year = found[0][0]
    told = " or ".join(f"{y} as a patent for {_article(n)}" for y, _, n in found)
    sources = tuple(dict.fromkeys(s for _, row, _ in found for s in row.sources))
    return Registered(
        year=year, surely_from=year, says=f"United States patent {number}: {told}", sources=sources
    )


def _article(name: str) -> str:
    return "a design" if name == "design" else "an invention"


def diamond(
    *,
    top: str,
    left: str,
    right: str,
    bottom: str,
    designs: Iterable[Design],
    circle: str = "",
) -> Diamond:
    """The date and material of a British registration diamond of 1842-83.

    top, left, right, bottom: what stands in the four points; circle: the class in the ring above.
    Figures at the right are the pattern of 1842-67, a letter there that of 1868-83.

    Raises:
        DiamondError: the letters stand for no date.

    >>> from planish.library import load
    >>> print(
    ...     diamond(
    ...         circle="IV", top="K", left="H", right="7", bottom="5", designs=load().designs
    ...     ).says
    ... )
    registered 7 April 1857, class IV earthenware, parcel 5: the earliest day of making
    """
    rows = tuple(designs)
    points = {n: v.strip().upper().rstrip(".")
              for n, v in (("top", top), ("left", left), ("right", right), ("bottom", bottom))}  # fmt: skip
    for name, value in points.items():
        if not (value.isdecimal() or (len(value) == 1 and value.isalpha())):
            raise DiamondError(
                f"{name} point", f"{value or 'nothing'} cannot stand there",
                "give one letter or a number as it stands",
            )  # fmt: skip
    old = points["right"].isdecimal()
    pattern = _OLD if old else _NEW
    places = (
        {"year": "top", "month": "left", "day": "right", "parcel": "bottom"}
        if old
        else {"year": "right", "month": "bottom", "day": "top", "parcel": "left"}
    )
    here = {what: (where, points[where]) for what, where in places.items()}
    for what in ("day", "parcel"):
        where, value = here[what]
        if not value.isdecimal():
            raise DiamondError(
                f"{where} point", f"{value} is no {what} of the pattern of {pattern}",
                "figures stand there; turn the mark so that its ring is on top",
            )  # fmt: skip
    days, used = _days(here, pattern, rows)
    material, told = _material(circle, pattern, rows)
    parcel = here["parcel"][1]
    words = " or ".join(f"{d.day} {_MONTHS[d.month - 1]} {d.year}" for d in days)
    sources = tuple(dict.fromkeys(s for row in (*used, *told) for s in row.sources))
    return Diamond(
        pattern=pattern,
        material=material,
        days=days,
        parcel=parcel,
        says=f"registered {words}{f', class {material}' if material else ''}, parcel {parcel}: "
        "the earliest day of making",
        sources=sources,
    )


def _days(
    here: dict[str, tuple[str, str]], pattern: str, rows: tuple[Design, ...]
) -> tuple[tuple[dt.date, ...], list[Design]]:
    """Every date that year, month and day letters can mean, and the rows that say so."""
    (y_at, y), (m_at, m), (d_at, d) = here["year"], here["month"], here["day"]
    years = [r for r in rows if r.record == "diamond-year" and (r.key_1, r.key_2) == (pattern, y)]
    if not years:
        raise DiamondError(
            f"{y_at} point", f"{y} stands for no year of {pattern}", "look again at the letter"
        )
    months = [r for r in rows if r.record == "diamond-month" and r.key_2 == m]
    if not months:
        raise DiamondError(f"{m_at} point", f"{m} stands for no month", "look again at the letter")
    found: set[dt.date] = set()
    used = [*years, *months]
    for row in years:
        year = int(row.value)
        odd = [
            r
            for r in rows
            if r.record == "diamond-exception" and (r.key_1, r.key_2) == (str(year), m)
        ]
        used += odd
        for month_row in (*months, *odd):
            date = _date(year, month_row.value, int(d))
            if date and _bound(date, row) and _bound(date, month_row):
                found.add(date)
    if not found:
        raise DiamondError(
            f"{d_at} point", f"there was no day {d} in that month", "look again at the figures"
        )
    return tuple(sorted(found)), used


def _bound(date: dt.date, row: Design) -> bool:
    """Whether a date lies in the days to which a row is bound, if it is."""
    match = _BOUND.search(row.detail)
    if match is None:
        return True
    first, last, month = match.groups()
    right_month = month not in _MONTHS or _MONTHS.index(month) + 1 == date.month
    return right_month and int(first) <= date.day <= int(last)


def _date(year: int, month: str, day: int) -> dt.date | None:
    try:
        return dt.date(year, _MONTHS.index(month) + 1, day)
    except ValueError:
        return None


def _material(
    circle: str, pattern: str, rows: tuple[Design, ...]
) -> tuple[str, tuple[Design, ...]]:
    """The class in words, from the row on the layout: "class I metal, II wood, ..."."""
    said = circle.strip().upper()
    if not said:
        return "", ()
    row = next(
        (r for r in rows if r.record == "diamond-layout" and r.key_1 == pattern
         and r.value == "class"), None,
    )  # fmt: skip
    if row is None:
        return said, ()
    for part in row.detail.removeprefix("class ").split(","):
        numeral, _, name = part.strip().partition(" ")
        if numeral == said:
            return f"{numeral} {name}", (row,)
    return f"{said}, no metal, wood, glass or earthenware", (row,)
