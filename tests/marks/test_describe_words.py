"""Descriptions as auctioneers, heirs and people of other languages write them.

The sentences are ours; the wordings in them are common practice of catalogues and letters. Read with
the shipped library.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.marks.charges import placed
from planish.marks.describe import describe
from planish.marks.describe.foreign import DEVICES
from planish.marks.observation import Legibility, Mark, Observed


def brief(mark: Mark) -> str:
    what = f"«{mark.text}»" if mark.text is not None else str(mark.device)
    return f"{what} ={mark.hint}" if mark.hint else what


def marks(text: str) -> list[str]:
    return [brief(m) for m in describe(text).marks]


def places(observed: Observed) -> list[tuple[str, int | None]]:
    dated = [c.year_from for c in observed.claims if c.about == "date"]
    return [(c.says, dated[0] if dated else None) for c in observed.claims if c.about == "place"]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        # shorthand of the saleroom
        ("hm B'ham 1897", ["town mark of Birmingham =town mark"]),
        ("hm Lon 1756, mkr TW", ["town mark of London =town mark", "«TW» =maker's mark"]),
        ("mkr's mark WH", ["«WH» =maker's mark"]),
        ("bears marks for London 1789", ["town mark of London =town mark"]),
        ("bears hallmarks for Chester 1905", ["town mark of Chester =town mark"]),
        ("sterling hallmarks for Birmingham 1904", ["town mark of Birmingham =town mark"]),
        ("London 1998 marks with a lion passant", ["town mark of London =town mark", "lion passant"]),
        ("with import marks for London 1912", ["town mark of London =import mark"]),
        # numbers
        ("Rd 631976", ["«Rd 631976» =registered design"]),
        ("EPNS; R 616320", ["«EPNS»", "«R 616320»"]),
        ("registered number 631976", ["«631976» =registered design"]),
        ("800 in oval", ["«800»"]),
        ("800 in an oval, WTB", ["«800»", "«WTB»"]),
        ("純銀", ["«純銀»"]),
        ("marked 純銀 and WH", ["«純銀»", "«WH»"]),
        # punches of a firm
        ("AW & HS W&N", ["«AW & HS»", "«W&N»"]),
        ('"W" "P" in a diamond', ["«W P»"]),
        # one mark after another, some of them not read
        ("DLS (clear); second punch (unreadable); M", ["«DLS»", "«[---]»", "«M»"]),
        ("lion, full body, side view; t in a square", ["lion", "«t»"]),
        ("A . I or A . R", ["«A · I»"]),
        ("EPOSE FRANCE (for DEPOSE)", ["«_DEPOSE»", "«FRANCE»"]),
        # other languages
        ("Halbmond und Krone, 800", ["crescent and crown", "«800»"]),
        ("800, Halbmond und Reichskrone, Meistermarke WTB", ["«800»", "crescent and crown", "«WTB» =maker's mark"]),
        ("gestempelt 925 Sterling", ["«925»", "«Sterling»"]),
        ("Feingehalt 13 Lot, Beschauzeichen Augsburg", ["«13» =fineness", "town mark of Augsburg =town mark"]),
        ("poinçon minerve, poinçon de maître illisible", ["head of Minerva", "«[---]» =maker's mark"]),
        ("punzone: fascio, 800", ["fascio", "«800»"]),
        ("testa di Minerva, punzone del maestro AB", ["head of Minerva", "«AB» =maker's mark"]),
        ("contrasteado 925, marca de platero JRM", ["«925»", "«JRM» =maker's mark"]),
        ("leeuwtje met 2, zwaardje, jaarletter H", ["lion passant", "sword", "«H» =date letter"]),
        ("kattfot, S, årsbokstav B8", ["three crowns in a trefoil", "«S»", "«B8» =date letter"]),
        ("tre kronor", ["three crowns"]),
        ("tre tårne, guardein CF, mestermærke AD", ["three towers", "«CF» =assay master's mark", "«AD» =maker's mark"]),
    ],
    ids=lambda x: x[:40] if isinstance(x, str) else "",
)  # fmt: skip
def test_marks(text: str, expected: list[str]) -> None:
    assert marks(text) == expected


@pytest.mark.parametrize(
    ("text", "place", "year"),
    [
        ("Lon 1756", "London", 1756),
        ("Shef 1901", "Sheffield", 1901),
        ("hm B'ham 1897", "Birmingham", 1897),
        ("Københavns mærke 1892", "Copenhagen", 1892),
    ],
)
def test_places_and_dates_are_claims(text: str, place: str, year: int) -> None:
    assert places(describe(text)) == [(place, year)]


def only(text: str) -> Mark:
    found = describe(text).marks

    assert len(found) == 1, found
    return found[0]


@pytest.mark.parametrize(
    ("text", "field", "value"),
    [
        # what stands beside the letters
        ("TL, crown over, star below", "charge", "crown over and star below"),
        ("TL with crown above and fleur-de-lis below", "charge", "crown above and fleur-de-lis below"),
        ("CB fleur-de-lys above", "charge", "fleur-de-lys above"),
        ("J.S with a star above, mullet below, in a shaped shield", "charge", "a star above and mullet below"),
        ("J.S with a star above, mullet below, in a shaped shield", "outline", "shaped shield"),
        # how an heir says that it is worn
        ("maker's mark rubbed, can't make out", "legibility", Legibility.ILLEGIBLE),
        ("can't make out the date letter", "legibility", Legibility.ILLEGIBLE),
        ("date letter too worn to read", "legibility", Legibility.ILLEGIBLE),
        ("the lion is rubbed", "legibility", Legibility.WORN),
        ("TR (edge of second letter lost)", "legibility", Legibility.WORN),
        ("TR (edge of second letter lost)", "note", "edge of second letter lost"),
        ("maker's mark looks like TB", "doubtful", True),
        ("maybe a lion", "doubtful", True),
        # how it stands
        ("looks like an upside down horseshoe", "note", "upside down"),
        ("upside-down W or M", "note", "upside down; or M"),
        ("lion facing the wrong way", "note", "facing the wrong way"),
        ("leeuwtje met 2", "note", "leeuwtje met 2"),
        ("800 in oval", "outline", "oval"),
    ],
)  # fmt: skip
def test_fields_of_one_mark(text: str, field: str, value: object) -> None:
    assert getattr(only(text), field) == value


@pytest.mark.parametrize(
    "text",
    [
        "My neighbour keeps it on a rack and thinks that it came from her home in Denmark.",
        "Heir says the forks came home after the First World War.",
        "The owner of souvenir-like forks reads a swirl as Isle of Man.",
        "Collector dates a toy coach by a Dutch year letter.",
        "A dealer asks why several old ladles turned up in a few months.",
        "The reader believes that the jug is Danish because her father bought it there.",
        "Somebody found it in a park and says it is silver.",
    ],
)
def test_what_people_do_is_no_mark(text: str) -> None:
    observed = describe(text)

    assert observed.marks == ()
    assert observed.unread


def test_marks_that_people_tell_of_are_read() -> None:
    text = "My grandmother left me a spoon with a lion, an anchor and the letter k, and I think it is old."

    assert marks(text) == ["lion", "anchor", "«k»"]


@pytest.mark.parametrize(
    "text",
    [
        "EPNS. never cleaned",
        "EPNS. rose pattern, handle added, good photo supplied",
        "EPNS. spoons of 1850; easily overlooked",
        "EPNS. Queen Anne style porringer; Antique Plate Committee",
    ],
)
def test_what_is_told_of_the_piece_is_no_mark(text: str) -> None:
    assert marks(text) == ["«EPNS»"]


def test_a_style_is_no_date() -> None:
    assert [c.about for c in describe("Queen Anne style").claims] == ["note"]


def test_a_place_told_of_the_piece_is_not_that_of_its_marks() -> None:
    observed = describe("Marks: lion passant; anchor. Extra design crudely added on the front")

    assert [m.place for m in observed.marks] == [None, None]


@pytest.mark.parametrize(
    ("charge", "expected"),
    [
        ("crowned", [("crown", "above")]),
        ("a shell above and a mullet below", [("shell", "above"), ("mullet", "below")]),
        ("below a crown", [("crown", "above")]),
        ("over a dot", [("dot", "below")]),
        ("a pellet between", [("pellet", "between")]),
        ("flanked by stars", [("stars", "beside")]),
    ],
)
def test_where_a_charge_stands(charge: str, expected: list[tuple[str, str]]) -> None:
    assert [(c.device, c.where) for c in placed(charge)] == expected


@given(st.text(max_size=60))
def test_any_charge_is_placed(charge: str) -> None:
    assert all(c.device and c.where for c in placed(charge))


def test_pictures_of_other_languages_are_named_in_the_thesaurus(library_devices: set[str]) -> None:
    """Each name that foreign words stand for is a word of a device."""
    assert {name.casefold() for name in DEVICES.values()} <= library_devices


@pytest.fixture(scope="module")
def library_devices() -> set[str]:
    from planish.library import load  # noqa: PLC0415  # a table of this one test

    return {
        word.strip().casefold()
        for d in load().devices
        for word in (d.label, *d.words.split(";"))
        if word.strip()
    }
