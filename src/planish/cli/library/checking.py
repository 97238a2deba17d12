"""``planish library check``: the library's self-check."""

import click

from planish.cli.errors import BadInput
from planish.cli.terminal import say, table, tint


@click.command()
def check() -> None:
    """Check the whole library: every row can be read, every key leads somewhere."""
    from planish.library import LibraryError, load
    from planish.library.check import problems

    try:
        shipped = load()
    except LibraryError as fault:
        raise BadInput(
            fault.fault, f"{fault.file} line {fault.line}", "mend that row of the library"
        ) from None
    found = problems(shipped)
    if found:
        raise BadInput.several(found)
    counts = [(name, str(len(getattr(shipped, name)))) for name in shipped.__struct_fields__]
    say([tint("The library is sound", "head"), *table(counts)])
