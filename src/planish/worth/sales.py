"""A record of one sale or offer, as kept in the user's own file of sales."""

import datetime as dt
import hashlib
from collections.abc import Iterable
from decimal import Decimal

import msgspec

from planish.quantity import Money, QuantityError, UncertainDate
from planish.quantity.numbers import digits
from planish.worth.comparables import Adjustment, Basis, Comparable
from planish.worth.traits import Traits


class Sale(msgspec.Struct, frozen=True, kw_only=True):
    """One sale or offer.

    id: unlike any other in the file. row: its row in the file it was read from; 0 where none.
    date, venue: when, and where or by whom. sale: the house's number of the sale. lot: lot or stock
        number. title: what was sold, in the words of whoever sold it.
    price, basis: the figure and what it is; of an unsold lot the top bid, or the reserve.
    premium: buyer's premium of that sale, as a share of the hammer price.
    piece: the same word for every appearance of one object.
    source: where the record comes from (catalogue, page, own books).
    """

    id: str
    row: int = 0
    date: UncertainDate
    venue: str
    sale: str = ""
    lot: str = ""
    title: str = ""
    price: Money
    basis: Basis
    premium: Decimal | None = None
    traits: Traits = Traits()
    piece: str = ""
    source: str = ""
    note: str = ""

    def __post_init__(self) -> None:
        self.comparable()  # refuses a price, premium or id that no comparable may have
        for name in ("id", "venue"):
            if not getattr(self, name).strip():
                raise QuantityError("sale", name, "it is empty", "fill it in")

    @property
    def where(self) -> str:
        """How messages name it: its row in the file, and its id."""
        return f"row {self.row} ({self.id})" if self.row else self.id

    def comparable(self, adjustments: Iterable[Adjustment] = (), weight: int = 1) -> Comparable:
        """The sale as a row for a grid."""
        return Comparable(
            id=self.id,
            title=self.title,
            lot=self.lot,
            date=self.date,
            venue=self.venue,
            price=self.price,
            basis=self.basis,
            premium=self.premium,
            weight=Decimal(weight),
            attributes=self.traits.numbers(),
            adjustments=tuple(adjustments),
            note=self.note,
        )

    def later_than(self, day: dt.date) -> bool:
        """Whether it lies after a day, whatever the doubt about its own date."""
        return self.date.earliest is not None and self.date.earliest > day


def identity(values: Iterable[str]) -> str:
    """An id out of what a row says, the same whenever the same row is imported again.

    >>> identity(["2019-06-12", "A. Saleroom", "45"])
    's-261a3d74ec'
    """
    text = "\x1f".join(" ".join(v.casefold().split()) for v in values)
    return f"s-{hashlib.sha256(text.encode()).hexdigest()[:10]}"


def identity_of(sale: Sale) -> str:
    """The id of a sale that was given none."""
    price = f"{digits(sale.price.amount)} {sale.price.currency}"
    return identity(
        (sale.date.edtf, sale.venue, sale.sale, sale.lot, sale.title, price, sale.basis.value)
    )
