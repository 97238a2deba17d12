"""Weighing in water: water and air against reference libraries, examples, budgets, refusals."""

import math
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planish.library import load
from planish.metal import (
    Arrangement,
    Immersion,
    Rest,
    Rule,
    Verdict,
    conclude,
    density,
    not_excluded,
)
from planish.metal.air import air_density, buoyancy_share
from planish.metal.densitysays import CANNOT
from planish.metal.hydro import by_step, displacement, refusal, wire_pull
from planish.metal.mixture import density_of, fineness_of, ideal_density
from planish.metal.water import water_density, water_slope
from planish.quantity import QuantityError

#: g/m³ by which our water may differ from a reference
NEAR = 2e-3
#: densities in kg/m³: M. Tanaka and others, Metrologia 38 (2001) 301-309, recommended table
TABLE = {0: 999.8428, 10: 999.7027, 15: 999.1026, 20: 998.2067, 25: 997.0470, 30: 995.6488,
         40: 992.2152}  # fmt: skip


def piece(air: float = 12.5, water: float = 11.3, **more: Any) -> Immersion:
    given = {"celsius": 20, "step": 0.01, "wire": 0.0, **more}
    return Immersion(air=(air,), water=(water,), **given)


@pytest.mark.parametrize(("celsius", "expected"), TABLE.items())
def test_water_after_its_table(celsius: int, expected: float) -> None:
    assert water_density(celsius) == pytest.approx(expected, abs=1e-4)


def test_water_within_two_grams_of_iapws() -> None:
    """IAPWS-95 at 101 325 Pa, as the package iapws reckons it."""
    iapws = pytest.importorskip("iapws", reason="the reference library is a development package")
    far = [
        abs(iapws.IAPWS95(T=273.15 + t, P=0.101325).rho - water_density(t)) for t in range(0, 41, 4)
    ]

    assert max(far) < NEAR


def test_water_within_two_grams_of_coolprop() -> None:
    """IAPWS-95 at 101 325 Pa, as CoolProp reckons it; it refuses 0 °C, where water would freeze."""
    coolprop = pytest.importorskip(
        "CoolProp.CoolProp", reason="the reference library is a development package"
    )
    far = [
        abs(coolprop.PropsSI("D", "T", 273.15 + t, "P", 101325, "Water") - water_density(t))
        for t in (0.01, *range(1, 41))
    ]

    assert max(far) < NEAR


@pytest.mark.parametrize("celsius", [-0.1, 40.1, 68.0])
def test_water_outside_the_formula_is_refused(celsius: float) -> None:
    with pytest.raises(QuantityError, match="degrees Celsius"):
        water_density(celsius)


def test_water_grows_lighter_with_warmth() -> None:
    # 998.2067 at 20, 997.9950 at 21 °C in the table
    assert water_slope(20.5) == pytest.approx(997.9950 - 998.2067, abs=1e-3)


def test_air_by_the_ideal_gas_law() -> None:
    """Dry air: p M / (R T) with M = 28.9647 g/mol, R = 8.314462618 J/(mol K) (CODATA 2018)."""
    for pressure, celsius in ((1013.25, 20.0), (900.0, 5.0)):
        ideal = 100 * pressure * 0.0289647 / (8.314462618 * (273.15 + celsius))
        assert air_density(pressure, 0, celsius) == pytest.approx(ideal, rel=1e-3)
    assert air_density(1013.25, 90, 25) < air_density(1013.25, 10, 25)
    with pytest.raises(QuantityError, match="hPa"):
        air_density(29.9, 50, 20)


def test_buoyancy_of_silver_is_a_few_hundred_thousandths() -> None:
    # 0.0012 (1 / 10.36 - 1 / 8.0) = -3.4e-5, by hand
    assert buoyancy_share(10.36) == pytest.approx(-3.4e-5, abs=1e-6)


def test_the_worked_bracelet() -> None:
    """12.5 / 1.2 x (0.9982067 - 0.0012) + 0.0012 = 10.3867, by hand."""
    found = density(piece())

    assert found.measured.value == pytest.approx(10.3867, abs=5e-4)
    assert float(found.lines[-1].figure) == pytest.approx(10.3867, abs=5e-4)
    assert found.stated.rule is Rule.LINEAR


def test_the_step_alone_against_the_budget() -> None:
    """u = density x 0.408 step / D; the full first-order rule is smaller by sqrt((1 + (W/A)²) / 2)."""
    found = density(piece(celsius_plus_minus=0, hectopascal=1013.25))
    rough = by_step(12.5, 0.01, found.measured.value)

    step = [c.uncertainty for c in found.measured.budget() if c.name.startswith("reading")]
    expected = rough * math.sqrt((1 + (11.3 / 12.5) ** 2) / 2)
    assert math.hypot(*step) == pytest.approx(expected, rel=0.01)


