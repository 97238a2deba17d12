"""The metal's value at a dated price that the user gives.

Formula: value = fine silver [ozt] x price per troy ounce; payout = value x share - charges.
It is no valuation: a floor only where the piece may lawfully be scrapped and its owner agrees.
"""

import datetime as dt
from decimal import Decimal

import msgspec

from planish.library.rows import Confidence
from planish.metal.deductions import Ask, Kind
from planish.metal.lines import Line, shown
from planish.metal.parts import PieceStatement
from planish.metal.stated import Stated
from planish.metal.statement import WeightStatement
from planish.quantity import Mass, Measured, Money, QuantityError
from planish.quantity.units import unit_of

Statement = WeightStatement | PieceStatement

#: days after which a price is told to be old. Common practice; the price of silver moved by 7.9 %
#: (standard deviation) from one month to the next since 1975 (World Bank monthly prices)
STALE_DAYS = 7

CAUTION = (
    "the metal's value is no opinion of value: melting destroys a piece, may need the owner's"
    " consent, a licence or a holding period under local law, and cannot be undone"
)


class MetalPrice(msgspec.Struct, frozen=True, kw_only=True):
    """What fine silver costs, as the user found it.

    price: for one ``per`` of fine silver.
    per: unit of mass: ozt, g or kg.
    date: day of the price.
    source: where it was read.
    quoted: bid, offer, fix or average.
    """

    price: Money
    per: str
    date: dt.date
    source: str
    quoted: str = ""

    def __post_init__(self) -> None:
        unit_of(self.per)
        if self.price.amount <= 0:
            fault, remedy = "a metal price is above zero", "give the price of that day"
            raise QuantityError("metal price", self.price, fault, remedy)
        if not self.source.strip():
            fault, remedy = "it does not say where it was read", "name the source"
            raise QuantityError("metal price", self.price, fault, remedy)

    def of(self, fine: Mass) -> Money:
        """The value of so much fine silver."""
        return self.price * fine.to(self.per)


class Charge(msgspec.Struct, frozen=True):
    """A fixed charge: assay, freight, small lot."""

    label: str
    amount: Money


class Terms(msgspec.Struct, frozen=True, kw_only=True):
    """What a buyer of metal pays.

    payout: share of the metal's value, 0 to 1.
    charges: fixed charges for the whole lot.
    source: whose terms.
    refining: charge for refining, for one ``refining_per`` of the net weight.
    minimum: smallest net weight that is bought on these terms.
    filled_payout: share for weighted and other filled goods, where the buyer pays less for them.
    """

    payout: Decimal
    charges: tuple[Charge, ...] = ()
    source: str = ""
    refining: Money | None = None
    refining_per: str = "ozt"
    minimum: Mass | None = None
    filled_payout: Decimal | None = None

    def __post_init__(self) -> None:
        for share in (self.payout, self.filled_payout):
            if share is not None and not 0 < share <= 1:
                fault, remedy = "a payout is a share of one", "write 0.85 for 85 %"
                raise QuantityError("payout", share, fault, remedy)
        unit_of(self.refining_per)
        if self.refining and self.refining.amount < 0:
            fault, remedy = "a charge is not below zero", "take off the sign"
            raise QuantityError("refining", self.refining, fault, remedy)

    def share_of(self, statement: Statement) -> Decimal:
        """The share paid for such a piece."""
        filled = any(d.kind is Kind.FILLER and d.best.grams for d in statement.deductions)
        return self.filled_payout if filled and self.filled_payout else self.payout


class PayoutLevel(msgspec.Struct, frozen=True, kw_only=True):
    """What share of the metal's value a kind of buyer pays, to compare the user's terms with."""

    buyer: str
    low: Decimal
    high: Decimal
    confidence: Confidence
    source: str


def _level(buyer: str, low: str, high: str) -> PayoutLevel:
    return PayoutLevel(
        buyer=buyer,
        low=Decimal(low),
        high=Decimal(high),
        confidence=Confidence.PRACTICE,
        source="common practice",
    )


PAYOUT_LEVELS: tuple[PayoutLevel, ...] = (
    _level("refiner, large assayed lots", "0.90", "0.98"),
    # an antiques column implies 0.89: 48 for 5.83 ozt of sterling at 10 an ounce
    _level("refiner, small lots", "0.80", "0.90"),
    _level("dealer buying for scrap", "0.70", "0.90"),
    _level("counter buyer or pawnbroker", "0.40", "0.75"),
)


