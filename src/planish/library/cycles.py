"""Cycles of date letters written out: which letter stood when.

A letter of assay year y runs from the change day of y to the day before it in y + 1, so it spans
two calendar years. The grammar of a cycle's ``letters`` stands with ``rows.Cycle``; the change
at London is in Hayden's appendix (HAYDEN1915 in the library).
"""

import re
from datetime import date, timedelta

import msgspec

from planish.library.rows import Cycle

_TOKEN = re.compile(
    r"(?P<letters>_|[^\W\d_](?:/[^\W\d_])*)(?P<doubt>\?)?(?:\*(?P<years>[1-9]\d?))?(?P<late>\?)?"
)
_STYLES = frozenset(
    ("roman", "italic", "black-letter", "lombardic", "court-hand", "script", "sans", "gaelic")
)


class CycleError(ValueError):
    """A cycle's letters cannot be written out: says cycle and token."""

    def __init__(self, cycle: str, fault: str) -> None:
        self.cycle, self.fault = cycle, fault
        super().__init__(f"cycle {cycle}: {fault}")


class Letter(msgspec.Struct, frozen=True, kw_only=True):
    """A date letter and the time in which it was struck.

    letters: the letter, or its alternative readings; empty where none is known.
    doubtful: the library doubts that it stood just then.
    first_year, last_year: assay years, both included (the years in which they begin).
    styles: letterforms that are open; empty where unknown.
    start, end: ISO dates, both included; with no change day on record the widest span.
    """

    office: str
    cycle: str
    letters: tuple[str, ...]
    doubtful: bool
    first_year: int
    last_year: int
    styles: tuple[str, ...]
    case: str
    start: str
    end: str


def expand(cycle: Cycle) -> tuple[Letter, ...]:
    """The letters of a cycle in order, one entry per letter however many years it stood.

    Raises:
        CycleError: a token is not in the grammar, a date does not exist, or the letters do not
            fill the years from ``first_year`` to ``last_year`` exactly.
    """
    styles = _styles(cycle.style)
    tokens = cycle.letters.split()
    found: list[Letter] = []
    year = cycle.first_year
    for token in tokens:
        match = _TOKEN.fullmatch(token)
        if match is None:
            raise CycleError(cycle.id, f"cannot read the letter {token!r}")
        last = year + int(match["years"] or 1) - 1
        letters = () if match["letters"] == "_" else tuple(match["letters"].split("/"))
        found.append(
            Letter(
                office=cycle.office,
                cycle=cycle.id,
                letters=letters,
                doubtful=bool(match["doubt"] or match["late"]),
                first_year=year,
                last_year=last,
                styles=styles,
                case=cycle.case,
                start=_start(cycle, year),
                end=_end(cycle, last),
            )
        )
        year = last + 1
    if year - 1 != cycle.last_year:
        raise CycleError(
            cycle.id,
            f"letters run to {year - 1}, the cycle from {cycle.first_year} to {cycle.last_year}",
        )
    return tuple(found)


def _styles(text: str) -> tuple[str, ...]:
    """Open letterforms of ``roman/italic``; empty as soon as one is not known."""
    parts = tuple(part.strip() for part in text.split("/"))
    return parts if _STYLES.issuperset(parts) else ()


def _change(cycle: Cycle, year: int) -> date:
    try:
        return date(year, cycle.change_month or 1, cycle.change_day or 1)
    except ValueError:
        day = f"{cycle.change_month}/{cycle.change_day}"
        raise CycleError(cycle.id, f"no such change day in {year}: {day}") from None


def _start(cycle: Cycle, year: int) -> str:
    if year == cycle.first_year and cycle.first_start:
        return cycle.first_start
    return _change(cycle, year).isoformat()


def _end(cycle: Cycle, year: int) -> str:
    if year == cycle.last_year and cycle.last_end:
        return cycle.last_end
    if cycle.change_month is None:
        return date(year + 1, 12, 31).isoformat()
    return (_change(cycle, year + 1) - timedelta(days=1)).isoformat()
