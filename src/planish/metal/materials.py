"""Which materials a density does not exclude."""

from collections.abc import Sequence

import msgspec

from planish.library.rows import Metal

#: what solder and other metals in a worked piece move its density by, up or down, and what pores
#: take off it [g/cm³]; common practice, for silver and its neighbours
WORKED, PORES = 0.03, 0.05
#: a name for so wide a range of densities tells nothing [g/cm³]
WIDE = 1.0
#: least share of silver that makes an alloy silver here [% by mass]
_SILVER = 50.0


class Fit(msgspec.Struct, frozen=True, kw_only=True):
    """A material that the density does not exclude.

    low, high: its densities with the allowance for worked pieces [g/cm³].
    silver: it is silver of 500 parts per thousand or more. fineness: of that alloy [‰].
    """

    id: str
    name: str
    group: str
    density: float
    low: float
    high: float
    silver: bool
    fineness: float | None
    confidence: str
    sources: tuple[str, ...]


class Fits(msgspec.Struct, frozen=True, kw_only=True):
    """All that fits, nearest first; what does not, as groups.

    wide: names of so wide a range that nothing excludes them; they count for nothing.
    """

    fits: tuple[Fit, ...]
    wide: tuple[Fit, ...]
    excluded: tuple[str, ...]

    @property
    def silver(self) -> tuple[Fit, ...]:
        """Silver that fits."""
        return tuple(f for f in self.fits if f.silver)

    @property
    def other(self) -> tuple[Fit, ...]:
        """What else fits."""
        return tuple(f for f in self.fits if not f.silver)


def not_excluded(low: float, high: float, metals: Sequence[Metal]) -> Fits:
    """Materials whose densities meet an interval [g/cm³]; fillers are left out."""
    middle = (low + high) / 2
    fits, wide, groups, met = [], [], [], set()
    for metal in metals:
        if metal.group == "filler":
            continue
        groups.append(metal.group)
        lower, upper = metal.low - WORKED - PORES, metal.high + WORKED
        if lower > high or upper < low:
            continue
        share = metal.shares.get("Ag", (0.0, 0.0))
        silver = share[0] >= _SILVER
        fit = Fit(
            id=metal.id,
            name=metal.name,
            group=metal.group,
            density=metal.density,
            low=lower,
            high=upper,
            silver=silver,
            fineness=10 * (share[0] + share[1]) / 2 if silver else None,
            confidence=metal.confidence.value,
            sources=metal.sources,
        )
        if metal.high - metal.low > WIDE:
            wide.append(fit)
        else:
            fits.append(fit)
        met.add(metal.group)
    excluded = tuple(g for g in dict.fromkeys(groups) if g not in met and g != "element")
    fits.sort(key=lambda f: (abs(f.density - middle), f.id))
    return Fits(fits=tuple(fits), wide=tuple(wide), excluded=excluded)
