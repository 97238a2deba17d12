"""One-to-one assignment of marks to roles, summed: the part that many segments share.

Marks are bits of a mask. A pool is a row of roles; for every set of marks that they can take up it
holds the sum, over the ways of taking up just that set, of the products of weights. Segments with
the same roles share a pool, and a pool of one more role grows out of the pool before it.
"""

from collections.abc import Callable, Sequence

#: a role's weights: (bit of the mark, weight of the mark in the role over its weight as a stray)
Row = Sequence[tuple[int, float]]


class Pool:
    """Roles that marks may fill. taken: mask of marks -> sum over assignments that use just them."""

    __slots__ = ("_without", "shares", "tables", "taken", "whole")

    def __init__(self, taken: dict[int, float], shares: tuple[float, ...]) -> None:
        self.taken = taken
        #: for each mark, the sum of its weights over the roles
        self.shares = shares
        #: what a scorer has worked out for this pool
        self.tables: dict[tuple[int, int, bool], Table] = {}
        self._without: dict[int, float] = {}
        self.whole = self.without(0)

    def without(self, barred: int) -> float:
        """Sum over the assignments that use none of the marks in the mask."""
        total = self._without.get(barred)
        if total is None:
            total = 0.0
            for mask, value in self.taken.items():
                if not mask & barred:
                    total += value
            self._without[barred] = total
        return total


class Table:
    """Sums of a pool and a dated role, linear in what is still open.

    The sum over assignments is ``alone + sum_j maker[j] * by_maker[j]``, and for each mark l whose
    fit as the date changes from year to year, its weight as the date times
    ``alone_l + sum_j maker[j] * by_maker_l[j]``.
    """

    __slots__ = ("alone", "by_maker", "moving")

    def __init__(
        self,
        alone: float,
        by_maker: list[float],
        moving: tuple[tuple[int, float, list[float]], ...],
    ) -> None:
        self.alone, self.by_maker, self.moving = alone, by_maker, moving


class Pools:
    """Pools by their roles; ``row`` gives the weights of a role by its number."""

    def __init__(self, marks: int, row: Callable[[int], Row]) -> None:
        self._row = row
        self._pools: dict[tuple[int, ...], Pool] = {(): Pool({0: 1.0}, (0.0,) * marks)}

    def of(self, roles: tuple[int, ...]) -> Pool:
        """The pool of some roles."""
        found = self._pools.get(roles)
        if found is None:
            before = self.of(roles[:-1])
            row = self._row(roles[-1])
            found = self._pools[roles] = _with_role(before, row) if row else before
        return found


def _with_role(before: Pool, row: Row) -> Pool:
    taken = dict(before.taken)
    shares = list(before.shares)
    for bit, weight in row:
        shares[bit.bit_length() - 1] += weight
        for mask, value in before.taken.items():
            if not mask & bit:
                both = mask | bit
                taken[both] = taken.get(both, 0.0) + value * weight
    return Pool(taken, tuple(shares))


def table(
    pool: Pool, marks: Sequence[int], barred: int, dated: Sequence[float], moving: Sequence[int]
) -> Table:
    """The sums for marks that may also be the date or the maker's mark.

    marks: those counted; barred: the mask of the others. dated: each mark's weight as the date,
    for the marks whose weight is the same in all years (empty = no date expected); moving: marks
    whose weight changes, to be added in year by year.
    """
    without = pool.without
    steady = [(i, 1 << i, dated[i]) for i in marks if i not in moving and dated[i]] if dated else []
    alone = without(barred)
    for _, bit, weight in steady:
        alone += weight * without(barred | bit)
    by_maker = [0.0] * len(pool.shares)
    for j in marks:
        mine = barred | 1 << j
        total = without(mine)
        for i, bit, weight in steady:
            if i != j:
                total += weight * without(mine | bit)
        by_maker[j] = total
    rows = []
    for at in moving:
        if barred >> at & 1:
            continue
        mine = barred | 1 << at
        rest = [0.0] * len(pool.shares)
        for j in marks:
            if j != at:
                rest[j] = without(mine | 1 << j)
        rows.append((at, without(mine), rest))
    return Table(alone, by_maker, tuple(rows))
