"""Tokens -> marks: one walk from left to right, the longest known phrase at each word.

Words before a mark wait for it ("script letter k"); words after it are given to it ("in an oval",
"[worn]"). What no rule reads goes to ``unread``.
"""

from collections.abc import Sequence

from planish.marks.describe import claims, places
from planish.marks.describe import vocabulary as v
from planish.marks.describe.draft import Draft
from planish.marks.describe.letters import Letters
from planish.marks.describe.lexicon import Lexicon
from planish.marks.describe.pictures import Pictures
from planish.marks.describe.state import State
from planish.marks.describe.struck import is_initials
from planish.marks.describe.tokens import Token, tokenize
from planish.marks.describe.towns import Towns
from planish.marks.describe.words import Words
from planish.marks.observation import Claim, Legibility, Search, Technique

_ENGRAVED = (Technique.ENGRAVED, Technique.SCRATCHED)
_TELLS = v.word_set("has have bears bearing there show shows showing see found contains")
_ARTICLES = frozenset(("a", "an", "the", "one", "another"))
#: order in which the senses of one phrase are tried
_SENSES = (
    "unmarked", "partial", "role", "period", "device", "town", "count", "technique", "legibility",
    "style", "case", "joined", "doubt", "or", "negation", "letter", "generic", "maker", "metal",
    "number", "country", "filler", "part",
)  # fmt: skip


