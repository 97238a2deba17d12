"""Tables of other people's making, read whole: headers, rows, which column is what, what is wrong.

``read_table`` reads a file, ``guess`` finds the mapping for a ``Schema``, ``convert`` makes the rows.
A register is the first kind of table (``register``); others need a schema alone.
"""

from planish.intake.convert import REJECTED, Converted, as_csv, convert, rejects_csv
from planish.intake.mapping import Columns, guess
from planish.intake.read import read_table
from planish.intake.register import REGISTER, Imported, import_register
from planish.intake.schema import CellError, Field, Schema
from planish.intake.table import Fault, IntakeError, Row, Table, without

__all__ = [
    "REGISTER",
    "REJECTED",
    "CellError",
    "Columns",
    "Converted",
    "Fault",
    "Field",
    "Imported",
    "IntakeError",
    "Row",
    "Schema",
    "Table",
    "as_csv",
    "convert",
    "guess",
    "import_register",
    "read_table",
    "rejects_csv",
    "without",
]
