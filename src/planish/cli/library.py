"""``planish library``: look up the shipped facts, each with its source and how sure it is."""

from collections.abc import Callable, Iterable, Sequence
from typing import TYPE_CHECKING

import click
import msgspec

from planish.cli.errors import BadInput
from planish.cli.terminal import prose, say, table, tint
from planish.cli.wording import CONFIDENCE, UNPRINTED

if TYPE_CHECKING:
    from planish.library import Library

_MOST = 20

#: command -> table of the library, fields that name a row, what it is called
_TABLES = {
    "system": ("systems", ("id", "label", "country"), "marking system"),
    "device": ("devices", ("id", "label", "words"), "device"),
    "maker": ("makers", ("name", "marks", "id"), "maker"),
    "fineness": ("words", ("text", "also", "id"), "word or number for fineness"),
    "source": ("sources", ("key", "title"), "source"),
}


@click.group(short_help="Look up the shipped facts and their sources.", invoke_without_command=True)
@click.pass_context
def library(context: click.Context) -> None:
    """Look up the shipped facts, each with its source and how sure it is.

    \b
    planish library system Russia
    planish library cycle Birmingham 1884
    planish library maker "W&D"
    planish library check
    """  # noqa: D301  # click reads the backspace
    if context.invoked_subcommand is None:
        click.echo(context.get_help())


def _command(name: str, what: str, examples: Sequence[str]) -> None:
    table_name, names, _ = _TABLES[name]

    @click.argument("query", nargs=-1)
    @click.option("--all", "everything", is_flag=True, help=f"Show more than {_MOST} rows.")
    @click.option("--json", "as_json", is_flag=True, help="Print the rows as JSON.")
    def lookup(query: tuple[str, ...], *, everything: bool, as_json: bool) -> None:
        words = " ".join(query).strip()
        _look_up(name, table_name, names, words, everything=everything, as_json=as_json)

    lookup.__doc__ = f"{what}\n\n\b\n" + "\n".join(f"planish library {e}" for e in examples)
    library.command(name)(lookup)


_command(
    "system",
    "Find how a jurisdiction marks silver, by country, words or id.",
    ["system Russia", "system GB"],
)
_command(
    "device",
    "Find a pictorial mark by any of its names.",
    ["device lion", 'device "walking lion"'],
)
_command(
    "maker",
    "Find makers and sponsors by name, or by their mark as struck.",
    ["maker Bateman", 'maker "W&D"'],
)
_command(
    "fineness",
    "Find words and numbers for fineness, and those that only look like it.",
    ["fineness 84", "fineness EPNS"],
)
_command(
    "source",
    "Find an entry of the bibliography by key or title.",
    ["source hayden"],
)


@library.command()
@click.argument("query", nargs=-1)
@click.option("--all", "everything", is_flag=True, help=f"Show more than {_MOST} rows.")
@click.option("--json", "as_json", is_flag=True, help="Print the rows as JSON.")
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
        names = sorted(
            {o.name for o in shipped.offices for c in shipped.cycles if c.office == o.id}
        )
        say([tint("Offices with date letters", "head"), *prose(", ".join(names))])
        return
    found, place = letters(shipped, words)
    if not found:
        _none("date letter", words, [place] if place else [], "planish library cycle")
    if as_json:
        say(msgspec.json.encode([f.letter for f in found]).decode())
        return
    rows = [
        (
            f.office.name,
            " or ".join(f.letter.letters) or "not known",
            f"{f.letter.first_year}-{f.letter.last_year}"
            if f.letter.last_year > f.letter.first_year
            else str(f.letter.first_year),
            f"{f.cycle.style} {f.cycle.case}"
            + (f", {f.cycle.outline}" if f.cycle.outline else "")
            + (", doubtful" if f.letter.doubtful else "")
            + f"; struck {f.letter.start} to {f.letter.end}; {f.cycle.source}"
            + f" ({CONFIDENCE[f.cycle.confidence.value]})",
        )
        for f in (found if everything else found[:_MOST])
    ]
    say([tint("Date letters", "head"), *table(rows), *_more(len(found), everything=everything)])


@library.command()
def check() -> None:
    """Check the whole library: every row can be read, every key leads somewhere."""
    from planish.library import LibraryError, load
    from planish.library.check import problems

    try:
        shipped = load()
    except LibraryError as fault:
        raise BadInput(
            fault.fault, f"{fault.file} line {fault.line}", "mend that row of the library"
        ) from None
    found = problems(shipped)
    if found:
        raise BadInput.several(found)
    counts = [(name, str(len(getattr(shipped, name)))) for name in shipped.__struct_fields__]
    say([tint("The library is sound", "head"), *table(counts)])


