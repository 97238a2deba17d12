"""Places on the piece: a reader of phrases.

It looks at the tokens from a word on and returns what it read and how many tokens, or None; it
changes nothing.
"""

from collections.abc import Sequence

from planish.marks.describe import vocabulary as v
from planish.marks.describe.draft import Where
from planish.marks.describe.lexicon import Lexicon
from planish.marks.describe.tokens import Token

_LEADING = v.PREPOSITIONS - {
    "inside",
    "outside",
    "underneath",
    "under",
    "below",
    "above",
    "beneath",
}
DETERMINERS = v.word_set("the a an its of each both all their this that")


def said(tokens: Sequence[Token], start: int, end: int) -> str:
    """The writer's words from token to token, as printed."""
    out = ""
    for token in tokens[start:end]:
        text = f'"{token.text}"' if token.kind == "quote" else token.text
        out += text if token.glued or not out or token.text == "," else f" {text}"
    return out.strip(" ,;:")


def unit(token: Token) -> str:
    """The first folded unit of a word; empty for what is no word."""
    return token.units[0] if token.kind == "word" and token.units else ""


def where(
    tokens: Sequence[Token], at: int, lexicon: Lexicon, *, bare: bool
) -> tuple[Where, int] | None:
    """A place: "on the underside of the handle", "inside lid", "cover foot".

    bare: whether it may start without a preposition.
    """
    first = unit(tokens[at])
    if not bare and first not in v.PREPOSITIONS and first != "either":
        return None
    end, last = at, 0
    nouns: list[tuple[str, str]] = []
    while end < len(tokens) and end - at < 24:
        token = tokens[end]
        if token.text == "," and nouns and end + 1 < len(tokens):
            ahead = end + 2 if unit(tokens[end + 1]) in ("and", "or") else end + 1
            more = lexicon.find(tokens, ahead, ("part",)) if ahead < len(tokens) else None
            if more is None or lexicon.find(tokens, ahead + more[2], ("technique",)):
                break
            end = ahead
            continue
        if token.kind != "word":
            break
        hit = lexicon.find(tokens, end, ("part", "spot"))
        if hit and not (
            hit[2] == 1 and unit(token) in ("left", "right") and not nouns and end == at
        ):
            nouns.append((hit[0], said(tokens, end, end + hit[2])))
            end += hit[2]
            last = end
        elif unit(token) in v.SPOT_WORDS or unit(token) in v.PREPOSITIONS:
            if nouns and unit(token) == "and" and not _more(tokens, end + 1, lexicon):
                break
            end += 1
        else:
            break
    if not nouns:
        return None
    start = at
    while start < last - 1 and unit(tokens[start]) in (_LEADING | DETERMINERS):
        start += 1
    place = said(tokens, start, last)
    parts = [text.casefold() for kind, text in nouns if kind == "part"]
    part = (
        " and ".join(dict.fromkeys(parts))
        if "," in place or " and " in place
        else "".join(parts[:1])
    )
    return Where(part or None, None if place.casefold() == part else place), last - at


def _more(tokens: Sequence[Token], at: int, lexicon: Lexicon) -> bool:
    """Whether a place goes on after "and"."""
    for offset in range(at, min(at + 6, len(tokens))):
        if lexicon.find(tokens, offset, ("part", "spot")):
            return True
        if unit(tokens[offset]) not in (v.SPOT_WORDS | v.PREPOSITIONS):
            return False
    return False
