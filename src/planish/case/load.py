"""Reading a case file: the whole case, or all of its faults at once."""

import re
import tomllib
from pathlib import Path

import msgspec

from planish.case.check import faults_of, plain
from planish.case.cross import cross_faults
from planish.case.faults import CaseFaults, Fault, Steps, in_words
from planish.case.model import Case
from planish.case.pictures import fault_of as picture_fault
from planish.case.places import Places
from planish.case.quantities import PARSERS

#: a case file is words; ten thousand pieces fit
MOST_BYTES = 5_000_000
FORMAT = 1

_AT = re.compile(r"\s*\(at line (\d+), column (\d+)\)|\s*\(at end of document\)")


def load(path: Path | str, *, photographs: bool = True) -> Case:
    """The case in a TOML file.

    photographs: also look whether the pictures named are there and are pictures.

    Raises:
        CaseFaults: the file cannot be used; holds all faults that were found.
    """
    file = Path(path)
    return parse(_text(file), file.name or str(file), folder=file.parent if photographs else None)


def parse(text: str, name: str = "case file", folder: Path | None = None) -> Case:
    """The case in a TOML text; ``folder`` is where its photographs lie, None to leave them be.

    Raises:
        CaseFaults: the text cannot be used; holds all faults that were found.
    """
    raw = _parsed(text, name)
    version = raw.get("format", FORMAT)
    if isinstance(version, int) and version != FORMAT:
        raise CaseFaults(
            name,
            [
                Fault(
                    where="format",
                    what=f"the file has format {version}, this program knows format {FORMAT}",
                    mend="use the program that wrote it, or a newer one",
                    line=Places(text).line(("format",)),
                )
            ],
        )
    found = faults_of(raw, Case, (), PARSERS)
    found += cross_faults(raw)
    if folder is not None:
        found += _photographs(raw, folder)
    if found:
        places, numbers = Places(text), _numbers(raw)
        raise CaseFaults(
            name,
            [
                Fault(where=in_words(steps, numbers), what=what, mend=mend, line=places.line(steps))
                for steps, what, mend in found
            ],
        )
    try:
        return msgspec.convert(raw, Case)
    except msgspec.ValidationError as fault:  # the walk above missed something: say it all the same
        raise CaseFaults(name, [Fault(where="", what=str(fault), mend="")]) from None


def _text(file: Path) -> str:
    """The file's text, refused before it is parsed where that is no use.

    Raises:
        CaseFaults: no such file, too large, or not UTF-8.
    """

    def refused(what: str, mend: str, line: int | None = None) -> CaseFaults:
        return CaseFaults(
            file.name or str(file), [Fault(where="", what=what, mend=mend, line=line)]
        )

    try:
        if file.is_dir():
            raise refused("this is a folder", "name the case file in it, usually case.toml")
        size = file.stat().st_size
        if size > MOST_BYTES:
            raise refused(
                f"the file has {size / 1e6:.1f} MB, more than {MOST_BYTES // 10**6} MB",
                "a case file holds words only: keep photographs beside it and name them",
            )
        data = file.read_bytes()
    except FileNotFoundError:
        raise refused("no such file", "check the name, or begin one with 'planish new'") from None
    except OSError as fault:
        raise refused(f"cannot be read ({fault.strerror})", "check the file's rights") from None
    if data[:2] in (b"\xff\xfe", b"\xfe\xff"):
        raise refused("the text is UTF-16", "save it as UTF-8")
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as fault:
        line = data.count(b"\n", 0, fault.start) + 1
        raise refused(
            f"byte {data[fault.start]:#04x} is not UTF-8", "save the file as UTF-8", line
        ) from None


def _parsed(text: str, name: str) -> dict[str, object]:
    try:
        raw = plain(tomllib.loads(text))
    except tomllib.TOMLDecodeError as fault:
        message = str(fault)
        at = _AT.search(message)
        line = int(at.group(1)) if at and at.group(1) else None
        if at and line is None:
            line = text.count("\n") + 1
        says = _AT.sub("", message)
        raise CaseFaults(
            name,
            [Fault(where="", what=f"not TOML: {says}", mend=_syntax(text, line, says), line=line)],
        ) from None
    except (RecursionError, ValueError):
        raise CaseFaults(
            name,
            [
                Fault(
                    where="",
                    what="brackets nested too deep, or a number too long to read",
                    mend="a case file needs neither",
                )
            ],
        ) from None
    assert isinstance(raw, dict)  # noqa: S101  # TOML's root is a table
    return raw


def _syntax(text: str, line: int | None, says: str) -> str:
    """A remedy for the commonest slips of syntax."""
    row = text.split("\n")[line - 1] if line else ""
    if "Unterminated" in says:
        return "close the text with the same quotes that open it"
    if "Cannot overwrite" in says or "Cannot declare" in says or "twice" in says:
        return "the same key or table stands twice; repeated tables are written [[piece]]"
    if "“" in row or "”" in row:
        return 'write straight quotes " instead of curly ones'
    if re.match(r"\s*[\w-]+\s*:", row):
        return "write 'key = value' with an equals sign"
    if re.search(r"=\s*\d{4}-\d", row):
        return "there is no such day: dates read 2026-05-14"
    if "=" in row and re.search(r"=\s*[^\s\"'\[{]*[A-Za-z]", row):
        return 'put texts in quotes: key = "..."'
    return 'a line reads: key = "text"'


def _numbers(raw: dict[str, object]) -> list[int | None]:
    """The pieces' own numbers by position, None where they say nothing unique."""
    pieces = raw.get("piece")
    if not isinstance(pieces, list):
        return []
    numbers = [p.get("number") if isinstance(p, dict) else None for p in pieces]
    return [n if isinstance(n, int) and numbers.count(n) == 1 else None for n in numbers]


def _photographs(raw: dict[str, object], folder: Path) -> list[tuple[Steps, str, str]]:
    faults: list[tuple[Steps, str, str]] = []
    pieces = raw.get("piece")
    for i, piece in enumerate(pieces if isinstance(pieces, list) else []):
        rows = piece.get("photograph") if isinstance(piece, dict) else None
        for k, row in enumerate(rows if isinstance(rows, list) else []):
            name = row.get("file") if isinstance(row, dict) else None
            if isinstance(name, str) and name and (fault := picture_fault(folder, name)):
                what = f"photograph '{name}': {fault[0]}"
                faults.append((("piece", i, "photograph", k, "file"), what, fault[1]))
    return faults
