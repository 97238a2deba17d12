"""A mark drawn as seen, as SVG, made from the observation alone.

    raised letters       light on a dark field, in the punch's outline
    sunk letters         dark, the outline (where there is one) as a line
    unsure letters       hatched
    a lost letter        a dotted empty box; an unknown number of letters: a box without ends
    a pictorial mark     its drawing (``drawings``), else its name in small capitals
    outline not known    a dashed frame; not recorded: no frame
    nothing read         its outline, else a plain frame, hatched and dashed; beside it what it is

Drawing raised marks light on dark follows the trade's printed tables (common practice). The same
drawing serves the screen, the report and the thesaurus, so that an error of entry is seen at once.
"""

import hashlib
import math
from xml.sax.saxutils import escape, quoteattr

from planish.marks.charges import placed
from planish.marks.observation import Legibility, Mark, Style, Technique
from planish.marks.transcription import Gap, TranscriptionError, parse
from planish.report.drawings import drawing
from planish.report.letters_svg import CAP, Block, Glyph, laid_out
from planish.report.outlines_svg import Shape, name_of, shape
from planish.report.plain import visible

INK = "#1C1E21"
PAPER = "#FFFFFF"

_PAD = 110
_LINE = 14
_NAME_CAP = 150
_NAME_WIDTH = 13
#: room of a mark of which nothing is read
_UNREAD = (0.0, -150.0, 330.0, 0.0)
_TALL = ("shield", "circle", "square", "lozenge", "heart", "trefoil", "quatrefoil", "star", "cut")
_RAISED = (Technique.RAISED, Technique.CAST)
_DIM = (Legibility.OBSCURE, Legibility.ILLEGIBLE)


def mark_in_words(mark: Mark) -> str:
    """The mark as seen, in words: alternative text of its drawing.

    >>> mark_in_words(Mark(text="W·[.]", outline="oval", technique=Technique.RAISED))
    'letters W·?, raised, in oval'
    """
    what = [mark.device] if mark.device else []
    if mark.text:
        plain = _plain(mark.text)
        what.append(f"letters {plain}" if len(plain) > 1 else f"letter {plain}")
    parts = [
        " with ".join(what) or "a mark not read",
        mark.charge or "",
        " ".join(x for x in (mark.style and mark.style.value, mark.case and mark.case.value) if x),
        "sunk" if mark.technique is Technique.INCUSE else (mark.technique or ""),
        f"in {mark.outline}" if mark.outline else "",
        mark.legibility.value if mark.legibility and mark.legibility != Legibility.CLEAR else "",
        "doubtful" if mark.doubtful else "",
    ]
    return visible(", ".join(str(p) for p in parts if p)).replace("\n", " ")


def mark_svg(mark: Mark, *, ink: str = INK, paper: str = PAPER) -> str:
    """A drawing of the mark as a whole SVG document.

    ink, paper: colours of the drawing and of its ground. 400 units are the height of a capital;
    the width and height attributes are in the same units, to be scaled by whoever places it.
    """
    if (what := _nothing_read(mark)) is not None:
        return _unread(mark, what, ink, paper)
    unsure = mark.doubtful or mark.legibility in _DIM
    blocks = _blocks(mark, unsure=unsure)
    box = _around(blocks)
    frame = shape(mark.outline, box, _PAD) if mark.outline else None
    raised = mark.technique in _RAISED
    filled = raised and frame is not None
    ink_of = paper if filled else ink
    hatch = "h" + hashlib.sha256(repr((mark, ink, paper)).encode()).hexdigest()[:10]
    body = []
    if frame is not None:
        body.append(_field(frame, blocks, ink, paper, filled=filled, dashed=unsure))
    hollow = mark.technique is Technique.SCRATCHED or (raised and not filled)
    body += [
        _drawn(g, ink_of, paper if not filled else ink, hatch, hollow=hollow)
        for block in blocks
        for g in block.glyphs
    ]
    left, top, right, bottom = (
        frame.box if frame else (box[0] - 30, box[1] - 30, box[2] + 30, box[3] + 30)
    )
    return _document(mark, (left, top, right, bottom), _hatching(hatch, ink_of), body)


def _document(
    mark: Mark, box: tuple[float, float, float, float], hatching: str, body: list[str]
) -> str:
    """The drawing in its box as a whole document."""
    edge = _LINE * 1.5
    left, top, right, bottom = box
    left, top, right, bottom = left - edge, top - edge, right + edge, bottom + edge
    width, height = right - left, bottom - top
    words = mark_in_words(mark)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-label={quoteattr(words)} '
        f'width="{width:.0f}" height="{height:.0f}" '
        f'viewBox="{left:.0f} {top:.0f} {width:.0f} {height:.0f}">'
        f"<title>{escape(words)}</title><defs>{hatching}</defs>{''.join(body)}</svg>"
    )


def _hatching(name: str, ink: str, *, line: int = 15, step: int = 38) -> str:
    return (
        f'<pattern id="{name}" width="{step}" height="{step}" patternUnits="userSpaceOnUse" '
        f'patternTransform="rotate(45)"><rect width="{line}" height="{step}" fill="{ink}"/></pattern>'
    )


