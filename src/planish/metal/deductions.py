"""What is not silver and comes off the gross weight, and where the bench must ask for it."""

import re
from decimal import Decimal
from enum import StrEnum

import msgspec

from planish.library.rows import Metal
from planish.metal.allowances import Allowance
from planish.quantity import Mass, Measured, QuantityError
from planish.quantity.numbers import decimal, rounded


class Kind(StrEnum):
    """What comes off."""

    STONE = "stone"
    STEEL = "steel"
    FILLER = "filler"
    WOOD = "wood"
    GLASS = "glass"
    OTHER = "other"


class Method(StrEnum):
    """How a deduction was found."""

    WEIGHED = "weighed"
    MEASURED = "measured"
    RULE_OF_THUMB = "rule of thumb"


def method_of(words: str) -> Method:
    """The method that free words name; a rule of thumb unless they say that it was done.

    >>> method_of("weighed apart"), method_of("guess")
    (<Method.WEIGHED: 'weighed'>, <Method.RULE_OF_THUMB: 'rule of thumb'>)
    """
    low = words.lower()
    if re.search(r"\b(not|un)\s*-?(weighed|measured)", low):
        return Method.RULE_OF_THUMB
    if re.search(r"\bweigh", low):
        return Method.WEIGHED
    if re.search(r"\bmeasure|\bcalculat", low):
        return Method.MEASURED
    return Method.RULE_OF_THUMB


class Deduction(msgspec.Struct, frozen=True, kw_only=True):
    """One thing that comes off: one figure, or limits between which it lies.

    kind, what: of what it is.
    mass: the figure; or ``low`` and ``high``.
    plus_minus: standard uncertainty of ``mass``.
    method: how it was found.
    source: who says so: a balance, a formula, a rule.
    A figure of nought says that there is nothing to take off, and why (``source``).
    """

    kind: Kind
    what: str
    mass: Mass | None = None
    plus_minus: Mass | None = None
    low: Mass | None = None
    high: Mass | None = None
    method: Method
    source: str

    def __post_init__(self) -> None:
        limits = self.low is not None and self.high is not None
        if (self.mass is not None) == limits or (self.low is None) != (self.high is None):
            fault, remedy = "it needs one figure", "give either mass, or low and high"
            raise QuantityError("deduction", self.what, fault, remedy)
        if self.low is not None and self.high is not None and self.low > self.high:
            fault = "the lower limit is above the upper one"
            raise QuantityError("deduction", self.what, fault, "put the smaller first")
        for mass in (self.mass, self.plus_minus, self.low):
            if mass is not None and mass.grams < 0:
                fault = "a deduction cannot be negative"
                raise QuantityError("deduction", self.what, fault, "take off the sign")
        if not self.source.strip():
            fault = "it does not say where the figure comes from"
            raise QuantityError("deduction", self.what, fault, "name the balance, formula or rule")

    @property
    def best(self) -> Mass:
        """The figure, or the middle of the limits."""
        if self.mass is not None:
            return self.mass
        return ((self.low or Mass.of(0)) + (self.high or Mass.of(0))) / 2


def by_share(
    gross: Mass, low: Decimal, high: Decimal, *, kind: Kind, what: str, source: str
) -> Deduction:
    """A deduction of a share of the gross weight, a rule of thumb.

    Raises:
        QuantityError: a share lies outside 0 to 1, or the limits are upside down.
    """
    if not 0 <= low <= high <= 1:
        fault = f"{low} to {high} are no limits of a share"
        raise QuantityError("deduction", what, fault, "give shares from 0 to 1, the smaller first")
    limits = {"low": gross * low, "high": gross * high}
    return Deduction(kind=kind, what=what, method=Method.RULE_OF_THUMB, source=source, **limits)


def by_allowance(
    gross: Mass, rule: Allowance, *, kind: Kind, what: str = "", count: int = 1
) -> Deduction:
    """All but the silver that a rule of thumb expects.

    Raises:
        QuantityError: the rule expects more silver than was weighed.
    """
    low, high = rule.silver(gross, count)
    pieces = rule.label if rule.share_low is not None else f"{count} x {rule.label}"
    return Deduction(
        kind=kind,
        what=what or f"all but the silver ({pieces})",
        low=gross - high,
        high=gross - low,
        method=Method.RULE_OF_THUMB,
        source=rule.source,
    )


def by_volume(
    volume: Measured, material: Metal, *, kind: Kind, what: str, how: str = ""
) -> Deduction:
    """A deduction by measurement: the volume of what is not silver times its density.

    volume: measured, by its dimensions or by what it displaces [cm³], with its uncertainty.
    material: a row of the library; its density lies anywhere between its limits alike.
    how: how the volume was found.

    Raises:
        QuantityError: the volume is not above zero.
    """
    if volume.value <= 0:
        fault, remedy = "a volume is above zero", "measure it again, in cm³"
        raise QuantityError("volume", volume.value, fault, remedy)
    density = Measured.between(material.low, material.high, "density")
    mass = volume * density
    limits = f"{material.low:g} to {material.high:g} g/cm³"
    sure = material.confidence.value if material.confidence.value != "memory" else "from memory"
    source = f"{volume.value:g} cm³ × {density.value:g} g/cm³, {material.name} ({limits}, {sure})"
    return Deduction(
        kind=kind,
        what=what,
        mass=Mass.of(_grams(mass.value)),
        plus_minus=Mass.of(_grams(mass.uncertainty)),
        method=Method.MEASURED,
        source=f"{source}; {how}" if how else source,
    )


