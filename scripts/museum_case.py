"""Turn museum records of silver into one case, and the case into a draft report: a trial of the whole.

    python scripts/museum_case.py RECORDS.jsonl -o FOLDER [--ids a,b,...] [--paper letter]

RECORDS.jsonl holds one record a line, with ``id``, ``object``, ``medium``, ``dimensions``,
``weight_g``, ``marks_text_blind`` (the marks without the cataloguer's conclusions) and the curators'
attribution. The marks are read blind; what the curators conclude is printed beside the reading as a
note, so that a person may compare. Nobody engaged anybody, nothing was handled or photographed and
nothing is valued, so the report can only be a draft, and the case says so.

The text stays the museums': it is read when the script runs and written to FOLDER alone. Do not
commit FOLDER.
"""

import argparse
import json
import re
import sys
from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path
from typing import Any

from planish.cli import main as planish

#: ten that differ: London sets of three centuries, Edinburgh, an Irish province, coin silver,
#: sterling with a maker's devices, Moscow, Paris before the Revolution, plated base metal; four
#: with a weight. Chosen by the curators' data before any was read by the program.
DEFAULT_IDS = (
    "chndm:1952-166-98",
    "mfa:61.656a-b",
    "plym:1983.18A+B",
    "nms:H.MEQ 1337",
    "limerick:1986.0076",
    "wint:2004.0066.059",
    "bklyn:1992.209",
    "muscol:11743",
    "mfa:1993.429.1",
    "viccoll:National Wool Museum coffee pot",
)

MADE = "# Made by scripts/museum_case.py: a trial, to be made again and not edited."
NOTICE = "Made from public museum records for testing. No valuation; no photographs."
ASSIGNMENT = {
    "number": "MUSEUM-TRIAL",
    "report_option": "identification",
    "title": "Pieces of silver from public museum records",
    "intended_use": "To test identification by marks: the marks as the museums transcribe them are"
    " read blind, and the readings compared with what the curators conclude. No valuation is asked"
    " for or given.",
    "limiting_conditions": [
        "Made from public museum records for testing.",
        "No piece was seen, handled, weighed or photographed for this case.",
        "No opinion of value is given, and none may be drawn from it.",
        "Museums' records may err.",
        "Transcribed marks seldom tell the style of a letter or the outline of a punch.",
    ],
    "notice": NOTICE,
}
SCOPE = {
    "work": "Each record's marks were read by the program without the curators' conclusions.",
    "research": "The program's own library.",
    "not_done": "No inspection, test, photograph, condition report, provenance research or"
    " valuation.",
}
INSPECTION = {"extent": "None: records only."}

_AXES = {
    "h": "height",
    "height": "height",
    "l": "length",
    "length": "length",
    "w": "width",
    "width": "width",
    "d": "diameter",
    "diam": "diameter",
}
_ORDER = ("first measure", "second measure", "third measure")
_SIZE = r"(?P<size>\d+(?:\.\d+)?(?: \d+/\d+)?)"
_UNIT = r'(?P<unit>mm|cm|in|m|")'
_NAMED = re.compile(rf"(?:(?P<name>[A-Za-z ]+?):? )?{_SIZE}\s*{_UNIT}(?: (?P<after>[A-Z]))?")
_TIMES = re.compile(rf"(?P<sizes>\d[\d.]*(?: x \d[\d.]*){{1,2}}) {_UNIT}")

Record = Mapping[str, Any]


class Unusable(Exception):  # noqa: N818  # says what it is
    """Input that the script cannot use, in one line."""


def records(file: Path) -> dict[str, Record]:
    """The records of a file by their ids.

    Raises:
        Unusable: no such file, or a line is no record.
    """
    found: dict[str, Record] = {}
    try:
        text = file.read_text(encoding="utf-8")
    except (OSError, UnicodeDecodeError) as fault:
        raise Unusable(f"{file}: cannot be read ({fault}); name the file of records") from None
    for number, line in enumerate(text.splitlines(), 1):
        if not line.strip():
            continue
        try:
            row = json.loads(line)
            found[row["id"]] = row
        except (ValueError, TypeError, KeyError):
            raise Unusable(f"{file}: line {number} is no JSON record with an id") from None
    return found


def chosen(found: Mapping[str, Record], ids: str | None) -> list[Record]:
    """The records of a list ``a,b``; some ids hold commas themselves, so the longest fit is taken.

    Raises:
        Unusable: an id is not among the records, or stands twice.
    """
    if ids is None:
        wanted = list(DEFAULT_IDS)
    else:
        wanted, left = [], ids
        while left:
            fits = [i for i in found if left == i or left.startswith(f"{i},")]
            name = max(fits, key=len, default=left.partition(",")[0])
            wanted.append(name)
            left = left[len(name) + 1 :]
    lacking = [i for i in wanted if i not in found]
    if lacking or not wanted or len(set(wanted)) < len(wanted):
        says = f"no record has the id {', '.join(lacking)}" if lacking else "none, or one twice"
        raise Unusable(f"--ids: {says}; give ids of the file, each once")
    return [found[i] for i in wanted]


def case_text(rows: Iterable[Record]) -> str:
    """The case file of these records."""
    lines = [MADE, f"# {NOTICE}", "format = 1", ""]
    lines += [*_table("[case]", ASSIGNMENT), *_table("[case.scope]", SCOPE)]
    lines += _table("[case.inspection]", INSPECTION)
    for number, row in enumerate(rows, 1):
        lines += _piece(number, row)
    return "\n".join(lines)


