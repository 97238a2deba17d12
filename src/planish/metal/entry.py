"""Deductions, parts and prices as a person writes them in one line.

steel blades = 6 x 24g..30g by rule       limits, for each of six
turquoise = 2.40g +-0.05g weighed         a figure, its uncertainty, how it was found
pitch = 80%..90% by rule                  a share of the gross weight
cement = 12cm3 +-1cm3 of cement           a volume of a material of the library
no filler = 0g seen from below            nothing to take off, and why
knives = 12 x knife                       all but the silver of a named rule of thumb
"""

import datetime as dt
import math
import re
from collections.abc import Callable, Sequence
from decimal import Decimal

import msgspec

from planish.library.rows import Metal
from planish.metal.allowances import ALLOWANCES, allowance
from planish.metal.deductions import (
    Deduction,
    Method,
    by_allowance,
    by_share,
    by_volume,
    kind_of,
    method_of,
)
from planish.metal.hydro import Rest
from planish.metal.parts import Part
from planish.metal.value import MetalPrice
from planish.metal.weighing import Alloy, Weighing
from planish.quantity import Fineness, Mass, Measured, Money, QuantityError
from planish.quantity.numbers import NUMBER, decimal, read

_COUNT = re.compile(r"(?P<n>[0-9]{1,4})\s*[x×]\s*(?=\S)")
_METHOD = re.compile(
    r"\s*(?:\b(?:by|from)\s+(?P<by>.+)|\b(?P<said>(?:weighed|measured|seen|estimated|calculated)\b.*))$"
)
_SHARES = re.compile(rf"(?P<low>{NUMBER})\s*%?\s*\.\.\s*(?P<high>{NUMBER})\s*%")
_VOLUME = re.compile(
    rf"(?P<v>{NUMBER})\s*(?:cm3|cm³|ml|cc)\s*(?:(?:\+-|±|\+/-)\s*(?P<u>{NUMBER})\s*(?:cm3|cm³|ml|cc)?)?"
    r"\s+of\s+(?P<of>.+)"
)
_SURE = re.compile(r"\s*(?:\+-|±|\+/-)\s*")
_RULE = "rule of thumb as typed in"
_REMEDY = "write it like 'steel blades = 6 x 24g..30g by rule'"


class Off(msgspec.Struct, frozen=True):
    """A deduction as typed: the part it belongs to, if one is named, and the words after ``=``."""

    part: str
    what: str
    figure: str


def split_off(text: str) -> Off:
    """``[PART:] WHAT = FIGURE`` taken apart.

    Raises:
        QuantityError: no ``=``, or nothing on one side of it.
    """
    name, sign, figure = text.partition("=")
    part, colon, what = name.rpartition(":")
    if not sign or not (what if colon else name).strip() or not figure.strip():
        raise QuantityError("deduction", text, "it does not say what is how much", _REMEDY)
    return Off(part.strip(), (what if colon else name).strip(), " ".join(figure.split()))


