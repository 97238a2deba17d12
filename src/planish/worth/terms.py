"""Sales made ready for a grid: counted once, and with the lines of time on them.

The order is that of the method: level and currency (by the grid's own steps), then the metal's line,
then the market's, then whatever the appraiser adds.
"""

from collections.abc import Iterable

import msgspec

from planish.quantity import Money, QuantityError
from planish.quantity.numbers import EXACT
from planish.worth.comparables import Basis, Comparable
from planish.worth.levels import Conversions, Unconverted, basis_steps, currency_steps
from planish.worth.sales import Sale
from planish.worth.timing import Clock
from planish.worth.twins import Group, counted

#: bases on which a price is all that the buyer pays, so that the floor of the metal holds
BUYERS_TOTAL = frozenset({Basis.WITH_PREMIUM, Basis.RETAIL_PAID, Basis.PRIVATE, Basis.TRADE_PAID})


class Ready(msgspec.Struct, frozen=True, kw_only=True):
    """Comparables for a grid, and what the person should know of them.

    groups: records that were one sale. untimed: id of a sale and why it has no line for the metal
    or the market. future: ids of sales after the effective date, which no opinion of that date could
    know; they are not among the comparables.
    """

    comparables: tuple[Comparable, ...]
    groups: tuple[Group, ...]
    untimed: tuple[tuple[str, str], ...]
    future: tuple[str, ...]


def ready(
    sales: Iterable[Sale], basis: Basis, currency: str, given: Conversions, clock: Clock
) -> Ready:
    """Sales as comparables for a grid on that basis and in that currency at the clock's date.

    A sale that cannot be brought there comes without lines; the grid names it and why.
    """
    once = counted(sales)
    future = tuple(s.id for s in once.sales if s.later_than(clock.effective))
    found: list[Comparable] = []
    untimed: list[tuple[str, str]] = []
    for sale in once.sales:
        if sale.id in future:
            continue
        plain = sale.comparable()
        try:
            price = _placed(plain, basis, currency, given)
            lines, undone = clock.lines(
                price, sale.date, sale.traits.fine, buyers_total=basis in BUYERS_TOTAL
            )
        except Unconverted:
            lines, undone = (), ()
        except QuantityError as fault:
            lines, undone = (), (f"{fault.what} of {fault.text}: {fault.fault}; {fault.remedy}",)
        found.append(msgspec.structs.replace(plain, adjustments=lines))
        untimed += [(sale.id, why) for why in undone]
    return Ready(
        comparables=tuple(found), groups=once.groups, untimed=tuple(untimed), future=future
    )


def _placed(comparable: Comparable, basis: Basis, currency: str, given: Conversions) -> Money:
    """The price on the basis and in the currency, exact."""
    steps, _ = currency_steps(comparable, currency, given)
    amount = comparable.price.amount
    for step in (*basis_steps(comparable, basis, given), *steps):
        amount = EXACT.multiply(amount, step.factor)
    return Money(amount, currency)
