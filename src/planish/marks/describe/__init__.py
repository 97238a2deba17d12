"""Free text -> what is observed: marks, what the writer claims, and what was not understood.

Written for the way curators, auctioneers, dealers and heirs write. Rules of reading are common
practice; the library gives pictures, towns, makers and struck words.
"""

from planish.library.loader import Library, load
from planish.marks.describe.lexicon import Lexicon, build
from planish.marks.describe.marks import Scanner
from planish.marks.describe.state import State
from planish.marks.describe.tokens import MAX_LENGTH, DescriptionError, check
from planish.marks.observation import Mark, Observed

_COMPLETE = 0.85
_PARTIAL = 0.5
_KEPT = 4

# Lexicons of the libraries last used; the library is compared by identity, it is large.
_built: list[tuple[Library, Lexicon]] = []


def lexicon(library: Library) -> Lexicon:
    """The lexicon of a library, built once."""
    for known, words in _built:
        if known is library:
            return words
    words = build(library)
    _built.insert(0, (library, words))
    del _built[_KEPT:]
    return words


def describe(text: str, form: str | None = None, library: Library | None = None) -> Observed:
    """The marks that a description tells of.

    Args:
        text: free text, at most 20,000 characters.
        form: what the piece is, so that "back of spoon" is no part of a spoon.
        library: the facts to read with; the shipped library if None.

    Raises:
        DescriptionError: too long, or a control character.
    """
    check(text)
    state = Scanner(text, lexicon(library or load())).run()
    marks: list[Mark] = []
    for draft in state.drafts:
        if form and draft.where.part and draft.where.part.casefold() in form.casefold():
            draft.where.part = None
        mark = draft.finish()
        if mark is not None:
            marks.append(mark)
        elif draft.text:
            at = text.find(draft.text)
            state.spans.append((max(at, 0), max(at, 0) + len(draft.text)))
    return Observed(
        marks=tuple(marks),
        searched=tuple(state.searched),
        complete=_PARTIAL if state.partial or not _described(marks, state) else _COMPLETE,
        claims=tuple(state.claims),
        unread=_unread(text, state.spans),
    )


def _described(marks: list[Mark], state: State) -> bool:
    """Whether marks are described, not only named."""
    named = ("[---]", "[.]")
    return bool(state.searched) or any(
        (m.text and m.text not in named) or (m.device and not m.device.startswith("town mark of "))
        for m in marks
    )


def _unread(text: str, spans: list[tuple[int, int]]) -> tuple[str, ...]:
    """The passages not understood, neighbours joined."""
    joined: list[tuple[int, int]] = []
    for start, end in sorted(set(spans)):
        if joined and not text[joined[-1][1] : start].strip():
            joined[-1] = (joined[-1][0], max(end, joined[-1][1]))
        elif not joined or start >= joined[-1][1]:
            joined.append((start, end))
    return tuple(s for a, b in joined if (s := text[a:b].strip()))


__all__ = ["MAX_LENGTH", "DescriptionError", "describe", "lexicon"]
