"""Drawing against the examples of JCGM 101:2008, clause 9, and against the linear rule.

The figures of those examples are from memory, save where a formula stands beside them.
"""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planish.metal import Alloy, Deduction, Kind, Method, Rule, Weighing, by_share, weigh
from planish.metal.montecarlo import (
    NORMAL_95,
    Input,
    Shape,
    agrees,
    coverage_factor,
    simulate,
    tolerance,
)
from planish.metal.stated import effective_freedom, linear
from planish.quantity import Fineness, Mass, QuantityError


def _sum(*x: float) -> float:
    return math.fsum(x)


def _four(shape: Shape, spreads: tuple[float, ...]) -> list[Input]:
    """Four inputs about nought with these standard deviations."""
    wide = math.sqrt(3) if shape is Shape.RECTANGULAR else 1
    return [
        Input(name=f"X{n}", middle=0.0, spread=s * wide, shape=shape)
        for n, s in enumerate(spreads, 1)
    ]


@pytest.mark.parametrize(
    ("shape", "spreads", "uncertainty", "reach", "holds"),
    [
        # JCGM 101:2008, 9.2.2: standard normal inputs, u = 2.00, [-3.92, 3.92]
        (Shape.NORMAL, (1, 1, 1, 1), 2.00, 3.92, True),
        # 9.2.3: rectangular inputs of the same deviation; the sum's end in closed form,
        # 2 sqrt(3) (2 - (3/5)^(1/4)) = 3.88
        (Shape.RECTANGULAR, (1, 1, 1, 1), 2.00, 2 * math.sqrt(3) * (2 - 0.6**0.25), True),
        # 9.2.4: one of ten times the width, u = 10.1, [-17.0, 17.0] against the linear
        # [-19.9, 19.9]: not validated
        (Shape.RECTANGULAR, (1, 1, 1, 10), 10.1, 17.0, False),
    ],
)
def test_the_additive_examples_of_the_supplement(
    *, shape: Shape, spreads: tuple[float, ...], uncertainty: float, reach: float, holds: bool
) -> None:
    inputs = _four(shape, spreads)
    sample = simulate(_sum, inputs)
    by_rule = linear(_sum, inputs)

    # 20,000 draws: an end is sure to 2 % of u (three standard errors 6 %), u to 0.5 % (2 %)
    assert sample.uncertainty == pytest.approx(uncertainty, rel=0.02)
    assert sample.low == pytest.approx(-reach, abs=0.06 * uncertainty)
    assert sample.high == pytest.approx(reach, abs=0.06 * uncertainty)
    assert by_rule.uncertainty == pytest.approx(uncertainty, abs=0.06)
    assert agrees(by_rule.value, by_rule.uncertainty, sample) is holds


def test_the_comparison_of_a_loss_calibration_bends() -> None:
    """JCGM 101:2008, 9.4.2.2, x1 = x2 = 0, u = 0.005, r = 0: y = x1² + x2².

    Linear: 0, u = 0. Drawn: mean 50e-6, u 50e-6, shortest 95 % interval [0, 150]e-6.
    """
    inputs = [Input(name=n, middle=0.0, spread=0.005) for n in ("x1", "x2")]
    sample = simulate(lambda a, b: a * a + b * b, inputs)
    by_rule = linear(lambda a, b: a * a + b * b, inputs)

    assert by_rule.value == 0.0
    assert by_rule.uncertainty < 1e-12
    assert sample.mean == pytest.approx(50e-6, rel=0.03)
    assert sample.uncertainty == pytest.approx(50e-6, rel=0.05)
    # 5 % lie above 150e-6, so 2.5 % above 184e-6 (an exponential distribution: -ln 0.025 x 50e-6)
    assert sample.high == pytest.approx(50e-6 * -math.log(0.025), rel=0.05)


def test_a_draw_is_the_same_every_time_and_another_with_another_seed() -> None:
    inputs = _four(Shape.NORMAL, (1, 1, 1, 1))

    assert simulate(_sum, inputs) == simulate(_sum, inputs)
    assert simulate(_sum, inputs) != simulate(_sum, inputs, seed=7)


@pytest.mark.parametrize(
    ("u", "digits", "half"),
    [
        # JCGM 101:2008, 7.9.2, examples 1 to 3
        (0.00035, 2, 0.000005),
        (2.0, 1, 0.5),
        (0.07, 1, 0.005),
        (0.0996, 2, 0.005),  # rounds up to 0.10
    ],
)
def test_the_numerical_tolerance(u: float, digits: int, half: float) -> None:
    assert tolerance(u, digits) == pytest.approx(half)


@pytest.mark.parametrize(
    ("freedom", "factor"), [(1, 12.71), (4, 2.78), (4.9, 2.78), (11, 2.23), (math.inf, NORMAL_95)]
)
def test_coverage_factors(freedom: float, factor: float) -> None:
    """GUM, table G.2, the next lower degrees of freedom."""
    assert coverage_factor(freedom) == factor


def test_effective_freedom_of_the_guide() -> None:
    """GUM G.4.1, example: relative 0.25, 0.57, 0.82 % with 9, 4, 14 give 1.03 % and 19."""
    inputs = [
        Input(name=n, middle=1.0, spread=u, shape=Shape.STUDENT, freedom=f)
        for n, u, f in (("p", 0.0025, 9), ("q", 0.0057, 4), ("r", 0.0082, 14))
    ]
    result = linear(lambda p, q, r: p * q * r, inputs)

    assert result.uncertainty == pytest.approx(0.0103, abs=5e-5)
    assert effective_freedom(result, inputs) == pytest.approx(19.0, abs=0.05)


