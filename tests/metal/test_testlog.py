"""The test log: entries as written, and what the log says of consent, order and cautions."""

import pytest

from planish.library import load
from planish.metal.testlog import Where, log_notes, parse_entry
from planish.quantity import QuantityError

TESTS = load().tests


def test_an_entry_is_read_whole() -> None:
    (entry,) = parse_entry("xrf=92.3±0.8@worn rim, by AB, 2026-05-01, unsure, second shot", TESTS)
    assert (entry.test, entry.value, entry.plus_minus) == ("xrf", 92.3, 0.8)
    assert (entry.spot, entry.where) == ("worn rim", Where.WORN)
    assert (entry.by, entry.on, entry.sure) == ("AB", "2026-05-01", False)
    assert entry.note == "second shot"


def test_x_ray_shots_tell_what_is_beside_silver() -> None:
    shot, beside = parse_entry("xrf=Ag 92.3±0.8 Cu 6.3 Ni 1.4@rim", TESTS)
    assert (shot.value, shot.plus_minus) == (92.3, 0.8)
    assert (beside.test, beside.readings) == ("xrf-beside", ("zinc-nickel",))


def test_a_word_that_means_several_readings_keeps_them() -> None:
    (entry,) = parse_entry("dichromate=red", TESTS)
    assert len(entry.readings) > 1


@pytest.mark.parametrize(
    ("text", "match"),
    [
        ("magnet", "no reading given"),
        ("magnet=", "no reading given"),
        ("sniff=good", "no such test"),
        ("magnet=purple", "no such reading"),
        ("xrf=120", "outside"),
        ("xrf=many", "not a figure"),
        ("density=10.3±0", "above zero"),
        ("density=10,3", "decimal comma"),
        ("magnet=none@", "no spot"),
        ("magnet=none@rim, " + "x" * 400, "longer"),
    ],
)
def test_bad_entries_say_what_and_how_to_mend(text: str, match: str) -> None:
    with pytest.raises(QuantityError, match=match):
        parse_entry(text, TESTS)


def _notes(*texts: str) -> list[tuple[str, str]]:
    found = [e for t in texts for e in parse_entry(t, TESTS)]
    return [(n.kind, n.says) for n in log_notes(found, TESTS)]


def test_harm_without_consent_is_told() -> None:
    assert any(
        k == "consent" and "not on record" in s
        for k, s in _notes("magnet=none", "dichromate=red@foot")
    )
    assert any(
        k == "consent" and "did not agree" in s
        for k, s in _notes("magnet=none", "dichromate=red@foot, owner did not agree")
    )
    agreed = _notes("magnet=none", "dichromate=red@foot, owner agreed")
    assert not any(k == "consent" for k, _ in agreed)


def test_harm_before_what_leaves_nothing_is_told() -> None:
    assert any(k == "order" for k, _ in _notes("dichromate=red@foot, owner agreed"))
    assert not any(k == "order" for k, _ in _notes("magnet=none", "dichromate=red, owner agreed"))


def test_a_filed_place_is_harm_whatever_the_test() -> None:
    assert any(k == "consent" for k, _ in _notes("magnet=none", "xrf=92@foot, filed"))


def test_cautions_are_repeated_once() -> None:
    told = _notes(
        "magnet=none", "dichromate=red@foot, owner agreed", "dichromate=red@rim, owner agreed"
    )
    assert sum(k == "caution" for k, _ in told) == 1
