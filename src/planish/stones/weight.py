"""Weight of a stone from its measurements, with an interval that is never surer than the formula.

Carats = factor x product of measurements [mm³] x specific gravity. The factors are the library's
(table ``factors``), each with its author. A metric carat is 0.2 g (4th CGPM, 1907).
"""

import math
from decimal import Decimal
from enum import StrEnum

import msgspec

from planish.library import Library, load
from planish.library.stone_rows import Cut, Factor, Material
from planish.quantity import Mass, Measured, QuantityError
from planish.stones.names import find_cut, find_material
from planish.stones.sizes import Size, read_sizes

#: a closed back hides the depth: half the width of the interval as a share, at least (common practice)
CLOSED_BACK = 0.25
#: poor and old brilliants (common practice; docs/stones.md shows the stones of fair cut)
POOR = 0.10
#: two-sided 95 % of a normal distribution
_Z = 1.959964
_GRAMS = 0.2


class Girdle(StrEnum):
    """How much weight sits in the girdle or in bulging sides."""

    USUAL = "usual"
    THICK = "thick"
    VERY_THICK = "very thick"


# share added, and half the width of its limits: 2 to 6 % by a trade page, up to 10 % from memory
_GIRDLES = {Girdle.USUAL: (0.0, 0.0), Girdle.THICK: (0.04, 0.02), Girdle.VERY_THICK: (0.08, 0.02)}


class Part(msgspec.Struct, frozen=True, kw_only=True):
    """One reason for the width of the interval; half_width: as a share of the weight, 95 %."""

    name: str
    half_width: float
    because: str


class StoneWeight(msgspec.Struct, frozen=True, kw_only=True):
    """What stones weigh by their measurements, all together.

    carats, low, high: the figure and its 95 % interval [ct]. mass, low_mass, high_mass: the same [g].
    parts: reasons for the width, the weightiest first; their squares add up within ``half_width``.
    ranged: the depth is known by limits only, and the interval covers both.
    formula: the sum in words. rivals: what other authors' factors give [ct], by the factor's id.
    """

    cut: str
    cut_name: str
    material: str | None
    material_name: str | None
    gravity: float
    count: int
    carats: float
    low: float
    high: float
    half_width: float
    ranged: bool
    factor: str
    formula: str
    rivals: tuple[tuple[str, float], ...]
    parts: tuple[Part, ...]
    notes: tuple[str, ...]
    cautions: tuple[str, ...]
    sources: tuple[str, ...]
    confidence: str

    @property
    def mass(self) -> Mass:
        """The figure [g]."""
        return _mass(self.carats)

    @property
    def low_mass(self) -> Mass:
        """Lower end of the interval [g]."""
        return _mass(self.low)

    @property
    def high_mass(self) -> Mass:
        """Upper end of the interval [g]."""
        return _mass(self.high)

    @property
    def method(self) -> str:
        """How it was found, in the words of a weight statement."""
        return "measured"

    @property
    def source(self) -> str:
        """One line that says where the figure comes from."""
        return f"weight formula of the {self.cut_name}: {self.formula}"


def weigh(
    cut: str,
    sizes: str,
    *,
    material: str | None = None,
    gravity: Measured | None = None,
    count: int = 1,
    closed_back: bool = False,
    girdle: Girdle = Girdle.USUAL,
    poor: bool = False,
    hole: float = 0.0,
    plus_minus: float | None = None,
    factor: str | None = None,
    library: Library | None = None,
) -> StoneWeight:
    """Weight of ``count`` like stones from the measurements of one.

    cut, material: in anyone's words. sizes: as ``read_sizes`` takes them. gravity: instead of the
    material's own. hole: diameter of a drill hole right through a bead or disc [mm]. factor: id of the
    author's constant to use instead of the usual one.

    Raises:
        QuantityError: cut or material is not known, a size is missing or cannot be read.

    >>> round(weigh("round brilliant", "6.5x6.5x3.95 mm", material="diamond").carats, 3)
    1.018
    """
    library = library or load()
    shape = find_cut(cut, library)
    stone = find_material(material, library) if material else None
    if count < 1:
        raise QuantityError("count", count, "there is no such number of stones", "give 1 or more")
    sg, from_sg = _gravity(stone, gravity)
    chosen = _factor(shape, stone, factor, library, given=gravity is not None)
    read = read_sizes(sizes, plus_minus)
    measured, notes, hidden = _assign(shape, read.parts, sizes)
    low, best, high = (_volume(chosen, measured, end) for end in ("low", "value", "high"))
    scale = chosen.factor * (1.0 if chosen.sg is not None else sg) * count
    added, _ = _GIRDLES[girdle]
    scale *= (1.0 + added) * _drilled(shape, measured, hole, sizes)
    rivals = _rivals(chosen, library)
    parts = _parts(
        shape,
        best,
        rivals=[f.factor / chosen.factor * _same(f, chosen, measured) for f in rivals],
        from_sg=0.0 if chosen.sg is not None else from_sg,
        closed=closed_back,
        girdle=girdle,
        poor=poor,
    )
    half = math.sqrt(math.fsum(p.half_width**2 for p in parts))
    carats = scale * best.value
    per_sg = "" if chosen.sg is not None else f" x {sg:g}"
    drilled = " less the drill hole" if hole else ""
    more = f", plus {added:.0%} for the girdle" if added else ""
    return StoneWeight(
        cut=shape.id,
        cut_name=shape.name,
        material=stone.id if stone else None,
        material_name=stone.name if stone else None,
        gravity=sg,
        count=count,
        carats=carats,
        low=max(0.0, scale * low.value * (1.0 - half)),
        high=scale * high.value * (1.0 + half),
        half_width=half,
        ranged=low.value < high.value,
        factor=chosen.id,
        formula=f"{chosen.factor:.4g} x {best.value:.4g} mm³ ({chosen.rule}){per_sg}{drilled}{more}",
        rivals=tuple(
            (f.id, carats * f.factor / chosen.factor * _same(f, chosen, measured)) for f in rivals
        ),
        parts=parts,
        notes=(*read.notes, *notes),
        cautions=_cautions(shape, stone, measured, closed=closed_back, hidden=hidden),
        sources=tuple(dict.fromkeys((*chosen.sources, *(stone.sources if stone else ())))),
        confidence=chosen.confidence.value,
    )


