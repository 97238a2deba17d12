import json

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planish.cli import main
from planish.cli.lookup import letters, near, search
from planish.library import load
from planish.library.rows import Source


def source(key: str, title: str) -> Source:
    return Source(key=key, title=title, kind="book")


ROWS = [source("A", "Old silver"), source("OLD", "Plate"), source("B", "Golden silverware")]


def test_a_name_comes_before_words_and_words_before_parts() -> None:
    assert [r.key for r in search(ROWS, ("key", "title"), "old")] == ["OLD", "A", "B"]


def test_every_word_must_occur() -> None:
    assert [r.key for r in search(ROWS, ("title",), "silver old")] == ["A", "B"]
    assert search(ROWS, ("title",), "silver plate") == []


def test_a_near_name_is_offered() -> None:
    assert near(ROWS, ("key", "title"), "old silvr") == ["Old silver"]
    assert near(ROWS, ("key", "title"), "tankard") == []


@settings(max_examples=30, deadline=None)
@given(st.text(max_size=30))
def test_any_query_is_answered(query: str) -> None:
    search(ROWS, ("key", "title"), query)
    letters(load(), query)


# London's letter of 1756-57 is a black-letter capital A: Hayden, "Chats on Old Silver" (1915),
# appendix, table of London.
def test_a_year_and_a_place_give_the_letter() -> None:
    found, place = letters(load(), "London 1756")

    assert place == "London"
    assert [f.letter.letters for f in found] == [("A",)]


def test_a_letter_gives_its_years_in_order() -> None:
    years = [f.letter.first_year for f in letters(load(), "london k")[0]]

    assert len(years) > 5
    assert years == sorted(years)


@pytest.mark.parametrize(
    "arguments",
    [
        ["system", "england"],
        ["device", "lion"],
        ["maker"],
        ["fineness", "925"],
        ["source", "chaffers"],
        ["cycle", "Birmingham"],
        ["cycle"],
    ],
)
def test_pages_fit_80_columns_and_name_their_sources(
    arguments: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["library", *arguments]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert lines
    assert all(len(line) <= 80 for line in lines)


def test_json_gives_the_rows(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["library", "device", "--json", "lion passant"]) == 0
    assert json.loads(capsys.readouterr().out)[0]["label"] == "lion passant"


def test_more_than_twenty_are_counted(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["library", "source"]) == 0
    short = capsys.readouterr().out
    assert main(["library", "source", "--all"]) == 0
    assert len(capsys.readouterr().out) > len(short)
    assert f"{len(load().sources) - 20} more" in short


def test_no_row_is_no_proof(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["library", "device", "lion pasant"]) == 2
    err = capsys.readouterr().err
    assert err.startswith("planish: device 'lion pasant': not in the library, which proves nothing")
    assert "lion passant" in err


def test_what_only_mentions_the_words_is_not_passed_off_as_named_so(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert main(["library", "device", "zebra"]) == 0
    assert capsys.readouterr().out.startswith("No device is named 'zebra'; what mentions it:\n")
    assert main(["library", "device", "tiger"]) == 0
    assert capsys.readouterr().out.startswith("tiger [tiger]\n")


def test_a_fact_of_common_practice_says_so_once(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["library", "device", "lion"]) == 0
    assert "practice (common practice" not in capsys.readouterr().out


def test_the_shipped_library_is_sound(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["library", "check"]) == 0
    assert "sound" in capsys.readouterr().out


def test_a_damaged_library_is_named(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr("planish.library.check.problems", lambda _: ["row x: no source", "row y"])

    assert main(["library", "check"]) == 2
    assert capsys.readouterr().err == "planish: row x: no source\nplanish: row y\n"
