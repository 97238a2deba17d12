"""What is written is read back: any table, in any encoding, delimiter or as a workbook."""

import contextlib
import csv
import datetime as dt
import io
import time
import zipfile
from collections.abc import Sequence
from pathlib import Path

import openpyxl
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from planish.intake import IntakeError, Table, read_table
from planish.intake.table import tidy
from planish.intake.textfile import read_text
from planish.intake.workbook import read_workbook

LETTERS = "abcXYZ ÄÖüéñ·&/.0123456789'\"-,;\n"
HEADERS = ("Maker", "Mark", "Years", "Notes")
CELL = st.text(alphabet=LETTERS, max_size=12).map(tidy)
ROWS = st.lists(st.lists(CELL, min_size=4, max_size=4).filter(any), min_size=1, max_size=8)
# RFC 4180: commas, quotes doubled, CRLF; the other signs are those of spreadsheets elsewhere
SIGNS = (",", ";", "\t", "|")
ENCODINGS = ("utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "cp1252")


def cells(table: Table) -> list[list[str]]:
    assert table.faults == ()
    return [list(row.cells) for row in table.rows]


def as_text(rows: list[list[str]], sign: str, end: str = "\r\n") -> str:
    out = io.StringIO(newline="")
    csv.writer(out, delimiter=sign, lineterminator=end).writerows([list(HEADERS), *rows])
    return out.getvalue()


def as_book(rows: Sequence[Sequence[object]], title: str = "Sheet") -> bytes:
    book = openpyxl.Workbook()
    assert book.active is not None
    book.active.title = title
    for row in rows:
        book.active.append(list(row))
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


@given(rows=ROWS, sign=st.sampled_from(SIGNS), end=st.sampled_from(["\r\n", "\n"]),
       encoding=st.sampled_from(ENCODINGS))  # fmt: skip
def test_a_text_table_comes_back(rows: list[list[str]], sign: str, end: str, encoding: str) -> None:
    found = read_text(as_text(rows, sign, end).encode(encoding), "mine.csv")

    assert found.headers == HEADERS
    assert cells(found) == rows


@settings(suppress_health_check=[HealthCheck.too_slow], deadline=None, max_examples=40)
@given(rows=ROWS)
def test_a_workbook_comes_back(rows: list[list[str]]) -> None:
    # a cell that begins with = would be a formula to openpyxl: the alphabet holds none
    found = read_workbook(as_book([list(HEADERS), *rows]), "mine.xlsx")

    assert found.headers == HEADERS
    assert cells(found) == rows


def test_numbers_and_days_of_a_workbook_are_as_people_type_them() -> None:
    rows: list[list[object]] = [["a", "b", "c", "d"], [1790, 0.5, True, dt.date(1884, 5, 30)]]
    found = read_workbook(as_book(rows), "x.xlsx")

    assert cells(found) == [["1790", "0.5", "yes", "1884-05-30"]]


def test_rows_keep_their_numbers_in_the_file() -> None:
    text = '# a remark\n\nMaker,Mark\n\nA,AB\n"B\nb",BB\nC,CC\n'
    found = read_text(text.encode(), "x.csv")

    assert [row.number for row in found.rows] == [5, 6, 8]


def test_windows_letters_are_read() -> None:
    found = read_text("Meister;Marke\nMüller;M–ß\n".encode("cp1252"), "x.csv")

    assert found.form == "Windows-1252, parted by semicolons"
    assert cells(found) == [["Müller", "M–ß"]]


@pytest.mark.parametrize(
    ("data", "says"),
    [
        (b"", "nothing is in it"),
        (b" \n\n", "nothing is in it"),
        (b"# only a remark\n", "nothing is in it"),
        (b"1790,1805\n1791,1806\n", "no header"),
        (b"a,a\n1,2\n", "two columns are called a"),
        (b"a,,b\n1,2,3\n", "column 2 has no name"),
        (b'a,b\n"open,2\n', "cannot be parted into cells"),
        (bytes(range(256)) * 4, "it is no text"),
        (b"PK\x03\x04rest", "a workbook or archive"),
        (b"\xff\xd8\xff\xe0 jpeg", "a photograph"),
        (b"%PDF-1.7", "a PDF"),
        (b"a,b\n\x81\x8d,\x02\n", "neither UTF-8, UTF-16 nor Windows-1252"),
        (b"\xff\xfea\x00\x00", "broken UTF-16"),
    ],
)
def test_bad_text_is_refused_in_one_line(tmp_path: Path, data: bytes, says: str) -> None:
    path = tmp_path / "mine.csv"
    path.write_bytes(data)
    with pytest.raises(IntakeError, match=says) as refused:
        read_table(path)
    assert "\n" not in str(refused.value)


def test_a_row_with_too_many_cells_is_set_aside_whole() -> None:
    found = read_text(b"a,b\n1,2\n1,2,3\n4,5\n", "x.csv")

    assert [row.cells for row in found.rows] == [("1", "2"), ("4", "5")]
    assert found.spoilt[0].cells == ("1", "2", "3")
    assert str(found.faults[0]).startswith("row 3: 3 cells, the header has 2")


def changed(data: bytes, part: str, old: str, new: str) -> bytes:
    """A workbook with a piece of its XML replaced."""
    out = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as book, zipfile.ZipFile(out, "w") as copy:
        for name in book.namelist():
            content = book.read(name)
            if name == part:
                assert old in content.decode()
                content = content.decode().replace(old, new).encode()
            copy.writestr(name, content)
    return out.getvalue()


SHEET = "xl/worksheets/sheet1.xml"


def test_a_formula_that_was_worked_out_gives_its_value_and_one_that_was_not_is_told() -> None:
    rows: list[list[object]] = [["Maker", "From", "To"], ["A", 1790, "=B2+15"], ["B", 1800, 1805]]
    raw = as_book(rows)  # openpyxl writes formulas without values
    found = read_workbook(raw, "x.xlsx")
    assert str(found.faults[0]).startswith("row 2, column To: a formula without a value")
    assert [row.number for row in found.rows] == [3]
    assert found.spoilt[0].number == 2

    worked = changed(raw, SHEET, "<f>B2+15</f><v />", "<f>B2+15</f><v>1805</v>")
    assert cells(read_workbook(worked, "x.xlsx")) == [["A", "1790", "1805"], ["B", "1800", "1805"]]


def test_merged_cells_are_told() -> None:
    book = openpyxl.Workbook()
    sheet = book.active
    assert sheet is not None
    for row in (["Maker", "Town"], ["A", "Bath"], ["B", None], ["C", "York"]):
        sheet.append(row)
    sheet.merge_cells("B2:B3")
    out = io.BytesIO()
    book.save(out)
    found = read_workbook(out.getvalue(), "x.xlsx")

    assert [(f.row, f.column, f.what) for f in found.faults] == [
        (2, "Town", "merged cells"), (3, "Town", "merged cells"),
    ]  # fmt: skip
    assert [row.number for row in found.rows] == [4]
    assert [row.number for row in found.spoilt] == [2, 3]


def test_a_title_over_the_table_is_no_header() -> None:
    book = openpyxl.Workbook()
    sheet = book.active
    assert sheet is not None
    for row in (["Makers of the parish", None], ["Maker", "Town"], ["A", "Bath"]):
        sheet.append(row)
    sheet.merge_cells("A1:B1")
    out = io.BytesIO()
    book.save(out)
    found = read_workbook(out.getvalue(), "x.xlsx")

    assert found.headers == ("Maker", "Town")
    assert cells(found) == [["A", "Bath"]]


def test_several_sheets_are_asked_about_and_one_is_taken_by_name() -> None:
    book = openpyxl.Workbook()
    assert book.active is not None
    book.active.append(["Maker"])
    book.active.append(["A"])
    book.create_sheet("Empty")
    other = book.create_sheet("Towns")
    other.append(["Town"])
    other.append(["Bath"])
    out = io.BytesIO()
    book.save(out)

    with pytest.raises(IntakeError, match="2 sheets hold something: Sheet, Towns; name one"):
        read_workbook(out.getvalue(), "x.xlsx")
    assert cells(read_workbook(out.getvalue(), "x.xlsx", "towns")) == [["Bath"]]
    with pytest.raises(IntakeError, match="the sheets are Sheet, Empty, Towns"):
        read_workbook(out.getvalue(), "x.xlsx", "Makers")


def bomb(size: int) -> bytes:
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("[Content_Types].xml", "<Types/>")
        with archive.open(SHEET, "w", force_zip64=True) as member:
            for _ in range(size // 1_000_000):
                member.write(b" " * 1_000_000)
    return out.getvalue()


def test_a_zip_bomb_is_refused_soon() -> None:
    data = bomb(300_000_000)  # 300 MB of blanks in 0.3 MB
    start = time.perf_counter()
    with pytest.raises(IntakeError, match="it unpacks to more than a table needs"):
        read_workbook(data, "x.xlsx")
    assert time.perf_counter() - start < 2


def test_an_entity_bomb_is_refused() -> None:
    data = changed(as_book([["a"], ["b"]]), SHEET, "<worksheet", "<!DOCTYPE x []><worksheet")
    with pytest.raises(IntakeError, match="declares a document type"):
        read_workbook(data, "x.xlsx")


@pytest.mark.parametrize(
    ("data", "says"),
    [
        (b"nothing of the kind", "no workbook, or a broken one"),
        (b"\xd0\xcf\x11\xe0" + bytes(600), "an old workbook"),
        (b"PK\x05\x06" + bytes(18), "it is no workbook"),
        (as_book([["a"], ["b"]])[:-300], "no workbook, or a broken one"),
        (changed(as_book([["a"], ["b"]]), SHEET, "</sheetData>", "<"), "cannot be read"),
        (as_book([]), "nothing is in it"),
    ],
)
def test_a_bad_workbook_is_refused_in_one_line(data: bytes, says: str) -> None:
    with pytest.raises(IntakeError, match=says):
        read_workbook(data, "x.xlsx")


@settings(max_examples=60, deadline=None)
@given(st.integers(0, 4000), st.integers(0, 255))
def test_a_damaged_workbook_is_read_or_refused(at: int, byte: int) -> None:
    data = bytearray(as_book([["Maker", "Town"], ["A", "Bath"]]))
    data[at % len(data)] = byte
    with contextlib.suppress(IntakeError):
        read_workbook(bytes(data), "x.xlsx")


@given(st.binary(max_size=300))
def test_any_bytes_are_a_table_or_refused(data: bytes) -> None:
    with contextlib.suppress(IntakeError):
        read_text(data, "x.csv")
