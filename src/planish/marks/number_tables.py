"""Facts about numbers, laid out from the rows of the library for looking up."""

import re
from collections import defaultdict

import msgspec

from planish.library.loader import Library
from planish.library.rows import Sign, Word
from planish.marks.figures import Figures, plain_text
from planish.marks.seen import fold

#: what a number can mean, in words
MEANINGS = {
    "fineness": "fineness, parts in a thousand or by name",
    "zolotnik": "fineness in zolotnik, parts of 96",
    "lot": "fineness in lot, parts of 16",
    "plating": "grams of silver on plate, or its grade",
    "other-metal": "figure of another metal",
    "pattern": "pattern, stock or order number",
    "year": "a year",
    "patent": "patent, by date or number",
    "design": "registered design",
    "weight": "weight of the piece",
    "size": "size or capacity",
}
FINE = ("fineness", "zolotnik", "lot")
#: further grams met in pairs and on single kinds of spoon and fork (common practice)
GRAMS = frozenset(
    (8, 12, 15, 18, 20, 21, 24, 27, 30, 33, 36, 42, 45, 48, 50, 54, 72, 80, 84, 110, 180)
)
_LOT = re.compile(r"LOTH?$|LOD$|LODIG$|LUOTI$|L$")


def key_of(text: str) -> str:
    """A spelling with figures, in one form: no leading point, no spaces, no thousandths.

    >>> key_of("0,800"), key_of("925/1000"), key_of("90 - 45"), key_of("12 Loth")
    ('800', '925', '90-45', '12LOTH')
    """
    plain = re.sub(r"\s*[-:=/·]\s*", "-", plain_text(text)).strip(" .")
    plain = re.sub(r"(?<=\d)\s+(?=\d+-)", "+", plain).replace(" ", "")
    plain = plain.removesuffix("-1000").replace("FINE", "")
    return re.sub(r"^(?:0?[.,])(?=\d)", "", plain)


def letters_of(text: str) -> str:
    """Letters and figures only, capitals."""
    return "".join(c for c in fold(text) if c.isalnum())


def kind_of(row: Word, key: str) -> str:
    """Which meaning a row gives a number: by its kind, and for fineness by its arithmetic."""
    if row.kind in ("plate", "weight"):
        return "plating" if row.kind == "plate" else "weight"
    if row.kind in ("other", "base"):
        return "other-metal"
    figures = re.search(r"\d+", key)
    value = int(figures.group()) if figures else 0
    fine = row.fineness or 0.0
    if _LOT.search(key) or (value <= 16 and abs(value / 16 * 1000 - fine) < 1):
        return "lot"
    if 16 < value <= 96 and abs(value / 96 * 1000 - fine) < 1:
        return "zolotnik"
    return "fineness"


class Tables:
    """Look-ups of one library."""

    def __init__(self, library: Library) -> None:
        self.library = library
        #: spelling with figures -> (meaning, row)
        self.figures: dict[str, list[tuple[str, Word]]] = defaultdict(list)
        #: word without figures -> rows
        self.words: dict[str, list[Word]] = defaultdict(list)
        self.totals: dict[str, int] = defaultdict(int)
        for row in library.words:
            for text in (row.text, *row.also.split(";")):
                if any(c.isdecimal() for c in text):
                    key = key_of(text)
                    meaning = kind_of(row, key)
                    if all(row is not r for _, r in self.figures[key]):
                        self.figures[key].append((meaning, row))
                        self.totals[meaning] += 1
                elif key := letters_of(text):
                    self.words[key].append(row)
        self.ovals: dict[str, list[Sign]] = defaultdict(list)
        for sign in library.signs:
            if sign.kind == "number" and sign.outline:
                self.ovals[sign.value].append(sign)
        self.platers = {
            letters_of(text): maker
            for maker in library.makers
            if "plate" in maker.wares
            for text in maker.marks.split(";")
            if len(letters_of(text)) > 2
        }

    def rows(self, found: Figures) -> list[tuple[str, Word]]:
        """Rows that list the number, with its unit if they list that, else without."""
        if found.glued:
            return self.figures.get(key_of(found.glued + found.number + found.unit), [])
        keys = [key_of(found.number)]
        if found.fraction:
            keys.insert(0, found.fraction)
        if found.unit:
            keys.insert(0, key_of(found.number + found.unit))
        for key in keys:
            if key in self.figures:
                return self.figures[key]
        return []

    def whole(self, found: Figures) -> bool:
        """Whether the number is listed with the letters that stand with it, such as 11 OZ or A1."""
        whole = key_of(found.glued + found.number + found.unit)
        return bool(found.glued or found.unit) and whole in self.figures

    def first_year(self, word: str) -> tuple[int, Word] | None:
        """The earliest year of a word's rows; None where a row leaves it open."""
        rows = self.words.get(word, [])
        years = [(r.year_from, r) for r in rows if r.year_from is not None]
        if not rows or len(years) < len(rows):
            return None
        return min(years, key=lambda y: y[0])


class Line(msgspec.Struct, frozen=True):
    """A line of evidence on a number: decibans by meaning, 0 where none is told."""

    observed: str
    because: str
    decibans: dict[str, float]
    sources: tuple[str, ...]
