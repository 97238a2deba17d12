"""From runs of years to spans: joined by fit, bridged over short gaps."""

import math

import pytest

from planish.library import load
from planish.marks.cells import Run
from planish.marks.forms import FLAT
from planish.marks.plan import Plan, Segment
from planish.marks.spans import posterior, spans


@pytest.fixture(scope="module")
def london() -> list[Segment]:
    plan = Plan(load())
    return [
        s for s in plan.segments if s.system.id == "GB-ENG" and s.office and s.office.id == "LON"
    ]


def at(london: list[Segment], year: int) -> Segment:
    return next(s for s in london if s.year_from <= year <= s.year_to)


def runs(london: list[Segment], *rows: tuple[int, int, float]) -> list[Run]:
    found = []
    for low, high, value in rows:
        for segment in london:
            first, last = max(low, segment.year_from), min(high, segment.year_to)
            if first <= last:
                found.append(Run(segment, first, last, value))
    return found


def test_probabilities_and_unknown_make_one(london: list[Segment]) -> None:
    post = posterior(runs(london, (1750, 1760, 3.0), (1800, 1810, 2.0)), FLAT)
    assert math.fsum(c.probability for c in post.cells) + post.unknown == pytest.approx(1.0)


def test_years_that_fit_alike_are_one_span(london: list[Segment]) -> None:
    found = spans(posterior(runs(london, (1722, 1780, 5.0)), FLAT))
    assert [(s.year_from, s.year_to) for s in found] == [(1722, 1780)]


def test_a_year_that_fits_far_better_stands_alone(london: list[Segment]) -> None:
    rows = ((1722, 1752, 0.0), (1753, 1753, 6.0), (1754, 1780, 0.0))
    found = spans(posterior(runs(london, *rows), FLAT))
    assert (found[0].year_from, found[0].year_to) == (1753, 1753)


def test_a_long_span_bridges_the_britannia_years(london: list[Segment]) -> None:
    # the sterling marks of 1544-1696 came back in 1720 (8 and 9 William III; 6 Geo. I)
    rows = ((1640, 1696, 5.0), (1697, 1719, -9.0), (1720, 1780, 5.0))
    found = spans(posterior(runs(london, *rows), FLAT))
    assert (found[0].year_from, found[0].year_to) == (1640, 1780)


def test_single_years_do_not_bridge(london: list[Segment]) -> None:
    rows = ((1740, 1740, 6.0), (1741, 1759, -2.0), (1760, 1760, 6.0))
    found = spans(posterior(runs(london, *rows), FLAT))
    assert {(s.year_from, s.year_to) for s in found[:2]} == {(1740, 1740), (1760, 1760)}


def test_part_of_a_run(london: list[Segment]) -> None:
    post = posterior(runs(london, (1750, 1759, 1.0)), FLAT)
    cell = post.cells[0]
    assert cell.share(1750, 1759) == pytest.approx(cell.probability)
    assert 0 < cell.share(1755, 1756) < cell.probability
    assert cell.share(1800, 1810) == 0.0
