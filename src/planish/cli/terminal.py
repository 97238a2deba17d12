"""Plain output for a terminal: 80 columns, the verdict first, no colour needed.

Colour is added only where the output is a terminal and NO_COLOR (no-color.org) is not set.
"""

import os
import re
import textwrap
from collections.abc import Iterable, Sequence

import click

from planish.evidence.chance import percent

__all__ = ["WIDTH", "clean", "heading", "percent", "prose", "say", "table", "tint"]

WIDTH = 80
_PERCENT = re.compile(r"(?<=\d) (?=%)")
_HELD = "\ufffc"  # stands for a space that no line may end at

#: what the colours mean; words, order and place say the same without them
_COLOURS = {"for": "blue", "against": "red", "look": "yellow", "head": None, "quiet": None}


def clean(text: str) -> str:
    """The text with nothing in it that a terminal would obey."""
    return "".join(c if c.isprintable() or c == "\n" else ascii(c)[1:-1] for c in text)


def say(lines: Iterable[str] | str) -> None:
    """Print lines; colour goes only to a terminal."""
    text = lines if isinstance(lines, str) else "\n".join(lines)
    click.echo(text, color=False if os.environ.get("NO_COLOR") else None)


def tint(text: str, meaning: str) -> str:
    """The text in the colour of a meaning: for, against, look, head or quiet."""
    return click.style(
        text, fg=_COLOURS[meaning], bold=meaning == "head", dim=meaning == "quiet" or None
    )


def heading(text: str) -> list[str]:
    """A heading with an empty line before it."""
    return ["", tint(text, "head")]


def prose(text: str, indent: int = 2, hang: int = 0) -> list[str]:
    """Text wrapped to the width; later lines are set in by ``hang`` more."""
    return _wrapped(clean(text), WIDTH, " " * indent, " " * (indent + hang))


def _wrapped(text: str, width: int, first: str = "", later: str = "") -> list[str]:
    """Lines of a text; a figure and its percent sign stay together."""
    lines = textwrap.wrap(
        _PERCENT.sub(_HELD, text),
        width,
        initial_indent=first,
        subsequent_indent=later,
        break_on_hyphens=False,
    )
    return [line.replace(_HELD, " ") for line in lines]


def table(rows: Sequence[Sequence[str]], indent: int = 2, right: Sequence[int] = ()) -> list[str]:
    """Aligned columns, two spaces apart; the last one is wrapped to the width.

    right: columns set to the right.
    """
    if not rows:
        return []
    rows = [[clean(cell) for cell in row] for row in rows]
    last = max(len(row) for row in rows) - 1
    widths = [max(len(row[c]) for row in rows if c < len(row)) for c in range(last)]
    start = indent + sum(widths) + 2 * last
    if start > WIDTH - 20:  # too wide for columns: the last one goes below
        out: list[str] = []
        for row in rows:
            out += prose("  ".join(row[:-1]), indent, 2)
            out += prose(row[-1], indent + 4)
        return out
    lines: list[str] = []
    for row in rows:
        cells = [
            cell.rjust(widths[c]) if c in right else cell.ljust(widths[c])
            for c, cell in enumerate(row[:-1])
        ]
        lead = " " * indent + "".join(f"{cell}  " for cell in cells)
        body = _wrapped(row[-1], WIDTH - start) or [""]
        lines.append((lead + body[0]).rstrip())
        lines += [" " * start + rest for rest in body[1:]]
    return lines
