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
@click.option(
    "--draft", is_flag=True, help="Print it though something is missing, marked as a draft."
)
@click.option(
    "--fonts",
    type=click.Path(path_type=Path, exists=True, file_okay=False),
    multiple=True,
    metavar="FOLDER",
    help="A folder with fonts for signs that the shipped ones lack; may be given again.",
)
def appraise(case: Path, output: Path, paper: str, fonts: tuple[Path, ...], *, draft: bool) -> None:
    """Read the case, the marks, the weights and the comparables; issue the report.

    It is issued whole or not at all: what is missing is named, one line each.
    With --draft it is printed all the same, marked as a draft on every page.

    \b
    planish appraise mycase/case.toml -o mycase/report.pdf
    planish appraise mycase/case.toml -o report.pdf --paper letter
    """  # noqa: D301  # click reads the backspace
    from planish.cli.issue import issue

    say(issue(case, output, paper, draft=draft, fonts=fonts))
