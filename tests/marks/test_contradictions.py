"""Contradictions: marks against marks, claims against marks."""

import pytest

from planish.marks import Claim, Mark, Observed, Reader

LION, ANCHOR = Mark(device="lion passant"), Mark(device="anchor")
SET = (LION, ANCHOR, Mark(text="g", hint="date letter"), Mark(text="WB"))


@pytest.fixture(scope="module")
def reader() -> Reader:
    return Reader()


def test_a_plate_word_on_a_hallmarked_piece_is_said(reader: Reader) -> None:
    # EPNS names electroplated nickel silver (Klepner glossary, in the library); no office marks it
    found = reader.read(Observed(marks=(*SET, Mark(text="EPNS"))))
    assert any("EPNS" in c.says for c in found.contradictions)


def test_a_plain_set_has_none(reader: Reader) -> None:
    assert reader.read(Observed(marks=SET)).contradictions == ()


def test_a_claimed_date_before_the_office_opened_is_ruled_out(reader: Reader) -> None:
    # Birmingham opened in 1773 (13 Geo. III c. 52)
    claim = Claim(about="date", says="Birmingham 1700", year_from=1700, year_to=1700)
    found = reader.read(Observed(marks=SET, claims=(claim,)))
    assert any("1700" in c.says for c in found.contradictions)


def test_a_claim_that_the_marks_allow_stands(reader: Reader) -> None:
    best = reader.read(Observed(marks=SET)).readings[0]
    claim = Claim(about="date", says="so dated", year_from=best.year_from, year_to=best.year_to)
    assert reader.read(Observed(marks=SET, claims=(claim,))).contradictions == ()
