from hypothesis import given
from hypothesis import strategies as st

from planish.cli.terminal import WIDTH, clean, percent, prose, table

words = st.text(st.characters(codec="utf-8", exclude_categories=["Cs"]), max_size=60)


@given(st.text(max_size=300), st.integers(0, 8), st.integers(0, 4))
def test_prose_fits_the_width(text: str, indent: int, hang: int) -> None:
    assert all(len(line) <= WIDTH for line in prose(text, indent, hang))


@given(st.lists(st.tuples(words, words, words), max_size=6))
def test_a_table_fits_the_width_whatever_it_holds(rows: list[tuple[str, str, str]]) -> None:
    assert all(len(line) <= WIDTH for line in table(rows))


@given(st.text(max_size=200))
def test_nothing_that_a_terminal_would_obey_gets_through(text: str) -> None:
    assert all(c.isprintable() or c == "\n" for c in clean(text))


def test_columns_are_aligned_and_the_last_is_wrapped() -> None:
    lines = table([("1 %", "London"), ("12 %", "a place " * 12)], right=(0,))

    assert lines[0] == "   1 %  London"
    assert lines[1].startswith("  12 %  a place a place")
    assert lines[2].startswith("        a place")


def test_nothing_is_certain_and_nothing_is_impossible() -> None:
    assert percent(1.0) == ">99 %"
    assert percent(0.0) == "<1 %"
    assert percent(0.955) == "96 %"
