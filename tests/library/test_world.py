"""Systems outside Britain and Ireland against law, calendar and handbooks."""

import csv
import re
from datetime import date
from pathlib import Path

import pytest

from planish.library import load
from planish.library.cycles import expand
from planish.library.rows import Sign, System
from planish.marks.thesaurus import Thesaurus

SHARED = Path(__file__).resolve().parents[3] / "shared" / "facts" / "world"
facts = pytest.mark.skipif(
    not SHARED.is_dir(), reason="the gathered facts are not kept in the checkout, only beside it"
)


def system(name: str) -> System:
    (row,) = (s for s in load().systems if s.id == name)
    return row


def shown(name: str, role: str) -> list[Sign]:
    return [s for s in load().signs if s.system == name and s.role == role]


def sunday_letters(year: int) -> str:
    """Dominical letters: the letter, A for 1 January, that falls on Sundays.

    A leap year has two, the second from March (definition: any perpetual calendar).
    """
    first = (6 - date(year, 1, 1).weekday()) % 7
    late = (6 - date(year, 3, 1).weekday() + 59) % 7
    letters = "ABCDEFG"
    return letters[first] + ("" if first == late else letters[late])


def test_baltimore_letters_are_dominical_letters() -> None:
    """1825-1827 alone stand still: C of 1824 was kept."""
    (cycle,) = (c for c in load().cycles if c.office == "BAL")
    off = [
        year
        for at in expand(cycle)
        for year in range(at.first_year, at.last_year + 1)
        if not set(at.letters) & set(sunday_letters(year))
    ]

    assert off == [1825, 1826, 1827]


def test_american_periods_follow_the_law() -> None:
    """34 Stat. 260: in force 13 June 1907; the periods before and after join without a gap."""
    ends = [("US-STER", "US-NSA"), ("US-NSA", "US-1961")]

    assert system("US-NSA").year_from == 1907
    for before, after in ends:
        assert system(before).year_to == system(after).year_from - 1


# Law or decree and year: Rosenberg, Merkzeichen IV (1928); Bekanntmachung of 7 January 1886
# (Germany, law in force 1 January 1888); law of 19 brumaire VI (France); D.Lgs. 251/1999 (Italy).
STARTS = [
    ("DE-1888", 1888),
    ("FR-COQ", 1798),
    ("FR-VIEIL", 1819),
    ("FR-MIN", 1838),
    ("AT-DIANA1", 1867),
    ("AT-DIANA2", 1872),
    ("AT-REP", 1922),
    ("NO-1892", 1892),
    ("DK-1893", 1893),
    ("SE-1912", 1912),
    ("RU-KOK2", 1908),
    ("CH-1880", 1882),
    ("IT-1934", 1934),
    ("NL-1953", 1953),
    ("MX-EAGLE", 1948),
]


@pytest.mark.parametrize(("name", "year"), STARTS)
def test_periods_begin_with_the_law(name: str, year: int) -> None:
    assert system(name).year_from == year


# Grades of law: Rosenberg IV (Diana 950 900 800 750); law of 19 brumaire VI (950, 800);
# German law of 16 July 1884 (800 and above on wares); Austrian lot 13 and 15.
GRADES = [
    ("AT-DIANA2", "fineness", {950, 900, 800, 750}),
    ("FR-MIN", "fineness", {950, 800}),
    ("FR-EXP", "fineness", {920, 840, 750}),
    ("NL-1814", "fineness", {934, 833}),
    ("NL-1953", "fineness", {925, 835}),
]


@pytest.mark.parametrize(("name", "role", "grades"), GRADES)
def test_grades(name: str, role: str, grades: set[int]) -> None:
    assert {s.fineness for s in shown(name, role)} == grades


def test_russian_figures_are_zolotniks() -> None:
    """84 = 875.0 and so on: parts of 96 (Brockhaus and Efron, art. "Proba")."""
    for name in ("RU-EMP", "RU-KOK1", "RU-KOK2"):
        for sign in shown(name, "fineness"):
            assert sign.fineness == pytest.approx(int(sign.value) / 96 * 1000, abs=0.05)


# Finnish L6 = 1940 on a spoon by Nestor Westerback (Finnish encyclopedia on marking); the others
# from memory: common in the trade.
CODES = [
    ("FI-IND", "L6", 1940),
    ("FI-IND", "P7", 1968),
    ("FI-IND", "T7", 1972),
    ("SE-1912", "P8", 1941),
    ("SE-1912", "C9", 1953),
    ("SE-1912", "Z8", 1950),
]


