"""Numbers among the marks, each with what stands before and after it.

Reading only: what a number means is the matter of ``numbers.py``.
"""

import re
import unicodedata
from bisect import bisect_right
from collections.abc import Iterable, Sequence

import msgspec

from planish.marks.observation import Mark
from planish.marks.patents import PatentDate, patent_dates
from planish.marks.seen import fold
from planish.marks.transcription import TranscriptionError, parse

#: numbers longer than this stand for nothing that the bench knows
_MOST_DIGITS = 9
#: how much text is looked at, as much as a description may have
MOST_CHARACTERS = 20_000
#: how many numbers of one piece are looked at
MOST = 60
_REACH = 24
_VULGAR = {"½": " 1/2", "¼": " 1/4", "¾": " 3/4"}
_DASHES = str.maketrans({"–": "-", "—": "-", "−": "-", "‐": "-"})
#: words after a number that belong to it, beside letters that follow without a space
_UNITS = frozenset(
    ("OZ", "OZS", "OZT", "DWT", "DWTS", "G", "GR", "GRAM", "GRAMS", "GRAMM", "LOT", "LOTH", "LOD", "LODIG",
     "PINT", "PINTS", "PT", "CL", "ML", "CM", "MM", "IN", "INCH", "INCHES", "QT", "S", "H", "FINE", "K", "KT", "CT")
)  # fmt: skip
_OUNCES = re.compile(r"(?P<a>\d+)[ ]?OZS?\.?[ ]?(?P<b>\d+)(?:[ ]?DWTS?\.?)?(?![\d./])")
_NUMBER = re.compile(
    r"(?P<lead>(?<!\d)[.,])?"
    r"(?P<num>\d+(?:[ ]?[-:=./,·][ ]?\d+)*(?:[ ]\d/\d)?)"
    r"(?P<unit>[ ]?[^\W\d_]+\.?)?"
)


class Figures(msgspec.Struct, frozen=True, kw_only=True):
    """One number as it stands.

    mark: place of its mark in the list. shown: the number with the letters that follow it at once.
    number: the number alone, plain figures. groups: runs of figures; sign: what parts them.
    unit: the letters after it. lead: the point before it. glued: letters right before it.
    before: capitals before it, of its own mark and the marks before.
    alone: whether its mark holds nothing else. date: the patent date of which it is a part.
    """

    mark: int
    shown: str
    number: str
    groups: tuple[str, ...]
    sign: str = ""
    unit: str = ""
    lead: str = ""
    glued: str = ""
    before: str = ""
    alone: bool = False
    date: PatentDate | None = None

    @property
    def fraction(self) -> str:
        """The figures after the point, or over 1000: 925 for .925, 0,925 and 925/1000; else none."""
        if len(self.groups) == 2 and self.groups[1] == "1000" and self.sign in "/-":
            return self.groups[0]
        if len(self.groups) == 2 and self.groups[0] == "0" and self.sign in ".,":
            return self.groups[1]
        return self.groups[0] if self.lead and len(self.groups) == 1 else ""

    @property
    def value(self) -> int | None:
        """The whole number, where it is one; commas may part its thousands."""
        thousands = self.sign == "," and all(len(g) == 3 for g in self.groups[1:])
        if self.fraction or not self.groups or (self.sign and not thousands):
            return None
        return int("".join(self.groups))


def plain_text(text: str) -> str:
    """A transcription as capitals with European figures; the text itself where it is none."""
    for sign, spelled in _VULGAR.items():
        text = text.replace(sign, spelled)
    try:
        text = parse(text).plain
    except TranscriptionError:
        text = text[:400]
    text = fold(text).translate(_DASHES)
    return "".join(
        str(unicodedata.decimal(c)) if not c.isascii() and c.isdecimal() else c for c in text
    )


def figures(marks: Sequence[Mark]) -> tuple[Figures, ...]:
    """Every number of the marks, in order; a patent date counts as one.

    >>> [f.shown for f in figures((Mark(text="830S"), Mark(text="PAT. JUL"), Mark(text="13.80")))]
    ['830S', 'JUL 13.80']
    """
    texts = [(n, plain_text(m.text)) for n, m in enumerate(marks) if m.text]
    if not any(c.isdecimal() for _, text in texts for c in text):
        return ()
    stream = "\n".join(text for _, text in texts)[:MOST_CHARACTERS]
    starts: list[int] = []
    at = 0
    for _, text in texts:
        starts.append(at)
        at += len(text) + 1

    def place(offset: int) -> int:
        return bisect_right(starts, offset) - 1

    found: list[tuple[int, Figures]] = []
    taken = bytearray(len(stream))
    for date in patent_dates(stream):
        shown = " ".join(stream[date.start : date.end].split())
        found.append(
            (date.start, Figures(mark=texts[place(date.end - 1)][0], shown=shown, number="",
                                 groups=(), before=_before(stream, date.start), date=date))
        )  # fmt: skip
        taken[date.start : date.end] = b"\1" * (date.end - date.start)
    for match in _matches(stream):
        start, end = match.span()
        if any(taken[start:end]):
            continue
        taken[start:end] = b"\1" * (end - start)
        if (one := _figures(match, stream)) is not None:
            here = place(start)
            alone = texts[here][1].strip(" .") == match.group(0).strip(" .")
            found.append((start, msgspec.structs.replace(one, mark=texts[here][0], alone=alone)))
    return tuple(f for _, f in sorted(found, key=lambda f: f[0])[:MOST])


def _matches(stream: str) -> Iterable[re.Match[str]]:
    yield from _OUNCES.finditer(stream)
    yield from _NUMBER.finditer(stream)


def _before(stream: str, start: int) -> str:
    return stream[max(0, start - _REACH) : start].replace("\n", " ")


def _figures(match: re.Match[str], stream: str) -> Figures | None:
    """The number of a match; None if figures are lost or it is too long."""
    start, end = match.span()
    if "?" in stream[max(0, start - 1) : start] + stream[end : end + 1]:
        return None
    parts = match.groupdict()
    before = _before(stream, start)
    glued = re.search(r"[^\W\d_]+\Z", stream[max(0, start - _REACH) : start])
    if "a" in parts:
        groups: tuple[str, ...] = (parts["a"], parts["b"])
        number, sign, unit = f"{parts['a']}-{parts['b']}", "oz", "OZ"
    else:
        number = re.sub(r"[ ]?([-:=./,·])[ ]?", r"\1", parts["num"])
        groups = tuple(re.findall(r"\d+", number))
        sign = next((c for c in number if not c.isdecimal()), "")
        unit = (parts["unit"] or "").strip(" .")
    if max(map(len, groups)) > _MOST_DIGITS or len(groups) > 4:
        return None
    return Figures(
        mark=0,
        shown=_shown(match, unit),
        number=number,
        groups=groups,
        sign=sign,
        unit=unit,
        lead=parts.get("lead") or "",
        glued=glued.group(0) if glued else "",
        before=before,
    )


def _shown(match: re.Match[str], unit: str) -> str:
    """The number with its unit; a word after it that is no unit is left to stand alone."""
    text = " ".join(match.group(0).split())
    head, space, _ = text.rpartition(" ")
    return (
        head if space and unit and text.rstrip(".").endswith(unit) and unit not in _UNITS else text
    )
