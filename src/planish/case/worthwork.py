"""The case's words turned into the worth bench's: the opinion on a piece from its comparables."""

import datetime as dt
from decimal import Decimal

from planish.case.kinds import MarketLevel
from planish.case.metalwork import day
from planish.case.model import Assignment, Comparable, Market, Piece
from planish.metal import MetalValue
from planish.quantity import Money, UncertainDate
from planish.worth import (
    Adjustment,
    Basis,
    Concluded,
    Conversions,
    Crossing,
    Floor,
    Opinion,
    Rate,
    Task,
    opinion,
)
from planish.worth import Comparable as Sale

_NOT_STATED = "not stated"
_NO_REASON = "no reason is written yet"


def needs(case: Assignment) -> list[str]:
    """What must be named before any figure is given, where the case does not name it."""
    wanted = {
        "the type of value": case.type_of_value,
        "the effective date": case.effective_date,
        "the currency": case.currency,
        "the market level": case.market.level,
    }
    return [what for what, given in wanted.items() if given is None]


def concluded(case: Assignment, piece: Piece, metal: MetalValue | None) -> Opinion | None:
    """The opinion; None where the case lacks what every opinion needs, or the piece has nothing.

    Raises:
        QuantityError: the figures cannot be.
    """
    task = _task(case)
    if task is None or (piece.opinion is None and not piece.comparables):
        return None
    sales = [_sale(piece.number, k, row, task) for k, row in enumerate(piece.comparables, 1)]
    return opinion(
        sales,
        task,
        _conversions(case.market),
        floor=_floor(metal, task.currency),
        concluded=_own(piece),
    )


def basis_of(market: Market) -> Basis | None:
    """What an opinion in this market is a price of; None for scrap, which is no market of pieces."""
    if market.level is MarketLevel.AUCTION:
        return Basis.HAMMER if market.premium_included is False else Basis.WITH_PREMIUM
    return {
        MarketLevel.DEALER_RETAIL: Basis.RETAIL_PAID,
        MarketLevel.PRIVATE_SALE: Basis.PRIVATE,
        MarketLevel.DEALER_BUYING: Basis.TRADE_PAID,
        MarketLevel.SCRAP: Basis.TRADE_PAID,
    }.get(market.level or MarketLevel.SCRAP)


def _task(case: Assignment) -> Task | None:
    basis, date = basis_of(case.market), day(case.effective_date)
    if needs(case) or basis is None or date is None:
        return None
    return Task(
        type_of_value=(case.type_of_value or "").strip(),
        date=date,
        market=(case.market.level or "").strip(),
        basis=basis,
        currency=case.currency or "",
    )


def _own(piece: Piece) -> Concluded | None:
    """The appraiser's figure; None where the computed one is taken."""
    given = piece.opinion
    if given is None or given.value is None:
        return None
    return Concluded(
        value=Money.parse(given.value),
        low=Money.parse(given.low) if given.low else None,
        high=Money.parse(given.high) if given.high else None,
        approach=given.approach.value,
        reasons=given.reasons or (_NO_REASON,),
    )


def _floor(metal: MetalValue | None, currency: str) -> Floor | None:
    if metal is None or metal.value is None or metal.value.currency != currency:
        return None
    note = f"{metal.price.price} a {metal.price.per} on {metal.price.date}, {metal.price.source}"
    return Floor(amount=metal.value, note=note)


def _sale(piece: int, k: int, row: Comparable, task: Task) -> Sale:
    price = Money.parse(row.price)
    date = UncertainDate.parse(row.date)
    return Sale(
        id=f"{piece}.{k}",
        title=row.title,
        lot=row.lot or "",
        date=date,
        venue=row.venue,
        price=price,
        basis=row.basis,
        premium=_decimal(row.premium),
        rate=_rate(row, price.currency, task.currency, date),
        weight=Decimal(repr(row.counts)),
        attributes=row.attributes,
        adjustments=tuple(
            Adjustment(
                because=line.because,
                amount=Money.parse(line.amount),
                source=line.basis or _NOT_STATED,
            )
            if line.amount
            else Adjustment.percent(line.percent or 0, line.because, line.basis or _NOT_STATED)
            for line in row.adjustments
        ),
        note=row.note or "",
    )


def _rate(row: Comparable, base: str, quote: str, sold: UncertainDate) -> Rate | None:
    if row.rate is None or base == quote:
        return None
    date = day(row.rate_date) or sold.earliest or sold.latest or dt.date.min
    return Rate(
        base=base,
        quote=quote,
        rate=Decimal(repr(row.rate)),
        date=date,
        source=row.rate_source or _NOT_STATED,
    )


def _conversions(market: Market) -> Conversions:
    return Conversions(
        premium=_decimal(market.buyers_premium),
        commission=_decimal(market.sellers_commission),
        asking_discount=_decimal(market.asking_discount),
        asking_source=market.asking_source or "",
        crossings=tuple(
            Crossing(start=c.start, end=c.end, factor=Decimal(repr(c.factor)), source=c.source)
            for c in market.crossings
        ),
    )


def _decimal(share: float | None) -> Decimal | None:
    return None if share is None else Decimal(repr(share))
