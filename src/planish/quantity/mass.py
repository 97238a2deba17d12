"""Mass: exact grams, read from and written in the units of the trade."""

import re
from collections.abc import Iterable
from decimal import Decimal
from fractions import Fraction
from itertools import pairwise
from typing import Self, overload

import msgspec

from planish.quantity.errors import QuantityError
from planish.quantity.numbers import EXACT, NUMBER, Number, decimal, digits, fraction, plain, read
from planish.quantity.numbers import rounded as _rounded
from planish.quantity.units import UNITS, Unit, unit_of

_WHAT = "weight"
_TERM = re.compile(rf"\s*(?P<number>{NUMBER})\s*(?P<unit>[^\W\d_][^\d,;+½¼¾⅓⅔⅛⅜⅝⅞]*)?", re.ASCII)
_SCRATCH = re.compile(r"(?:oz\.?\s*)?(\d+)\s*[-–:=]\s*(\d+(?:\s+1/[24]|\s+3/4)?)(?:\s*dwts?\.?)?")
_BRACKET = re.compile(rf"(.+?)\s*\(\s*({NUMBER}[^()]*)\)")
_OZ_TROY = "'oz' before 'dwt' is read as the troy ounce"
_OZ_AVOIRDUPOIS = (
    "'oz' is read as the avoirdupois ounce of 28.35 g; write ozt for the troy ounce of 31.10 g"
)
_GRAIN = "'gr' is read as the grain of 0.0648 g; write g for grams"


class Mass(msgspec.Struct, frozen=True, order=True):
    """A mass [g], exact. A difference of masses may be negative; a text may not.

    >>> Mass.parse("2 ozt 5 dwt")
    Mass(grams=Decimal('69.9828228'))
    >>> print(Mass.parse("123.4 g"))
    123.4 g (3.97 ozt)
    """

    grams: Decimal

    def __post_init__(self) -> None:
        if not isinstance(self.grams, Decimal):
            raise TypeError("grams must be a Decimal; use Mass.of or Mass.parse")
        if not self.grams.is_finite():
            raise QuantityError(_WHAT, self.grams, "this is not a finite number", "weigh again")

    @classmethod
    def of(cls, value: Number, unit: str = "g") -> Self:
        """The mass of a figure in a unit.

        Raises:
            QuantityError: the unit is not known or the figure not finite.
        """
        return cls(decimal(fraction(value, _WHAT) * unit_of(unit).grams))

    @classmethod
    def parse(cls, text: str) -> Self:
        """The mass that a text states; ``read_mass`` also says how an ambiguous unit was taken.

        A bare ``oz`` is the avoirdupois ounce, unless pennyweights follow: then it is troy.

        Raises:
            QuantityError: no mass can be read.
        """
        return cls(read_mass(text).mass.grams)

    @classmethod
    def parse_scratch(cls, text: str) -> Self:
        """The mass of a scratch weight, troy ounces and pennyweights: "32-14", "32:14", "32=14".

        Raises:
            QuantityError: it is not of that form, or has 20 pennyweights or more.
        """
        whole = plain(text, _WHAT)
        match = _SCRATCH.fullmatch(whole)
        if not match:
            fault = "this is not a scratch weight"
            raise QuantityError(_WHAT, text, fault, "write ounces and pennyweights like 32-14")
        ounces, pennyweights = (read(g, _WHAT) for g in match.groups())
        if pennyweights >= 20:
            fault = "an ounce has 20 pennyweights, so fewer must follow"
            raise QuantityError(_WHAT, text, fault, "look again at the second figure")
        return cls.of(ounces + pennyweights / 20, "ozt")

    @classmethod
    def total(cls, masses: Iterable["Mass"]) -> Self:
        """The sum; zero for none."""
        grams = Decimal(0)
        for mass in masses:
            grams = EXACT.add(grams, mass.grams)
        return cls(grams)

    def __add__(self, other: "Mass") -> "Mass":
        if not isinstance(other, Mass):
            return NotImplemented
        return Mass(EXACT.add(self.grams, other.grams))

    def __sub__(self, other: "Mass") -> "Mass":
        if not isinstance(other, Mass):
            return NotImplemented
        return Mass(EXACT.subtract(self.grams, other.grams))

    def __neg__(self) -> "Mass":
        return Mass(EXACT.minus(self.grams))

    def __abs__(self) -> "Mass":
        return Mass(EXACT.abs(self.grams))

    def __mul__(self, number: Number) -> "Mass":
        return Mass(EXACT.multiply(self.grams, decimal(number)))

    __rmul__ = __mul__

    @overload
    def __truediv__(self, other: "Mass") -> Decimal: ...
    @overload
    def __truediv__(self, other: Number) -> "Mass": ...
    def __truediv__(self, other: "Mass | Number") -> "Mass | Decimal":
        by = other.grams if isinstance(other, Mass) else decimal(other)
        if not by:
            raise ZeroDivisionError("a mass divided by zero")
        quotient = EXACT.divide(self.grams, by)
        return quotient if isinstance(other, Mass) else Mass(quotient)

    def to(self, unit: str) -> Decimal:
        """The figure in a unit, rounded at 50 significant digits where it does not end.

        Raises:
            QuantityError: the unit is not known.

        >>> Mass.parse("5 dwt").to("ozt")
        Decimal('0.25')
        """
        return decimal(Fraction(self.grams) / unit_of(unit).grams)

    def written(self, unit: str = "g", places: int | None = None) -> str:
        """The figure and its unit, all digits or rounded to ``places`` decimals.

        With all digits in grams it parses back to the same mass.
        """
        value = self.to(unit)
        shown = digits(value) if places is None else format(_rounded(value, places), "f")
        return f"{shown} {unit_of(unit).symbol}"

    def __str__(self) -> str:
        """Grams to the milligram and troy ounces to the hundredth; three figures where small."""
        ozt = self.to("ozt")
        grams = digits(_rounded(self.grams, _places(self.grams, 3)))
        return f"{grams} g ({format(_rounded(ozt, _places(ozt, 2)), 'f')} ozt)"


