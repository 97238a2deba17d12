"""The checks of a reading: each has a case that says yes and one that says no.

Readings are written by hand where the engine would never give them; the facts that decide stand in
the library, and their sources are named beside each case.
"""

import msgspec
import pytest

from planish.evidence import Finding
from planish.library import Library, load
from planish.marks import Case, Mark, Observed, Reader, Reading, ReadingFinding, Search, Style
from planish.marks.checks import Answer, Check, checks
from planish.marks.explain import shown
from planish.marks.reading import Assigned, MakerGuess
from planish.marks.seen import digest

M = Mark
LION, ANCHOR, HEAD = M(device="lion passant"), M(device="anchor"), M(device="sovereign's head")
LEOPARD, CROWN, EPNS = M(device="leopard's head"), M(device="crown"), M(text="EPNS")
INITIALS = M(text="HB")
SETS = {"standard": LION, "town": ANCHOR, "duty": HEAD, "sponsor": INITIALS}


@pytest.fixture(scope="module")
def reader() -> Reader:
    return Reader()


@pytest.fixture(scope="module")
def library() -> Library:
    return load()


def asked(
    reader: Reader,
    years: tuple[int, int],
    marks: dict[str, Mark],
    *,
    office: str | None = "London",
    system: str = "GB-ENG",
    kind: str = "solid",
    fineness: float | None = 925,
    country: str | None = "GB",
    complete: float = 0.9,
    makers: tuple[MakerGuess, ...] = (),
    searched: tuple[Search, ...] = (),
) -> dict[str, Check]:
    """Checks of a reading in which each mark has its role."""
    plan = reader.plan
    words = [shown(digest(m, plan.thesaurus, plan.known_words)) for m in marks.values()]
    reading = Reading(
        key="one", kind=kind, country=country, system=system, system_label="England", office=office,
        year_from=years[0], year_to=years[1], fineness=fineness, makers=makers, probability=1.0,
        label="by hand",
        assigned=tuple(
            Assigned(mark=n, shown=w, role=role.rstrip("2"), probability=1.0)
            for n, (role, w) in enumerate(zip(marks, words, strict=True))
        ),
    )  # fmt: skip
    finding = ReadingFinding(
        observed=Observed(marks=tuple(marks.values()), complete=complete, searched=searched),
        readings=(reading,),
        finding=Finding(about="by hand", hypotheses=()),
    )
    return {c.key: c for c in checks(finding, reader.library, plan)}


@pytest.mark.parametrize(
    ("office", "years", "answer"),
    [
        # Chester closed on 24 August 1962 (trade press, in the library)
        ("Chester", (1950, 1950), Answer.YES),
        ("Chester", (1970, 1970), Answer.NO),
        ("Chester", (1955, 1970), Answer.UNKNOWN),
        # Birmingham and Sheffield opened in 1773 (Act of that year)
        ("Birmingham", (1773, 1773), Answer.YES),
        ("Birmingham", (1760, 1762), Answer.NO),
    ],
)
def test_office_open(reader: Reader, office: str, years: tuple[int, int], answer: Answer) -> None:
    found = asked(reader, years, SETS, office=office)["office-open"]

    assert found.answer is answer
    assert found.sources


@pytest.mark.parametrize(
    ("fineness", "years", "answer"),
    [
        # 8 and 9 William III c. 8: Britannia standard only, 27 March 1697 to 31 May 1720
        (925, (1705, 1705), Answer.NO),
        (958.4, (1705, 1705), Answer.YES),
        # 6 George I c. 11: sterling again from 1 June 1720, Britannia by choice
        (925, (1725, 1725), Answer.YES),
        (958.4, (1725, 1725), Answer.YES),
        (800, (1890, 1890), Answer.NO),
        (925, (1700, 1750), Answer.UNKNOWN),
    ],
)
def test_standard_legal(
    reader: Reader, fineness: float, years: tuple[int, int], answer: Answer
) -> None:
    found = asked(reader, years, SETS, fineness=fineness)["standard-legal"]

    assert found.answer is answer
    assert {"MORGAN1852", "CHAFFERS1922"} & set(found.sources)
    if years == (1705, 1705):
        assert "sterling is not allowed" in found.rule


