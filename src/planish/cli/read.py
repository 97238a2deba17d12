"""``planish read``: marks in words in, a reading out."""

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, BinaryIO

import click
import msgspec

from planish.cli.errors import Asked, BadInput
from planish.cli.terminal import say

if TYPE_CHECKING:
    from planish.evidence import Finding
    from planish.library.rows import Maker
    from planish.marks import Check, NumberFinding, Observed, Reader, ReadingFinding
    from planish.marks.searched import Searched

#: how many faults of one register are printed
_MOST_FAULTS = 50


class _Line(msgspec.Struct, frozen=True):
    """One line of a file of descriptions."""

    id: str | int
    description: str
    form: str | None = None
    searched: tuple[str, ...] = ()


@click.command(short_help="Read the marks of one piece, or of a file of pieces.")
@click.argument("marks", nargs=-1, metavar="MARK...")
@click.option("--description", metavar="TEXT", help="The marks in free words, as in a catalogue.")
@click.option("--form", metavar="FORM", help="What the piece is, such as teapot or tablespoon.")
@click.option(
    "--searched",
    multiple=True,
    metavar="PLACE[:nothing|:found]",
    help="A place looked at (words, a number of 'planish look FORM', or all), and what came of it; "
    "may be given again.",
)
@click.option("--json", "as_json", is_flag=True, help="Print the whole finding as JSON.")
@click.option(
    "--lines",
    type=click.File("rb"),
    metavar="FILE",
    help='Read a file of pieces, one {"id", "description", "form"} a line; - is standard input.',
)
@click.option(
    "--register",
    "registers",
    type=click.Path(exists=True, dir_okay=False, path_type=Path),
    multiple=True,
    metavar="FILE",
    help="Makers of your own, a CSV file that joins the shipped register; may be given again.",
)
@click.option(
    "--fail-on",
    type=click.Choice(["contradiction", "plated", "unknown"]),
    multiple=True,
    help="End with exit code 1 if the finding is this; may be given again.",
)
def read(
    marks: tuple[str, ...],
    description: str | None,
    form: str | None,
    lines: BinaryIO | None,
    fail_on: tuple[str, ...],
    *,
    registers: tuple[Path, ...],
    searched: tuple[str, ...],
    as_json: bool,
) -> None:
    """Read marks: fineness, place, years, maker; why, and what to look for next.

    Each MARK is one mark as seen: letters as struck ("W&D", with . for a lost
    letter: "ST[.]RL[--]"), or the picture in words ("lion passant"). Give what
    is there; leave out what you think that it means.

    \b
    planish read "lion passant" anchor "script letter k" "W&D in two ovals"
    planish read --form teapot --description "marked EPNS and a crown"
    planish read --json 800 "crescent and crown"
    planish read --lines catalogue.jsonl > readings.jsonl
    planish read --register mine.csv "lion passant" anchor k "A·S"
    planish read --form teapot --searched underside --searched "lid:nothing"
    """  # noqa: D301  # click reads the backspace
    if lines is not None:
        if marks or description or form or searched or fail_on:
            raise BadInput(
                "--lines stands alone",
                "among the arguments",
                "put the description, form and places searched of each piece into the file",
            )
        _read_lines(lines, _reader(registers))
        return
    if not marks and not (description or "").strip() and not searched:
        raise BadInput(
            "no marks given",
            "after 'planish read'",
            'give them one by one or with --description, as in: planish read "lion passant" k',
        )
    reader = _reader(registers)
    read = _read_one(marks, description, form, searched, reader)
    if as_json:
        say(msgspec.json.format(msgspec.json.encode(_plain(read, reader)), indent=2).decode())
    else:
        say(_page(read, form, reader))
    finding = read.finding
    _fail_on(finding, fail_on)


def observed_of(
    marks: tuple[str, ...], description: str | None, form: str | None = None
) -> "Observed":
    """Marks given one by one and a description, joined to one observation.

    Raises:
        BadInput: a text is empty, too long or holds control characters.
    """
    from planish.marks import Mark, Observed, describe
    from planish.marks.describe import DescriptionError

    texts = [*marks, *([description] if description else [])]
    parts: list[Observed] = []
    for n, text in enumerate(texts, 1):
        where = "--description" if n > len(marks) else f"mark {n}"
        if not text.strip():
            raise BadInput("an empty text is no mark", where, "leave it out")
        if n <= len(marks) and text.strip().isdigit():
            # a mark of figures alone is what stands there, no claim of a date
            parts.append(Observed(marks=(Mark(text=text.strip()),)))
            continue
        try:
            parts.append(describe(text, form))
        except DescriptionError as fault:
            raise BadInput(f"{where}: {fault}") from None
    if len(parts) == 1 and description:
        return parts[0]
    return Observed(
        marks=tuple(m for p in parts for m in p.marks),
        searched=tuple(s for p in parts for s in p.searched),
        claims=tuple(c for p in parts for c in p.claims),
        unread=tuple(u for p in parts for u in p.unread),
        **({"complete": parts[-1].complete} if description else {}),
    )


