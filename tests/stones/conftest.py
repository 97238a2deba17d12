"""The benchmark's reader of measured stones serves the tests too."""

import importlib.util
import sys
from pathlib import Path
from types import ModuleType

import pytest

SCRIPT = Path(__file__).parents[2] / "benchmarks" / "stones.py"


@pytest.fixture(scope="session")
def bench() -> ModuleType:
    spec = importlib.util.spec_from_file_location("benchmark_of_stones", SCRIPT)
    assert spec
    assert spec.loader
    module = importlib.util.module_from_spec(spec)
    sys.modules[spec.name] = module
    spec.loader.exec_module(module)
    return module
