"""What the imports of tables share: the mapping shown and asked about, files written whole."""

import sys
from pathlib import Path
from typing import TYPE_CHECKING

import click

from planish.cli.errors import BadInput
from planish.cli.terminal import clean, heading, prose, say, table, tint

if TYPE_CHECKING:
    from planish.intake import Columns, Converted, Schema, Table

#: how many faults are printed; all stand in the file of rejects
MOST = 50


def rows(count: int) -> str:
    """A count of rows in words."""
    return f"{count:,} row{'' if count == 1 else 's'}"


def mapping_of(
    found: "Table",
    schema: "Schema",
    output: Path,
    name: str | None,
    *,
    given: tuple[str, ...],
    fixed: tuple[str, ...],
) -> tuple["Columns", Path | None, Path]:
    """The mapping, the file it was known from, and the file to keep it in."""
    from planish.intake import guess
    from planish.intake.mapping import ENDING, check, fitted, load, remembered, with_given

    folder = output.parent
    kept = folder / f"{output.stem}{ENDING}"
    known: Path | None = None
    if name:
        kept = Path(name) if name.endswith(".toml") else folder / f"{name}{ENDING}"
        known = kept if kept.exists() else None
        columns = fitted(load(kept), found, kept.name) if known else guess(found, schema)
    elif again := remembered(folder, found):
        known = kept = again[0]
        columns = fitted(again[1], found, known.name)
    else:
        columns = guess(found, schema)
    if known and not given and not fixed:
        check(columns, schema, known.name)
    return with_given(columns, given, fixed, schema), known, kept


def show(found: "Table", columns: "Columns", known: Path | None) -> None:
    """The mapping with a sample of each column."""
    from planish.intake.mapping import samples

    lines = [tint(f"{clean(found.name)}: {rows(len(found.rows) + len(found.spoilt))}", "head")]
    lines += prose(found.form)
    how = f"as in {known.name}" if known else "by the headers"
    lines += [*heading(f"Columns, {clean(how)}")]
    lines += table(
        [
            (header[:24], field or "(into the note)", sample or "(empty)")
            for header, field, sample in samples(found, columns.columns)
        ]
    )
    lines += table(
        [("", column, f"{value} (for every row)") for column, value in columns.fixed.items()]
    )
    say(lines)


def ask() -> None:
    """Nothing, where the person says that the mapping is right.

    Raises:
        BadInput: it is not right, or nobody is there to say.
    """
    if not sys.stdin.isatty():
        raise BadInput(
            "the mapping is not confirmed", "columns above",
            "look at them and run it again with --yes, or correct them with --map",
        )  # fmt: skip
    if not click.confirm("Import so?"):
        raise BadInput("not imported", "", 'correct the columns with --map "Theirs=ours"')


def write(path: Path, text: str, encoding: str = "utf-8") -> None:
    """Write a file whole or not at all: what stood there is lost only once the new one stands.

    Raises:
        BadInput: it cannot be written.
    """
    beside = path.with_name(f".{path.name}.part")
    try:
        beside.write_text(text, encoding=encoding, newline="")
        beside.replace(path)
    except OSError as fault:
        says = (fault.strerror or "cannot be written").lower()
        raise BadInput(says, str(path), "choose another place") from None
    finally:
        beside.unlink(missing_ok=True)


def write_rejects(found: "Table", parts: "Converted", output: Path) -> None:
    """The rows that were refused, beside the output; no file where there are none."""
    from planish.intake import rejects_csv

    rejects = rejects_of(output)
    if parts.rejects:
        write(rejects, rejects_csv(found, parts.rejects, parts.faults), "utf-8-sig")
    else:
        rejects.unlink(missing_ok=True)


def rejects_of(output: Path) -> Path:
    """Where the refused rows are kept."""
    return output.with_name(f"{output.stem}.rejects.csv")


def refused(parts: "Converted", output: Path) -> list[str]:
    """The line on refused rows."""
    if not parts.rejects:
        return []
    return [f"{rows(len(parts.rejects))} refused, kept in {clean(str(rejects_of(output)))}"]


def tell_faults(name: str, parts: "Converted") -> None:
    """Nothing, where there are none.

    Raises:
        BadInput: one line a fault.
    """
    if parts.faults:
        told = [f"{name}, {f}" for f in parts.faults[:MOST]]
        if len(parts.faults) > MOST:
            told.append(f"{len(parts.faults) - MOST:,} more faults, in the file of rejects")
        raise BadInput.several(told)
