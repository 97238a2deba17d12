"""Finding devices by ordinary words and plain features: what a worn picture may be.

Unlike ``thesaurus.py``, which gives the engine the chance of a writer's word, this answers a person
who looks: every device that the words may mean, best first, each with the reason.
"""

import difflib
import math
from collections import Counter, defaultdict
from collections.abc import Iterable, Mapping

import msgspec

from planish.library.rows import Device, Sign
from planish.marks.devicewords import known, related, stems

# Weights of the search, set by hand (common practice): a device's own names, its plain features,
# its shape group and the words of its wider device, in this order.
_FEATURE, _GROUP, _WIDER = 0.9, 0.6, 0.6
#: a device that holds the one named, is held by it, is taken for it, or it for the device; both
_HOLDS, _HELD, _ALIKE, _ALIKE_BOTH = 0.8, 0.6, 0.5, 0.6
#: a device's own label; another of its names; a word that the library never uses
_BY_LABEL, _BY_NAME, _UNKNOWN = 1.0, 0.98, 0.4
#: where the words name a device in full, what they name in part counts this much
_IN_PART = 0.6
#: a device that marks of the library show goes before one that none shows
_IN_USE = 0.12
_LEAST, _SPELLING, _LEAST_SPELT = 0.22, 0.8, 4
_FULLY, _TIED = 0.97, 0.975
#: what the shape groups of the thesaurus are in ordinary words
_GROUP_WORDS = {
    "beast": "animal beast", "bird": "bird", "head": "head face", "flower": "flower",
    "tree": "tree", "leaf": "leaf", "figure": "person figure", "human": "person figure",
    "tower": "building", "vessel": "vessel", "peak": "point", "cross": "cross", "star": "star",
    "insect": "insect", "oval": "oval", "disc-rays": "round ray", "script": "writing",
}  # fmt: skip


class Found(msgspec.Struct, frozen=True):
    """A device that the words may mean: ``score`` from 0 to 1, and why."""

    device: Device
    score: float
    why: str


class Answer(msgspec.Struct, frozen=True):
    """Devices found, best first. read_as: misspelt words and what they were taken for."""

    found: tuple[Found, ...]
    read_as: dict[str, str] = {}


def features_of(device: Device) -> dict[str, str]:
    """Plain features of a device, without the notations of other vocabularies.

    >>> d = Device(
    ...     id="x",
    ...     label="x",
    ...     features="facing=left;iconclass=25F3",
    ...     source="practice",
    ...     confidence="practice",
    ... )
    >>> features_of(d)
    {'facing': 'left'}
    """
    parts = (f.partition("=") for f in device.features.split(";") if f.strip())
    return {k.strip(): v.strip() for k, _, v in parts if k.strip() != "iconclass"}


def in_use(signs: Iterable[Sign]) -> dict[str, int]:
    """How many marking systems show each device."""
    shown = {(s.value, s.system) for s in signs if s.kind == "device"}
    return dict(Counter(device for device, _ in shown))


def _listed(text: str) -> list[str]:
    return [part.strip() for part in text.split(";") if part.strip()]


