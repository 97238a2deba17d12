"""What an observation may hold: outside these bounds it is refused at the border, in one line.

The bounds keep every reading in bounded time; they are far above anything that a piece bears.
"""

import math

from planish.marks.observation import Mark, Observed

#: letters of one mark, as in ``transcription.MAX_LENGTH``; other words of a mark
MAX_TEXT, MAX_WORDS, MAX_NOTE = 200, 1_000, 20_000
MAX_MARKS, MAX_PARTS, MAX_SEARCHED = 1_000, 100, 2_000
MAX_FORM = 1_000
MAX_TIMES = 1_000
_WORDS = ("device", "outline", "charge", "hint", "part", "place", "photograph", "note")


class ObservedError(ValueError):
    """An observation that cannot be read: what, where, how to mend it."""

    def __init__(self, where: str, what: str, mend: str) -> None:
        self.where, self.what, self.mend = where, what, mend
        super().__init__(f"{where}: {what}; {mend}")


def check_observed(observed: Observed, form: str | None = None) -> None:
    """Nothing, where the observation and the form lie within the bounds.

    Raises:
        ObservedError: the first thing that does not.

    >>> check_observed(Observed(marks=(Mark(device="anchor", times=0),)))
    Traceback (most recent call last):
    planish.marks.bounds.ObservedError: mark 1: struck 0 times; write 1 or more
    """
    if form is not None and len(form) > MAX_FORM:
        raise ObservedError(
            "form", f"longer than {MAX_FORM} characters", "name the piece in a word or two"
        )
    if not (math.isfinite(observed.complete) and 0 <= observed.complete <= 1):
        raise ObservedError("complete", f"{observed.complete} is no share", "write 0 to 1")
    for name, most in (("marks", MAX_MARKS), ("searched", MAX_SEARCHED)):
        count = len(getattr(observed, name))
        if count > most:
            raise ObservedError(name, f"{count}, more than {most}", "part them by piece")
    parts = len({mark.part for mark in observed.marks})
    if parts > MAX_PARTS:
        raise ObservedError("marks", f"{parts} parts, more than {MAX_PARTS}", "part them by piece")
    for number, mark in enumerate(observed.marks, 1):
        _check_mark(f"mark {number}", mark)


def _check_mark(where: str, mark: Mark) -> None:
    if mark.text is not None and mark.device is not None:
        raise ObservedError(
            where, "letters and a picture at once", "make two marks, or put one into the note"
        )
    if mark.text is not None and len(mark.text) > MAX_TEXT:
        raise ObservedError(
            f"{where}, text", f"longer than {MAX_TEXT} characters", "give one mark at a time"
        )
    for field in _WORDS:
        value = getattr(mark, field)
        most = MAX_NOTE if field == "note" else MAX_WORDS
        if value is not None and len(value) > most:
            raise ObservedError(f"{where}, {field}", f"longer than {most} characters", "shorten it")
    if not 1 <= mark.times <= MAX_TIMES:
        raise ObservedError(
            where,
            f"struck {mark.times} times",
            f"write {'1 or more' if mark.times < 1 else 'fewer'}",
        )
    for field in ("text", *_WORDS):
        value = getattr(mark, field)
        if value is not None and any(c in value for c in _CONTROLS):
            raise ObservedError(f"{where}, {field}", "holds a control character", "take it out")


#: C0 and C1 controls but tab and line ends, which a note may hold
_CONTROLS = frozenset(
    chr(n) for n in (*range(32), *range(127, 160)) if chr(n) not in "\t\n\r\x85"
)  # fmt: skip

__all__ = ["MAX_FORM", "MAX_MARKS", "MAX_TEXT", "ObservedError", "check_observed"]
