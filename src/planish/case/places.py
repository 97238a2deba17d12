"""Lines of a TOML text: which line each table and key begins on.

The standard parser keeps no positions. This scan runs only over text that parsed, so it need not
judge the grammar; what stands inside an inline table or array is placed at its key.
"""

import re

from planish.case.faults import Step, Steps

_KEY = re.compile(r"""\s*(?:"((?:[^"\\]|\\.)*)"|'([^']*)'|([A-Za-z0-9_-]+))\s*""")
_STRING = re.compile(
    r'"""(?:[^\\]|\\.)*?"{3,5}|' + r"'''.*?'{3,5}|" + r'"(?:[^"\\\n]|\\.)*"|' + r"'[^'\n]*'",
    re.DOTALL,
)


class Places:
    """Line numbers by steps into the file."""

    def __init__(self, text: str) -> None:
        self._lines: dict[Steps, int] = {}
        self._counts: dict[Steps, int] = {}
        self._scan(text)

    def line(self, steps: Steps) -> int | None:
        """Line, from 1, of the steps or of the nearest table above them that has one."""
        while steps:
            if steps in self._lines:
                return self._lines[steps]
            steps = steps[:-1]
        return None

    def _scan(self, text: str) -> None:
        at, line = 0, 1
        table: Steps = ()
        end = len(text)
        while at < end:
            char = text[at]
            if char == "\n":
                at, line = at + 1, line + 1
            elif char.isspace():
                at += 1
            elif char == "#":
                at = _line_end(text, at)
            elif char == "[":
                double = text.startswith("[[", at)
                keys, at = _keys(text, at + (2 if double else 1))
                table = self._open(keys, line, double=double)
                at = _line_end(text, at)
            else:
                keys, at = _keys(text, at)
                for n in range(1, len(keys) + 1):
                    self._lines.setdefault((*table, *keys[:n]), line)
                if at >= end or text[at] != "=":
                    return  # not TOML after all: keep what is known
                stop = _value_end(text, at + 1)
                line += text.count("\n", at, stop)
                at = stop

    def _open(self, keys: tuple[str, ...], line: int, *, double: bool) -> Steps:
        """Steps of a header; a key that names a repeated table stands for its last entry."""
        steps: tuple[Step, ...] = ()
        for n, key in enumerate(keys):
            steps = (*steps, key)
            last = n == len(keys) - 1
            if last and double:
                self._counts[steps] = self._counts.get(steps, 0) + 1
                self._lines.setdefault(steps, line)
            if steps in self._counts:
                steps = (*steps, self._counts[steps] - 1)
        self._lines.setdefault(steps, line)
        return steps


def _line_end(text: str, at: int) -> int:
    stop = text.find("\n", at)
    return len(text) if stop < 0 else stop


def _keys(text: str, at: int) -> tuple[tuple[str, ...], int]:
    """A dotted key at ``at``, and where it ends."""
    keys: list[str] = []
    while match := _KEY.match(text, at):
        keys.append(next(g for g in match.groups() if g is not None))
        at = match.end()
        if at < len(text) and text[at] == ".":
            at += 1
        else:
            break
    return tuple(keys), at


def _value_end(text: str, at: int) -> int:
    """Where a value ends: at the line end outside strings, brackets and comments."""
    depth = 0
    while at < len(text):
        char = text[at]
        if char in "\"'":
            match = _STRING.match(text, at)
            at = match.end() if match else at + 1
            continue
        if char == "#":
            at = _line_end(text, at)
            continue
        if char == "\n" and depth <= 0:
            return at
        depth += {"[": 1, "{": 1, "]": -1, "}": -1}.get(char, 0)
        at += 1
    return at
