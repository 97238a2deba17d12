"""Every check value that touches this bench, by source; those from memory say so when they fail.

The shared rows are read where they lie beside the checkout. ``CORE`` holds some of each kind, so
that the comparison stands without them.
"""

import json
from collections.abc import Callable
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest

from planish.library import load
from planish.library.rows import Metal
from planish.metal import (
    Alloy,
    Deduction,
    Immersion,
    Kind,
    Method,
    Weighing,
    allowance,
    density,
    weigh,
)
from planish.metal.air import air_density
from planish.metal.conductivity import resistivity
from planish.metal.hydro import by_step, displacement
from planish.metal.mixture import density_of, fineness_of, ideal_density, slope_of
from planish.metal.plating import layer_mass, layer_thickness
from planish.metal.water import water_density
from planish.quantity import Fineness, Mass

CHECKS = Path(__file__).resolve().parents[3] / "shared" / "facts" / "standards" / "checks.jsonl"
#: prefixes of the rows that touch the metal; units and fineness are tests of the room quantity
PREFIXES = ("unit", "fineness", "density", "water", "air", "hydro", "melt", "plate", "iacs")

#: id, input, expected, tolerance, source, confidence
CORE: list[dict[str, Any]] = [
    {"id": i, "input": inputs, "expected": expected, "tolerance": tolerance, "unit": unit,
     "source": source, "confidence": sure}
    for i, inputs, expected, tolerance, unit, source, sure in [
        ("unit.troy_ounce_g", {"unit": "troy_ounce", "value": 1}, 31.1034768, 1e-9, "g",
         "NIST Handbook 44, Appendix C: 480 grains of 453.59237 g / 7000", "two-sources"),
        ("unit.ozav_to_ozt", {"value": 1, "from": "oz", "to": "ozt"}, 175 / 192, 1e-9, "ozt",
         "NIST Handbook 44, Appendix C", "two-sources"),
        ("fineness.sterling_ozdwt", {"parts": 222, "of": 240}, 925.0, 1e-3, "per mille",
         "11 oz 2 dwt of the troy pound", "sourced"),
        ("density.el_Ag", {"metal": "Ag"}, 10.5, 0.02, "g/cm3",
         "CRC Handbook of Chemistry and Physics", "two-sources"),
        ("density.measured_ag925", {"alloy": "925"}, 10.36, 0.02, "g/cm3",
         "ESPI Metals, data sheet of sterling", "two-sources"),
        ("density.C77000", {"alloy": "C77000"}, 8.70, 0.05, "g/cm3", "AZoM 6449", "sourced"),
        ("density.ideal_ag925", {"fineness": 925, "rho_ag": 10.49, "rho_cu": 8.96}, 10.3574, 2e-4,
         "g/cm3", "1 / (0.925 / 10.49 + 0.075 / 8.96), worked by hand", "calculated"),
        ("water.tanaka_4", {"t_C": 4}, 999.9749, 5e-4, "kg/m3",
         "Tanaka and others, Metrologia 38 (2001), table", "two-sources"),
        ("water.tanaka_20", {"t_C": 20}, 998.2067, 5e-4, "kg/m3",
         "Tanaka and others, Metrologia 38 (2001), table", "two-sources"),
        ("water.tanaka_40", {"t_C": 40}, 992.2152, 5e-4, "kg/m3",
         "Tanaka and others, Metrologia 38 (2001), table", "two-sources"),
        ("air.1013.25_50_20", {"p_hPa": 1013.25, "rh_pct": 50, "t_C": 20}, 1.1993, 1e-3, "kg/m3",
         "OIML R 111-1 (2004), equation E.3-1", "from-memory"),
        ("hydro.bracelet_11.30", {"w_air_g": 12.5, "w_water_g": 11.3, "t_C": 20, "rho_air": 0.0012},
         10.3867, 5e-4, "g/cm3", "12.5 / 1.2 x (0.9982067 - 0.0012) + 0.0012, by hand",
         "calculated"),
        ("hydro.8reales", {"W": 26.922, "Wa": 26.965, "Wwater": 24.306, "Sa": 0.043, "Sw": 0.023},
         10.202, 5e-3, "SG", "coin collectors' forum, topic 24689, prints 10.2", "sourced"),
        ("melt.fork_50g", {"gross_g": 50, "fineness": 925}, 46.25, 1e-6, "g",
         "column on units for weighing silver", "sourced"),
        ("plate.90g", {"g": 90, "dm2": 24, "rho": 10.5}, 35.7, 0.4, "micrometre",
         "RAL-RG 691 B4 prints 36", "sourced"),
        ("iacs.Cu", {"metal": "Cu"}, 100, 1.5, "%IACS", "definition of the scale", "two-sources"),
    ]
]  # fmt: skip


def shared() -> list[dict[str, Any]]:
    """The shared rows of this bench; none where they do not lie beside the checkout."""
    if not CHECKS.exists():
        return []
    rows = [json.loads(line) for line in CHECKS.read_text(encoding="utf-8").splitlines()]
    return [row for row in rows if row["id"].split(".")[0] in PREFIXES]