class DeviceSearch:
    """Index of devices for look-ups by words. Build once per library.

    used: device id -> how many marking systems show it.
    """

    def __init__(self, devices: Iterable[Device], used: Mapping[str, int] | None = None) -> None:
        self.devices = {d.id: d for d in devices}
        self.used = dict(used or {})
        self._names: dict[str, list[frozenset[str]]] = {}
        self._bag: dict[str, dict[str, float]] = {}
        self._exact: dict[frozenset[str], set[str]] = defaultdict(set)
        for d in self.devices.values():
            names = [
                frozenset(stems(n)) for n in (d.label, d.id.replace("-", " "), *_listed(d.words))
            ]
            self._names[d.id] = list(dict.fromkeys(n for n in names if n))
            for name in self._names[d.id]:
                self._exact[name].add(d.id)
        for d in self.devices.values():
            self._bag[d.id] = self._words_about(d)
        count = Counter(w for names in self._names.values() for w in set().union(*names))
        self._rarity = {w: math.log(1 + len(self.devices) / n) for w, n in count.items()}
        self._common = math.log(1 + len(self.devices) / 3)
        self._worn = {
            d.id: {o for w in _listed(d.worn_as) for o in self._meant(w)}
            for d in self.devices.values()
        }
        # plain words that worn devices are taken for and that name no device
        self._plain: dict[frozenset[str], set[str]] = defaultdict(set)
        for d in self.devices.values():
            for word in _listed(d.worn_as):
                if not self._meant(word):
                    self._plain[frozenset(stems(word))].add(d.id)
        self._holding = {d.id: self._wider(d) for d in self.devices.values()}

    def parts(self, phrase: str) -> tuple[tuple[str, ...], tuple[str, ...]]:
        """Ids of the devices that a phrase names in full, one after another, and words left over.

        For mixed pictures as a register writes them: ``lion; anchor``, ``fleur-de-lis below``.
        """
        words, found, left = list(stems(phrase)), [], []
        while words:
            for size in range(len(words), 0, -1):
                named = self._exact.get(frozenset(words[:size]))
                if named:
                    found.append(min(named, key=lambda d: (not self._called(d, words[:size]), d)))
                    words = words[size:]
                    break
            else:
                left.append(words.pop(0))
        return tuple(found), tuple(left)

    def _called(self, device_id: str, words: list[str]) -> bool:
        return self._names[device_id][0] == frozenset(words)

    def _meant(self, word: str) -> set[str]:
        return {word} if word in self.devices else self._exact.get(frozenset(stems(word)), set())

    def _wider(self, device: Device) -> tuple[str, ...]:
        found: list[str] = []
        at = device.broader
        while at in self.devices and at not in found:
            found.append(at)
            at = self.devices[at].broader
        return tuple(found)

    def _words_about(self, device: Device) -> dict[str, float]:
        bag: dict[str, float] = {}

        def add(words: Iterable[str], weight: float) -> None:
            for word in words:
                bag[word] = max(bag.get(word, 0.0), weight)

        add((w for name in self._names[device.id] for w in name), 1.0)
        for key, value in features_of(device).items():
            said = {"yes": key, "no": ""}.get(value, f"{key} {value}")
            add(stems(said), _FEATURE)
        add(stems(_GROUP_WORDS.get(device.group, device.group)), _GROUP)
        for wider in self._wider(device):
            add(stems(self.devices[wider].label), _WIDER)
        return bag

    def _spelt(self, words: tuple[str, ...]) -> dict[str, str]:
        """Words that the library does not know and the known word nearest to each.

        Of several near words, the one that stands in a name with most of the other words.
        """
        vocabulary = {*self._rarity, *(w for bag in self._bag.values() for w in bag)}
        vocabulary |= {w for name in self._plain for w in name}
        found = {}
        for word in words:
            if word in vocabulary or known(word) or len(word) < _LEAST_SPELT:
                continue
            near = difflib.get_close_matches(word, sorted(vocabulary), 5, _SPELLING)
            others = set(words) - {word}
            if near:
                found[word] = max(
                    near,
                    key=lambda n: max(
                        (len(others & name) for names in self._names.values() for name in names
                         if n in name), default=0,
                    ),
                )  # fmt: skip
        return found

    def search(self, phrase: str, most: int | None = None) -> Answer:
        """Devices that the phrase may mean, best first."""
        words = stems(phrase)
        read_as = self._spelt(words)
        words = tuple(dict.fromkeys(read_as.get(w, w) for w in words))
        if not words:
            return Answer(())
        direct = self._direct(words)
        scores = self._spread(direct)
        for worn in self._plain.get(frozenset(words), ()):
            scores.setdefault(worn, (_ALIKE, f"worn, taken for {phrase.strip()}"))
        ranked = sorted(
            scores.items(),
            key=lambda s: (-round(s[1][0], 6), s[0] not in direct, -self.used.get(s[0], 0), s[0]),
        )
        best = ranked[0][1][0] if ranked else 0.0
        found = tuple(
            Found(self.devices[d], min(1.0, score / (1 + _IN_USE)), why)
            for d, (score, why) in self._wider_first(ranked)
            if score >= _LEAST and score >= 0.3 * best
        )
        return Answer(found[:most], read_as)

    def _direct(self, words: tuple[str, ...]) -> dict[str, float]:
        """How well each device's own names and features bear the words, 0 to 1."""
        weights = [self._rarity.get(w, self._common if known(w) else _UNKNOWN) for w in words]
        total = sum(weights)
        options = [related(w) for w in words]
        said = frozenset(words)
        found: dict[str, float] = {}
        exact: dict[str, float] = {}
        for device_id, bag in self._bag.items():
            fits = [max((w * bag[o] for o, w in option.items() if o in bag), default=0.0)
                    for option in options]  # fmt: skip
            about = sum(f * w for f, w in zip(fits, weights, strict=True)) / total
            if about < _LEAST:
                continue
            named = 0.0
            for place, name in enumerate(self._names[device_id]):
                if name == said:
                    exact[device_id] = _BY_NAME if place else _BY_LABEL
                    break
                named = max(named, self._name_fit(name, options, weights, total))
            found[device_id] = max(0.72 * named + 0.28 * about, 0.85 * about * about)
        if exact:
            found = {d: score * _IN_PART for d, score in found.items()} | exact
        return found

    def _name_fit(
        self,
        name: frozenset[str],
        options: list[dict[str, float]],
        weights: list[float],
        total: float,
    ) -> float:
        cover = 0.0
        met: dict[str, float] = {}
        for option, weight in zip(options, weights, strict=True):
            best, word = max(((option[w], w) for w in name if w in option), default=(0.0, ""))
            cover += best * weight
            if word:
                met[word] = max(met.get(word, 0.0), best)
        whole = sum(self._rarity[w] for w in name)
        told = sum(self._rarity[w] * how for w, how in met.items())
        return (cover / total) * math.sqrt(told / whole)

    def _spread(self, direct: Mapping[str, float]) -> dict[str, tuple[float, str]]:
        """Scores of the devices named, and of those wider, narrower or alike when worn."""
        found: dict[str, tuple[float, str]] = {}

        def offer(device_id: str, score: float, why: str) -> None:
            score *= 1 + _IN_USE * (self.used.get(device_id, 0) > 0)
            if score > found.get(device_id, (0.0, ""))[0]:
                found[device_id] = (score, why)

        for device_id, score in direct.items():
            offer(device_id, score, "named so" if score >= _FULLY else "by its words")
        best = max(direct.values(), default=0.0)
        for device_id, score in direct.items():
            if score < 0.85 * best:
                continue
            label = self.devices[device_id].label
            for wider in self._holding[device_id]:
                offer(wider, score * _HOLDS, f"wider than {label}")
            for other, holding in self._holding.items():
                if device_id in holding:
                    offer(other, score * _HELD, f"a kind of {label}")
                takes, taken = other in self._worn[device_id], device_id in self._worn[other]
                if takes or taken:
                    how = _ALIKE_BOTH if takes and taken else _ALIKE
                    offer(other, score * how, f"worn, looks like {label}")
        return found

    def _wider_first(
        self, ranked: list[tuple[str, tuple[float, str]]]
    ) -> list[tuple[str, tuple[float, str]]]:
        """Where words name several narrower devices alike, the one that holds them goes first."""
        if not ranked:
            return ranked
        best = ranked[0][1][0]
        tied = [d for d, (score, _) in ranked if score >= _TIED * best]
        held = Counter(w for d in tied for w in self._holding[d])
        lifted = {w: (best, "holds several that are named so")
                  for w, times in held.items() if times > 1 and w not in tied}  # fmt: skip
        rest = [(d, s) for d, s in ranked if d not in lifted]
        nearest = sorted(lifted, key=lambda w: -len(self._holding[w]))
        return [*((w, lifted[w]) for w in nearest), *rest]
