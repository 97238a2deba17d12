"""Rules for pictures, for marks that are only called marks, and for unknown words."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from planish.marks.describe import claims, places, shapes
from planish.marks.describe import vocabulary as v
from planish.marks.describe.draft import Draft
from planish.marks.describe.struck import is_initials
from planish.marks.describe.tokens import Token, fold, tokenize
from planish.marks.observation import Claim, Legibility, Technique

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
_DECOR = frozenset(
    [
        "finial",
        "enamel",
        "decorated",
        "chased",
        "mounted",
        "presented",
        "presentation",
        "commemorating",
        "coronation",
        "motif",
        "pommel",
        "hilt",
        "scabbard",
        "embossed",
        "repousse",
        "ebonised",
        "ivory",
        "velvet",
        "leather",
        "gadrooned",
        "acanthus",
        "incorporating",
        "applied",
        "beaded",
        "reeded",
        "fluted",
        "inscription",
    ]
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
_PATTERNED = v.word_set(
    "pattern design motif decoration ornament finial knop thumbpiece cup spoon teapot tankard"
)
#: words after these name a person, a cause or a comparison, never what is struck
_NO_PICTURE_AFTER = v.word_set("by than because whether if like from of for to at")
_HEADS = v.word_set("head bust profile portrait figure face mask")


class Pictures:
    """Rules for pictures and unknown words; part of the scanner."""

    def __init__(self, scanner: "Scanner") -> None:
        self.scanner = scanner

    def generic(self, said: str, size: int) -> bool:
        """A mark that is only called a mark; several may be announced before they are listed."""
        s = self.scanner
        state = s.state
        following = s.token(size)
        at, s.at = s.at, s.at + size
        s.hallmarked = s.hallmarked or "hall" in said or said == "hm"
        if state.untold and not s.verb:
            state.forget()
            state.spans.append((s.tokens[at].start, s.tokens[s.at - 1].end))
            return True
        state.told = True
        if state.clause.technique in (Technique.ENGRAVED, Technique.SCRATCHED):
            state.clause.technique = None
        s.hallmarked = s.hallmarked or (
            s.unit() == "for"
            and s.at + 1 < len(s.tokens)
            and s.lexicon.find(s.tokens, s.at + 1, ("town",)) is not None
        )  # "bears marks for London 1789"
        s.of_mark = s.unit() == "of"
        how = state.pend.legibility
        if s.of_mark or (state.pend.hint and how is None):
            return True
        listed = following is not None and following.text == ":"
        plural = s.tokens[at + size - 1].text.casefold().endswith("s")
        count = state.count or (2 if plural and how and not listed else 0)
        if s.fresh() and not state.count and how is None:
            return True
        if how is None and not plural and not state.count and (said_of := self._legible_after()):
            state.mark(Draft(text="[---]", legibility=said_of, notes=["not described"]))
            s.mark_end = s.at
            return True
        if count > 1 or (listed and count):
            state.expected, state.expected_from = count, len(state.drafts)
            state.expected_legibility = how
            if listed and how:
                state.clause.legibility = how
            if not listed:
                state.forget()
            s.verb = True
        elif (how or state.pend.outline) and not s.head_follows(s.at):
            state.mark(Draft(text="[---]", notes=["not described"]))
        elif state.count == 1 and not s.head_follows(s.at):
            state.expected, state.expected_from = 1, len(state.drafts)
            state.forget()
        return True

    def _legible_after(self) -> Legibility | None:
        """How legible a mark is that has nothing but its number: "second punch (unreadable)"."""
        s = self.scanner
        start = s.at + (s.unit() in ("is", "was"))
        before = s.token()
        if before is not None and before.kind == "open":
            start += 1
        elif start == s.at or before is None:
            return None
        if start >= len(s.tokens):
            return None
        hit = s.lexicon.find(s.tokens, start, ("legibility",))
        return Legibility(str(hit[1])) if hit else None

    def device(self, size: int, label: str) -> bool:
        """A picture of the thesaurus, with the words that belong to it."""
        s = self.scanner
        state = s.state
        token = s.tokens[s.at]
        if size == 1 and token.text.isupper() and len(token.text) > 1 and not s.shouting:
            return False
        if size == 1 and len(token.text) == 1:
            return False
        if token.text.casefold() == "bears" and not (state.count or state.pend.hint):
            return False  # a verb, unless several animals are counted
        if state.untold and not s.verb:
            return False
        if self._decorates(s.at + size):
            return False
        if (
            size == 1
            and s.unit() in ("king", "queen")
            and s.lexicon.find(s.tokens, s.at + 1, ("period",))
        ):
            s.at += 1
            return True
        if size == 1 and s.lexicon.find(s.tokens, s.at, ("part",)) and not self._among_marks():
            return False
        if self._named_role(size):
            return True
        end = self._of(s.at + size) if token.units[-1:] and self._head_noun(size) else s.at + size
        said = places.said(s.tokens, s.at, end)
        if end == s.at + size and label:
            if said.casefold() in s.lexicon.foreign:
                state.pend.note(said)
            said = label
        if end < len(s.tokens) and set(s.tokens[end].units) & {"head", "face", "bust", "mask"}:
            said, end = (
                f"{said if end > s.at + size else places.said(s.tokens, s.at, end)} {s.tokens[end].text}",
                end + 1,
            )
        if (
            end < len(s.tokens)
            and s.tokens[end].units == ("crowned",)
            and "crown" not in said.casefold()
        ):
            said, end = f"{said} crowned", end + 1
        s.at = end
        named = state.current.device if state.current else None
        if state.remark and named and named.startswith("town mark of ") and state.current:
            state.current.note(said)  # "Moscow coat of arms (St. George ...)": what it shows
        else:
            start = state.note_spans[0][0] if state.note_spans else token.start
            span = None if state.told else (start, s.tokens[s.at - 1].end)
            state.decor = state.decor or bool(set(fold(said)) & _DECOR)
            state.mark(Draft(device=said, span=span))
        s.reset()
        s.mark_end = s.at
        return True

    def _decorates(self, end: int) -> bool:
        """As in "rose pattern", "baby cup": the picture tells which pattern or piece."""
        s = self.scanner
        if s.verb or s.state.pend.hint or s.of_mark or end >= len(s.tokens):
            return False
        return bool(set(s.tokens[end].units) & _PATTERNED)

    def _among_marks(self) -> bool:
        """Whether a thing that may be the piece itself ("spoon", "shell") is a picture here."""
        s = self.scanner
        state = s.state
        if s.unit(1) == "of" and claims.date(s.tokens, min(s.at + 2, len(s.tokens) - 1)):
            return False  # "spoons of 1708"
        told = s.verb or state.pend.hint or s.of_mark or state.section.where or state.section.hint
        return bool(told or (state.drafts and s.starts_item()) or (state.drafts and s.article))

    def _named_role(self, size: int) -> bool:
        """As in "king's head duty mark": a picture and what it is called."""
        s = self.scanner
        for start in range(s.at + 1, s.at + size):
            role = s.lexicon.find(s.tokens, start, ("role",))
            picture = any(
                "device" in hit.senses and hit.length == start - s.at
                for hit in s.lexicon.hits(s.tokens, s.at)
            )
            if role and picture and start + role[2] == s.at + size:
                state = s.state
                said = places.said(s.tokens, s.at, start)
                if state.pend.hint is None:
                    state.pend.hint = str(role[1])
                state.mark(Draft(device=said))
                s.at += size
                s.reset()
                s.mark_end = s.at
                return True
        return False

    def _head_noun(self, size: int) -> bool:
        s = self.scanner
        return bool(set(s.tokens[s.at + size - 1].units[-1:]) & _HEADS)

    def _of(self, at: int) -> int:
        """Where "bust of a man", "head of King George III" ends."""
        s = self.scanner
        if at >= len(s.tokens) or s.tokens[at].text != "of":
            return at
        end = at + 1
        while end < len(s.tokens) and s.tokens[end].kind == "word" and end - at < 7:
            if s.lexicon.find(
                s.tokens, end, ("role", "technique", "container", "legibility", "join")
            ):
                break
            if s.tokens[end].text.casefold() in v.FACING | {"and"} and end > at + 1:
                break
            end += 1
        return end if end > at + 1 else at

    def unknown(self) -> None:
        """Words that no rule reads: a maker's name after "by", a picture, or unread."""
        s = self.scanner
        if self._named_by() or self._maker_claim():
            return
        if self._hyphened():
            return
        end = self._run()
        units = {u for t in s.tokens[s.at : end] for u in t.units}
        s.state.decor = s.state.decor or bool(units & _DECOR)
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
            or state.section.where or s.verb or state.pend.hint or s.of_mark
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
