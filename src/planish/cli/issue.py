"""The whole job, put together: case file, benches, report. Used by ``appraise`` and ``demo``."""

from collections.abc import Sequence
from pathlib import Path

from planish.case.demo import copy_to, folder
from planish.case.faults import CaseFaults
from planish.case.load import load
from planish.case.work import work
from planish.case.worked import PieceWork, Worked
from planish.cli.errors import BadInput
from planish.cli.terminal import heading, percent, prose, table, tint
from planish.report import ReportError, write_report


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
    worked = work(case)
    if worked.gaps and not draft:
        lacking = [f"{case_file.name}: {gap}" for gap in worked.gaps]
        remedy = "no report was issued: give what is missing, or print a draft with --draft"
        raise BadInput.several([*lacking, f"{case_file.name}: {remedy}"])
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
    lines += [*heading("Pieces"), *table([_row(w) for w in worked.pieces], right=(0,))]
    doubts = _doubts(worked)
    if doubts:
        lines += [*heading("Look at again"), *table(doubts)]
    if worked.gaps:
        lines += [
            *heading("Missing: a draft until each is given"),
            *(line for gap in worked.gaps for line in prose(str(gap), 2, 2)),
        ]
    return lines


def _row(done: PieceWork) -> tuple[str, str, str]:
    value = done.opinion.value if done.opinion else None
    best = done.reading.best
    read = f"; read as {best.label} ({percent(best.probability)})" if best and best.system else ""
    return str(done.piece.number), str(value) if value else "no value", done.piece.title + read


def _doubts(worked: Worked) -> list[tuple[str, str]]:
    """Each warning once, with the pieces that it is about; those about the case first."""
    about: dict[str, list[int]] = {}
    for done in worked.pieces:
        for says in done.warnings:
            about.setdefault(says, []).append(done.piece.number)
    return [
        *(("case", says) for says in worked.warnings),
        *((_numbered(numbers), says) for says, numbers in about.items()),
    ]


def _numbered(numbers: Sequence[int]) -> str:
    """``piece 3`` or ``pieces 1-4, 7``."""
    runs: list[list[int]] = []
    for n in numbers:
        if runs and n == runs[-1][1] + 1:
            runs[-1][1] = n
        else:
            runs.append([n, n])
    text = ", ".join(str(low) if low == high else f"{low}-{high}" for low, high in runs)
    return f"{'piece' if len(numbers) == 1 else 'pieces'} {text}"


def lay_out_demo(target: Path) -> Path:
    """The demo case in a folder, copied there or found there unchanged; the path of its file.

    Raises:
        BadInput: the folder holds another case, or cannot be written.
    """
    file = target / "case.toml"
    try:
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
