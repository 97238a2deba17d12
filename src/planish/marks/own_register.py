"""The user's own register of makers: a plain table that joins the shipped one.

One row is one maker with the marks; ``docs/register.md`` explains each column. Every fault of a file
is told at once, each with line, column and how to mend it.
"""

import csv
import io
import re
import unicodedata
from collections.abc import Iterator
from difflib import get_close_matches

import msgspec

from planish.library.rows import Confidence, Maker
from planish.marks.transcription import TranscriptionError, parse

REQUIRED = ("name", "marks", "country")
OPTIONAL = ("place", "year_from", "year_to", "device", "kind", "wares", "note", "source")
COLUMNS = (*REQUIRED, *OPTIONAL)
KINDS = ("maker", "retailer", "designer", "importer")
FIRST_YEAR, LAST_YEAR = 1200, 2100
MAX_CHARACTERS = 100_000_000
MAX_CELL = 1_000
#: source of a row that names none; a row that names one has it after a colon
OWN = "own"
# letters, figures and the usual signs need no closer look; the rest is parsed
_PLAIN = re.compile(r"[A-Z0-9 &./*·'-]{1,60}")
_YEAR = re.compile(r"\d{4}")


class Fault(msgspec.Struct, frozen=True, kw_only=True):
    """What is wrong, where, and how to mend it. column: blank where the whole line is at fault."""

    line: int
    column: str = ""
    what: str
    mend: str

    def __str__(self) -> str:
        where = f"line {self.line}" + (f", column {self.column}" if self.column else "")
        return f"{where}: {self.what}; {self.mend}"


class RegisterFaults(ValueError):  # noqa: N818  # says what it holds
    """All faults of one register."""

    def __init__(self, name: str, faults: tuple[Fault, ...]) -> None:
        self.name, self.faults = name, faults
        more = f" (and {len(faults) - 1} more)" if len(faults) > 1 else ""
        super().__init__(f"{name}, {faults[0]}{more}")


def parse_register(text: str, name: str) -> tuple[Maker, ...]:
    """The makers of a register.

    Args:
        text: the file, CSV with a header line; parted by commas, semicolons or tabs. Lines that
            begin with # are comments.
        name: what the messages call it.

    Raises:
        RegisterFaults: the text has faults; all of them are told.

    >>> rows = ["name,marks,country", "A. Smith,AS; A·SMITH,GB"]
    >>> parse_register(chr(10).join(rows), "mine.csv")[0].marks
    'AS; A·SMITH'
    """
    if len(text) > MAX_CHARACTERS:
        fault = Fault(line=1, what=f"longer than {MAX_CHARACTERS:,} characters",
                      mend="part it into several files")  # fmt: skip
        raise RegisterFaults(name, (fault,))
    faults: list[Fault] = []
    records = _records(text.removeprefix("\ufeff"), faults)
    header = next(records, None)
    if header is None:
        faults = faults or [
            Fault(line=1, what="there is no header line", mend=f"begin with {','.join(REQUIRED)}")
        ]
        raise RegisterFaults(name, tuple(faults))
    line, cells = header
    places = _places(line, cells, faults)
    if faults:
        raise RegisterFaults(name, tuple(faults))
    rows: list[Maker] = []
    known: dict[tuple[str, str, str], int] = {}
    for line, cells in records:
        row = _row(line, cells, places, faults)
        if row is None:
            continue
        key = (row.name.casefold(), row.marks, row.country + row.place.casefold())
        first = known.setdefault(key, line)
        if first != line:
            faults.append(Fault(line=line, what=f"the same maker and marks as in line {first}",
                                mend="take one of them out"))  # fmt: skip
        rows.append(row)
    if faults:
        raise RegisterFaults(name, tuple(sorted(faults, key=lambda f: f.line)))
    return tuple(rows)


def _records(text: str, faults: list[Fault]) -> Iterator[tuple[int, list[str]]]:
    """Records with the number of their first line; comments and blank lines are left out."""
    lines = _Lines(text)
    reader = csv.reader(lines, delimiter=lines.delimiter(), strict=True)
    while True:
        lines.begin()
        try:
            cells = next(reader)
        except StopIteration:
            return
        except csv.Error as fault:
            faults.append(
                Fault(line=lines.first, what=f"cannot be parted into cells ({fault})",
                      mend='close each " with another, and double a " that is part of the text')
            )  # fmt: skip
            return
        if any(c.strip() for c in cells):
            yield lines.first, cells


class _Lines:
    """Hands lines to the reader, leaves out comments between records, and counts.

    first: number of the line on which the record begins.
    """

    def __init__(self, text: str) -> None:
        self.lines = list(io.StringIO(text, newline=""))
        self.at = self.first = 0
        self.begun = False

    def begin(self) -> None:
        """A new record is asked for."""
        self.begun = False

    def delimiter(self) -> str:
        """What parts the cells of the header: the commonest of comma, semicolon and tab."""
        header = next((s for s in self.lines if s.strip() and not s.startswith("#")), "")
        return max(",;\t", key=header.count)

    def __iter__(self) -> "_Lines":
        return self

    def __next__(self) -> str:
        while self.at < len(self.lines):
            line = self.lines[self.at]
            self.at += 1
            if self.begun:
                return line
            if not line.startswith("#"):
                self.begun, self.first = True, self.at
                return line
        raise StopIteration


