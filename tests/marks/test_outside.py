"""Sets of marks that others have described, read and compared, system by system.

Each row of outside/*.csv names its source and whether its text was seen (``trust``); README.md
beside the files explains the columns.
"""

import csv
from collections import defaultdict
from pathlib import Path

import msgspec
import pytest

from planish.cli.read import observed_of
from planish.library.loader import load
from planish.marks import Reader, Reading

FOLDER = Path(__file__).parent / "outside"
#: a set that fits several systems: how far down its reading may stand, and how likely it must be
_AMONG, _LEAST = 3, 0.05
#: years are those in which an assay year begins; a source may give the year in which it ends
_YEARS = 1
#: figures are rounded differently: 812 or 813 for 812.5
_PERMILLE = 1.0
_OPEN = 9999


#: systems of one line, which a reading may run through: id -> line and years
LINES = {s.id: (s.line, s.year_from, s.year_to or _OPEN) for s in load().systems if s.line}


class Outside(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """One set of marks described elsewhere."""

    system: str
    marks: str
    form: str = ""
    expect_country: str = ""
    expect_office: str = ""
    expect_from: int | None = None
    expect_to: int | None = None
    expect_kind: str = ""
    expect_fineness: float | None = None
    ambiguous: str = ""
    wrong: str = ""
    source: str
    where: str
    trust: str
    #: file and number of the row, for messages
    at: str = ""

    @property
    def set_of_marks(self) -> tuple[str, ...]:
        """The marks one by one."""
        return tuple(m.strip() for m in self.marks.split("|"))


def sets() -> list[Outside]:
    """All rows of all files."""
    found = []
    for file in sorted(FOLDER.glob("*.csv")):
        with file.open(encoding="utf-8", newline="") as text:
            for number, row in enumerate(csv.DictReader(text), 1):
                filled = {k: v for k, v in row.items() if v not in ("", None)}
                filled["at"] = f"{file.name} row {number}"
                found.append(msgspec.convert(filled, Outside, strict=False))
    return found


def _is(read: Reading, system: str) -> bool:
    """Whether a reading is of a system, or runs through its years on one line of systems."""
    if read.system == system or system not in LINES:
        return read.system == system
    line, low, high = LINES[system]
    mine = read.key.split("/")[0] == line
    return mine and (read.year_from or 0) <= high and (read.year_to or _OPEN) >= low


def faults(wanted: Outside, readings: tuple[Reading, ...], offices: dict[str, str]) -> list[str]:
    """What in the readings goes against the source; offices: name by id."""
    mine = [r for r in readings if _is(r, wanted.system)]
    if not mine:
        return [f"no reading is {wanted.system}"]
    if wanted.ambiguous:
        among = [r for r in readings[:_AMONG] if _is(r, wanted.system)]
        told = [_against(wanted, r, offices) for r in among if r.probability >= _LEAST]
        if not told:
            return [f"{wanted.system} is not among the first {_AMONG} at {_LEAST} or more"]
        return min(told, key=len)
    return _against(wanted, readings[0], offices)


def _against(wanted: Outside, read: Reading, offices: dict[str, str]) -> list[str]:
    found = []
    if wanted.expect_country and read.country != wanted.expect_country:
        found.append(f"country {read.country}, not {wanted.expect_country}")
    office = offices.get(wanted.expect_office, wanted.expect_office)
    if office and read.office != office:
        found.append(f"office {read.office}, not {office}")
    if wanted.expect_kind and read.kind != wanted.expect_kind:
        found.append(f"kind {read.kind}, not {wanted.expect_kind}")
    low = wanted.expect_from if wanted.expect_from is not None else -_OPEN
    high = wanted.expect_to if wanted.expect_to is not None else _OPEN
    first, last = read.year_from or -_OPEN, read.year_to or _OPEN
    if last < low - _YEARS or first > high + _YEARS:
        found.append(f"years {first}-{last}, not {low}-{high}")
    if wanted.expect_fineness is not None and (
        read.fineness is None or abs(read.fineness - wanted.expect_fineness) > _PERMILLE
    ):
        found.append(f"fineness {read.fineness}, not {wanted.expect_fineness}")
    return found


SETS = sets()
BY_SYSTEM: dict[str, list[Outside]] = defaultdict(list)
for _one in SETS:
    BY_SYSTEM[_one.system].append(_one)


@pytest.fixture(scope="module")
def reader() -> Reader:
    return Reader()


@pytest.fixture(scope="module")
def offices(reader: Reader) -> dict[str, str]:
    return {o.id: o.name for o in reader.library.offices}


def read(reader: Reader, wanted: Outside) -> tuple[Reading, ...]:
    form = wanted.form or None
    told = observed_of(wanted.set_of_marks, None, form)
    return reader.read(told, form, explain=False).readings


@pytest.mark.parametrize("system", sorted(BY_SYSTEM))
def test_sets_described_elsewhere_are_read_so(
    system: str, reader: Reader, offices: dict[str, str]
) -> None:
    told = []
    for wanted in BY_SYSTEM[system]:
        readings = read(reader, wanted)
        found = faults(wanted, readings, offices)
        if wanted.wrong and not found:
            told.append(f"{wanted.at}: read rightly now, clear its column 'wrong'")
        elif found and not wanted.wrong:
            best = readings[0]
            told.append(f"{wanted.at} ({wanted.marks}): {'; '.join(found)}; first is {best.label}")
    assert not told, "\n".join(told)


def test_rows_are_whole(reader: Reader, offices: dict[str, str]) -> None:
    systems = {s.id for s in reader.library.systems}
    for wanted in SETS:
        assert wanted.system in systems, wanted.at
        assert wanted.expect_office in {"", *offices, *offices.values()}, wanted.at
        assert wanted.trust in {"document", "memory", "practice"}, wanted.at
        assert wanted.ambiguous in {"", "yes"}, wanted.at
        assert wanted.expect_kind in {"", "solid", "plated", "base"}, wanted.at
        assert wanted.source.strip(), wanted.at
        assert wanted.where.strip(), wanted.at
        assert all(wanted.set_of_marks), wanted.at
        assert wanted.expect_country or wanted.expect_kind or wanted.expect_from, wanted.at
        assert (wanted.expect_from or 0) <= (wanted.expect_to or _OPEN), wanted.at


def test_no_set_stands_twice() -> None:
    seen = [(s.system, s.set_of_marks, s.form) for s in SETS]
    assert len(seen) == len(set(seen))


def test_a_set_with_another_answer_would_fail(reader: Reader, offices: dict[str, str]) -> None:
    """So that the tests above can fail: each expectation, turned, is held against the reading."""
    told = (s for s in SETS if s.expect_office and s.expect_from and not s.ambiguous + s.wrong)
    wanted, readings = next(
        (s, found) for s in told if not faults(s, found := read(reader, s), offices)
    )
    other = next(o for o in offices if offices[o] != readings[0].office)
    turned = {
        "expect_country": "XY",
        "expect_office": other,
        "expect_kind": "base",
        "expect_fineness": 123.0,
        "system": "XX-NONE",
    }
    assert not faults(wanted, readings, offices)
    for name, value in turned.items():
        assert faults(msgspec.structs.replace(wanted, **{name: value}), readings, offices), name
    late = msgspec.structs.replace(wanted, expect_from=2900, expect_to=2901)
    assert faults(late, readings, offices)
