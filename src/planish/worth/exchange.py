"""Exchange by the user's own dated table, each price at the time of its sale.

A price is brought into another currency at the rate of its own sale, and only then adjusted for
time; the other way round would count a currency's fall twice.
"""

import datetime as dt
import re
from collections.abc import Iterable, Mapping
from decimal import Decimal

import msgspec

from planish.quantity import QuantityError, UncertainDate
from planish.quantity.currencies import MINOR_UNITS
from planish.quantity.numbers import EXACT
from planish.worth.rates import Rate
from planish.worth.series import Read, Series

_HEADING = re.compile(r"([A-Za-z]{3})[_ ]per[_ ]([A-Za-z]{3})", re.IGNORECASE)


class Exchange(msgspec.Struct, frozen=True, kw_only=True):
    """Series of rates: (quote, base) to so many of quote for one of base."""

    series: Mapping[tuple[str, str], Series] = {}

    @classmethod
    def of(cls, tables: Iterable[Series]) -> "Exchange":
        """The series headed ``GBP_per_usd`` and the like; others are passed over.

        Raises:
            QuantityError: a heading names a currency that is not known.
        """
        found: dict[tuple[str, str], Series] = {}
        for series in tables:
            if match := _HEADING.fullmatch(series.name.strip()):
                quote, base = match[1].upper(), match[2].upper()
                for code in (quote, base):
                    if code not in MINOR_UNITS:
                        fault = f"currency '{code}' is not known"
                        raise QuantityError("exchange", series.name, fault, "write ISO 4217 codes")
                found[quote, base] = series
        return cls(series=found)

    def rate(self, base: str, quote: str, date: UncertainDate | dt.date) -> Rate:
        """Units of ``quote`` for one ``base`` at a date: straight, turned round, or by a third.

        date: of a sale, or a plain day: then the latest rate known on it.

        Raises:
            QuantityError: no such rate is in the table, or none near the date.
        """
        pair = f"{base} to {quote}"
        for first, second in self._ways(base, quote):
            factor, first_read = self._leg(*first, date)
            hows, sources = [first_read.how], [self._of(*first).source]
            if second is not None:
                more, second_read = self._leg(*second, date)
                factor = EXACT.multiply(factor, more)
                hows.append(second_read.how)
                sources.append(self._of(*second).source)
            source = f"{' and '.join(hows)}; {' and '.join(dict.fromkeys(sources))}"
            return Rate(base=base, quote=quote, rate=factor, date=first_read.day, source=source)
        known = ", ".join(sorted({code for key in self.series for code in key})) or "none"
        fault = f"no rate is given (there are rates of {known})"
        raise QuantityError("exchange", pair, fault, f"give a series {quote}_per_{base}")

    def _ways(
        self, base: str, quote: str
    ) -> Iterable[tuple[tuple[str, str], tuple[str, str] | None]]:
        if self._known(base, quote):
            yield (base, quote), None
            return
        for third in sorted({code for key in self.series for code in key}):
            if self._known(base, third) and self._known(third, quote):
                yield (base, third), (third, quote)
                return

    def _known(self, base: str, quote: str) -> bool:
        return (quote, base) in self.series or (base, quote) in self.series

    def _of(self, base: str, quote: str) -> Series:
        return self.series.get((quote, base)) or self.series[base, quote]

    def _leg(self, base: str, quote: str, date: UncertainDate | dt.date) -> tuple[Decimal, Read]:
        series = self._of(base, quote)
        read = series.at(date) if isinstance(date, UncertainDate) else series.known(date)
        if (quote, base) in self.series:
            return read.value, read
        return EXACT.divide(Decimal(1), read.value), read
