"""The grid: each comparable on the piece's terms, every line shown.

    adjusted = (price x factors of basis and currency + amounts) x factors of adjustment

The order is part of the method: an amount and a factor do not commute.
"""

import math
from collections.abc import Iterable
from decimal import Decimal
from itertools import pairwise

import msgspec

from planish.quantity import Money, QuantityError
from planish.quantity.numbers import EXACT
from planish.worth.comparables import Adjustment, Basis, Comparable
from planish.worth.levels import Conversions, Step, Unconverted, basis_steps, currency_steps


class Row(msgspec.Struct, frozen=True, kw_only=True):
    """One comparable in the grid.

    price: as recorded. steps: to the opinion's basis and currency.
    amounts, factors: the appraiser's adjustments, in the order in which they work.
    adjusted: the price on the piece's terms, exact.
    """

    comparable: Comparable
    steps: tuple[Step, ...]
    amounts: tuple[Adjustment, ...]
    factors: tuple[Adjustment, ...]
    adjusted: Money

    @property
    def normalised(self) -> Money:
        """The price on the opinion's basis and in its currency, before adjustment."""
        return Money(_times(self.comparable.price.amount, self.steps), self.adjusted.currency)

    @property
    def net(self) -> float:
        """Net adjustment: adjusted over normalised price, less one."""
        return float(self.adjusted / self.normalised) - 1

    @property
    def gross(self) -> float:
        """Gross adjustment: sum of the sizes of all adjustments as natural logarithms."""
        here, sizes = self.normalised.amount, []
        for line in self.amounts:
            after = EXACT.add(here, line.amount.amount if line.amount else Decimal(0))
            sizes.append(abs(math.log(float(after / here))))
            here = after
        sizes += [abs(math.log(float(line.factor or 1))) for line in self.factors]
        return math.fsum(sizes)


class LeftOut(msgspec.Struct, frozen=True, kw_only=True):
    """A comparable that is not used, and why."""

    comparable: Comparable
    because: str


class Grid(msgspec.Struct, frozen=True, kw_only=True):
    """Rows in order of their ids, those left out, and warnings."""

    rows: tuple[Row, ...] = ()
    left_out: tuple[LeftOut, ...] = ()
    warnings: tuple[str, ...] = ()


def build(
    comparables: Iterable[Comparable], basis: Basis, currency: str, given: Conversions
) -> Grid:
    """The grid on one basis and in one currency; the order of the comparables is of no account.

    Raises:
        QuantityError: two comparables bear one id, an amount is in another currency, or
            adjustments leave nothing of a price.
    """
    ordered = sorted(comparables, key=lambda c: c.id)
    for one, other in pairwise(ordered):
        if one.id == other.id:
            fault, remedy = "two comparables bear this id", "give each an id of its own"
            raise QuantityError("comparable", one.id, fault, remedy)
    rows: list[Row] = []
    left_out: list[LeftOut] = []
    warnings: list[str] = []
    for comparable in ordered:
        try:
            steps = basis_steps(comparable, basis, given)
            exchange, more = currency_steps(comparable, currency, given)
        except Unconverted as why:
            left_out.append(LeftOut(comparable=comparable, because=str(why)))
            continue
        rows.append(_row(comparable, (*steps, *exchange), currency))
        warnings += more
    return Grid(rows=tuple(rows), left_out=tuple(left_out), warnings=(*warnings, *_twins(rows)))


def _row(comparable: Comparable, steps: tuple[Step, ...], currency: str) -> Row:
    amounts = tuple(a for a in comparable.adjustments if a.amount is not None)
    factors = tuple(a for a in comparable.adjustments if a.factor is not None)
    worth = _times(comparable.price.amount, steps)
    for line in amounts:
        if line.amount is None or line.amount.currency != currency:
            fault = f"'{line.because}' is in another currency than {currency}"
            raise QuantityError(
                "comparable", comparable.id, fault, f"give the amount in {currency}"
            )
        worth = EXACT.add(worth, line.amount.amount)
    if worth <= 0:
        fault, remedy = "the amounts taken off leave nothing of its price", "check the adjustments"
        raise QuantityError("comparable", comparable.id, fault, remedy)
    for line in factors:
        worth = EXACT.multiply(worth, line.factor or Decimal(1))
    adjusted = Money(worth, currency)
    return Row(
        comparable=comparable, steps=steps, amounts=amounts, factors=factors, adjusted=adjusted
    )


def _times(amount: Decimal, steps: tuple[Step, ...]) -> Decimal:
    for step in steps:
        amount = EXACT.multiply(amount, step.factor)
    return amount


def _twins(rows: list[Row]) -> list[str]:
    """Rows that may be one sale written twice: same day, venue and price."""
    seen: dict[tuple[str, str, Money], str] = {}
    found = []
    for row in rows:
        c = row.comparable
        key = (c.date.edtf, " ".join(c.venue.lower().split()), c.price)
        if key in seen:
            found.append(f"{seen[key]} and {c.id} may be one sale: same date, venue and price")
        seen.setdefault(key, c.id)
    return found
