"""Numbers as people write them."""

from decimal import Decimal, localcontext
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.quantity.errors import QuantityError
from planish.quantity.numbers import EXACT, decimal, digits, fraction, plain, read, rounded


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("12.5", Fraction(25, 2)),
        (".5", Fraction(1, 2)),
        ("1,250", Fraction(1250)),
        ("1,250,000.25", Fraction(125000025, 100)),
        ("2 1/2", Fraction(5, 2)),
        ("3/4", Fraction(3, 4)),
    ],
)
def test_a_number_is_read_exactly(text: str, value: Fraction) -> None:
    assert read(text, "figure") == value


@pytest.mark.parametrize("text", ["12,5", "1,25", "1e5", "--1", "", "1.2.3", "٣", "1/0", "nan"])
def test_anything_else_is_refused(text: str) -> None:
    with pytest.raises(QuantityError):
        read(text, "figure")


def test_fractions_of_one_character_are_spelled_out() -> None:
    assert plain(" 2½  ozt ", "weight") == "2 1/2 ozt"


@pytest.mark.parametrize("text", ["", "   ", "9" * 201])
def test_no_text_and_pasted_books_are_refused(text: str) -> None:
    with pytest.raises(QuantityError):
        plain(text, "weight")


@pytest.mark.parametrize(
    "value", [float("nan"), float("inf"), Decimal("sNaN"), Decimal("-Infinity")]
)
def test_what_is_not_finite_is_refused(value: float | Decimal) -> None:
    with pytest.raises(QuantityError):
        fraction(value)


@pytest.mark.parametrize("value", [True, "1", None])
def test_what_is_no_number_is_a_mistake_of_the_caller(value: object) -> None:
    with pytest.raises(TypeError):
        fraction(value)  # type: ignore[arg-type]


@given(
    st.decimals(
        allow_nan=False, allow_infinity=False, min_value=-(10**9), max_value=10**9, places=6
    )
)
def test_plain_figures_keep_the_value(value: Decimal) -> None:
    assert Decimal(digits(value)) == value
    assert "E" not in digits(value)


def test_the_callers_own_settings_change_nothing() -> None:
    with localcontext() as mine:
        mine.prec = 3
        assert decimal(Fraction(31_103_476_800, 10**9)) == Decimal("31.1034768")
        assert EXACT.add(Decimal("123456.789"), Decimal("0.001")) == Decimal("123456.790")
        assert rounded(Decimal("12345.675"), 2) == Decimal("12345.68")


def test_an_error_is_one_line_whatever_the_text() -> None:
    error = QuantityError("weight", "two\nlines\t" + "x" * 500, "is odd", "write it again", 3)

    assert "\n" not in str(error)
    assert len(str(error)) < 150
    assert "(at character 4)" in str(error)
    assert str(error).endswith("is odd; write it again")
