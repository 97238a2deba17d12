"""Description text -> tokens: words, quoted texts, brackets and stops, each with its place.

One pass, no backtracking: time grows with the length of the text only.
"""

import re
import unicodedata

import msgspec

from planish.marks.describe.vocabulary import word_set

MAX_LENGTH = 20_000
_MAX_QUOTE = 400


class DescriptionError(ValueError):
    """A description that is refused: what is wrong and how to mend it, in one line."""


class Token(msgspec.Struct, frozen=True):
    """One token.

    kind: word, quote (text between quotation marks), open or close (a bracket), stop (one of
    ``, ; : . ?``, or ``#`` for an item number such as [1] or 2)).
    units: folded words for matching, empty for stops. glued: no space before it.
    """

    kind: str
    text: str
    start: int
    end: int
    units: tuple[str, ...] = ()
    glued: bool = False


_CLOSERS = {'"': '"″', "“": '”"“', "„": '“”"', "«": "»", "»": "«", "″": '"″', "‘": "’'", "'": "'’"}
_DOUBLE = frozenset('"“„«»″”')
_DASHES = "–—"
_BREAK = frozenset(" \t\r\n,;:()[]{}|…") | _DOUBLE
#: what stands in square brackets beside letters is Leiden notation
_LEIDEN = re.compile(r"(?:[.]+|[-–—]+|[?]+|[^\W\d_]{1,3}[?]?|[^\W\d_]?[.?-]+[^\W\d_]?)")
_RESTORED = re.compile(r"[^\W\d_][^\W\d_ .&]{2,20}")
_LOST_WORDS = frozenset(
    ("illegible", "worn away", "effaced", "lost", "missing", "erased", "rubbed")
)
_ITEM = re.compile(r"\(\d{1,2}\)|\[\d{1,2}\]")
_NUMBERED = re.compile(r"\d{1,2}\)")
_DOUBT = re.compile(r"[(\[]\s*\?+\s*[)\]]")
_EITHER = re.compile(r"\[\s*([^\W\d_])\s+or\s+[^\W\d_]\s*\]")
_NUMBERS = dict(
    zip(
        ["1", "2", "3", "4", "5", "6", "7", "8", "9", "10", "11", "12"],
        [
            "one",
            "two",
            "three",
            "four",
            "five",
            "six",
            "seven",
            "eight",
            "nine",
            "ten",
            "eleven",
            "twelve",
        ],
        strict=True,
    )
)
_ABBREVIATED = word_set(
    "co bros mfg mfrs wm st ltd no jr sr inc corp c ca circa approx nr mr mrs messrs dr fig cf lt rt rd reg regd nos pat"
)
#: in capitals these are initials: "DR. Reader asks"
_TITLES = word_set("dr mr mrs messrs lt fig cf nr")


def fold(word: str) -> tuple[str, ...]:
    """Folded units of a word: small letters, no accents, possessive or plural s.

    >>> fold("Leopards'"), fold("six-pointed"), fold("Date/letter")
    (('leopard',), ('six', 'pointed'), ('date', 'letter'))
    """
    plain = unicodedata.normalize("NFKD", word).casefold()
    plain = "".join(c for c in plain if not unicodedata.combining(c))
    plain = plain.replace("’", "'").replace("‘", "'").replace("ʼ", "'")
    units = []
    for piece in re.split(r"[-‐–—/]", plain):
        unit = piece.strip(".'*")
        unit = unit.removesuffix("'s").replace("'", "")
        if len(unit) > 5 and unit.endswith(("ches", "shes", "sses", "xes")):
            unit = unit[:-2]
        elif len(unit) > 3 and unit[-1] == "s" and unit[-2] not in "su" and unit[-2:] != "is":
            unit = unit[:-1]
        if unit:
            units.append(_NUMBERS.get(unit, unit))
    return tuple(units)


def check(text: str) -> None:
    """Refuse what no description is.

    Raises:
        DescriptionError: more than 20,000 characters, or a control character.
    """
    if len(text) > MAX_LENGTH:
        raise DescriptionError(
            f"description: {len(text)} characters, at most {MAX_LENGTH} are read; "
            "give the passage about the marks only"
        )
    for at, char in enumerate(text):
        if char not in "\t\r\n" and unicodedata.category(char) in ("Cc", "Cs"):
            raise DescriptionError(
                f"description, character {at + 1}: control character U+{ord(char):04X}; take it out"
            )


