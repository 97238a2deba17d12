"""Tables in workbooks (Office Open XML, ECMA-376): cells by openpyxl, within bounds.

A workbook is a ZIP archive of XML. It is refused unread where it would unpack to more than a table
needs, or where its XML declares a document type (the way in of entity bombs). Values are read as
they were last worked out; a formula that was never worked out has none and is told.
"""

import datetime as dt
import io
import re
import warnings
import zipfile
import zlib
from collections.abc import Iterable, Iterator
from typing import Any
from xml.etree.ElementTree import ParseError

from planish.intake.table import MAX_COLUMNS, MAX_ROWS, Fault, IntakeError, Table, built

MAX_BYTES = 100_000_000
#: what a workbook may unpack to; 100,000 rows of a register are about 60 MB
MAX_UNPACKED, MAX_MEMBERS = 1_000_000_000, 10_000
#: XML of a table packs to a tenth or a twentieth; a bomb to a thousandth
_MAX_RATIO, _RATIO_FROM = 200, 10_000_000
_CHUNK = 1 << 20
_FORMULA = re.compile(rb'<(?:\w+:)?c\b[^>]*?\br="([A-Z]{1,3})(\d{1,7})"[^>]*>\s*<(?:\w+:)?f\b')
_MERGED = re.compile(
    rb'<(?:\w+:)?mergeCell\b[^>]*\bref="([A-Z]{1,3})(\d{1,7}):([A-Z]{1,3})(\d{1,7})"'
)
_DOCTYPE = re.compile(rb"<!(?:DOCTYPE|ENTITY)")


def read_workbook(data: bytes, name: str, sheet: str | None = None) -> Table:
    """The table of one sheet: the named one, or the only one that holds anything.

    Raises:
        IntakeError: it is no workbook, dangerous or too large, has no such sheet, or no header.
    """
    from openpyxl import load_workbook  # noqa: PLC0415  # 0.2 s to import, for workbooks only

    _within_bounds(data, name)
    try:
        with warnings.catch_warnings():
            # openpyxl warns of what it does not keep (styles, validation): nothing that is read
            warnings.simplefilter("ignore")
            book = load_workbook(io.BytesIO(data), read_only=True, data_only=True)
            try:
                chosen = _chosen(book, name, sheet)
                part = _part(chosen)
                records = list(_records(chosen, name))
            finally:
                book.close()
    except IntakeError:
        raise
    except (KeyError, ValueError, TypeError, AttributeError, IndexError, ParseError, OSError,
            zipfile.BadZipFile, zlib.error, EOFError) as fault:  # fmt: skip
        raise IntakeError(
            name, f"the workbook cannot be read ({type(fault).__name__})", "save it anew, or as CSV"
        ) from None
    formulas, merged = _scan(data, part)
    records, faults = _checked(records, formulas, merged)
    return built(name, f'workbook, sheet "{chosen.title}"', records, faults)


def _within_bounds(data: bytes, name: str) -> None:
    """Nothing, where the archive is a workbook that unpacks to a bounded size.

    Sizes are counted by unpacking: what an archive says of itself may be false.
    """
    if len(data) > MAX_BYTES:
        raise IntakeError(name, f"larger than {MAX_BYTES // 1_000_000} MB", "save it as CSV")
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as archive:
            infos = archive.infolist()
            names = {info.filename for info in infos}
            if "[Content_Types].xml" not in names:
                raise IntakeError(name, "it is no workbook", "give an .xlsx or a CSV file")
            if len(infos) > MAX_MEMBERS:
                raise IntakeError(name, f"{len(infos)} files within", "save it anew, or as CSV")
            if any(info.flag_bits & 1 for info in infos):
                raise IntakeError(name, "it is locked with a password", "save it without")
            total = 0
            for info in infos:
                total = _unpacked(archive, info, total, name)
    except (zipfile.BadZipFile, zlib.error, EOFError, OSError, NotImplementedError, RuntimeError):
        what = (
            "an old workbook (.xls), or one locked with a password"
            if data.startswith(b"\xd0\xcf\x11\xe0")
            else "no workbook, or a broken one"
        )
        raise IntakeError(name, f"it is {what}", "save it as .xlsx or CSV") from None


def _unpacked(archive: zipfile.ZipFile, info: zipfile.ZipInfo, total: int, name: str) -> int:
    size = 0
    head = b""
    with archive.open(info) as member:
        while chunk := member.read(_CHUNK):
            if not size:
                head = chunk[:_CHUNK]
            size += len(chunk)
            ratio = size / max(1, info.compress_size)
            if total + size > MAX_UNPACKED or (size > _RATIO_FROM and ratio > _MAX_RATIO):
                raise IntakeError(
                    name,
                    f"it unpacks to more than a table needs ({info.filename[:60]})",
                    "save the table alone, as .xlsx or CSV",
                )
    if info.filename.endswith((".xml", ".rels")) and _DOCTYPE.search(head):
        raise IntakeError(
            name, f"{info.filename[:60]} declares a document type", "save it anew, or as CSV"
        )
    return total + size


