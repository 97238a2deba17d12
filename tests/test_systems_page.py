"""docs/systems.md says what the library and the outside checks hold today."""

import subprocess
import sys
from pathlib import Path

SCRIPT = Path(__file__).parents[1] / "scripts" / "systems_table.py"


def test_the_page_of_systems_is_up_to_date() -> None:
    done = subprocess.run(
        [sys.executable, str(SCRIPT), "--check"], capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr
