"""The next look: what would tell most, where it sits, what it would settle."""

import pytest

from planish.marks import Case, Mark, Observed, Reader, Style


@pytest.fixture(scope="module")
def reader() -> Reader:
    return Reader()


def test_a_lone_lion_asks_for_letter_and_town(reader: Reader) -> None:
    # the lion is the mark of all English offices; town and letter tell them apart (Hayden)
    found = reader.read(Observed(marks=(Mark(device="lion passant"),)), "teapot")
    roles = [n.role for n in found.next_look]
    assert roles[0] == "date"
    assert "town" in roles
    assert all(n.where for n in found.next_look)


def test_what_is_seen_is_not_asked_for(reader: Reader) -> None:
    marks = (Mark(device="lion passant"), Mark(device="anchor"))
    found = reader.read(Observed(marks=marks))
    assert "town" not in [n.role for n in found.next_look]


def test_looks_are_ordered_and_outcomes_are_chances(reader: Reader) -> None:
    found = reader.read(Observed(marks=(Mark(device="lion passant"),)))
    bits = [n.information for n in found.next_look]
    assert bits == sorted(bits, reverse=True)
    for look in found.next_look:
        assert 0 < sum(o.chance for o in look.outcomes) <= 1 + 1e-9


def test_a_settled_reading_asks_for_nothing(reader: Reader) -> None:
    marks = (
        Mark(device="lion passant"),
        Mark(device="leopard's head crowned"),
        Mark(device="king's head"),
        Mark(text="C", hint="date letter", style=Style.ROMAN, case=Case.CAPITAL),
        Mark(text="PB/AB", hint="maker's mark"),
    )
    assert reader.read(Observed(marks=marks), "teapot").next_look == ()
