"""Phrases and what they say, for longest-match look-up, built from the library and our words."""

from collections.abc import Iterable, Mapping, Sequence

import msgspec

from planish.library.loader import Library
from planish.marks.describe import foreign, world
from planish.marks.describe import vocabulary as v
from planish.marks.describe.tokens import Token, fold


class Hit(msgspec.Struct, frozen=True):
    """What a phrase says: kind -> value; and how many tokens it took."""

    senses: Mapping[str, object]
    length: int


class _Node:
    __slots__ = ("next", "senses")

    def __init__(self) -> None:
        self.next: dict[str, _Node] = {}
        self.senses: dict[str, object] = {}


class Lexicon:
    """A trie of folded phrases, each with one value per kind of sense.

    Kinds: role, style, case, legibility, technique, generic, letter, outline, container, part, spot,
    prep, count, number, doubt, or, negation, unmarked, partial, joined, over, device, town, maker,
    metal, period, country, filler.
    """

    def __init__(self) -> None:
        self._root = _Node()
        self.struck: dict[tuple[str, ...], str] = {}
        self.longest_struck = 1
        self.foreign: set[str] = set()

    def add(self, kind: str, phrase: str, value: object = None) -> None:
        """Enter one phrase; the first entry of a kind stays."""
        node = self._root
        units = [u for word in phrase.split() for u in fold(word)]
        if not units:
            return
        for unit in units:
            node = node.next.setdefault(unit, _Node())
        node.senses.setdefault(kind, phrase if value is None else value)

    def add_struck(self, text: str) -> None:
        """Enter a word that is struck, such as STERLING or E.P.N.S."""
        key = tuple(k for word in text.split() if (k := struck_key(word)))
        if key:
            self.struck.setdefault(key, text)
            self.longest_struck = max(self.longest_struck, len(key))

    def hits(self, tokens: Sequence[Token], at: int) -> list[Hit]:
        """All phrases that start at a word, longest first."""
        found: list[Hit] = []
        node = self._root
        for offset in range(at, len(tokens)):
            token = tokens[offset]
            if token.kind != "word" or not token.units:
                break
            for unit in token.units:
                following = node.next.get(unit)
                if following is None:
                    return found[::-1]
                node = following
            if node.senses:
                found.append(Hit(node.senses, offset - at + 1))
        return found[::-1]

    def find(
        self, tokens: Sequence[Token], at: int, kinds: Iterable[str]
    ) -> tuple[str, object, int] | None:
        """The longest phrase at a word that has one of the kinds: (kind, value, tokens taken)."""
        wanted = tuple(kinds)
        for hit in self.hits(tokens, at):
            for kind in wanted:
                if kind in hit.senses:
                    return kind, hit.senses[kind], hit.length
        return None

    def known_struck(self, words: Sequence[str]) -> bool:
        """Whether the words together are a known struck wording."""
        return tuple(k for w in words if (k := struck_key(w))) in self.struck


def struck_key(word: str) -> str:
    """Letters and figures of a struck word, capitals: E.P.N.S. and EPNS are one.

    >>> struck_key("PAT'D.")
    'PATD'
    """
    return "".join(c for c in word.upper() if c.isalnum() or c == "&")


def _list(text: str) -> list[str]:
    return [phrase.strip() for phrase in text.split(";") if phrase.strip()]


def _words(lexicon: Lexicon) -> None:
    tables: dict[str, Mapping[str, object]] = {
        "role": v.ROLES, "style": v.STYLES, "case": v.CASES, "legibility": v.LEGIBILITY,
        "count": v.COUNTS, "number": v.NUMBERS, "metal": world.METALS, "period": world.PERIODS,
        "town": world.TOWNS,
    }  # fmt: skip
    for kind, table in tables.items():
        for phrase, value in table.items():
            lexicon.add(kind, phrase, value)
    for phrase, technique in v.TECHNIQUES.items():
        lexicon.add("technique", phrase, technique.value if technique else "")
    lists = {
        "generic": v.GENERIC, "letter": v.LETTER_NOUNS, "outline": v.OUTLINES,
        "container": v.CONTAINERS, "part": v.PARTS, "spot": v.SPOTS, "doubt": v.DOUBTS,
        "or": v.ALTERNATIVES, "negation": v.NEGATIONS, "unmarked": v.UNMARKED,
        "partial": v.PARTIAL, "joined": v.JOINED, "over": v.OVER, "country": world.COUNTRIES,
        "join": v.CHARGE_JOINS, "order": v.ORDER,
    }  # fmt: skip
    for kind, text in lists.items():
        for phrase in _list(text):
            lexicon.add(kind, phrase)
    for word in (*sorted(v.FILLERS), "made in", "as follow", "as well as", "next to it", "next to"):
        lexicon.add("filler", word)
    for word in sorted(v.PREPOSITIONS):
        lexicon.add("prep", word)
    for text in _list(world.STRUCK):
        lexicon.add_struck(text)


def _foreign(lexicon: Lexicon) -> None:
    for kind, table in (("role", foreign.ROLES), ("legibility", foreign.LEGIBILITY)):
        for phrase, value in table.items():
            lexicon.add(kind, phrase, value)
    for kind, text in (
        ("generic", foreign.GENERIC),
        ("container", foreign.CONTAINERS),
        ("outline", foreign.OUTLINES),
        ("filler", foreign.FILLERS),
    ):
        for phrase in _list(text):
            lexicon.add(kind, phrase)
    for phrase, label in foreign.DEVICES.items():
        lexicon.foreign.add(phrase.casefold())
        lexicon.add("device", phrase, label)
    for phrase in _list(foreign.STRUCK_VERBS):
        lexicon.add("technique", phrase, "")


# Words of the thesaurus that mean too many other things in running text to be a picture alone.
_NOT_ALONE = v.word_set(
    "point long bar box block net reading steps line lines standard round plus o x letter mark ring "
    "figure strings cells mound head disc ball square circle oval frame face small animal building keep rack"
)


def build(library: Library) -> Lexicon:
    """The lexicon of a library: its devices, offices, makers and struck words with our own words."""
    lexicon = Lexicon()
    _words(lexicon)
    _foreign(lexicon)
    for device in library.devices:
        for name in (device.label, *_list(device.words)):
            if name.casefold() not in _NOT_ALONE and not name.casefold().startswith("letter "):
                lexicon.add("device", name, device.label if name == device.label else "")
    for office in library.offices:
        name = office.name.partition("(")[0].strip()
        for said in {name, name.replace(" upon ", "-upon-")}:
            lexicon.add("town", said, name)
    for maker in library.makers:
        lexicon.add("maker", maker.name, maker.name)
    for word in library.words:
        if word.kind not in ("fineness", "plate", "base", "quality"):
            continue
        for text in (word.text, *_list(word.also)):
            if _splits(text):
                lexicon.add_struck(text)
    return lexicon


def _splits(text: str) -> bool:
    """Whether a struck word may be parted from its neighbours: not for one or two bare letters."""
    key = struck_key(text)
    return len(key) >= 4 or (key.isdigit() and len(key) >= 3)
