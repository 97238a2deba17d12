import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.library import load
from planish.quantity import QuantityError
from planish.stones import restricted


def ids(words: str, place: str = "") -> set[str]:
    return {flag.id for flag in restricted(words, place=place)}


@pytest.mark.parametrize(
    ("words", "called"),
    [
        ("ivory", {"cites-elephant", "us-ivory-ban", "uk-ivory", "eu-ivory"}),
        ("teapot with ivory insulators", {"cites-elephant", "us-ivory-ban", "uk-ivory"}),
        ("Ivory finials, later", {"uk-ivory"}),
        ("walrus ivory toggle", {"cites-walrus", "us-mmpa"}),
        ("tortoise-shell and silver box", {"cites-turtle", "us-esa-antique"}),
        ("a piqué box", {"cites-turtle"}),
        ("rattle with coral", {"cites-red-coral", "us-coral"}),
        ("black coral beads", {"cites-black-coral"}),
        ("pendant hung with feathers", {"us-migratory-birds"}),
        ("eagle feathers", {"us-eagle", "us-migratory-birds"}),
        ("rosewood handle", {"cites-rosewood", "us-lacey"}),
        ("shagreen case", {"cites-skin"}),
        ("rhinoceros horn cup", {"cites-rhino"}),
        ("Hopi overlay bracelet", {"us-native-crafts"}),
        ("celluloid and ivory", {"uk-ivory"}),
        ("no damage, ivory handle", {"uk-ivory"}),
        ("not bone; ivory", {"uk-ivory"}),
    ],
)
def test_words_that_call_for_a_rule(words: str, called: set[str]) -> None:
    assert called <= ids(words)


@pytest.mark.parametrize(
    "words",
    [
        "silver teapot, pearwood handle",
        "no ivory",
        "without coral or ivory",
        "vegetable ivory knob",
        "French ivory brush",
        "ivory-coloured celluloid",
        "imitation carved tortoiseshell",
        "feather edge tablespoon",
        "engraved with three feathers",
        "eagle finial",
        "elephant finial",
        "turtle-shaped inkwell",
        "seal with horn handle",
        "coralline chasing",
        "ivoryton",
    ],
)
def test_words_that_call_for_none(words: str) -> None:
    assert ids(words) == set()


def test_a_walrus_is_no_elephant() -> None:
    assert "uk-ivory" not in ids("walrus ivory")
    assert "uk-ivory" in ids("scrimshaw on a sperm whale tooth")


def test_a_place_leaves_its_law_and_the_treaties() -> None:
    found = restricted("ivory", place="gb")

    assert {flag.place for flag in found} == {"", "GB"}
    assert found[0].place == ""


def test_an_unknown_place_is_no_silence() -> None:
    with pytest.raises(QuantityError, match="EU, GB, US"):
        restricted("ivory", place="ZZ")


def test_each_flag_says_what_when_from_where_and_to_check() -> None:
    for row in load().protections:
        for flag in restricted(row.words.split(";")[0]):
            assert flag.rule
            assert flag.regime
            assert len(flag.checked) == len("2024-11")
            assert flag.sources
            assert "check the law" in flag.caution
            assert len(flag.asks) == len(flag.limits)


def test_limits_ask_the_questions_of_the_exception() -> None:
    # Ivory Act 2018 section 7: under a tenth by volume, made before 3 March 1947
    (uk,) = (f for f in restricted("ivory", place="GB") if f.id == "uk-ivory")

    assert uk.asks[:2] == ("ivory volume under 10 %?", "made before 1947-03-03?")


def test_every_row_can_be_called_by_each_of_its_words() -> None:
    for row in load().protections:
        for word in row.words.split(";"):
            assert row.id in ids(f"a piece with {word.strip()}"), (row.id, word)


@given(st.text(max_size=60))
def test_any_text_is_looked_through(text: str) -> None:
    restricted(text)
