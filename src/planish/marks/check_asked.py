"""What a check is, and what a reading's checks look up."""

from enum import StrEnum

import msgspec

from planish.library.loader import Library
from planish.library.rows import Office, Rule
from planish.marks.explain import shown
from planish.marks.plan import OPEN_END, Plan, Segment
from planish.marks.reading import Reading, ReadingFinding
from planish.marks.seen import Seen, digest, pieces

#: where a rule holds, by the words of its row: nations of the offices
_REALMS = {
    "England": {"England"},
    "Scotland": {"Scotland"},
    "England and Scotland": {"England", "Scotland"},
    "Great Britain": {"England", "Scotland"},
    "United Kingdom": {"England", "Scotland"},
    "Ireland": {"Ireland"},
    "Britain and Ireland": {"England", "Scotland", "Ireland"},
}


class Answer(StrEnum):
    """What a check found."""

    YES = "yes"
    NO = "no"
    UNKNOWN = "unknown"


class Check(msgspec.Struct, frozen=True, kw_only=True):
    """One question put to the library.

    key: stable name. asks: the question. says: the answer in a sentence. rule: the rule or table
    behind it. sources: keys of the bibliography, or ``memory`` or ``practice``.
    """

    key: str
    asks: str
    answer: Answer
    says: str
    rule: str = ""
    sources: tuple[str, ...] = ()


class Asked(msgspec.Struct, frozen=True):
    """A reading with what the checks look up for it."""

    finding: ReadingFinding
    best: Reading
    library: Library
    plan: Plan
    office: Office | None
    low: int
    high: int
    #: segments of the reading's office and systems in its years
    segments: tuple[Segment, ...]

    @property
    def where(self) -> str:
        """The office, or the system where there is none."""
        return self.best.office or self.best.system_label

    @property
    def years(self) -> str:
        """The reading's years in words."""
        if self.high == OPEN_END:
            return f"{self.low} or later"
        return str(self.low) if self.low == self.high else f"{self.low}-{self.high}"

    def seen(self) -> dict[str, Seen]:
        """Observed marks by the words in which the reading shows them."""
        found: dict[str, Seen] = {}
        for mark in self.finding.observed.marks:
            for piece in pieces(mark, self.plan.any_words):
                one = digest(piece, self.plan.thesaurus, self.plan.known_words)
                found.setdefault(shown(one), one)
        return found

    def rules(self, *topics: str) -> list[Rule]:
        """Rules of the topics in force in some of the years where the reading is."""
        return [
            r
            for r in self.library.rules
            if r.topic in topics
            and self._holds(r)
            and int(r.date_from[:4] or 0) <= self.high
            and int(r.date_to[:4] or OPEN_END) >= self.low
        ]

    def _holds(self, rule: Rule) -> bool:
        if self.office is None:
            return False
        nations = _REALMS.get(rule.applies_to)
        return self.office.nation in nations if nations else rule.applies_to == self.office.name
