"""Ordinary words for pictures: folded, in the singular, with what else they may mean."""

import functools
import re
import unicodedata
from collections import defaultdict

from planish.marks.devicevocabulary import FILLER, IRREGULAR, NEAR, PHRASES, SAME

_WORD = re.compile(r"\w+")
_LEAST_PLURAL = 4


def fold(text: str) -> str:
    """The text without case, accents and possessives."""
    plain = unicodedata.normalize("NFKD", text).casefold().replace("’", "'")
    plain = "".join(c for c in plain if not unicodedata.combining(c))
    return re.sub(r"'s\b|s'(?=\s|$)", "", plain)


@functools.lru_cache(maxsize=8192)
def stem(word: str) -> str:
    """The word in the singular.

    >>> stem("sheaves"), stem("towers"), stem("cross"), stem("fleur")
    ('sheaf', 'tower', 'cross', 'fleur')
    """
    if word in IRREGULAR:
        return IRREGULAR[word]
    if len(word) < _LEAST_PLURAL or word.endswith(("ss", "us", "is", "ris", "cos")):
        return word
    if word.endswith("ies") and len(word) > _LEAST_PLURAL:
        return word[:-3] + "y"
    if word.endswith(("xes", "ches", "shes", "sses")):
        return word[:-2]
    return word.removesuffix("s")


def _phrased(text: str) -> str:
    """The text with the phrases of ``PHRASES`` written as their word."""
    joined = f" {' '.join(_WORD.findall(text))} "
    for phrase, word in _BY_LENGTH:
        if phrase in joined:
            joined = joined.replace(f" {phrase} ", f" {word} ")
    return joined


_BY_LENGTH = sorted(PHRASES.items(), key=lambda p: -len(p[0]))


def stems(text: str) -> tuple[str, ...]:
    """Stems of a phrase in order, each once, without filler.

    >>> stems("The lion's heads, with three wheatsheaves")
    ('lion', 'head', 'three', 'wheat', 'sheaf')
    >>> stems("big cat on its hind legs")
    ('lion', 'rampant')
    """
    phrased = _phrased(_phrased(fold(text)))
    found = [stem(w) for w in _WORD.findall(phrased) if w not in FILLER]
    return tuple(dict.fromkeys(found))


#: chance-like weight of a word of the same meaning, and of a near one
_SAME_WEIGHT, _NEAR_WEIGHT = 0.92, 0.55


def _relations() -> dict[str, dict[str, float]]:
    """Word -> words of the same and of near meaning, with weights."""
    classes: dict[str, set[str]] = defaultdict(set)
    for line in SAME.split("\n"):
        members = {stem(w) for w in line.split()}
        for word in members:
            classes[word] |= members
    found: dict[str, dict[str, float]] = defaultdict(dict)
    for word, members in classes.items():
        found[word] |= dict.fromkeys(members - {word}, _SAME_WEIGHT)
    for line in filter(None, NEAR.split("\n")):
        heads, _, others = line.partition(":")
        for head in heads.split():
            for one in {stem(head)} | classes.get(stem(head), set()):
                for other in others.split():
                    for two in {stem(other)} | classes.get(stem(other), set()):
                        if one != two:
                            found[one].setdefault(two, _NEAR_WEIGHT)
                            found[two].setdefault(one, _NEAR_WEIGHT)
    return {word: dict(others) for word, others in found.items()}


_RELATED = _relations()


def related(word: str) -> dict[str, float]:
    """Words that may be meant by a stem, each with a weight from 0 to 1; itself weighs 1.

    >>> related("hatchet")["axe"] > 0.9 > related("cat")["lion"] > 0.5
    True
    """
    return {word: 1.0, **_RELATED.get(word, {})}


def known(word: str) -> bool:
    """Whether the vocabulary has the stem."""
    return word in _RELATED
