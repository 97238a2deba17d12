"""Letter confusion: a proper distribution over what may be written down."""

import math
import string

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.marks.letters import MISREAD, seen_given, style_given, upside_down

LETTERS = st.sampled_from(string.ascii_uppercase)
STATES = st.sampled_from(sorted(MISREAD))


@given(LETTERS, STATES)
def test_the_letter_itself_is_the_likeliest(true: str, state: str) -> None:
    others = [seen_given(c, true, state) for c in string.ascii_uppercase if c != true]
    assert seen_given(true, true, state) > max(others)


@given(LETTERS)
def test_wear_makes_misreading_likelier(true: str) -> None:
    assert seen_given(true, true, "clear") > seen_given(true, true, "worn")
    assert seen_given(true, true, "worn") > seen_given(true, true, "obscure")


@given(LETTERS, STATES)
def test_total_chance_is_near_one(true: str, state: str) -> None:
    # I and J, U and V are one letter in old punches, so their two spellings add up to more
    total = math.fsum(seen_given(c, true, state) for c in string.ascii_uppercase)
    slack = 0.5 if true in "IJUV" else 0.06
    assert 1.0 - 0.05 <= total <= 1.0 + slack


@pytest.mark.parametrize(
    ("seen", "true"),
    [
        # Hayden, Chats on Old Silver (1915), London appendix: C and E, L and T easily confused
        ("C", "E"),
        ("L", "T"),
        # common practice: open letters of worn punches, long s and f
        ("C", "O"),
        ("F", "S"),
        ("N", "U"),
        # read upside down or sideways
        ("M", "W"),
        ("D", "P"),
    ],
)
def test_known_confusions_beat_unlike_letters(seen: str, true: str) -> None:
    assert seen_given(seen, true, "worn") > 4 * seen_given("A", true, "worn")


def test_a_lost_letter_says_nothing() -> None:
    assert len({seen_given(None, c) for c in string.ascii_uppercase}) == 1


def test_stated_style_favours_itself() -> None:
    assert style_given("black-letter", ("black-letter",)) > 5 * style_given(
        "black-letter", ("roman",)
    )
    assert style_given(None, ("roman",)) > style_given(None, ("script",))


def test_upside_down_is_its_own_inverse() -> None:
    for letters in ("SHI", "OX", "NHZ", "W"):
        turned = upside_down(letters)
        assert turned is not None
        assert upside_down(turned) == letters


def test_letters_without_a_turned_reading() -> None:
    assert upside_down("PB") is None
