"""Scoring of cells: every year of every office of every system.

For a cell the marks are assigned to roles one to one (or left stray); the likelihood is the sum
over all such assignments. Years in which every mark fits alike are priced as one run. Roles whose
match changes from run to run (date letters, makers' working years) are enumerated; the others are
summed once per segment, so a run costs a few products.
"""

import math
from collections.abc import Sequence
from itertools import accumulate, pairwise

import msgspec

from planish.marks.forms import FLAT, FormCurve
from planish.marks.likelihood import SCRIPT_TOP, Likelihood
from planish.marks.plan import MAKERS, PLACES, Expected, Segment

#: scoring ends when all that is left can add no more than this share
_NEGLIGIBLE = 0.01
_PLAUSIBLE = 1e-4
_PLAUSIBLE_MOVING = 2e-3
#: upper bound of the ratio of year figures
_FIGURES_TOP = 5000.0


class Run(msgspec.Struct, frozen=True):
    """Years of a segment in which every mark fits alike, with the log-likelihood ratio."""

    segment: Segment
    year_from: int
    year_to: int
    value: float


def presence(expected: Expected, complete: float) -> float:
    """Chance that the mark of a role is on the list, given that the piece belongs here."""
    return min(0.995, expected.presence * complete)


def is_dynamic(expected: Expected, segment: Segment, marks: Likelihood) -> bool:
    """Whether the match of any mark changes with the year."""
    if expected.moves:
        return True
    return expected.role in MAKERS and any(
        segment.system.country in by_country for by_country in marks.makers.candidates
    )


def matchings(weights: Sequence[dict[int, float]], stray: Sequence[float]) -> float:
    """Sum over one-to-one assignments of marks to roles of the product of their weights.

    weights[i][r] is mark i as role r; stray[i] the mark explained by no role.
    """
    states: dict[int, float] = {0: 1.0}
    for row, alone in zip(weights, stray, strict=True):
        after: dict[int, float] = {}
        for mask, value in states.items():
            after[mask] = after.get(mask, 0.0) + value * alone
            for role, weight in row.items():
                bit = 1 << role
                if not mask & bit:
                    after[mask | bit] = after.get(mask | bit, 0.0) + value * weight
        states = after
    return math.fsum(states.values())