def test_a_students_input_spreads_as_it_should() -> None:
    """Variance of t with f degrees: f / (f - 2)."""
    one = Input(name="t", middle=5.0, spread=1.0, shape=Shape.STUDENT, freedom=10)
    sample = simulate(lambda x: x, [one])

    assert sample.mean == pytest.approx(5, abs=0.03)
    assert sample.uncertainty == pytest.approx(math.sqrt(10 / 8), rel=0.03)
    assert sample.high - 5 == pytest.approx(2.23, rel=0.04)


def test_bounds_hold_and_what_cannot_be_is_refused() -> None:
    half = Input(name="x", middle=0.0, spread=1.0, low=0.0)
    sample = simulate(lambda x: x, [half])

    assert sample.low >= 0
    # half-normal: mean sqrt(2 / pi)
    assert sample.mean == pytest.approx(math.sqrt(2 / math.pi), rel=0.02)
    with pytest.raises(QuantityError, match="next to nothing"):
        simulate(lambda x: x, [Input(name="x", middle=0.0, spread=1.0, low=9.0)])
    with pytest.raises(QuantityError, match="hardly any"):
        simulate(lambda x: x, [Input(name="x", middle=-9.0, spread=1.0)], accept=lambda y: y > 0)


ALLOY = Alloy(fineness=Fineness.of(925), basis="test")


def _measured(mass: str, sure: str) -> Deduction:
    return Deduction(
        kind=Kind.STONE, what="stone", mass=Mass.parse(mass), plus_minus=Mass.parse(sure),
        method=Method.MEASURED, source="formula",
    )  # fmt: skip


@settings(max_examples=10, deadline=None)
@given(st.floats(50, 500), st.floats(0.002, 0.08), st.floats(0, 15))
def test_drawn_and_linear_agree_where_linear_holds(
    gross: float, share: float, permille: float
) -> None:
    """Normal inputs, relative uncertainty small: standard uncertainty and ends within 5 %."""
    from decimal import Decimal  # noqa: PLC0415  # beside its only use

    from planish.metal.netting import fine_sum, net_sum  # noqa: PLC0415

    weighing = Weighing(
        gross=Mass.of(round(gross, 2)), resolution=Mass.of(Decimal("0.01")),
        plus_minus=Mass.of(Decimal("0.05")),
    )  # fmt: skip
    off = _measured(f"{gross * 0.2:.3f} g", f"{gross * share:.3f} g")
    alloy = Alloy(fineness=Fineness.of(800), plus_minus=Decimal(str(round(permille, 2))))
    sum_ = fine_sum((net_sum(weighing, (off,)),), (alloy,))
    inputs = [t.input for t in sum_.nets[0].terms]
    fineness = sum_.nets[0].fineness
    assert fineness is not None
    terms, constant = sum_.nets[0].terms, sum_.nets[0].constant

    def model(*x: float) -> float:
        net = constant + sum(t.factor * v for t, v in zip(terms, x[:-1], strict=True))
        return net * x[-1] / 1000

    sample = simulate(model, [*inputs, fineness])
    u = sum_.measured.uncertainty
    assert sample.mean == pytest.approx(sum_.measured.value, abs=0.05 * u)
    assert sample.uncertainty == pytest.approx(u, rel=0.05)
    assert sample.high - sample.low == pytest.approx(2 * NORMAL_95 * u, rel=0.05)


def test_they_differ_where_linear_does_not_hold_and_the_drawn_one_is_used() -> None:
    """A filler of 80 to 99 % of the gross weight: the linear interval falls below nought."""
    gross = Mass.of(274)
    filler = by_share(
        gross, Fineness.of(800).share, Fineness.of(990).share, kind=Kind.FILLER, what="pitch",
        source="common practice",
    )  # fmt: skip
    found = weigh("candlestick", Weighing(gross=gross), deductions=(filler,), alloy=ALLOY)

    assert found.net_measured is not None
    stated = found.net_stated
    assert stated is not None
    assert stated.rule is Rule.SIMULATED
    assert found.net_measured.value - NORMAL_95 * found.net_measured.uncertainty < 0
    # a rectangle from 1 to 20 % of 274 g: its middle 95 % by arithmetic
    assert stated.low == pytest.approx(274 * (0.01 + 0.025 * 0.19), rel=0.05)
    assert stated.high == pytest.approx(274 * (0.20 - 0.025 * 0.19), rel=0.01)
    assert "limits" in stated.because


def test_a_deduction_near_the_gross_weight_never_leaves_less_than_nought() -> None:
    found = weigh(
        "brooch", Weighing(gross=Mass.of(10)), deductions=(_measured("9 g", "0.8 g"),), alloy=ALLOY
    )
    stated = found.fine_stated

    assert stated is not None
    assert stated.rule is Rule.SIMULATED
    assert stated.low > 0
    assert found.fine is not None
    # cutting off what cannot be moves the mean up
    assert stated.value > float(found.fine.grams)


def test_a_plain_weighing_stays_linear() -> None:
    found = weigh("spoon", Weighing(gross=Mass.of(50), resolution=Mass.of(1) / 10), alloy=ALLOY)

    assert found.fine_stated is not None
    assert found.fine_stated.rule is Rule.LINEAR
    assert found.fine_stated.sample is None


def test_what_was_checked_and_stood_says_so() -> None:
    found = weigh(
        "ring", Weighing(gross=Mass.of(10)), deductions=(_measured("4 g", "0.7 g"),), alloy=ALLOY
    )

    assert found.net_stated is not None
    assert found.net_stated.rule is Rule.CHECKED
    assert "clause 8" in found.net_stated.because
