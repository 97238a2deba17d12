"""Words that no rule reads: a maker's name, a picture not in the thesaurus, a note, or unread."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from planish.marks.describe import claims, places, shapes
from planish.marks.describe import vocabulary as v
from planish.marks.describe.draft import Draft
from planish.marks.describe.pictures import DECOR
from planish.marks.describe.struck import is_initials
from planish.marks.describe.tokens import Token, tokenize
from planish.marks.observation import Claim

if TYPE_CHECKING:
    from planish.marks.describe.marks import Scanner

#: words that show running text rather than a picture
_PROSE = v.word_set(
    "purchased bought weight weighs weighing inch inche height collection gift presented family lot estimate provenance "
    "condition museum length total dealer sold auction sale price inherited grandmother mother thing "
    "think know help please thank identify anyone what how when made piece silver item antique vintage "
    "decorated design style overall approximate diameter wide high measure measuring dent "
    "record year century circa by maker date letter engraved handle spoon retailed possibly attributed "
    "excerpt center point pattern line read recorded same period describe described mounted coronation commemorating decorated presentation "
    "type kind way place good bad never given photo photograph view generation"
)
_BY = v.word_set(
    "by for maker makers firm attributed silversmith goldsmith retailer importer messrs"
)
_FIRM = frozenset(["&", "co", "ltd", "bros", "sons", "son", "brothers", "company", "and"])
_JOINED_IN = v.word_set("of in with and a an the on from or")
_ENDS = frozenset(
    [
        "role",
        "technique",
        "town",
        "legibility",
        "doubt",
        "partial",
        "count",
        "period",
        "maker",
        "country",
        "metal",
    ]
)
_SHAPES = v.word_set(
    "shaped circular triangular rectangular oval round square octagonal hexagonal lobed lozenge diamond pentagonal "
    "canted chamfered kite trapezoidal"
)
_ARTICLES = v.word_set("a an the")
#: words after these name a person, a cause or a comparison, never what is struck
_NO_PICTURE_AFTER = v.word_set("by than because whether if like from of for to at")


class Unknown:
    """Rules for unknown words; part of the scanner."""

    def __init__(self, scanner: "Scanner") -> None:
        self.scanner = scanner

    def read(self) -> None:
        """Words that no rule reads: a maker's name after "by", a picture, or unread."""
        s = self.scanner
        if self._named_by() or self._maker_claim():
            return
        if self._hyphened():
            return
        end = self._run()
        units = {u for t in s.tokens[s.at : end] for u in t.units}
        s.state.decor = s.state.decor or bool(units & DECOR)
        if self._is_shape(end):
            s.state.pend.outline = places.said(s.tokens, s.at, end)
            s.at = end
        elif not (self._trademark(end) or self._belongs(end, prose=bool(units & _PROSE))):
            s.skip(max(1, end - s.at))

    def _named_by(self) -> bool:
        """A name after "by", "mark of", "TE for", or in brackets after a maker's mark."""
        s = self.scanner
        state = s.state
        before = s.token(-1)
        link = s.unit(-1)
        linked = link in _BY
        if link in ("for", "of"):
            initials = state.current.text if s.fresh() and state.current else None
            linked = bool(
                state.pend.hint == v.MAKER
                or s.hallmarked
                or s.of_mark
                or (link == "for" and initials and is_initials(initials))
            )
        remark = before is not None and before.kind == "open" and state.current is not None
        if remark and state.current and state.current.hint == v.MAKER:
            linked = True
        found = claims.name(s.tokens, s.at) if linked else None
        if found is None:
            return False
        if state.pend.hint == v.MAKER:
            state.flush()
        state.claim(Claim(about="maker", says=found[0]))
        s.at += found[1]
        return True

    def _hyphened(self) -> bool:
        """As in "lion-anchor-G": pictures and letters in a row."""
        s = self.scanner
        pieces = s.tokens[s.at].text.split("-")
        if len(pieces) < 2:
            return False
        marks: list[Draft] = []
        for piece in pieces:
            inner = tokenize(piece)
            lone = len(piece) == 1 and piece.isupper()
            if lone:
                marks.append(Draft(text=piece))
            elif len(inner) == 1 and s.lexicon.find(inner, 0, ("device",)):
                marks.append(Draft(device=piece))
            else:
                return False
        role = s.lexicon.find(s.tokens, s.at + 1, ("role",)) if s.at + 1 < len(s.tokens) else None
        hint = s.state.pend.hint or (str(role[1]) if role else None)
        for draft in marks:
            draft.hint = hint
            s.state.mark(draft)
        s.end_mark(s.at + 1 + (role[2] if role else 0))
        return True

    def _trademark(self, end: int) -> bool:
        """As in "with eagle-R-lion trademark": a picture that is called a maker's mark."""
        s = self.scanner
        role = s.lexicon.find(s.tokens, end, ("role",)) if end < len(s.tokens) else None
        words = s.tokens[s.at : end]
        if all(t.text[:1].isupper() and "-" not in t.text for t in words):
            return False  # a name: "a New Standard maker mark"
        if not role or role[1] != v.MAKER or s.unit(-1) not in ("with", "a", "an", "and", "the"):
            return False
        s.state.pend.hint = v.MAKER
        s.state.mark(Draft(device=places.said(s.tokens, s.at, end)))
        s.end_mark(end + role[2])
        return True

    def _belongs(self, end: int, *, prose: bool) -> bool:
        """Unknown words that belong to a mark: its picture, or a note before or after it."""
        s = self.scanner
        state = s.state
        said = places.said(s.tokens, s.at, end)
        span = (s.tokens[s.at].start, s.tokens[end - 1].end)
        lead = "with" if s.unit(-1) in _ARTICLES and s.unit(-2) == "with" else s.unit(-1)
        inside = lead == "in" and end - s.at < 3
        if (lead == "with" or inside) and s.fresh() and state.current and not prose:
            state.current.note(f"{lead} {said}")
        elif self._is_picture(end):
            span_kept = None if state.told else span
            state.mark(Draft(device=said, notes=["not in the thesaurus"], span=span_kept))
            s.end_mark(end)
        elif (
            s.at == s.mark_end
            and s.fresh()
            and state.current
            and state.current.device
            and not prose
        ):
            state.current.note(said)
        elif not prose and self._describes(end):
            state.pend.note(said)
            state.note_spans.append(span)
        else:
            return False
        s.at = end
        return True

    def _describes(self, end: int) -> bool:
        """One or two small words before a mark: "embellished N", "crude eagle"."""
        s = self.scanner
        words = s.tokens[s.at : end]
        if end >= len(s.tokens) or len(words) > 2 or not all(t.text.islower() for t in words):
            return False
        return (
            s.tokens[end].kind == "quote"
            or s.lexicon.find(s.tokens, end, ("device",)) is not None
            or s.letters.is_text(end)
        )

    def _maker_claim(self) -> bool:
        """A capitalised name that is the whole item beside a claim: "London 1784, James Dixon"."""
        s = self.scanner
        if not (s.state.claims and s.starts_item()) or s.verb:
            return False
        found = claims.name(s.tokens, s.at)
        if found is None or found[1] < 2:
            return False
        name, size = found
        if not set(name.casefold().replace(".", "").split()) & _FIRM:
            return False
        after = s.token(size)
        if after is not None and after.kind == "word":
            return False
        s.state.claim(Claim(about="maker", says=name, doubtful=True))
        s.at += size
        return True

    def _is_shape(self, end: int) -> bool:
        """As in "a triangular hallmark", "a horizontal-banded circular mark": the shape of a punch."""
        s = self.scanner
        words = s.tokens[s.at : end]
        return (
            end < len(s.tokens)
            and bool(
                s.tokens[end].kind == "quote" or s.lexicon.find(s.tokens, end, ("generic", "role"))
            )
            and all(any(u in v.OUTLINE_WORDS for u in t.units) for t in words)
            and any(set(t.units) & _SHAPES for t in words)
        )

    def _run(self) -> int:
        """Where the run of unknown words ends; small words between unknown ones belong to it."""
        s = self.scanner
        end = s.at + 1
        while end < len(s.tokens) and s.tokens[end].kind == "word" and end - s.at < 10:
            if shapes.outline(s.tokens, end, s.lexicon) or places.where(
                s.tokens, end, s.lexicon, bare=False
            ):
                break
            unit = s.tokens[end].units[0] if s.tokens[end].units else ""
            hits = s.lexicon.hits(s.tokens, end)
            senses = {k for hit in hits for k in hit.senses}
            if senses & _ENDS:
                break
            if s.letters.is_text(end) and not s.shouting:
                break
            if "device" in senses and end == s.at + 1 and unit not in _JOINED_IN:
                break
            if unit in _JOINED_IN or not senses or senses & {"device", "number", "outline", "part"}:
                end += 1
            else:
                break
        while end > s.at + 1 and s.tokens[end - 1].text.casefold() in _JOINED_IN:
            end -= 1
        return end

    @staticmethod
    def _tells(words: Sequence[Token]) -> bool:
        """Whether words say what was done or how: "never cleaned", "easily overlooked"."""
        last = words[-1].text.casefold()
        return last.endswith("ed") or any(
            len(t.text) > 4 and t.text.casefold().endswith("ly") for t in words
        )

    def _is_picture(self, end: int) -> bool:
        s = self.scanner
        state = s.state
        words = s.tokens[s.at : end]
        units = {u for t in words for u in t.units}
        if units & _PROSE or len(words) > 8 or (state.untold and not s.verb):
            return False
        lead = s.unit(-2) if s.unit(-1) in _ARTICLES else s.unit(-1)
        if lead in _NO_PICTURE_AFTER and not s.of_mark:
            return False
        if not any(t.text.islower() and len(t.text) > 2 and t.text.isalpha() for t in words):
            return False
        after = s.tokens[end] if end < len(s.tokens) else None
        closes = after is None or after.kind in ("stop", "close") or bool(
            s.lexicon.find(s.tokens, end, ("container", "generic", "technique"))
        ) or after.text.casefold() in ("with", "and", "on", "in")  # fmt: skip
        told = s.verb or bool(state.pend.hint) or s.of_mark
        if (not told or len(words) == 1) and self._tells(words):
            return False
        if not told and s.lexicon.find(words, len(words) - 1, ("part",)):
            return False  # "pierced bowl": the piece
        in_marks = bool(
            len(state.drafts) > state.sentence_from
            or (state.drafts and s.starts_item() and (after is None or after.text == "."))
            or state.section.where
            or s.verb
            or state.pend.hint
            or s.of_mark
        )
        opens = s.starts_item() or s.article or s.of_mark or s.verb or bool(state.pend.hint)
        if self._is_shape(end):
            return False
        after_with = s.unit(-1) == "with"
        return (
            closes
            and in_marks
            and (opens or after_with)
            and not (s.fresh() and not s.article and not after_with)
        )
