"""Outlines of punches, and charges that stand beside the letters in one punch.

As in ``places``, each reader returns what it read and how many tokens, or None.
"""

from collections.abc import Sequence

from planish.marks.describe import vocabulary as v
from planish.marks.describe.lexicon import Lexicon
from planish.marks.describe.places import DETERMINERS, said, unit
from planish.marks.describe.tokens import Token

_REACH = 10
_MAX_CHARGE = 16
_OWN = DETERMINERS | {"separate", "own", "individual"}
#: words that are both a part of a piece and a shape: a shape only after "a", "an" or a shape word
_BOTH = v.word_set("band box frame ring barrel")
_CORNERS = v.word_set("with shaped flattened cut clipped rounded pointed fitting")
_CORNER_NOUNS = v.word_set("corner top base end side edge point")
_CORNER_LINKS = DETERMINERS | v.OUTLINE_WORDS | v.word_set("and to on at round in")
_POSITIONS = v.word_set("above below between beneath under over beside either within")
_ENDS = v.word_set("above below beneath between over under")
#: what a "with" after letters may add to the same punch, rather than name the next mark
_SMALL_CHARGES = v.word_set(
    "crown coronet pellet pellets mullet star stars annulet crescent dot dots fleur escallop "
    "scallop rose device cinquefoil trefoil"
)
_COUNTED = v.word_set("and with a an the one two three four small large crude")
_LINKS = v.word_set("either side of on each to leaf which")


class _Outline:
    """Reads on from a container word until no shape can come any more."""

    def __init__(self, tokens: Sequence[Token], start: int, lexicon: Lexicon) -> None:
        self.tokens, self.start, self.lexicon = tokens, start, lexicon
        self.article = unit(tokens[start - 1]) in ("a", "an")
        self.unknown = 0
        self.best = 0

    def run(self) -> int:
        """Where the outline ends; 0 if there is none."""
        end = self.start
        while end < len(self.tokens) and end - self.start < _REACH:
            step = self.step(end)
            if not step:
                break
            end += step
        return self.best

    def step(self, at: int) -> int:
        """How many tokens to go on; 0 to end."""
        token = self.tokens[at]
        if token.text == "," and at > self.start and not self.best:
            return int(at + 1 < len(self.tokens) and self.tokens[at + 1].kind == "word")
        if token.kind != "word":
            return 0
        word = unit(token)
        hit = self.lexicon.find(self.tokens, at, ("outline",))
        if hit and not (word in _BOTH and not self.article):
            self.best = at + hit[2]
            return hit[2]
        shape = any(u in v.OUTLINE_WORDS for u in token.units)
        if self.best or shape:
            self.article = self.article or shape
            return int(shape)
        if word in DETERMINERS:
            self.article = self.article or word in ("a", "an")
            return 1
        return self.other(at)

    def other(self, at: int) -> int:
        """A word that is neither shape nor article: a picture as a shape, or an unknown word."""
        token = self.tokens[at]
        kinds = ("role", "part", "spot", "technique", "device", "town")
        if self.lexicon.find(self.tokens, at, kinds):
            picture = self.lexicon.find(self.tokens, at, ("device",))
            shaped = picture and self.lexicon.find(self.tokens, at + picture[2], ("outline",))
            return picture[2] if picture and shaped else 0
        letters = set(token.units[-1:]) & {"letter", "capital", "initial"}
        if unit(token) in v.PREPOSITIONS or letters or not token.text[:1].islower():
            return 0
        self.unknown += 1
        return int(self.unknown <= 2)


def outline(tokens: Sequence[Token], at: int, lexicon: Lexicon) -> tuple[str, int] | None:
    """The shape of a punch: "in a rectangle with canted corners", "within shaped reserve"."""
    container = lexicon.find(tokens, at, ("container",))
    if container is None:
        return None
    start = at + container[2]
    of = unit(tokens[at]) == "of"
    if start >= len(tokens) or (of and unit(tokens[start]) not in ("a", "an")):
        return None
    end = _Outline(tokens, start, lexicon).run()
    if not end or (of and end - start > 3):
        return None
    while start < end - 1 and unit(tokens[start]) in _OWN:
        start += 1
    end = _corners(tokens, end)
    return said(tokens, start, end), end - at


