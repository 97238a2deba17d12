"""``planish demo``: the demo case and its report."""

from pathlib import Path

import click

from planish.cli.terminal import say


@click.command(short_help="Write the demo case and its report.")
@click.option(
    "-o",
    "--output",
    type=click.Path(path_type=Path),
    default=Path("planish-demo"),
    show_default=True,
    metavar="FOLDER",
    help="Where to.",
)
def demo(output: Path) -> None:
    """Write an invented case and its report; everything in it is made up.

    A file in FOLDER that you have changed is not overwritten.

    \b
    planish demo -o planish-demo
    """  # noqa: D301  # click reads the backspace
    from planish.cli.issue import issue, lay_out_demo

    case = lay_out_demo(output)
    report = output / "report.pdf"
    say(
        [
            *issue(case, report, "a4"),
            "",
            f"The report is {report}",
            f"Its case file is {case}; change it and issue it again:",
            f"  planish appraise {case} -o {report}",
        ]
    )
