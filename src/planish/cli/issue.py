"""The whole job, put together: case file, benches, report. Used by ``appraise`` and ``demo``."""

from collections.abc import Sequence
from pathlib import Path

from msgspec.structs import replace

from planish.case import grouped
from planish.case.complete import Gap
from planish.case.demo import copy_to, folder
from planish.case.faults import CaseFaults
from planish.case.load import load
from planish.case.model import Case
from planish.case.work import work
from planish.case.worked import PieceWork, Worked
from planish.cli.errors import BadInput
from planish.cli.terminal import heading, percent, prose, table, tint
from planish.evidence import SETTLED
from planish.report import ReportError, write_report

_PDF = b"%PDF-"


def issue(
    case_file: Path,
    out: Path,
    paper: str,
    *,
    draft: bool = False,
    fonts: Sequence[Path] = (),
) -> list[str]:
    """Work through a case, write its report, and return what to tell the person.

    draft: write the report though something is missing; it is marked a draft on every page.

    Raises:
        BadInput: the case cannot be used or is not complete, or the report cannot be written.
    """
    try:
        case = load(case_file)
    except CaseFaults as faults:
        raise BadInput.several(str(faults).splitlines()) from None
    _spare_what_is_there(out, case_file, case)
    worked = work(case)
    if worked.gaps and not draft:
        raise BadInput.several(_lacking(case_file.name, worked.gaps))
    try:
        write_report(
            worked,
            case_file.parent,
            out,
            paper=paper,
            toml=case_file.read_bytes(),
            extra_fonts=fonts,
        )
    except ReportError as fault:
        raise BadInput(str(fault)) from None
    return told(worked, out)


def _lacking(name: str, found: Sequence[Gap]) -> list[str]:
    """How much is missing and what may be done, then what it is, alike pieces together."""
    count = "1 required element is" if len(found) == 1 else f"{len(found)} required elements are"
    first = f"no report was issued, {count} missing; give them, or print a draft with --draft"
    return [
        f"{name}: {first}",
        *(f"{name}: {in_line(where, gap)}" for where, gap in grouped.gaps(found)),
    ]


def in_line(where: str, gap: Gap) -> str:
    """A gap in one line, after the pieces that have it."""
    return (f"{where}: " if where else "") + str(replace(gap, piece=None))


def _spare_what_is_there(out: Path, case_file: Path, case: Case) -> None:
    """Refuse to put the report in the place of something that is no report.

    Raises:
        BadInput: ``out`` is the case file or a photograph, by any name or link, or another file
            that is no PDF.
    """
    own = {case_file: "the case file"}
    for piece in case.pieces:
        own |= {case_file.parent / p.file: f"photograph '{p.file}'" for p in piece.photographs}
    for file, what in own.items():
        if _same_file(out, file):
            raise BadInput(
                f"this is {what}, which the report would overwrite",
                f"report '{out}'",
                "name another file with -o, like report.pdf",
            )
    try:
        with out.open("rb") as stream:
            head = stream.read(len(_PDF)) if out.is_file() else b""
    except OSError:
        return  # not there, or not to be read: writing it says what is wrong
    if head and head != _PDF:
        raise BadInput(
            "there is a file of that name already, and it is no PDF",
            f"report '{out}'",
            "name another file with -o",
        )


def _same_file(one: Path, other: Path) -> bool:
    """Whether two paths lead to the same file, through links of either kind."""
    try:
        return one.samefile(other)
    except OSError:  # one of them is not there
        return one.resolve() == other.resolve()


def told(worked: Worked, out: Path) -> list[str]:
    """What was written and concluded, and what to look at again."""
    what = "Draft" if worked.draft else "Report"
    total = worked.totals.value
    verdict = f"{what} written: {out}"
    lines = [tint(verdict, "head")]
    if total:
        a = worked.case.case
        named = a.type_of_value.value if a.type_of_value else "value"
        lines += prose(f"{len(worked.pieces)} pieces, {named} {total} on {a.effective_date}", 2, 2)
    identified = worked.case.case.identifies_only
    rows = [_row(w, valued=not identified) for w in worked.pieces]
    lines += [*heading("Pieces"), *table(rows, right=(0,))]
    doubts = grouped.warnings(worked)
    if doubts:
        lines += [*heading("Look at again"), *table(doubts)]
    if worked.gaps:
        lines += [
            *heading(f"Missing: a draft until each is given ({len(worked.gaps)} in all)"),
            *(
                line
                for row in grouped.gaps(worked.gaps)
                for line in prose(in_line(*row).replace("missing: ", "", 1), 2, 2)
            ),
        ]
    return lines


def _row(done: PieceWork, *, valued: bool) -> tuple[str, ...]:
    value = done.opinion.value if done.opinion else None
    best = done.reading.best
    read = ""
    if best and best.system:
        unsure = "not settled, likeliest " if best.probability < SETTLED else "read as "
        read = f"; {unsure}{best.label} ({percent(best.probability)})"
    says = done.piece.title + read
    number = str(done.piece.number)
    return (number, str(value) if value else "no value", says) if valued else (number, says)


def _spare_folder(target: Path, file: Path) -> None:
    """Refuse a folder that holds no demo case, but something that the demo would overwrite.

    Raises:
        BadInput: it does.
    """
    if file.exists():
        return
    shipped = [p for p in (folder() / "photographs").iterdir() if p.name.endswith(".jpg")]
    there = [target / "photographs" / p.name for p in shipped]
    theirs = [
        at
        for at, own in zip(there, shipped, strict=True)
        if at.exists() and at.read_bytes() != own.read_bytes()
    ]
    for at in (target / "report.pdf", *theirs):
        if at.exists():
            raise BadInput(
                "this is there already and not the demo's, so it is left as it is",
                str(at),
                "name another folder with -o",
            )


def lay_out_demo(target: Path) -> Path:
    """The demo case in a folder, copied there or found there unchanged; the path of its file.

    Raises:
        BadInput: the folder holds another case, or cannot be written.
    """
    file = target / "case.toml"
    try:
        _spare_folder(target, file)
        if file.exists():
            if file.read_bytes() != (folder() / "case.toml").read_bytes():
                raise BadInput(
                    "the case there is not the demo case as shipped, and is left as it is",
                    str(file),
                    "name another folder with -o",
                )
            return file
        return copy_to(target)
    except OSError as fault:
        raise BadInput(
            f"the folder cannot be written ({fault.strerror})", str(target), "choose another place"
        ) from None
