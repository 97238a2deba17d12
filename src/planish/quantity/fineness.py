"""Fineness: silver (or gold) in parts per thousand by mass, and the older scales."""

import re
from decimal import Decimal
from fractions import Fraction
from typing import Self

import msgspec

from planish.quantity.errors import QuantityError
from planish.quantity.numbers import EXACT, NUMBER, Number, decimal, digits, fraction, plain, read
from planish.quantity.numbers import rounded as _rounded

_WHAT = "fineness"
_REMEDY = "write parts per thousand from 0 to 1000, like 925"

# scale -> parts that are pure metal. Sources: loth and zolotnik: common practice of the German and
# Russian standards; karat and ounces: the troy pound of 12 oz (sterling is 11 oz 2 dwt).
ZOLOTNIK, LOTH, KARAT, TROY_POUND_DWT, DENIER_GRAINS = 96, 16, 24, 240, 288

_SCALES = {
    "zolotnik": ZOLOTNIK, "zolotniki": ZOLOTNIK, "zolotniks": ZOLOTNIK,
    "loth": LOTH, "lot": LOTH, "lod": LOTH, "lothig": LOTH, "löthig": LOTH, "lötig": LOTH,
    "karat": KARAT, "carat": KARAT, "kt": KARAT, "k": KARAT, "ct": KARAT,
    "%": 100, "percent": 100, "per cent": 100,
    "‰": 1000, "permille": 1000, "per mille": 1000, "parts per thousand": 1000,
}  # fmt: skip

# words with one legal meaning; "coin" has several and is refused
_NAMED = {
    "sterling": Fraction(925),  # 11 oz 2 dwt of the troy pound
    # 11 oz 10 dwt is 958.33; the figure in law is 958.4 (Hallmarking Act 1973, Schedule 2)
    "britannia": Fraction("958.4"),
    "fine": Fraction(1000),
    "pure": Fraction(1000),
}

_SCALED = re.compile(rf"(?P<number>{NUMBER})\s*(?P<scale>[^\W\d_][^\d]*|[%‰])")
_OUNCES = re.compile(
    rf"(?P<oz>[0-9]+)\s*(?:ozt?|ounces?)\.?\s*(?:(?P<dwt>{NUMBER})\s*(?:dwts?|pennyweights?)\.?)?"
)
_DENIERS = re.compile(r"(?P<d>[0-9]+)\s*deniers?\s*(?:(?P<g>[0-9]+)\s*grains?)?")


class Fineness(msgspec.Struct, frozen=True, order=True):
    """Precious metal in parts per thousand by mass [‰], from 0 to 1000.

    >>> print(Fineness.parse("11 oz 2 dwt"), Fineness.parse("88 zolotnik"))
    925 ‰ 916.7 ‰
    """

    permille: Decimal

    def __post_init__(self) -> None:
        if not isinstance(self.permille, Decimal):
            raise TypeError("permille must be a Decimal; use Fineness.of or Fineness.parse")
        if not (self.permille.is_finite() and 0 <= self.permille <= 1000):
            raise QuantityError(_WHAT, self.permille, "outside 0 to 1000", _hint(self.permille))

    @classmethod
    def of(cls, parts: Number, of: int = 1000) -> Self:
        """The fineness of so many parts in ``of`` parts: ``Fineness.of(84, 96)``.

        Raises:
            QuantityError: outside 0 to 1000 parts per thousand.
        """
        return cls(decimal(fraction(parts, _WHAT) * 1000 / of))

    @classmethod
    def parse(cls, text: str) -> Self:
        """The fineness that a text states.

        Forms: "925", ".925", "92.5%", "925/1000", "11/12", "sterling", "84 zolotnik", "13 lot",
        "18 karat", "11 oz 2 dwt", "11 deniers 12 grains".

        Raises:
            QuantityError: it cannot be read, bears two meanings, or lies outside 0 to 1000.
        """
        whole = plain(text, _WHAT)
        low = whole.lower().removesuffix(" silver").removesuffix(" standard").strip()
        try:
            return cls(decimal(_permille(low)))
        except QuantityError as fault:
            raise QuantityError(_WHAT, whole, fault.fault, fault.remedy) from None

    @property
    def share(self) -> Decimal:
        """The fineness as a share of one."""
        return EXACT.divide(self.permille, Decimal(1000))

    @property
    def zolotnik(self) -> Decimal:
        """Zolotnik: parts in 96."""
        return self._in(ZOLOTNIK)

    @property
    def loth(self) -> Decimal:
        """Loth: parts in 16."""
        return self._in(LOTH)

    @property
    def karat(self) -> Decimal:
        """Karat: parts in 24."""
        return self._in(KARAT)

    @property
    def ounces_pennyweights(self) -> tuple[int, Decimal]:
        """Ounces and pennyweights of fine metal in the troy pound of 12 oz.

        >>> Fineness.parse("925").ounces_pennyweights
        (11, Decimal('2'))
        """
        pennyweights = self._in(TROY_POUND_DWT)
        ounces = int(pennyweights // 20)
        return ounces, pennyweights - 20 * ounces

    def _in(self, parts: int) -> Decimal:
        # rounded well inside the 50 digits kept, so that 88 zolotnik come back as 88
        exact = decimal(Fraction(self.permille) * parts / 1000)
        return Decimal(digits(_rounded(exact, 30)))

    def __str__(self) -> str:
        return f"{digits(_rounded(self.permille, 1))} ‰"


def _permille(text: str) -> Fraction:
    """Parts per thousand of a text in small letters."""
    if text in _NAMED:
        return _NAMED[text]
    if text == "coin":
        fault = (
            "'coin' has no single fineness: 892.4 by the law of 1792, 900 from 1837, less by use"
        )
        raise QuantityError(_WHAT, text, fault, "give the figure that a test or the law supports")
    if match := _OUNCES.fullmatch(text):
        dwt = read(match["dwt"], _WHAT) if match["dwt"] else Fraction(0)
        if dwt >= 20:
            fault = "an ounce has 20 pennyweights, so fewer must follow"
            raise QuantityError(_WHAT, text, fault, "write it like 11 oz 2 dwt")
        return (20 * Fraction(match["oz"]) + dwt) * 1000 / TROY_POUND_DWT
    if match := _DENIERS.fullmatch(text):
        grains = 24 * int(match["d"]) + int(match["g"] or 0)
        return Fraction(grains * 1000, DENIER_GRAINS)
    if match := _SCALED.fullmatch(text):
        scale = match["scale"].strip(" .")
        if scale not in _SCALES:
            fault = f"scale '{scale}' is not known"
            raise QuantityError(_WHAT, text, fault, "write 925, 92.5%, 84 zolotnik or 13 lot")
        return read(match["number"], _WHAT) * 1000 / _SCALES[scale]
    number = read(text, _WHAT)
    if "/" in text:
        return number * 1000
    if 0 < number < 1 and text.startswith(("0.", ".")):
        return number * 1000
    if 0 < number < 100:
        fault = "a bare figure below 100 may be per cent, zolotnik, loth or karat"
        raise QuantityError(_WHAT, text, fault, f"write {text}%, {text} zolotnik or {text}/1000")
    if number > 1000:
        raise QuantityError(_WHAT, text, "outside 0 to 1000", _hint(decimal(number)))
    return number


def _hint(value: Decimal) -> str:
    """A likely slip of the decimal point, or the plain remedy."""
    for power in (1, 2, 3) if value.is_finite() else ():
        guess = value.scaleb(-power)
        if 500 <= guess <= 1000:
            return f"did you mean {digits(guess)}?"
    return _REMEDY