@pytest.mark.parametrize(
    ("letter", "office", "year", "answer"),
    [
        # Birmingham Assay Office, public page: A for 1773
        (M(text="A", case=Case.CAPITAL, case_sure=True), "Birmingham", 1773, Answer.YES),
        (M(text="X", case=Case.CAPITAL, case_sure=True), "Birmingham", 1773, Answer.NO),
        # Chaffers (1922 ed.) p. 173: small roman a at London in 1896
        (M(text="a", case=Case.SMALL, case_sure=True, style=Style.ROMAN), "London", 1896, Answer.YES),
        (M(text="A", case=Case.CAPITAL, case_sure=True), "London", 1896, Answer.NO),
        (M(text="a", case=Case.SMALL, case_sure=True, style=Style.BLACK_LETTER), "London", 1896,
         Answer.NO),
        # Irish Antique Dealers' Association guide: Dublin Q in 1812
        (M(text="Q"), "Dublin", 1812, Answer.YES),
    ],
)  # fmt: skip
def test_date_letter(reader: Reader, letter: Mark, office: str, year: int, answer: Answer) -> None:
    system, country = ("IE-DUB", "IE") if office == "Dublin" else ("GB-ENG", "GB")
    found = asked(
        reader, (year, year), {"date": letter}, office=office, system=system, country=country
    )["date-letter"]

    assert found.answer is answer
    assert found.sources


@pytest.mark.parametrize(
    ("years", "role", "complete", "answer"),
    [
        # the head shows duty paid from 1 December 1784 to 30 April 1890 (Morgan; Chaffers)
        ((1830, 1830), "duty", 0.9, Answer.YES),
        ((1830, 1830), "", 0.9, Answer.NO),
        ((1830, 1830), "", 0.4, Answer.UNKNOWN),
        ((1770, 1770), "", 0.9, Answer.YES),
        ((1770, 1770), "stray", 0.9, Answer.NO),
        ((1900, 1900), "stray", 0.9, Answer.NO),
        ((1900, 1900), "", 0.9, Answer.YES),
    ],
)
def test_duty(
    reader: Reader, years: tuple[int, int], role: str, complete: float, answer: Answer
) -> None:
    marks = {"standard": LION} | ({role: HEAD} if role else {})
    found = asked(reader, years, marks, complete=complete)["duty"]

    assert found.answer is answer
    assert found.sources
    if years == (1830, 1830):
        assert "MORGAN1852" in found.sources


def test_duty_in_a_year_that_saw_both(reader: Reader) -> None:
    # assay year 1784 ran from May, the duty from 1 December
    assert asked(reader, (1784, 1784), SETS)["duty"].answer is Answer.UNKNOWN


def test_required_marks(reader: Reader) -> None:
    # sponsor, standard, town and letter at Birmingham (common practice; McKinley on missing marks)
    found = asked(reader, (1800, 1800), SETS, office="Birmingham")
    least = asked(reader, (1800, 1800), SETS, office="Birmingham", complete=0.3)

    assert found["required:town"].answer is Answer.YES
    assert found["required:sponsor"].answer is Answer.YES
    assert found["required:date"].answer is Answer.NO
    assert "rules no year out" in found["required:date"].says
    assert "MCKINLEY" in found["required:date"].sources
    assert least["required:date"].answer is Answer.UNKNOWN


@pytest.mark.parametrize(
    ("years", "answer"),
    # Hester Bateman worked 1761 to 1790 (register, from memory)
    [((1780, 1780), Answer.YES), ((1830, 1840), Answer.NO)],
)
def test_maker_at_work(reader: Reader, years: tuple[int, int], answer: Answer) -> None:
    guess = MakerGuess(name="Hester Bateman", probability=0.8, place="London")
    (found,) = (
        c for k, c in asked(reader, years, SETS, makers=(guess,)).items() if k.startswith("maker:")
    )

    assert found.answer is answer
    assert "1761 to 1790" in found.says


