"""Letters of a punch laid out as outlines: sure, unsure, lost.

The outlines lie in ``fonts/letters.json``, by style; 400 units are the height of a capital. They
are paths, not text, so that a mark looks the same in every browser, on paper and in an archive.
"""

import functools
import json
import unicodedata
from pathlib import Path

import msgspec

from planish.marks.observation import Case, Style
from planish.marks.transcription import (
    Gap,
    Kind,
    Letter,
    LineBreak,
    Separator,
    Token,
    Transcription,
)

#: height of a capital [units]
CAP = 400
_SPACE = 150
_BETWEEN = 34
_LOST = 230
_GAP = 430
_LEADING = 560

_FONT_OF = {
    Style.ROMAN: "roman",
    Style.ITALIC: "italic",
    Style.BLACK_LETTER: "black-letter",
    Style.LOMBARDIC: "lombardic",
    Style.GAELIC: "lombardic",
    Style.COURT_HAND: "court-hand",
    Style.SCRIPT: "script",
    Style.SANS: "sans",
}


class Glyph(msgspec.Struct, frozen=True, kw_only=True):
    """One thing in a punch at its place.

    kind: sure, unsure, lost (one letter), gap (unknown number), or text (a sign without outline).
    path: outline with its origin at (x, y); empty for lost and gap.
    """

    kind: str
    x: float
    y: float
    width: float
    path: str = ""
    text: str = ""


class Block(msgspec.Struct, frozen=True, kw_only=True):
    """Letters laid out; ``box`` is left, top, right, bottom."""

    glyphs: tuple[Glyph, ...]
    box: tuple[float, float, float, float]


@functools.cache
def _styles() -> dict[str, dict[str, list[object]]]:
    file = Path(__file__).parent / "fonts" / "letters.json"
    styles: dict[str, dict[str, list[object]]] = json.loads(file.read_text("utf-8"))["styles"]
    return styles


def outline_of(char: str, style: str) -> tuple[float, str] | None:
    """Advance and path of a letter in a style, else in roman, sans or eastern; None where none."""
    for name in (style, "roman", "sans", "eastern"):
        found = _styles()[name].get(char)
        if found is not None:
            return float(str(found[0])), str(found[1])
    return None


def laid_out(
    transcription: Transcription,
    style: Style | None,
    case: Case | None,
    *,
    all_unsure: bool = False,
) -> Block:
    """The letters of a punch, line under line, each line centred."""
    name = _FONT_OF.get(style or Style.ROMAN, "roman")
    rows = [_row(line.tokens, name, case, all_unsure=all_unsure) for line in transcription.lines]
    widest = max((width for _, width in rows), default=0.0)
    glyphs: list[Glyph] = []
    top, bottom = 0.0, 0.0
    for n, (row, width) in enumerate(rows):
        shift, down = (widest - width) / 2, n * _LEADING
        glyphs += [msgspec.structs.replace(g, x=g.x + shift, y=g.y + down) for g in row]
        low, high = _reach(row)
        top, bottom = min(top, down - high), max(bottom, down + low)
    return Block(glyphs=tuple(glyphs), box=(0.0, top, max(widest, 1.0), bottom))


def _reach(row: list[Glyph]) -> tuple[float, float]:
    """How far a row reaches below and above its base line."""
    low, high = 0.0, float(CAP) if not row else 0.0
    for glyph in row:
        if glyph.path:
            ups = _heights(glyph.path)
            low, high = max(low, ups[1]), max(high, -ups[0])
        else:
            high = max(high, CAP)
    return low, high


