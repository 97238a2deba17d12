"""Dated series that the user gives: exchange rates, metal prices, price indices; by day or by month.

Which value counts for a date:

    series by month   the month of the date; where the table has none, the nearest month with a
                      value, two months away at most, the earlier one where two are as near
    series by day     the day; else the last day before it with a value, seven days back at most
    a vague date      the mean over the months (or days) that it spans, one year at most
    an effective date the latest value known on it: a month's average is known when it has ended

What lies further away is refused: nothing is carried on or guessed.
"""

import csv
import datetime as dt
import io
import re
from bisect import bisect_right
from collections.abc import Mapping
from decimal import Decimal, InvalidOperation

import msgspec

from planish.quantity import QuantityError, UncertainDate
from planish.quantity.numbers import EXACT, digits

FAR_MONTHS, FAR_DAYS, LONGEST_DAYS = 2, 7, 366
_DATES = ("month", "date", "day", "period")
_MOST = 500_000


class Read(msgspec.Struct, frozen=True, kw_only=True):
    """A value of a series for a date. how: which entry it is, in words; day: one of its days."""

    value: Decimal
    how: str
    day: dt.date


class Series(msgspec.Struct, frozen=True, kw_only=True):
    """One column of a table. points: value by month (its first day) or day, in order of time."""

    name: str
    source: str
    monthly: bool
    points: tuple[tuple[dt.date, Decimal], ...]

    def at(self, date: UncertainDate) -> Read:
        """The value for a date, by the rule above.

        Raises:
            QuantityError: there is none near enough, or the date spans over a year.
        """
        first, last = date.earliest, date.latest
        if first is None or last is None or (last - first).days >= LONGEST_DAYS:
            fault = "the date is too vague for a value of its time"
            raise QuantityError(self.name, date, fault, "give the month or the day")
        found = self._month(first, last, date) if self.monthly else self._day(first, last, date)
        return self._mean(found, first)

    def known(self, day: dt.date) -> Read:
        """The latest value known on a day: a month's counts from its last day on.

        So nothing from after an effective date enters, not even within an average.

        Raises:
            QuantityError: the latest known is of over ``FAR_MONTHS`` or ``FAR_DAYS`` before.
        """
        date = UncertainDate(day.isoformat())
        ended = day.replace(day=1) if (day + dt.timedelta(days=1)).day != 1 else day
        before = [p for p in self.points if (p[0] < ended if self.monthly else p[0] <= day)]
        if before and self.monthly and _months(day) - _months(before[-1][0]) <= FAR_MONTHS:
            return self._mean(before[-1:], day)
        if before and not self.monthly and (day - before[-1][0]).days <= FAR_DAYS:
            return self._mean(before[-1:], day)
        raise self._missing(date)

    def _month(
        self, first: dt.date, last: dt.date, date: UncertainDate
    ) -> list[tuple[dt.date, Decimal]]:
        low = first.replace(day=1)
        inside = self._between(low, last)
        if inside:
            return inside
        near = [
            (abs(_months(d) - _months(low)), d, v)
            for d, v in self.points
            if abs(_months(d) - _months(low)) <= FAR_MONTHS
        ]
        if not near:
            raise self._missing(date)
        _, day, value = min(near)
        return [(day, value)]

    def _day(
        self, first: dt.date, last: dt.date, date: UncertainDate
    ) -> list[tuple[dt.date, Decimal]]:
        inside = self._between(first, last)
        if inside:
            return inside
        n = bisect_right(self.points, (last, Decimal("Infinity")))
        if not n or (first - self.points[n - 1][0]).days > FAR_DAYS:
            raise self._missing(date)
        return [self.points[n - 1]]

    def _between(self, low: dt.date, high: dt.date) -> list[tuple[dt.date, Decimal]]:
        start = bisect_right(self.points, (low, Decimal("-Infinity")))
        end = bisect_right(self.points, (high, Decimal("Infinity")))
        return list(self.points[start:end])

    def _mean(self, found: list[tuple[dt.date, Decimal]], day: dt.date) -> Read:
        total = Decimal(0)
        for _, one in found:
            total = EXACT.add(total, one)
        value = EXACT.divide(total, Decimal(len(found)))
        form = "%Y-%m" if self.monthly else "%Y-%m-%d"
        names = [f"{d:{form}}" for d, _ in (found[0], found[-1])]
        how = f"{self.name} of {names[0]}"
        if len(found) > 1:
            unit = "months" if self.monthly else "days"
            how = f"mean of {self.name} over {len(found)} {unit}, {names[0]} to {names[1]}"
        # a month's value stands for every day of it
        inside = self.monthly and any(_months(d) == _months(day) for d, _ in found)
        return Read(value=value, how=how, day=day if inside else found[0][0])

    def _missing(self, date: UncertainDate) -> QuantityError:
        ends = f"{self.points[0][0]:%Y-%m} to {self.points[-1][0]:%Y-%m}"
        fault = f"the table has no value near this date (it runs from {ends})"
        return QuantityError(self.name, date, fault, f"add it to {self.source}")


