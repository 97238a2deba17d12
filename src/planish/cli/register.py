"""``planish register``: a register of makers out of one's own table."""

import sys
from pathlib import Path
from typing import TYPE_CHECKING

import click

from planish.cli.errors import BadInput
from planish.cli.terminal import clean, heading, prose, say, table, tint

if TYPE_CHECKING:
    from planish.intake import Columns, Imported, Table

#: how many faults are printed; all stand in the file of rejects
_MOST_FAULTS = 50


@click.group(invoke_without_command=True, short_help="Make a register of makers from a table.")
@click.pass_context
def register(context: click.Context) -> None:
    """Registers of makers of your own.

    \b
    planish register import makers.xlsx -o mine.csv
    """  # noqa: D301  # click reads the backspace
    if context.invoked_subcommand is None:
        click.echo(context.get_help())


@register.command("import", short_help="Import a CSV file or workbook as a register.")
@click.argument("file", type=click.Path(exists=True, dir_okay=False, path_type=Path))
@click.option(
    "-o", "--output", required=True, type=click.Path(dir_okay=False, path_type=Path),
    metavar="REGISTER.csv", help="The register to write.",
)  # fmt: skip
@click.option(
    "--map", "given", multiple=True, metavar='"THEIRS=OURS"',
    help="Their column becomes our field; nothing after the = leaves it to the note.",
)  # fmt: skip
@click.option(
    "--set", "fixed", multiple=True, metavar='"OURS=VALUE"',
    help="A value that holds for every row, as country=GB.",
)  # fmt: skip
@click.option(
    "--mapping", metavar="NAME",
    help="Use this kept mapping, a file or its name beside the output; if there is none, keep it so.",
)  # fmt: skip
@click.option("--sheet", metavar="SHEET", help="The sheet of a workbook.")
@click.option("--yes", is_flag=True, help="Import without asking whether the mapping is right.")
@click.option("--replace", is_flag=True, help="Replace a register that is there already.")
def import_(  # noqa: PLR0917  # click hands them over by name
    file: Path,
    output: Path,
    given: tuple[str, ...],
    fixed: tuple[str, ...],
    mapping: str | None,
    sheet: str | None,
    *,
    yes: bool,
    replace: bool,
) -> None:
    """Import FILE, a CSV file or .xlsx workbook, as a register of makers.

    Which column is what is guessed from the headers, shown, and asked about
    once; it is kept beside the register and known again by the same headers.
    Rows that cannot be taken are told, and kept in a file of rejects.

    \b
    planish register import makers.xlsx -o mine.csv
    planish register import liste.csv -o mine.csv --map "Kürzel=marks" --set country=DE
    """  # noqa: D301  # click reads the backspace
    from planish.intake import REJECTED, IntakeError, import_register, read_table, without

    _may_write(file, output, replace=replace)
    try:
        found = without(read_table(file, sheet), REJECTED)
        columns, known, kept = _mapping(found, output, mapping, given, fixed)
        sure = yes or (columns.sure and known is not None)
        _show(found, columns, known)
        if not sure:
            _ask()
        imported = import_register(found, columns)
    except IntakeError as fault:
        raise BadInput(fault.what, fault.where, fault.mend) from None
    _write(found, columns, imported, output, kept)
    _tell(found.name, imported, output, kept)


def _may_write(file: Path, output: Path, *, replace: bool) -> None:
    if output.exists() and output.samefile(file):
        raise BadInput("the register would replace its own source", str(output), "name another")
    if output.exists() and not replace:
        raise BadInput("is there already", str(output), "name another, or give --replace")
    if not output.parent.is_dir():
        raise BadInput("no such folder", str(output.parent), "make it first")
    if output.suffix.casefold() != ".csv":
        raise BadInput("a register is a CSV file", str(output), "give a name ending in .csv")


def _mapping(
    found: "Table",
    output: Path,
    name: str | None,
    given: tuple[str, ...],
    fixed: tuple[str, ...],
) -> tuple["Columns", Path | None, Path]:
    """The mapping, the file it was known from, and the file to keep it in."""
    from planish.intake import REGISTER, guess
    from planish.intake.mapping import ENDING, check, fitted, load, remembered, with_given

    folder = output.parent
    kept = folder / f"{output.stem}{ENDING}"
    known: Path | None = None
    if name:
        named = Path(name) if name.endswith(".toml") else folder / f"{name}{ENDING}"
        kept = named
        known = named if named.exists() else None
        columns = fitted(load(named), found, named.name) if known else guess(found, REGISTER)
    elif again := remembered(folder, found):
        known, columns = again[0], fitted(again[1], found, again[0].name)
        kept = known
    else:
        columns = guess(found, REGISTER)
    if known and not given and not fixed:
        check(columns, REGISTER, known.name)
    return with_given(columns, given, fixed, REGISTER), known, kept


def _show(found: "Table", columns: "Columns", known: Path | None) -> None:
    from planish.intake.mapping import samples

    lines = [tint(f"{clean(found.name)}: {_rows(len(found.rows) + len(found.spoilt))}", "head")]
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


def _rows(count: int) -> str:
    return f"{count:,} row{'' if count == 1 else 's'}"


def _ask() -> None:
    if not sys.stdin.isatty():
        raise BadInput(
            "the mapping is not confirmed", "columns above",
            "look at them and run it again with --yes, or correct them with --map",
        )  # fmt: skip
    if not click.confirm("Import so?"):
        raise BadInput("not imported", "", 'correct the columns with --map "Theirs=ours"')


def _write(
    found: "Table", columns: "Columns", imported: "Imported", output: Path, kept: Path
) -> None:
    from planish.intake import rejects_csv
    from planish.intake.mapping import as_toml

    rejects = output.with_name(f"{output.stem}.rejects.csv")
    parts = imported.converted
    try:
        output.write_text(imported.text, encoding="utf-8", newline="")
        kept.write_text(as_toml(columns, found.name), encoding="utf-8")
        if parts.rejects:
            text = rejects_csv(found, parts.rejects, parts.faults)
            rejects.write_text(text, encoding="utf-8-sig", newline="")
        else:
            rejects.unlink(missing_ok=True)
    except OSError as fault:
        says = (fault.strerror or "cannot be written").lower()
        raise BadInput(says, str(fault.filename or output), "choose another place") from None


def _tell(name: str, imported: "Imported", output: Path, kept: Path) -> None:
    rejects = imported.converted.rejects
    lines = [
        "",
        f"{_rows(imported.count)} in {clean(str(output))}",
        f"mapping in {clean(str(kept))}",
    ]
    if rejects:
        beside = output.with_name(f"{output.stem}.rejects.csv")
        lines.append(f"{_rows(len(rejects))} refused, kept in {clean(str(beside))}")
    say(lines)
    faults = imported.converted.faults
    if faults:
        told = [f"{name}, {f}" for f in faults[:_MOST_FAULTS]]
        if len(faults) > _MOST_FAULTS:
            told.append(f"{len(faults) - _MOST_FAULTS:,} more faults, in the file of rejects")
        raise BadInput.several(told)
