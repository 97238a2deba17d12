"""Prices over time: reading, the latest that was known, faults by line; other prices."""

import datetime as dt
from decimal import Decimal
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.metal import (
    Alloy,
    Charge,
    Deduction,
    Kind,
    MetalPrice,
    Method,
    Terms,
    Weighing,
    metal_value,
    read_series,
    scenarios,
    weigh,
)
from planish.quantity import Fineness, Mass, Money, QuantityError

PRICES = Path(__file__).resolve().parents[3] / "shared" / "prices" / "metals_monthly_usd.csv"
MONTHS = "month,silver_usd_per_ozt\n2026-03,70\n2026-04,75.86\n2026-05,78.01\n"
DAYS = "date,price,currency,per\n2026-05-12,2400,GBP,kg\n2026-05-14,2450,GBP,kg\n"
DAY = dt.date(2026, 5, 14)


def test_the_latest_price_known_on_the_day_counts() -> None:
    series = read_series(DAYS, source="table")

    assert (series.currency, series.per, series.monthly) == ("GBP", "kg", False)
    assert series.at(dt.date(2026, 5, 13)).date == dt.date(2026, 5, 12)
    assert series.at(DAY).price == Money.of(2450, "GBP")
    assert series.at(dt.date(2026, 6, 1)).source == "table"


def test_a_months_average_is_known_at_its_end_only() -> None:
    """No price from after the effective date enters, not even within an average."""
    series = read_series(MONTHS, source="table")

    assert series.at(DAY).price == Money.of(Decimal("75.86"), "USD")
    assert series.at(DAY).date == dt.date(2026, 4, 30)
    assert series.at(dt.date(2026, 5, 31)).price == Money.of(Decimal("78.01"), "USD")
    assert "average" in series.at(DAY).quoted
    assert series.stale_days > 31


def test_before_its_beginning_there_is_no_price() -> None:
    with pytest.raises(QuantityError, match="begin on 2026-03-31"):
        read_series(MONTHS, source="table").at(dt.date(2026, 3, 30))


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("when,price\n2026-05-14,3\n", "no column of dates"),
        ("date,worth\n2026-05-14,3\n", "no column of prices"),
        ("date,price\n2026-05-14,3\n", "currency is not named"),
        ("date,price,currency,per\n2026-05-32,3,USD,ozt\n", "line 2.*no date"),
        ("date,price,currency,per\n2026-05-14,three,USD,ozt\n", "line 2.*no price"),
        ("date,price,currency,per\n2026-05-14,0,USD,ozt\n", "line 2.*above zero"),
        ("date,price,currency,per\n2026-05-14,3,USD,ozt\n2026-05-14,4,USD,ozt\n", "second price"),
        (
            "date,price,currency,per\n2026-05-14,3,USD,ozt\n2026-05-15,4,GBP,ozt\n",
            "mixes currencies",
        ),
        ("date,price,currency,per\n2026-05-14,3,USD,ozt\n2026-06,4,USD,ozt\n", "days and months"),
        ("date,price,currency,per\n2026-05-14,,USD,ozt\n", "no price in column"),
        ("date,price,currency,per\n2026-05-14,3,USD,bushel\n", "not known"),
        ("date,price,currency,per\n2026-05-14,3,XYZ,ozt\n", "not known"),
        ("", "no column of dates"),
    ],
)
def test_a_fault_names_its_line(text: str, says: str) -> None:
    with pytest.raises(QuantityError, match=says):
        read_series(text, source="table")


def test_blank_cells_and_comments_are_passed_over_and_counted() -> None:
    text = (
        "# from a friend\ndate,price,currency,per\n2026-05-14,30.5,USD,ozt\n2026-05-15,,USD,ozt\n"
    )
    series = read_series(text, source="table")

    assert series.skipped == 1
    assert len(series.quotes) == 1


def test_the_column_may_be_named_and_silver_goes_first() -> None:
    text = "month,gold_usd_per_ozt,silver_usd_per_ozt\n2026-05,4000,78.01\n"

    assert read_series(text, source="t").quotes[0].price == Decimal("78.01")
    named = read_series(text, source="t", column="gold_usd_per_ozt")
    assert named.quotes[0].price == Decimal(4000)
    with pytest.raises(QuantityError, match="choose one of"):
        read_series(text, source="t", column="tin")


@pytest.mark.skipif(not PRICES.exists(), reason="no shared prices beside this checkout")
def test_the_shared_table_and_its_known_months() -> None:
    """World Bank monthly averages: 38.88 in January 1980, 92.06 in January 2026 (its read-me)."""
    series = read_series(PRICES.read_text(encoding="utf-8"), source="World Bank")

    assert len(series.quotes) == 797
    for day, price in (
        ((1980, 1, 31), "38.88"),
        ((2011, 4, 30), "42.70"),
        ((2026, 2, 27), "92.06"),
    ):
        assert series.at(dt.date(*day)).price.amount == Decimal(price)