def test_the_beaker_on_the_balance_gives_the_same() -> None:
    hanging = density(piece())
    beaker = density(piece(water=1.2, arrangement=Arrangement.BEAKER))

    assert beaker.measured.value == pytest.approx(hanging.measured.value)
    # it reads the displacement at once: one step fewer in what matters
    assert beaker.measured.uncertainty < hanging.measured.uncertainty


def test_a_harness_comes_off() -> None:
    """Coin of 26.922 g: 26.965 and 24.306 g with a harness of 0.043 and 0.023 g (a coin forum)."""
    found = density(piece(26.965, 24.306, harness_air=0.043, harness_water=0.023, step=0.001))
    bare = density(piece(26.922, 24.283, step=0.001))

    assert found.measured.value == pytest.approx(bare.measured.value)
    assert found.measured.uncertainty > bare.measured.uncertainty


def test_repeats_bring_their_own_uncertainty() -> None:
    """Type A, GUM 4.2: standard deviation of the mean; few readings widen the interval."""
    water = (11.29, 11.31, 11.30, 11.32)
    found = density(Immersion(air=(12.5,) * 4, water=water, celsius=20, step=0.001, wire=0))
    budget = {c.name: c.uncertainty for c in found.measured.budget()}
    scatter = 0.0129099 / 2  # standard deviation of the four, over the root of four

    assert budget["reading in water"] == pytest.approx(scatter * 10.4 / 1.2, rel=0.05)
    # 3 degrees of freedom: 3.18 instead of 1.96 (GUM table G.2)
    reach = (found.stated.high - found.stated.low) / 2 / found.stated.uncertainty
    assert reach == pytest.approx(3.18, abs=0.05)


def test_a_rising_weight_in_water_warns_of_bubbles() -> None:
    water = (11.25, 11.28, 11.31)
    found = density(Immersion(air=(12.5,), water=water, celsius=20, step=0.01))

    assert "bubbles were leaving" in found.cautions[0]
    assert "bubbles were leaving" not in density(piece()).cautions[0]


def test_a_bubble_of_ten_cubic_millimetres() -> None:
    """-0.085 g/cm³ on 12.5 g of sterling: 12.5 / 1.2034 against 12.5 / 1.2134, by hand."""
    without = density(piece(water=12.5 - 1.2034)).measured.value
    holding = density(piece(water=12.5 - 1.2034 - 0.00998)).measured.value
    found = density(piece(water=12.5 - 1.2034))

    assert without - holding == pytest.approx(0.085, abs=0.001)
    assert any("by 0.085 g/cm³" in c for c in found.cautions)


def test_bubbles_known_to_be_few_move_and_widen_the_figure() -> None:
    plain, holding = density(piece()), density(piece(bubbles=10))

    assert holding.measured.value > plain.measured.value
    assert holding.measured.uncertainty > plain.measured.uncertainty
    assert "air on the piece" in {c.name for c in holding.measured.budget()}


def test_the_pull_on_a_wire() -> None:
    """0.0728 N/m x pi x 0.1 mm = 22.9 µN, the weight of 2.33 mg, by hand."""
    assert wire_pull(0.1) == pytest.approx(0.00233, abs=1e-5)
    assert density(piece(wire=0.2)).measured.uncertainty > density(piece()).measured.uncertainty


def test_a_coarse_balance_bends_the_interval() -> None:
    """3 g on a balance of 0.1 g: D = 0.3 within 0.1, so the interval is drawn and lies askew."""
    found = density(piece(3.0, 2.7, step=0.1))
    stated = found.stated

    assert stated.rule is Rule.SIMULATED
    assert stated.high - stated.value > stated.value - stated.low
    # limits of the readings: 2.95 / 0.4 and 3.05 / 0.2 times 0.997
    assert 7.3 < stated.low < stated.high < 15.3
    assert conclude(found, load().metals).verdict is Verdict.OPEN


def test_turquoise_taken_out_of_a_ring() -> None:
    """16 g of 925 and 2.4 g of stone at 2.75: V = 16 / 10.3574 + 2.4 / 2.75, weights reckoned back."""
    body, stone = 16 / density_of(925), 2.4 / 2.75
    air, water = 0.0012, water_density(20) / 1000
    reads = 18.4 - air * (body + stone), 18.4 - water * (body + stone)
    rest = Rest.of("turquoise", 2.4, 2.75, 2.75)
    found = density(piece(*reads, step=0.001), words="ring with turquoise", rest=rest)

    assert found.measured.value == pytest.approx(density_of(925), abs=1e-3)
    assert float(found.lines[-1].figure) == pytest.approx(density_of(925), abs=2e-3)
    with pytest.raises(QuantityError, match="more than one material"):
        density(piece(*reads), words="ring with turquoise")