def metal(word: str) -> Metal:
    """The library's row of a symbol, number or name of the check rows."""
    ids = {
        "sterling": "silver-925", "925": "silver-925", "900": "silver-900",
        "brass": "brass-70-30", "Al": "aluminium-pure",
    }  # fmt: skip
    wanted = ids.get(word, word)
    return next(m for m in load().metals if wanted in (m.id, *m.names))


def element(symbol: str) -> float:
    return metal(symbol).density


def gap(measured: float, shares: dict[str, float]) -> float:
    """Measured over ideal density [%]."""
    ideal = ideal_density({element(s): share for s, share in shares.items()})
    return 100 * (measured / ideal - 1)


def found(**given: Any) -> float:
    """Density by the bench from a row's readings, air density as the row has it."""
    air = given.get("rho_air", 0.0012) * 1000
    bare = Immersion(
        air=(given["w_air_g"],), water=(given["w_water_g"],), celsius=given.get("t_C", 20), wire=0
    )
    water = water_density(bare.celsius) / 1000
    if air == 1.2:  # as the bench has it unless told
        return density(bare).measured.value
    # the bench has no weighing without air: here the formula of the row stands against it
    return bare.in_air / bare.displaced * (water - air / 1000) + air / 1000


def gravity(weight: float, in_water: float | None = None, loss: float | None = None) -> float:
    """Specific gravity as collectors print it: weight over loss, without air or water density."""
    bare = Immersion(
        air=(weight,), water=(in_water if in_water is not None else weight - (loss or 0),),
        celsius=20, wire=0,
    )  # fmt: skip
    return bare.in_air / bare.displaced


def melt(row: dict[str, Any]) -> float:
    i = row["input"]
    name = row["id"].removeprefix("melt.")
    if name in ("candelabra_share", "candlestick_share"):
        return 100 * float(Mass.of(i["silver_oz"], "oz") / Mass.of(i["gross_oz"], "oz"))
    if name == "candelabra_payout":
        gross = Mass.of(i["ozt_sterling"], "ozt")
    elif name == "knife_half_ozt":
        gross = Mass.of(i["n"] * i["ozt_each"], "ozt")
    else:
        gross = Mass.of(i.get("gross_g", i.get("gross_ozt")), "ozt" if "gross_ozt" in i else "g")
    off = Mass.of(i.get("stone_ct", 0), "ct") + Mass.of(i.get("non_silver_g", 0))
    taken = (Deduction(kind=Kind.OTHER, what="off", mass=off, method=Method.WEIGHED, source="row"),)
    alloy = Alloy(fineness=Fineness.of(i.get("fineness", 925)), basis="test")
    fine = weigh("x", Weighing(gross=gross), deductions=taken, alloy=alloy).fine
    assert fine is not None
    if row["unit"] in ("g", "ozt"):
        return float(fine.to(row["unit"]))
    worth = float(fine.to("ozt")) * i["spot"]
    return i["paid"] / worth if "paid" in i else worth * i.get("payout", 1)


def hydro(row: dict[str, Any]) -> float:  # noqa: PLR0912  # a branch for each row
    i = row["input"]
    body = density_of(925)
    match row["id"].removeprefix("hydro."):
        case "bracelet_11.30" | "bracelet_nickel" | "no_air" | "warm_water":
            return found(**i)
        case "air_bias":
            return 0.0012 * (i["rho"] / (water_density(20) / 1000) - 1)
        case "8reales":
            harness = Immersion(
                air=(i["Wa"],), water=(i["Wwater"],), celsius=20, wire=0,
                harness_air=i["Sa"], harness_water=i["Sw"],
            )  # fmt: skip
            return harness.in_air / harness.displaced
        case "scudo_1874":
            return gravity(i["W"], loss=i["D"])
        case "greek":
            return gravity(i["W"], i["Wwater"])
        case "D_12.5":
            return displacement(i["m_g"], density_of(i["fineness"]))
        case "u_rho_12.5_0.01":
            return by_step(i["m_g"], i["resolution_g"], body)
        case "u_fineness_12.5_0.01" | "u_fineness_12.5_0.001" | "u_fineness_50_0.01":
            return by_step(i["m_g"], i["resolution_g"], body) / slope_of(925)
        case "gap_925_900":
            return density_of(i["a"]) - density_of(i["b"])
        case "sep_925_900_sigma":
            gap_ = density_of(925) - density_of(900)
            return gap_ / by_step(i["m_g"], i["resolution_g"], body)
        case "sep_925_nickel_sigma":
            return (body - i["other"]) / by_step(i["m_g"], i["resolution_g"], body)
        case "fake_mix":
            # shares by volume: the mixture of masses share x density has the density aimed at
            low, high = 0.0, 1.0
            for _ in range(60):
                share = (low + high) / 2
                parts = {
                    i["rho_a"]: share * i["rho_a"],
                    i["rho_b"]: (1 - share) * i["rho_b"],
                }
                low, high = (share, high) if ideal_density(parts) < i["target"] else (low, share)
            return share
    raise AssertionError(f"no test for {row['id']}")