class _Tokenizer:
    def __init__(self, text: str) -> None:
        self.text = text
        self.at = 0
        self.found: list[Token] = []
        self.pair = self._pairs()
        self.remark = 0  # depth of round brackets

    def _pairs(self) -> dict[int, int]:
        """Place of each square or curly opening bracket -> place of its close."""
        pairs: dict[int, int] = {}
        open_at: list[int] = []
        for at, char in enumerate(self.text):
            if char in "[{":
                open_at.append(at)
            elif char in "]}" and open_at:
                pairs[open_at.pop()] = at
        return pairs

    def char(self, offset: int = 0) -> str:
        at = self.at + offset
        return self.text[at] if 0 <= at < len(self.text) else " "

    def add(self, kind: str, text: str, start: int) -> None:
        glued = start > 0 and not self.text[start - 1].isspace()
        units: tuple[str, ...] = ()
        if kind == "word":
            for piece in text.split():
                units += fold(piece)
        self.found.append(Token(kind, text, start, self.at, units, glued))

    def run(self) -> tuple[Token, ...]:
        while self.at < len(self.text):
            char = self.char()
            if char.isspace():
                self.space()
            elif (char in _CLOSERS and self.quote(char)) or (char in "[({" and self.bracket(char)):
                pass
            elif char.isdigit() and not self.remark and _NUMBERED.match(self.text, self.at):
                start = self.at
                self.at = self.text.index(")", start) + 1
                self.add("stop", "#", start)
            elif char in "])}":
                self.at += 1
                self.remark = max(0, self.remark - (char == ")"))
                self.add("close", char, self.at - 1)
            elif char == "-" and self.char(-1).isspace() and self.char(1).isspace():
                self.at += 1
                self.add("stop", ",", self.at - 1)
            elif (
                char in ",;:|…"
                or (char == "=" and not self.char(-1).isdigit())
                or (char in _DASHES and self.char(1).isspace())
            ):
                self.at += 1
                kind = {";": ";", ":": ":", "=": ":", "|": ";"}.get(char, ",")
                self.add("stop", kind, self.at - 1)
            elif char in _DOUBLE:
                self.at += 1  # a quotation mark without its partner is no sign of its own
            else:
                self.word()
        return tuple(self.found)

    def space(self) -> None:
        start = self.at
        while self.at < len(self.text) and self.char().isspace():
            self.at += 1
        lines = self.text[start : self.at].count("\n")
        if lines and self.found:
            self.add("stop", ";" if lines > 1 else ",", start)

    def quote(self, char: str) -> bool:
        before, after = self.char(-1), self.char(1)
        if char in "'‘" and (before.isalnum() or after.isspace() or after in ",;.)"):
            return False
        if char in '"″' and before.isdigit():
            return False  # inches
        for end in range(self.at + 1, min(len(self.text), self.at + _MAX_QUOTE)):
            if self.text[end] not in _CLOSERS[char]:
                continue
            follows = self.text[end + 1] if end + 1 < len(self.text) else " "
            if char in "'‘" and (follows.isalnum() or self.text[end - 1].isspace()):
                continue
            start, inner = self.at, self.text[self.at + 1 : end].strip()
            self.at = end + 1
            if inner:
                self.add("quote", inner, start)
            return True
        return False

    def bracket(self, char: str) -> bool:
        """A doubt, an item number, Leiden notation, or the opening of a remark."""
        start = self.at
        doubt = _DOUBT.match(self.text, start)
        item = _ITEM.match(self.text, start)
        if doubt and char == "(":
            self.at = doubt.end()
            self.add("stop", "?", start)
            return True
        if item and not self.char(-1).isalnum():
            self.at = item.end()
            self.add("stop", "#", start)
            return True
        if char in "[{" and self.leiden(start):
            return True
        self.at += 1
        self.remark += char == "("
        self.add("open", char, start)
        return True

    def leiden(self, start: int) -> bool:
        close = self.pair.get(start)
        if close is None or close - start > 25:
            return False
        inner = self.text[start + 1 : close].strip()
        after = self.text[close + 1 : close + 3].strip()
        before = self.char(-1)
        letters_beside = (before.isalnum() and before.isupper()) or after[:1].isupper()
        notation = (
            not inner
            or inner in ("?", "---")
            or (inner.casefold() in _LOST_WORDS and letters_beside)
            or (bool(_LEIDEN.fullmatch(inner)) and (before.isalnum() or after[:1].isalnum()))
            or (bool(_RESTORED.fullmatch(inner)) and inner.isupper())
        )
        if not notation and not _EITHER.match(self.text, start):
            return False
        self.word()
        return True

    def word(self) -> None:
        start = self.at
        out: list[str] = []
        while self.at < len(self.text):
            char = self.char()
            either = _EITHER.match(self.text, self.at) if char == "[" else None
            if char in "[{" and self.at in self.pair:
                close = self.pair[self.at]
                inner = self.text[self.at + 1 : close].strip()
                if either:
                    out.append(f"[{either.group(1)}]")
                elif not inner or inner.casefold() in _LOST_WORDS:
                    out.append("[---]")
                elif _LEIDEN.fullmatch(inner) or (inner.isupper() and _RESTORED.fullmatch(inner)):
                    out.append(_bracketed(inner))
                else:
                    break
                self.at = close + 1
            elif char in _BREAK or (char in _DASHES and self.char(1).isspace()):
                if char == "," and self.char(-1).isdigit() and self.char(1).isdigit():
                    out.append(char)
                    self.at += 1
                    continue
                break
            else:
                out.append(char)
                self.at += 1
        if self.at == start:  # a stray bracket
            self.at += 1
            self.add("open", self.text[start], start)
            return
        self.trim(start, "".join(out))

    def trim(self, start: int, text: str) -> None:
        """Part the word from the stops that close it."""
        tail = ""
        while len(text) > 1 and text[-1] in ".?!'’*†":
            if text[-1] == "." and self.keeps_stop(text):
                break
            tail = text[-1] + tail
            text = text[:-1]
            self.at -= 1
        while len(text) > 1 and text[0] in "'‘’":
            text, start = text[1:], start + 1
        alone = self.text[start - 1 : start].isspace() and self.char().isspace()
        if text == "." and alone and self.pellet(start):
            self.add("word", "·", start)
            return
        if text in (".", "?", "!", "'", "’", "†"):
            kind = "?" if text == "?" else "."
            if text in ".?!":
                self.add("stop", kind, start)
        else:
            self.add("word", text, start)
        for char in tail:
            self.at += 1
            if char in ".!":
                self.add("stop", ".", self.at - 1)
            elif char == "?":
                self.add("stop", "?", self.at - 1)

    def pellet(self, at: int) -> bool:
        """Whether a stop between spaces stands between two single capitals: A . R."""
        before, after = self.text[:at].split()[-1:], self.text[at + 1 : at + 12].split()[:1]
        return all(len(w[0]) == 1 and w[0].isupper() for w in (before, after) if w) and bool(after)

    def keeps_stop(self, text: str) -> bool:
        """Whether the last stop belongs to the word: initials and abbreviations."""
        stem = text[:-1]
        if stem.casefold() in _ABBREVIATED:
            return not (stem.isupper() and stem.casefold() in _TITLES)
        if "." in stem.strip("."):
            return any(c.isalpha() for c in stem)
        return len(stem) == 1 and stem.isalpha() and stem.isupper()


def _bracketed(inner: str) -> str:
    """Leiden notation inside []: a doubted letter [D?] is an uncertain D."""
    if len(inner) > 1 and inner.endswith("?") and inner[0].isalpha():
        inner = inner.rstrip("?")
    return "[" + re.sub(r"[–—-]+", "---", inner) + "]"


def tokenize(text: str) -> tuple[Token, ...]:
    """Tokens of a description, in order. Call ``check`` first.

    >>> [t.text for t in tokenize('lid: "TE" over [.]B; worn')]
    ['lid', ':', 'TE', 'over', '[.]B', ';', 'worn']
    """
    return _Tokenizer(text).run()
