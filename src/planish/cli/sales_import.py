"""``planish sales import``: a file of sales out of one's own table."""

import datetime as dt
from pathlib import Path
from typing import TYPE_CHECKING

import click

from planish.cli.errors import BadInput
from planish.cli.importing import (
    MOST,
    ask,
    mapping_of,
    refused,
    rows,
    show,
    tell_faults,
    write,
    write_rejects,
)
from planish.cli.terminal import clean, heading, prose, say

if TYPE_CHECKING:
    from planish.intake.sales import ImportedSales
    from planish.worth.sales import Sale
    from planish.worth.twins import Group


@click.command("import", short_help="Import a CSV file or workbook as a file of sales.")
@click.argument("file", type=click.Path(exists=True, dir_okay=False, path_type=Path))
@click.option(
    "-o", "--output", required=True, type=click.Path(dir_okay=False, path_type=Path),
    metavar="SALES.csv", help="The file of sales to write.",
)  # fmt: skip
@click.option(
    "--map", "given", multiple=True, metavar='"THEIRS=OURS"',
    help="Their column becomes our field; nothing after the = leaves it to the note.",
)  # fmt: skip
@click.option(
    "--set", "fixed", multiple=True, metavar='"OURS=VALUE"',
    help="A value that holds for every row, as currency=GBP or basis=hammer.",
)  # fmt: skip
@click.option(
    "--mapping", metavar="NAME",
    help="Use this kept mapping, a file or its name beside the output; if there is none, keep it so.",
)  # fmt: skip
@click.option("--sheet", metavar="SHEET", help="The sheet of a workbook.")
@click.option("--yes", is_flag=True, help="Import without asking whether the mapping is right.")
@click.option("--replace", is_flag=True, help="Replace a file of sales that is there already.")
@click.option("--add", is_flag=True, help="Add to a file of sales that is there already.")
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
    add: bool,
) -> None:
    """Import FILE, a CSV file or .xlsx workbook, as a file of sales.

    Which column is what is guessed from the headers, shown, and asked about
    once; it is kept beside the file of sales and known again by the same
    headers. Rows that cannot be taken are told, and kept in a file of rejects.
    Records that are one sale are told; an opinion counts them once.

    \b
    planish sales import results.xlsx -o sales.csv
    planish sales import liste.csv -o sales.csv --map "Erlös=hammer" --set currency=EUR
    """  # noqa: D301  # click reads the backspace
    from planish.intake import REJECTED, IntakeError, read_table, without
    from planish.intake.mapping import as_toml
    from planish.intake.sales import SALES, import_sales
    from planish.worth.table import as_csv

    may_write(file, output, replace=replace, add=add)
    before = kept_sales(output) if add and output.exists() else ()
    try:
        found = without(read_table(file, sheet), REJECTED)
        columns, known, kept = mapping_of(found, SALES, output, mapping, given=given, fixed=fixed)
        show(found, columns, known)
        if not (yes or (columns.sure and known is not None)):
            ask()
        imported = import_sales(found, columns, today())
    except IntakeError as fault:
        raise BadInput(fault.what, fault.where, fault.mend) from None
    merged, repeated = joined(before, imported.sales)
    write(output, as_csv(merged))
    write(kept, as_toml(columns, found.name))
    write_rejects(found, imported.converted, output)
    _tell(found.name, imported, (len(merged), repeated), output, kept)


def today() -> dt.date:
    """The day after which nothing can have been sold."""
    return dt.datetime.now().astimezone().date()


def may_write(file: Path | None, output: Path, *, replace: bool, add: bool) -> None:
    """Nothing, where the output may be written.

    Raises:
        BadInput: otherwise.
    """
    if replace and add:
        raise BadInput("--replace and --add exclude each other", "", "give one of them")
    if file and output.exists() and output.samefile(file):
        raise BadInput(
            "the file of sales would replace its own source", str(output), "name another"
        )
    if output.exists() and not (replace or add):
        raise BadInput("is there already", str(output), "name another, or give --add or --replace")
    if not output.parent.is_dir():
        raise BadInput("no such folder", str(output.parent), "make it first")
    if output.suffix.casefold() != ".csv":
        raise BadInput("a file of sales is a CSV file", str(output), "give a name ending in .csv")


def kept_sales(path: Path) -> "tuple[Sale, ...]":
    """The sales of a file of sales.

    Raises:
        BadInput: it cannot be read, or has faults.
    """
    from planish.worth.table import SalesFaults, parse_sales

    try:
        return parse_sales(path.read_text(encoding="utf-8"), path.name, today())
    except (OSError, UnicodeDecodeError):
        raise BadInput("cannot be read", str(path), "give a file of sales, in UTF-8") from None
    except SalesFaults as found:
        told = [f"{path.name}, {f}" for f in found.faults[:MOST]]
        raise BadInput.several(told) from None


def joined(before: "tuple[Sale, ...]", new: "tuple[Sale, ...]") -> "tuple[tuple[Sale, ...], int]":
    """Old and new sales; a record that is there already, cell for cell, comes in once."""
    from planish.worth.table import cells_of, numbered

    by_id = {sale.id: cells_of(sale) for sale in before}
    found, repeated = list(before), 0
    for sale in new:
        if by_id.get(sale.id) == cells_of(sale):
            repeated += 1
            continue
        own = numbered(sale, by_id)
        by_id[own.id] = cells_of(own)
        found.append(own)
    return tuple(found), repeated


def twins_told(groups: "tuple[Group, ...]") -> list[str]:
    """Lines on records that are one sale."""
    if not groups:
        return []
    left = sum(len(g.joined) for g in groups)
    lines = heading(f"{rows(left)} not counted: another record is the same sale or object")
    for group in groups[:MOST]:
        shown = group.flags or tuple(str(j) for j in group.joined[:2])
        for text in shown:
            lines += prose(text, hang=2)
        if not group.flags and len(group.joined) > len(shown):
            lines += prose(f"and {len(group.joined) - len(shown)} more of {group.kept}", hang=2)
    if len(groups) > MOST:
        lines += prose(f"{len(groups) - MOST:,} more groups")
    return lines


def _tell(
    name: str, imported: "ImportedSales", counts: tuple[int, int], output: Path, kept: Path
) -> None:
    total, repeated = counts
    lines = ["", f"{rows(total)} in {clean(str(output))}", f"mapping in {clean(str(kept))}"]
    if repeated:
        lines.append(f"{rows(repeated)} {'was' if repeated == 1 else 'were'} there already")
    say([*lines, *refused(imported.converted, output), *twins_told(imported.groups)])
    tell_faults(name, imported.converted)
