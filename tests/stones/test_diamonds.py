"""The round-brilliant formula on 53,940 diamonds measured and weighed by others.

Data: ``diamonds`` as carried by plotnine 0.15.9, a development package; only its file is read. The
expected figures were computed apart from this code, with numpy (facts, stones_formulas.md).
"""

import statistics
from types import ModuleType
from typing import Any

import pytest

from planish.stones import weigh


@pytest.fixture(scope="module")
def clean(bench: ModuleType) -> list[Any]:
    file = bench.data_file()
    if file is None:
        pytest.skip("plotnine is not installed here, so its stones cannot be read")
    return list(bench.stones(file))


def test_median_and_spread_are_those_computed_apart(bench: ModuleType, clean: list[Any]) -> None:
    found = bench.summary(bench.errors(clean, bench.constant()), 0.05)

    assert found["n"] == pytest.approx(53_831, abs=2)  # one stone lies on the line
    assert found["median"] == pytest.approx(-0.28, abs=0.02)
    assert found["p2.5"] == pytest.approx(-4.64, abs=0.05)
    assert found["p97.5"] == pytest.approx(2.97, abs=0.05)
    assert found["within 3"] == pytest.approx(89.3, abs=0.2)


def test_the_constant_that_centres_the_data(clean: list[Any]) -> None:
    best = statistics.median(s.carat / (((s.x + s.y) / 2) ** 2 * s.z) for s in clean)

    assert best == pytest.approx(0.006117, abs=5e-6)


def test_the_command_weighs_as_the_formula_tested(bench: ModuleType, clean: list[Any]) -> None:
    for s in clean[::2500]:
        found = weigh("round brilliant", f"{s.x:.2f}x{s.y:.2f}x{s.z:.2f}mm", material="diamond")
        assert found.carats == pytest.approx(bench.constant() * ((s.x + s.y) / 2) ** 2 * s.z)


@pytest.mark.parametrize(("grade", "poor"), [("", False), ("Ideal", False), ("Fair", True)])
def test_19_of_20_stones_lie_within_the_interval(
    bench: ModuleType, clean: list[Any], grade: str, *, poor: bool
) -> None:
    rows = [s for s in clean if not grade or s.grade == grade]
    sizes = "6.50x6.50x3.95mm"
    half = weigh("round brilliant", sizes, material="diamond", poor=poor, plus_minus=0).half_width
    found = bench.summary(bench.errors(rows, bench.constant()), half)

    assert half == pytest.approx(0.10 if poor else 0.05)
    assert found["in interval"] >= 95.0
