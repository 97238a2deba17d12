"""The grammar of the date format: first and last day of a string.

Format: ISO 8601-2:2019, Extended Date/Time Format (Library of Congress, 2019), levels 0 and 1 as
far as silver needs them: year, month, day; ``189X`` and ``18XX``; ``?`` uncertain, ``~``
approximate, ``%`` both; intervals ``a/b`` with an open (``..``) or unknown (blank) end.
"""

import calendar
import datetime as dt
import re
from functools import lru_cache

from planish.quantity.errors import QuantityError

_WHAT = "date"
YEAR_LAST = 2200  # a later year is a slip of the keys
_REMEDY = "write it like 1884, 1884-05, 1884~, 188X or 1820/1830"

_DATE = re.compile(
    r"(?P<year>[0-9]{4}|[0-9]{3}X|[0-9]{2}XX)"
    r"(?:-(?P<month>[0-9]{2})(?:-(?P<day>[0-9]{2}))?)?(?P<qualifier>[?~%]?)"
)


@lru_cache(maxsize=4096)
def bounds(edtf: str) -> tuple[dt.date | None, dt.date | None]:
    """First and last day of an EDTF string.

    Raises:
        QuantityError: it is not of the subset, or is impossible.
    """
    ends = edtf.split("/")
    if len(ends) == 1:
        return _part(edtf, edtf)
    if len(ends) != 2:
        raise QuantityError(_WHAT, edtf, "an interval has one '/'", _REMEDY)
    if all(end in ("", "..") for end in ends):
        raise QuantityError(_WHAT, edtf, "both ends are open", "give at least one year")
    first = _part(ends[0], edtf)[0] if ends[0] not in ("", "..") else None
    last = _part(ends[1], edtf)[1] if ends[1] not in ("", "..") else None
    if first and last and first > last:
        fault = "the interval ends before it begins"
        raise QuantityError(_WHAT, edtf, fault, "put the earlier date first")
    return first, last


def _part(part: str, whole: str) -> tuple[dt.date, dt.date]:
    """First and last day of one date."""
    match = _DATE.fullmatch(part)
    if not match:
        digits = re.fullmatch(r"[Y-]?([0-9]{5,})[?~%]?", part)
        if digits:
            raise _no_year(digits[1], whole)
        raise QuantityError(_WHAT, whole, f"'{part}' is no date", _REMEDY)
    year, month, day = match["year"], match["month"], match["day"]
    low, high = int(year.replace("X", "0")), int(year.replace("X", "9"))
    if low == 0 or high > YEAR_LAST:
        raise _no_year(year, whole)
    if month is None:
        return dt.date(low, 1, 1), dt.date(high, 12, 31)
    if "X" in year:
        fault = "a month needs a full year"
        raise QuantityError(_WHAT, whole, fault, f"write {year} alone, or all four figures")
    if not 1 <= int(month) <= 12:
        fault = f"there is no month {month}"
        span = f"; for years write {low}/{year[:2]}{month}" if int(month) > int(year[2:]) else ""
        raise QuantityError(_WHAT, whole, fault, f"write the month as 01 to 12{span}")
    length = calendar.monthrange(low, int(month))[1]
    if day is None:
        return dt.date(low, int(month), 1), dt.date(low, int(month), length)
    if not 1 <= int(day) <= length:
        fault = f"{low:04d}-{month} has no day {day}"
        raise QuantityError(_WHAT, whole, fault, f"write a day from 01 to {length}")
    date = dt.date(low, int(month), int(day))
    return date, date


def _no_year(figures: str, whole: str) -> QuantityError:
    guess = figures[:4] if len(figures) == 5 and int(figures[:4]) <= YEAR_LAST else ""
    fault = f"'{figures}' is not a year from 1 to {YEAR_LAST}"
    remedy = f"did you mean {guess}?" if guess else "write four figures, like 1884"
    return QuantityError(_WHAT, whole, fault, remedy)
