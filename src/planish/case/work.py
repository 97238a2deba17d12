"""The join: a case worked through, each piece by each bench. No figure is made here but sums."""

from collections.abc import Callable, Iterable

from planish.case.complete import missing, wants_metal
from planish.case.doubts import agreement, doubts
from planish.case.metalwork import statement
from planish.case.metalwork import value as metal_of
from planish.case.model import Case, MetalPrice, Piece
from planish.case.worked import PieceWork, Totals, Worked
from planish.case.worthwork import concluded, needs
from planish.marks import Observed, ReadingFinding
from planish.marks import describe as described_by_bench
from planish.marks import read as read_by_bench
from planish.quantity import Money, QuantityError

Read = Callable[[Observed, str | None], ReadingFinding]
Describe = Callable[[str], Observed]

#: how fully a piece counts as searched where the file does not say: some places listed, or none
_SEARCHED, _UNSAID = 0.9, 0.8


def work(
    case: Case, *, read: Read = read_by_bench, describe: Describe = described_by_bench
) -> Worked:
    """Work through a case: readings, weight statements, metal values, opinions, totals, warnings.

    A figure that cannot be is told as a warning of its piece; the rest of the case goes on.
    """
    pieces = tuple(_piece(case, piece, read, describe) for piece in case.pieces)
    lacking = [] if case.case.identifies_only else needs(case.case)
    warnings = []
    if lacking:
        warnings.append(f"no opinion is formed before the case names {', '.join(lacking)}")
    price = case.metal_price
    if price and case.case.currency and Money.parse(price.price).currency != case.case.currency:
        warnings.append(
            f"the metal price is in another currency than {case.case.currency}:"
            " no opinion is compared with the metal's value"
        )
    return Worked(
        case=case,
        pieces=pieces,
        totals=_totals(pieces, price),
        gaps=tuple(missing(case)),
        warnings=tuple(warnings),
    )


def observed(piece: Piece, describe: Describe = described_by_bench) -> Observed:
    """What was observed on a piece: its rows of marks, and those that its free text describes."""
    told = describe(piece.marks_text) if piece.marks_text else Observed()
    if piece.complete is not None:
        complete = piece.complete
    else:
        complete = _SEARCHED if piece.searched else _UNSAID
    return Observed(
        marks=(*piece.marks, *told.marks),
        searched=(*piece.searched, *told.searched),
        complete=complete,
        claims=told.claims,
        unread=told.unread,
    )


def _piece(case: Case, piece: Piece, read: Read, describe: Describe) -> PieceWork:
    warnings: list[str] = []
    try:
        seen = observed(piece, describe)
    except ValueError as fault:
        warnings.append(f"the marks' text cannot be read: {fault}")
        seen = Observed(marks=piece.marks, searched=piece.searched)
    try:
        reading = read(seen, piece.form)
    except ValueError as fault:
        warnings.append(f"the marks cannot be read: {fault}")
        reading = read(Observed(searched=piece.searched), piece.form)
    weight = metal = opinion = None
    try:
        if piece.weight:
            weight = statement(piece, piece.weight, reading)
            metal = metal_of(piece, weight, case.metal_price, case.case)
        opinion = concluded(case.case, piece, metal)
    except QuantityError as fault:
        warnings.append(str(fault))
    agreed = agreement(piece.confirmed, reading)
    warnings += doubts(piece, reading, agreed)
    # an ask stands in both the statement and the value: told once
    warnings += metal.warnings if metal else weight.notes if weight else ()
    warnings += opinion.warnings if opinion else ()
    return PieceWork(
        piece=piece,
        observed=seen,
        reading=reading,
        agreement=agreed,
        weight=weight,
        metal=metal,
        opinion=opinion,
        warnings=tuple(dict.fromkeys(warnings)),
    )


def _totals(pieces: Iterable[PieceWork], price: MetalPrice | None) -> Totals:
    rows = list(pieces)
    opinions = [w.opinion for w in rows if w.opinion and w.opinion.value]
    payable = _sum(w.metal.payable for w in rows if w.metal)
    if payable and price and price.charges:
        charges = Money.parse(price.charges)
        payable = payable - charges if charges.currency == payable.currency else None
    return Totals(
        value=_sum(o.value for o in opinions),
        low=_sum(o.low or o.value for o in opinions),
        high=_sum(o.high or o.value for o in opinions),
        without=tuple(w.piece.number for w in rows if not (w.opinion and w.opinion.value)),
        metal=_sum(w.metal.value for w in rows if w.metal),
        payable=payable,
        without_metal=tuple(
            w.piece.number
            for w in rows
            if price and wants_metal(w.piece) and not (w.metal and w.metal.value)
        ),
    )


def _sum(amounts: Iterable[Money | None]) -> Money | None:
    total: Money | None = None
    for amount in amounts:
        if amount is not None:
            total = amount if total is None else total + amount
    return total
