import datetime as dt
import random
from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.worth import Comparable
from planish.worth.sales import Sale
from planish.worth.table import read_row
from planish.worth.twins import Ground, counted, groups, once

TODAY = dt.date(2026, 11, 25)
BASE = {"date": "2019-06-12", "venue": "A. Saleroom", "lot": "45", "price": "1000", "currency": "GBP",
        "basis": "hammer", "title": "George II coffee pot of baluster form"}  # fmt: skip


def sale(key: str, **cells: str) -> Sale:
    return read_row({**BASE, "id": key, **cells}, 0, TODAY)


def grounds(*sales: Sale) -> list[tuple[str, str, Ground]]:
    return [(j.to, j.id, j.ground) for g in groups(sales) for j in g.joined]


def test_fifty_copies_of_one_sale_are_flagged_and_count_once() -> None:
    found = counted([sale(f"s{n:02}") for n in range(50)])

    assert [s.id for s in found.sales] == ["s00"]
    assert found.groups[0].flags == ("one sale stands 50 times; s00 counts, once",)
    assert len(found.groups[0].members) == 50


def test_fifty_copies_in_a_grid_count_once(comp: Callable[..., Comparable]) -> None:
    kept, found = once([comp(f"c{n:02}", "500", lot="7", venue="room") for n in range(50)])

    assert [c.id for c in kept] == ["c00"]
    assert "50 times" in found[0].flags[0]


@pytest.fixture
def comp(sale: Callable[..., Comparable]) -> Callable[..., Comparable]:
    return sale


def test_a_lot_split_into_rows_is_one_sale_of_all_its_pieces() -> None:
    found = counted([
        sale("a", title="A salver", net_g="300", fineness="925", maker="A. Smith"),
        sale("b", title="A cream jug", net_g="100", fineness="925", maker="B. Jones"),
    ])  # fmt: skip

    assert grounds(sale("a", title="A salver"), sale("b", title="A jug")) == [
        ("a", "b", Ground.SPLIT)
    ]
    (whole,) = found.sales
    assert whole.traits.net is not None
    assert whole.traits.net.grams == 400
    assert whole.traits.pieces == 2
    assert whole.traits.maker == ""
    assert whole.title == "A salver; A cream jug"


def test_hammer_and_premium_records_of_one_lot_are_one_sale() -> None:
    assert grounds(sale("a"), sale("b", price="1250", basis="with-premium")) == [
        ("a", "b", Ground.BASES)
    ]


def test_two_prices_of_one_basis_for_one_lot_clash_and_are_flagged() -> None:
    (group,) = groups([sale("a"), sale("b", price="1100")])

    assert group.joined[0].ground is Ground.CLASH
    assert "one of them is wrong" in group.flags[0]


def test_the_same_words_price_and_day_are_one_sale_whatever_the_venue_is_called() -> None:
    assert grounds(sale("a"), sale("b", venue="Saleroom A, Bath", lot="")) == [
        ("a", "b", Ground.TEXT)
    ]


def test_words_of_any_script_are_compared() -> None:
    one = sale("a", lot="", title="Серебряный чайник с крышкой")
    assert grounds(one, sale("b", lot="", title="серебряный чайник, с крышкой")) != []
    assert grounds(one, sale("b", lot="", title="Серебряный кофейник с крышкой")) == []
    assert grounds(sale("a", venue="Hôtel A"), sale("b", venue="Hotel A")) != []


def test_the_same_lot_under_another_spelling_is_one() -> None:
    assert grounds(sale("a"), sale("b", venue="A  SALEROOM", lot="Lot 45")) == [
        ("a", "b", Ground.COPY)
    ]


def test_a_piece_offered_again_counts_once_the_sale_before_the_offers() -> None:
    found = groups([
        sale("a", date="2018-01-05", lot="7", basis="unsold", price="800", net_g="870.9"),
        sale("b", date="2019-06-12", lot="45", net_g="870.9"),
        sale("c", date="2020-02-01", lot="9", basis="unsold", price="900", net_g="870.9"),
    ])  # fmt: skip

    assert [g.kept for g in found] == ["b"]
    assert {j.ground for j in found[0].joined} == {Ground.AGAIN}


def test_the_persons_own_word_for_a_piece_joins_its_sales() -> None:
    one = sale("a", piece="hall pot", title="Pot", date="2010")
    other = sale("b", piece="Hall pot", title="Another text")
    assert grounds(one, other) == [("b", "a", Ground.AGAIN)]


@pytest.mark.parametrize(
    "other",
    [
        {"lot": "46"},  # another lot of that sale, alike to the word and the price
        {"lot": "46", "net_g": "870.9"},
        {"date": "2019-07-12", "lot": "45"},  # lot 45 of another sale, no weight to tell
        {"venue": "B. Saleroom", "price": "900"},
    ],
)
def test_what_is_not_the_same_stays_apart(other: dict[str, str]) -> None:
    assert grounds(sale("a", net_g="870.9"), sale("b", **other)) == []


def test_two_alike_pieces_without_lots_at_a_dealers_stay_one_listing() -> None:
    assert grounds(sale("a", lot=""), sale("b", lot="")) == [("a", "b", Ground.TEXT)]


def test_chains_make_one_group_and_every_record_hangs_on_one() -> None:
    # a and b by lot, b and c by words, and c is the latest and counts
    made = [
        sale("a", title="Pot"),
        sale("b", net_g="870.9"),
        sale("c", date="2021-01-01", lot="2", net_g="870.9"),
    ]
    (group,) = groups(made)

    assert group.kept == "c"
    assert [(j.to, j.id) for j in group.joined] == [("c", "b"), ("b", "a")]


cells = st.fixed_dictionaries({
    "date": st.sampled_from(["2019-06-12", "2019-06-13", "2020"]),
    "lot": st.sampled_from(["", "1", "2"]),
    "price": st.sampled_from(["1000", "1250"]),
    "basis": st.sampled_from(["hammer", "with-premium", "unsold"]),
    "title": st.sampled_from(["Pot", "George II coffee pot of baluster form"]),
    "net_g": st.sampled_from(["", "870.9"]),
})  # fmt: skip


@given(st.lists(cells, max_size=7), st.randoms(use_true_random=False))
def test_order_is_of_no_account_and_no_record_is_lost(
    rows: list[dict[str, str]], chance: random.Random
) -> None:
    made = [sale(f"s{n}", **row) for n, row in enumerate(rows)]
    found = counted(made)
    shuffled: list[Any] = list(made)
    chance.shuffle(shuffled)

    assert counted(shuffled) == found
    left = {i for g in found.groups for i in g.members[1:]}
    assert {s.id for s in found.sales} | left == {s.id for s in made}
    assert left.isdisjoint(s.id for s in found.sales)
    assert all(len(g.joined) == len(g.members) - 1 for g in found.groups)
