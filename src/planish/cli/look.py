"""``planish look``: where the marks of a form usually are."""

import difflib
from collections.abc import Iterable
from typing import TYPE_CHECKING

import click

from planish.cli.errors import BadInput
from planish.cli.terminal import heading, prose, say, table, tint
from planish.cli.wording import CONFIDENCE, UNPRINTED

if TYPE_CHECKING:
    from planish.library import Library
    from planish.library.rows import Spot


@click.command(short_help="Where the marks of a form usually are.")
@click.argument("form", nargs=-1)
def look(form: tuple[str, ...]) -> None:
    """Say where the marks of this FORM usually are, likeliest place first.

    Without a form, list all forms known.

    \b
    planish look teapot
    planish look "pair of candlesticks"
    """  # noqa: D301  # click reads the backspace
    from planish.library import load
    from planish.marks.where import ANY, forms, resolve, where_to_look

    library = load()
    words = " ".join(" ".join(form).split())
    if not words:
        names = ", ".join(forms(library))
        say([tint("Forms", "head"), *prose(names), "", "planish look FORM tells where to look."])
        return
    found = resolve(words, library)
    if found is None:
        near = difflib.get_close_matches(words.lower(), forms(library), n=3, cutoff=0.5)
        mend = f"did you mean {' or '.join(near)}? " if near else ""
        raise BadInput(
            "not a form that the library knows",
            f"'{words}'",
            f"{mend}'planish look' lists the forms",
        )
    title = found if found.casefold() == words.casefold() else f"{words}: looked up as {found}"
    lines = [tint(f"Where to look: {title}", "head")]
    spots = where_to_look(found, library)
    for spot in spots:
        lines += prose(f"{spot.rank}. {spot.place}", 2, 3)
        lines += prose(spot.how, 5) if spot.how else []
        lines += prose(f"Mind: {spot.caution}", 5, 2) if spot.caution else []
    if found != ANY and (anywhere := where_to_look(ANY, library)):
        lines += [*heading("On every piece")]
        lines += [line for s in anywhere for line in prose(f"- {s.place}", 2, 2)]
    lines += [*heading("Sources"), *table(_sources(spots, library))]
    say(lines)


def _sources(spots: "Iterable[Spot]", library: "Library") -> list[tuple[str, ...]]:
    """Each source by key with its title; what no source backs says so."""
    titles = {s.key: s.title for s in library.sources}
    cited = sorted({(key, s.confidence.value) for s in spots for key in s.sources})
    return [
        (
            key,
            UNPRINTED[key] if key in UNPRINTED else f"{titles.get(key, key)} ({CONFIDENCE[sure]})",
        )
        for key, sure in cited
    ]
