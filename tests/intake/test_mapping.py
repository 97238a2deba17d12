from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.intake import REGISTER, Columns, IntakeError, guess
from planish.intake.mapping import (
    as_toml,
    check,
    fitted,
    from_toml,
    load,
    remembered,
    with_given,
)
from planish.intake.table import Table, built


def table(*headers: str, rows: tuple[tuple[str, ...], ...] = ()) -> Table:
    return built("x.csv", "", [(1, headers), *((n, r) for n, r in enumerate(rows, 2))])


@pytest.mark.parametrize(
    ("headers", "fields"),
    [
        (("name", "marks", "country"), ("name", "marks", "country")),
        (("Maker", "Maker's mark", "Town", "Dates"), ("name", "marks", "place", "years")),
        (("Meister", "Marke", "Land", "Ort", "von", "bis", "Bemerkungen"),
         ("name", "marks", "country", "place", "year_from", "year_to", "note")),
        (("Orfèvre", "Poinçon de maître", "Pays", "Ville", "Années", "Référence"),
         ("name", "marks", "country", "place", "years", "source")),
        (("Argentiere", "Punzone", "Paese", "Città", "Anni"),
         ("name", "marks", "country", "place", "years")),
        (("Platero", "Marca", "País", "Ciudad", "Años"),
         ("name", "marks", "country", "place", "years")),
        (("Zilversmid", "Meesterteken", "Land", "Plaats", "Jaren"),
         ("name", "marks", "country", "place", "years")),
        (("MAKER_NAME", "Initials", "Year from", "Year to"),
         ("name", "marks", "year_from", "year_to")),
        (("Shelf", "Weight"), ("", "")),
    ],
)  # fmt: skip
def test_headers_are_guessed_in_several_languages(
    headers: tuple[str, ...], fields: tuple[str, ...]
) -> None:
    assert tuple(guess(table(*headers), REGISTER).columns.values()) == fields


def test_a_header_nobody_knows_is_guessed_by_its_cells_and_is_not_sure() -> None:
    found = guess(
        table("Maker", "Punch", "X1", "X2", rows=(("A", "AB", "1790-1805", "England"),)), REGISTER
    )

    assert found.columns == {"Maker": "name", "Punch": "marks", "X1": "years", "X2": "country"}
    assert not found.sure


def test_no_field_is_given_twice() -> None:
    found = guess(table("Maker", "Name", "Marks", "Mark"), REGISTER)
    given_fields = [f for f in found.columns.values() if f]

    assert len(given_fields) == len(set(given_fields))


def test_what_the_person_says_goes_before_a_guess() -> None:
    found = with_given(
        guess(table("Maker", "Mark", "Second mark"), REGISTER),
        ["Second mark=marks"], ["country=GB"], REGISTER,
    )  # fmt: skip

    assert found.columns == {"Maker": "name", "Mark": "", "Second mark": "marks"}
    assert found.fixed == {"country": "GB"}


@pytest.mark.parametrize(
    ("given_columns", "fixed", "says"),
    [
        (["Maker=name", "Mark=name"], ["country=GB"], "two columns are mapped to name: Maker and Mark"),
        (["Nobody=name"], [], "there is no column 'Nobody'"),
        (["Maker=owner"], [], "there is no field 'owner'"),
        (["Maker"], [], "no '='"),
        ([], ["town=Bath"], "there is no column 'town'"),
        (["Mark="], ["country=GB"], "no column is mapped to marks"),
        ([], [], "no column is mapped to country"),
    ],
)  # fmt: skip
def test_a_mapping_that_cannot_be_is_told_in_one_line(
    given_columns: list[str], fixed: list[str], says: str
) -> None:
    with pytest.raises(IntakeError, match=says) as refused:
        with_given(guess(table("Maker", "Mark"), REGISTER), given_columns, fixed, REGISTER)
    assert "\n" not in str(refused.value)


@given(
    st.lists(st.text(min_size=1, max_size=20), min_size=1, max_size=5, unique=True),
    st.text(max_size=20),
)
def test_a_kept_mapping_comes_back(headers: list[str], value: str) -> None:
    columns = Columns(
        headers=tuple(headers), columns=dict.fromkeys(headers, ""), fixed={"note": value}
    )

    again = from_toml(as_toml(columns, "x\ny.csv"), "x")
    assert (again.headers, again.columns, again.fixed) == (
        columns.headers, columns.columns, columns.fixed,
    )  # fmt: skip


def test_a_mapping_is_known_again_by_its_headers_whatever_their_order(tmp_path: Path) -> None:
    columns = guess(table("Maker", "Mark", "Land"), REGISTER)
    (tmp_path / "a.mapping.toml").write_text("no mapping", encoding="utf-8")
    path = tmp_path / "b.mapping.toml"
    path.write_text(as_toml(columns, "x.csv"), encoding="utf-8")

    found = remembered(tmp_path, table("MARK", "land", "Maker"))
    assert found is not None
    assert found[0] == path
    assert fitted(found[1], table("MARK", "land", "Maker"), "b").columns == {
        "MARK": "marks", "land": "country", "Maker": "name",
    }  # fmt: skip
    assert remembered(tmp_path, table("Maker", "Mark")) is None


def test_a_kept_mapping_for_another_table_is_refused() -> None:
    columns = guess(table("Maker", "Mark", "Land"), REGISTER)
    with pytest.raises(IntakeError, match="the table has no column 'Land'"):
        fitted(columns, table("Maker", "Mark"), "b.mapping.toml")


def test_a_broken_mapping_file_is_told(tmp_path: Path) -> None:
    path = tmp_path / "a.mapping.toml"
    path.write_text('headers = ["a"]\ncolumns = 3\n', encoding="utf-8")
    with pytest.raises(IntakeError, match="no mapping"):
        load(path)
    with pytest.raises(IntakeError, match="it cannot be read"):
        load(tmp_path / "none.mapping.toml")


def test_an_edited_mapping_with_a_field_that_is_none_is_told() -> None:
    columns = Columns(headers=("a",), columns={"a": "owner"}, fixed={})
    with pytest.raises(IntakeError, match="there is no field 'owner'"):
        check(columns, REGISTER, "x.mapping.toml")
