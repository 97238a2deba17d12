"""``planish library maker``: makers and sponsors by name or by their mark, with lost letters."""

import re
from collections import defaultdict
from typing import TYPE_CHECKING

import click

from planish.cli.errors import BadInput
from planish.cli.library.common import (
    MOST,
    country_code,
    entry,
    grounds,
    holds,
    listed,
    more,
    none,
    options,
    print_json,
    record,
    sources,
    years,
)
from planish.cli.terminal import prose, say
from planish.cli.wording import CONFIDENCE

if TYPE_CHECKING:
    from planish.library.rows import Maker

_NAMES = ("name", "marks", "id", "family")
_LOST = re.compile(r"[\[\]?]")


@click.command()
@click.argument("query", nargs=-1)
@click.option("--place", metavar="TOWN", help="Only makers of this town.")
@click.option("--country", metavar="CODE", help="Only this country (ISO 3166-1, two letters).")
@click.option("--year", type=int, metavar="YEAR", help="Only makers at work in this year.")
@options
def maker(
    query: tuple[str, ...],
    *,
    place: str | None,
    country: str | None,
    year: int | None,
    everything: bool,
    as_json: bool,
) -> None:
    """Find makers and sponsors by name, or by their mark as struck.

    In a mark, [.] or ? stands for one lost letter and [---] for an unknown number of them.

    \b
    planish library maker Bateman
    planish library maker "W[.]" --place London --year 1780
    planish library maker "[---]&S" --country GB
    """  # noqa: D301  # click reads the backspace
    from planish.cli.lookup import near, search
    from planish.library import load

    shipped = load()
    words = " ".join(query).strip()
    struck = by_mark(words, shipped.makers) if words else []
    marked = {m.id for m in struck}
    lost = bool(_LOST.search(words))
    named = [] if lost or not words else search(shipped.makers, _NAMES, words)
    rows = (
        list(shipped.makers) if not words else [*struck, *(m for m in named if m.id not in marked)]
    )
    before = len(rows)
    if country:
        code = country_code(country)
        rows = [m for m in rows if m.country == code]
    if place:
        wanted = place.casefold()
        rows = [m for m in rows if wanted in m.place.casefold()]
    # makers without years on record stay, after those known to have been at work
    rows = [m for m in rows if holds(m, year)]
    if year is not None:
        rows.sort(key=lambda m: m.year_from is None and m.year_to is None)
    if before and not rows:
        raise BadInput(
            f"{before} on record, none of this place, country and year; no proof about a piece",
            f"maker '{words}'",
            "leave out --place, --country or --year to see them",
        )
    if not rows:
        nearest = [] if lost else near(shipped.makers, ("name", "marks"), words)
        raise none("maker", words, nearest, "planish library maker")
    kin = succession(shipped.makers)
    if as_json:
        print_json(record(m, by="mark" if m.id in marked else "name" if words else "",
                          **kin[m.id]) for m in rows)  # fmt: skip
        return
    shown = rows if everything else rows[:MOST]
    names = {m.id: m for m in shipped.makers}
    lines = [line for m in shown for line in _page(m, names, kin[m.id])]
    head = _head(words, marked, rows)
    say([
        *prose(head, 0, 2), *lines, *more(len(rows), everything=everything),
        *sources(shown),
    ] if head else [
        *lines[1:], *more(len(rows), everything=everything), *sources(shown),
    ])  # fmt: skip


def _head(words: str, marks: set[str], rows: "list[Maker]") -> str:
    from planish.cli.lookup import only_mentioned

    marked = sum(m.id in marks for m in rows)
    if marked:
        others = f"; {len(rows) - marked} more by name" if len(rows) > marked else ""
        return f"{marked} on record with the mark {words}{others}."
    if words and only_mentioned(rows, _NAMES, words):
        return f"No maker is named '{words}'; what mentions it:"
    return ""


def by_mark(words: str, makers: "tuple[Maker, ...]") -> "list[Maker]":
    """Makers with a mark of these letters; ``[.]``, ``?`` and ``[---]`` stand for lost ones.

    Letters that punches do not tell apart (I and J, U and V) count as the same; dots, signs and
    spaces are passed over.

    Raises:
        BadInput: a mark with lost letters that cannot be read as a transcription.
    """
    from planish.marks.register import letters_key
    from planish.marks.transcription import Gap, Letter, TranscriptionError, parse

    try:
        tokens = parse(words).tokens
    except TranscriptionError as fault:
        if not _LOST.search(words):
            return []
        raise BadInput(
            str(fault), f"mark '{words}'", "[.] is one lost letter, [---] several"
        ) from None
    pattern, certain = "", 0
    for token in tokens:
        if isinstance(token, Gap):
            pattern += ".*"
        elif isinstance(token, Letter):
            key = letters_key(token.char or "")
            certain += bool(key)
            pattern += re.escape(key) if token.char else "."
    if not certain:
        return []
    fits = re.compile(pattern)
    return [m for m in makers
            if any(fits.fullmatch(letters_key(mark)) for mark in m.marks.split(";") if mark.strip())]  # fmt: skip


def succession(makers: "tuple[Maker, ...]") -> dict[str, dict[str, list[str]]]:
    """By maker: ids of those carried on from, of those who carried on, and of the family."""
    after: dict[str, list[str]] = defaultdict(list)
    family: dict[str, list[str]] = defaultdict(list)
    for one in makers:
        for before in one.predecessors:
            after[before].append(one.id)
        if one.family:
            family[one.family].append(one.id)
    return {
        one.id: {
            "carried_on_from": list(one.predecessors),
            "carried_on_by": after[one.id],
            "of_the_family": [i for i in family[one.family] if one.family and i != one.id],
        }
        for one in makers
    }


def _page(row: "Maker", names: "dict[str, Maker]", kin: dict[str, list[str]]) -> list[str]:

    def called(ids: list[str]) -> str:
        return "; ".join(
            f"{names[i].name} ({years(names[i].year_from, names[i].year_to) or 'years not known'})"
            if i in names else i
            for i in ids
        )  # fmt: skip

    return entry(
        f"{row.name} [{row.id}]",
        [
            ("marks", listed(row.marks)),
            ("device", listed(row.device)),
            ("place", row.place),
            ("country", row.country),
            ("years", years(row.year_from, row.year_to) or "not known"),
            ("kind", row.kind),
            ("wares", row.wares),
            ("family", row.family),
            ("also of it", called(kin["of_the_family"][:8])),
            ("carried on from", called(kin["carried_on_from"])),
            ("carried on by", called(kin["carried_on_by"])),
            ("the mark is", CONFIDENCE.get(row.mark_confidence.value, row.mark_confidence)),
            ("note", row.note),
            ("source", grounds(row)),
        ],
    )
