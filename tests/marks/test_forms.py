"""The form of a piece as evidence of its date."""

import pytest

from planish.library import load
from planish.marks.forms import FLAT, form_curve

FORMS = load().forms


def test_an_unknown_form_says_nothing() -> None:
    assert form_curve("helicopter", FORMS) is FLAT
    assert form_curve(None, FORMS) is FLAT


@pytest.mark.parametrize(
    ("said", "inside", "outside"),
    [
        # common practice of the trade: trefid spoons of the later Stuarts, vesta cases after the
        # friction match had become cheap, shakers with the cocktail
        ("trefid spoon, lace-back", 1685, 1760),
        ("vesta case", 1890, 1800),
        ("cocktail shaker with tray", 1930, 1850),
        ("pair of candlesticks", 1750, 1600),
    ],
)
def test_years_of_use_fit_better(said: str, inside: int, outside: int) -> None:
    curve = form_curve(said, FORMS)
    assert curve.row is not None
    assert curve.at(inside) == 0.0
    assert curve.at(outside) < -0.3


def test_the_fullest_name_wins() -> None:
    plain, full = form_curve("teapot", FORMS).row, form_curve("bullet teapot", FORMS).row
    assert plain is not None
    assert full is not None
    assert plain.id == "teapot"
    assert full.id == "bullet-teapot"


def test_a_form_at_home_in_one_country_is_rare_elsewhere() -> None:
    quaich = form_curve("three-lugged quaich", FORMS)
    assert quaich.at(1700, "GB") > quaich.at(1700, "US")
    assert quaich.at(1700, "") == quaich.at(1700, "GB")


def test_cuts_are_where_the_chance_changes() -> None:
    curve = form_curve("trefid spoon", FORMS)
    assert curve.cuts
    assert all(curve.at(y) != curve.at(y - 1) for y in curve.cuts)
