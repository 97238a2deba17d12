"""Rules for unquoted letters and numbers: EPNS; W & Co EP; maker's mark Pa; 925."""

import re
import unicodedata
from typing import TYPE_CHECKING

from msgspec.structs import replace

from planish.marks.describe import claims, places, shapes, world
from planish.marks.describe import vocabulary as v
from planish.marks.describe.draft import Draft
from planish.marks.describe.struck import WEAK, is_initials

if TYPE_CHECKING:
    from planish.marks.describe.marks import Scanner

_LONGEST_RUN = 40  # words
_MEASURE = re.compile(
    r"\d[\d.,/]*(?:g|gr|gm|kg|ozs?|ozt|dwt|cm|mm|in|ft|ml|cl|lbs?)\.?", re.IGNORECASE
)
_ORDINAL = re.compile(r"\d{1,2}(?:st|nd|rd|th)", re.IGNORECASE)
_UNITS = v.word_set(
    "g gr gm gram grams kg oz ozs ozt dwt cm mm in inch inches ins ft ml cl l lb lbs pints pint high long wide troy degrees dollars"
)
_FIRM = v.word_set("co bros ltd sons son brothers company")
_CONNECTORS = frozenset(("&", "*", "·", "•", "∙", "+", "/"))
#: what stands before the number of a registered design: Rd 631976
_REGISTERED = re.compile(r"R\.?D?\.?|REGD?\.?", re.IGNORECASE)
_DESIGN_NUMBER = re.compile(r"\d{4,7}\.?")


def is_ideograph(char: str) -> bool:
    """Whether a sign is Chinese, Japanese or Korean: in a description it is what is struck."""
    return unicodedata.name(char, "").startswith(("CJK", "HIRAGANA", "KATAKANA", "HANGUL"))


