import io
from pathlib import Path

import openpyxl
import pytest

from planish.cli import main

GOOD = "Maker,Mark,Town,Dates\nAnn Wainscot,AW,Bath,c. 1790\nTom Lath,TL,Bath,fl. 1820\n"


@pytest.fixture
def theirs(tmp_path: Path) -> Path:
    path = tmp_path / "theirs.csv"
    path.write_text(GOOD, encoding="utf-8")
    return path


def run(theirs: Path, *more: str) -> int:
    out = theirs.parent / "out"
    out.mkdir(exist_ok=True)
    return main(["register", "import", str(theirs), "-o", str(out / "mine.csv"), *more])


def test_an_import_is_read_by_planish_read(
    theirs: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(theirs, "--set", "country=GB", "--yes") == 0
    out = capsys.readouterr().out
    assert "Maker  name" in out
    assert "2 rows in" in out
    mine = theirs.parent / "out" / "mine.csv"
    assert (
        mine.read_text(encoding="utf-8").splitlines()[1].startswith("Ann Wainscot,AW,GB,Bath,1790")
    )
    assert main(["read", "--register", str(mine), "lion passant", "AW"]) == 0
    assert "Ann Wainscot" in capsys.readouterr().out


def test_a_mapping_is_shown_and_must_be_confirmed(
    theirs: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(theirs, "--set", "country=GB") == 2
    seen = capsys.readouterr()
    assert "Town   place" in seen.out
    assert seen.err.count("\n") == 1
    assert "run it again with --yes" in seen.err
    assert list((theirs.parent / "out").iterdir()) == []


def test_a_mapping_is_known_again(theirs: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(theirs, "--set", "country=GB", "--yes") == 0
    theirs.write_text("Dates,Town,Mark,Maker\n1790,Bath,ZZ,Zoe\n", encoding="utf-8")
    capsys.readouterr()
    assert run(theirs, "--replace") == 0
    assert "as in mine.mapping.toml" in capsys.readouterr().out
    text = (theirs.parent / "out" / "mine.csv").read_text(encoding="utf-8")
    assert "Zoe,ZZ,GB,Bath,1790,1790" in text


def test_a_mapping_may_have_a_name(theirs: Path) -> None:
    assert run(theirs, "--set", "country=GB", "--yes", "--mapping", "parish") == 0
    assert (theirs.parent / "out" / "parish.mapping.toml").exists()
    assert run(theirs, "--replace", "--mapping", "parish") == 0


def test_refused_rows_are_told_and_kept(theirs: Path, capsys: pytest.CaptureFixture[str]) -> None:
    theirs.write_text(GOOD + "Bad Row,BR,Bath,yesterday\n", encoding="utf-8")
    assert run(theirs, "--set", "country=GB", "--yes") == 2
    seen = capsys.readouterr()
    assert "1 row refused" in seen.out
    assert seen.err.startswith(
        "planish: theirs.csv, row 4, column Dates: yesterday is no year; write"
    )
    rejects = (theirs.parent / "out" / "mine.rejects.csv").read_text(encoding="utf-8-sig")
    assert "Bad Row,BR,Bath,yesterday" in rejects
    assert "Ann Wainscot" in (theirs.parent / "out" / "mine.csv").read_text(encoding="utf-8")


def test_a_workbook_is_imported(theirs: Path) -> None:
    book = openpyxl.Workbook()
    assert book.active is not None
    for line in GOOD.splitlines():
        book.active.append(line.split(","))
    out = io.BytesIO()
    book.save(out)
    path = theirs.with_suffix(".xlsx")
    path.write_bytes(out.getvalue())
    assert run(path, "--set", "country=GB", "--yes") == 0
    first = (theirs.parent / "out" / "mine.csv").read_bytes()
    assert run(theirs, "--replace") == 0
    assert (theirs.parent / "out" / "mine.csv").read_bytes() == first


@pytest.mark.parametrize(
    ("more", "says"),
    [
        ((), "no column is mapped to country"),
        (("--map", "Maker=marks", "--set", "country=GB", "--map", "Mark=marks"), "two columns are mapped to marks"),
        (("--map", "Nobody=name"), "there is no column 'Nobody'"),
        (("--sheet", "A"), "a text file has no sheets"),
    ],
)  # fmt: skip
def test_bad_input_is_one_line(
    theirs: Path, more: tuple[str, ...], says: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(theirs, *more) == 2
    err = capsys.readouterr().err
    assert says in err
    assert err.count("\n") == 1
    assert list((theirs.parent / "out").iterdir()) == []


def test_nothing_is_overwritten_unasked(theirs: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(theirs, "--set", "country=GB", "--yes") == 0
    capsys.readouterr()
    assert run(theirs, "--yes") == 2
    assert "give --replace" in capsys.readouterr().err
    assert main(["register", "import", str(theirs), "-o", str(theirs), "--replace"]) == 2
    assert "would replace its own source" in capsys.readouterr().err
    assert theirs.read_text(encoding="utf-8") == GOOD


def test_mended_rejects_are_imported_with_the_same_mapping(
    theirs: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    theirs.write_text(GOOD + "Bad Row,BR,Bath,yesterday\n", encoding="utf-8")
    assert run(theirs, "--set", "country=GB", "--yes") == 2
    out = theirs.parent / "out"
    rejects = out / "mine.rejects.csv"
    text = (
        rejects.read_text(encoding="utf-8-sig")
        .replace("yesterday;", "")
        .replace("yesterday", "1830")
    )
    mended = out / "mended.csv"
    mended.write_text(text, encoding="utf-8")
    capsys.readouterr()

    assert main(["register", "import", str(mended), "-o", str(out / "more.csv")]) == 0
    assert "as in mine.mapping.toml" in capsys.readouterr().out
    lines = (out / "more.csv").read_text(encoding="utf-8").splitlines()
    assert lines[1:] == ["Bad Row,BR,GB,Bath,1830,1830"]
