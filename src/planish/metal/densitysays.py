"""What a density says of the metal, in words, and what it cannot say."""

from collections.abc import Sequence
from enum import StrEnum

import msgspec

from planish.library.rows import Metal
from planish.metal.hydro import Density, by_step
from planish.metal.materials import PORES, WORKED, Fits, not_excluded
from planish.metal.mixture import COPPER, SILVER, density_of, fineness_of

#: steps of balances that are sold [g]
_STEPS = (0.1, 0.01, 0.001, 0.0001)
#: groups that are commonly taken for silver
_LOOK_ALIKES = ("nickel silver", "brass", "bronze", "cupronickel", "pewter", "stainless steel",
                "steel", "light metal", "zinc alloy")  # fmt: skip

CANNOT = (
    "no fineness mark is confirmed or refuted: solder and pores move density by 25 ‰ of silver",
    "silver is not proved: lead with nickel silver, 62 to 38 by volume, is as dense as sterling",
    "plate is not found: the density is that of the whole, and a thin layer hardly changes it",
)


class Verdict(StrEnum):
    """What the density allows."""

    SILVER = "silver is not excluded"
    NOT_SILVER = "not solid silver"
    OPEN = "cannot tell"


class Conclusion(msgspec.Struct, frozen=True, kw_only=True):
    """The density read against the table of metals.

    says: a sentence. fits: what is not excluded.
    fineness: limits if it were silver and copper alone, with the allowance for worked pieces [‰].
    cannot: what no density can tell.
    """

    verdict: Verdict
    says: str
    fits: Fits
    fineness: tuple[int, int] | None
    cannot: tuple[str, ...] = CANNOT


def conclude(found: Density, metals: Sequence[Metal]) -> Conclusion:
    """What a density allows, over its 95 % interval."""
    low, high = found.stated.low, found.stated.high
    fits = not_excluded(low, high, metals)
    base = [f for f in fits.other if f.group in _LOOK_ALIKES]
    if fits.silver and not base:
        verdict = Verdict.SILVER
        out = _listed([g for g in fits.excluded if g in _LOOK_ALIKES])
        says = f"It may be silver. {out[:1].upper()}{out[1:]} do not fit."
        if beside := [f.name for f in fits.other]:
            says += f" As dense: {_listed(beside)}."
    elif fits.silver:
        verdict = Verdict.OPEN
        groups = _listed(list(dict.fromkeys(f.group for f in base)))
        says = f"It cannot be told whether it is silver: {groups} would fit as well."
        says += _finer(found)
    else:
        verdict = Verdict.NOT_SILVER
        says = "It is not solid silver of 500 parts per thousand or more"
        names = list(dict.fromkeys(f.group for f in base or fits.other))
        says += f"; what fits is {_listed(names)}." if names else "; nothing in the table fits."
        says += " A bubble, a hollow or a filling would lower it just so: look before you say so."
    return Conclusion(verdict=verdict, says=says, fits=fits, fineness=_fineness(low, high, fits))


def _fineness(low: float, high: float, fits: Fits) -> tuple[int, int] | None:
    """To ten parts per thousand, outwards: more would say too much."""
    if not fits.silver:
        return None
    lower = fineness_of(max(COPPER, low - WORKED))
    upper = fineness_of(min(SILVER, high + WORKED + PORES))
    return max(0, int(lower // 10) * 10), min(1000, -int(-upper // 10) * 10)


def _finer(found: Density) -> str:
    """Which balance would tell silver of 800 from nickel silver of 8.9."""
    gap = density_of(800) - PORES - WORKED - 8.9 - WORKED
    now = found.given.step or _STEPS[0]
    mass = found.given.in_air
    for step in _STEPS:
        if step < now and 2 * 1.96 * by_step(mass, step, 10.2) < gap:
            return f" A balance with a step of {step:g} g would tell them apart."
    return ""


def _listed(words: Sequence[str]) -> str:
    """Words as one enumerates them; at most six."""
    shown = list(words[:6]) + (["others"] if len(words) > 6 else [])
    if len(shown) < 2:
        return "".join(shown)
    return f"{', '.join(shown[:-1])} and {shown[-1]}"
