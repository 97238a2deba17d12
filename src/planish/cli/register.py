"""``planish register``: a register of makers out of one's own table."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from planish.cli.errors import BadInput
from planish.cli.importing import (
    ask,
    mapping_of,
    refused,
    rows,
    show,
    tell_faults,
    write,
    write_rejects,
)
from planish.cli.terminal import clean, say

if TYPE_CHECKING:
    from planish.intake import Imported


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
    from planish.intake import (
        REGISTER,
        REJECTED,
        IntakeError,
        import_register,
        read_table,
        without,
    )
    from planish.intake.mapping import as_toml

    _may_write(file, output, replace=replace)
    try:
        found = without(read_table(file, sheet), REJECTED)
        columns, known, kept = mapping_of(
            found, REGISTER, output, mapping, given=given, fixed=fixed
        )
        show(found, columns, known)
        if not (yes or (columns.sure and known is not None)):
            ask()
        imported = import_register(found, columns)
    except IntakeError as fault:
        raise BadInput(fault.what, fault.where, fault.mend) from None
    write(output, imported.text)
    write(kept, as_toml(columns, found.name))
    write_rejects(found, imported.converted, output)
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


def _tell(name: str, imported: "Imported", output: Path, kept: Path) -> None:
    say(
        [
            "",
            f"{rows(imported.count)} in {clean(str(output))}",
            f"mapping in {clean(str(kept))}",
            *refused(imported.converted, output),
        ]
    )
    tell_faults(name, imported.converted)
