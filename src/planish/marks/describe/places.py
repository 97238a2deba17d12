"""Places on the piece, outlines of punches and charges beside letters: readers of phrases.

Each reader looks at the tokens from a word on and returns what it read and how many tokens, or
None; none changes anything.
"""

from collections.abc import Sequence

from planish.marks.describe import vocabulary as v
from planish.marks.describe.draft import Where
from planish.marks.describe.lexicon import Lexicon
from planish.marks.describe.tokens import Token

_REACH = 10
_LEADING = v.PREPOSITIONS - {
    "inside",
    "outside",
    "underneath",
    "under",
    "below",
    "above",
    "beneath",
}
_DETERMINERS = v.word_set("the a an its of each both all their this that")
_BOTH = v.word_set("band box frame ring barrel")
_POSITIONS = v.word_set("above below between beneath under over beside either within")
# what a "with" after letters may add to the same punch, rather than name the next mark
_SMALL_CHARGES = v.word_set(
    "crown coronet pellet pellets mullet star stars annulet crescent dot dots fleur escallop scallop rose "
    "device cinquefoil trefoil"
)


def said(tokens: Sequence[Token], start: int, end: int) -> str:
    """The writer's words from token to token, as printed."""
    out = ""
    for token in tokens[start:end]:
        text = f'"{token.text}"' if token.kind == "quote" else token.text
        out += text if token.glued or not out or token.text == "," else f" {text}"
    return out.strip(" ,;:")


def _unit(token: Token) -> str:
    return token.units[0] if token.kind == "word" and token.units else ""


def where(
    tokens: Sequence[Token], at: int, lexicon: Lexicon, *, bare: bool
) -> tuple[Where, int] | None:
    """A place: "on the underside of the handle", "inside lid", "cover foot".

    bare: whether it may start without a preposition.
    """
    first = _unit(tokens[at])
    if not bare and first not in v.PREPOSITIONS and first != "either":
        return None
    end, last = at, 0
    nouns: list[tuple[str, str]] = []
    while end < len(tokens) and end - at < 24:
        token = tokens[end]
        if token.text == "," and nouns and end + 1 < len(tokens):
            ahead = end + 2 if _unit(tokens[end + 1]) in ("and", "or") else end + 1
            more = lexicon.find(tokens, ahead, ("part",)) if ahead < len(tokens) else None
            if more is None or lexicon.find(tokens, ahead + more[2], ("technique",)):
                break
            end = ahead
            continue
        if token.kind != "word":
            break
        hit = lexicon.find(tokens, end, ("part", "spot"))
        if hit and not (
            hit[2] == 1 and _unit(token) in ("left", "right") and not nouns and end == at
        ):
            nouns.append((hit[0], said(tokens, end, end + hit[2])))
            end += hit[2]
            last = end
        elif _unit(token) in v.SPOT_WORDS or _unit(token) in v.PREPOSITIONS:
            if nouns and _unit(token) == "and" and not _more(tokens, end + 1, lexicon):
                break
            end += 1
        else:
            break
    if not nouns:
        return None
    start = at
    while start < last - 1 and _unit(tokens[start]) in (_LEADING | _DETERMINERS):
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
        if _unit(tokens[offset]) not in (v.SPOT_WORDS | v.PREPOSITIONS):
            return False
    return False


