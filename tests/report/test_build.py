"""A whole case as printed: what is asked of a report is there, and a draft says what it lacks."""

from pathlib import Path

import msgspec
import pytest

from planish.case.load import parse
from planish.case.work import work
from planish.case.worked import Worked
from planish.marks.observation import Observed
from planish.report import ReportView, attachments, view, write_report

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
    assert len(printed.missing) == len(worked.gaps) > 10
    first = printed.missing[0]
    assert (first.where, first.what) == ("Assignment", "The intended users")
    assert {m.where for m in printed.missing} == {"Assignment", "Piece 7", "Piece 9"}


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
    assert printed.pieces[1].subtitle == ""


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
