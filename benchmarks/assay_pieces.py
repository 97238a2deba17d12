"""Pieces and instruments made by physics, for assay.py: nothing here knows how planish weighs tests.

Of the library only the shares of the compositions are used, and the names of readings. Scales: plate
as the trade and its critics tell (36 µm for "90", rarely over 50); X-ray attenuation in silver 1/e
4.6, 75 and 1.85 µm for Cu Kα, Ag Kα, Ag Lα (form factors of the Center for X-Ray Optics), 26 µm for a
beam of 30 keV (from memory); density by added volumes, Ag 10.495, Cu 8.96; published densities and
conductivities of base alloys; eddy currents by the surface impedance of plane layers at 60 kHz.
Chances of human readings are this file's own, drawn with other scales than the library's.
"""

import cmath
import math
import random
from collections.abc import Callable
from typing import Any, NamedTuple

#: density [g/cm³] as (mean, sd), conductivity [%IACS] as (low, high), heat conduction [W/mK]
BASES: dict[str, tuple[tuple[float, float], tuple[float, float], float]] = {
    "copper": ((8.93, 0.02), (88, 101), 390),
    "brass": ((8.55, 0.12), (22, 37), 120),
    "bronze": ((8.82, 0.05), (10, 18), 65),
    "nickel-silver": ((8.69, 0.07), (5, 9.5), 35),
    "tin": ((7.30, 0.06), (9, 13), 60),
    "leaded-tin": ((7.80, 0.10), (9, 12), 55),
    "steel": ((7.84, 0.03), (1, 15), 50),
    "steel-430": ((7.72, 0.04), (1, 8), 25),
    "steel-304": ((7.96, 0.04), (2.3, 2.8), 15),
    "aluminium": ((2.70, 0.04), (45, 62), 200),
    "cupronickel": ((8.93, 0.02), (4.5, 6), 30),
    "zinc": ((6.65, 0.05), (25, 28), 110),
}
#: composition -> base metals, plate: median [µm] and spread of its logarithm
MADE: dict[str, tuple[tuple[str, ...], float, float]] = {
    "plated-copper": (("copper",), 10, 0.8),
    "plated-brass": (("brass", "brass", "bronze"), 5, 0.8),
    "plated-nickel-silver": (("nickel-silver",), 12, 0.7),
    "plated-britannia": (("tin",), 8, 0.6),
    "plated-steel": (("steel", "steel-430"), 8, 0.6),
    "fused-plate": (("copper",), 110, 0.5),
    "nickel-silver": (("nickel-silver",), 0, 0),
    "britannia-metal": (("tin", "tin", "leaded-tin"), 0, 0),
    "aluminium": (("aluminium",), 0, 0),
    "stainless": (("steel-304", "steel-304", "steel-430"), 0, 0),
    "other-base": (("cupronickel", "brass", "copper", "zinc"), 0, 0),
}
_NAMED: dict[str, float] = {
    "ag999": 999, "ag958": 958.4, "ag950": 950, "ag925": 925, "ag900": 900, "ag875": 875,
    "ag835": 835, "ag830": 830, "ag800": 800,
}  # fmt: skip


class Piece(NamedTuple):
    """One true piece. plate, worn, skin_depth, wall [µm]; fine, skin [‰]."""

    made: str
    kind: str
    base: str
    fine: float
    skin: float
    skin_depth: float
    plate: float
    worn: float
    wall: float
    density: float
    iacs: float
    iron: bool

    @property
    def silver(self) -> bool:
        """Whether its metal is silver right through."""
        return self.kind in ("solid", "filled")


def silver_density(fine: float) -> float:
    """Volumes of silver and copper added [g/cm³]."""
    return 1.0 / (fine / 1000 / 10.495 + (1 - fine / 1000) / 8.96)


def silver_iacs(fine: float, r: random.Random) -> float:
    """Two phases side by side: from 105 for pure silver, less for what each dissolves."""
    copper = 1 - fine / 1000
    return 105 - 105 * (0.085 * (1 - math.exp(-copper / 0.05)) + 0.35 * copper) + r.gauss(0, 2.5)


