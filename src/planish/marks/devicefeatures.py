"""Finding devices by plain features, without knowing what the picture is called.

A feature is what anyone sees: which way it faces, how many, crowned or not, sunk or raised, in what
outline. The library records them in the column ``features`` and outlines in the signs.
"""

from collections import defaultdict
from collections.abc import Iterable, Mapping

import msgspec

from planish.library.rows import Device, Sign
from planish.marks.devicesearch import features_of
from planish.marks.devicewords import fold, related, stems

#: what people say for a feature, by key and value
_SAID = {
    ("crowned", "yes"): "crowned; with crown; with a crown; under a crown; crown above; crown on top",
    ("crowned", "no"): "uncrowned; not crowned; without crown; without a crown; no crown",
    ("raised", "yes"): "raised; in relief; relief; cameo",
    ("raised", "no"): "sunk; sunken; incuse; intaglio; not raised; stamped in",
    ("facing", "left"): "left; to the left; facing left; looking left; turned left; dexter",
    ("facing", "right"): "right; to the right; facing right; looking right; turned right; sinister",
    ("facing", "front"): "front; facing front; full face; facing you; affronty; caboshed; frontal",
    ("view", "profile"): "profile; in profile; side view; side on",
    ("posture", "walking"): "walking; passant; striding",
    ("posture", "rampant"): "rampant; on hind legs; rearing; on its hind legs",
    ("posture", "seated"): "seated; sitting; sejant",
    ("posture", "standing"): "standing; statant",
    ("posture", "flying"): "flying; volant",
    ("posture", "displayed"): "displayed; spread; wings spread; spread wings",
    ("posture", "swimming"): "swimming",
    ("upright", "no"): "upside down; inverted; upside-down; sideways; on its side; lying",
    ("upright", "yes"): "upright; erect",
    ("beard", "yes"): "bearded; with beard; with a beard; beard",
    ("winged", "yes"): "winged; with wings; wings",
    ("erased", "yes"): "erased; torn; torn off; ragged neck; jagged neck",
    ("crossed", "yes"): "crossed; in saltire; crossing",
    ("part", "head"): "head; head only; only a head; a head",
    ("heads", "2"): "two heads; two headed; double headed; two-headed; double-headed",
    ("guardant", "yes"): "guardant; gardant; looking out; head turned",
}  # fmt: skip
_BY_WORDS = {said: key for key, words in _SAID.items() for said in words.split("; ")}
_COUNTS = {
    "one": "1",
    "two": "2",
    "pair": "2",
    "three": "3",
    "four": "4",
    "five": "5",
    "seven": "7",
}
#: words of outlines that mean the same (common practice)
_OUTLINES = {
    "diamond": "lozenge", "rhombus": "lozenge", "circle": "round", "circular": "round",
    "ellipse": "oval", "octagonal": "octagon", "clover": "trefoil", "arched": "arch",
    "rectangular": "rectangle", "triangular": "triangle",
}  # fmt: skip


class UnknownFeatureError(ValueError):
    """A feature that no device of the library records. ``said``: the feature."""

    def __init__(self, said: str) -> None:
        self.said = said
        super().__init__(f"no device records the feature '{said}'")


class Fit(msgspec.Struct, frozen=True):
    """A device against the features asked for: which it has, and which it does not record."""

    device: Device
    agrees: tuple[str, ...]
    unrecorded: tuple[str, ...] = ()


def outlines_of(devices: Iterable[Device], signs: Iterable[Sign]) -> dict[str, frozenset[str]]:
    """Outlines in which the library's marks show each device."""
    found: dict[str, set[str]] = defaultdict(set)
    for sign in signs:
        if sign.kind == "device" and sign.outline:
            found[sign.value].add(sign.outline)
    for device in devices:
        if outline := features_of(device).get("outline"):
            found[device.id].add(outline)
    return {device: frozenset(said) for device, said in found.items()}


def parse_feature(said: str) -> tuple[str, str] | None:
    """Key and value of a feature in words; None where it is no common one.

    >>> parse_feature("facing left"), parse_feature("not crowned"), parse_feature("three")
    (('facing', 'left'), ('crowned', 'no'), ('count', '3'))
    >>> parse_feature("posture=seated"), parse_feature("holds axe")
    (('posture', 'seated'), None)
    """
    text = " ".join(fold(said).split())
    if "=" in text:
        key, _, value = text.partition("=")
        return key.strip(), value.strip()
    if text in _BY_WORDS:
        return _BY_WORDS[text]
    number = text.removeprefix("count ").strip()
    if number.isdigit() or number in _COUNTS:
        return "count", _COUNTS.get(number, number)
    return None


def _bears(features: Mapping[str, str], said: str) -> bool:
    """Whether one feature of a device holds every word said, or one of the same meaning."""
    wanted = [related(w) for w in stems(said)]
    for key, value in features.items():
        has = set(stems(f"{key} {value if value != 'yes' else ''}"))
        if wanted and all(
            any(o in has and w > 0.9 for o, w in options.items()) for options in wanted
        ):
            return True
    return False


def _judge(features: Mapping[str, str], said: str) -> bool | None:
    """Whether a device has the feature; None where it does not record it."""
    known = parse_feature(said)
    if known is None:
        return True if _bears(features, said) else None
    key, value = known
    if key not in features:
        return None
    return fold(features[key]) == value


def _outlined(outlines: frozenset[str], said: str) -> bool | None:
    wanted = fold(said).strip()
    wanted = _OUTLINES.get(wanted, wanted)
    return True if any(wanted in _OUTLINES.get(o, o) for o in outlines) else None


def by_features(
    devices: Iterable[Device],
    asked: Iterable[str],
    outline: str = "",
    outlines: Mapping[str, frozenset[str]] | None = None,
) -> list[Fit]:
    """Devices that have at least one of the features and contradict none, the best first.

    Raises:
        UnknownFeatureError: no device at all has a feature.
    """
    rows, wanted = list(devices), list(asked)
    every = {d.id: features_of(d) for d in rows}
    shapes = outlines or {}
    for said in wanted:
        if not any(_judge(features, said) for features in every.values()):
            raise UnknownFeatureError(said)
    if outline and not any(_outlined(shapes.get(d.id, frozenset()), outline) for d in rows):
        raise UnknownFeatureError(f"outline {outline}")
    found = []
    for device in rows:
        judged = [(said, _judge(every[device.id], said)) for said in wanted]
        if outline:
            has = _outlined(shapes.get(device.id, frozenset()), outline)
            judged.append((f"outline {outline}", has))
        agrees = tuple(said for said, has in judged if has)
        if agrees and all(has is not False for _, has in judged):
            found.append(Fit(device, agrees, tuple(said for said, has in judged if has is None)))
    return sorted(found, key=lambda f: (-len(f.agrees), f.device.label))
