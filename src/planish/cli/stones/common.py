"""What the subcommands share."""

from collections.abc import Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING

import msgspec

from planish.cli.errors import BadInput
from planish.cli.library.common import cited
from planish.cli.terminal import heading, prose, say

if TYPE_CHECKING:
    from planish.stones import Flag


@contextmanager
def told() -> Iterator[None]:
    """Turn a quantity that cannot be used into one line for the person."""
    from planish.quantity import QuantityError

    try:
        yield
    except QuantityError as fault:
        where = f"{fault.what} '{' '.join(fault.text.split())}'" if fault.text else fault.what
        raise BadInput(fault.fault, where, fault.remedy) from None


def print_json(record: dict[str, object]) -> None:
    """Print one record as JSON."""
    say(msgspec.json.format(msgspec.json.encode(record), indent=2).decode())


def plain_flag(flag: "Flag") -> dict[str, object]:
    """A flag as JSON says it."""
    said: dict[str, object] = msgspec.to_builtins(flag)
    return {**said, "asks": list(flag.asks), "sources": cited(flag.sources)}


def law_lines(flags: "tuple[Flag, ...]") -> list[str]:
    """The laws that a material may touch, one line each, where they are not the matter itself."""
    if not flags:
        return []
    lines = heading("Law")
    for flag in flags:
        place = f"{flag.place}: " if flag.place else ""
        lines += prose(f"- {place}{flag.regime} (as of {flag.checked})", 2, 2)
    lines += prose(f"'planish stones law' tells the rules. Mind: {flags[0].caution}.", 2, 2)
    return lines