def piece(made: str, kind: str, r: random.Random) -> Piece:
    """A piece of this composition."""
    if kind in ("solid", "filled"):
        return _silver(made, kind, r)
    bases, median, spread = MADE[made]
    base = r.choice(bases)
    (mean, sd), (low, high), _ = BASES[base]
    plate = min(median * math.exp(r.gauss(0, spread)), 500) if median else 0.0
    worn = max(plate - r.expovariate(1 / 9) * (3 if made == "fused-plate" else 1), 0.0)
    wall = 400 + r.gammavariate(2, 400)
    density = r.gauss(mean, sd) * (1 - min(r.expovariate(1 / 0.0012), 0.01))
    share = min(2 * plate / wall, 0.4)
    fine = 0.0
    if plate:
        fine = r.gauss(925, 5) if made == "fused-plate" else r.uniform(993, 999.9)
    density = density * (1 - share) + silver_density(fine or 999) * share
    if r.random() < 0.05:
        density *= r.uniform(0.75, 0.99)
    iacs, iron = r.uniform(low, high), r.random() < 0.015
    return Piece(made, kind, base, fine, fine, 0, plate, worn, wall, density, iacs, iron)


def _silver(made: str, kind: str, r: random.Random) -> Piece:
    named = _NAMED.get(made)
    iron = r.random() < 0.015
    if kind == "filled":
        named = 925 if r.random() < 0.8 else r.choice([800, 830, 900, 950])
    fine = r.uniform(505, 760) if named is None else min(r.gauss(named - 0.5, 4), 999.9)
    old = r.random() < 0.5
    depth = r.gammavariate(1.5, 5) if old else 0.0
    skin = fine + (1000 - fine) * r.betavariate(2, 2) if old else fine
    if r.random() < 0.04:  # bright finish of fine silver
        skin, depth = 999, r.uniform(0.5, 12)
    density = silver_density(fine) * (1 - min(r.expovariate(1 / 0.0012), 0.01))
    solder = max(r.gauss(0.01, 0.01), 0)
    density = 1 / ((1 - solder) / density + solder / 9.6) + r.gauss(0, 0.015)
    wall = 250 + r.gammavariate(2, 350)
    if kind == "filled":
        wall = r.uniform(50, 300)
        filler = r.choice([1.5, 1.6, 2.1, 2.1, 4.5, 7.5])
        share = r.uniform(0.06, 0.4)
        density = 1 / (share / density + (1 - share) / filler)
        iron = r.random() < 0.15
    elif r.random() < 0.05:
        density *= r.uniform(0.75, 0.99)
    iacs = silver_iacs(fine, r) * r.uniform(0.94, 1)
    return Piece(made, kind, "silver", fine, skin, depth, 0, 0, wall, density, iacs, iron)


_OMEGA_MU = 2 * math.pi * 60e3 * 4e-7 * math.pi
_IACS_UNIT = 0.58e6  # S/m of one %IACS


def impedance(layers: list[tuple[float, float]], beneath: complex) -> complex:
    """Surface impedance of plane layers (S/m, m), the topmost first, over what is beneath."""
    z = beneath
    for sigma, thick in reversed(layers):
        own = cmath.sqrt(1j * _OMEGA_MU / sigma)
        t = cmath.tanh(cmath.sqrt(1j * _OMEGA_MU * sigma) * thick)
        z = own * (z + own * t) / (own + z * t)
    return z


def meter(p: Piece) -> float:
    """Conductivity that an ideal meter finds on a flat [%IACS]."""
    layers = [(p.iacs * _IACS_UNIT, p.wall * 1e-6)]
    if p.plate:
        layers.insert(0, (104 * p.fine / 1000 * _IACS_UNIT, p.plate * 1e-6))
    return float(_OMEGA_MU / abs(impedance(layers, 377.0 + 0j)) ** 2 / _IACS_UNIT)


class Instruments(NamedTuple):
    """What one tester's instruments do wrong, the same for all of a piece's tests."""

    xrf_bias: float
    soft: bool
    lift: float
    water: float
    stone: float
    eye: float


def instruments(r: random.Random) -> Instruments:
    """Instruments of one tester."""
    return Instruments(
        xrf_bias=r.gauss(0, 0.5),
        soft=r.random() < 0.35,
        lift=1 - min(r.expovariate(1 / 0.03), 0.2),
        water=r.gauss(0, 0.015) - r.expovariate(1 / 0.012),
        stone=r.gauss(0, 15),
        eye=r.gauss(0, 0.06),
    )


#: 1/e depths in silver [µm]: beam in, Cu Kα, Ag Kα and Ag Lα out; all at 45 degrees
_IN, _COPPER, _HARD, _SOFT = 26.0, 4.61, 75.1, 1.85
_SLANT = math.cos(math.pi / 4)
_BASE_DEPTH = _SLANT / (1 / _IN + 1 / _COPPER)


