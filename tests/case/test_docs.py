"""docs/case.md: its example is a case, its messages are the program's, its tables are current."""

import re
from collections.abc import Callable
from pathlib import Path

from planish.case import missing, parse
from planish.case.reference import reference
from planish.case.work import work

PAGE = (Path(__file__).resolve().parents[2] / "docs/case.md").read_text(encoding="utf-8")


def example() -> str:
    match = re.search(r"^```toml\n(.*?)^```$", PAGE, re.DOTALL | re.MULTILINE)
    assert match
    return match[1]


def test_the_example_is_a_case_without_gaps() -> None:
    assert missing(parse(example())) == []


def test_the_example_works_through_and_its_marks_bear_out_the_reading() -> None:
    done = work(parse(example()))
    piece = done.pieces[0]
    assert piece.agreement is not None
    assert piece.agreement > 0.5
    assert piece.observed.unread == ()
    assert piece.opinion
    assert len(piece.opinion.grid) == 2
    assert piece.metal
    assert piece.metal.value
    assert done.totals.without == ()


def test_the_messages_shown_are_those_of_the_program(faults: Callable[..., list[str]]) -> None:
    shown = re.findall(r"^case\.toml: line \d+, (.*)$", PAGE, re.MULTILINE)
    assert len(shown) == 2
    text = example().replace("fineness = 925\nfineness_p", "fineness = 9250\nfineness_p")
    text = text.replace(
        "[[piece.searched]]",
        '[[piece.mark]]\ntext = "Q"\n[[piece.mark]]\nstyl = "roman"\n[[piece.searched]]',
    )
    told = [line.split(", ", 1)[1] for line in faults(text)]
    assert told == shown


def test_the_tables_of_keys_are_current() -> None:
    # renew: put the output of planish.case.reference.reference() below "## Every key"
    assert PAGE.endswith(reference())
