"""The group, in the order of the work."""

import click

from planish.cli.stones.about import about, names
from planish.cli.stones.identify import identify
from planish.cli.stones.law import law
from planish.cli.stones.weigh import weigh


@click.group(
    short_help="Stones: weight, what they are, protected materials.", invoke_without_command=True
)
@click.pass_context
def stones(context: click.Context) -> None:
    """Stones and other materials set in silver.

    \b
    planish stones weigh "round brilliant" 6.5x6.4x3.9mm --material diamond
    planish stones weigh cabochon "14x10x? mm" --material turquoise --closed-back
    planish stones identify sg=2.76±0.05 colour=blue lustre=waxy
    planish stones about amber
    planish stones law "teapot, ivory insulators" --place GB
    planish stones list cuts
    """  # noqa: D301  # click reads the backspace
    if context.invoked_subcommand is None:
        click.echo(context.get_help())


for _command in (weigh, identify, about, law, names):
    stones.add_command(_command)
