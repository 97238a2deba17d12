"""Metal prices over time, read from the text of a CSV table: day by day or month by month.

A quotation counts from the day on which it was known: a month's average from the last day of that
month. So no price from after the effective date enters, not even within an average.
"""

import calendar
import csv
import datetime as dt
import io
import re
from bisect import bisect_right
from decimal import Decimal

import msgspec

from planish.metal.value import STALE_DAYS, MetalPrice
from planish.quantity import Money, QuantityError
from planish.quantity.numbers import NUMBER, decimal, read
from planish.quantity.units import unit_of

#: days after which the last monthly average is old: the next one is then overdue (judgment)
STALE_MONTHLY = 45
#: lines longer than this many are no table of prices
MOST = 200_000

_DATES = ("date", "day", "month", "period", "year-month")
_PRICES = ("price", "fix", "close", "value")
_PER = ("per", "unit")
# silver_usd_per_ozt
_NAMED = re.compile(r"(?P<metal>\w*?)_?(?P<currency>[a-z]{3})_per_(?P<per>[a-z]+)", re.IGNORECASE)
_MONTH = re.compile(r"(\d{4})-(\d{2})")


class Quote(msgspec.Struct, frozen=True, order=True):
    """A quotation: the day from which it is known, and the price."""

    date: dt.date
    price: Decimal


class PriceSeries(msgspec.Struct, frozen=True, kw_only=True):
    """Prices in order of date.

    currency, per: of every price. monthly: averages of months, else quotations of days.
    source: where the table comes from. skipped: lines without a price.
    """

    quotes: tuple[Quote, ...]
    currency: str
    per: str
    monthly: bool
    source: str
    skipped: int = 0

    @property
    def stale_days(self) -> int:
        """Days after which its newest price is old."""
        return STALE_MONTHLY if self.monthly else STALE_DAYS

    def at(self, day: dt.date) -> MetalPrice:
        """The latest price known on a day.

        Raises:
            QuantityError: the series begins later.
        """
        n = bisect_right([q.date for q in self.quotes], day)
        if not n:
            first = self.quotes[0].date
            fault = f"the prices begin on {first}, after {day}"
            raise QuantityError("metal price", str(day), fault, "give an older table, or a price")
        quote = self.quotes[n - 1]
        return MetalPrice(
            price=Money.of(quote.price, self.currency),
            per=self.per,
            date=quote.date,
            source=self.source,
            quoted="average of the month" if self.monthly else "",
        )


def read_series(
    text: str,
    *,
    source: str,
    column: str | None = None,
    currency: str | None = None,
    per: str | None = None,
) -> PriceSeries:
    """The prices in the text of a CSV table with a header line.

    It needs a column of dates (``date``, ``day`` or ``month``; 2026-05-14 or 2026-05) and one of
    prices: ``column``, else ``price``. Currency and unit come from columns of those names, from a
    heading such as ``silver_usd_per_ozt``, or from ``currency`` and ``per``. Cells left blank are
    passed over; everything else that cannot be read is a fault of its line.

    Raises:
        QuantityError: a column is missing, a line cannot be read, or the table mixes currencies,
            units, or days and months.
    """
    lines = [s for s in io.StringIO(text.lstrip("\ufeff")) if not s.startswith("#")]
    if len(lines) > MOST:
        raise _fault(source, f"more than {MOST:,} lines", "give the silver prices only")
    reader = csv.DictReader(lines)
    heads = {(h or "").strip().casefold(): h for h in reader.fieldnames or ()}
    dates = next((heads[h] for h in _DATES if h in heads), None)
    if dates is None:
        raise _fault(source, "no column of dates", "head it date or month")
    prices = _column(heads, column, source)
    named = _NAMED.fullmatch(prices.strip())
    unit_at = next((heads[h] for h in _PER if h in heads), None)
    found: dict[dt.date, Decimal] = {}
    said: set[tuple[str, str]] = set()
    kinds: set[bool] = set()
    skipped = 0
    for row in reader:
        at = f"{source}, line {reader.line_num}"
        cell = (row.get(prices) or "").strip()
        if not cell:
            skipped += 1
            continue
        day, monthly = _day((row.get(dates) or "").strip(), at)
        price = _price(cell, at)
        if found.get(day, price) != price:
            raise _fault(at, f"a second price for {row[dates]}", "keep one")
        found[day] = price
        kinds.add(monthly)
        money = currency or (row.get(heads.get("currency", "")) or "").strip()
        unit = per or ((row.get(unit_at) or "").strip() if unit_at else "")
        if named:
            money, unit = money or named["currency"], unit or named["per"]
        said.add((money, unit))
    if not found:
        raise _fault(source, f"no price in column {prices}", "check the table")
    if len(kinds) > 1:
        raise _fault(source, "days and months are mixed", "keep to one of them")
    if len(said) > 1:
        raise _fault(source, "it mixes currencies or units", "keep to one of each")
    money, unit = said.pop()
    if not money or not unit:
        lacking = "currency" if not money else "unit of mass"
        raise _fault(source, f"its {lacking} is not named", "give it, like USD per ozt")
    Money.of(1, money.upper())
    return PriceSeries(
        quotes=tuple(Quote(d, p) for d, p in sorted(found.items())),
        currency=money.upper(),
        per=unit_of(unit).symbol,
        monthly=kinds.pop(),
        source=source,
        skipped=skipped,
    )


def _fault(where: str, fault: str, remedy: str) -> QuantityError:
    return QuantityError("metal prices", where, fault, remedy)


def _column(heads: dict[str, str], asked: str | None, source: str) -> str:
    if asked is not None:
        if asked.strip().casefold() in heads:
            return heads[asked.strip().casefold()]
        raise _fault(source, f"no column '{asked}'", f"choose one of: {', '.join(heads.values())}")
    for head in _PRICES:
        if head in heads:
            return heads[head]
    named = [h for h in heads.values() if _NAMED.fullmatch(h.strip())]
    if len(named) == 1:
        return named[0]
    silver = [h for h in named if h.strip().casefold().startswith("silver")]
    if len(silver) == 1:
        return silver[0]
    raise _fault(source, "no column of prices", "head it price, or name the column")


def _day(cell: str, at: str) -> tuple[dt.date, bool]:
    """The day from which a quotation is known, and whether it is of a month."""
    month = _MONTH.fullmatch(cell)
    try:
        if month:
            year, number = int(month[1]), int(month[2])
            return dt.date(year, number, calendar.monthrange(year, number)[1]), True
        return dt.date.fromisoformat(cell), False
    except ValueError:
        raise _fault(at, f"'{cell}' is no date", "write 2026-05-14 or 2026-05") from None


def _price(cell: str, at: str) -> Decimal:
    if not re.fullmatch(NUMBER, cell):
        raise _fault(at, f"'{cell}' is no price", "write a figure above nought, like 30.25")
    price = decimal(read(cell, "price"))
    if price <= 0:
        raise _fault(at, "a price is above zero", "correct it, or leave the cell blank")
    return price
