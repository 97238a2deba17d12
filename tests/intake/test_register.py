import csv
import io
import time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.intake import REGISTER, Imported, Table, guess, import_register, rejects_csv
from planish.intake.countries import country
from planish.intake.mapping import with_given
from planish.intake.schema import CellError
from planish.intake.textfile import read_text
from planish.marks.own_register import parse_register


def read(text: str, *fixed: str) -> tuple[Table, Imported]:
    found = read_text(text.encode(), "theirs.csv")
    columns = with_given(guess(found, REGISTER), [], fixed, REGISTER)
    return found, import_register(found, columns)


def row(text: str, *fixed: str) -> dict[str, str]:
    _, imported = read(text, *fixed)
    assert imported.converted.faults == ()
    rows = list(csv.DictReader(io.StringIO(imported.text)))
    assert len(rows) == 1
    return rows[0]


def test_a_german_list_becomes_a_register() -> None:
    found = row(
        "Meister;Meisterzeichen;Land;Ort;tätig;Beruf;Inv.-Nr.\n"
        "Thomas Getäfel;TG, T·G (Stern darüber);Deutschland;Augsburg;um 1780;Goldschmied;A 17\n"
    )

    assert found == {
        "name": "Thomas Getäfel", "marks": "TG; T·G", "country": "DE", "place": "Augsburg",
        "year_from": "1780", "year_to": "1780", "device": "Stern darüber", "kind": "maker",
        "note": "years as written: um 1780; Inv.-Nr.: A 17",
    }  # fmt: skip


def test_columns_of_our_own_come_back_as_they_are() -> None:
    text = (
        "name,marks,country,place,year_from,year_to,device,kind,wares,note,source\n"
        "Ann Wainscot,AW/TW; A[.]W,GB,Fordingham,1799,1812,star,retailer,spoons,widow,rate books\n"
    )
    assert read(text)[1].text == text


def test_a_value_for_every_row_gives_way_to_the_rows_own() -> None:
    assert row("Maker,Mark\nA,AB\n", "country=GB")["country"] == "GB"
    assert row("Maker,Mark,Country\nA,AB,France\n", "country=GB")["country"] == "FR"


def test_each_refused_row_is_told_and_none_is_lost() -> None:
    text = (
        "Maker,Mark,Country,Dates\n"
        "A,AB,GB,1790\n"
        "B,BB,Atlantis,1790\n"
        ",CC,GB,1790\n"
        "D,DD,GB,long ago\n"
        "E,E(,GB,1790\n"
        "A,AB,GB,1795\n"
        "F,FF,GB,1790,too,much\n"
        "G,GG,GB,1805-1790\n"
    )
    found, imported = read(text)

    assert imported.count == 1
    assert [str(f).split(";")[0] for f in imported.converted.faults if f.row != 6] == [
        "row 3, column Country: Atlantis is no country known here",
        "row 4, column Maker: is empty",
        "row 5, column Dates: long ago is no year",
        "row 7: the same maker and marks as in row 2",
        "row 8: 6 cells, the header has 4",
        "row 9, column Dates: 1805-1790 is no year",
    ]
    assert any(f.row == 6 and f.column == "Mark" for f in imported.converted.faults)
    parts = imported.converted
    kept = list(csv.reader(io.StringIO(rejects_csv(found, parts.rejects, parts.faults))))
    assert [r[0] for r in kept[1:]] == ["3", "4", "5", "6", "7", "8", "9"]
    assert kept[6][2:] == ["F", "FF", "GB", "1790", "too", "much"]
    assert all(r[1] for r in kept[1:])


CELL = st.text(alphabet="abcABC ·;,[]().?/18902-äé", max_size=14)


@given(
    st.lists(st.tuples(CELL, CELL, st.sampled_from(["GB", "France", "xx", ""]), CELL), max_size=6)
)
def test_every_row_is_in_the_register_or_among_the_rejects(
    rows: list[tuple[str, str, str, str]],
) -> None:
    out = io.StringIO(newline="")
    csv.writer(out).writerows([("Maker", "Mark", "Country", "Dates"), *rows])
    found, imported = read(out.getvalue())

    assert imported.count + len(imported.converted.rejects) == len(found.rows) + len(found.spoilt)
    told = {fault.row for fault in imported.converted.faults}
    assert told == {r.number for r in imported.converted.rejects}
    if imported.count:
        assert len(parse_register(imported.text, "x")) == imported.count


def test_a_table_of_faults_alone_gives_an_empty_register() -> None:
    _, imported = read("Maker,Mark,Country\nA,,GB\n")

    assert imported.count == 0
    assert imported.text == "name,marks,country\n"


# ISO 3166-1
@pytest.mark.parametrize(
    ("name", "code"),
    [("England", "GB"), ("U.S.A.", "US"), ("Deutschland", "DE"), ("PAYS-BAS", "NL"),
     ("Österreich", "AT"), ("gb", "GB"), ("Россия", "RU"), ("España", "ES")],
)  # fmt: skip
def test_countries_are_known_by_their_names(name: str, code: str) -> None:
    assert country(name) == code


def test_a_country_that_is_none_is_refused() -> None:
    with pytest.raises(CellError, match="no country known here"):
        country("Atlantis")


@pytest.mark.slow
def test_a_hundred_thousand_rows_are_imported_in_bounded_time() -> None:
    lines = ["Maker;Mark;Country;Dates"]
    lines += [
        f"Maker {n};M{n % 97}X;England;{1700 + n % 200}-{1710 + n % 200}" for n in range(100_000)
    ]
    start = time.process_time()
    _, imported = read("\n".join(lines))

    assert imported.count == 100_000
    assert time.process_time() - start < 30
