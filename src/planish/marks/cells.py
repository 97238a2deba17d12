"""Scoring of cells: every year of every office of every system.

For a cell the marks are assigned to roles one to one (or left stray); the likelihood is the sum
over all such assignments. Years in which every mark fits alike are priced as one run. Roles whose
match is the same in all years are summed once for all segments that share them (``assign``); the
date and the maker's mark are added in year by year, in which the sum is linear.

Segments are scored in the order of an upper bound, until what is left can add next to nothing.
"""

import math
from collections.abc import Sequence
from itertools import accumulate, pairwise

import msgspec

from planish.marks.assign import Pool, Pools, Table, table
from planish.marks.ceilings import Ceilings
from planish.marks.dated import Dated
from planish.marks.forms import FLAT, FormCurve
from planish.marks.likelihood import Likelihood
from planish.marks.plan import Expected, Segment
from planish.marks.prices import Prices

#: scoring ends when all that is left can add no more than this share
_NEGLIGIBLE = 0.002
#: runs with no more than this share of the probability are left out
_TRACE = 1e-7
#: prior weight of "none of these": marks of no system in the library (common practice)
UNKNOWN_WEIGHT = 0.02
#: log chance of a form for marks of no known date
FORM_AT_LARGE = math.log(0.3)


class Run(msgspec.Struct, frozen=True):
    """Years of a segment in which every mark fits alike, with the log-likelihood ratio."""

    segment: Segment
    year_from: int
    year_to: int
    value: float


def _free(expected: Expected | None, enforce: frozenset[str] | None) -> bool:
    """Whether the role's absence does not count."""
    return expected is not None and enforce is not None and expected.role not in enforce


class Scorer:
    """Scores segments for one set of marks."""

    def __init__(self, marks: Likelihood, complete: float, form: FormCurve = FLAT) -> None:
        self.marks, self.complete, self.form = marks, complete, form
        self.prices = Prices(marks, complete)
        self._all = range(len(marks.seen))
        self._pools = Pools(len(marks.seen), self.prices.row)
        self._figures = {seen.year for seen in marks.seen if seen.year is not None}
        self._stray_logs = [math.log(marks.stray(i)) for i in self._all]
        self._stray_log = math.fsum(self._stray_logs)

    def all_runs(self, segments: Sequence[Segment]) -> list[Run]:
        """Scores of all segments that can matter, their prior and form not yet applied."""
        if not segments:
            return []
        scale = self.marks.plan.scale(self.complete, self.form)
        bounds = Ceilings(self.prices).all(segments, scale)
        order = sorted(range(len(segments)), key=bounds.__getitem__, reverse=True)
        # what the segments not yet scored can add up to, at the very most
        left = list(accumulate((bounds[at] for at in reversed(order)), initial=0.0))
        found: list[tuple[float, Run]] = []
        total = UNKNOWN_WEIGHT * math.exp(
            (FORM_AT_LARGE if self.form.row else 0.0) - self._stray_log
        )
        for done, at in enumerate(order):
            if left[len(order) - done] < _NEGLIGIBLE * total:
                break
            segment = segments[at]
            country = segment.system.country
            for run in self.score(segment, segment.year_from, segment.year_to):
                log = run.value + self.form.at(run.year_from, country) - self._stray_log
                weight = math.exp(log) * segment.mass(run.year_from, run.year_to)
                found.append((weight, run))
                total += weight
        return [run for weight, run in found if weight > _TRACE * total]

    # -- exact ----------------------------------------------------------------------------------

    def _maker_cuts(self, segment: Segment, low: int, high: int) -> set[int]:
        """Years at which a listed maker's fit changes; in runs of codes, an unlisted one's too."""
        if segment.maker is None:
            return set()
        makers = self.marks.makers
        if segment.system.country in makers.countries:
            return makers.of(segment).cuts(low, high)
        return makers.of(segment).grid_cuts(low, high) if segment.coded else set()

    def _starts(self, segment: Segment, low: int, high: int) -> set[int]:
        """Years at which the fit of a letter, of figures or of the form changes."""
        cuts = {y for y in self.form.cuts if low < y <= high}
        dated = self.prices.dated(segment)
        if dated is not None:
            cuts.update(dated.cuts(segment, low, high))
        if self._figures and (segment.dated or segment.further):
            cuts.update(y for f in self._figures for y in (f, f + 1) if low < y <= high)
        return cuts

    def score(
        self,
        segment: Segment,
        low: int,
        high: int,
        include: Sequence[int] | None = None,
        enforce: frozenset[str] | None = None,
    ) -> list[Run]:
        """Log-likelihood ratios of the years from ``low`` to ``high`` of a segment.

        include: indices of the marks counted, None = all. enforce: roles whose absence counts,
        None = all. Both serve the ledger.
        """
        prices = self.prices
        if include is None:
            marks: Sequence[int] = self._all
            barred = 0
            base = self._stray_log
        else:
            marks = include
            barred = (1 << len(self._all)) - 1 - sum(1 << i for i in include)
            base = math.fsum(self._stray_logs[i] for i in include)
        base += prices.base(segment, enforce)
        turns = self._maker_cuts(segment, low, high)
        starts = sorted({low, *turns, *self._starts(segment, low, high)})
        roles = prices.roles(segment, enforce)
        pool = self._pools.of(roles)
        dated = prices.dated(segment, free=_free(segment.dated, enforce))
        maker_free = _free(segment.maker, enforce)
        makers: list[float] = []
        out: list[Run] = []
        moving: list[tuple[int, float]] = []
        letters, first = segment.letters, segment.year_from
        kept: Table | None = None
        alone = 0.0
        was = 0
        for year, after in pairwise((*starts, high + 1)):
            letter = letters[year - first] if letters else 0
            if segment.further:
                pool = self._pools.of((*roles, *prices.further(segment, year, enforce)))
                kept = None
            if kept is None or (letter < 0) != (was < 0) or year in turns:
                if segment.maker is not None and (not makers or year in turns):
                    makers = prices.maker(segment, year, free=maker_free)
                kept = self._table(pool, marks, barred, dated, known=letter >= 0)
                alone = kept.alone
                if makers:
                    alone += sum(map(float.__mul__, makers, kept.by_maker))
                moving = [
                    (i, own + sum(map(float.__mul__, makers, rest)) if makers else own)
                    for i, own, rest in kept.moving
                ]
                was = letter
            total = alone
            if dated is not None:
                for i, share in moving:
                    total += share * dated.weight(i, letter, year)
            out.append(Run(segment, year, after - 1, base + math.log(total)))
        return out

    def _table(
        self, pool: Pool, marks: Sequence[int], barred: int, dated: Dated | None, *, known: bool
    ) -> Table:
        key = (barred, id(dated), known)
        found = pool.tables.get(key)
        if found is None:
            if dated is None:
                found = table(pool, marks, barred, (), ())
            else:
                steady = dated.known if known else dated.unknown
                found = table(pool, marks, barred, steady, dated.moving)
            pool.tables[key] = found
        return found
