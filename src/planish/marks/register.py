"""The register of makers: which makers' marks a mark may be, by letters, layout, device, years.

Built once; a look-up touches only rows that share the letters, so 100,000 rows cost no more than a
few hundred.
"""

import re
from collections import defaultdict
from collections.abc import Callable, Iterable

import msgspec

from planish.library.rows import Maker
from planish.marks.letters import upside_down
from planish.marks.seen import Seen, fold
from planish.marks.thesaurus import words

_FIT = 0.8
#: I for J or U for V, and a mark that lacks the register's "& Co" (common practice)
_OTHER_SPELLING, _WITHOUT_FIRM = 0.2, 0.08
#: a mark read upside down
_READ_TURNED = 0.01
#: charges that stand with letters in a maker's punch (common practice)
_CHARGES = frozenset(
    ("crown", "crowned", "mullet", "star", "fleur", "lis", "pellet", "pellets", "crescent", "sun", "rose",
     "coronet", "mitre", "bird", "shell", "escallop", "heart", "trefoil", "cinquefoil", "annulet", "cross",
     "anchor", "lion", "rabbit", "coney", "feather", "key", "crook", "hand", "leaf", "tree", "fish")
)  # fmt: skip
_Offer = Callable[[Maker, float, str], None]
_SAME = str.maketrans({"J": "I", "V": "U"})
_FIRM = re.compile(r"\b(?:CO|COMPANY|LTD|LIMITED|INC|CORP|MFG|MANUFACTURING|AND)\b")


def letters_only(text: str) -> str:
    """Letters only, capitals, as written."""
    return re.sub(r"[\W\d_]", "", fold(text))


def letters_key(text: str) -> str:
    """Letters only, capitals, with I for J and U for V, as punches have them.

    >>> letters_key("P·B / A·B")
    'PBAB'
    """
    return letters_only(text).translate(_SAME)


def name_key(text: str) -> str:
    """A name without firm words and separators."""
    return letters_key(_FIRM.sub(" ", fold(text).replace("&", " ")))


class Candidate(msgspec.Struct, frozen=True):
    """A maker that a mark may be: ``fit`` is the chance of the mark given the maker's mark."""

    maker: Maker
    fit: float
    why: str


