"""What is shipped is whole, and setting up fails with one clear line where it must."""

import hashlib
import os
import shutil
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel, built from the checkout and unpacked."""
    pytest.importorskip("hatchling", reason="the builder comes with the extra 'build'")
    place = tmp_path_factory.mktemp("wheel")
    subprocess.run(
        [sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", str(place)],
        cwd=ROOT,
        check=True,
        capture_output=True,
    )
    (built,) = place.glob("*.whl")
    with zipfile.ZipFile(built) as archive:
        archive.extractall(place / "unpacked")
    return place / "unpacked"


def test_the_wheel_holds_every_file_of_the_package(wheel: Path) -> None:
    source = ROOT / "src" / "planish"
    shipped = {
        str(file.relative_to(source))
        for file in source.rglob("*")
        if file.is_file() and "__pycache__" not in file.parts
    }
    held = {
        str(file.relative_to(wheel / "planish"))
        for file in (wheel / "planish").rglob("*")
        if file.is_file()
    }

    assert shipped == held
    assert {"py.typed", "library/data/spots.csv", "case/demo/case.toml"} <= held


def test_the_wheel_runs_without_the_checkout(wheel: Path, tmp_path: Path) -> None:
    done = subprocess.run(
        [sys.executable, "-m", "planish", "look", "teapot"],
        cwd=tmp_path,
        env={**os.environ, "PYTHONPATH": str(wheel)},
        capture_output=True,
        text=True,
        check=True,
    )

    assert done.stdout.startswith("Where to look: teapot")


def test_the_licence_travels_with_the_wheel(wheel: Path) -> None:
    assert list(wheel.glob("planish-*.dist-info/licenses/LICENSE"))


def test_the_shipped_installer_is_the_one_that_was_published() -> None:
    digest, name = (ROOT / "tools" / "SHA256SUMS").read_text().split()

    assert hashlib.sha256((ROOT / "tools" / name).read_bytes()).hexdigest() == digest


def set_up(folder: Path, **environment: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        ["sh", str(folder / "scripts" / "demo.sh")],
        env={"PATH": os.environ["PATH"], "PLANISH_APT": "no", **environment},
        capture_output=True,
        text=True,
        check=False,
        timeout=60,
    )


def test_a_machine_without_a_fitting_python_is_told_so() -> None:
    done = set_up(ROOT, PLANISH_PYTHON="false")

    assert done.returncode == 2
    assert done.stderr.startswith("planish: no Python 3.11, 3.12 or 3.13 found")
    assert done.stderr.count("\n") == 1


def test_a_damaged_installer_is_not_run(tmp_path: Path) -> None:
    for name in ("scripts", "tools"):
        shutil.copytree(ROOT / name, tmp_path / name)
    for name in ("pyproject.toml", "constraints-run.txt"):
        shutil.copy(ROOT / name, tmp_path / name)
    (installer,) = (tmp_path / "tools").glob("pip-*.whl")
    installer.write_bytes(installer.read_bytes()[:-1])

    done = set_up(tmp_path, PLANISH_PYTHON=sys.executable)

    assert done.returncode == 2
    assert "is damaged" in done.stderr
    assert not list((tmp_path / ".venv" / "lib").rglob("click"))
