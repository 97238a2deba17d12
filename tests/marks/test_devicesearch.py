"""Ordinary words for pictures: classes of words, stems, likeness when worn, plain features."""

import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planish.library import load
from planish.library.rows import Confidence, Device
from planish.marks.devicesearch import DeviceSearch
from planish.marks.devicewords import related, stem, stems


def device(id_: str, label: str, said: str = "", broader: str = "", worn: str = "") -> Device:
    return Device(
        id=id_, label=label, words=said, broader=broader, worn_as=worn,
        source="practice", confidence=Confidence.PRACTICE,
    )  # fmt: skip


SMALL = DeviceSearch(
    [
        device("lion", "lion"),
        device("lion-passant", "lion passant", "walking lion", "lion", "dog"),
        device("lion-passant-crowned", "crowned lion passant", "", "lion-passant"),
        device("dog", "dog"),
        device("axe", "axe", "halberd"),
        device("wheat-sheaf", "wheat sheaf", "garb"),
        device("tent", "tent"),
        device("triangle", "triangle", worn="tent; mountain"),
        device("george", "head of George", "king head", "head"),
        device("william", "head of William", "king head", "head"),
        device("head", "sovereign"),
    ],
    {"triangle": 2},
)
WHOLE = DeviceSearch(load().devices)


def first(words: str) -> str:
    return SMALL.search(words).found[0].device.id


# one line a rule; heraldic terms from Parker, "A Glossary of Terms used in Heraldry" (from memory)
@pytest.mark.parametrize(
    ("words", "device"),
    [
        ("hatchets", "axe"),  # same meaning, plural
        ("wheatsheaves", "wheat-sheaf"),  # closed compound, irregular plural
        ("garb", "wheat-sheaf"),
        ("passant lion", "lion-passant"),  # order
        ("big cat walking", "lion-passant"),
        ("lion passant with a crown above", "lion-passant-crowned"),
        ("The LION’S", "lion"),  # case, possessive, filler
        ("lion pasant", "lion-passant"),  # spelling
    ],
)
def test_rules_of_ordinary_words(words: str, device: str) -> None:
    assert first(words) == device


def test_a_misspelt_word_is_said_to_be_read_as_another() -> None:
    assert SMALL.search("lion pasant").read_as == {"pasant": "passant"}
    assert SMALL.search("lion passant").read_as == {}


def test_what_is_taken_for_the_named_comes_with_its_reason() -> None:
    why = {f.device.id: f.why for f in SMALL.search("tent").found}

    assert why == {"tent": "named so", "triangle": "worn, looks like tent"}


def test_the_wider_device_comes_first_where_words_do_not_tell_its_kinds_apart() -> None:
    assert [f.device.id for f in SMALL.search("king's head").found[:3]] == [
        "head",
        "george",
        "william",
    ]


def test_nothing_is_found_for_what_nothing_resembles() -> None:
    assert SMALL.search("helicopter").found == ()
    assert SMALL.search("").found == ()


def test_parts_of_a_mixed_picture() -> None:
    assert SMALL.parts("lion; two axes in a circle") == (("lion", "axe"), ("two", "circle"))


def test_stems_and_classes() -> None:
    assert stem("fleurs") == "fleur"
    assert stem("cross") == "cross"
    assert stems("the stag's heads") == ("stag", "head")
    assert related("pheon")["arrowhead"] > related("cat")["lion"]


def test_likeness_of_words_goes_both_ways() -> None:
    for word in ("lion", "axe", "cat", "woman", "moon", "hat"):
        for other, weight in related(word).items():
            assert related(other)[word] == weight


@settings(max_examples=60, deadline=None)
@given(st.text(max_size=60))
def test_any_words_are_answered_in_order(words: str) -> None:
    found = WHOLE.search(words).found

    assert all(0 < f.score <= 1 for f in found)
    assert len({f.device.id for f in found}) == len(found)


@settings(max_examples=30, deadline=None)
@given(st.sampled_from([d.label for d in load().devices]), st.randoms())
def test_order_of_words_does_not_matter(label: str, chance: random.Random) -> None:
    words = label.split()
    chance.shuffle(words)
    one = {f.device.id for f in WHOLE.search(label).found if f.score > 0.85}
    two = {f.device.id for f in WHOLE.search(" ".join(words)).found if f.score > 0.85}

    assert one == two or set(stems(label)) != set(stems(" ".join(words)))
