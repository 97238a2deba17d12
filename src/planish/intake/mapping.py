"""Which column becomes which field: guessed, shown, kept as a small file, and known again."""

import json
import tomllib
from collections.abc import Iterable, Mapping, Sequence
from difflib import SequenceMatcher
from pathlib import Path

import msgspec

from planish.intake.schema import Schema, key
from planish.intake.table import IntakeError, Table

#: what a file of a mapping is called, after the name of its table
ENDING = ".mapping.toml"
_CERTAIN, _LEAST = 1.0, 0.7
_MAX_BYTES = 1_000_000
_SAMPLES = 200


class Columns(msgspec.Struct, frozen=True, kw_only=True):
    """A mapping. columns: header to field, "" for what is left to the rest, in the table's order.

    fixed: values that hold for every row, by column of the result. sure: whether every name was
    known or given; what was guessed is for the person to confirm.
    """

    headers: tuple[str, ...]
    columns: dict[str, str]
    fixed: dict[str, str]
    sheet: str | None = None
    sure: bool = True

    def of(self, field: str) -> str | None:
        """The header that becomes a field."""
        return next((h for h, name in self.columns.items() if name == field), None)


def guess(table: Table, schema: Schema) -> Columns:
    """The likeliest mapping of a table by its headers, and for unknown ones by their cells."""
    scored = sorted(
        (
            (-_score(header, field.names), at, n)
            for at, header in enumerate(table.headers)
            for n, field in enumerate(schema.fields)
        ),
    )
    found: dict[int, str] = {}
    sure = True
    for low, at, n in scored:
        name = schema.fields[n].name
        if -low >= _LEAST and at not in found and name not in found.values():
            found[at] = name
            sure &= -low >= _CERTAIN
    for field in schema.fields:
        if field.looks is None or field.name in found.values():
            continue
        for at in range(len(table.headers)):
            cells = [row.cells[at] for row in table.rows[:_SAMPLES] if row.cells[at]]
            if at not in found and cells and field.looks(cells):
                found[at] = field.name
                sure = False
                break
    columns = {header: found.get(at, "") for at, header in enumerate(table.headers)}
    return Columns(headers=table.headers, columns=columns, fixed={}, sure=sure)


def _score(header: str, names: Iterable[str]) -> float:
    """How well a header fits a field's names: 1 is one of them, 0.7 and more a good guess."""
    said = key(header)
    best = 0.0
    for name in map(key, names):
        if said == name:
            return _CERTAIN
        a, b = said.split(), name.split()
        if sorted(a) == sorted(b):
            best = max(best, 0.95)
        elif len(name) > 3 and set(b) <= set(a):
            best = max(best, 0.75 + 0.15 * len(b) / len(a))
        elif min(len(said), len(name)) > 3:
            ratio = SequenceMatcher(None, said, name).ratio()
            best = max(best, 0.9 * ratio if ratio > 0.84 else 0.0)
    return best


def with_given(
    columns: Columns, given: Sequence[str], fixed: Sequence[str], schema: Schema
) -> Columns:
    """The mapping with what the person gave: ``Their column=our field``, ``our column=value``.

    Raises:
        IntakeError: a column or field is not known, or two columns are mapped to one field.
    """
    changed = dict(columns.columns)
    by_key = {key(h): h for h in columns.headers}
    names = [f.name for f in schema.fields]
    for text in given:
        theirs, sign, ours = (part.strip() for part in text.rpartition("="))
        header = by_key.get(key(theirs))
        if not sign or header is None:
            raise IntakeError(
                f"--map {text[:60]!r}",
                f"there is no column {theirs[:40]!r}" if sign else "no '='",
                f"the columns are {', '.join(columns.headers)[:300]}",
            )
        if ours and ours not in names:
            raise IntakeError(
                f"--map {text[:60]!r}", f"there is no field {ours[:40]!r}",
                f"the fields are {', '.join(names)}"
            )  # fmt: skip
        for other, field in columns.columns.items():
            if ours and field == ours and other != header and not _given(other, given):
                changed[other] = ""  # only guessed: what the person says goes first
        changed[header] = ours
    values = dict(columns.fixed)
    for text in fixed:
        ours, sign, value = (part.strip() for part in text.partition("="))
        if not sign or ours not in schema.columns:
            raise IntakeError(
                f"--set {text[:60]!r}", f"there is no column {ours[:40]!r}" if sign else "no '='",
                f"the columns are {', '.join(schema.columns)}"
            )  # fmt: skip
        values[ours] = value
    found = msgspec.structs.replace(columns, columns=changed, fixed=values)
    check(found, schema, "the mapping")
    return found


def _given(header: str, given: Sequence[str]) -> bool:
    return any(key(text.rpartition("=")[0]) == key(header) for text in given)


