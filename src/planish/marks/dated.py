"""What the marks weigh as the date: a letter, a code or figures that change from year to year."""

import math
from bisect import bisect_left, bisect_right

from planish.marks.likelihood import Likelihood
from planish.marks.plan import Expected, Segment

_YEARS = frozenset({"year", "initials-year"})


class Dated:
    """The weights of all marks as one role that changes with the year.

    scales: for each mark, what its likelihood ratio is multiplied by. country: of the segments, for
    roles written in letters. The letter of a year is an entry of ``Segment.letters``.
    """

    def __init__(
        self, marks: Likelihood, expected: Expected, scales: list[float], country: str
    ) -> None:
        self.marks, self.expected = marks, expected
        self.scales = [s * marks.hint(i, expected.role) for i, s in enumerate(scales)]
        self._fixed = [self._as_written(i, country) for i in range(len(scales))]
        self._letter = math.fsum(w.share for w in expected.ways if w.kind == "cycle")
        self._code = math.fsum(w.share for w in expected.ways if w.kind == "code")
        self._years = [(w.share, w.kind) for w in expected.ways if w.kind in _YEARS]
        #: marks whose weight changes from year to year
        self.moving = tuple(i for i in range(len(marks.seen)) if self._moves(i))
        #: the weights of the others, in a year whose letter is known and in one where it is not
        self.known = self._still(0)
        self.unknown = self._still(-1)
        self._letters: dict[int, dict[int, float]] = {i: {} for i in self.moving}

    def _as_written(self, i: int, country: str) -> float:
        """Ratio of a mark that no letter and no year changes."""
        total = self.marks.still(i, self.expected.index)
        if self.expected.forms:
            form = self.marks.maker_form(i, self.expected)
            total += form * self.marks.script(i, country)
        return total

    def _moves(self, i: int) -> bool:
        seen = self.marks.seen[i]
        return bool(
            (self._letter and seen.form == "letter")
            or (self._code and self.marks.may_be_code(i, self.expected.index))
            or (self._years and seen.year is not None)
        )

    def _still(self, letter: int) -> list[float]:
        # a mark that may be none of the role's codes is none in any year
        return [
            0.0 if i in self.moving else self._by_letter(i, letter, -1) + self._by_year(i, 0)
            for i in range(len(self.scales))
        ]

    def _by_letter(self, i: int, letter: int, code: int) -> float:
        total = self._fixed[i]
        if self._letter:
            total += self._letter * self.marks.letterform(i, letter)
        if self._code:
            total += self._code * self.marks.fixed(i, code)
        return total * self.scales[i]

    def _by_year(self, i: int, year: int) -> float:
        total = 0.0
        for share, kind in self._years:
            total += share * self.marks.year_figures(i, kind, year)
        return total * self.scales[i]

    def cuts(self, segment: Segment, low: int, high: int) -> list[int]:
        """Years after ``low`` in which a letter or code begins that a mark may be or not."""
        changes = segment.changes
        if not changes or not self.moving:
            return []
        found = list(changes[bisect_right(changes, low) : bisect_left(changes, high + 1)])
        if not self._code:
            return found
        first, letters = segment.year_from, segment.letters
        may_be = {n for i in self.moving for n in self.marks.contents(i)}
        return [y for y in found if not may_be.isdisjoint(letters[y - 1 - first : y + 1 - first])]

    def weight(self, i: int, letter: int, year: int) -> float:
        """Weight of a moving mark in a year with that letter."""
        letters = self._letters[i]
        total = letters.get(letter)
        if total is None:
            total = letters[letter] = self._by_letter(i, letter, letter)
        return total + self._by_year(i, year) if self._years else total

    def most(self, i: int, segment: Segment, *, mean: bool) -> float:
        """The best weight of a moving mark over a segment, or the mean by prior weight."""
        year = self.marks.seen[i].year
        inside = year is not None and segment.year_from <= year <= segment.year_to
        total = 0.0
        if self._years:
            total = self._by_year(i, 0)
            if inside and year is not None:
                hit = self._by_year(i, year)
                share = segment.prior(year) / segment.below[-1] if mean else 1.0
                total += share * (hit - total)
        if not segment.letters:
            return total + self._fixed[i] * self.scales[i]
        letters = self._letters[i]
        best = 0.0
        for letter, share in segment.shares:
            value = letters.get(letter)
            if value is None:
                value = letters[letter] = self._by_letter(i, letter, letter)
            if mean:
                best += share * value
            elif value > best:
                best = value
        return total + best
