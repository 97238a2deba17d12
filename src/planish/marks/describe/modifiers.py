"""Rules for words said before or after a mark: how often, how made, how legible, what letters."""

from typing import TYPE_CHECKING

from planish.marks.describe import places
from planish.marks.describe import vocabulary as v
from planish.marks.describe.draft import Draft
from planish.marks.describe.story import SPOKEN
from planish.marks.observation import Case, Legibility, Style, Technique

if TYPE_CHECKING:
    from planish.marks.describe.marks import Scanner

_ENGRAVED = (Technique.ENGRAVED, Technique.SCRATCHED)
#: words for a part of a mark
_OF_A_MARK = v.word_set("letter edge side half part end initial numeral figure corner")


class Modifiers:
    """Rules for words before and after a mark; part of the scanner."""

    def __init__(self, scanner: "Scanner") -> None:
        self.scanner = scanner

    def count(self, times: int, size: int) -> bool:
        """How often struck: the mark to come, the mark before or the whole clause."""
        s = self.scanner
        state = s.state
        verb = s.token(-1)
        after = s.token(-2)
        added = verb is not None and after is not None and verb.kind == "word" and after.text == ","
        if state.current is None and not s.head_follows(s.at + size):
            state.clause.times = max(state.clause.times, times)
        elif state.current is None or (s.head_follows(s.at + size) and not added):
            state.pend.times = max(state.pend.times, times)
        else:
            for draft in state.targets(group=s.all):
                draft.times = max(draft.times, times)
        s.at += size
        return True

    def technique(self, technique: Technique | None, size: int) -> bool:
        """How the mark was made; a verb such as "struck" says only that letters follow."""
        s = self.scanner
        state = s.state
        said = places.said(s.tokens, s.at, s.at + size).casefold()
        started = len(state.drafts) > state.clause_from
        ahead = s.head_follows(s.at + size)
        following = s.token(size)
        if technique is None:
            if state.clause.technique in _ENGRAVED:
                state.clause.technique = None
            if state.story and said in SPOKEN:
                s.skip(size)  # "the owner reads", "he says": a person, not the mark
                return True
            s.verb = state.told = state.bears = True
            s.hallmarked = said in v.HALLMARKED
            if said.startswith("over"):
                state.pend.note("struck over another mark")
        elif technique in _ENGRAVED:
            if ahead or not s.fresh() or (following is not None and following.text == ":"):
                state.clause.technique = technique
                s.verb = True
            elif state.current:
                state.current.technique = technique
        elif (
            not started
            and state.pend.hint is None
            and not (
                following is not None and s.lexicon.find(s.tokens, s.at + size, ("style", "letter"))
            )
        ):
            state.clause.technique = technique
        elif ahead and not (s.unit(-1) == "in" and s.fresh()):
            state.pend.technique = technique
        else:
            for draft in state.targets(group=s.all):
                draft.technique = draft.technique or technique
        s.at += size
        return True

    def legibility(self, how: Legibility, size: int) -> bool:
        """How well it can be read: the mark to come, the one before, or all of them."""
        s = self.scanner
        state = s.state
        name = how in (Legibility.ILLEGIBLE, Legibility.OBSCURE) and s.lexicon.find(
            s.tokens, s.at + size, ("letter",)
        )
        if s.head_follows(s.at + size) or state.pend.hint or name:
            state.pend.legibility = how
        elif state.expected and len(state.drafts) == state.expected_from and not state.count:
            state.expected_legibility = how
        elif state.count and not s.fresh():
            for _ in range(state.count):
                state.pend = Draft()
                state.mark(Draft(text="[---]", legibility=how, notes=["not described"]))
        elif not state.drafts and (s.words_start("mark") or s.words_start("hallmark")):
            state.mark(Draft(text="[---]", legibility=how, notes=["not described"]))
        elif s.all or (not s.fresh() and state.expected == 0 and s.words_start("mark")):
            for draft in state.targets(group=True):
                draft.legibility = draft.legibility or how
        elif state.current is not None:
            self._legible(state.current, how)
        else:
            state.clause.legibility = how
            state.how_span = s.span(size)
        s.at += size
        return True

    def _legible(self, draft: Draft, how: Legibility) -> None:
        """As in "right edge of second letter lost": what is lost of a mark that was read."""
        s = self.scanner
        start = s.at
        while start and s.tokens[start - 1].kind == "word":
            start -= 1
        words = {u for t in s.tokens[start : s.at] for u in t.units}
        if draft.text and words & _OF_A_MARK and (s.starts_at(start) or not s.fresh()):
            draft.note(places.said(s.tokens, start, s.at + 1))
            first = s.tokens[start].start
            s.state.spans = [x for x in s.state.spans if not first <= x[0] < s.tokens[s.at].end]
            how = Legibility.WORN
        draft.legibility = how

    def style(self, style: object, size: int) -> bool:
        """The letterform of the mark before or to come."""
        s = self.scanner
        if not isinstance(style, Style):
            return False
        after_in = s.unit(-1) == "in" or s.unit(-2) == "in"
        if after_in and s.fresh() and not s.state.pend.hint:
            for draft in s.state.targets(group=s.all):
                draft.style = style
        elif s.head_follows(s.at + size) or s.state.pend.hint or not s.state.current:
            s.state.pend.style = style
        elif s.fresh():
            for draft in s.state.targets(group=s.all):
                draft.style = style
        else:
            s.state.pend.style = style
        last = s.tokens[s.at + size - 1].units
        s.at += size
        if last and last[-1] == "letter" and not after_in:
            s.letter = s.letter or "letter"
        return True

    def case(self, case: object, size: int) -> bool:
        """Capital or small letters."""
        s = self.scanner
        if not isinstance(case, Case):
            return False
        if s.head_follows(s.at + size) or not s.fresh():
            s.state.pend.case = case
        elif s.state.current:
            s.state.current.case = case
        last = s.tokens[s.at + size - 1].units
        s.at += size
        if last and last[-1] == "letter":
            s.letter = s.letter or "letter"
        return True

    def alternative(self, said: str, size: int) -> bool:
        """A second reading: "MC (or possibly MG)"."""
        s = self.scanner
        current = s.state.current
        at = s.at + size
        if current is None or at >= len(s.tokens) or s.state.pend.hint:
            s.at += size
            return True
        end = at
        if s.tokens[at].kind == "quote" or s.letters.is_text(at):
            end = at + 1
            while end + 1 < len(s.tokens) and s.tokens[end].text in "&·" and s.letters.is_text(
                end + 1
            ):  # fmt: skip
                end += 2
        elif hit := s.lexicon.find(s.tokens, at, ("device",)):
            end = at + hit[2]
        elif s.unit(size) in ("a", "an", "the") and (
            hit := s.lexicon.find(s.tokens, at + 1, ("device",))
        ):
            end = at + 1 + hit[2]
        if end > at:
            current.note(f"or {places.said(s.tokens, at, end)}")
            current.doubtful = True
        s.at = max(end, s.at + size)
        del said
        return True