def _grams(value: float) -> Decimal:
    """To the milligram: a reckoned figure is no surer."""
    return rounded(decimal(value), 3)


class Ask(msgspec.Struct, frozen=True, kw_only=True):
    """A deduction that is due and was not given.

    kind: what should come off.
    because: the words that make it due.
    says: the question.
    allowances: ids of the rules of thumb that may stand in, marked as such.
    """

    kind: Kind
    because: str
    says: str
    allowances: tuple[str, ...] = ()


class _Due(msgspec.Struct, frozen=True, kw_only=True):
    """When a deduction is due: words that call for it, and words that settle it."""

    kind: Kind
    words: str
    unless: str = r"(?!)"
    says: str
    allowances: tuple[str, ...] = ()


_STONES = (
    r"(?:stone|gem|turquoise|coral|amethyst|garnet|citrine|topaz|topaze|opal|lapis|malachite|agate"
    r"|carnelian|cornelian|jade|pearl|quartz|diamond|sapphire|emerald|marcasite|cabochon|cameo"
    r"|moonstone|bloodstone)s?|onyx|amber|ruby|rubies|paste|chalcedony|jet"
)

# Which pieces carry what: common practice. That filled candlesticks, and knives with blades of
# steel, must not be entered at gross weight is also said by the trade columns behind ``allowances``.
_DUE: tuple[_Due, ...] = (
    _Due(
        kind=Kind.FILLER,
        words=r"weighted|loaded|cement|(?<!gold[ -])filled|reinforced|pitch|candlesticks?|candelabr\w+",
        unless=r"\b(?:not|never|un)[ -]?(?:weighted|loaded|filled)|\bsolid cast\b|\bcast solid\b",
        says="is it filled? take off pitch, cement, plaster and rods, or say that there are none",
        allowances=("candlestick-low", "candlestick-tall", "candelabrum", "compote", "shaker"),
    ),
    _Due(
        kind=Kind.STEEL,
        words=(
            r"knife|knives|spreaders?|carving|canteen|flatware service|cutlery|stainless"
            r"|steel|hollow[ -]handled?"
        ),
        unless=r"\ball[ -]silver\b|\bsilver blades?\b",
        says="take off blades of steel and the cement in hollow handles, or say that all is silver",
        allowances=("knife", "spreader", "carving", "server"),
    ),
    _Due(
        kind=Kind.OTHER,
        words=r"hair ?brush|clothes ?brush|brush|hand mirror|mirror|comb|dresser set",
        says="take off bristles, glass, backing and filler",
        allowances=("dresser",),
    ),
    _Due(
        kind=Kind.STONE,
        words=_STONES,
        says="take off the stones: weighed apart, or reckoned from their measurements",
    ),
    _Due(
        kind=Kind.WOOD,
        words=r"wood|wooden|ebony|ebonised|fruitwood|rosewood|treen|ivory|bone|horn|mother[ -]of[ -]pearl",
        says="take off handles, finials, feet and scales that are not silver",
    ),
    _Due(
        kind=Kind.GLASS,
        words=r"glass|crystal|porcelain|ceramic",
        says="take off liners and vessels of glass or ceramic",
    ),
)  # fmt: skip

# further words by which a thing that is named comes to its kind; common practice
_KINDS: tuple[tuple[Kind, str], ...] = (
    (Kind.STEEL, r"steel|blades?|iron|tines?|knife|knives|spreaders?|carving|servers?"),
    (Kind.FILLER, r"filler|fill(?:ed|ing)?|pitch|cement|plaster|resin|wax|sand|rods?|core|lead"),
    (Kind.FILLER, r"weight\w*|candle\w+|compotes?|shakers?"),
    (Kind.GLASS, r"glass|crystal|porcelain|ceramic|mirror|enamel"),
    (Kind.WOOD, r"wood\w*|ebony|ivory|bone|horn|handles?|buttons?|finials?|scales"),
    (Kind.STONE, _STONES),
)  # fmt: skip


def kind_of(words: str) -> Kind:
    """The kind of what comes off, by words for it; ``other`` where none is known.

    >>> kind_of("steel blades"), kind_of("cabochon of turquoise"), kind_of("felt")
    (<Kind.STEEL: 'steel'>, <Kind.STONE: 'stone'>, <Kind.OTHER: 'other'>)
    """
    low = words.casefold()
    return next((k for k, w in _KINDS if re.search(rf"\b(?:{w})\b", low)), Kind.OTHER)


# "no stones", "without glass": that word does not make a deduction due
_DENIED = re.compile(r"\b(?:no|not|without|lacks|lacking)\s+\w+(?:\s+(?:or|nor)\s+\w+)*")


def asks_for(words: str, deductions: tuple[Deduction, ...]) -> tuple[Ask, ...]:
    """Deductions that the words of a piece (form, marks, materials) call for and that are missing.

    A filler deduction by rule of thumb takes off everything that is not silver, so a joined piece
    (steel and cement) is settled by either kind.

    >>> [a.kind.value for a in asks_for("pair of candlesticks, STERLING WEIGHTED", ())]
    ['filler']
    """
    low = " ".join(words.lower().split())
    kept = _DENIED.sub(" ", low)
    given = {d.kind for d in deductions}
    if given & {Kind.STEEL, Kind.FILLER}:
        given |= {Kind.STEEL, Kind.FILLER}
    asks = []
    for due in _DUE:
        found = re.search(rf"\b(?:{due.words})\b", kept)
        if found and due.kind not in given and not re.search(due.unless, low):
            asks.append(
                Ask(kind=due.kind, because=found[0], says=due.says, allowances=due.allowances)
            )
    return tuple(asks)
