"""The sales most like a piece, out of millions, exactly and in a millisecond or so.

    d^2 = sum_j w_j (x_j - x0_j)^2 + sum_c u_c [word_c differs]

the distance of the kriging with 0/1 attributes for words. Rows lie grouped by their first word
(the form) and within it in order of the first number (the logarithm of net weight). A search starts
at the piece's own place and walks outward; it stops where the first number alone puts every row
further off than the best found, and enters another form only if a differing form alone does not.
Nothing is left out that could belong to the best: the bounds are exact, and rows as near as each
other come in the order in which they were given.

What a row does not know counts as ``unknown`` (squared, before the weight); what the piece does not
know counts for no row.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from planish.worth.sales import Sale

Numbers = NDArray[np.float32]
Words = NDArray[np.int32] | NDArray[np.int16]
Places = NDArray[np.int64]

#: attributes of a sale that a search compares, the first of each kind leading
NUMBERS = ("ln net g", "condition", "made", "ln pieces", "engraved")
WORDS = ("form", "maker", "pattern", "place", "style", "metal")
#: squared difference that something unknown counts for, on attributes scaled to unit spread
UNKNOWN = 1.0
_FIRST_STEP = 2048
_PIECE = 16_384
#: single precision: how far a sum of a few squares may be off, as a share and at nought
_SLACK, _LEAST_SLACK = 4e-6, 1e-9


@dataclass(frozen=True, kw_only=True)
class Wanted:
    """What is looked for. numbers, words: of the piece, by attribute. weights: w and u by name.

    An attribute without a weight counts for nothing.
    """

    numbers: Mapping[str, float]
    words: Mapping[str, int]
    weights: Mapping[str, float]


@dataclass(frozen=True, kw_only=True)
class Nearest:
    """rows: places in the order given, nearest first. distance: of each. seen: rows looked at."""

    rows: Places
    distance: NDArray[np.float64]
    seen: int


@dataclass(frozen=True, kw_only=True)
class Columns:
    """Sales as columns, grouped and ordered for the search; made once, searched often.

    numbers, words: by attribute, in the order of ``rows``, which holds the place of each row as
    given. lacking: attributes that some row does not know. starts: where each group begins, by code of the first word, and where the last ends.
    codes: what each word is, by attribute, where it was made of texts.
    """

    numbers: Mapping[str, Numbers]
    words: Mapping[str, Words]
    rows: NDArray[np.int32]
    groups: NDArray[np.int32]
    starts: Places
    known: Places
    lacking: frozenset[str]
    codes: Mapping[str, Mapping[str, int]]

    @classmethod
    def of(
        cls,
        numbers: Mapping[str, NDArray[np.floating]],
        words: Mapping[str, NDArray[np.integer]],
        codes: Mapping[str, Mapping[str, int]] | None = None,
    ) -> "Columns":
        """From columns of equal length; NaN and codes below 0 are not known.

        Raises:
            ValueError: there is no number or no word, or the columns are of different lengths.
        """
        if (
            not numbers
            or not words
            or len({c.shape for c in (*numbers.values(), *words.values())}) > 1
        ):
            raise ValueError("a search needs a number and a word, all columns of one length")
        lead, form = next(iter(numbers.values())), next(iter(words.values()))
        rows = np.lexsort((lead, form)).astype(np.int32)  # NaN goes last within its group
        ordered = np.asarray(form)[rows]
        groups, starts = np.unique(ordered, return_index=True)
        ends = np.append(starts, ordered.size).astype(np.int64)
        placed = {name: np.asarray(c, np.float32)[rows] for name, c in numbers.items()}
        first = next(iter(placed.values()))
        known = np.array(
            [a + np.count_nonzero(~np.isnan(first[a:b])) for a, b in pairwise(ends)], np.int64
        )
        coded = {name: _small(c)[rows] for name, c in words.items()}
        lacking = [name for name, c in placed.items() if np.isnan(c).any()]
        lacking += [name for name, c in coded.items() if (c < 0).any()]
        return cls(
            numbers=placed,
            words=coded,
            rows=rows,
            groups=groups.astype(np.int32),
            starts=ends,
            known=known,
            lacking=frozenset(lacking),
            codes=codes or {},
        )

    @classmethod
    def of_sales(cls, sales: Sequence[Sale]) -> "Columns":
        """From sales; words are compared without regard to case."""
        numbers = {name: np.full(len(sales), np.nan, np.float32) for name in NUMBERS}
        words = {name: np.full(len(sales), -1, np.int32) for name in WORDS}
        codes: dict[str, dict[str, int]] = {name: {} for name in WORDS}
        for at, sale in enumerate(sales):
            for name, value in sale.traits.numbers().items():
                if name in numbers:
                    numbers[name][at] = value
            for name in WORDS:
                if word := _word(sale, name):
                    words[name][at] = codes[name].setdefault(word, len(codes[name]))
        return cls.of(numbers, words, codes)

    def wanted(self, piece: Sale, weights: Mapping[str, float]) -> Wanted:
        """A piece, written like a sale, as what is looked for."""
        # a word that no sale has differs from all of them: a code of its own
        words = {
            name: self.codes[name].get(word, len(self.codes[name]))
            for name in self.words
            if (word := _word(piece, name))
        }
        numbers = {n: v for n, v in piece.traits.numbers().items() if n in self.numbers}
        return Wanted(numbers=numbers, words=words, weights=weights)

    def nearest(self, wanted: Wanted, count: int = 20, unknown: float = UNKNOWN) -> Nearest:
        """The rows nearest to what is looked for; all where there are fewer.

        Raises:
            ValueError: a weight is below zero, or the count below one.
        """
        if count < 1 or min(wanted.weights.values(), default=0.0) < 0 or unknown < 0:
            raise ValueError("a count is above zero, weights are not below")
        search = _Search(self, wanted, count, unknown)
        form = next(iter(self.words))
        mine = wanted.words.get(form)
        other = search.word_weight(form)
        order = range(self.groups.size)
        for group in (g for g in order if self.groups[g] == mine):
            search.group(group, 0.0)
        for group in (g for g in order if self.groups[g] != mine):
            search.group(group, other * unknown if self.groups[group] < 0 else other)
        return search.result()


def _small(codes: NDArray[np.integer]) -> Words:
    """Codes in two bytes each, where they fit."""
    most = int(codes.max(initial=0))
    return codes.astype(np.int16) if most <= np.iinfo(np.int16).max else codes.astype(np.int32)


def _word(sale: Sale, name: str) -> str:
    value = getattr(sale.traits, name)
    return " ".join(str(value).casefold().split()) if value else ""


class _Term:
    """One attribute's part of a squared distance."""

    def __init__(
        self, column: Numbers | Words, value: float, weight: float, *, unsaid: float | None
    ) -> None:
        self.column, self.value, self.weight = column, value, weight
        self.number = column.dtype.kind == "f"
        #: what an unknown counts for; None where no row has one
        self.unsaid = unsaid

    def of(self, rows: slice | Places, kind: type = np.float32) -> NDArray[np.floating]:
        """The part of some rows, in single or double precision."""
        part = self.column[rows]
        if self.number:
            found: NDArray[np.floating] = np.subtract(part, self.value, dtype=kind)
            np.multiply(found, found, out=found)
            found *= kind(self.weight)
            if self.unsaid is not None:
                found[np.isnan(found)] = self.unsaid
            return found
        found = (part != int(self.value)) * kind(self.weight)
        if self.unsaid is not None:
            found[part < 0] = self.unsaid
        return found


