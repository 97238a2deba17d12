"""What distinguishes one sale's object from another's: the attributes of a comparable."""

import math
from collections.abc import Mapping
from enum import StrEnum

import msgspec

from planish.quantity import Fineness, Mass, QuantityError, UncertainDate


class Attribution(StrEnum):
    """How the maker is given, from the strongest wording to the weakest."""

    MARKED = "marked"
    ATTRIBUTED = "attributed"
    WORKSHOP = "workshop"
    MANNER = "manner"
    UNKNOWN = "unknown"


class Metal(StrEnum):
    """What it is made of; only solid silver is weighed into a metal value."""

    SOLID = "solid"
    FILLED = "filled"
    FUSED_PLATE = "fused-plate"
    ELECTROPLATE = "electroplate"
    OTHER = "other"


class Engraving(StrEnum):
    """Owners' initials and arms."""

    NONE = "none"
    INITIALS = "initials"
    CREST = "crest"
    ARMORIAL = "armorial"
    PRESENTATION = "presentation"
    ERASED = "erased"
    LATER = "later"


class Grouping(StrEnum):
    """What the lot is as a whole."""

    SINGLE = "single"
    PAIR = "pair"
    SET = "set"
    SERVICE = "service"
    ASSEMBLED = "assembled"
    MIXED = "mixed"


class Provenance(StrEnum):
    """Former owners, from none told to proved by papers."""

    NONE = "none"
    TOLD = "told"
    NAMED = "named"
    DOCUMENTED = "documented"


class Fault(StrEnum):
    """What was done to it or is wrong with it; several may hold."""

    REPAIRED = "repaired"
    SPLIT = "split"
    WORN = "worn"
    REPLACED_PART = "replaced-part"
    MISSING_PART = "missing-part"
    LATER_DECORATION = "later-decoration"
    CONVERTED = "converted"
    RUBBED_MARKS = "rubbed-marks"
    PART_MARKED = "part-marked"


#: grades of condition: 0 poor, 1 fair, 2 good, 3 very good, 4 fine
CONDITIONS = ("poor", "fair", "good", "very good", "fine")


class Traits(msgspec.Struct, frozen=True, kw_only=True):
    """Attributes of the object sold; None, or no text, is not known and is never taken for none.

    form, maker, pattern, style, place: words; style is a period or reign in words, place the town
        of its marks. made: when. condition: 0 to 4 (``CONDITIONS``). pieces: how many objects.
    gross, net: weight as weighed, and without what is not silver.
    """

    form: str = ""
    maker: str = ""
    attribution: Attribution | None = None
    pattern: str = ""
    style: str = ""
    made: UncertainDate | None = None
    place: str = ""
    metal: Metal | None = None
    fineness: Fineness | None = None
    gross: Mass | None = None
    net: Mass | None = None
    condition: int | None = None
    engraving: Engraving | None = None
    faults: tuple[Fault, ...] = ()
    pieces: int | None = None
    grouping: Grouping | None = None
    provenance: Provenance | None = None

    def __post_init__(self) -> None:
        for name in ("gross", "net"):
            mass = getattr(self, name)
            if mass is not None and mass.grams <= 0:
                fault, remedy = "a weight is above zero", "correct it, or leave it empty"
                raise QuantityError(f"{name} weight", mass.written(), fault, remedy)
        if self.gross and self.net and self.net > self.gross:
            fault = f"the net weight is more than the gross of {self.gross.written()}"
            raise QuantityError("net weight", self.net.written(), fault, "look which is which")
        if self.condition is not None and not 0 <= self.condition < len(CONDITIONS):
            remedy = f"write 0 to 4 or one of {', '.join(CONDITIONS)}"
            raise QuantityError("condition", self.condition, "there is no such grade", remedy)
        if self.pieces is not None and not 1 <= self.pieces <= 100_000:
            fault, remedy = "no number of pieces", "count them, 1 or more"
            raise QuantityError("pieces", self.pieces, fault, remedy)

    @property
    def fine(self) -> Mass | None:
        """Pure silver in it; None where net weight or fineness is not known, or it is not solid.

        Plate and filled pieces have none that weighing tells.
        """
        if self.net is None or self.fineness is None or self.metal not in (None, Metal.SOLID):
            return None
        return self.net * self.fineness.share

    @property
    def known(self) -> int:
        """How many attributes are filled in."""
        return sum(getattr(self, f) not in (None, "", ()) for f in self.__struct_fields__)

    def numbers(self) -> Mapping[str, float]:
        """Attributes that are measured, by name; what is not known is left out.

        ``ln net g`` and ``ln pieces`` are natural logarithms, so that a rate on them is an
        elasticity; ``made`` is the middle year / 100; engraving and faults are 0 or 1.
        """
        found: dict[str, float] = {}
        if self.net:
            found["ln net g"] = math.log(float(self.net.grams))
        if self.pieces:
            found["ln pieces"] = math.log(self.pieces)
        if self.condition is not None:
            found["condition"] = float(self.condition)
        if self.made and self.made.earliest and self.made.latest:
            found["made"] = (self.made.earliest.year + self.made.latest.year) / 200
        if self.engraving is not None:
            found["engraved"] = float(self.engraving is not Engraving.NONE)
        for fault in self.faults:
            found[fault.value] = 1.0
        return found
