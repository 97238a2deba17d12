"""Units of mass, exact.

All avoirdupois and troy units follow from 1 lb = 453.59237 g = 7000 grains, the international
agreement of 1959 (NIST Handbook 44, Appendix C; NIST SP 811, Appendix B). The grain is the same in
the troy and avoirdupois systems.
"""

import re
from fractions import Fraction

import msgspec

from planish.quantity.errors import QuantityError

GRAIN = Fraction("0.06479891")  # 453.59237 g / 7000


class Unit(msgspec.Struct, frozen=True, kw_only=True):
    """A unit of mass.

    symbol: how this program writes it.
    grams: its mass [g], exact.
    name: in words.
    system: metric, troy, avoirdupois or customary; a compound keeps to one.
    spellings: other ways it is written, in small letters without stops.
    source: where the figure comes from.
    """

    symbol: str
    grams: Fraction
    name: str
    system: str
    spellings: tuple[str, ...] = ()
    source: str


_HB44 = "NIST Handbook 44, Appendix C"
_SI = "International System of Units"

UNITS: tuple[Unit, ...] = (
    Unit(
        symbol="g", grams=Fraction(1), name="gram", system="metric", source=_SI,
        spellings=("gram", "grams", "gramme", "grammes", "gm", "gms", "gs"),
    ),
    Unit(
        symbol="mg", grams=Fraction(1, 1000), name="milligram", system="metric", source=_SI,
        spellings=("milligram", "milligrams", "milligramme", "milligrammes"),
    ),
    Unit(
        symbol="kg", grams=Fraction(1000), name="kilogram", system="metric", source=_SI,
        spellings=("kilogram", "kilograms", "kilogramme", "kilogrammes", "kilo", "kilos", "kgs"),
    ),
    Unit(
        symbol="ct", grams=Fraction(1, 5), name="metric carat", system="carat",
        source="4th General Conference on Weights and Measures, 1907",
        spellings=("cts", "carat", "carats"),
    ),
    Unit(
        symbol="point", grams=Fraction(1, 500), name="point", system="carat",
        source="a hundredth of the carat", spellings=("points", "pt", "pts"),
    ),
    Unit(
        symbol="lbt", grams=5760 * GRAIN, name="troy pound", system="troy", source=_HB44,
        spellings=("lb t", "lb troy", "lbs troy", "troy lb", "troy pound", "troy pounds"),
    ),
    Unit(
        symbol="ozt", grams=480 * GRAIN, name="troy ounce", system="troy", source=_HB44,
        spellings=(
            "oz t", "ozs t", "oz troy", "ozs troy", "t oz", "toz", "t ozs", "tr oz", "troy oz",
            "troy ozs", "troy ounce", "troy ounces", "ounce troy", "ounces troy",
        ),
    ),
    Unit(
        symbol="dwt", grams=24 * GRAIN, name="pennyweight", system="troy", source=_HB44,
        spellings=("dwts", "pennyweight", "pennyweights", "pwt", "pwts"),
    ),
    Unit(
        symbol="gr", grams=GRAIN, name="grain", system="troy", source=_HB44,
        spellings=("grs", "grain", "grains"),
    ),
    Unit(
        symbol="lb", grams=7000 * GRAIN, name="avoirdupois pound", system="avoirdupois",
        source=_HB44,
        spellings=("lbs", "pound", "pounds", "lb av", "lb avdp", "avoirdupois pound"),
    ),
    Unit(
        symbol="oz", grams=Fraction(875, 2) * GRAIN, name="avoirdupois ounce",
        system="avoirdupois", source=_HB44,
        spellings=("ozs", "ounce", "ounces", "oz av", "oz avdp", "avoirdupois ounce",
                   "avoirdupois ounces", "ounces avoirdupois"),
    ),
    Unit(
        symbol="tola", grams=180 * GRAIN, name="tola", system="tola",
        source="GNU Units 2.22: 180 grains", spellings=("tolas",),
    ),
    Unit(
        symbol="momme", grams=Fraction(15, 4), name="momme", system="momme",
        source="GNU Units 2.22: a thousandth of the kan of 3.75 kg", spellings=("mommes",),
    ),
    Unit(
        symbol="tael-hk", grams=Fraction(7000 * 4, 3 * 16) * GRAIN, name="Hong Kong tael",
        system="tael", source="GNU Units 2.22: 1/16 catty of 4/3 lb",
    ),
    Unit(
        symbol="tael-hk-j", grams=Fraction("37.429"), name="Hong Kong tael of jewellers",
        system="tael-hk-j", source="two trade pages",
    ),
    Unit(
        symbol="tael-tw", grams=Fraction("37.5"), name="Taiwan tael", system="tael-tw",
        source="one trade page",
    ),
    Unit(
        symbol="tael-cn", grams=Fraction(50), name="Chinese tael since 1959", system="tael-cn",
        source="one trade page",
    ),
    Unit(
        symbol="baht", grams=Fraction("15.244"), name="baht of bullion", system="baht",
        source="Thai gold trade, two trade pages",
    ),
    Unit(
        symbol="baht-j", grams=Fraction("15.16"), name="baht of made-up jewellery",
        system="baht-j", source="Thai gold trade, from memory",
    ),
    Unit(
        symbol="mesghal", grams=Fraction("4.6083"), name="mesghal of Iran", system="mesghal",
        source="one trade page",
    ),
    Unit(
        symbol="zolotnik-wt", grams=Fraction("409.51241") / 96, name="zolotnik as a weight",
        system="zolotnik", source="Russian law of 1899, from memory; GNU Units has 12 ppm more",
    ),
    Unit(
        symbol="pearl-gr", grams=Fraction(1, 20), name="pearl grain", system="pearl",
        source="a quarter of the carat, from memory",
    ),
)  # fmt: skip

_BY_WORD: dict[str, Unit] = {word: u for u in UNITS for word in (u.symbol, *u.spellings)}

# words that name several units: what to write instead
_AMBIGUOUS = {
    "tael": "write tael-hk, tael-hk-j, tael-tw, tael-cn or grams: the tael differs by country",
    "zolotnik": "write zolotnik-wt or grams; for a fineness use the fineness field",
    "loth": "write grams: the loth differs by town and year",
    "lot": "write grams: the loth differs by town and year",
    "kt": "write ct for stones; a karat is a fineness",
    "k": "write kg or g; a karat is a fineness",
}


def unit_of(word: str, text: str = "", place: int | None = None) -> Unit:
    """The unit that a word names; ``text`` and ``place`` go into the error.

    Raises:
        QuantityError: no unit, or more than one, goes by that name.

    >>> unit_of("Troy oz.").symbol
    'ozt'
    """
    key = " ".join(re.sub(r"[.()]", " ", word.lower()).split())
    if key in _BY_WORD:
        return _BY_WORD[key]
    text = text or word
    shown = word.strip()
    if key in _AMBIGUOUS:
        fault = f"'{shown}' is no single unit of weight"
        raise QuantityError("weight", text, fault, _AMBIGUOUS[key], place)
    fault = f"unit '{shown}' is not known" if key else "the unit is missing"
    remedy = "write g, kg, mg, ozt, dwt, gr, oz, lb, lbt or ct"
    raise QuantityError("weight", text, fault, remedy, place)
