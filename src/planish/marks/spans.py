"""From scored cells to ranked readings: years of one office joined into spans."""

import math
from collections import defaultdict

import msgspec

from planish.evidence import log_sum_exp
from planish.marks.plan import Segment

#: years join a span while no less likely than this share of its likeliest year
_JOIN = 0.08
#: prior weight of "none of these": marks of no system in the library (common practice)
UNKNOWN_WEIGHT = 0.02


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


def posterior(scored: list[tuple[Segment, list[tuple[int, float]]]]) -> Posterior:
    """Posterior over cells from log-likelihood ratios and the cells' priors."""
    logs: list[tuple[Segment, int, float]] = []
    for segment, years in scored:
        for year, value in years:
            weight = segment.prior(year)
            if weight > 0 and value > -math.inf:
                logs.append((segment, year, value + math.log(weight)))
    unknown = math.log(UNKNOWN_WEIGHT)
    total = log_sum_exp([v for _, _, v in logs] + [unknown])
    cells = tuple((s, y, math.exp(v - total)) for s, y, v in logs)
    return Posterior(cells=cells, unknown=math.exp(unknown - total), log_total=total)


def spans(post: Posterior) -> list[Span]:
    """Spans, likeliest first."""
    by_office: dict[tuple[str, str], list[tuple[int, float, Segment]]] = defaultdict(list)
    for segment, year, p in post.cells:
        by_office[segment.key].append((year, p, segment))
    found: list[Span] = []
    for (system, office), cells in by_office.items():
        cells.sort(key=lambda c: c[0])
        found.extend(_runs(system, office, cells))
    found.sort(key=lambda s: -s.probability)
    return found


def _runs(system: str, office: str, cells: list[tuple[int, float, Segment]]) -> list[Span]:
    """Greedy: from the likeliest year outward while years stay likely enough."""
    left = dict.fromkeys(range(len(cells)))
    order = sorted(range(len(cells)), key=lambda i: -cells[i][1])
    found: list[Span] = []
    for top in order:
        if top not in left:
            continue
        peak = cells[top][1]
        low = high = top
        while low - 1 in left and _near(cells, low - 1, low) and cells[low - 1][1] >= _JOIN * peak:
            low -= 1
        while (
            high + 1 in left and _near(cells, high, high + 1) and cells[high + 1][1] >= _JOIN * peak
        ):
            high += 1
        inside = range(low, high + 1)
        for i in inside:
            del left[i]
        segments = tuple(dict.fromkeys(id(cells[i][2]) for i in inside))
        by_id = {id(cells[i][2]): cells[i][2] for i in inside}
        found.append(
            Span(
                key=f"{system}/{office or '-'}/{cells[low][0]}-{cells[high][0]}",
                segments=tuple(by_id[s] for s in segments),
                year_from=cells[low][0],
                year_to=cells[high][0],
                probability=math.fsum(cells[i][1] for i in inside),
                best_year=cells[top][0],
            )
        )
    return found


def _near(cells: list[tuple[int, float, Segment]], a: int, b: int) -> bool:
    return cells[b][0] - cells[a][0] == 1
