"""Rules for pictures, and for marks that are only called marks."""

from typing import TYPE_CHECKING

from planish.marks.describe import claims, places
from planish.marks.describe import vocabulary as v
from planish.marks.describe.draft import Draft
from planish.marks.describe.tokens import Token, fold
from planish.marks.observation import Legibility, Technique

if TYPE_CHECKING:
    from planish.marks.describe.marks import Scanner

DECOR = frozenset(
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
_PATTERNED = v.word_set(
    "pattern design motif decoration ornament finial knop thumbpiece cup spoon teapot tankard"
)
_HEADS = v.word_set("head bust profile portrait figure face mask")


class Pictures:
    """Rules for pictures; part of the scanner."""

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
        if self._no_picture(token, size):
            return False
        if (
            size == 1
            and s.unit() in ("king", "queen")
            and s.lexicon.find(s.tokens, s.at + 1, ("period",))
        ):
            s.at += 1
            return True
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
            state.decor = state.decor or bool(set(fold(said)) & DECOR)
            state.mark(Draft(device=said, span=span))
        s.reset()
        s.mark_end = s.at
        return True

    def _no_picture(self, token: Token, size: int) -> bool:
        """Whether words of the thesaurus say something else here."""
        s = self.scanner
        state = s.state
        if token.text.casefold() == "bears" and not (state.count or state.pend.hint):
            return True  # a verb, unless several animals are counted
        if (state.untold and not s.verb) or self._decorates(s.at + size):
            return True
        if size > 1:
            return False
        capitals = token.text.isupper() and not s.shouting
        if capitals or len(token.text) == 1 or self._surname(token):
            return True
        ruled = s.unit() in ("king", "queen") and s.lexicon.find(s.tokens, s.at + 1, ("period",))
        part = s.lexicon.find(s.tokens, s.at, ("part",)) and not ruled
        return bool(part and not self._among_marks())

    def _surname(self, token: Token) -> bool:
        """Whether a word of another language is rather a name: Stern, Hahn, Leone beside letters."""
        s = self.scanner
        if token.text.casefold() not in s.lexicon.foreign or token.text.islower():
            return False
        after = s.token(1)
        alone = after is None or after.kind in ("stop", "close") or after.text in ("und", "mit")
        return not (s.starts_item() and alone and s.state.pend.hint is None)

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
