"""How the quantities of a case file are read: text in, quantity out, one sentence where it fails."""

import re
from collections.abc import Callable, Mapping
from decimal import Decimal

from planish.quantity import Mass, Money, UncertainDate

#: millimetres in one unit (the inch is 25.4 mm exactly, international agreement of 1959)
_LENGTHS: Mapping[str, Decimal] = {
    "mm": Decimal(1),
    "cm": Decimal(10),
    "m": Decimal(1000),
    "in": Decimal("25.4"),
}
_LENGTH = re.compile(r"\s*(\d{1,6}(?:\.\d{1,6})?)\s*([^\W\d_]+|\"|″)?\s*")
_ISO = re.compile(r"\d{4}(?:-\d{2}(?:-\d{2})?)?")


def millimetres(text: str) -> Decimal:
    """The length [mm] that a text states.

    Raises:
        ValueError: figure or unit cannot be read.

    >>> millimetres("5.5 in")
    Decimal('139.70')
    """
    match = _LENGTH.fullmatch(text)
    if not match:
        raise ValueError(f"length '{text[:40]}' cannot be read")
    unit = {'"': "in", "″": "in"}.get(match[2] or "", match[2] or "")
    if unit not in _LENGTHS:
        raise ValueError(f"length '{text[:40]}' has {'an unknown' if unit else 'no'} unit")
    return Decimal(match[1]) * _LENGTHS[unit]


def iso_date(text: str) -> UncertainDate:
    """A day, month or year; no words and no doubt.

    Raises:
        ValueError: it is not of that form, or no such day exists.
    """
    if not _ISO.fullmatch(text):
        UncertainDate.parse(text)  # a date for all that? then its own fault is said first
        raise ValueError(f"'{text[:40]}' is not a plain date: this field needs a day")
    return UncertainDate(text)


PARSERS: Mapping[str, Callable[[str], object]] = {
    "mass": Mass.parse,
    "money": Money.parse,
    "date": iso_date,
    "edtf": UncertainDate.parse,
    "length": millimetres,
}


def to_grams(value: object) -> float | None:
    """Grams of a mass text; None where there is none that can be read."""
    if not isinstance(value, str):
        return None
    try:
        return float(Mass.parse(value).grams)
    except ValueError:
        return None


def money_pair(value: object) -> tuple[str, Decimal] | None:
    """Currency and amount of a money text; None where there is none that can be read."""
    if not isinstance(value, str):
        return None
    try:
        money = Money.parse(value)
    except ValueError:
        return None
    return money.currency, money.amount