@functools.lru_cache(maxsize=4096)
def _heights(path: str) -> tuple[float, float]:
    """Top and bottom of a path written by the font script (absolute M L H V Q C Z)."""
    x_turn = {"M": (0, 1), "L": (0, 1), "Q": (0, 1, 0, 1), "C": (0, 1, 0, 1, 0, 1), "H": (0,)}
    ys: list[float] = []
    command, numbers = "", ""
    for char in f"{path}Z":
        if not char.isalpha():
            numbers += char
            continue
        values = [float(v) for v in numbers.replace("-", " -").replace(",", " ").split()]
        if command == "V":
            ys += values
        elif command in x_turn and command != "H":
            ys += values[1::2]
        command, numbers = char, ""
    return (min(ys), max(ys)) if ys else (0.0, 0.0)


def _row(
    tokens: tuple[Token, ...], style: str, case: Case | None, *, all_unsure: bool
) -> tuple[list[Glyph], float]:
    glyphs: list[Glyph] = []
    x, joined = 0.0, True
    for token in tokens:
        if isinstance(token, LineBreak):
            continue
        if isinstance(token, Separator) and token.kind == Kind.SPACE:
            x += _SPACE
            joined = True
            continue
        if isinstance(token, Separator) and token.kind == Kind.JOINED:
            x -= 70
            joined = True
            continue
        if not joined:
            x += _BETWEEN
        joined = False
        glyph = _glyph(token, x, style, case, all_unsure=all_unsure)
        if (
            glyph.text
            and glyphs
            and glyphs[-1].text
            and glyphs[-1].x + glyphs[-1].width >= x - _BETWEEN
        ):
            # signs set as text stay together, so that their script can join and turn them
            before = glyphs.pop()
            glyph = Glyph(
                kind="text",
                x=before.x,
                y=0,
                width=before.width + glyph.width,
                text=before.text + glyph.text,
            )
        glyphs.append(glyph)
        x = glyph.x + glyph.width
    return glyphs, max(x, 0.0)


def _glyph(token: Token, x: float, style: str, case: Case | None, *, all_unsure: bool) -> Glyph:
    if isinstance(token, Gap):
        return Glyph(kind="gap", x=x, y=0, width=_GAP)
    if isinstance(token, Letter):
        if token.char is None:
            return Glyph(kind="lost", x=x, y=0, width=_LOST)
        return _drawn(_cased(token.char, case), x, style, sure=token.sure and not all_unsure)
    assert isinstance(token, Separator)  # noqa: S101  # the rest was taken above
    if token.kind == Kind.PELLET:
        return Glyph(kind="sure", x=x, y=0, width=90, path=_dot(45, -CAP / 2, 42))
    if token.kind == Kind.STAR:
        return Glyph(kind="sure", x=x, y=0, width=170, path=_STAR)
    return _drawn(token.kind, x, style, sure=not all_unsure)


def _dot(x: float, y: float, r: float) -> str:
    return (
        f"M{x - r:.0f} {y:.0f}A{r:.0f} {r:.0f} 0 1 1 {x + r:.0f} {y:.0f}"
        f"A{r:.0f} {r:.0f} 0 1 1 {x - r:.0f} {y:.0f}Z"
    )


_STAR = "M85 -290L105 -228L170 -228L118 -189L138 -127L85 -165L32 -127L52 -189L0 -228L65 -228Z"


def _cased(char: str, case: Case | None) -> str:
    if case is Case.SMALL:
        return char.lower()
    if case is Case.CAPITAL and len(char.upper()) == len(char):
        return char.upper()
    return char


def _drawn(char: str, x: float, style: str, *, sure: bool) -> Glyph:
    kind = "sure" if sure else "unsure"
    found = outline_of(char, style) or outline_of(_unaccented(char), style)
    if found is None:
        # set as text by whoever shows the drawing, from a font of that script
        wide = unicodedata.east_asian_width(char) in "WF"
        return Glyph(kind="text", x=x, y=0, width=CAP * (1.3 if wide else 0.68), text=char)
    return Glyph(kind=kind, x=x, y=0, width=found[0], path=found[1])


def _unaccented(char: str) -> str:
    return unicodedata.normalize("NFD", char)[0]