def read_deduction(off: Off, gross: Mass, materials: Sequence[Metal]) -> Deduction:
    """The deduction that a line states.

    gross: of the piece or part that it comes off. materials: the library's, for volumes.

    Raises:
        QuantityError: it cannot be read, or cannot be.
    """
    kind = kind_of(f"{off.what} {off.figure}")
    rest = off.figure
    count = 1
    if match := _COUNT.match(rest):
        count, rest = int(match["n"]), rest[match.end() :]
    how = _METHOD.search(rest)
    said = (how["by"] or how["said"]).strip() if how else ""
    figure = rest[: how.start()].strip() if how else rest
    method = method_of(said)
    source = _source(said, method)
    what = f"{count} x {off.what}" if count > 1 else off.what
    rules = {a.id for a in ALLOWANCES}
    if figure.casefold() in rules:
        rule = allowance(figure.casefold())
        return by_allowance(gross, rule, kind=kind, what=f"{what}: all but the silver", count=count)
    if match := _SHARES.fullmatch(figure):
        shares = sorted(decimal(read(match[g], "share") / 100) for g in ("low", "high"))
        return by_share(gross, shares[0], shares[1], kind=kind, what=what, source=source)
    if match := _VOLUME.fullmatch(figure):
        size = float(read(match["v"], "volume")) * count
        unsure = float(read(match["u"], "volume")) * count if match["u"] else 0.0
        volume = Measured.of(size, volume=unsure)
        material = material_named(match["of"], materials)
        return by_volume(volume, material, kind=kind, what=what, how=said)
    low_text, between, high_text = figure.partition("..")
    if between:
        low, high = _limits(low_text, high_text)
        return Deduction(
            kind=kind, what=what, low=low * count, high=high * count, method=method, source=source
        )
    mass_text, *sure_text = _SURE.split(figure, maxsplit=1)
    sure = Mass.parse(sure_text[0]) if sure_text else None
    if count > 1 and method is Method.WEIGHED and sure is None:
        source = f"{source}; {count} times {mass_text.strip()}"
    return Deduction(
        kind=kind,
        what=what,
        mass=Mass.parse(mass_text) * count,
        plus_minus=sure * count if sure else None,
        method=method,
        source=source,
    )


def _source(said: str, method: Method) -> str:
    if said in ("rule", "rule of thumb", ""):
        return _RULE
    return said if method is not Method.WEIGHED or said != "weighed" else "weighed apart"


def _limits(low: str, high: str) -> tuple[Mass, Mass]:
    """Limits of a mass; the unit may stand once, at the end."""
    upper = Mass.parse(high)
    if re.fullmatch(NUMBER, low.strip()):
        unit = re.sub(rf"^{NUMBER}", "", high.strip()).strip()
        return Mass.parse(f"{low.strip()} {unit}"), upper
    return Mass.parse(low), upper


def material_named(word: str, materials: Sequence[Metal]) -> Metal:
    """The library's material of that name.

    Raises:
        QuantityError: none, or several, go by it.
    """
    low = " ".join(word.casefold().split())
    exact = [m for m in materials if low in (m.id, *(n.casefold() for n in m.names))]
    found = exact or [m for m in materials if low in " ".join((m.id, *m.names)).casefold()]
    if len(found) == 1:
        return found[0]
    if not found:
        fillers = ", ".join(m.id for m in materials if m.group == "filler")
        remedy = f"fillers are {fillers}; or give the mass"
        raise QuantityError("material", word, "the library has none of that name", remedy)
    ids = ", ".join(m.id for m in found[:6])
    raise QuantityError("material", word, "several go by that name", f"choose one of: {ids}")


_PART = re.compile(
    r"(?P<name>[^=]+)=\s*(?P<mass>.+?)(?:\s+at\s+(?P<at>.+)|\s+(?P<kind>plated|other))?\s*"
)


def read_part(text: str, alloy: Alloy | None, weighed: Callable[[Mass], Weighing]) -> Part:
    """The part that ``lid = 84.2g at 925`` states; ``plated`` or ``other`` stand for no fineness.

    alloy: of parts that name none. weighed: what is known of the balance.

    Raises:
        QuantityError: name or mass is missing, or cannot be read.
    """
    match = _PART.fullmatch(" ".join(text.split()))
    if not match:
        fault, remedy = "it does not say what weighs how much", "write it like 'lid=84.2g at 925'"
        raise QuantityError("part", text, fault, remedy)
    own = read_alloy(match["at"], alloy.basis if alloy else "") if match["at"] else alloy
    plated, other = match["kind"] == "plated", match["kind"] == "other"
    return Part(
        name=match["name"].strip(),
        weighing=weighed(Mass.parse(match["mass"])),
        alloy=None if plated or other else own,
        plated=plated,
        other=other,
    )


def read_alloy(text: str, basis: str = "") -> Alloy:
    """The fineness in ``925``, ``sterling`` or ``830 +- 5`` (standard uncertainty, in ‰).

    Raises:
        QuantityError: it is no fineness.
    """
    figure, *unsure = _SURE.split(text, maxsplit=1)
    spread = decimal(read(unsure[0].strip(" ‰"), "fineness")) if unsure else Decimal(0)
    return Alloy(fineness=Fineness.parse(figure), plus_minus=spread, basis=basis)


