"""A figure as SVG: drawing, captions, pins, and if wanted a key of the places."""

import math
import textwrap
from collections.abc import Iterator
from xml.sax.saxutils import escape

from planish.marks.figures_of_forms.figure import Figure, Pin, State
from planish.marks.figures_of_forms.layout import RADIUS, discs
from planish.marks.figures_of_forms.sheet import HEIGHT, WIDTH, Point, number
from planish.marks.where import ANY, ANY_IN_WORDS

_INK, _PAPER, _POLISH, _LAMP = "#1C1E21", "#FFF", "#5B6672", "#8A5A00"
_FONT = "'Source Sans 3', 'Helvetica Neue', Arial, 'DejaVu Sans', sans-serif"
_KEY_WIDTH, _KEY_LINE = 58, 13
_BADGE = 4.2

#: The style sheet of all figures. Colours are the page's variables --ink, --paper, --polish and
#: --lamp, or the project's own where a page sets none. A page that may not hold styles within
#: (content security policy) puts this into its own style sheet and draws with ``style=False``.
STYLE = """@supports (--a:0) {
.pf{--pf-ink:var(--ink,#1C1E21);--pf-paper:var(--paper,#F7F6F3);--pf-polish:var(--polish,#5B6672);--pf-lamp:var(--lamp,#8A5A00);color:var(--pf-ink)}
@media (prefers-color-scheme:dark){.pf{--pf-ink:var(--ink,#DADDE1);--pf-paper:var(--paper,#15171A);--pf-polish:var(--polish,#9AA4AF);--pf-lamp:var(--lamp,#F2B544)}}
@media print{.pf{--pf-ink:#000;--pf-paper:#FFF;--pf-polish:#000;--pf-lamp:#000}}
.pf-ground,.pf-body{fill:var(--pf-paper)}.pf-core{stroke:var(--pf-paper)}.pf-note{fill:var(--pf-polish)}
.pf-disc{fill:var(--pf-paper)}.pf-full{fill:var(--pf-ink)}.pf-next{fill:var(--pf-lamp);stroke:var(--pf-lamp)}
.pf-ring{stroke:var(--pf-lamp)}.pf-light{fill:var(--pf-paper)}.pf-sign{stroke:var(--pf-paper)}
}"""


def svg(found: Figure, *, key: bool = False, style: bool = True, ground: bool = False) -> str:
    """The figure as one SVG element.

    key: the places written out beneath the drawing. style: the style sheet within; without it, the
    attributes hold (ink on white, as printed). ground: a filled ground, for a file of its own.

    Its title and description name the form, and each place with its state.
    """
    lines = list(_key(found)) if key else []
    height = HEIGHT + (len(lines) * _KEY_LINE + 14 if lines else 0)
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" class="pf" viewBox="0 0 {WIDTH} {height}" '
        f'role="img" color="{_INK}" font-family="{_FONT}" font-size="10">'
    )
    parts = [
        head,
        f"<title>{escape(title(found))}</title>",
        f"<desc>{escape(description(found))}</desc>",
    ]
    if style:
        parts.append(f"<style>{STYLE}</style>")
    if ground:
        parts.append(f'<rect class="pf-ground" width="{WIDTH}" height="{height}" fill="{_PAPER}"/>')
    parts.append(
        '<g fill="none" stroke="currentColor" stroke-width="2" stroke-linejoin="round" '
        'stroke-linecap="round">'
    )
    parts += found.drawing.shapes
    parts.append("</g>")
    parts += [
        f'<text class="pf-note" fill="{_POLISH}" text-anchor="middle" x="{number(x)}" '
        f'y="{number(y)}">{escape(text)}</text>'
        for x, y, text in found.drawing.notes
    ]
    centres = discs(found.drawing, [(pin.x, pin.y) for pin in found.pins])
    for pin, centre in zip(found.pins, centres, strict=True):
        parts += _leader(pin, centre)
    for pin, centre in zip(found.pins, centres, strict=True):
        parts += _disc(pin, centre)
    parts += [
        f'<text x="10" y="{HEIGHT + 10 + n * _KEY_LINE}" fill="currentColor" '
        f'xml:space="preserve">{escape(line)}</text>'
        for n, line in enumerate(lines)
    ]
    parts.append("</svg>")
    return "\n".join(parts)


