"""Time and memory of a report: the whole of it, from photographs to the finished PDF.

    python benchmarks/report.py [PIECES ...]

Without numbers: 10 and 100 pieces. Each has three photographs of 3 megapixels, all different
and made up here, six marks, a reading, weights, comparables and a ledger of its own.
Printed: pages, seconds in all and in the typesetter alone, peak memory of this process and of the
typesetter, size of the file.
"""

import argparse
import importlib.util
import re
import resource
import subprocess
import sys
import tempfile
import time
from pathlib import Path
from types import ModuleType

import msgspec
from PIL import Image, ImageChops

from planish.report import compile as setting
from planish.report.compile import write_pdf
from planish.report.view import ReportView

_SIZE = (2000, 1500)


def sample() -> ModuleType:
    """The invented report that the tests use."""
    file = Path(__file__).resolve().parents[1] / "tests" / "report" / "sample.py"
    spec = importlib.util.spec_from_file_location("planish_report_sample", file)
    if spec is None or spec.loader is None:
        raise SystemExit(f"{file} is not there: run this from a checkout")
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def photographs(folder: Path, count: int, made_up: ModuleType) -> None:
    """So many pictures, no two alike, with the detail that real silver and cloth have."""
    picture = Image.open(made_up.paint(folder / "base.jpg", 1, _SIZE)).convert("RGB")
    (folder / "base.jpg").unlink()
    grain = Image.effect_noise((1100, 825), 60).resize(_SIZE).convert("RGB")
    base = Image.blend(picture, grain, 0.3)
    for n in range(count):
        ImageChops.offset(base, 7 * n, 5 * n).save(folder / f"{n:05d}.jpg", quality=90)


def case(pieces: int, made_up: ModuleType) -> ReportView:
    """An invented report of so many pieces, each with its ledger."""
    rows = tuple(
        made_up.teapot(tuple(f"{n}-{k}" for k in range(3)), str(n)) for n in range(1, pieces + 1)
    )
    view: ReportView = made_up.report(rows, draft=False)
    ledger = view.ledgers[0]
    ledgers = tuple(
        msgspec.structs.replace(ledger, title=f"Piece {n}") for n in range(1, pieces + 1)
    )
    return msgspec.structs.replace(view, ledgers=ledgers)


def measured(pieces: int, pictures: Path, made_up: ModuleType) -> str:
    """The line of one report."""
    files = sorted(pictures.glob("*.jpg"))
    names = [f"{n}-{k}" for n in range(1, pieces + 1) for k in range(3)]
    shown = dict(zip(names, files, strict=False))
    clock: list[float] = []
    run = setting._run  # noqa: SLF001  # timed from outside

    def timed(folder: Path, view: ReportView) -> None:
        begun = time.perf_counter()
        run(folder, view)
        clock.append(time.perf_counter() - begun)

    setting._run = timed  # noqa: SLF001
    view, out = case(pieces, made_up), pictures / "report.pdf"
    begun = time.perf_counter()
    write_pdf(view, shown, out)
    seconds = time.perf_counter() - begun
    data = out.read_bytes()
    return (
        f"{pieces:>6} {len(names):>12} {_pages(data):>6} {seconds:>8.1f} {clock[0]:>11.1f}"
        f" {_peak(resource.RUSAGE_SELF):>8.0f} {_peak(resource.RUSAGE_CHILDREN):>14.0f}"
        f" {len(data) / 1e6:>8.1f}"
    )


def main() -> None:
    """Print one line for each number of pieces, each measured in a process of its own."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("pieces", nargs="*", type=int, default=[10, 100])
    parser.add_argument("--paint", type=Path, help=argparse.SUPPRESS)
    parser.add_argument("--from", dest="source", type=Path, help=argparse.SUPPRESS)
    asked = parser.parse_args()
    if asked.paint:
        photographs(asked.paint, 3 * max(asked.pieces), sample())
    elif asked.source:
        print(measured(asked.pieces[0], asked.source, sample()), flush=True)
    else:
        print("pieces  photographs  pages  seconds  typesetter  MB here  MB typesetter  MB file")
        sys.stdout.flush()
        with tempfile.TemporaryDirectory() as place:
            again = [sys.executable, __file__]
            subprocess.run([*again, *(str(n) for n in asked.pieces), "--paint", place], check=True)  # noqa: S603
            for pieces in asked.pieces:
                subprocess.run([*again, str(pieces), "--from", place], check=True)  # noqa: S603


def _pages(data: bytes) -> int:
    """Pages of a PDF: the largest count in its page tree."""
    counts = [
        int(n) for n in re.findall(rb"/Type\s*/Pages.{0,400}?/Count\s+(\d+)", data, re.DOTALL)
    ]
    return max(counts, default=0)


def _peak(who: int) -> float:
    """Peak resident memory [MB]."""
    peak = resource.getrusage(who).ru_maxrss
    return peak / 1e6 if sys.platform == "darwin" else peak / 1e3


if __name__ == "__main__":
    main()
