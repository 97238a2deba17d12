"""The whole job of the report: what is printed, the photographs, the case as data, the file."""

from collections.abc import Sequence
from pathlib import Path

import msgspec

from planish.case.worked import Worked
from planish.report.build import view
from planish.report.compile import Attachment, write_pdf


def attachments(worked: Worked, toml: bytes | None = None) -> tuple[Attachment, ...]:
    """The case as data, to put into the PDF: as written, and with all findings."""
    results = msgspec.json.format(msgspec.json.encode(worked, order="sorted"), indent=1)
    found = [
        Attachment(
            name="results.json",
            data=results + b"\n",
            mime="application/json",
            description="The case and all findings of the program, as data",
            relation="data",
        )
    ]
    if toml is not None:
        found.insert(
            0,
            Attachment(
                name="case.toml",
                data=toml,
                mime="application/toml",
                description="The case as the appraiser wrote it",
                relation="source",
            ),
        )
    return tuple(found)


def write_report(
    worked: Worked,
    folder: Path,
    out: Path,
    *,
    paper: str = "a4",
    toml: bytes | None = None,
    extra_fonts: Sequence[Path] = (),
) -> None:
    """Write the report of a case to ``out``.

    folder: where the photographs of the case lie. toml: the case file as given, to be put inside.

    Raises:
        ReportError: no report was written; an existing file is untouched.
    """
    photographs = {
        p.file: Path(folder) / p.file for w in worked.pieces for p in w.piece.photographs
    }
    write_pdf(
        view(worked),
        photographs,
        out,
        paper,
        attached=attachments(worked, toml),
        extra_fonts=extra_fonts,
    )
