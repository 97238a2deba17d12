from collections import Counter

import pytest

from planish.library import load
from planish.quantity import QuantityError
from planish.stones import find_cut, find_material, find_test
from planish.stones.names import key


@pytest.mark.parametrize(
    ("words", "found"),
    [
        ("Mother-of-Pearl", "mop"),
        ("tortoise shell", "tortoiseshell"),
        ("pique", "tortoiseshell"),
        ("glass", "glass-crown"),
        ("paste_lead", "paste-lead"),
        ("turquoises", "turquoise"),
        ("French jet", "french-jet"),
        ("french ivory", "celluloid"),
        ("tiger's eye", "tigers-eye"),
        ("CZ", "cz"),
    ],
)
def test_materials_in_anyones_words(words: str, found: str) -> None:
    assert find_material(words).id == found


@pytest.mark.parametrize(
    ("words", "found"),
    [
        ("pear cut", "pear"),
        ("Navette", "marquise"),
        ("old mine cut", "old-mine"),
        ("cabochons", "cabochon"),
        ("princess cut", "square"),
        ("bead", "sphere"),
    ],
)
def test_cuts_in_anyones_words(words: str, found: str) -> None:
    assert find_cut(words).id == found


def test_every_row_is_found_by_its_id_and_name() -> None:
    for row in load().materials:
        assert find_material(row.id) is row
        assert find_material(row.name) is row
    for cut in load().cuts:
        assert find_cut(cut.id) is cut
        assert find_cut(cut.name) is cut
    for test in load().gemtests:
        assert find_test(test.id) is test
        assert find_test(test.label) is test


def test_no_two_materials_or_cuts_share_a_proper_name() -> None:
    for rows in (load().materials, load().cuts):
        counted = Counter(key(row.name) for row in rows)
        assert [name for name, times in counted.items() if times > 1] == []


def test_no_answer_of_a_test_has_two_meanings() -> None:
    for test in load().gemtests:
        counted = Counter(
            word
            for answer, others in test.answers.items()
            for word in {key(w) for w in (answer, *others)}
        )
        assert [(test.id, w) for w, times in counted.items() if times > 1] == []


def test_a_near_miss_is_proposed() -> None:
    with pytest.raises(QuantityError, match="did you mean turquoise"):
        find_material("torquoise")
