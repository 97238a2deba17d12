"""Fineness words and figures: arithmetic and law from outside the tables."""

import re

import pytest

from planish.library import load
from planish.library.rows import Word

KINDS = {"fineness", "plate", "base", "origin", "patent", "weight", "pattern", "quality", "other"}


def found(text: str, country: str) -> list[Word]:
    """Rows for a struck text in a country, by the text or another spelling."""
    return [
        w
        for w in load().words
        if text in (w.text, *(s.strip() for s in w.also.split(";")))
        and country in w.countries.split(";")
        and w.kind == "fineness"
    ]


# One pound Troy is 12 ounces of 20 pennyweight (Weights and Measures Act 1824, 5 Geo. IV c. 74);
# a mark of silver is 16 lot, a Russian pound 96 zolotnik (Brockhaus and Efron, art. "Proba").
PARTS = [
    ("84", "RU", 84, 96),
    ("88", "RU", 88, 96),
    ("91", "RU", 91, 96),
    ("72", "RU", 72, 96),
    ("94", "RU", 94, 96),
    ("95", "RU", 95, 96),
    ("12", "DE", 12, 16),
    ("13", "AT", 13, 16),
    ("14", "DE", 14, 16),
    ("15", "AT", 15, 16),
    ("13 1/2", "DK", 13.5, 16),
    ("13 1/4", "NO", 13.25, 16),
    ("10 DINHEIROS", "PT", 10, 12),
    ("11 DINHEIROS", "PT", 11, 12),
    ("11 OZ", "US", 11, 12),
    ("10.15", "US", 10 + 15 / 20, 12),
]


@pytest.mark.parametrize(("text", "country", "part", "whole"), PARTS)
def test_old_fractions_are_arithmetic(text: str, country: str, part: float, whole: float) -> None:
    rows = found(text, country)

    assert rows
    for row in rows:
        assert row.fineness == pytest.approx(1000 * part / whole, abs=0.06)


def test_sterling_floor_of_the_stamping_act() -> None:
    """15 U.S.C. 296: an article of one metal stamped sterling is not below 921, with solder 915.

    In force one year after 13 June 1906 (34 Stat. 260, section 8).
    """
    (row,) = (w for w in found("STERLING", "US") if w.year_from == 1907)

    assert (row.low, row.fineness) == (915, 925)


def test_britannia_standard_is_11_ounces_10_pennyweight() -> None:
    """8 & 9 Will. III c. 8 (1697): 11 ounces 10 pennyweight fine in the pound."""
    (row,) = (w for w in load().words if w.text == "BRITANNIA")

    assert row.fineness == pytest.approx(1000 * (11 + 10 / 20) / 12, abs=0.1)


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        # common practice: the words that are most often taken for silver
        ("EPNS", "plate"),
        ("QUADRUPLE PLATE", "plate"),
        ("SHEFFIELD PLATE", "plate"),
        ("GERMAN SILVER", "base"),
        ("ALPACA", "base"),
        ("NEVADA SILVER", "base"),
        ("BRITANNIA METAL", "base"),
    ],
)
def test_words_that_look_like_silver(text: str, kind: str) -> None:
    rows = [w for w in load().words if w.text == text]

    assert [(w.kind, w.fineness) for w in rows] == [(kind, 0)]


def test_shape() -> None:
    for word in load().words:
        assert word.kind in KINDS, word.id
        assert re.fullmatch(r"[a-z0-9-]+", word.id), word.id
        assert all(re.fullmatch(r"[A-Z]{2}", c) for c in word.countries.split(";") if c), word.id
        if word.kind in ("plate", "base"):
            assert word.fineness == 0, word.id
        if word.kind == "fineness":
            assert word.fineness or (word.low and word.high), word.id
        if word.low is not None and word.high is not None:
            assert word.low <= (word.fineness or word.low) <= max(word.high, word.low), word.id


def test_no_two_letter_word_hides_initials() -> None:
    """A text sign of two letters would be taken for a word, and no maker be looked for."""
    ours = [s for s in load().signs if s.kind == "text" and not s.system.startswith(("GB", "IE"))]
    short = {
        option
        for s in ours
        for option in s.value.split("|")
        if re.fullmatch(r"[A-Z]\W?[A-Z]\W?", option)
    }

    # so common on plate, and New York on American work, that the word is the likelier reading
    assert short <= {"AI", "EP", "E.P.", "NS", "N.Y."}
