"""``planish library form`` and ``spot``: when a form was in use, and where it is marked."""

from typing import TYPE_CHECKING

import click

from planish.cli.library.common import (
    MOST,
    entry,
    grounds,
    listed,
    more,
    none,
    options,
    print_json,
    record,
    sources,
    years,
)
from planish.cli.terminal import heading, prose, say

if TYPE_CHECKING:
    from planish.library import Library
    from planish.library.rows import Form, Spot


@click.command()
@click.argument("query", nargs=-1)
@options
def form(query: tuple[str, ...], *, everything: bool, as_json: bool) -> None:
    """Find when a form of piece was in use, and where it is usually marked.

    \b
    planish library form "seal top spoon"
    planish library form teapot
    """  # noqa: D301  # click reads the backspace
    from planish.cli.lookup import near, search
    from planish.library import load
    from planish.marks.where import resolve

    shipped = load()
    words = " ".join(query).strip()
    found = search(shipped.forms, ("id", "words"), words) if words else list(shipped.forms)
    place = resolve(words, shipped) if words else None
    spots = _spots(place, shipped) if place else []
    if not found and not spots:
        nearest = [*near(shipped.forms, ("words",), words), *near(shipped.spots, ("form",), words)]
        raise none("form", words, dict.fromkeys(nearest), "planish library form")
    if as_json:
        print_json([
            *(record(f, table="forms") for f in found),
            *(record(s, table="spots") for s in spots),
        ])  # fmt: skip
        return
    shown = found if everything else found[:MOST]
    lines = [line for f in shown for line in _page(f)]
    if spots:
        lines += [*heading(f"Where to look: {place}"), *_where(spots)]
    elif words:
        lines += [
            "",
            *prose("Where it is marked is not on record; 'planish look' lists the forms."),
        ]
    say([
        *lines[1:], *more(len(found), everything=everything), *sources([*shown, *spots]),
    ])  # fmt: skip


@click.command()
@click.argument("query", nargs=-1)
@options
def spot(query: tuple[str, ...], *, everything: bool, as_json: bool) -> None:
    """Find where a form is usually marked; ``planish look`` says the same at more length.

    \b
    planish library spot teapot
    """  # noqa: D301  # click reads the backspace
    from planish.cli.lookup import near
    from planish.library import load
    from planish.marks.where import resolve

    shipped = load()
    words = " ".join(query).strip()
    place = resolve(words, shipped) if words else None
    if words and not place:
        raise none("form", words, near(shipped.spots, ("form",), words), "planish library spot")
    found = _spots(place, shipped) if place else list(shipped.spots)
    if as_json:
        print_json(record(s) for s in found)
        return
    shown = found if everything or place else found[:MOST]
    lines: list[str] = []
    for name in dict.fromkeys(s.form for s in shown):
        lines += [*heading(name), *_where([s for s in shown if s.form == name])]
    say([
        *lines[1:], *more(len(found), everything=everything or bool(place)),
        *sources(shown),
    ])  # fmt: skip


def _spots(name: str, shipped: "Library") -> "list[Spot]":
    return sorted((s for s in shipped.spots if s.form == name), key=lambda s: s.rank)


def _where(spots: "list[Spot]") -> list[str]:
    lines = []
    for one in spots:
        parts = [one.place, one.how, f"mind: {one.caution}" if one.caution else "", one.note,
                 grounds(one)]  # fmt: skip
        lines += prose(f"{one.rank}. {'; '.join(p for p in parts if p)}", 2, 3)
    return lines


def _page(row: "Form") -> list[str]:
    return entry(
        row.id.replace("-", " "),
        [
            ("also called", listed(row.words)),
            ("in use", years(row.year_from, row.year_to)),
            ("later copies", f"{row.later:g} for each piece of the time, a judgment"),
            ("at home in", listed(row.countries)),
            ("note", row.note),
            ("source", grounds(row)),
        ],
    )