@pytest.mark.parametrize(
    ("years", "answer"),
    # a crown on plated wares forbidden about 1896 (two articles, in the library)
    [((1860, 1890), Answer.YES), ((1900, 1920), Answer.NO), ((1880, 1920), Answer.UNKNOWN)],
)
def test_crown_on_plate(reader: Reader, years: tuple[int, int], answer: Answer) -> None:
    plated = {"office": None, "system": "GB-EP", "kind": "plated", "fineness": None}
    found = asked(reader, years, {"plate-quality": EPNS, "pseudo": CROWN}, **plated)  # type: ignore[arg-type]

    assert found["crown-on-plate"].answer is answer
    assert "PLATE-CROWN" in found["crown-on-plate"].sources
    assert "crown-on-plate" not in asked(reader, years, {"plate-quality": EPNS}, **plated)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("years", "answer"),
    # Rd 631976 of 1914, by lists that may be a year out (see tests/marks/test_numbers.py)
    [((1913, 1913), Answer.YES), ((1914, 1930), Answer.YES), ((1890, 1910), Answer.NO)],
)
def test_not_before_its_registration(
    reader: Reader, years: tuple[int, int], answer: Answer
) -> None:
    found = asked(reader, years, {**SETS, "registry": M(text="Rd No 631976")})

    assert found["not-before"].answer is answer


def test_a_registration_that_the_description_left_unread_counts_too(reader: Reader) -> None:
    plain = Observed(marks=(EPNS, CROWN), complete=0.9)
    with_number = msgspec.structs.replace(plain, unread=("Rd 631976",))

    keys = [
        {c.key: c.answer for c in checks(reader.read(o), reader.library, reader.plan)}
        for o in (plain, with_number)
    ]

    assert "not-before" not in keys[0]
    assert keys[1]["not-before"] is Answer.NO


def test_a_full_set_agrees_throughout(reader: Reader) -> None:
    # Birmingham A of 1773, before the duty (Birmingham Assay Office page)
    marks = (LION, ANCHOR, M(text="A", case=Case.CAPITAL, case_sure=True), M(text="MB/IF"))
    finding = reader.read(Observed(marks=marks, complete=0.95))
    first = next(r for r in finding.readings if r.year_from == r.year_to == 1773)
    alone = msgspec.structs.replace(finding, readings=(first,))

    found = {c.key: c.answer for c in checks(alone, reader.library, reader.plan)}

    assert {"office-open", "standard-legal", "date-letter", "duty", "required:town"} <= found.keys()
    assert set(found.values()) == {Answer.YES}


def test_pure_and_sourced(reader: Reader, library: Library) -> None:
    finding = reader.read(Observed(marks=(LION, ANCHOR, HEAD, M(text="k"), INITIALS)))
    found = checks(finding, reader.library, reader.plan)

    assert found == checks(finding, library)
    assert len({c.key for c in found}) == len(found)
    assert all(c.sources and c.rule and c.asks.endswith("?") for c in found)


def test_nothing_to_check_where_nothing_is_read(reader: Reader) -> None:
    assert checks(reader.read(Observed()), reader.library, reader.plan) == ()


@pytest.mark.parametrize(
    ("note", "answer"),
    [
        # the lion passant of England walks to the viewer's left (common practice)
        ("facing left", Answer.YES),
        ("to dexter", Answer.YES),
        ("facing right", Answer.NO),
        ("facing the wrong way", Answer.NO),
        ("reversed", Answer.NO),
    ],
)
def test_which_way_a_picture_looks(reader: Reader, note: str, answer: Answer) -> None:
    lion = M(device="lion passant", note=note)
    found = asked(reader, (1800, 1800), {**SETS, "standard": lion})
    facing = [c for key, c in found.items() if key.startswith("facing:")]

    assert [c.answer for c in facing] == [answer]


@pytest.mark.parametrize("note", [None, "with a long tail", "on the right of the row"])
def test_nothing_is_asked_of_a_side_not_told(reader: Reader, note: str | None) -> None:
    lion = M(device="lion passant", note=note)
    found = asked(reader, (1800, 1800), {**SETS, "standard": lion})

    assert not [key for key in found if key.startswith("facing:")]


def test_a_mark_looked_for_in_vain_is_asked_for(reader: Reader) -> None:
    """Common practice: a lion and a duty head without a town mark prove no sterling."""
    marks = {role: mark for role, mark in SETS.items() if role != "town"}
    none = Search(place="piece", found=False, note="no town mark")
    seldom_searched = asked(reader, (1800, 1800), marks, office="Birmingham", complete=0.5)
    in_vain = asked(
        reader, (1800, 1800), marks, office="Birmingham", complete=0.5, searched=(none,)
    )

    assert seldom_searched["required:town"].answer is Answer.UNKNOWN
    assert in_vain["required:town"].answer is Answer.NO
