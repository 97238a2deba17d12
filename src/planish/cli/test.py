"""``planish test``: tests of the metal in, what the piece is made of out."""

from typing import TYPE_CHECKING

import click
import msgspec

from planish.cli.errors import Asked, BadInput
from planish.cli.terminal import say

if TYPE_CHECKING:
    from planish.metal.composition import CompositionFinding
    from planish.metal.composition_prior import Claim
    from planish.metal.testlog import Entry


@click.command(short_help="What a piece is made of, from tests of the metal.")
@click.argument("tests", nargs=-1, metavar="TEST=READING...")
@click.option("--marks", multiple=True, metavar="MARK", help="A mark on the piece; again for more.")
@click.option("--remarks", metavar="TEXT", help="What was seen, in free words.")
@click.option("--consent", is_flag=True, help="The owner agreed, on record, to tests that harm.")
@click.option("--without", multiple=True, metavar="TEST", help="A test that cannot be made.")
@click.option(
    "--fail-on",
    type=click.Choice(["contradiction", "not-silver", "unsettled"]),
    multiple=True,
    help="End with exit code 1 if the finding is this; may be given again.",
)
@click.option("--json", "as_json", is_flag=True, help="Print everything as JSON.")
def test(
    tests: tuple[str, ...],
    marks: tuple[str, ...],
    remarks: str | None,
    *,
    consent: bool,
    without: tuple[str, ...],
    fail_on: tuple[str, ...],
    as_json: bool,
) -> None:
    """Say what a piece is made of, why, and which test to do next.

    Each test is TEST=READING@SPOT, with remarks after commas: "filed", "worn",
    "unsure", "owner agreed", "by NAME", a date. Figures carry their standard
    uncertainty: 92.3±0.8 or 92.3+-0.8. Without tests, the list of tests.

    \b
    planish test
    planish test magnet=none look=same --marks 925
    planish test "xrf=92.3±0.8@rim" conductivity=6 density=8.7±0.1
    planish test "acid=blue@foot rim, filed, owner agreed, by AB"
    planish test --remarks "sticks to a magnet; copper shows at the rim"
    """  # noqa: D301  # click reads the backspace
    from planish.cli.composition_page import list_page, page, plain
    from planish.metal.composition import shipped_composition_bench
    from planish.metal.composition_next import TestAdviser
    from planish.metal.testlog import find_test, parse_entry
    from planish.metal.testlog_words import entries_of
    from planish.quantity import QuantityError

    bench = shipped_composition_bench()
    rows = bench.library.tests
    if not tests and not marks and not remarks and not as_json:
        say(list_page(bench))
        return
    entries: list[Entry] = []
    try:
        for text in tests:
            entries += parse_entry(text, rows)
        entries += entries_of(remarks or "")
        barred = [find_test(word, rows).id for word in without]
        found = bench.weigh(entries, _claims(marks))
    except QuantityError as fault:
        raise BadInput(str(fault)) from None
    agreed = consent or any(e.agreed for e in entries)
    advice = TestAdviser(bench).advise(found, without=barred, consent=agreed)
    if as_json:
        told = msgspec.json.encode(plain(found, advice, bench))
        say(msgspec.json.format(told, indent=2).decode())
    else:
        say(page(found, advice, bench))
    _fail_on(found, fail_on)


def _claims(marks: tuple[str, ...]) -> "tuple[Claim, ...]":
    """What the marks say, by the reading of them."""
    if not marks:
        return ()
    from planish.case.claims import claims_of
    from planish.cli.read import observed_of
    from planish.marks import shipped_reader

    return claims_of(shipped_reader().read(observed_of(marks, None)))


def _fail_on(found: "CompositionFinding", fail_on: tuple[str, ...]) -> None:
    from planish.evidence import SETTLED

    kind, chance = found.kinds[0]
    if "contradiction" in fail_on and found.contradictions:
        raise Asked("the marks and the tests, or two tests, contradict each other: see above")
    if "not-silver" in fail_on and kind != "solid":
        raise Asked("the likeliest finding is not solid silver")
    if "unsettled" in fail_on and chance < SETTLED:
        raise Asked("the tests do not settle what it is made of")
