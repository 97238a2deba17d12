import datetime as dt
import re
from decimal import Decimal
from pathlib import Path
from typing import Any

import openpyxl
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planish.intake import Columns, IntakeError, Table, guess, read_table
from planish.intake.mapping import with_given
from planish.intake.pasted import drafts_of, table_of
from planish.intake.sales import SALES, ImportedSales, import_sales
from planish.intake.textfile import read_text
from planish.worth.comparables import Basis
from planish.worth.table import as_csv, cells_of, parse_sales, read_row

TODAY = dt.date(2026, 11, 25)
HEAD = "Sale date;Auction house;Lot;Description;Hammer price;Weight\n"
ROW = "12/06/2019;A. Saleroom;45;Coffee pot;£42,000;28 oz\n25/06/2019;A. Saleroom;46;Salver;£900;500 g\n"


def table(text: str) -> Table:
    return read_text(text.encode(), "theirs.csv")


def imported(text: str, *fixed: str, given: tuple[str, ...] = ()) -> ImportedSales:
    found = table(text)
    columns: Columns = with_given(guess(found, SALES), given, fixed, SALES)
    return import_sales(found, columns, TODAY)


def faults(text: str, *fixed: str) -> list[str]:
    return [str(f) for f in imported(text, *fixed).converted.faults]


def test_a_table_of_theirs_becomes_sales() -> None:
    one, other = imported(HEAD + ROW).sales

    assert (one.date.edtf, one.venue, one.lot, one.row) == ("2019-06-12", "A. Saleroom", "45", 2)
    assert (str(one.price), one.basis) == ("GBP 42,000.00", Basis.HAMMER)
    assert one.traits.gross is not None
    assert one.traits.gross.to("ozt") == 28
    assert other.traits.gross is not None
    assert other.traits.gross.grams == 500


def test_hammer_and_total_give_the_premium() -> None:
    text = "date,house,hammer,total\n2019-06-12,A,£42000,£52500\n2019-06-13,A,£100,£90\n"
    found = imported(text)

    assert found.sales[0].premium == Decimal("0.25")
    assert [f.row for f in found.converted.faults] == [3]
    assert "does not go with a hammer price of 100" in found.converted.faults[0].what


@pytest.mark.parametrize(
    ("cell", "amount", "currency"),
    [
        ("1.250,00 €", "1250", "EUR"),
        ("EUR 1250", "1250", "EUR"),
        ("US$ 40.50", "40.5", "USD"),
        ("£1,250", "1250", "GBP"),
        ("CHF 1'250", "1250", "CHF"),
        ("1 250 kr", "1250", "SEK"),
    ],
)
def test_amounts_of_many_forms(cell: str, amount: str, currency: str) -> None:
    (sale,) = imported(f"date;house;hammer\n2019-06-12;A;{cell}\n", "currency=SEK").sales
    assert (str(sale.price.amount), sale.price.currency) == (amount, currency)


def test_a_sign_of_several_currencies_needs_to_be_told() -> None:
    text = "date,house,hammer\n2019-06-12,A,$40\n"
    assert faults(text) == ["row 2, column currency: is empty; fill it in"]
    assert imported(text, "currency=USD").sales[0].price.currency == "USD"


BAD = {
    "a negative weight": (HEAD + "25/06/2019;A;1;Pot;£9;-28 oz\n", "row 2, column Weight: .*negative"),
    "a sale to come": (HEAD + "30/11/2026;A;1;Pot;£9;28 oz\n", "row 2, column Sale date: .*lies after"),
    "no price": (HEAD + "25/06/2019;A;1;Pot;;28 oz\n", "row 2, column Hammer price: is empty"),
    "a price below zero": (HEAD + "25/06/2019;A;1;Pot;£-5;1 oz\n", "row 2, column Hammer price: .*amount"),
    "two ways round": (HEAD + "05/06/2019;A;1;Pot;£5;1 oz\n", "row 2, column Sale date: .*two ways"),
    "no venue": (HEAD + "25/06/2019;;1;Pot;£5;1 oz\n", "row 2, column Auction house: is empty"),
}  # fmt: skip


@pytest.mark.parametrize("name", BAD)
def test_bad_rows_are_told_with_row_and_column_and_kept(name: str) -> None:
    text, fault = BAD[name]
    found = imported(text)

    assert found.sales == ()
    assert [row.number for row in found.converted.rejects] == [2]
    (told,) = [str(f) for f in found.converted.faults]
    assert re.search(fault, told)


def test_no_column_of_a_price_is_told_before_any_row() -> None:
    with pytest.raises(IntakeError, match="no column is mapped to price, hammer"):
        imported("date,house\n2019-06-12,A\n")


