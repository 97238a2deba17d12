"""A small case file, and its faults as the lines that a user reads."""

from collections.abc import Callable
from pathlib import Path

import pytest

from planish.case import Case, CaseFaults, load, parse

#: lines 1 to 9 of every text in these tests
SMALL = """\
[case]
number = "7"
title = "Small"
currency = "USD"

[[piece]]
number = 1
title = "Spoon"
form = "spoon"
"""

Faults = Callable[..., list[str]]
Fault = Callable[..., str]


@pytest.fixture
def small() -> str:
    """A case file without faults, of nine lines."""
    return SMALL


@pytest.fixture
def faults() -> Faults:
    """All faults of a text, one line each, without the file's name."""

    def told(text: str, folder: Path | None = None) -> list[str]:
        with pytest.raises(CaseFaults) as caught:
            parse(text, "case.toml", folder)
        return [str(f) for f in caught.value.faults]

    return told


@pytest.fixture
def fault(faults: Faults) -> Fault:
    """The one line of a text with one fault."""

    def told(text: str, folder: Path | None = None) -> str:
        lines = faults(text, folder)
        assert len(lines) == 1, lines
        return lines[0]

    return told


@pytest.fixture(scope="session")
def demo_folder() -> Path:
    """The folder of the demo case in the checkout."""
    return Path(__file__).resolve().parents[2] / "src/planish/case/demo"


@pytest.fixture(scope="session")
def demo_case(demo_folder: Path) -> Case:
    """The demo case, loaded with its photographs."""
    return load(demo_folder / "case.toml")
