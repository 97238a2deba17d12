"""Histories: for each hypothesis, a spread of pieces that it could be.

A plated piece may carry 2 or 40 µm, worn through or not; an old silver one a silver-rich skin; a cast
one pores. What tests show depends on such things, and two tests that depend on the same thing are not
independent. So each hypothesis is a fixed set of histories, and a test weighs what its histories, as
the earlier tests left them, say of it. That way nothing counts twice.

The histories are no random draw: they follow an additive sequence (M. Roberts' generalised golden
ratio), so two runs give the same figures. Scales are from the table ``compositions`` and ``metals``;
where a comment names no other source, they are judgments.
"""

import math
from collections.abc import Callable
from functools import cache
from statistics import NormalDist

import msgspec

from planish.library import Library
from planish.library.rows import Composition, Metal
from planish.metal.mixture import density_of

#: histories of one hypothesis
COUNT = 128
_DIMENSIONS = 13
_NORMAL = NormalDist()
#: fineness [‰] -> conductivity [%IACS]; 106 and 96 from MATMAKE and ESPI, the rest from memory
_IACS = ((500.0, 76.0), (800.0, 86.0), (900.0, 92.0), (925.0, 95.0), (958.0, 98.0), (1000.0, 105.0))
#: other alloys of filled ware [‰]; common practice
_FILLED = (800.0, 830.0, 900.0, 950.0)
#: metals whose conductivity the table lacks, from memory [%IACS]
_IACS_MEMORY = {
    "pewter-82-18": 11.0,
    "pewter-80-20": 11.0,
    "white-metal": 10.0,
    "tibetan-silver": 12.0,
}


class History(msgspec.Struct, frozen=True):
    """One piece that a hypothesis could be.

    hypothesis: its place among the compositions. fine: fineness of the silver right through, of the
    plate, or of the skin of a filled piece [‰]. skin, skin_depth: silver-rich surface [‰, µm].
    plate, worn_plate: thickness as made, and where it is worn most [µm]; 0 without plate.
    wall: of metal [µm]. density: as a flawless weighing would find [g/cm³]. iacs: of the core [%].
    lift: what curvature and setting do to a conductivity meter, a factor. x_bias: of the X-ray
    instrument [% silver]. x_deep: how deep it sees metals beneath silver, x_hard: from how deep the
    hard lines of silver come [µm]; x_soft: whether it goes by the soft ones.
    """

    hypothesis: int
    fine: float
    skin: float
    skin_depth: float
    plate: float
    worn_plate: float
    wall: float
    density: float
    iacs: float
    lift: float
    x_bias: float
    x_deep: float
    x_hard: float
    x_soft: bool
    core: str
    make: str


def _golden(dimensions: int) -> float:
    """Root of x^(d+1) = x + 1."""
    x = 2.0
    for _ in range(60):
        x = (1.0 + x) ** (1.0 / (dimensions + 1))
    return x


@cache
def _sequence() -> tuple[tuple[float, ...], ...]:
    step = _golden(_DIMENSIONS)
    return tuple(
        tuple((0.5 + n * step ** -(d + 1)) % 1.0 for d in range(_DIMENSIONS))
        for n in range(1, COUNT + 1)
    )


def normal(u: float) -> float:
    """Standard normal deviate of a share of one."""
    return _NORMAL.inv_cdf(min(max(u, 1e-6), 1.0 - 1e-6))


def conductivity_of(fine: float) -> float:
    """Conductivity of silver and copper at a fineness [‰ to %IACS], between known alloys."""
    below = _IACS[0]
    for point in _IACS:
        if fine <= point[0]:
            span = point[0] - below[0]
            share = (fine - below[0]) / span if span else 1.0
            return below[1] + share * (point[1] - below[1])
        below = point
    return _IACS[-1][1]


def histories(library: Library) -> tuple[History, ...]:
    """All histories, those of one composition together, in the order of the table.

    Raises:
        KeyError: a composition names a metal that is not in the table (the library's check finds it).
    """
    metals = {metal.id: metal for metal in library.metals}
    return tuple(
        _history(at, row, u, metals)
        for at, row in enumerate(library.compositions)
        for u in _sequence()
    )


def _history(at: int, row: Composition, u: tuple[float, ...], metals: dict[str, Metal]) -> History:
    make: Callable[..., dict[str, object]]
    make = {"solid": _solid, "plated": _plated, "base": _bare, "filled": _filled}[row.kind]
    common: dict[str, object] = {
        "lift": 1.0 - 0.12 * u[0] ** 1.5,
        "x_bias": 0.6 * normal(u[1]),
        # way out at 45 degrees (XRF-DEPTHS) with the loss of a beam of 30 to 45 keV on its way in:
        # 1/e of 26 to 100 µm of silver, from memory
        "x_deep": 2.5 + 1.6 * u[2],
        "x_hard": 12.0 + 20.0 * u[2],
        "x_soft": u[3] < 0.3,
        "core": row.core,
        "make": row.make,
        "hypothesis": at,
        "skin": 0.0, "skin_depth": 0.0, "plate": 0.0, "worn_plate": 0.0,
    }  # fmt: skip
    return History(**{**common, **make(row, u, metals)})  # type: ignore[arg-type]


