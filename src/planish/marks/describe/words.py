"""Rules for words before and after marks, for unquoted letters, numbers and unknown words."""

from typing import TYPE_CHECKING

from planish.marks.describe import claims, places
from planish.marks.describe import vocabulary as v
from planish.marks.describe.draft import Draft
from planish.marks.describe.struck import is_initials
from planish.marks.observation import Case, Claim, Legibility, Style, Technique

if TYPE_CHECKING:
    from planish.marks.describe.marks import Scanner

_ENGRAVED = (Technique.ENGRAVED, Technique.SCRATCHED)
_UNITS = frozenset(
    "g gr gm gram grams kg oz ozs ozt dwt cm mm in inch inches ins ft ml cl l lb lbs pints pint high long wide".split()
)
#: words that show running text rather than a picture
_PROSE = frozenset(
    "purchased bought weight weighs weighing inch inche height collection gift presented family lot estimate provenance "
    "condition museum length total dealer sold auction sale price inherited grandmother mother thing "
    "think know help please thank identify anyone what how when made piece silver item antique vintage "
    "decorated design style overall approximate diameter wide high long measure measuring dent monogram "
    "record year century circa by maker date letter engraved handle spoon retailed possibly attributed "
    "excerpt center point pattern line read recorded same period describe described".split()
)
_FACING_START = frozenset(
    "facing looking profile right-facing left-facing laureate upside sideways turned inverted reversed".split()
)
_CONNECTORS = frozenset(("&", "*", "·", "•", "∙", "+"))
_BY = frozenset("by for maker makers firm attributed silversmith goldsmith retailer importer messrs".split())
_JOINED_IN = frozenset("of in with and a an the on from or".split())


