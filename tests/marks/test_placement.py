"""Where marks were struck as evidence of date.

Common practice of the literature on English spoons and hollow ware: the leopard's head in the bowl
until about 1680, marks low on the stem until about 1781; tankards by the rim first, under the base
later.
"""

import math

import pytest

from planish.library.loader import load
from planish.marks.engine import Reader
from planish.marks.forms import form_curve, with_places
from planish.marks.observation import Mark, Observed
from planish.marks.placement import NOWHERE, placed

ROWS = load().placements
HEAD = Mark(device="leopard's head crowned", part="bowl")


@pytest.mark.parametrize(
    ("mark", "form", "early", "late"),
    [
        (HEAD, "seal top spoon", 1620, 1720),
        (Mark(text="K", place="stem, near the bowl"), "tablespoon", 1740, 1800),
        (Mark(text="AB", place="right of handle near rim"), "tankard", 1680, 1760),
        (Mark(text="AB", place="front border"), "salver", 1690, 1760),
    ],
)
def test_old_places_speak_for_old_pieces(mark: Mark, form: str, early: int, late: int) -> None:
    found = placed([mark], form, ROWS)
    assert found.at(early, "GB") > found.at(late, "GB") + math.log(2)


@pytest.mark.parametrize(
    ("mark", "form"),
    [
        (Mark(text="K", place="top of stem"), "tablespoon"),
        (Mark(text="AB", place="underside of base"), "mug"),
        (Mark(text="AB", place="reverse"), "salver, one of pair"),
    ],
)
def test_later_places_speak_for_later_pieces(mark: Mark, form: str) -> None:
    found = placed([mark], form, ROWS)
    assert found.at(1800, "GB") > found.at(1650, "GB") + math.log(2)


@pytest.mark.parametrize(
    ("mark", "form"),
    [
        (HEAD, None),
        (HEAD, "tankard"),
        (Mark(device="lion passant"), "spoon"),
        (Mark(text="800", part="bowl"), "souvenir spoon"),
        (Mark(text="AB", place="back of bowl"), "spoon"),
    ],
)
def test_places_that_say_nothing(mark: Mark, form: str | None) -> None:
    assert placed([mark], form, ROWS) is NOWHERE


def test_other_countries_are_left_alone() -> None:
    assert placed([HEAD], "spoon", ROWS).at(1650, "DE") == 0.0


def test_two_marks_at_one_place_count_once() -> None:
    once = placed([HEAD], "spoon", ROWS)
    twice = placed([HEAD, Mark(device="lion passant", part="bowl")], "spoon", ROWS)
    assert once.steps == twice.steps


def test_it_joins_the_form() -> None:
    forms = load().forms
    where = placed([HEAD], "spoon", ROWS)
    curve = with_places(form_curve("spoon", forms), where)
    assert curve.at(1650, "GB") == pytest.approx(
        form_curve("spoon", forms).at(1650, "GB") + where.at(1650, "GB")
    )
    assert {1680, 1700} <= set(curve.cuts)


def test_the_ledger_says_so() -> None:
    marks = (HEAD, Mark(device="lion passant", part="stem"))
    found = Reader(load()).read(Observed(marks=marks), "spoon")
    line = next(x for x in found.finding.ledger.lines if x.key == "places")
    assert "bowl" in line.observed
    assert line.sources


def test_a_reading_does_not_depend_on_the_piece_read_before() -> None:
    """Prior weights are kept by form; the places of the marks are counted afresh for each piece."""
    marks = (Mark(device="leopard's head", part="bowl"), Mark(device="lion passant"))
    elsewhere = (Mark(device="leopard's head", place="top of stem"), Mark(device="lion passant"))
    alone = Reader(load()).read(Observed(marks=marks), "spoon")
    reader = Reader(load())
    reader.read(Observed(marks=elsewhere), "spoon")
    again = reader.read(Observed(marks=marks), "spoon")
    assert [r.probability for r in again.readings] == pytest.approx(
        [r.probability for r in alone.readings]
    )
