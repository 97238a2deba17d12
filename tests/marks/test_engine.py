"""The reading engine over the shipped library: facts of the trade, and laws.

Each set of marks names where its reading comes from.
"""

import math
from random import Random

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from planish.marks import Case, Mark, Observed, Reader, Reading, Style

M = Mark
LION, LEOPARD = M(device="lion passant"), M(device="leopard's head crowned")


@pytest.fixture(scope="module")
def reader() -> Reader:
    return Reader()


def top(reader: Reader, *marks: Mark) -> Reading:
    return reader.read(Observed(marks=marks, complete=0.9), explain=False).readings[0]


@pytest.mark.parametrize(
    ("marks", "office", "years"),
    [
        # Hayden, Chats on Old Silver (1915), London appendix: black-letter capital C for 1660;
            # the same letter, style and crowned leopard come back in 1758 (museum anchors)
        ((LION, LEOPARD, M(text="C", style=Style.BLACK_LETTER, case=Case.CAPITAL), M(text="HB")),
         "London", (1660, 1758)),
        # Chaffers (1922 ed.) p. 173: new cycle in 1896, first letter a, uncrowned leopard
        ((LION, M(device="leopard's head uncrowned"),
          M(text="a", case=Case.SMALL, case_sure=True, style=Style.ROMAN), M(text="WC")),
         "London", (1896,)),
        # Birmingham Assay Office public page: first letter A in 1773; no duty head before 1784;
            # a roman capital A comes back in 1925 (British Legion badge list: G = 1931)
        ((LION, M(device="anchor"), M(text="A", case=Case.CAPITAL, case_sure=True), M(text="MB/IF")),
         "Birmingham", (1773, 1925)),
        # Irish Antique Dealers' Association guide: Dublin Q for 1812, when the king's head stood
            # too; the letter comes back in 1836
        ((M(device="harp crowned"), M(device="Hibernia"), M(device="king's head"), M(text="Q")),
         "Dublin", (1812, 1836)),
    ],
)  # fmt: skip
def test_full_sets(
    reader: Reader, marks: tuple[Mark, ...], office: str, years: tuple[int, ...]
) -> None:
    found = reader.read(Observed(marks=marks, complete=0.95), explain=False)
    mass = sum(
        r.probability
        for r in found.readings
        if r.office == office
        and r.year_from
        and any(r.year_from - 1 <= year <= (r.year_to or 0) + 1 for year in years)
    )
    assert found.readings[0].office == office
    assert mass >= 0.5
    for year in years:
        assert any((r.year_from or 0) <= year <= (r.year_to or 0) for r in found.readings)


def test_britannia_and_lions_head_erased_are_the_high_standard(reader: Reader) -> None:
    # 8 and 9 William III c. 8 (1697): 11 oz 10 dwt in 12 = 958.3; Hayden, Morgan
    best = top(reader, M(device="Britannia"), M(device="lion's head erased"), M(text="Pa"))
    assert best.kind == "solid"
    assert best.country == "GB"
    assert best.fineness == pytest.approx(958.4, abs=0.2)
    assert (best.year_from or 0) >= 1696


def test_epns_is_plate(reader: Reader) -> None:
    # EPNS, electroplated nickel silver: collector article on imitation hallmarks, in the library
    best = top(reader, M(text="EPNS"), M(text="JD&S"), M(device="crown"))
    assert best.kind == "plated"
    assert best.probability > 0.9


def test_a_town_in_words_proves_no_plate(reader: Reader) -> None:
    # common practice: retailers of solid silver and platers alike struck LONDON beside initials
    best = top(reader, M(text="LONDON"), M(text="SH"))
    assert best.probability < 0.9
    assert all(g.name != "London" for g in best.makers)


def test_sterling_word_is_american_first(reader: Reader) -> None:
    # STERLING became the general American wording about 1868; British work carries the lion
    best = top(reader, M(text="STERLING"))
    assert best.country == "US"
    assert best.fineness == pytest.approx(925)


def test_no_marks_no_reading(reader: Reader) -> None:
    found = reader.read(Observed())
    assert [r.kind for r in found.readings] == ["unknown"]
    assert found.finding.hypotheses == ()


def test_engraved_initials_are_not_read(reader: Reader) -> None:
    found = reader.read(
        Observed(marks=(LION, M(text="RC", technique="engraved", hint="owner's initials")))
    )
    assert all("RC" not in a.shown for r in found.readings for a in r.assigned)
    assert any("RC" in reason for reason in found.not_used)


MARKS = st.lists(
    st.sampled_from(
        (
            LION,
            LEOPARD,
            M(device="anchor"),
            M(device="king's head"),
            M(text="C", hint="date letter"),
            M(text="k"),
            M(text="WB"),
            M(text="STERLING"),
            M(text="EPNS"),
            M(device="thistle"),
            M(text="1766"),
        )
    ),
    min_size=1,
    max_size=5,
)
FEW = settings(
    max_examples=12, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)


@FEW
@given(MARKS, st.randoms())
def test_order_of_marks_is_irrelevant(reader: Reader, marks: list[Mark], random: Random) -> None:
    shuffled = list(marks)
    random.shuffle(shuffled)
    first = reader.read(Observed(marks=tuple(marks)), explain=False).readings
    again = reader.read(Observed(marks=tuple(shuffled)), explain=False).readings
    assert [r.key for r in first] == [r.key for r in again]
    assert [r.probability for r in first] == pytest.approx([r.probability for r in again])


@FEW
@given(MARKS)
def test_a_duplicate_mark_adds_nothing(reader: Reader, marks: list[Mark]) -> None:
    once = reader.read(Observed(marks=tuple(marks)), explain=False).readings
    twice = reader.read(Observed(marks=(*marks, marks[0])), explain=False).readings
    assert [(r.key, round(r.probability, 9)) for r in once] == [
        (r.key, round(r.probability, 9)) for r in twice
    ]


@FEW
@given(MARKS)
def test_probabilities_are_probabilities(reader: Reader, marks: list[Mark]) -> None:
    found = reader.read(Observed(marks=tuple(marks)), explain=False).readings
    assert all(0 <= r.probability <= 1 for r in found)
    assert math.fsum(r.probability for r in found) <= 1 + 1e-9
    assert [r.probability for r in found] == sorted((r.probability for r in found), reverse=True)


@FEW
@given(MARKS)
def test_years_lie_within_the_offices_working_years(reader: Reader, marks: list[Mark]) -> None:
    offices = {o.name: o for o in reader.library.offices}
    for r in reader.read(Observed(marks=tuple(marks)), explain=False).readings:
        if r.office:
            office = offices[r.office]
            assert (r.year_from or 0) >= office.opened
            assert office.closed is None or (r.year_to or 0) <= office.closed


@FEW
@given(MARKS)
def test_the_ledger_multiplies_out(reader: Reader, marks: list[Mark]) -> None:
    # prior times the lines, normalised over the hypotheses shown, gives their probabilities
    finding = reader.read(Observed(marks=tuple(marks))).finding
    again = finding.recomputed()
    total = math.fsum(h.probability for h in finding.hypotheses)
    for h in finding.hypotheses:
        assert again[h.key] * total == pytest.approx(h.probability, rel=0.02, abs=2e-4)
