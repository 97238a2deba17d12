"""What each kind of phrase in the lexicon does."""

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from planish.marks.describe import claims, places
from planish.marks.describe import vocabulary as v
from planish.marks.describe.draft import Draft
from planish.marks.describe.tokens import Token
from planish.marks.observation import Claim, Legibility, Search, Technique

if TYPE_CHECKING:
    from planish.marks.describe.marks import Scanner

_ENGRAVED = (Technique.ENGRAVED, Technique.SCRATCHED)
_TELLS = v.word_set("has have bears bearing there show shows showing see found contains")
_IN_THE_STYLE = v.word_set("style revival manner taste type pattern form")
_BEARS = v.word_set("bears bear bearing shows showing")
_ARTICLES = v.word_set("a an the one another")
#: order in which the senses of one phrase are tried
_ORDER = (
    "unmarked", "partial", "role", "period", "device", "town", "count", "technique", "legibility",
    "style", "case", "joined", "doubt", "or", "negation", "letter", "generic", "maker", "metal",
    "number", "country", "filler", "part",
)  # fmt: skip


def _text_follows(tokens: Sequence[Token], at: int) -> bool:
    """Whether a colon or quotation follows, so that what comes is struck."""
    return at < len(tokens) and (tokens[at].kind == "quote" or tokens[at].text == ":")


