"""Look-ups of plain tables: words and figures of fineness, rules, traits, the bibliography."""

from collections import Counter, defaultdict
from collections.abc import Callable, Iterable, Sequence
from typing import TYPE_CHECKING, Any

import click
import msgspec

from planish.cli.library.common import (
    MOST,
    country_code,
    entry,
    grounds,
    holds,
    listed,
    more,
    none,
    number,
    options,
    print_json,
    record,
    sources,
    years,
)
from planish.cli.terminal import prose, say

if TYPE_CHECKING:
    from planish.library import Library
    from planish.library.rows import Rule, Source, Word

_YEAR = click.option("--year", type=int, metavar="YEAR", help="Only what holds in this year.")
_COUNTRY = click.option(
    "--country", metavar="CODE", help="Only what holds in this country (ISO 3166-1, two letters)."
)
Rows = Sequence[msgspec.Struct]


def _show(
    rows: Rows,
    names: Sequence[str],
    query: str,
    page: Callable[[Any], list[str]],
    *,
    command: str,
    what: str,
    everything: bool,
    nearest: Iterable[str] = (),
) -> None:
    """Print rows found, or say that nothing is."""
    from planish.cli.lookup import only_mentioned

    if not rows:
        raise none(what, query, nearest, f"planish library {command}")
    shown = rows if everything else rows[:MOST]
    lines = [line for row in shown for line in page(row)]
    if query and only_mentioned(rows, names, query):
        lines = ["", *prose(f"No {what} is named '{query}'; what mentions it:", 0, 2), *lines]
    say([*lines[1:], *more(len(rows), everything=everything), *sources(shown)])


def _search(rows: Rows, names: Sequence[str], query: str) -> tuple[list[msgspec.Struct], list[str]]:
    from planish.cli.lookup import near, search

    found = search(rows, names, query) if query else list(rows)
    return found, [] if found else near(rows, names, query)


_WORD_NAMES = ("text", "also", "id")


@click.command()
@click.argument("query", nargs=-1)
@_COUNTRY
@_YEAR
@options
def fineness(
    query: tuple[str, ...],
    *,
    country: str | None,
    year: int | None,
    everything: bool,
    as_json: bool,
) -> None:
    """Find words and numbers for fineness, and those that only look like it.

    \b
    planish library fineness 84
    planish library fineness 830 --country NO
    planish library fineness EPNS
    """  # noqa: D301  # click reads the backspace
    _words(
        "fineness", " ".join(query).strip(), country, year, everything=everything, as_json=as_json
    )


@click.command()
@click.argument("query", nargs=-1)
@click.option("--kind", metavar="KIND", help="Only this kind: fineness, plate, base, origin ...")
@_COUNTRY
@_YEAR
@options
def word(
    query: tuple[str, ...],
    *,
    kind: str | None,
    country: str | None,
    year: int | None,
    everything: bool,
    as_json: bool,
) -> None:
    """Find a word or sign that is struck, of any kind, by its text or its meaning.

    \b
    planish library word alpacca
    planish library word patent --kind patent
    """  # noqa: D301  # click reads the backspace
    said = " ".join(query).strip()
    _words("word", said, country, year, everything=everything, as_json=as_json, kind=kind)


def _words(
    command: str,
    query: str,
    country: str | None,
    year: int | None,
    *,
    everything: bool,
    as_json: bool,
    kind: str | None = None,
) -> None:
    from planish.library import load
    from planish.library.rows import Word

    shipped = load()
    found, nearest = _search(shipped.words, _WORD_NAMES, query)
    rows = [w for w in found if isinstance(w, Word)]
    if command == "fineness" and query.replace(".", "", 1).isdecimal():
        value = float(query)
        rows += [w for w in shipped.words if w not in rows and _of(w, value)]
    if kind:
        kinds = sorted({w.kind for w in shipped.words})
        if kind not in kinds:
            raise none("kind of word", kind, kinds, "planish library word")
        rows = [w for w in rows if w.kind == kind]
    if country:
        code = country_code(country)
        rows = [
            w for w in rows if not w.countries or code in w.countries.replace(" ", "").split(";")
        ]
    rows = [w for w in rows if holds(w, year)]
    if as_json and rows:
        print_json(record(w, systems=_systems(w, shipped)) for w in rows)
        return
    what = "word or number for fineness" if command == "fineness" else "word"

    def page(row: "Word") -> list[str]:
        systems = _systems(row, shipped)
        told = ", ".join(systems[:8]) + (f", {len(systems) - 8} more" if len(systems) > 8 else "")
        return entry(
            f"{row.text} [{row.id}]",
            [
                ("kind", row.kind),
                ("fineness", number(row.fineness)),
                ("at least", number(row.low)),
                ("at most", number(row.high)),
                ("also written", listed(row.also)),
                ("countries", listed(row.countries)),
                ("years", years(row.year_from, row.year_to)),
                ("meaning", row.meaning),
                ("mind", row.caution),
                ("systems of it", told),
                ("note", row.note),
                ("source", grounds(row)),
            ],
        )

    _show(rows, _WORD_NAMES, query, page, command=command, what=what,
          everything=everything, nearest=nearest)  # fmt: skip


