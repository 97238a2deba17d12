"""Faults of a case file: all of them at once, one line each."""

import difflib
from collections.abc import Iterable, Sequence

import msgspec

#: one step into the file: a key, or the position in a repeated table
Step = str | int
Steps = tuple[Step, ...]


class Fault(msgspec.Struct, frozen=True, kw_only=True):
    """One fault.

    where: piece, table and key in words.
    what: what is wrong there.
    mend: how to mend it.
    line: line of the file, from 1, where it could be found.
    """

    where: str
    what: str
    mend: str
    line: int | None = None

    def __str__(self) -> str:
        """The fault in one line."""
        line = f"line {self.line}" if self.line is not None else ""
        place = ", ".join(s for s in (line, self.where) if s)
        says = f"{self.what}; {self.mend}" if self.mend else self.what
        return shown(f"{place}: {says}" if place else says)


class CaseFaults(ValueError):  # noqa: N818  # the name says that there may be several
    """A case file cannot be used; holds every fault that was found, in the file's order."""

    def __init__(self, file: str, faults: Iterable[Fault]) -> None:
        self.file = file
        self.faults = tuple(
            sorted(faults, key=lambda f: f.line if f.line is not None else 1_000_000_000)
        )
        super().__init__("\n".join(f"{file}: {fault}" for fault in self.faults))


def shown(text: str) -> str:
    """The text in one line, with nothing in it that a terminal would obey."""
    return "".join(c if c.isprintable() else ascii(c)[1:-1] for c in text)


def quoted(value: object, most: int = 40) -> str:
    r"""A value as it may stand in a message: cut short, with nothing that a terminal would obey.

    >>> quoted("a\x1b[2J")
    "'a\\x1b[2J'"
    """
    if isinstance(value, str):
        cut = value if len(value) <= most else value[: most - 3] + "..."
        return f"'{shown(cut)}'"
    try:
        text = str(value)
    except ValueError:  # an integer of thousands of figures
        return "a very long number"
    return text if len(text) <= most else text[: most - 3] + "..."


def nearest(word: str, known: Sequence[str]) -> str | None:
    """The known word that is nearest, None where none is near."""
    near = difflib.get_close_matches(word.lower(), [k.lower() for k in known], n=1, cutoff=0.6)
    return next((k for k in known if near and k.lower() == near[0]), None)


def did_you_mean(word: str, known: Sequence[str]) -> str:
    """The nearest known word, as a remedy, or an empty text."""
    found = nearest(word, known)
    return f"did you mean '{found}'?" if found else ""


def in_words(steps: Steps, numbers: Sequence[int | None] = ()) -> str:
    """Where in the file, in words: ``piece 3, mark 2, style``.

    numbers: the pieces' own numbers by position, where they have one.

    >>> in_words(("piece", 2, "mark", 1, "style"), (1, 2, 7))
    'piece 7, mark 2, style'
    """
    words: list[str] = []
    for i, step in enumerate(steps):
        if isinstance(step, str):
            if step == "case" and i == 0:
                words.append("[case]")
            else:
                words.append(step)
            continue
        place = step + 1
        if i == 1 and steps[0] == "piece" and step < len(numbers) and numbers[step] is not None:
            place = numbers[step] or place
        words[-1] = f"{words[-1]} {place}"
    return ", ".join(words)