@given(st.dictionaries(st.dates(dt.date(1970, 1, 1), dt.date(2030, 1, 1)),
                       st.decimals(min_value="0.5", max_value="200", places=2), min_size=1),
       st.dates(dt.date(1970, 1, 1), dt.date(2035, 1, 1)))  # fmt: skip
def test_no_later_price_is_ever_used(table: dict[dt.date, Decimal], day: dt.date) -> None:
    rows = "".join(f"{d},{p},USD,ozt\n" for d, p in table.items())
    series = read_series("date,price,currency,per\n" + rows, source="t")
    known = [d for d in table if d <= day]

    if known:
        found = series.at(day)
        assert found.date == max(known)
        assert found.price.amount == table[max(known)]
    else:
        with pytest.raises(QuantityError):
            series.at(day)


PRICE = MetalPrice(price=Money.of(30, "USD"), per="ozt", date=DAY, source="test")
STERLING = Alloy(fineness=Fineness.of(925), basis="test")


def test_other_prices_move_the_value_alike_and_charges_stay() -> None:
    """100 ozt of 900: 90 ozt fine; at 22.50 (25 % less) 2025.00, 85 % of it 1721.25, less 45."""
    alloy = Alloy(fineness=Fineness.of(900), basis="test")
    found = weigh("bars", Weighing(gross=Mass.of(100, "ozt")), alloy=alloy)
    terms = Terms(payout=Decimal("0.85"), charges=(Charge("assay", Money.of(45, "USD")),))
    table = scenarios(found, PRICE, terms=terms)

    assert [s.change for s in table] == [Decimal(c) / 100 for c in (-25, -10, 0, 10, 25)]
    assert table[0].price == Money.of(Decimal("22.5"), "USD")
    assert table[0].value == Money.of(2025, "USD")
    assert table[0].payable == Money.of(Decimal("1676.25"), "USD")
    assert table[2].value == Money.of(2700, "USD")


def test_no_table_without_a_value() -> None:
    asked = weigh("weighted candlestick", Weighing(gross=Mass.of(274)), alloy=STERLING)

    assert scenarios(asked, PRICE) == ()
    with pytest.raises(QuantityError, match="no price"):
        scenarios(
            weigh("x", Weighing(gross=Mass.of(1)), alloy=STERLING), PRICE, changes=(Decimal(-1),)
        )


def test_refining_is_charged_by_net_weight() -> None:
    """100 ozt at 0.50 an ounce: 50.00 off the payout."""
    found = weigh("bars", Weighing(gross=Mass.of(100, "ozt")), alloy=STERLING)
    terms = Terms(payout=Decimal(1), refining=Money.of(Decimal("0.5"), "USD"))
    value = metal_value(found, PRICE, effective=DAY, terms=terms)

    assert value.value is not None
    assert value.payable == value.value - Money.of(50, "USD")
    assert any("refining" in line.label for line in value.lines)


def test_filled_goods_have_a_share_of_their_own() -> None:
    pitch = Deduction(
        kind=Kind.FILLER, what="pitch", mass=Mass.of(200), method=Method.WEIGHED, source="balance"
    )
    filled = weigh("candlestick", Weighing(gross=Mass.of(274)), deductions=(pitch,), alloy=STERLING)
    plain = weigh("spoon", Weighing(gross=Mass.of(74)), alloy=STERLING)
    terms = Terms(payout=Decimal("0.9"), filled_payout=Decimal("0.6"))

    assert terms.share_of(filled) == Decimal("0.6")
    assert terms.share_of(plain) == Decimal("0.9")


def test_a_lot_too_small_for_the_terms_is_told() -> None:
    terms = Terms(payout=Decimal("0.95"), minimum=Mass.of(100, "ozt"))
    small = weigh("spoon", Weighing(gross=Mass.of(50)), alloy=STERLING)
    large = weigh("bars", Weighing(gross=Mass.of(4000)), alloy=STERLING)

    for found, told in ((small, True), (large, False)):
        value = metal_value(found, PRICE, effective=DAY, terms=terms)
        assert any("smallest lot" in w for w in value.warnings) is told


def test_the_value_has_an_interval_on_request() -> None:
    alloy = Alloy(fineness=Fineness.of(800), plus_minus=Decimal(8), basis="touch")
    found = weigh("spoon", Weighing(gross=Mass.of(100)), alloy=alloy)
    value = metal_value(found, PRICE, effective=DAY, with_interval=True)

    assert value.interval is not None
    assert value.value is not None
    # u = 1 % of the fineness, so 1.96 % each way
    assert value.interval.high == pytest.approx(float(value.value.amount) * 1.0196, rel=1e-4)
    assert metal_value(found, PRICE, effective=DAY).interval is None
