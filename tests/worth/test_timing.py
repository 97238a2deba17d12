import datetime as dt
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.quantity import Mass, Money, QuantityError, UncertainDate
from planish.quantity.numbers import EXACT
from planish.worth.exchange import Exchange
from planish.worth.series import Series, as_csv, read_series
from planish.worth.timing import KEPT, Clock, metal_part, premium_part, pull

money = st.decimals(min_value=1, max_value=10**6, places=2)
SILVER = "month,silver\n2020-01,18.00\n2020-02,17.00\n2020-04,15.00\n2026-04,70\n2026-05,78\n"


@given(price=money, then=money, now=money, grams=money)
def test_a_piece_dearer_than_four_times_melt_does_not_move_unless_it_would_be_melted(
    price: Decimal, then: Decimal, now: Decimal, grams: Decimal
) -> None:
    part = metal_part(price, Mass(grams), then, now)
    if part.multiple >= 4:
        assert part.adjusted == max(price, EXACT.multiply(KEPT, part.now))
    assert part.adjusted >= EXACT.multiply(KEPT, part.now)
    assert abs(EXACT.subtract(part.adjusted, EXACT.add(price, part.line))) < Decimal("1e-30")
    if not part.floored:
        assert abs(part.line) <= abs(EXACT.subtract(part.now, part.then))


@given(price=money, grams=money, spot=money)
def test_a_still_metal_moves_nothing_above_the_floor(
    price: Decimal, grams: Decimal, spot: Decimal
) -> None:
    part = metal_part(price, Mass(grams), spot, spot, kept=None)
    assert part.line == 0


def test_the_pull_falls_in_a_straight_line() -> None:
    assert [float(pull(Decimal(r))) for r in ("1.2", "1.9", "4")] == [1, 0.75, 0]


def test_a_piece_at_melt_moves_one_for_one() -> None:
    part = metal_part(Decimal(100), Mass.of(10, "ozt"), Decimal(10), Decimal(25))
    assert [float(v) for v in (part.share, part.line, part.adjusted)] == [1, 150, 250]


def test_no_floor_holds_for_a_hammer_price() -> None:
    ten = Mass.of(10, "ozt")
    hammer = metal_part(Decimal(90), ten, Decimal(10), Decimal(10), kept=None)
    total = metal_part(Decimal(90), ten, Decimal(10), Decimal(10))
    assert [float(v.adjusted) for v in (hammer, total)] == [90, 97]
    assert total.floored


def test_only_the_part_over_melt_moves_with_the_index() -> None:
    assert premium_part(Decimal(300), Decimal(100), Decimal(100), Decimal(50)) == 200
    assert premium_part(Decimal(99), Decimal(100), Decimal(100), Decimal(50)) == 99


@pytest.mark.parametrize(
    ("price", "grams", "share"), [("-1", "1", None), ("1", "-1", None), ("1", "1", "1.5")]
)
def test_figures_that_cannot_be_are_refused(price: str, grams: str, share: str | None) -> None:
    with pytest.raises(QuantityError):
        metal_part(
            Decimal(price), Mass(Decimal(grams)), Decimal(10), Decimal(10),
            share=Decimal(share) if share else None,
        )  # fmt: skip


def silver() -> Series:
    return read_series(SILVER, "own table")["silver"]


def test_a_month_counts_for_its_days_and_a_gap_takes_the_nearest_month() -> None:
    assert silver().at(UncertainDate("2020-02-29")).value == 17
    found = silver().at(UncertainDate("2020-03-15"))
    assert (float(found.value), found.how) == (
        17,
        "silver of 2020-02",
    )  # as near as April, and earlier
    assert silver().at(UncertainDate("2020-06-01")).value == 15
    with pytest.raises(QuantityError, match="no value near this date"):
        silver().at(UncertainDate("2020-07-01"))
    assert silver().at(UncertainDate("2020")).value == EXACT.divide(Decimal(50), Decimal(3))
    with pytest.raises(QuantityError, match="too vague"):
        silver().at(UncertainDate("2020/2021"))


def test_a_months_average_is_known_when_the_month_has_ended() -> None:
    assert silver().known(dt.date(2026, 5, 30)).value == 70
    assert silver().known(dt.date(2026, 5, 31)).value == 78
    with pytest.raises(QuantityError):
        silver().known(dt.date(2026, 9, 1))