def _places(line: int, cells: list[str], faults: list[Fault]) -> dict[str, int]:
    """Column -> place, from the header."""
    places: dict[str, int] = {}
    for at, cell in enumerate(cells):
        column = cell.strip().casefold().replace(" ", "_")
        if column in places:
            faults.append(Fault(line=line, column=column, what="the column stands twice",
                                mend="take one of them out"))  # fmt: skip
        elif column in COLUMNS:
            places[column] = at
        else:
            near = get_close_matches(column, COLUMNS, 1)
            mend = f"write {near[0]}" if near else f"the columns are {', '.join(COLUMNS)}"
            faults.append(Fault(line=line, column=column[:40] or f"no. {at + 1}",
                                what="no column of a register", mend=mend))  # fmt: skip
    faults += [
        Fault(line=line, column=column, what="the column is missing", mend="add it to the header")
        for column in REQUIRED
        if column not in places
    ]
    return places


def _row(line: int, cells: list[str], places: dict[str, int], faults: list[Fault]) -> Maker | None:
    """A row as a maker; None, and its faults told, where it has any."""
    before = len(faults)
    if len(cells) > len(places):
        faults.append(
            Fault(line=line, what=f"{len(cells)} cells, the header has {len(places)}",
                  mend='put a text with a comma between " "')
        )  # fmt: skip
        return None
    said = {c: " ".join(cells[at].split()) if at < len(cells) else "" for c, at in places.items()}

    def fault(column: str, what: str, mend: str) -> None:
        faults.append(Fault(line=line, column=column, what=what, mend=mend))

    for column, value in said.items():
        for what, mend in _cell_faults(column, value):
            fault(column, what, mend)
    if before == len(faults):
        for what, mend in _mark_faults(said["marks"]):
            fault("marks", what, mend)
    country = said["country"].upper()
    if country and not (len(country) == 2 and country.isascii() and country.isalpha()):
        fault("country", f"{said['country'][:40]} is no country code",
              "write the two letters of ISO 3166-1, as GB, US, DE")  # fmt: skip
    kind = said.get("kind", "").casefold() or "maker"
    if kind not in KINDS:
        fault("kind", f"{kind[:40]} is not known", f"write one of {', '.join(KINDS)}")
    years = {c: _year(said.get(c, "")) for c in ("year_from", "year_to")}
    for column, year in years.items():
        if year is None and said.get(column):
            fault(column, f"{said[column][:40]} is no year",
                  f"write four figures, {FIRST_YEAR} to {LAST_YEAR}, or leave it empty")  # fmt: skip
    low, high = years["year_from"], years["year_to"]
    if low is not None and high is not None and low > high:
        fault("year_to", f"{high} is before {low}", "put the earlier year into year_from")
    if len(faults) > before:
        return None
    source = said.get("source", "").replace(";", ",")
    sure = Confidence.SOURCED if source else Confidence.MEMORY
    return Maker(
        id=f"{OWN}:{line}:{said['name']}",
        name=said["name"],
        marks=said["marks"],
        device=said.get("device", ""),
        place=said.get("place", ""),
        country=country,
        year_from=low,
        year_to=high,
        kind=kind,
        wares=said.get("wares", ""),
        note=said.get("note", ""),
        source=f"{OWN}: {source}" if source else OWN,
        confidence=sure,
        mark_confidence=sure,
    )


def _cell_faults(column: str, value: str) -> Iterator[tuple[str, str]]:
    """What is wrong with a cell, whatever its column."""
    if column in REQUIRED and not value:
        yield "is empty", "fill it in"
    if len(value) > MAX_CELL:
        yield f"longer than {MAX_CELL} characters", "shorten it"
    elif not value.isprintable() and any(unicodedata.category(c) in ("Cc", "Cs") for c in value):
        yield "holds a control character", "take it out"


def _year(text: str) -> int | None:
    if not _YEAR.fullmatch(text):
        return None
    year = int(text)
    return year if FIRST_YEAR <= year <= LAST_YEAR else None


def _mark_faults(text: str) -> Iterator[tuple[str, str]]:
    """What is wrong with the marks of a cell, parted by semicolons."""
    if _PLAIN.fullmatch(text):
        return
    marks = [m.strip() for m in text.split(";")]
    if not any(marks):
        yield "holds no mark", "write the letters as struck, as W&D or PB/AB"
    for mark in filter(None, marks):
        if _PLAIN.fullmatch(mark):
            continue
        try:
            parse(mark)
        except TranscriptionError as fault:
            yield f"{mark[:40]}: {fault}", "see docs/register.md on how marks are written"
