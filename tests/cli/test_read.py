import json
from pathlib import Path

import pytest

from planish.cli import main
from planish.cli.read import observed_of

FULL_SET = ["lion passant", "anchor", "black letter k", "queen's head"]


def answered(capsys: pytest.CaptureFixture[str]) -> list[dict[str, object]]:
    return [json.loads(line) for line in capsys.readouterr().out.splitlines()]


# Birmingham: anchor; black letter k for 1884; sovereign's head until 1890. The handbooks agree:
# Chaffers, "Hall Marks on Gold and Silver Plate" (1922), table of Birmingham.
def test_a_full_set_is_read(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["read", "--json", *FULL_SET]) == 0
    found = json.loads(capsys.readouterr().out)
    best = found["readings"][0]
    assert (best["country"], best["office"], best["kind"]) == ("GB", "Birmingham", "solid")
    assert best["year_from"] <= 1884 <= best["year_to"]
    assert best["fineness"] == 925


def test_the_page_fits_80_columns_and_begins_with_the_verdict(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert main(["read", "--form", "teapot", *FULL_SET]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert lines[0].startswith("Birmingham, 1884")
    assert all(len(line) <= 80 for line in lines)
    assert "\x1b" not in "".join(lines)


def test_the_order_of_marks_does_not_matter(capsys: pytest.CaptureFixture[str]) -> None:
    main(["read", "--json", *FULL_SET])
    forwards = json.loads(capsys.readouterr().out)["readings"]
    main(["read", "--json", *reversed(FULL_SET)])

    assert json.loads(capsys.readouterr().out)["readings"] == forwards


def test_marks_and_a_description_are_joined() -> None:
    found = observed_of(("anchor",), "lion passant, crested")

    assert [m.device for m in found.marks][:2] == ["anchor", "lion passant"]


@pytest.mark.parametrize("marks", [[""], ["   "], ["anchor", ""], ["x" * 30_000], ["a\x00b"]])
def test_a_text_that_can_be_no_mark_is_refused(
    marks: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["read", *marks]) == 2
    out, err = capsys.readouterr()
    assert out == ""
    assert f"mark {len(marks)}" in err
    assert err.count("\n") == 1


def test_lines_are_answered_one_by_one_in_order(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file = tmp_path / "pieces.jsonl"
    pieces = [
        {"id": "b", "description": "EPNS, a crown", "form": "teapot"},
        {"id": 1, "description": "sterling"},
        {"id": "a", "description": "", "form": None},
    ]
    file.write_text("\n\n".join(json.dumps(p) for p in pieces), encoding="utf-8")

    assert main(["read", "--lines", str(file)]) == 0
    found = answered(capsys)
    assert [f["id"] for f in found] == ["b", 1, "a"]
    assert all({"readings", "ledger", "next_look", "contradictions"} <= set(f) for f in found)


def test_lines_give_what_json_gives(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = tmp_path / "pieces.jsonl"
    file.write_text('{"id": 1, "description": "EPNS and a crown", "form": "teapot"}')
    main(["read", "--lines", str(file)])
    by_line = answered(capsys)[0]
    main(["read", "--json", "--description", "EPNS and a crown", "--form", "teapot"])

    assert by_line == {"id": 1, **json.loads(capsys.readouterr().out)}


def test_good_lines_are_answered_and_bad_ones_named_by_number(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file = tmp_path / "pieces.jsonl"
    file.write_bytes(
        b'{"id": 1, "description": "sterling"}\n'
        b"not json\n"
        b'{"id": 2}\n'
        b"\xff\xfe\n"
        b'{"id": 3, "description": "EPNS"}\n'
    )

    assert main(["read", "--lines", str(file)]) == 2
    out, err = capsys.readouterr()
    assert [json.loads(line)["id"] for line in out.splitlines()] == [1, 3]
    assert [line.split(" line ")[1][0] for line in err.splitlines()] == ["2", "3", "4"]


def test_lines_stand_alone(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "x").touch()

    assert main(["read", "--lines", str(tmp_path / "x"), "anchor"]) == 2
    assert "--lines stands alone" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("fail_on", "marks", "code"),
    [
        ("plated", ["EPNS", "crown"], 1),
        ("plated", FULL_SET, 0),
        ("unknown", ["zzz"], 1),
        ("unknown", FULL_SET, 0),
        ("contradiction", FULL_SET, 0),
    ],
)
def test_a_finding_asked_for_ends_with_1(fail_on: str, marks: list[str], code: int) -> None:
    assert main(["read", "--fail-on", fail_on, *marks]) == code


def test_a_claim_that_the_marks_rule_out_can_be_failed_on() -> None:
    marks = [f"--description={', '.join(FULL_SET)}; Birmingham 1984"]

    assert main(["read", "--fail-on", "contradiction", *marks]) == 1