def shot(p: Piece, how: Instruments, r: random.Random, *, worn: bool) -> tuple[float, float]:
    """An X-ray shot: silver [%] and the instrument's own ±."""
    u = r.uniform(0.2, 0.9)
    value = _skin_shot(p, worn=worn) if p.silver else _plate_shot(p, how, r, worn=worn)
    if p.silver and r.random() < 0.02:
        value = r.uniform(60, 78)  # a soldered place
    off = how.xrf_bias if value > 1 else 0
    return min(max(value + off + r.gauss(0, 0.4) + r.gauss(0, u), 0.0), 100.0), u


def _skin_shot(p: Piece, *, worn: bool) -> float:
    """A silver-rich skin that falls off evenly with depth; copper's line tells the mixture."""
    depth = p.skin_depth * (0.4 if worn else 1)
    n, weights, total = 24, 0.0, 0.0
    for k in range(n):
        z = (k + 0.5) * 5 * _BASE_DEPTH / n
        here = p.fine + (p.skin - p.fine) * max(1 - z / (2 * depth), 0) if depth else p.fine
        w = math.exp(-z / _BASE_DEPTH)
        total += w * here
        weights += w
    return total / weights / 10


def _plate_shot(p: Piece, how: Instruments, r: random.Random, *, worn: bool) -> float:
    t = (p.worn if worn else p.plate) * math.exp(r.gauss(0, 0.12))
    if t < 0.02:
        return 0.05
    depth = _SLANT / (1 / _IN + 1 / (_SOFT if how.soft else _HARD))
    under = math.exp(-t / _BASE_DEPTH)
    silver = p.fine / 1000 * (1 - math.exp(-t / depth))
    other = (1 - p.fine / 1000) * (1 - under) + under
    return 100 * silver / (silver + other)


def _pick(r: random.Random, **chances: float) -> str:
    return r.choices(list(chances), list(chances.values()))[0].replace("_", "-")


def _core_colour(base: str, r: random.Random, sees: float) -> str:
    true = {"copper": "pink", "brass": "yellow", "bronze": "yellow"}.get(base, "grey")
    clear = {"nickel-silver": 0.6}.get(base, 0.92) * sees
    if r.random() > clear:
        return "same"
    if base == "bronze" and r.random() < 0.4:
        return "pink"
    if base == "nickel-silver" and r.random() < 0.3:
        return "yellow"
    return true if r.random() < 0.95 else _pick(r, pink=1, yellow=1, grey=1)


def _magnet(p: Piece, r: random.Random) -> str:
    if p.base in ("steel", "steel-430"):
        return _pick(r, strong=0.9, weak=0.08, none=0.02)
    if p.base == "steel-304":
        return _pick(r, none=0.7, weak=0.25, strong=0.05)
    if p.iron:
        return _pick(r, none=0.55, weak=0.25, strong=0.2 if p.kind != "filled" else 0.5)
    return _pick(r, none=0.985, weak=0.013, strong=0.002)


def _look(p: Piece, r: random.Random) -> str:
    if p.plate > 0 and p.worn < 0.7:
        return _core_colour(p.base, r, 0.92)
    return _pick(r, same=93, pink=3, yellow=2, grey=2)


def _notch(p: Piece, r: random.Random) -> str:
    return _core_colour(p.base, r, 1.05) if p.plate else _pick(r, same=97, pink=1, yellow=1, grey=1)


def _edges(p: Piece, r: random.Random) -> str:
    if p.made == "fused-plate":
        return _pick(r, same=0.2, copper_line=0.35, applied_wire=0.45)
    line = 0.12 if p.base == "copper" and p.plate else 0.02
    return _pick(r, same=0.94 - line, copper_line=line, applied_wire=0.06)


def _inside(p: Piece, r: random.Random) -> str:
    if p.made == "fused-plate":
        return _pick(r, same=0.35, tinned=0.5, granular=0.01, other=0.14)
    if p.kind == "filled":
        return _pick(r, same=0.6, tinned=0.02, granular=0.05, other=0.33)
    if p.plate:
        return _pick(r, same=0.7, tinned=0.06, granular=0.05, other=0.19)
    return _pick(r, same=0.95, tinned=0.015, granular=0.01, other=0.025)


def _filling(p: Piece, r: random.Random) -> str:
    if p.kind == "filled":
        return _pick(r, none=0.08, felt=0.42, soft=0.13, rattles=0.17, seen=0.2)
    none = 0.88 - 0.06 * (p.plate > 0)
    return _pick(r, none=none, felt=0.09, soft=0.015, rattles=0.02, seen=0.015)


def _sound(p: Piece, r: random.Random) -> str:
    rings = {"tin": -1.2, "leaded-tin": -1.5}.get(p.base, 0.4) - 1.6 * (p.kind == "filled")
    score = rings + r.gauss(0, 1)
    return "clear" if score > 0.4 else "short" if score > -0.4 else "dull"


