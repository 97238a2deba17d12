"""Scoring of cells: the bound that leaves segments out, and runs against years priced alone."""

import math
import random

import pytest

from planish.marks import Reader, describe
from planish.marks.ceilings import Ceilings
from planish.marks.cells import Scorer
from planish.marks.forms import form_curve, with_places
from planish.marks.likelihood import Likelihood
from planish.marks.placement import placed
from planish.marks.plan import presence

PIECES = (
    ("lion passant, leopard's head crowned, black letter k, PB AB", "teapot"),
    ("sterling, GORHAM, 1897", "spoon"),
    ("W&D, Q8, three crowns in a trefoil", None),
    ("JS", None),
    ("leopard's head crowned in the bowl; on the stem lion passant, date letter k", "spoon"),
    ("mark of a house, 84, anchor; И.П.", "beaker"),
    ("lion passant; an illegible mark; date letter s; 925; K.S. 1851", "tray"),
    ("three towers 93, CF Heise, JOHN SMITH & CO", "bowl"),
)


@pytest.fixture(scope="module")
def reader() -> Reader:
    return Reader()


@pytest.fixture(params=PIECES, ids=lambda p: p[0][:20])
def scorer(request: pytest.FixtureRequest, reader: Reader) -> Scorer:
    text, form = request.param
    observed = describe(text)
    kept, _ = reader._digested(observed)
    marks = Likelihood(kept, reader.plan, reader.register)
    where = placed(observed.marks, form, reader.library.placements)
    curve = with_places(form_curve(form, reader.library.forms), where)
    return Scorer(marks, observed.complete, curve)


def test_no_segment_exceeds_its_bound(scorer: Scorer, reader: Reader) -> None:
    segments = reader.plan.segments
    scale = reader.plan.scale(scorer.complete, scorer.form)
    bounds = Ceilings(scorer.prices).all(segments, scale)
    stray = math.fsum(math.log(scorer.marks.stray(i)) for i in range(len(scorer.marks.seen)))
    for segment, bound in zip(segments, bounds, strict=True):
        exact = math.fsum(
            math.exp(run.value - stray + scorer.form.at(run.year_from, segment.system.country))
            * segment.mass(run.year_from, run.year_to)
            for run in scorer.score(segment, segment.year_from, segment.year_to)
        )
        assert exact <= bound * (1 + 1e-9), (segment.system.id, segment.year_from)


def test_a_year_against_all_assignments_written_out(scorer: Scorer, reader: Reader) -> None:
    """The price of a year is the sum over one-to-one assignments of presence, absence and fit."""
    chance = random.Random(7)  # noqa: S311  # the same segments in every run
    marks = scorer.marks
    count = len(marks.seen)
    coded = [g for g in reader.plan.segments if g.coded]
    for segment in (*chance.sample(reader.plan.segments, 80), *coded):
        year = chance.randint(segment.year_from, segment.year_to)
        (run,) = scorer.score(segment, year, year)
        sums = {0: 1.0}
        for expected in segment.expected:
            here = presence(expected, scorer.complete)
            fits = [marks.role(i, expected, segment, year) for i in range(count)]
            after = {mask: value * (1 - here) for mask, value in sums.items()}
            for mask, value in sums.items():
                for i in range(count):
                    if not mask >> i & 1:
                        both = mask | 1 << i
                        after[both] = after.get(both, 0.0) + value * here * fits[i]
            sums = after
        whole = math.fsum(
            value * math.prod(marks.stray(i) for i in range(count) if not mask >> i & 1)
            for mask, value in sums.items()
        )
        # weights below one in ten thousand are left out
        assert run.value == pytest.approx(math.log(whole), abs=0.02), (segment.system.id, year)
