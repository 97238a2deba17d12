"""What a test would show on one history: the physics between a piece and a reading."""

import math

from planish.metal.composition_histories import History, conductivity_of
from planish.metal.testlog import Where

#: skin depth in silver at the 60 kHz of hand-held meters [µm] (SKIN-DEPTH)
_DELTA_SILVER = 260.0
#: 1/e depth of Ag L in silver [µm] (XRF-DEPTHS), shortened by the slant
_SOFT = 1.3
#: plate that a streak on the stone goes through [µm] (judgment)
_STREAK = 4.0
#: plate thinner than this fails to show as silver to a drop [µm] (judgment)
_FLASH = 1.0
#: share of a shot that must come from beneath the plate for its metals to be named
_SEEN = 0.01


def plate_at(history: History, where: Where) -> float:
    """Thickness of plate where the test was made [µm]; none once filed."""
    if where is Where.CUT:
        return 0.0
    return history.worn_plate if where is Where.WORN else history.plate


def silver_class(fine: float) -> str:
    """Class of silver that spot tests tell apart."""
    if fine >= 945.0:
        return "silver-high"
    if fine >= 880.0:
        return "silver-925"
    return "silver-800" if fine >= 740.0 else "silver-low"


def _is_silver(history: History) -> bool:
    return history.core in ("silver", "filled")


def _surface(history: History, where: Where) -> float:
    """Fineness of what lies open [‰]; 0 where it is base metal."""
    if _is_silver(history):
        thick = history.skin_depth > _FLASH and where is Where.SURFACE
        return history.skin if thick else history.fine
    return history.fine if plate_at(history, where) >= _FLASH else 0.0


def met(history: History, meets: str, where: Where) -> str:
    """What a test met on this history, by the word of the table ``responses``."""
    match meets:
        case "core":
            return history.core
        case "worn" | "cut":
            plate = 0.0 if meets == "cut" else history.worn_plate
            through = not _is_silver(history) and history.plate > 0.0 and plate < _FLASH
            return history.core if through else "uniform"
        case "make":
            return history.make
        case "streak":
            if _is_silver(history):
                return silver_class(history.fine)
            plate = plate_at(history, where)
            return silver_class(history.fine) if plate > _STREAK else history.core
        case "xrf-beside":
            if _is_silver(history):
                fine = _surface(history, where)
                return "silver-high" if fine > 985.0 else "silver"
            plate = plate_at(history, where)
            seen = math.exp(-plate / history.x_deep) > _SEEN
            if seen:
                return history.core
            return "silver" if history.fine < 960.0 else "silver-high"
        case _:
            fine = _surface(history, where)
            return silver_class(fine) if fine else history.core


def xrf_percent(history: History, where: Where) -> float:
    """Silver that a shot shows [%], without the instrument's own error.

    Metals beneath are seen through plate by exp(-t/depth); silver of a thin layer gives less of its
    hard lines than thick silver does. The two are brought to 100, as alloy calibrations do.
    """
    if _is_silver(history):
        if where is Where.CUT or history.skin_depth == 0.0:
            return history.fine / 10.0
        depth = history.skin_depth if where is Where.SURFACE else 0.4 * history.skin_depth
        under = math.exp(-depth / history.x_deep)
        return (history.skin * (1.0 - under) + history.fine * under) / 10.0
    plate = plate_at(history, where)
    if plate <= 0.0:
        return 0.1
    silver = 1.0 - math.exp(-plate / (_SOFT if history.x_soft else history.x_hard))
    under = math.exp(-plate / history.x_deep)
    return history.fine / 10.0 * silver / (silver + under)


def iacs_shown(history: History) -> float:
    """Conductivity that a meter shows [%IACS].

    Of each layer, the share of the eddy currents above its foot: 1 - exp(-2 t/δ), with the depth δ
    of the conductivity that results (two rounds suffice).
    """
    layer, core = history.plate, history.iacs
    top = conductivity_of(history.fine) if layer else core
    shown = core
    for _ in range(3):
        delta = _DELTA_SILVER * math.sqrt(105.0 / max(shown, 1.0))
        above = 1.0 - math.exp(-2.0 * layer / delta)
        whole = 1.0 - math.exp(-2.0 * (layer + history.wall) / delta)
        shown = top * above + core * (whole - above)
    return shown * history.lift


def silver_of_all(history: History) -> float:
    """Fineness of the whole, as a sample for assay is taken [‰]."""
    return history.fine if _is_silver(history) else 0.0