def test_an_unsold_lot_keeps_its_top_bid() -> None:
    text = (
        "date,house,hammer,status,top bid\n2019-06-12,A,,bought in,£800\n2019-06-12,A,£900,sold,\n"
    )
    one, other = imported(text).sales
    assert (one.basis, one.price.amount) == (Basis.UNSOLD, 800)
    assert other.basis is Basis.HAMMER


def test_what_no_field_takes_goes_into_the_note() -> None:
    (sale,) = imported("date,house,hammer,Colour of box\n2019-06-12,A,£9,red\n").sales
    assert sale.note == "Colour of box: red"


def test_gram_and_ounce_columns_must_agree() -> None:
    head = "date,house,hammer,weight g,weight oz\n"
    good = imported(head + "2019-06-12,A,£9,870,27.97\n")
    assert good.sales[0].traits.gross is not None
    assert good.sales[0].traits.gross.grams == 870
    assert "two gross weights that disagree" in faults(head + "2019-06-12,A,£9,870,30\n")[0]


def test_fifty_copies_come_in_and_are_flagged() -> None:
    found = imported(HEAD + "12/06/2019;A;1;Pot;£9;28 oz\n" * 50 + "13/06/2019;B;1;X;£8;\n")
    assert len(found.sales) == 51
    assert "50 times" in found.groups[0].flags[0]


values: dict[str, Any] = {
    "date": st.sampled_from(["2019-06-12", "2019-06", "2019~"]),
    "venue": st.sampled_from(["A. Saleroom", "B, Town"]),
    "price": st.decimals(min_value="0.001", max_value=10**7, places=3).map(lambda d: str(d.normalize())),
    "currency": st.sampled_from(["GBP", "USD", "KWD"]),
    "basis": st.sampled_from([b.value for b in Basis]),
    "lot": st.sampled_from(["", "45", "45A"]),
    "title": st.sampled_from(["", 'A "pot", fine', "Kännchen"]),
    "net_g": st.sampled_from(["", "870.9", "1.125"]),
    "premium": st.sampled_from(["", "0.25"]),
    "faults": st.sampled_from(["", "worn; repaired"]),
    "made": st.sampled_from(["", "1738", "../1800"]),
    "condition": st.sampled_from(["", "0", "4"]),
}  # fmt: skip


@settings(max_examples=40, deadline=None)
@given(st.lists(st.fixed_dictionaries(values), min_size=1, max_size=4))
def test_any_table_written_by_us_comes_back_through_the_import(rows: list[dict[str, str]]) -> None:
    made = [
        read_row({**row, "id": f"s{n}", "price": format(Decimal(row["price"]), "f")}, n, TODAY)
        for n, row in enumerate(rows, 2)
    ]
    found = table(as_csv(made))
    back = import_sales(found, guess(found, SALES), TODAY)

    assert back.converted.faults == ()
    assert [cells_of(s) for s in back.sales] == [cells_of(s) for s in made]


def test_a_workbook_gives_the_same_sales(tmp_path: Path) -> None:
    book = openpyxl.Workbook()
    sheet = book.active
    assert sheet is not None
    sheet.append(["Date", "House", "Hammer", "Currency", "Weight g"])
    sheet.append([dt.datetime(2019, 6, 12), "A", 42000, "GBP", 870.5])  # noqa: DTZ001  # a sheet's day has no zone
    book.save(tmp_path / "x.xlsx")
    found = read_table(tmp_path / "x.xlsx")
    (sale,) = import_sales(found, guess(found, SALES), TODAY).sales

    assert (sale.date.edtf, sale.price.amount) == ("2019-06-12", 42000)
    assert sale.traits.gross is not None
    assert str(sale.traits.gross.grams) == "870.5"
    assert parse_sales(as_csv([sale]), "x", TODAY)[0].price == sale.price


PIPES = """
| Date | House | Lot | Description | Hammer price |
| --- | --- | ---: | --- | --- |
| 2020-01-02 | A. Room | 3 | Salver | £300 |
| 2020-01-02 | A. Room | 4 | Tray | yesterday |
"""


def test_a_pasted_table_becomes_drafts() -> None:
    good, bad = drafts_of(PIPES, {})
    assert good.cells["price"] == "300"
    assert good.missing == ()
    assert bad.cells == {}
    assert "yesterday is no amount" in bad.notes[0]
    tabs = "Date\tHouse\tHammer price\tCurrency\n2020-01-02\tA. Room\t300\t\n"
    (draft,) = drafts_of(tabs, {"currency": "USD"})
    assert (draft.cells["currency"], draft.missing) == ("USD", ())


def test_prose_is_no_table() -> None:
    assert table_of("A. Saleroom, 12 June 2019, lot 4, hammer £5\nB, lot 5, hammer £6") is None
