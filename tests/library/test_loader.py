"""The loader: typed rows, one line for a bad one."""

import pytest

from planish.library import LibraryError, load
from planish.library.loader import TABLES, read_rows
from planish.library.rows import Confidence, Cycle, Role, Row

HEAD = "system,role,year_from,year_to,presence,source,confidence\n"


def test_a_blank_cell_is_the_default() -> None:
    (row,) = read_rows(HEAD + "GB-ENG,town,1478,,0.97,practice,practice\n", "roles.csv", Role)

    assert row == Role(
        system="GB-ENG", role="town", year_from=1478, presence=0.97,
        source="practice", confidence=Confidence.PRACTICE,
    )  # fmt: skip
    assert row.year_to is None
    assert row.office == ""


def test_source_keys_are_parted_by_semicolons() -> None:
    (row,) = read_rows(HEAD + "X,town,1,2,0.5,A; B;,sourced\n", "roles.csv", Role)

    assert row.sources == ("A", "B")


def test_lines_of_comment_are_left_out() -> None:
    text = "# grammar\n# origin\n" + HEAD + "# between\nX,town,1,2,0.5,A,sourced\n"

    assert len(list(read_rows(text, "roles.csv", Role))) == 1


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ("X,town,late,2,0.5,A,sourced", "year_from"),
        ("X,town,1,2,0.5,A,surely", "confidence"),
        ("X,,1,2,0.5,A,sourced", "role"),
    ],
)
def test_a_bad_cell_is_told_with_file_line_and_column(line: str, says: str) -> None:
    text = "# comment\n" + HEAD + "X,town,1,2,0.5,A,sourced\n" + line + "\n"

    with pytest.raises(LibraryError) as fault:
        list(read_rows(text, "roles-x.csv", Role))

    assert str(fault.value).startswith("roles-x.csv, line 4: ")
    assert says in str(fault.value)


def test_an_unknown_column_is_told() -> None:
    text = "system,role,year_from,presence,source,confidence,colour\nX,town,1,0.5,A,sourced,red\n"

    with pytest.raises(LibraryError, match="colour"):
        list(read_rows(text, "roles.csv", Role))


def test_the_line_is_right_behind_a_cell_of_two_lines() -> None:
    text = HEAD.replace("system", "note,system") + (
        '"first\nsecond",X,town,1,2,0.5,A,sourced\n,X,town,1,2,much,A,sourced\n'
    )

    with pytest.raises(LibraryError) as fault:
        list(read_rows(text, "roles.csv", Role))

    assert fault.value.line == 4


def test_the_shipped_library_loads_with_its_row_types() -> None:
    library = load()

    for table, kind in TABLES.items():
        found = getattr(library, table)
        assert found, table
        assert all(isinstance(row, kind) for row in found)


def test_it_is_read_once() -> None:
    assert load() is load()


def test_every_row_says_how_sure_it_is() -> None:
    library = load()
    rows = [r for table in TABLES for r in getattr(library, table) if isinstance(r, Row)]

    assert len(rows) > 2000
    assert all(row.confidence in Confidence and row.sources for row in rows)


def test_each_statutory_office_has_date_letters() -> None:
    """Offices of the Acts of 1700-02, 1773 and 1819 (Chaffers 1922), with York, Norwich, Dublin."""
    cycles: tuple[Cycle, ...] = load().cycles

    british = {"LON", "BIR", "SHE", "CHE", "EXE", "NEW", "YOR", "NOR", "EDI", "GLA", "DUB"}
    assert british <= {c.office for c in cycles}
