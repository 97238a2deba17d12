"""The typed loader: reads ``data/*.csv`` once and keeps them in memory, nothing more."""

import csv
import io
from collections.abc import Iterator
from functools import cache
from importlib.resources import files
from typing import TypeVar

import msgspec

from planish.library import rows, stone_rows

R = TypeVar("R", bound=msgspec.Struct)


class LibraryError(Exception):
    """A data file has a row that cannot be read: says file, line and what is wrong."""

    def __init__(self, file: str, line: int, fault: str) -> None:
        self.file, self.line, self.fault = file, line, fault
        super().__init__(f"{file}, line {line}: {fault}")


def read_rows(text: str, file: str, kind: type[R]) -> Iterator[R]:
    """Typed rows of one CSV text; lines that start with ``#`` are comments.

    Raises:
        LibraryError: a column is missing, unknown or of the wrong type.
    """
    lines = [(n, s) for n, s in enumerate(io.StringIO(text), 1) if not s.startswith("#")]
    reader = csv.DictReader(s for _, s in lines)
    for record in reader:
        filled = {k: v for k, v in record.items() if v not in ("", None)}
        try:
            yield msgspec.convert(filled, kind, strict=False)
        except msgspec.ValidationError as fault:
            # quoted cells may hold line ends, so the reader's own count is mapped back
            at = lines[min(reader.line_num, len(lines)) - 1][0]
            raise LibraryError(file, at, str(fault)) from None


class Library(msgspec.Struct, frozen=True, kw_only=True):
    """All shipped facts."""

    sources: tuple[rows.Source, ...]
    devices: tuple[rows.Device, ...]
    offices: tuple[rows.Office, ...]
    systems: tuple[rows.System, ...]
    roles: tuple[rows.Role, ...]
    signs: tuple[rows.Sign, ...]
    cycles: tuple[rows.Cycle, ...]
    weights: tuple[rows.Weight, ...]
    words: tuple[rows.Word, ...]
    makers: tuple[rows.Maker, ...]
    spots: tuple[rows.Spot, ...]
    forms: tuple[rows.Form, ...]
    rules: tuple[rows.Rule, ...]
    traits: tuple[rows.Trait, ...]
    designs: tuple[rows.Design, ...]
    layouts: tuple[rows.Layout, ...]
    placements: tuple[rows.Placement, ...]
    metals: tuple[rows.Metal, ...]
    materials: tuple[stone_rows.Material, ...]
    cuts: tuple[stone_rows.Cut, ...]
    factors: tuple[stone_rows.Factor, ...]
    gemtests: tuple[stone_rows.GemTest, ...]
    clues: tuple[stone_rows.Clue, ...]
    lookalikes: tuple[stone_rows.LookAlike, ...]
    protections: tuple[stone_rows.Protection, ...]
    tests: tuple[rows.MetalTest, ...]
    acids: tuple[rows.AcidColour, ...]
    depths: tuple[rows.EscapeDepth, ...]
    responses: tuple[rows.Response, ...]
    compositions: tuple[rows.Composition, ...]


#: table name -> row type; a file ``data/NAME.csv`` or ``data/NAME-*.csv`` feeds each table
TABLES: dict[str, type[msgspec.Struct]] = {
    "sources": rows.Source,
    "devices": rows.Device,
    "offices": rows.Office,
    "systems": rows.System,
    "roles": rows.Role,
    "signs": rows.Sign,
    "cycles": rows.Cycle,
    "weights": rows.Weight,
    "words": rows.Word,
    "makers": rows.Maker,
    "spots": rows.Spot,
    "forms": rows.Form,
    "rules": rows.Rule,
    "traits": rows.Trait,
    "designs": rows.Design,
    "layouts": rows.Layout,
    "placements": rows.Placement,
    "metals": rows.Metal,
    **stone_rows.TABLES,
    "tests": rows.MetalTest,
    "acids": rows.AcidColour,
    "depths": rows.EscapeDepth,
    "responses": rows.Response,
    "compositions": rows.Composition,
}


@cache
def load() -> Library:
    """The shipped library.

    Raises:
        LibraryError: a shipped file is damaged.
    """
    folder = files("planish.library") / "data"
    names = sorted(entry.name for entry in folder.iterdir() if entry.name.endswith(".csv"))
    tables: dict[str, tuple[msgspec.Struct, ...]] = {}
    for table, kind in TABLES.items():
        found: list[msgspec.Struct] = []
        for name in names:
            if name == f"{table}.csv" or name.startswith(f"{table}-"):
                text = (folder / name).read_text(encoding="utf-8")
                found.extend(read_rows(text, name, kind))
        tables[table] = tuple(found)
    return Library(**tables)  # type: ignore[arg-type]  # each table holds its own row type
