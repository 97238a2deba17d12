import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.library import load
from planish.marks.observation import Search
from planish.marks.searched import Searched, searched, unmarked
from planish.marks.where import forms, place_of

PLACES = [
    (1, "underside"),
    (2, "side by the handle"),
    (3, "inside the lid flange"),
    (4, "handle end"),
]


def teapot(*places: str, found: bool = False) -> Searched:
    result = searched([Search(place=p, found=found) for p in places], "teapot", load())
    assert result is not None
    return result


def missed(found: Searched) -> float:
    return next(h.probability for h in unmarked(found).hypotheses if h.key == "marked")


@pytest.mark.parametrize(
    ("words", "place"),
    [
        ("1", "underside"),
        ("the bottom", "underside"),
        ("Underside", "underside"),
        ("lid", "inside the lid flange"),
        ("cover", "inside the lid flange"),
        ("end of the handle", "handle end"),
        ("spout", None),
        ("9", None),
        ("", None),
    ],
)
def test_words_name_a_place(words: str, place: str | None) -> None:
    assert place_of(words, PLACES) == place


@pytest.mark.parametrize("form", forms(load()))
def test_each_place_is_named_by_its_own_wording_and_number(form: str) -> None:
    found = searched([], form, load())
    assert found is not None
    places = [(p.number, p.place) for p in found.places]
    for number, place in places:
        assert place_of(place, places) == place
        assert place_of(str(number), places) == place


def test_a_search_in_full_speaks_against_marks_that_were_missed() -> None:
    none, some, full = teapot(), teapot("underside"), teapot("all")

    assert missed(none) == pytest.approx(0.6)
    assert missed(none) > missed(some) > missed(full)
    assert (none.covered, full.covered) == pytest.approx((0, 1))
    assert none.complete < some.complete < full.complete


def test_the_search_cannot_tell_unmarked_silver_from_unmarked_plate() -> None:
    ratio = [
        math.prod(p if h.key == "silver" else 1 / p for h in unmarked(f).hypotheses
                  if h.key != "marked" for p in (h.probability,))
        for f in (teapot(), teapot("all"))
    ]  # fmt: skip

    assert ratio[0] == pytest.approx(ratio[1])


@given(st.lists(st.sampled_from(["1", "2", "3", "4", "5", "all", "moon"])))
def test_the_ledger_multiplies_out_to_the_probabilities(places: list[str]) -> None:
    finding = unmarked(teapot(*places))

    assert math.fsum(h.probability for h in finding.hypotheses) == pytest.approx(1)
    again = finding.recomputed()
    assert all(again[h.key] == pytest.approx(h.probability) for h in finding.hypotheses)


def test_the_next_look_is_the_likeliest_place_not_searched() -> None:
    assert (teapot().next or pytest.fail("none")).number == 1
    assert (teapot("1", "3").next or pytest.fail("none")).number == 2
    assert teapot("all").next is None


def test_a_place_on_no_list_is_kept_and_counts_for_nothing() -> None:
    found = teapot("under the felt")

    assert [s.place for s in found.beside] == ["under the felt"]
    assert found.covered == 0
    assert Search(place="under the felt", found=False) in found.searches()


def test_an_unknown_form_has_no_list() -> None:
    assert searched([], "spoon warmer", load()) is None
