"""The register outside Britain and Ireland: dates from outside, and who followed whom."""

import pytest

from planish.library import load
from planish.library.rows import Maker


def maker(name: str, country: str) -> Maker:
    (row,) = (m for m in load().makers if m.name == name and m.country == country)
    return row


# Year of death (general encyclopedias, from memory). Nobody marks after it.
DIED = [
    ("Wenzel Jamnitzer", "DE", 1585),
    ("Christoph Jamnitzer", "DE", 1618),
    ("Johann Melchior Dinglinger", "DE", 1731),
    ("Emil Lettré", "DE", 1954),
    ("Thomas Germain", "FR", 1748),
    ("René Lalique", "FR", 1945),
    ("Jean Després", "FR", 1980),
    ("Adam van Vianen", "NL", 1627),
    ("Johannes Lutma the elder", "NL", 1669),
    ("Koloman Moser", "AT", 1918),
    ("Dagobert Peche", "AT", 1923),
    ("Gustav Gaudernack", "NO", 1914),
    ("Charles Loloma", "US", 1991),
    ("Bill Reid", "CA", 1998),
]

# Dictionary of Canadian Biography, biographi.ca: first and last year that the entry allows.
CANADA = [
    ("Paul Lambert dit Saint-Paul", 1729, 1749),
    ("Jacques Pagé dit Carcy", 1708, 1742),
    ("Joseph Schindler", 1763, 1792),
    ("Robert Cruickshank", 1773, 1809),
    ("James Orkney", 1787, 1832),
    ("Paul Morand", 1819, 1854),
    ("François Sasseville", 1839, 1864),
    ("Robert Hendery", 1837, 1897),
]

# Who followed whom: histories of the houses told in every handbook of American silver
# (Rainwater, Encyclopedia of American Silver Manufacturers), from memory; the line of Quebec
# from the Dictionary of Canadian Biography.
LINES = [
    ("US", "Shreve, Crump and Low", "Jones, Lows and Ball"),
    ("US", "Tiffany and Company", "Tiffany and Young"),
    ("US", "Dominick and Haff", "Gale, North and Dominick"),
    ("US", "Black, Starr and Frost", "Marquand and Company"),
    ("US", "International Silver Company", "Meriden Britannia Company"),
    ("US", "Jenkins and Jenkins", "A. Jacobi"),
    ("CA", "Ambroise Lafrance", "Laurent Amiot"),
]


@pytest.mark.parametrize(("name", "country", "year"), DIED)
def test_nobody_marks_after_death(name: str, country: str, year: int) -> None:
    row = maker(name, country)

    assert row.year_from is not None
    assert row.year_to is not None
    assert year - 90 < row.year_from < row.year_to <= year


@pytest.mark.parametrize(("name", "first", "last"), CANADA)
def test_years_agree_with_the_national_biography(name: str, first: int, last: int) -> None:
    row = maker(name, "CA")

    assert row.year_from is not None
    assert row.year_to is not None
    assert first <= row.year_from < row.year_to <= last
    assert "CA-DCB" in row.sources


@pytest.mark.parametrize(("country", "last", "first"), LINES)
def test_a_house_is_followed_back_to_its_founder(country: str, last: str, first: str) -> None:
    by_id = {m.id: m for m in load().makers}
    seen: set[str] = set()
    todo = [maker(last, country).id]
    while todo:
        row = by_id[todo.pop()]
        seen.add(row.name)
        todo.extend(row.predecessors)

    assert first in seen


def test_the_leading_mark_of_a_paris_master_is_crowned() -> None:
    """A Paris master before 1797 struck initials under a crowned fleur-de-lis (Nocq, from memory)."""
    paris = [
        m
        for m in load().makers
        if m.country == "FR" and m.place == "Paris" and "crowned fleur-de-lis" in m.device
    ]

    assert len(paris) >= 35
    for row in paris:
        assert row.year_from is not None, row.id
        assert row.year_from < 1797, row.id
