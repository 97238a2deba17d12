"""JSON Schema of the case file, for editors that complete and check TOML."""

import inspect
import json
import re
from collections.abc import Mapping
from typing import Any

import msgspec

from planish.case.model import Case

_FIELD = re.compile(r"^([a-z_]+(?:, [a-z_]+)*): (.+)$")

# fields of the observation structs that their own descriptions leave to the name
_BY_NAME: Mapping[str, str] = {
    "Mark.case_sure": "False where a writer prints all letters as capitals.",
    "Mark.note": "Anything else about the mark.",
    "Search.place": "The place that was looked at.",
    "Search.found": "Whether marks were found there.",
    "Search.note": "Anything else about the place.",
}


def described(doc: str) -> dict[str, str]:
    r"""Meanings of fields from a docstring with lines ``name: meaning`` or ``one, other: meaning``.

    >>> described("A mark.\n\ntimes: how often\n    struck.\npart, place: where.")
    {'times': 'how often struck.', 'part': 'where.', 'place': 'where.'}
    """
    meanings: dict[str, str] = {}
    open_names: list[str] = []
    for line in inspect.cleandoc(doc).splitlines():
        match = _FIELD.match(line)
        if match:
            open_names = match.group(1).split(", ")
            meanings.update(dict.fromkeys(open_names, match.group(2)))
        elif open_names and line.startswith(" "):
            for name in open_names:
                meanings[name] += f" {line.strip()}"
        else:
            open_names = []
    return meanings


def json_schema() -> dict[str, Any]:
    """The schema (JSON Schema 2020-12); each field carries its meaning."""
    schema = msgspec.json.schema(Case)
    tables: dict[str, dict[str, Any]] = schema["$defs"]
    docs = {name: str(table.get("description", "")) for name, table in tables.items()}
    for name, table in tables.items():
        if docs[name]:
            table["description"] = docs[name].split("\n", 1)[0]
        meanings = described(docs[name])
        for field, form in table.get("properties", {}).items():
            own = meanings.get(field) or _BY_NAME.get(f"{name}.{field}") or _of_target(form, docs)
            form["description"] = f"{own} {form.get('description', '')}".strip()
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "planish case file",
        **schema,
    }


def schema_text() -> str:
    """The schema as the text of a file."""
    return json.dumps(json_schema(), indent=1, ensure_ascii=False) + "\n"


def _of_target(form: Mapping[str, Any], docs: Mapping[str, str]) -> str:
    """First line of what a field's table or word list says of itself."""
    inner = form.get("items", form)
    options = (inner, *inner.get("anyOf", ()))
    names = [o["$ref"].removeprefix("#/$defs/") for o in options if "$ref" in o]
    return docs[names[0]].split("\n", 1)[0] if names else ""
