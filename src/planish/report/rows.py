"""Rows of the page that are made from one thing observed."""

import re

from planish.marks.observation import Legibility, Mark, Technique
from planish.report.letters_svg import CAP
from planish.report.marks_svg import mark_in_words, mark_svg
from planish.report.view import MarkRow

#: height of a capital in a drawing [mm]
_CAP_MM = 5.0
_SIZE = re.compile(r'width="(\d+)" height="(\d+)"')

_TECHNIQUE = {
    Technique.RAISED: "raised",
    Technique.INCUSE: "sunk",
    Technique.ENGRAVED: "engraved",
    Technique.SCRATCHED: "scratched",
    Technique.CAST: "cast",
    Technique.PRINTED: "printed",
}


def mark_row(number: str, mark: Mark, *, read_as: str = "", sure: str = "") -> MarkRow:
    """A mark with its drawing, as a row of the table of marks."""
    svg = mark_svg(mark)
    match = _SIZE.search(svg)
    width, height = (float(v) for v in match.groups()) if match else (float(CAP), float(CAP))
    return MarkRow(
        number=number,
        svg=svg,
        width=round(width * _CAP_MM / CAP, 2),
        height=round(height * _CAP_MM / CAP, 2),
        alt=mark_in_words(mark),
        transcription=" ".join(x for x in (mark.device, mark.text) if x) or "not read",
        seen=_seen(mark),
        place=", ".join(x for x in (mark.part, mark.place) if x),
        read_as=read_as,
        sure=sure,
    )


def _seen(mark: Mark) -> str:
    """Style, outline, technique and state in words, those recorded."""
    parts = [
        " ".join(x.value for x in (mark.style, mark.case) if x),
        _TECHNIQUE[mark.technique] if mark.technique else "",
        f"in {mark.outline}" if mark.outline else "",
        mark.legibility.value if mark.legibility and mark.legibility != Legibility.CLEAR else "",
        f"struck {mark.times} times" if mark.times > 1 else "",
        "reading doubtful" if mark.doubtful else "",
        mark.charge or "",
        mark.note or "",
    ]
    return ", ".join(p for p in parts if p)
