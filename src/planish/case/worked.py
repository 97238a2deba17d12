"""What comes of working through a case: every bench's finding, piece by piece, and the totals."""

import msgspec

from planish.case.complete import Gap
from planish.case.model import Case, Piece
from planish.marks import Observed, ReadingFinding
from planish.metal import MetalValue, WeightStatement
from planish.quantity import Money
from planish.worth import Opinion


class PieceWork(msgspec.Struct, frozen=True, kw_only=True):
    """One piece with the findings on it.

    observed: the marks of the rows and of the free text together.
    reading: the computed reading; the appraiser's confirmed one is in ``piece.confirmed``.
    agreement: probability that the reading gives to what was confirmed; None without either.
    weight: the weight statement; None where the piece was not weighed.
    metal: the metal's value, or why there is none; None where it is not asked for.
    opinion: the opinion; None where nothing to form one on is in the file.
    warnings: what the appraiser should look at, in words.
    """

    piece: Piece
    observed: Observed
    reading: ReadingFinding
    agreement: float | None
    weight: WeightStatement | None
    metal: MetalValue | None
    opinion: Opinion | None
    warnings: tuple[str, ...]


class Totals(msgspec.Struct, frozen=True, kw_only=True):
    """Sums over the case.

    value, low, high: of the opinions. The sum of the lower ends is lower than a fair lower end of
        the sum, since the pieces do not all err one way.
    without: numbers of the pieces that have no value.
    metal: value of the metal of the pieces that have one. payable: after payout and charges.
    without_metal: numbers of the pieces that should have a metal value and have none.
    """

    value: Money | None = None
    low: Money | None = None
    high: Money | None = None
    without: tuple[int, ...] = ()
    metal: Money | None = None
    payable: Money | None = None
    without_metal: tuple[int, ...] = ()


class Worked(msgspec.Struct, frozen=True, kw_only=True):
    """A case worked through. ``draft`` while anything that a report must hold is missing."""

    case: Case
    pieces: tuple[PieceWork, ...]
    totals: Totals
    gaps: tuple[Gap, ...]
    warnings: tuple[str, ...]

    @property
    def draft(self) -> bool:
        """Whether the report may not be issued yet."""
        return bool(self.gaps)
