"""Ten museum records become one case and a draft report; the curators' countries are the check."""

import importlib.util
import json
import re
import shutil
import subprocess
from pathlib import Path
from types import ModuleType

import pytest

from planish.case import Case, load
from planish.case.work import work

CHECKOUT = Path(__file__).resolve().parents[2]
RECORDS = CHECKOUT.parent / "shared" / "museum" / "records.jsonl"
#: ISO 3166-1 for the countries as the records name them
CODES = {
    "England": "GB",
    "Scotland": "GB",
    "Ireland": "IE",
    "USA": "US",
    "Russia/USSR": "RU",
    "France": "FR",
}
#: of ten pieces, at least so many must be read as of the curators' country
LEAST = 9

needs_records = pytest.mark.skipif(
    not RECORDS.is_file(),
    reason="the museum records are not there: they lie in the folder 'shared' beside the checkout",
)


@pytest.fixture(scope="module")
def script() -> ModuleType:
    """The script, which is no part of the package."""
    spec = importlib.util.spec_from_file_location(
        "museum_case", CHECKOUT / "scripts" / "museum_case.py"
    )
    assert spec
    assert spec.loader
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory, script: ModuleType) -> Path:
    """The folder with the case and its report, made once."""
    folder: Path = tmp_path_factory.mktemp("museum") / "trial"
    assert script.main([str(RECORDS), "-o", str(folder)]) == 0
    return folder


@pytest.fixture(scope="module")
def case(made: Path) -> Case:
    """The case as loaded: no fault is raised."""
    return load(made / "case.toml")


@needs_records
def test_the_case_says_what_it_is_and_gives_no_money(case: Case) -> None:
    assert len(case.pieces) == 10
    said = " ".join((case.case.notice or "", *case.case.limiting_conditions)).casefold()
    assert "public museum records for testing" in said
    assert "no valuation" in said
    assert "no photographs" in said
    assert case.metal_price is None
    for piece in case.pieces:
        assert not piece.photographs
        assert not piece.comparables
        assert piece.opinion is None
        assert not piece.use_metal_value


@needs_records
def test_each_piece_holds_the_blind_marks_the_object_and_the_weight(case: Case) -> None:
    rows = {r["id"]: r for r in map(json.loads, RECORDS.read_text(encoding="utf-8").splitlines())}
    weighed = 0
    for piece in case.pieces:
        row = rows[piece.inventory or ""]
        assert piece.marks_text == row["marks_text_blind"]
        assert piece.form == row["object"]
        assert bool(piece.weight) is bool(row["weight_g"])
        if piece.weight:
            assert piece.weight.gross == f"{row['weight_g']:g} g"
            weighed += 1
    assert weighed == 4


@needs_records
def test_the_report_is_a_draft_pdf(made: Path) -> None:
    report = made / "report.pdf"
    assert report.read_bytes().startswith(b"%PDF-")
    if shutil.which("pdftotext"):
        done = subprocess.run(
            ["pdftotext", "-layout", str(report), "-"], capture_output=True, text=True, check=True
        )
        assert "Draft, not issued" in done.stdout
        assert "Made from public museum records for testing" in done.stdout


@needs_records
def test_the_countries_are_the_curators(case: Case) -> None:
    rows = {r["id"]: r for r in map(json.loads, RECORDS.read_text(encoding="utf-8").splitlines())}
    wrong = {}
    for done in work(case).pieces:
        name = done.piece.inventory or ""
        best = done.reading.best
        if best is None or best.country != CODES[rows[name]["country"]]:
            wrong[name] = (rows[name]["country"], best and best.label)
    assert len(wrong) <= len(case.pieces) - LEAST, wrong


def test_ids_that_hold_commas_are_told_apart(script: ModuleType) -> None:
    found = {i: {"id": i} for i in ("a", "a,2", "b 3, c")}
    assert [r["id"] for r in script.chosen(found, "a,2,b 3, c,a")] == ["a,2", "b 3, c", "a"]
    for bad in ("a,x", "", "a,a"):
        with pytest.raises(script.Unusable, match="--ids"):
            script.chosen(found, bad)


@pytest.mark.parametrize(
    ("text", "sizes", "rest"),
    [
        ("H 27.3 cm", [("height", "27.3 cm")], ""),
        ("34 x 114 mm", [("first measure", "34 mm"), ("second measure", "114 mm")], ""),
        ("L 4 1/2 in", [("length", "4.5 in")], ""),
        ('length: 4"', [("length", "4 in")], ""),
        ("150 mm H", [("height", "150 mm")], ""),
        ("base diam 12.9-13", [], "base diam 12.9-13"),
        ("L 4 1/0 in", [], "L 4 1/0 in"),
    ],
)
def test_sizes_are_taken_as_written_or_left_in_words(
    text: str, sizes: list[tuple[str, str]], rest: str, script: ModuleType
) -> None:
    assert script.measured(text) == (sizes, rest)


def test_any_text_of_a_record_is_held_by_the_case_file(tmp_path: Path, script: ModuleType) -> None:
    odd = 'a "quoted" \\ text,\nwith\x7f and É'
    row = {"id": odd, "object": odd, "medium": odd, "marks_text_blind": odd, "institution": odd}
    (piece,) = load(script.write_case([row], tmp_path)).pieces
    assert piece.inventory == piece.form == piece.marks_text == odd


def test_a_case_of_somebody_else_is_left_alone(tmp_path: Path, script: ModuleType) -> None:
    (tmp_path / "case.toml").write_text("mine", encoding="utf-8")
    with pytest.raises(script.Unusable, match="another"):
        script.write_case([], tmp_path)
    assert (tmp_path / "case.toml").read_text(encoding="utf-8") == "mine"


def test_bad_input_is_told_in_one_line(
    tmp_path: Path, script: ModuleType, capsys: pytest.CaptureFixture[str]
) -> None:
    file = tmp_path / "records.jsonl"
    assert script.main([str(file), "-o", str(tmp_path)]) == 2
    file.write_text('{"id": "a"}\n[]\n', encoding="utf-8")
    assert script.main([str(file), "-o", str(tmp_path)]) == 2
    lines = capsys.readouterr().err.splitlines()
    assert len(lines) == 2
    assert all(line.startswith("museum_case: ") for line in lines)
    assert re.search("line 2", lines[1])
