"""A whole case as printed: what is asked of a report is there, and a draft says what it lacks."""

import re
from collections.abc import Callable
from pathlib import Path

import msgspec
import pytest

from planish.case.load import parse
from planish.case.work import work
from planish.case.worked import Worked
from planish.library import load
from planish.marks.observation import Observed
from planish.report import ReportView, attachments, view, write_report
from planish.report.piece_view import subtitle

CASE = """
[case]
number = "T-1"
title = "Two spoons"
client = "C. Lient"
intended_use = "insurance"
type_of_value = "retail replacement value"
effective_date = 2026-05-14
currency = "USD"
extraordinary_assumptions = ["the bowl is solid"]
market = { level = "dealer retail" }
tax = { purpose = "estate" }

[metal_price]
price = "USD 30"
date = 2026-05-14
source = "a fix"

[[piece]]
number = 7
title = "A tablespoon"
form = "tablespoon"
materials = "silver; ivory handle"
[[piece.mark]]
device = "lion passant"
outline = "rectangle"
technique = "raised"
place = "back of the stem"
[[piece.searched]]
place = "bowl"
found = false
[piece.weight]
gross = "62.2 g"
fineness = 925
[[piece.weight.deduction]]
kind = "wood"
what = "ivory handle"
mass = "10 g"
method = "weighed apart"
[piece.opinion]
value = "USD 120"
reasons = ["as others ask"]

[[piece]]
number = 9
title = "A fork"
"""


@pytest.fixture(scope="module")
def worked() -> Worked:
    return work(parse(CASE), describe=lambda _: Observed())


@pytest.fixture(scope="module")
def printed(worked: Worked) -> ReportView:
    return view(worked)


def test_a_case_with_gaps_is_a_draft_that_lists_them(printed: ReportView, worked: Worked) -> None:
    assert printed.draft
    assert printed.lacks == len(worked.gaps) > 10
    first = printed.missing[0]
    assert (first.where, first.what) == ("Assignment", "The intended users")
    # what both lack stands once
    assert {m.where for m in printed.missing} == {
        "Assignment", "Piece 7", "Piece 9", "Pieces 7, 9"
    }  # fmt: skip
    assert len({(m.what, m.remedy) for m in printed.missing}) == len(printed.missing)


def test_common_practice_is_not_named_twice(printed: ReportView) -> None:
    clauses = {m.clause for m in printed.missing}
    assert "common practice" in clauses
    assert not any("(practice)" in c for c in clauses)
    assert any(c.endswith(" (from memory)") for c in clauses)


def test_the_doubts_are_shown_in_a_draft_only(worked: Worked) -> None:
    assert any(d.value.startswith("Ivory: ") for d in view(worked).doubts)
    issued = msgspec.structs.replace(worked, gaps=())
    assert view(issued).doubts == ()
    assert not view(issued).draft


def test_cover_and_summary_name_what_is_asked(printed: ReportView) -> None:
    told = {line.label: line.value for line in printed.cover.lines}
    assert told["Type of value"] == "retail replacement value"
    assert told["Effective date"] == "14 May 2026"
    assert printed.cover.notices[0].startswith("Extraordinary assumption: The bowl is solid. If it")
    rows = {r.number: r for r in printed.summary.schedule}
    assert (rows["7"].value, rows["9"].value) == ("USD 120", "not valued")
    assert rows["7"].weight == "52.2"
    assert printed.summary.total == "USD 120"
    assert "piece 9" in printed.summary.total_note


def test_value_type_date_and_market_stand_beside_the_figure(printed: ReportView) -> None:
    opinion = printed.pieces[0].opinion
    assert opinion is not None
    assert opinion.figure == "USD 120"
    assert opinion.basis == "Retail replacement value at 14 May 2026, dealer retail level"
    assert opinion.reasons == ("As others ask.",)


