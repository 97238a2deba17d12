"""The weight statement: worked examples, budgets, and what it refuses to say."""

import math
from collections.abc import Callable
from decimal import Decimal

import msgspec
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from planish.metal import (
    Alloy,
    Deduction,
    Kind,
    Method,
    Weighing,
    WeightStatement,
    allowance,
    by_allowance,
    by_share,
    weigh,
)
from planish.quantity import Fineness, Mass, QuantityError

STERLING = Alloy(fineness=Fineness.of(925), basis="mark and touch test")


def _weighed(
    grams: str, resolution: Mass | None = None, plus_minus: Mass | None = None
) -> Weighing:
    return Weighing(gross=Mass.of(Decimal(grams)), resolution=resolution, plus_minus=plus_minus)


def _turquoise() -> Deduction:
    return Deduction(
        kind=Kind.STONE,
        what="turquoise",
        mass=Mass.of(12, "ct"),
        plus_minus=Mass.of(1, "ct"),
        method=Method.MEASURED,
        source="oval cabochon, specific gravity 2.76",
    )


def test_a_fork() -> None:
    """A published chain: 50 g of sterling hold 46.25 g, 1.48697 ozt (examiner.com, silver weights)."""
    statement = weigh("fork", _weighed("50"), alloy=STERLING)

    assert statement.net == Mass.of(50)
    assert statement.fine == Mass.of(Decimal("46.25"))
    assert float(statement.fine.to("ozt")) == pytest.approx(1.486972, abs=1e-6)
    assert statement.asks == ()


def test_a_ring_with_a_stone_and_its_budget() -> None:
    """Net 18.40 - 2.40 = 16.00 g (shared check melt.ring_stone); u by the root sum of squares."""
    alloy = Alloy(fineness=Fineness.of(925), plus_minus=Decimal(5), basis="test")
    ring = weigh(
        "ring",
        _weighed("18.40", resolution=Mass.of(Decimal("0.01")), plus_minus=Mass.of(Decimal("0.02"))),
        words="set with a turquoise",
        deductions=(_turquoise(),),
        alloy=alloy,
    )

    assert ring.net == Mass.of(16)
    assert ring.fine == Mass.of(Decimal("14.8"))
    u_net = math.sqrt(0.2**2 + 0.02**2 + 0.01**2 / 12)
    assert ring.net_measured is not None
    assert ring.net_measured.uncertainty == pytest.approx(u_net)
    assert ring.fine_measured is not None
    assert ring.fine_measured.uncertainty == pytest.approx(math.hypot(u_net * 0.925, 16 * 0.005))
    assert ring.fine_measured.budget()[0].name == "1: turquoise"


@pytest.mark.parametrize(
    "words", ["candlestick, sterling weighted", "12 dinner knives", "set with garnets"]
)
def test_nothing_is_stated_from_gross_weight_where_something_is_due(words: str) -> None:
    statement = weigh("piece", _weighed("500"), words=words, alloy=STERLING)

    assert statement.asks
    assert statement.net is None
    assert statement.fine is None
    assert statement.fine_measured is None
    assert [line.label for line in statement.lines] == ["gross weight"]


def test_a_filled_candlestick_by_rule_of_thumb_is_wide_and_says_so() -> None:
    gross = Mass.of(Decimal("9.672"), "oz")
    filler = by_allowance(gross, allowance("candlestick-low"), kind=Kind.FILLER)
    stick = weigh("candlestick", Weighing(gross=gross), deductions=(filler,), alloy=STERLING)

    # the dissected piece itself held 1.005 oz (28.5 g), photographed dissection
    assert stick.net_measured is not None
    assert stick.net_measured.value == pytest.approx(28.5, abs=2 * stick.net_measured.uncertainty)
    assert stick.net_measured.relative > 0.1
    assert any("standard uncertainty of the net" in note for note in stick.notes)
    assert any("estimate until" in note for note in stick.notes)


