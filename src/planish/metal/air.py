"""Density of air, for the buoyancy that every weighing has."""

import math

from planish.quantity import QuantityError

#: near sea level, where pressure and humidity are not known [kg/m³], and the half-width within
#: which it then lies; common practice
USUAL, USUAL_HALF_WIDTH = 1.2, 0.1
#: air where balances are adjusted, and the weights that adjust them [kg/m³]: conventional values,
#: OIML D 28 (from memory)
CONVENTIONAL, STEEL = 1.2, 8000.0


def air_density(hectopascal: float, humidity: float, celsius: float) -> float:
    """Density of moist air [kg/m³].

    hectopascal: pressure where one stands, not reduced to sea level. humidity: relative [%].

    Source: OIML R 111-1 (2004), equation E.3-1, from memory; good to about 0.0002 of its value.

    Raises:
        QuantityError: a figure is outside 600 to 1100 hPa, 0 to 100 % or 0 to 40 °C.

    >>> round(air_density(1013.25, 50, 20), 4)
    1.1993
    """
    limits = (
        ("pressure", hectopascal, 600.0, 1100.0, "hPa"),
        ("humidity", humidity, 0.0, 100.0, "%"),
        ("temperature", celsius, 0.0, 40.0, "°C"),
    )
    for what, value, low, high, unit in limits:
        if not low <= value <= high:
            fault = f"outside {low:g} to {high:g} {unit}"
            raise QuantityError(what, value, fault, "check the figure and its unit")
    vapour = 0.009 * humidity * math.exp(0.061 * celsius)
    return (0.34848 * hectopascal - vapour) / (273.15 + celsius)


def buoyancy_share(density: float) -> float:
    """Share by which a balance adjusted with steel misreads a body of a density [g/cm³] in air.

    Negative: the balance shows more than the mass. Silver: -0.000034, a hundredth of a gram in 300.
    """
    return CONVENTIONAL / (1000.0 * density) - CONVENTIONAL / STEEL