def test_only_the_cautions_called_for_are_printed(printed: ReportView) -> None:
    labels = {c.label for c in printed.cautions}
    assert {"Tax", "Protected materials", "Metal value is no offer", "Marks under doubt"} <= labels
    assert "Testing acids" not in labels
    assert "Filled pieces" not in labels


def test_the_document_is_dated_by_the_case(printed: ReportView) -> None:
    assert printed.date == (2026, 5, 14)


def test_each_ledger_names_its_piece_and_its_sources(printed: ReportView) -> None:
    assert [w.title for w in printed.ledgers] == ["Piece 7"]
    cited = " ".join(e.sources for w in printed.ledgers for e in w.lines)
    assert all(s.mark in cited or s.title for s in printed.sources)


def test_a_piece_without_marks_has_no_reading(printed: ReportView) -> None:
    assert printed.pieces[1].reading is None
    assert printed.pieces[1].subtitle == "no marks recorded; not identified yet"


def test_a_piece_whose_marks_are_not_read_says_so_below_its_title(worked: Worked) -> None:
    work = worked.pieces[0]
    best = work.reading.best
    assert best is not None
    unknown = msgspec.structs.replace(best, kind="unknown", label="no system")
    reading = msgspec.structs.replace(work.reading, readings=(unknown,))
    done = msgspec.structs.replace(work, reading=reading)
    assert subtitle(done) == "not settled; no reading of its marks stands out"


IDENTIFICATION = """
[case]
number = "T-2"
title = "A spoon"
client = "C. Lient"
intended_use = "to know what it is"
report_option = "identification"

[[piece]]
number = 1
title = "A tablespoon"
[[piece.mark]]
device = "lion passant"
"""


def test_an_identification_names_itself_and_promises_and_totals_no_value() -> None:
    told = view(work(parse(IDENTIFICATION), describe=lambda _: Observed()))
    assert told.cover.kind == "identification"
    assert told.cover.notices[0].startswith("Identification only: no opinion of value")
    assert told.subject == "identification"
    assert told.summary.paragraphs[0] == (
        "This report says what the piece listed below is for C. Lient and states no value."
    )
    assert "metal" not in told.summary.paragraphs[-1]
    assert "how the value" not in told.summary.paragraphs[-1]
    assert (told.summary.total, told.summary.total_note) == ("", "")
    assert [r.value for r in told.summary.schedule] == [""]
    assert "Value" not in {s.title for s in told.assignment}
    assert not any("value" in m.what.lower() for m in told.missing)


def test_what_is_weighed_and_valued_is_announced(printed: ReportView) -> None:
    how = printed.summary.paragraphs[-1]
    assert "what it weighs, what its metal comes to and how the value was found." in how


def test_an_identification_prints(tmp_path: Path, text_of: Callable[..., str]) -> None:
    worked = work(parse(IDENTIFICATION), describe=lambda _: Observed())
    out = tmp_path / "r.pdf"
    write_report(worked, tmp_path, out)
    letters = text_of(out).replace(" ", "")  # the cover's kind is set in spaced capitals
    assert "IDENTIFICATION" in letters
    assert "APPRAISALREPORT" not in letters
    assert "notvalued" not in letters


def test_no_source_names_a_file_of_the_project() -> None:
    for source in load().sources:
        assert not re.search(r"tests/|\.csv\b", f"{source.title} {source.note}"), source.key


def test_results_inside_the_pdf_are_json_and_the_same_each_time(worked: Worked) -> None:
    (results,) = attachments(worked)
    assert results == attachments(worked)[0]
    data = msgspec.json.decode(results.data)
    assert data["case"]["case"]["number"] == "T-1"
    assert [a.name for a in attachments(worked, b"x = 1")] == ["case.toml", "results.json"]


def test_the_draft_of_a_bare_case_prints(worked: Worked, tmp_path: Path) -> None:
    out = tmp_path / "r.pdf"
    write_report(worked, tmp_path, out, toml=CASE.encode())
    assert out.read_bytes().startswith(b"%PDF-1.7")
