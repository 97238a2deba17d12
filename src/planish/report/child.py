"""The process that sets the report and ends, so that its memory goes back to the machine.

    python -m planish.report.child FOLDER

FOLDER holds ``report.typ`` with all that it reads, and ``job.json``. Writes ``report.pdf`` or, with
exit status 3, ``fault.json``.
"""

import json
import sys
from pathlib import Path

FAULT = 3


def main(folder: Path) -> int:
    """Set the report of one folder."""
    import typst  # noqa: PLC0415  # heavy, and only this process needs it

    job = json.loads((folder / "job.json").read_text("utf-8"))
    try:
        typst.compile(
            folder / "report.typ",
            output=folder / "report.pdf",
            root=folder,
            font_paths=[Path(p) for p in job["fonts"]],
            ignore_system_fonts=True,
            format="pdf",
            pdf_standards=["a-3a", "ua-1"],
            sys_inputs={"paper": job["paper"]},
            timestamp=job["timestamp"],
        )
    except typst.TypstError as fault:
        told = {"message": fault.message, "hints": list(fault.hints), "says": fault.diagnostic}
        (folder / "fault.json").write_text(json.dumps(told), encoding="utf-8")
        return FAULT
    return 0


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1])))
