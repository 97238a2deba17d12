"""``planish new``: begin a case file."""

from pathlib import Path

import click

from planish.cli.errors import BadInput
from planish.cli.terminal import say


@click.command(short_help="Begin a case file.")
@click.argument("path", type=click.Path(path_type=Path))
@click.option("--title", metavar="TEXT", default="New case", help="What the case is called.")
@click.option("--number", metavar="TEXT", default="1", help="The case's permanent number.")
def new(path: Path, title: str, number: str) -> None:
    """Write a new case file, with every question that a report must answer.

    PATH is a file ending in .toml, or a folder, which then gets case.toml. A
    file that is there already is never overwritten.

    \b
    planish new mycase/case.toml
    planish new --title "Tea service" --number 2026-014 mycase
    """  # noqa: D301  # click reads the backspace
    from planish.case.new import starting_file

    try:
        text = starting_file(title, number)
    except ValueError as fault:
        raise BadInput(str(fault)) from None
    file = path if path.suffix == ".toml" else path / "case.toml"
    try:
        file.parent.mkdir(parents=True, exist_ok=True)
        with file.open("x", encoding="utf-8") as out:
            out.write(text)
    except FileExistsError:
        raise BadInput(
            "there is a file of that name already", str(file), "choose another name"
        ) from None
    except OSError as fault:
        raise BadInput(
            f"the file cannot be written ({fault.strerror})", str(file), "choose another place"
        ) from None
    say(
        [
            f"Wrote {file}",
            "Next: fill it in (each key is explained there), put photographs beside it, then",
            f"  planish appraise {file} -o {file.with_name('report.pdf')}",
        ]
    )