def after_mark_word(tokens: Sequence[Token], at: int) -> bool:
    """Whether a colon or quotation follows, so that what comes is struck."""
    return at < len(tokens) and (tokens[at].kind == "quote" or tokens[at].text == ":")


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
        self.pictures = Pictures(self)
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
            if self.lexicon.find(self.tokens, at, ("role", "device")) or self.letters.is_text(at):
                return True
            if self.lexicon.find(self.tokens, at, ("generic",)):
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
            elif token.text == "/":
                self.state.end_item()
                self.at += 1
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
                state.item_number()
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
        if hint in (v.MAKER, v.DATE, "retailer's mark") and self.at > self.role_end:
            if following.kind == "quote":
                return hint != v.DATE or len(following.text) == 1
            if hint == v.MAKER and self.letters.is_text(start) and is_initials(following.text):
                return True
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
        if self.letters.between():
            return
        self.state.remark += 1
        self.state.remark_from = len(self.state.drafts)
        self.reset()
        self.at += 1

    def close(self) -> None:
        self.state.remark = max(0, self.state.remark - 1)
        following = self.token(1)
        if self.state.pend.hint and not (following is not None and following.text == ":"):
            self.state.end_item()
        self.at += 1

    def quote(self, token: Token) -> None:
        self.at += 1
        self.letters.struck(token.text, quoted=True)

    # -- words ---------------------------------------------------------------------------------

    def word(self) -> None:
        """Read the longest phrase at a word."""
        for rule in (self.words.phrase, self.towns.read, self.letters.numbers, self.letters.run):
            if rule():
                return
        for hit in self.lexicon.hits(self.tokens, self.at):
            for sense in _SENSES:
                if sense in hit.senses and self.sense(sense, hit.senses[sense], hit.length):
                    return
        self.pictures.unknown()

    def sense(self, sense: str, value: object, size: int) -> bool:
        """Act on one sense of the phrase here; False where it does not fit."""
        method = getattr(self, f"_{sense}", None)
        return bool(method and method(value, size))

    def _unmarked(self, value: object, size: int) -> bool:
        del value
        self.not_found(self.at + size)
        return True

    def not_found(self, end: int) -> None:
        """A place that was looked at in vain; it may be named before or after."""
        said = places.said(self.tokens, self.at, end)
        self.at = end
        clause = self.state.clause.where
        place = clause.place or clause.part or "piece"
        after = places.where(self.tokens, end, self.lexicon, bare=False) if self.token() else None
        if after:
            place = after[0].place or after[0].part or place
            self.at += after[1]
        self.state.searched.append(Search(place=place, found=False, note=said))

    def _partial(self, value: object, size: int) -> bool:
        del value
        self.state.partial = True
        self.at += size
        return True

    def _negation(self, value: object, size: int) -> bool:
        role = self.lexicon.find(self.tokens, self.at + size, ("role", "device", "generic"))
        if role is None or value == "not":
            return False
        self.not_found(self.at + size + role[2])
        return True

    def _role(self, value: object, size: int) -> bool:
        state, hint = self.state, str(value)
        last = self.tokens[self.at + size - 1].text.casefold()
        plural = last.endswith("s") and not last.endswith(("'s", "ss"))
        current = state.current
        after = self.head_follows(self.at + size)
        direct = self.at == self.mark_end and self.fresh()
        if hint == v.PSEUDO and plural and not after and len(state.drafts) > state.clause_from:
            for draft in state.drafts[state.clause_from :]:
                draft.hint = draft.hint or hint
            self.at += size
            return True
        if current and current.hint is None and not after and state.pend.hint is None:
            in_remark = state.remark and len(state.drafts) == state.remark_from
            if in_remark or direct:
                current.hint = hint
                self.at += size
                state.pend = Draft(legibility=state.pend.legibility, doubtful=state.pend.doubtful)
                current.take(state.pend)
                state.pend = Draft()
                self.of_mark = True
                return True
        if hint != v.OWNER and state.clause.technique in _ENGRAVED:
            state.clause.technique = None
        bare = self.tokens[self.at + size - 1].units[-1:] in (("maker",), ("sponsor",))
        if bare and not after_mark_word(self.tokens, self.at + size) and self.named_maker(size):
            return True
        state.told = True
        state.role(hint, self.span(size), plural=plural)
        self.at += size
        self.role_end = self.at
        self.of_mark = True
        return True

    def named_maker(self, size: int) -> bool:
        """ "maker John Smith" claims who made it; "maker TE" gives the mark."""
        found = claims.name(self.tokens, self.at + size)
        if found is None or found[1] < 2 or not any(c.islower() for c in found[0]):
            return False
        if any(self.lexicon.known_struck([word]) for word in found[0].split()):
            return False
        self.state.claim(Claim(about="maker", says=found[0]))
        self.at += size + found[1]
        return True

    def _device(self, value: object, size: int) -> bool:
        return self.pictures.device(size, str(value))

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
        start = self.at + size
        claim = start < len(self.tokens) and (
            claims.date(self.tokens, start)
            or self.lexicon.find(self.tokens, start, ("town", "maker"))
        )
        if claim or self.head_follows(start) or not (state.current or state.claims):
            state.pend.doubtful = True
        else:
            state.doubt_last()
        self.at += size
        return True

    def _or(self, value: object, size: int) -> bool:
        return self.words.alternative(str(value), size)

    def _letter(self, value: object, size: int) -> bool:
        self.letter = (
            "initials"
            if "initial" in str(value)
            or "letters" in self.tokens[self.at + size - 1].text.casefold()
            else "letter"
        )
        said = str(value)
        self.at += size
        if said.startswith(("monogram", "cipher", "cypher", "conjoined")):
            if self.fresh() and not self.head_follows(self.at):
                if self.state.current:
                    self.state.current.note("monogram")
            elif not self.head_follows(self.at):
                self.state.mark(Draft(text="[---]", notes=["monogram"]))
            else:
                self.state.pend.note("monogram")
        elif self.state.pend.legibility and not self.head_follows(self.at):
            self.state.mark(Draft(text="[---]", notes=["not described"]))
        return True

    def _generic(self, value: object, size: int) -> bool:
        return self.pictures.generic(str(value), size)

    def _maker(self, value: object, size: int) -> bool:
        said = places.said(self.tokens, self.at, self.at + size)
        if said.islower() or (said.isupper() and not self.shouting) or self.verb:
            return False
        longer = claims.name(self.tokens, self.at)
        if longer and longer[1] > size:
            value, size = longer
        if self.state.pend.hint == v.MAKER:
            self.state.flush()
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
        beside = self.fresh() and self.state.current is not None and self.state.current.text
        if self.verb or (beside and said[:1].isupper()):
            self.at += size
            self.letters.struck(said, quoted=False)
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

    def _part(self, value: object, size: int) -> bool:
        """An object named outside a place: what is described, not a mark."""
        if self.verb or self.state.pend.hint:
            return False
        del value
        said = places.said(self.tokens, self.at, self.at + size)
        self.state.decor = True
        self.state.claim(Claim(about="note", says=said))
        self.at += size
        return True

    def _filler(self, value: object, size: int) -> bool:
        word = str(value)
        self.all = word in ("all", "each", "both")
        self.article = word in _ARTICLES
        self.state.told = self.state.told or word in _TELLS
        if word != "of" and word not in ("for", "the", "city"):
            self.of_mark = False
        if (word == "and" and self.state.pend.hint and not self.letter) or word in (
            "then",
            "followed",
        ):
            self.state.end_item()
        self.at += size
        return True
