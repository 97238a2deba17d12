"""Finding rows of the library by words."""

import difflib
import re
from collections.abc import Iterable, Sequence
from typing import TypeVar

import msgspec

from planish.library import Library
from planish.library.cycles import Letter, expand
from planish.library.rows import Cycle, Office

R = TypeVar("R", bound=msgspec.Struct)

#: rank of a row that holds the words in a field that does not name it
_MENTIONED = 3
_PARTED = re.compile(r"[;|]")
_YEAR = re.compile(r"\d{4}")


def search(rows: Sequence[R], names: Sequence[str], query: str) -> list[R]:
    """Rows that hold every word of the query, those named so first.

    names: the fields that name a row; the other fields are searched too, and rank last.
    """
    wanted = query.casefold().split()
    ranked = []
    for at, row in enumerate(rows):
        rank = _rank(row, names, " ".join(wanted), wanted)
        if rank is not None:
            ranked.append((rank, at, row))
    return [row for _, _, row in sorted(ranked, key=lambda r: r[:2])]


def only_mentioned(rows: Iterable[msgspec.Struct], names: Sequence[str], query: str) -> bool:
    """Whether none of the rows found is named so: the query stands in other fields alone."""
    words = query.casefold().split()
    return all(_rank(row, names, " ".join(words), words) == _MENTIONED for row in rows)


def _rank(
    row: msgspec.Struct, names: Sequence[str], query: str, words: Sequence[str]
) -> int | None:
    named = [
        part.strip().casefold() for n in names for part in _PARTED.split(str(getattr(row, n) or ""))
    ]
    if query in named:
        return 0
    text = " ".join(named)
    if all(re.search(rf"\b{re.escape(w)}", text) for w in words):
        return 1
    if all(_in(w, text) for w in words):
        return 2
    fields = (getattr(row, f) for f in row.__struct_fields__ if f not in ("source", "confidence"))
    text = " ".join(str(v) for v in fields if v is not None).casefold()
    return _MENTIONED if all(_in(w, text) for w in words) else None


def _in(word: str, text: str) -> bool:
    """Whether a text holds a word or part of one; a number only whole: 922 is not in 1922."""
    return (
        bool(re.search(rf"(?<!\d){word}(?!\d)", text))
        if word.isascii() and word.isdigit()
        else word in text
    )


def near(rows: Iterable[msgspec.Struct], names: Sequence[str], query: str) -> list[str]:
    """Names nearest to a query that nothing matches, at most three."""
    known = {
        part.strip().casefold(): part.strip()
        for row in rows
        for n in names
        for part in _PARTED.split(str(getattr(row, n) or ""))
        if part.strip()
    }
    return [known[k] for k in difflib.get_close_matches(query.casefold(), known, 3, 0.75)]


class Found(msgspec.Struct, frozen=True):
    """A date letter with its office and cycle."""

    office: Office
    cycle: Cycle
    letter: Letter


def letters(library: Library, query: str) -> tuple[list[Found], str]:
    """Date letters that a query means, and the words of it that name an office.

    The query holds an office, a year of four figures, a letter, or several of them, in any order:
    ``Birmingham 1884``, ``London k``, ``1756``.
    """
    words = query.split()
    years = {int(w) for w in words if _YEAR.fullmatch(w)}
    single = {w for w in words if len(w) == 1 and w.isalpha()}
    place = " ".join(w for w in words if w not in single and not _YEAR.fullmatch(w))
    offices = {o.id: o for o in library.offices}
    if place:
        hits = search(library.offices, ("id", "name"), place)
        best = {o.id for o in hits if place.casefold() in (o.id.casefold(), o.name.casefold())}
        chosen = best or {o.id for o in hits if _names_it(o, place)}
    else:
        chosen = set(offices)
    found = [
        Found(offices[cycle.office], cycle, letter)
        for cycle in library.cycles
        if cycle.office in chosen
        for letter in expand(cycle)
        if not years or any(letter.first_year <= y <= letter.last_year for y in years)
        if not single or single & set(letter.letters)
    ]
    return sorted(found, key=lambda f: (f.office.name, f.letter.first_year)), place


def _names_it(office: Office, place: str) -> bool:
    return all(w in office.name.casefold() for w in place.casefold().split())
