"""The register: which makers a mark may be."""

import itertools

import pytest

from planish.library import load
from planish.library.rows import Confidence, Maker
from planish.marks import Mark
from planish.marks.register import Register, activity, letters_key, phases
from planish.marks.seen import Seen, digest
from planish.marks.thesaurus import Thesaurus

THESAURUS = Thesaurus(load().devices)


def maker(id_: str, name: str, marks: str, **more: object) -> Maker:
    fields: dict[str, object] = {
        "country": "GB", "place": "London", "year_from": 1750, "year_to": 1780,
        "source": "practice", "confidence": Confidence.PRACTICE, **more,
    }  # fmt: skip
    return Maker(id=id_, name=name, marks=marks, **fields)  # type: ignore[arg-type]


def seen(text: str, **more: object) -> Seen:
    return digest(Mark(text=text, **more), THESAURUS, frozenset())  # type: ignore[arg-type]


@pytest.fixture(scope="module")
def register() -> Register:
    return Register(
        (
            maker("ib", "John Bridge", "IB"),
            maker("pbab", "Peter and Ann Bateman", "PB/AB"),
            maker("hs", "Hugh Shaw", "HS"),
            maker("rogers", "William Rogers", "WM ROGERS; WM. ROGERS"),
            maker("town", "Old Firm, Dublin", "OF"),
            maker("co", "Gray Vale and Company", "GV&CO"),
            maker("crown", "Lewis Crowned", "LC", device="crown above"),
            maker("plain", "Luke Carter", "LC"),
        )
    )


def fits(register: Register, mark: Seen) -> dict[str, float]:
    return {c.maker.id: c.fit for c in register.candidates(mark)}


def test_letters_of_a_mark_find_the_maker(register: Register) -> None:
    assert max(fits(register, seen("I·B")).items(), key=lambda kv: kv[1])[0] == "ib"


def test_j_for_i_is_found_but_fits_less(register: Register) -> None:
    # I stands for J in punches before about 1800 (Hayden: J was omitted from the alphabets)
    assert fits(register, seen("JB"))["ib"] < fits(register, seen("IB"))["ib"]


def test_layout_counts(register: Register) -> None:
    assert fits(register, seen("PB/AB"))["pbab"] > fits(register, seen("PB·AB"))["pbab"]


def test_lost_letters_leave_the_maker_among_the_candidates(register: Register) -> None:
    assert "pbab" in fits(register, seen("PB/A[.]"))


def test_a_mark_read_upside_down_is_found(register: Register) -> None:
    assert 0 < fits(register, seen("SH"))["hs"] < fits(register, seen("HS"))["hs"]


def test_a_firm_without_its_words_fits_little(register: Register) -> None:
    assert fits(register, seen("GU"))["co"] < 0.2


def test_one_letter_wrong_in_a_name_is_still_found(register: Register) -> None:
    assert "rogers" in fits(register, seen("WM RODGERS"))


def test_a_town_after_a_comma_is_no_surname(register: Register) -> None:
    assert "town" not in fits(register, seen("DUBLIN"))


def test_a_crown_beside_the_letters_speaks_for_the_maker_with_a_crown(register: Register) -> None:
    found = fits(register, seen("L·C", note="beneath a crown"))
    assert found["crown"] > found["plain"]


def test_no_letters_no_candidates(register: Register) -> None:
    assert fits(register, seen("[---]")) == {}


def test_activity_falls_off_outside_the_working_years() -> None:
    row = maker("x", "X Y", "XY")
    assert activity(row, 1760) == 1.0
    assert 1.0 > activity(row, 1783) > activity(row, 1795) > activity(row, 1850) == 0.0


def test_phases_do_not_overlap() -> None:
    spans = sorted(phases(maker("x", "X Y", "XY")))
    assert all(a[1] < b[0] for a, b in itertools.pairwise(spans))


def test_letters_key_joins_i_and_j() -> None:
    assert letters_key("J·V") == letters_key("I.U") == "IU"
