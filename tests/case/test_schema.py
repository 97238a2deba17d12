from pathlib import Path

import msgspec

from planish.case import json_schema
from planish.case.kinds import Table
from planish.case.schema import schema_text

COMMITTED = Path(__file__).resolve().parents[2] / "docs/case.schema.json"


def test_the_committed_schema_is_current() -> None:
    # renew: python -c "from planish.case.schema import schema_text as t; print(t(), end='')" \
    #     > docs/case.schema.json
    assert COMMITTED.read_text(encoding="utf-8") == schema_text()


def test_every_field_of_every_table_says_what_it_means() -> None:
    silent = [
        f"{name}.{field}"
        for name, table in json_schema()["$defs"].items()
        for field, of in table.get("properties", {}).items()
        if not of.get("description")
    ]
    assert silent == []


def test_the_schema_refuses_unknown_keys_and_knows_the_words() -> None:
    tables = json_schema()["$defs"]
    assert tables["Piece"]["additionalProperties"] is False
    assert "retail replacement value" in tables["TypeOfValue"]["enum"]
    assert tables["Piece"]["required"] == ["number", "title"]


def test_every_table_of_the_model_is_in_the_schema() -> None:
    names = {name.rsplit(".", 1)[-1] for name in json_schema()["$defs"]}
    assert {kind.__name__ for kind in _below(Table)} <= names


def _below(kind: type[msgspec.Struct]) -> set[type[msgspec.Struct]]:
    return {k for sub in kind.__subclasses__() for k in (sub, *_below(sub))}
