"""The file of sales: CSV with a header, one row a sale, read back exactly as it was written.

``docs/worth.md`` explains each column. Every fault of a file is told at once, each with row, column
and how to mend it. Figures have a decimal point; weights are in grams.
"""

import csv
import datetime as dt
import io
from collections.abc import Callable, Container, Iterable, Mapping
from decimal import Decimal, InvalidOperation
from enum import StrEnum
from typing import Any, NoReturn

import msgspec

from planish.quantity import Fineness, Mass, Money, QuantityError, UncertainDate
from planish.quantity.numbers import digits
from planish.worth.comparables import Basis
from planish.worth.sales import Sale, identity_of
from planish.worth.traits import (
    CONDITIONS,
    Attribution,
    Engraving,
    Fault,
    Grouping,
    Metal,
    Provenance,
    Traits,
)

REQUIRED = ("date", "venue", "price", "currency", "basis")
COLUMNS = (
    "id", "date", "venue", "sale", "lot", "title", "price", "currency", "basis", "premium",
    "form", "maker", "attribution", "pattern", "style", "made", "place", "metal", "fineness",
    "gross_g", "net_g", "condition", "engraving", "faults", "pieces", "grouping", "provenance",
    "piece", "source", "note",
)  # fmt: skip
#: closed lists of words, by column
WORDS: Mapping[str, type[StrEnum]] = {
    "basis": Basis, "attribution": Attribution, "metal": Metal, "engraving": Engraving,
    "faults": Fault, "grouping": Grouping, "provenance": Provenance,
}  # fmt: skip
MAX_CELL = 5_000
MAX_CHARACTERS = 2_000_000_000
_TRAITS = ("form", "maker", "pattern", "style", "place")


class RowFault(msgspec.Struct, frozen=True, kw_only=True):
    """What is wrong with a row, where, and how to mend it. row: from 1, the header counted."""

    row: int
    column: str = ""
    what: str
    mend: str

    def __str__(self) -> str:
        where = f"row {self.row}" + (f", column {self.column}" if self.column else "")
        return f"{where}: {self.what}; {self.mend}"


class SalesFaults(ValueError):  # noqa: N818  # says what it holds
    """All faults of one file or row of sales."""

    def __init__(self, name: str, faults: Iterable[RowFault]) -> None:
        self.name, self.faults = name, tuple(faults)
        more = f" (and {len(self.faults) - 1} more)" if len(self.faults) > 1 else ""
        super().__init__(f"{name}, {self.faults[0]}{more}")


class _Cells:
    """The cells of one row, read one by one; faults are gathered."""

    def __init__(self, said: Mapping[str, str], row: int) -> None:
        self.said = {c: plain for c, v in said.items() if v and (plain := " ".join(v.split()))}
        self.row = row
        self.faults: list[RowFault] = []

    def text(self, column: str) -> str:
        return self.said.get(column, "")

    def fault(self, column: str, what: str, mend: str) -> None:
        self.faults.append(RowFault(row=self.row, column=column, what=what, mend=mend))

    def read(self, column: str, reader: Callable[[str], Any]) -> Any:
        """The value of a cell; None where it is empty or at fault."""
        text = self.text(column)
        if not text:
            return None
        try:
            return reader(text)
        except QuantityError as fault:
            self.fault(column, f"'{text[:40]}': {fault.fault}", fault.remedy)
        except ValueError as fault:
            what, _, mend = str(fault).partition("; ")
            self.fault(column, f"'{text[:40]}' {what}", mend)
        return None


