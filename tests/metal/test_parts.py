"""Sets and parts: sums, one balance's error counted once, and what does not fit together."""

import datetime as dt
import itertools
import math
from collections.abc import Callable
from decimal import Decimal

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.library import load
from planish.metal import (
    Alloy,
    Deduction,
    Kind,
    Method,
    Part,
    PieceStatement,
    Weighing,
    by_volume,
    metal_value,
    weigh,
    weigh_parts,
)
from planish.metal.value import MetalPrice
from planish.quantity import Fineness, Mass, Measured, Money, QuantityError

STERLING = Alloy(fineness=Fineness.of(925), basis="test")
STEP, SURE = Mass.of(Decimal("0.1")), Mass.of(Decimal("0.05"))


def part(name: str, grams: str, **more: object) -> Part:
    weighing = Weighing(gross=Mass.of(Decimal(grams)), resolution=STEP, plus_minus=SURE)
    given_ = {"alloy": STERLING, **more}
    return Part(name=name, weighing=weighing, **given_)  # type: ignore[arg-type]


def off(what: str, grams: str, *, sure: str | None = None, how: str = "weighed") -> Deduction:
    return Deduction(
        kind=Kind.OTHER, what=what, mass=Mass.of(Decimal(grams)),
        plus_minus=Mass.of(Decimal(sure)) if sure else None,
        method=Method.WEIGHED if how == "weighed" else Method.MEASURED, source="balance",
    )  # fmt: skip


def test_a_pot_and_its_lid_add_up(worked: Callable[[str], float]) -> None:
    button = off("button", "4", sure="0.3")
    found = weigh_parts("teapot", [part("pot", "412"), part("lid", "84.2", deductions=(button,))])

    assert found.gross == Mass.of(Decimal("496.2"))
    assert found.net == Mass.of(Decimal("492.2"))
    assert found.fine == found.net * Decimal("0.925")
    for line in found.lines:
        assert worked(line.formula) == pytest.approx(float(line.figure), rel=1e-9)
    assert [p.piece for p in found.parts] == ["pot", "lid"]


def test_one_balance_errs_once_and_in_full() -> None:
    """Two readings of one balance: steps add as squares, the calibration straight."""
    found = weigh_parts("pair", [part("one", "200"), part("two", "200")])
    budget = (
        {c.name: c.uncertainty for c in found.net_measured.budget()} if found.net_measured else {}
    )

    assert budget["calibration of the balance"] == pytest.approx(0.1)
    assert budget["one, step of the balance"] == pytest.approx(0.1 / math.sqrt(12))
    assert found.net_measured is not None
    assert found.net_measured.uncertainty == pytest.approx(math.hypot(0.1, 0.1 * math.sqrt(2 / 12)))


def test_two_balances_err_apart() -> None:
    other = Weighing(gross=Mass.of(200), plus_minus=SURE, balance="pocket scale")
    found = weigh_parts(
        "pair", [part("one", "200"), Part(name="two", weighing=other, alloy=STERLING)]
    )

    assert found.net_measured is not None
    u = math.hypot(0.05, 0.05, 0.1 / math.sqrt(12))
    assert found.net_measured.uncertainty == pytest.approx(u)


def test_one_mark_is_one_error_and_two_marks_are_two() -> None:
    alike = Alloy(fineness=Fineness.of(800), plus_minus=Decimal(10), basis="touch")
    apart = Alloy(fineness=Fineness.of(800), plus_minus=Decimal(10), basis="touch, spot 2")
    same = weigh_parts("box", [part("lid", "100", alloy=alike), part("base", "100", alloy=alike)])
    two = weigh_parts("box", [part("lid", "100", alloy=alike), part("base", "100", alloy=apart)])

    assert same.fine_measured is not None
    assert two.fine_measured is not None
    assert dict(same.fine_measured.parts)["fineness"] == pytest.approx(2.0)
    assert "lid, fineness" in dict(two.fine_measured.parts)
    assert two.fine_measured.uncertainty < same.fine_measured.uncertainty