def _months(day: dt.date) -> int:
    return day.year * 12 + day.month


def read_series(text: str, source: str) -> Mapping[str, Series]:
    """Every column of figures in the text of a CSV table, by its heading.

    The column of dates is headed month, date, day or period, and holds 2026-05 or 2026-05-14, one
    kind throughout. Empty cells are passed over. source: what the table is called.

    Raises:
        QuantityError: it has no dates, a line cannot be read, or a figure is not above zero.
    """
    lines = [s for s in io.StringIO(text.removeprefix("\ufeff")) if not s.startswith("#")]
    if len(lines) > _MOST:
        raise _fault(source, f"more than {_MOST:,} lines", "part it")
    sign = max(",;\t", key=lines[0].count) if lines else ","
    reader = csv.reader(lines, delimiter=sign)
    header = [h.strip() for h in next(reader, [])]
    low = [h.casefold() for h in header]
    at = next((low.index(d) for d in _DATES if d in low), None)
    if at is None:
        raise _fault(source, "no column of dates", "head it month or date")
    if len(set(low)) < len(low):
        raise _fault(source, "two columns bear one heading", "rename one")
    found: dict[str, dict[dt.date, Decimal]] = {h: {} for n, h in enumerate(header) if n != at}
    kinds: dict[bool, str] = {}
    for cells in reader:
        if not any(cells):
            continue
        where = f"{source}, line {reader.line_num}"
        padded = [c.strip() for c in cells] + [""] * len(header)
        day, monthly = _date(padded[at], where)
        kinds.setdefault(monthly, where)
        if len(kinds) > 1:
            raise _fault(where, "days and months are mixed", "keep to one of them")
        for n, name in enumerate(header):
            if n != at and padded[n]:
                if day in found[name]:
                    raise _fault(where, f"a second value for {padded[at]}", "keep one")
                found[name][day] = _value(padded[n], name, where)
    filled = {name: values for name, values in found.items() if values}
    if not filled:
        raise _fault(source, "no figures in it", "give a column of figures beside the dates")
    return {
        name: Series(
            name=name,
            source=source,
            monthly=True in kinds,
            points=tuple(sorted(values.items())),
        )
        for name, values in filled.items()
    }


def _date(text: str, where: str) -> tuple[dt.date, bool]:
    try:
        if re.fullmatch(r"\d{4}-\d{2}", text):
            return dt.date.fromisoformat(f"{text}-01"), True
        return dt.date.fromisoformat(text), False
    except ValueError:
        raise _fault(where, f"'{text}' is no date", "write 2026-05 or 2026-05-14") from None


def _value(text: str, name: str, where: str) -> Decimal:
    try:
        value = Decimal(text)
    except InvalidOperation:
        value = Decimal("NaN")
    if not value.is_finite() or value <= 0:
        fault = f"'{text[:20]}' in column {name} is no figure above zero"
        raise _fault(where, fault, "write it with a decimal point, or leave it empty")
    return value


def _fault(where: str, fault: str, remedy: str) -> QuantityError:
    return QuantityError("series", where, fault, remedy)


def as_csv(series: Series) -> str:
    """The series as a table that ``read_series`` reads back."""
    form, head = ("%Y-%m", "month") if series.monthly else ("%Y-%m-%d", "date")
    rows = [f"{day:{form}},{digits(value)}" for day, value in series.points]
    return "\n".join([f"{head},{series.name}", *rows]) + "\n"
