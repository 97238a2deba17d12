"""Marks by part: one history, or several."""

import pytest

from planish.marks import Mark, Observed, Reader, Style
from planish.marks.parts import groups


@pytest.fixture(scope="module")
def reader() -> Reader:
    return Reader()


def on(part: str, *marks: Mark) -> tuple[Mark, ...]:
    return tuple(
        Mark(device=m.device, text=m.text, hint=m.hint, style=m.style, part=part) for m in marks
    )


LION, DATE = Mark(device="lion passant"), Mark(text="q", hint="date letter", style=Style.ROMAN)
LONDON = (LION, Mark(device="leopard's head crowned"), DATE, Mark(text="IB"))
BIRMINGHAM = (
    LION,
    Mark(device="anchor"),
    Mark(text="g", hint="date letter", style=Style.BLACK_LETTER),
)


def test_one_part_is_no_group() -> None:
    assert groups(Observed(marks=on("body", *LONDON))) == {}


def test_a_marriage_is_said(reader: Reader) -> None:
    # 13 Geo. III c. 52 (1773) gave Birmingham its anchor; London never struck it
    found = reader.read(Observed(marks=(*on("body", *LONDON), *on("lid", *BIRMINGHAM))))
    assert {p.part: p.reading.office for p in found.parts} == {
        "body": "London",
        "lid": "Birmingham",
    }
    assert any("read apart" in c.says for c in found.contradictions)


def test_a_lid_with_part_marks_of_the_same_set_is_no_marriage(reader: Reader) -> None:
    # lids and handles carry part marks: lion and sponsor only (McKinley, ASCAS)
    found = reader.read(Observed(marks=(*on("body", *LONDON), *on("lid", LION, Mark(text="IB")))))
    assert not any("read apart" in c.says for c in found.contradictions)