def test_twelve_knives() -> None:
    """12 handles of 0.5 ozt sterling hold 5.55 ozt fine (shared check melt.knife_half_ozt)."""
    blades = Deduction(
        kind=Kind.STEEL,
        what="blades and cement",
        mass=Mass.of(900) - Mass.of(6, "ozt"),
        method=Method.WEIGHED,
        source="balance, handles emptied",
    )
    knives = weigh("dinner knives", _weighed("900"), deductions=(blades,), alloy=STERLING)

    assert knives.fine is not None
    assert float(knives.fine.to("ozt")) == pytest.approx(5.55, abs=1e-9)


def test_plate_has_no_fine_silver() -> None:
    statement = weigh("tray", _weighed("1500"), alloy=STERLING, plated=True)

    assert statement.fine is None
    assert any(note.startswith("plated") for note in statement.notes)


def test_without_a_fineness_there_is_a_net_weight_only() -> None:
    statement = weigh("tray", _weighed("1500"))

    assert statement.net == Mass.of(1500)
    assert statement.fine is None


def test_doubtful_grounds_are_said_aloud() -> None:
    by_mark = weigh("spoon", _weighed("50"), alloy=Alloy(fineness=Fineness.of(925), basis="mark"))
    by_test = weigh(
        "spoon", _weighed("50"), alloy=Alloy(fineness=Fineness.of(925), basis="XRF test")
    )
    bare = Deduction(
        kind=Kind.STONE, what="jet", mass=Mass.of(2), method=Method.MEASURED, source="formula"
    )
    unsure = weigh("brooch", _weighed("50"), words="jet", deductions=(bare,), alloy=STERLING)

    assert any("no proof of fineness" in note for note in by_mark.notes)
    assert not any("no proof of fineness" in note for note in by_test.notes)
    assert any("no stated uncertainty" in note for note in unsure.notes)


@pytest.mark.parametrize("grams", ["0", "-5"])
def test_a_piece_weighs_more_than_nothing(grams: str) -> None:
    with pytest.raises(QuantityError, match="more than nothing"):
        _weighed(grams)


def test_more_cannot_come_off_than_was_weighed() -> None:
    with pytest.raises(QuantityError, match="leave nothing"):
        weigh("ring", _weighed("2"), deductions=(_turquoise(),))


def test_it_is_stored_and_read_back_equal() -> None:
    ring = weigh("ring", _weighed("18.40"), deductions=(_turquoise(),), alloy=STERLING)

    assert msgspec.json.decode(msgspec.json.encode(ring), type=WeightStatement) == ring


shares = st.decimals(min_value="0.01", max_value="0.4", places=3)


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    st.decimals(min_value="1", max_value="20000", places=2),
    shares,
    shares,
    st.decimals(min_value=500, max_value=1000, places=1),
    st.sampled_from(["g", "ozt", "dwt"]),
)
def test_every_line_works_out_from_what_is_printed(  # noqa: PLR0917  # drawn one by one
    worked: Callable[[str], float],
    gross: Decimal,
    a: Decimal,
    b: Decimal,
    permille: Decimal,
    unit: str,
) -> None:
    weighing = Weighing(gross=Mass.of(gross, unit))
    stones = Deduction(
        kind=Kind.STONE,
        what="stones",
        mass=weighing.gross * min(a, b),
        method=Method.WEIGHED,
        source="balance",
    )
    filler = by_share(
        weighing.gross,
        min(a, b),
        max(a, b),
        kind=Kind.FILLER,
        what="pitch",
        source="common practice",
    )
    statement = weigh(
        "piece",
        weighing,
        deductions=(stones, filler),
        alloy=Alloy(fineness=Fineness.of(permille), basis="test"),
    )

    assert [line.label for line in statement.lines if line.formula][-3:] == [
        "net weight",
        "fine silver",
        "fine silver",
    ]
    for line in statement.lines:
        if line.formula:
            assert worked(line.formula) == pytest.approx(float(line.figure), rel=1e-9, abs=1e-8)
    assert statement.net is not None
    assert statement.net_measured is not None
    assert statement.net_measured.value == pytest.approx(float(statement.net.grams))
    assert statement.net < statement.gross
