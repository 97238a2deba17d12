"""``planish weigh`` and ``planish density``: verdict first, 80 columns, everything in the JSON."""

import json
from pathlib import Path
from typing import Any

import pytest

from planish.case.demo import folder
from planish.cli import main

SPOONS = ["weigh", "41.8g", "42.1g", "52.0g", "--piece", "teaspoons", "--step", "0.1g",
          "--fineness", "925 +- 5", "--basis", "touch test"]  # fmt: skip
KNIVES = ["weigh", "812g", "--piece", "dinner knives", "--fineness", "925"]
BRACELET = ["density", "--air", "12.50g", "--temperature", "20", "--step", "0.01g"]
PRICED = ["--price", "USD 30/ozt on 2026-05-14 from a test", "--on", "2026-05-14"]


def run(capsys: pytest.CaptureFixture[str], *arguments: str) -> tuple[int, str, str]:
    code = main(list(arguments))
    out, err = capsys.readouterr()
    return code, out, err


def told(capsys: pytest.CaptureFixture[str], *arguments: str) -> Any:
    code, out, err = run(capsys, *arguments, "--json")
    assert (code, err) == (0, "")
    return json.loads(out)


@pytest.mark.parametrize(
    "arguments",
    [
        SPOONS,
        [*SPOONS, *PRICED, "--payout", "85%", "--charge", "assay=USD 45", "--refining", "0.5/ozt"],
        KNIVES,
        [*KNIVES, "--less", "steel blades=6 x 80g..110g by rule", *PRICED],
        ["weigh", "--part", "pot=412g at 925", "--part", "blade=52g other", "--part", "lid=84g at 800",
         "--less", "lid: ivory button=3g..5g by rule"],
        [*BRACELET, "--water", "11.30g"],
        [*BRACELET, "--rise", "1.43g"],
        [*BRACELET, "--water", "11.1g", "--water", "11.2g", "--water", "11.3g", "--bubbles", "5"],
    ],
)  # fmt: skip
def test_it_fits_eighty_columns(arguments: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = run(capsys, *arguments)

    assert (code, err) == (0, "")
    assert max(map(len, out.splitlines())) <= 80


def test_the_verdict_comes_first_and_the_sums_in_three_units(
    capsys: pytest.CaptureFixture[str],
) -> None:
    """135.9 g of 925: 125.7075 g = 4.0416 ozt = 80.832 dwt (31.1034768 g, 20 dwt; NIST HB 44)."""
    _, out, _ = run(capsys, *SPOONS)
    first = out.splitlines()[0]

    assert first.startswith("teaspoons: fine silver 125.71 g (4.042 ozt, 80.83 dwt)")
    assert "Number 3 differs" in out
    assert "buoyancy" in out


def test_nothing_is_stated_from_gross_weight(capsys: pytest.CaptureFixture[str]) -> None:
    _, out, _ = run(capsys, *KNIVES, *PRICED)

    assert "nothing is stated from gross weight alone" in out.splitlines()[0]
    assert "fine silver" not in out
    assert "At other prices" not in out
    plain = told(capsys, *KNIVES, *PRICED)
    assert plain["fine"] is None
    assert plain["metal"]["value"] is None
    assert plain["metal"]["scenarios"] == []
    assert [a["kind"] for a in plain["asks"]] == ["steel"]
    assert run(capsys, *KNIVES, "--fail-on", "asked")[0] == 1


def test_the_json_holds_everything(capsys: pytest.CaptureFixture[str]) -> None:
    plain = told(capsys, *SPOONS, *PRICED, "--payout", "0.85")

    assert plain["gross"]["g"] == pytest.approx(135.9)
    assert plain["fine"]["ozt"] == pytest.approx(135.9 * 0.925 / 31.1034768)
    budget = plain["fine_stated"]["budget"]
    assert sum(row["share"] for row in budget) == pytest.approx(1)
    assert {"fineness", "step of the balance"} == {row["component"] for row in budget}
    assert plain["weighing"]["spread"]["odd"] == [3]
    metal = plain["metal"]
    assert metal["value"]["amount"] == pytest.approx(135.9 * 0.925 / 31.1034768 * 30)
    assert metal["payable"]["amount"] == pytest.approx(metal["value"]["amount"] * 0.85)
    assert [s["change"] for s in metal["scenarios"]] == [-0.25, -0.1, 0, 0.1, 0.25]
    assert metal["price"]["source"] == "a test"
    assert metal["stale"] is False


def test_parts_in_json(capsys: pytest.CaptureFixture[str]) -> None:
    plain = told(capsys, "weigh", "--part", "pot=412g at 925", "--part", "lid=84g at 800")

    assert [p["piece"] for p in plain["parts"]] == ["pot", "lid"]
    assert plain["fine"]["g"] == pytest.approx(412 * 0.925 + 84 * 0.8)
    assert plain["fineness"] is None


def test_a_table_of_prices(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    table = tmp_path / "silver.csv"
    table.write_text("month,silver_usd_per_ozt\n2026-03,70\n2026-04,75.86\n2026-05,78.01\n")
    plain = told(capsys, *SPOONS, "--prices", str(table), "--on", "2026-05-14")
    late = told(capsys, *SPOONS, "--prices", str(table), "--on", "2026-09-01")

    assert plain["metal"]["price"]["amount"] == pytest.approx(75.86)
    assert plain["metal"]["price"]["source"] == "silver.csv"
    assert plain["metal"]["stale"] is False
    assert late["metal"]["stale"] is True


def test_the_pieces_of_a_case(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    case = next(folder().glob("*.toml"))
    file = tmp_path / case.name
    file.write_bytes(case.read_bytes())
    plain = told(capsys, "weigh", "--case", str(file))
    code, out, _ = run(capsys, "weigh", "--case", str(file))

    assert code == 0
    assert plain["pieces"]
    assert all(p["gross"]["g"] > 0 for p in plain["pieces"])
    assert all(p["piece"] in " ".join(out.split()) for p in plain["pieces"])
    assert max(map(len, out.splitlines())) <= 80


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (["weigh"], "no weight given"),
        (["weigh", "12 bushels"], "not known"),
        (["weigh", "12g", "--fineness", "1200"], "outside"),
        (["weigh", "12g", "--less", "steel"], "what is how much"),
        (["weigh", "12g", "--less", "steel=20g"], "leave nothing"),
        (["weigh", "12g", "--less", "lid: steel=2g"], "no part of that name"),
        (["weigh", "--part", "lid=12g", "--less", "base: steel=2g"], "comes off no part"),
        (["weigh", "12g", "13g", "--count", "2"], "several weights and a count"),
        (["weigh", "12g", "--price", "30/ozt"], "no currency"),
        (["weigh", "12g", "--payout", "85%"], "terms without a price"),
        (["weigh", "12g", "--price", "USD 30/ozt", "--payout", "85"], "share of one"),
        (["weigh", "12g", "--price", "USD 30/ozt", "--charge", "assay"], "no charge"),
        (["density", "--air", "12g", "--temperature", "20"], "one of two ways"),
        ([*BRACELET, "--water", "12.6g"], "weighs less in water"),
        ([*BRACELET, "--water", "11.3g", "--piece", "hollow bangle"], "hollow"),
        ([*BRACELET[:-4], "--temperature", "68", "--water", "11.3g"], "0 to 40"),
    ],
)
def test_bad_input_is_one_line(
    arguments: list[str], says: str, capsys: pytest.CaptureFixture[str]
) -> None:
    code, out, err = run(capsys, *arguments)

    assert code == 2
    assert out == ""
    assert says in err
    assert err.startswith("planish: ")
    assert err.count("\n") == 1


def test_a_price_that_is_no_text(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = tmp_path / "x.csv"
    file.write_bytes(b"\xff\xfe\x00")

    assert "not a text" in run(capsys, "weigh", "12g", "--prices", str(file))[2]


def test_density_says_what_fits_and_never_a_mark(capsys: pytest.CaptureFixture[str]) -> None:
    _, out, _ = run(capsys, *BRACELET, "--water", "11.30g")

    assert out.startswith("Density 10.387 g/cm³, 95 %: ")
    assert "silver is not excluded" in out.splitlines()[0]
    assert "Excluded: nickel silver" in out
    assert "no fineness mark is confirmed" in out


def test_density_in_json(capsys: pytest.CaptureFixture[str]) -> None:
    plain = told(capsys, *BRACELET, "--water", "11.07g")

    assert plain["verdict"] == "not solid silver"
    assert plain["density"]["value"] == pytest.approx(8.7163, abs=1e-3)
    assert {"nickel silver"} <= {f["group"] for f in plain["not_excluded"]}
    assert plain["readings"]["celsius"] == 20
    assert len(plain["cannot"]) == 3
    assert run(capsys, *BRACELET, "--water", "11.07g", "--fail-on", "not-silver")[0] == 1
    assert run(capsys, *BRACELET, "--water", "11.30g", "--fail-on", "not-silver")[0] == 0