class Scorer:
    """Scores segments for one set of marks."""

    def __init__(self, marks: Likelihood, complete: float, form: FormCurve = FLAT) -> None:
        self.marks, self.complete, self.form = marks, complete, form
        self._all = range(len(marks.seen))
        self._stray = [marks.stray(i) for i in self._all]
        self._countries = {c for by_country in marks.makers.candidates for c in by_country}
        self._letters = any(seen.form == "letter" for seen in marks.seen)
        self._figures = {seen.year for seen in marks.seen if seen.year is not None}
        self._towns = any(seen.town for seen in marks.seen)
        self._known: list[tuple[float, float, tuple[float, ...]] | None] = [None] * len(
            marks.plan.expected
        )

    def bound(self, segment: Segment) -> float:
        """Upper bound of the log-likelihood ratio over the segment's years."""
        total = 0.0
        best = list(self._stray)
        for expected in segment.expected:
            absent, odds, tops = self._alike(expected)
            total += absent
            if self._special(expected, segment):
                tops = tuple(self._top(i, expected, segment) for i in self._all)
            if tops:
                for i, top in enumerate(tops):
                    best[i] += odds * top
        return total + math.fsum(map(math.log, best))

    def _alike(self, expected: Expected) -> tuple[float, float, tuple[float, ...]]:
        """Log chance of absence, odds of presence, and ratios that no segment changes."""
        known = self._known[expected.index]
        if known is None:
            p = presence(expected, self.complete)
            tops = tuple(self._top(i, expected, None) for i in self._all)
            if max(tops, default=0.0) < _PLAUSIBLE:
                tops = ()
            known = self._known[expected.index] = (math.log1p(-p), p / (1 - p), tops)
        return known

    def _top(self, i: int, expected: Expected, segment: Segment | None) -> float:
        """Upper bound of a mark's ratio as a role over the segment."""
        marks = self.marks
        seen = marks.seen[i]
        if seen.form == "illegible":
            return marks.hint(i, expected.role)
        total = marks.still(i, expected.index)
        if expected.moves and segment:
            total += self._moving_top(i, expected, segment)
        if expected.forms:
            maker = marks.maker_form(i, expected)
            if (
                segment
                and expected.role in MAKERS
                and segment.system.country in marks.makers.candidates[i]
            ):
                maker *= marks.makers.top(i, segment)
            total += maker * (marks.script(i, segment.system.country) if segment else SCRIPT_TOP)
        if segment and seen.town and expected.role in PLACES:
            total = marks.town(i, segment)
        return total * marks.hint(i, expected.role)

    def _moving_top(self, i: int, expected: Expected, segment: Segment) -> float:
        year = self.marks.seen[i].year
        total = 0.0
        for way in expected.ways:
            if way.kind == "cycle":
                total += way.share * self._letter_top(i, segment)
            elif way.content < 0 and year is not None:
                hit = segment.year_from <= year <= segment.year_to
                total += way.share * (_FIGURES_TOP if hit else 1.0)
        return total

    def _letter_top(self, i: int, segment: Segment) -> float:
        """The best ratio of a mark over the date letters of the segment."""
        if self.marks.seen[i].form != "letter":
            return self.marks.letterform(i, segment.letters[0])
        return max(self.marks.letterform(i, at) for at in segment.distinct)

    def _runs(self, segment: Segment, low: int, high: int) -> list[tuple[int, int]]:
        """The years parted wherever the fit of a mark, or of the form, changes."""
        marks = self.marks
        cuts = set(self.form.cuts)
        if segment.letters and self._letters:
            first = segment.year_from
            cuts.update(
                y for y in range(low + 1, high + 1)
                if segment.letters[y - first] != segment.letters[y - first - 1]
            )  # fmt: skip
        if any(e.moves for e in segment.expected):
            for year in self._figures:
                cuts.update((year, year + 1))
        if segment.system.country in self._countries:
            cuts.update(marks.makers.cuts(segment))
        starts = [low, *sorted(y for y in cuts if low < y <= high)]
        return [(a, b - 1) for a, b in pairwise([*starts, high + 1])]

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
        marks = self.marks
        chosen = self._all if include is None else include
        base = 0.0
        odds: list[float] = []
        for expected in segment.expected:
            absent, ratio, _ = self._alike(expected)
            if enforce is None or expected.role in enforce:
                base += absent
                odds.append(ratio)
            else:
                odds.append(presence(expected, self.complete))
        runs = self._runs(segment, low, high)
        # roles that move from run to run are enumerated, the others summed once
        moving = [
            r for r, e in enumerate(segment.expected)
            if len(runs) > 1 and is_dynamic(e, segment, marks)
        ]  # fmt: skip
        weights = self._weights(segment, odds, moving, chosen, runs[0][0])
        plans: list[tuple[tuple[tuple[int, int], ...], float]] = []
        for taken in self._choices(chosen, moving, segment):
            used = {i for _, i in taken}
            rest = [i for i in chosen if i not in used]
            value = matchings([weights[i] for i in rest], [self._stray[i] for i in rest])
            plans.append((taken, value))
        pairs = sorted({pair for taken, _ in plans for pair in taken})
        out: list[Run] = []
        for year, last in runs:
            at = {
                (r, i): odds[r] * marks.role(i, segment.expected[r], segment, year)
                for r, i in pairs
            }
            total = math.fsum(
                math.prod((at[pair] for pair in taken), start=value) for taken, value in plans
            )
            if total > 0:
                out.append(Run(segment, year, last, base + math.log(total)))
        return out

    def _weights(
        self,
        segment: Segment,
        odds: Sequence[float],
        moving: Sequence[int],
        chosen: Sequence[int],
        year: int,
    ) -> dict[int, dict[int, float]]:
        """For each mark, the roles that it may fill and their weights, moving roles apart."""
        weights: dict[int, dict[int, float]] = {i: {} for i in chosen}
        for r, expected in enumerate(segment.expected):
            if r in moving:
                continue
            _, _, tops = self._alike(expected)
            if not tops and not self._special(expected, segment):
                continue
            for i in chosen:
                weight = odds[r] * self.marks.role(i, expected, segment, year)
                if weight > _PLAUSIBLE:
                    weights[i][r] = weight
        return weights

    def _special(self, expected: Expected, segment: Segment) -> bool:
        """Whether a role's price depends on more than the role."""
        return (
            expected.moves
            or (expected.role in MAKERS and segment.system.country in self._countries)
            or (self._towns and expected.role in PLACES)
        )

    def _choices(
        self, chosen: Sequence[int], moving: Sequence[int], segment: Segment
    ) -> list[tuple[tuple[int, int], ...]]:
        """One-to-one choices of marks for the roles that move with the year."""
        found: list[tuple[tuple[int, int], ...]] = [()]
        for r in moving:
            expected = segment.expected[r]
            _, odds, _ = self._alike(expected)
            able = [i for i in chosen if odds * self._top(i, expected, segment) > _PLAUSIBLE_MOVING]
            found += [
                (*taken, (r, i))
                for taken in found
                for i in able
                if all(i != other for _, other in taken)
            ]
        return found

    def all_runs(self, segments: Sequence[Segment]) -> list[Run]:
        """Scores of all segments that can matter, their prior and form not yet applied."""
        bounds = [self.bound(s) + s.log_prior_top for s in segments]
        order = sorted(range(len(segments)), key=lambda s: -bounds[s])
        top = bounds[order[0]] if order else 0.0
        # what the segments not yet scored can add up to, at the very most
        left = list(accumulate((math.exp(bounds[at] - top) for at in reversed(order)), initial=0.0))
        found: list[Run] = []
        total = 0.0
        for done, at in enumerate(order):
            if left[len(order) - done] < _NEGLIGIBLE * total:
                break
            segment = segments[at]
            country = segment.system.country
            for run in self.score(segment, segment.year_from, segment.year_to):
                found.append(run)
                log = run.value + self.form.at(run.year_from, country) - top
                total += math.exp(log) * segment.mass(run.year_from, run.year_to)
        return found
