"""What stands beside the letters in one punch: the writer's words -> pictures and their places."""

import re

import msgspec

_ABOVE = frozenset(("above", "over", "surmounting", "atop"))
_BELOW = frozenset(("below", "beneath", "under", "underneath"))
_BESIDE = frozenset(("beside", "flanking"))
_SMALL = frozenset(
    ("a", "an", "the", "with", "each", "which", "of", "to", "on", "within", "small", "by", "its")
)


class Charge(msgspec.Struct, frozen=True):
    """One picture beside the letters. where: above, below, between, beside or within."""

    device: str
    where: str


def placed(charge: str) -> tuple[Charge, ...]:
    """The pictures of a charge, in the order told.

    >>> [(c.device, c.where) for c in placed("with a shell above and a mullet below")]
    [('shell', 'above'), ('mullet', 'below')]
    >>> [(c.device, c.where) for c in placed("below a crown")]
    [('crown', 'above')]
    """
    found: list[Charge] = []
    for piece in re.split(r"[,;]|\band\b", charge.casefold()):
        words = [w for w in piece.split() if w not in _SMALL]
        if words[:1] == ["crowned"]:
            found.append(Charge("crown", "above"))
            words = words[1:]
        if not words:
            continue
        device = " ".join(w for w in words if w not in _ABOVE | _BELOW | _BESIDE | _AROUND)
        if device:
            found.append(Charge(device, _where(words)))
    return tuple(found)


_AROUND = frozenset(("between", "either", "side", "sides", "flanked", "separated", "surmounted",
                     "topped", "enclosing", "containing"))  # fmt: skip


def _where(words: list[str]) -> str:
    """A position said before the picture is that of the letters: "over a dot" puts the dot below."""
    first = words[0]
    if first in _ABOVE:
        return "below"
    if first in _BELOW or first in ("surmounted", "topped"):
        return "above"
    said = set(words)
    if said & _ABOVE:
        return "above"
    if said & _BELOW:
        return "below"
    if "between" in said or "separated" in said:
        return "between"
    if said & (_BESIDE | {"either", "side", "sides", "flanked"}):
        return "beside"
    return "within"


__all__ = ["Charge", "placed"]
