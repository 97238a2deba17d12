"""``planish library cycle``: date letters."""

import click

from planish.cli.library.common import (
    MOST,
    grounds,
    more,
    none,
    options,
    print_json,
    record,
    sources,
)
from planish.cli.terminal import prose, say, table, tint


@click.command()
@click.argument("query", nargs=-1)
@options
def cycle(query: tuple[str, ...], *, everything: bool, as_json: bool) -> None:
    """Find date letters by office, year and letter, in any order.

    \b
    planish library cycle Birmingham 1884
    planish library cycle London k
    planish library cycle 1756
    """  # noqa: D301  # click reads the backspace
    from planish.cli.lookup import letters
    from planish.library import load

    shipped = load()
    words = " ".join(query).strip()
    if not words:
        ids = {c.office for c in shipped.cycles}
        offices = sorted((o for o in shipped.offices if o.id in ids), key=lambda o: o.name)
        if as_json:
            print_json(record(o) for o in offices)
            return
        names = ", ".join(dict.fromkeys(o.name for o in offices))
        say([tint("Offices with date letters", "head"), *prose(names)])
        return
    found, place = letters(shipped, words)
    if not found:
        raise none("date letter", words, [place] if place else [], "planish library cycle")
    if as_json:
        print_json(
            record(f.letter, office=f.office.id, office_name=f.office.name,
                country=f.office.country, cycle=record(f.cycle),
            )
            for f in found
        )  # fmt: skip
        return
    shown = found if everything else found[:MOST]
    rows = []
    for f in shown:
        one = f.letter
        outline = f", {f.cycle.outline}" if f.cycle.outline else ""
        doubtful = ", doubtful" if one.doubtful else ""
        rows.append((
            f.office.name,
            " or ".join(one.letters) or "not known",
            f"{one.first_year}" + (f"-{one.last_year}" if one.last_year > one.first_year else ""),
            f"{f.cycle.style} {f.cycle.case}{outline}{doubtful}; struck {one.start} to {one.end}; "
            + grounds(f.cycle),
        ))  # fmt: skip
    say([
        tint("Date letters", "head"), *table(rows), *more(len(found), everything=everything),
        *sources([f.cycle for f in shown]),
    ])  # fmt: skip
