"""A table from a file, whatever its kind; the bytes tell, not the name alone."""

from pathlib import Path

from planish.intake.table import IntakeError, Table
from planish.intake.textfile import MAX_BYTES, read_text
from planish.intake.workbook import read_workbook

_WORKBOOKS = (".xlsx", ".xlsm")


def read_table(path: Path, sheet: str | None = None) -> Table:
    """The table of a CSV file or a workbook.

    sheet: of a workbook; only needed where several hold something.

    Raises:
        IntakeError: what, where and how to mend it.
    """
    try:
        with path.open("rb") as file:
            data = file.read(MAX_BYTES + 1)
    except OSError as fault:
        raise IntakeError(
            path.name, (fault.strerror or "cannot be read").lower(), "check the path"
        ) from None
    if not data:
        raise IntakeError(path.name, "nothing is in it", "give a table with a header line")
    if path.suffix.casefold() in _WORKBOOKS:
        return read_workbook(data, path.name, sheet)
    if path.suffix.casefold() == ".xls":
        raise IntakeError(path.name, "old workbooks (.xls) are not read", "save it as .xlsx or CSV")
    if sheet is not None:
        raise IntakeError(path.name, "a text file has no sheets", "leave out --sheet")
    return read_text(data, path.name)
