"""``planish sales``: the file of sales that opinions rest on."""

import click

from planish.cli.sales_import import import_
from planish.cli.sales_paste import paste


@click.group(invoke_without_command=True, short_help="Keep a file of sales to compare with.")
@click.pass_context
def sales(context: click.Context) -> None:
    """Sales and offers of your own, to compare a piece with.

    \b
    planish sales import results.xlsx -o sales.csv
    planish sales paste notes.txt -o sales.csv
    """  # noqa: D301  # click reads the backspace
    if context.invoked_subcommand is None:
        click.echo(context.get_help())


for _command in (import_, paste):
    sales.add_command(_command)