def _reader(registers: tuple[Path, ...]) -> "Reader":
    """The engine over the shipped library and the makers of the registers.

    Raises:
        BadInput: a register cannot be read; each fault in its line.
    """
    from planish.marks import Reader, shipped_reader
    from planish.marks.own_register import RegisterFaults, parse_register

    if not registers:
        return shipped_reader()
    makers: list[Maker] = []
    faults: list[str] = []
    for path in registers:
        try:
            makers += parse_register(path.read_text(encoding="utf-8-sig"), path.name)
        except UnicodeDecodeError as fault:
            faults.append(f"{path.name}, byte {fault.start + 1}: no UTF-8 text; save it as UTF-8")
        except RegisterFaults as found:
            faults += [f"{found.name}, {f}" for f in found.faults[:_MOST_FAULTS]]
            if len(found.faults) > _MOST_FAULTS:
                faults.append(f"{found.name}, {len(found.faults) - _MOST_FAULTS} more faults")
    if faults:
        raise BadInput.several(faults)
    return Reader(more_makers=makers)


class _Read(msgspec.Struct, frozen=True):
    """A reading, with what was searched and what finding nothing means, where that is told."""

    finding: "ReadingFinding"
    searched: "Searched | None" = None
    unmarked: "Finding | None" = None


def _read_one(
    marks: tuple[str, ...],
    description: str | None,
    form: str | None,
    said: tuple[str, ...],
    reader: "Reader",
) -> _Read:
    from planish.cli.searching import searched_of
    from planish.marks.bounds import ObservedError, check_observed
    from planish.marks.searched import unmarked

    observed = observed_of(marks, description, form)
    searched = searched_of(said, form, reader.library, marked=bool(observed.marks))
    if searched:
        observed = msgspec.structs.replace(
            observed,
            searched=(*observed.searched, *searched.searches()),
            complete=searched.complete,
        )
    try:
        check_observed(observed, form)
    except ObservedError as fault:
        raise BadInput(str(fault)) from None
    silent = searched if searched and not observed.marks else None
    finding = reader.read(observed, form)
    if searched:
        finding = _not_there_again(finding, searched)
    return _Read(finding, searched, unmarked(silent) if silent else None)


def _not_there_again(finding: "ReadingFinding", searched: "Searched") -> "ReadingFinding":
    """The next looks with the places not searched yet."""
    rest = [p for p in searched.places if p.found is None][:3]
    where = tuple(p.place + (f" ({p.how})" if p.how else "") for p in rest)
    looks = tuple(msgspec.structs.replace(look, where=where) for look in finding.next_look)
    return msgspec.structs.replace(finding, next_look=looks)


def _page(read: _Read, form: str | None, reader: "Reader") -> list[str]:
    from planish.cli.reading_page import page
    from planish.cli.searching import searched_lines, unmarked_page

    if read.searched and read.unmarked:
        return unmarked_page(read.searched, read.unmarked)
    lines = page(read.finding, form, reader.library, *_beside(read.finding, reader))
    return lines + (searched_lines(read.searched) if read.searched else [])


def _beside(
    finding: "ReadingFinding", reader: "Reader"
) -> tuple[tuple["Check", ...], tuple["NumberFinding", ...]]:
    """The mechanical checks of a reading, and what its numbers may mean."""
    from planish.marks import checks, classify

    country = finding.best.country if finding.best else None
    return (
        checks(finding, reader.library, reader.plan),
        classify(finding.observed.marks, reader.library, country),
    )


def _plain(read: _Read, reader: "Reader") -> dict[str, object]:
    from planish.cli.searching import searched_plain
    from planish.marks.plain import as_plain

    return {
        **as_plain(read.finding, *_beside(read.finding, reader)),
        **searched_plain(read.searched, read.unmarked),
    }


def _read_lines(file: BinaryIO, reader: "Reader") -> None:
    """Answer each good line in order; then name the lines that could not be read.

    Raises:
        BadInput: some lines could not be read; the good ones are answered all the same.
    """
    faults: list[str] = []
    for number, line in _numbered(file):
        try:
            asked = msgspec.json.decode(line, type=_Line)
            read = _read_one((), asked.description, asked.form, asked.searched, reader)
            found = _plain(read, reader)
        except msgspec.DecodeError as fault:
            faults.append(
                f"not a piece ({fault}), {file.name} line {number}, write one "
                '{"id": ..., "description": "...", "form": "..."} a line'
            )
        except BadInput as fault:
            faults += [f"{says}, {file.name} line {number}" for says in fault.lines]
        else:
            click.echo(msgspec.json.encode({"id": asked.id, **found}))
    if faults:
        raise BadInput.several(faults)


def _numbered(file: BinaryIO) -> Iterator[tuple[int, bytes]]:
    """Lines that hold something, with their numbers from 1."""
    for number, line in enumerate(file, 1):
        if line.strip():
            yield number, line


def _fail_on(finding: "ReadingFinding", fail_on: tuple[str, ...]) -> None:
    kind = finding.best.kind if finding.best else "unknown"
    if "contradiction" in fail_on and finding.contradictions:
        raise Asked("the marks contradict each other, or a claim: see above")
    if "plated" in fail_on and kind in {"plated", "base"}:
        raise Asked(f"the likeliest reading is {kind}, not solid silver")
    if "unknown" in fail_on and kind == "unknown":
        raise Asked("the marks could not be read")
