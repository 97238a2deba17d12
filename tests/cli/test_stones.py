"""The pages and the JSON of planish stones."""

import json
import re
from pathlib import Path
from typing import Any

import pytest

from planish.cli import main
from planish.cli.errors import ExitCode
from planish.cli.terminal import WIDTH

PAGE = Path(__file__).parents[2] / "docs" / "stones.md"


def run(capsys: pytest.CaptureFixture[str], *arguments: str) -> str:
    assert main(["stones", *arguments]) == ExitCode.DONE
    shown = capsys.readouterr()
    assert shown.err == ""
    return shown.out


def answer(capsys: pytest.CaptureFixture[str], *arguments: str) -> dict[str, Any]:
    found = json.loads(run(capsys, *arguments, "--json"))
    assert isinstance(found, dict)
    return found


PAGES = [
    ("weigh", "round brilliant", "6.5x6.4x3.9mm", "--material", "diamond", "--count", "2"),
    ("weigh", "heart", "6x6x4.0", "--gravity", "4.0±0.05", "--girdle", "very-thick"),
    ("weigh", "cabochon", "14 x 10 x ? mm", "--material", "ivory", "--closed-back"),
    ("identify",),
    ("identify", "sg=2.76±0.05", "colour=blue", "lustre=waxy"),
    ("identify", "colour=white", "hotpoint=none", "--claimed", "amber", "--mounted"),
    ("identify", "sg=9.5"),
    ("about", "ivory"),
    ("about", "bog", "oak"),
    ("law", "ivory"),
    ("law", "silver teapot"),
    ("list",),
    (),
]


@pytest.mark.parametrize("arguments", PAGES)
def test_every_page_fits_the_terminal(
    capsys: pytest.CaptureFixture[str], arguments: tuple[str, ...]
) -> None:
    lines = run(capsys, *arguments).splitlines()

    assert lines
    assert [line for line in lines if len(line) > WIDTH] == []


def test_weigh_says_the_verdict_first(capsys: pytest.CaptureFixture[str]) -> None:
    # 0.0061 x 6.5² x 3.95 = 1.018 ct (common practice, tested on 53,831 stones)
    page = run(capsys, "weigh", "round brilliant", "6.50x6.50x3.95mm", "--material", "diamond")

    assert page.startswith("1.02 ct (0.204 g): round brilliant, diamond\n")
    assert "Estimated from measurements, not weighed." in page
    assert "DIAMONDS-DATA" in page


def test_weigh_in_json_is_complete(capsys: pytest.CaptureFixture[str]) -> None:
    found = answer(capsys, "weigh", "heart", "6x6x4.0mm", "--material", "amethyst", "--count", "3")

    assert found["low"] < found["carats"] < found["high"]
    assert found["grams"] == pytest.approx(found["carats"] / 5, abs=1e-6)
    assert found["count"] == 3
    assert found["rivals"][0]["factor"] == "heart.21"
    assert sum(p["half_width"] ** 2 for p in found["parts"]) == pytest.approx(
        found["half_width"] ** 2
    )
    assert all(source["key"] for source in found["sources"])


def test_identify_in_json_multiplies_out(capsys: pytest.CaptureFixture[str]) -> None:
    found = answer(capsys, "identify", "sg=2.76±0.05", "colour=blue", "--setting", "southwest")
    weights = {
        h["key"]: h["prior"]
        * 10 ** (sum(line["likelihood_db"][h["key"]] for line in found["ledger"]) / 10)
        for h in found["hypotheses"]
    }
    total = sum(weights.values())

    assert all(
        h["probability"] == pytest.approx(weights[h["key"]] / total) for h in found["hypotheses"]
    )
    assert found["next_tests"]
    assert found["limits"]
    assert {"harm", "caution", "outcomes", "withheld"} <= found["next_tests"][0].keys()


def test_a_dangerous_test_is_withheld_on_the_page(capsys: pytest.CaptureFixture[str]) -> None:
    page = run(capsys, "identify", "colour=white", "feel=warm")

    assert "Do not make, smell at a hot point" in page


def test_a_contradicted_claim_stands_on_the_page(capsys: pytest.CaptureFixture[str]) -> None:
    page = run(capsys, "identify", "--claimed", "amber", "sg=1.28±0.02", "colour=honey")

    assert "Contradiction: said to be amber" in page


def test_law_defers_to_local_law(capsys: pytest.CaptureFixture[str]) -> None:
    page = " ".join(run(capsys, "law", "teapot, ivory insulators", "--place", "GB").split())

    assert "Ivory Act 2018" in page
    assert "ivory volume under 10 %?" in page
    assert "check the law of each place" in page
    assert "no legal advice" in page


def test_no_rule_is_no_permission(capsys: pytest.CaptureFixture[str]) -> None:
    page = run(capsys, "law", "silver", "teapot")

    assert page.startswith("No rule on record")
    assert "proves nothing" in page
    assert answer(capsys, "law", "silver", "teapot")["law"] == []


def test_about_tells_look_alikes_and_law(capsys: pytest.CaptureFixture[str]) -> None:
    found = answer(capsys, "about", "tortoise", "shell")

    assert {look["other"] for look in found["look_alikes"]} >= {"horn", "celluloid"}
    assert {rule["id"] for rule in found["law"]} >= {"cites-turtle"}


@pytest.mark.parametrize(
    "arguments",
    [
        ("weigh", "blob", "6mm", "--material", "jet"),
        ("weigh", "pear", "9x6", "--material", "jet"),
        ("weigh", "pear", "9.0x6.0x4.0"),
        ("weigh", "pear", "9.0x6.0x4.0", "--gravity", "heavy"),
        ("weigh", "pear", "9.0x6.0x4.0", "--gravity", "3±-1"),
        ("weigh", "pear", "9.0x6.0x4.0", "--gravity", "inf"),
        ("weigh", "pear", "9.0x6.0x4.0", "--material", "jet", "--count", "0"),
        ("weigh", "pear", "9.0x6.0x4.0", "--material", "jet", "--plus-minus", "nan"),
        ("identify", "blue"),
        ("identify", "colour=plaid"),
        ("identify", "colour=blue", "colour=red"),
        ("identify", "--setting", "martian"),
        ("identify", "--claimed", "moonrock"),
        ("about", "moonrock"),
        ("law", "ivory", "--place", "ZZ"),
        ("list", "everything"),
    ],
)
def test_bad_input_is_one_line(
    capsys: pytest.CaptureFixture[str], arguments: tuple[str, ...]
) -> None:
    assert main(["stones", *arguments]) == ExitCode.BAD_INPUT
    shown = capsys.readouterr()

    assert shown.out == ""
    assert shown.err.count("\n") == 1
    assert shown.err.startswith("planish: ")


def test_the_page_of_stones_tells_code_that_runs() -> None:
    (code,) = re.findall(r"```python\n(.*?)```", PAGE.read_text(encoding="utf-8"), re.DOTALL)

    exec(compile(code, "docs/stones.md", "exec"), {})  # noqa: S102  # our own page
