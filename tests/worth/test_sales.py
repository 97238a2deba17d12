import datetime as dt
from decimal import Decimal
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planish.quantity import Fineness, Mass, Money, QuantityError, UncertainDate
from planish.worth.comparables import Basis
from planish.worth.sales import Sale
from planish.worth.table import SalesFaults, as_csv, cells_of, parse_sales, read_row
from planish.worth.traits import (
    Attribution,
    Engraving,
    Fault,
    Grouping,
    Metal,
    Provenance,
    Traits,
)

TODAY = dt.date(2026, 11, 25)
GOOD = {"date": "2019-06-12", "venue": "A. Saleroom", "price": "42000", "currency": "GBP",
        "basis": "hammer"}  # fmt: skip

words = st.text(
    st.characters(blacklist_categories=("Cs", "Cc", "Zl", "Zp", "Zs")), min_size=1, max_size=12
)
text = st.lists(words, max_size=3).map(" ".join)
name = st.lists(words, min_size=1, max_size=3).map(" ".join)
grams = st.decimals(min_value="0.01", max_value=50_000, places=3).map(Mass)


def maybe(of: Any) -> Any:
    return st.none() | of


@st.composite
def sales(draw: Any) -> Sale:
    net = draw(maybe(grams))
    gross = draw(maybe(grams))
    if net and gross and net > gross:
        net, gross = gross, net
    faults = draw(st.sets(st.sampled_from(Fault)))
    return Sale(
        id=draw(name),
        date=draw(st.sampled_from(["2019-06-12", "2019-06", "2019~", "201X", "2018/2019"]).map(UncertainDate)),
        venue=draw(name),
        sale=draw(text),
        lot=draw(text),
        title=draw(text),
        price=Money(draw(st.decimals(min_value="0.001", max_value=10**9, places=3)),
                    draw(st.sampled_from(["GBP", "USD", "JPY", "KWD", "DEM"]))),
        basis=draw(st.sampled_from(Basis)),
        premium=draw(maybe(st.decimals(min_value=0, max_value="0.99", places=4))),
        traits=Traits(
            form=draw(text), maker=draw(text), pattern=draw(text), style=draw(text), place=draw(text),
            attribution=draw(maybe(st.sampled_from(Attribution))),
            made=draw(maybe(st.sampled_from(["1738", "1738/1740", "173X~", "../1800"]).map(UncertainDate))),
            metal=draw(maybe(st.sampled_from(Metal))),
            fineness=draw(maybe(st.decimals(min_value=0, max_value=1000, places=1).map(Fineness))),
            gross=gross, net=net,
            condition=draw(maybe(st.integers(0, 4))),
            engraving=draw(maybe(st.sampled_from(Engraving))),
            faults=tuple(f for f in Fault if f in faults),
            pieces=draw(maybe(st.integers(1, 500))),
            grouping=draw(maybe(st.sampled_from(Grouping))),
            provenance=draw(maybe(st.sampled_from(Provenance))),
        ),
        piece=draw(text), source=draw(text), note=draw(text),
    )  # fmt: skip


@settings(max_examples=60, deadline=None)
@given(st.lists(sales(), max_size=4, unique_by=lambda s: s.id))
def test_a_file_written_comes_back_row_by_row(made: list[Sale]) -> None:
    found = parse_sales(as_csv(made), "mine.csv", TODAY)

    assert [cells_of(s) for s in found] == [cells_of(s) for s in made]
    assert [s.row for s in found] == list(range(2, len(made) + 2))
    assert [(s.price, s.traits) for s in found] == [(s.price, s.traits) for s in made]


def row(**cells: str) -> Sale:
    return read_row({**GOOD, **cells}, 7, TODAY)


