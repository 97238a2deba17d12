"""The file: what is in it, what stops it, and that a failed run harms nothing."""

import shutil
import subprocess
from collections.abc import Callable
from pathlib import Path
from types import ModuleType

import msgspec
import pytest

from planish.marks.observation import Mark
from planish.report import (
    Attachment,
    GlyphError,
    OutError,
    PhotographError,
    ReportError,
    write_pdf,
)
from planish.report import compile as compile_
from planish.report.rows import mark_row

NASTY = (
    '#panic("x") *b* _i_ $x^2$ @ref <lab> [c] // no /* c */ <script>alert(1)</script> &amp;'
    " $(rm -rf /) ; `id` 'q' \"d\" \\u{41}"
)


def test_the_draft_says_so_on_every_page(draft_pdf: Path, text_of: Callable[..., str]) -> None:
    pages = [text_of(draft_pdf, "-f", str(n), "-l", str(n)) for n in (1, 2, 3)]
    assert "Draft, not issued." in pages[0]
    assert "2 required elements are missing" in pages[0]
    assert "Draft, not issued" in pages[1]
    assert "Draft, not issued" in pages[2]


def test_the_draft_lists_what_it_lacks(draft_pdf: Path, text_of: Callable[..., str]) -> None:
    text = text_of(draft_pdf)
    assert "What this draft lacks" in text
    assert "a photograph with a scale is missing" in text
    assert "lay a ruler beside the piece" in text


def test_a_complete_report_bears_no_mark_of_a_draft(
    sample: ModuleType, pictures: dict[str, Path], tmp_path: Path, text_of: Callable[..., str]
) -> None:
    out = tmp_path / "r.pdf"
    write_pdf(sample.report(draft=False), pictures, out)
    text = text_of(out)
    assert "raft" not in text.replace("draftsman", "")
    assert "lacks" not in text


def test_figures_marks_and_reading_are_printed(
    draft_pdf: Path, text_of: Callable[..., str]
) -> None:
    text = text_of(draft_pdf)
    for part in (
        "USD 1,800", "USD 1,600 to 2,050", "Total USD 1,840", "lion passant", "[T]·W", "ST[.]RL[--]",
        "London, 1765 or 1766, sterling", "Comes off", "− 29.0", "+11.2", "strong",
        "Case 2026-014", "For the use of the client and the insurer named in it only.",
    ):  # fmt: skip
        assert part in text, part


def test_the_case_is_inside_as_it_was_given(draft_pdf: Path, tmp_path: Path) -> None:
    if shutil.which("pdfdetach") is None:
        pytest.skip("pdfdetach (Debian package poppler-utils) is not installed")
    subprocess.run(["pdfdetach", "-saveall", "-o", tmp_path, draft_pdf], check=True)
    assert (tmp_path / "case.toml").read_bytes() == b'[case]\nnumber = "2026-014"\n'


def test_the_same_input_gives_the_same_bytes(
    sample: ModuleType,
    pictures: dict[str, Path],
    attached: tuple[Attachment, ...],
    draft_pdf: Path,
    tmp_path: Path,
) -> None:
    again = tmp_path / "again.pdf"
    write_pdf(sample.report(), pictures, again, attached=attached)
    assert again.read_bytes() == draft_pdf.read_bytes()


def test_data_is_printed_as_text_and_never_obeyed(
    sample: ModuleType, tmp_path: Path, text_of: Callable[..., str]
) -> None:
    piece = msgspec.structs.replace(
        sample.spoons(),
        title=NASTY,
        subtitle=NASTY,
        description=f"{NASTY} \u202egnp.exe\u202c x\u200by אבג الفضة 純銀",
        identification=(sample.Line(label=NASTY, value=NASTY),),
    )
    out = tmp_path / "r.pdf"
    write_pdf(sample.report((piece,)), {}, out)
    text = text_of(out)
    assert text.replace(" ", "").count(NASTY.replace(" ", "")) >= 5
    assert "‹U+202E›gnp.exe‹U+202C› x‹U+200B›y" in text
    assert "純銀" in text


