"""Money and currencies."""

from decimal import Decimal

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.quantity import Money, QuantityError
from planish.quantity.currencies import MINOR_UNITS

amounts = st.decimals(min_value=-(10**9), max_value=10**9, places=3)
codes = st.sampled_from(sorted(MINOR_UNITS))


@pytest.mark.parametrize(
    ("text", "default", "amount", "currency"),
    [
        ("USD 1,234.50", None, "1234.50", "USD"),
        ("1234.5 usd", None, "1234.5", "USD"),
        ("USD1,234", None, "1234", "USD"),
        ("£120", None, "120", "GBP"),
        ("£ 1,250,000.00", None, "1250000", "GBP"),
        ("120 €", None, "120", "EUR"),
        ("US$ 40", None, "40", "USD"),
        ("$120", "USD", "120", "USD"),
        ("$120", "CAD", "120", "CAD"),
        ("120", "EUR", "120", "EUR"),
        ("£120", "USD", "120", "GBP"),  # what is named stands
        ("kr 900", "DKK", "900", "DKK"),
        ("-5 USD", None, "-5", "USD"),
        ("USD -5.00", None, "-5", "USD"),
        ("DM 300", None, "300", "DEM"),
    ],
)
def test_money_is_read(text: str, default: str | None, amount: str, currency: str) -> None:
    assert Money.parse(text, default) == Money(Decimal(amount), currency)


@pytest.mark.parametrize(
    ("text", "default", "says"),
    [
        ("$120", None, "sign of several currencies"),
        ("$120", "GBP", "write a code such as USD"),
        ("kr 5", None, "sign of several currencies"),
        ("120", None, "no currency is named"),
        ("GPB 5", None, "did you mean GBP?"),
        ("XAG 5", None, "is not known"),
        ("EUR 5 USD", None, "EUR and USD"),
        ("1.234,50 EUR", None, "the comma does not group thousands"),
        ("£1,20", None, "the comma does not group thousands"),
        ("one pound", None, "no amount"),
        ("-USD -5", None, "no amount"),
        ("", None, "nothing is written"),
    ],
)
def test_what_cannot_be_read_is_told(text: str, default: str | None, says: str) -> None:
    with pytest.raises(QuantityError) as told:
        Money.parse(text, default)

    assert says in str(told.value)
    assert "\n" not in str(told.value)


def test_unlike_currencies_are_never_reckoned_together() -> None:
    pounds, dollars = Money.of(5, "GBP"), Money.of(5, "USD")
    for together in (
        lambda: pounds + dollars,
        lambda: pounds - dollars,
        lambda: pounds < dollars,
        lambda: pounds >= dollars,
        lambda: pounds / dollars,
    ):
        with pytest.raises(QuantityError, match=r"GBP and USD"):
            together()
    assert pounds != dollars


def test_a_rate_is_given_by_the_user() -> None:
    # shared worth check fx-01: GBP 1200 at 0.7614 pounds per dollar
    dollars = Money.of(1200, "GBP").converted(1 / Decimal("0.7614"), "USD")

    assert float(dollars.amount) == pytest.approx(1576.044129, abs=1e-6)
    with pytest.raises(QuantityError, match="above zero"):
        dollars.converted(0, "GBP")


@pytest.mark.parametrize(
    ("money", "text"),
    [
        # minor units of ISO 4217: none for the yen, three for the Kuwaiti dinar
        (Money.of(Decimal("1234.5"), "JPY"), "JPY 1,235"),
        (Money.of(Decimal("1234.5"), "USD"), "USD 1,234.50"),
        (Money.of(Decimal("0.125"), "GBP"), "GBP 0.13"),
        (Money.of(Decimal("-0.125"), "GBP"), "GBP -0.13"),
        (Money.of(1, "KWD"), "KWD 1.000"),
    ],
)
def test_money_is_shown_to_its_minor_unit(money: Money, text: str) -> None:
    assert str(money) == text


def test_codes_and_minor_units_are_those_of_the_published_list() -> None:
    published = pytest.importorskip("iso4217", reason="the published list is a development package")
    theirs = {c.code: c.exponent for c in published.Currency}
    # funds codes and units of account are no money that anybody pays with (list one, column "fund")
    funds = {"BOV", "CHE", "CHW", "CLF", "COU", "MXV", "USN", "UYI", "UYW"}
    in_use = {code for code, minor in theirs.items() if minor is not None} - funds

    assert in_use <= set(MINOR_UNITS)
    assert {code: MINOR_UNITS[code] for code in in_use} == {c: theirs[c] for c in in_use}


def test_money_holds_only_a_finite_decimal_of_a_known_currency() -> None:
    with pytest.raises(TypeError):
        Money(5.0, "USD")  # type: ignore[arg-type]
    with pytest.raises(QuantityError):
        Money(Decimal("Infinity"), "USD")
    with pytest.raises(QuantityError):
        Money.of(5, "usd")
    with pytest.raises(TypeError):
        Money.of(5, "USD") + 5  # type: ignore[operator]


def test_it_is_stored_and_read_back_equal() -> None:
    money = Money.parse("USD 1,234.50")

    assert msgspec.json.decode(msgspec.json.encode(money), type=Money) == money


@given(amounts, codes)
def test_what_is_shown_reads_back(amount: Decimal, currency: str) -> None:
    money = Money(amount, currency).rounded()

    assert Money.parse(str(money)) == money
    assert money.rounded() == money


@given(amounts, amounts, codes)
def test_arithmetic_is_that_of_numbers(a: Decimal, b: Decimal, currency: str) -> None:
    one, two = Money(a, currency), Money(b, currency)

    assert one + two == two + one == Money(a + b, currency)
    assert one - two == -(two - one)
    assert (one < two, one <= two, one > two, one >= two) == (a < b, a <= b, a > b, a >= b)
    assert 2 * one == one * 2 == one + one
    assert one / 4 * 4 == one


@given(st.text(max_size=30), st.sampled_from([None, "USD"]))
def test_any_text_is_read_or_refused(text: str, default: str | None) -> None:
    line = ""
    try:
        assert Money.parse(text, default).currency in MINOR_UNITS
    except QuantityError as told:
        line = str(told)
    assert "\n" not in line
