"""Tokens -> marks: one walk from left to right, the longest known phrase at each word.

Words before a mark wait for it ("script letter k"); words after it are given to it ("in an oval",
"[worn]"). What no rule reads goes to ``unread``.
"""

from collections.abc import Sequence

from planish.marks.describe import places, shapes
from planish.marks.describe import vocabulary as v
from planish.marks.describe.letters import Letters
from planish.marks.describe.lexicon import Lexicon
from planish.marks.describe.modifiers import Modifiers
from planish.marks.describe.pictures import Pictures
from planish.marks.describe.senses import Senses
from planish.marks.describe.state import State
from planish.marks.describe.story import told
from planish.marks.describe.strikes import Strikes
from planish.marks.describe.struck import is_initials
from planish.marks.describe.tokens import Token, tokenize
from planish.marks.describe.towns import Towns
from planish.marks.describe.unknown import Unknown
from planish.marks.describe.words import Words


class Scanner:
    """Reads one description. ``run`` fills ``state``."""

    def __init__(self, text: str, lexicon: Lexicon) -> None:
        self.text = text
        self.lexicon = lexicon
        self.tokens: Sequence[Token] = tokenize(text)
        self.at = 0
        self.state = State()
        self.verb = False  # a verb such as "marked" was just read: what follows is struck
        self.hallmarked = False  # ... and it says hallmark
        self.letter = ""  # "letter", "initials" was just read
        self.all = False  # "all", "each" was just read
        self.article = False
        self.of_mark = False  # "mark of", "arms of" was just read
        self.break_at = -1  # where a sentence began without a stop of its own
        self.role_end = -1  # where the words of the last role ended
        self.mark_end = -1  # where the words of the last mark ended
        self.shouting = not any(c.islower() for c in text) and self._speaks()
        self.letters = Letters(self)
        self.modifiers = Modifiers(self)
        self.strikes = Strikes(self)
        self.senses = Senses(self)
        self.pictures = Pictures(self)
        self.unknown = Unknown(self)
        self.words = Words(self)
        self.towns = Towns(self)

    def _speaks(self) -> bool:
        """Whether a text all in capitals describes marks, rather than being struck itself."""
        for at in range(len(self.tokens)):
            for hit in self.lexicon.hits(self.tokens, at):
                if {"role", "technique", "generic"} & hit.senses.keys():
                    return True
                if "device" in hit.senses and hit.length > 1:
                    return True
        return False

    # -- helpers -------------------------------------------------------------------------------

    def token(self, offset: int = 0) -> Token | None:
        """The token here or beside, None beyond the ends."""
        at = self.at + offset
        return self.tokens[at] if 0 <= at < len(self.tokens) else None

    def unit(self, offset: int = 0) -> str:
        """The first folded unit of the word here or beside."""
        token = self.token(offset)
        return token.units[0] if token and token.kind == "word" and token.units else ""

    def span(self, size: int) -> tuple[int, int]:
        """Place of the next tokens in the text."""
        return self.tokens[self.at].start, self.tokens[self.at + size - 1].end

    def skip(self, size: int) -> None:
        """Put words aside as not understood."""
        self.state.spans.append(self.span(size))
        self.at += size

    def fresh(self) -> bool:
        """Whether a mark was made in this item, so that words can still be added to it."""
        return self.state.current is not None and len(self.state.drafts) > self.state.item_from

    def in_clause(self) -> bool:
        """Whether a mark was made in this clause."""
        return self.state.current is not None and len(self.state.drafts) > self.state.clause_from

    def starts_item(self) -> bool:
        """Whether nothing was said since the last stop or bracket."""
        before = self.token(-1)
        if before is None or self.at == self.break_at:
            return True
        return before.kind in ("stop", "open") or before.units == ("then",)

    def starts_at(self, at: int) -> bool:
        """Whether nothing stands before a token since the last stop or bracket."""
        return at == 0 or self.tokens[at - 1].kind in ("stop", "open")

    def head_follows(self, start: int) -> bool:
        """Whether a mark is still to come in this item."""
        for at in range(start, min(start + 14, len(self.tokens))):
            token = self.tokens[at]
            if token.kind in ("stop", "close") or token.text == "and":
                return False
            if token.kind == "quote":
                return True
            if token.kind != "word":
                continue
            if shapes.outline(self.tokens, at, self.lexicon) or places.where(
                self.tokens, at, self.lexicon, bare=False
            ):
                return False
            if self.lexicon.find(self.tokens, at, ("role", "device")) or self.letters.is_text(at):
                return True
            if self.lexicon.find(self.tokens, at, ("generic",)):
                return True
            letter = self.lexicon.find(self.tokens, at, ("letter",))
            after = self.tokens[at + letter[2] :][:1] if letter else ()
            if any(len(t.text) == 1 and t.text.isalpha() for t in after):
                return True
        return False

    def words_start(self, unit: str) -> bool:
        """Whether the item began with this word."""
        at = self.at - 1
        while at >= 0 and self.tokens[at].kind == "word":
            if unit in self.tokens[at].units:
                return True
            at -= 1
        return False

    def end_mark(self, at: int) -> None:
        """A mark has been read up to a token."""
        self.at = self.mark_end = at
        self.reset()

    def reset(self) -> None:
        """Forget what was said just before."""
        self.verb = self.hallmarked = self.all = self.article = self.of_mark = False
        self.letter = ""

    # -- the walk ------------------------------------------------------------------------------

    def run(self) -> State:
        """Read all tokens."""
        self.hear(0)
        while self.at < len(self.tokens):
            before = self.at
            token = self.tokens[self.at]
            if token.kind == "stop":
                self.stop(token)
            elif token.kind == "open":
                self.open()
            elif token.kind == "close":
                self.close()
            elif token.kind == "quote":
                self.quote(token)
            elif token.text == "/":
                self.state.end_item()
                self.at += 1
            else:
                self.word()
            if self.at <= before:  # no rule may stand still
                self.skip(1)
        self.state.end_sentence()
        return self.state

    def hear(self, at: int) -> None:
        """What kind of sentence begins at a token."""
        heard = told(self.tokens, at, self.lexicon)
        self.state.story = heard.story
        self.state.listed = self.state.listed or heard.listed

    def stop(self, token: Token) -> None:
        """At a stop: what ends here."""
        state = self.state
        match token.text:
            case "?":
                if state.pend.hint and not (state.current and token.glued and not state.pend_spans):
                    state.pend.doubtful = True
                else:
                    state.doubt_last()
                self.at += 1
                return
            case ":":
                state.header()
                self.letter = ""
            case ",":
                if not (state.pend.hint and self.list_goes_on()):
                    state.end_item()
                self.letter = ""
            case "#":
                state.item_number()
            case ";":
                state.end_clause()
            case _:
                state.end_sentence()
                self.hear(self.at + 1)
        verb, hallmarked = self.verb, self.hallmarked
        self.reset()
        if token.text in ":,":
            self.verb, self.hallmarked = verb and token.text == ":", hallmarked
        self.at += 1

    def list_goes_on(self) -> bool:
        """Whether the mark of a role comes after the comma: "town mark, London", "..., in script:"."""
        start = self.at + 1
        hint = self.state.pend.hint
        following = self.tokens[start] if start < len(self.tokens) else None
        if hint == v.TOWN and self.lexicon.find(self.tokens, start, ("town",)):
            return True
        if following is None:
            return False
        if hint in (v.TOWN, v.DUTY, "assay mark", "discharge mark", "charge mark") and (
            following.text in ("a", "an")
        ):
            return True
        if following.kind == "quote" and hint in {v.MAKER, v.DATE, "retailer's mark"}:
            return hint != v.DATE or len(following.text) == 1
        if hint == v.MAKER and self.at > self.role_end and self.letters.is_text(start):
            return is_initials(following.text)
        if self.lexicon.find(self.tokens, start, ("doubt",)):
            return True
        if self.state.plural and self.state.pend.hint == v.MAKER:
            return True
        for at in range(start, min(start + 14, len(self.tokens))):
            token = self.tokens[at]
            if token.kind == "stop":
                return token.text == ":" and at > start
            if token.kind == "quote" or self.lexicon.find(self.tokens, at, ("role", "device")):
                return False
        return False

    def open(self) -> None:
        """A remark in brackets begins."""
        if self.strikes.between() or self.words.means():
            return
        self.state.remark += 1
        self.state.remark_from = len(self.state.drafts)
        self.reset()
        self.at += 1

    def close(self) -> None:
        """A remark ends."""
        self.state.remark = max(0, self.state.remark - 1)
        following = self.token(1)
        goes_on = following is not None and (
            following.text == ":" or following.kind == "quote" or self.letters.is_text(self.at + 1)
        )
        if self.state.pend.hint and not goes_on:
            self.state.end_item()
        self.at += 1

    def quote(self, token: Token) -> None:
        """A text between quotation marks is struck."""
        self.at += 1
        self.strikes.struck(token.text, quoted=True)

    # -- words ---------------------------------------------------------------------------------

    def word(self) -> None:
        """Read the longest phrase at a word."""
        for rule in (
            self.words.phrase,
            self.towns.read,
            self.letters.numbers,
            self.letters.registered,
            self.letters.run,
        ):
            if rule():
                return
        if not self.senses.read():
            self.unknown.read()
