"""Figures and probabilities in words."""

from hypothesis import given
from hypothesis import strategies as st

from planish.quantity import Mass, Money
from planish.report.words import day, likely, money, numbers, ounces, percent, sentence, signed


def test_words_of_probability_follow_the_published_scale() -> None:
    # IPCC guidance note on uncertainties (2010), table 1: very likely 90-100 %, likely 66-100 %,
    # about as likely as not 33-66 %, unlikely 0-33 %, very unlikely 0-10 %
    assert [likely(p) for p in (0.91, 0.7, 0.4, 0.2, 0.06)] == [
        "very likely",
        "likely",
        "about as likely as not",
        "unlikely",
        "very unlikely",
    ]


@given(st.floats(0, 1))
def test_nothing_is_certain_because_it_is_printed(p: float) -> None:
    assert percent(p) not in ("0 %", "100 %")
    assert "certain" not in likely(p)


def test_signs_are_minus_signs_and_nought_has_none() -> None:
    assert (signed(-0.04), signed(-1.25), signed(3)) == ("0.0", "−1.2", "+3.0")


def test_money_drops_decimals_only_where_there_are_none() -> None:
    assert money(Money.parse("USD 1,800.00")) == "USD 1,800"
    assert money(Money.parse("USD 1,800.50")) == "USD 1,800.50"
    assert money(Money.parse("JPY 1800")) == "JPY 1,800"


def test_small_weights_keep_three_figures() -> None:
    assert ounces(Mass.parse("3.5 g")) == "0.113"
    assert ounces(Mass.parse("412.6 g")) == "13.27"  # 412.6 / 31.1034768


def test_dates_as_given_and_in_words() -> None:
    assert day("2026-05-14") == "14 May 2026"
    assert day("../1884") == "until 1884"
    assert day("1884/..") == "from 1884"
    assert day("1884%") == "perhaps about 1884"
    assert day("whenever") == "whenever"
    assert day(None) == ""
    assert numbers("2026-05") == (2026, 5, 1)
    assert numbers("May") == ()


def test_sentences() -> None:
    assert sentence("it is so") == "It is so."
    assert sentence("is it?") == "Is it?"
    assert sentence("") == ""