class MetalValue(msgspec.Struct, frozen=True, kw_only=True):
    """The result; without a complete statement there is no value, only what is asked.

    value: of the fine silver, in full. measured: the same with its budget, price taken as exact.
    payable: what the terms leave, or None without terms.
    interval: the value with its 95 % interval, price taken as exact, and by which rule.
    lines: each works out from figures printed.
    """

    value: Money | None
    measured: Measured | None
    payable: Money | None
    price: MetalPrice
    effective: dt.date
    lines: tuple[Line, ...]
    asks: tuple[Ask, ...]
    stale: bool
    warnings: tuple[str, ...]
    interval: Stated | None = None


def metal_value(
    statement: Statement,
    price: MetalPrice,
    *,
    effective: dt.date,
    terms: Terms | None = None,
    stale_days: int = STALE_DAYS,
    with_interval: bool = False,
) -> MetalValue:
    """The value of the metal of a piece on the effective date.

    with_interval: state the 95 % interval too, which may have to be drawn.

    Raises:
        QuantityError: a charge is in another currency than the price.
    """
    age = (effective - price.date).days
    warnings = _age_warnings(age, price, effective, stale_days)
    lines: list[Line] = []
    value = payable = measured = interval = None
    if statement.fine is None or statement.fine_measured is None:
        warnings.insert(0, _why_none(statement))
    else:
        value = price.of(statement.fine)
        worth_of_gram = float(price.of(Mass.of(1)).amount)
        measured = statement.fine_measured * worth_of_gram
        if with_interval and statement.fine_stated is not None:
            interval = statement.fine_stated.times(worth_of_gram)
        formula = _formula(statement.fine, price)
        note = f"{price.price} per {price.per}, {price.date}, {price.source}"
        note += f", {price.quoted}" if price.quoted else ""
        lines = [
            *statement.lines,
            Line(
                label="metal value",
                figure=value.amount,
                unit=value.currency,
                formula=formula,
                note=note,
            ),
        ]
        if terms:
            payable, more = _payable(statement, value, formula, terms)
            lines += more
            warnings += _lot_warnings(statement, terms)
            if payable.amount < 0:
                warnings.append("the charges are more than the metal would bring")
        warnings.append(CAUTION)
    return MetalValue(
        value=value,
        measured=measured,
        payable=payable,
        price=price,
        effective=effective,
        lines=tuple(lines),
        asks=statement.asks,
        stale=age > stale_days or age < 0,
        warnings=tuple(warnings),
        interval=interval,
    )


def _lot_warnings(statement: Statement, terms: Terms) -> list[str]:
    if terms.minimum is not None and statement.net is not None and statement.net < terms.minimum:
        return [
            f"the net weight is below the smallest lot of {terms.minimum}: these terms may not be had"
        ]
    return []


def _age_warnings(age: int, price: MetalPrice, effective: dt.date, stale_days: int) -> list[str]:
    if age > stale_days:
        return [f"the metal price of {price.date} is {age} days older than {effective}: renew it"]
    if age < 0:
        return [f"the metal price of {price.date} is later than the effective date {effective}"]
    return []


def _why_none(statement: Statement) -> str:
    if statement.asks:
        asked = "; ".join(f"{a.because}: {a.says}" for a in statement.asks)
        return f"no metal value from gross weight alone: {asked}"
    if statement.alloy is None and statement.net is not None:
        return "no metal value without a fineness"
    return "no metal value: the piece is not of solid silver"


def _formula(fine: Mass, price: MetalPrice) -> str:
    unit = unit_of(price.per)
    grams = Mass.of(1, price.per).grams
    by = "" if unit.grams == 1 else f" / {shown(grams)}"
    return f"{shown(fine.grams)}{by} × {shown(price.price.amount)}"


def _payable(
    statement: Statement, value: Money, formula: str, terms: Terms
) -> tuple[Money, list[Line]]:
    share = terms.share_of(statement)
    paid = value * share
    chain = f"{formula} × {shown(share)}"
    lines = [
        Line(
            label="payout",
            figure=paid.amount,
            unit=paid.currency,
            formula=chain,
            note=terms.source,
        )
    ]
    charges = [*_refining(statement, terms), *terms.charges]
    for charge in charges:
        paid = paid - charge.amount
        lines.append(
            Line(label=f"less {charge.label}", figure=charge.amount.amount, unit=paid.currency)
        )
        chain += f" - {shown(charge.amount.amount)}"
    if charges:
        label = "left after charges"
        lines.append(Line(label=label, figure=paid.amount, unit=paid.currency, formula=chain))
    return paid, lines


def _refining(statement: Statement, terms: Terms) -> list[Charge]:
    if terms.refining is None or statement.net is None:
        return []
    amount = terms.refining * statement.net.to(terms.refining_per)
    return [Charge(f"refining at {terms.refining} per {terms.refining_per} net", amount)]
