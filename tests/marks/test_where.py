from functools import cache

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.library import Library, load
from planish.library.rows import Confidence, Spot
from planish.marks.where import ANY, forms, resolve, where_to_look


def spot(form: str, rank: int = 1) -> Spot:
    return Spot(
        form=form,
        family="",
        rank=rank,
        place=f"place {rank}",
        source="practice",
        confidence=Confidence.PRACTICE,
    )


@cache
def library() -> Library:
    """Forms worded as in the shipped library, so that new rows there change no test here."""
    tables = dict.fromkeys(Library.__struct_fields__, ())
    names = (
        "teapot", "coffee pot", "spoon", "caddy spoon", "candlestick", "tray or salver",
        "sugar bowl or basin", "bracelet, cuff", "bracelet, hinged bangle", "box", "snuff box",
        "mug or christening cup", "icon cover (oklad)", "knife, hollow handle", "ring", "thimble",
        "napkin ring", "tongs", "compact", "fish slice or server", "scissors", ANY,
    )  # fmt: skip
    spots = (spot("teapot", 2), spot("teapot", 1), *(spot(n) for n in names if n != "teapot"))
    return Library(**{**tables, "spots": spots})  # type: ignore[arg-type]  # empty tables


# English puts the head of a compound last (any grammar of English): a sugar spoon is a spoon.
@pytest.mark.parametrize(
    ("words", "form"),
    [
        ("teapot", "teapot"),
        ("Tea-pot", "teapot"),
        ("sugar spoon", "spoon"),
        ("tablespoons", "spoon"),
        ("caddy spoon", "caddy spoon"),
        ("pair of candlesticks", "candlestick"),
        ("a set of six dessert spoons", "spoon"),
        ("salver", "tray or salver"),
        ("waiter", "tray or salver"),
        ("sugar basin", "sugar bowl or basin"),
        ("sugar bowls", "sugar bowl or basin"),
        ("cuff bracelet", "bracelet, cuff"),
        ("bracelet, cuff", "bracelet, cuff"),
        ("hinged bangle", "bracelet, hinged bangle"),
        ("coffeepot with ivory handle", "coffee pot"),
        ("christening mug", "mug or christening cup"),
        ("icon cover", "icon cover (oklad)"),
        ("fish knives", "knife, hollow handle"),
        ("lid of a teapot", "teapot"),
        ("cigarette boxes", "box"),
        ("snuff-box", "snuff box"),
        ("wedding ring", "ring"),
        ("napkin rings", "napkin ring"),
        ("sugar tongs", "tongs"),
        ("fish server", "fish slice or server"),
        ("scissors", "scissors"),
        ("teapot and stand", "teapot"),
    ],
)
def test_a_persons_words_lead_to_a_form(words: str, form: str) -> None:
    assert resolve(words, library()) == form


@pytest.mark.parametrize("words", ["spoon warmer", "teapot stand", "earring", "", "  ", "dress"])
def test_what_is_only_named_after_a_form_is_none(words: str) -> None:
    assert resolve(words, library()) is None


def test_spots_come_in_order_of_rank() -> None:
    assert [s.rank for s in where_to_look("teapot", library())] == [1, 2]


def test_an_unknown_form_gets_the_places_of_every_piece() -> None:
    assert [s.form for s in where_to_look("spoon warmer", library())] == [ANY]


@given(st.text(max_size=60))
def test_any_text_is_answered_with_a_form_or_none(words: str) -> None:
    found = resolve(words, library())
    assert found is None or found in forms(library())


@pytest.mark.parametrize("form", forms(load()))
def test_every_shipped_form_is_found_by_its_own_wording(form: str) -> None:
    assert resolve(form, load()) == form
    assert resolve(f"Pair of {form}", load()) == form
