"""What a tool gets must multiply out to what is printed."""

import math

import msgspec
import pytest

from planish.marks import Mark, Observed, Reader, read
from planish.marks.plain import as_plain


def decoded(observed: Observed) -> dict[str, list[dict[str, object]]]:
    found = msgspec.json.decode(msgspec.json.encode(as_plain(read(observed, "spoon"))))
    assert isinstance(found, dict)
    return found


def test_the_shape_is_that_of_the_contract() -> None:
    found = decoded(Observed(marks=(Mark(device="lion passant"), Mark(device="anchor"))))

    assert {"readings", "contradictions", "next_look", "ledger"} <= set(found)
    best = found["readings"][0]
    assert {
        "kind", "country", "system", "office", "year_from", "year_to", "fineness", "makers",
        "probability",
    } <= set(best)  # fmt: skip
    assert best["country"] == "GB"
    assert best["kind"] in {"solid", "plated", "base", "unknown"}


def test_priors_and_ledger_multiply_out_to_the_odds() -> None:
    found = decoded(
        Observed(marks=(Mark(device="lion passant"), Mark(device="anchor"), Mark(text="k")))
    )
    weighed = [r for r in found["readings"] if r["prior"] is not None]
    first, second = weighed[:2]

    def score(reading: dict[str, object]) -> float:
        total = 10 * math.log10(float(str(reading["prior"])))
        for line in found["ledger"]:
            by_key = line["likelihood_db"]
            assert isinstance(by_key, dict)
            total += by_key[reading["key"]]
        return total

    odds = float(str(first["probability"])) / float(str(second["probability"]))
    # probabilities are printed to six places and lines to a thousandth of a deciban
    assert 10 ** ((score(first) - score(second)) / 10) == pytest.approx(odds, rel=0.02)


def test_what_was_not_understood_is_returned() -> None:
    found = as_plain(read(Observed(marks=(Mark(text="800"),), unread=("blurb",))))

    assert "not understood: blurb" in str(found["not_used"])


def test_a_reader_is_laid_out_once_and_gives_the_same_again() -> None:
    reader = Reader()
    observed = Observed(marks=(Mark(device="thistle"),))

    assert as_plain(reader.read(observed)) == as_plain(reader.read(observed))
