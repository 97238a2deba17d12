"""The comparison of answers with those on record, on cases made up here."""

import json
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[1]
CASES = [
    {
        "id": "right",
        "kind": "marks",
        "form": "teaspoon",
        "situation": "",
        "observed_marks": [{"text": "EPNS", "where": "stem"}, {"text": "JD&S"}],
        "established_answer": {"solid_or_plated": "plated", "fineness": 0},
        "answer_confidence": "high",
    },
    {
        "id": "wrong",
        "kind": "marks",
        "form": "teaspoon",
        "situation": "",
        "observed_marks": [{"text": "EPNS"}],
        "established_answer": {"solid_or_plated": "solid"},
        "answer_confidence": "high",
    },
    {"id": "other", "kind": "value", "observed_marks": [], "established_answer": {}},
]


def test_each_case_is_judged_field_by_field(tmp_path: Path) -> None:
    file = tmp_path / "cases.jsonl"
    file.write_text("".join(json.dumps(c) + "\n" for c in CASES), encoding="utf-8")
    done = subprocess.run(
        [sys.executable, "benchmarks/cases.py", str(file)],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=True,
    )
    rows = [line.split("\t") for line in done.stdout.splitlines()[1:3]]

    assert [(r[0], r[1]) for r in rows] == [("right", "agreed"), ("wrong", "disagreed")]
    assert rows[0][2] == "fineness kind"
    assert "disagreed: 1 cases, 1 fields" in done.stdout
