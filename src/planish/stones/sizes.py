"""Sizes of stones as people write them: ``6.5 x 6.4 x 3.9 mm``."""

import math
import re
from fractions import Fraction

import msgspec

from planish.quantity import QuantityError

_WHAT = "size"
_MM = {
    "mm": Fraction(1),
    "cm": Fraction(10),
    "in": Fraction("25.4"),
    "inch": Fraction("25.4"),
    "inches": Fraction("25.4"),
    '"': Fraction("25.4"),
}
_FIGURE = r"\d+(?:\.\d+)?|\.\d+"
_PART = re.compile(
    rf"(?:(?P<hidden>\?)|(?P<low>{_FIGURE})(?:\s*(?:-|–|to)\s*(?P<high>{_FIGURE}))?)"
    rf"\s*(?P<before>[a-z\"]+)?\s*(?:(?:±|\+/-|\+-)\s*(?P<u>{_FIGURE})\s*(?P<after>[a-z\"]+)?)?",
    re.ASCII,
)
#: what a hand with a gauge adds to the gauge's own step [mm]: common practice
HANDLING = 0.02
#: a size known no better than this share is no measurement
_WORST = 1 / 3
_REMEDY = "write sizes like 6.5x6.4x3.9mm, with ? for a depth that cannot be measured"


class Size(msgspec.Struct, frozen=True):
    """One measurement [mm]: limits (alike where it was measured) and standard uncertainty."""

    low: float
    high: float
    u: float

    @property
    def value(self) -> float:
        """The middle."""
        return (self.low + self.high) / 2

    @property
    def ranged(self) -> bool:
        """Whether only limits are known."""
        return self.low < self.high


class Sizes(msgspec.Struct, frozen=True):
    """Measurements in the order written, None for one that cannot be measured, and how they were read."""

    parts: tuple[Size | None, ...]
    notes: tuple[str, ...] = ()


def read_sizes(text: str, plus_minus: float | None = None) -> Sizes:
    """The measurements that a text states.

    A unit counts for the parts before it that have none; without any it is millimetres. ``±`` is a
    standard uncertainty; after the last part alone it counts for all. Without any, it is the last
    decimal written (rectangular, GUM F.2.2.1) and 0.02 mm for the hand (common practice).

    plus_minus: standard uncertainty of each [mm], where the text has none.

    Raises:
        QuantityError: it is no size, or one is nought or hardly known.

    >>> [p.value for p in read_sizes("6.5 x 6.4 x 0.39 cm").parts]
    [65.0, 64.0, 3.9]
    """
    plain = " ".join(text.lower().replace(",", "¦").split())
    if "¦" in plain:
        at = plain.index("¦")
        raise QuantityError(_WHAT, text, "a comma is no decimal sign here", "write 6.5", at)
    found = [_part(part, text) for part in re.split(r"\s*[x×*]\s*|\s+by\s+", plain)]
    if not any(part["unit"] for part in found):
        units = ["mm"] * len(found)
        notes = ["no unit is written: read as millimetres"]
    else:
        units, notes, unit = [], [], next(p["unit"] for p in reversed(found) if p["unit"])
        for part in reversed(found):
            unit = part["unit"] or unit
            units.insert(0, unit)
    for part in found[:-1]:
        if found[-1]["u"] and any(p["u"] for p in found[:-1]) and not part["u"] and part["low"]:
            fault = "some measurements have a ± and others none"
            raise QuantityError(_WHAT, text, fault, "write it after each, or after the last alone")
    last = Fraction(found[-1]["u"]) * _unit(units[-1], text) if found[-1]["u"] else None
    if last is not None and len(found) > 1 and not any(p["u"] for p in found[:-1]):
        notes.append("± after the last measurement is read as that of each")
    # someone who reads to the tenth writes 14 for 14.0
    finest = min(
        (
            _step(p[key]) * _unit(u, text)
            for p, u in zip(found, units, strict=True)
            for key in ("low", "high")
            if p[key]
        ),
        default=Fraction(1),
    )
    by_hand = math.hypot(float(finest) / math.sqrt(12), HANDLING)
    usual = by_hand if plus_minus is None else plus_minus
    sizes = []
    for part, unit in zip(found, units, strict=True):
        own = Fraction(part["u"]) * _unit(unit, text) if part["u"] else last
        sizes.append(_size(part, _unit(unit, text), own, usual, text))
    return Sizes(tuple(sizes), tuple(notes))


def _part(part: str, text: str) -> dict[str, str]:
    match = _PART.fullmatch(part)
    if not match:
        fault = f"'{part}' is no measurement" if part else "a measurement is missing"
        raise QuantityError(_WHAT, text, fault, _REMEDY)
    found = {name: value or "" for name, value in match.groupdict().items()}
    before, after = found.pop("before"), found.pop("after")
    if before and after and before != after:
        raise QuantityError(_WHAT, text, f"'{before}' and '{after}' are mixed", "keep to one unit")
    return {**found, "unit": before or after}


def _unit(word: str, text: str) -> Fraction:
    if word not in _MM:
        raise QuantityError(_WHAT, text, f"unit '{word}' is not known", "write mm, cm or in")
    return _MM[word]


def _step(figure: str) -> Fraction:
    return Fraction(1, 10 ** len(figure.partition(".")[2]))


def _size(
    part: dict[str, str],
    unit: Fraction,
    own: Fraction | None,
    usual: float,
    text: str,
) -> Size | None:
    if part["hidden"]:
        return None
    low = float(Fraction(part["low"]) * unit)
    high = float(Fraction(part["high"]) * unit) if part["high"] else low
    if low <= 0.0:
        raise QuantityError(_WHAT, text, "a measurement is nought", "measure again, or write ?")
    if high < low:
        raise QuantityError(_WHAT, text, "limits are upside down", "put the smaller first")
    u = usual if own is None else float(own)
    if not math.isfinite(u) or u < 0.0:
        raise QuantityError(_WHAT, text, f"± {u:g} is no uncertainty", "give its size in mm")
    if u > _WORST * low:
        fault = f"{low:g} mm with a standard uncertainty of {u:.2g} mm says too little"
        raise QuantityError(_WHAT, text, fault, "measure to the tenth of a millimetre")
    return Size(low, high, u)
