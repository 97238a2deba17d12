"""What the imports of tables share."""

from pathlib import Path

import pytest

from planish.cli.errors import BadInput
from planish.cli.importing import write


def test_a_file_is_written_whole(tmp_path: Path) -> None:
    path = tmp_path / "sales.csv"
    path.write_text("old")
    write(path, "new")
    assert path.read_text() == "new"
    assert list(tmp_path.iterdir()) == [path]


def test_what_stood_there_stays_where_the_new_cannot_be_written(tmp_path: Path) -> None:
    path = tmp_path / "sales.csv"
    path.write_text("old")
    with pytest.raises(UnicodeEncodeError):
        write(path, "new \udc80")
    assert path.read_text() == "old"
    assert list(tmp_path.iterdir()) == [path]


def test_what_stood_there_stays_where_the_last_step_fails(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "sales.csv"
    path.write_text("old")

    def full(_from: Path, _to: Path) -> Path:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(Path, "replace", full)
    with pytest.raises(BadInput, match="no space left"):
        write(path, "new")
    assert path.read_text() == "old"


def test_a_place_that_cannot_be_written_is_named(tmp_path: Path) -> None:
    with pytest.raises(BadInput, match="missing"):
        write(tmp_path / "missing" / "sales.csv", "new")
