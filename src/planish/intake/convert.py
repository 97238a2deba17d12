"""A table to rows of a schema: each cell by its field's reader; what fails is set aside whole."""

import csv
import io
from collections.abc import Iterable, Sequence

import msgspec

from planish.intake.mapping import Columns
from planish.intake.schema import CellError, Read, Schema
from planish.intake.table import Fault, Row, Table

#: what the file of rejects has before the person's own columns
REJECTED = ("row in the file", "what is wrong")


class Converted(msgspec.Struct, frozen=True, kw_only=True):
    """Rows of the result, each with its number in the file; and the rows set aside, with faults."""

    rows: tuple[tuple[int, dict[str, str]], ...]
    rejects: tuple[Row, ...]
    faults: tuple[Fault, ...]


def convert(table: Table, columns: Columns, schema: Schema) -> Converted:
    """Every row of the table, taken or set aside.

    What no field takes goes into the schema's rest, with the name of its column, so that nothing
    is lost.
    """
    readers: list[tuple[int, str, Read | None]] = []
    for at, header in enumerate(table.headers):
        field = schema.field(columns.columns.get(header, ""))
        cells = [row.cells[at] for row in table.rows if row.cells[at]] if field else []
        readers.append((at, header, field.reader(cells) if field else None))
    rows: list[tuple[int, dict[str, str]]] = []
    rejects = list(table.spoilt)
    faults = list(table.faults)
    for row in table.rows:
        found, wrong = _row(row, readers, columns, schema)
        if wrong:
            faults += wrong
            rejects.append(row)
        else:
            rows.append((row.number, found))
    return Converted(
        rows=tuple(rows),
        rejects=tuple(sorted(rejects, key=lambda r: r.number)),
        faults=tuple(sorted(faults, key=lambda f: f.row)),
    )


def _row(
    row: Row,
    readers: Sequence[tuple[int, str, Read | None]],
    columns: Columns,
    schema: Schema,
) -> tuple[dict[str, str], list[Fault]]:
    """The values of one row, and what is wrong with it."""
    found: dict[str, str] = dict(columns.fixed)
    own: set[str] = set()
    beside: list[str] = []
    wrong: list[Fault] = []
    for at, header, reader in readers:
        cell = row.cells[at]
        if not cell:
            continue
        if reader is None:
            beside.append(f"{' '.join(header.split())}: {' '.join(cell.split())}")
            continue
        try:
            read = reader(cell)
        except CellError as fault:
            wrong.append(Fault(row=row.number, column=header, what=fault.what, mend=fault.mend))
            continue
        for name, value in read.items():
            if name == schema.rest:
                beside.append(value)
            elif value:
                # a row's own value goes before one fixed for all; two of its own stand together
                before = found[name] if name in own else ""
                found[name] = value if before in ("", value) else f"{before}; {value}"
                own.add(name)
    if schema.rest and beside:
        found[schema.rest] = "; ".join(filter(None, [found.get(schema.rest, ""), *beside]))
    wrong += [
        Fault(row=row.number, column=columns.of(c) or c, what="is empty", mend="fill it in")
        for c in schema.required
        if not found.get(c) and not any(f.column == columns.of(c) for f in wrong)
    ]
    return found, wrong


def as_csv(rows: Iterable[dict[str, str]], names: Sequence[str]) -> str:
    """Rows as CSV with a header."""
    out = io.StringIO(newline="")
    writer = csv.DictWriter(out, names, restval="", lineterminator="\n")
    writer.writeheader()
    writer.writerows(rows)
    return out.getvalue()


def rejects_csv(table: Table, rejects: Sequence[Row], faults: Sequence[Fault]) -> str:
    """The rows set aside, as they came, with their number and what is wrong.

    Mended, the file can be imported again: the first two columns are known and passed over.
    """
    why: dict[int, list[str]] = {}
    for fault in faults:
        column = f"{fault.column}: " if fault.column else ""
        why.setdefault(fault.row, []).append(f"{column}{fault.what}; {fault.mend}")
    width = max([len(table.headers), *(len(row.cells) for row in rejects)])
    extra = [f"cell {n}" for n in range(len(table.headers) + 1, width + 1)]
    out = io.StringIO(newline="")
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow([*REJECTED, *table.headers, *extra])
    for row in rejects:
        writer.writerow([row.number, " | ".join(why.get(row.number, [])), *row.cells])
    return out.getvalue()
