"""What time does to a price: the metal in it moves with the metal, the rest with an index or not.

    metal part     dM = fine (spot now - spot then);   P' = max(P + f dM, k M now)
                   f = clip((r1 - r) / (r1 - r0), 0, 1),   r = P / M then
    premium part   P'' = M now + (P' - M now) index now / index then

A piece sold at its melt value moves one for one with the metal; one sold at r1 times that or more
does not move with it. A whole price is never multiplied by a ratio of metal prices. r0 = 1.2 and
r1 = 4 kept the error under 10 % in each of four invented markets on the true path of silver, where
scaling whole prices was 31 to 81 % too high (tried for this project). The floor holds for what the
buyer pays with everything, never for the hammer price: of 10,614 lots of silver at auction 690 were
hammered below the metal's value and 56 sold below it once the premium was counted (Draper and
others, Economics Letters 162, 2018).

Nothing is rounded between the lines: figures are rounded where they are printed.
"""

import datetime as dt
from decimal import Decimal

import msgspec

from planish.quantity import Mass, Money, QuantityError, UncertainDate
from planish.quantity.numbers import EXACT
from planish.worth.comparables import Adjustment
from planish.worth.exchange import Exchange
from planish.worth.series import Series

#: multiples of melt between which the metal's pull fades
FADES_FROM, FADES_TO = Decimal("1.2"), Decimal(4)
#: share of the melt value below which the buyer's total does not stay: it would be melted
KEPT = Decimal("0.97")
OZT = Mass.of(1, "ozt")


class MetalTime(msgspec.Struct, frozen=True, kw_only=True):
    """The metal line of one sale, all in one currency.

    then, now: value of its metal. multiple: price over metal value then. share: how much of the
    metal's move reaches the price. line: what is added. floored: whether the floor decided.
    adjusted: price and line.
    """

    then: Decimal
    now: Decimal
    multiple: Decimal
    share: Decimal
    line: Decimal
    floored: bool
    adjusted: Decimal


def pull(multiple: Decimal, start: Decimal = FADES_FROM, end: Decimal = FADES_TO) -> Decimal:
    """The share of the metal's move that reaches a price so many times its metal value.

    >>> pull(Decimal(1)), pull(Decimal("2.6")), pull(Decimal(9))
    (Decimal('1'), Decimal('0.5'), Decimal('0'))
    """
    share = EXACT.divide(EXACT.subtract(end, multiple), EXACT.subtract(end, start))
    return min(max(share, Decimal(0)), Decimal(1)).normalize(EXACT)


def metal_part(
    price: Decimal,
    fine: Mass,
    then: Decimal,
    now: Decimal,
    *,
    share: Decimal | None = None,
    kept: Decimal | None = KEPT,
) -> MetalTime:
    """The metal line of a price.

    fine: pure metal in it. then, now: price of the metal per troy ounce, at the sale and at the
    effective date. share: f, where the user sets it. kept: k; None where the price is not the
    buyer's total, so that no floor holds.

    Raises:
        QuantityError: a price, the metal or a share is out of bounds.
    """
    for name, value in (("price", price), ("metal price then", then), ("metal price now", now)):
        if not (value.is_finite() and value > 0):
            raise QuantityError(name, value, "it is not above zero", "mend the figure")
    if fine.grams <= 0:
        raise QuantityError("fine metal", fine.written(), "it is not above zero", "weigh again")
    if share is not None and not 0 <= share <= 1:
        fault = "no share from 0 to 1"
        raise QuantityError("share of the metal's move", share, fault, "write 0.5 for half")
    ounces = fine / OZT
    melt_then, melt_now = EXACT.multiply(ounces, then), EXACT.multiply(ounces, now)
    multiple = EXACT.divide(price, melt_then)
    used = pull(multiple) if share is None else share
    moved = EXACT.add(price, EXACT.multiply(used, EXACT.subtract(melt_now, melt_then)))
    floor = None if kept is None else EXACT.multiply(kept, melt_now)
    floored = floor is not None and moved < floor
    adjusted = floor if floored and floor is not None else moved
    return MetalTime(
        then=melt_then,
        now=melt_now,
        multiple=multiple,
        share=used,
        line=EXACT.subtract(adjusted, price),
        floored=floored,
        adjusted=adjusted,
    )