def in_words(form: str) -> str:
    """The form as people are told it."""
    return ANY_IN_WORDS if form == ANY else form


def title(found: Figure) -> str:
    """The accessible name."""
    return f"Where to look: {in_words(found.form)}"


def description(found: Figure) -> str:
    """The places in words, each with its state."""
    places = "; ".join(
        f"{pin.number} {pin.place} ({pin.state}{', look here next' if pin.next else ''})"
        for pin in found.pins
    )
    return f"Line drawing of {in_words(found.form)} with numbered places. {places}."


def _key(found: Figure) -> Iterator[str]:
    told = any(pin.state is not State.UNSEARCHED for pin in found.pins)
    for pin in found.pins:
        said = f"{pin.place}: {pin.state}" if told else pin.place
        if pin.next:
            said += "; look here next"
        first = f"{pin.number}  "
        yield from textwrap.wrap(
            said, _KEY_WIDTH, initial_indent=first, subsequent_indent=" " * (len(first) + 1)
        )


def _leader(pin: Pin, centre: Point) -> Iterator[str]:
    """The line from the place to its disc, with a dot on the place."""
    long = math.dist((pin.x, pin.y), centre) or 1.0
    x = centre[0] + (pin.x - centre[0]) * RADIUS / long
    y = centre[1] + (pin.y - centre[1]) * RADIUS / long
    yield (
        f'<path d="M{number(pin.x)},{number(pin.y)}L{number(x)},{number(y)}" '
        'stroke="currentColor" stroke-width="1" fill="none"/>'
    )
    yield (
        f'<circle class="pf-full" cx="{number(pin.x)}" cy="{number(pin.y)}" r="2.4" '
        'fill="currentColor"/>'
    )


def _disc(pin: Pin, centre: Point) -> Iterator[str]:
    """The numbered disc: filled where something was seen, ringed twice where to look next."""
    x, y = centre
    at = f'cx="{number(x)}" cy="{number(y)}"'
    full = pin.state is State.SEEN or pin.next
    if pin.next:
        yield f'<circle class="pf-ring" {at} r="{RADIUS + 3}" fill="none" stroke="{_LAMP}" stroke-width="1.2"/>'
        yield f'<circle class="pf-next" {at} r="{RADIUS}" fill="{_LAMP}" stroke="{_LAMP}"/>'
    elif full:
        yield f'<circle class="pf-full" {at} r="{RADIUS}" fill="currentColor"/>'
    else:
        yield (
            f'<circle class="pf-disc" {at} r="{RADIUS}" fill="{_PAPER}" stroke="currentColor" '
            'stroke-width="1.4"/>'
        )
    look = f'class="pf-light" fill="{_PAPER}"' if full else 'fill="currentColor"'
    yield (
        f'<text {look} font-weight="600" text-anchor="middle" x="{number(x)}" '
        f'y="{number(y + 3.6)}">{pin.number}</text>'
    )
    if pin.state is not State.UNSEARCHED:
        yield from _badge(x + 8, y + 7, tick=pin.state is State.SEEN)


def _badge(x: float, y: float, *, tick: bool) -> Iterator[str]:
    """A small sign at the disc: a tick for seen, a bar for nothing found."""
    yield (
        f'<circle class="pf-full" cx="{number(x)}" cy="{number(y)}" r="{_BADGE}" '
        'fill="currentColor"/>'
    )
    d = (
        f"M{number(x - 2)},{number(y)}L{number(x - 0.5)},{number(y + 1.8)}L{number(x + 2.2)},{number(y - 1.8)}"
        if tick
        else f"M{number(x - 2.2)},{number(y)}H{number(x + 2.2)}"
    )
    yield (
        f'<path class="pf-sign" d="{d}" stroke="{_PAPER}" stroke-width="1.3" fill="none" '
        'stroke-linecap="round"/>'
    )
