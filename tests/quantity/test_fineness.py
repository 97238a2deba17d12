"""Fineness against the definitions of its scales and the shared check values."""

import json
from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import Any

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.quantity import Fineness, QuantityError

CHECKS = Path(__file__).resolve().parents[3] / "shared" / "facts" / "standards" / "checks.jsonl"


def _shared() -> Iterator[Any]:
    if not CHECKS.exists():
        yield pytest.param(
            {}, marks=pytest.mark.skip(reason="no shared check values beside this checkout")
        )
        return
    for line in CHECKS.read_text(encoding="utf-8").splitlines():
        row = json.loads(line)
        if row["id"].startswith("fineness."):
            yield pytest.param(row, id=row["id"])


@pytest.mark.parametrize("row", list(_shared()))
def test_shared_check_values_of_fineness(row: dict[str, Any]) -> None:
    parts, of = row["input"]["parts"], row["input"]["of"]

    for got in (Fineness.of(parts, of), Fineness.parse(f"{parts}/{of}")):
        assert float(got.permille) == pytest.approx(row["expected"], abs=row["tolerance"])


@pytest.mark.parametrize(
    ("text", "permille"),
    [
        ("925", "925"),
        ("958.4", "958.4"),
        (".925", "925"),
        ("0.925", "925"),
        ("925/1000", "925"),
        ("92.5%", "925"),
        ("92.5 per cent", "925"),
        ("800 ‰", "800"),
        ("0", "0"),
        ("1000", "1000"),
        # sterling is 11 oz 2 dwt of the troy pound of 12 oz = 222/240
        ("sterling", "925"),
        ("Sterling silver", "925"),
        ("britannia", "958.4"),  # Hallmarking Act 1973, Schedule 2
        ("11 oz 2 dwt", "925"),
        ("11oz. 2dwt.", "925"),
        # 96 zolotnik, 16 loth, 24 karat are pure: common practice of those standards
        ("84 zolotnik", "875"),
        ("13 lot", "812.5"),
        ("12 loth", "750"),
        ("13 1/4 lod", "828.125"),
        ("13¼ lod", "828.125"),
        ("18 karat", "750"),
        ("18k", "750"),
    ],
)
def test_finenesses_are_read(text: str, permille: str) -> None:
    assert Fineness.parse(text).permille == Decimal(permille)


@pytest.mark.parametrize(
    ("text", "exact"),
    [
        ("11/12", Fraction(11, 12)),
        # 11 oz 10 dwt = 230/240
        ("11 oz 10 dwt", Fraction(23, 24)),
        ("88 zolotnik", Fraction(88, 96)),
        # Paris: 12 deniers of 24 grains are pure (from memory)
        ("11 deniers 12 grains", Fraction(276, 288)),
    ],
)
def test_finenesses_that_do_not_end_as_decimals(text: str, exact: Fraction) -> None:
    assert abs(Fraction(Fineness.parse(text).permille) / 1000 - exact) < Fraction(1, 10**40)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("9250", "did you mean 925?"),
        ("92500", "did you mean 925?"),
        ("1001", "outside 0 to 1000"),
        ("13/12", "outside 0 to 1000"),
        ("84", "84 zolotnik"),
        ("12", "may be per cent, zolotnik, loth or karat"),
        ("1", "write 1%"),
        ("-5", "not a number"),
        ("coin", "no single fineness"),
        ("11 oz 20 dwt", "20 pennyweights"),
        ("925 foo", "'foo' is not known"),
        ("97 zolotnik", "outside 0 to 1000"),
        ("", "nothing is written"),
        ("abc", "not a number"),
    ],
)
def test_what_cannot_be_read_is_told(text: str, says: str) -> None:
    with pytest.raises(QuantityError) as told:
        Fineness.parse(text)

    assert says in str(told.value)
    assert "\n" not in str(told.value)


def test_the_bounds_hold_however_it_is_made() -> None:
    for permille in ("-0.1", "1000.1", "NaN", "Infinity"):
        with pytest.raises(QuantityError):
            Fineness(Decimal(permille))
    with pytest.raises(TypeError):
        Fineness(925)  # type: ignore[arg-type]


def test_it_is_stored_and_read_back_equal() -> None:
    fineness = Fineness.parse("88 zolotnik")

    assert msgspec.json.decode(msgspec.json.encode(fineness), type=Fineness) == fineness


def test_it_is_shown_in_parts_per_thousand() -> None:
    assert str(Fineness.parse("88 zolotnik")) == "916.7 ‰"
    assert str(Fineness.parse("958.4")) == "958.4 ‰"


@given(st.integers(min_value=0, max_value=96))
def test_zolotnik_and_back(n: int) -> None:
    assert Fineness.of(n, 96).zolotnik == n


@given(st.integers(min_value=0, max_value=64))
def test_quarter_loth_and_back(n: int) -> None:
    assert Fineness.of(Fraction(n, 4), 16).loth == Decimal(n) / 4


@given(st.integers(min_value=0, max_value=240))
def test_ounces_and_pennyweights_and_back(n: int) -> None:
    ounces, pennyweights = Fineness.of(n, 240).ounces_pennyweights

    assert 20 * ounces + pennyweights == n
    assert 0 <= pennyweights < 20
    assert Fineness.parse(f"{ounces} oz {pennyweights} dwt") == Fineness.of(n, 240)


@given(st.decimals(min_value=100, max_value=1000, places=2))
def test_the_same_fineness_in_every_form(permille: Decimal) -> None:
    fineness = Fineness(permille)

    assert Fineness.parse(f"{permille}") == fineness
    assert Fineness.parse(f"{permille / 10}%") == fineness
    assert Fineness.parse(f"{permille} ‰") == fineness
    assert fineness.share * 1000 == permille
    assert abs(fineness.karat / 24 - fineness.share) < Decimal("1e-25")


@given(st.text(max_size=30))
def test_any_text_is_read_or_refused(text: str) -> None:
    line = ""
    try:
        assert 0 <= Fineness.parse(text).permille <= 1000
    except QuantityError as told:
        line = str(told)
    assert "\n" not in line
