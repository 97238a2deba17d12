"""``planish stones about`` and ``planish stones list``: what is on record."""

from typing import TYPE_CHECKING

import click

from planish.cli.library.common import entry, grounds, listed, record, titles
from planish.cli.stones.common import law_lines, plain_flag, print_json, told
from planish.cli.terminal import heading, prose, say, table

if TYPE_CHECKING:
    from planish.library.stone_rows import Material

_WHAT = ("materials", "cuts", "tests", "settings")


@click.command(short_help="What is on record of a material.")
@click.argument("material", nargs=-1, required=True)
@click.option("--json", "as_json", is_flag=True, help="Print it as JSON.")
def about(material: tuple[str, ...], *, as_json: bool) -> None:
    """Tell the figures, looks, look-alikes, treatments, care and law of a MATERIAL.

    \b
    planish stones about turquoise
    """  # noqa: D301  # click reads the backspace
    from planish.library import load
    from planish.stones import find_material, restricted

    with told():
        row = find_material(" ".join(material))
    names = {m.id: m.name for m in load().materials}
    looks = [k for k in load().lookalikes if row.id in (k.material, k.other)]
    flags = restricted(row.id)
    if as_json:
        more = {"look_alikes": [record(k) for k in looks], "law": [plain_flag(f) for f in flags]}
        print_json(record(row, **more))
        return
    lines = [*entry(row.name, _figures(row))[1:]]
    for heading_, wanted in (("Taken for it, done to it", True), ("Taken for", False)):
        own = [k for k in looks if (k.material == row.id) is wanted]
        lines += heading(heading_) if own else []
        for look in own:
            other = names.get(look.other, look.other) if wanted else names[look.material]
            says = "; ".join(p for p in (look.tell, look.limits) if p)
            lines += prose(f"- {other} ({look.kind}): {says}", 2, 2)
    lines += law_lines(flags)
    say([*lines, *titles((*row.sources, *(s for k in looks for s in k.sources)))])


def _figures(row: "Material") -> list[tuple[str, object]]:
    ends = dict.fromkeys(f"{end:g}" for end in (row.ri_low, row.ri_high) if end)
    index = " to ".join(ends) or "none read"
    return [
        ("also", listed(row.words)),
        ("gravity", f"{row.sg:g} ({row.sg_low:g} to {row.sg_high:g})"),
        ("index", index),
        ("hardness", f"{row.hardness} (Mohs)"),
        ("colour", ", ".join(w.partition("=")[0] for w in row.colour.split(";"))),
        ("lustre", ", ".join(w.partition("=")[0] for w in row.lustre.split(";"))),
        ("light", ", ".join(w.partition("=")[0] for w in row.transparency.split(";"))),
        ("met in", row.met),
        ("care", row.care),
        ("note", row.note),
        ("from", grounds(row)),
    ]


@click.command("list", short_help="Cuts, materials, tests, kinds of silver.")
@click.argument("what", type=click.Choice(_WHAT), required=False)
def names(what: str | None) -> None:
    """List what the other commands know by name; all of it without WHAT.

    \b
    planish stones list cuts
    """  # noqa: D301  # click reads the backspace
    from planish.library import load
    from planish.stones import settings

    library = load()
    lines: list[str] = []
    if what in (None, "cuts"):
        rows = [(c.name, " x ".join(c.measured), listed(c.words)) for c in library.cuts]
        lines += [*heading("Cuts and solids: what to measure, other names"), *table(rows)]
    if what in (None, "materials"):
        lines += heading("Materials")
        lines += prose(", ".join(sorted((m.name for m in library.materials), key=str.casefold)))
    if what in (None, "tests"):
        lines += heading("Tests and their answers")
        for test in library.gemtests:
            harm = {"none": "", "slight": " (may mark)", "harm": " (harms)"}[test.harm]
            answers = ", ".join(test.answers) or "a figure, with ± if known"
            lines += prose(f"{test.id}, {test.label}{harm}: {answers}", 2, 2)
    if what in (None, "settings"):
        lines += [*heading("Kinds of silver, for --setting"), *prose(", ".join(settings()))]
    say(lines[1:])
