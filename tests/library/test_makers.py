"""The register of makers: shape, and dates from outside."""

import re
from collections import Counter, defaultdict
from collections.abc import Iterable
from itertools import combinations
from typing import Any

import msgspec
import pytest

from planish.library import load
from planish.library.rows import Maker
from planish.marks.transcription import parse


def maker(name: str, country: str) -> Maker:
    (row,) = (m for m in load().makers if m.name == name and m.country == country)
    return row


# Died, or founded and closed: general encyclopedias (Britannica; Dictionary of National Biography;
# Svensk uppslagsbok), from memory. A person does not mark long after death, nor a firm before it is founded.
DIED = [
    ("Paul de Lamerie", "GB", 1751),
    ("Hester Bateman", "GB", 1794),
    ("Matthew Boulton", "GB", 1809),
    ("Paul Storr", "GB", 1844),
    ("Paul Revere II", "US", 1818),
    ("Jacob Hurd", "US", 1758),
    ("Myer Myers", "US", 1795),
    ("Omar Ramsden", "GB", 1939),
    ("Wiwen Nilsson", "SE", 1974),
]
FOUNDED = [
    ("Georg Jensen", "DK", 1904),
    ("Tiffany, Young and Ellis", "US", 1837),
    ("Gorham Manufacturing Company", "US", 1831),
    ("Wiener Werkstätte", "AT", 1903),
    ("William Spratling", "MX", 1931),
    ("Mappin and Webb", "GB", 1858),
    ("Hamilton and Inches", "GB", 1866),
    ("Liberty and Company", "GB", 1875),
]


@pytest.mark.parametrize(("name", "country", "year"), DIED)
def test_nobody_marks_after_death(name: str, country: str, year: int) -> None:
    row = maker(name, country)

    assert row.year_from is not None
    assert row.year_to is not None
    assert year - 90 < row.year_from < row.year_to <= year


@pytest.mark.parametrize(("name", "country", "year"), FOUNDED)
def test_no_firm_marks_before_it_is_founded(name: str, country: str, year: int) -> None:
    row = maker(name, country)

    assert row.year_from is not None
    assert year <= row.year_from <= year + 25


def test_layout_of_well_known_marks() -> None:
    """Marks illustrated in every handbook (Chaffers; Jackson), from memory."""
    assert "PB/AB" in maker("Peter and Ann Bateman", "GB").marks.split("; ")
    assert "WE/WF/WC" in maker("William Eley, William Fearn and William Chawner", "GB").marks
    assert "RE/EB" in maker("Rebecca Emes and Edward Barnard", "GB").marks


def test_shape() -> None:
    for row in load().makers:
        assert re.fullmatch(r"[a-z0-9-]+", row.id), row.id
        assert re.fullmatch(r"[A-Z]{2}", row.country), row.id
        assert row.kind in ("maker", "retailer", "designer", "importer"), row.id
        # before about 1650 many marks are a device alone
        assert row.marks or row.device, row.id
        for mark in row.marks.split(";") if row.marks else ():
            assert mark.strip(), row.id
            parse(mark.strip())
        if row.year_from is not None and row.year_to is not None:
            # families and firms that kept one name
            assert 0 <= row.year_to - row.year_from < 320, row.id


def test_a_name_stands_once_in_a_country() -> None:
    counted = Counter((m.name.casefold(), m.country) for m in load().makers)

    assert [name for name, times in counted.items() if times > 1] == []


def twins(makers: Iterable[Maker]) -> list[tuple[str, str]]:
    """Rows of one maker entered twice: the same words in the name (in any order, brackets and
    "Ltd" left out), one place, one mark, and more than a year in common.
    """
    named: dict[tuple[str, frozenset[str]], list[Maker]] = defaultdict(list)
    for row in makers:
        words = set(re.findall(r"\w+", re.sub(r"\(.*?\)", " ", row.name.casefold())))
        named[row.country, frozenset(words - {"and", "the", "of", "ltd", "limited"})].append(row)

    def marks(row: Maker) -> set[str]:
        found = (re.sub(r"[\W_]", "", mark.casefold()) for mark in row.marks.split(";"))
        return {mark.replace("j", "i") for mark in found if mark}

    def places(row: Maker) -> set[str]:
        return {place.strip() for place in row.place.split(";")}

    return [
        (a.id, b.id)
        for found in named.values()
        for a, b in combinations(found, 2)
        if marks(a) & marks(b) and places(a) & places(b)
        if max(a.year_from or 0, b.year_from or 0) < min(a.year_to or 2100, b.year_to or 2100)
    ]


def test_nobody_stands_twice() -> None:
    assert twins(load().makers) == []


@pytest.mark.parametrize(
    ("cells", "found"),
    [
        ({"name": "Fothergill and Boulton, Matthew and John"}, True),
        ({"name": "Matthew Boulton and John Fothergill (Soho)", "marks": "M.B/I.F"}, True),
        ({"marks": "BF"}, False),
        ({"place": "Sheffield"}, False),
        ({"year_from": 1782, "year_to": 1790}, False),
    ],
)
def test_a_twin_is_found(cells: dict[str, Any], *, found: bool) -> None:
    row = maker("Matthew Boulton and John Fothergill", "GB")
    other = msgspec.structs.replace(row, **{"id": "other", **cells})

    assert twins([row, other]) == ([(row.id, "other")] if found else [])


def test_well_known_successions() -> None:
    """Grimwade, London Goldsmiths 1697-1837; Culme, Directory of Gold and Silversmiths 1838-1914:
    the order of the partnerships, from memory.
    """
    rows = {row.id: row for row in load().makers}

    def line(of: str) -> list[str]:
        found = [of]
        while before := rows[found[-1]].predecessors:
            found.append(before[0])
        return found

    assert line("william-bateman-i") == [
        "william-bateman-i", "peter-and-william-bateman", "peter-ann-and-william-bateman",
        "peter-and-ann-bateman", "peter-and-jonathan-bateman", "hester-bateman",
    ]  # fmt: skip
    assert line("james-garrard")[-1] == "george-wickes"
    assert line("edward-barnard-and-sons-ltd")[-1] == "henry-chawner"
    assert "william-chawner-ii" in line("george-adams-chawner-and-company")


def test_a_family_is_written_one_way() -> None:
    counted: dict[str, set[str]] = defaultdict(set)
    for row in load().makers:
        if row.family:
            counted[row.family.casefold()].add(row.family)

    assert [sorted(ways) for ways in counted.values() if len(ways) > 1] == []


def test_enough_for_the_common_ones() -> None:
    counted = Counter(m.country for m in load().makers)

    assert counted["GB"] + counted["IE"] >= 400
    assert counted["US"] >= 300
