"""Density of water by temperature, for weighing in water."""

from planish.quantity import QuantityError

#: limits of the formula [°C]
COLDEST, WARMEST = 0.0, 40.0
#: what salts may add to tap water [kg/m³]; from memory
TAP_SALTS = 0.5

_A1, _A2, _A3, _A4, _A5 = -3.983035, 301.797, 522528.9, 69.34881, 999.974950


def water_density(celsius: float) -> float:
    """Density of pure water free of air at 101 325 Pa [kg/m³], 0 to 40 °C.

    Source: M. Tanaka, G. Girard, R. Davis, A. Peuto, N. Bignell, Recommended table for the density
    of water between 0 °C and 40 °C, Metrologia 38 (2001) 301-309. Air dissolved in it takes off 2 to
    5 g/m³ and salts of the tap add up to 0.5 kg/m³ (from memory): too little to matter here.

    Raises:
        QuantityError: the temperature is outside 0 to 40 °C.

    >>> round(water_density(20), 4)
    998.2067
    """
    if not COLDEST <= celsius <= WARMEST:
        fault = f"the formula for water holds from {COLDEST:g} to {WARMEST:g} °C"
        remedy = "give the water's temperature in degrees Celsius"
        raise QuantityError("temperature", celsius, fault, remedy)
    t = celsius
    return _A5 * (1.0 - (t + _A1) ** 2 * (t + _A2) / (_A3 * (t + _A4)))


def water_slope(celsius: float) -> float:
    """Change of the density of water with its temperature [kg/m³ per °C], by central difference.

    Raises:
        QuantityError: the temperature is outside 0 to 40 °C.
    """
    low, high = max(COLDEST, celsius - 0.05), min(WARMEST, celsius + 0.05)
    return (water_density(high) - water_density(low)) / (high - low)