def _chosen(book: Any, name: str, sheet: str | None) -> Any:
    sheets = list(book.worksheets)
    if sheet is not None:
        found = next((s for s in sheets if s.title.casefold() == sheet.casefold()), None)
        if found is None:
            there = ", ".join(s.title for s in sheets)[:200]
            raise IntakeError(name, f'there is no sheet "{sheet[:40]}"', f"the sheets are {there}")
        return found
    filled = [s for s in sheets if any(True for row in _first_rows(s) if any(row))]
    if len(filled) > 1:
        there = ", ".join(s.title for s in filled)[:200]
        raise IntakeError(
            name, f"{len(filled)} sheets hold something: {there}", "name one: --sheet"
        )
    if not filled:
        raise IntakeError(name, "nothing is in it", "give a table with a header line")
    return filled[0]


def _first_rows(sheet: Any) -> Iterator[tuple[Any, ...]]:
    yield from sheet.iter_rows(max_row=50, max_col=50, values_only=True)


def _part(sheet: Any) -> str:
    """The sheet's file within the archive."""
    return str(sheet._worksheet_path).lstrip("/")  # noqa: SLF001  # openpyxl has no public name


def _records(sheet: Any, name: str) -> Iterator[tuple[int, list[str]]]:
    for number, row in enumerate(sheet.iter_rows(values_only=True), 1):
        if number > MAX_ROWS + 100:
            raise IntakeError(name, f"more than {MAX_ROWS:,} rows", "part it into several files")
        cells = [as_text(value) for value in row]
        while cells and not cells[-1]:
            cells.pop()
        if len(cells) > MAX_COLUMNS:
            raise IntakeError(
                f"{name}, row {number}", f"{len(cells)} columns", f"keep at most {MAX_COLUMNS}"
            )
        yield number, cells


def as_text(value: object) -> str:
    """A cell's value as a person would type it: whole numbers without a point, days as in ISO 8601.

    >>> as_text(1790.0), as_text(0.1), as_text(True)
    ('1790', '0.1', 'yes')
    """
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float):
        return str(int(value)) if value.is_integer() and abs(value) < 1e15 else repr(value)
    if isinstance(value, dt.datetime):
        midnight = value.time() == dt.time()
        return value.date().isoformat() if midnight else value.isoformat(sep=" ")
    if isinstance(value, dt.date | dt.time):
        return value.isoformat()
    return str(value)


def _scan(data: bytes, part: str) -> tuple[set[tuple[int, int]], list[tuple[int, int, int, int]]]:
    """Cells that hold a formula, and merged ranges, straight from the sheet's XML.

    Returns: (row, column) from 1; (first row, first column, last row, last column).
    """
    formulas: set[tuple[int, int]] = set()
    merged: list[tuple[int, int, int, int]] = []
    with zipfile.ZipFile(io.BytesIO(data)) as archive, archive.open(part) as member:
        kept = b""
        while chunk := member.read(_CHUNK):
            text = kept + chunk
            formulas.update((int(r), _column(c)) for c, r in _FORMULA.findall(text))
            merged += [
                (int(r1), _column(c1), int(r2), _column(c2))
                for c1, r1, c2, r2 in _MERGED.findall(text)
            ]
            kept = text[-512:]
    return formulas, list(dict.fromkeys(merged))


def _column(letters: bytes) -> int:
    """A=1, Z=26, AA=27."""
    number = 0
    for letter in letters:
        number = number * 26 + letter - 64
    return number


def _checked(
    records: list[tuple[int, list[str]]],
    formulas: set[tuple[int, int]],
    merged: Iterable[tuple[int, int, int, int]],
) -> tuple[list[tuple[int, list[str]]], list[Fault]]:
    """Faults of formulas without a value, and of cells merged across rows of the table."""
    by_row = dict(records)
    names = next((cells for _, cells in records if any(cells)), [])
    header = next((n for n, cells in records if any(cells)), 0)

    def column(at: int) -> str:
        return names[at - 1] if at <= len(names) else str(at)

    faults = []
    for number, at in sorted(formulas):
        cells = by_row.get(number, [])
        if at > len(cells) or not cells[at - 1]:
            faults.append(
                Fault(row=number, column=column(at), what="a formula without a value",
                      mend="open the workbook, let it work the formula out, save it")
            )  # fmt: skip
        elif cells[at - 1].startswith("#") and number != header:
            faults.append(
                Fault(row=number, column=column(at), what=f"the formula gives {cells[at - 1][:20]}",
                      mend="mend the formula, or write the value")
            )  # fmt: skip
    titles = set()
    for row1, col1, row2, col2 in merged:
        if row1 <= header and col2 > col1 and sum(map(bool, by_row.get(row1, []))) == 1:
            titles.add(row1)  # a title over the table: no header
            continue
        faults += [
            Fault(row=number, column=column(col1), what="merged cells",
                  mend="unmerge them, and write each row's own value")
            for number in range(max(row1, 1), min(row2, row1 + 10_000) + 1)
            if number in by_row and number != header and any(by_row[number])
        ]  # fmt: skip
    if titles and header in titles:
        records = [(n, cells) for n, cells in records if n not in titles]
        return _checked_again(records, faults)
    return records, faults


def _checked_again(
    records: list[tuple[int, list[str]]], faults: list[Fault]
) -> tuple[list[tuple[int, list[str]]], list[Fault]]:
    """Faults that hold for the header found beneath a title are none of a row."""
    header = next((n for n, cells in records if any(cells)), 0)
    return records, [fault for fault in faults if fault.row != header]
