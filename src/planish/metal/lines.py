"""Lines of a reckoning that anybody can work again from what is printed."""

from decimal import Decimal

import msgspec

from planish.quantity.numbers import digits, rounded


class Line(msgspec.Struct, frozen=True, kw_only=True):
    """One line.

    label: what it is.
    figure: exact, in ``unit``.
    unit: "g", "ozt" or a currency code.
    formula: how it follows from figures given or reckoned above, with the signs + - × /; blank
        where the figure was given.
    note: how it was found, and who says so.
    """

    label: str
    figure: Decimal
    unit: str
    formula: str = ""
    note: str = ""


def shown(value: Decimal) -> str:
    """A figure as formulas print it, to nine decimals at most.

    >>> shown(Decimal("31.1034768"))
    '31.1034768'
    """
    return digits(rounded(value, 9))
