"""Struck text as a writer prints it -> the marks in it.

``"[lion, anchor] G / STERLING / 65"`` holds five marks; ``PB/AB`` is one punch, PB over AB;
``V.P/1883`` one, initials over a year; ``800SM`` two.
"""

import re

import msgspec
from msgspec.structs import replace

from planish.marks.describe import world
from planish.marks.describe.lexicon import Lexicon, struck_key
from planish.marks.transcription import MAX_LENGTH, TranscriptionError, parse, print_

_REMARK = re.compile(r"\(([^()]{1,80})\)|\[([^\[\]]{1,80})\]")
_LEIDEN = re.compile(r"[.?–—-]+|\w{1,3}\??|[A-Z]{2,20}")
_YEAR = re.compile(r"1[3-9]\d\d|20[0-4]\d")
_GLUED = re.compile(r"(\d{3})([A-Z]{1,4})")
_PRICE_OR_DATE = re.compile(
    r"\b(?:PAT|PATENT|PATENTED|REGD?|RD|JAN|FEB|MAR|APR|MAY|JUN|JUL|AUG|SEP|SEPT|OCT|OKTOBER|NOV|DEC|OZ)\b",
    re.IGNORECASE,
)
_LAYOUT = re.compile(
    r"\s*\((?:arched|curved|straight|across[^()]{0,30}|in (?:an? )?(?:arc|circle|curve)|round[^()]{0,20})\)",
    re.IGNORECASE,
)
_MEASURE = re.compile(
    r"\d[\d/., ]*\s*(?:PINTS?|OZS?|INS?|INCH(?:ES)?|FINE|HALF PINTS?|QTS?|DWTS?|PTS?)\.?",
    re.IGNORECASE,
)
#: words that end many a trade name: they stand for a mark only when alone
WEAK = frozenset(("PLATE", "SILVER", "METAL", "STANDARD", "PLATED", "WHITE"))
_PARTNERS = re.compile(r"[A-Z]{1,2}(?:&[A-Z]{1,2})+")
_FIRM = frozenset(("CO", "SONS", "SON", "BROS", "LTD"))
_WHOLE_NUMBER = re.compile(r"[#№]?\d[\d.,/]*")


class Piece(msgspec.Struct, frozen=True):
    """One mark in a struck text.

    text: in the transcription's notation; or remark: words in brackets that the caller reads.
    note: how the text is laid out.
    """

    text: str = ""
    remark: str = ""
    note: str = ""


def clean(text: str) -> str | None:
    """The text in the transcription's notation, or None where it cannot be."""
    text = text.replace("{", "[").replace("}", "]").replace("//", "/").replace("\\", "")
    text = re.sub(r"\[\s*\]", "[---]", text)
    text = re.sub(r"\[([^\W\d_])\?+\]", r"[\1]", text)
    text = "".join(c for c in text if c not in '()<>"“”_')
    if len(text) > MAX_LENGTH:
        return None
    try:
        read = parse(text.strip(" ,;:"))
    except TranscriptionError:
        return None
    return print_(read) or None


def is_initials(text: str) -> bool:
    """Whether the text is one to four capitals."""
    try:
        return parse(text).is_initials
    except TranscriptionError:
        return False


def is_year(text: str) -> bool:
    """Whether the text is four figures that may be a year."""
    return bool(_YEAR.fullmatch(text))


def split(text: str, lexicon: Lexicon) -> list[Piece]:
    """The marks that a struck text holds, in order."""
    text = text.replace("\\", "")
    layout = "; ".join(m.group().strip(" ()") for m in _LAYOUT.finditer(text))
    text = _LAYOUT.sub("", text)
    found: list[Piece] = []
    at = 0
    for match in _REMARK.finditer(text):
        square = match.group(2)
        if square is not None and _LEIDEN.fullmatch(square.strip()):
            continue
        found += _lines(text[at : match.start()], lexicon)
        found.append(Piece(remark=(match.group(1) or square or "").strip()))
        at = match.end()
    found += _lines(text[at:], lexicon)
    found = [p for p in found if p.text or p.remark]
    if layout and found:
        found[0] = replace(found[0], note=layout)
    return found


