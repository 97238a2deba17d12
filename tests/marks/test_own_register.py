"""The user's own register: what it takes, and how its faults are told."""

import re
import time
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.library.rows import Confidence, Maker
from planish.marks import Mark, Observed, Reader
from planish.marks.own_register import COLUMNS, Fault, RegisterFaults, parse_register
from planish.marks.register import Register

PAGE = (Path(__file__).parents[2] / "docs" / "register.md").read_text(encoding="utf-8")
HEADER = "name,marks,country\n"


def faults(text: str) -> list[str]:
    with pytest.raises(RegisterFaults) as caught:
        parse_register(text, "mine.csv")
    assert "\n" not in str(caught.value)
    assert str(caught.value).startswith("mine.csv, line ")
    return [str(f) for f in caught.value.faults]


def example() -> str:
    found = re.search(r"^```csv\n(.*?)^```", PAGE, re.MULTILINE | re.DOTALL)
    assert found
    return found[1]


def test_the_example_of_the_page_loads() -> None:
    first, second, third = parse_register(example(), "mine.csv")

    assert (first.name, first.marks, first.country) == ("Thomas Wainscot", "TW; T·W", "GB")
    assert (first.year_from, first.year_to, first.device) == (1771, 1799, "mullet above")
    assert first.wares == "spoons, tongs"
    assert first.confidence is Confidence.SOURCED
    assert first.sources == ("own: Fordingham rate books",)
    assert second.confidence is Confidence.MEMORY
    assert second.sources == ("own",)
    assert (third.kind, third.year_from, third.year_to) == ("retailer", None, 1850)
    assert len({m.id for m in (first, second, third)}) == 3


def test_every_column_is_explained_on_the_page() -> None:
    assert [c for c in COLUMNS if f"`{c}`" not in PAGE] == []


@pytest.mark.parametrize("sign", [",", ";", "\t"])
@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_spreadsheets_of_all_sorts(sign: str, end: str) -> None:
    lines = ["\ufeffName", "Country", "Marks"], ['"A; B, and Co"', "gb", '"A&B; AB"']
    (maker,) = parse_register(end.join(sign.join(cells) for cells in lines), "mine.csv")

    assert (maker.name, maker.marks, maker.country) == ("A; B, and Co", "A&B; AB", "GB")


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("", ["line 1: there is no header line"]),
        ("# only a comment\n", ["line 1: there is no header line"]),
        ("name,marks\nA,AB\n", ["line 1, column country: the column is missing"]),
        ("nam,marks,country\n", ["line 1, column nam: no column of a register; write name",
                                 "line 1, column name: the column is missing"]),
        ("name,name,marks,country\n", ["line 1, column name: the column stands twice"]),
        (HEADER + ",AB,GB\n", ["line 2, column name: is empty"]),
        (HEADER + "A,,GB\n", ["line 2, column marks: is empty"]),
        (HEADER + "A,;,GB\n", ["line 2, column marks: holds no mark"]),
        (HEADER + "A,AB,\n", ["line 2, column country: is empty"]),
        (HEADER + "A,AB,England\n", ["line 2, column country: England is no country code"]),
        (HEADER + "A,(AB),GB\n", ["line 2, column marks: (AB): transcription, character 1"]),
        (HEADER + "A,AB; ST[,GB\n", ["line 2, column marks: ST[: transcription, character 3"]),
        (HEADER + "A,AB,GB,1800\n", ["line 2: 4 cells, the header has 3"]),
        (HEADER + "A,A\x07B,GB\n", ["line 2, column marks: holds a control character"]),
        (HEADER + f"{'A' * 2000},AB,GB\n", ["line 2, column name: longer than 1000"]),
        (HEADER + "A,AB,GB\nA,AB,GB\n", ["line 3: the same maker and marks as in line 2"]),
        (HEADER + 'A,AB,GB\n"B,AB,GB\nC,CD,GB\n', ["line 3: cannot be parted into cells"]),
        ("name,marks,country,year_from,year_to\nA,AB,GB,18x4,1890\nB,BC,GB,1900,1890\nC,CD,GB,99,\n",
         ["line 2, column year_from: 18x4 is no year", "line 3, column year_to: 1890 is before 1900",
          "line 4, column year_from: 99 is no year"]),
        ("name,marks,country,kind\nA,AB,GB,smith\n", ["line 2, column kind: smith is not known"]),
        # comments, blank lines and a cell of two lines do not put the count out
        (HEADER + '# a "quote\n\n"two\nlines",AB,GB\nA,,GB\n', ["line 6, column marks: is empty"]),
    ],
)  # fmt: skip
def test_every_fault_is_told_at_once(text: str, told: list[str]) -> None:
    found = faults(text)

    assert len(found) == len(told)
    for says, begins in zip(found, told, strict=True):
        assert says.startswith(begins)
        assert "; " in says  # how to mend it


@given(st.text(alphabet=st.characters(codec="utf-8"), max_size=200))
def test_any_text_is_taken_or_refused(text: str) -> None:
    told: tuple[Fault, ...] = ()
    makers: tuple[Maker, ...] = ()
    try:
        makers = parse_register(HEADER + text, "mine.csv")
    except RegisterFaults as found:
        told = found.faults

    assert all(f.line >= 1 and f.what and f.mend for f in told)
    assert all(m.name and m.marks and len(m.country) == 2 for m in makers)


def test_one_hundred_thousand_rows() -> None:
    rows = (
        f"Maker {n},{chr(65 + n % 26)}{chr(65 + n // 26 % 26)}{chr(65 + n // 676 % 26)},GB"
        for n in range(100_000)
    )
    text = HEADER + "\n".join(rows)

    start = time.perf_counter()
    makers = parse_register(text, "mine.csv")
    parsed = time.perf_counter()
    register = Register(makers)
    laid_out = time.perf_counter()

    assert len(register.makers) == 100_000
    # measured 1.2 s and 3.5 s on two cores; the bounds leave room for a busy machine
    assert parsed - start < 12
    assert laid_out - parsed < 25


def test_a_reading_finds_the_makers_of_both_registers() -> None:
    own = parse_register(example(), "mine.csv")
    marks = (Mark(device="lion passant"), Mark(device="leopard's head crowned"), Mark(text="T·W"))
    reader = Reader(more_makers=own)
    names = [
        {m.name for r in one.read(Observed(marks=marks), explain=False).readings for m in r.makers}
        for one in (Reader(), reader)
    ]

    assert "Thomas Wainscot" not in names[0]
    assert "Thomas Wainscot" in names[1]