class Senses:
    """One rule for each sense; part of the scanner."""

    def __init__(self, scanner: "Scanner") -> None:
        self.scanner = scanner
        self._rules: dict[str, Callable[[object, int], bool]] = {
            "unmarked": self._unmarked,
            "partial": self._partial,
            "negation": self._negation,
            "role": self._role,
            "device": self._device,
            "count": self._count,
            "technique": self._technique,
            "legibility": self._legibility,
            "style": self._style,
            "case": self._case,
            "joined": self._joined,
            "doubt": self._doubt,
            "or": self._alternative,
            "letter": self._letter,
            "generic": self._generic,
            "maker": self._maker,
            "period": self._period,
            "metal": self._metal,
            "number": self._number,
            "country": self._country,
            "part": self._part,
            "filler": self._filler,
        }

    def read(self) -> bool:
        """Act on the longest phrase here that fits."""
        s = self.scanner
        for hit in s.lexicon.hits(s.tokens, s.at):
            for sense in _ORDER:
                rule = self._rules.get(sense)
                if rule and sense in hit.senses and rule(hit.senses[sense], hit.length):
                    return True
        return False

    def _unmarked(self, value: object, size: int) -> bool:
        s = self.scanner
        del value
        self._not_found(s.at + size)
        return True

    def _not_found(self, end: int) -> None:
        """A place that was looked at in vain; it may be named before or after."""
        s = self.scanner
        said = places.said(s.tokens, s.at, end)
        s.at = end
        clause = s.state.clause.where
        place = clause.place or clause.part or "piece"
        after = places.where(s.tokens, end, s.lexicon, bare=False) if s.token() else None
        if after:
            place = after[0].place or after[0].part or place
            s.at += after[1]
        s.state.searched.append(Search(place=place, found=False, note=said))

    def _partial(self, value: object, size: int) -> bool:
        s = self.scanner
        del value
        s.state.partial = True
        s.at += size
        return True

    def _negation(self, value: object, size: int) -> bool:
        s = self.scanner
        role = s.lexicon.find(s.tokens, s.at + size, ("role", "device", "generic"))
        if role is None or value == "not":
            return False
        self._not_found(s.at + size + role[2])
        return True

    def _role(self, value: object, size: int) -> bool:
        s = self.scanner
        state, hint = s.state, str(value)
        last = s.tokens[s.at + size - 1].text.casefold()
        plural = last.endswith("s") and not last.endswith(("'s", "ss"))
        current = state.current
        after = s.head_follows(s.at + size)
        direct = s.at == s.mark_end and s.fresh()
        if hint == v.PSEUDO and plural and not after and len(state.drafts) > state.clause_from:
            for draft in state.drafts[state.clause_from :]:
                draft.hint = draft.hint or hint
            s.at += size
            return True
        if current and current.hint is None and not after and state.pend.hint is None:
            in_remark = state.remark and len(state.drafts) == state.remark_from
            if in_remark or direct:
                current.hint = hint
                s.at += size
                state.pend = Draft(legibility=state.pend.legibility, doubtful=state.pend.doubtful)
                current.take(state.pend)
                state.pend = Draft()
                s.of_mark = True
                return True
        if state.untold and not s.verb and not s.head_follows(s.at + size):
            s.skip(size)
            return True
        if hint != v.OWNER and state.clause.technique in _ENGRAVED:
            state.clause.technique = None
        bare = s.tokens[s.at + size - 1].units[-1:] in (("maker",), ("sponsor",))
        if bare and not _text_follows(s.tokens, s.at + size) and self._named_maker(size):
            return True
        state.told = True
        state.role(hint, s.span(size), plural=plural)
        s.at += size
        s.role_end = s.at
        s.of_mark = True
        return True

    def _named_maker(self, size: int) -> bool:
        """As in "maker John Smith" claims who made it; "maker TE" gives the mark."""
        s = self.scanner
        found = claims.name(s.tokens, s.at + size)
        if found is None or found[1] < 2 or not any(c.islower() for c in found[0]):
            return False
        if any(s.lexicon.known_struck([word]) for word in found[0].split()):
            return False
        s.state.claim(Claim(about="maker", says=found[0]))
        s.at += size + found[1]
        return True

    def _device(self, value: object, size: int) -> bool:
        s = self.scanner
        return s.pictures.device(size, str(value))

    def _count(self, value: object, size: int) -> bool:
        s = self.scanner
        return s.modifiers.count(int(str(value)), size)

    def _technique(self, value: object, size: int) -> bool:
        s = self.scanner
        return s.modifiers.technique(Technique(str(value)) if value else None, size)

    def _legibility(self, value: object, size: int) -> bool:
        s = self.scanner
        return s.modifiers.legibility(Legibility(str(value)), size)

    def _style(self, value: object, size: int) -> bool:
        s = self.scanner
        return s.modifiers.style(value, size)

    def _case(self, value: object, size: int) -> bool:
        s = self.scanner
        return s.modifiers.case(value, size)

    def _joined(self, value: object, size: int) -> bool:
        s = self.scanner
        current = s.state.current
        if s.head_follows(s.at + size) or current is None:
            s.state.pend.note(str(value))
        else:
            current.note(str(value))
        s.at += size
        return True

    def _doubt(self, value: object, size: int) -> bool:
        s = self.scanner
        del value
        state = s.state
        start = s.at + size
        claim = start < len(s.tokens) and (
            claims.date(s.tokens, start) or s.lexicon.find(s.tokens, start, ("town", "maker"))
        )
        if claim or s.head_follows(start) or not (state.current or state.claims):
            state.pend.doubtful = True
        else:
            state.doubt_last()
        s.at += size
        return True

    def _alternative(self, value: object, size: int) -> bool:
        s = self.scanner
        return s.modifiers.alternative(str(value), size)

    def _letter(self, value: object, size: int) -> bool:
        s = self.scanner
        s.letter = (
            "initials"
            if "initial" in str(value) or "letters" in s.tokens[s.at + size - 1].text.casefold()
            else "letter"
        )
        said = str(value)
        s.at += size
        if said.startswith(("monogram", "cipher", "cypher", "conjoined")):
            if s.fresh() and not s.head_follows(s.at):
                if s.state.current:
                    s.state.current.note("monogram")
            elif not s.head_follows(s.at):
                state = s.state
                if state.told or s.verb or state.pend.hint or state.listed or not state.drafts:
                    state.mark(Draft(text="[---]", notes=["monogram"]))
                else:
                    state.claim(Claim(about="note", says=said))
            else:
                s.state.pend.note("monogram")
        elif s.state.pend.legibility and not s.head_follows(s.at):
            s.state.mark(Draft(text="[---]", notes=["not described"]))
        return True

    def _generic(self, value: object, size: int) -> bool:
        s = self.scanner
        return s.pictures.generic(str(value), size)

    def _maker(self, value: object, size: int) -> bool:
        s = self.scanner
        said = places.said(s.tokens, s.at, s.at + size)
        if said.islower() or (said.isupper() and not s.shouting) or s.verb:
            return False
        longer = claims.name(s.tokens, s.at)
        if longer and longer[1] > size:
            value, size = longer
        if s.state.pend.hint == v.MAKER:
            s.state.flush()
        s.state.claim(Claim(about="maker", says=str(value)))
        s.at += size
        return True

    def _period(self, value: object, size: int) -> bool:
        s = self.scanner
        if not isinstance(value, tuple):
            return False
        said = places.said(s.tokens, s.at, s.at + size)
        if s.unit(size) in _IN_THE_STYLE:  # "Queen Anne style" is no date
            s.state.claim(Claim(about="note", says=f"{said} {s.unit(size)}"))
            s.at += size + 1
            return True
        s.state.claim(Claim(about="date", says=said, year_from=value[0], year_to=value[1]))
        s.at += size
        return True

    def _metal(self, value: object, size: int) -> bool:
        s = self.scanner
        said = places.said(s.tokens, s.at, s.at + size)
        beside = s.fresh() and s.state.current is not None and s.state.current.text
        after = s.token(size)
        capital = said[:1].isupper() and after is not None and after.text[:1].isdigit()
        here = len(s.state.drafts) > s.state.sentence_from or said[:1].isupper()
        listed = s.state.listed and s.starts_item() and (after is None or after.kind == "stop")
        listed = listed and here
        if s.verb or capital or listed or (beside and said[:1].isupper()):
            s.at += size
            s.strikes.struck(said, quoted=False)
            return True
        s.state.claim(Claim(about="metal", says=str(value)))
        s.at += size
        return True

    def _number(self, value: object, size: int) -> bool:
        s = self.scanner
        s.state.count = int(str(value))
        s.article = True
        s.at += size
        return True

    def _country(self, value: object, size: int) -> bool:
        s = self.scanner
        del value
        said = places.said(s.tokens, s.at, s.at + size)
        if said.islower():
            return False
        last = s.state.claims[-1] if s.state.last_claim and s.state.claims else None
        if last and last.about == "place":
            s.state.claims[-1] = Claim(
                about="place", says=f"{last.says}, {said}", doubtful=last.doubtful
            )
        else:
            s.state.claim(Claim(about="place", says=said))
        s.at += size
        return True

    def _part(self, value: object, size: int) -> bool:
        """An object named outside a place: what is described, not a mark."""
        s = self.scanner
        if s.verb or s.state.pend.hint:
            return False
        del value
        said = places.said(s.tokens, s.at, s.at + size)
        s.state.decor = True
        s.state.claim(Claim(about="note", says=said))
        s.at += size
        return True

    def _filler(self, value: object, size: int) -> bool:
        s = self.scanner
        word = str(value)
        s.all = word in ("all", "each", "both")
        s.article = word in _ARTICLES
        s.state.told = s.state.told or word in _TELLS
        s.state.bears = s.state.bears or word in _BEARS
        if word != "of" and word not in ("for", "the", "city"):
            s.of_mark = False
        if (word == "and" and s.state.pend.hint and not s.letter) or word in (
            "then",
            "followed",
        ):
            s.state.end_item()
        s.at += size
        return True
