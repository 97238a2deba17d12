"""When makers' initials were laid out as seen: charge, outline, letter style, rows.

A feature that the observer writes down speaks for the years in which it was common; a feature not
written down says nothing. The ratio is the share of makers' marks of the country and year that
show the feature, over its share over all countries and years of the table.
"""

import re
from collections import defaultdict
from collections.abc import Iterable

from planish.library.rows import Layout
from planish.marks.observation import Mark

#: features that stand together are not independent, so a set of them is bounded
_LEAST, _MOST = 0.1, 6.0
_FIRST, _LAST = 1600, 1950
_CHARGE = re.compile(
    r"\b(?:crown(?:ed)?|coronet|mitre|mullet|star|sun|fleur|lis|rose|cinquefoil|trefoil|crescent"
    r"|shell|e?scallop|bird|heart|annulet|anchor|key|coney|rabbit|pellets? (?:above|below)"
    r"|(?:over|above|below|beneath) (?:a |two |three )?pellets?|pellets? and)\b",
    re.IGNORECASE,
)
#: words for the outline of a punch -> feature; the first that fits counts
_OUTLINES = (
    ("outline-heart", re.compile(r"\bheart", re.IGNORECASE)),
    ("outline-lozenge", re.compile(r"\blozenge|\bdiamond", re.IGNORECASE)),
    ("outline-shield", re.compile(r"\bshields?\b|\bshield-|escutcheon", re.IGNORECASE)),
    ("outline-rectangle", re.compile(r"rectang|oblong|\bsquare", re.IGNORECASE)),
    ("outline-oval", re.compile(r"\boval|ellip", re.IGNORECASE)),
    (
        "outline-shaped",
        re.compile(r"shaped|conform|lobed|foil|curvilinear|elaborate|outline of", re.IGNORECASE),
    ),
)
_STYLED = {"script": "style-script", "black-letter": "style-black-letter"}
_TWO_ROWS = re.compile(r"[A-Z][·.* ]?[A-Z]\s*/\s*[A-Z][·.* ]?[A-Z]")

Steps = tuple[tuple[int, ...], tuple[float, ...]]
FLAT: Steps = ((0,), (1.0,))


def features(mark: Mark) -> tuple[str, ...]:
    """The features of the layout that the observer wrote down.

    >>> features(Mark(text="TL", outline="shaped shield", note="with a mullet below"))
    ('charge', 'outline-shield')
    """
    found = []
    if _CHARGE.search(" ".join(filter(None, (mark.charge, mark.note, mark.outline)))):
        found.append("charge")
    for name, pattern in _OUTLINES:
        if mark.outline and pattern.search(mark.outline):
            found.append(name)
            break
    if mark.style and mark.style.value in _STYLED:
        found.append(_STYLED[mark.style.value])
    if _TWO_ROWS.search(mark.text or ""):
        found.append("rows")
    return tuple(found)


class Layouts:
    """The table of layouts, ready to be asked."""

    def __init__(self, rows: Iterable[Layout]) -> None:
        self._rows: dict[tuple[str, str], list[Layout]] = defaultdict(list)
        sums: dict[str, list[float]] = defaultdict(lambda: [0.0, 0.0])
        for row in rows:
            for country in row.countries.split(";"):
                self._rows[country, row.feature].append(row)
                years = min(row.year_to, _LAST) - max(row.year_from, _FIRST) + 1
                if years > 0:
                    sums[row.feature][0] += years * row.share
                    sums[row.feature][1] += years
        self.countries = frozenset(country for country, _ in self._rows)
        self._at_large = {name: total / years for name, (total, years) in sums.items()}

    def steps(self, mark: Mark, country: str) -> Steps:
        """First years of the steps and the ratio of the mark of initials from each on."""
        by = [(n, rows) for n in features(mark) if (rows := self._rows.get((country, n)))]
        if not by:
            return FLAT
        edges = sorted(
            {0} | {e for _, rows in by for r in rows for e in (r.year_from, r.year_to + 1)}
        )
        found: list[float] = []
        for year in edges:
            ratio = 1.0
            for name, rows in by:
                share = next((r.share for r in rows if r.year_from <= year <= r.year_to), None)
                if share is not None:
                    ratio *= share / self._at_large[name]
            found.append(min(_MOST, max(_LEAST, ratio)))
        return tuple(edges), tuple(found)
