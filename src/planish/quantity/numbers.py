"""Numbers as people write them, and exact arithmetic that no caller's settings can change.

The comma groups thousands, as in English ("1,250"); a decimal comma is refused, never guessed at.
"""

import math
import re
from decimal import ROUND_HALF_UP, Context, Decimal, DivisionByZero, InvalidOperation, Overflow
from fractions import Fraction

from planish.quantity.errors import QuantityError

#: what arithmetic accepts as a plain number; a float stands for its shortest decimal form
Number = int | float | Decimal | Fraction

# 50 digits: sums and products of anything that can be weighed or paid stay exact
EXACT = Context(prec=50, rounding=ROUND_HALF_UP, traps=[InvalidOperation, DivisionByZero, Overflow])

_VULGAR = {
    "½": "1/2", "¼": "1/4", "¾": "3/4", "⅓": "1/3", "⅔": "2/3",
    "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8",
}  # fmt: skip

#: a number: grouped thousands, decimals, a fraction or a mixed number
NUMBER = (
    r"(?:[0-9]+[ ]+[0-9]+/[0-9]+|[0-9]+/[0-9]+"
    r"|(?:[0-9]{1,3}(?:,[0-9]{3})+(?![0-9])|[0-9]+)(?:\.[0-9]+)?|\.[0-9]+)"
)
_NUMBER = re.compile(NUMBER)
#: longer texts are a slip of the clipboard
LONGEST = 200


def plain(text: str, what: str) -> str:
    """The text with fractions of one character spelled out, spaces single and ends trimmed.

    Raises:
        QuantityError: the text is empty or longer than ``LONGEST``.
    """
    if not text.strip():
        raise QuantityError(what, text, "nothing is written", "fill it in or leave it out")
    if len(text) > LONGEST:
        raise QuantityError(what, text, f"{len(text)} characters are too many", "shorten it")
    for sign, spelled in _VULGAR.items():
        text = text.replace(sign, f" {spelled}")
    return " ".join(text.replace("⁄", "/").split())


def read(text: str, what: str) -> Fraction:
    """The exact value of a text that matches ``NUMBER``.

    Raises:
        QuantityError: it does not, or a fraction has nothing below the line.

    >>> read("2 1/2", "figure")
    Fraction(5, 2)
    """
    if not _NUMBER.fullmatch(text):
        remedy = "write figures with a decimal point, like 12.5"
        raise QuantityError(what, text, "this is not a number", remedy)
    try:
        return sum((Fraction(word) for word in text.replace(",", "").split()), Fraction(0))
    except ZeroDivisionError:
        fault, remedy = "the fraction divides by nought", "correct the lower figure"
        raise QuantityError(what, text, fault, remedy) from None


def fraction(value: Number, what: str = "figure") -> Fraction:
    """The exact value of a number; a float counts as the shortest decimal that prints the same.

    Raises:
        QuantityError: it is not finite.
        TypeError: it is not a number.
    """
    if isinstance(value, bool) or not isinstance(value, int | float | Decimal | Fraction):
        raise TypeError(f"a number is needed, not {value!r}")
    if isinstance(value, int | Fraction):
        return Fraction(value)
    if not (value.is_finite() if isinstance(value, Decimal) else math.isfinite(value)):
        raise QuantityError(what, value, "this is not a finite number", "give a plain figure")
    return Fraction(str(value))


def decimal(value: Number, what: str = "figure") -> Decimal:
    """The value as a decimal, rounded at 50 significant digits where it does not end.

    Raises:
        QuantityError: it is not finite.

    >>> decimal(0.925), decimal(Fraction(1, 8))
    (Decimal('0.925'), Decimal('0.125'))
    """
    exact = fraction(value, what)
    return EXACT.divide(Decimal(exact.numerator), Decimal(exact.denominator))


def rounded(value: Decimal, places: int) -> Decimal:
    """The value at ``places`` decimals, halves away from zero."""
    return value.quantize(Decimal(1).scaleb(-places), context=EXACT)


def digits(value: Decimal) -> str:
    """The value in plain figures, without exponent, closing noughts or a signed nought.

    >>> digits(Decimal("1.50E+3")), digits(Decimal("0.50"))
    ('1500', '0.5')
    """
    text = format(value, "f")
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text