_PRICE = re.compile(
    r"(?P<money>.+?)\s*(?:/|\bper\b)\s*(?P<per>[^\W\d_]+)(?:\s+on\s+(?P<on>\S+))?(?:\s+from\s+(?P<source>.+))?"
)


def read_price(text: str, *, today: dt.date, currency: str | None = None) -> MetalPrice:
    """The price in ``USD 30/ozt on 2026-05-14 from NAME``; without a day, today's.

    Raises:
        QuantityError: currency, amount or unit is missing, or the day is none.
    """
    match = _PRICE.fullmatch(" ".join(text.split()))
    if not match:
        fault, remedy = "it does not say for how much silver", "write it like 'USD 30/ozt'"
        raise QuantityError("metal price", text, fault, remedy)
    try:
        day = dt.date.fromisoformat(match["on"]) if match["on"] else today
    except ValueError:
        fault = f"'{match['on']}' is no day"
        raise QuantityError("metal price", text, fault, "write it like 2026-05-14") from None
    source = match["source"] or "as typed in, source not named"
    money = Money.parse(match["money"], default=currency)
    return MetalPrice(price=money, per=match["per"], date=day, source=source)


def share_of(text: str) -> Decimal:
    """A share typed as 0.85 or 85%.

    Raises:
        QuantityError: it is no number.
    """
    word = text.strip()
    hundred = word.endswith("%")
    value = read(word.rstrip("% "), "share") / (100 if hundred else 1)
    return decimal(value)


_REST = re.compile(
    rf"(?P<what>[^=]+)=\s*(?P<mass>.+?)\s+at\s+(?P<low>{NUMBER})(?:\s*\.\.\s*(?P<high>{NUMBER}))?"
)
_DEGREES = re.compile(
    rf"(?P<t>{NUMBER})\s*(?:°?\s*C)?(?:\s*(?:\+-|±|\+/-)\s*(?P<u>{NUMBER})\s*(?:°?\s*C)?)?"
)


def read_rest(texts: Sequence[str]) -> Rest | None:
    """What is not the metal asked about: ``turquoise = 2.4g +-0.1g at 2.6..2.9``, added up.

    Raises:
        QuantityError: mass or density is missing, or cannot be read.
    """
    found = []
    for text in texts:
        match = _REST.fullmatch(" ".join(text.split()))
        if not match:
            fault, remedy = (
                "mass and density are needed",
                "write it like 'turquoise=2.4g at 2.6..2.9'",
            )
            raise QuantityError("rest", text, fault, remedy)
        mass, *unsure = _SURE.split(match["mass"], maxsplit=1)
        low = float(read(match["low"], "density"))
        high = float(read(match["high"], "density")) if match["high"] else low
        spread = float(Mass.parse(unsure[0]).grams) if unsure else 0.0
        grams = float(Mass.parse(mass).grams)
        found.append(Rest.of(match["what"].strip(), grams, low, high, spread))
    if not found:
        return None
    return Rest(
        what=" and ".join(r.what for r in found),
        mass=sum(r.mass for r in found),
        volume=sum(r.volume for r in found),
        mass_plus_minus=math.hypot(*(r.mass_plus_minus for r in found)),
        volume_plus_minus=math.hypot(*(r.volume_plus_minus for r in found)),
    )


def read_degrees(text: str) -> tuple[float, float]:
    """A temperature and its standard uncertainty [°C]: ``20``, ``20 +- 1``; half a degree if untold.

    Raises:
        QuantityError: it is no temperature.
    """
    match = _DEGREES.fullmatch(" ".join(text.split()))
    if not match:
        fault, remedy = "this is no temperature", "write degrees Celsius, like 20 or '20 +- 1'"
        raise QuantityError("temperature", text, fault, remedy)
    unsure = float(read(match["u"], "temperature")) if match["u"] else 0.5
    return float(read(match["t"], "temperature")), unsure