def _corners(tokens: Sequence[Token], end: int) -> int:
    """Where an outline ends that goes on: "with canted corners", "shaped to the letters"."""
    at = end
    if at < len(tokens) and tokens[at].text == ",":
        at += 1
    first = unit(tokens[at]) if at < len(tokens) else ""
    if first not in _CORNERS:
        return end
    last = end
    for offset in range(at + 1, min(at + 9, len(tokens))):
        word = unit(tokens[offset])
        fits = first in ("shaped", "fitting") and word in ("letter", "initial")
        if fits or word in _CORNER_NOUNS:
            last = offset + 1
        elif word not in _CORNER_LINKS:
            break
    return last


class _Charge:
    """Reads on from a joining word while charges or their positions follow."""

    def __init__(self, tokens: Sequence[Token], start: int, lexicon: Lexicon) -> None:
        self.tokens, self.start, self.lexicon = tokens, start, lexicon
        self.last = 0
        self.positioned = False
        self.small = False
        self.unknown = 0

    def run(self) -> int:
        """Where the charges end; 0 if there are none."""
        end = self.start
        while end < len(self.tokens) and end - self.start < _MAX_CHARGE:
            step = self.step(end)
            if not step:
                break
            end += step
        after = self.tokens[self.last] if 0 < self.last < len(self.tokens) else None
        if after is not None and unit(after) in _ENDS:
            self.last += 1
        return self.last

    def step(self, at: int) -> int:
        token = self.tokens[at]
        if token.kind != "word" or self.lexicon.find(self.tokens, at, ("role",)):
            return 0
        word = unit(token)
        if hit := self.lexicon.find(self.tokens, at, ("device",)):
            self.add(token, at + hit[2])
            return hit[2]
        if word in ("in", "within", "inside", "on") or token.text.isupper():
            return 0
        if word in _POSITIONS:
            self.positioned = True
            self.last = at + 1 if self.last else 0
            return 1
        if set(token.units) & v.CHARGE_WORDS:
            if word not in _COUNTED:
                self.add(token, at + 1)
            return 1
        if word in _LINKS:
            return 1
        self.unknown += 1
        return int(self.unknown <= 1 and token.text[:1].islower() and not self.last)

    def add(self, token: Token, end: int) -> None:
        self.small = self.small or bool(set(token.units) & _SMALL_CHARGES)
        self.last = end


def charged(
    tokens: Sequence[Token], at: int, lexicon: Lexicon, *, bare: bool
) -> tuple[str, int] | None:
    """As ``charge``, without a joining word: "IC crowned, a star below".

    bare: whether a picture without an article may begin it: "TL, crown over".
    """
    article = unit(tokens[at]) in ("a", "an", "the", "two", "three")
    if not article and not (bare and lexicon.find(tokens, at, ("device",))):
        return None
    end = _Charge(tokens, at + article, lexicon).run()
    if not end or unit(tokens[end - 1]) not in _ENDS:
        return None
    if not article and end < len(tokens) and tokens[end].kind == "word" and unit(tokens[end]) not in (
        "and", "in", "within"
    ):  # fmt: skip
        return None  # a picture over another: "crown over shield"
    return said(tokens, at, end), end - at


def charge(
    tokens: Sequence[Token], at: int, lexicon: Lexicon, *, in_brackets: bool, framed: bool
) -> tuple[str, int] | None:
    """What stands beside the letters in one punch: "with a shell above and a mullet below".

    framed: an outline was given already, so that a plain "with" begins the next mark.
    """
    join = lexicon.find(tokens, at, ("join",))
    word = unit(tokens[at])
    if join is None or word in ("and", "in", "within", "inside"):
        return None
    reader = _Charge(tokens, at + join[2], lexicon)
    if word == "crowned":
        reader.last = at + join[2]
    end = reader.run()
    if not end:
        return None
    beside = in_brackets or reader.positioned or (reader.small and not framed)
    if word == "with" and not beside:
        return None
    return said(tokens, at, end), end - at
