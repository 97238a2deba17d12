"""Line drawings of devices: only those whose words leave no choice; others stand as their name.

The paths lie in ``drawings.json``, made from our own sketches by ``scripts/report_drawings.py``.
"""

import functools
import json
import re
from pathlib import Path

import msgspec

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


def drawing(device: str) -> Drawing | None:
    """The drawing of a device in words; None where there is none.

    >>> drawing("Leopard’s head").mirrored, drawing("lion passant facing right").mirrored
    (False, True)
    >>> drawing("lion") is None
    True
    """
    text = " ".join(device.replace("’", "'").casefold().split())
    turn = _TURN.search(text)
    if turn:
        text = text[: turn.start()] + text[turn.end() :]
    words, drawings = _drawn()
    name = words.get(re.sub(r"^(?:a|an|the)\s+", "", text.strip(" ,.;")))
    if name is None:
        return None
    width, height, path = drawings[name]
    return Drawing(
        path=str(path),
        width=float(str(width)),
        height=float(str(height)),
        mirrored=turn is not None and turn[1] == "right",
    )
