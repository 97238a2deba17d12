"""Where on a form the marks were struck: evidence of date beside the marks.

The ratio is the share of pieces of the country and year with marks at such a place, over the share
over all the years of the table. A place not written down says nothing.
"""

import math
import re
from bisect import bisect_right
from collections import defaultdict
from collections.abc import Iterable

import msgspec

from planish.library.rows import Placement
from planish.marks.observation import Mark

_FIRST, _LAST = 1600, 1950
#: two kinds of place on one piece are not independent, so their product is bounded
_LEAST, _MOST = math.log(0.05), math.log(6.0)
#: the shares are judgments, so they count for less than a count would (common practice)
_TRUST = 0.7


class Placed(msgspec.Struct, frozen=True):
    """Log ratios of the places of the marks, in steps, by country.

    steps: country -> (first years, log ratio from each on). told: what was seen where, for the
    ledger. rows: the rows that speak.
    """

    steps: dict[str, tuple[tuple[int, ...], tuple[float, ...]]]
    told: str = ""
    rows: tuple[Placement, ...] = ()

    @property
    def cuts(self) -> tuple[int, ...]:
        """Years at which a ratio changes."""
        return tuple(sorted({y for edges, _ in self.steps.values() for y in edges[1:]}))

    def at(self, year: int, country: str) -> float:
        """Log ratio in a year for marks of a country."""
        if country not in self.steps:
            return 0.0
        edges, logs = self.steps[country]
        return logs[bisect_right(edges, year) - 1]

    def tops(self) -> dict[str, float]:
        """The best ratio over all years, by country."""
        return {country: math.exp(max(logs)) for country, (_, logs) in self.steps.items()}


NOWHERE = Placed({})


def placed(marks: Iterable[Mark], form: str | None, rows: Iterable[Placement]) -> Placed:
    """What the places of the marks on this form say."""
    where = sorted({w for m in marks for w in (m.place, m.part) if w})
    if not form or not where:
        return NOWHERE
    groups: dict[tuple[str, str], list[Placement]] = defaultdict(list)
    told: list[str] = []
    for row in rows:
        key = (row.forms, row.places)
        if key in groups:
            groups[key].append(row)
        elif re.search(rf"\b(?:{row.forms})\b", form, re.IGNORECASE):
            at = next((w for w in where if re.fullmatch(row.places, w, re.IGNORECASE)), None)
            if at is not None:
                groups[key].append(row)
                told.append(at)
    if not groups:
        return NOWHERE
    by_country: dict[str, list[list[Placement]]] = defaultdict(list)
    for found in groups.values():
        for country in found[0].countries.split(";"):
            by_country[country].append(found)
    return Placed(
        {country: _steps(found) for country, found in by_country.items()},
        "; ".join(dict.fromkeys(told)),
        tuple(row for found in groups.values() for row in found),
    )


def _steps(groups: list[list[Placement]]) -> tuple[tuple[int, ...], tuple[float, ...]]:
    edges = sorted({0} | {e for rows in groups for r in rows for e in (r.year_from, r.year_to + 1)})
    logs = []
    for year in edges:
        log = 0.0
        for rows in groups:
            share = next((r.share for r in rows if r.year_from <= year <= r.year_to), None)
            if share is not None:
                log += _TRUST * math.log(share / _at_large(rows))
        logs.append(min(_MOST, max(_LEAST, log)))
    return tuple(edges), tuple(logs)


def _at_large(rows: list[Placement]) -> float:
    total = years = 0.0
    for row in rows:
        span = max(0, min(row.year_to, _LAST) - max(row.year_from, _FIRST) + 1)
        total += span * row.share
        years += span
    return total / years