def premium_part(adjusted: Decimal, melt: Decimal, then: Decimal, now: Decimal) -> Decimal:
    """The price after its part over melt moved with an index; one at or below melt stays.

    adjusted: after the metal line. melt: value of its metal now; 0 where it has none.

    Raises:
        QuantityError: an index is not above zero.
    """
    for value in (then, now):
        if not (value.is_finite() and value > 0):
            raise QuantityError("index", value, "it is not above zero", "mend the figure")
    over = EXACT.subtract(adjusted, melt)
    if over <= 0:
        return adjusted
    return EXACT.add(melt, EXACT.divide(EXACT.multiply(over, now), then))


class Clock(msgspec.Struct, frozen=True, kw_only=True):
    """What brings prices to the effective date, as the user gives it.

    metal: price of fine metal per troy ounce, in ``metal_currency``. index: of the premium over
    melt. exchange: for a metal price in another currency than the grid's. share: f, where the user
    sets it for all sales; 0 and 1 show how much hangs on it.
    """

    effective: dt.date
    metal: Series | None = None
    metal_currency: str = ""
    index: Series | None = None
    exchange: Exchange = Exchange()
    share: Decimal | None = None

    def spot(self, date: UncertainDate | dt.date, currency: str) -> tuple[Decimal, str]:
        """Price of fine metal per troy ounce in a currency, and where it is from.

        date: of a sale, or a plain day: then the latest price known on it.

        Raises:
            QuantityError: the table has none, or no rate of that date.
        """
        if self.metal is None:
            fault = "no series of metal prices is given"
            raise QuantityError("metal price", date, fault, "give one, by day or month")
        series = self.metal
        read = series.at(date) if isinstance(date, UncertainDate) else series.known(date)
        if self.metal_currency == currency:
            return read.value, f"{read.how}, {self.metal.source}"
        rate = self.exchange.rate(self.metal_currency, currency, date)
        return EXACT.multiply(
            read.value, rate.rate
        ), f"{read.how}, {self.metal.source}; {rate.source}"

    def lines(
        self, price: Money, date: UncertainDate, fine: Mass | None, *, buyers_total: bool
    ) -> tuple[tuple[Adjustment, ...], tuple[str, ...]]:
        """The lines of time of one price that is on the grid's level and in its currency.

        buyers_total: whether the price is all that the buyer pays, so that the floor holds.

        Returns: amounts in the order in which they work, and what was left undone, in words.

        Raises:
            QuantityError: a series has no value for the date.
        """
        found: list[Adjustment] = []
        undone: list[str] = []
        here, melt = price.amount, Decimal(0)
        if fine is None:
            undone.append("no line for the metal: net weight or fineness is not known")
        elif self.metal is None:
            undone.append("no line for the metal: no series of its prices is given")
        else:
            then, then_from = self.spot(date, price.currency)
            now, now_from = self.spot(self.effective, price.currency)
            kept = KEPT if buyers_total else None
            part = metal_part(here, fine, then, now, share=self.share, kept=kept)
            here, melt = part.adjusted, part.now
            if part.line:
                found.append(_metal_line(part, price, f"{then_from}; {now_from}"))
        if self.index is None:
            undone.append("no line for the market: no index of the premium over melt is given")
        else:
            before, after = self.index.at(date), self.index.known(self.effective)
            moved = premium_part(here, melt, before.value, after.value)
            if moved != here:
                amount = Money(EXACT.subtract(moved, here), price.currency)
                because = (
                    f"market since the sale, on the part over melt: {before.how} to {after.how}"
                )
                found.append(Adjustment(because=because, amount=amount, source=self.index.source))
        return tuple(found), tuple(undone)


def _metal_line(part: MetalTime, price: Money, source: str) -> Adjustment:
    shown = [str(Money(amount, price.currency)) for amount in (part.then, part.now)]
    because = f"metal since the sale: worth {shown[0]} then, {shown[1]} now"
    if part.floored:
        because += f", held at {100 * KEPT:.3g} % of it"
    else:
        because += f"; {100 * part.share:.3g} % of the move, at {part.multiple:.3g} times melt"
    return Adjustment(because=because, amount=Money(part.line, price.currency), source=source)
