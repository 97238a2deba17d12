"""Texts for print: what cannot be seen is shown, long words may break, nothing is lost."""

import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.report.plain import breakable, printed, visible


def test_direction_controls_and_zero_widths_are_shown_by_number() -> None:
    assert visible("a\u202eb\u200bc\ufeff\x00") == "a‹U+202E›b‹U+200B›c‹U+FEFF›‹U+0000›"


def test_joiners_stay_in_the_scripts_that_need_them() -> None:
    persian = "می\u200cخواهم"
    assert visible(persian) == unicodedata.normalize("NFC", persian)
    assert visible("a\u200cb") == "a‹U+200C›b"


def test_line_ends_of_every_system_are_one() -> None:
    assert visible("a\r\nb\rc\nd\te") == "a\nb\nc\nd e"


def test_accents_are_composed() -> None:
    assert visible("e\u0301") == "é"


def test_a_long_word_may_break_and_reads_the_same() -> None:
    word = "https://example.org/" + "x" * 200
    broken = breakable(word)
    assert broken.replace("\u200b", "") == word
    assert max(len(part) for part in broken.split("\u200b")) <= 30


def test_markup_is_left_as_text() -> None:
    text = '#panic("x") <b>&amp;</b> $(rm -rf /) `id`'
    assert printed({"a": [text]}) == {"a": [text]}


@given(st.text(max_size=200))
def test_nothing_invisible_is_left_but_the_breaks_made_here(text: str) -> None:
    for char in visible(text):
        assert char in "\n\u00ad\u200c\u200d" or unicodedata.category(char) not in (
            "Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp",
        )  # fmt: skip


@given(st.text(max_size=200))
def test_breaking_changes_nothing_else(text: str) -> None:
    assert breakable(text).replace("\u200b", "") == text.replace("\u200b", "")


@pytest.mark.parametrize(
    ("text", "kept"),
    [
        ("height 12.1 cm", "height 12.1~cm"),
        ("612.4 g, 19.69 ozt", "612.4~g, 19.69~ozt"),
        ("98 % sure", "98~% sure"),
        ("5.5 in", "5.5~in"),
        ("1884 in London", "1884 in London"),
        ("8 grams, 2 marks", "8 grams, 2 marks"),
    ],
)
def test_a_figure_and_its_unit_stay_on_one_line(text: str, kept: str) -> None:
    assert printed(text) == kept.replace("~", "\u00a0")
