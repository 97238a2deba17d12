"""What a system expects in a stretch of years: roles, the ways of showing them, segments."""

import math
from collections import defaultdict

import msgspec

from planish.library.rows import Office, System
from planish.marks.seen import fold

OPEN_END = 2030
#: kinds of sign whose match changes from year to year
DYNAMIC = frozenset({"cycle", "year", "initials-year", "code"})
#: roles that the register of makers speaks to
MAKERS = frozenset({"sponsor", "maker"})
#: how many makers were at work is taken every forty years
REGISTER_GRID = 40
#: kinds of office that are no one town
NO_ONE_TOWN = frozenset({"national", "several towns"})
#: roles that a town mark known by its town may fill
PLACES = frozenset({"town", "town-2", "import", "office", "district"})


class Way(msgspec.Struct, frozen=True):
    """One way of showing a role, with its share among the ways of the same years."""

    kind: str
    value: str
    share: float
    fineness: float | None
    label: str
    sources: tuple[str, ...]
    #: number of the content in ``Plan.contents``; -1 for a way that changes with the year
    content: int = -1


class Expected(msgspec.Struct, frozen=True):
    """A role as a segment expects it. forms: how a maker's role is written."""

    role: str
    presence: float
    ways: tuple[Way, ...]
    forms: dict[str, float]
    sources: tuple[str, ...]
    #: whether the match of a mark changes from year to year
    moves: bool = False
    #: place in ``Plan.expected``
    index: int = -1


class Segment(msgspec.Struct, frozen=True, eq=False):
    """Years [year_from, year_to] of one office in one system, all alike but for date letters.

    letters: for each year the index of its letter in ``Plan.letterforms``, -1 where none is known;
    or, where years have codes, the number of the code in ``Plan.contents``.
    """

    system: System
    office: Office | None
    year_from: int
    year_to: int
    expected: tuple[Expected, ...]
    #: sums of the prior weights of the years before each year of the segment
    below: tuple[float, ...] = (0.0,)
    letters: tuple[int, ...] = ()
    #: place in ``Plan.segments``
    at: int = -1
    #: places in ``Plan.expected`` of the roles whose price is the same in all years
    steady: tuple[int, ...] = ()
    #: the role whose match changes with the year, and the maker's
    dated: Expected | None = None
    maker: Expected | None = None
    #: further roles that change with the year
    further: tuple[Expected, ...] = ()
    #: each letter of ``letters`` with the share of the segment's prior weight in its years
    shares: tuple[tuple[int, float], ...] = ()
    #: whether ``letters`` are codes of single years
    coded: bool = False
    #: years in which another letter begins
    changes: tuple[int, ...] = ()
    #: folded name of the office, blank where there is none; and blank where it is no one town
    office_name: str = ""
    town: str = ""
    #: country, town and whether plated: what a listed maker is tied to
    ware: tuple[str, str, bool] = ("", "", False)
    #: places of the dated role and the maker's in ``Plan.expected`` (-1 = none), and a number that
    #: segments share where the register tells as much of their makers
    outline: tuple[int, int, int] = (-1, -1, -1)

    @property
    def key(self) -> tuple[str, str]:
        """Line of systems and office."""
        return self.system.line or self.system.id, self.office.id if self.office else ""

    @property
    def log_prior_top(self) -> float:
        """Log of the prior weight of all its years."""
        return math.log(self.below[-1])

    def mass(self, low: int, high: int) -> float:
        """Prior weight of the years from ``low`` to ``high``, both in the segment."""
        return self.below[high + 1 - self.year_from] - self.below[low - self.year_from]

    def prior(self, year: int) -> float:
        """Prior weight of one year."""
        return self.mass(year, year)


def presence(expected: Expected, complete: float) -> float:
    """Chance that the mark of a role is on the list, given that the piece belongs here."""
    return min(0.995, expected.presence * complete)


def make_segment(
    *,
    number: int,
    system: System,
    office: Office | None,
    years: tuple[int, int],
    expected: tuple[Expected, ...],
    below: tuple[float, ...],
    letters: tuple[int, ...],
) -> Segment:
    """A segment with what scoring wants of it worked out once."""
    low, high = years
    moving = [e for e in expected if e.moves]
    makers = [e for e in expected if not e.moves and e.forms and e.role in MAKERS]
    apart = {e.index for e in (*moving, *makers)}
    shares: dict[int, float] = defaultdict(float)
    for n, letter in enumerate(letters):
        shares[letter] += (below[n + 1] - below[n]) / below[-1]
    name = fold(office.name) if office else ""
    town = name if office and office.kind not in NO_ONE_TOWN else ""
    return Segment(
        system=system,
        office=office,
        year_from=low,
        year_to=high,
        expected=expected,
        below=below,
        letters=letters,
        at=number,
        steady=tuple(e.index for e in expected if e.index not in apart),
        dated=moving[0] if moving else None,
        maker=makers[0] if makers else None,
        further=(*moving[1:], *makers[1:]),
        shares=tuple(shares.items()),
        coded=any(w.kind == "code" for e in moving for w in e.ways),
        changes=tuple(low + n for n in range(1, len(letters)) if letters[n] != letters[n - 1]),
        office_name=name,
        town=town,
        ware=(system.country, town, system.kind != "solid"),
        outline=(
            moving[0].index if moving else -1,
            makers[0].index if makers else -1,
            hash((system.country, low // REGISTER_GRID, high // REGISTER_GRID)),
        ),
    )
