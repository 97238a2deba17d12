"""Museum records read blind, judged by the shared scorer against their curators.

The records and the scorer stay in the shared folder beside the checkout; without it this skips.
The bounds are those asked of the first slice (country 0.95, office 0.85, years 0.80 at a median
width of three years at most, nothing sure and wrong).
"""

import json
import subprocess
import sys
from pathlib import Path

import pytest

from planish.marks import describe, shipped_reader
from planish.marks.plain import as_plain

SHARED = Path(__file__).resolve().parents[3] / "shared"
RECORDS, SCORER = SHARED / "museum" / "records.jsonl", SHARED / "bench" / "score_marks.py"


@pytest.fixture(scope="module")
def readings(tmp_path_factory: pytest.TempPathFactory) -> Path:
    if not (RECORDS.is_file() and SCORER.is_file()):
        pytest.skip("no shared museum records and scorer beside this checkout")
    reader = shipped_reader()
    out = tmp_path_factory.mktemp("records") / "readings.jsonl"
    with out.open("w", encoding="utf-8") as file:
        for line in RECORDS.read_text(encoding="utf-8").splitlines():
            record = json.loads(line)
            told = describe(record["marks_text_blind"])
            found = as_plain(reader.read(told, record["object"], explain=False))
            file.write(json.dumps({"id": record["id"], "readings": found["readings"]}) + "\n")
    return out


def scored(readings: Path, *more: str) -> dict[str, float]:
    done = subprocess.run(
        [sys.executable, str(SCORER), str(RECORDS), "--readings", str(readings), "--json", *more],
        capture_output=True,
        text=True,
        check=True,
    )
    figures: dict[str, float] = json.loads(done.stdout)
    return figures


def test_british_sets_meet_the_bounds(readings: Path) -> None:
    figures = scored(readings, "--slice", "british-set")

    assert figures["country"] >= 0.95
    assert figures["office"] >= 0.85
    assert figures["years"] >= 0.80
    assert figures["width"] <= 3
    assert figures["sure_and_wrong"] == 0


def test_no_reading_of_any_record_is_sure_and_wrong(readings: Path) -> None:
    figures = scored(readings)

    assert figures["sure"] > 0
    assert figures["sure_and_wrong"] == 0
