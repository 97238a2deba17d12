"""``planish look``: where the marks of a form usually are."""

import difflib
from collections.abc import Iterable
from pathlib import Path
from typing import TYPE_CHECKING

import click
import msgspec

from planish.cli.errors import BadInput
from planish.cli.terminal import heading, prose, say, table, tint
from planish.cli.wording import CONFIDENCE, UNPRINTED

if TYPE_CHECKING:
    from planish.library import Library
    from planish.library.rows import Spot


@click.command(short_help="Where the marks of a form usually are.")
@click.argument("form", nargs=-1)
@click.option(
    "--svg",
    "picture",
    type=click.Path(dir_okay=False, path_type=Path),
    metavar="OUT.svg",
    help="Write the figure: a drawing of the form with the places numbered.",
)
@click.option("--json", "as_json", is_flag=True, help="Print the places as JSON, with the figure.")
def look(form: tuple[str, ...], picture: Path | None, *, as_json: bool) -> None:
    """Say where the marks of this FORM usually are, likeliest place first.

    Without a form, list all forms known.

    \b
    planish look teapot
    planish look "pair of candlesticks"
    planish look --svg teapot.svg teapot
    """  # noqa: D301  # click reads the backspace
    from planish.library import load
    from planish.marks.where import ANY, ANY_IN_WORDS, forms, resolve, where_to_look

    library = load()
    words = " ".join(" ".join(form).split())
    if not words and (picture or as_json):
        raise BadInput("no form given", "after 'planish look'", "'planish look' lists the forms")
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
    if picture:
        _draw(found, picture, library)
    if as_json:
        say(msgspec.json.format(msgspec.json.encode(_plain(found, library)), indent=2).decode())
        return
    shown = ANY_IN_WORDS if found == ANY else found
    title = shown if found.casefold() == words.casefold() else f"{words}: looked up as {found}"
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
    if picture:
        lines += ["", *prose(f"Figure: {picture}", 0)]
    say(lines)


def _draw(form: str, path: Path, library: "Library") -> None:
    """Write the figure of a form.

    Raises:
        BadInput: the file cannot be written, or is something other than an SVG picture.
    """
    from planish.marks.figures_of_forms import figure, svg

    if path.suffix.casefold() != ".svg":
        raise BadInput("the figure is an SVG picture", str(path), "give a name ending in .svg")
    try:
        path.write_text(svg(figure(form, library), key=True, ground=True) + "\n", encoding="utf-8")
    except OSError as fault:
        says = fault.strerror or "cannot be written"
        raise BadInput(says.lower(), str(path), "choose another place") from None


def _plain(form: str, library: "Library") -> dict[str, object]:
    """The places of a form, those of every piece, and the figure, ready for JSON."""
    from planish.marks.figures_of_forms import figure, svg
    from planish.marks.where import ANY, where_to_look

    drawn = figure(form, library)
    at = {pin.number: pin for pin in drawn.pins}

    def rows(spots: "Iterable[Spot]") -> list[dict[str, object]]:
        return [
            {
                "number": s.rank,
                "place": s.place,
                "how": s.how or None,
                "caution": s.caution or None,
                "sources": list(s.sources),
                "confidence": s.confidence.value,
            }
            for s in spots
        ]

    places = rows(where_to_look(form, library))
    for place in places:
        pin = at.get(place["number"])  # type: ignore[call-overload]  # a number, as rows() writes it
        place["pin"] = {"x": pin.x, "y": pin.y} if pin else None
    return {
        "form": form,
        "places": places,
        "on_every_piece": rows(where_to_look(ANY, library)) if form != ANY else [],
        "figure": {"drawing": drawn.drawing.name, "svg": svg(drawn)},
    }


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