def _nothing_read(mark: Mark) -> str | None:
    """What to call a mark of which no letter and no picture is read; None where something is."""
    if mark.device:
        return None
    try:
        tokens = parse(mark.text).tokens if mark.text else ()
    except TranscriptionError:
        return None
    if any(not isinstance(token, Gap) for token in tokens):
        return None
    return "illegible" if tokens or mark.legibility is Legibility.ILLEGIBLE else "not read"


def _unread(mark: Mark, what: str, ink: str, paper: str) -> str:
    """A mark of which nothing is read: where it was struck, and a word beside it."""
    name = "u" + hashlib.sha256(repr((mark, ink, paper)).encode()).hexdigest()[:10]
    frame = shape(mark.outline or "rounded rectangle", _UNREAD, _PAD)
    if frame.path is None:  # it follows letters that are not there
        frame = shape("rounded rectangle", _UNREAD, _PAD)
    left, top, right, bottom = frame.box
    word = laid_out(parse(what), Style.SANS, None)
    scale = _NAME_CAP / CAP
    x, y = right + 80, (top + bottom + _NAME_CAP) / 2
    struck = (
        f'<path d="{frame.path}" fill="url(#{name})" stroke="{ink}" stroke-width="{_LINE}" '
        f'stroke-dasharray="{_LINE * 3} {_LINE * 2}"/>'
    )
    body = [struck]
    body += [
        f'<path transform="translate({x + g.x * scale:.0f} {y:.0f}) scale({scale:g})" '
        f'd="{g.path}" fill="{ink}"/>'
        for g in word.glyphs
    ]
    box = (left, top, x + word.box[2] * scale, bottom)
    return _document(mark, box, _hatching(name, ink, line=5, step=44), body)


def _plain(text: str) -> str:
    try:
        return parse(text).plain
    except TranscriptionError:
        return text


def _blocks(mark: Mark, *, unsure: bool) -> list[Block]:
    """What stands in the punch, from top to bottom."""
    blocks: list[Block] = []
    if mark.device:
        blocks.append(_device(mark.device, mark.outline, unsure=unsure))
    if mark.text:
        try:
            letters = parse(mark.text)
        except TranscriptionError:
            blocks.append(_name(mark.text, mark.outline))
        else:
            blocks.append(laid_out(letters, mark.style, mark.case, all_unsure=unsure))
    above, below = _charges(mark, unsure=unsure) if mark.text else ([], [])
    return _stacked([*above, *blocks, *below])


def _charges(mark: Mark, *, unsure: bool) -> tuple[list[Block], list[Block]]:
    """Pictures above and below the letters, those of which there is a drawing."""
    beside = [
        (c.where, _device(c.device, mark.outline, unsure=unsure))
        for c in placed(mark.charge or "")
        if c.where in ("above", "below") and drawing(c.device) is not None
    ]
    return [b for w, b in beside if w == "above"], [b for w, b in beside if w == "below"]


def _device(words: str, outline: str | None, *, unsure: bool) -> Block:
    """A device as its drawing, or else as its name."""
    found = drawing(words)
    if found is None:
        return _name(words, outline)
    kind = ("turned" if found.mirrored else "drawing") + ("?" if unsure else "")
    glyph = Glyph(kind=kind, x=0, y=0, width=found.width, path=found.path)
    return Block(glyphs=(glyph,), box=(0.0, 0.0, found.width, found.height))


def _name(words: str, outline: str | None) -> Block:
    """A device's name in small capitals, in short lines; shorter where the outline is tall."""
    widest = _NAME_WIDTH if outline is None or name_of(outline) not in _TALL else _NAME_WIDTH - 4
    widest = max(widest, math.ceil(len(words) / 5) + 3)
    lines: list[str] = []
    for word in "".join(c if c.isalnum() or c in "'’-&.," else " " for c in words).split():
        if lines and len(lines[-1]) + len(word) < widest:
            lines[-1] += f" {word}"
        else:
            lines.append(word[: 2 * _NAME_WIDTH])
    text = "/".join(lines)[:190].upper()
    try:
        block = laid_out(parse(text), Style.SANS, None, all_unsure=False)
    except TranscriptionError:
        block = laid_out(parse("[---]"), None, None)
    scale = _NAME_CAP / CAP
    glyphs = tuple(
        Glyph(
            kind="name",
            x=g.x * scale,
            y=g.y * scale,
            width=g.width * scale,
            path=g.path,
            text=g.text,
        )
        for g in block.glyphs
    )
    left, top, right, bottom = (v * scale for v in block.box)
    return Block(glyphs=glyphs, box=(left, top, right, bottom))


