"""Pasted text: a table, where it is one, as from a page or a sheet."""

import re
from collections.abc import Mapping

import msgspec

from planish.intake.convert import convert
from planish.intake.mapping import guess
from planish.intake.sales import PRICED, SALES, said_of
from planish.intake.schema import CellError
from planish.intake.table import IntakeError, Table
from planish.intake.textfile import read_text
from planish.worth.paste import Draft
from planish.worth.table import REQUIRED

NAME = "pasted text"
_LEAST_COLUMNS = 3


def table_of(text: str) -> Table | None:
    """The table of a pasted text; None where it is prose.

    A table has a header of which a price and two more columns are known, parted by tabs, upright
    lines (with or without the line of dashes that pages put under a header), semicolons or commas.
    """
    lines = [s for s in text.replace("\r\n", "\n").split("\n") if s.strip()]
    lines = [s for s in lines if not re.fullmatch(r"[\s|:+=-]+", s)]
    if len(lines) < 2:
        return None
    if all(s.strip().startswith("|") for s in lines):
        lines = [s.strip().strip("|") for s in lines]
    try:
        table = read_text("\n".join(lines).encode(), NAME)
    except IntakeError:
        return None
    found = {field for field in guess(table, SALES).columns.values() if field}
    if len(found) < _LEAST_COLUMNS or not found & {"price", *PRICED}:
        return None
    return table


def drafts_of(text: str, given: Mapping[str, str]) -> tuple[Draft, ...]:
    """The sales of a pasted table, to be confirmed; none where the text is prose.

    given: cells for every row that has none of its own. A row that cannot be read comes back
    without cells, its faults as notes.
    """
    table = table_of(text)
    if table is None:
        return ()
    columns = msgspec.structs.replace(guess(table, SALES), fixed=dict(given))
    converted = convert(table, columns, SALES)
    left = tuple(h for h, field in columns.columns.items() if not field)
    shown = {
        row.number: " | ".join(filter(None, row.cells)) for row in (*table.rows, *table.spoilt)
    }
    found: dict[int, Draft] = {}
    for number, values in converted.rows:
        cells: dict[str, str] = {}
        notes: tuple[str, ...] = ()
        try:
            cells = said_of(values)
        except CellError as fault:
            notes = (str(fault),)
        missing = tuple(c for c in REQUIRED if not cells.get(c))
        found[number] = Draft(
            text=shown[number], cells=cells, missing=missing, notes=notes, unread=left
        )
    for row in converted.rejects:
        wrong = tuple(str(f) for f in converted.faults if f.row == row.number)
        found[row.number] = Draft(
            text=shown[row.number], cells={}, missing=REQUIRED, notes=wrong, unread=left
        )
    return tuple(found[n] for n in sorted(found))
