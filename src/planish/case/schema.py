"""JSON Schema of the case file, for editors that complete and check TOML."""

import inspect
import re

import msgspec

from planish.case.model import Case

_FIELD = re.compile(r"^([a-z_]+(?:, [a-z_]+)*): (.+)$")


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


def json_schema() -> dict[str, object]:
    """The schema (JSON Schema 2020-12); each field carries its meaning."""
    schema = msgspec.json.schema(Case)
    for table in schema["$defs"].values():
        doc = str(table.get("description", ""))
        meanings = described(doc)
        if "properties" not in table:
            continue
        table["description"] = doc.split("\n", 1)[0]
        for name, field in table["properties"].items():
            meaning = meanings.get(name) or meanings.get(f"{name}s") or ""
            if meaning:
                field["description"] = f"{meaning} {field.get('description', '')}".strip()
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "planish case file",
        **schema,
    }
