"""Any kind of table: here sales, of fields made up for the test."""

import pytest

from planish.intake import Field, Schema, convert, guess
from planish.intake.schema import as_it_stands, days, figures, key
from planish.intake.textfile import read_text

SALES = Schema(
    kind="sales",
    columns=("lot", "price", "day"),
    required=("lot",),
    fields=(
        Field(name="lot", names=("lot", "Los"), read=as_it_stands("lot")),
        Field(name="price", names=("price", "Zuschlag"), read=as_it_stands("price"),
              column=figures("price")),
        Field(name="day", names=("day", "Datum"), read=as_it_stands("day"), column=days("day")),
    ),
)  # fmt: skip


def rows(text: str) -> tuple[list[dict[str, str]], list[str]]:
    table = read_text(text.encode(), "x.csv")
    found = convert(table, guess(table, SALES), SALES)
    return [values for _, values in found.rows], [str(f) for f in found.faults]


def test_a_column_tells_how_its_numbers_and_days_are_meant() -> None:
    found, faults = rows("Los;Zuschlag;Datum\n1;1.250;03.04.2019\n2;3.500,50;25.12.2019\n")

    assert faults == []
    assert found == [
        {"lot": "1", "price": "1250", "day": "2019-04-03"},
        {"lot": "2", "price": "3500.50", "day": "2019-12-25"},
    ]


def test_where_it_does_not_tell_nothing_is_guessed() -> None:
    found, faults = rows('lot,price,day\n1,"1,250",03/04/2019\n2,40,2019-05-06\n')

    assert found == [{"lot": "2", "price": "40", "day": "2019-05-06"}]
    assert [f.split(";")[0] for f in faults] == [
        "row 2, column price: 1,250 may be thousands or decimals, or is no number",
        "row 2, column day: 03/04/2019 may be read either way round",
    ]


@pytest.mark.parametrize(
    ("header", "plain"),
    [("Prénom_du MAÎTRE", "prenom du maitre"), ("  Maker's   mark. ", "maker s mark"), ("Straße", "strasse")],
)  # fmt: skip
def test_headers_are_compared_without_case_accents_and_signs(header: str, plain: str) -> None:
    assert key(header) == plain
