"""Scoring of cells: every year of every office of every system.

For a cell the marks are assigned to roles one to one (or left stray); the likelihood is the sum
over all such assignments. Roles whose match changes with the year (date letters, makers' working
years) are enumerated; the others are summed once per segment, so a year costs a few products.
"""

import math
from collections.abc import Sequence

import msgspec

from planish.marks.likelihood import Likelihood
from planish.marks.plan import MAKERS, PLACES, Expected, Segment
from planish.marks.register import phases

#: a segment further than this below the best bound [natural log units] is left out
_PRUNE = 12.0
_PLAUSIBLE = 1e-4
#: upper bound of the ratio of year figures
_FIGURES_TOP = 5000.0


class Cells(msgspec.Struct, frozen=True):
    """Log-likelihood ratios of a run of years, all alike."""

    segment: Segment
    year_from: int
    year_to: int
    log_likelihood: float


def presence(expected: Expected, complete: float) -> float:
    """Chance that the mark of a role is on the list, given that the piece belongs here."""
    return min(0.995, expected.presence * complete)


def is_dynamic(expected: Expected, segment: Segment, marks: Likelihood) -> bool:
    """Whether the match of any mark changes with the year."""
    if expected.moves:
        return True
    return expected.role in MAKERS and any(
        segment.system.country in by_country for by_country in marks.candidates
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

    def __init__(self, marks: Likelihood, complete: float) -> None:
        self.marks, self.complete = marks, complete
        self._all = range(len(marks.seen))
        self._stray = [marks.stray(i) for i in self._all]
        self._countries = {c for by_country in marks.candidates for c in by_country}
        self._towns = any(seen.town for seen in marks.seen)
        self._known: list[tuple[float, float, tuple[float, ...]] | None] = [None] * len(
            marks.plan.expected
        )

    def bound(self, segment: Segment) -> float:
        """Upper bound of the log-likelihood ratio over the segment's years."""
        total = 0.0
        best = list(self._stray)
        country = segment.system.country
        for expected in segment.expected:
            absent, odds, tops = self._alike(expected)
            total += absent
            if (
                expected.moves
                or (expected.role in MAKERS and country in self._countries)
                or (self._towns and expected.role in PLACES)
            ):
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
                and segment.system.country in marks.candidates[i]
            ):
                maker *= self._maker_top(i, segment)
            total += maker
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

    def _maker_top(self, i: int, segment: Segment) -> float:
        country, marks = segment.system.country, self.marks
        years = {segment.year_from, segment.year_to}
        for candidate in marks.candidates[i][country]:
            for low, high, _ in phases(candidate.maker)[:1]:
                years.update(y for y in (low, high) if segment.year_from <= y <= segment.year_to)
        # between the edges of working years the curve only falls, decade counts move it a little
        return 1.5 * max(marks.maker_known(i, segment, y) for y in years)

    def score(
        self,
        segment: Segment,
        years: range,
        include: Sequence[int] | None = None,
        enforce: frozenset[str] | None = None,
    ) -> list[tuple[int, float]]:
        """(year, log-likelihood ratio) for each year.

        include: indices of the marks counted, None = all. enforce: roles whose absence counts,
        None = all. Both serve the ledger.
        """
        marks = self.marks
        chosen = list(range(len(marks.seen))) if include is None else list(include)
        base = 0.0
        odds: list[float] = []
        for expected in segment.expected:
            p = presence(expected, self.complete)
            if enforce is None or expected.role in enforce:
                base += math.log1p(-p)
                odds.append(p / (1 - p))
            else:
                odds.append(p)
        moving = [r for r, e in enumerate(segment.expected) if is_dynamic(e, segment, marks)]
        still = [r for r in range(len(segment.expected)) if r not in moving]
        middle = (segment.year_from + segment.year_to) // 2
        weights = {
            i: {
                r: w
                for r in still
                if (w := odds[r] * marks.role(i, segment.expected[r], segment, middle)) > _PLAUSIBLE
            }
            for i in chosen
        }
        stray = {i: marks.stray(i) for i in chosen}
        plans: list[tuple[tuple[tuple[int, int], ...], float]] = []
        for taken in self._choices(chosen, moving, segment):
            used = {i for _, i in taken}
            rest = [i for i in chosen if i not in used]
            value = matchings([weights[i] for i in rest], [stray[i] for i in rest])
            plans.append((taken, value))
        pairs = sorted({pair for taken, _ in plans for pair in taken})
        out: list[tuple[int, float]] = []
        cache: dict[tuple[float, ...], float] = {}
        for year in years:
            profile = tuple(
                odds[r] * marks.role(i, segment.expected[r], segment, year) for r, i in pairs
            )
            if profile not in cache:
                at = dict(zip(pairs, profile, strict=True))
                total = math.fsum(
                    math.prod((at[pair] for pair in taken), start=value) for taken, value in plans
                )
                cache[profile] = base + math.log(total) if total > 0 else -math.inf
            out.append((year, cache[profile]))
        return out

    def _choices(
        self, chosen: Sequence[int], moving: Sequence[int], segment: Segment
    ) -> list[tuple[tuple[int, int], ...]]:
        """One-to-one choices of marks for the roles that move with the year."""
        found: list[tuple[tuple[int, int], ...]] = [()]
        for r in moving:
            expected = segment.expected[r]
            able = [i for i in chosen if self._top(i, expected, segment) > 0.01]
            found += [
                (*taken, (r, i))
                for taken in found
                for i in able
                if all(i != other for _, other in taken)
            ]
        return found

    def all_cells(
        self, segments: Sequence[Segment]
    ) -> list[tuple[Segment, list[tuple[int, float]]]]:
        """Scores of all segments that can matter, with their prior not yet applied."""
        bounds = [self.bound(s) + s.log_prior_top for s in segments]
        if not bounds:
            return []
        order = sorted(range(len(segments)), key=lambda s: -bounds[s])
        best = -math.inf
        found = []
        for at in order:
            if bounds[at] < best - _PRUNE:
                break
            segment = segments[at]
            scored = self.score(segment, range(segment.year_from, segment.year_to + 1))
            found.append((segment, scored))
            for year, value in scored:
                best = max(best, value + segment.log_priors[year - segment.year_from])
        return found