def read_row(said: Mapping[str, str], row: int, today: dt.date) -> Sale:
    """One row of the file as a sale.

    today: a sale after it is refused.

    Raises:
        SalesFaults: every fault of the row.
    """
    cells = _Cells(said, row)
    for column, value in said.items():
        if len(value) > MAX_CELL:
            cells.fault(column, f"{len(value):,} characters are too many", f"keep {MAX_CELL:,}")
    for column in REQUIRED:
        if not cells.text(column):
            cells.fault(column, "is empty", "fill it in")
    date = cells.read("date", UncertainDate)
    if date is not None and (date.earliest or dt.date.max) > today:
        cells.fault("date", f"{date} lies after {today}", "a sale to come is no sale: mend the day")
    zero = cells.read("currency", lambda text: Money(Decimal(0), text.upper()))
    amount = cells.read("price", _figure)
    if amount is not None and amount <= 0:
        cells.fault("price", f"{amount} is not above zero", "mend it, or take the row out")
    basis = cells.read("basis", _word(Basis))
    premium = cells.read("premium", _share)
    traits = _traits(cells)
    if cells.faults or date is None or traits is None:
        raise SalesFaults("sale", cells.faults)
    sale = Sale(
        id=cells.text("id") or "new",
        row=row,
        date=date,
        venue=cells.text("venue"),
        sale=cells.text("sale"),
        lot=cells.text("lot"),
        title=cells.text("title"),
        price=Money(amount, zero.currency),
        basis=basis,
        premium=premium,
        traits=traits,
        piece=cells.text("piece"),
        source=cells.text("source"),
        note=cells.text("note"),
    )
    return sale if cells.text("id") else msgspec.structs.replace(sale, id=identity_of(sale))


def _traits(cells: _Cells) -> Traits | None:
    found: dict[str, Any] = {name: cells.text(name) for name in _TRAITS}
    found["made"] = cells.read("made", UncertainDate)
    found["fineness"] = cells.read("fineness", lambda text: Fineness(_figure(text)))
    found["condition"] = cells.read("condition", _grade)
    found["pieces"] = cells.read("pieces", _count)
    for column in ("gross", "net"):
        found[column] = cells.read(f"{column}_g", _grams)
    for column in ("attribution", "metal", "engraving", "grouping", "provenance"):
        found[column] = cells.read(column, _word(WORDS[column]))
    found["faults"] = cells.read("faults", _faults) or ()
    if cells.faults:
        return None
    try:
        return Traits(**found)
    except QuantityError as fault:
        column = {"net weight": "net_g", "gross weight": "gross_g"}.get(fault.what, fault.what)
        cells.fault(column, f"'{cells.text(column)[:40]}': {fault.fault}", fault.remedy)
        return None


def _figure(text: str) -> Decimal:
    try:
        value = Decimal(text)
    except InvalidOperation:
        _refuse("is no figure", "write it with a decimal point and without signs, as 1250.00")
    if not value.is_finite() or abs(value.adjusted()) > 20:
        _refuse("is no figure that can be", "look at it again")
    return value


def _share(text: str) -> Decimal:
    value = _figure(text)
    if not 0 <= value < 1:
        _refuse("is no share of the hammer price", "write 0.25 for 25 %")
    return value


def _grams(text: str) -> Mass:
    value = _figure(text)
    if value <= 0:
        _refuse("is no weight: it is not above zero", "weigh again, or leave it empty")
    return Mass(value)


def _grade(text: str) -> int:
    if text.casefold() in CONDITIONS:
        return CONDITIONS.index(text.casefold())
    return _count(text)


def _count(text: str) -> int:
    if not (text.isascii() and text.isdigit() and len(text) < 10):
        _refuse("is no whole number", "write figures only")
    return int(text)


def _word(words: type[StrEnum]) -> Callable[[str], StrEnum]:
    def read(text: str) -> StrEnum:
        try:
            return words(text.casefold())
        except ValueError:
            _refuse("is no word of this column", f"write one of {', '.join(words)}")

    return read


def _faults(text: str) -> tuple[Fault, ...]:
    read = _word(Fault)
    found = {read(part.strip()) for part in text.split(";") if part.strip()}
    return tuple(fault for fault in Fault if fault in found)


def _refuse(what: str, mend: str) -> NoReturn:
    raise ValueError(f"{what}; {mend}")


