from decimal import ROUND_HALF_UP, Decimal
from pathlib import Path

import pytest
from PIL import Image

from planish.case import Case, load
from planish.case.demo import copy_to
from planish.case.kinds import ReadingKind
from planish.case.work import work
from planish.case.worked import Worked

MOST_BYTES = 3_000_000


@pytest.fixture(scope="module")
def worked(demo_case: Case) -> Worked:
    """The demo case worked through by the real benches."""
    return work(demo_case)


def test_every_picture_says_that_it_is_drawn(demo_case: Case) -> None:
    pictures = [p for piece in demo_case.pieces for p in piece.photographs]
    assert len(pictures) == 20
    assert all("Drawn, not photographed." in (p.caption or "") for p in pictures)


def test_the_pictures_are_used_each_and_small_in_all(demo_case: Case, demo_folder: Path) -> None:
    files = sorted((demo_folder / "photographs").iterdir())
    named = {p.file for piece in demo_case.pieces for p in piece.photographs}
    assert {f"photographs/{f.name}" for f in files} == named
    assert sum(f.stat().st_size for f in files) < MOST_BYTES
    for file in files:
        with Image.open(file) as picture:
            assert picture.width == 1200


def test_people_sales_and_prices_say_that_they_are_invented(demo_case: Case) -> None:
    case = demo_case.case
    assert "invented" in (case.client or "")
    assert "invented" in (case.appraiser.name or "")
    assert "Invented" in (case.notice or "")
    assert demo_case.metal_price
    assert "invented" in demo_case.metal_price.source
    sales = [c for piece in demo_case.pieces for c in piece.comparables]
    assert len(sales) > 10
    assert all("invented" in c.source and "(invented)" in c.title for c in sales)


def test_the_demo_shows_each_kind_of_piece(demo_case: Case, worked: Worked) -> None:
    kinds = [p.confirmed.kind for p in demo_case.pieces if p.confirmed]
    assert set(kinds) >= {ReadingKind.SOLID, ReadingKind.PLATED, ReadingKind.BASE}
    assert any(not p.marks and not p.marks_text for p in demo_case.pieces)
    deducted = {d.kind for p in demo_case.pieces if p.weight for d in p.weight.deductions}
    assert deducted == {"wood", "filler", "stone"}
    assert [w.piece.number for w in worked.pieces if w.reading.contradictions] == [10]


def test_the_marks_bear_out_what_is_confirmed_save_on_the_contradictory_piece(
    worked: Worked,
) -> None:
    agreed = {w.piece.number: w.agreement for w in worked.pieces}
    assert agreed.pop(6) is None  # unmarked: nothing to agree with
    assert agreed.pop(10) == pytest.approx(0, abs=0.05)
    assert all(a is not None and a > 0.5 for a in agreed.values()), agreed


def test_each_reason_that_names_adjusted_prices_names_those_of_the_grid(worked: Worked) -> None:
    stated = {
        1: ("612", "643"), 2: ("242", "249"), 3: ("175", "179"), 6: ("183",), 7: ("68",),
        9: ("117", "135"), 8: ("36",), 4: ("36",), 10: ("20",),
    }  # fmt: skip
    for done in worked.pieces:
        if done.piece.number not in stated:
            continue
        assert done.opinion
        prices = sorted(row.adjusted.amount for row in done.opinion.grid)
        ends = {f"{p.quantize(Decimal(1), ROUND_HALF_UP)}" for p in (prices[0], prices[-1])}
        assert ends == set(stated[done.piece.number]), done.piece.number
        reasons = " ".join(done.piece.opinion.reasons if done.piece.opinion else ())
        assert all(price in reasons for price in ends)


def test_the_demo_has_values_and_no_gap(worked: Worked) -> None:
    assert not worked.draft
    assert worked.totals.without == ()
    assert worked.totals.without_metal == ()
    assert worked.warnings == ()


def test_a_copy_loads_and_is_never_overwritten(tmp_path: Path, demo_case: Case) -> None:
    assert load(copy_to(tmp_path / "demo")) == demo_case
    with pytest.raises(FileExistsError):
        copy_to(tmp_path / "demo")