def test_a_day_takes_the_last_day_before_it() -> None:
    daily = read_series("date,fix\n2020-01-03,18\n2020-01-06,19\n", "own table")["fix"]
    assert daily.at(UncertainDate("2020-01-05")).value == 18
    assert daily.at(UncertainDate("2020-01")).value == Decimal("18.5")
    assert daily.known(dt.date(2020, 1, 7)).value == 19
    for day in ("2020-01-02", "2020-01-14"):
        with pytest.raises(QuantityError):
            daily.at(UncertainDate(day))


@pytest.mark.parametrize(
    ("text", "fault"),
    [
        ("price\n1\n", "no column of dates"),
        ("date,a\n2020-01-01,0\n", "line 2.*above zero"),
        ("date,a\n2020-01-01,x\n", "line 2.*above zero"),
        ("date,a\n2020-13-01,1\n", "line 2.*no date"),
        ("date,a\n2020-01,1\n2020-02-01,1\n", "line 3.*mixed"),
        ("date,a\n2020-01,1\n2020-01,2\n", "line 3.*second value"),
        ("date,a\n2020-01,\n", "no figures"),
    ],
)
def test_a_table_with_a_fault_is_refused_by_its_line(text: str, fault: str) -> None:
    with pytest.raises(QuantityError, match=fault):
        read_series(text, "own table")


@given(
    st.dictionaries(
        st.integers(0, 900).map(lambda n: dt.date(1950 + n // 12, n % 12 + 1, 1)),
        st.decimals(min_value="0.01", max_value=10**6, places=4),
        min_size=1,
    )
)
def test_a_series_written_comes_back(points: dict[dt.date, Decimal]) -> None:
    made = Series(name="x", source="own", monthly=True, points=tuple(sorted(points.items())))
    assert read_series(as_csv(made), "own")["x"] == made


RATES = "month,GBP_per_usd,EUR_per_usd\n2016-07,0.80,0.90\n2026-04,0.5,0.6\n2026-05,0.75,0.85\n"


def exchange() -> Exchange:
    return Exchange.of(read_series(RATES, "own rates").values())


def test_rates_go_straight_turned_round_and_by_a_third() -> None:
    day = UncertainDate("2016-07-14")
    assert exchange().rate("USD", "GBP", day).rate == Decimal("0.8")
    assert exchange().rate("GBP", "USD", day).rate == Decimal("1.25")
    assert exchange().rate("GBP", "EUR", day).rate == Decimal("1.125")
    assert "2016-07" in exchange().rate("GBP", "EUR", day).source
    assert exchange().rate("USD", "GBP", dt.date(2026, 5, 14)).rate == Decimal("0.5")


@pytest.mark.parametrize(("pair", "day"), [(("USD", "CHF"), "2016-07"), (("USD", "GBP"), "2019")])
def test_a_rate_that_is_not_there_is_refused(pair: tuple[str, str], day: str) -> None:
    with pytest.raises(QuantityError):
        exchange().rate(*pair, UncertainDate(day))


def test_lines_of_time_add_up_and_name_their_sources() -> None:
    clock = Clock(
        effective=dt.date(2026, 5, 31),
        metal=silver(),
        metal_currency="USD",
        index=read_series("month,premium\n2020-01,100\n2026-05,90\n", "own index")["premium"],
    )
    price = Money(Decimal(1000), "USD")
    lines, undone = clock.lines(
        price, UncertainDate("2020-01-20"), Mass.of(20, "ozt"), buyers_total=True
    )
    # melt 360 then, 1560 now; 1000/360 = 2.78 times: pull 0.437; 1000 + 523.8 = 1523.8,
    # above the floor of 0.97 x 1560 = 1513.2 and below melt, so the index has nothing to move
    amounts = [line.amount.amount for line in lines if line.amount]
    assert [float(a) for a in amounts] == [pytest.approx(523.80952, abs=1e-4)]
    assert undone == ()
    assert "own table" in lines[0].source
    less, why = clock.lines(price, UncertainDate("2020-01-20"), None, buyers_total=True)
    assert [line.amount for line in less] == [Money(Decimal(-100), "USD")]
    assert "not known" in why[0]


def test_a_metal_price_is_exchanged_at_the_time_of_each_sale() -> None:
    clock = Clock(
        effective=dt.date(2026, 5, 31), metal=silver(), metal_currency="USD", exchange=exchange()
    )
    assert clock.spot(dt.date(2026, 5, 31), "GBP")[0] == Decimal("58.5")
    with pytest.raises(QuantityError, match="no value near"):
        clock.spot(UncertainDate("2020-01-20"), "GBP")