def test_us_letter(sample: ModuleType, tmp_path: Path) -> None:
    if shutil.which("pdfinfo") is None:
        pytest.skip("pdfinfo (Debian package poppler-utils) is not installed")
    out = tmp_path / "r.pdf"
    write_pdf(sample.report((sample.spoons(),)), {}, out, paper="letter")
    told = subprocess.run(["pdfinfo", out], capture_output=True, check=True).stdout.decode()
    assert "612 x 792 pts (letter)" in told  # ANSI/ASME Y14.1: 8.5 by 11 inches


def test_a_sign_that_no_font_has_is_told_with_its_place_and_text(
    sample: ModuleType, tmp_path: Path
) -> None:
    piece = msgspec.structs.replace(sample.spoons(), title="മ spoons")
    with pytest.raises(GlyphError) as told:
        write_pdf(sample.report((piece,)), {}, tmp_path / "r.pdf")
    assert str(told.value) == (
        "piece 2, title: no font here has മ (U+0D2E), in 'മ spoons';"
        " write it in other letters, or give a folder with a font that has it"
    )


def test_a_sign_in_a_mark_that_no_font_has_is_told(sample: ModuleType, tmp_path: Path) -> None:
    piece = msgspec.structs.replace(
        sample.spoons(), marks=(mark_row("1", Mark(text="മ", outline="oval")),)
    )
    with pytest.raises(GlyphError, match="piece 2, mark 1, "):
        write_pdf(sample.report((piece,)), {}, tmp_path / "r.pdf")


def test_a_failed_run_leaves_the_old_report_and_nothing_else(
    sample: ModuleType, tmp_path: Path
) -> None:
    out = tmp_path / "r.pdf"
    out.write_bytes(b"the old report")
    bad = msgspec.structs.replace(sample.spoons(), title="മ")
    lost = sample.teapot(("not-there.jpg",))
    for piece, fault in ((bad, GlyphError), (lost, PhotographError)):
        with pytest.raises(fault):
            write_pdf(sample.report((piece,)), {}, out)
        assert out.read_bytes() == b"the old report"
    assert [p.name for p in tmp_path.iterdir()] == ["r.pdf"]


def test_an_existing_report_is_replaced_whole(sample: ModuleType, tmp_path: Path) -> None:
    out = tmp_path / "r.pdf"
    out.write_bytes(b"the old report")
    write_pdf(sample.report((sample.spoons(),)), {}, out)
    assert out.read_bytes().startswith(b"%PDF-1.7")
    assert [p.name for p in tmp_path.iterdir()] == ["r.pdf"]


def test_places_that_cannot_be_written_are_told(sample: ModuleType, tmp_path: Path) -> None:
    view = sample.report((sample.spoons(),))
    with pytest.raises(OutError, match="this is a folder"):
        write_pdf(view, {}, tmp_path)
    with pytest.raises(OutError, match="there is no folder"):
        write_pdf(view, {}, tmp_path / "a" / "r.pdf")
    with pytest.raises(ReportError, match="paper 'a5' is not known; choose a4 or letter"):
        write_pdf(view, {}, tmp_path / "r.pdf", paper="a5")


def test_an_empty_draft_prints(
    sample: ModuleType, tmp_path: Path, text_of: Callable[..., str]
) -> None:
    empty = sample.report((sample.PieceView(number="1", title="A spoon", anchor="piece-1"),))
    bare = msgspec.structs.replace(
        empty,
        date=(), author="", notice="", assignment=(), ledgers=(), sources=(), cautions=(),
        source_notes=(), conditions=(), certification=None, signature=(), appraiser=None,
        glossary=(), summary=sample.Summary(),
    )  # fmt: skip
    out = tmp_path / "r.pdf"
    write_pdf(bare, {}, out)
    assert "A spoon" in text_of(out)


def test_a_folder_of_further_fonts_serves_where_the_shipped_ones_end(
    sample: ModuleType, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shipped = compile_.FONTS
    (tmp_path / "none").mkdir()
    monkeypatch.setattr(compile_, "FONTS", tmp_path / "none")
    view = sample.report((msgspec.structs.replace(sample.spoons(), title="ช้อน"),))
    with pytest.raises(GlyphError, match="piece 2, title"):
        write_pdf(view, {}, tmp_path / "r.pdf")
    write_pdf(view, {}, tmp_path / "r.pdf", extra_fonts=[shipped])
    assert (tmp_path / "r.pdf").is_file()
