"""From a writer's words for a picture to devices of the thesaurus.

A person may use any of a device's words; a wider word (leopard's head) speaks for each narrower
device (crowned, uncrowned), a narrower one weakly for the wider.
"""

import re
import unicodedata
from collections import defaultdict
from collections.abc import Iterable

from planish.library.rows import Device
from planish.marks.devicewords import stem

# Chance of using a word of device A where the punch shows device B, by how they are related.
# The bench's own rates (common practice), see docs/honesty.md.
_SAME = 0.85
_WIDER_WORD = 0.35
_NARROWER_WORD = 0.22
_SIBLING = 0.002
_WORN = 0.001
_PARTLY = 0.25
UNRELATED = 2e-5

_FILLER = frozenset(
    [
        "a",
        "an",
        "the",
        "of",
        "with",
        "in",
        "on",
        "and",
        "its",
        "by",
        "to",
        "facing",
        "mark",
        "device",
        "symbol",
        "head's",
        "single",
        "small",
        "large",
    ]
)


def words(text: str) -> tuple[str, ...]:
    """Folded words of a phrase: no case, accents, possessives or filler.

    >>> words("Crowned Leopard's head")
    ('crowned', 'leopard', 'head')
    """
    plain = unicodedata.normalize("NFKD", text).casefold().replace("’", "'")
    plain = "".join(c for c in plain if not unicodedata.combining(c))
    plain = re.sub(r"'s\b|s'\b", "", plain)
    found = re.findall(r"\w+", plain)
    return tuple(w for w in found if w not in _FILLER)


class Thesaurus:
    """Index of the devices by their words. Build once per library."""

    def __init__(self, devices: Iterable[Device]) -> None:
        self.devices = {d.id: d for d in devices}
        self._exact: dict[frozenset[str], set[str]] = defaultdict(set)
        self._by_word: dict[str, set[str]] = defaultdict(set)
        self._names: dict[str, list[frozenset[str]]] = {}
        self._worn: dict[str, set[str]] = {}
        for device in self.devices.values():
            names = [device.label, device.id.replace("-", " "), *device.words.split(";")]
            sets = [frozenset(words(n)) for n in names if n.strip()]
            self._names[device.id] = [s for s in sets if s]
            for s in self._names[device.id]:
                self._exact[s].add(device.id)
                for w in s:
                    self._by_word[w].add(device.id)
        for device in self.devices.values():
            self._worn[device.id] = {
                found
                for w in device.worn_as.split(";")
                if w.strip()
                for found in self._exact.get(frozenset(words(w)), ())
            }
        self._singular: dict[frozenset[str], set[str]] = defaultdict(set)
        for said, named in self._exact.items():
            self._singular[frozenset(map(stem, said))] |= named
        self._wide = {d: self._above(d) for d in self.devices}
        self._cache: dict[str, dict[str, float]] = {}

    def ancestors(self, device_id: str) -> tuple[str, ...]:
        """Wider devices, nearest first."""
        return self._wide.get(device_id, ())

    def _above(self, device_id: str) -> tuple[str, ...]:
        found: list[str] = []
        at = self.devices.get(device_id)
        while at and at.broader and at.broader in self.devices and at.broader not in found:
            found.append(at.broader)
            at = self.devices[at.broader]
        return tuple(found)

    def named(self, phrase: str) -> dict[str, float]:
        """Devices that the phrase names, with how well (0 to 1), best only."""
        said = frozenset(words(phrase))
        if not said:
            return {}
        if said in self._exact:
            return dict.fromkeys(self._exact[said], 1.0)
        single = self._singular.get(frozenset(map(stem, said)))
        if single:
            return dict.fromkeys(single, 1.0)
        scores: dict[str, float] = {}
        for device_id in {d for w in said for d in self._by_word.get(w, ())}:
            best = 0.0
            for name in self._names[device_id]:
                common = len(said & name)
                if common:
                    # all of a device's words said, with extras, beats a part of them
                    cover = common / len(name)
                    best = max(best, cover * cover * (common / len(said)) ** 0.5)
            if best > 0.2:
                scores[device_id] = best
        if not scores:
            return {}
        top = max(scores.values())
        return {d: s for d, s in scores.items() if s >= 0.75 * top}

    def chances(self, phrase: str) -> dict[str, float]:
        """Chance of the phrase given each related device; others: ``UNRELATED``."""
        if phrase in self._cache:
            return self._cache[phrase]
        named = self.named(phrase)
        result: dict[str, float] = defaultdict(float)

        def offer(device_id: str, chance: float) -> None:
            result[device_id] = max(result[device_id], chance)

        wide = self._wide
        for device_id, how_well in named.items():
            strength = how_well if how_well == 1.0 else how_well * _PARTLY * 2
            offer(device_id, _SAME * strength)
            parents = wide[device_id]
            for parent in parents:
                offer(parent, _NARROWER_WORD * strength)
            for other, above in wide.items():
                if device_id in above:
                    offer(other, _WIDER_WORD * strength)
                elif parents and above and parents[0] == above[0] and other != device_id:
                    offer(other, _SIBLING * strength)
            for other in self._worn[device_id]:
                offer(other, _WORN * strength)
        for other, worn in self._worn.items():
            for device_id in named:
                if device_id in worn:
                    offer(other, _WORN)
        if len(self._cache) > 4096:
            self._cache.clear()
        self._cache[phrase] = dict(result)
        return self._cache[phrase]
