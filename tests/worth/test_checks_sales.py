"""Worked checks of the topics units, time, exchange, level; each names its source in its row."""

import json
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest

from planish.quantity import Fineness, Mass, Money, UncertainDate
from planish.worth.comparables import Basis, Comparable
from planish.worth.exchange import Exchange
from planish.worth.grid import build
from planish.worth.levels import Conversions
from planish.worth.series import read_series
from planish.worth.timing import metal_part, premium_part

SHARED = Path(__file__).resolve().parents[3] / "shared"
CHECKS = SHARED / "facts" / "worth" / "checks.jsonl"

pytestmark = pytest.mark.skipif(
    not CHECKS.exists(), reason="the worked checks lie in a folder beside the checkout"
)


def check(key: str) -> tuple[dict[str, Any], dict[str, Any], float]:
    for line in CHECKS.read_text(encoding="utf-8").splitlines():
        row = json.loads(line)
        if row["id"] == key:
            assert row["source"]
            return row["inputs"], row["expected"], row["tolerance"]
    raise AssertionError(f"no check {key}")


def fine(given: dict[str, Any]) -> Mass:
    return Mass.of(given["net_g"]) * Fineness.of(given["fineness"] * 1000).share


def test_unit_01() -> None:
    given, expected, tolerance = check("unit-01")
    mass = Mass.of(given["dwt"], "dwt")

    assert float(mass.grams) == pytest.approx(expected["g"], abs=tolerance)
    assert float(mass.to("ozt")) == pytest.approx(expected["ozt"], abs=tolerance)


def test_unit_02() -> None:
    given, expected, tolerance = check("unit-02")
    mass = Mass.parse_scratch(f"{given['ozt']}-{given['dwt']}")

    assert float(mass.to("ozt")) == pytest.approx(expected["ozt_decimal"], abs=tolerance)
    assert float(mass.grams) == pytest.approx(expected["g"], abs=tolerance)


@pytest.mark.parametrize("key", ["time-metal-01", "time-metal-02"])
def test_the_metal_line(key: str) -> None:
    given, expected, tolerance = check(key)
    part = metal_part(
        Decimal(given["price"]),
        fine(given),
        Decimal(str(given["spot_then"])),
        Decimal(str(given["spot_now"])),
        share=Decimal(str(given["passthrough"])),
        kept=None,  # the check leaves the floor aside
    )

    assert float(part.adjusted) == pytest.approx(expected["adjusted"], abs=tolerance)
    if "metal_line" in expected:
        assert float(part.line) == pytest.approx(expected["metal_line"], abs=tolerance)


def test_the_metal_line_then_the_premium() -> None:
    given, expected, tolerance = check("time-metal-03")
    spots = Decimal(str(given["spot_then"])), Decimal(str(given["spot_now"]))
    part = metal_part(Decimal(given["price"]), fine(given), *spots, share=Decimal(1))
    index = Decimal(given["premium_index_then"]), Decimal(given["premium_index_now"])
    adjusted = premium_part(part.adjusted, part.now, *index)

    assert float(given["price"] - part.then) == pytest.approx(
        expected["premium_then"], abs=tolerance
    )
    assert float(adjusted) == pytest.approx(expected["adjusted"], abs=tolerance)


def test_an_index_moves_the_whole_price_of_what_has_no_metal() -> None:
    given, expected, tolerance = check("time-index-01")
    index = Decimal(str(given["index_then"])), Decimal(str(given["index_now"]))
    adjusted = premium_part(Decimal(given["price"]), Decimal(0), *index)

    assert float(adjusted) == pytest.approx(expected["adjusted"], abs=tolerance)


def test_fx_01_by_the_dated_table() -> None:
    given, expected, tolerance = check("fx-01")
    table = SHARED / "prices" / "fx_monthly_per_usd.csv"
    if not table.exists():
        pytest.skip("the table of rates lies in a folder beside the checkout")
    exchange = Exchange.of(read_series(table.read_text(encoding="utf-8"), "rates").values())
    sold = Comparable(
        id="1",
        date=UncertainDate(f"{given['month']}-14"),
        venue="saleroom",
        price=Money.of(given["price"], given["currency"]),
        basis=Basis.HAMMER,
    )
    grid = build([sold], Basis.HAMMER, "USD", Conversions(exchange=exchange))

    assert float(grid.rows[0].adjusted.amount) == pytest.approx(expected["usd"], abs=tolerance)


def test_level_02_one_sale_three_levels() -> None:
    given, expected, tolerance = check("level-02")
    rates = Conversions(
        premium=Decimal(str(given["premium"])), commission=Decimal(str(given["commission"]))
    )
    sold = Comparable(
        id="1",
        date=UncertainDate("2020-01-01"),
        venue="saleroom",
        price=Money.of(given["hammer"], "USD"),
        basis=Basis.HAMMER,
    )
    levels = {"buyer_paid": Basis.WITH_PREMIUM, "hammer": Basis.HAMMER,
              "seller_received": Basis.NET_TO_SELLER}  # fmt: skip
    found = {
        name: float(build([sold], basis, "USD", rates).rows[0].adjusted.amount)
        for name, basis in levels.items()
    }

    for name, value in found.items():
        assert value == pytest.approx(expected[name], abs=tolerance)
    spread = 1 - found["seller_received"] / found["buyer_paid"]
    assert spread == pytest.approx(expected["spread_of_buyer_price"], abs=tolerance)


def test_price_01_known_months_of_silver() -> None:
    _, expected, tolerance = check("price-01")
    table = SHARED / "prices" / "metals_monthly_usd.csv"
    if not table.exists():
        pytest.skip("the table of prices lies in a folder beside the checkout")
    silver = read_series(table.read_text(encoding="utf-8"), "prices")["silver_usd_per_ozt"]

    for month, value in expected["v"].items():
        assert float(silver.at(UncertainDate(month)).value) == pytest.approx(value, abs=tolerance)
