"""What the look-ups share: options, pages of pairs, the list of sources, JSON."""

import functools
from collections.abc import Callable, Iterable, Sequence
from typing import Any

import click
import msgspec

from planish.cli.errors import BadInput
from planish.cli.terminal import heading, prose, say, table, tint
from planish.cli.wording import CONFIDENCE, UNPRINTED

#: rows shown unless all are asked for
MOST = 20
Pairs = Sequence[tuple[str, object]]
Record = dict[str, Any]  # a JSON object


def options(command: Callable[..., None]) -> Callable[..., None]:
    """The options of every look-up."""
    command = click.option("--json", "as_json", is_flag=True, help="Print the facts as JSON.")(
        command
    )
    return click.option("--all", "everything", is_flag=True, help=f"Show more than {MOST} rows.")(
        command
    )


def years(low: object, high: object) -> str:
    """Years of a fact in words."""
    if low is None and high is None:
        return ""
    if high is None:
        return f"{low} or later"
    if low is None:
        return f"{high} or earlier"
    return f"{low}" if low == high else f"{low}-{high}"


def holds(row: msgspec.Struct, year: int | None) -> bool:
    """Whether the years of a row take in a year; open ends do."""
    low, high = getattr(row, "year_from", None), getattr(row, "year_to", None)
    return year is None or ((low is None or low <= year) and (high is None or year <= high))


def grounds(row: msgspec.Struct) -> str:
    """Sources of a row and how sure it is."""
    confidence = str(getattr(row, "confidence", ""))
    said = CONFIDENCE.get(confidence, confidence)
    keys = [k for k in getattr(row, "sources", ()) if k not in UNPRINTED]
    return f"{'; '.join(keys)} ({said})" if keys else said


def number(value: object) -> object:
    """A figure without needless noughts."""
    return f"{value:g}" if isinstance(value, float) else value


def listed(text: str) -> str:
    """A cell that is a list, with commas."""
    return ", ".join(part.strip() for part in text.split(";") if part.strip())


def entry(title: str, pairs: Pairs) -> list[str]:
    """A row of the library: its title and what it says, empty pairs left out."""
    rows = [(name, str(value)) for name, value in pairs if value not in (None, "", ())]
    return ["", *(tint(line, "head") for line in prose(title, 0, 2)), *table(rows)]


@functools.cache
def _bibliography() -> dict[str, str]:
    from planish.library import load

    return {s.key: s.title for s in load().sources}


def titles(keys: Iterable[str]) -> list[str]:
    """The works of these keys under a heading; nothing where none is named."""
    known = _bibliography()
    printed = sorted(set(keys) - set(UNPRINTED))
    if not printed:
        return []
    return [
        *heading("Sources"),
        *table([(k, known.get(k, "not in the bibliography")) for k in printed]),
    ]


def sources(rows: Iterable[msgspec.Struct]) -> list[str]:
    """The titles of all works that the rows name, under a heading; nothing where none is named."""
    return titles(k for row in rows for k in getattr(row, "sources", ()))


def cited(keys: Iterable[str]) -> list[Record]:
    """Sources as JSON says them."""
    known = _bibliography()
    return [{"key": k, "title": known.get(k, "")} for k in keys]


def record(row: msgspec.Struct, **more: object) -> Record:
    """A row as JSON says it: every field, its sources with their titles, and what belongs to it."""
    said: Record = msgspec.to_builtins(row)
    if hasattr(row, "confidence"):
        said["sources"] = cited(getattr(row, "sources", ()))
    return {**said, **more}


def print_json(records: Iterable[Record]) -> None:
    """Print records as JSON."""
    say(msgspec.json.encode(list(records)).decode())


def none(what: str, query: str, nearest: Iterable[str], command: str) -> BadInput:
    """What is said where nothing is found; the caller raises it."""
    mend = " or ".join(f"'{n}'" for n in nearest if n.casefold() != query.casefold())
    return BadInput(
        "not in the library, which proves nothing about a piece",
        f"{what} '{query}'" if query else what,
        f"did you mean {mend}?" if mend else f"'{command}' alone lists what there is",
    )


def more(count: int, *, everything: bool) -> list[str]:
    """How many rows are not shown."""
    if everything or count <= MOST:
        return []
    return ["", f"{count - MOST} more; --all shows them, more words narrow them down."]


def country_code(said: str) -> str:
    """An ISO 3166-1 alpha-2 code as typed.

    Raises:
        BadInput: it is not two letters.
    """
    code = said.strip().upper()
    if len(code) != 2 or not code.isalpha():
        raise BadInput("not a country code", f"--country '{said}'", "write two letters, such as SE")
    return {"UK": "GB"}.get(code, code)
