"""Where the marks of a form of piece usually sit, and what people call that form."""

import re
from collections.abc import Iterator, Sequence

from planish.library.loader import Library
from planish.library.rows import Spot

#: the form whose spots hold for every piece, and serve where a form is not known
ANY = "any"
#: what people are told in its place
ANY_IN_WORDS = "silver of any kind"

# What follows these words tells of the piece, not what it is.
_TAIL = re.compile(r"[,;:(]|\s(?:with|without|in|by|for|from|on|having)\s")
# "a pair of candlesticks": what stands before "of" counts pieces.
_COUNTED = re.compile(
    r"^.*\b(?:pairs?|sets?|suites?|services?|groups?|lots?|couples?|dozen|half|part|parts|"
    r"quantity|trio|garniture|collection|lid|cover|base)\s+of\s+"
)
_ALTERNATIVES = re.compile(r"\s+or\s+|\s*/\s*")
_NOT_WORDS = re.compile(r"[^a-z0-9 ]+")

# Other names of a form in the trade; common practice. Each leads to words that the library's
# forms are looked up by, so a name may come before its form is in the library.
_OTHER_NAMES = {
    "waiter": "salver",
    "creamer": "cream jug",
    "milk jug": "cream jug",
    "cream pitcher": "cream jug",
    "gravy boat": "sauce boat",
    "castor": "caster",
    "sugar basket": "sugar bowl",
    "goblet": "cup",
    "candle stick": "candlestick",
    "chamberstick": "candlestick",
    "candelabra": "candelabrum",
    "taperstick": "candlestick",
    "vesta case": "vesta",
    "match box": "match safe",
    "picture frame": "photograph frame",
    "serviette ring": "napkin ring",
    "decanter label": "wine label",
    "bottle coaster": "wine coaster",
    "bangle": "hinged bangle",
    "nutmeg grater": "box",
    "necklet": "necklace",
    "salt": "salt cellar",
    "pepper": "pepper pot",
    "pepperette": "pepper pot",
    "tureen": "soup tureen",
    "chocolate pot": "coffee pot",
    "hot water jug": "coffee pot",
    "cuff link": "cufflink",
    "porringer": "bowl",
    "basin": "bowl",
    "watch": "watch case",
    "muffineer": "caster",
    "sugar nips": "tongs",
    "nips": "tongs",
    "flatware": "spoon",
    "jug": "cream jug",
    "ewer": "cream jug",
    "pitcher": "cream jug",
    "basket": "cake basket",
    "caddy": "box",
    "canister": "box",
    "entree dish": "soup tureen",
    "dish": "bowl",
    "plate": "tray",
    "charger": "tray",
    "kettle": "teapot",
}

#: short forms that English does compound in one word: teacup, mustardpot, snuffbox
_COMPOUNDED = frozenset({"cup", "pot", "box", "mug", "pin", "fork", "bowl"})


def forms(library: Library) -> tuple[str, ...]:
    """All forms that the library knows places for, in alphabetical order."""
    return tuple(sorted({spot.form for spot in library.spots}))


def where_to_look(form: str, library: Library) -> tuple[Spot, ...]:
    """Places where this form is usually marked, the likeliest first.

    The places that hold for every piece are given where the form is not known.
    """
    found = resolve(form, library) or ANY
    return tuple(sorted((s for s in library.spots if s.form == found), key=lambda s: s.rank))


# Words that tell nothing apart in a place, and other words for a place; common practice.
_EMPTY = frozenset({"a", "an", "the", "of", "on", "in", "at", "by", "to", "or", "and", "with",
                    "its", "under", "inside", "near", "from"})  # fmt: skip
_LIKE = {
    "bottom": "underside", "beneath": "underside", "underneath": "underside", "base": "underside",
    "cover": "lid", "lid": "cover", "stem": "handle", "edge": "rim", "lip": "rim", "border": "rim",
}  # fmt: skip


