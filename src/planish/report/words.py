"""Figures and probabilities in words, as the report prints them."""

import calendar
import re
from decimal import Decimal

from planish.evidence import percent
from planish.quantity import Mass, Money
from planish.quantity.numbers import digits, rounded

__all__ = [
    "amount", "day", "grams", "joined", "likely", "money", "numbers", "ounces", "pennyweights",
    "percent", "sentence", "share", "signed",
]  # fmt: skip

_MINUS = "\u2212"

#: words for a probability: M. D. Mastrandrea and others, "Guidance Note for Lead Authors of the IPCC
#: Fifth Assessment Report on Consistent Treatment of Uncertainties" (2010), table 1; from memory.
#: Its "virtually certain" is left out: a reading is never certain because it is printed.
_LIKELY: tuple[tuple[float, str], ...] = (
    (0.95, "extremely likely"),
    (0.90, "very likely"),
    (0.66, "likely"),
    (0.50, "more likely than not"),
    (0.33, "about as likely as not"),
    (0.10, "unlikely"),
    (0.05, "very unlikely"),
    (0.00, "extremely unlikely"),
)


def likely(probability: float) -> str:
    """A probability in words.

    >>> likely(0.83), likely(0.04)
    ('likely', 'extremely unlikely')
    """
    return next(word for bound, word in _LIKELY if probability >= bound)


def share(value: Decimal | float) -> str:
    """A share in percent, as it was given.

    >>> share(0.85), share(Decimal("0.125"))
    ('85 %', '12.5 %')
    """
    return f"{digits(rounded(Decimal(str(value)) * 100, 2))} %"


def signed(value: float, places: int = 1) -> str:
    """A figure with its sign.

    >>> signed(-3.25), signed(0.04)
    ('−3.2', '0.0')
    """
    text = f"{abs(value):.{places}f}"
    if not float(text):
        return text
    return (_MINUS if value < 0 else "+") + text


def money(value: Money) -> str:
    """Code and amount, without decimals where there are none.

    >>> money(Money.parse("USD 1,800")), money(Money.parse("GBP 12.5"))
    ('USD 1,800', 'GBP 12.50')
    """
    text = str(value)
    return re.sub(r"\.0+$", "", text).replace("-", _MINUS)


def amount(value: Money) -> str:
    """The amount alone, as ``money`` prints it."""
    return money(value).partition(" ")[2]


def grams(mass: Mass, places: int = 1) -> str:
    """The grams of a mass."""
    return _grouped(rounded(mass.grams, places))


def ounces(mass: Mass) -> str:
    """Troy ounces of a mass, two decimals; three figures below one."""
    value = mass.to("ozt")
    places = 2 if not value or abs(value) >= 1 else 2 - value.adjusted()
    return _grouped(rounded(value, min(places, 5)))


def pennyweights(mass: Mass) -> str:
    """Pennyweights of a mass, one decimal."""
    return _grouped(rounded(mass.to("dwt"), 1))


def _grouped(value: Decimal) -> str:
    return f"{value:,f}".replace("-", _MINUS)


_SURE = {"": "", "?": "perhaps ", "~": "about ", "%": "perhaps about "}


def day(text: str | None) -> str:
    """A date in words: ISO 8601, or EDTF where it may be uncertain.

    >>> day("2026-05-14"), day("2026-05"), day("1884~"), day("188X"), day("1820/1830")
    ('14 May 2026', 'May 2026', 'about 1884', 'the 1880s', '1820 to 1830')
    """
    if not text:
        return ""
    first, stroke, last = text.partition("/")
    if stroke:
        open_ends = ("", "..")
        if first in open_ends:
            return f"until {day(last)}"
        return f"from {day(first)}" if last in open_ends else f"{day(first)} to {day(last)}"
    if match := re.fullmatch(r"(\d{2,3})X{1,2}([?~%]?)", text):
        return f"{_SURE[match[2]]}the {match[1].ljust(4, '0')}s"
    match = re.fullmatch(r"(\d{4})(?:-(\d{2})(?:-(\d{2}))?)?([?~%]?)", text)
    if not match:
        return text
    year, month, number, sure = match.groups()
    name = calendar.month_name[int(month)] if month and 1 <= int(month) <= 12 else ""
    return _SURE[sure] + " ".join(p for p in (str(int(number)) if number else "", name, year) if p)


def numbers(text: str | None) -> tuple[int, ...]:
    """Year, month and day of a plain date for the document, () where there is none."""
    match = re.fullmatch(r"(\d{4})(?:-(\d{2})(?:-(\d{2}))?)?", text or "")
    if not match:
        return ()
    year, month, number = match.groups()
    return int(year), int(month or 1), int(number or 1)


def joined(*parts: str | None, sep: str = ", ") -> str:
    """The parts that hold something, in one line."""
    return sep.join(p for p in parts if p)


def sentence(text: str) -> str:
    """The text with a capital at its head and a stop at its end."""
    text = text.strip()
    if not text:
        return ""
    return text[0].upper() + text[1:] + ("" if text[-1] in ".!?:;" else ".")
