"""The notation is the Leiden system (van Groningen 1932, from memory); typing of it is our own."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.marks.transcription import (
    Gap,
    Letter,
    LineBreak,
    Separator,
    TranscriptionError,
    parse,
    print_,
)

# signs of the notation, letters of several scripts (accented, joining, right to left), spaces
ALPHABET = "ABCdefÉéѲПЦא ب84?_[].-–/·•∙&*^ '#,:\u0301가가"


def test_each_sign_of_the_notation_is_read() -> None:
    assert parse("A[.]?_B[C][---]·/&").tokens == (
        Letter("A"),
        Letter(None, sure=False),
        Letter(None, sure=False),
        Letter("B", sure=False),
        Letter("C", sure=False),
        Gap(),
        Separator("·"),
        LineBreak(),
        Separator("&"),
    )


@pytest.mark.parametrize(
    ("text", "printed"),
    [
        ("PB / AB", "PB/AB"),
        ("  W   &  Co ", "W & Co"),
        ("C•A∙B", "C·A·B"),
        ("ST[.]RL[--]", "ST?RL[---]"),
        ("[..]A", "??A"),
        ("[M]", "_M"),
        ("_M[A.]", "[MA.]"),
        ("D[.]", "D?"),
        ("M^M", "M^M"),
        ("В∙С/1872", "В·С/1872"),
        ("[–]", "[---]"),
        ("e\u0301", "é"),
    ],
)
def test_printing_is_the_one_form(text: str, printed: str) -> None:
    assert print_(parse(text)) == printed


@pytest.mark.parametrize(
    ("text", "plain"),
    [("ST[.]RL[IN]G", "ST?RLING"), ("PB/AB", "PB/AB"), ("M^M", "MM"), ("[---]AK", "?AK")],
)
def test_plain(text: str, plain: str) -> None:
    assert parse(text).plain == plain


@pytest.mark.parametrize("text", ["TE", "W&D", "J.C", "T·A", "PB/AB", "A", "[?]A", "ПЦ", "I * M"])
def test_initials(text: str) -> None:
    assert parse(text).is_initials


@pytest.mark.parametrize(
    "text", ["REVERE", "W & Co", "W2", "925", "10/15", "3,548", "[---]", "?", "[---]A", "wm", ""]
)
def test_not_initials(text: str) -> None:
    assert not parse(text).is_initials


def test_layout() -> None:
    read = parse("S·B/M^M & Co")
    assert [line.plain for line in read.lines] == ["S·B", "MM & Co"]
    assert len(parse("SB").lines) == 1


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("A[B", "never closed"),
        ("A]B", "without ["),
        ("A[]", "empty"),
        ("A_", "_ must stand before"),
        ("_·", "_ must stand before"),
        ("[A&B]", "cannot stand inside"),
        ("(eagle)", "device of its own"),
        ('"A"', "quotation marks"),
        ("A\x00", "control character"),
        ("A\nB", "control character"),
        ("A\ud800", "control character"),
        ("A\u202eB", "U+202E"),
        ("\u0301A", "U+0301"),
        ("A" * 201, "longer than 200"),
    ],
)
def test_what_cannot_be_read_is_refused_in_one_line(text: str, says: str) -> None:
    with pytest.raises(TranscriptionError) as caught:
        parse(text)
    message = str(caught.value)
    assert says in message
    assert "\n" not in message
    assert message.startswith("transcription, character ")


def test_the_place_of_the_fault_is_counted_from_one() -> None:
    with pytest.raises(TranscriptionError, match="character 3:"):
        parse("AB]")


@given(st.text(alphabet=ALPHABET, max_size=40))
def test_print_and_parse_agree(text: str) -> None:
    try:
        first = parse(text)
    except TranscriptionError:
        return
    assert parse(print_(first)) == first


@pytest.mark.parametrize("text", ["?" * 200, "[-]A" * 50, "_A" * 100, "[A.B]" * 40, "A" * 200])
def test_the_longest_texts_print_short_enough_to_be_read(text: str) -> None:
    assert parse(print_(parse(text))) == parse(text)


@given(st.text(max_size=220))
def test_any_text_is_read_or_refused_in_one_line(text: str) -> None:
    fault = ""
    try:
        first = parse(text)
    except TranscriptionError as raised:
        fault = str(raised)
    else:
        assert parse(print_(first)) == first
    assert "\n" not in fault


@given(st.text(alphabet="ABCXYZ&·", max_size=30))
def test_capitals_and_signs_are_never_lost(text: str) -> None:
    assert parse(text).plain == text
