"""Uncertain dates, kept as Extended Date/Time Format (EDTF, see ``edtf``).

A bound never widens for ``?`` or ``~``: how far "about" reaches is for the reader to judge.
"""

import datetime as dt
import re
from enum import StrEnum
from typing import Self

import msgspec

from planish.quantity.datewords import to_edtf
from planish.quantity.edtf import bounds


class Qualifier(StrEnum):
    """How sure a date is."""

    NONE = ""
    UNCERTAIN = "?"
    APPROXIMATE = "~"
    BOTH = "%"

    @property
    def words(self) -> str:
        """In words."""
        return _QUALIFIER_WORDS[self]


_QUALIFIER_WORDS = {
    Qualifier.NONE: "",
    Qualifier.UNCERTAIN: "uncertain",
    Qualifier.APPROXIMATE: "about",
    Qualifier.BOTH: "about, uncertain",
}


class UncertainDate(msgspec.Struct, frozen=True):
    """A date known to within bounds; ``edtf`` is the whole truth and how it is stored.

    >>> UncertainDate.parse("circa 1894")
    UncertainDate(edtf='1894~')
    >>> UncertainDate.parse("1890s").earliest
    datetime.date(1890, 1, 1)
    """

    edtf: str

    def __post_init__(self) -> None:
        bounds(self.edtf)

    @classmethod
    def parse(cls, text: str) -> Self:
        """The date of an EDTF string or of common words ("c.1890s", "before 1838", "1894-95").

        EDTF goes first: ``1909-10`` with a hyphen is October 1909; ``1909/10`` and ``1909–10`` are
        the two years. "Before 1838" ends with 1837, "by 1838" with 1838.

        Raises:
            QuantityError: it cannot be read, no such day exists, or the year is past 2200.
        """
        return cls(to_edtf(text))

    @classmethod
    def years(cls, first: int | None, last: int | None) -> Self:
        """All days of a run of years; None leaves that side open.

        Raises:
            QuantityError: both sides are open, or upside down.
        """
        if first == last and first is not None:
            return cls(f"{first:04d}")
        sides = [".." if year is None else f"{year:04d}" for year in (first, last)]
        return cls("/".join(sides))

    @property
    def earliest(self) -> dt.date | None:
        """The first day it may be; None where that side is open or unknown."""
        return bounds(self.edtf)[0]

    @property
    def latest(self) -> dt.date | None:
        """The last day it may be; None where that side is open or unknown."""
        return bounds(self.edtf)[1]

    @property
    def qualifier(self) -> Qualifier:
        """How sure it is; of an interval, that of its ends together."""
        marks = set(re.findall(r"[?~%]", self.edtf))
        if "%" in marks or {"?", "~"} <= marks:
            return Qualifier.BOTH
        return Qualifier(next(iter(marks), ""))

    def may_be(self, day: dt.date) -> bool:
        """Whether the bounds allow the day."""
        first, last = bounds(self.edtf)
        return (first is None or first <= day) and (last is None or day <= last)

    def __str__(self) -> str:
        return self.edtf
