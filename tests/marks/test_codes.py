"""Codes of single years in Sweden, Finland and Denmark, joined for speed, read as the year they mean.

The codes are those of public registers: in Sweden A to Z (24 letters, no J and no W) stand for 1759
to 1782, then A2 from 1783, and so on, so that Q8 is 1942; Finland has its own count from 1810, so
that L5 is 1916 and B7 is 1954 (from memory, and the tables of the dated codes in the library).
"""

import pytest

from planish.library.rows import Confidence, Sign
from planish.marks import Mark, Observed, Reader, describe
from planish.marks.codes import join_codes

LETTERS = "ABCDEFGHIKLMNOPQRSTUVXYZ"


@pytest.fixture(scope="module")
def reader() -> Reader:
    return Reader()


def swedish(year: int) -> str:
    cycle, letter = divmod(year - 1759, len(LETTERS))
    return LETTERS[letter] + (str(cycle + 1) if cycle else "")


def finnish(year: int) -> str:
    cycle, letter = divmod(year - 1810, len(LETTERS))
    return LETTERS[letter] + (str(cycle + 1) if cycle else "")


def test_the_rule_against_known_years() -> None:
    assert (swedish(1942), swedish(1759), finnish(1916)) == ("Q8", "A", "L5")


@pytest.mark.parametrize("year", [1800, 1894, 1903, 1912, 1942, 1988, 1990])
def test_swedish_year(reader: Reader, year: int) -> None:
    found = reader.read(describe(f"three crowns in a trefoil, S in a hexagon, {swedish(year)}"))
    best = found.readings[0]
    assert (best.country, best.year_from, best.year_to) == ("SE", year, year)


@pytest.mark.parametrize("year", [1902, 1925, 1954, 1985])
def test_finnish_year(reader: Reader, year: int) -> None:
    found = reader.read(describe(f"crown in a heart, 813H, {finnish(year)}"))
    best = found.readings[0]
    assert (best.country, best.year_from, best.year_to) == ("FI", year, year)


@pytest.mark.parametrize("year", [1893, 1921, 1935])
def test_danish_towers_over_two_figures(reader: Reader, year: int) -> None:
    marks = (
        Mark(device="three towers"),
        Mark(text=f"{year % 100:02}", hint="date mark"),
        Mark(text="CFH"),
    )
    best = reader.read(Observed(marks=marks)).readings[0]
    assert (best.country, best.year_from, best.year_to) == ("DK", year, year)


def test_danish_figures_that_are_german_lots_too_stay_in_view(reader: Reader) -> None:
    """13 beside towers is Copenhagen 1913 as well as 13 lot of a German town with towers."""
    marks = (Mark(device="three towers"), Mark(text="13"), Mark(text="CFH"))
    found = reader.read(Observed(marks=marks)).readings
    danish = [r for r in found if (r.country, r.year_from, r.year_to) == ("DK", 1913, 1913)]
    assert danish
    assert danish[0].probability >= 0.05


def test_hundreds_of_codes_are_few_segments(reader: Reader) -> None:
    coded = [s for s in reader.plan.segments if s.coded]
    years = sum(s.year_to - s.year_from + 1 for s in coded)
    assert years > 500
    assert len(coded) < years / 10


def test_each_year_has_its_own_code(reader: Reader) -> None:
    for segment in reader.plan.segments:
        if segment.coded and segment.system.country == "SE" and segment.dated:
            codes = reader.plan.codes[segment.dated.index]
            for year in range(segment.year_from, segment.year_to + 1):
                sign = codes[segment.letters[year - segment.year_from]]
                assert sign.value.split("|")[0] == swedish(year)


def sign(year: int, value: str, share: float = 1.0, last: int | None = None) -> Sign:
    return Sign(
        id=value, system="X", role="date", kind="text", value=value, year_from=year,
        year_to=last or year, share=share, source="practice", confidence=Confidence.PRACTICE,
    )  # fmt: skip


def test_codes_are_joined_where_they_follow_and_are_alike() -> None:
    rows = [sign(1900 + n, f"A{n}") for n in range(10)] + [sign(1912, "B1"), sign(1913, "B2", 0.5)]
    joined = join_codes(rows)
    assert [(s.kind, s.year_from, s.year_to) for s in joined.signs] == [
        ("code", 1900, 1909), ("code", 1912, 1912), ("code", 1913, 1913),
    ]  # fmt: skip
    assert joined.by_year[1905].value == "A5"


def test_two_codes_of_one_year_stay_apart() -> None:
    rows = [sign(1900 + n, f"A{n}") for n in range(10)] + [sign(1905, "Z9")]
    kept = [s.value for s in join_codes(rows).signs if s.kind == "text"]
    assert kept == ["A5", "Z9"]


def test_a_few_codes_stay_as_they_are() -> None:
    rows = [sign(1900 + n, f"A{n}") for n in range(5)]
    assert join_codes(rows).signs == rows
