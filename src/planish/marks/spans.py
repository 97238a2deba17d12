"""From scored cells to ranked readings: years of one office joined into spans."""

import math
from collections import defaultdict
from collections.abc import Sequence

import msgspec

from planish.evidence import log_sum_exp
from planish.marks.cells import FORM_AT_LARGE, UNKNOWN_WEIGHT, Run
from planish.marks.forms import FLAT, FormCurve
from planish.marks.plan import Segment

#: years join a span while the marks fit them no worse than this share of its likeliest year
_JOIN = 0.08
#: a span of this many years bridges stretches of up to _GAP years that fit worse
_LONG, _GAP = 40, 30


class Cell(msgspec.Struct, frozen=True):
    """A run of years of one segment, its probability, and how well all evidence fits it."""

    segment: Segment
    year_from: int
    year_to: int
    probability: float
    log_fit: float

    def share(self, low: int, high: int) -> float:
        """Probability of the part of the run that lies between two years."""
        low, high = max(low, self.year_from), min(high, self.year_to)
        if low > high:
            return 0.0
        part = self.segment.mass(low, high) / self.segment.mass(self.year_from, self.year_to)
        return self.probability * part


class Span(msgspec.Struct, frozen=True, kw_only=True):
    """A run of years of one office in one system."""

    key: str
    segments: tuple[Segment, ...]
    year_from: int
    year_to: int
    probability: float
    best_year: int


class Posterior(msgspec.Struct, frozen=True, kw_only=True):
    """Probability of every run that matters, and of none of them."""

    cells: tuple[Cell, ...]
    unknown: float


def posterior(runs: Sequence[Run], form: FormCurve = FLAT) -> Posterior:
    """Posterior from log-likelihood ratios, the years' priors and the form's years."""
    fits = [run.value + form.at(run.year_from, run.segment.system.country) for run in runs]
    logs = [
        fit + math.log(run.segment.mass(run.year_from, run.year_to))
        for fit, run in zip(fits, runs, strict=True)
    ]
    unknown = math.log(UNKNOWN_WEIGHT) + (FORM_AT_LARGE if form.row else 0.0)
    total = log_sum_exp([*logs, unknown])
    cells = tuple(
        Cell(run.segment, run.year_from, run.year_to, math.exp(log - total), fit)
        for run, log, fit in zip(runs, logs, fits, strict=True)
    )
    return Posterior(cells=cells, unknown=math.exp(unknown - total))


def spans(post: Posterior) -> list[Span]:
    """Spans, likeliest first."""
    by_office: dict[tuple[str, str], list[Cell]] = defaultdict(list)
    for cell in post.cells:
        by_office[cell.segment.key].append(cell)
    found: list[Span] = []
    for (system, office), cells in by_office.items():
        cells.sort(key=lambda c: c.year_from)
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
    order = sorted(
        range(len(cells)),
        key=lambda i: -cells[i].probability / (cells[i].year_to - cells[i].year_from + 1),
    )
    found: list[Span] = []
    for top in order:
        if not free[top]:
            continue
        least = math.log(_JOIN) + cells[top].log_fit
        low = _reach(cells, free, top, -1, least)
        high = _reach(cells, free, top, 1, least)
        if cells[high].year_to - cells[low].year_from + 1 >= _LONG:
            low = _bridge(cells, free, low, -1, least)
            high = _bridge(cells, free, high, 1, least)
        inside = range(low, high + 1)
        for i in inside:
            free[i] = False
        by_id = {id(cells[i].segment): cells[i].segment for i in inside}
        found.append(
            Span(
                key=f"{system}/{office or '-'}/{cells[low].year_from}-{cells[high].year_to}",
                segments=tuple(by_id.values()),
                year_from=cells[low].year_from,
                year_to=cells[high].year_to,
                probability=math.fsum(cells[i].probability for i in inside),
                best_year=(cells[top].year_from + cells[top].year_to) // 2,
            )
        )
    return found


def _reach(cells: list[Cell], free: list[bool], at: int, step: int, least: float) -> int:
    """The furthest cell in one direction that joins without a gap."""
    while True:
        after = at + step
        if not 0 <= after < len(cells) or not free[after]:
            return at
        if _apart(cells[after], cells[at]) != 1 or cells[after].log_fit < least:
            return at
        at = after


def _bridge(cells: list[Cell], free: list[bool], at: int, step: int, least: float) -> int:
    """As ``_reach``, over gaps of at most ``_GAP`` years."""
    while True:
        after = at + step
        while (
            0 <= after < len(cells)
            and free[after]
            and _apart(cells[after], cells[at]) <= _GAP
            and cells[after].log_fit < least
        ):
            after += step
        if not 0 <= after < len(cells) or not free[after] or _apart(cells[after], cells[at]) > _GAP:
            return at
        at = _reach(cells, free, after, step, least)


def _apart(a: Cell, b: Cell) -> int:
    """Years from the end of the earlier run to the start of the later."""
    return max(a.year_from - b.year_to, b.year_from - a.year_to)
