"""Readings from outside the tables are found in the tables written out.

92 readings of office, letter and year in museum records, handbooks, journals and collectors' notes;
each names its source in tests/data/anchors.csv. They do not prove the offices that have none
(Glasgow, Newcastle, Norwich), nor stretches where the order of letters is from memory.
"""

import csv
from pathlib import Path

import msgspec
import pytest

from planish.library import load
from planish.library.cycles import Letter, expand

FILE = Path(__file__).parents[1] / "data" / "anchors.csv"


def anchors() -> list[dict[str, str]]:
    lines = FILE.read_text(encoding="utf-8").splitlines()
    return list(csv.DictReader(line for line in lines if not line.startswith("#")))


def letters(shift: int = 0) -> list[Letter]:
    """All letters; ``shift`` moves every cycle by years, to see the readings get lost."""
    found: list[Letter] = []
    for cycle in load().cycles:
        moved = msgspec.structs.replace(
            cycle, first_year=cycle.first_year + shift, last_year=cycle.last_year + shift,
            first_start="", last_end="",
        )  # fmt: skip
        found += expand(moved if shift else cycle)
    return found


def fits(anchor: dict[str, str], office: str, letter: Letter) -> bool:
    """Office, letter, stated style and case agree, and the stated years lie in the letter's."""
    said = anchor["letter"].casefold()
    return (
        letter.office == office
        and said in [x.casefold() for x in letter.letters]
        and (not anchor["style"] or not letter.styles or anchor["style"] in letter.styles)
        and (not anchor["case"] or anchor["case"] == letter.case)
        and letter.start[:4] <= anchor["year_from"]
        and anchor["year_to"] <= letter.end[:4]
    )


def label(anchor: dict[str, str]) -> str:
    return f"{anchor['office']} {anchor['letter']} {anchor['year_from']}"


@pytest.fixture(scope="module")
def table() -> list[Letter]:
    return letters()


def test_their_number() -> None:
    """As gathered: 92 that give a year."""
    assert len(anchors()) == 92


@pytest.mark.parametrize("anchor", anchors(), ids=label)
def test_reading_is_in_the_table(anchor: dict[str, str], table: list[Letter]) -> None:
    for office in anchor["office"].split(";"):
        assert any(fits(anchor, office, x) for x in table), anchor


def test_they_name_the_first_year_but_for_four(table: list[Letter]) -> None:
    """Three give the second calendar year; London a began in March 1697, in the assay year 1696."""
    second = [
        label(anchor)
        for anchor in anchors()
        if not any(
            fits(anchor, office, x) and x.first_year <= int(anchor["year_from"]) <= x.last_year
            for office in anchor["office"].split(";")
            for x in table
        )
    ]

    assert second == ["LON a 1697", "LON O 1970", "SHE f 1899", "YOR R 1674"]


@pytest.mark.parametrize("shift", [-2, 1, 5])
def test_a_table_out_by_some_years_loses_nearly_all(shift: int) -> None:
    wrong = letters(shift)
    kept = [
        a
        for a in anchors()
        if any(fits(a, office, x) for office in a["office"].split(";") for x in wrong)
    ]

    assert len(kept) < 10


def test_few_lean_on_a_printed_table() -> None:
    """Read by elimination, from a table, or unsure: the rest stand on the piece itself."""
    assert sum(a["derived"] == "yes" for a in anchors()) == 9
