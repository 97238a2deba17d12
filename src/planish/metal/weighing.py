"""What the balance showed, of one piece or of several, and the fineness to reckon with."""

import datetime as dt
import statistics
from decimal import Decimal
from typing import Self

import msgspec

from planish.metal.air import buoyancy_share
from planish.quantity import Fineness, Mass, QuantityError

#: a piece of a set this far from the set's median is pointed out; judgment
ODD = Decimal("0.10")
#: density taken for the buoyancy of silver [g/cm³]
_SILVER = 10.36


class Spread(msgspec.Struct, frozen=True, kw_only=True):
    """How the pieces of a set differ that were weighed one by one.

    mean, least, greatest: of one piece. deviation: standard deviation, None for fewer than two.
    odd: numbers of pieces, from one, that differ from the median by more than a tenth.
    """

    mean: Mass
    least: Mass
    greatest: Mass
    deviation: Mass | None = None
    odd: tuple[int, ...] = ()


class Weighing(msgspec.Struct, frozen=True, kw_only=True):
    """What the balance showed.

    gross: the reading, all parts together; for a set weighed one by one the sum.
    resolution: step of the display.
    plus_minus: standard uncertainty of the balance at this load beyond its step, as calibrated. It
        is taken for an error of scale: the same share of whatever else is weighed on that balance.
    balance: which, and how it was checked; the same words mean the same balance.
    repeatability: standard deviation of a single reading, from repeats or the data sheet.
    date: day of weighing.
    count: pieces on the balance.
    each: the readings, where the pieces were weighed one by one.
    """

    gross: Mass
    resolution: Mass | None = None
    plus_minus: Mass | None = None
    balance: str = ""
    repeatability: Mass | None = None
    date: dt.date | None = None
    count: int = 1
    each: tuple[Mass, ...] = ()

    def __post_init__(self) -> None:
        if self.gross.grams <= 0 or any(m.grams <= 0 for m in self.each):
            fault = "a piece weighs more than nothing"
            raise QuantityError("weight", self.gross, fault, "weigh again")
        if self.each and Mass.total(self.each) != self.gross:
            fault = f"the {len(self.each)} readings add up to {Mass.total(self.each).written()}"
            raise QuantityError("weight", self.gross.written(), fault, "give their sum as gross")
        if self.count < 1 or (self.each and self.count != len(self.each)):
            fault = f"{self.count} pieces do not go with {len(self.each)} readings"
            raise QuantityError("count", self.count, fault, "count again")

    @classmethod
    def one_by_one(
        cls,
        each: tuple[Mass, ...],
        *,
        resolution: Mass | None = None,
        plus_minus: Mass | None = None,
        balance: str = "",
        repeatability: Mass | None = None,
        date: dt.date | None = None,
    ) -> Self:
        """A set weighed piece by piece.

        plus_minus: for one piece; as an error of scale it adds up in full over all pieces.

        Raises:
            QuantityError: there is no reading, or one is not above zero.
        """
        if not each:
            raise QuantityError("weight", "", "nothing was weighed", "give at least one reading")
        return cls(
            gross=Mass.total(each),
            resolution=resolution,
            plus_minus=plus_minus * len(each) if plus_minus else None,
            balance=balance,
            repeatability=repeatability,
            date=date,
            count=len(each),
            each=each,
        )

    @classmethod
    def repeated(
        cls,
        readings: tuple[Mass, ...],
        *,
        resolution: Mass | None = None,
        plus_minus: Mass | None = None,
        balance: str = "",
        date: dt.date | None = None,
    ) -> Self:
        """One piece weighed several times: the mean, and its standard deviation (GUM 4.2).

        Raises:
            QuantityError: there are fewer than two readings.
        """
        if len(readings) < 2:
            fault, remedy = "one reading tells no spread", "weigh at least twice"
            raise QuantityError("weight", len(readings), fault, remedy)
        grams = [m.grams for m in readings]
        spread = statistics.stdev(grams) / Decimal(len(grams)).sqrt()
        return cls(
            gross=Mass.total(readings) / len(readings),
            resolution=resolution,
            plus_minus=plus_minus,
            balance=balance,
            repeatability=Mass(spread),
            date=date,
        )

    @property
    def readings(self) -> int:
        """How many readings the gross weight adds up."""
        return len(self.each) or 1

    @property
    def mean(self) -> Mass:
        """Of one piece."""
        return self.gross / self.count

    @property
    def buoyancy(self) -> Mass:
        """What the air's buoyancy makes the balance show too little, which is left out.

        For silver on a balance adjusted with steel, at usual air: 0.0034 % too much is shown.
        """
        return self.gross * Decimal(repr(buoyancy_share(_SILVER)))

    @property
    def spread(self) -> Spread | None:
        """How the pieces differ; None where they were not weighed one by one."""
        if not self.each:
            return None
        grams = [m.grams for m in self.each]
        median = statistics.median(grams)
        return Spread(
            mean=self.mean,
            least=min(self.each),
            greatest=max(self.each),
            deviation=Mass(statistics.stdev(grams)) if len(grams) > 1 else None,
            odd=tuple(n for n, g in enumerate(grams, 1) if abs(g - median) > ODD * median),
        )


class Alloy(msgspec.Struct, frozen=True, kw_only=True):
    """The fineness to reckon with.

    fineness: silver in parts per thousand.
    plus_minus: its standard uncertainty [‰].
    basis: mark, test, or both.
    """

    fineness: Fineness
    plus_minus: Decimal = Decimal(0)
    basis: str = ""
