"""A small run of the simulated assay study: pieces by physics, tested, and what is said of them.

The bands and bounds of the whole study are in benchmarks/assay.py; few pieces can only show gross
faults: what is said and what is right, summed over the pieces, agree within three standard errors.
"""

import importlib.util
import math
import sys
from pathlib import Path
from types import ModuleType

import pytest

FOLDER = Path(__file__).parents[2] / "benchmarks"


@pytest.fixture(scope="module")
def assay() -> ModuleType:
    spec = importlib.util.spec_from_file_location("assay", FOLDER / "assay.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    sys.modules["assay"] = module
    spec.loader.exec_module(module)
    return module


def test_what_is_said_is_right_about_as_often(assay: ModuleType) -> None:
    results = assay.run(160, 11)
    said = right = spread = 0.0
    for r in results:
        top, p = max(r.kinds.items(), key=lambda item: item[1])
        said += p
        right += top == r.kind
        spread += p * (1 - p)
    assert abs(said - right) <= 3 * math.sqrt(spread)


def test_advice_does_better_than_chance_with_less_harm(assay: ModuleType) -> None:
    told = assay.summary(assay.run(120, 12))
    assert told["advised"]["kind right"] > told["random"]["kind right"]
    assert told["advised"]["harmful tests a piece"] < told["random"]["harmful tests a piece"]
