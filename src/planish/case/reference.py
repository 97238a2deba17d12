"""Every key of the case file as tables of Markdown, from the structs themselves."""

from collections.abc import Mapping
from typing import Any

from planish.case.schema import json_schema

_PREFIX = "#/$defs/"


def reference() -> str:
    """One headed table of keys for each table of the file, in the file's order."""
    tables: dict[str, dict[str, Any]] = json_schema()["$defs"]
    parts: list[str] = []
    waiting = [("", next(iter(tables)), "Top of the file")]
    seen: set[str] = set()
    while waiting:
        path, name, title = waiting.pop(0)
        if name in seen:
            continue
        seen.add(name)
        below: list[tuple[str, str, str]] = []
        rows = []
        for key, form in tables[name]["properties"].items():
            kind, target, many = _kind(form, tables)
            if target:
                here = f"{path}.{key}" if path else key
                header = f"`[[{here}]]`" if many else f"`[{here}]`"
                below.append((here, target, header))
                kind = f"table {header}"
            needed = "yes" if key in tables[name].get("required", ()) else ""
            rows.append(f"| `{key}` | {kind} | {needed} | {_meaning(form)} |")
        parts += [
            f"### {title}",
            "",
            tables[name]["description"].replace("``", "`"),
            "",
            "| key | holds | needed | meaning |",
            "| --- | --- | --- | --- |",
            *rows,
            "",
        ]
        waiting = below + waiting
    return "\n".join(parts)


def _meaning(form: Mapping[str, Any]) -> str:
    return str(form["description"]).replace("``", "`").replace("|", "\\|")


def _kind(
    form: Mapping[str, Any], tables: Mapping[str, Mapping[str, Any]]
) -> tuple[str, str | None, bool]:
    """What a key holds in words; the table it opens; whether that table repeats."""
    if "anyOf" in form:
        form = next(option for option in form["anyOf"] if option.get("type") != "null")
    many = form.get("type") == "array"
    inner = form["items"] if many else form
    if "$ref" in inner:
        name = inner["$ref"].removeprefix(_PREFIX)
        if "enum" in tables[name]:
            return ", ".join(f"`{word}`" for word in tables[name]["enum"]), None, many
        return "", name, many
    words = {
        "string": "text",
        "integer": "whole number",
        "number": "number",
        "boolean": "true or false",
        "object": "table of numbers",
    }
    held = words[str(inner["type"])]
    if inner.get("examples"):
        held += f" like `{inner['examples'][0]}`"
    return (f"list of {held}s" if many else held), None, many
