"""How much silver there is in a layer: thickness, area and mass."""

from planish.quantity import QuantityError

#: density of deposited silver [g/cm³]
DEPOSIT = 10.5
_CM2_PER_DM2, _UM_PER_CM = 100.0, 10_000.0


def layer_mass(micrometres: float, square_decimetres: float, density: float = DEPOSIT) -> float:
    """Mass of a layer [g] of a thickness [µm] on an area [dm²]: area x thickness x density.

    >>> round(layer_mass(20, 1), 3)
    2.1
    """
    _above_zero(square_decimetres, density)
    return square_decimetres * _CM2_PER_DM2 * micrometres / _UM_PER_CM * density


def layer_thickness(grams: float, square_decimetres: float, density: float = DEPOSIT) -> float:
    """Mean thickness of a layer [µm] of a mass [g] on an area [dm²].

    "90" on German flatware is 90 g on 24 dm², printed as 36 µm (RAL-RG 691 B4, 2011).

    >>> round(layer_thickness(90, 24), 1)
    35.7
    """
    _above_zero(square_decimetres, density)
    return grams / (square_decimetres * _CM2_PER_DM2 * density) * _UM_PER_CM


def _above_zero(area: float, density: float) -> None:
    if area <= 0 or density <= 0:
        fault, remedy = "area and density are above zero", "check the figures and their units"
        raise QuantityError("layer", area, fault, remedy)
