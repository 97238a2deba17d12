"""``planish sales paste``: facts about the market out of pasted text, confirmed before they stay."""

import json
import sys
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from planish.cli.errors import BadInput
from planish.cli.importing import rows, write
from planish.cli.sales_import import joined, kept_sales, may_write, today, twins_told
from planish.cli.terminal import clean, prose, say, table, tint

if TYPE_CHECKING:
    from planish.worth.paste import Draft
    from planish.worth.sales import Sale

_MOST_BYTES = 2_000_000


@click.command("paste", short_help="Read sales out of pasted text; stored when confirmed.")
@click.argument("file", type=click.Path(allow_dash=True, path_type=Path), default="-")
@click.option(
    "-o", "--output", type=click.Path(dir_okay=False, path_type=Path), metavar="SALES.csv",
    help="The file of sales to add to; without it, what was read is only shown.",
)  # fmt: skip
@click.option(
    "--set", "fixed", multiple=True, metavar='"OURS=VALUE"',
    help="A value for every sale that does not tell it, as currency=USD or basis=hammer.",
)  # fmt: skip
@click.option("--yes", is_flag=True, help="Store what is complete without asking.")
@click.option("--json", "as_json", is_flag=True, help="Print what was read as JSON.")
def paste(
    file: Path, output: Path | None, fixed: tuple[str, ...], *, yes: bool, as_json: bool
) -> None:
    """Read sales out of text: FILE, or what is typed or piped in.

    A line or a paragraph is one sale; a table with a header is read as one.
    What was understood is shown column by column, with the words that were
    not. Nothing is stored before it is confirmed.

    \b
    planish sales paste notes.txt
    planish sales paste notes.txt -o sales.csv --set currency=USD
    """  # noqa: D301  # click reads the backspace
    text = _text(file)
    given = _given(fixed)
    drafts = _drafts(text, given)
    if not drafts:
        raise BadInput("no sale can be read", str(file), "write one sale a line, with its price")
    if as_json:
        click.echo(json.dumps([_plain(d) for d in drafts], ensure_ascii=False, indent=2))
    else:
        for n, draft in enumerate(drafts, 1):
            say(_shown(n, draft))
    if output is not None:
        _store(drafts, output, yes=yes, as_json=as_json)


def _text(file: Path) -> str:
    try:
        if str(file) == "-":
            data = sys.stdin.buffer.read(_MOST_BYTES + 1)
        else:
            with file.open("rb") as opened:
                data = opened.read(_MOST_BYTES + 1)
        text = data.decode("utf-8-sig")
    except OSError as fault:
        says = (fault.strerror or "cannot be read").lower()
        raise BadInput(says, str(file), "check the path") from None
    except UnicodeDecodeError:
        raise BadInput("it is no text in UTF-8", str(file), "save it as UTF-8") from None
    if len(data) > _MOST_BYTES:
        raise BadInput("too long for pasted text", str(file), "use planish sales import")
    return text


def _given(fixed: Sequence[str]) -> Mapping[str, str]:
    from planish.worth.table import COLUMNS

    found = {}
    for text in fixed:
        ours, sign, value = (part.strip() for part in text.partition("="))
        if not sign or ours not in COLUMNS:
            what = f"there is no column {ours[:40]!r}" if sign else "no '='"
            raise BadInput(what, f"--set {text[:60]!r}", f"the columns are {', '.join(COLUMNS)}")
        found[ours] = value
    return found


def _drafts(text: str, given: Mapping[str, str]) -> "tuple[Draft, ...]":
    """Sales of a pasted table or of prose."""
    from planish.intake import IntakeError
    from planish.intake.pasted import drafts_of
    from planish.quantity import QuantityError
    from planish.worth.paste import drafts

    try:
        return drafts_of(text, given) or drafts(text, given)
    except QuantityError as fault:
        raise BadInput(fault.fault, fault.what, fault.remedy) from None
    except IntakeError as fault:
        raise BadInput(fault.what, fault.where, fault.mend) from None


def _plain(draft: "Draft") -> dict[str, object]:
    return {
        "text": draft.text,
        "cells": dict(draft.cells),
        "missing": list(draft.missing),
        "notes": list(draft.notes),
        "unread": list(draft.unread),
    }


def _shown(n: int, draft: "Draft") -> list[str]:
    from planish.worth.table import COLUMNS

    lines = ["", tint(f"Sale {n}", "head"), *prose(draft.text)]
    lines += table([(c, draft.cells[c]) for c in COLUMNS if draft.cells.get(c)], indent=4)
    for note in draft.notes:
        lines += prose(f"note: {note}", 4, 2)
    if draft.unread:
        lines += prose(f"not understood: {', '.join(draft.unread)}", 4, 2)
    if draft.missing:
        needed = f"still needed: {', '.join(draft.missing)}"
        lines += [tint(line, "look") for line in prose(needed, 4, 2)]
    return lines


def _store(drafts: "tuple[Draft, ...]", output: Path, *, yes: bool, as_json: bool) -> None:
    """Add what is complete to the file of sales, once the person says so."""
    from planish.worth.table import SalesFaults, as_csv, read_row
    from planish.worth.twins import groups

    may_write(None, output, replace=False, add=True)
    new: list[Sale] = []
    faults: list[str] = []
    for n, draft in enumerate(drafts, 1):
        try:
            new.append(read_row(draft.cells, n, today()))
        except SalesFaults as found:
            faults += [f"sale {n}, column {f.column}: {f.what}; {f.mend}" for f in found.faults]
    if new and not yes:
        if not sys.stdin.isatty():
            raise BadInput(
                "nothing is stored: it is not confirmed", "the sales above",
                "look at them and run it again with --yes",
            )  # fmt: skip
        if not click.confirm(f"Add {rows(len(new))} to {output}?"):
            raise BadInput("nothing is stored", "", "mend the text, or give --set")
    if new:
        merged, repeated = joined(kept_sales(output) if output.exists() else (), tuple(new))
        write(output, as_csv(merged))
        lines = ["", f"{rows(len(new) - repeated)} added to {clean(str(output))}"]
        if repeated:
            lines.append(f"{rows(repeated)} {'was' if repeated == 1 else 'were'} there already")
        lines += twins_told(groups(merged))
        if as_json:
            click.echo("\n".join(lines), err=True)  # the JSON stays whole
        else:
            say(lines)
    if faults:
        raise BadInput.several(faults)
