"""docs/library.md explains every table and every column, and nothing that is not there."""

import re
from pathlib import Path

import msgspec
import pytest

from planish.library.check import SIGN_KINDS
from planish.library.loader import TABLES
from planish.library.rows import Confidence, Row

PAGE = (Path(__file__).parents[2] / "docs" / "library.md").read_text(encoding="utf-8")
COMMON = {field.name for field in msgspec.structs.fields(Row)}


def section(heading: str) -> str:
    found = re.search(rf"^### {heading}\n(.*?)(?=^##)", PAGE, re.MULTILINE | re.DOTALL)
    assert found, f"no heading for {heading}"
    return found[1]


@pytest.mark.parametrize("table", TABLES)
def test_every_column_is_explained(table: str) -> None:
    text = section(table)

    for field in msgspec.structs.fields(TABLES[table]):
        if field.name not in COMMON or table == "sources":
            assert f"`{field.name}`" in text, field.name


def test_every_heading_is_a_table() -> None:
    assert set(re.findall(r"^### (\w+)", PAGE, re.MULTILINE)) == set(TABLES)


def test_common_columns_and_confidence_are_explained() -> None:
    for word in (*COMMON, *Confidence):
        assert f"`{word}`" in PAGE


def test_every_kind_of_sign_is_explained() -> None:
    for kind in SIGN_KINDS:
        assert f"`{kind}`" in section("signs")
