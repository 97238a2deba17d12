"""``planish read --register``: makers of the user's own join the reading."""

import json
from pathlib import Path

import pytest

from planish.cli import main

MARKS = ["lion passant", "leopard's head crowned", "T·W"]
GOOD = "name,marks,country,year_from,year_to\nThomas Wainscot,T·W,GB,1771,1799\n"


def written(folder: Path, name: str, text: str | bytes) -> str:
    path = folder / name
    path.write_bytes(text if isinstance(text, bytes) else text.encode())
    return str(path)


def makers(out: str) -> set[str]:
    return {m["name"] for r in json.loads(out)["readings"] for m in r["makers"]}


def test_own_makers_are_found(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    own = written(tmp_path, "mine.csv", GOOD)

    assert main(["read", "--json", *MARKS]) == 0
    before = makers(capsys.readouterr().out)
    assert main(["read", "--json", "--register", own, *MARKS]) == 0

    assert "Thomas Wainscot" in makers(capsys.readouterr().out) - before


def test_two_registers_and_lines(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    own = written(tmp_path, "mine.csv", GOOD)
    more = written(tmp_path, "more.csv", "name;marks;country\nPerdita Quill;PQ;GB\n")
    lines = written(
        tmp_path, "lots.jsonl",
        '{"id": 1, "description": "lion passant, crowned leopard\'s head, T·W"}\n'
        '{"id": 2, "description": "lion passant, crowned leopard\'s head, maker PQ"}\n',
    )  # fmt: skip

    assert main(["read", "--lines", lines, "--register", own, "--register", more]) == 0
    one, two = capsys.readouterr().out.splitlines()

    assert "Thomas Wainscot" in makers(one)
    assert "Perdita Quill" in makers(two)


def test_faults_of_every_register_are_told_each_in_a_line(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    bad = written(tmp_path, "bad.csv", "name,marks,country\nA,,GB\nB,BC,England\n")
    worse = written(tmp_path, "worse.csv", b"name,marks,country\nM\xfcller,M,DE\n")

    assert main(["read", "--register", bad, "--register", worse, *MARKS]) == 2
    out, err = capsys.readouterr()

    assert out == ""
    assert [line.split(":")[1].strip() for line in err.splitlines()] == [
        "bad.csv, line 2, column marks",
        "bad.csv, line 3, column country",
        "worse.csv, byte 21",
    ]


def test_a_flood_of_faults_is_cut(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    bad = written(tmp_path, "bad.csv", "name,marks,country\n" + "A,,GB\n" * 200)

    assert main(["read", "--register", bad, *MARKS]) == 2

    lines = capsys.readouterr().err.splitlines()
    assert len(lines) == 51
    assert "150 more faults" in lines[-1]


def test_a_register_that_is_not_there(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["read", "--register", "nowhere.csv", *MARKS]) == 2
    assert "nowhere.csv" in capsys.readouterr().err


def test_a_form_without_end_is_refused_in_a_line(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    piece = json.dumps({"id": 1, "description": "anchor", "form": "teapot " * 1_000_000})
    lines = written(tmp_path, "lots.jsonl", piece + '\n{"id": 2, "description": "anchor"}\n')

    assert main(["read", "--lines", lines]) == 2
    out, err = capsys.readouterr()

    assert [json.loads(line)["id"] for line in out.splitlines()] == [2]
    assert err.count("\n") == 1
    assert len(err) < 300
    assert "form: longer than 1000 characters" in err
