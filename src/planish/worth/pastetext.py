"""A pasted text while it is read: what of it was used, and what became of it."""

import re


class Text:
    """A text of which spans are read one after another; ``used`` marks what was."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.used = [False] * len(text)
        self.cells: dict[str, str] = {}
        self.notes: list[str] = []
        #: spans of the head (venue, day, lot, sale), and of prices and weights
        self.head: list[tuple[int, int]] = []
        self.tail: list[tuple[int, int]] = []

    def find(self, pattern: str, flags: int = re.IGNORECASE) -> re.Match[str] | None:
        """The first match that nothing else has used."""
        for match in re.finditer(pattern, self.text, flags):
            if match.group().strip() and not any(self.used[match.start() : match.end()]):
                return match
        return None

    def take(self, start: int, end: int) -> None:
        """Mark a span as read."""
        self.used[start:end] = [True] * (end - start)

    def set(self, column: str, value: str) -> None:
        """Fill a cell, unless it is filled."""
        if value:
            self.cells.setdefault(column, value)
