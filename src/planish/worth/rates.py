"""Exchange rates that the user gives, each with its date and source."""

import datetime as dt
from collections.abc import Iterable
from decimal import Decimal

import msgspec

from planish.quantity import QuantityError, UncertainDate
from planish.quantity.currencies import MINOR_UNITS
from planish.quantity.numbers import decimal

#: a rate further from the sale than this is told. Common practice: the month of the sale
FAR_DAYS = 45


class Rate(msgspec.Struct, frozen=True, kw_only=True):
    """``rate`` units of ``quote`` for one unit of ``base`` on ``date``."""

    base: str
    quote: str
    rate: Decimal
    date: dt.date
    source: str

    def __post_init__(self) -> None:
        pair = f"{self.base}/{self.quote}"
        for code in (self.base, self.quote):
            if code not in MINOR_UNITS:
                fault = f"currency '{code}' is not known"
                raise QuantityError("exchange rate", pair, fault, "write ISO 4217 codes")
        if not (self.rate.is_finite() and self.rate > 0):
            fault = f"{self.rate} is not above zero"
            raise QuantityError(
                "exchange rate", pair, fault, f"give {self.quote} for one {self.base}"
            )
        if not self.source.strip():
            fault, remedy = "it does not say where it was read", "name the source"
            raise QuantityError("exchange rate", pair, fault, remedy)

    def factor(self, base: str, quote: str) -> Decimal | None:
        """Units of ``quote`` for one ``base``, either way round; None for other currencies."""
        if (self.base, self.quote) == (base, quote):
            return self.rate
        if (self.base, self.quote) == (quote, base):
            return decimal(1) / self.rate
        return None

    def days_from(self, sale: UncertainDate) -> int:
        """Days between the rate and the nearest day on which the sale may have been."""
        if sale.earliest and self.date < sale.earliest:
            return (sale.earliest - self.date).days
        if sale.latest and self.date > sale.latest:
            return (self.date - sale.latest).days
        return 0


def nearest(rates: Iterable[Rate], base: str, quote: str, sale: UncertainDate) -> Rate | None:
    """The rate of that pair closest to the sale; None where there is none."""
    of_pair = [rate for rate in rates if rate.factor(base, quote) is not None]
    return min(of_pair, key=lambda r: (r.days_from(sale), r.date, r.rate), default=None)