@pytest.mark.parametrize(
    ("column", "cell", "fault"),
    [
        ("net_g", "-812", "not above zero"),
        ("gross_g", "0", "not above zero"),
        ("date", "2026-11-26", "lies after 2026-11-25"),
        ("date", "yesterday", "is no date"),
        ("price", "-5", "not above zero"),
        ("price", "1,250", "no figure"),
        ("price", "", "is empty"),
        ("price", "NaN", "no figure"),
        ("currency", "XYZ", "not known"),
        ("basis", "won", "no word of this column"),
        ("premium", "25", "no share"),
        ("condition", "9", "no such grade"),
        ("pieces", "0", "no number of pieces"),
        ("fineness", "9250", "outside 0 to 1000"),
        ("engraving", "dragon", "no word of this column"),
    ],
)
def test_a_bad_cell_is_told_by_row_and_column(column: str, cell: str, fault: str) -> None:
    with pytest.raises(SalesFaults, match=f"row 7, column {column}: .*{fault}.*; ."):
        row(**{column: cell})


def test_a_net_weight_above_the_gross_is_told() -> None:
    with pytest.raises(SalesFaults, match=r"row 7, column net_g: .*more than the gross"):
        row(gross_g="100", net_g="101")


def test_all_faults_of_a_file_are_told_at_once() -> None:
    text = (
        "date,venue,price,currency,basis\n2019,A,1,GBP,hammer\n2099,A,-1,GBP,hammer\n,A,1,XXZ,no\n"
    )
    with pytest.raises(SalesFaults) as found:
        parse_sales(text, "mine.csv", TODAY)

    assert [(f.row, f.column) for f in found.value.faults] == [
        (3, "date"), (3, "price"), (4, "date"), (4, "currency"), (4, "basis"),
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("text", "fault"),
    [
        ("", "no header"),
        ("date,venue,price,currency\n", "basis: the column is missing"),
        ("date,venue,price,currency,basis,colour\n", "colour: no column"),
        ("date,venue,price,currency,basis,date\n", "stands twice"),
        ('date,venue,price,currency,basis\n"2019,A,1,GBP,hammer\n', "cannot be parted"),
        ("date,venue,price,currency,basis\n2019,A,1,GBP,hammer,x\n", "6 cells"),
    ],
)
def test_a_file_that_is_none_is_refused(text: str, fault: str) -> None:
    with pytest.raises(SalesFaults, match=fault):
        parse_sales(text, "mine.csv", TODAY)


def test_rows_without_an_id_get_one_from_their_cells_and_equal_rows_get_numbers() -> None:
    head = "date,venue,price,currency,basis\n"
    found = parse_sales(head + "2019,A,1,GBP,hammer\n" * 2 + "2019,B,1,GBP,hammer\n", "x", TODAY)

    assert found[1].id == f"{found[0].id}-2"
    assert found[2].id != found[0].id
    with pytest.raises(SalesFaults, match="row 3, column id: s stands in row 2 too"):
        parse_sales("id," + head + "s,2019,A,1,GBP,hammer\ns,2019,B,1,GBP,hammer\n", "x", TODAY)


def test_fine_metal_needs_net_weight_fineness_and_solid_silver() -> None:
    assert row(net_g="1000", fineness="925").traits.fine == Mass(Decimal(925))
    assert row(gross_g="1000", fineness="925").traits.fine is None
    assert row(net_g="1000", fineness="925", metal="filled").traits.fine is None


@given(st.decimals(min_value=1, max_value=2000, places=2))
def test_the_unit_of_weight_is_of_no_account(figure: Decimal) -> None:
    grams = Mass.of(figure, "ozt")
    one = Traits(net=grams).numbers()
    other = Traits(net=Mass.of(grams.to("dwt"), "dwt")).numbers()
    assert one["ln net g"] == pytest.approx(other["ln net g"], abs=1e-12)


def test_traits_out_of_bounds_are_refused() -> None:
    for wrong in ({"gross": Mass(Decimal(-1))}, {"condition": 5}, {"pieces": 0}):
        with pytest.raises(QuantityError):
            Traits(**wrong)
