"""Basis and currency: what is converted, by which figures, and what stays out."""

import datetime as dt
from collections.abc import Callable
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.quantity import Money, QuantityError, UncertainDate
from planish.worth import Basis, Comparable, Conversions, Crossing, Rate, build

Sale = Callable[..., Comparable]
GIVEN = Conversions(
    premium=Decimal("0.25"), commission=Decimal("0.15"), asking_discount=Decimal("0.2")
)


def _adjusted(comparable: Comparable, target: Basis, given_: Conversions = GIVEN) -> Decimal:
    (row,) = build([comparable], target, "USD", given_).rows
    return row.adjusted.amount


def test_one_sale_at_three_levels(sale: Sale) -> None:
    """Shared check level-02: hammer 1000, premium 25 %, commission 15 %: 1250 paid, 850 received."""
    hammer = sale("a", "1000", basis=Basis.HAMMER)

    assert _adjusted(hammer, Basis.WITH_PREMIUM) == 1250
    assert _adjusted(hammer, Basis.NET_TO_SELLER) == 850
    assert _adjusted(sale("a", "1250"), Basis.HAMMER) == 1000
    assert _adjusted(sale("a", "1250"), Basis.NET_TO_SELLER) == 850
    assert _adjusted(sale("a", "850", basis=Basis.NET_TO_SELLER), Basis.WITH_PREMIUM) == 1250


def test_a_sale_s_own_premium_goes_first(sale: Sale) -> None:
    hammer = sale("a", "1000", basis=Basis.HAMMER, premium=Decimal("0.3"))

    assert _adjusted(hammer, Basis.WITH_PREMIUM) == 1300


def test_asked_prices_come_down_only_by_the_user_s_rate(sale: Sale) -> None:
    asked = sale("a", "500", basis=Basis.RETAIL_ASKED)

    assert _adjusted(asked, Basis.RETAIL_PAID) == 400
    (out,) = build([asked], Basis.RETAIL_PAID, "USD", Conversions()).left_out
    assert "discount on asked prices is not given" in out.because
    # where asked prices are what is wanted, nothing is taken off
    assert _adjusted(asked, Basis.RETAIL_ASKED, Conversions()) == 500


@pytest.mark.parametrize(
    ("basis", "target", "says"),
    [
        (Basis.HAMMER, Basis.WITH_PREMIUM, "buyer's premium is not given"),
        (Basis.NET_TO_SELLER, Basis.HAMMER, "seller's commission is not given"),
        (Basis.RETAIL_PAID, Basis.HAMMER, "another market"),
        (Basis.PRIVATE, Basis.RETAIL_PAID, "another market"),
        (Basis.UNSOLD, Basis.HAMMER, "was not reached"),
    ],
)
def test_what_is_not_given_is_not_assumed(
    sale: Sale, basis: Basis, target: Basis, says: str
) -> None:
    grid = build([sale("a", "500", basis=basis)], target, "USD", Conversions())

    assert grid.rows == ()
    assert says in grid.left_out[0].because


def test_a_crossing_between_markets_is_the_user_s(sale: Sale) -> None:
    crossing = Crossing(
        start=Basis.RETAIL_PAID, end=Basis.WITH_PREMIUM, factor=Decimal("0.6"), source="own file"
    )
    given_ = Conversions(crossings=(crossing,))

    assert _adjusted(sale("a", "500", basis=Basis.RETAIL_PAID), Basis.WITH_PREMIUM, given_) == 300
    with pytest.raises(QuantityError, match="crossing"):
        Crossing(start=Basis.PRIVATE, end=Basis.HAMMER, factor=Decimal(0), source="x")


def test_unsold_is_no_price_even_by_a_crossing(sale: Sale) -> None:
    crossing = Crossing(start=Basis.UNSOLD, end=Basis.HAMMER, factor=Decimal(1), source="x")
    grid = build(
        [sale("a", "500", basis=Basis.UNSOLD)],
        Basis.HAMMER,
        "USD",
        Conversions(crossings=(crossing,)),
    )

    assert grid.rows == ()


def _rate(rate: str, day: str) -> Rate:
    return Rate(
        base="USD", quote="GBP", rate=Decimal(rate), date=dt.date.fromisoformat(day), source="test"
    )


def test_currency_at_the_time_of_the_sale(sale: Sale) -> None:
    """Shared check fx-01: GBP 1200 in July 2016 at 0.7614 pounds per dollar is USD 1576.04."""
    pounds = sale("a", "1200", currency="GBP", date=UncertainDate("2016-07"))
    rates = (
        _rate("0.6449", "2015-07-15"),
        _rate("0.7614", "2016-07-15"),
        _rate("0.74", "2026-05-15"),
    )
    grid = build([pounds], Basis.WITH_PREMIUM, "USD", Conversions(rates=rates))

    assert float(grid.rows[0].adjusted.amount) == pytest.approx(1576.044129, abs=1e-6)
    assert grid.rows[0].steps[0].because == "GBP to USD, rate of 2016-07-15"
    assert grid.warnings == ()


def test_a_far_rate_is_told_and_a_missing_one_leaves_out(sale: Sale) -> None:
    pounds = sale("a", "1200", currency="GBP", date=UncertainDate("2016-07"))
    far = build(
        [pounds], Basis.WITH_PREMIUM, "USD", Conversions(rates=(_rate("0.74", "2026-05-15"),))
    )
    none = build([pounds], Basis.WITH_PREMIUM, "USD", Conversions())

    assert "days from the sale" in far.warnings[0]
    assert none.left_out[0].because == "no rate from GBP to USD is given"


def test_a_sale_s_own_rate_goes_first(sale: Sale) -> None:
    own = _rate("0.5", "2016-07-20")
    pounds = sale("a", "100", currency="GBP", date=UncertainDate("2016-07"), rate=own)
    given_ = Conversions(rates=(_rate("0.7614", "2016-07-15"),))

    assert _adjusted(pounds, Basis.WITH_PREMIUM, given_) == 200


def test_rates_and_shares_are_checked() -> None:
    with pytest.raises(QuantityError, match="above zero"):
        _rate("0", "2016-07-15")
    with pytest.raises(QuantityError, match="ISO 4217"):
        Rate(base="US", quote="GBP", rate=Decimal(1), date=dt.date(2016, 1, 1), source="x")
    with pytest.raises(QuantityError, match="where it was read"):
        Rate(base="USD", quote="GBP", rate=Decimal(1), date=dt.date(2016, 1, 1), source="")
    with pytest.raises(QuantityError, match=r"0\.25 for 25 %"):
        Conversions(premium=Decimal(25))


auction = st.sampled_from([Basis.HAMMER, Basis.WITH_PREMIUM, Basis.NET_TO_SELLER])
share = st.decimals(min_value=0, max_value="0.5", places=3)


@given(auction, auction, share, share, st.decimals(min_value=1, max_value=10**6, places=2))
def test_to_a_basis_and_back(
    start: Basis, end: Basis, premium: Decimal, commission: Decimal, price: Decimal
) -> None:
    given_ = Conversions(premium=premium, commission=commission)
    there = _adjusted(_plain(price, start), end, given_)

    assert abs(_adjusted(_plain(there, end), start, given_) - price) < Decimal("1e-30")


def _plain(price: Decimal, basis: Basis) -> Comparable:
    return Comparable(
        id="a", date=UncertainDate("2026-03"), venue="x", price=Money(price, "USD"), basis=basis
    )
