"""From what is printed to a PDF file: PDF/A-3a and PDF/UA-1 (ISO 19005-3, ISO 14289-1) in one."""

import contextlib
import datetime as dt
import json
import os
import re
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import msgspec

from planish.report import child
from planish.report.errors import GlyphError, OutError, PhotographError, ReportError, TypesetError
from planish.report.pictures import derived
from planish.report.plain import printed
from planish.report.view import ReportView

_HERE = Path(__file__).parent
FONTS = _HERE / "fonts"
TEMPLATES = _HERE / "templates"
PAPERS = {"a4": "a4", "letter": "us-letter"}
#: a report of a thousand pieces takes a minute; more is a fault
_LONGEST_RUN = 900


class Attachment(msgspec.Struct, frozen=True, kw_only=True):
    """A file inside the PDF. relation: source, data or supplement (ISO 19005-3, annex E)."""

    name: str
    data: bytes
    mime: str
    description: str
    relation: str = "data"


def write_pdf(
    view: ReportView,
    photographs: Mapping[str, Path],
    out: Path,
    paper: str = "a4",
    *,
    attached: Sequence[Attachment] = (),
    extra_fonts: Sequence[Path] = (),
) -> None:
    """Write the report to ``out``; an existing file is replaced only by a finished one.

    photographs: the file of each ``Picture.file``. paper: a4 or letter. attached: files put into
    the PDF. extra_fonts: folders with fonts for signs that the shipped ones lack.

    Raises:
        ReportError: no report was written, with one line that says why (see ``errors``).
    """
    out = Path(out)
    if paper not in PAPERS:
        raise ReportError(f"paper '{paper}' is not known; choose {' or '.join(PAPERS)}")
    _check_out(out)
    with tempfile.TemporaryDirectory(prefix="planish-report-") as place:
        folder = Path(place)
        _lay_out(view, photographs, attached, folder)
        _write_job(view, folder, PAPERS[paper], extra_fonts)
        _run(folder, view)
        _replace(folder / "report.pdf", out)


def _check_out(out: Path) -> None:
    if out.is_dir():
        raise OutError(str(out), "this is a folder", "name a file in it, like report.pdf")
    if not out.parent.is_dir():
        raise OutError(str(out), f"there is no folder '{out.parent}'", "make it first")
    if not os.access(out.parent, os.W_OK):
        raise OutError(str(out), "its folder cannot be written to", "choose another place")


def _lay_out(
    view: ReportView,
    photographs: Mapping[str, Path],
    attached: Sequence[Attachment],
    folder: Path,
) -> None:
    """Everything that the template reads, into one folder."""
    for template in sorted(TEMPLATES.glob("*.typ")):
        shutil.copyfile(template, folder / template.name)
    (folder / "pictures").mkdir()
    (folder / "attached").mkdir()
    shown = _pictures(view, photographs, folder)
    files = []
    for n, item in enumerate(attached):
        name = f"attached/{n:03d}"
        (folder / name).write_bytes(item.data)
        files.append(
            {
                "path": name,
                "name": item.name,
                "mime": item.mime,
                "description": item.description,
                "relation": item.relation,
            }
        )
    sheet = printed(msgspec.to_builtins(view))
    # keys of pictures are looked up, not printed: they stay as they are
    for raw, piece in zip(view.pieces, _pieces(sheet), strict=True):
        for picture, entry in zip(raw.pictures, piece["pictures"], strict=True):
            entry["image"] = shown[picture.file]
    data = {"view": sheet, "attached": files}
    (folder / "view.json").write_text(json.dumps(data, ensure_ascii=False), encoding="utf-8")


def _pictures(
    view: ReportView, photographs: Mapping[str, Path], folder: Path
) -> dict[str, dict[str, object]]:
    """A copy for print of each photograph, several at a time; the first fault stops all."""
    names = list(dict.fromkeys(p.file for piece in view.pieces for p in piece.pictures))
    shown: dict[str, dict[str, object]] = {}

    def made(entry: tuple[int, str]) -> tuple[str, str, float]:
        n, name = entry
        if name not in photographs:
            raise PhotographError(name, "no such file", "mend its name in the case")
        copy = derived(name, photographs[name])
        path = f"pictures/{n:05d}.jpg"
        (folder / path).write_bytes(copy.data)
        return name, path, copy.width / copy.height

    with ThreadPoolExecutor(min(4, os.cpu_count() or 1)) as pool:
        for name, path, ratio in pool.map(made, enumerate(names)):
            shown[name] = {"path": path, "ratio": ratio}
    return shown


