"""Layout of makers' initials as evidence of date.

Source of the rules: 12 Geo. II c. 26 (1739) had every London plateworker destroy the old punches
and enter a new mark in letters of another character; the rest is common practice.
"""

import pytest

from planish.library.loader import load
from planish.library.rows import Confidence, Layout
from planish.marks.describe import describe
from planish.marks.engine import Reader
from planish.marks.layout import FLAT, Layouts, features
from planish.marks.observation import Mark, Observed, Style
from planish.marks.reading import ReadingFinding


@pytest.mark.parametrize(
    ("mark", "expected"),
    [
        (
            Mark(text="TL", outline="shaped shield", note="with a mullet below"),
            ("charge", "outline-shield"),
        ),
        (Mark(text="IS", outline="plain shield", note="crowned"), ("charge", "outline-shield")),
        (
            Mark(text="GG", outline="shaped shield", note="over a pellet"),
            ("charge", "outline-shield"),
        ),
        (Mark(text="W·B", outline="clipped-corner rectangle"), ("outline-rectangle",)),
        (Mark(text="W.S", outline="oval"), ("outline-oval",)),
        (
            Mark(text="JW", outline="shaped reserve", style=Style.SCRIPT),
            ("outline-shaped", "style-script"),
        ),
        (Mark(text="PB/AB", outline="square"), ("outline-rectangle", "rows")),
        (Mark(text="AB"), ()),
        (Mark(text="AB", note="struck twice"), ()),
    ],
)
def test_features_are_those_written_down(mark: Mark, expected: tuple[str, ...]) -> None:
    assert features(mark) == expected


def _ratio(layouts: Layouts, mark: Mark, country: str, year: int) -> float:
    edges, ratios = layouts.steps(mark, country)
    return ratios[sum(e <= year for e in edges) - 1]


@pytest.fixture(scope="module")
def layouts() -> Layouts:
    return Layouts(load().layouts)


def test_script_follows_the_act_of_1739(layouts: Layouts) -> None:
    script = Mark(text="JW", style=Style.SCRIPT)
    assert _ratio(layouts, script, "GB", 1752) > 5 * _ratio(layouts, script, "GB", 1730)
    assert _ratio(layouts, script, "GB", 1752) > 3 * _ratio(layouts, script, "GB", 1790)


def test_crowned_initials_are_early(layouts: Layouts) -> None:
    crowned = Mark(text="IS", note="crowned")
    assert _ratio(layouts, crowned, "GB", 1680) > 10 * _ratio(layouts, crowned, "GB", 1800)


def test_silence_and_other_countries_say_nothing(layouts: Layouts) -> None:
    assert layouts.steps(Mark(text="IS"), "GB") is FLAT
    assert layouts.steps(Mark(text="IS", note="crowned"), "JP") is FLAT


def test_a_set_of_features_is_bounded() -> None:
    rows = [
        Layout(
            countries="GB",
            feature=f,
            year_from=a,
            year_to=b,
            share=s,
            source="practice",
            confidence=Confidence.PRACTICE,
        )
        for f in ("charge", "outline-shield", "style-script")
        for a, b, s in ((1600, 1700, 0.9), (1701, 1900, 0.001))
    ]
    mark = Mark(text="IS", outline="shield", note="crowned", style=Style.SCRIPT)
    _, ratios = Layouts(rows).steps(mark, "GB")
    assert max(ratios) <= 6.0
    assert min(ratios) >= 0.1


def test_a_shaped_shield_with_a_charge_moves_the_reading_to_the_older_cycle() -> None:
    """Small d stands for 1681, 1739 and 1779 in London (date-letter table of the library)."""
    reader = Reader(load())
    text = "leopard's head crowned, lion passant, date letter 'd' in a shield, maker's mark "
    plain = reader.read(describe(text + "GG", None, load()))
    laid = reader.read(describe(text + "GG over a pellet, in a shaped shield", None, load()))

    def of_17th(found: ReadingFinding) -> float:
        return sum(
            r.probability for r in found.readings if r.year_to is not None and r.year_to < 1700
        )

    assert of_17th(laid) > of_17th(plain) + 0.1


def test_a_lone_makers_mark_need_not_be_american() -> None:
    """Provincial spoons of the 17th century often bear the maker's mark alone (common practice)."""
    found = Reader(load()).read(
        Observed(marks=(Mark(text="SD", outline="shaped shield", hint="maker's mark"),))
    )
    share = sum(r.probability for r in found.readings if r.country in ("GB", "IE"))
    assert share > 0.15