def _mass(carats: float) -> Mass:
    return Mass(Decimal(repr(round(carats * _GRAMS, 6))))


def _gravity(stone: Material | None, given: Measured | None) -> tuple[float, float]:
    """Specific gravity and half the width of its 95 % interval as a share.

    The material's limits are taken as those of 95 %.
    """
    if given is not None:
        if not 0.5 <= given.value <= 25.0:
            fault = "no stone has that specific gravity"
            raise QuantityError("specific gravity", given.value, fault, "water is 1, quartz 2.65")
        return given.value, _Z * given.relative
    if stone is None:
        fault = "what the stone is made of is not said"
        raise QuantityError(
            "material", "", fault, "name the material, or give its specific gravity"
        )
    return stone.sg, max(stone.sg_high - stone.sg, stone.sg - stone.sg_low) / stone.sg


def _factor(
    cut: Cut, stone: Material | None, wanted: str | None, library: Library, *, given: bool
) -> Factor:
    own = [f for f in library.factors if f.cut == cut.id]
    if wanted:
        for f in own:
            if f.id == wanted:
                return f
        known = ", ".join(f.id for f in own)
        raise QuantityError("factor", wanted, f"the {cut.name} has none of that id", f"use {known}")
    # a constant that holds a gravity is for that stone alone
    if stone is not None and not given:
        for f in own:
            if f.sg is not None and f.rank == 1 and f.sg == stone.sg:
                return f
    return next(f for f in own if f.sg is None and f.rank == 1)


def _rivals(chosen: Factor, library: Library) -> list[Factor]:
    """Other authors' factors; a constant that holds a gravity has none."""
    if chosen.sg is not None:
        return []
    own = (f for f in library.factors if f.cut == chosen.cut and f.sg is None)
    return [f for f in own if f.id != chosen.id]


def _assign(
    cut: Cut, parts: tuple[Size | None, ...], text: str
) -> tuple[dict[str, Size], list[str], bool]:
    """The measurements by name; those of round and square outlines may be two, which are averaged."""
    names, notes = cut.measured, []
    sizes = list(parts)
    extra = len(sizes) - len(names)
    if 0 < extra <= 2 and names[0] in ("diameter", "width") and (extra == 1 or len(names) == 1):
        round_ = [s for s in sizes[: extra + 1] if s is not None]
        if len(round_) == extra + 1:
            sizes[: extra + 1] = [_mean(round_)]
            extra = 0
    if extra:
        need = " x ".join(names)
        fault = f"the {cut.name} needs {len(names)} measurements ({need}), {len(parts)} are given"
        raise QuantityError("size", text, fault, "write ? for a depth that cannot be measured")
    found, hidden = {}, False
    for name, size in zip(names, sizes, strict=True):
        if size is not None:
            found[name] = size
        elif name in ("depth", "thickness") and cut.depth_low and cut.depth_high:
            width = (found.get("width") or found["diameter"]).value
            found[name] = Size(cut.depth_low * width, cut.depth_high * width, 0.0)
            notes.append(
                f"{name} not measured: taken between {cut.depth_low:g} and {cut.depth_high:g} of the"
                " width, a judgment"
            )
            hidden = True
        else:
            raise QuantityError("size", text, f"the {name} must be measured", "write its figure")
    if {"length", "width"} <= found.keys() and found["width"].value > found["length"].value:
        found["length"], found["width"] = found["width"], found["length"]
    return found, notes, hidden


