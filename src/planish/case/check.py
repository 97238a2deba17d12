"""Conversion of raw tables to structs that gathers every fault instead of stopping at the first."""

import datetime as dt
import enum
import math
import types
from collections.abc import Callable, Iterator, Mapping
from functools import cache
from typing import Annotated, Union, get_args, get_origin, get_type_hints

import msgspec

from planish.case.faults import Steps, did_you_mean, nearest, quoted
from planish.case.kinds import EARLIEST, LATEST
from planish.quantity import QuantityError

#: (steps, what, how to mend)
Raw = tuple[Steps, str, str]
#: reads a quantity's text, or raises ValueError with a sentence
Parser = Callable[[str], object]

_NAMES = {
    bool: "true or false",
    int: "a whole number",
    float: "a number",
    str: "a text",
    list: "a list",
    dict: "a table",
}


#: kind of quantity -> what it is, and a bare number written as one
_WITH_UNIT: Mapping[str, tuple[str, str]] = {
    "mass": ("a mass with its unit", "{} g"),
    "length": ("a length with its unit", "{} cm"),
    "money": ("an amount with its currency", "USD {}"),
}


def faults_of(
    value: object, kind: object, steps: Steps, parsers: Mapping[str, Parser]
) -> list[Raw]:
    """All faults of ``value`` as a ``kind``: unknown keys, missing keys, wrong types and values."""
    return list(_walk(value, kind, steps, parsers))


def plain(value: object) -> object:
    """The raw value with TOML's own dates written as ISO text, as the structs hold them."""
    if isinstance(value, dict):
        return {k: plain(v) for k, v in value.items()}
    if isinstance(value, list):
        return [plain(v) for v in value]
    if isinstance(value, dt.date | dt.time):
        return value.isoformat()
    return value


def _walk(
    value: object, kind: object, steps: Steps, parsers: Mapping[str, Parser]
) -> Iterator[Raw]:
    base, metas = _bare(kind)
    if isinstance(base, type) and issubclass(base, msgspec.Struct):
        yield from _struct(value, base, steps, parsers)
    elif get_origin(base) is tuple:
        if not isinstance(value, list):
            item = get_args(base)[0]
            bare, _ = _bare(item)
            table = isinstance(bare, type) and issubclass(bare, msgspec.Struct)
            yield (
                steps,
                f"{_described(value)} stands where a list is expected",
                f"write [[{_header(steps)}]]" if table else 'write ["...", "..."]',
            )
            return
        for n, entry in enumerate(value):
            yield from _walk(entry, get_args(base)[0], (*steps, n), parsers)
    elif get_origin(base) is Mapping:
        yield from _mapping(value, steps)
    else:
        yield from _leaf(value, base, metas, steps, parsers)


def _bare(kind: object) -> tuple[object, list[msgspec.Meta]]:
    """The type without ``| None`` and ``Annotated``, and its constraints."""
    metas: list[msgspec.Meta] = []
    while True:
        origin = get_origin(kind)
        if origin is Annotated:
            kind, *extra = get_args(kind)
            metas += [m for m in extra if isinstance(m, msgspec.Meta)]
        elif origin in (Union, types.UnionType):
            kind = next(a for a in get_args(kind) if a is not type(None))
        else:
            return kind, metas


def _header(steps: Steps) -> str:
    return ".".join(s for s in steps if isinstance(s, str))


def _described(value: object) -> str:
    for kind, name in _NAMES.items():
        if type(value) is kind:
            return name
    return "something else"


def _struct(
    value: object, kind: type[msgspec.Struct], steps: Steps, parsers: Mapping[str, Parser]
) -> Iterator[Raw]:
    if not isinstance(value, dict):
        table = f"[[{_header(steps[:-1])}]]" if steps and isinstance(steps[-1], int) else ""
        yield (
            steps,
            f"{_described(value)} stands where a table is expected",
            f"write {table or f'[{_header(steps)}]'} with its keys below",
        )
        return
    hints, fields = _shape(kind)
    meant: set[str | None] = set()
    for key, entry in value.items():
        if key in fields:
            yield from _walk(entry, hints[fields[key].name], (*steps, key), parsers)
        else:
            name = _meant(key, fields, value)
            meant.add(name)
            known = f"known here: {', '.join(fields)}"
            yield ((*steps, key), "unknown key", f"did you mean '{name}'?" if name else known)
    for name, field in fields.items():
        # a key that is only mistyped is told once
        if field.required and name not in value and name not in meant:
            inner, _ = _bare(hints[field.name])
            is_table = isinstance(inner, type) and issubclass(inner, msgspec.Struct)
            mend = f"add a table [{name}]" if is_table else f"add '{name} = ...'"
            yield (steps, f"'{name}' is missing", mend)


@cache
def _shape(
    kind: type[msgspec.Struct],
) -> tuple[Mapping[str, object], Mapping[str, msgspec.structs.FieldInfo]]:
    """Types by attribute, and fields by the name that stands in the file."""
    return (
        get_type_hints(kind, include_extras=True),
        {f.encode_name: f for f in msgspec.structs.fields(kind)},
    )


def _meant(key: str, fields: Mapping[str, object], present: Mapping[str, object]) -> str | None:
    """The known key that an unknown one is likeliest a slip for."""
    # the attribute's plural is the likeliest slip for a table written in the singular
    for name in fields:
        if key in (f"{name}s", f"{name}es"):
            return name
    return nearest(key, [n for n in fields if n not in present]) or nearest(key, list(fields))


