"""Metal value: shared worked examples, ages of prices, payout and charges."""

import datetime as dt
import json
from collections.abc import Callable, Iterator
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from planish.metal import (
    PAYOUT_LEVELS,
    Alloy,
    Charge,
    Deduction,
    Kind,
    MetalPrice,
    MetalValue,
    Method,
    Terms,
    Weighing,
    metal_value,
    weigh,
)
from planish.quantity import Fineness, Mass, Money, QuantityError

FACTS = Path(__file__).resolve().parents[3] / "shared" / "facts"
DAY = dt.date(2026, 5, 14)


def _price(amount: str | float | Decimal, per: str = "ozt", date: dt.date = DAY) -> MetalPrice:
    return MetalPrice(
        price=Money.of(Decimal(str(amount)), "USD"), per=per, date=date, source="a test"
    )


def _value(
    gross: Mass,
    fineness: float,
    price: MetalPrice,
    *,
    off: Mass | None = None,
    terms: Terms | None = None,
    effective: dt.date = DAY,
) -> MetalValue:
    taken: tuple[Deduction, ...] = ()
    if off is not None and off.grams:
        taken = (
            Deduction(
                kind=Kind.OTHER, what="not silver", mass=off, method=Method.WEIGHED, source="x"
            ),
        )
    alloy = Alloy(fineness=Fineness.of(fineness), basis="test")
    statement = weigh("piece", Weighing(gross=gross), deductions=taken, alloy=alloy)
    return metal_value(statement, price, effective=effective, terms=terms)


def _rows(path: Path, ids: set[str]) -> Iterator[Any]:
    if not path.exists():
        yield pytest.param(
            {}, marks=pytest.mark.skip(reason="no shared check values beside this checkout")
        )
        return
    for line in path.read_text(encoding="utf-8").splitlines():
        row = json.loads(line)
        if row["id"] in ids:
            yield pytest.param(row, id=row["id"])


@pytest.mark.parametrize(
    "row",
    list(
        _rows(
            FACTS / "standards" / "checks.jsonl",
            {
                "melt.bracelet",
                "melt.ring_stone",
                "melt.payout",
                "melt.fork_50g",
                "melt.fork_50g_ozt",
            },
        )
    ),
)
def test_shared_check_values_of_melt(row: dict[str, Any]) -> None:
    given_ = row["input"]
    unit = "ozt" if "gross_ozt" in given_ else "g"
    gross = Mass.of(given_.get("gross_g", given_.get("gross_ozt")), unit)
    off = Mass.of(given_.get("stone_ct", 0), "ct") + Mass.of(given_.get("non_silver_g", 0))
    terms = Terms(payout=Decimal(str(given_["payout"]))) if "payout" in given_ else None
    result = _value(gross, given_["fineness"], _price(given_.get("spot", 30)), off=off, terms=terms)
    assert result.value is not None
    fine = {line.unit: line.figure for line in result.lines if line.label == "fine silver"}
    got = {
        "g": fine["g"],
        "ozt": fine["ozt"],
        "USD": (result.payable or result.value).amount,
    }[row["unit"]]

    assert float(got) == pytest.approx(row["expected"], abs=row["tolerance"])


@pytest.mark.parametrize(
    "row",
    list(_rows(FACTS / "worth" / "checks.jsonl", {"melt-01", "melt-02", "melt-03", "melt-04"})),
)
def test_shared_worked_examples_of_melt(row: dict[str, Any]) -> None:
    given_ = row["inputs"]
    grams = given_.get("gross_g") or given_["knives"] * given_["handle_silver_g_each"]
    terms = Terms(payout=Decimal(str(given_["payout"]))) if "payout" in given_ else None
    result = _value(
        Mass.of(grams),
        given_["fineness"] * 1000,
        _price(given_["spot_usd_ozt"]),
        off=Mass.of(given_.get("non_silver_g", 0)),
        terms=terms,
    )
    assert result.value is not None
    got = {
        "fine_ozt": next(line.figure for line in result.lines if line.unit == "ozt"),
        "melt": result.value.amount,
        "melt_payable": result.payable.amount if result.payable else Decimal(0),
    }

    for name, expected in row["expected"].items():
        assert float(got[name]) == pytest.approx(expected, abs=row["tolerance"])


@pytest.mark.parametrize(
    ("grams", "off", "fineness", "price", "expected"),
    [
        # 12.5 × 0.925 / 31.1034768 × 30 and (18.40 - 2.40) × 0.925 / 31.1034768 × 30, worked by hand
        ("12.5", "0", 925, "30", 11.1523),
        ("18.4", "2.4", 925, "30", 14.2749),
        # one troy ounce of fine silver is worth its price
        ("31.1034768", "0", 1000, "78.01", 78.01),
    ],
)
def test_worked_examples(grams: str, off: str, fineness: int, price: str, expected: float) -> None:
    result = _value(Mass.of(Decimal(grams)), fineness, _price(price), off=Mass.of(Decimal(off)))

    assert result.value is not None
    assert float(result.value.amount) == pytest.approx(expected, abs=5e-5)


def test_the_unit_of_the_price_changes_nothing() -> None:
    """1 kg = 32.150746569 ozt (NIST Handbook 44)."""
    gross = Mass.of(850)
    by = {
        unit: _value(gross, 925, _price(Decimal(30) / Mass.of(1, "ozt").to(unit), unit)).value
        for unit in ("ozt", "g", "kg")
    }

    assert by["ozt"] is not None
    for value in by.values():
        assert value is not None
        assert abs((value - by["ozt"]).amount) < Decimal("1e-9")