def place_of(words: str, places: Sequence[tuple[int, str]]) -> str | None:
    """The place of a form's list that a person's words name, or None.

    Args:
        words: the place's number, or words of it; every telling word must stand in the place.
        places: number and wording of each place of the form.

    >>> place_of("the lid", [(1, "underside"), (2, "inside the lid flange")])
    'inside the lid flange'
    """
    text = _singular(_plain(words.lower()))
    if text.isdigit():
        return next((place for number, place in places if number == int(text)), None)
    exact = next((place for _, place in places if _singular(_plain(place.lower())) == text), None)
    if exact:
        return exact
    said = [w for w in text.split() if w not in _EMPTY] or text.split()
    for wanted in (said, [_LIKE.get(w, w) for w in said]):
        best, most = None, 0.0
        for _, place in sorted(places):
            held = _singular(_plain(place.lower())).split()
            telling = [w for w in held if w not in _EMPTY]
            if wanted and all(w in held for w in wanted):
                # words such as "inside" tell two places of one part apart
                both = sum(w in held for w in text.split())
                share = len(wanted) / max(1, len(telling)) + both / 100
                if share > most:
                    best, most = place, share
        if best:
            return best
    return None


def resolve(words: str, library: Library) -> str | None:
    """The library's form that a person's words mean, or None.

    English names the thing last: a sugar spoon is a spoon, a spoon warmer is none. Words that
    count ("a pair of") or describe ("with ivory handle") are passed over, plurals are read as
    singulars, and a compound in one word ends in its form ("tablespoon").
    """
    known = _by_name(library)
    for reading in _readings_of(words):
        text = _singular(reading)
        for name in (text, _OTHER_NAMES.get(text, "")):
            if name and (found := known.get(name) or known.get(name.replace(" ", ""))):
                return found
        tokens = text.split()
        for start in range(len(tokens)):
            tail = " ".join(tokens[start:])
            for name in (tail, _OTHER_NAMES.get(tail, "")):
                if name in known:
                    return known[name]
        if tokens and (found := _suffix(tokens[-1], known)):
            return found
    return None


def _readings_of(words: str) -> Iterator[str]:
    """The words whole, then without what counts and describes, then each thing of a list."""
    text = " ".join(words.lower().replace("-", " ").split())
    yield _plain(text)
    text = _COUNTED.sub("", text)
    yield _plain(text)
    head = _TAIL.split(text, maxsplit=1)[0]
    yield _plain(head)
    for part in re.split(r"\s+(?:and|&|or)\s+", head):
        yield _plain(part)


def _plain(text: str) -> str:
    return " ".join(_NOT_WORDS.sub(" ", text).split())


def _singular(text: str) -> str:
    return " ".join(_one(word) for word in text.split())


def _one(word: str) -> str:
    """A plural noun as its singular: common endings only."""
    if word.endswith("knives"):
        return word.removesuffix("ves") + "fe"
    if word.endswith("ies") and len(word) > 4:
        return word.removesuffix("ies") + "y"
    if word.endswith(("sses", "xes", "ches", "shes")):
        return word.removesuffix("es")
    if word.endswith("s") and not word.endswith(("ss", "us", "is")) and len(word) > 3:
        return word.removesuffix("s")
    return word


def _by_name(library: Library) -> dict[str, str]:
    """Every name that a form's own wording gives it; the whole wording wins over its parts."""
    whole: dict[str, str] = {}
    parts: dict[str, str] = {}
    for form in dict.fromkeys(spot.form for spot in library.spots):
        plain = re.sub(r"\([^)]*\)", " ", form.lower())
        whole.setdefault(_singular(_plain(plain)), form)
        for name in _names(plain):
            parts.setdefault(_singular(_plain(name)), form)
    known = {**parts, **whole}
    for name, form in list(known.items()):
        known.setdefault(name.replace(" ", ""), form)
    known.pop("", None)
    return known


def _names(form: str) -> Iterator[str]:
    """``bracelet, cuff`` gives cuff bracelet and bracelet; ``mug or cup`` gives both."""
    head, _, rest = form.partition(",")
    if rest:
        for kind in _ALTERNATIVES.split(rest):
            yield f"{kind} {head}"
            yield kind
        yield head
        return
    choices = _ALTERNATIVES.split(form)
    yield from choices
    first = choices[0].split()
    if len(first) > 1:  # "sugar bowl or basin": also a sugar basin
        for other in choices[1:]:
            yield f"{' '.join(first[:-1])} {other}"


def _suffix(word: str, known: dict[str, str]) -> str | None:
    """The longest one-word form that a compound ends in: ``tablespoon`` is a spoon."""
    # short words end too many others: an earring is no ring
    fits = [
        n
        for n in known
        if " " not in n and n != word and word.endswith(n) and (len(n) > 4 or n in _COMPOUNDED)
    ]
    return known[max(fits, key=len)] if fits else None
