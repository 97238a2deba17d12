"""``planish library design``: registered designs of Britain and patents of the United States."""

from typing import TYPE_CHECKING

import click

from planish.cli.errors import BadInput
from planish.cli.library.common import (
    MOST,
    Record,
    cited,
    entry,
    grounds,
    more,
    none,
    options,
    print_json,
    record,
    titles,
)
from planish.cli.terminal import say
from planish.cli.wording import UNPRINTED

if TYPE_CHECKING:
    from planish.library import Library
    from planish.library.rows import Design

_WHAT = {
    "rd-number": "Britain, registered design number", "diamond-year": "diamond mark, letter of year",
    "diamond-month": "diamond mark, letter of month", "diamond-layout": "diamond mark, its points",
    "diamond-exception": "diamond mark, exception", "meaning": "what it means",
    "us-patent": "United States, first patent of the year",
    "us-design-patent": "United States, first patent for a design of the year",
    "us-patent-law": "United States, law", "us-patent-day": "United States, day of issue",
}  # fmt: skip


@click.command()
@click.argument("query", nargs=-1)
@click.option(
    "--diamond", nargs=4, metavar="TOP LEFT RIGHT BOTTOM",
    help="What stands in the four points of a British registration diamond.",
)  # fmt: skip
@click.option(
    "--class", "ring", metavar="CLASS", default="", help="The class in the diamond's ring."
)
@options
def design(
    query: tuple[str, ...],
    *,
    diamond: tuple[str, str, str, str] | None,
    ring: str,
    everything: bool,
    as_json: bool,
) -> None:
    """Find the year of a registered design, a patent number or a diamond mark.

    A registration or patent gives the earliest year of making, never the year.

    \b
    planish library design 631976
    planish library design --diamond K H 7 5 --class IV
    planish library design diamond 1868
    """  # noqa: D301  # click reads the backspace
    from planish.cli.lookup import near, search
    from planish.library import load

    shipped = load()
    if diamond:
        _diamond(diamond, ring, shipped, as_json=as_json)
        return
    if ring:
        raise BadInput("belongs to --diamond", "--class", "give the four points of the diamond too")
    words = " ".join(query).strip()
    answers = _numbered(words, shipped)
    names = ("record", "key_1", "key_2", "value")
    found = search(shipped.designs, names, words) if words else list(shipped.designs)
    if answers:  # a number is answered by its series, not by rows that hold its figures
        found = [d for d in found if words in (d.key_1, d.key_2, d.value)]
    if not found and not answers:
        raise none(
            "registered design or patent", words, near(shipped.designs, names, words),
            "planish library design",
        )  # fmt: skip
    if as_json:
        print_json([*answers, *(record(d) for d in found)])
        return
    lines: list[str] = []
    for one in answers:
        lines += entry(
            str(one["says"]),
            [("made", f"in {one['surely_from']} or later"),
             ("source", "; ".join(s["key"] for s in one["sources"] if s["key"] not in UNPRINTED))],
        )  # fmt: skip
    shown = found if everything else found[:MOST]
    lines += [line for d in shown for line in _page(d)]
    keys = [s["key"] for a in answers for s in a["sources"]]
    keys += [k for d in shown for k in d.sources]
    say([*lines[1:], *more(len(found), everything=everything), *titles(keys)])


def _numbered(words: str, shipped: "Library") -> list[Record]:
    """What the running series say of a number."""
    from planish.marks.designs import patent_year, registered_year

    figures = words.replace(",", "").replace(" ", "")
    if not figures.isascii() or not figures.isdecimal():
        return []
    number = int(figures)
    return [
        {
            "says": found.says, "year": found.year, "surely_from": found.surely_from,
            "sources": cited(found.sources),
        }
        for found in (registered_year(number, shipped.designs), patent_year(number, shipped.designs))
        if found
    ]  # fmt: skip


def _diamond(
    points: tuple[str, str, str, str], ring: str, shipped: "Library", *, as_json: bool
) -> None:
    from planish.marks.designs import DiamondError
    from planish.marks.designs import diamond as decode

    top, left, right, bottom = points
    try:
        told = decode(
            top=top, left=left, right=right, bottom=bottom, circle=ring, designs=shipped.designs
        )
    except DiamondError as fault:
        raise BadInput(fault.what, f"diamond mark, {fault.where}", fault.mend) from None
    if as_json:
        print_json([
            {
                "says": told.says, "pattern": told.pattern, "material": told.material,
                "days": [d.isoformat() for d in told.days], "parcel": told.parcel,
                "sources": cited(told.sources),
            }
        ])  # fmt: skip
        return
    keys = [k for k in told.sources if k not in UNPRINTED]
    lines = entry(told.says, [("pattern", told.pattern), ("source", "; ".join(keys))])
    say([*lines[1:], *titles(keys)])


def _page(row: "Design") -> list[str]:
    return entry(
        f"{_WHAT.get(row.record, row.record)}: {row.key_1} {row.key_2}".strip(),
        [("is", row.value), ("detail", row.detail), ("note", row.note), ("source", grounds(row))],
    )
