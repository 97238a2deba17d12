"""Mass against published definitions, the shared check values and the reference library pint."""

import json
import pickle
from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import Any

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.quantity import Mass, QuantityError, read_mass
from planish.quantity.mass import symbols
from planish.quantity.units import UNITS, unit_of

CHECKS = Path(__file__).resolve().parents[3] / "shared" / "facts" / "standards" / "checks.jsonl"

# NIST Handbook 44, Appendix C, and NIST SP 811, Appendix B (all exact, from 1 lb = 453.59237 g and
# 1 lb = 7000 grains, 1959); the metric carat from the 4th General Conference, 1907
DEFINED = {
    "gr": "0.06479891",
    "dwt": "1.55517384",
    "ozt": "31.1034768",
    "lbt": "373.2417216",
    "oz": "28.349523125",
    "lb": "453.59237",
    "ct": "0.2",
    "mg": "0.001",
    "kg": "1000",
    # GNU Units 2.22: 180 grains; a thousandth of the kan of 3.75 kg
    "tola": "11.6638038",
    "momme": "3.75",
}

positive = st.decimals(min_value="0.001", max_value="1000000", places=3)
grams = st.builds(Mass.of, st.decimals(min_value=-(10**6), max_value=10**6, places=4))


@pytest.mark.parametrize(("unit", "grams_of_one"), list(DEFINED.items()))
def test_units_are_as_defined(unit: str, grams_of_one: str) -> None:
    assert Mass.of(1, unit).grams == Decimal(grams_of_one)


# the names of the shared check rows and the symbols here
_NAMES = {
    "grain": "gr", "pennyweight": "dwt", "troy_ounce": "ozt", "troy_pound": "lbt",
    "avoirdupois_ounce": "oz", "avoirdupois_pound": "lb", "metric_carat": "ct",
    "carat_point": "point", "tael_hk": "tael-hk", "baht_bullion": "baht",
    "tael_taiwan": "tael-tw", "tael_china_1959": "tael-cn", "baht_jewellery": "baht-j",
    "tael_hk_jewellery": "tael-hk-j", "mesghal_iran": "mesghal", "zolotnik": "zolotnik-wt",
    "pearl_grain": "pearl-gr",
}  # fmt: skip


def _shared() -> Iterator[Any]:
    if not CHECKS.exists():
        yield pytest.param(
            {}, marks=pytest.mark.skip(reason="no shared check values beside this checkout")
        )
        return
    for line in CHECKS.read_text(encoding="utf-8").splitlines():
        row = json.loads(line)
        if row["id"].startswith("unit."):
            yield pytest.param(row, id=row["id"])


@pytest.mark.parametrize("row", list(_shared()))
def test_shared_check_values_of_units(row: dict[str, Any]) -> None:
    asked = row["input"]
    if "unit" in asked:
        got = Mass.of(asked["value"], _NAMES.get(asked["unit"], asked["unit"])).grams
    elif "from" in asked:
        got = Mass.of(asked["value"], asked["from"]).to(_NAMES.get(asked["to"], asked["to"]))
    else:
        got = Mass.parse(" ".join(f"{n} {unit}" for unit, n in asked.items())).grams

    assert float(got) == pytest.approx(row["expected"], abs=row["tolerance"]), (
        f"{row['source']} ({row['confidence']})"
    )


@pytest.mark.filterwarnings("ignore")  # the reference library's own affairs
def test_units_agree_with_the_reference_library() -> None:
    pint = pytest.importorskip("pint", reason="the reference library is a development package")
    registry = pint.UnitRegistry(non_int_type=Decimal)
    names = {
        "g": "gram", "mg": "milligram", "kg": "kilogram", "ct": "carat", "gr": "grain",
        "dwt": "pennyweight", "ozt": "troy_ounce", "lbt": "troy_pound", "oz": "ounce", "lb": "pound",
    }  # fmt: skip
    for symbol, name in names.items():
        theirs = registry.Quantity(Decimal("12.375"), name).to("gram").magnitude
        assert abs(Mass.of(Decimal("12.375"), symbol).grams - theirs) <= Decimal("1e-20"), symbol


@pytest.mark.parametrize(
    ("text", "in_grams"),
    [
        ("12.5 g", "12.5"),
        ("12.5g.", "12.5"),
        ("1,250 gms", "1250"),
        ("0.5 kg", "500"),
        ("2 kg 50 g", "2050"),
        # 12 ozt 7 dwt 6 gr = 5934 grains
        ("12 ozt 7 dwt 6 gr", "384.51673194"),
        ("12 oz. 7 dwt. 6 gr.", "384.51673194"),
        ("12 ozt, 7 dwt and 6 gr", "384.51673194"),
        # 19 oz 5 dwt = 385 dwt
        ("19oz 5dwt", "598.7419284"),
        ("2 1/2 ozt", "77.758692"),
        ("2½ troy ounces", "77.758692"),
        ("1 oz", "28.349523125"),
        ("1 lb 3 oz", "538.640939375"),
        ("12 oz (troy)", "373.2417216"),
        ("12 ct", "2.4"),
        ("0 g", "0"),
        ("123.4 g (3.97 ozt)", "123.4"),
        ("1 tael-hk", str(Mass.of(Fraction(453_59237 * 4, 100_000 * 48)).grams)),
    ],
)
def test_weights_are_read(text: str, in_grams: str) -> None:
    assert Mass.parse(text).grams == Decimal(in_grams)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("12", "the unit is missing"),
        ("g", "a figure is needed"),
        ("", "nothing is written"),
        ("-3 g", "cannot be negative"),
        ("12,5 g", "write a decimal point"),
        ("12 foo", "'foo' is not known"),
        ("3 tael", "differs by country"),
        ("12 kt", "a karat is a fineness"),
        ("2 oz 5 g", "keep to one system"),
        ("5 dwt 2 ozt", "put the greater unit first"),
        ("1 oz 30 gr", "may be the troy or the avoirdupois ounce"),
        ("1 lb 2 oz 5 dwt", "write lbt"),
        ("1/0 g", "divides by nought"),
        ("12 oz (373 g)", "the two weights disagree"),
        ("3 g 4 g", "each once"),
    ],
)
def test_what_cannot_be_read_is_told_in_one_line(text: str, says: str) -> None:
    with pytest.raises(QuantityError) as told:
        Mass.parse(text)

    assert says in str(told.value)
    assert "\n" not in str(told.value)
    assert told.value.remedy


