"""What the command says when it cannot go on, and its exit codes.

BadInput        the person's input cannot be used: one line a fault, exit 2
Asked           a finding that the person asked to fail on, exit 1
"""

from collections.abc import Iterable
from enum import IntEnum

from planish.cli.terminal import clean


class ExitCode(IntEnum):
    """Exit codes of every command."""

    DONE = 0
    FINDING = 1  # a finding that the person asked to fail on
    BAD_INPUT = 2  # input that cannot be used
    OWN_FAULT = 3  # a fault of the program itself
    STOPPED = 130  # stopped from the keyboard, as shells write it


class BadInput(Exception):  # noqa: N818  # says what it is
    """Input that cannot be used: what is wrong, where, and how to mend it."""

    def __init__(self, what: str, where: str = "", mend: str = "") -> None:
        self.what, self.where, self.mend = what, where, mend
        said = "; ".join(part for part in (what, mend) if part)
        self.lines: tuple[str, ...] = (f"{where}: {said}" if where else said,)
        super().__init__(self.lines[0])

    @classmethod
    def several(cls, lines: Iterable[str]) -> "BadInput":
        """Several faults of one input, each in its line."""
        found = cls("")
        found.lines = tuple(lines)
        return found

    def __str__(self) -> str:
        """One line a fault, each beginning with the program's name."""
        return "\n".join(f"planish: {clean(' '.join(line.split()))}" for line in self.lines)


class Asked(Exception):  # noqa: N818  # no error: the person asked for it
    """A finding that the person asked to fail on; its reason in words."""