def _of(row: "Word", value: float) -> bool:
    if row.kind != "fineness":
        return False
    return row.fineness == value or (
        row.low is not None and row.high is not None and row.low <= value <= row.high
    )


def _systems(row: "Word", shipped: "Library") -> list[str]:
    """Systems of the word's countries with signs of its fineness."""
    if not row.fineness:
        return []
    countries = {c.strip() for c in row.countries.split(";") if c.strip()}
    having = {s.system for s in shipped.signs if s.fineness == row.fineness}
    return [
        s.id
        for s in shipped.systems
        if (s.id in having or s.fineness == row.fineness)
        and (not countries or s.country in countries)
    ]


@click.command()
@click.argument("query", nargs=-1)
@_YEAR
@options
def rule(query: tuple[str, ...], *, year: int | None, everything: bool, as_json: bool) -> None:
    """Find rules of law and practice by topic and words. They are no legal advice.

    \b
    planish library rule duty
    planish library rule standard --year 1700
    """  # noqa: D301  # click reads the backspace
    from planish.library import load
    from planish.library.rows import Rule

    shipped = load()
    query_words = " ".join(query).strip()
    names = ("id", "topic", "applies_to")
    found, nearest = _search(shipped.rules, names, query_words)
    rows = [r for r in found if isinstance(r, Rule) and _in_force(r, year)]
    if as_json and rows:
        print_json(record(r) for r in rows)
        return

    def page(row: Rule) -> list[str]:
        return entry(
            f"{row.topic} [{row.id}]",
            [
                ("rule", row.rule),
                ("from", row.date_from),
                ("until", row.date_to),
                ("applies to", row.applies_to),
                ("note", row.note),
                ("source", grounds(row)),
            ],
        )

    _show(rows, (*names, "rule"), query_words, page, command="rule", what="rule",
          everything=everything, nearest=nearest)  # fmt: skip


def _in_force(row: "Rule", year: int | None) -> bool:
    if year is None:
        return True
    low, high = row.date_from[:4], row.date_to[:4]
    return (not low.isdecimal() or int(low) <= year) and (not high.isdecimal() or year <= int(high))


@click.command()
@click.argument("query", nargs=-1)
@_YEAR
@options
def trait(query: tuple[str, ...], *, year: int | None, everything: bool, as_json: bool) -> None:
    """Find what tells plate from solid silver.

    \b
    planish library trait plate
    planish library trait "bleeding copper"
    """  # noqa: D301  # click reads the backspace
    from planish.library import load
    from planish.library.rows import Trait

    shipped = load()
    said = " ".join(query).strip()
    names = ("id", "trait", "plate_type", "points_to")
    found, nearest = _search(shipped.traits, names, said)
    rows = [t for t in found if isinstance(t, Trait) and holds(t, year)]
    if as_json and rows:
        print_json(record(t) for t in rows)
        return

    def page(row: Trait) -> list[str]:
        return entry(
            f"{row.trait} [{row.id}]",
            [
                ("points to", f"{row.points_to} ({row.strength})"),
                ("kind of ware", row.plate_type),
                ("years", years(row.year_from, row.year_to)),
                ("detail", row.detail),
                ("note", row.note),
                ("source", grounds(row)),
            ],
        )

    _show(rows, names, said, page, command="trait", what="trait",
          everything=everything, nearest=nearest)  # fmt: skip


@click.command()
@click.argument("query", nargs=-1)
@options
def source(query: tuple[str, ...], *, everything: bool, as_json: bool) -> None:
    """Find an entry of the bibliography by key or title, and what rests on it.

    \b
    planish library source hayden
    """  # noqa: D301  # click reads the backspace
    from planish.library import load
    from planish.library.rows import Source

    shipped = load()
    said = " ".join(query).strip()
    names = ("key", "title")
    found, nearest = _search(shipped.sources, names, said)
    rows = [s for s in found if isinstance(s, Source)]
    resting = _resting(shipped)
    if as_json and rows:
        print_json(record(s, resting=resting.get(s.key, {})) for s in rows)
        return

    def page(row: "Source") -> list[str]:
        told = ", ".join(f"{count} {table}" for table, count in resting.get(row.key, {}).items())
        return entry(
            f"{row.key}: {row.title}",
            [("kind", row.kind), ("note", row.note), ("rows that rest on it", told or "0")],
        )

    _show(rows, names, said, page, command="source", what="source",
          everything=everything, nearest=nearest)  # fmt: skip


def _resting(shipped: "Library") -> dict[str, dict[str, int]]:
    """By source key: how many rows of each table name it."""
    found: dict[str, dict[str, int]] = defaultdict(dict)
    for table in shipped.__struct_fields__:
        named = Counter(
            k for fact in getattr(shipped, table) for k in set(getattr(fact, "sources", ()))
        )
        for key, count in named.items():
            found[key][table] = count
    return found