def _thermal(p: Piece, r: random.Random) -> str:
    conducts = BASES[p.base][2] if p.base in BASES else 420 * (0.8 + 0.2 * p.fine / 1000)
    if p.kind == "filled":
        conducts *= 0.25
    speed = math.log(conducts) + 0.35 * math.log(p.wall / 900) + r.gauss(0, 0.5)
    return "fast" if speed > 5.1 else "medium" if speed > 3.9 else "slow"


def _tarnish(p: Piece, open_fine: float, r: random.Random) -> str:
    if open_fine:
        green = max(0.02, 0.4 * (1 - open_fine / 1000) ** 1.2)
        said = _pick(r, black=0.8 - green, green=green, dull=0.1, none=0.1)
        return "never" if said == "none" and r.random() < 0.1 else said
    black, green, dull, none = {
        "steel-304": (2, 1, 10, 87), "steel-430": (2, 1, 10, 87), "aluminium": (2, 1, 40, 57),
        "tin": (15, 2, 60, 23), "leaded-tin": (15, 2, 60, 23), "zinc": (15, 2, 60, 23),
        "steel": (12, 2, 45, 41), "nickel-silver": (8, 18, 50, 24), "cupronickel": (8, 18, 50, 24),
    }.get(p.base, (14, 40, 40, 6))  # fmt: skip
    said = _pick(r, black=black, green=green, dull=dull, none=none)
    stays = {"steel-304": 0.75, "steel-430": 0.7, "aluminium": 0.5, "nickel-silver": 0.35}
    return "never" if said == "none" and r.random() < stays.get(p.base, 0.1) else said


def _beside(p: Piece, plate: float, skin: float, r: random.Random) -> str:
    if p.silver:
        if r.random() < 0.93 - 0.45 * (skin > 985):
            return "copper"
        return _pick(r, none=5, zinc_nickel=2, tin=0.5, lead=0.5)
    if math.exp(-plate / _BASE_DEPTH) < 0.01 * math.exp(r.gauss(0, 0.4)):
        thick = _pick(r, none=0.5, copper=0.45, zinc_nickel=0.03, lead=0.02)
        return thick if p.fine > 960 else "copper"
    if p.base in ("brass", "nickel-silver") and r.random() < 0.3:
        return "zinc-nickel" if p.base == "brass" else "copper"
    if r.random() < 0.08:
        return "copper"
    return {
        "copper": "copper", "brass": "copper", "bronze": "copper", "tin": "tin",
        "leaded-tin": "tin", "nickel-silver": "zinc-nickel", "cupronickel": "zinc-nickel",
        "zinc": "zinc-nickel", "aluminium": "none",
    }.get(p.base, "iron")  # fmt: skip


def _dichromate(p: Piece, fine: float, how: Instruments, r: random.Random) -> str:
    """Colour of the drop as a person tells it; fine 0 where base metal lies open."""
    if r.random() < 0.025:
        return "none"
    if fine > 0:
        red = (fine - 500) / 500 + how.eye + r.gauss(0, 0.1)
        names = ((0.93, "bright-red"), (0.7, "dark-red"), (0.4, "brown"))
        return next((name for limit, name in names if red > limit), "green")
    true = {
        "copper": "blue", "bronze": "blue", "cupronickel": "blue", "nickel-silver": "blue",
        "brass": "brown", "tin": "brown", "leaded-tin": "brown", "zinc": "brown",
        "aluminium": "yellow", "steel": "brown", "steel-430": "none", "steel-304": "none",
    }[p.base]  # fmt: skip
    if r.random() < 0.72:
        return true
    return _pick(r, blue=3, green=4, brown=4, yellow=1, none=2, dark_red=0.4)


def _nitric(p: Piece, fine: float, r: random.Random) -> str:
    if fine:
        green = (1 - fine / 1000) * 3 + r.gauss(0, 0.15)
        return "cream" if green < 0.45 else "faint-green" if green < 0.95 else "green"
    if p.base in ("tin", "leaded-tin"):
        return _pick(r, cream=0.5, none=0.35, green=0.15)
    if p.base in ("steel-304", "steel-430", "aluminium"):
        return _pick(r, none=0.93, green=0.04, cream=0.03)
    return _pick(r, green=0.87, faint_green=0.1, cream=0.02, none=0.01)