class Letters:
    """Rules for letters and numbers; part of the scanner."""

    def __init__(self, scanner: "Scanner") -> None:
        self.scanner = scanner

    def is_text(self, at: int) -> bool:
        """Whether the unquoted word at a place is struck letters."""
        s = self.scanner
        token = s.tokens[at]
        if token.kind != "word":
            return False
        text = token.text
        if any(c in text for c in "[]"):
            return True
        if text == "/":
            return False
        letters = [c for c in text if c.isalpha()]
        if not letters or (text[0].isdigit() and len(letters) < 2):
            return False
        lone = len(letters) == 1 and len(text.strip(".")) == 1
        if any(c.islower() for c in letters):
            return lone and self._lone_small(at)
        if s.shouting and not lone:
            if s.lexicon.hits(s.tokens, at):
                return False
            if not (
                self._expects_letter() or s.verb or set(text) & set("&./·") or self._item_is(at)
            ):
                return False
        if lone and text in ("A", "I") and not self._expects_letter() and not self._after_text(at):
            following = s.tokens[at + 1] if at + 1 < len(s.tokens) else None
            return (
                following is None
                or following.kind != "word"
                or following.text in _CONNECTORS
                or following.text.isupper()
                or (following.text in ("in", "within", "over", "with", "&", "monogram", "crowned"))
                or bool(s.lexicon.find(s.tokens, at + 1, ("style", "case", "container")))
            )
        after = s.tokens[at + 1] if at + 1 < len(s.tokens) else None
        if after is not None and after.text == ":" and s.lexicon.find(s.tokens, at, ("generic",)):
            return False  # a heading: MARKS:
        return not (text == "HM" and s.lexicon.find(s.tokens, at + 1, ("town",)))

    def _after_text(self, at: int) -> bool:
        """Whether the word before is struck letters too: W A."""
        before = self.scanner.tokens[at - 1] if at else None
        return (
            before is not None
            and before.kind == "word"
            and (before.text.isupper() or before.text in _CONNECTORS)
            and before.text not in ("A", "I")
        )

    def _expects_letter(self) -> bool:
        s = self.scanner
        pend = s.state.pend
        return bool(s.letter or pend.style or pend.case or pend.hint in (v.DATE, v.MAKER))

    def _lone_small(self, at: int) -> bool:
        """A single small letter counts where a letter is expected or the item is only that."""
        s = self.scanner
        if s.tokens[at].text != "a" and self._expects_letter():
            return s.letter != "" or at <= s.at + 1
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
            or (
                s.tokens[at].text != "a"
                and bool(s.lexicon.find(s.tokens, at + 1, ("container", "style", "case", "over")))
            )
        )
        return (starts or role) and ends

    def run(self) -> bool:
        """A run of unquoted letters: EPNS; W & Co EP; maker's mark Pa."""
        s = self.scanner
        state = s.state
        phrase = s.lexicon.find(s.tokens, s.at, ("order", "role", "unmarked", "count"))
        if phrase and (phrase[2] > 1 or not self.is_text(s.at)):
            return False
        untold = state.untold and not (s.verb or s.letter or state.pend.hint)
        if untold or self._claims_maker():
            return False
        named = state.pend.hint in (v.MAKER, "retailer's mark") or s.verb
        named = named and s.unit(-1) not in ("in", "at", "from", "near")
        engraved = s.strikes.engraved() and s.verb
        end = s.at
        while end < min(len(s.tokens), s.at + _LONGEST_RUN) and s.tokens[end].kind == "word":
            text = s.tokens[end].text
            if end > s.at and self._ends_run(end, engraved=engraved):
                break
            joins = end > s.at and (
                text in _CONNECTORS or text.casefold().rstrip(".") in _FIRM or self._surname(end)
            )
            number = end > s.at and text[:1].isdigit()
            known = self._known(end)
            if known > 1 and (s.verb or end > s.at or self._after_struck()):
                end += known
                continue
            struck = bool(end > s.at and known)
            taken = self.is_text(end) or joins or number or struck or (engraved and end > s.at)
            if not taken and not ((named or self._before_struck(s.at)) and self._is_name(end)):
                break
            end += 1
            if state.pend.hint == v.DATE or s.letter == "letter":
                break
        while end > s.at and s.tokens[end - 1].text in _CONNECTORS:
            end -= 1
        if end == s.at:
            return False
        said = places.said(s.tokens, s.at, end)
        if (
            not any(c.isupper() or is_ideograph(c) for c in said)
            and len(said) > 1
            and not engraved
            and "[" not in said
        ):
            return False
        s.at = end
        if self._ends_sentence(said):
            s.strikes.struck(said.rstrip("."), quoted=False)
            state.end_sentence()
            s.break_at = s.at
            return True
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
        s.strikes.struck(said, quoted=False)
        return True

    def registered(self) -> bool:
        """The number of a registered design, with what stands before it: Rd 631976, R 616320."""
        s = self.scanner
        token, after = s.token(), s.token(1)
        if token is None or after is None or after.kind != "word":
            return False
        if not (_REGISTERED.fullmatch(token.text) and _DESIGN_NUMBER.fullmatch(after.text)):
            return False
        if s.state.untold or (token.text in "Rr" and len(after.text.strip(".")) < 5):
            return False
        draft = s.state.mark(Draft(text=f"{token.text} {after.text.strip('.')}"))
        if token.text not in "Rr":
            draft.hint = draft.hint or "registered design"
        s.end_mark(s.at + 2)
        return True

    def _surname(self, at: int) -> bool:
        """Whether a name goes on after initials: J. B. & S. M. Knowles."""
        s = self.scanner
        before = s.tokens[at - 1].text
        return len(before) == 2 and before[0].isupper() and before[1] == "." and self._is_name(at)

    def _claims_maker(self) -> bool:
        """Whether a person's name follows "by", "mark of", "mark for"."""
        s = self.scanner
        link = s.unit(-1)
        if link not in ("by", "for", "of"):
            return False
        found = claims.name(s.tokens, s.at)
        return (
            found is not None
            and found[1] > 1
            and any(c.islower() for c in found[0])
            and (link == "by" or s.state.pend.hint == v.MAKER)
        )

    def _known(self, at: int) -> int:
        """How many words from here are a known struck wording, the first with a capital."""
        s = self.scanner
        if not s.tokens[at].text[:1].isupper():
            return 0
        words: list[str] = []
        best = 0
        for token in s.tokens[at : at + s.lexicon.longest_struck]:
            if token.kind != "word":
                break
            words.append(token.text)
            if s.lexicon.known_struck(words):
                best = len(words)
        return best

    def _after_struck(self) -> bool:
        s = self.scanner
        return s.fresh() and s.state.current is not None and s.state.current.text is not None

    def _before_struck(self, at: int) -> bool:
        """Whether capitalised words lead to a struck one: Towle Sterling."""
        s = self.scanner
        if s.shouting:
            return False
        for end in range(at, min(at + 5, len(s.tokens))):
            token = s.tokens[end]
            if token.kind != "word" or not (token.text[:1].isupper() or token.text == "&"):
                return False
            if end > at and token.text.upper() not in WEAK and (known := self._known(end)):
                after = s.tokens[end + known] if end + known < len(s.tokens) else None
                return after is None or not after.text[:1].islower()
        return False

    def _ends_sentence(self, said: str) -> bool:
        """Whether the stop after a lone capital ends the sentence: "a crowned C. Charge mark"."""
        s = self.scanner
        after = s.token()
        return (
            len(said) == 2
            and said[1] == "."
            and after is not None
            and after.text[:1].isupper()
            and bool(s.lexicon.find(s.tokens, s.at, ("role", "technique", "spot", "part", "prep")))
        )

    def _ends_run(self, at: int, *, engraved: bool) -> bool:
        s = self.scanner
        if places.where(s.tokens, at, s.lexicon, bare=False) or shapes.outline(
            s.tokens, at, s.lexicon
        ):
            return True
        if s.tokens[at].text.casefold() == "or":
            return True
        if engraved:
            style = s.tokens[at].text == "in" and s.lexicon.find(s.tokens, at + 1, ("style",))
            return bool(style or s.lexicon.find(s.tokens, at, ("letter",)))
        if s.tokens[at].text.isupper():
            role = s.lexicon.find(s.tokens, at, ("role",))
            return role is not None and role[2] > 1
        hit = s.lexicon.find(s.tokens, at, ("role", "technique", "over", "town"))
        capital = s.tokens[at].text[:1].isupper() and s.tokens[at - 1].text[:1].isupper()
        return hit is not None and not (hit[0] == "role" and hit[2] == 1 and capital)

    def _is_name(self, at: int) -> bool:
        """A capitalised word that the context takes as struck: after "marked", "maker's mark"."""
        s = self.scanner
        token = s.tokens[at]
        if not token.text[:1].isupper():
            return False
        if s.lexicon.find(s.tokens, at, ("filler",)) and not self._known(at):
            return False
        hit = s.lexicon.find(
            s.tokens, at, ("role", "device", "technique", "town", "generic", "style")
        )
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
        number = token.text[:1].isdigit()
        if not (expects and number) and (found := claims.date(s.tokens, s.at)):
            claim, size = found
            state.claim(replace(claim, doubtful=claim.doubtful or state.pend.doubtful))
            state.pend.doubtful = False
            s.at += size
            return True
        if not token.text.lstrip("#№.")[:1].isdigit():
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
        unit = (
            after.text.casefold().rstrip(".") if after is not None and after.kind == "word" else ""
        )
        framed = unit == "in" and shapes.outline(s.tokens, s.at + 1, s.lexicon)
        unit = "" if framed else unit  # 800 in an oval
        if not s.strikes.engraved() and (unit in _UNITS or _MEASURE.fullmatch(token.text)):
            s.skip(2 if unit in _UNITS else 1)
            return True
        if _ORDINAL.fullmatch(token.text):
            s.mark_end += s.mark_end == s.at  # "Minerva 1st standard mark"
            s.at += 1
            return True
        known = s.lexicon.known_struck([token.text]) or token.text in world.FINENESSES
        glued = any(c.isalpha() for c in token.text)
        alone = (
            (state.listed or after is None or after.kind != "word")
            and s.starts_item()
            and (state.listed or after is None or after.kind in ("stop", "close"))
        )
        if unit.startswith(("zolotnik", "lot", "loth", "löth")) and not unit.startswith("lots"):
            state.pend.hint = v.FINENESS
            s.at += 1
            s.strikes.struck(token.text, quoted=False)
            s.at += 1
            return True
        if expects or known or s.verb or glued or s.fresh() or alone or token.text[0] in "#№":
            end = s.at + 1
            while end < len(s.tokens) and s.tokens[end].kind == "word" and (
                self.is_text(end) or s.tokens[end].text in _CONNECTORS
                or (s.verb and s.tokens[end].text[:1].isdigit() and not claims.date(s.tokens, end))
            ):  # fmt: skip
                end += 1
            said = places.said(s.tokens, s.at, end)
            s.at = end
            s.strikes.struck(said, quoted=False)
            return True
        return False
