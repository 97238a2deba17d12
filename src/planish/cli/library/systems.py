"""``planish library system``: how a jurisdiction marks."""

from collections import defaultdict
from typing import TYPE_CHECKING

import click

from planish.cli.errors import BadInput
from planish.cli.library.common import (
    MOST,
    Record,
    country_code,
    entry,
    grounds,
    holds,
    more,
    none,
    number,
    options,
    print_json,
    record,
    sources,
    years,
)
from planish.cli.terminal import heading, prose, say

if TYPE_CHECKING:
    from planish.library import Library
    from planish.library.rows import Role, Sign, System

#: with so many systems or fewer, each is shown with its roles and the ways of showing them
_IN_FULL = 2
_NAMES = ("id", "label", "country")


@click.command()
@click.argument("query", nargs=-1)
@click.option("--country", metavar="CODE", help="Only this country (ISO 3166-1, two letters).")
@click.option("--year", type=int, metavar="YEAR", help="Only what holds in this year.")
@options
def system(
    query: tuple[str, ...],
    *,
    country: str | None,
    year: int | None,
    everything: bool,
    as_json: bool,
) -> None:
    """Find how a jurisdiction marks silver, by words, country and year.

    One or two systems are shown in full: every role and every way of showing it.

    \b
    planish library system Russia
    planish library system --country SE --year 1890
    planish library system GB-ENG
    """  # noqa: D301  # click reads the backspace
    from planish.cli.lookup import near, search
    from planish.library import load

    shipped = load()
    words = " ".join(query).strip()
    found = search(shipped.systems, _NAMES, words) if words else list(shipped.systems)
    exact = [s for s in found if words.casefold() in (s.id.casefold(), s.label.casefold())]
    found = exact or found
    before = len(found)
    if country:
        code = country_code(country)
        found = [s for s in found if s.country == code]
    found = [s for s in found if holds(s, year)]
    if not found:
        if words and before:
            raise BadInput(
                f"{before} on record, none of this country and year",
                f"marking system '{words}'",
                "leave out --country or --year to see them",
            )
        asked = words or " ".join(filter(None, (country, str(year or ""))))
        raise none(
            "marking system", asked, near(shipped.systems, _NAMES, words), "planish library system"
        )
    if as_json:
        print_json(_whole(s, shipped, year) for s in found)
        return
    full = len(found) <= _IN_FULL
    shown = found if everything or full else found[:MOST]
    lines = [line for s in shown for line in _page(s, shipped, year, full=full)]
    rows: list[System | Role | Sign] = [*shown]
    if full:
        for s in shown:
            rows += [*_roles(s, shipped, year), *_signs(s, shipped, year)]
    tail = more(len(found), everything=everything or full)
    if not full:
        tail += ["", f"'planish library system {shown[0].id}' shows one with all its marks."]
    say([*lines[1:], *tail, *sources(rows)])


def _roles(row: "System", shipped: "Library", year: int | None) -> "list[Role]":
    return [r for r in shipped.roles if r.system == row.id and holds(r, year)]


def _signs(row: "System", shipped: "Library", year: int | None) -> "list[Sign]":
    return [s for s in shipped.signs if s.system == row.id and holds(s, year)]


def _page(row: "System", shipped: "Library", year: int | None, *, full: bool) -> list[str]:
    roles = _roles(row, shipped, year)
    offices = {o.id: o.name for o in shipped.offices}
    towns = dict.fromkeys(offices.get(r.office, r.office) for r in roles if r.office)
    lines = entry(
        f"{row.label} [{row.id}]",
        [
            ("country", row.country),
            ("kind", row.kind),
            ("years", years(row.year_from, row.year_to)),
            ("fineness", number(row.fineness)),
            ("offices", ", ".join(towns)),
            ("roles", ", ".join(dict.fromkeys(r.role for r in roles))),
            ("firm", row.maker),
            ("line", row.line),
            ("note", row.note),
            ("source", grounds(row)),
        ],
    )
    return lines + (_marks(row, shipped, year) if full else [])


def _marks(row: "System", shipped: "Library", year: int | None) -> list[str]:
    """Role by role, in the offices that show it, every way of showing it."""
    offices = {o.id: o.name for o in shipped.offices}
    labels = {d.id: d.label for d in shipped.devices}
    ways: dict[tuple[str, str], list[Sign]] = defaultdict(list)
    for sign in _signs(row, shipped, year):
        ways[sign.office, sign.role].append(sign)
    lines: list[str] = []
    told: set[tuple[str, str]] = set()
    for role in sorted(_roles(row, shipped, year), key=lambda r: (r.office, r.role, r.year_from)):
        where = f"{offices.get(role.office, role.office)}: " if role.office else ""
        forms = (
            f"; written as {role.forms.replace('=', ' ').replace(';', ', ')}" if role.forms else ""
        )
        lines += heading(f"{where}{role.role}, {years(role.year_from, role.year_to)}")
        lines += prose(
            f"on {role.presence:.0%} of full sets{forms}; {grounds(role)}"
            + (f"; {role.note}" if role.note else ""), 2, 2,
        )  # fmt: skip
        if (role.office, role.role) in told:
            continue
        told.add((role.office, role.role))
        general = ways.get(("", role.role), []) if role.office else []
        for sign in (*ways.get((role.office, role.role), ()), *general):
            lines += prose(_way(sign, labels), 4, 2)
    return lines


def _way(sign: "Sign", labels: dict[str, str]) -> str:
    shown = labels.get(sign.value, sign.value) if sign.kind == "device" else sign.value
    shown = shown.replace("|", " or ")
    said = f"{sign.kind} {shown}".strip() if sign.kind != "device" else shown
    parts = [
        said,
        f"in {sign.outline}" if sign.outline else "",
        years(sign.year_from, sign.year_to),
        f"share {sign.share:g}" if sign.share != 1.0 else "",
        f"fineness {sign.fineness:g}" if sign.fineness is not None else "",
        sign.note,
        grounds(sign),
    ]
    return "; ".join(p for p in parts if p)


def _whole(row: "System", shipped: "Library", year: int | None) -> Record:
    roles = _roles(row, shipped, year)
    ids = {r.office for r in roles if r.office}
    return record(
        row,
        offices=[record(o) for o in shipped.offices if o.id in ids],
        roles=[record(r) for r in roles],
        signs=[record(s) for s in _signs(row, shipped, year)],
        weights=[record(w) for w in shipped.weights if w.target == row.id],
    )
