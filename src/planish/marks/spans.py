"""From scored cells to ranked readings: years of one office joined into spans."""

import math
from collections import defaultdict

import msgspec

from planish.evidence import log_sum_exp
from planish.marks.forms import FLAT, FormCurve
from planish.marks.plan import Segment

#: years join a span while the marks fit them no worse than this share of its likeliest year
_JOIN = 0.08
#: a span of this many years bridges stretches of up to _GAP years that fit worse
_LONG, _GAP = 40, 30
#: prior weight of "none of these": marks of no system in the library (common practice)
UNKNOWN_WEIGHT = 0.02
#: log chance of a form for marks of no known date
FORM_AT_LARGE = math.log(0.3)


class Cell(msgspec.Struct, frozen=True):
    """A year of an office, with its probability and its likelihood up to a common factor."""

    year: int
    probability: float
    likelihood: float
    segment: Segment


class Span(msgspec.Struct, frozen=True, kw_only=True):
    """A run of years of one office in one system."""

    key: str
    segments: tuple[Segment, ...]
    year_from: int
    year_to: int
    probability: float
    best_year: int


class Posterior(msgspec.Struct, frozen=True, kw_only=True):
    """Probability of every cell that matters, and of none of them."""

    cells: tuple[tuple[Segment, int, float], ...]
    unknown: float
    log_total: float


def posterior(
    scored: list[tuple[Segment, list[tuple[int, float]]]], form: FormCurve = FLAT
) -> Posterior:
    """Posterior over cells from log-likelihood ratios, the cells' priors and the form's years."""
    logs: list[tuple[Segment, int, float]] = []
    for segment, years in scored:
        for year, value in years:
            if value > -math.inf:
                prior = segment.log_priors[year - segment.year_from]
                logs.append((segment, year, value + prior + form.at(year)))
    unknown = math.log(UNKNOWN_WEIGHT) + (FORM_AT_LARGE if form.row else 0.0)
    total = log_sum_exp([v for _, _, v in logs] + [unknown])
    cells = tuple((s, y, math.exp(v - total)) for s, y, v in logs)
    return Posterior(cells=cells, unknown=math.exp(unknown - total), log_total=total)


def spans(post: Posterior) -> list[Span]:
    """Spans, likeliest first."""
    by_office: dict[tuple[str, str], list[Cell]] = defaultdict(list)
    for segment, year, p in post.cells:
        likelihood = p / segment.prior(year)
        by_office[segment.key].append(Cell(year, p, likelihood, segment))
    found: list[Span] = []
    for (system, office), cells in by_office.items():
        cells.sort(key=lambda c: c.year)
        found.extend(_runs(system, office, cells))
    found.sort(key=lambda s: -s.probability)
    return found


def _runs(system: str, office: str, cells: list[Cell]) -> list[Span]:
    """Greedy: from the likeliest year outward while the marks fit the years about as well.

    It is the likelihood that joins, not the probability, so that thinly populated years on either
    side of a well-populated stretch stay in. A long span (no date letter read) bridges a short
    stretch that the marks exclude, such as the Britannia years.
    """
    free = [True] * len(cells)
    order = sorted(range(len(cells)), key=lambda i: -cells[i].probability)
    found: list[Span] = []
    for top in order:
        if not free[top]:
            continue
        least = _JOIN * cells[top].likelihood
        low = _reach(cells, free, top, -1, least)
        high = _reach(cells, free, top, 1, least)
        if cells[high].year - cells[low].year + 1 >= _LONG:
            low = _bridge(cells, free, low, -1, least)
            high = _bridge(cells, free, high, 1, least)
        inside = range(low, high + 1)
        for i in inside:
            free[i] = False
        by_id = {id(cells[i].segment): cells[i].segment for i in inside}
        found.append(
            Span(
                key=f"{system}/{office or '-'}/{cells[low].year}-{cells[high].year}",
                segments=tuple(by_id.values()),
                year_from=cells[low].year,
                year_to=cells[high].year,
                probability=math.fsum(cells[i].probability for i in inside),
                best_year=cells[top].year,
            )
        )
    return found


def _reach(cells: list[Cell], free: list[bool], at: int, step: int, least: float) -> int:
    """The furthest cell in one direction that joins without a gap."""
    while True:
        after = at + step
        if not 0 <= after < len(cells) or not free[after]:
            return at
        if abs(cells[after].year - cells[at].year) != 1 or cells[after].likelihood < least:
            return at
        at = after


def _bridge(cells: list[Cell], free: list[bool], at: int, step: int, least: float) -> int:
    """As ``_reach``, over gaps of at most ``_GAP`` years."""
    while True:
        after = at + step
        while (
            0 <= after < len(cells)
            and free[after]
            and abs(cells[after].year - cells[at].year) <= _GAP
            and cells[after].likelihood < least
        ):
            after += step
        if (
            not 0 <= after < len(cells)
            or not free[after]
            or abs(cells[after].year - cells[at].year) > _GAP
        ):
            return at
        at = _reach(cells, free, after, step, least)