def _mapping(value: object, steps: Steps) -> Iterator[Raw]:
    if not isinstance(value, dict):
        yield (
            steps,
            f"{_described(value)} stands where a table is expected",
            "write name = number",
        )
        return
    for key, entry in value.items():
        if isinstance(entry, bool) or not isinstance(entry, int | float):
            yield (
                (*steps, key),
                f"{quoted(entry)} is not a number",
                "write a number without unit or quotes",
            )
        elif not math.isfinite(entry):
            yield ((*steps, key), f"{entry} is not a finite number", "write a plain number")


def _leaf(
    value: object,
    kind: object,
    metas: list[msgspec.Meta],
    steps: Steps,
    parsers: Mapping[str, Parser],
) -> Iterator[Raw]:
    name = next((str((m.extra or {})["kind"]) for m in metas if "kind" in (m.extra or {})), "")
    if isinstance(value, float) and not math.isfinite(value):
        yield (steps, f"{value} is not a finite number", "write a plain number")
        return
    if (
        name in _BOUNDED
        and isinstance(value, int | float)
        and not isinstance(value, bool)
        and (says := _BOUNDED[name](value))
    ):
        yield (steps, *says)
        return
    asked: object = kind
    for meta in metas:
        asked = Annotated[asked, meta]
    try:
        msgspec.convert(value, type=asked)
    except msgspec.ValidationError:
        yield (steps, *_reworded(value, kind, metas, name))
        return
    if name in parsers and isinstance(value, str):
        try:
            parsers[name](value)
        except QuantityError as fault:
            yield (steps, f"{quoted(value)}: {fault.fault}", fault.remedy)
        except ValueError as fault:
            example = next((str(e) for m in metas for e in (m.examples or ())), "")
            yield (steps, str(fault), f"write it like '{example}'")


def _reworded(
    value: object, kind: object, metas: list[msgspec.Meta], name: str = ""
) -> tuple[str, str]:
    if isinstance(kind, type) and issubclass(kind, enum.Enum):
        words = [str(member.value) for member in kind]
        return (
            f"{quoted(value)} is not a word known here",
            did_you_mean(value, words)
            if isinstance(value, str) and did_you_mean(value, words)
            else f"choose one of: {', '.join(words)}",
        )
    wanted = _NAMES.get(kind, "something else") if isinstance(kind, type) else "something else"
    if kind is str and isinstance(value, bool | int | float):
        written = quoted(value)
        if name in _WITH_UNIT and not isinstance(value, bool):
            return (
                f"{written} is a bare number where {_WITH_UNIT[name][0]} is expected",
                f'write it like "{_WITH_UNIT[name][1].format(written)}"',
            )
        return f"{written} stands where a text is expected", f'write it as "{written}"'
    if kind is str and value == "":
        return "the text is empty", "fill it in or take the key out"
    if kind is str and isinstance(value, str):
        long = next((m.max_length for m in metas if m.max_length is not None), None)
        if long is not None and len(value) > long:
            return f"the text has {len(value)} characters", f"keep it below {long}"
        example = next((str(e) for m in metas for e in (m.examples or ())), "")
        return f"{quoted(value)} is not of the form expected", f"write it like '{example}'"
    if kind in (int, float) and isinstance(value, str):
        return f"{quoted(value)} is a text where {wanted} is expected", "take off quotes and unit"
    if kind is bool:
        return f"{quoted(value)} is neither true nor false", "write true or false, without quotes"
    if kind in (int, float) and isinstance(value, int | float) and not isinstance(value, bool):
        low = next((b for m in metas for b in (m.ge, m.gt) if b is not None), None)
        high = next((m.le for m in metas if m.le is not None), None)
        if kind is int and isinstance(value, float):
            return f"{quoted(value)} stands where a whole number is expected", "take off decimals"
        return f"{quoted(value)} is out of bounds", f"write a number from {low} to {high}"
    return f"{_described(value)} stands where {wanted} is expected", f"write {wanted} there"


def _year(value: float) -> tuple[str, str] | None:
    if value % 1:
        return f"{quoted(value)} is not a year", "write four figures, like 1884"
    if EARLIEST <= value <= LATEST:
        return None
    figures = str(value) if abs(value) < 10**9 else ""
    cut = figures[:4] if len(figures) == 5 else ""
    guess = f"did you mean {cut}?" if cut and EARLIEST <= int(cut) <= LATEST else ""
    return (
        f"{quoted(value)} is not a year between {EARLIEST} and {LATEST}",
        guess or "write four figures, like 1884",
    )


def _fineness(value: float, low: float = 100.0) -> tuple[str, str] | None:
    if value == 0 or low <= value <= 1000:
        return None
    for factor in (0.1, 0.01, 10, 1000):
        if 500 <= value * factor <= 1000:
            return (
                f"fineness {quoted(value)} is not in parts per thousand",
                f"did you mean {value * factor:g}?",
            )
    return (
        f"fineness {quoted(value)} is outside 0 to 1000 parts per thousand",
        "write it like 925",
    )


def _content(value: float) -> tuple[str, str] | None:
    """Silver found by a test: small amounts are possible, shares of one are a slip."""
    return None if 1 < value <= 1000 or value == 0 else _fineness(value)


_BOUNDED: Mapping[str, Callable[[float], tuple[str, str] | None]] = {
    "year": _year,
    "fineness": _fineness,
    "content": _content,
}
