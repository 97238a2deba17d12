"""Prices of roles for one set of marks: what each role's absence costs and what each mark weighs in it.

A weight is the odds of the role's presence times the mark's likelihood ratio in the role, over its
ratio as a stray mark. Roles whose absence does not count yet (for the ledger) are *free*: their
weight goes by the chance of presence in place of its odds.
"""

from planish.marks.assign import Row
from planish.marks.contents import NEVER
from planish.marks.dated import Dated
from planish.marks.likelihood import SCRIPT_TOP, Likelihood
from planish.marks.plan import MAKERS, Expected, Segment

#: a ratio times odds below this is left out
_PLAUSIBLE = 1e-4
#: upper bound of the ratio of year figures
_FIGURES_TOP = 5000.0
_Context = tuple[tuple[float, ...], tuple[float | None, ...], Segment | None, int]


class Prices:
    """What roles cost and marks weigh; worked out as asked for, once each."""

    def __init__(self, marks: Likelihood, complete: float) -> None:
        self.marks = marks
        plan = marks.plan
        self._size = len(plan.expected)
        self._stray = [marks.stray(i) for i in range(len(marks.seen))]
        chances = plan.chances(complete)
        #: log chance that all the roles of a segment are absent
        self.bases = chances.bases
        self._absent, self._odds, self._presence = chances.absent, chances.odds, chances.presence
        self._plain_rows = self._plain()
        self._towns = any(seen.town for seen in marks.seen)
        # a town by name and the script of letters bear on a role otherwise than by the role alone
        self._live = set(self._plain_rows) | (plan.placed if self._towns else set())
        self._varied = plan.formed | (plan.placed if self._towns else set())
        scripts = {marks.script(i, c) for i in range(len(marks.seen)) for c in plan.countries}
        self._contextual = self._towns or scripts != {1.0}
        self._scripts: dict[str, tuple[float, ...]] = {}
        plain = ((1.0,) * len(marks.seen), (None,) * len(marks.seen), None, 0)
        self._contexts: list[_Context] = [plain]
        self._numbers: dict[_Context, int] = {plain: 0}
        self._of: dict[int | str, int] = {}
        self._roles: dict[int, tuple[int, ...]] = {}
        self._dated: dict[tuple[int, str, bool], Dated] = {}
        self._makers: dict[tuple[int, str, bool], tuple[list[float], list[float]]] = {}
        self._tops: dict[tuple[int, str], list[float]] = {}

    # -- roles that are the same in all years ---------------------------------------------------

    def base(self, segment: Segment, enforce: frozenset[str] | None) -> float:
        """Log chance that the roles whose absence counts are all absent."""
        if enforce is None:
            return self.bases[segment.at]
        return sum(self._absent[e.index] for e in segment.expected if e.role in enforce)

    def roles(self, segment: Segment, enforce: frozenset[str] | None = None) -> tuple[int, ...]:
        """Numbers of the segment's steady roles that some mark may fill."""
        found = self._roles.get(segment.at)
        if found is None:
            found = tuple(filter(self._live.__contains__, segment.steady))
            context = self._context_of(segment)
            if context:
                context *= self._size
                found = tuple(at + context if at in self._varied else at for at in found)
            self._roles[segment.at] = found
        if enforce is None:
            return found
        expected = self.marks.plan.expected
        return tuple(
            at if expected[at % self._size].role in enforce else ~at for at in found
        )  # fmt: skip

    def steady_sums(self) -> dict[int, tuple[list[float], float]]:
        """Sums over the steady roles, by segment that expects any of the marks in one.

        They are the sum of each mark's weights, and the product over roles of one plus the sum of
        the role's weights.
        """
        plan = self.marks.plan
        found: dict[int, tuple[list[float], float]] = {}
        size = len(self._stray)
        rows: dict[int, Row] = {}
        for index in self._live:
            holders = plan.holders.get(index, ())
            alike = index not in self._varied
            row: Row = self._plain_rows.get(index, ()) if alike else ()
            if alike and not row:
                continue
            for at in holders:
                if not alike:
                    number = self._context_of(plan.segments[at]) * self._size + index
                    if number not in rows:
                        rows[number] = self.row(number)
                    row = rows[number]
                shares, column = found.get(at) or ([0.0] * size, 1.0)
                total = 1.0
                for bit, weight in row:
                    shares[bit.bit_length() - 1] += weight
                    total += weight
                found[at] = shares, column * total
        return found

    def _plain(self) -> dict[int, Row]:
        """Weights in the steady roles where neither script nor town matters."""
        marks, expected, odds = self.marks, self.marks.plan.expected, self._odds
        found: dict[int, list[tuple[int, float]]] = {}
        for i, stray in enumerate(self._stray):
            still = marks.stills(i)
            for index in still.keys() | marks.plan.formed:
                ratio = still.get(index, NEVER)
                e = expected[index]
                if e.forms:
                    ratio += marks.maker_form(i, e)
                weight = odds[index] * ratio
                if marks.seen[i].roles:
                    weight *= marks.hint(i, e.role)
                if weight > _PLAUSIBLE:
                    found.setdefault(index, []).append((1 << i, weight / stray))
        return dict(found)

    def _context_of(self, segment: Segment) -> int:
        if not self._contextual:
            return 0
        key = segment.at if self._towns else segment.system.country
        found = self._of.get(key)
        if found is None:
            found = self._of[key] = self._context(segment)
        return found

    def _context(self, segment: Segment) -> int:
        """Number of what else steady roles depend on: the script's country and a town by name."""
        marks = self.marks
        towns: tuple[float | None, ...] = self._contexts[0][1]
        if self._towns:
            towns = tuple(
                marks.town(i, segment) if seen.town else None for i, seen in enumerate(marks.seen)
            )
        return self._number((self._script(segment.system.country), towns, None, 0))

    def _script(self, country: str) -> tuple[float, ...]:
        found = self._scripts.get(country)
        if found is None:
            found = tuple(self.marks.script(i, country) for i in range(len(self._stray)))
            self._scripts[country] = found
        return found

    def _number(self, context: _Context) -> int:
        number = self._numbers.get(context)
        if number is None:
            number = self._numbers[context] = len(self._contexts)
            self._contexts.append(context)
        return number

    def row(self, number: int) -> Row:
        """Weights of the marks in a role by its number."""
        free = number < 0
        context, index = divmod(~number if free else number, self._size)
        expected = self.marks.plan.expected[index]
        factor = (self._presence if free else self._odds)[index]
        scripts, towns, segment, year = self._contexts[context]
        if not context and not free:
            return self._plain_rows.get(index, ())
        found: list[tuple[int, float]] = []
        for i, stray in enumerate(self._stray):
            if segment is None:
                weight = factor * self.marks.steady(i, expected, scripts[i], towns[i])
            else:
                weight = factor * self.marks.role(i, expected, segment, year)
            if weight > _PLAUSIBLE:
                found.append((1 << i, weight / stray))
        return found

    # -- roles that change with the year --------------------------------------------------------

    def _scales(self, index: int, *, free: bool) -> list[float]:
        factor = (self._presence if free else self._odds)[index]
        return [factor / stray for stray in self._stray]

    def dated(self, segment: Segment, *, free: bool = False) -> Dated | None:
        """Weights of the marks as the segment's role that changes with the year, if it has one."""
        expected = segment.dated
        if expected is None:
            return None
        key = (expected.index, segment.system.country if expected.forms else "", free)
        found = self._dated.get(key)
        if found is None:
            scales = self._scales(expected.index, free=free)
            found = self._dated[key] = Dated(self.marks, expected, scales, segment.system.country)
        return found

    def moving(self) -> frozenset[int]:
        """Places of the dated roles in which some mark's weight changes from year to year."""
        return frozenset(
            g.dated.index
            for g in self.marks.plan.dated_holders
            if g.dated is not None and (dated := self.dated(g)) is not None and dated.moving
        )

    def maker(self, segment: Segment, year: int, *, free: bool = False) -> list[float]:
        """Weights of the marks as the segment's maker's mark in a year."""
        fixed, by_ratio = self._maker_parts(segment, free=free)
        known = self.marks.makers.of(segment).known(year)
        return [a + b * k for a, b, k in zip(fixed, by_ratio, known, strict=True)]

    def maker_top(self, segment: Segment) -> list[float]:
        """The best weights of the marks as the maker's mark over the segment."""
        fixed, by_ratio = self._maker_parts(segment, free=False)
        known = self.marks.makers.of(segment).top(segment.year_from, segment.year_to)
        return [a + b * k for a, b, k in zip(fixed, by_ratio, known, strict=True)]

    def _maker_parts(self, segment: Segment, *, free: bool) -> tuple[list[float], list[float]]:
        expected = segment.maker
        if expected is None:
            raise ValueError("the segment expects no maker's mark")
        key = (expected.index, segment.system.country, free)
        found = self._makers.get(key)
        if found is None:
            marks = self.marks
            script = self._script(segment.system.country)
            scales = self._scales(expected.index, free=free)
            scales = [s * marks.hint(i, expected.role) for i, s in enumerate(scales)]
            found = self._makers[key] = (
                [s * marks.still(i, expected.index) for i, s in enumerate(scales)],
                [s * marks.maker_form(i, expected) * script[i] for i, s in enumerate(scales)],
            )
        return found

    def further(
        self, segment: Segment, year: int, enforce: frozenset[str] | None
    ) -> tuple[int, ...]:
        """Numbers of the segment's further changing roles, as they stand in a year."""
        plain = self._contexts[0]
        context = self._number((plain[0], plain[1], segment, year)) * self._size
        return tuple(
            context + e.index if enforce is None or e.role in enforce else ~(context + e.index)
            for e in segment.further
        )

    def further_top(self, expected: Expected, segment: Segment) -> list[float]:
        """Upper bounds of the weights of the marks in a further changing role over a segment."""
        marks = self.marks
        makers = expected.role in MAKERS and bool(expected.forms)
        known = marks.makers.of(segment).top(segment.year_from, segment.year_to)
        found = []
        for i, scale in enumerate(self._scales(expected.index, free=False)):
            top = marks.still(i, expected.index)
            year = marks.seen[i].year
            if marks.seen[i].form == "illegible":
                top += 1.0
            elif year is not None and segment.year_from <= year <= segment.year_to:
                top += _FIGURES_TOP
            elif expected.moves:
                top += max(1.0, *(marks.letterform(i, at) for at, _ in segment.shares), 1.0)
            if expected.forms:
                top += marks.maker_form(i, expected) * SCRIPT_TOP * (known[i] if makers else 1.0)
            found.append(scale * top * marks.hint(i, expected.role))
        return found