def test_an_error_says_where_and_survives_another_process() -> None:
    with pytest.raises(QuantityError) as told:
        Mass.parse("12 foo")
    again = pickle.loads(pickle.dumps(told.value))  # noqa: S301  # our own bytes

    assert (again.what, again.text, again.place) == ("weight", "12 foo", 2)
    assert str(again) == str(told.value)


def test_the_two_ounces_are_told_apart_aloud() -> None:
    # 1 oz = 175/192 ozt (437.5 and 480 grains), so the slip is 9.7 %
    assert Mass.of(1, "oz") / Mass.of(1, "ozt") == Mass.of(175) / Mass.of(192)
    assert "avoirdupois" in read_mass("12 oz").notes[0]
    assert "troy" in read_mass("12 oz 7 dwt").notes[0]
    assert "grain" in read_mass("12 gr").notes[0]
    assert read_mass("12 ozt").notes == ()


@pytest.mark.parametrize(
    ("text", "pennyweights"),
    # 32 ozt 14 dwt = 654 dwt = 32.7 ozt
    [("32-14", 654), ("32:14", 654), ("32 = 14", 654), ("oz 32 - 14 dwt", 654), ("32-14½", 654.5)],
)
def test_scratch_weights_are_troy(text: str, pennyweights: float) -> None:
    assert Mass.parse_scratch(text) == Mass.of(pennyweights, "dwt")


@pytest.mark.parametrize("text", ["32-20", "32.14", "32", "a-b"])
def test_what_is_no_scratch_weight_is_refused(text: str) -> None:
    with pytest.raises(QuantityError):
        Mass.parse_scratch(text)


@pytest.mark.parametrize(
    ("mass", "text"),
    [
        (Mass.of(Decimal("123.4")), "123.4 g (3.97 ozt)"),
        (Mass.of(Decimal("18.40")), "18.4 g (0.592 ozt)"),
        (Mass.of(1, "ozt"), "31.103 g (1.00 ozt)"),
        (Mass.of(0), "0 g (0.00 ozt)"),
        (Mass.of(Decimal("-2.5")), "-2.5 g (-0.0804 ozt)"),
        (Mass.of(Decimal("0.0004")), "0.0004 g (0.0000129 ozt)"),
    ],
)
def test_a_mass_is_shown_in_grams_and_troy_ounces(mass: Mass, text: str) -> None:
    assert str(mass) == text


def test_a_mass_holds_only_a_finite_decimal() -> None:
    with pytest.raises(TypeError):
        Mass(12.5)  # type: ignore[arg-type]
    with pytest.raises(QuantityError):
        Mass(Decimal("NaN"))
    with pytest.raises(AttributeError):
        Mass.of(1).grams = Decimal(2)  # type: ignore[misc]
    with pytest.raises(TypeError):
        Mass.of(1) + 1  # type: ignore[operator]
    with pytest.raises(ZeroDivisionError):
        Mass.of(1) / 0


def test_it_is_stored_and_read_back_equal() -> None:
    mass = Mass.of(12, "ozt")

    assert msgspec.json.decode(msgspec.json.encode(mass), type=Mass) == mass


@pytest.mark.parametrize("unit", UNITS, ids=lambda u: u.symbol)
def test_every_spelling_names_its_unit(unit: Any) -> None:
    assert unit.source
    for word in (unit.symbol, *unit.spellings, unit.symbol.upper()):
        assert unit_of(word) is unit


@given(positive, st.sampled_from(symbols()))
def test_to_a_unit_and_back(value: Decimal, unit: str) -> None:
    if unit in {"tael-hk", "zolotnik-wt"}:  # thirds: never end as a decimal
        assert abs(Mass.of(value, unit).to(unit) - value) < Decimal("1e-40")
    else:
        assert Mass.of(value, unit).to(unit) == value


@given(positive, st.sampled_from(symbols()))
def test_what_is_written_reads_back(value: Decimal, unit: str) -> None:
    mass = Mass.of(value, unit)

    assert Mass.parse(mass.written()) == mass
    assert Mass.parse(f"{value} {unit}") == mass
    assert abs(Mass.parse(str(mass)) - mass) <= Mass.of(Decimal("0.0005"))


@given(grams, grams, grams)
def test_arithmetic_is_that_of_numbers(a: Mass, b: Mass, c: Mass) -> None:
    assert a + b == b + a
    assert (a + b) + c == a + (b + c)
    assert a - b == -(b - a)
    assert 3 * a == a + a + a == a * 3
    assert (a < b) == (a.grams < b.grams)
    assert Mass.total((a, b, c)) == a + b + c
    assert a / 4 * 4 == a
    assert abs(a) >= Mass.of(0)


@given(st.text(max_size=40))
def test_any_text_is_read_or_refused(text: str) -> None:
    line = ""
    try:
        assert Mass.parse(text) >= Mass.of(0)
    except QuantityError as told:
        line = str(told)
    assert "\n" not in line
