import json
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]


@pytest.mark.slow
def test_the_benchmark_of_reading_runs_and_counts_its_work(tmp_path: Path) -> None:
    records = tmp_path / "pieces.jsonl"
    records.write_text('{"id": 1, "description": "EPNS"}\n' * 3, encoding="utf-8")

    done = subprocess.run(
        [sys.executable, "benchmarks/reading.py", str(records), "--count", "2", "--json"],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=True,
    )

    found = json.loads(done.stdout)
    assert found["import_s"] > 0
    assert {name: w["read, whole"]["pieces"] for name, w in found["sets"].items()} == {
        "invented": 2,
        "pieces.jsonl": 3,
    }