def _stacked(blocks: list[Block]) -> list[Block]:
    widest = max(b.box[2] - b.box[0] for b in blocks)
    placed, y = [], 0.0
    for block in blocks:
        left, top, right, bottom = block.box
        dx, dy = (widest - (right - left)) / 2 - left, y - top
        placed.append(
            Block(
                glyphs=tuple(
                    Glyph(
                        kind=g.kind, x=g.x + dx, y=g.y + dy, width=g.width, path=g.path, text=g.text
                    )
                    for g in block.glyphs
                ),
                box=(left + dx, y, right + dx, bottom + dy),
            )
        )
        y = bottom + dy + 70
    return placed


def _around(blocks: list[Block]) -> tuple[float, float, float, float]:
    return (
        min(b.box[0] for b in blocks),
        min(b.box[1] for b in blocks),
        max(b.box[2] for b in blocks),
        max(b.box[3] for b in blocks),
    )


def _field(
    frame: Shape, blocks: list[Block], ink: str, paper: str, *, filled: bool, dashed: bool
) -> str:
    """The punch's field."""
    if frame.path is None:
        # a punch that follows its letters: the letters themselves, thickened
        paths = "".join(
            f'<path transform="translate({g.x:.0f} {g.y:.0f})" d="{g.path}"/>'
            for b in blocks
            for g in b.glyphs
            if g.path and g.kind in ("sure", "unsure", "drawing", "drawing?")
        )
        thick = 2 * _PAD * 0.8
        wide = (
            f'<g fill="{ink}" stroke="{ink}" stroke-width="{thick:.0f}" '
            f'stroke-linejoin="round">{paths}</g>'
        )
        if filled:
            return wide
        inner = thick - 2 * _LINE
        return wide + (
            f'<g fill="{paper}" stroke="{paper}" stroke-width="{inner:.0f}" '
            f'stroke-linejoin="round">{paths}</g>'
        )
    dash = f' stroke-dasharray="{_LINE * 3} {_LINE * 2}"' if dashed or not frame.known else ""
    fill = ink if filled else "none"
    stroke = paper if filled and dash else ink
    edge = f'<path d="{frame.path}" fill="{fill}" stroke="{ink}" stroke-width="{_LINE}"/>'
    if filled and dash:
        edge += (
            f'<path d="{frame.path}" fill="none" stroke="{stroke}" stroke-width="{_LINE}"{dash}/>'
        )
        return edge
    return f'<path d="{frame.path}" fill="{fill}" stroke="{ink}" stroke-width="{_LINE}"{dash}/>'


def _drawn(glyph: Glyph, ink: str, ground: str, hatch: str, *, hollow: bool) -> str:
    at = f'transform="translate({glyph.x:.0f} {glyph.y:.0f})"'
    if glyph.kind == "lost":
        return _dotted(glyph, ink, f"M0 {-CAP}H{glyph.width:.0f}V0H0Z")
    if glyph.kind == "gap":
        return _dotted(glyph, ink, f"M0 {-CAP}H{glyph.width:.0f}M0 0H{glyph.width:.0f}")
    if glyph.kind.startswith(("drawing", "turned")):
        if glyph.kind.startswith("turned"):
            at = f'transform="translate({glyph.x + glyph.width:.0f} {glyph.y:.0f}) scale(-1 1)"'
        fill = f"url(#{hatch})" if glyph.kind.endswith("?") else ink
        line = (
            f' stroke="{ink}" stroke-width="{_LINE * 0.5:.0f}"' if glyph.kind.endswith("?") else ""
        )
        return f'<path {at} d="{glyph.path}" fill="{fill}" fill-rule="evenodd"{line}/>'
    if glyph.kind == "name":
        scale = _NAME_CAP / CAP
        at = f'transform="translate({glyph.x:.0f} {glyph.y:.0f}) scale({scale:g})"'
        if glyph.text:
            return _text(glyph, at, glyph.width / scale, ink)
        return f'<path {at} d="{glyph.path}" fill="{ink}"/>'
    if glyph.kind == "text":
        return _text(glyph, at, glyph.width, ink)
    if glyph.kind == "unsure":
        return (
            f'<path {at} d="{glyph.path}" fill="url(#{hatch})" stroke="{ink}" '
            f'stroke-width="{_LINE * 0.7:.0f}"/>'
        )
    if hollow:
        return (
            f'<path {at} d="{glyph.path}" fill="{ground}" stroke="{ink}" stroke-width="{_LINE}"/>'
        )
    return f'<path {at} d="{glyph.path}" fill="{ink}"/>'


def _text(glyph: Glyph, at: str, width: float, ink: str) -> str:
    return (
        f'<text {at} x="{width / 2:.0f}" text-anchor="middle" font-size="{CAP * 1.3:.0f}" '
        f'font-family="Source Sans 3, sans-serif" fill="{ink}">{escape(glyph.text)}</text>'
    )


def _dotted(glyph: Glyph, ink: str, path: str) -> str:
    return (
        f'<path transform="translate({glyph.x:.0f} {glyph.y:.0f})" d="{path}" fill="none" '
        f'stroke="{ink}" stroke-width="{_LINE * 1.2:.0f}" stroke-linecap="round" '
        f'stroke-dasharray="1 {_LINE * 3}"/>'
    )
