import json
from pathlib import Path

import pytest

from planish.cli import main


def answer(capsys: pytest.CaptureFixture[str], *arguments: str) -> dict[str, object]:
    assert main(["read", "--json", *arguments]) == 0
    found = json.loads(capsys.readouterr().out)
    assert isinstance(found, dict)
    return found


def missed(found: dict[str, object]) -> float:
    rows = found["unmarked"]
    assert isinstance(rows, list)
    return float(next(r["probability"] for r in rows if r["key"] == "marked"))


def test_an_unmarked_piece_searched_in_full_reads_otherwise_than_one_hardly_searched(
    capsys: pytest.CaptureFixture[str],
) -> None:
    full = answer(capsys, "--form", "teapot", "--searched", "all")
    hardly = answer(capsys, "--form", "teapot", "--searched", "finial")

    assert missed(full) < 0.2
    assert missed(hardly) > 0.5


def test_the_page_says_what_was_searched_and_where_to_look_next(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert main(["read", "--form", "teapot", "--searched", "underside:nothing"]) == 0
    out = capsys.readouterr().out

    assert out.startswith("No mark found")
    assert "1.  searched, nothing found  underside of the body" in out
    assert "3.  not searched             inside the lid flange" in out
    assert "2. side beside the handle" in out.split("Next look")[1]
    assert all(len(line) <= 80 for line in out.splitlines())


def test_marks_on_a_piece_searched_in_full_read_otherwise(
    capsys: pytest.CaptureFixture[str],
) -> None:
    marks = ("lion passant", "--form", "teapot")
    full = answer(capsys, *marks, "--searched", "underside:found", "--searched", "all")
    part = answer(capsys, *marks, "--searched", "finial")

    assert full["readings"] != part["readings"]
    assert "unmarked" not in full


def test_without_searched_nothing_is_added(capsys: pytest.CaptureFixture[str]) -> None:
    assert "searched" not in answer(capsys, "lion passant", "--form", "teapot")


def test_a_place_may_hold_a_colon(capsys: pytest.CaptureFixture[str]) -> None:
    found = answer(capsys, "--form", "entree dish", "--searched", "handle: screw plate:nothing")

    searched = found["searched"]
    assert isinstance(searched, dict)
    assert [p["state"] for p in searched["places"]].count("searched, nothing found") == 1


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (("--searched", "lid"), "--searched needs a form"),
        (("--searched", "lid", "--form", "spoon warmer"), "not a form that the library knows"),
        (("--searched", "lid:found", "--form", "teapot"), "write the mark down as a MARK"),
        (("--searched", " ", "--form", "teapot"), "no place"),
        (("--searched", "x" * 300, "--form", "teapot"), "longer than 200 characters"),
    ],
)
def test_bad_input_is_one_line(
    arguments: tuple[str, ...], says: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["read", *arguments]) == 2
    err = capsys.readouterr().err
    assert says in err
    assert err.count("\n") == 1


def test_lines_hold_searched_places(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = tmp_path / "lots.jsonl"
    rows = [
        {"id": 1, "description": "", "form": "teapot", "searched": ["all"]},
        {"id": 2, "description": "lion passant", "form": "teapot", "searched": ["1:found"]},
    ]
    file.write_text("\n".join(json.dumps(r) for r in rows), encoding="utf-8")
    assert main(["read", "--lines", str(file)]) == 0
    first, second = (json.loads(line) for line in capsys.readouterr().out.splitlines())
    assert first["id"] == 1
    assert missed(first) < 0.2
    assert "unmarked" not in second


def test_the_next_look_goes_where_nobody_looked(capsys: pytest.CaptureFixture[str]) -> None:
    marks = ("lion passant", "--form", "teapot")
    found = answer(capsys, *marks, "--searched", "1:found", "--searched", "2")

    looks = found["next_look"]
    assert isinstance(looks, list)
    assert looks
    assert all(look["where"][0].startswith("inside the lid flange") for look in looks)
