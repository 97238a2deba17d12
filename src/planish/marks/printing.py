"""A mark as description text: the words that ``describe`` reads back as the same mark.

Printed are letters or picture, letterform, charge, outline, legibility, technique, how often struck, what the
observer calls it, and doubt. Where a mark sits (part, place), its photograph and its note are the
record's and not printed.
"""

import re

from planish.marks.observation import Case, Legibility, Mark, Style, Technique
from planish.marks.transcription import parse, print_

_STYLES = {
    Style.ROMAN: "roman",
    Style.ITALIC: "italic",
    Style.BLACK_LETTER: "black-letter",
    Style.LOMBARDIC: "lombardic",
    Style.COURT_HAND: "court-hand",
    Style.SCRIPT: "script",
    Style.SANS: "sans-serif",
    Style.GAELIC: "gaelic",
}
_CASES = {Case.CAPITAL: "capital", Case.SMALL: "small"}
_LEGIBILITY = {
    Legibility.CLEAR: "clear",
    Legibility.WORN: "worn",
    Legibility.OBSCURE: "obscure",
    Legibility.ILLEGIBLE: "illegible",
}
_TECHNIQUES = {
    Technique.RAISED: "raised",
    Technique.INCUSE: "incuse",
    Technique.CAST: "cast",
    Technique.PRINTED: "printed",
    Technique.ENGRAVED: "engraved",
    Technique.SCRATCHED: "scratched",
}
#: a charge that begins otherwise is joined to the letters by "with"
_JOINS = re.compile(
    r"(?:with|crowned|below|beneath|under|above|over|between|beside|either|flanked|surmounted|topped)\b"
)
_TIMES = {2: "twice", 3: "three times", 4: "four times"}


class PrintingError(ValueError):
    """A mark with nothing to print: what is wrong and how to mend it."""


def print_mark(mark: Mark) -> str:
    """The mark in words.

    Raises:
        PrintingError: the mark has neither letters nor picture.
        TranscriptionError: its letters are no transcription.

    >>> print_mark(
    ...     Mark(text="k", style=Style.SCRIPT, case=Case.SMALL, case_sure=True, outline="shield")
    ... )
    'small script letter "k" in a shield'
    """
    if mark.text is None and mark.device is None:
        raise PrintingError("a mark without letters or picture has no words; give it one of them")
    words = [mark.hint + ":" if mark.hint else "", "probably" if mark.doubtful else ""]
    # one small word may also name a piece (cup, spoon): between quotation marks it is struck
    lone = mark.device is not None and mark.device.isalpha() and mark.device.islower()
    # before a picture it may be read as a part of its name (incuse head), so it follows
    behind = mark.device is not None and mark.technique is not None
    technique = _TECHNIQUES[mark.technique] if mark.technique else ""
    words.append("" if behind else technique)
    if mark.legibility is not None:
        words.append(_LEGIBILITY[mark.legibility])
    if mark.device is not None:
        words.append(f'"{mark.device}"' if lone else mark.device)
        words.append(f"({technique})" if behind else "")
    else:
        words += _letters(mark, mark.text or "")
    if mark.charge:
        words.append(mark.charge if _JOINS.match(mark.charge) else f"with {mark.charge}")
    if mark.outline:
        words.append(f"in {_article(mark.outline)}")
    text = " ".join(w for w in words if w)
    if mark.times > 1:
        text += f", struck {_TIMES.get(mark.times, f'{mark.times} times')}"
    return text


def _letters(mark: Mark, text: str) -> list[str]:
    """Case and style before the letters; the case is left out where the letter itself shows it."""
    # a description's underscore is an underline: uncertain letters go into brackets
    shown = re.sub(r"_(\w)", r"[\1]", print_(parse(text)))
    case = _CASES[mark.case] if mark.case and mark.case_sure else ""
    style = _STYLES[mark.style] if mark.style else ""
    lone = "letter" if case or style else ""
    return [case, style, lone, f'"{shown}"']


def _article(outline: str) -> str:
    first = outline.split(maxsplit=1)[0]
    if first in ("two", "three", "four", "five", "six", "separate"):
        return outline
    return ("an " if first[0] in "aeiou" else "a ") + outline
