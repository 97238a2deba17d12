"""Published and computed check values, each with its source and how sure it is.

The whole table is read where a folder ``shared`` lies beside the checkout; it is no part of the
project. ``CORE`` holds rows of each kind, so that this file checks something everywhere.
"""

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from planish.library import load
from planish.quantity import Measured
from planish.stones import find_material, restricted, weigh

FILE = Path(__file__).resolve().parents[3] / "shared" / "facts" / "standards" / "checks.jsonl"

CORE: list[tuple[str, dict[str, Any], Any, float, str]] = [
    # IGS, weight formulas of faceted stones; a table of the trade agrees
    ("stone.rb_coloured", {"d": 8, "depth": 5.2, "sg": 2.65}, 1.5875, 0.001, "two sources"),
    # the constant 0.0061, common practice, tested on 53,831 stones
    ("stone.rb_diamond_6.5", {"d1": 6.5, "d2": 6.5, "depth": 3.95}, 1.018, 0.001, "sourced"),
    # Williams, cabochons
    ("stone.cab_27", {"l": 14, "w": 10, "depth": 4.5, "sg": 2.76}, 4.6948, 0.001, "sourced"),
    # geometry
    ("stone.pearl_8", {"d": 8, "sg": 2.7}, 3.6191, 0.001, "calculated"),
    ("stone.cyl_disc", {"d": 12, "h": 2, "sg": 2.65}, 2.9971, 0.001, "calculated"),
    # P. G. Read, Gemmology
    ("gem.amber_sg", {"stone": "amber"}, 1.08, 0.03, "two sources"),
    ("gem.amber_ri", {"stone": "amber"}, 1.54, 0.005, "sourced"),
    # 50 CFR 17.40(e)
    ("law.us.ivory_deminimis_g", {}, 200, 0, "sourced"),
    # Ivory Act 2018 section 7
    ("law.uk.ivory_pct_1947", {}, 10, 0, "two sources"),
]

#: rows of law that touch materials -> rule, what the limit is about
LAW = {
    "law.us.ivory_deminimis_g": ("us-ivory-ban", "ivory weight"),
    "law.us.ivory_deminimis_share": ("us-ivory-ban", "ivory volume"),
    "law.us.ivory_made_before": ("us-ivory-ban", "made"),
    "law.us.antique_age": ("us-esa-antique", "age"),
    "law.us.iaca_cutoff_year": ("us-native-crafts", "made"),
    "law.uk.ivory_pct_1947": ("uk-ivory", "ivory volume"),
    "law.uk.ivory_pct_music_1975": ("uk-ivory", "instrument ivory volume"),
    "law.uk.ivory_miniature_cm2": ("uk-ivory", "miniature area"),
    "law.uk.ivory_certificate_before": ("uk-ivory", "outstanding made"),
}
#: measured on the data set, in test_diamonds.py
DATA = {
    "stone.rb_data_median",
    "stone.rb_data_p025_p975",
    "stone.rb_data_within3",
    "stone.rb_data_best_k",
}


def _carats(cut: str, *names: str, factor: str | None = None) -> Callable[[dict[str, Any]], float]:
    def worked(given: dict[str, Any]) -> float:
        sizes = "x".join(f"{given[n]:.4f}" for n in names)
        gravity = Measured.of(given["sg"])
        return weigh(cut, f"{sizes}mm", gravity=gravity, factor=factor).carats

    return worked


def _diamond(given: dict[str, Any]) -> float:
    sizes = f"{given['d1']}x{given['d2']}x{given['depth']}mm"
    return weigh("round brilliant", sizes, material="diamond").carats


def _unit_body(cut: str, sizes: str) -> Callable[[dict[str, Any]], float]:
    return lambda _: weigh(cut, sizes, gravity=Measured.of(1)).carats


WORKED: dict[str, Callable[[dict[str, Any]], float]] = {
    "stone.rb_diamond_6.5": _diamond,
    "stone.rb_coloured": _carats("round faceted", "d", "depth"),
    "stone.oval": _carats("oval", "l", "w", "depth"),
    "stone.oval_lw": _carats("oval", "l", "w", "depth", factor="oval.product"),
    "stone.pear": _carats("pear", "l", "w", "depth"),
    "stone.marquise_17": _carats("marquise", "l", "w", "depth"),
    "stone.emerald_cut": _carats("emerald cut", "l", "w", "depth"),
    "stone.rect_26": _carats("rectangle", "l", "w", "depth"),
    "stone.heart_21": _carats("heart", "l", "w", "depth", factor="heart.21"),
    "stone.cab_27": _carats("cabochon", "l", "w", "depth"),
    "stone.pearl_8": _carats("round pearl", "d"),
    "stone.cyl_disc": _carats("disc", "d", "h"),
    "stone.cab_half_ellipsoid": _unit_body("half ellipsoid", "1x1x1mm"),
    "stone.sphere_factor": _unit_body("sphere", "1mm"),
}


def _of_law(name: str) -> str:
    rule, about = LAW[name]
    limits = {
        limit.about: limit.figure
        for p in load().protections
        if p.id == rule
        for flag in restricted(p.about[0] if p.about else p.words.split(";")[0])
        if flag.id == rule
        for limit in flag.limits
    }
    return limits[about]


def holds(name: str, given: dict[str, Any], expected: Any, tolerance: float) -> None:
    if name in LAW:
        got = _of_law(name)
        if isinstance(expected, str):
            assert got == expected
        else:
            assert float(got) == expected
    elif name.startswith("gem."):
        row = find_material(str(given["stone"]).replace("_", "-"))
        figure = row.sg if name.endswith("_sg") else row.ri_low
        assert figure == pytest.approx(expected, abs=tolerance)
    else:
        assert WORKED[name](given) == pytest.approx(expected, abs=tolerance)


def shared() -> list[dict[str, Any]]:
    """Rows of this bench; none where they do not lie beside the checkout."""
    if not FILE.exists():
        return []
    rows = [json.loads(line) for line in FILE.read_text(encoding="utf-8").splitlines()]
    return [r for r in rows if r["id"].startswith(("stone.", "gem.")) or r["id"] in LAW]


@pytest.mark.parametrize(("name", "given", "expected", "tolerance", "sure"), CORE)
def test_core(name: str, given: dict[str, Any], expected: Any, tolerance: float, sure: str) -> None:
    assert sure
    holds(name, given, expected, tolerance)


@pytest.mark.skipif(not shared(), reason="no shared check values beside this checkout")
@pytest.mark.parametrize(
    "row", [pytest.param(r, id=r["id"]) for r in shared() if r["id"] not in DATA]
)
def test_shared_rows(row: dict[str, Any]) -> None:
    holds(row["id"], row["input"], row["expected"], row["tolerance"])


@pytest.mark.skipif(not shared(), reason="no shared check values beside this checkout")
def test_every_shared_row_of_this_bench_has_its_test() -> None:
    told = {r["id"] for r in shared()}

    assert {n for n in told if n.startswith("stone.")} == set(WORKED) | DATA
    assert set(LAW) <= told
