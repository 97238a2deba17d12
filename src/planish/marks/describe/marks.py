"""Tokens -> marks: one walk from left to right, the longest known phrase at each word.

Words before a mark wait for it ("script letter k"); words after it are given to it ("in an oval",
"[worn]"). What no rule reads goes to ``unread``.
"""

from collections.abc import Sequence

from planish.marks.describe import claims, places
from planish.marks.describe import vocabulary as v
from planish.marks.describe.draft import Draft
from planish.marks.describe.lexicon import Lexicon
from planish.marks.describe.state import Scope, State
from planish.marks.describe.struck import is_initials, split
from planish.marks.describe.tokens import Token, tokenize
from planish.marks.describe.towns import Towns
from planish.marks.describe.words import Words
from planish.marks.observation import Claim, Legibility, Search, Technique

_STOPS = frozenset(",;.:#")
_ENGRAVED = (Technique.ENGRAVED, Technique.SCRATCHED)
_ARTICLES = frozenset(("a", "an", "the", "one", "another"))
#: order in which the senses of one phrase are tried
_SENSES = (
    "unmarked", "partial", "role", "device", "town", "count", "technique", "legibility", "style",
    "case", "joined", "doubt", "or", "negation", "letter", "generic", "maker", "period", "metal",
    "number", "country", "filler",
)  # fmt: skip


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
        self.shouting = not any(c.islower() for c in text)
        self.words = Words(self)
        self.towns = Towns(self)

    # -- helpers -------------------------------------------------------------------------------

    def token(self, offset: int = 0) -> Token | None:
        at = self.at + offset
        return self.tokens[at] if 0 <= at < len(self.tokens) else None

    def unit(self, offset: int = 0) -> str:
        token = self.token(offset)
        return token.units[0] if token and token.kind == "word" and token.units else ""

    def span(self, size: int) -> tuple[int, int]:
        return self.tokens[self.at].start, self.tokens[self.at + size - 1].end

    def skip(self, size: int) -> None:
        """Put words aside as not understood."""
        self.state.spans.append(self.span(size))
        self.at += size

    def starts_item(self) -> bool:
        """Whether nothing was said since the last stop or bracket."""
        before = self.token(-1)
        return before is None or before.kind in ("stop", "open")

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
            if places.outline(self.tokens, at, self.lexicon) or places.where(
                self.tokens, at, self.lexicon, bare=False
            ):
                return False
            if self.lexicon.find(self.tokens, at, ("role", "device")) or self.words.is_text(at):
                return True
            if self.lexicon.find(self.tokens, at, ("generic",)) and at > start:
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

    def reset(self) -> None:
        self.verb = self.hallmarked = self.all = self.article = self.of_mark = False
        self.letter = ""

    # -- the walk ------------------------------------------------------------------------------

    def run(self) -> State:
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
            else:
                self.word()
            if self.at <= before:  # no rule may stand still
                self.skip(1)
        self.state.end_sentence()
        return self.state

    def stop(self, token: Token) -> None:
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
                state.end_item()
                state.current = None
            case ";":
                state.end_clause()
            case _:
                state.end_sentence()
        verb, hallmarked = self.verb, self.hallmarked
        self.reset()
        if token.text in ":,":
            self.verb, self.hallmarked = verb and token.text == ":", hallmarked
        self.at += 1

    def list_goes_on(self) -> bool:
        """Whether the mark of a role comes after the comma: "town mark, London", "..., in script:"."""
        start = self.at + 1
        if self.state.pend.hint == v.TOWN and self.lexicon.find(self.tokens, start, ("town",)):
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
        self.state.remark += 1
        self.state.remark_open = True
        self.reset()
        self.at += 1

    def close(self) -> None:
        self.state.remark = max(0, self.state.remark - 1)
        if self.state.pend.hint and self.state.current is None:
            self.state.flush()
        elif self.state.pend.hint:
            self.state.end_item()
        self.at += 1

    def quote(self, token: Token) -> None:
        self.at += 1
        self.struck(token.text, quoted=True)

    # -- struck text ---------------------------------------------------------------------------

    def struck(self, text: str, *, quoted: bool) -> None:
        """Marks of a struck text; they take what was said before them."""
        state = self.state
        if self.clause_engraved() and not state.pend.hint == v.MAKER:
            self.inscription(text)
            return
        pieces = split(text, self.lexicon)
        if quoted and len(pieces) == 1 and pieces[0].text and self.quoted_device(text):
            return
        hint, plural = state.pend.hint, state.plural
        for piece in pieces:
            if piece.remark:
                self.remark(piece.remark)
                continue
            if self.joins(piece.text):
                continue
            draft = state.mark(Draft(text=piece.text))
            if plural and draft.hint is None and hint == v.MAKER:
                draft.hint = hint
        if not pieces:
            state.spans.append((self.tokens[self.at - 1].start, self.tokens[self.at - 1].end))
        if plural and hint == v.MAKER:
            state.clause.hint = hint
        state.plural = False
        self.reset()

    def quoted_device(self, text: str) -> bool:
        """Quotation marks round a picture in words: "walking lion"."""
        if text.isupper() or not any(c.islower() for c in text):
            return False
        inner = tokenize(text)
        hit = self.lexicon.find(inner, 0, ("device",)) if inner else None
        if not hit or hit[2] != len(inner) or (len(inner) == 1 and text[0].isupper()):
            return False
        self.state.mark(Draft(device=str(hit[1]) or text))
        self.reset()
        return True

    def remark(self, text: str) -> None:
        """Bracketed words inside a struck text: pictures, or how it is written."""
        outer, self.tokens, at, self.at = self.tokens, tokenize(text), self.at, 0
        spans = len(self.state.spans)
        while self.at < len(self.tokens):
            before = self.at
            token = self.tokens[self.at]
            if token.kind == "word":
                self.word()
            elif token.kind == "quote":
                self.quote(token)
            elif token.text in ",;":
                self.state.end_item()
                self.at += 1
            else:
                self.at += 1
            self.at = max(self.at, before + 1)
        if len(self.state.spans) > spans:
            del self.state.spans[spans:]
            if self.state.current:
                self.state.current.note(text)
        self.tokens, self.at = outer, at

    def joins(self, text: str) -> bool:
        """Letters over letters ("TE over GS"), initials over a year, P & B in three punches."""
        state = self.state
        current = state.current
        if current is None or not current.text or state.pend.hint not in (None, "date"):
            return False
        before = self.words.over
        self.words.over = False
        if before and is_initials(current.text) and (is_initials(text) or self.is_year(text)):
            current.text += f"/{text}"
            state.forget()
            return True
        if self.letter == "initials" and self.words.listed and len(text) == 1:
            current.text += f" {text}"
            return True
        if text == "&" or current.text.endswith(" &"):
            current.text += f" {text}"
            return True
        return False

    @staticmethod
    def is_year(text: str) -> bool:
        return len(text) == 4 and text.isdigit() and 1300 <= int(text) <= 2049

    def clause_engraved(self) -> bool:
        state = self.state
        technique = state.pend.technique or state.clause.technique or state.section.technique
        return technique in _ENGRAVED

    def inscription(self, text: str) -> None:
        """Engraved words are kept whole; too long for a mark, they are a note."""
        draft = Draft(text=text)
        if draft.finish() is None:
            self.state.claim(Claim(about="note", says=f"engraved: {text}"))
            self.state.forget()
        else:
            self.state.mark(draft)
        self.reset()

    # -- words ---------------------------------------------------------------------------------

    def word(self) -> None:
        """Read the longest phrase at a word."""
        for rule in (self.words.phrase, self.towns.read, self.words.numbers, self.words.letters):
            if rule():
                return
        for hit in self.lexicon.hits(self.tokens, self.at):
            for sense in _SENSES:
                if sense in hit.senses and self.sense(sense, hit.senses[sense], hit.length):
                    return
        self.words.unknown()

    def sense(self, sense: str, value: object, size: int) -> bool:
        """Act on one sense of the phrase here; False where it does not fit."""
        method = getattr(self, f"_{sense}", None)
        return bool(method and method(value, size))

    def _unmarked(self, value: object, size: int) -> bool:
        place = self.state.clause.where.place or self.state.clause.where.part or "piece"
        self.state.searched.append(Search(place=place, found=False, note=str(value)))
        self.at += size
        return True

    def _partial(self, value: object, size: int) -> bool:
        del value
        self.state.partial = True
        self.at += size
        return True

    def _negation(self, value: object, size: int) -> bool:
        role = self.lexicon.find(self.tokens, self.at + size, ("role", "device", "generic"))
        if role is None or value == "not":
            return False
        end = self.at + size + role[2]
        said = places.said(self.tokens, self.at, end)
        place = self.state.clause.where.place or self.state.clause.where.part or "piece"
        self.state.searched.append(Search(place=place, found=False, note=said))
        self.at = end
        return True

    def _role(self, value: object, size: int) -> bool:
        state, hint = self.state, str(value)
        last = self.tokens[self.at + size - 1].text.casefold()
        plural = last.endswith("s") and not last.endswith(("'s", "ss"))
        current = state.current
        after = self.head_follows(self.at + size)
        glued = not self.starts_item() and len(state.drafts) > state.item_from
        before = self.token(-1)
        direct = before is not None and before.kind in ("quote", "word") and self.words.fresh()
        if current and current.hint is None and not after and state.pend.hint is None:
            in_remark = state.remark and before is not None and before.kind == "open"
            if in_remark or (direct and glued):
                current.hint = hint
                self.at += size
                state.pend = Draft(legibility=state.pend.legibility, doubtful=state.pend.doubtful)
                current.take(state.pend)
                state.pend = Draft()
                self.of_mark = True
                return True
        state.role(hint, self.span(size), plural=plural)
        self.at += size
        self.of_mark = True
        return True

    def _device(self, value: object, size: int) -> bool:
        return self.words.device(size, str(value))

    def _count(self, value: object, size: int) -> bool:
        return self.words.count(int(str(value)), size)

    def _technique(self, value: object, size: int) -> bool:
        return self.words.technique(Technique(str(value)) if value else None, size)

    def _legibility(self, value: object, size: int) -> bool:
        return self.words.legibility(Legibility(str(value)), size)

    def _style(self, value: object, size: int) -> bool:
        return self.words.style(value, size)

    def _case(self, value: object, size: int) -> bool:
        return self.words.case(value, size)

    def _joined(self, value: object, size: int) -> bool:
        current = self.state.current
        if self.head_follows(self.at + size) or current is None:
            self.state.pend.note(str(value))
        else:
            current.note(str(value))
        self.at += size
        return True

    def _doubt(self, value: object, size: int) -> bool:
        del value
        state = self.state
        if self.head_follows(self.at + size) or not (state.current or state.claims):
            state.pend.doubtful = True
        else:
            state.doubt_last()
        self.at += size
        return True

    def _or(self, value: object, size: int) -> bool:
        return self.words.alternative(str(value), size)

    def _letter(self, value: object, size: int) -> bool:
        self.letter = "initials" if "initial" in str(value) or "letters" in self.tokens[
            self.at + size - 1
        ].text.casefold() else "letter"
        if self.state.current and self.words.fresh() and str(value).startswith("monogram"):
            self.state.current.note("monogram")
        self.at += size
        return True

    def _generic(self, value: object, size: int) -> bool:
        return self.words.generic(str(value), size)

    def _maker(self, value: object, size: int) -> bool:
        said = places.said(self.tokens, self.at, self.at + size)
        if said.islower() or (said.isupper() and not self.shouting) or self.verb:
            return False
        self.state.claim(Claim(about="maker", says=str(value)))
        self.at += size
        return True

    def _period(self, value: object, size: int) -> bool:
        if not isinstance(value, tuple):
            return False
        said = places.said(self.tokens, self.at, self.at + size)
        self.state.claim(Claim(about="date", says=said, year_from=value[0], year_to=value[1]))
        self.at += size
        return True

    def _metal(self, value: object, size: int) -> bool:
        said = places.said(self.tokens, self.at, self.at + size)
        if self.verb:
            self.at += size
            self.struck(said, quoted=False)
            return True
        self.state.claim(Claim(about="metal", says=str(value)))
        self.at += size
        return True

    def _number(self, value: object, size: int) -> bool:
        self.state.count = int(str(value))
        self.article = True
        self.at += size
        return True

    def _country(self, value: object, size: int) -> bool:
        del value
        said = places.said(self.tokens, self.at, self.at + size)
        if said.islower():
            return False
        last = self.state.claims[-1] if self.state.last_claim and self.state.claims else None
        if last and last.about == "place":
            self.state.claims[-1] = Claim(
                about="place", says=f"{last.says}, {said}", doubtful=last.doubtful
            )
        else:
            self.state.claim(Claim(about="place", says=said))
        self.at += size
        return True

    def _filler(self, value: object, size: int) -> bool:
        word = str(value)
        self.all = word in ("all", "each", "both")
        self.article = word in _ARTICLES
        if word != "of" and word not in ("for", "the", "city"):
            self.of_mark = False
        if word == "and" and self.state.pend.hint and not self.letter:
            self.state.end_item()
        self.at += size
        return True


__all__ = ["Scanner", "Scope"]
