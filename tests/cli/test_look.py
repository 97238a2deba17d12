import json
from pathlib import Path

import pytest

from planish.cli import main
from planish.library import load
from planish.marks.where import forms, where_to_look


def test_the_likeliest_place_comes_first(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["look", "teapot"]) == 0
    out = capsys.readouterr().out.splitlines()
    assert out[0] == "Where to look: teapot"
    assert out[1].startswith("  1. ")


def test_words_lead_to_a_form_and_it_is_said(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["look", "pair", "of", "candlesticks"]) == 0
    assert "looked up as candlestick" in capsys.readouterr().out


def test_without_a_form_all_are_listed(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["look"]) == 0
    out = " ".join(capsys.readouterr().out.split())
    assert all(form in out for form in forms(load()))


def test_an_unknown_form_names_its_neighbour(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["look", "tepot"]) == 2
    err = capsys.readouterr().err
    assert err.startswith(
        "planish: 'tepot': not a form that the library knows; did you mean teapot"
    )
    assert err.endswith("? 'planish look' lists the forms\n")


def test_a_place_known_by_practice_says_so_in_words(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["look", "teapot"]) == 0
    assert "  practice  common practice in the trade" in capsys.readouterr().out


@pytest.mark.parametrize("form", forms(load()))
def test_every_form_finds_itself_and_fits_80_columns(
    form: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["look", form]) == 0
    out = capsys.readouterr().out.splitlines()
    assert "looked up as" not in out[0]
    assert all(len(line) <= 80 for line in out)


def test_the_figure_is_written(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "teapot.svg"
    assert main(["look", "--svg", str(path), "teapot"]) == 0
    assert path.read_text(encoding="utf-8").startswith("<svg")
    assert f"Figure: {path}".replace("\n", "") in capsys.readouterr().out.replace("\n", "")


def test_json_is_complete(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["look", "--json", "pair", "of", "spoons"]) == 0
    found = json.loads(capsys.readouterr().out)
    spots = where_to_look("spoon", load())
    assert found["form"] == "spoon"
    assert [p["place"] for p in found["places"]] == [s.place for s in spots]
    assert [p["caution"] or "" for p in found["places"]] == [s.caution for s in spots]
    assert all(p["pin"]["x"] > 0 and p["sources"] for p in found["places"])
    assert found["on_every_piece"]
    assert found["figure"]["svg"].startswith("<svg")


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (("--svg", "x.svg"), "no form given"),
        (("--json",), "no form given"),
        (("--svg", "x.png", "teapot"), "give a name ending in .svg"),
        (("--svg", "no/such/place.svg", "teapot"), "choose another place"),
    ],
)
def test_a_figure_that_cannot_be_written_is_told_in_one_line(
    arguments: tuple[str, ...],
    says: str,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    monkeypatch.chdir(tmp_path)
    assert main(["look", *arguments]) == 2
    err = capsys.readouterr().err
    assert says in err
    assert err.count("\n") == 1
    assert not list(tmp_path.iterdir())
