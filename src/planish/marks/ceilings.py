"""Upper bounds for all segments at once, cheap enough to leave most segments unscored.

A bound is the lesser of two: every mark in any role (marks may share a role), and every role with
any mark (roles may share a mark), over the best years of the segment. What segments have in common
is worked out once: most of them know none of the marks.
"""

from collections.abc import Sequence

from planish.marks.plan import Segment
from planish.marks.prices import Prices

#: the sum of each mark's weights, and the product over roles of one plus the role's weights
_Sums = tuple[Sequence[float], float]


class Ceilings:
    """Bounds of the sums over assignments, relative to all marks being strays."""

    def __init__(self, prices: Prices) -> None:
        self.prices = prices
        self._moving = prices.moving()
        none = (0.0,) * len(prices.marks.seen)
        self._none: _Sums = (none, 1.0)
        self._makers: dict[tuple[int, int, int], _Sums] = {}
        self._both: dict[tuple[int, int, int, int], tuple[Sequence[float], float, float]] = {}

    def all(self, segments: Sequence[Segment], scale: Sequence[float]) -> list[float]:
        """The bounds of the segments, each times its ``scale``."""
        steady, moving, both = self.prices.steady_sums(), self._moving, self._both
        plan = self.prices.marks.plan
        makers = self.prices.marks.makers
        known = [id(makers.ratios(ware)) for ware in plan.wares]
        ware_of = plan.ware_of
        found = []
        for segment in segments:
            at = segment.at
            date, maker, spell = segment.outline
            number = known[ware_of[at]]
            if date in moving or segment.further:
                shares, column = self._apart(segment, number)
                row = 0.0
            else:
                key = (date, maker, spell, number)
                sums = both.get(key)
                if sums is None:
                    shares, column = self._apart(segment, number)
                    sums = both[key] = (shares, column, _row(shares))
                shares, column, row = sums
            mine = steady.get(at)
            if mine is not None:
                row = 1.0
                for a, b in zip(mine[0], shares, strict=True):
                    row *= 1.0 + a + b
                column *= mine[1]
            elif not row:
                row = _row(shares)
            found.append(min(row, column) * scale[at])
        return found

    def _apart(self, segment: Segment, number: int) -> _Sums:
        """Sums over the date, the maker's mark and further roles that change with the year."""
        shares, column = self._maker(segment, number)
        if segment.dated is not None:
            tops, total = self._date(segment)
            column *= total
            shares = [a + b for a, b in zip(shares, tops, strict=True)]
        for expected in segment.further:
            tops = self.prices.further_top(expected, segment)
            column *= 1.0 + sum(tops)
            shares = [a + b for a, b in zip(shares, tops, strict=True)]
        return shares, column

    def _maker(self, segment: Segment, number: int) -> _Sums:
        if segment.maker is None:
            return self._none
        key = (segment.maker.index, segment.outline[2], number)
        found = self._makers.get(key)
        if found is None:
            tops = self.prices.maker_top(segment)
            found = self._makers[key] = (tops, 1.0 + sum(tops))
        return found

    def _date(self, segment: Segment) -> _Sums:
        dated = self.prices.dated(segment)
        if dated is None:
            return self._none
        if not dated.moving:
            return dated.known, 1.0 + sum(dated.known)
        tops = list(dated.known)
        # a mean of one mark's years is exact; of two marks' years it would be no bound
        mean = len(dated.moving) == 1 and not segment.further
        for i in dated.moving:
            tops[i] = dated.most(i, segment, mean=mean)
        return tops, 1.0 + sum(tops)


def _row(shares: Sequence[float]) -> float:
    row = 1.0
    for share in shares:
        row *= 1.0 + share
    return row
