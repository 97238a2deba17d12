import pytest

from planish.cli import main
from planish.library import load
from planish.marks.where import forms


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
