"""What a search of the usual places says: how complete it was, and what finding nothing means.

The shares of the places and the priors below are common practice, not counted from pieces: the first
place of a form's list is where one looks first because most marks sit there.
"""

import math
from collections.abc import Iterable, Sequence

import msgspec

from planish.evidence import Finding, Hypothesis, Ledger, LedgerLine, decibans
from planish.library.loader import Library
from planish.library.rows import Spot
from planish.marks.observation import Search
from planish.marks.where import place_of, resolve, where_to_look

#: chance that a mark which is there is found when its place is searched (common practice)
_FOUND = 0.95
#: share of marked pieces marked at no place of the list (common practice)
_ELSEWHERE = 0.05
#: how complete a list of marks is when no usual place was searched in full, and when all were
_LEAST, _MOST = 0.5, 0.97
#: before any search: marked, unmarked silver, unmarked plate or base metal (common practice)
_PRIORS = {"marked": 0.6, "silver": 0.15, "plate": 0.25}
_LABELS = {
    "marked": "the piece is marked, and the marks were not found",
    "silver": "silver that bears no mark, or none any more",
    "plate": "unmarked plate or base metal",
}
_ALL = frozenset({"all", "everywhere", "every place"})


class Place(msgspec.Struct, frozen=True, kw_only=True):
    """A usual place of the form. share: of marked pieces; found: None where it was not searched."""

    number: int
    place: str
    how: str
    share: float
    found: bool | None


class Searched(msgspec.Struct, frozen=True, kw_only=True):
    """What was searched of a form's usual places. beside: places that stand on no list."""

    form: str
    places: tuple[Place, ...]
    beside: tuple[Search, ...] = ()

    @property
    def covered(self) -> float:
        """Share of the marks' usual places that was searched, 0 to 1."""
        return math.fsum(p.share for p in self.places if p.found is not None) / (1 - _ELSEWHERE)

    @property
    def complete(self) -> float:
        """How complete the list of marks is taken to be (``Observed.complete``)."""
        return _LEAST + (_MOST - _LEAST) * min(1.0, self.covered)

    @property
    def next(self) -> Place | None:
        """The place not searched where most marks sit."""
        rest = [p for p in self.places if p.found is None]
        return max(rest, key=lambda p: (p.share, -p.number), default=None)

    def searches(self) -> tuple[Search, ...]:
        """What was looked at, for ``Observed.searched``."""
        listed = (Search(place=p.place, found=p.found) for p in self.places if p.found is not None)
        return (*listed, *self.beside)


def searched(said: Iterable[Search], form: str, library: Library) -> Searched | None:
    """The usual places of a form with what was searched; None where the form is not known.

    said: places by number, or in a person's words; ``all`` is every place not named apart.
    """
    known = resolve(form, library)
    if known is None:
        return None
    spots = where_to_look(known, library)
    places = [(spot.rank, spot.place) for spot in spots]
    found: dict[str, bool] = {}
    beside: list[Search] = []
    everywhere: list[bool] = []
    for search in said:
        if search.place.strip().casefold() in _ALL:
            everywhere.append(search.found)
        elif place := place_of(search.place, places):
            found[place] = found.get(place, False) or search.found
        else:
            beside.append(search)
    for spot in spots if everywhere else ():
        found.setdefault(spot.place, False)
    shares = _shares(spots)
    return Searched(
        form=known,
        places=tuple(
            Place(
                number=spot.rank,
                place=spot.place,
                how=spot.how,
                share=share,
                found=found.get(spot.place),
            )
            for spot, share in zip(spots, shares, strict=True)
        ),
        beside=tuple(beside),
    )


def _shares(spots: Sequence[Spot]) -> list[float]:
    """Each place half as likely as the one before it; together all but ``_ELSEWHERE``."""
    weights = [0.5**n for n in range(len(spots))]
    return [(1 - _ELSEWHERE) * w / math.fsum(weights) for w in weights]


def unmarked(found: Searched) -> Finding:
    """What to think of a piece on which no mark was found, by where it was searched.

    Each place searched in vain speaks against marks that were missed, by the chance that they sit
    there and would have been found (Bayes). It cannot tell unmarked silver from unmarked plate:
    that takes a test of the metal.
    """
    left = 1.0
    lines = []
    for place in found.places:
        if place.found is False:
            after = left - place.share * _FOUND
            lines.append(
                LedgerLine(
                    key=f"searched:{place.number}",
                    observed=f"{place.place}: searched, nothing found",
                    because="a usual place of marks on this form",
                    likelihood_db={
                        "marked": decibans(math.log(after / left)), "silver": 0.0, "plate": 0.0
                    },
                    sources=("practice",),
                )
            )  # fmt: skip
            left = after
    total = math.fsum(p * (left if key == "marked" else 1) for key, p in _PRIORS.items())
    hypotheses = tuple(
        Hypothesis(
            key=key,
            label=_LABELS[key],
            probability=prior * (left if key == "marked" else 1.0) / total,
            prior=prior,
        )
        for key, prior in _PRIORS.items()
    )
    return Finding(
        about="no mark found",
        hypotheses=tuple(sorted(hypotheses, key=lambda h: -h.probability)),
        ledger=Ledger(tuple(lines)),
    )
