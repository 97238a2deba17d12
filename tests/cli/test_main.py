import subprocess
import sys

import pytest

from planish import __version__
from planish.cli import main
from planish.cli import main as entry
from planish.cli.errors import BadInput, ExitCode
from planish.cli.main import COMMANDS


def test_without_arguments_the_help_is_shown(capsys: pytest.CaptureFixture[str]) -> None:
    assert main([]) == ExitCode.DONE
    assert "planish look teapot" in capsys.readouterr().out


def test_the_version(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["--version"]) == ExitCode.DONE
    assert capsys.readouterr().out == f"planish {__version__}\n"


@pytest.mark.parametrize("command", COMMANDS)
def test_each_command_has_help_with_an_example(
    command: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main([command, "--help"]) == ExitCode.DONE
    out = capsys.readouterr().out
    assert f"planish {command} " in out.split("Usage:")[1].split("\n", 1)[1]
    assert all(len(line) <= 80 for line in out.splitlines())


SUBCOMMANDS = ("system", "device", "maker", "fineness", "source", "cycle")


@pytest.mark.parametrize(
    "path", [(), *((c,) for c in COMMANDS), *(("library", sub) for sub in SUBCOMMANDS)]
)
def test_examples_in_the_help_stand_one_a_line(
    path: tuple[str, ...], capsys: pytest.CaptureFixture[str]
) -> None:
    assert main([*path, "--help"]) == ExitCode.DONE
    out = capsys.readouterr().out
    assert "\\b" not in out
    lines = [line.strip() for line in out.split("\n\n", 1)[1].splitlines() if "planish " in line]
    examples = [line for line in lines if line.startswith("planish ")]
    assert examples
    assert all(line.count("planish ") == 1 for line in examples)


def test_library_alone_shows_its_help(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["library"]) == ExitCode.DONE
    out, err = capsys.readouterr()
    assert "Usage: planish library" in out
    assert "planish library system Russia\n" in out
    assert err == ""


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (["rea"], "'rea'"),
        (["read", "--frm", "x"], "--form"),
        (["read", "--lines", "no/such/file"], "no/such/file"),
        (["read"], "no marks given"),
    ],
)
def test_bad_input_is_one_line_on_stderr_and_exit_2(
    arguments: list[str], says: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(arguments) == ExitCode.BAD_INPUT
    out, err = capsys.readouterr()
    assert out == ""
    assert err.startswith("planish: ")
    assert says in err
    assert err.count("\n") == 1


def test_a_fault_of_the_program_has_a_code_of_its_own(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def broken() -> None:
        raise RuntimeError("broken")

    monkeypatch.setattr("planish.library.load", broken)

    assert entry(["look", "teapot"]) == ExitCode.OWN_FAULT
    assert "RuntimeError: broken" in capsys.readouterr().err


def test_a_message_holds_no_control_characters() -> None:
    assert str(BadInput("a\x1b[2Jb\nc", "here")) == "planish: here: a\\x1b[2Jb c"


def test_a_reader_that_goes_away_is_no_fault() -> None:
    command = f"{sys.executable} -m planish library device --all | head -n 1"

    done = subprocess.run(  # noqa: S602  # a pipe is what is tested
        command, shell=True, capture_output=True, text=True, check=False
    )

    assert done.stderr == ""
    assert done.stdout.count("\n") == 1


def test_the_help_imports_nothing_slow() -> None:
    code = (
        "import sys; from planish.cli import main; main(['--version']); "
        "print(sorted({'typst', 'PIL', 'planish.marks', 'planish.library'} & set(sys.modules)))"
    )

    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)

    assert done.stdout.splitlines()[-1] == "[]"