def _pieces(sheet: object) -> list[dict[str, list[dict[str, object]]]]:
    assert isinstance(sheet, dict)  # noqa: S101  # a struct becomes a dict
    pieces: list[dict[str, list[dict[str, object]]]] = sheet["pieces"]
    return pieces


def _write_job(view: ReportView, folder: Path, paper: str, extra_fonts: Sequence[Path]) -> None:
    job = {
        "paper": paper,
        "fonts": [str(FONTS), *(str(Path(p).resolve()) for p in extra_fonts)],
        "timestamp": _timestamp(view),
    }
    (folder / "job.json").write_text(json.dumps(job), encoding="utf-8")


def _timestamp(view: ReportView) -> int:
    """Seconds since 1970 of the document's date: the case decides, never the clock."""
    year, month, day = (*view.date, 1, 1)[:3] if view.date else (1970, 1, 1)
    moment = dt.datetime(max(year, 1970), month, day, tzinfo=dt.UTC)
    return int(moment.timestamp())


def _run(folder: Path, view: ReportView) -> None:
    """Set the report in a process of its own."""
    src = str(_HERE.parents[1])
    known = os.environ.get("PYTHONPATH", "")
    env = {**os.environ, "PYTHONPATH": src + (os.pathsep + known if known else "")}
    try:
        done = subprocess.run(  # noqa: S603  # our own module, a folder of our own
            [sys.executable, "-m", child.__name__, str(folder)],
            env=env,
            capture_output=True,
            timeout=_LONGEST_RUN,
            check=False,
        )
    except subprocess.TimeoutExpired:
        raise TypesetError(
            f"it took longer than {_LONGEST_RUN // 60} minutes; split the case in volumes"
        ) from None
    if done.returncode == child.FAULT:
        raise _fault(json.loads((folder / "fault.json").read_text("utf-8")), view)
    if done.returncode != 0 or not (folder / "report.pdf").is_file():
        last = done.stderr.decode("utf-8", "replace").strip().splitlines()
        says = last[-1] if last else f"the process ended with status {done.returncode}"
        if done.returncode in (-9, 137):
            says = "the machine ran out of memory; split the case in volumes"
        raise TypesetError(says)


_NO_GLYPH = re.compile(r'the text `"(.+?)"` could not be displayed', re.DOTALL)


def _fault(told: dict[str, str], view: ReportView) -> ReportError:
    """The typesetter's complaint as one line."""
    signs = "".join(dict.fromkeys(_unescaped("".join(_NO_GLYPH.findall(told["says"])))))
    if signs:
        where, text = _where(msgspec.to_builtins(view), signs)
        return GlyphError(signs, where, text)
    return TypesetError(told["message"].splitlines()[0], details=told["says"])


def _unescaped(text: str) -> str:
    return re.sub(r"\\u\{([0-9a-fA-F]+)\}", lambda m: chr(int(m[1], 16)), text)


def _where(value: object, signs: str, path: tuple[str, ...] = ()) -> tuple[str, str]:
    """Where in the report one of the signs stands, in words, and the whole text."""
    if isinstance(value, str):
        return (", ".join(path), value) if any(s in value for s in signs) else ("", "")
    entries: list[tuple[tuple[str, ...], object]] = []
    if isinstance(value, dict):
        # a piece's own place says more than the summary that repeats its title
        keys = sorted((k for k in value if k != "svg"), key=lambda k: k != "pieces")
        entries = [((*path, str(k).replace("_", " ")), value[k]) for k in keys]
    elif isinstance(value, list | tuple):
        for n, item in enumerate(value, 1):
            name = item.get("number", n) if isinstance(item, dict) else n
            entries.append(((*path[:-1], f"{path[-1].removesuffix('s')} {name}"), item))
    for step, item in entries:
        found = _where(item, signs, step)
        if found[1]:
            return found
    return "", ""


def _replace(made: Path, out: Path) -> None:
    """Put the finished file in its place in one step."""
    handle, name = -1, ""
    try:
        handle, name = tempfile.mkstemp(prefix=f".{out.name[:40]}-", suffix=".part", dir=out.parent)
        with os.fdopen(handle, "wb") as target, made.open("rb") as source:
            shutil.copyfileobj(source, target, 1 << 20)
            target.flush()
            os.fsync(target.fileno())
        # mkstemp made it for us alone; a report is read by others too
        Path(name).chmod(out.stat().st_mode & 0o777 if out.exists() else 0o644)
        Path(name).replace(out)
    except OSError as fault:
        with contextlib.suppress(OSError):
            Path(name).unlink()
        raise OutError(
            str(out), f"it cannot be written ({fault.strerror})", "choose another place"
        ) from None
