"""Rules for words before and after marks, for unquoted letters, numbers and unknown words."""

from typing import TYPE_CHECKING

from planish.marks.describe import claims, places, shapes
from planish.marks.describe import vocabulary as v
from planish.marks.describe.claims import date
from planish.marks.describe.draft import Draft, Where
from planish.marks.describe.struck import is_initials
from planish.marks.observation import Claim, Technique

if TYPE_CHECKING:
    from planish.marks.describe.marks import Scanner

_ENGRAVED = (Technique.ENGRAVED, Technique.SCRATCHED)
_INTRODUCES = v.word_set("with has have bears bear is are was were mark marks hallmark hallmarks")
_INTERPRETS = v.word_set("indicating indicate denoting denote signifying meaning indicated")
_WORN_OR_HELD = v.word_set(
    "wreath crown coronet laurel helmet sword sceptre scepter spear diadem kokoshnik beard wing branch "
    "ribbon plume cap hat halo axe staff trident caduceus turban headdress horn orb flag"
)
_TURNED = frozenset(("upside down", "right side up", "right-side up"))
_FACING_START = v.word_set(
    "facing looking profile right-facing left-facing laureate upside sideways turned inverted reversed lying "
    "rotated"
)


class Words:
    """Rules for words; part of the scanner."""

    def __init__(self, scanner: "Scanner") -> None:
        self.scanner = scanner
        self.over = False  # the letters that follow stand below those before
        self.listed = False  # "W" and "P": letters of one mark

    # -- phrases -------------------------------------------------------------------------------

    def phrase(self) -> bool:
        """Phrases of several words that go before single words."""
        s = self.scanner
        if s.unit() in ("and", "&"):
            self.listed = s.strikes.mode == "initials"
        return (
            self._interpretation()
            or self._order()
            or self._facing()
            or self._over()
            or self._outline()
            or self._charge()
            or self._place()
        )

    def means(self) -> bool:
        """As in "EPOSE (for DEPOSE)": what a remark says that a text stands for."""
        s = self.scanner
        current = s.state.current
        if current is None or not current.text or not s.fresh() or s.unit(1) not in ("for", "ie"):
            return False
        end = s.at + 2
        while end < len(s.tokens) and s.tokens[end].kind != "close":
            end += 1
        if end >= len(s.tokens) or end == s.at + 2 or end - s.at > 12:
            return False
        if claims.name(s.tokens, s.at + 2) and any(c.islower() for c in s.tokens[s.at + 2].text):
            return False  # "(for Hester Bateman)" claims the maker
        meant = places.said(s.tokens, s.at + 2, end)
        lost = next(
            (d for d in s.state.drafts[s.state.item_from :] if _lost_of(d.text, meant)), None
        )
        if lost is not None and lost.text:
            # Leiden: what the writer supplies stands in brackets
            lost.text = f"[{meant[: -len(lost.text)]}]{lost.text}"
        else:
            current.note(f"for {meant}")
        s.at = end + 1
        return True

    def _interpretation(self) -> bool:
        """As in "indicating a fineness of 950": what a mark means is a claim of the writer."""
        s = self.scanner
        if s.unit() not in _INTERPRETS:
            return False
        end = s.at + 1
        while end < len(s.tokens) and s.tokens[end].kind == "word":
            if s.lexicon.find(s.tokens, end, ("town", "country", "period")) or date(s.tokens, end):
                s.at += 1
                return True
            end += 1
        if end == s.at + 1:
            return False
        s.state.claim(Claim(about="note", says=places.said(s.tokens, s.at, end)))
        s.at = end
        return True

    def _order(self) -> bool:
        """How the marks lie to one another: a note, no place on the piece."""
        s = self.scanner
        hit = s.lexicon.find(s.tokens, s.at, ("order",))
        if hit is None:
            return False
        where = places.where(s.tokens, s.at, s.lexicon, bare=True)
        if where and where[0].part and where[1] > hit[2]:
            return False
        said = str(hit[1])
        if s.fresh() and s.state.current and not said.endswith(("by", "with")):
            s.state.current.note(said)
        elif said in _TURNED:
            s.state.pend.note(said)
        s.at += hit[2]
        return True

    def _facing(self) -> bool:
        s = self.scanner
        current = s.state.current
        token = s.token()
        if token is None or current is None or not current.device:
            return self._facing_before()
        word = token.text.casefold()
        two = (s.unit(), s.unit(1))
        starts = word in _FACING_START or two[0] in _FACING_START or two in (
            ("in", "profile"), ("to", "left"), ("to", "right"), ("to", "sinister"), ("to", "dexter"),
            ("side", "view"), ("full", "body"), ("full", "face"), ("full", "length"), ("front", "view"),
            ("on", "its"),
        )  # fmt: skip
        if not starts or s.unit(2) == "of" or s.head_follows(s.at + 1):
            return self._facing_before()
        end = s.at
        while end < len(s.tokens) and s.tokens[end].kind == "word" and (
            s.tokens[end].text.casefold() in v.FACING
            or (s.tokens[end].units and all(u in v.FACING for u in s.tokens[end].units))
        ):  # fmt: skip
            end += 1
        end = max(end, s.at + 1)
        if two in (("full", "body"), ("full", "length")):
            end = s.at + 2
        elif two == ("on", "its"):
            if s.unit(2) not in ("side", "back", "head"):
                return False
            end = s.at + 3
        if s.tokens[end - 1].text in ("in", "the", "to"):
            end -= 1
        current.note(places.said(s.tokens, s.at, end))
        s.at = end
        return True

    def _facing_before(self) -> bool:
        """As in "right-facing, standing eagle": words on posture before the picture."""
        s = self.scanner
        token = s.token()
        word = token.text.casefold() if token else ""
        if word not in (
            "right-facing",
            "left-facing",
            "facing",
            "standing",
            "spreadwing",
            "spread-wing",
            "upside-down",
            "sideways",
            "inverted",
            "reversed",
        ):
            return False
        if s.lexicon.find(s.tokens, s.at, ("device",)):
            return False
        s.state.pend.note(word)
        s.at += 1
        if (after := s.token()) is not None and after.text == "," and s.token(1) is not None:
            s.at += 1
        return True

    def _over(self) -> bool:
        """Letters over letters: the mark goes on."""
        s = self.scanner
        hit = s.lexicon.find(s.tokens, s.at, ("over",))
        current = s.state.current
        if hit is None:
            return False
        before = s.token(-1)
        if (
            s.unit() == "over"
            and before is not None
            and (before.text.casefold() in ("struck", "punched", "stamped"))
            and not places.where(s.tokens, s.at, s.lexicon, bare=False)
        ):
            s.state.pend.note("struck over another mark")
            s.at += hit[2]
            return True
        if current is None or not current.text or not s.fresh() or current.outline:
            return False
        at = s.at + hit[2]
        while at < len(s.tokens) and s.tokens[at].kind == "word" and s.tokens[at].text.casefold() in (
            "the", "date", "year", "letters", "initials", "figures", "number"
        ):  # fmt: skip
            at += 1
        if at >= len(s.tokens) or not (s.tokens[at].kind == "quote" or s.letters.is_text(at)):
            return False
        self.over = True
        s.at = at
        return True

    def _outline(self) -> bool:
        s = self.scanner
        hit = shapes.outline(s.tokens, s.at, s.lexicon)
        if hit is None:
            return False
        shape, size = hit
        state = s.state
        if state.untold and not s.fresh():
            return False
        # an outline of several punches ("in two ovals", "all in ...", "each in ...") is that of each
        several = s.all or s.tokens[s.at].text.casefold() in ("all", "each", "both")
        several = several or any(
            t.text.casefold() in ("separate", "surrounds") for t in s.tokens[s.at : s.at + size]
        )
        if not s.fresh() and (state.pend.hint or s.head_follows(s.at + size)):
            state.pend.outline = shape
        else:
            for draft in state.targets(group=several):
                if draft.outline is None:
                    draft.outline = shape
                elif draft is state.current and shape != draft.outline:
                    draft.note(f"in {shape}")
            if not state.targets(group=several):
                return False
        s.at += size
        s.all = False
        return True

    def _charge(self) -> bool:
        """A crown above the letters, a pellet between them: part of the same punch."""
        s = self.scanner
        current = s.state.current
        before = s.token(-1)
        stop = before.text if before is not None and before.kind == "stop" else ""
        if current is None or not (s.fresh() or (stop == "," and s.in_clause())):
            return False
        if before is None or before.text == "and" or stop not in ("", "?", ","):
            return False
        if s.unit() == "with" and current.text and not is_initials(current.text):
            return False
        if self._attribute(current):
            return True
        if self._letters_beside(current):
            return True
        found = shapes.charged(s.tokens, s.at, s.lexicon, bare=bool(current.text))
        if current.text and found:
            current.charges.append(found[0])
            s.at += found[1]
            return True
        hit = shapes.charge(
            s.tokens,
            s.at,
            s.lexicon,
            in_brackets=before.kind == "open",
            framed=current.outline is not None or stop == ",",
        )
        if hit is None:
            return False
        words, size = hit
        if stop == "," and not set(words.split()) & {"above", "below", "over", "under", "beneath"}:
            return False
        flanked = words.casefold().startswith(("flanked", "either side", "beside"))
        if flanked and current.outline is not None:
            return False
        if current.text:
            current.charges.append(words)
        elif s.unit() in ("with", "and"):
            return False
        else:
            current.device = f"{current.device} {words}"
        s.at += size
        return True

    def _letters_beside(self, current: Draft) -> bool:
        """As in "P & N with S below": letters in a line below or above."""
        s = self.scanner
        place = s.unit(2)
        letters = s.token(1)
        if s.unit() != "with" or not current.text or letters is None:
            return False
        if place not in ("below", "beneath", "underneath", "above") or not (
            letters.kind == "quote" or s.letters.is_text(s.at + 1)
        ):
            return False
        pair = (letters.text, current.text) if place == "above" else (current.text, letters.text)
        current.text = "/".join(pair)
        s.at += 3
        return True

    def _attribute(self, current: Draft) -> bool:
        """As in "woman's head with wreath": what a figure wears or holds belongs to its picture."""
        s = self.scanner
        if s.unit() != "with" or not current.device or s.at != s.mark_end or s.state.remark:
            return False
        start = s.at + 1 + (s.unit(1) in ("a", "an", "the"))
        hit = s.lexicon.find(s.tokens, start, ("device",))
        end = start + (hit[2] if hit else 1)
        while end < len(s.tokens) and set(s.tokens[end].units) & _WORN_OR_HELD:
            end += 1
        units = {u for t in s.tokens[start:end] for u in t.units}
        if not units & _WORN_OR_HELD:
            return False
        current.device = f"{current.device} {places.said(s.tokens, s.at, end)}"
        s.at = s.mark_end = end
        return True

    def _place(self) -> bool:
        s = self.scanner
        state = s.state
        before = s.token(-1)
        after_verb = before is not None and bool(
            before.kind == "word" and s.lexicon.find(s.tokens, s.at - 1, ("technique",))
        )
        bare = s.starts_item() or after_verb
        hit = places.where(s.tokens, s.at, s.lexicon, bare=bare)
        if hit is None:
            return False
        s.letter = ""
        where, size = hit
        by_word = s.unit() in v.PREPOSITIONS
        if not by_word and not self._introduces(s.at + size):
            return False
        following = s.tokens[s.at + size] if s.at + size < len(s.tokens) else None
        if before is not None and before.units[:1] == ("repeated",) and state.current:
            state.current.note(f"also {places.said(s.tokens, s.at, s.at + size)}")
        elif self._beside_another(where, size):
            if state.current:
                state.current.note(places.said(s.tokens, s.at, s.at + size))
        elif not by_word and len(state.drafts) > state.clause_from and state.pend.hint is None:
            state.end_item()
            state.clause.where = where
            state.clause_from = len(state.drafts)
        elif len(state.drafts) > state.clause_from and not (following and following.text == ":"):
            if state.pend.hint and not s.head_follows(s.at + size):
                state.flush()
            state.place_after(where)
        else:
            if len(state.drafts) > state.clause_from and state.pend.hint is None:
                state.end_clause()  # "...; on the lid:" after marks: a new clause
            state.where_span = s.span(size)
            state.clause.where = _both(state.clause.where, where) if by_word else where
        s.at += size
        return True

    def _beside_another(self, where: Where, size: int) -> bool:
        """Whether "either side of" another mark is meant, which is no place on the piece."""
        s = self.scanner
        return where.part is None and (where.place or "").endswith("side") and s.unit(size) == "of"

    def _introduces(self, at: int) -> bool:
        """Whether a place without a preposition is followed by what stands there."""
        s = self.scanner
        if at >= len(s.tokens):
            return False
        token = s.tokens[at]
        if token.text == ":" or token.kind in ("quote", "open"):
            return True
        if token.text == "," and at + 1 < len(s.tokens):
            return s.lexicon.find(s.tokens, at + 1, ("technique",)) is not None
        if token.kind != "word":
            return False
        return bool(
            s.lexicon.find(
                s.tokens, at, ("technique", "unmarked", "number", "generic", "legibility", "role")
            )
            or s.letters.is_text(at)
            or (at - s.at > 1 and s.lexicon.find(s.tokens, at, ("device",)))
            or token.text.casefold() in _INTRODUCES
        )


def _lost_of(text: str | None, meant: str) -> bool:
    """Whether a text is the end of the word that is meant: EPOSE of DEPOSE."""
    return bool(
        text and len(text) > 2 and meant.isalpha() and meant != text and meant.endswith(text)
    )


def _both(first: Where, second: Where) -> Where:
    """A place said in two steps: "underside of stem, near bowl"."""
    if not first:
        return second
    names = [w.place or w.part or "" for w in (first, second)]
    return Where(first.part or second.part, ", ".join(names))
