"""Comparables as found: one sale or offer each, with what its price includes."""

from collections.abc import Mapping
from decimal import Decimal
from enum import StrEnum
from typing import Self

import msgspec

from planish.quantity import Money, QuantityError, UncertainDate
from planish.quantity.numbers import Number, decimal
from planish.worth.rates import Rate

_WHAT = "comparable"


class Basis(StrEnum):
    """What a recorded price is. A price of one basis never stands beside another unconverted."""

    HAMMER = "hammer"
    WITH_PREMIUM = "with-premium"
    NET_TO_SELLER = "net-to-seller"
    RETAIL_ASKED = "retail-asked"
    RETAIL_PAID = "retail-paid"
    PRIVATE = "private"
    TRADE_PAID = "trade-paid"
    UNSOLD = "unsold"


class Adjustment(msgspec.Struct, frozen=True, kw_only=True):
    """One line between a comparable and the piece, by the appraiser.

    because: the difference, in words.
    factor: what the price is multiplied by; or
    amount: what is added, in the currency and on the basis of the opinion. Amounts go before
        factors, since the two do not commute.
    source: where the figure comes from: paired sales, own file, common practice, judgment.
    """

    because: str
    factor: Decimal | None = None
    amount: Money | None = None
    source: str

    def __post_init__(self) -> None:
        if (self.factor is None) == (self.amount is None):
            fault, remedy = "an adjustment needs one figure", "give either a factor or an amount"
            raise QuantityError("adjustment", self.because, fault, remedy)
        if self.factor is not None and not (self.factor.is_finite() and self.factor > 0):
            fault, remedy = "a factor is above zero", "write 0.9 for a tenth less"
            raise QuantityError("adjustment", self.because, fault, remedy)
        if not self.because.strip() or not self.source.strip():
            fault, remedy = "it has no reason or source", "say why, and where the figure is from"
            raise QuantityError("adjustment", self.because, fault, remedy)

    @classmethod
    def percent(cls, percent: Number, because: str, source: str) -> Self:
        """So many percent more, or less where negative.

        Raises:
            QuantityError: minus 100 percent or less.
        """
        return cls(because=because, factor=1 + decimal(percent) / 100, source=source)


class Comparable(msgspec.Struct, frozen=True, kw_only=True):
    """One sale or offer of a similar object, as recorded.

    id: unlike any other in the opinion.
    title: what was sold. lot: lot or stock number.
    date, venue: when, and where or by whom.
    price, basis: the recorded figure and what it is.
    premium: buyer's premium of that sale as a share of the hammer price; where left out, that of
        the conversions counts.
    rate: exchange rate of that date; where left out, the nearest of the conversions counts.
    weight: how much it counts beside the others; less for a doubtful or less similar one.
    attributes: measured traits, by name.
    adjustments: the appraiser's lines.
    """

    id: str
    title: str = ""
    lot: str = ""
    date: UncertainDate
    venue: str
    price: Money
    basis: Basis
    premium: Decimal | None = None
    rate: Rate | None = None
    weight: Decimal = Decimal(1)
    attributes: Mapping[str, float] = {}
    adjustments: tuple[Adjustment, ...] = ()
    note: str = ""

    def __post_init__(self) -> None:
        if self.price.amount <= 0:
            fault, remedy = f"its price {self.price} is not above zero", "leave it out or mend it"
            raise QuantityError(_WHAT, self.id, fault, remedy)
        if not (self.weight.is_finite() and self.weight > 0):
            fault, remedy = f"its weight {self.weight} is not above zero", "leave it out or mend it"
            raise QuantityError(_WHAT, self.id, fault, remedy)
        if self.premium is not None and not 0 <= self.premium < 1:
            fault = f"its buyer's premium {self.premium} is no share of the hammer price"
            raise QuantityError(_WHAT, self.id, fault, "write 0.25 for 25 %")
