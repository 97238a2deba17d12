import shutil
import subprocess
from pathlib import Path

import pytest

from planish.case.demo import copy_to, folder
from planish.cli import main
from planish.cli.issue import lay_out_demo


@pytest.fixture(scope="module")
def issued(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder of the demo case with its report, made once."""
    place = tmp_path_factory.mktemp("demo") / "here"
    assert main(["demo", "-o", str(place)]) == 0
    return place


def test_the_demo_leaves_a_report_and_its_case(issued: Path) -> None:
    assert (issued / "report.pdf").read_bytes().startswith(b"%PDF-")
    assert (issued / "case.toml").read_bytes() == (folder() / "case.toml").read_bytes()


@pytest.mark.skipif(not shutil.which("pdftotext"), reason="poppler-utils is not installed")
def test_the_report_prints_the_case_and_is_no_draft(issued: Path) -> None:
    done = subprocess.run(
        ["pdftotext", "-layout", str(issued / "report.pdf"), "-"],
        capture_output=True,
        text=True,
        check=True,
    )

    assert "DEMO-1" in done.stdout
    assert "London, 1884" in done.stdout
    assert "What this draft lacks" not in done.stdout


def test_the_same_case_gives_the_same_report(issued: Path, tmp_path: Path) -> None:
    again = tmp_path / "again.pdf"

    assert main(["appraise", str(issued / "case.toml"), "-o", str(again)]) == 0
    assert again.read_bytes() == (issued / "report.pdf").read_bytes()


def test_a_changed_case_is_not_overwritten(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file = copy_to(tmp_path)
    file.write_text("mine", encoding="utf-8")

    assert main(["demo", "-o", str(tmp_path)]) == 2
    assert file.read_text(encoding="utf-8") == "mine"
    assert "another folder" in capsys.readouterr().err


def test_an_unchanged_demo_is_used_again(tmp_path: Path) -> None:
    assert lay_out_demo(tmp_path) == lay_out_demo(tmp_path) == tmp_path / "case.toml"


def test_an_incomplete_case_is_not_issued_and_each_gap_is_named(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    main(["new", str(tmp_path / "case.toml")])
    capsys.readouterr()
    out = tmp_path / "report.pdf"

    assert main(["appraise", str(tmp_path / "case.toml"), "-o", str(out)]) == 2
    told, err = capsys.readouterr()
    assert told == ""
    assert not out.exists()
    lines = err.splitlines()
    assert all(line.startswith("planish: case.toml: ") for line in lines)
    count = len(lines) - 1
    assert count > 5
    assert lines[0] == (
        f"planish: case.toml: no report was issued, {count} required elements are missing;"
        " give them, or print a draft with --draft"
    )
    assert all(": missing: " in line for line in lines[1:])


def test_a_draft_is_printed_and_called_so(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    main(["new", str(tmp_path / "case.toml")])
    capsys.readouterr()
    out = tmp_path / "draft.pdf"

    assert main(["appraise", str(tmp_path / "case.toml"), "-o", str(out), "--draft"]) == 0
    assert out.is_file()
    assert capsys.readouterr().out.startswith("Draft written: ")


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("format = 1\n[case\n", "line 2"),
        ('format = 1\n[case]\nnumber = "1"\ntitle = "x"\ncolour = "red"\n', "line 5"),
        ("", "case"),
    ],
)
def test_faults_of_a_case_name_their_line(
    text: str, says: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file = tmp_path / "case.toml"
    file.write_text(text, encoding="utf-8")

    assert main(["appraise", str(file), "-o", str(tmp_path / "r.pdf")]) == 2
    err = capsys.readouterr().err
    assert err.startswith("planish: case.toml: ")
    assert says in err


def test_a_case_that_is_not_there(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["appraise", str(tmp_path / "no.toml"), "-o", str(tmp_path / "r.pdf")]) == 2
    assert "no.toml" in capsys.readouterr().err


def test_a_report_that_cannot_be_written(
    issued: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = tmp_path / "no" / "report.pdf"

    assert main(["appraise", str(issued / "case.toml"), "-o", str(out)]) == 2
    err = capsys.readouterr().err
    assert str(out) in err
    assert err.count("\n") == 1


def test_pieces_that_lack_the_same_are_told_together(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file = tmp_path / "case.toml"
    pieces = "".join(f'[[piece]]\nnumber = {n}\ntitle = "x"\n' for n in (1, 2, 3))
    file.write_text(f'[case]\nnumber = "1"\ntitle = "x"\n{pieces}', encoding="utf-8")

    assert main(["appraise", str(file), "-o", str(tmp_path / "r.pdf")]) == 2
    err = capsys.readouterr().err
    assert err.count("pieces 1-3: missing: the description") == 1
    assert "piece 1:" not in err


def test_a_case_in_this_folder_that_is_a_folder_is_named(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)

    assert main(["appraise", ".", "-o", "r.pdf"]) == 2
    assert capsys.readouterr().err.startswith("planish: .: this is a folder; ")


@pytest.fixture
def mine(tmp_path: Path) -> Path:
    """A demo case of one's own."""
    return copy_to(tmp_path / "mine")


PICTURE = next(p.name for p in (folder() / "photographs").iterdir() if p.name.endswith(".jpg"))


@pytest.mark.parametrize("name", ["case.toml", "./x/../case.toml", f"photographs/{PICTURE}"])
@pytest.mark.parametrize("link", ["", "symbolic", "hard"])
@pytest.mark.parametrize("draft", [False, True])
def test_the_report_never_overwrites_what_it_is_made_from(
    mine: Path, name: str, link: str, *, draft: bool, capsys: pytest.CaptureFixture[str]
) -> None:
    (mine.parent / "x").mkdir()
    out = target = mine.parent / name
    if link:
        out = mine.parent / "out.pdf"
        (out.symlink_to if link == "symbolic" else out.hardlink_to)(target.resolve())
    before = target.read_bytes()

    assert main(["appraise", str(mine), "-o", str(out), *(["--draft"] if draft else [])]) == 2
    assert target.read_bytes() == before
    err = capsys.readouterr().err
    assert "would overwrite" in err
    assert err.count("\n") == 1


def test_a_file_that_is_no_pdf_is_not_overwritten(
    mine: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    notes = tmp_path / "notes.txt"
    notes.write_text("kept", encoding="utf-8")

    assert main(["appraise", str(mine), "-o", str(notes)]) == 2
    assert notes.read_text(encoding="utf-8") == "kept"
    assert "it is no PDF" in capsys.readouterr().err


@pytest.mark.parametrize("name", ["report.pdf", f"photographs/{PICTURE}"])
def test_the_demo_spares_what_is_not_its_own(tmp_path: Path, name: str) -> None:
    file = tmp_path / name
    file.parent.mkdir(exist_ok=True)
    file.write_bytes(b"%PDF-mine")

    assert main(["demo", "-o", str(tmp_path)]) == 2
    assert file.read_bytes() == b"%PDF-mine"
    assert not (tmp_path / "case.toml").exists()
