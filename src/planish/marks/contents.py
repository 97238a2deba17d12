"""What signs show, indexed so that a mark finds the few that it may be.

``ratios`` gives, for one mark, the likelihood ratio (chance of the mark as observed if it is that
sign, over its chance as a mark taken at random) of each sign content that is worth naming; all
others are ``NEVER``.
"""

import math
from collections import defaultdict

from planish.marks.letters import seen_given
from planish.marks.seen import FORM_AT_LARGE, Seen, fold

# Size of the flat contents: how many devices, words and numbers a chance mark is drawn from.
DEVICES, WORDS, NUMBERS, ALPHABET = 120.0, 300.0, 200.0, 24.0
NEVER = 1e-6
_OTHER_FORM = 0.02
_RIGHT_FORM = 0.95
_HIT = 0.9


def alnum(text: str) -> str:
    """Folded letters and figures only."""
    return "".join(c for c in fold(text) if c.isalnum())


class Contents:
    """Contents of signs that do not change with the year: kind and value, numbered."""

    def __init__(self) -> None:
        self._ids: dict[tuple[str, str], int] = {}
        self._devices: dict[str, list[int]] = defaultdict(list)
        self._texts: dict[str, list[tuple[int, float]]] = defaultdict(list)
        self._numbers: dict[str, list[tuple[int, float]]] = defaultdict(list)
        self._letters: list[tuple[int, tuple[str, ...]]] = []
        self._forms: dict[str, list[int]] = defaultdict(list)

    def add(self, kind: str, value: str) -> int:
        """Number of a content; equal contents share one."""
        key = (kind, value)
        if key in self._ids:
            return self._ids[key]
        number = self._ids[key] = len(self._ids)
        if kind == "device":
            self._devices[value].append(number)
        elif kind in ("text", "number"):
            options = list(dict.fromkeys(filter(None, map(alnum, value.split("|")))))
            # spellings are listed in order of use: Zipf's law shares the chance among them
            total = math.fsum(1 / rank for rank in range(1, len(options) + 1))
            for rank, option in enumerate(options, 1):
                table = self._numbers if option.isdigit() else self._texts
                table[option].append((number, 1 / rank / total))
        elif kind == "letter" and value:
            self._letters.append((number, tuple(fold(v) for v in value.split())))
        else:
            self._forms[kind].append(number)
        return number

    def ratios(self, mark: Seen) -> dict[int, float]:
        """Ratios of the contents that the mark may show."""
        if mark.form == "illegible":
            return dict.fromkeys(range(len(self._ids)), 1.0)
        at_large = FORM_AT_LARGE[mark.form]
        found: dict[int, float] = {}
        for kind in ("initials", "name", "figures", "letter"):
            right = (1.0 if kind in ("figures", "letter") else _RIGHT_FORM) / at_large
            wrong = _OTHER_FORM if kind in ("initials", "name") else NEVER
            for number in self._forms[kind]:
                found[number] = right if mark.form == kind else wrong
        if mark.form == "device" and not mark.town:
            for device, chance in mark.devices.items():
                for number in self._devices.get(device, ()):
                    found[number] = chance * DEVICES / at_large
        elif mark.form == "letter" and mark.letters:
            said, state = mark.letters[0]
            for number, options in self._letters:
                chance = math.fsum(seen_given(said, v, state) for v in options) / len(options)
                found[number] = chance * ALPHABET / at_large
        if mark.form != "device":
            self._add_texts(mark, at_large, found)
        return found

    def _add_texts(self, mark: Seen, at_large: float, found: dict[int, float]) -> None:
        def offer(numbers: list[tuple[int, float]], ratio: float) -> None:
            for number, share in numbers:
                found[number] = max(found.get(number, 0.0), share * ratio)

        if mark.form in ("figures", "mixed", "word") and mark.number:
            digits = mark.number.lstrip("0")
            for value in {digits, digits.removesuffix("1000")}:
                offer(self._numbers.get(value, []), _HIT * NUMBERS / at_large)
        if mark.plain in self._texts:
            offer(self._texts[mark.plain], _HIT * _size(mark.plain) / at_large)
        elif mark.lost and len(mark.plain) >= 3:
            for text, numbers in self._texts.items():
                if gapped(mark.plain, text):
                    offer(numbers, _HIT * _size(text) / at_large)


def _size(text: str) -> float:
    """Among how many equally long texts a chance text is drawn."""
    return WORDS if len(text) > 2 else ALPHABET ** len(text)


def gapped(seen: str, true: str) -> bool:
    """Whether a text with ``?`` for lost letters may be the true one.

    >>> gapped("ST?RL??", "STERLING"), gapped("ST?R", "COIN")
    (True, False)
    """
    if len(seen) == len(true):
        return all(a in ("?", b) for a, b in zip(seen, true, strict=True))
    kept = seen.replace("?", "")
    at = 0
    for c in true:
        if at < len(kept) and kept[at] == c:
            at += 1
    return at == len(kept) and len(kept) * 2 >= len(true)
