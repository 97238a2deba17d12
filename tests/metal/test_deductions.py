"""What comes off the gross weight, and what the bench must ask for."""

from decimal import Decimal

import pytest

from planish.metal import (
    ALLOWANCES,
    Deduction,
    Kind,
    Method,
    allowance,
    asks_for,
    by_allowance,
    by_share,
    method_of,
)
from planish.quantity import Mass, QuantityError


@pytest.mark.parametrize(
    ("words", "kinds"),
    [
        ("pair of candlesticks", ["filler"]),
        ("candelabrum, STERLING WEIGHTED", ["filler"]),
        ("compote, CEMENT REINFORCED", ["filler"]),
        ("salt and pepper, sterling, weighted bases", ["filler"]),
        ("twelve dinner knives", ["steel"]),
        ("cake server, STAINLESS BLADE", ["steel"]),
        ("ring set with a turquoise", ["stone"]),
        ("coffee pot, ebony handle", ["wood"]),
        ("salt cellars with blue glass liners", ["glass"]),
        ("hand mirror", ["other"]),
        ("candlesticks, weighted, set with amethysts", ["filler", "stone"]),
        ("teaspoons", []),
        ("water pitcher", []),
        ("ring, no stones", []),
        ("mustard pot without glass", []),
        ("candlesticks, solid cast, not weighted", []),
        ("fruit knife, all silver", []),
        ("bracelet, gold-filled clasp", []),
    ],
)
def test_what_is_due_is_asked_for(words: str, kinds: list[str]) -> None:
    assert [ask.kind.value for ask in asks_for(words, ())] == kinds


def test_what_is_given_is_not_asked_for_again() -> None:
    stone = Deduction(
        kind=Kind.STONE,
        what="turquoise",
        mass=Mass.of(12, "ct"),
        method=Method.MEASURED,
        source="formula",
    )
    none = Deduction(
        kind=Kind.FILLER,
        what="no filler",
        mass=Mass.of(0),
        method=Method.MEASURED,
        source="hollow underneath, seen",
    )

    assert asks_for("ring set with a turquoise", (stone,)) == ()
    assert asks_for("candlestick", (none,)) == ()
    assert [a.kind for a in asks_for("candlestick with garnets", (none,))] == [Kind.STONE]


def test_an_ask_names_rules_of_thumb_that_exist() -> None:
    for words in ("candlestick", "knife", "mirror", "turquoise", "ebony", "glass"):
        for ask in asks_for(words, ()):
            assert ask.says
            assert ask.because in words
            for key in ask.allowances:
                assert allowance(key).source


@pytest.mark.parametrize(
    ("words", "method"),
    [
        ("weighed apart", Method.WEIGHED),
        ("measured and calculated from specific gravity", Method.MEASURED),
        ("estimated from like pieces", Method.RULE_OF_THUMB),
        ("not weighed", Method.RULE_OF_THUMB),
        ("", Method.RULE_OF_THUMB),
    ],
)
def test_a_method_is_a_guess_unless_it_was_done(words: str, method: Method) -> None:
    assert method_of(words) is method


@pytest.mark.parametrize(
    ("figures", "says"),
    [
        ({}, "one figure"),
        ({"mass": Mass.of(1), "low": Mass.of(1), "high": Mass.of(2)}, "one figure"),
        ({"low": Mass.of(1)}, "one figure"),
        ({"low": Mass.of(2), "high": Mass.of(1)}, "smaller first"),
        ({"mass": Mass.of(-1)}, "negative"),
    ],
)
def test_a_deduction_is_one_figure_or_two_limits(figures: dict[str, Mass], says: str) -> None:
    with pytest.raises(QuantityError, match=says):
        Deduction(kind=Kind.OTHER, what="x", method=Method.WEIGHED, source="balance", **figures)


def test_a_deduction_says_where_it_comes_from() -> None:
    with pytest.raises(QuantityError, match="where the figure comes from"):
        Deduction(kind=Kind.OTHER, what="x", mass=Mass.of(1), method=Method.WEIGHED, source=" ")


def test_an_allowance_takes_off_all_but_its_silver() -> None:
    """Hollow-handled knives: 12 to 25 g of silver each (common practice)."""
    gross = Mass.of(900)
    knives = by_allowance(gross, allowance("knife"), kind=Kind.STEEL, count=12)

    assert (gross - knives.best).grams == 12 * Decimal("18.5")
    assert knives.method is Method.RULE_OF_THUMB
    with pytest.raises(QuantityError, match="weigh the silver apart"):
        by_allowance(Mass.of(100), allowance("knife"), kind=Kind.STEEL, count=12)
    with pytest.raises(QuantityError, match="at least one piece"):
        by_allowance(gross, allowance("knife"), kind=Kind.STEEL, count=0)


def test_published_pieces_lie_within_the_rules_of_thumb() -> None:
    """Dissected candlestick 1.005 of 9.672 oz; candelabrum 6.4 of 64 oz (trade columns)."""
    for key, silver, whole in (("candlestick-low", "1.005", "9.672"), ("candelabrum", "6.4", "64")):
        low, high = allowance(key).silver(Mass.of(Decimal(whole), "oz"))
        assert low <= Mass.of(Decimal(silver), "oz") <= high


def test_every_rule_of_thumb_has_limits_and_a_source() -> None:
    for rule in ALLOWANCES:
        low, high = rule.silver(Mass.of(1000), 1)
        assert Mass.of(0) < low < high < Mass.of(1000)
        assert rule.source
    with pytest.raises(QuantityError, match="choose one of"):
        allowance("teapot")


def test_shares_are_limits_between_nought_and_one() -> None:
    with pytest.raises(QuantityError, match="limits of a share"):
        by_share(Mass.of(1), Decimal("0.9"), Decimal("0.8"), kind=Kind.FILLER, what="x", source="y")
