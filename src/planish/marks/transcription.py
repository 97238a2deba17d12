"""Transcription of letters in a punch, after the epigraphers' Leiden conventions.

    [.]      one lost letter            [...]  three lost letters      ?   one unreadable letter
    [---]    an unknown number lost     [M]    a restored letter, unsure, as _M
    /        line break: PB/AB is PB over AB
    ^        joined letters: M^M
    · . * &  pellet, stop, star, ampersand; a space is kept as one space

Source of the brackets: B. A. van Groningen, "Projet d'unification des systèmes de signes
critiques", Mnemosyne (3) 59 (1932), 362-365 (the Leiden system; from memory). Its dot under an
uncertain letter is typed ``_`` before the letter.
"""

import re
import unicodedata
from enum import StrEnum

import msgspec

MAX_LENGTH = 200
_GAPS = re.compile(r"\[-+\]")


class TranscriptionError(ValueError):
    """A text that is no transcription: what, where, how to mend it."""

    def __init__(self, text: str, at: int, fault: str) -> None:
        self.text, self.at, self.fault = text, at, fault
        super().__init__(f"transcription, character {at + 1}: {fault}")


class Kind(StrEnum):
    """Separators that are often a feature of the punch; any other sign stands for itself."""

    PELLET = "·"
    STOP = "."
    STAR = "*"
    AMPERSAND = "&"
    SPACE = " "
    JOINED = "^"


class Letter(msgspec.Struct, frozen=True, tag="letter"):
    """One letter or figure; ``char`` None where it is lost or unreadable."""

    char: str | None
    sure: bool = True


class Gap(msgspec.Struct, frozen=True, tag="gap"):
    """An unknown number of letters lost."""


class Separator(msgspec.Struct, frozen=True, tag="separator"):
    """A pellet, stop, ampersand, space or other sign between letters (see ``Kind``)."""

    kind: str


class LineBreak(msgspec.Struct, frozen=True, tag="line"):
    """What follows stands on the line below."""


Token = Letter | Gap | Separator | LineBreak

# Signs that catalogues print for the same thing.
_SAME_SIGN = {
    **dict.fromkeys("·•∙‧・●⋅", Kind.PELLET.value),
    **dict.fromkeys("*✱★☆✶✳＊", Kind.STAR.value),
    **dict.fromkeys("’‘ʼ`´", "'"),
    **dict.fromkeys("‐‑‒–—−", "-"),
}
_RESERVED = {
    "(": "round brackets have no meaning here; write a pictorial part as a device of its own",
    ")": "round brackets have no meaning here; write a pictorial part as a device of its own",
    "{": "write [---] for letters lost",
    "}": "write [---] for letters lost",
    "<": "write [M] for a supplied letter",
    ">": "write [M] for a supplied letter",
    '"': "leave the quotation marks out",
    "\\": "use / for a line break",
}


class Transcription(msgspec.Struct, frozen=True):
    """A transcription, token by token."""

    tokens: tuple[Token, ...] = ()

    @property
    def letters(self) -> tuple[tuple[str | None, bool], ...]:
        """(letter or None where lost, sure) of each letter; gaps are left out."""
        return tuple((t.char, t.sure) for t in self.tokens if isinstance(t, Letter))

    @property
    def plain(self) -> str:
        """The text without brackets; ``?`` for what is lost, ``/`` for a line break.

        >>> parse("ST[.]RL_I[N]G").plain
        'ST?RLING'
        """
        return "".join(_plain(token) for token in self.tokens)

    @property
    def is_initials(self) -> bool:
        """One to four capitals, with pellets, stops, stars, ampersand, spaces or lines between.

        Letters of a script without capitals count. A lost letter counts if another is read.
        """
        found = [t.char for t in self.tokens if isinstance(t, Letter)]
        read = [c for c in found if c is not None]
        signs = {t.kind for t in self.tokens if isinstance(t, Separator)}
        return (
            bool(read)
            and len(found) <= 4
            and all(c[0].isalpha() and not c[0].islower() for c in read)
            and not self.has_gap
            and signs <= {*Kind, "-", ":"}
        )

    @property
    def has_gap(self) -> bool:
        """Whether an unknown number of letters is lost."""
        return any(isinstance(t, Gap) for t in self.tokens)

    @property
    def lines(self) -> tuple["Transcription", ...]:
        """Line by line, top to bottom: more than one where letters stand over letters."""
        rows: list[list[Token]] = [[]]
        for token in self.tokens:
            if isinstance(token, LineBreak):
                rows.append([])
            else:
                rows[-1].append(token)
        return tuple(Transcription(tuple(row)) for row in rows)


def _plain(token: Token) -> str:
    match token:
        case Letter(char):
            return char or "?"
        case Gap():
            return "?"
        case Separator(kind):
            return "" if kind == Kind.JOINED else kind
        case LineBreak():
            return "/"


def _is_letter(char: str) -> bool:
    return unicodedata.category(char)[0] in "LN"