def _mean(sizes: list[Size]) -> Size:
    """Mean of the smallest and the largest; their errors are taken as one, the same gauge's."""
    low, high = min(s.low for s in sizes), max(s.low for s in sizes)
    top_low, top_high = min(s.high for s in sizes), max(s.high for s in sizes)
    return Size((low + high) / 2, (top_low + top_high) / 2, max(s.u for s in sizes))


def _volume(factor: Factor, measured: dict[str, Size], end: str) -> Measured:
    """The rule's product [mm³] at one end of sizes that are limits."""
    sized = {
        name: Measured.with_parts(getattr(size, end), {name: size.u})
        for name, size in measured.items()
    }
    if "length" in sized and "width" in sized:
        sized["mean"] = (sized["length"] + sized["width"]) / 2
    product = Measured.of(1)
    for part in factor.rule.split("*"):
        word, _, power = part.partition("^")
        for _ in range(int(power or 1)):
            product = product * sized[word]
    return product


def _same(rival: Factor, chosen: Factor, measured: dict[str, Size]) -> float:
    """What the rival's product of measurements is of the chosen one's."""
    return _volume(rival, measured, "value").value / _volume(chosen, measured, "value").value


def _drilled(cut: Cut, measured: dict[str, Size], hole: float, text: str) -> float:
    """Share that stays when a hole is drilled through: a cylinder, to first order.

    Source: geometry; of a sphere pi/4 h² d of pi/6 d³, of a disc h² of d².
    """
    if not hole:
        return 1.0
    if cut.id not in ("sphere", "disc"):
        fault = f"a drill hole through the {cut.name} cannot be reckoned"
        raise QuantityError("hole", hole, fault, "leave it out, or take a sphere or disc")
    across = measured["diameter"].value
    if not 0.0 < hole < across / 2:
        raise QuantityError("hole", hole, f"it does not fit a stone of {text}", "measure it in mm")
    share = (hole / across) ** 2
    return 1.0 - (1.5 * share if cut.id == "sphere" else share)


def _parts(
    cut: Cut,
    volume: Measured,
    *,
    rivals: list[float],
    from_sg: float,
    closed: bool,
    girdle: Girdle,
    poor: bool,
) -> tuple[Part, ...]:
    formula, because = cut.spread, f"19 of 20 stones lie within {cut.spread:.0%} of the formula"
    apart = max((abs(r - 1.0) for r in rivals), default=0.0)
    if apart > formula:
        formula, because = apart, f"authors of the formula differ by {apart:.0%}"
    if poor and cut.kind != "solid" and formula < POOR:
        formula, because = POOR, f"poorly cut stones lie within {POOR:.0%} of the formula"
    if closed and formula < CLOSED_BACK:
        formula = CLOSED_BACK
        because = f"a closed back hides the depth: {CLOSED_BACK:.0%} at least, common practice"
    parts = [Part(name="formula", half_width=formula, because=because)]
    top = volume.budget()[0] if volume.budget() else None
    if volume.relative > 0.0 and top is not None:
        parts.append(
            Part(
                name="measurement",
                half_width=_Z * volume.relative,
                because=f"most of it from the {top.name}",
            )
        )
    if from_sg > 0.0:
        parts.append(
            Part(
                name="specific gravity",
                half_width=from_sg,
                because="limits of the material, or the figure given",
            )
        )
    added, width = _GIRDLES[girdle]
    if width:
        said = f"{added:.0%} added for it, give or take {width:.0%}"
        parts.append(Part(name="girdle", half_width=width, because=said))
    return tuple(sorted(parts, key=lambda p: -p.half_width))


def _cautions(
    cut: Cut, stone: Material | None, measured: dict[str, Size], *, closed: bool, hidden: bool
) -> tuple[str, ...]:
    out = []
    if closed or hidden:
        out.append("the depth is not seen: do not force a setting open to measure it")
    depth = measured.get("depth") or measured.get("thickness")
    width = measured.get("width") or measured.get("diameter")
    if depth and width and depth.value > 1.2 * width.value and cut.id != "cone":
        out.append("the depth is greater than the width: check the order of the measurements")
    if cut.kind == "old":
        out.append(
            "old cuts are irregular and outside the stones tested: weigh one if it comes out"
        )
    if stone is not None and stone.id == "diamond" and cut.id == "round-brilliant":
        out.append("stones over 1.5 ct and thick girdles are mostly heavier than reckoned")
    return tuple(out)
