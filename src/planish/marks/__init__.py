"""The marks bench: observation, transcription, description, reading, where to look."""

from functools import cache

from planish.library.loader import Library
from planish.marks.checks import Answer, Check, checks
from planish.marks.describe import describe
from planish.marks.engine import Reader
from planish.marks.numbers import NumberFinding, classify, earliest_year
from planish.marks.observation import (
    Case,
    Claim,
    Legibility,
    Mark,
    Observed,
    Search,
    Style,
    Technique,
)
from planish.marks.own_register import parse_register
from planish.marks.reading import (
    Assigned,
    MakerGuess,
    NextLook,
    Outcome,
    Reading,
    ReadingFinding,
)


@cache
def shipped_reader() -> Reader:
    """The engine over the shipped library, laid out once."""
    return Reader()


def read(
    observed: Observed, form: str | None = None, library: Library | None = None
) -> ReadingFinding:
    """Read the marks of one piece with the shipped library, or with the one given."""
    reader = Reader(library) if library is not None else shipped_reader()
    return reader.read(observed, form)


__all__ = [
    "Answer",
    "Assigned",
    "Case",
    "Check",
    "Claim",
    "Legibility",
    "MakerGuess",
    "Mark",
    "NextLook",
    "NumberFinding",
    "Observed",
    "Outcome",
    "Reader",
    "Reading",
    "ReadingFinding",
    "Search",
    "Style",
    "Technique",
    "checks",
    "classify",
    "describe",
    "earliest_year",
    "parse_register",
    "read",
    "shipped_reader",
]
