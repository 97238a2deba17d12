"""What comes out of the engine: ranked readings, ledger, contradictions, next looks."""

import msgspec

from planish.evidence import Contradiction, Finding
from planish.marks.observation import Observed


class MakerGuess(msgspec.Struct, frozen=True, kw_only=True):
    """A maker or sponsor that the marks may name."""

    name: str
    probability: float
    why: str = ""
    place: str = ""
    years: str = ""
    sources: tuple[str, ...] = ()


class Assigned(msgspec.Struct, frozen=True, kw_only=True):
    """What a reading takes one observed mark for. role ``stray``: explained by no role."""

    mark: int
    shown: str
    role: str
    probability: float


class Reading(msgspec.Struct, frozen=True, kw_only=True):
    """One hypothesis about a set of marks.

    kind: solid, plated, base or unknown. country: ISO 3166-1 alpha-2 or None. fineness: permille.
    years are those in which the marking began (an assay year runs on into the next).
    """

    key: str
    kind: str
    country: str | None
    system: str
    system_label: str
    office: str | None
    year_from: int | None
    year_to: int | None
    fineness: float | None
    makers: tuple[MakerGuess, ...]
    probability: float
    label: str
    assigned: tuple[Assigned, ...] = ()
    sources: tuple[str, ...] = ()


class Outcome(msgspec.Struct, frozen=True, kw_only=True):
    """What one outcome of a look would settle."""

    if_seen: str
    chance: float
    then: str


class NextLook(msgspec.Struct, frozen=True, kw_only=True):
    """A mark not yet seen that is worth looking for. information: expected, in bits."""

    role: str
    look_for: str
    information: float
    where: tuple[str, ...] = ()
    outcomes: tuple[Outcome, ...] = ()


class PartReading(msgspec.Struct, frozen=True, kw_only=True):
    """The likeliest reading of the marks of one part taken alone."""

    part: str
    reading: Reading
    #: probability of the reading's kind, country and office, whatever the year
    place: float


class ReadingFinding(msgspec.Struct, frozen=True, kw_only=True):
    """The reading of a piece's marks. parts: each part alone, where several bear marks."""

    observed: Observed
    readings: tuple[Reading, ...]
    finding: Finding
    contradictions: tuple[Contradiction, ...] = ()
    next_look: tuple[NextLook, ...] = ()
    parts: tuple[PartReading, ...] = ()
    not_used: tuple[str, ...] = ()
    consulted: tuple[str, ...] = ()

    @property
    def best(self) -> Reading | None:
        """The likeliest reading, if any."""
        return self.readings[0] if self.readings else None
