"""The register of makers: shape, and dates from outside."""

import re
from collections import Counter

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


def test_enough_for_the_common_ones() -> None:
    counted = Counter(m.country for m in load().makers)

    assert counted["GB"] + counted["IE"] >= 400
    assert counted["US"] >= 300