class Register:
    """Index of makers. ``rows`` may join the shipped library and the user's own register."""

    def __init__(self, rows: Iterable[Maker]) -> None:
        self.makers = tuple(rows)
        self._marks: dict[str, list[tuple[Maker, str]]] = defaultdict(list)
        self._short: dict[str, list[tuple[Maker, str]]] = defaultdict(list)
        self._names: dict[str, list[Maker]] = defaultdict(list)
        self._surnames: dict[str, list[Maker]] = defaultdict(list)
        self._by_shape: dict[tuple[int, int, str], set[str]] = defaultdict(set)
        self._starts: dict[str, list[str]] = defaultdict(list)
        self._active: dict[tuple[str, int], int] = defaultdict(int)
        self._of: dict[str, int] = defaultdict(int)
        self._others: dict[str, list[int]] = {}
        self._devices: list[tuple[Maker, list[tuple[str, frozenset[str]]]]] | None = None
        for maker in self.makers:
            self._of[maker.country] += 1
            low, high = maker.year_from or 1500, maker.year_to or 2030
            for decade in range(low // 10, high // 10 + 1):
                self._active[maker.country, decade] += 1
            for text in filter(None, (m.strip() for m in maker.marks.split(";"))):
                key = letters_key(text)
                if not key:
                    continue
                if key not in self._marks:
                    for place, letter in enumerate(key):
                        self._by_shape[len(key), place, letter].add(key)
                    self._starts[key[:3]].append(key)
                self._marks[key].append((maker, text))
                short = name_key(text)
                if short and short != key:
                    self._short[short].append((maker, text))
            self._names[name_key(maker.name)].append(maker)
            # "Wakely and Wheeler, Dublin": what stands after a comma or bracket is no surname
            called = re.split(r"[,(]", maker.name)[0]
            surname = [w for w in words(_FIRM.sub(" ", fold(called))) if len(w) > 3]
            if surname:
                self._surnames[letters_key(surname[-1])].append(maker)

    def active(self, country: str, year: int) -> int:
        """Number of register rows of the country active in the year's decade."""
        return self._active.get((country, year // 10), 0)

    def others(self, country: str) -> list[int]:
        """Number of register rows of the country active at the start of each forty years."""
        found = self._others.get(country)
        if found is None:
            found = self._others[country] = [
                self.active(country, year) for year in range(0, 2120, 40)
            ]
        return found

    def count(self, country: str) -> int:
        """Number of register rows of the country."""
        return self._of.get(country, 0)

    def _keys_like(self, pattern: str) -> set[str]:
        known = [(i, c) for i, c in enumerate(pattern) if c != "?"]
        if not known:
            return set()
        found: set[str] | None = None
        for place, letter in known:
            keys = self._by_shape.get((len(pattern), place, letter), set())
            found = set(keys) if found is None else found & keys
        return found or set()

    def candidates(self, seen: Seen) -> tuple[Candidate, ...]:
        """Makers whose mark this may be; empty if the mark has no letters."""
        found: dict[str, Candidate] = {}

        def offer(maker: Maker, fit: float, why: str) -> None:
            if maker.id not in found or found[maker.id].fit < fit:
                found[maker.id] = Candidate(maker, fit, why)

        if seen.form == "device":
            self._by_device(seen, offer)
        if not seen.letters or seen.form in ("device", "figures"):
            return tuple(found.values())
        key = "".join((c or "?") for c, _ in seen.letters).translate(_SAME)
        key = re.sub(r"[^\w?]", "", key)
        if "?" in key:
            for like in self._keys_like(key):
                for maker, text in self._marks[like]:
                    offer(maker, 0.3, f"letters of {text}, with letters lost")
        for maker, text in self._marks.get(key, ()):
            literal = letters_only(text) == "".join(c or "?" for c, _ in seen.letters)
            fit = self._layout(seen, text, maker.device) * (1.0 if literal else _OTHER_SPELLING)
            offer(maker, fit, f"mark {text}")
        turned = upside_down(key)
        if turned and turned != key:
            for maker, text in self._marks.get(turned, ()):
                offer(maker, _READ_TURNED, f"mark {text} read upside down")
        for maker, text in self._short.get(key, ()):
            offer(maker, _WITHOUT_FIRM, f"mark {text}, without the firm's words")
        if seen.form in ("name", "word", "mixed"):
            self._by_name(seen, offer)
        return tuple(found.values())

    def _by_name(self, seen: Seen, offer: _Offer) -> None:
        key = name_key(" ".join(seen.parts))
        for maker, text in (*self._marks.get(key, ()), *self._short.get(key, ())):
            offer(maker, 0.8, f"mark {text}")
        for maker in self._names.get(key, ()):
            offer(maker, 0.8, "the name in full")
        if len(key) < 4:
            return
        for part in seen.parts:
            for maker in self._surnames.get(letters_key(part), ()):
                if len(part) > 3:
                    offer(maker, 0.25, "the surname")
        for like in self._starts.get(key[:3], ()):
            if abs(len(like) - len(key)) <= 2 and like != key and _near(like, key):
                for maker, text in self._marks[like]:
                    offer(maker, 0.1, f"nearly {text}")

    def _by_device(self, seen: Seen, offer: _Offer) -> None:
        said = set(words(seen.mark.device or ""))
        if len(said) < 2:
            return
        for maker, devices in self._with_device():
            for device, has in devices:
                if len(said & has) / len(said | has) > 0.6:
                    offer(maker, 0.3, f"device {device}")

    def _with_device(self) -> list[tuple[Maker, list[tuple[str, frozenset[str]]]]]:
        """Makers with their devices in words, worked out at the first look-up."""
        if self._devices is None:
            self._devices = []
            for maker in self.makers:
                parts = maker.device.split(";") if maker.device else []
                devices = [(d.strip(), frozenset(words(d))) for d in parts]
                devices = [(device, has) for device, has in devices if has]
                if devices:
                    self._devices.append((maker, devices))
        return self._devices

    @staticmethod
    def _layout(seen: Seen, text: str, device: str) -> float:
        """Fit of the layout: line break, ampersand, and the pictorial part of the mark."""
        mark = seen.mark
        fit = _FIT
        for sign in ("/", "&"):
            if (sign in (mark.text or "")) != (sign in text):
                fit *= 0.55
        said = set(words(" ".join(filter(None, (mark.charge, mark.note, mark.outline))))) & _CHARGES
        has = set(words(device)) & _CHARGES
        if said & has:
            return min(1.0, fit * 1.25)
        if said:
            return fit * (0.35 if has else 0.5)
        # many writers leave the crown or mullet out
        return fit * (0.6 if has else 1.0)


def _near(a: str, b: str) -> bool:
    """Whether two keys differ by one letter put in, left out or changed."""
    if len(a) > len(b):
        a, b = b, a
    if len(b) - len(a) > 1:
        return False
    for i, (x, y) in enumerate(zip(a, b, strict=False)):
        if x != y:
            return a[i + 1 :] == b[i + 1 :] if len(a) == len(b) else a[i:] == b[i + 1 :]
    return len(b) - len(a) == 1


_EDGES = ((0, 1.0), (5, 0.3), (20, 0.05))
_NO_YEARS = 0.5
#: years (common practice)
_WORKING_LIFE = 40


def phases(maker: Maker) -> list[tuple[int, int, float]]:
    """(first year, last year, chance relative to an active year) of a maker's mark.

    Working years in registers are those of known work, so the edges are soft: years outside count
    less and less, and nothing beyond 20 years (common practice).
    """
    low, high = maker.year_from, maker.year_to
    if low is None and high is None:
        return [(1300, 2039, _NO_YEARS)]
    # one end alone: a working life from it
    first = low if low is not None else (high or 0) - _WORKING_LIFE
    last = high if high is not None else first + _WORKING_LIFE
    found = [(first, last, 1.0)]
    inner = 0
    for out, chance in _EDGES[1:]:
        found.append((first - out, first - inner - 1, chance))
        found.append((last + inner + 1, last + out, chance))
        inner = out
    return found


def activity(maker: Maker, low: int, high: int | None = None) -> float:
    """Best chance, over the years from ``low`` to ``high``, relative to an active year."""
    first, last = maker.year_from, maker.year_to
    if first is None and last is None:
        return _NO_YEARS
    first = first if first is not None else (last or 0) - _WORKING_LIFE
    last = last if last is not None else first + _WORKING_LIFE
    out = max(first - (high if high is not None else low), low - last, 0)
    return next((chance for edge, chance in _EDGES if out <= edge), 0.0)
