"""The case file: what an appraiser writes down, as frozen structs.

One TOML file is one case. The structs say what may stand in it; ``load`` reads it and reports all
faults at once, ``complete`` says what a report still lacks. Only what cannot be done without is
required here, so that a draft loads from the first minute. Field names in the file are the names
below, save the repeated tables, which are written in the singular: ``[[piece]]``,
``[[piece.mark]]``, ``[[piece.photograph]]``, ``[[piece.comparable]]`` and so on.
"""

import msgspec

from planish.case.assignment import (
    Appraiser,
    Approaches,
    Assignment,
    Certification,
    Crossing,
    Inspection,
    Market,
    MetalPrice,
    Revision,
    Scope,
    Tax,
)
from planish.case.kinds import Table
from planish.case.piece import (
    Acquired,
    Adjustment,
    Comparable,
    Confirmed,
    Deduction,
    Dimension,
    Opinion,
    Part,
    Photograph,
    Piece,
    Provenance,
    Test,
    Weight,
)
from planish.marks.observation import Mark, Search

__all__ = [
    "Acquired",
    "Adjustment",
    "Appraiser",
    "Approaches",
    "Assignment",
    "Case",
    "Certification",
    "Comparable",
    "Confirmed",
    "Crossing",
    "Deduction",
    "Dimension",
    "Inspection",
    "Mark",
    "Market",
    "MetalPrice",
    "Opinion",
    "Part",
    "Photograph",
    "Piece",
    "Provenance",
    "Revision",
    "Scope",
    "Search",
    "Tax",
    "Test",
    "Weight",
]


class Case(Table, frozen=True, kw_only=True):
    """A whole case file.

    format: version of the file's form; this program writes 1.
    case: the assignment.
    metal_price: the price of fine silver, where metal values are stated.
    """

    format: int = 1
    case: Assignment
    metal_price: MetalPrice | None = None
    pieces: tuple[Piece, ...] = msgspec.field(default=(), name="piece")