def dense(row: dict[str, Any]) -> float:
    i, name = row["input"], row["id"].removeprefix("density.")
    if name.startswith("ideal_ag"):
        return density_of(i["fineness"], i["rho_ag"], i["rho_cu"])
    if name in ("ideal_C77000_gap", "ideal_C26000_gap"):
        return gap(i["measured"], {s: v for s, v in i.items() if s != "measured"})
    if name == "pewter_82_18":
        return gap(i["published"], {"Sn": i["Sn"], "Pb": i["Pb"]})
    if name == "slope_925":
        return slope_of(i["fineness"])
    if name == "inverse":
        return fineness_of(i["density"], i["rho_ag"], i["rho_cu"])
    return metal(i.get("metal") or i["alloy"]).density


def plate(row: dict[str, Any]) -> float:
    i = row["input"]
    match row["id"].removeprefix("plate."):
        case "90g":
            return layer_thickness(i["g"], i["dm2"], i["rho"])
        case "90g_areal":
            return layer_mass(layer_thickness(i["g"], i["dm2"]), 1)
        case "100um2":
            return layer_mass(i["um"], i["dm2"], i["rho"])
        case "12oz_gross":
            return float((Mass.of(i["ozt"], "ozt") / i["pieces"]).grams)
    raise AssertionError(f"no test for {row['id']}")


def water(row: dict[str, Any]) -> float:
    if row["id"].startswith("water.tanaka"):
        return water_density(row["input"]["t_C"])
    iapws = pytest.importorskip("iapws", reason="the reference library is a development package")
    if row["id"] == "water.iapws95_20":
        # our formula against the same state: they agree to 1.2 g/m3
        assert abs(water_density(20) - row["expected"]) < 0.0012
        return float(iapws.IAPWS95(T=293.15, P=0.101325).rho)
    low, high = row["input"]["range_C"]
    far = (
        abs(iapws.IAPWS95(T=273.15 + t, P=0.101325).rho - water_density(t))
        for t in range(low, high + 1, 5)
    )
    return 1000 * max(far)


_UNITS = {
    "grain": "gr", "pennyweight": "dwt", "troy_ounce": "ozt", "troy_pound": "lbt",
    "avoirdupois_ounce": "oz", "avoirdupois_pound": "lb", "metric_carat": "ct",
    "carat_point": "point", "tael_hk": "tael-hk", "baht_bullion": "baht",
    "tael_taiwan": "tael-tw", "tael_china_1959": "tael-cn", "baht_jewellery": "baht-j",
    "tael_hk_jewellery": "tael-hk-j", "mesghal_iran": "mesghal", "zolotnik": "zolotnik-wt",
    "pearl_grain": "pearl-gr",
}  # fmt: skip


def unit(row: dict[str, Any]) -> float:
    i = row["input"]
    if "unit" in i:
        return float(Mass.of(i["value"], _UNITS.get(i["unit"], i["unit"])).grams)
    if "from" in i:
        return float(Mass.of(i["value"], i["from"]).to(_UNITS.get(i["to"], i["to"])))
    return float(Mass.parse(" ".join(f"{n} {word}" for word, n in i.items())).grams)


def iacs(row: dict[str, Any]) -> float:
    if row["id"] == "iacs.definition":
        return resistivity(100)
    value = metal(row["input"]["metal"]).iacs
    assert value is not None
    return value


WORK: dict[str, Callable[[dict[str, Any]], float]] = {
    "unit": unit,
    "fineness": lambda r: float(Fineness.of(r["input"]["parts"], r["input"]["of"]).permille),
    "density": dense,
    "water": water,
    "air": lambda r: air_density(r["input"]["p_hPa"], r["input"]["rh_pct"], r["input"]["t_C"]),
    "hydro": hydro,
    "melt": melt,
    "plate": plate,
    "iacs": iacs,
}


@pytest.mark.parametrize(
    "row", [pytest.param(r, id=f"core-{r['id']}") for r in CORE]
    + ([pytest.param(r, id=r["id"]) for r in shared()]
       or [pytest.param({}, marks=pytest.mark.skip(reason="no shared check values beside this checkout"))])
)  # fmt: skip
def test_check_values(row: dict[str, Any]) -> None:
    got = WORK[row["id"].split(".")[0]](row)
    memory = "; FROM MEMORY: look it up first" if row["confidence"] == "from-memory" else ""

    assert got == pytest.approx(row["expected"], abs=row["tolerance"]), row["source"] + memory


def test_every_kind_of_row_has_a_core() -> None:
    assert {row["id"].split(".")[0] for row in CORE} == set(PREFIXES)


@pytest.mark.parametrize("row", [r for r in shared() if r["id"].startswith("melt.cand")])
def test_published_shares_lie_within_the_rules_of_thumb(row: dict[str, Any]) -> None:
    if "gross_oz" not in row["input"]:
        return
    rule = allowance("candelabrum" if "candelabra" in row["id"] else "candlestick-low")
    low, high = rule.silver(Mass.of(Decimal(str(row["input"]["gross_oz"])), "oz"))

    assert low <= Mass.of(Decimal(str(row["input"]["silver_oz"])), "oz") <= high