def _piece(number: int, row: Record) -> list[str]:
    dimensions, unparsed = measured(row.get("dimensions") or "")
    lines = _table(
        "[[piece]]",
        {
            "number": number,
            "title": _begun(row["object"]),
            "form": row["object"],
            "inventory": row["id"],
            # the museums' prose is not copied; sizes that do not parse are kept as they stand
            "description": f"As recorded: {unparsed}." if unparsed else None,
            "materials": _begun(row.get("medium") or "") or None,
            "marks_text": row["marks_text_blind"],
            # an identification: no money is asked for
            "use_metal_value": False,
            "note": _attribution(row),
        },
    )
    lines += [
        *_table(
            "[[piece.provenance]]",
            {
                "says": f"In a public collection: {row['institution']}",
                "grade": "documented",
                "document": row.get("source_repo_or_url_title"),
            },
        )
    ]
    for name, value in dimensions:
        lines += _table("[[piece.dimension]]", {"name": name, "value": value})
    if row.get("weight_g"):
        weight = {
            "gross": f"{row['weight_g']:g} g" if row["weight_g"] < 1e5 else None,
            "note": "Gross as the museum records it; its balance is not known.",
        }
        lines += _table("[piece.weight]", weight)
    return lines


def _begun(text: str) -> str:
    return text[:1].upper() + text[1:]


def _attribution(row: Record) -> str:
    """The curators' conclusion, for a person to compare; no bench reads a note."""
    parts = {
        "maker": row.get("maker"),
        "place": row.get("place") or row.get("country"),
        "date": row.get("date_text"),
    }
    told = "; ".join(f"{what} {says}" for what, says in parts.items() if says) or "nothing stated"
    return f"The curators' attribution, not used in the reading: {told}."


def measured(text: str) -> tuple[list[tuple[str, str]], str]:
    """Dimensions with their names, and the words of the record that were no measure."""
    sizes: list[tuple[str, str]] = []
    rest: list[str] = []
    for part in re.split(r"\s*[;,]\s*", text):
        if times := _TIMES.fullmatch(part):
            values = times["sizes"].split(" x ")
            sizes += [
                (name, f"{value} {_unit(times['unit'])}")
                for name, value in zip(_ORDER, values, strict=False)
            ]
        elif (one := _NAMED.fullmatch(part)) and (value := _length(one["size"], one["unit"])):
            name = one["name"] or one["after"] or "size"
            first, _, more = name.partition(" ")
            axis = _AXES.get(first.casefold(), first)
            sizes.append((f"{axis} of {more}" if more and axis != first else axis, value))
        elif part:
            rest.append(part)
    return sizes, "; ".join(rest)


def _unit(text: str) -> str:
    return "in" if text == '"' else text


def _length(size: str, unit: str) -> str:
    """The length as a case file holds it; empty where a fraction has no meaning."""
    whole, _, fraction = size.partition(" ")
    unit = _unit(unit)
    if not fraction:
        return f"{size} {unit}"
    above, _, below = fraction.partition("/")
    return f"{float(whole) + int(above) / int(below):g} {unit}" if int(below) else ""


def _table(head: str, rows: Mapping[str, object]) -> list[str]:
    return [head, *(f"{k} = {_literal(v)}" for k, v in rows.items() if v is not None), ""]


def _literal(value: object) -> str:
    """A TOML value: JSON's strings, numbers and lists are TOML's too, but for the character DEL."""
    return json.dumps(value, ensure_ascii=False).replace("\x7f", "\\u007f")


def write_case(rows: Sequence[Record], folder: Path) -> Path:
    """Write the case file into a folder, over an earlier one of this script only.

    Raises:
        Unusable: another case is there, or the folder cannot be written.
    """
    file = folder / "case.toml"
    try:
        folder.mkdir(parents=True, exist_ok=True)
        if file.exists() and not file.read_text(encoding="utf-8", errors="replace").startswith(
            MADE
        ):
            raise Unusable(f"{file}: another case is there; name another folder")
        file.write_text(case_text(rows), encoding="utf-8")
    except OSError as fault:
        raise Unusable(f"{folder}: cannot be written ({fault.strerror})") from None
    return file


def main(arguments: Sequence[str] | None = None) -> int:
    """Write the case, then do what ``planish appraise --draft`` does; the exit code is its own."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0] if __doc__ else None)
    parser.add_argument("records", type=Path, metavar="RECORDS.jsonl")
    parser.add_argument("-o", "--output", type=Path, required=True, metavar="FOLDER")
    parser.add_argument("--ids", metavar="a,b,...", help="ids of records; ten are chosen otherwise")
    parser.add_argument("--paper", choices=["a4", "letter"], default="a4")
    asked = parser.parse_args(arguments)
    try:
        case = write_case(chosen(records(asked.records), asked.ids), asked.output)
    except Unusable as fault:
        print(f"museum_case: {fault}", file=sys.stderr)
        return 2
    report = asked.output / "report.pdf"
    return planish(["appraise", str(case), "-o", str(report), "--draft", "--paper", asked.paper])


if __name__ == "__main__":
    raise SystemExit(main())