def _fine(row: Composition, u: float) -> float:
    """Alloys keep near their name: normal about it; without a name, anything between the limits."""
    low, high = row.low or 0.0, row.high or 0.0
    if row.fineness is None or high - low > 60.0:
        return low + u * (high - low)
    # the wardens' remedy and solder: some ‰ (judgment), a little below the name oftener than above
    return min(max(row.fineness - 1.0 + 4.5 * normal(u), low - 8.0), high + 8.0, 1000.0)


def _void(u: float, share: float) -> float:
    """Factor on density of closed hollows and bubbles, which some pieces have."""
    return 1.0 - 0.2 * (u / share) if u < share else 1.0


def _skin(fine: float, u: float) -> tuple[float, float]:
    """Silver-rich skin of silver: old and pickled pieces (PIXE-DENARII), or silvered over."""
    if u < 0.5:
        return fine, 0.0
    if u < 0.93:
        share = (u - 0.5) / 0.43
        return fine + (999.0 - fine) * share, 1.0 + 24.0 * (share * 7.0 % 1.0) ** 2
    return 999.0, 0.5 + 20.0 * (u - 0.93) / 0.07


def _solid(row: Composition, u: tuple[float, ...], _metals: dict[str, Metal]) -> dict[str, object]:
    fine = _fine(row, u[4])
    skin, depth = _skin(fine, u[5])
    # pores up to 0.5 %, solder and other metals ±0.03 g/cm³: floor of the method
    density = density_of(fine) * (1.0 - 0.005 * u[6] ** 2) + 0.03 * normal(u[7])
    return {
        "fine": fine, "skin": skin, "skin_depth": depth, "density": density * _void(u[8], 0.06),
        "wall": 250.0 * 10.0 ** (0.9 * u[9]),
        "iacs": conductivity_of(fine) + 3.5 * normal(u[10]),
    }  # fmt: skip


def _metal(row: Composition, u: float, metals: dict[str, Metal]) -> tuple[Metal, float]:
    """One of the metals named, and what is left of ``u``."""
    scaled = u * len(row.cores)
    at = min(int(scaled), len(row.cores) - 1)
    return metals[row.cores[at]], scaled - at


def _triangle(low: float, best: float, high: float, u: float) -> float:
    """Deviate of a triangular distribution."""
    if high <= low:
        return best
    turn = (best - low) / (high - low)
    if u < turn:
        return low + math.sqrt(u * (high - low) * (best - low))
    return high - math.sqrt((1.0 - u) * (high - low) * (high - best))


def _base(row: Composition, u: tuple[float, ...], metals: dict[str, Metal]) -> tuple[float, float]:
    """Density and conductivity of the base metal."""
    metal, rest = _metal(row, u[4], metals)
    density = _triangle(metal.low, metal.density, metal.high, rest)
    iacs = metal.iacs if metal.iacs is not None else _IACS_MEMORY.get(metal.id, 10.0)
    return density * (1.0 - 0.005 * u[6] ** 2) + 0.02 * normal(u[7]), iacs * (
        1 + 0.07 * normal(u[10])
    )


def _plated(row: Composition, u: tuple[float, ...], metals: dict[str, Metal]) -> dict[str, object]:
    core, iacs = _base(row, u, metals)
    low, high = row.plate_low or 1.0, row.plate_high or 1.0
    plate = low * (high / low) ** u[5]
    worn = u[11]
    # a third worn through, a third partly, a third hardly
    left = plate * min(max((worn - 0.34) / 0.33, 0.0), 0.9 + 0.1 * worn)
    wall = 350.0 * 10.0 ** (0.75 * u[9])
    # plate on both faces of a wall, each of so many µm
    share = min(2.0 * plate / wall, 0.5)
    density = core * (1.0 - share) + density_of(row.fineness or 999.0) * share
    return {
        "fine": _fine(row, u[12]), "plate": plate, "worn_plate": left, "wall": wall,
        "density": density * _void(u[8], 0.08), "iacs": iacs,
    }  # fmt: skip


def _bare(row: Composition, u: tuple[float, ...], metals: dict[str, Metal]) -> dict[str, object]:
    density, iacs = _base(row, u, metals)
    return {
        "fine": 0.0, "wall": 350.0 * 10.0 ** (0.75 * u[9]), "iacs": iacs,
        "density": density * _void(u[8], 0.06),
    }  # fmt: skip


def _filled(
    _row: Composition, u: tuple[float, ...], _metals: dict[str, Metal]
) -> dict[str, object]:
    # alloys of weighted ware: sterling mostly
    named = 925.0 if u[12] < 0.72 else _FILLED[int((u[12] - 0.72) / 0.28 * len(_FILLED))]
    fine = named + 4.5 * normal(u[4])
    skin, depth = _skin(fine, u[5])
    # pitch or plaster (1.5) to cement, iron or lead (9) beneath
    return {
        "fine": fine, "skin": skin, "skin_depth": depth, "density": 1.6 + 8.0 * u[6] ** 1.3,
        # walls of 50 to 80 µm are told by those who opened such pieces (FILLERS)
        "wall": 60.0 * 10.0 ** (0.8 * u[9]), "iacs": conductivity_of(fine) + 3.0 * normal(u[10]),
    }  # fmt: skip
