"""The demo casebook: an invented case with drawn pictures, shipped with the package."""

from importlib.resources import as_file, files
from importlib.resources.abc import Traversable
from pathlib import Path


def folder() -> Traversable:
    """The folder with ``case.toml`` and ``photographs/``."""
    return files("planish.case.demo")


def copy_to(target: Path) -> Path:
    """Write the demo case into ``target`` and return the path of its case file.

    Raises:
        FileExistsError: there is a case file already.
    """
    file = target / "case.toml"
    if file.exists():
        raise FileExistsError(f"{file} is there already")
    pictures = target / "photographs"
    pictures.mkdir(parents=True, exist_ok=True)
    with as_file(folder()) as source:
        for picture in sorted((source / "photographs").glob("*.jpg")):
            (pictures / picture.name).write_bytes(picture.read_bytes())
        file.write_bytes((source / "case.toml").read_bytes())
    return file
