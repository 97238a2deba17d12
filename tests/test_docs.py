"""The documents say what the program does: a command, an option or a word left out fails here."""

import re
import shlex
from pathlib import Path

import click
import pytest

from planish.cli import main
from planish.cli.errors import ExitCode
from planish.cli.main import planish

ROOT = Path(__file__).parents[1]
DOCS = sorted((ROOT / "docs").glob("*.md"))
PAGES = [*DOCS, ROOT / "README.md", ROOT / "CHANGELOG.md"]
CLI = (ROOT / "docs" / "cli.md").read_text(encoding="utf-8")


def commands() -> dict[str, click.Command]:
    """Every command and subcommand by its path of names."""
    found: dict[str, click.Command] = {}
    context = click.Context(planish)
    for name in planish.list_commands(context):
        command = planish.get_command(context, name)
        assert command is not None
        found[name] = command
        if isinstance(command, click.Group):
            found |= {f"{name} {sub}": c for sub, c in command.commands.items()}
    return found


def section(name: str) -> str:
    """The part of cli.md about a command."""
    match = re.search(rf"^## planish {name}\n(.*?)(?=^## |\Z)", CLI, re.DOTALL | re.MULTILINE)
    assert match, f"docs/cli.md has no section '## planish {name}'"
    return match.group(1)


def examples() -> list[tuple[str, str]]:
    """Every line ``$ planish ...`` of the documents, with its page."""
    return [
        (page.name, line.removeprefix("$ "))
        for page in PAGES
        for line in page.read_text(encoding="utf-8").splitlines()
        if line.startswith("$ planish ")
    ]


@pytest.mark.parametrize("path", commands())
def test_every_command_and_option_is_documented(path: str) -> None:
    top, *sub = path.split()
    text = section(top)
    assert all(f"`{s}`" in text for s in sub)
    for parameter in commands()[path].params:
        if isinstance(parameter, click.Option):
            for name in parameter.opts:
                assert re.search(rf"(?<![\w-]){name}(?![\w-])", text), f"{path}: {name}"
            if isinstance(parameter.type, click.Choice):
                assert all(f"{c}" in text for c in parameter.type.choices), f"{path}: {parameter}"


def test_no_command_is_documented_that_does_not_exist() -> None:
    told = set(re.findall(r"^## planish (\w+)$", CLI, re.MULTILINE))

    assert told == {name for name in commands() if " " not in name}


def test_every_option_documented_exists() -> None:
    real = {o for c in commands().values() for p in c.params for o in p.opts if o[0] == "-"}
    real |= {"-h", "--help", "-V", "--version"}

    assert set(re.findall(r"(?<![\w-])--?[a-z][\w-]*", CLI)) <= real


@pytest.mark.parametrize("code", ExitCode)
def test_every_exit_code_is_documented(code: ExitCode) -> None:
    assert f"| {code.value} | {code.name} |" in CLI


@pytest.mark.parametrize(("page", "line"), examples())
def test_every_example_runs(
    page: str,
    line: str,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    arguments = shlex.split(line)[1:]
    monkeypatch.chdir(tmp_path)
    if arguments[0] in {"appraise", "demo"}:
        # the report takes seconds and has tests of its own: here only the arguments are checked
        monkeypatch.setattr(commands()[arguments[0]], "callback", lambda **_: None)
        if arguments[0] == "appraise":
            (tmp_path / arguments[1]).parent.mkdir(parents=True)
            (tmp_path / arguments[1]).touch()

    assert main(arguments) == ExitCode.DONE, f"{page}: {line}"
    assert capsys.readouterr().err == ""


@pytest.mark.parametrize("page", PAGES, ids=lambda p: p.name)
def test_links_lead_to_files_that_are_there(page: Path) -> None:
    text = page.read_text(encoding="utf-8")
    for target in re.findall(r"\]\(([^)#]+)(?:#[^)]*)?\)", text):
        if not target.startswith("https://"):
            assert (page.parent / target).exists(), f"{page.name}: {target}"


def test_every_page_is_reached_from_the_index() -> None:
    index = (ROOT / "docs" / "index.md").read_text(encoding="utf-8")

    assert [p.name for p in DOCS if p.name != "index.md" and f"({p.name})" not in index] == []


def test_the_readme_names_two_commands_and_their_scripts_exist() -> None:
    text = (ROOT / "README.md").read_text(encoding="utf-8")
    named = re.findall(r"^sh (scripts/\S+)$", text, re.MULTILINE)

    assert named == ["scripts/demo.sh", "scripts/test.sh"]
    assert all((ROOT / name).is_file() for name in named)


def test_ci_runs_the_readmes_test_command_and_nothing_else() -> None:
    lines = (ROOT / ".ci" / "run").read_text(encoding="utf-8").splitlines()
    does = [s for line in lines if (s := line.strip()) and not s.startswith("#")]

    assert does == ["set -euo pipefail", 'cd "$(dirname "$0")/.."', "exec sh scripts/test.sh"]


def test_the_lock_of_the_program_is_part_of_the_whole_lock() -> None:
    whole = (ROOT / "constraints.txt").read_text(encoding="utf-8")
    run = (ROOT / "constraints-run.txt").read_text(encoding="utf-8")

    assert [line for line in run.splitlines() if "==" in line and line not in whole] == []
    assert "https://" not in whole
    assert "--index-url" not in whole
    assert all(
        block.count("--hash=sha256:") for block in re.split(r"^(?=\S)", run, flags=re.MULTILINE)[1:]
    )


def test_words_of_the_glossary_are_the_words_of_the_code() -> None:
    from planish.marks import observation  # noqa: PLC0415

    glossary = (ROOT / "docs" / "glossary.md").read_text(encoding="utf-8")
    for style in observation.Style:
        assert style.value in glossary
    for technique in observation.Technique:
        assert technique.value in glossary
