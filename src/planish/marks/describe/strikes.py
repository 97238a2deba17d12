"""Rules for struck texts: the marks in them, and letters that go on with the mark before."""

from typing import TYPE_CHECKING

from planish.marks.describe import places
from planish.marks.describe import vocabulary as v
from planish.marks.describe.draft import Draft
from planish.marks.describe.struck import is_initials, is_year, split
from planish.marks.describe.tokens import tokenize
from planish.marks.observation import Claim, Technique

if TYPE_CHECKING:
    from planish.marks.describe.marks import Scanner

_ENGRAVED = (Technique.ENGRAVED, Technique.SCRATCHED)


class Strikes:
    """Rules for struck texts; part of the scanner."""

    def __init__(self, scanner: "Scanner") -> None:
        self.scanner = scanner
        self.mode = ""  # "initials" while letters of one mark are listed: "W" and "P"

    def struck(self, text: str, *, quoted: bool) -> None:
        """Marks of a struck text; they take what was said before them."""
        s = self.scanner
        state = s.state
        first = len(state.drafts)
        if self.engraved() and state.pend.hint != v.MAKER:
            self._inscription(text)
            return
        if state.pend.hint == "pattern number" and not any(c.isdigit() for c in text):
            state.claim(Claim(about="note", says=f"pattern {text}"))
            state.forget()
            return
        pieces = split(text, s.lexicon)
        if quoted and len(pieces) == 1 and pieces[0].text and self._picture(text):
            return
        hint, plural, mode = state.pend.hint, state.plural, s.letter or self.mode
        for piece in pieces:
            if piece.remark:
                self._remark(piece.remark)
            elif not self._joins(piece.text, mode):
                draft = state.mark(Draft(text=piece.text))
                draft.note(piece.note)
                if hint == v.MAKER and (plural or len(pieces) > 1):
                    # of several texts the maker's is the one that is no known word or number
                    draft.hint = None if self._says_quality(piece.text) else hint
                    hint = hint if plural or draft.hint is None else None
        if not pieces:
            state.spans.append((s.tokens[s.at - 1].start, s.tokens[s.at - 1].end))
        if plural and hint == v.MAKER:
            state.clause.hint = hint
        state.plural = False
        state.group_from = min(first, len(state.drafts) - 1)
        s.reset()
        s.mark_end = s.at
        self.mode = mode

    def _says_quality(self, text: str) -> bool:
        words = text.split()
        return self.scanner.lexicon.known_struck(words) or not any(c.isalpha() for c in text)

    def between(self) -> bool:
        """A picture in brackets between two letters of one mark: I [a figure] M."""
        s = self.scanner
        current = s.state.current
        if current is None or not current.text or len(current.text) > 2 or s.at != s.mark_end:
            return False
        for end in range(s.at + 2, min(s.at + 7, len(s.tokens) - 1)):
            if s.tokens[end].kind == "close":
                after = s.tokens[end + 1].text
                if not (after[0].isupper() and len(after.rstrip(".")) == 1):
                    return False
                if s.lexicon.find(s.tokens, s.at + 1, ("style", "container", "count", "role")):
                    return False
                current.text += f" {after}"
                current.charges.append(f"{places.said(s.tokens, s.at + 1, end)} between")
                s.at = s.mark_end = end + 2
                return True
            if s.tokens[end].kind != "word":
                return False
        return False

    def engraved(self) -> bool:
        """Whether what follows is engraved or scratched by hand."""
        state = self.scanner.state
        technique = state.pend.technique or state.clause.technique or state.section.technique
        return technique in _ENGRAVED

    def _inscription(self, text: str) -> None:
        """Engraved words are kept whole; too long for a mark, they are a note."""
        s = self.scanner
        draft = Draft(text=text)
        if draft.finish() is None:
            s.state.claim(Claim(about="note", says=f"engraved: {text}"))
            s.state.forget()
        else:
            s.state.mark(draft)
        s.reset()
        s.mark_end = s.at

    def _picture(self, text: str) -> bool:
        """Quotation marks round a picture in words: "walking lion"."""
        s = self.scanner
        if not any(c.islower() for c in text):
            return False
        inner = tokenize(text)
        hit = s.lexicon.find(inner, 0, ("device",)) if inner else None
        if not hit or hit[2] != len(inner) or (len(inner) == 1 and text[0].isupper()):
            return False
        s.state.mark(Draft(device=str(hit[1]) or text))
        s.reset()
        s.mark_end = s.at
        return True

    def _remark(self, text: str) -> None:
        """Bracketed words inside a struck text: pictures, or how it is written."""
        s = self.scanner
        outer, at = s.tokens, s.at
        spans = len(s.state.spans)
        s.tokens, s.at = tokenize(text), 0
        while s.at < len(s.tokens):
            before = s.at
            token = s.tokens[s.at]
            if token.kind == "word":
                s.word()
            elif token.kind == "quote":
                s.quote(token)
            else:
                if token.text in (",", ";"):
                    s.state.end_item()
                s.at += 1
            s.at = max(s.at, before + 1)
        if len(s.state.spans) > spans:
            del s.state.spans[spans:]
            if s.state.current:
                s.state.current.note(text)
        s.tokens, s.at = outer, at

    def _beside(self, text: str, current: Draft) -> bool:
        """Single letters in quotation marks side by side are one maker's: "W" "P" in a diamond."""
        s = self.scanner
        before, here = s.token(-2), s.token(-1)
        quotes = before is not None and here is not None and before.kind == here.kind == "quote"
        letters = (text, *(current.text or "").split())
        return quotes and all(len(c) == 1 and c.isupper() for c in letters)

    def _joins(self, text: str, mode: str) -> bool:
        """Letters over letters ("TE over GS"), initials over a year, P & B in three punches."""
        s = self.scanner
        state = s.state
        current = state.current
        if current is None or not current.text or state.pend.hint not in (None, "date"):
            return False
        over, s.words.over = s.words.over, False
        if self._beside(text, current):
            current.text += f" {text}"
            state.forget()
            return True
        if over and is_initials(current.text) and (is_initials(text) or is_year(text)):
            current.text += f"/{text}"
        elif (mode == "initials" and s.words.listed and len(text) == 1) or (
            len(state.drafts) > state.clause_from and (text == "&" or current.text.endswith(" &"))
        ):
            current.text += f" {text}"
        else:
            return False
        state.forget()
        return True