@pytest.mark.parametrize(("name", "code", "year"), CODES)
def test_nordic_year_codes(name: str, code: str, year: int) -> None:
    (sign,) = (s for s in shown(name, "date") if s.value == code)

    assert (sign.year_from, sign.year_to) == (year, year)


def test_nordic_years_have_one_code_each() -> None:
    for names in (("SE-1754", "SE-1912", "SE-1989"), ("FI-1810", "FI-IND", "FI-NOW")):
        signs = [s for name in names for s in shown(name, "date")]

        years = [s.year_from for s in signs]
        assert sorted(years) == list(range(min(years), max(years) + 1))
        assert not any(s.value[0] in "JW" for s in signs)


# What catalogues write for state marks (common practice), and the device meant.
WORDINGS = [
    ("Minerva head", "minerva-head"),
    ("boar's head", "boars-head"),
    ("kokoshnik", "kokoshnik-head"),
    ("woman's head in headdress", "kokoshnik-head"),
    ("kokoshnik facing left", "kokoshnik-head-left"),
    ("Moscow city emblem", "st-george-dragon"),
    ("crossed anchors", "crossed-anchors-sceptre"),
    ("crescent and crown", "crescent-and-crown"),
    ("three towers", "three-towers"),
    ("Diana head", "diana-head"),
    ("head of Mercury", "mercury-head"),
    ("cat's paw", "three-crowns-trefoil"),
    ("crown in heart", "crown-in-heart"),
    ("star with hammer and sickle", "star-hammer-sickle"),
    ("capercaillie", "grouse"),
    ("tughra", "tughra"),
    ("eagle with a 3", "eagle-with-number"),
    ("Chinese chop mark", "chinese-characters"),
    ("sheaf of wheat", "wheat-sheaf"),
]


@pytest.mark.parametrize(("words", "device"), WORDINGS)
def test_catalogue_wording_finds_the_device(words: str, device: str) -> None:
    assert device in Thesaurus(load().devices).named(words)


def test_countries_are_iso_codes() -> None:
    """ISO 3166-1 as listed in the time zone database's iso3166.tab; YU is withdrawn (3166-3)."""
    tables = [
        Path("/usr/share/zoneinfo/iso3166.tab"),
        *(Path(p) for p in Path("/usr/lib/python3").glob("**/tzdata/zoneinfo/iso3166.tab")),
    ]
    table = next((t for t in tables if t.is_file()), None)
    if table is None:
        pytest.skip("no time zone database with country codes on this machine")
    known = {
        line[:2] for line in table.read_text(encoding="utf-8").splitlines() if line[:1].isalpha()
    }
    library = load()
    used = {s.country for s in library.systems} | {o.country for o in library.offices}
    used |= {m.country for m in library.makers}
    used |= {c for w in library.words for c in w.countries.split(";") if c}

    assert used - known <= {"YU", ""}


def test_spots_are_ranked_from_one() -> None:
    ranks: dict[str, list[int]] = {}
    for spot in load().spots:
        ranks.setdefault(spot.form, []).append(spot.rank)

    for form, found in ranks.items():
        assert sorted(found) == list(range(1, len(found) + 1)), form


@facts
def test_every_gathered_country_and_period_has_a_system() -> None:
    """Each system of the gathered facts is covered by one of that country in those years."""
    codes = {
        "Austria-Hungary": "AT", "Austrian Empire": "AT", "Netherlands": "NL", "USSR": "RU",
        "Southern Netherlands": "BE", "Ottoman Empire": "TR", "Korea": "KR", "Vietnam": "VN",
    }  # fmt: skip
    library = load()
    missing = []
    with (SHARED / "systems.csv").open(encoding="utf-8") as file:
        for row in csv.DictReader(file):
            prefix = re.split(r"[-]", row["system_id"])[0]
            country = codes.get(row["country"].split(":")[0], prefix)
            country = {"SU": "RU", "BALT": row["system_id"][-2:], "CCM": ""}.get(prefix, country)
            if not country:
                continue
            low, high = int(row["year_from"]), int(row["year_to"] or 2030)
            if not any(
                s.country == country and s.year_from <= high and low <= (s.year_to or 2030)
                for s in library.systems
            ):
                missing.append(row["system_id"])

    # Finland under Sweden was marked as Sweden; the last is a heading for modern copies
    assert missing == ["FI-SE", "FAKE-REP"]


@facts
def test_every_gathered_maker_is_in_the_register() -> None:
    """All but one: a trader who struck no mark of his own."""
    names = {m.name for m in load().makers}
    with (SHARED / "makers.csv").open(encoding="utf-8") as file:
        gone = [row["name"] for row in csv.DictReader(file) if row["name"] not in names]

    assert gone == ["C. G. Wallace"]
