"""The group of look-ups, in the order of the work."""

import click

from planish.cli.library.checking import check
from planish.cli.library.cycles import cycle
from planish.cli.library.designs import design
from planish.cli.library.devices import device
from planish.cli.library.makers import maker
from planish.cli.library.places import form, spot
from planish.cli.library.systems import system
from planish.cli.library.tables import fineness, rule, source, trait, word


@click.group(short_help="Look up the shipped facts and their sources.", invoke_without_command=True)
@click.pass_context
def library(context: click.Context) -> None:
    """Look up the shipped facts, each with its source and how sure it is.

    \b
    planish library system Russia
    planish library system --country SE --year 1890
    planish library cycle Birmingham 1884
    planish library device "big cat walking"
    planish library device --feature "facing left" --feature crowned
    planish library maker "W[.]" --place London --year 1780
    planish library check
    """  # noqa: D301  # click reads the backspace
    if context.invoked_subcommand is None:
        click.echo(context.get_help())


for _command in (
    system, cycle, device, maker, fineness, word, form, spot, rule, trait, design, source, check,
):  # fmt: skip
    library.add_command(_command)
