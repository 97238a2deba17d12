"""A table as it comes: headers and rows of text, each row with its number in the file."""

from collections.abc import Sequence

import msgspec

#: bounds of a table: far above any register, inventory or sales list
MAX_ROWS, MAX_COLUMNS, MAX_CELL = 1_000_000, 500, 32_767


class IntakeError(ValueError):
    """A file that cannot be read as a table at all: what, where, how to mend it."""

    def __init__(self, where: str, what: str, mend: str) -> None:
        self.where, self.what, self.mend = where, what, mend
        super().__init__(f"{where}: {what}; {mend}")


class Fault(msgspec.Struct, frozen=True, kw_only=True):
    """One thing that keeps a row out: row and column as in the person's own file."""

    row: int
    column: str = ""
    what: str
    mend: str

    def __str__(self) -> str:
        """What, where and how to mend it, in one line."""
        where = f"row {self.row}" + (f", column {self.column}" if self.column else "")
        return f"{where}: {self.what}; {self.mend}"


class Row(msgspec.Struct, frozen=True):
    """One row: its number in the file, from 1 with the header counted, and its cells."""

    number: int
    cells: tuple[str, ...]


class Table(msgspec.Struct, frozen=True, kw_only=True):
    """Headers and rows of one file.

    Every row has a cell for every header. form: how the file was read, in words, for the person to
    check ("UTF-8, parted by semicolons"). faults: rows of the file that could not be taken as they
    are (too many cells, a formula without a value); such rows are in ``spoilt``, not in ``rows``.
    """

    name: str
    headers: tuple[str, ...]
    rows: tuple[Row, ...]
    form: str
    faults: tuple[Fault, ...] = ()
    spoilt: tuple[Row, ...] = ()


def without(table: Table, names: Sequence[str]) -> Table:
    """The table without some columns, where it has them; rows that were set aside stay whole."""
    kept = [at for at, header in enumerate(table.headers) if header not in names]
    return msgspec.structs.replace(
        table,
        headers=tuple(table.headers[at] for at in kept),
        rows=tuple(Row(r.number, tuple(r.cells[at] for at in kept)) for r in table.rows),
    )


def tidy(text: str) -> str:
    """A cell without space at its ends, line ends as one kind."""
    return text.replace("\r\n", "\n").replace("\r", "\n").strip(" \t\n\u00a0\ufeff")


def built(
    name: str,
    form: str,
    records: Sequence[tuple[int, Sequence[str]]],
    faults: Sequence[Fault] = (),
) -> Table:
    """A table of records, the first of which is the header.

    faults: what the reader found wrong with cells; their rows are set aside.

    Raises:
        IntakeError: there is no header, it names a column twice, or the table is too large.
    """
    filled = [(n, [tidy(c) for c in cells]) for n, cells in records]
    filled = [(n, cells) for n, cells in filled if any(cells)]
    if not filled:
        raise IntakeError(name, "nothing is in it", "give a table with a header line")
    first, headers = filled[0]
    while headers and not headers[-1]:
        headers.pop()
    _check_headers(name, first, headers)
    if len(filled) - 1 > MAX_ROWS:
        raise IntakeError(name, f"more than {MAX_ROWS:,} rows", "part it into several files")
    width = len(headers)
    bad = {fault.row for fault in faults}
    told = list(faults)
    rows: list[Row] = []
    spoilt: list[Row] = []
    for number, cells in filled[1:]:
        extra = [c for c in cells[width:] if c]
        if extra:
            told.append(
                Fault(
                    row=number,
                    what=f"{width + len(extra)} cells, the header has {width}",
                    mend='name the column in the header, or put a text with commas between " "',
                )
            )
        long = next((c for c in cells if len(c) > MAX_CELL), None)
        if long is not None:
            told.append(
                Fault(row=number, what=f"a cell of {len(long):,} characters", mend="shorten it")
            )
        if extra or long is not None or number in bad:
            spoilt.append(Row(number, tuple(cells)))
        else:
            rows.append(Row(number, tuple((cells + [""] * width)[:width])))
    return Table(
        name=name,
        headers=tuple(headers),
        rows=tuple(rows),
        form=form,
        faults=tuple(sorted(told, key=lambda fault: fault.row)),
        spoilt=tuple(spoilt),
    )


def _check_headers(name: str, line: int, headers: Sequence[str]) -> None:
    where = f"{name}, row {line}"
    if len(headers) > MAX_COLUMNS:
        raise IntakeError(where, f"{len(headers)} columns", f"keep at most {MAX_COLUMNS}")
    # a register without a header begins with a maker: years and figures are no names of columns
    if headers and all(not any(c.isalpha() for c in h) for h in headers):
        raise IntakeError(
            where, "no header: it holds figures only", "put the names of the columns above"
        )
    seen: dict[str, str] = {}
    for at, header in enumerate(headers, 1):
        if not header:
            raise IntakeError(
                where, f"column {at} has no name in the header", "name it, or take the column out"
            )
        key = header.casefold()
        if key in seen:
            raise IntakeError(where, f"two columns are called {header[:40]}", "rename one of them")
        seen[key] = header