def test_a_blade_apart_holds_no_silver_and_settles_the_knife() -> None:
    handle = part("handle", "42")
    with_blade = weigh_parts("dinner knife", [handle, part("blade", "58", other=True)])
    without = weigh_parts("dinner knife", [handle])

    assert with_blade.asks == ()
    assert with_blade.net == Mass.of(42)
    assert with_blade.gross == Mass.of(100)
    assert [a.kind for a in without.asks] == [Kind.STEEL]
    assert without.net is None
    assert without.fine is None


def test_a_part_that_is_asked_about_holds_back_the_whole() -> None:
    found = weigh_parts("box", [part("lid", "100", words="set with garnets"), part("base", "200")])

    assert [a.kind for a in found.asks] == [Kind.STONE]
    assert found.fine is None
    price = MetalPrice(
        price=Money.of(30, "USD"), per="ozt", date=dt.date(2026, 5, 14), source="test"
    )
    value = metal_value(found, price, effective=price.date)
    assert value.value is None
    assert "gross weight alone" in value.warnings[0]


def test_a_plated_part_counts_for_nothing_and_other_fineness_is_pointed_out() -> None:
    base = Alloy(fineness=Fineness.of(800), basis="test")
    found = weigh_parts(
        "box",
        [part("lid", "100"), part("base", "200", alloy=base), part("tray", "50", plated=True)],
    )

    assert found.net == Mass.of(300)
    assert found.fine == Mass.of(Decimal("92.5")) + Mass.of(160)
    assert any("differ in fineness" in note for note in found.notes)
    assert found.alloy is None


def test_parts_that_do_not_add_up_to_the_whole_are_told() -> None:
    parts = [part("pot", "412"), part("lid", "84.2")]
    fits = weigh_parts(
        "pot", parts, whole=Weighing(gross=Mass.of(Decimal("496.3")), resolution=STEP)
    )
    lacks = weigh_parts("pot", parts, whole=Weighing(gross=Mass.of(505), resolution=STEP))

    assert not any("one by one" in note for note in fits.notes)
    assert any("505.00 g together" in note for note in lacks.notes)


def test_names_part_the_parts() -> None:
    with pytest.raises(QuantityError, match="two parts bear this name"):
        weigh_parts("x", [part("lid", "1"), part("lid", "2")])
    with pytest.raises(QuantityError, match="no part was weighed"):
        weigh_parts("x", [])


def test_a_statement_in_parts_is_stored_and_read_back_equal() -> None:
    found = weigh_parts("box", [part("lid", "100"), part("blade", "20", other=True)])

    assert msgspec.json.decode(msgspec.json.encode(found), type=PieceStatement) == found


def test_a_set_one_by_one_has_mean_spread_and_a_stranger() -> None:
    each = tuple(Mass.of(Decimal(g)) for g in ("41.8", "42.1", "43.0", "52.0"))
    weighing = Weighing.one_by_one(each, resolution=STEP, plus_minus=Mass.of(Decimal("0.02")))
    spread = weighing.spread

    assert weighing.gross == Mass.of(Decimal("178.9"))
    assert spread is not None
    assert spread.mean == Mass.of(Decimal("44.725"))
    # standard deviation by hand: squares 8.555625 + 6.890625 + 2.975625 + 52.925625, over 3
    assert spread.deviation is not None
    assert float(spread.deviation.grams) == pytest.approx(math.sqrt(71.3475 / 3))
    assert spread.odd == (4,)
    # four steps as squares, four calibrations straight
    net = weigh("spoons", weighing, alloy=STERLING).net_measured
    assert net is not None
    assert net.uncertainty == pytest.approx(math.hypot(0.08, 0.1 * math.sqrt(4 / 12)))


def test_a_set_together_has_a_mean_and_no_spread() -> None:
    weighing = Weighing(gross=Mass.of(252), count=6)

    assert weighing.mean == Mass.of(42)
    assert weighing.spread is None


def test_repeats_of_one_piece_are_averaged() -> None:
    """GUM 4.2: 100.1, 100.2, 100.3: mean 100.2, standard deviation of the mean 0.1 / sqrt(3)."""
    readings = tuple(Mass.of(Decimal(g)) for g in ("100.1", "100.2", "100.3"))
    weighing = Weighing.repeated(readings)
    net = weigh("spoon", weighing).net_measured

    assert weighing.gross == Mass.of(Decimal("100.2"))
    assert net is not None
    assert net.uncertainty == pytest.approx(0.1 / math.sqrt(3))
    with pytest.raises(QuantityError, match="at least twice"):
        Weighing.repeated(readings[:1])