def _weighing(p: Piece, how: Instruments, r: random.Random) -> tuple[float, float]:
    mass = math.exp(r.gauss(4.5, 1.0))
    step = r.choice([0.01, 0.01, 0.1]) if mass > 60 else 0.01
    u = math.hypot(0.41 * step * p.density**2 / mass, 0.02)
    if r.random() < 0.008:
        return max(p.density * r.uniform(0.6, 1.05), 1), u
    return max(p.density + how.water + r.gauss(0, u), 0.8), u


def _conducts(p: Piece, how: Instruments, r: random.Random) -> tuple[float, float]:
    u = r.uniform(0.5, 3)
    value = meter(p) * how.lift * (1 + r.gauss(0, 0.015)) + r.gauss(0, 0.3)
    if p.base in ("steel", "steel-430"):
        value = r.uniform(0.5, 20)
    if p.kind == "filled" and p.iron:
        value = r.uniform(2, 60)
    if r.random() < 0.008:
        value *= r.uniform(0.3, 0.8)
    return min(max(value, 0.0), 110.0), u


def _streak(p: Piece, plate: float, how: Instruments, r: random.Random) -> float | None:
    """Fineness by the stone; None where the streak is base metal."""
    reach = r.uniform(2, 7)
    if not p.silver and plate < reach * 0.8:
        return None if r.random() < 0.96 else r.uniform(600, 900)
    if r.random() < 0.02:
        return None
    skinned = p.silver and p.skin_depth >= reach
    value = (0.6 * p.fine + 0.4 * p.skin if skinned else p.fine) + how.stone + r.gauss(0, 18)
    return min(max(value, 1), 1000.0)


_BY_EYE: dict[str, Callable[[Piece, random.Random], str]] = {
    "magnet": _magnet, "look": _look, "notch": _notch, "edges": _edges, "inside": _inside,
    "filling": _filling, "sound": _sound, "thermal": _thermal,
}  # fmt: skip


def read(test: str, where: str, p: Piece, how: Instruments, r: random.Random) -> dict[str, Any]:
    """What one test shows: {"readings": (...)} or {"value", "plus_minus"}."""
    plate = 0.0 if where == "cut" else p.worn if where == "worn" else p.plate
    skin = p.skin if p.skin_depth > 1.5 and where == "surface" else p.fine
    shows = p.fine if plate > 1.3 * math.exp(r.gauss(0, 0.3)) else 0.0
    fine = skin if p.silver else shows
    if test in _BY_EYE:
        return {"readings": (_BY_EYE[test](p, r),)}
    match test:
        case "tarnish":
            return {"readings": (_tarnish(p, fine, r),)}
        case "xrf-beside":
            return {"readings": (_beside(p, plate, skin, r),)}
        case "dichromate":
            return {"readings": (_dichromate(p, fine, how, r),)}
        case "nitric":
            return {"readings": (_nitric(p, fine, r),)}
        case "xrf":
            value, u = shot(p, how, r, worn=where == "worn")
        case "density":
            value, u = _weighing(p, how, r)
        case "conductivity":
            value, u = _conducts(p, how, r)
        case "touchstone":
            streak = _streak(p, plate, how, r)
            if streak is None:
                return {"readings": ("base",)}
            value, u = streak, 25.0
        case "assay":
            part = 1000 * min(2 * p.plate / p.wall, 0.3) * r.uniform(0.5, 1.5)
            value, u = (p.fine if p.silver else part) + r.gauss(0, 0.8), 1.0
            value = min(max(value, 0.0), 1000.0)
        case _:
            raise ValueError(test)
    return {"value": value, "plus_minus": u}


#: kind of the piece -> chance of each kind of mark; what is left is unmarked
_MARKS: dict[str, dict[str, float]] = {
    "solid": {"true": 0.8, "off": 0.01, "plated": 0.003, "filled": 0.004},
    "plated": {"solid": 0.012, "plated": 0.65, "base": 0.03, "filled": 0.006},
    "base": {"solid": 0.015, "plated": 0.05, "base": 0.36, "filled": 0.003},
    "filled": {"solid": 0.3, "plated": 0.008, "base": 0.005, "filled": 0.48},
}


def marks(p: Piece, r: random.Random) -> tuple[str, float | None] | None:
    """What the marks say: kind and fineness, or None where there are none."""
    chances = dict(_MARKS[p.kind])
    if p.made == "fused-plate":
        chances["plated"] = 0.2
    said = r.choices([*chances, ""], [*chances.values(), 1 - sum(chances.values())])[0]
    if not said:
        return None
    usual = r.choices([925, 800, 900, 999, 950, 835, 830], [10, 3, 2, 1, 1, 1, 1])[0]
    if said == "true":
        return "solid", float(_NAMED.get(p.made, 750))
    if said in ("off", "solid"):
        return "solid", float(usual)
    return said, None
