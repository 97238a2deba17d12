"""What the tests of the report share: the invented report, its pictures, one file set once."""

import importlib.util
import shutil
import subprocess
from collections.abc import Callable
from pathlib import Path
from types import ModuleType

import pytest

from planish.report import Attachment, write_pdf

HERE = Path(__file__).parent
CASE_TOML = b'[case]\nnumber = "2026-014"\n'


@pytest.fixture(scope="session")
def sample() -> ModuleType:
    """The module ``sample.py`` beside this one."""
    spec = importlib.util.spec_from_file_location("planish_report_sample", HERE / "sample.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


@pytest.fixture(scope="session")
def pictures(sample: ModuleType, tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    return sample.photographs(tmp_path_factory.mktemp("pictures"))


@pytest.fixture(scope="session")
def attached() -> tuple[Attachment, ...]:
    return (
        Attachment(
            name="case.toml",
            data=CASE_TOML,
            mime="application/toml",
            description="The case as written",
            relation="source",
        ),
    )


@pytest.fixture(scope="session")
def draft_pdf(
    sample: ModuleType,
    pictures: dict[str, Path],
    attached: tuple[Attachment, ...],
    tmp_path_factory: pytest.TempPathFactory,
) -> Path:
    """The invented report as a draft, set once."""
    out = tmp_path_factory.mktemp("draft") / "report.pdf"
    write_pdf(sample.report(), pictures, out, attached=attached)
    return out


@pytest.fixture(scope="session")
def text_of() -> Callable[[Path], str]:
    """Text of a PDF in one line, by a reader that is not ours."""
    if shutil.which("pdftotext") is None:
        pytest.skip("pdftotext (Debian package poppler-utils) is not installed")

    def read(file: Path, *options: str) -> str:
        done = subprocess.run(
            ["pdftotext", *options, str(file), "-"], capture_output=True, check=True
        )
        return " ".join(done.stdout.decode("utf-8").replace("\u200b", "").split())

    return read