def _lines(text: str, lexicon: Lexicon) -> list[Piece]:
    """Lines of one text: known words and numbers stand alone, the rest is one punch."""
    rows: list[list[str]] = []
    for line in re.split(r"\s+/+\s*|/+\s+|(?<!\d)/+|/+(?![\dA-Z])", text.strip(" ,;")):
        listed = _commas(line, lexicon)
        for part in listed:
            row = _row(part, lexicon)
            # parts of a list are marks of their own: an empty row keeps them from being joined
            rows += [row, []] if len(listed) > 1 else [row]
    found: list[Piece] = []
    joined: list[str] = []

    def flush() -> None:
        if joined:
            found.append(Piece(text="/".join(joined)))
            joined.clear()

    for row in rows:
        alone = len(row) == 1 and (lexicon.known_struck(row[0].split()) or _is_number(row[0]))
        if alone and _YEAR.fullmatch(row[0]) and joined and is_initials(joined[-1]):
            joined.append(row[0])
            flush()
        elif alone or len(row) > 1:
            flush()
            found += [Piece(text=part) for part in row]
        elif row:
            joined.append(row[0])
        else:
            flush()
    flush()
    return found


def _commas(line: str, lexicon: Lexicon) -> list[str]:
    """Parts at commas, where one of the parts is a known word or number; else the line whole."""
    parts = [p.strip() for p in re.split(r",\s+", line) if p.strip()]
    if any(lexicon.known_struck(p.split()) or _is_number(p) for p in parts):
        return parts
    return [line.strip()] if line.strip() else []


def _is_number(text: str) -> bool:
    return bool(_WHOLE_NUMBER.fullmatch(text))


def _row(line: str, lexicon: Lexicon) -> list[str]:
    """Parts of one line: known wordings, numbers at its ends, and what is left."""
    words = _unglue(line.split(), lexicon)
    if (
        lexicon.known_struck(words)
        or _MEASURE.fullmatch(line)
        or (_PRICE_OR_DATE.search(line) and not any(lexicon.known_struck([w]) for w in words[:-1]))
    ):
        return [" ".join(words)]
    parts: list[list[str]] = []
    rest: list[str] = []
    at = 0
    while at < len(words):
        size = _known_at(words, at, lexicon) or _partners_at(words, at)
        if size:
            if rest:
                parts.append(rest)
                rest = []
            parts.append(words[at : at + size])
            at += size
        else:
            rest.append(words[at])
            at += 1
    if rest:
        parts.append(rest)
    if len(parts) > 1 and all(w.islower() for w in parts[-1]):
        small = parts.pop()
        parts[-1] += small  # "Triple plus" is one wording
    out: list[str] = []
    for part in parts:
        out += [" ".join(p) for p in _numbers(part, lexicon)]
    return out


def _known_at(words: list[str], at: int, lexicon: Lexicon) -> int:
    for size in range(min(lexicon.longest_struck, len(words) - at), 0, -1):
        if not lexicon.known_struck(words[at : at + size]):
            continue
        after = words[at + size].upper() if at + size < len(words) else ""
        before = words[at - 1].upper() if at else ""
        weak = size == 1 and words[at].upper() in WEAK and len(words) > 1
        if weak or after in world.COMPANY or (before in ("&", "AND", "OF", "THE")):
            return 0
        return size
    return 0


def _partners_at(words: list[str], at: int) -> int:
    """Platers' initials beside other initials are a punch of their own: AW & HS W&N."""
    if len(words) == 1 or not _PARTNERS.fullmatch(words[at]):
        return 0
    after = words[at + 1].upper().strip(".") if at + 1 < len(words) else ""
    before = words[at - 1] if at else ""
    others = any(is_initials(w) for w in (*words[:at], *words[at + 1 :]) if w != "&")
    joined = after in _FIRM or after == "&" or before == "&"
    return int(others and not joined)


def _numbers(words: list[str], lexicon: Lexicon) -> list[list[str]]:
    """Numbers at the ends of a row stand alone."""
    if lexicon.known_struck(words) or _PRICE_OR_DATE.search(" ".join(words)):
        return [words]
    head: list[list[str]] = []
    tail: list[list[str]] = []
    while len(words) > 1 and _is_number(words[-1]):
        tail.insert(0, [words[-1]])
        words = words[:-1]
    if len(words) > 1 and words[0] in world.FINENESSES:
        head.append([words[0]])
        words = words[1:]
    return [*head, words, *tail]


def _unglue(words: list[str], lexicon: Lexicon) -> list[str]:
    """Part a fineness from the letters printed against it: 800SM."""
    out: list[str] = []
    for word in words:
        match = _GLUED.fullmatch(word)
        fineness = match is not None and match.group(1) in world.FINENESSES
        # 925S and 830M are written so in the north of Europe
        one = fineness and struck_key(word)[3:] in ("S", "M")
        if match and fineness and not one and not lexicon.known_struck([word]):
            out += [match.group(1), match.group(2)]
        else:
            out.append(word)
    return out