def test_payout_and_charges() -> None:
    """100 ozt of 900 at 30, 85 %: 2295.00 (worked by hand), less 45 + 20."""
    usd = Money.of
    terms = Terms(
        payout=Decimal("0.85"),
        charges=(Charge("assay", usd(45, "USD")), Charge("freight", usd(20, "USD"))),
        source="letter of 2026-05-02",
    )
    result = _value(Mass.of(100, "ozt"), 900, _price(30), terms=terms)

    assert result.payable == Money.of(2230, "USD")
    assert [line.label for line in result.lines][-4:] == [
        "payout",
        "less assay",
        "less freight",
        "left after charges",
    ]


def test_charges_beyond_the_metal_are_told() -> None:
    terms = Terms(payout=Decimal(1), charges=(Charge("assay", Money.of(45, "USD")),))
    result = _value(Mass.of(10), 925, _price(30), terms=terms)

    assert result.payable is not None
    assert result.payable.amount < 0
    assert any("more than the metal would bring" in w for w in result.warnings)


def test_charges_in_another_currency_are_refused() -> None:
    terms = Terms(payout=Decimal(1), charges=(Charge("assay", Money.of(45, "GBP")),))
    with pytest.raises(QuantityError, match="USD and GBP"):
        _value(Mass.of(10), 925, _price(30), terms=terms)


@pytest.mark.parametrize(
    ("days", "stale"), [(0, False), (7, False), (8, True), (400, True), (-1, True)]
)
def test_an_old_or_later_price_is_flagged(days: int, stale: bool) -> None:  # noqa: FBT001
    result = _value(Mass.of(50), 925, _price(30, date=DAY - dt.timedelta(days=days)))

    assert result.stale is stale
    assert any("metal price of" in w for w in result.warnings) is stale
    assert result.value is not None  # still worked out: the user decides


def test_no_value_from_gross_weight_alone() -> None:
    alloy = Alloy(fineness=Fineness.of(925), basis="test")
    stick = weigh("weighted candlestick", Weighing(gross=Mass.of(274)), alloy=alloy)
    result = metal_value(stick, _price(30), effective=DAY)

    assert result.value is None
    assert result.payable is None
    assert result.lines == ()
    assert result.asks == stick.asks
    assert "gross weight alone" in result.warnings[0]


def test_no_value_of_plate_or_without_fineness() -> None:
    gross = Weighing(gross=Mass.of(274))
    alloy = Alloy(fineness=Fineness.of(925), basis="test")
    plate = metal_value(weigh("tray", gross, alloy=alloy, plated=True), _price(30), effective=DAY)
    bare = metal_value(weigh("tray", gross), _price(30), effective=DAY)

    assert plate.value is None
    assert "not of solid silver" in plate.warnings[0]
    assert bare.value is None
    assert "without a fineness" in bare.warnings[0]


def test_every_value_carries_its_caution() -> None:
    result = _value(Mass.of(50), 925, _price(30))

    assert any("local law" in w for w in result.warnings)


def test_a_price_has_a_sign_a_unit_and_a_source() -> None:
    with pytest.raises(QuantityError, match="above zero"):
        _price(0)
    with pytest.raises(QuantityError, match="not known"):
        _price(30, per="bushel")
    with pytest.raises(QuantityError, match="where it was read"):
        MetalPrice(price=Money.of(30, "USD"), per="ozt", date=DAY, source="")
    for payout in ("0", "1.1", "85"):
        with pytest.raises(QuantityError, match="share of one"):
            Terms(payout=Decimal(payout))


def test_the_published_payout_lies_within_its_level() -> None:
    """48 paid for 5.83 ozt of sterling at 10 an ounce: 0.89 (antiques column on weighted silver)."""
    implied = Decimal(48) / (Decimal("5.83") * Decimal("0.925") * 10)
    small = next(level for level in PAYOUT_LEVELS if "small" in level.buyer)

    assert float(implied) == pytest.approx(0.89, abs=0.01)
    assert small.low <= implied <= small.high


money = st.decimals(min_value="0.5", max_value="500", places=2)


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    st.decimals(min_value="1", max_value="20000", places=2),
    st.decimals(min_value=500, max_value=1000, places=1),
    money,
    st.decimals(min_value="0.1", max_value="1", places=3),
    money,
    st.sampled_from(["g", "ozt", "kg"]),
)
def test_every_line_works_out_from_what_is_printed(  # noqa: PLR0917  # drawn one by one
    worked: Callable[[str], float],
    grams: Decimal,
    permille: Decimal,
    price: Decimal,
    payout: Decimal,
    charge: Decimal,
    per: str,
) -> None:
    terms = Terms(payout=payout, charges=(Charge("assay", Money.of(charge, "USD")),))
    result = _value(Mass.of(grams), float(permille), _price(str(price), per), terms=terms)

    worked_out = [line for line in result.lines if line.formula]
    assert [line.label for line in worked_out][-3:] == [
        "metal value",
        "payout",
        "left after charges",
    ]
    for line in worked_out:
        assert worked(line.formula) == pytest.approx(float(line.figure), rel=1e-9, abs=1e-6)
    assert result.value is not None
    assert result.measured is not None
    assert result.measured.value == pytest.approx(float(result.value.amount))


@given(st.decimals(min_value="1", max_value="5000", places=2), money, money)
def test_more_metal_or_a_higher_price_is_never_worth_less(
    grams: Decimal, one: Decimal, two: Decimal
) -> None:
    low, high = sorted((one, two))
    cheap = _value(Mass.of(grams), 925, _price(str(low))).value
    dear = _value(Mass.of(grams), 925, _price(str(high))).value
    more = _value(Mass.of(grams + 1), 925, _price(str(low))).value

    assert cheap is not None
    assert dear is not None
    assert more is not None
    assert cheap <= dear
    assert cheap < more