def check(columns: Columns, schema: Schema, name: str) -> None:
    """Nothing, where each field comes from one column and every required one from some.

    Raises:
        IntakeError: otherwise.
    """
    taken: dict[str, str] = {}
    for header, field in columns.columns.items():
        if not field:
            continue
        if schema.field(field) is None:
            raise IntakeError(
                name, f"there is no field {field[:40]!r}",
                f"the fields are {', '.join(f.name for f in schema.fields)}"
            )  # fmt: skip
        if field in taken:
            raise IntakeError(
                name,
                f"two columns are mapped to {field}: {taken[field][:40]} and {header[:40]}",
                f'leave one out: --map "{header[:40]}="',
            )
        taken[field] = header
    missing = [c for c in schema.required if c not in taken and not columns.fixed.get(c)]
    if missing:
        raise IntakeError(
            name,
            f"no column is mapped to {', '.join(missing)}",
            f'say which: --map "Their column={missing[0]}", or for every row --set "{missing[0]}=..."',
        )


def as_toml(columns: Columns, table: str) -> str:
    """The mapping as a file that people can read and edit."""

    def quoted(text: str) -> str:
        # JSON's strings are TOML's basic strings, but for this one character (TOML 1.0, String)
        return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")

    def row(name: str, value: str) -> str:
        return f"{quoted(name)} = {quoted(value)}"

    headers = ", ".join(map(quoted, columns.headers))
    lines = [
        f"# How the columns of {' '.join(table.split())} are imported; an empty text leaves a",
        "# column to the note. Known again by its headers.",
        f"headers = [{headers}]",
        *([row("sheet", columns.sheet)] if columns.sheet else []),
        "",
        "[columns]",
        *(row(h, f) for h, f in columns.columns.items()),
        "",
        "[set]",
        *(row(c, v) for c, v in columns.fixed.items()),
    ]
    return "\n".join(lines) + "\n"


class _File(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    headers: tuple[str, ...]
    columns: dict[str, str]
    set: dict[str, str] = {}
    sheet: str | None = None


def from_toml(text: str, name: str) -> Columns:
    """The mapping of a file.

    Raises:
        IntakeError: it is none.
    """
    try:
        file = msgspec.convert(tomllib.loads(text), _File)
    except (tomllib.TOMLDecodeError, msgspec.ValidationError) as fault:
        raise IntakeError(name, f"no mapping ({fault})", "mend it, or take it away") from None
    return Columns(headers=file.headers, columns=file.columns, fixed=file.set, sheet=file.sheet)


def load(path: Path) -> Columns:
    """The mapping of a file on disk.

    Raises:
        IntakeError: it cannot be read or is none.
    """
    try:
        with path.open("rb") as file:
            data = file.read(_MAX_BYTES + 1)
        text = data.decode("utf-8")
    except (OSError, UnicodeDecodeError):
        raise IntakeError(path.name, "it cannot be read", "give a mapping file") from None
    if len(data) > _MAX_BYTES:
        raise IntakeError(path.name, "too large for a mapping", "give a mapping file")
    return from_toml(text, path.name)


def fitted(columns: Columns, table: Table, name: str) -> Columns:
    """A kept mapping for the headers of a table, which may be fewer or in another order.

    Raises:
        IntakeError: a mapped column is not in the table.
    """
    by_key = {key(h): field for h, field in columns.columns.items()}
    there = {key(h) for h in table.headers}
    for header, field in columns.columns.items():
        if field and key(header) not in there:
            raise IntakeError(
                name, f"the table has no column {header[:40]!r}",
                f"its columns are {', '.join(table.headers)[:300]}"
            )  # fmt: skip
    return msgspec.structs.replace(
        columns,
        headers=table.headers,
        columns={h: by_key.get(key(h), "") for h in table.headers},
        sure=all(key(h) in by_key for h in table.headers),
    )


def remembered(folder: Path, table: Table) -> tuple[Path, Columns] | None:
    """The mapping in a folder that was made for the same headers, whatever their order."""
    wanted = sorted(key(h) for h in table.headers)
    for path in sorted(folder.glob(f"*{ENDING}"))[:200]:
        try:
            kept = load(path)
        except IntakeError:
            continue  # another's file, or broken: it is no mapping for this table
        if sorted(key(h) for h in kept.headers) == wanted:
            return path, kept
    return None


def samples(table: Table, columns: Mapping[str, str]) -> list[tuple[str, str, str]]:
    """(their column, field, first value that is not empty) for the person to check."""
    shown = []
    for at, header in enumerate(table.headers):
        first = next((row.cells[at] for row in table.rows[:_SAMPLES] if row.cells[at]), "")
        shown.append((header, columns.get(header, ""), " ".join(first.split())[:60]))
    return shown
