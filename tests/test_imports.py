"""The floors of the house, and what each room may import from outside.

import-linter holds the floors between rooms (pyproject.toml). This module holds the rest: which
packages a room may import, that a pocket room imports nothing but the standard library and
msgspec, that only the store speaks SQL and only the web speaks HTTP.
"""

import ast
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parents[1] / "src" / "planish"

#: room -> packages from outside that it may import; a room not named here may import none
OUTSIDE = {
    "quantity": {"msgspec"},
    "evidence": {"msgspec"},
    "library": {"msgspec"},
    "marks": {"msgspec"},
    "metal": {"msgspec"},
    "stones": {"msgspec"},
    "worth": {"msgspec", "numpy"},
    "case": {"msgspec"},
    "photo": {"msgspec", "PIL", "numpy", "cv2"},
    "store": {"msgspec", "sqlalchemy", "alembic", "psycopg"},
    "report": {"msgspec", "typst", "PIL"},
    "intake": {"msgspec", "openpyxl"},
    "web": {"msgspec", "starlette", "uvicorn", "jinja2", "itsdangerous", "multipart"},
    "batch": {"msgspec"},
    "cli": {"msgspec", "click"},
}

#: rooms that also run in a browser on a phone with no signal
POCKET = ("quantity", "evidence", "library", "marks", "metal", "stones", "worth")

#: modules of the standard library that belong to one room
OWNED = {
    "sqlite3": {"store"},
    "http": {"web"},
    "socket": {"web"},
    "socketserver": {"web"},
    "urllib.request": set(),
    "ssl": {"web"},
    "smtplib": set(),
    "ftplib": set(),
    "telnetlib": set(),
    "xmlrpc": set(),
}

#: of the standard library, what a browser's Python lacks
NOT_IN_POCKET = {"subprocess", "multiprocessing", "threading", "concurrent", "ctypes", "tkinter"}


def rooms() -> list[str]:
    return sorted(p.name for p in PACKAGE.iterdir() if p.is_dir() and any(p.rglob("*.py")))


def imports(file: Path) -> Iterator[tuple[int, str]]:
    """Every absolute module name imported anywhere in a file, in functions too."""
    for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            yield from ((node.lineno, alias.name) for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and node.level == 0 and node.module:
            yield node.lineno, node.module


def found(room: str) -> Iterator[tuple[str, str]]:
    for file in sorted((PACKAGE / room).rglob("*.py")):
        for line, module in imports(file):
            yield f"{file.relative_to(PACKAGE)}:{line}", module


def test_every_room_is_ruled() -> None:
    assert set(rooms()) <= set(OUTSIDE)


@pytest.mark.parametrize("room", rooms())
def test_a_room_imports_only_what_it_may_from_outside(room: str) -> None:
    wrong = [
        f"{at}: {module}"
        for at, module in found(room)
        if (top := module.split(".")[0]) not in sys.stdlib_module_names
        and top not in OUTSIDE[room] | {"planish"}
    ]

    assert wrong == []


@pytest.mark.parametrize("room", rooms())
def test_sql_is_the_stores_and_http_the_webs(room: str) -> None:
    wrong = [
        f"{at}: {module}"
        for at, module in found(room)
        for owned, owners in OWNED.items()
        if (module == owned or module.startswith(f"{owned}.")) and room not in owners
    ]

    assert wrong == []


@pytest.mark.parametrize("room", [r for r in rooms() if r in POCKET])
def test_a_pocket_room_needs_nothing_that_a_browser_lacks(room: str) -> None:
    wrong = [
        f"{at}: {module}" for at, module in found(room) if module.split(".")[0] in NOT_IN_POCKET
    ]

    assert wrong == []


@pytest.mark.parametrize("room", rooms())
def test_imports_are_absolute(room: str) -> None:
    relative = [
        f"{file.relative_to(PACKAGE)}:{node.lineno}"
        for file in sorted((PACKAGE / room).rglob("*.py"))
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8")))
        if isinstance(node, ast.ImportFrom) and node.level
    ]

    assert relative == []


def test_modules_stay_small() -> None:
    # about 400 lines is the aim; what passes 500 has two ideas in it
    long = {
        str(file.relative_to(PACKAGE)): lines
        for file in PACKAGE.rglob("*.py")
        if (lines := len(file.read_text(encoding="utf-8").splitlines())) > 500
    }

    assert long == {}
