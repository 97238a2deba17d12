from pathlib import Path

import pytest

from planish.case.load import load
from planish.cli import main


def test_a_new_file_loads_as_a_draft(tmp_path: Path) -> None:
    file = tmp_path / "deep" / "case.toml"

    assert main(["new", str(file), "--title", 'A "tea" set', "--number", "7"]) == 0
    case = load(file)
    assert case.case.title == 'A "tea" set'
    assert case.case.number == "7"


def test_a_folder_gets_a_case_toml(tmp_path: Path) -> None:
    assert main(["new", str(tmp_path / "mine")]) == 0
    assert (tmp_path / "mine" / "case.toml").is_file()


def test_nothing_is_overwritten(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = tmp_path / "case.toml"
    file.write_text("mine", encoding="utf-8")

    assert main(["new", str(file)]) == 2
    assert file.read_text(encoding="utf-8") == "mine"
    assert "already" in capsys.readouterr().err


def test_a_place_that_is_no_folder_is_named(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "file").touch()

    assert main(["new", str(tmp_path / "file" / "case.toml")]) == 2
    err = capsys.readouterr().err
    assert str(tmp_path / "file") in err
    assert err.count("\n") == 1


def test_a_title_must_be_one_line(tmp_path: Path) -> None:
    assert main(["new", str(tmp_path / "case.toml"), "--title", "a\nb"]) == 2
    assert not (tmp_path / "case.toml").exists()