def outline(tokens: Sequence[Token], at: int, lexicon: Lexicon) -> tuple[str, int] | None:
    """The shape of a punch: "in a rectangle with canted corners", "within shaped reserve"."""
    container = lexicon.find(tokens, at, ("container",))
    if container is None:
        return None
    start = at + container[2]
    if _unit(tokens[at]) == "of" and not (
        start < len(tokens) and _unit(tokens[start]) in ("a", "an")
    ):
        return None
    end, best, unknown = start, 0, 0
    article = _unit(tokens[start - 1]) in ("a", "an")
    while end < len(tokens) and end - start < _REACH:
        token = tokens[end]
        comma = token.text == "," and end > start and not best
        if comma and end + 1 < len(tokens) and tokens[end + 1].kind == "word":
            end += 1
            continue
        if token.kind != "word":
            break
        unit = _unit(token)
        hit = lexicon.find(tokens, end, ("outline",))
        if hit and not (unit in _BOTH and not article and end == start):
            end += hit[2]
            best = end
            continue
        shape = any(u in v.OUTLINE_WORDS for u in token.units)
        if best:
            if not shape:
                break
            end += 1
            continue
        if unit in _DETERMINERS:
            article = article or unit in ("a", "an")
        elif shape:
            article = True
        elif lexicon.find(tokens, end, ("role", "part", "spot", "technique", "device", "town")):
            picture = lexicon.find(tokens, end, ("device",))
            if not picture or not lexicon.find(tokens, end + picture[2], ("outline",)):
                break
            end += picture[2]
            continue
        elif unit in v.PREPOSITIONS or token.units[-1:] in (
            ("letter",),
            ("capital",),
            ("initial",),
        ):
            break
        elif unknown < 2 and token.text[:1].islower():
            unknown += 1
        else:
            break
        end += 1
    if not best:
        return None
    if container[1] == "of" and best - start > 3:
        return None
    while start < best - 1 and _unit(tokens[start]) in _DETERMINERS | {
        "separate",
        "own",
        "individual",
    }:
        start += 1
    best = _corners(tokens, best)
    return said(tokens, start, best), best - at


def _corners(tokens: Sequence[Token], end: int) -> int:
    """Where an outline ends that goes on: "with canted corners", "shaped to the letters"."""
    at = end
    if at < len(tokens) and tokens[at].text == ",":
        at += 1
    first = _unit(tokens[at]) if at < len(tokens) else ""
    if first not in (
        "with",
        "shaped",
        "flattened",
        "cut",
        "clipped",
        "rounded",
        "pointed",
        "fitting",
    ):
        return end
    last = end
    for offset in range(at + 1, min(at + 9, len(tokens))):
        token = tokens[offset]
        unit = _unit(token)
        if token.kind != "word":
            break
        fits = first in ("shaped", "fitting") and unit in ("letter", "initial")
        if fits or unit in ("corner", "top", "base", "end", "side", "edge", "point"):
            last = offset + 1
        elif unit not in v.OUTLINE_WORDS and unit not in _DETERMINERS and unit not in (
            "and", "to", "on", "at", "round", "in"
        ):  # fmt: skip
            break
    return last


def charge(
    tokens: Sequence[Token], at: int, lexicon: Lexicon, *, in_brackets: bool, framed: bool
) -> tuple[str, int] | None:
    """What stands beside the letters in one punch: "with a shell above and a mullet below".

    framed: an outline was given already, so that a plain "with" begins the next mark.
    """
    join = lexicon.find(tokens, at, ("join",))
    if join is None:
        return None
    word = _unit(tokens[at])
    if word in ("and", "in", "within", "inside"):
        return None
    end = at + join[2]
    last, found, positioned = (end, True, True) if word == "crowned" else (0, False, False)
    positioned = positioned or word not in ("with",)
    small = False
    unknown = 0
    while end < len(tokens) and end - at < 16:
        token = tokens[end]
        if token.text == "," and not found:
            break
        if token.kind != "word" or lexicon.find(tokens, end, ("role",)):
            break
        unit = _unit(token)
        hit = lexicon.find(tokens, end, ("device",))
        if hit:
            small = small or bool(set(token.units) & _SMALL_CHARGES)
            end += hit[2]
            last, found = end, True
            continue
        if unit in ("in", "within", "inside", "on") or token.text.isupper():
            break
        if set(token.units) & v.CHARGE_WORDS:
            if unit in _POSITIONS:
                positioned = True
                if found:
                    last = end + 1
            elif unit not in (
                "and",
                "with",
                "a",
                "an",
                "the",
                "one",
                "two",
                "three",
                "four",
                "small",
                "large",
                "crude",
            ):
                last, found = end + 1, True
                small = small or bool(set(token.units) & _SMALL_CHARGES)
        elif unit in ("either", "side", "of", "on", "each", "to", "leaf", "which"):
            pass
        elif unknown < 1 and token.text[:1].islower() and not found:
            unknown += 1
        else:
            break
        end += 1
    if not found:
        return None
    if _last_counts(tokens, last):
        last += 1
    if word == "with" and not in_brackets and (not positioned and (framed or not small)):
        return None
    return said(tokens, at, last), last - at


def _last_counts(tokens: Sequence[Token], end: int) -> bool:
    return end < len(tokens) and _unit(tokens[end]) in ("above", "below", "beneath", "between")
