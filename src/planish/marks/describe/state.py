"""What has been read so far: marks, what was said before the next mark, where we stand."""

import re
from dataclasses import dataclass, field

from msgspec.structs import replace

from planish.marks.describe import vocabulary as v
from planish.marks.describe.draft import Draft, Where, unread
from planish.marks.observation import Claim, Legibility, Search, Technique

_FIGURES = re.compile(r"\W*\d[\d.,/ ]*\W*")
_MAX_UNREAD_MARKS = 12


@dataclass(slots=True)
class Scope:
    """What holds for the marks of a section or clause."""

    where: Where = field(default_factory=Where)
    technique: Technique | None = None
    hint: str | None = None
    legibility: Legibility | None = None
    times: int = 1


@dataclass(slots=True)
class State:
    """The reading so far. A clause ends at ``;`` or a full stop, an item also at a comma."""

    drafts: list[Draft] = field(default_factory=list)
    claims: list[Claim] = field(default_factory=list)
    searched: list[Search] = field(default_factory=list)
    spans: list[tuple[int, int]] = field(default_factory=list)
    pend: Draft = field(default_factory=Draft)
    pend_spans: list[tuple[int, int]] = field(default_factory=list)
    note_spans: list[tuple[int, int]] = field(default_factory=list)
    where_span: tuple[int, int] | None = None
    how_span: tuple[int, int] | None = None  # legibility said before any mark
    plural: bool = False
    section: Scope = field(default_factory=Scope)
    clause: Scope = field(default_factory=Scope)
    current: Draft | None = None
    clause_from: int = 0
    item_from: int = 0
    sentence_from: int = 0
    spans_from: int = 0  # unread passages before this clause
    group_from: int = 0
    expected: int = 0
    expected_from: int = 0
    expected_legibility: Legibility | None = None
    count: int = 0
    remark: int = 0
    remark_from: int = 0
    partial: bool = False
    last_claim: bool = False
    told: bool = False  # the clause says that marks are struck
    listed: bool = False  # an item that was only a mark has been read: this is a list of marks
    decor: bool = False  # the item tells of the object and its decoration
    story: bool = False  # the sentence tells of people: see ``story``
    bears: bool = False  # ... and has said that something is struck

    # -- marks ---------------------------------------------------------------------------------

    def mark(self, draft: Draft) -> Draft:
        """Add a mark: it takes what was said before it and what holds for the clause."""
        draft.take(self.pend)
        scope_hint = self.clause.hint or self.section.hint
        if draft.hint is None and scope_hint and (draft.text or scope_hint == v.PSEUDO):
            draft.hint = scope_hint
        draft.technique = draft.technique or self.clause.technique or self.section.technique
        if 0 < self.expected <= len(self.drafts) - self.expected_from:
            self.section.legibility = self.clause.legibility = None  # all announced marks are read
        draft.times = max(draft.times, self.clause.times, self.section.times)
        draft.legibility = draft.legibility or self.clause.legibility or self.section.legibility
        if not draft.own_place and not draft.where:
            draft.where = self.clause.where or self.section.where
        self.drafts.append(draft)
        self.current = draft
        self.group_from = len(self.drafts) - 1
        self.last_claim = False
        self.note_spans = []
        self.forget()
        return draft

    def forget(self) -> None:
        """Drop what was said before the next mark: it has been used, or goes to unread."""
        self.pend = Draft()
        self.pend_spans = []
        self.spans += self.note_spans
        self.note_spans = []
        self.count = 0

    def role(self, hint: str, span: tuple[int, int], *, plural: bool) -> None:
        """The next mark is called this."""
        if self.pend.hint and self.pend.hint != hint:
            self.flush()
        if hint == v.PSEUDO and plural:
            self.section.hint = hint
            self.forget()
            return
        self.pend.hint = hint
        self.plural = plural
        self.pend_spans.append(span)

    @property
    def untold(self) -> bool:
        """Whether a sentence of people has not said yet that something is struck."""
        return self.story and not self.bears

    def flush(self) -> None:
        """A role named without its letters becomes an unread mark; other words go to unread."""
        role = self.pend.hint
        if role in v.NAMED_ONLY and not self.untold:
            said = self.pend
            self.pend = Draft()
            self.mark(unread(role, said))
        elif role is not None:
            self.spans += self.pend_spans
        self.forget()
        self.plural = False

    # -- ends ----------------------------------------------------------------------------------

    def end_item(self) -> None:
        """At a comma, semicolon or item number."""
        if self.pend.hint or self.pend_spans:
            self.flush()
        self.forget()
        if len(self.drafts) > self.item_from:
            if self.decor:
                self._demote()
            else:
                self.listed = True
        self.decor = False
        self.item_from = len(self.drafts)

    def _demote(self) -> None:
        """Pictures in an item that tells of decoration ("thistle finial") are no marks."""
        scope = self.section
        if self.listed or scope.where or scope.hint or scope.technique:
            return
        kept = self.drafts[: self.item_from]
        for draft in self.drafts[self.item_from :]:
            bare = draft.span and not (draft.hint or draft.outline or draft.text or draft.technique)
            if bare and draft.span:
                self.spans.append(draft.span)
            else:
                kept.append(draft)
        self.drafts = kept
        self.current = kept[-1] if kept else None

    def end_clause(self) -> None:
        """At a semicolon: a place said alone speaks for all marks before it."""
        self.end_item()
        made = len(self.drafts) > self.clause_from
        if not made and self.where_span and not (self.drafts or self.searched):
            self.spans.append(self.where_span)  # a place without anything said of it
        if self.how_span and not made and not self.expected:
            self.spans.append(self.how_span)  # said of no mark
        self.where_span = self.how_span = None
        alone = len(self.spans) == self.spans_from
        if not made and alone and self.clause.where and self.clause.technique is None:
            for draft in self.drafts:
                if not draft.where:
                    draft.where = self.clause.where
        self.clause = Scope()
        self.told = False
        self.clause_from = len(self.drafts)
        self.spans_from = len(self.spans)

    def end_sentence(self) -> None:
        """At a full stop: marks that were counted and not described are added as unread ones."""
        self.end_clause()
        missing = self.expected - sum(d.times for d in self.drafts[self.expected_from :])
        if 0 < missing <= _MAX_UNREAD_MARKS:
            if (
                self.expected_legibility
                or len(self.drafts) == self.expected_from
                or self.expected < 4
            ):
                for _ in range(missing):
                    self.mark(
                        Draft(
                            text="[---]",
                            legibility=self.expected_legibility,
                            notes=["not described"],
                        )
                    )
            self.partial = True
        self.expected = 0
        self.expected_legibility = None
        self.story = self.bears = False
        self.section.hint = None
        self.clause_from = self.item_from = self.sentence_from = len(self.drafts)

    def header(self) -> None:
        """At a colon: a place, technique or plural role said before it holds for the section."""
        if len(self.drafts) > self.clause_from:
            said, spans, plural = self.pend, self.pend_spans, self.plural
            self.forget()
            self.end_clause()
            self.pend, self.pend_spans, self.plural = said, spans, plural
            return
        self.open_section()
        self.where_span = None
        if self.pend.legibility and self.pend.hint is None:
            self.section.legibility = self.pend.legibility

    def open_section(self) -> None:
        """What was said of the clause so far holds for the section."""
        clause = self.clause
        if clause.where or clause.technique or clause.legibility or clause.times > 1:
            self.section = Scope(
                where=clause.where or self.section.where,
                technique=clause.technique,
                hint=self.section.hint,
                legibility=clause.legibility,
                times=clause.times,
            )

    def item_number(self) -> None:
        """At [1], 2): a header before the first number holds for all numbered marks."""
        if len(self.drafts) == self.clause_from:
            self.open_section()
        self.end_item()
        self.current = None

    # -- words after a mark --------------------------------------------------------------------

    def targets(self, *, group: bool) -> list[Draft]:
        """The marks that words after a mark speak of."""
        if group:
            found = self.drafts[self.clause_from :] or self.drafts
            return list(found)
        if self.current is None:
            return []
        several = self.drafts[max(self.group_from, self.item_from) :]
        return several if self.current in several else [self.current]

    def place_after(self, where: Where) -> None:
        """A place said after marks: it is that of the clause's marks without their own place."""
        for draft in self.drafts[self.clause_from :]:
            if not draft.own_place:
                draft.where, draft.own_place = where, True

    def claim(self, claim: Claim) -> None:
        """Add a claim."""
        self.claims.append(claim)
        self.last_claim = True

    def doubt_last(self) -> None:
        """A question mark after a claim or mark."""
        if self.last_claim and self.claims:
            self.claims[-1] = replace(self.claims[-1], doubtful=True)
        elif self.current:
            self.current.doubtful = True
