"""Numbers and days in the forms of different countries, the form found from a whole column.

A single "1,250" or "03/04/1884" may mean two things; a column seldom does. Where it still may, that
is said and nothing is guessed.
"""

import datetime as dt
import re
from collections.abc import Iterable
from decimal import Decimal
from enum import StrEnum

_GROUPED = {
    ".": re.compile(r"[+-]?\d{1,3}(?:[, '\u00a0\u202f]\d{3})*(?:\.\d+)?|[+-]?\d+(?:\.\d+)?|[+-]?\.\d+"),
    ",": re.compile(r"[+-]?\d{1,3}(?:[. '\u00a0\u202f]\d{3})*(?:,\d+)?|[+-]?\d+(?:,\d+)?|[+-]?,\d+"),
}  # fmt: skip
_DAY = re.compile(r"(\d{1,2})[./-](\d{1,2})[./-](\d{4})")
_ISO = re.compile(r"(\d{4})-(\d{2})-(\d{2})")


class Order(StrEnum):
    """What stands first in a day written in figures."""

    DAY = "day first"
    MONTH = "month first"


def decimal_sign(values: Iterable[str]) -> str | None:
    """The sign before the decimals of a column of numbers; None where both fit or neither does.

    >>> decimal_sign(["1.250,5", "3"]), decimal_sign(["1,250", "2,500"])
    (',', None)
    """
    fits = {".", ","}
    for value in values:
        text = value.strip()
        if text and any(c.isdigit() for c in text):
            fits &= {sign for sign, shape in _GROUPED.items() if shape.fullmatch(text)}
    return fits.pop() if len(fits) == 1 else None


def number(text: str, sign: str) -> Decimal:
    """The value of a text whose decimals follow ``sign``; groups of three are taken together.

    Raises:
        ValueError: it is no number in this form.

    >>> number("1.250,5", ",")
    Decimal('1250.5')
    """
    text = text.strip()
    if not _GROUPED[sign].fullmatch(text):
        raise ValueError(f"{text[:40]} is no number with decimals after '{sign}'")
    plain = re.sub(rf"[^\d+\-{re.escape(sign)}]", "", text).replace(sign, ".")
    return Decimal(plain)


def day_order(values: Iterable[str]) -> Order | None:
    """What stands first in a column of days; None where both fit or neither does.

    >>> day_order(["03/04/1884", "25/12/1890"])
    <Order.DAY: 'day first'>
    """
    fits = {Order.DAY, Order.MONTH}
    for value in values:
        if match := _DAY.fullmatch(value.strip()):
            first, second = int(match[1]), int(match[2])
            if first > 12:
                fits.discard(Order.MONTH)
            if second > 12:
                fits.discard(Order.DAY)
    return fits.pop() if len(fits) == 1 else None


def day(text: str, order: Order | None) -> dt.date:
    """The day of a text: ISO 8601, or figures in the order of their column.

    Raises:
        ValueError: no such day, or either order fits and none is given.
    """
    text = text.strip()
    if match := _ISO.fullmatch(text):
        return dt.date(int(match[1]), int(match[2]), int(match[3]))
    match = _DAY.fullmatch(text)
    if not match:
        raise ValueError(f"{text[:40]} is no day")
    first, second, year = (int(g) for g in match.groups())
    if order is None:
        if first <= 12 and second <= 12 and first != second:
            raise ValueError(f"{text} may be read either way round")
        order = Order.DAY if first > 12 or first == second else Order.MONTH
    month, at = (second, first) if order is Order.DAY else (first, second)
    return dt.date(year, month, at)