def _look_up(
    name: str,
    table_name: str,
    names: Sequence[str],
    query: str,
    *,
    everything: bool,
    as_json: bool,
) -> None:
    from planish.cli.lookup import near, only_mentioned, search
    from planish.library import load

    shipped = load()
    rows: Sequence[msgspec.Struct] = getattr(shipped, table_name)
    found = search(rows, names, query) if query else list(rows)
    if not found:
        _none(_TABLES[name][2], query, near(rows, names, query), f"planish library {name}")
    if as_json:
        say(msgspec.json.encode(found).decode())
        return
    shown = found if everything else found[:_MOST]
    page = _PAGES[name]
    lines = [line for row in shown for line in page(row, shipped)]
    if query and only_mentioned(found, names, query):
        says = f"No {_TABLES[name][2]} is named '{query}'; what mentions it:"
        lines = ["", *prose(says, 0, 2), *lines]
    say([*lines[1:], *_more(len(found), everything=everything)])


def _none(what: str, query: str, nearest: Iterable[str], command: str) -> None:
    mend = " or ".join(f"'{n}'" for n in nearest if n.casefold() != query.casefold())
    raise BadInput(
        "not in the library, which proves nothing about a piece",
        f"{what} '{query}'",
        f"did you mean {mend}?" if mend else f"'{command}' alone lists what there is",
    )


def _more(count: int, *, everything: bool) -> list[str]:
    if everything or count <= _MOST:
        return []
    return ["", f"{count - _MOST} more; --all shows them, more words narrow them down."]


def _years(low: object, high: object) -> str:
    if low is None and high is None:
        return ""
    if high is None:
        return f"{low} or later"
    return f"{low}-{high}" if low is not None else f"{high} or earlier"


def _grounds(row: msgspec.Struct) -> str:
    confidence = str(getattr(row, "confidence", ""))
    said = CONFIDENCE.get(confidence, confidence)
    keys = [k for k in getattr(row, "sources", ()) if k not in UNPRINTED]
    return f"{'; '.join(keys)} ({said})" if keys else said


def _entry(title: str, pairs: Sequence[tuple[str, object]]) -> list[str]:
    rows = [(name, str(value)) for name, value in pairs if value not in (None, "", ())]
    return ["", *(tint(line, "head") for line in prose(title, 0, 2)), *table(rows)]


def _system(row: msgspec.Struct, shipped: "Library") -> list[str]:
    from planish.library.rows import System

    assert isinstance(row, System)  # noqa: S101  # the table says so
    roles = list(dict.fromkeys(r.role for r in shipped.roles if r.system == row.id))
    offices = {r.office for r in shipped.roles if r.system == row.id} - {""}
    towns = [o.name for o in shipped.offices if o.id in offices]
    return _entry(
        f"{row.label} [{row.id}]",
        [
            ("country", row.country),
            ("kind", row.kind),
            ("years", _years(row.year_from, row.year_to)),
            ("fineness", row.fineness and f"{row.fineness:g}"),
            ("offices", ", ".join(towns)),
            ("roles", ", ".join(roles)),
            ("note", row.note),
            ("source", _grounds(row)),
        ],
    )


def _fields(title: str, names: Sequence[tuple[str, str]]) -> "Callable[..., list[str]]":
    """A page that prints a title made from fields, then fields by name."""

    def page(row: msgspec.Struct, _shipped: "Library") -> list[str]:
        values = {f: getattr(row, f) for f in row.__struct_fields__}
        pairs: list[tuple[str, object]] = [(says, _shown(values[f])) for says, f in names]
        if {"year_from", "year_to"} <= set(values):
            pairs.append(("years", _years(values["year_from"], values["year_to"])))
        if "confidence" in values:
            pairs += [("note", values["note"]), ("source", _grounds(row))]
        return _entry(title.format(**values), pairs)

    return page


def _shown(value: object) -> object:
    return f"{value:g}" if isinstance(value, float) else value


def _source(row: msgspec.Struct, shipped: "Library") -> list[str]:
    from planish.library.rows import Source

    assert isinstance(row, Source)  # noqa: S101  # the table says so
    resting = sum(
        row.key in getattr(fact, "sources", ())
        for name in shipped.__struct_fields__
        for fact in getattr(shipped, name)
    )
    pairs = [("kind", row.kind), ("note", row.note), ("rows that rest on it", resting)]
    return _entry(f"{row.key}: {row.title}", pairs)


_PAGES: "dict[str, Callable[[msgspec.Struct, Library], list[str]]]" = {
    "system": _system,
    "device": _fields(
        "{label} [{id}]",
        [("also called", "words"), ("wider", "broader"), ("worn, taken for", "worn_as"),
         ("features", "features")],
    ),
    "maker": _fields(
        "{name} [{id}]",
        [("marks", "marks"), ("device", "device"), ("place", "place"), ("country", "country"),
         ("kind", "kind"), ("wares", "wares"), ("the mark is", "mark_confidence")],
    ),
    "fineness": _fields(
        "{text} [{id}]",
        [("kind", "kind"), ("fineness", "fineness"), ("from", "low"), ("to", "high"),
         ("also written", "also"), ("countries", "countries"), ("meaning", "meaning"),
         ("mind", "caution")],
    ),
    "source": _source,
}  # fmt: skip
