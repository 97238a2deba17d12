import math

import pytest

from planish.library import load
from planish.stones import observe
from planish.stones.likelihood import (
    answers_on,
    clues_of,
    gravity_density,
    index_density,
    likelihood,
)

LIBRARY = load()
CLUES = clues_of(LIBRARY)


def area(low: float, high: float, step: float, density: object) -> float:
    count = round((high - low) / step)
    return step * math.fsum(density(low + step * i) for i in range(count))  # type: ignore[operator]


@pytest.mark.parametrize("name", ["turquoise", "quartz-rock", "paste-lead", "ebony"])
def test_densities_of_gravity_add_up_to_one(name: str) -> None:
    row = next(m for m in LIBRARY.materials if m.id == name)

    assert area(0.0, 9.0, 0.002, lambda x: gravity_density(row, x, 0.05)) == pytest.approx(
        1, abs=1e-3
    )


@pytest.mark.parametrize("name", ["turquoise", "quartz-rock", "coral", "amber"])
def test_densities_of_the_index_add_up_to_one(name: str) -> None:
    row = next(m for m in LIBRARY.materials if m.id == name)

    assert area(1.2, 2.2, 0.0005, lambda x: index_density(row, x, 0.01)) == pytest.approx(
        1, abs=1e-3
    )


def test_chances_of_answers_add_up_to_one() -> None:
    for test in LIBRARY.gemtests:
        if test.id in ("sg", "ri"):
            continue
        for row in (*LIBRARY.materials, None):
            total = math.fsum(
                likelihood(observe(f"{test.id}={answer}"), test, row, CLUES)
                for answer in test.answers
            )
            assert total == pytest.approx(1.0), (test.id, row and row.id)


def test_no_observation_rules_a_material_out_alone() -> None:
    for text in (
        "sg=1.08±0.01",
        "ri=1.3",
        "ri=over",
        "ri=1.54-1.56",
        "colour=brassy",
        "magnet=drawn",
    ):
        seen = observe(text)
        test = next(t for t in LIBRARY.gemtests if t.id == seen.test)
        assert all(likelihood(seen, test, row, CLUES) > 0 for row in LIBRARY.materials)


def test_steel_scratches_what_is_softer() -> None:
    # Mohs: steel about 5.5 (common practice)
    scratch = next(t for t in LIBRARY.gemtests if t.id == "scratch")
    rows = {m.id: answers_on(scratch, m, CLUES) for m in LIBRARY.materials}

    assert all((rows[soft] or {})["scratched"] > 0.9 for soft in ("amber", "coral", "malachite"))
    assert all((rows[hard] or {})["not"] > 0.9 for hard in ("amethyst", "onyx", "corundum"))


def test_an_index_over_the_scale_speaks_for_what_reads_above_it() -> None:
    # scale ends at about 1.80: zircon 1.92, zirconia 2.15, diamond 2.417 (IGS tables)
    ri = next(t for t in LIBRARY.gemtests if t.id == "ri")
    over = {m.id: likelihood(observe("ri=over"), ri, m, CLUES) for m in LIBRARY.materials}

    assert min(over[n] for n in ("zircon", "cz", "diamond")) > 0.9
    assert max(over[n] for n in ("amethyst", "turquoise", "topaz", "spinel")) < 0.05
