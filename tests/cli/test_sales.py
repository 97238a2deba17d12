import io
import json
from pathlib import Path

import pytest

from planish.cli import main

GOOD = "Sale date;Auction house;Lot;Description;Hammer price\n25/06/2019;A. Saleroom;45;Coffee pot;£420\n"
LINE = "A. Saleroom, 12 June 2019, lot 4, salver with gadrooned rim, 500 g, hammer £500"


@pytest.fixture
def theirs(tmp_path: Path) -> Path:
    path = tmp_path / "theirs.csv"
    path.write_text(GOOD, encoding="utf-8")
    return path


def run(theirs: Path, *more: str) -> int:
    return main(["sales", "import", str(theirs), "-o", str(theirs.parent / "mine.csv"), *more])


def test_the_group_says_what_it_does(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["sales"]) == 0
    assert "sales import" in capsys.readouterr().out


def test_a_table_is_imported_its_mapping_kept_and_known_again(
    theirs: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(theirs) == 2
    assert "run it again with --yes" in capsys.readouterr().err
    assert run(theirs, "--yes") == 0
    text = (theirs.parent / "mine.csv").read_text(encoding="utf-8")
    assert "2019-06-25,A. Saleroom,,45,Coffee pot,420,GBP,hammer" in text
    assert (theirs.parent / "mine.mapping.toml").exists()
    assert run(theirs, "--replace") == 0
    assert "as in mine.mapping.toml" in capsys.readouterr().out


def test_what_is_there_already_comes_in_once(
    theirs: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(theirs, "--yes") == 0
    assert run(theirs) == 2
    assert "--add or --replace" in capsys.readouterr().err
    theirs.write_text(GOOD + "26/06/2019;A. Saleroom;46;Tray;£90\n", encoding="utf-8")
    assert run(theirs, "--add") == 0
    out = capsys.readouterr().out
    assert "1 row was there already" in out
    assert "2 rows in" in out
    assert run(theirs, "--add", "--replace") == 2


def test_refused_rows_are_told_and_kept(theirs: Path, capsys: pytest.CaptureFixture[str]) -> None:
    theirs.write_text(GOOD + "25/06/2199;A. Saleroom;46;Tray;£90\n", encoding="utf-8")
    assert run(theirs, "--yes") == 2
    seen = capsys.readouterr()
    assert seen.err.startswith(
        "planish: theirs.csv, row 3, column Sale date: 2199-06-25 lies after"
    )
    rejects = (theirs.parent / "mine.rejects.csv").read_text(encoding="utf-8-sig")
    assert "25/06/2199;A. Saleroom" in rejects or "25/06/2199,A. Saleroom" in rejects


def test_fifty_copies_are_told(theirs: Path, capsys: pytest.CaptureFixture[str]) -> None:
    theirs.write_text(GOOD + GOOD.splitlines()[1].join([""] + ["\n"] * 49), encoding="utf-8")
    assert run(theirs, "--yes") == 0
    out = capsys.readouterr().out
    assert "49 rows not counted" in out
    assert "one sale stands 50 times" in " ".join(out.split())


def test_a_broken_file_of_sales_is_not_added_to(
    theirs: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    mine = theirs.parent / "mine.csv"
    mine.write_text("date,venue,price,currency,basis\n2019,A,-1,GBP,hammer\n", encoding="utf-8")
    assert run(theirs, "--yes", "--add") == 2
    assert "mine.csv, row 2, column price" in capsys.readouterr().err
    assert "-1" in mine.read_text(encoding="utf-8")


def paste(folder: Path, text: str, *more: str) -> int:
    path = folder / "notes.txt"
    path.write_text(text, encoding="utf-8")
    return main(["sales", "paste", str(path), *more])


def test_pasted_text_is_shown_and_nothing_is_stored_unconfirmed(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    mine = tmp_path / "mine.csv"
    assert paste(tmp_path, LINE) == 0
    out = capsys.readouterr().out
    assert "price     500" in out
    assert "not understood: gadrooned, rim" in out
    assert paste(tmp_path, LINE, "-o", str(mine)) == 2
    assert "nothing is stored" in capsys.readouterr().err
    assert not mine.exists()
    assert paste(tmp_path, LINE, "-o", str(mine), "--yes") == 0
    assert "2019-06-12,A. Saleroom,,4" in mine.read_text(encoding="utf-8")
    assert paste(tmp_path, LINE, "-o", str(mine), "--yes") == 0
    assert "1 row was there already" in capsys.readouterr().out


def test_what_is_incomplete_is_not_stored(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    mine = tmp_path / "mine.csv"
    assert paste(tmp_path, LINE.replace("hammer", "sold for"), "-o", str(mine), "--yes") == 2
    assert "sale 1, column basis: is empty" in capsys.readouterr().err
    assert not mine.exists()
    said = LINE.replace("hammer", "sold for")
    assert paste(tmp_path, said, "-o", str(mine), "--yes", "--set", "basis=hammer") == 0


def test_pasted_text_as_json_from_a_pipe(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr("sys.stdin", io.TextIOWrapper(io.BytesIO(LINE.encode())))
    assert main(["sales", "paste", "--json"]) == 0
    (draft,) = json.loads(capsys.readouterr().out)
    assert draft["cells"]["lot"] == "4"
    assert draft["unread"] == ["gadrooned", "rim"]


def test_a_pasted_table_is_read(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    text = "| Date | House | Hammer price |\n|---|---|---|\n| 2020-01-02 | A | £300 |\n"
    assert paste(tmp_path, text, "--json") == 0
    (draft,) = json.loads(capsys.readouterr().out)
    assert draft["cells"]["price"] == "300"


@pytest.mark.parametrize("given", ["colour=red", "currency"])
def test_a_wrong_set_is_told(
    given: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert paste(tmp_path, LINE, "--set", given) == 2
    assert "--set" in capsys.readouterr().err


def test_nothing_pasted_is_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert paste(tmp_path, " \n") == 2
    assert "no sale can be read" in capsys.readouterr().err
