"""``planish stones law``: materials that law protects."""

from typing import TYPE_CHECKING

import click

from planish.cli.library.common import titles
from planish.cli.stones.common import plain_flag, print_json, told
from planish.cli.terminal import prose, say, tint
from planish.cli.wording import CONFIDENCE

if TYPE_CHECKING:
    from planish.stones import Flag


@click.command(short_help="Materials that law protects.")
@click.argument("words", nargs=-1, required=True)
@click.option(
    "--place", default="", metavar="CODE", help="Only this country (GB, US, EU) and treaties."
)
@click.option("--json", "as_json", is_flag=True, help="Print the rules as JSON.")
def law(words: tuple[str, ...], *, place: str, as_json: bool) -> None:
    """Say which rules a material, or the words of a description, call for.

    No legal advice: each rule says when it was last looked at.

    \b
    planish stones law ivory
    planish stones law "teapot, ivory insulators" --place GB
    """  # noqa: D301  # click reads the backspace
    from planish.stones import restricted
    from planish.stones.law import CHECK

    text = " ".join(words)
    with told():
        flags = restricted(text, place=place)
    if as_json:
        print_json({"words": text, "place": place or None, "law": [plain_flag(f) for f in flags]})
        return
    if not flags:
        lines = [tint("No rule on record is called for by these words", "head")]
        says = "That proves nothing: wording is matched, and the library holds few laws."
        say([*lines, *prose(says), *prose(f"Mind: {CHECK}.", 2, 2)])
        return
    lines = [tint(f"{len(flags)} rules to look at: {text}", "head")]
    for flag in flags:
        lines += _rule(flag)
    lines += ["", *prose(f"Mind: {CHECK}. This is no legal advice.", 0, 2)]
    say([*lines, *titles(s for f in flags for s in f.sources)])


def _rule(flag: "Flag") -> list[str]:
    place = flag.place or "Treaty"
    lines = ["", *(tint(s, "head") for s in prose(f"{place}: {flag.regime}", 0, 2))]
    lines += prose(flag.rule)
    lines += prose(f"May be allowed: {flag.allowed}", 2, 2) if flag.allowed else []
    lines += prose(f"Asks: {' '.join(flag.asks)}", 2, 2) if flag.asks else []
    dates = f"in force from {flag.date_from}" if flag.date_from else ""
    dates += f" to {flag.date_to}" if flag.date_to else ""
    sure = f"as of {flag.checked}, {CONFIDENCE[flag.confidence]}"
    return [
        *lines,
        *prose("; ".join(p for p in (f"because of '{flag.because}'", dates, sure) if p)),
    ]