@pytest.mark.parametrize(
    "words",
    ["hollow bangle", "candlestick, weighted", "knife with steel blade", "ring, garnets",
     "beads", "riveted handle", "teapot, ebony handle", "filled base", "enamelled spoon"],
)  # fmt: skip
def test_what_is_not_of_one_metal_throughout_is_refused(words: str) -> None:
    with pytest.raises(QuantityError) as fault:
        density(piece(), words=words)
    assert "volume of what is not that metal" in str(fault.value)


@pytest.mark.parametrize("words", ["", "teaspoon", "salver", "bracelet, no stones", "not hollow"])
def test_what_is_of_one_metal_is_weighed(words: str) -> None:
    assert refusal(words) == ""


@pytest.mark.parametrize(
    ("air", "water", "celsius"), [(12.5, 12.6, 20), (12.5, 12.5, 20), (0.0, -1.0, 20), (12.5, 11.3, 60)]
)  # fmt: skip
def test_figures_that_cannot_be_are_refused(air: float, water: float, celsius: float) -> None:
    with pytest.raises(QuantityError):
        density(piece(air, water, celsius=celsius))


@pytest.mark.parametrize(
    ("water", "verdict"),
    [
        (11.30, Verdict.SILVER),
        (11.07, Verdict.NOT_SILVER),  # 8.716: nickel silver
        (10.786, Verdict.NOT_SILVER),  # 7.28: pewter
        (7.87, Verdict.NOT_SILVER),  # 2.70: aluminium
    ],
)
def test_verdicts(water: float, verdict: Verdict) -> None:
    read = conclude(density(piece(water=water)), load().metals)

    assert read.verdict is verdict
    assert read.cannot == CANNOT
    assert "925" not in read.says  # never a fineness mark


def test_what_fits_nickel_silver() -> None:
    read = conclude(density(piece(water=11.07)), load().metals)
    groups = {f.group for f in read.fits.fits}

    assert "nickel silver" in groups
    assert "silver-copper" in read.fits.excluded
    assert read.fineness is None


def test_sterling_and_coin_silver_are_never_told_apart_by_ten_milligrams() -> None:
    """Gap 0.0435 g/cm³, 1.24 standard uncertainties of a 0.01 g balance with 12.5 g."""
    read = conclude(density(piece(water=12.5 - displacement(12.5, density_of(925)))), load().metals)

    assert {"silver-925", "silver-900"} <= {f.id for f in read.fits.fits}
    assert read.fineness is not None
    low, high = read.fineness
    assert low <= 900
    assert high >= 925


def test_lead_with_nickel_silver_passes_for_sterling() -> None:
    """62.2 to 37.8 by volume reads 10.36; the verdict says that silver is not proved."""
    body = ideal_density({11.35: 0.6221 * 11.35, 8.73: 0.3779 * 8.73})
    read = conclude(density(piece(water=12.5 - displacement(12.5, body))), load().metals)

    assert body == pytest.approx(10.36, abs=1e-3)
    assert read.verdict is Verdict.SILVER
    assert any("not proved" in words for words in read.cannot)


@given(st.floats(2.0, 20.0), st.floats(0.001, 0.5))
def test_a_wider_interval_excludes_less(middle: float, half: float) -> None:
    metals = load().metals
    narrow = {f.id for f in not_excluded(middle - half, middle + half, metals).fits}
    wide = {f.id for f in not_excluded(middle - 2 * half, middle + 2 * half, metals).fits}

    assert narrow <= wide


@given(st.sampled_from([m for m in load().metals if m.group != "filler"]))
def test_no_material_excludes_itself(metal: Any) -> None:
    found = not_excluded(metal.density, metal.density, load().metals)

    assert metal.id in {f.id for f in (*found.fits, *found.wide)}


@given(st.floats(500, 1000))
def test_fineness_and_back(permille: float) -> None:
    assert fineness_of(density_of(permille)) == pytest.approx(permille, abs=1e-6)


@settings(deadline=None)
@given(st.floats(5, 500), st.floats(2.5, 19.5), st.floats(5, 35))
def test_a_body_weighed_gives_its_density_back(mass: float, body: float, celsius: float) -> None:
    air, water = 0.0012, water_density(celsius) / 1000
    reads = mass - air * mass / body, mass - water * mass / body
    found = density(piece(*reads, celsius=celsius, step=0.0001))

    assert found.measured.value == pytest.approx(body, rel=1e-6)
    assert sum(c.share for c in found.measured.budget()) == pytest.approx(1)
    assert found.stated.low < body < found.stated.high