class _Search:
    """One search: the best so far, and the bound that they set.

    Rows are measured in single precision, with room for its rounding; the few that remain are
    measured again in double precision, which alone decides.
    """

    def __init__(self, columns: Columns, wanted: Wanted, count: int, unknown: float) -> None:
        self.columns, self.count, self.unknown = columns, count, unknown
        self.asked = wanted
        form = next(iter(columns.words))
        lead = next(iter(columns.numbers))
        terms = [
            (name, columns.numbers[name], float(x))
            for name, x in wanted.numbers.items()
            if name in columns.numbers
        ] + [
            (name, columns.words[name], float(code))
            for name, code in wanted.words.items()
            if name in columns.words and name != form  # one form is the same all through a group
        ]
        made = [
            _Term(
                column,
                value,
                float(wanted.weights[name]),
                unsaid=wanted.weights[name] * unknown if name in columns.lacking else None,
            )
            for name, column, value in terms
            if wanted.weights.get(name)
        ]
        made.sort(key=lambda t: -t.weight)
        self.heavy, self.light = made[: (len(made) + 1) // 2], made[(len(made) + 1) // 2 :]
        self.lead = columns.numbers[lead]
        self.lead_weight = float(wanted.weights.get(lead, 0.0)) if lead in wanted.numbers else 0.0
        self.place = float(wanted.numbers.get(lead, 0.0))
        self.squares = np.empty(0, np.float32)
        self.at = np.empty(0, np.int64)
        self.least = np.empty(0)
        self.bound = np.inf
        self.seen = 0

    def word_weight(self, name: str) -> float:
        """What a differing word counts for; 0 where the piece does not know its own."""
        return float(self.asked.weights.get(name, 0.0)) if name in self.asked.words else 0.0

    def group(self, group: int, least: float) -> None:
        """Look through one group, every row of which is at least ``least`` away (squared)."""
        if least > self.bound:
            return
        start, end = (int(v) for v in self.columns.starts[group : group + 2])
        known = int(self.columns.known[group])
        if not self.lead_weight:
            self._run(start, end, least)
            return
        left = right = start + int(np.searchsorted(self.lead[start:known], self.place))
        step = _FIRST_STEP
        while left > start or right < known:
            low, high = self._band(start, known, least)
            low, high = max(low, left - step), min(high, right + step)
            if low >= left and high <= right:
                break
            if left == right:  # one piece to begin with
                self._run(low, high, least)
            else:
                self._run(low, left, least)
                self._run(right, high, least)
            left, right = min(left, low), max(right, high)
            step *= 4
        if least + self.lead_weight * self.unknown <= self.bound:
            self._run(known, end, least)

    def _band(self, start: int, known: int, least: float) -> tuple[int, int]:
        """Rows that the first number alone does not put beyond the bound."""
        if self.bound == np.inf:
            return start, known
        reach = np.sqrt(max(self.bound - least, 0.0) / self.lead_weight) * (1 + 1e-6) + 1e-6
        lead = self.lead[start:known]
        low = start + int(np.searchsorted(lead, np.float32(self.place - reach), "left"))
        return low, start + int(np.searchsorted(lead, np.float32(self.place + reach), "right"))

    def _run(self, start: int, end: int, least: float) -> None:
        """Measure rows one after another in pieces that stay in the processor's cache."""
        for at in range(start, end, _PIECE):
            self._measure(at, min(at + _PIECE, end), least)

    def _measure(self, start: int, end: int, least: float) -> None:
        """Rows by the heavy attributes, and those not beyond the bound by the others."""
        self.seen += end - start
        squares: NDArray[np.floating] = np.full(end - start, least, np.float32)
        for term in self.heavy:
            squares += term.of(slice(start, end))
        rows: slice | Places = slice(start, end)
        places = np.arange(start, end)
        if self.bound < np.inf:
            places = start + np.flatnonzero(squares <= self.bound)
            if not places.size:
                return
            squares, rows = squares[places - start], places
        for term in self.light:
            squares += term.of(rows)
        if self.bound < np.inf:
            keep = squares <= self.bound
            squares, places = squares[keep], places[keep]
        self.squares = np.concatenate([self.squares, squares])
        self.at = np.concatenate([self.at, places])
        self.least = np.concatenate([self.least, np.full(places.size, least)])
        if self.squares.size >= self.count:
            best = float(np.partition(self.squares, self.count - 1)[self.count - 1])
            self.bound = min(self.bound, best * (1 + _SLACK) + _LEAST_SLACK)
            keep = self.squares <= self.bound
            self.squares, self.at, self.least = self.squares[keep], self.at[keep], self.least[keep]

    def result(self) -> Nearest:
        """The best, measured again in double precision; as near as each other, as given."""
        squares: NDArray[np.floating] = self.least.astype(np.float64)
        for term in (*self.heavy, *self.light):
            squares += term.of(self.at, np.float64)
        rows = self.columns.rows[self.at]
        order = np.lexsort((rows, squares))[: self.count]
        return Nearest(
            rows=rows[order].astype(np.int64),
            distance=np.sqrt(squares[order].astype(np.float64)),
            seen=self.seen,
        )


def nearest_sales(
    sales: Sequence[Sale], piece: Sale, weights: Mapping[str, float], count: int = 20
) -> Iterable[Sale]:
    """The sales nearest to a piece, for files that are searched once."""
    columns = Columns.of_sales(sales)
    found = columns.nearest(columns.wanted(piece, weights), count)
    return [sales[int(at)] for at in found.rows]
