"""Texts made fit for print: what cannot be seen is shown, what is too long may break.

Nothing is dropped: a sign that has no form of its own (a control sign, a zero width, a sign that
turns the direction of writing) is printed as its number, so that no text reads otherwise on paper
than it stands in the file.
"""

import re
import unicodedata

#: joiners belong to the writing of these scripts (Unicode 15, chapters 9 and 12)
_JOINING = re.compile("[\u0600-\u08ff\u0900-\u0dff\u0e00-\u0eff\u1000-\u109f]")
_LONG = 26
_AFTER = set("/._-?&=:;,|\\+~")
_BREAK = "\u200b"

#: the space between a figure and a unit; that no line ends there is common practice
_UNIT = re.compile(r"(?<=\d) (?=(?:mm|cm|m|in(?! \w)|kg|mg|g|ozt|oz|dwt|gr|ct|dB|°C|%|‰)(?![\w-]))")


def visible(text: str) -> str:
    """The text with every sign seen.

    >>> visible("pay\u202e001 \u202c")
    'pay‹U+202E›001 ‹U+202C›'
    """
    text = unicodedata.normalize("NFC", text.replace("\r\n", "\n").replace("\r", "\n"))
    if text.isascii() and text.isprintable():
        return text
    return "".join(_seen(char, n, text) for n, char in enumerate(text))


def _seen(char: str, at: int, text: str) -> str:
    if char in "\n\u00ad":
        return char
    if char == "\t":
        return " "
    kind = unicodedata.category(char)
    if char in "\u200c\u200d" and _JOINING.match(text[at - 1 : at] or ""):
        return char
    if kind in ("Cc", "Cf", "Cs", "Co", "Cn") or (kind in ("Zl", "Zp")):
        return f"‹U+{ord(char):04X}›"
    if 0xFE00 <= ord(char) <= 0xFE0F or 0xE0100 <= ord(char) <= 0xE01EF:
        return ""  # picks a form of the sign before it; the form here is the plain one
    return " " if kind == "Zs" and char not in "\u00a0\u2009\u202f" else char


def breakable(text: str) -> str:
    """The text with places to break in words that no line could hold."""
    if len(text) <= _LONG:
        return text
    return re.sub(rf"[^\s{_BREAK}]{{{_LONG},}}", lambda m: _broken(m[0]), text)


def _broken(word: str) -> str:
    out, since = [], 0
    for char in word:
        out.append(char)
        since += 1
        if since >= 6 and (char in _AFTER or since >= 14) and not unicodedata.combining(char):
            out.append(_BREAK)
            since = 0
    return "".join(out)


def held(text: str) -> str:
    """The text with each figure kept on one line with the unit behind it.

    >>> held("height 12.1 cm, 98 %") == "height 12.1\u00a0cm, 98\u00a0%"
    True
    """
    return _UNIT.sub("\u00a0", text)


def printed(value: object) -> object:
    """A JSON value with every text in it made fit for print."""
    if isinstance(value, str):
        return value if value.startswith("<svg ") else breakable(held(visible(value)))
    if isinstance(value, dict):
        return {key: printed(item) for key, item in value.items()}
    if isinstance(value, list | tuple):
        return [printed(item) for item in value]
    return value
