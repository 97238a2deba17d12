"""The case's words turned into the metal bench's: weight statement and metal value of a piece."""

import datetime as dt
from decimal import Decimal

from planish.case.complete import wants_metal
from planish.case.kinds import ReadingKind
from planish.case.model import Assignment, Deduction, MetalPrice, Piece, Weight
from planish.evidence import percent
from planish.marks import ReadingFinding
from planish.metal import (
    Alloy,
    Kind,
    MetalValue,
    Terms,
    Weighing,
    WeightStatement,
    by_share,
    metal_value,
    method_of,
    weigh,
)
from planish.metal import Deduction as Comes
from planish.metal import MetalPrice as Price
from planish.quantity import Fineness, Mass, Money, UncertainDate

#: a fineness on which the readings agree less than this is not lent (judgment: better odds than not)
_SURE = 0.5
_NOT_STATED = "how this was found is not stated"


def statement(piece: Piece, weight: Weight, reading: ReadingFinding) -> WeightStatement:
    """The weight statement.

    Raises:
        QuantityError: the figures cannot be.
    """
    gross = Mass.parse(weight.gross)
    kind = piece.confirmed.kind if piece.confirmed else None
    return weigh(
        piece.title,
        Weighing(
            gross=gross,
            resolution=_mass(weight.resolution),
            plus_minus=_mass(weight.plus_minus),
            balance=weight.balance or "",
        ),
        words=_words(piece),
        deductions=tuple(_comes_off(d, gross) for d in weight.deductions),
        alloy=_alloy(piece, weight, reading),
        plated=kind in (ReadingKind.PLATED, ReadingKind.BASE),
    )


def value(
    piece: Piece, stated: WeightStatement, price: MetalPrice | None, case: Assignment
) -> MetalValue | None:
    """The metal's value at the case's price; None where it is not asked for or has no price.

    Raises:
        QuantityError: the figures cannot be.
    """
    if price is None or not wants_metal(piece):
        return None
    return metal_value(stated, _price(price), effective=effective(case, price), terms=_terms(price))


def effective(case: Assignment, price: MetalPrice) -> dt.date:
    """The effective date; in a draft that has none, the date of the metal price."""
    return day(case.effective_date) or day(price.date) or dt.date.min


def day(text: str | None) -> dt.date | None:
    """The first day that a date of the file may be."""
    return UncertainDate.parse(text).earliest if text else None


def _mass(text: str | None) -> Mass | None:
    return Mass.parse(text) if text else None


def _words(piece: Piece) -> str:
    """Words that decide which deductions are due: form, materials, parts and marks."""
    parts = (f"{p.name} {p.material or ''}" for p in piece.parts)
    marks = (m.text or "" for m in piece.marks)
    return " ".join(
        [piece.form or "", piece.materials or "", *parts, piece.marks_text or "", *marks]
    )


def _comes_off(row: Deduction, gross: Mass) -> Comes:
    kind, source = Kind(row.kind.value), row.method or _NOT_STATED
    if row.share_low is not None and row.share_high is not None:
        low, high = (Decimal(repr(share)) for share in (row.share_low, row.share_high))
        return by_share(gross, low, high, kind=kind, what=row.what, source=source)
    return Comes(
        kind=kind,
        what=row.what,
        mass=_mass(row.mass),
        plus_minus=_mass(row.plus_minus),
        low=_mass(row.low),
        high=_mass(row.high),
        method=method_of(source),
        source=source,
    )


def _alloy(piece: Piece, weight: Weight, reading: ReadingFinding) -> Alloy | None:
    """The fineness to reckon with: as weighed in, as confirmed, or as likely by the readings."""
    basis = weight.fineness_basis or ""
    spread = Decimal(repr(weight.fineness_plus_minus or 0.0))
    if weight.fineness is not None:
        return Alloy(fineness=Fineness.of(weight.fineness), plus_minus=spread, basis=basis)
    if piece.confirmed and piece.confirmed.fineness:
        basis = basis or "mark, as confirmed by the appraiser"
        return Alloy(fineness=Fineness.of(piece.confirmed.fineness), plus_minus=spread, basis=basis)
    permille, agreed = _agreed(reading)
    if piece.confirmed is None and permille and agreed >= _SURE:
        basis = basis or f"mark, as its readings agree ({percent(agreed)}), not confirmed"
        return Alloy(fineness=Fineness.of(permille), plus_minus=spread, basis=basis)
    return None


def _agreed(reading: ReadingFinding) -> tuple[float, float]:
    """The fineness [permille] likeliest over all readings, and its probability; 0 where none is."""
    by: dict[float, float] = {}
    for r in reading.readings:
        if r.fineness:
            by[r.fineness] = by.get(r.fineness, 0.0) + r.probability
    permille = max(by, key=lambda f: by[f], default=0.0)
    return permille, min(1.0, by.get(permille, 0.0))


def _price(price: MetalPrice) -> Price:
    return Price(
        price=Money.parse(price.price),
        per=price.per,
        date=day(price.date) or dt.date.min,
        source=price.source,
        quoted=price.quoted or "",
    )


def _terms(price: MetalPrice) -> Terms | None:
    """Payout of the metal's value; flat charges count once for the case, in the totals."""
    if price.payout_share in (0.0, 1.0) and price.payout_basis is None:
        return None
    return Terms(payout=Decimal(repr(price.payout_share)), source=price.payout_basis or "")
