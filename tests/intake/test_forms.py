import datetime as dt
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.intake.forms import Order, day, day_order, decimal_sign, number


# The forms are those of the Unicode CLDR for en, de, fr, de-CH and sv.
@pytest.mark.parametrize(
    ("values", "sign"),
    [
        (["1,250.50", "3"], "."), (["1.250,50", "3"], ","), (["1 250,5"], ","), (["1'250.50"], "."),
        (["12.5", "7.25"], "."), (["12,5"], ","), (["1,250", "2,500"], None), (["3", "4"], None),
        (["1.5", "1,5"], None), (["1\u00a0250,5"], ","),
    ],
)  # fmt: skip
def test_the_decimal_sign_of_a_column(values: list[str], sign: str | None) -> None:
    assert decimal_sign(values) == sign


@given(st.decimals(-10_000_000, 10_000_000, places=2))
def test_numbers_come_back_in_either_form(value: Decimal) -> None:
    english = f"{value:,.2f}"
    german = english.translate(str.maketrans(",.", ".,"))

    assert number(english, ".") == value
    assert number(german, ",") == value


def test_a_number_in_another_form_is_refused() -> None:
    with pytest.raises(ValueError, match="no number with decimals after"):
        number("1,5", ".")


@pytest.mark.parametrize(
    ("values", "order"),
    [
        (["03/04/1884", "25/12/1890"], Order.DAY), (["03/04/1884", "12/25/1890"], Order.MONTH),
        (["03/04/1884"], None), (["25/12/1890", "12/25/1890"], None),
    ],
)  # fmt: skip
def test_the_order_of_a_column_of_days(values: list[str], order: Order | None) -> None:
    assert day_order(values) == order


@given(st.dates(dt.date(1000, 1, 1), dt.date(2200, 12, 31)))
def test_days_come_back(date: dt.date) -> None:
    figures = f"{date.year:04d}"
    assert day(date.isoformat(), None) == date
    assert day(f"{date.day}.{date.month}.{figures}", Order.DAY) == date
    assert day(f"{date.month}/{date.day}/{figures}", Order.MONTH) == date


def test_a_day_that_may_be_read_either_way_is_not_guessed() -> None:
    with pytest.raises(ValueError, match="either way round"):
        day("03/04/1884", None)