class Words:
    """Rules for words; part of the scanner."""

    def __init__(self, scanner: "Scanner") -> None:
        self.scanner = scanner
        self.over = False  # the letters that follow stand below those before
        self.listed = False  # "W" and "P": letters of one mark

    def fresh(self) -> bool:
        """Whether a mark was made in this item, so that words can still be added to it."""
        state = self.scanner.state
        return state.current is not None and len(state.drafts) > state.item_from

    # -- phrases -------------------------------------------------------------------------------

    def phrase(self) -> bool:
        """Phrases of several words that go before single words."""
        self.listed = self.scanner.unit() == "and" and self.scanner.letter == "initials"
        return (
            self._facing() or self._over() or self._outline() or self._charge() or self._place()
        )

    def _facing(self) -> bool:
        s = self.scanner
        current = s.state.current
        token = s.token()
        if token is None or current is None or not current.device:
            return self._facing_before()
        word = token.text.casefold()
        two = (s.unit(), s.unit(1))
        starts = word in _FACING_START or two[0] in _FACING_START or two in (
            ("in", "profile"), ("to", "left"), ("to", "right"), ("to", "sinister"), ("to", "dexter")
        )  # fmt: skip
        if not starts or s.head_follows(s.at + 1):
            return self._facing_before()
        end = s.at
        while end < len(s.tokens) and s.tokens[end].kind == "word" and (
            s.tokens[end].text.casefold() in v.FACING
            or (s.tokens[end].units and all(u in v.FACING for u in s.tokens[end].units))
        ):  # fmt: skip
            end += 1
        end = max(end, s.at + 1)
        if s.tokens[end - 1].text in ("in", "the", "to"):
            end -= 1
        current.note(places.said(s.tokens, s.at, end))
        s.at = end
        return True

    def _facing_before(self) -> bool:
        """ "right-facing, standing eagle": words on posture before the picture."""
        s = self.scanner
        token = s.token()
        word = token.text.casefold() if token else ""
        if word not in ("right-facing", "left-facing", "facing", "standing", "spreadwing", "spread-wing"):
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
        if before is not None and before.text.casefold() in ("struck", "punched", "stamped"):
            s.state.pend.note("struck over another mark")
            s.at += hit[2]
            return True
        if current is None or not current.text or not self.fresh() or current.outline:
            return False
        at = s.at + hit[2]
        while at < len(s.tokens) and s.tokens[at].kind == "word" and s.tokens[at].text.casefold() in (
            "the", "date", "year", "letters", "initials", "figures", "number"
        ):  # fmt: skip
            at += 1
        if at >= len(s.tokens) or not (s.tokens[at].kind == "quote" or self.is_text(at)):
            return False
        self.over = True
        s.at = at
        return True

    def _outline(self) -> bool:
        s = self.scanner
        hit = places.outline(s.tokens, s.at, s.lexicon)
        if hit is None:
            return False
        shape, size = hit
        state = s.state
        # an outline of several punches ("in two ovals", "all in ...", "each in ...") is that of each
        several = s.all or s.tokens[s.at].text.casefold() in ("all", "each", "both")
        several = several or any(t.text.casefold() in ("separate", "surrounds") for t in s.tokens[s.at : s.at + size])
        if not self.fresh() and (state.pend.hint or s.head_follows(s.at + size)):
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
        if current is None or not self.fresh():
            return False
        before = s.token(-1)
        if before is not None and before.kind == "stop":
            return False
        hit = places.charge(
            s.tokens,
            s.at,
            s.lexicon,
            in_brackets=before is not None and before.kind == "open",
            framed=current.outline is not None,
        )
        if hit is None:
            return False
        words, size = hit
        flanked = words.casefold().startswith(("flanked", "either side", "beside"))
        if flanked and current.outline is not None:
            return False
        if current.text:
            current.note(words)
        elif s.unit() in ("with", "and"):
            return False
        else:
            current.device = f"{current.device} {words}"
        s.at += size
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
        where, size = hit
        by_word = s.unit() in v.PREPOSITIONS
        if not by_word and not self._introduces(s.at + size):
            return False
        following = s.tokens[s.at + size] if s.at + size < len(s.tokens) else None
        if before is not None and before.units[:1] == ("repeated",) and state.current:
            state.current.note(f"also {places.said(s.tokens, s.at, s.at + size)}")
        elif len(state.drafts) > state.clause_from and not (following and following.text == ":"):
            if state.pend.hint and not s.head_follows(s.at + size):
                state.flush()
            state.place_after(where)
        else:
            if following and following.text == ":" and len(state.drafts) > state.clause_from:
                if state.pend.hint is None:
                    state.end_clause()
            state.clause.where = where
        s.at += size
        return True

    def _introduces(self, at: int) -> bool:
        """Whether a place without a preposition is followed by what stands there."""
        s = self.scanner
        if at >= len(s.tokens):
            return False
        token = s.tokens[at]
        if token.text == ":" or token.kind == "quote":
            return True
        if token.kind != "word":
            return False
        return bool(
            s.lexicon.find(s.tokens, at, ("technique", "unmarked"))
            or token.text.casefold() in ("with", "has", "bears", "mark", "marks", "hallmarks", "hallmark")
        )

    # -- words before or after a mark ----------------------------------------------------------

    def count(self, times: int, size: int) -> bool:
        s = self.scanner
        state = s.state
        if s.head_follows(s.at + size) or state.current is None:
            state.pend.times = max(state.pend.times, times)
        else:
            for draft in state.targets(group=s.all):
                draft.times = max(draft.times, times)
        s.at += size
        return True

    def technique(self, technique: Technique | None, size: int) -> bool:
        s = self.scanner
        state = s.state
        said = places.said(s.tokens, s.at, s.at + size).casefold()
        started = len(state.drafts) > state.clause_from
        ahead = s.head_follows(s.at + size)
        following = s.token(size)
        if technique is None:
            if state.clause.technique in _ENGRAVED:
                state.clause.technique = None
            s.verb = True
            s.hallmarked = said in v.HALLMARKED
        elif technique in _ENGRAVED:
            if ahead or not self.fresh() or (following is not None and following.text == ":"):
                state.clause.technique = technique
                s.verb = True
            elif state.current:
                state.current.technique = technique
        elif not started and state.pend.hint is None and not (
            following is not None and s.lexicon.find(s.tokens, s.at + size, ("style", "letter"))
        ):
            state.clause.technique = technique
        elif ahead:
            state.pend.technique = technique
        else:
            for draft in state.targets(group=s.all):
                draft.technique = draft.technique or technique
        s.at += size
        return True

    def legibility(self, how: Legibility, size: int) -> bool:
        s = self.scanner
        state = s.state
        if s.head_follows(s.at + size) or state.pend.hint:
            state.pend.legibility = how
        elif state.count and not self.fresh():
            for _ in range(state.count):
                state.pend = Draft()
                state.mark(Draft(text="[---]", legibility=how, notes=["not described"]))
        elif s.all or not self.fresh() and state.expected == 0 and s.words_start("mark"):
            for draft in state.targets(group=True):
                draft.legibility = draft.legibility or how
        elif state.current is not None:
            state.current.legibility = how
        else:
            state.clause.legibility = how
        s.at += size
        return True

    def style(self, style: object, size: int) -> bool:
        s = self.scanner
        if not isinstance(style, Style):
            return False
        if s.head_follows(s.at + size) or s.state.pend.hint or not s.state.current:
            s.state.pend.style = style
        elif self.fresh():
            for draft in s.state.targets(group=s.all):
                draft.style = style
        else:
            s.state.pend.style = style
        last = s.tokens[s.at + size - 1].units
        s.at += size
        if last and last[-1] == "letter":
            s.letter = s.letter or "letter"
        return True

    def case(self, case: object, size: int) -> bool:
        s = self.scanner
        if not isinstance(case, Case):
            return False
        if s.head_follows(s.at + size) or not self.fresh():
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
        if s.tokens[at].kind == "quote" or self.is_text(at):
            end = at + 1
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

    def generic(self, said: str, size: int) -> bool:
        """A mark that is only called a mark; several may be announced before they are listed."""
        s = self.scanner
        state = s.state
        following = s.token(size)
        at, s.at = s.at, s.at + size
        s.hallmarked = s.hallmarked or "hall" in said or said == "hm"
        s.of_mark = s.unit() == "of"
        how = state.pend.legibility
        if s.of_mark or (state.pend.hint and how is None):
            return True
        listed = following is not None and following.text == ":"
        plural = s.tokens[at + size - 1].text.casefold().endswith("s")
        count = state.count or (2 if plural and how and not listed else 0)
        if self.fresh() and not state.count and how is None:
            return True
        if count > 1 or (listed and count):
            state.expected, state.expected_from = count, len(state.drafts)
            state.expected_legibility = how
            if listed and how:
                state.clause.legibility = how
            if not listed:
                state.forget()
            s.verb = True
        elif how and not s.head_follows(s.at):
            state.mark(Draft(text="[---]", notes=["not described"]))
        elif state.count == 1 and not s.head_follows(s.at):
            state.expected, state.expected_from = 1, len(state.drafts)
            state.forget()
        return True

    def device(self, size: int, label: str) -> bool:
        """A picture of the thesaurus, with the words that belong to it."""
        s = self.scanner
        state = s.state
        token = s.tokens[s.at]
        if size == 1 and token.text.isupper() and len(token.text) > 1 and not s.shouting:
            return False
        if size == 1 and len(token.text) == 1:
            return False
        end = self._of(s.at + size) if token.units[-1:] and self._head_noun(size) else s.at + size
        said = places.said(s.tokens, s.at, end)
        if end == s.at + size and label:
            said = label
        if end < len(s.tokens) and s.tokens[end].units == ("crowned",) and "crown" not in said.casefold():
            said, end = f"{said} crowned", end + 1
        s.at = end
        state.mark(Draft(device=said))
        s.reset()
        return True

    def _head_noun(self, size: int) -> bool:
        s = self.scanner
        return s.tokens[s.at + size - 1].units[-1:] in (
            ("head",), ("bust",), ("profile",), ("portrait",), ("figure",), ("face",), ("mask",)
        )  # fmt: skip

    def _of(self, at: int) -> int:
        """Where "bust of a man", "head of King George III" ends."""
        s = self.scanner
        if at >= len(s.tokens) or s.tokens[at].text != "of":
            return at
        end = at + 1
        while end < len(s.tokens) and s.tokens[end].kind == "word" and end - at < 7:
            if s.lexicon.find(s.tokens, end, ("role", "technique", "container", "legibility", "join")):
                break
            if s.tokens[end].text.casefold() in v.FACING | {"and"} and end > at + 1:
                break
            end += 1
        return end if end > at + 1 else at

    # -- letters and numbers -------------------------------------------------------------------

    def is_text(self, at: int) -> bool:
        """Whether the unquoted word at a place is struck letters."""
        s = self.scanner
        token = s.tokens[at]
        if token.kind != "word":
            return False
        text = token.text
        if any(c in text for c in "[]"):
            return True
        letters = [c for c in text if c.isalpha()]
        if not letters or text[0].isdigit() and len(letters) < 2:
            return False
        lone = len(letters) == 1 and len(text.strip(".")) == 1
        if any(c.islower() for c in letters):
            return lone and self._lone_small(at)
        if s.shouting and s.lexicon.hits(s.tokens, at) and not lone:
            return False
        if lone and text in ("A", "I") and not self._expects_letter():
            following = s.tokens[at + 1] if at + 1 < len(s.tokens) else None
            return following is None or following.kind != "word" or following.text[:1].isupper() or (
                following.text in ("in", "within", "over", "with", "&")
            ) or bool(s.lexicon.find(s.tokens, at + 1, ("style", "case", "container")))
        return not (text == "HM" and s.lexicon.find(s.tokens, at + 1, ("town",)))

    def _expects_letter(self) -> bool:
        s = self.scanner
        pend = s.state.pend
        return bool(s.letter or pend.style or pend.case or pend.hint in (v.DATE, v.MAKER))

    def _lone_small(self, at: int) -> bool:
        """A single small letter counts where a letter is expected or the item is only that."""
        s = self.scanner
        if self._expects_letter() and (s.letter or at == s.at or at == s.at + 1):
            return s.tokens[at].text not in ("a",) or s.letter != "" or self._item_is(at)
        return self._item_is(at)

    def _item_is(self, at: int) -> bool:
        s = self.scanner
        before = s.tokens[at - 1] if at else None
        after = s.tokens[at + 1] if at + 1 < len(s.tokens) else None
        starts = before is None or before.kind in ("stop", "open", "close")
        role = s.state.pend.hint == v.DATE and at == s.at
        ends = (
            after is None
            or after.kind in ("stop", "open", "close")
            or bool(s.lexicon.find(s.tokens, at + 1, ("container", "style", "case", "over")))
        )
        return (starts or role) and ends

    def letters(self) -> bool:
        """A run of unquoted letters: EPNS; W & Co EP; maker's mark Pa."""
        s = self.scanner
        state = s.state
        if s.lexicon.find(s.tokens, s.at, ("count",)) and not self.is_text(s.at):
            return False
        named = state.pend.hint in (v.MAKER, "retailer's mark") or s.verb
        engraved = s.clause_engraved() and s.verb
        end = s.at
        while end < len(s.tokens) and s.tokens[end].kind == "word":
            text = s.tokens[end].text
            if end > s.at and self._ends_run(end, engraved=engraved):
                break
            joins = end > s.at and (text in _CONNECTORS or text.casefold() in ("co", "co."))
            number = end > s.at and text[:1].isdigit()
            if not (self.is_text(end) or joins or number or (engraved and end > s.at)):
                if not (named and self._is_name(end)):
                    break
            end += 1
            if state.pend.hint == v.DATE or s.letter == "letter":
                break
        while end > s.at and s.tokens[end - 1].text in _CONNECTORS:
            end -= 1
        if end == s.at:
            return False
        said = places.said(s.tokens, s.at, end)
        if not any(c.isupper() for c in said) and len(said) > 1 and not engraved and "[" not in said:
            return False
        s.at = end
        doubted = s.token()
        if (
            state.pend.hint == v.MAKER
            and doubted is not None
            and doubted.text == "?"
            and doubted.glued
            and is_initials(said)
        ):
            said += "?"  # after a maker's initial an unread letter, not a doubt about the mark
            s.at += 1
        s.struck(said, quoted=False)
        return True

    def _ends_run(self, at: int, *, engraved: bool) -> bool:
        s = self.scanner
        if places.where(s.tokens, at, s.lexicon, bare=False) or places.outline(s.tokens, at, s.lexicon):
            return True
        if s.tokens[at].text.isupper() or engraved:
            return False
        return bool(s.lexicon.find(s.tokens, at, ("role", "technique", "over", "town")))

    def _is_name(self, at: int) -> bool:
        """A capitalised word that the context takes as struck: after "marked", "maker's mark"."""
        s = self.scanner
        token = s.tokens[at]
        if not token.text[:1].isupper():
            return False
        hit = s.lexicon.find(s.tokens, at, ("role", "device", "technique", "town", "generic", "style"))
        if hit or s.lexicon.find(s.tokens, at, ("part", "spot", "doubt", "legibility", "number")):
            return False
        if at == s.at and s.state.pend.hint and s.lexicon.find(s.tokens, at, ("maker",)):
            return s.lexicon.find(s.tokens, at, ("maker",)) is None
        return token.text.casefold() not in v.FILLERS

    def numbers(self) -> bool:
        """A number: a date claim, a struck number, or a measure that is not read."""
        s = self.scanner
        state = s.state
        token = s.token()
        if token is None:
            return False
        expects = s.letter != "" or state.pend.hint in (v.FINENESS, "pattern number", "date")
        expects = expects or state.pend.hint in ("registered design", "patent", "scratch weight")
        if not expects and (found := claims.date(s.tokens, s.at)):
            claim, size = found
            state.claim(claim)
            s.at += size
            return True
        if not token.text.lstrip("#№")[:1].isdigit():
            return False
        after = s.token(1)
        if s.lexicon.find(s.tokens, s.at, ("count", "number")) and after is not None:
            if s.lexicon.find(s.tokens, s.at, ("count",)):
                return False
            for ahead in (1, 2):
                if s.at + ahead < len(s.tokens) and s.lexicon.find(
                    s.tokens, s.at + ahead, ("generic", "part", "device")
                ):
                    return False
        if after is not None and after.kind == "word" and after.text.casefold().rstrip(".") in _UNITS:
            s.skip(2)
            return True
        known = s.lexicon.known_struck([token.text]) or token.text in v.FINENESSES
        glued = any(c.isalpha() for c in token.text)
        alone = s.starts_item() and (after is None or after.kind in ("stop", "close"))
        if expects or known or s.verb or glued or self.fresh() or alone or token.text[0] in "#№":
            end = s.at + 1
            while end < len(s.tokens) and s.tokens[end].kind == "word" and (
                self.is_text(end) or s.tokens[end].text in _CONNECTORS
                or (s.verb and s.tokens[end].text[:1].isdigit() and not claims.date(s.tokens, end))
            ):  # fmt: skip
                end += 1
            said = places.said(s.tokens, s.at, end)
            s.at = end
            s.struck(said, quoted=False)
            return True
        return False

    # -- the rest ------------------------------------------------------------------------------

    def unknown(self) -> None:
        """Words that no rule reads: a maker's name after "by", a picture, or unread."""
        s = self.scanner
        state = s.state
        before = s.token(-1)
        linked = before is not None and bool(set(before.units) & _BY)
        in_remark = before is not None and before.kind == "open"
        after_maker = in_remark and state.current is not None and state.current.hint == v.MAKER
        if (linked or after_maker) and (found := claims.name(s.tokens, s.at)):
            name, size = found
            if state.pend.hint == v.MAKER:
                state.flush()
            state.claim(Claim(about="maker", says=name))
            s.at += size
            return
        end = self._run()
        words = [t for t in s.tokens[s.at : end] if t.kind == "word"]
        following = s.tokens[end] if end < len(s.tokens) else None
        if self._is_picture(end):
            said = places.said(s.tokens, s.at, end)
            state.mark(Draft(device=said, notes=["not in the thesaurus"]))
            s.at = end
            s.reset()
            return
        describes = (
            following is not None
            and len(words) <= 2
            and s.lexicon.find(s.tokens, end, ("device",)) is not None
        )
        if describes:
            state.pend.note(places.said(s.tokens, s.at, end))
            s.at = end
            return
        s.skip(max(1, end - s.at))

    def _run(self) -> int:
        """Where the run of unknown words ends; small words between unknown ones belong to it."""
        s = self.scanner
        end = s.at + 1
        while end < len(s.tokens) and s.tokens[end].kind == "word" and end - s.at < 10:
            if places.outline(s.tokens, end, s.lexicon) or places.where(
                s.tokens, end, s.lexicon, bare=False
            ):
                break
            unit = s.tokens[end].units[0] if s.tokens[end].units else ""
            hits = s.lexicon.hits(s.tokens, end)
            senses = {k for hit in hits for k in hit.senses}
            if senses & {"role", "technique", "town", "legibility", "doubt", "partial", "count"}:
                break
            if self.is_text(end) and not s.shouting:
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

    def _is_picture(self, end: int) -> bool:
        s = self.scanner
        state = s.state
        words = s.tokens[s.at : end]
        units = {u for t in words for u in t.units}
        if units & _PROSE or len(words) > 8:
            return False
        if not any(t.text.islower() and len(t.text) > 2 and t.text.isalpha() for t in words):
            return False
        after = s.tokens[end] if end < len(s.tokens) else None
        closes = after is None or after.kind in ("stop", "close") or bool(
            s.lexicon.find(s.tokens, end, ("container", "generic", "technique"))
        ) or after.text.casefold() in ("with", "and", "on", "in")  # fmt: skip
        in_marks = bool(state.drafts or state.section.where or s.verb or state.pend.hint or s.of_mark)
        opens = s.starts_item() or s.article or s.of_mark or s.verb or bool(state.pend.hint)
        return closes and in_marks and opens and not (self.fresh() and not s.article)