def cells_of(sale: Sale) -> dict[str, str]:
    """The sale as cells by column."""
    t = sale.traits
    found = {name: getattr(sale, name) for name in ("id", "venue", "sale", "lot", "title", "piece",
                                                    "source", "note")}  # fmt: skip
    found |= {name: getattr(t, name) for name in _TRAITS}
    found["date"] = sale.date.edtf
    found["price"], found["currency"] = digits(sale.price.amount), sale.price.currency
    found["basis"] = sale.basis.value
    found["premium"] = "" if sale.premium is None else digits(sale.premium)
    found["made"] = t.made.edtf if t.made else ""
    found["fineness"] = digits(t.fineness.permille) if t.fineness else ""
    for column in ("gross", "net"):
        mass = getattr(t, column)
        found[f"{column}_g"] = digits(mass.grams) if mass else ""
    for column in ("attribution", "metal", "engraving", "grouping", "provenance"):
        word = getattr(t, column)
        found[column] = word.value if word else ""
    found["condition"] = "" if t.condition is None else str(t.condition)
    found["pieces"] = "" if t.pieces is None else str(t.pieces)
    found["faults"] = "; ".join(t.faults)
    return found


def as_csv(sales: Iterable[Sale]) -> str:
    """Sales as the text of a file, every column present."""
    out = io.StringIO(newline="")
    writer = csv.DictWriter(out, COLUMNS, lineterminator="\n")
    writer.writeheader()
    writer.writerows(cells_of(sale) for sale in sales)
    return out.getvalue()


def parse_sales(text: str, name: str, today: dt.date) -> tuple[Sale, ...]:
    """The sales of a file.

    name: what messages call it.

    Raises:
        SalesFaults: the text has faults; all of them are told.
    """
    if len(text) > MAX_CHARACTERS:
        fault = f"longer than {MAX_CHARACTERS:,} characters"
        raise SalesFaults(name, [RowFault(row=1, what=fault, mend="part it into several files")])
    reader = csv.reader(io.StringIO(text.removeprefix("\ufeff"), newline=""), strict=True)
    sales: list[Sale] = []
    faults: list[RowFault] = []
    first: dict[str, int] = {}
    try:
        header = [cell.strip().casefold() for cell in next(reader, [])]
        faults += _header_faults(header)
        if faults:
            raise SalesFaults(name, faults)
        for row, cells in enumerate(reader, 2):
            if not any(cell.strip() for cell in cells):
                continue
            if len(cells) > len(header):
                what = f"{len(cells)} cells, the header has {len(header)}"
                mend = 'put a text with a comma between " "'
                faults.append(RowFault(row=row, what=what, mend=mend))
                continue
            said = dict(zip(header, cells, strict=False))
            try:
                sale = read_row(said, row, today)
            except SalesFaults as found:
                faults += found.faults
                continue
            if not said.get("id", "").strip():
                sale = numbered(sale, first)
            if (before := first.setdefault(sale.id, row)) != row:
                what, mend = f"{sale.id} stands in row {before} too", "give each its own id"
                faults.append(RowFault(row=row, column="id", what=what, mend=mend))
            sales.append(sale)
    except csv.Error as fault:
        what = f"cannot be parted into cells ({fault})"
        mend = 'close each " with another, and double a " that is part of the text'
        faults.append(RowFault(row=reader.line_num, what=what, mend=mend))
    if faults:
        raise SalesFaults(name, faults)
    return tuple(sales)


def numbered(sale: Sale, taken: Container[str]) -> Sale:
    """A sale whose id came out of its cells, with a number after it where that id is taken."""
    found, n = sale.id, 1
    while found in taken:
        n += 1
        found = f"{sale.id}-{n}"
    return msgspec.structs.replace(sale, id=found)


def _header_faults(header: list[str]) -> list[RowFault]:
    if not any(header):
        mend = f"begin with {','.join(COLUMNS[:9])}"
        return [RowFault(row=1, what="there is no header", mend=mend)]
    faults = [
        RowFault(row=1, column=column[:40], what="no column of a file of sales",
                 mend=f"the columns are {', '.join(COLUMNS)}")
        for column in header
        if column not in COLUMNS
    ]  # fmt: skip
    faults += [
        RowFault(row=1, column=column, what="the column stands twice", mend="take one out")
        for column in dict.fromkeys(header)
        if header.count(column) > 1
    ]
    faults += [
        RowFault(row=1, column=column, what="the column is missing", mend="add it to the header")
        for column in REQUIRED
        if column not in header
    ]
    return faults
