"""Sources as they are cited: numbered in the order in which the report first names them."""

from collections.abc import Iterable

from planish.library import Library
from planish.report.view import Source

#: keys that name no printed work
_UNPRINTED = ("memory", "practice")


class Citations:
    """Gives each source its number when it is first cited; one for each report."""

    def __init__(self, library: Library) -> None:
        self._known = {s.key: s for s in library.sources}
        self._cited: dict[str, int] = {}
        self.memory = 0
        self.practice = 0

    def cite(self, keys: Iterable[str]) -> str:
        """The keys as they stand in the text: "[3] [7]", "memory", "practice"."""
        marks: list[str] = []
        for key in keys:
            if key == "memory":
                self.memory += 1
                marks.append(key)
            elif key == "practice":
                self.practice += 1
                marks.append(key)
            elif key:
                marks.append(f"[{self._cited.setdefault(key, len(self._cited) + 1)}]")
        # numbers before words, each once
        once = dict.fromkeys(marks)
        return " ".join(
            sorted(once, key=lambda m: (m in _UNPRINTED, int(m[1:-1]) if m[0] == "[" else 0))
        )

    def sources(self) -> tuple[Source, ...]:
        """The bibliography actually cited, by number."""
        return tuple(
            Source(
                mark=f"[{n}]",
                title=self._known[key].title if key in self._known else key,
                note=self._known[key].note if key in self._known else "",
            )
            for key, n in self._cited.items()
        )

    def notes(self) -> tuple[str, ...]:
        """What the words memory and practice mean, where they were used."""
        notes = []
        if self.memory:
            notes.append(
                "“memory” marks a fact that the program's makers gave from memory and no printed"
                f" source here backs ({_times(self.memory)})."
            )
        if self.practice:
            notes.append(
                "“practice” marks common practice of the trade, without a printed source"
                f" ({_times(self.practice)})."
            )
        return tuple(notes)


def _times(count: int) -> str:
    return "cited once" if count == 1 else f"cited {count} times"
