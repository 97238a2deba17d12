"""British and Irish facts against laws, offices' own pages and handbooks; sources beside each."""

from itertools import pairwise

import pytest

from planish.library import load
from planish.library.rows import Sign


def signs(system: str, office: str, role: str, year: int) -> list[Sign]:
    return [
        s
        for s in load().signs
        if s.system == system
        and s.office in ("", office)
        and s.role == role
        and s.year_from <= year <= (s.year_to or 9999)
    ]


def values(system: str, office: str, role: str, year: int) -> set[str]:
    return {s.value for s in signs(system, office, role, year)}


@pytest.mark.parametrize(
    ("office", "device"),
    [("LON", "leo"), ("BIR", "triangle"), ("SHE", "libra"), ("EDI", "st-andrews-cross")],
)
def test_import_marks_of_the_act(office: str, device: str) -> None:
    """Hallmarking Act 1973, Schedule 2: marks of imported wares."""
    assert values("GB-IMPORT", office, "import", 1975) == {device}


@pytest.mark.parametrize(
    ("office", "town", "lion"),
    [
        ("LON", "leopards-head-uncrowned", "lion-passant"),
        ("BIR", "anchor", "lion-passant"),
        ("SHE", "rose", "lion-passant"),
        ("EDI", "castle-three-towers", "lion-rampant"),
    ],
)
def test_marks_of_1975(office: str, town: str, lion: str) -> None:
    """Hallmarking Act 1973, Schedule 2: marks of the offices, sterling of 925."""
    assert values("GB-1975", office, "town", 1975) == {town}
    sterling = {s.value for s in signs("GB-1975", office, "standard", 1975) if s.fineness == 925}
    assert sterling == {lion}


@pytest.mark.parametrize("office", ["LON", "BIR", "SHE", "EDI"])
def test_fineness_figures_of_1999(office: str) -> None:
    """S.I. 1998/2978: 800, 925, 958 and 999; the lion is by choice from then."""
    found = signs("GB-1999", office, "fineness", 1999)

    assert {s.value: s.fineness for s in found} == {
        "800": 800, "925": 925, "958": 958, "999": 999,
    }  # fmt: skip
    (lion,) = [
        r
        for r in load().roles
        if r.system == "GB-1999" and r.office == office and r.role == "standard"
    ]
    assert lion.presence < 0.9


@pytest.mark.parametrize(
    ("year", "standard", "town", "fineness"),
    [
        (1695, "lion-passant-guardant", "leopards-head-crowned", None),
        (1698, "britannia-seated", "lions-head-erased", 958.4),
        (1719, "britannia-seated", "lions-head-erased", 958.4),
        (1720, "lion-passant-guardant", "leopards-head-crowned", None),
    ],
)
def test_london_about_the_britannia_standard(
    year: int, standard: str, town: str, fineness: float | None
) -> None:
    """27 March 1697 to 31 May 1720, 11 oz 10 dwt. Source: Morgan 1852, page 194; Hayden 1915."""
    assert values("GB-ENG", "LON", "standard", year) == {standard}
    assert values("GB-ENG", "LON", "town", year) == {town}
    assert {s.fineness for s in signs("GB-ENG", "LON", "standard", year)} == {fineness}


def test_eleven_ounces_ten_pennyweight_in_parts_per_thousand() -> None:
    """A pound troy is 12 oz of 20 dwt: Britannia 230/240, sterling 222/240, Scots 11/12."""
    fineness = {s.id: s.fineness for s in load().systems}

    assert fineness["GB-ENGBRIT"] == pytest.approx(230 / 240 * 1000, abs=0.1)
    assert fineness["GB-ENG"] == pytest.approx(222 / 240 * 1000, abs=0.1)
    (scots,) = signs("GB-SCT", "EDI", "assay-master", 1700)
    assert scots.fineness == pytest.approx(11 / 12 * 1000, abs=0.1)


@pytest.mark.parametrize(
    ("year", "heads"),
    [
        (1783, set()),
        (1800, {"iii"}),
        (1825, {"iv"}),
        (1834, {"william-iv"}),
        (1860, {"victoria"}),
        (1891, set()),
    ],
)
def test_the_sovereign_on_duty_marks(year: int, heads: set[str]) -> None:
    """1 December 1784 to 30 April 1890. Source: Chaffers 1922, page 174."""
    found = values("GB-ENG", "LON", "duty", year)

    assert {v.removeprefix("sovereign-head-").removeprefix("george-") for v in found} == heads


def test_london_kept_william_for_the_letter_of_1837() -> None:
    """To 28 May 1838. Source: A. Dove, The Duty Mark and Stub."""
    shares = {s.value: s.share for s in signs("GB-ENG", "LON", "duty", 1837)}

    assert max(shares, key=lambda v: shares[v]) == "sovereign-head-william-iv"


def test_no_sovereign_before_the_duty_in_ireland() -> None:
    """Hibernia from 25 March 1730, the head beside it from 1807. Source: Hayden 1915; Weldons."""
    assert values("IE-DUB", "DUB", "duty", 1729) == set()
    assert values("IE-DUB", "DUB", "duty", 1800) == {"hibernia"}
    assert values("IE-DUB", "DUB", "duty", 1810) == {"sovereign-head-george-iii"}
    assert values("IE-DUB", "DUB", "town", 1810) == {"hibernia"}


def test_edinburgh_takes_the_thistle_in_1759() -> None:
    """Source: Hayden 1915."""
    assert values("GB-SCT", "EDI", "standard", 1758) == set()
    assert values("GB-SCT", "EDI", "standard", 1759) == {"thistle"}
    assert signs("GB-SCT", "EDI", "assay-master", 1759) == []


def test_no_crown_on_plate_after_1896() -> None:
    """Barred about 1895-96. Source: collectors' articles, two."""
    assert "crown" in values("GB-EP", "", "pseudo", 1896)
    assert "crown" not in values("GB-EP", "", "pseudo", 1897)


def test_diamond_letters_stand_for_one_year_each() -> None:
    """26 years of 1842-67 and 16 of 1868-83. Source: Antique Metalware Society, key."""
    years = [d for d in load().designs if d.record == "diamond-year"]

    for pattern, first, last in (("1842-1867", 1842, 1867), ("1868-1883", 1868, 1883)):
        here = [d for d in years if d.key_1 == pattern]
        assert {int(d.value) for d in here} == set(range(first, last + 1))
        # W stood for six days of 1878 beside D
        assert len({d.key_2 for d in here}) == len(here)
        assert len(here) == last - first + 1 + (pattern == "1868-1883")


def test_registered_numbers_run_on() -> None:
    found = [d for d in load().designs if d.record == "rd-number" and d.key_1 < "1989"]

    assert [int(d.key_1) for d in found] == list(range(1884, 1989))
    for before, after in pairwise(found):
        assert int(after.key_2) == int(before.value) + 1


def test_a_registered_number_on_a_dated_piece() -> None:
    """Rd 631976 on a museum piece by a maker of 1914 (from the gathered facts, maker not named)."""
    (hit,) = [
        d
        for d in load().designs
        if d.record == "rd-number" and d.value and int(d.key_2) <= 631976 <= int(d.value)
    ]

    assert hit.key_1 == "1914"
