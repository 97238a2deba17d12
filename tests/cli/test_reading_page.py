"""The page is tested on a finding made by hand, so that no change of the engine moves it."""

import click
import pytest

from planish.cli.reading_page import page
from planish.evidence import Contradiction, Finding, Hypothesis, Ledger, LedgerLine
from planish.library import Library
from planish.library.rows import Source
from planish.marks import MakerGuess, Mark, NextLook, Observed, Outcome, Reading, ReadingFinding


def library() -> Library:
    tables = dict.fromkeys(Library.__struct_fields__, ())
    sources = (Source(key="BOOK", title="A handbook of marks", kind="handbook"),)
    return Library(**{**tables, "sources": sources})  # type: ignore[arg-type]  # empty tables


def reading(key: str, probability: float, **more: object) -> Reading:
    given = {
        "kind": "solid",
        "country": "GB",
        "system": "GB-X",
        "system_label": "a system",
        "office": "Birmingham",
        "year_from": 1884,
        "year_to": 1884,
        "fineness": 925.0,
        "makers": (),
        "label": f"Birmingham, {key}",
        "sources": ("BOOK",),
    }
    return Reading(key=key, probability=probability, **{**given, **more})  # type: ignore[arg-type]


def finding(*readings: Reading, **more: object) -> ReadingFinding:
    hypotheses = tuple(
        Hypothesis(key=r.key, label=r.label, probability=r.probability, prior=0.5) for r in readings
    )
    line = LedgerLine(
        key="mark:0",
        observed='"k" (black-letter)',
        because="as date letter",
        likelihood_db={r.key: 20.0 if n == 0 else 0.0 for n, r in enumerate(readings)},
        sources=("BOOK", "memory"),
    )
    silent = LedgerLine(key="absent:duty", observed="duty mark: seen or not", likelihood_db={})
    return ReadingFinding(
        observed=Observed(marks=(Mark(text="k"),), unread=("blurb",)),
        readings=readings,
        finding=Finding(about="marks", hypotheses=hypotheses, ledger=Ledger((line, silent))),
        **more,  # type: ignore[arg-type]
    )


def told(found: ReadingFinding, form: str | None = None) -> str:
    lines = [click.unstyle(line) for line in page(found, form, library())]
    assert all(len(line) <= 80 for line in lines)
    return "\n".join(lines)


def test_the_verdict_comes_first_reasons_after_sources_last() -> None:
    text = told(finding(reading("1884", 0.98), reading("1833", 0.02)))

    assert text.startswith("Birmingham, 1884: 98 %\n")
    order = [text.index(w) for w in ("Other readings", "Why Birmingham, 1884", "Sources")]
    assert order == sorted(order)


def test_a_reason_shows_its_weight_its_word_and_its_side() -> None:
    text = told(finding(reading("1884", 0.98), reading("1833", 0.02)))

    assert "decisive for" in text
    assert '"k" (black-letter): as date letter' in text
    assert "duty mark" not in text  # it says nothing


def test_sources_are_named_in_full_and_memory_is_called_so() -> None:
    text = told(finding(reading("1884", 0.9)))

    assert "BOOK    A handbook of marks" in text
    assert "memory  from memory, no source" in text


@pytest.mark.parametrize("chance", [0.46, 0.79])
def test_no_reading_of_four_in_five_is_said_to_be_unsettled(chance: float) -> None:
    text = told(finding(reading("1884", chance), reading("1833", 0.2)))

    says = f"Not settled; likeliest of 2: Birmingham, 1884: {chance:.0%}".replace("%", " %")
    assert text.startswith(f"{says}\n")


def test_a_reading_of_four_in_five_is_the_verdict() -> None:
    text = told(finding(reading("1884", 0.8), reading("1833", 0.2)))

    assert text.startswith("Birmingham, 1884: 80 %\n")


def test_an_unknown_system_proves_nothing() -> None:
    unknown = reading("unknown", 0.9, kind="unknown", system="", label="no system")

    text = told(finding(unknown))

    assert text.startswith("Not settled: no reading of these marks stands out.\n")
    assert "That no system of the library explains them: 90 %." in text
    assert "no proof" in text


def test_plate_is_said_at_once() -> None:
    text = told(finding(reading("EPNS", 0.97, kind="plated")))

    assert text.splitlines()[1].strip().startswith("plated, not solid silver")


def test_contradictions_next_look_and_what_was_left_out() -> None:
    found = finding(
        reading("1884", 0.9, makers=(MakerGuess(name="W. Doe", probability=0.6, why="initials"),)),
        contradictions=(
            Contradiction(between=("a", "b"), says="a lion and EPNS", sources=("BOOK",)),
        ),
        next_look=(
            NextLook(
                role="duty",
                look_for="duty mark: the sovereign's head",
                information=1.24,
                where=("underside", "foot ring"),
                outcomes=(Outcome(if_seen="found", chance=0.7, then="1884 (99%)"),),
            ),
        ),
        not_used=("a crest: engraved",),
    )

    text = told(found, "teapot")

    assert "a lion and EPNS" in text
    assert "1. duty mark: the sovereign's head (1.2 bits expected)" in text
    assert "found (70 %): 1884 (99%)" in text
    assert "where on a teapot: underside; foot ring" in text
    assert "a crest: engraved" in text
    assert "not understood: blurb" in text
    assert "60 %  W. Doe; initials" in text


@pytest.mark.parametrize("word", ["x" * 200, "\x1b[31mred", "名前 " * 30])
def test_any_wording_fits_and_is_harmless(word: str) -> None:
    text = told(finding(reading("1884", 0.9, label=word)), word)

    assert "\x1b" not in text