def _places(value: Decimal, usual: int) -> int:
    """Decimals to show: the usual number, or as many as give three figures."""
    return max(usual, 2 - value.adjusted()) if value else usual


class MassRead(msgspec.Struct, frozen=True):
    """A mass as read, with how each unit that bears two meanings was taken."""

    mass: Mass
    notes: tuple[str, ...] = ()


def read_mass(text: str) -> MassRead:
    """The mass of a text such as "2 ozt 5 dwt", and notes on how its units were taken.

    A second weight in brackets, "123.4 g (3.97 ozt)", must agree with the first.

    Raises:
        QuantityError: the figure or unit is missing or unknown, units of two systems are mixed or
            out of order, or the figure is negative.

    >>> read_mass("19oz 5dwt").notes
    ("'oz' before 'dwt' is read as the troy ounce",)
    """
    whole = plain(text, _WHAT)
    if whole[0] in "-−–":
        fault = "a weight cannot be negative"
        raise QuantityError(_WHAT, whole, fault, "take off the sign, or check the tare", 0)
    if match := _BRACKET.fullmatch(whole):
        return _agreeing(whole, read_mass(match[1]), read_mass(match[2]))
    terms = _terms(whole)
    words = [unit.symbol for _, unit, _ in terms]
    notes: list[str] = []
    if "oz" in words and "dwt" in words:
        if "lb" in words:
            fault = "'lb' with pennyweights may be the troy or the avoirdupois pound"
            remedy = "write lbt for the troy pound, or give ounces only"
            raise QuantityError(_WHAT, whole, fault, remedy)
        terms = [(n, unit_of("ozt") if u.symbol == "oz" else u, at) for n, u, at in terms]
        notes.append(_OZ_TROY)
    elif "oz" in words and "gr" in words:
        fault = "'oz' with grains may be the troy or the avoirdupois ounce"
        raise QuantityError(_WHAT, whole, fault, "write ozt, or give one unit only")
    elif words == ["oz"]:
        notes.append(_OZ_AVOIRDUPOIS)
    if words == ["gr"]:
        notes.append(_GRAIN)
    _one_falling_system(whole, terms)
    grams = sum((number * unit.grams for number, unit, _ in terms), Fraction(0))
    return MassRead(Mass(decimal(grams)), tuple(notes))


def _agreeing(whole: str, first: MassRead, second: MassRead) -> MassRead:
    """The first of two statements of one weight, where they agree to 2 % (both are rounded)."""
    if abs(first.mass - second.mass) > abs(first.mass) * Decimal("0.02"):
        fault = f"the two weights disagree: {first.mass.written(places=1)} and {second.mass.written(places=1)}"
        raise QuantityError(_WHAT, whole, fault, "give one; write ozt for troy ounces")
    return first


def _terms(whole: str) -> list[tuple[Fraction, Unit, int]]:
    """Each figure with its unit and where it begins."""
    terms: list[tuple[Fraction, Unit, int]] = []
    at = 0
    while at < len(whole):
        match = _TERM.match(whole, at)
        if not match:
            fault = f"a figure is needed where '{whole[at:].strip()}' stands"
            raise QuantityError(_WHAT, whole, fault, "write it like 412.6 g or 2 ozt 5 dwt", at)
        if re.match(r",\d", whole[match.end("number") :]):
            fault = "the comma does not group thousands"
            raise QuantityError(
                _WHAT, whole, fault, "write a decimal point, like 12.5", match.end("number")
            )
        number, word = match["number"], match["unit"] or ""
        unit = unit_of(re.sub(r"\band\b\s*$", "", word), whole, match.end("number"))
        terms.append((read(number, _WHAT), unit, match.start("number")))
        at = match.end()
        if whole[at : at + 1] in ("+", ",", ";"):
            at += 1
    return terms


def _one_falling_system(whole: str, terms: list[tuple[Fraction, Unit, int]]) -> None:
    """A compound keeps to one system of units, each smaller than the one before."""
    for (_, unit, _), (_, after, at) in pairwise(terms):
        if unit.system != after.system:
            fault = f"{unit.symbol} ({unit.system}) and {after.symbol} ({after.system}) are mixed"
            raise QuantityError(_WHAT, whole, fault, "keep to one system of units", at)
        if unit.grams <= after.grams:
            fault = f"{after.symbol} stands after {unit.symbol}"
            raise QuantityError(_WHAT, whole, fault, "put the greater unit first, each once", at)


def symbols() -> tuple[str, ...]:
    """The symbols of all units known."""
    return tuple(unit.symbol for unit in UNITS)
