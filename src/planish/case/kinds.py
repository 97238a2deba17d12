"""Kinds of text that stand in a case file, and the words that may be chosen.

A quantity stands in the file as its owner typed it ("2 ozt 5 dwt", "USD 120", "1884~") and is kept
so, because the report quotes it; ``load`` checks that it can be read. ``Meta.extra["kind"]`` says
how, so one walk over the structs checks every quantity.
"""

from enum import StrEnum
from typing import Annotated

import msgspec

#: text of some length: never empty, never a pasted book
Text = Annotated[str, msgspec.Meta(min_length=1, max_length=20_000)]

MassText = Annotated[
    str,
    msgspec.Meta(
        description="A mass with its unit.",
        examples=["412.6 g", "2 ozt 5 dwt", "13.27 ozt"],
        extra={"kind": "mass"},
    ),
]
MoneyText = Annotated[
    str,
    msgspec.Meta(
        description="An amount after its ISO 4217 currency code.",
        examples=["USD 120", "GBP 1,450.00"],
        extra={"kind": "money"},
    ),
]
DateText = Annotated[
    str,
    msgspec.Meta(
        description="A day, month or year in ISO 8601 order.",
        examples=["2026-05-14", "2026-05"],
        extra={"kind": "date"},
    ),
]
EdtfText = Annotated[
    str,
    msgspec.Meta(
        description="A date that may be uncertain: Extended Date/Time Format (ISO 8601-2).",
        examples=["1884", "1884~", "1820/1830", "188X"],
        extra={"kind": "edtf"},
    ),
]
LengthText = Annotated[
    str,
    msgspec.Meta(
        description="A length with its unit: mm, cm, m or in.",
        examples=["14.2 cm", "5.5 in"],
        extra={"kind": "length"},
    ),
]
CurrencyCode = Annotated[
    str,
    msgspec.Meta(description="An ISO 4217 code.", examples=["USD", "GBP"], pattern="^[A-Z]{3}$"),
]
CountryCode = Annotated[
    str,
    msgspec.Meta(description="ISO 3166 alpha-2.", examples=["GB", "US"], pattern="^[A-Z]{2}$"),
]
Fineness = Annotated[
    float,
    msgspec.Meta(
        description="Fineness in parts per thousand.",
        ge=0,
        le=1000,
        examples=[925],
        extra={"kind": "fineness"},
    ),
]
Content = Annotated[
    float,
    msgspec.Meta(
        description="Silver found by a test, in parts per thousand.",
        ge=0,
        le=1000,
        examples=[921],
        extra={"kind": "content"},
    ),
]
#: years that a piece may be of
EARLIEST, LATEST = 1000, 2200
Year = Annotated[
    int,
    msgspec.Meta(
        description="A calendar year.",
        ge=EARLIEST,
        le=LATEST,
        examples=[1884],
        extra={"kind": "year"},
    ),
]
Share = Annotated[
    float, msgspec.Meta(description="A share between 0 and 1.", ge=0, le=1, examples=[0.85])
]
Weighting = Annotated[float, msgspec.Meta(description="Above 0, at most 1.", gt=0, le=1)]
Count = Annotated[int, msgspec.Meta(ge=1, le=100_000)]


class TypeOfValue(StrEnum):
    """The named type of value of the whole case; the report prints the definition given with it."""

    FAIR_MARKET = "fair market value"
    MARKET = "market value"
    RETAIL_REPLACEMENT = "retail replacement value"
    ORDERLY_LIQUIDATION = "orderly liquidation value"
    FORCED_LIQUIDATION = "forced liquidation value"
    SCRAP = "scrap value"
    BUYING_PRICE = "dealer's buying price"


class ReportOption(StrEnum):
    """Which kind of report is written: the two of USPAP Standard 8, or one that states no value."""

    APPRAISAL = "appraisal report"
    RESTRICTED = "restricted appraisal report"
    IDENTIFICATION = "identification"


class MarketLevel(StrEnum):
    """The level of trade at which the price is asked."""

    AUCTION = "auction"
    DEALER_RETAIL = "dealer retail"
    PRIVATE_SALE = "private sale"
    DEALER_BUYING = "dealer buying"
    SCRAP = "scrap"


class TaxPurpose(StrEnum):
    """The tax use of a report, if any."""

    GIFT_TO_CHARITY = "gift to charity"
    ESTATE = "estate"
    GIFT = "gift"
    CAPITAL_GAIN = "capital gain"
    OTHER = "other"


class Belonging(StrEnum):
    """How a part belongs to its piece."""

    ORIGINAL = "original"
    REPLACED = "replaced"
    ASSOCIATED = "associated"
    UNSURE = "unsure"


class ProvenanceGrade(StrEnum):
    """How well a statement of provenance is supported."""

    DOCUMENTED = "documented"
    STATED = "stated by the owner"
    TRADITION = "family tradition"


class Shows(StrEnum):
    """What a photograph is for."""

    WHOLE = "whole"
    MARKS = "marks"
    DAMAGE = "damage"
    DETAIL = "detail"
    PAPER = "paper"


class DeductionKind(StrEnum):
    """What comes off the gross weight."""

    STONE = "stone"
    STEEL = "steel"
    FILLER = "filler"
    WOOD = "wood"
    GLASS = "glass"
    OTHER = "other"


class TestKind(StrEnum):
    """A test of the metal."""

    __test__ = False  # pytest would collect a class of this name

    MAGNET = "magnet"
    DENSITY = "density"
    TOUCH = "touch"
    XRF = "xrf"
    SOUND = "sound"
    OTHER = "other"


class ReadingKind(StrEnum):
    """What a piece is, by its reading."""

    SOLID = "solid"
    PLATED = "plated"
    BASE = "base"
    UNKNOWN = "unknown"


class Approach(StrEnum):
    """The approach to value that an opinion rests on."""

    SALES_COMPARISON = "sales comparison"
    COST = "cost"
    INCOME = "income"
    METAL = "metal content"


class Table(
    msgspec.Struct, frozen=True, kw_only=True, omit_defaults=True, forbid_unknown_fields=True
):
    """A table of the file: keys that are not known are refused, not ignored."""