class _Reader:
    """Walks the text once; ``at`` never goes back."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.at = 0
        self.tokens: list[Token] = []

    def fail(self, fault: str, at: int | None = None) -> TranscriptionError:
        return TranscriptionError(self.text, self.at if at is None else at, fault)

    def letter(self) -> str:
        """One letter with the accents that follow it."""
        start = self.at
        self.at += 1
        while self.at < len(self.text) and unicodedata.category(self.text[self.at])[0] == "M":
            self.at += 1
        return self.text[start : self.at]

    def bracket(self) -> None:
        start = self.at
        close = self.text.find("]", start)
        if close < 0:
            raise self.fail("[ is never closed; write [.] for a lost letter, [---] for more", start)
        if close == start + 1:
            raise self.fail("[] is empty; write [.] for a lost letter, [---] for more", start)
        self.at = start + 1
        while self.at < close:
            char = self.text[self.at]
            if _is_letter(char):
                self.tokens.append(Letter(self.letter(), sure=False))
            elif char in ".?":
                self.tokens.append(Letter(None, sure=False))
                self.at += 1
            elif char == "-" or _SAME_SIGN.get(char) == "-":
                if Gap() != (self.tokens[-1] if self.tokens and self.at > start + 1 else None):
                    self.tokens.append(Gap())
                self.at += 1
            elif char.isspace():
                self.at += 1
            else:
                raise self.fail(f"{char} cannot stand inside []; only letters, . ? and -")
        self.at = close + 1

    def step(self) -> None:
        char = self.text[self.at]
        if _is_letter(char):
            self.tokens.append(Letter(self.letter()))
        elif char == "[":
            self.bracket()
        elif char == "_":
            self.at += 1
            if self.at >= len(self.text) or not _is_letter(self.text[self.at]):
                raise self.fail("_ must stand before the letter that is uncertain", self.at - 1)
            self.tokens.append(Letter(self.letter(), sure=False))
        elif char == "?":
            self.tokens.append(Letter(None, sure=False))
            self.at += 1
        elif char == "/":
            self.space(drop=True)
            self.tokens.append(LineBreak())
            self.at += 1
        elif char.isspace():
            self.space()
            self.at += 1
        elif char == "]":
            raise self.fail("] without [ before it")
        elif char in _RESERVED:
            raise self.fail(f"{char} cannot be read: {_RESERVED[char]}")
        elif unicodedata.category(char)[0] in "PS":
            self.tokens.append(Separator(_SAME_SIGN.get(char, char)))
            self.at += 1
        else:
            raise self.fail(f"sign U+{ord(char):04X} cannot be read; leave it out")

    def space(self, *, drop: bool = False) -> None:
        """Keep one space between signs of a line, none at its ends."""
        last = self.tokens[-1] if self.tokens else LineBreak()
        if drop:
            if last == Separator(" "):
                self.tokens.pop()
        elif last != Separator(" ") and not isinstance(last, LineBreak):
            self.tokens.append(Separator(" "))


def parse(text: str) -> Transcription:
    """The transcription that ``text`` writes.

    Raises:
        TranscriptionError: more than 200 characters ([---] counts as three), a control character, a bracket that does not
            close, or a sign with no meaning here.

    >>> parse("W·[.]/&Co").letters
    (('W', True), (None, False), ('C', True), ('o', True))
    """
    if len(text) > MAX_LENGTH and len(_GAPS.sub("[-]", text[: 4 * MAX_LENGTH])) > MAX_LENGTH:
        raise TranscriptionError(
            text[:MAX_LENGTH], MAX_LENGTH, f"longer than {MAX_LENGTH} characters; shorten it"
        )
    for at, char in enumerate(text):
        if unicodedata.category(char) in ("Cc", "Cs"):
            raise TranscriptionError(text, at, f"control character U+{ord(char):04X}; take it out")
    reader = _Reader(unicodedata.normalize("NFC", text))
    while reader.at < len(reader.text):
        reader.step()
    reader.space(drop=True)
    return Transcription(tuple(reader.tokens))


def print_(transcription: Transcription) -> str:
    """The text that parses to the same transcription, never longer than any other that does.

    >>> print_(parse("ST[.]RL[ING] / A[B]  [--]"))
    'ST?RL[ING]/A_B [---]'
    """
    out: list[str] = []
    tokens = transcription.tokens
    at = 0
    while at < len(tokens):
        end = at
        while end < len(tokens) and _doubted(tokens[end]):
            end += 1
        if end > at:
            run = [t.char for t in tokens[at:end] if isinstance(t, Letter)]
            out.append(_print_doubted(run))
            at = end
        else:
            out.append(_print(tokens[at]))
            at += 1
    return "".join(out)


def _doubted(token: Token) -> bool:
    return isinstance(token, Letter) and not token.sure


def _print_doubted(run: list[str | None]) -> str:
    """Uncertain and lost letters side by side: ``?``, ``_A``, or one bracket."""
    if sum(char is not None for char in run) > 1:
        return "[" + "".join(char or "." for char in run) + "]"
    return "".join(f"_{char}" if char else "?" for char in run)


def _print(token: Token) -> str:
    match token:
        case Letter(char):
            return char or "?"
        case Gap():
            return "[---]"
        case Separator(kind):
            return kind
        case LineBreak():
            return "/"
