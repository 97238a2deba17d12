"""Line drawings of devices: only those whose words leave no choice; others stand as their name.

Any of a device's words in the library's thesaurus serves, where they name that device alone.

The paths lie in ``drawings.json``, made from our own sketches by ``scripts/report_drawings.py``.
"""

import functools
import json
import re
from pathlib import Path

import msgspec

from planish.library import load
from planish.marks.thesaurus import Thesaurus

_TURN = re.compile(r",?\s*(?:facing|turned|looking|to)(?: the| to)*\s+(left|right)\b")


class Drawing(msgspec.Struct, frozen=True, kw_only=True):
    """A device as one path with its top left at nought. mirrored: turned to the right."""

    path: str
    width: float
    height: float
    mirrored: bool = False


@functools.cache
def _drawn() -> tuple[dict[str, str], dict[str, list[object]]]:
    data = json.loads((Path(__file__).parent / "drawings.json").read_text("utf-8"))
    return data["words"], data["drawings"]


@functools.cache
def _thesaurus() -> Thesaurus:
    return Thesaurus(load().devices)


@functools.lru_cache(maxsize=1024)
def _named(text: str) -> str:
    """The label of the one device that the words name in full, or of that which holds all named."""
    thesaurus = _thesaurus()
    named = {device for device, how_well in thesaurus.named(text).items() if how_well == 1.0}
    widest = [d for d in named if all(o == d or d in thesaurus.ancestors(o) for o in named)]
    return thesaurus.devices[widest[0]].label.casefold() if len(widest) == 1 else ""


def drawing(device: str) -> Drawing | None:
    """The drawing of a device in words; None where there is none.

    >>> drawing("Leopard’s head").mirrored, drawing("lion passant facing right").mirrored
    (False, True)
    >>> drawing("lion") is None
    True
    >>> drawing("crowned leopard") == drawing("leopard's head crowned")
    True
    """
    text = " ".join(device.replace("’", "'").casefold().split())
    turn = _TURN.search(text)
    if turn:
        text = text[: turn.start()] + text[turn.end() :]
    words, drawings = _drawn()
    text = re.sub(r"^(?:a|an|the)\s+", "", text.strip(" ,.;"))
    name = words.get(text) or words.get(_named(text))
    if name is None:
        return None
    width, height, path = drawings[name]
    return Drawing(
        path=str(path),
        width=float(str(width)),
        height=float(str(height)),
        mirrored=turn is not None and turn[1] == "right",
    )