def test_readings_and_count_must_agree() -> None:
    with pytest.raises(QuantityError, match="add up to"):
        Weighing(gross=Mass.of(10), count=2, each=(Mass.of(4), Mass.of(5)))
    with pytest.raises(QuantityError, match="count again"):
        Weighing(gross=Mass.of(10), count=0)


def test_the_air_carries_a_hundredth_of_a_gram_in_three_hundred() -> None:
    # 300 x 0.0012 (1 / 10.36 - 1 / 8.0) = -0.0103 g, by hand
    assert float(Weighing(gross=Mass.of(300)).buoyancy.grams) == pytest.approx(-0.0103, abs=5e-4)


def test_a_deduction_by_volume_of_a_material() -> None:
    """12 cm³ of cement, 1.8 to 2.5 g/cm³ alike: 25.8 g, u² = (12 x 0.7 / sqrt(12))² + (2.15 x 1)²."""
    cement = next(m for m in load().metals if m.id == "cement")
    found = by_volume(Measured.of(12, volume=1), cement, kind=Kind.FILLER, what="cement")

    assert found.method is Method.MEASURED
    assert found.mass == Mass.of(Decimal("25.8"))
    assert found.plus_minus is not None
    u = math.hypot(12 * 0.7 / math.sqrt(12), 2.15)
    assert float(found.plus_minus.grams) == pytest.approx(u, abs=1e-3)
    assert "memory" in found.source
    with pytest.raises(QuantityError, match="above zero"):
        by_volume(Measured.of(0), cement, kind=Kind.FILLER, what="cement")


def test_what_is_weighed_on_the_same_balance_shares_its_error() -> None:
    """An error of scale: 100 g less 40 g weighed there leaves 60 % of the error of 100 g."""
    weighing = Weighing(gross=Mass.of(100), plus_minus=SURE)
    net = weigh("ring", weighing, deductions=(off("stone", "40"),)).net_measured

    assert net is not None
    assert net.uncertainty == pytest.approx(0.05 * 0.6)


amounts = st.lists(st.decimals(min_value="0.1", max_value="30", places=2), min_size=1, max_size=4)


@given(st.decimals(min_value="150", max_value="5000", places=1), amounts)
def test_net_and_deductions_make_the_gross(gross: Decimal, taken: list[Decimal]) -> None:
    offs = tuple(off(f"thing {n}", str(g), sure="0.1") for n, g in enumerate(taken))
    found = weigh("piece", Weighing(gross=Mass.of(gross)), deductions=offs, alloy=STERLING)

    assert found.net is not None
    assert found.net + Mass.total(d.best for d in offs) == found.gross
    for measured in (found.net_measured, found.fine_measured):
        assert measured is not None
        assert sum(c.share for c in measured.budget()) == pytest.approx(1)


@given(amounts)
def test_the_order_of_deductions_changes_nothing(taken: list[Decimal]) -> None:
    offs = [off(f"thing {n}", str(g), sure=str(n + 1)) for n, g in enumerate(taken)]
    results = {
        (s.net, round(s.net_measured.uncertainty, 9))
        for order in itertools.permutations(offs)
        if (s := weigh("piece", Weighing(gross=Mass.of(500)), deductions=order)).net_measured
    }

    assert len(results) == 1


@given(
    st.decimals(min_value="20", max_value="900", places=2),
    st.sampled_from(["ozt", "dwt", "gr", "oz", "kg"]),
)
def test_the_unit_of_entry_changes_nothing(grams: Decimal, unit: str) -> None:
    def stated(gross: Mass) -> Mass:
        found = weigh("x", Weighing(gross=gross), deductions=(off("y", "3.25"),), alloy=STERLING)
        assert found.fine is not None
        return found.fine

    entered = Mass.of(Mass.of(grams).to(unit), unit)
    assert abs(stated(entered) - stated(Mass.of(grams))).grams < Decimal("1e-30")
