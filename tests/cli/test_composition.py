"""``planish test`` on the command line."""

import json

import pytest

from planish.cli import main
from planish.cli.errors import ExitCode


def test_the_page_says_verdict_contradiction_next_test_and_caution(
    capsys: pytest.CaptureFixture[str],
) -> None:
    code = main(["test", "--marks", "925", "xrf=92.3±0.8@rim", "density=8.7±0.1"])
    out = capsys.readouterr().out
    assert code == ExitCode.DONE
    assert "plated" in out.splitlines()[0]
    for heading in ("Kinds", "Contradictions", "Why ", "Next test", "Mind"):
        assert f"\n{heading}" in out
    assert all(len(line) <= 80 for line in out.splitlines())


def test_json_is_complete(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["test", "magnet=none", "density=10.3±0.1", "--json"]) == ExitCode.DONE
    told = json.loads(capsys.readouterr().out)
    text = json.dumps(told)
    assert sum(h["probability"] for h in told["compositions"]) == pytest.approx(1.0, abs=1e-3)
    for word in ("ledger", "contradictions", "next", "sources"):
        assert word in text


def test_without_a_test_the_tests_are_listed(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["test"]) == ExitCode.DONE
    out = capsys.readouterr().out
    for name in ("magnet", "dichromate", "xrf", "conductivity"):
        assert name in out


def test_failing_on_a_contradiction_is_asked_for() -> None:
    wrong = ["test", "--marks", "925", "density=8.7±0.05"]
    assert main(wrong) == ExitCode.DONE
    assert main([*wrong, "--fail-on", "contradiction"]) == ExitCode.FINDING


@pytest.mark.parametrize("text", ["magnet=purple", "xrf=200", "sniff=good", "magnet"])
def test_bad_input_is_one_line(text: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["test", text]) == ExitCode.BAD_INPUT
    assert len(capsys.readouterr().err.strip().splitlines()) <= 3
