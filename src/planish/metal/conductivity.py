"""Conductivity on the scale of annealed copper, as meters for metals show it."""

from planish.quantity import QuantityError

#: conductivity of the international standard of annealed copper at 20 °C [MS/m]. Source: IEC 60028
ANNEALED_COPPER = 58.0


def iacs(megasiemens: float) -> float:
    """Per cent of annealed copper for a conductivity [MS/m].

    >>> iacs(58.0)
    100.0
    """
    return 100.0 * megasiemens / ANNEALED_COPPER


def resistivity(share: float) -> float:
    """Resistivity [µΩ cm] of a metal that conducts so many per cent of annealed copper.

    Raises:
        QuantityError: the share is not above zero.
    """
    if share <= 0:
        raise QuantityError("conductivity", share, "a metal conducts", "give %IACS above zero")
    return 100.0 / (share / 100.0 * ANNEALED_COPPER)
