"""``planish appraise``: the whole job, case file in, report out."""

from pathlib import Path

import click

from planish.cli.terminal import say


@click.command(short_help="Do the whole job: case file in, report out.")
@click.argument("case", type=click.Path(path_type=Path), metavar="CASE.toml")
@click.option(
    "-o",
    "--output",
    type=click.Path(path_type=Path),
    required=True,
    metavar="REPORT.pdf",
    help="The report.",
)
@click.option(
    "--paper",
    type=click.Choice(["a4", "letter"]),
    default="a4",
    show_default=True,
    help="The size of the paper.",
)
def appraise(case: Path, output: Path, paper: str) -> None:
    r"""Read the case, the marks, the weights and the comparables; issue the report.

    It is issued whole or not at all: what is missing is named, one line each.

    \b
    planish appraise mycase/case.toml -o mycase/report.pdf
    planish appraise mycase/case.toml -o report.pdf --paper letter
    """
    from planish.cli.issue import issue

    say(issue(case, output, paper))
