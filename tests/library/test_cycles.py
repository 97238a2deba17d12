"""Cycles of date letters written out."""

from datetime import date, timedelta
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.library import load
from planish.library.cycles import CycleError, Letter, expand
from planish.library.rows import Confidence, Cycle


def cycle(letters: str, first: int, last: int, **rest: object) -> Cycle:
    cells: dict[str, object] = {
        "id": "T-1", "office": "LON", "style": "roman", "case": "capital",
        "change_month": 5, "change_day": 29, "source": "practice",
        "confidence": Confidence.PRACTICE, **rest,
    }  # fmt: skip
    return Cycle(letters=letters, first_year=first, last_year=last, **cells)  # type: ignore[arg-type]


def shipped(cycle_id: str) -> tuple[Letter, ...]:
    return next(expand(c) for c in load().cycles if c.id == cycle_id)


def test_a_plain_cycle() -> None:
    one, two = expand(cycle("A B", 1776, 1777))

    assert one == Letter(
        office="LON", cycle="T-1", letters=("A",), doubtful=False, first_year=1776, last_year=1776,
        styles=("roman",), case="capital", start="1776-05-29", end="1777-05-28",
    )  # fmt: skip
    assert (two.start, two.end) == ("1777-05-29", "1778-05-28")


def test_marks_of_a_token_combine() -> None:
    first, second, third, fourth, fifth = expand(cycle("t*2? I/J C? _ z/A?*3", 1769, 1776))

    assert (first.letters, first.doubtful, first.first_year, first.last_year) == (
        ("t",), True, 1769, 1770,
    )  # fmt: skip
    assert (second.letters, second.doubtful) == (("I", "J"), False)
    assert (third.letters, third.doubtful) == (("C",), True)
    assert fourth.letters == ()
    assert (fifth.letters, fifth.doubtful, fifth.last_year) == (("z", "A"), True, 1776)
    assert first.end == "1771-05-28"


def test_a_calendar_year_with_change_on_the_first_of_january() -> None:
    (one,) = expand(cycle("a", 2000, 2000, change_month=1, change_day=1))

    assert (one.start, one.end) == ("2000-01-01", "2000-12-31")


def test_a_month_without_a_day_begins_on_its_first() -> None:
    (one,) = expand(cycle("a", 1773, 1773, change_month=7, change_day=None))

    assert (one.start, one.end) == ("1773-07-01", "1774-06-30")


def test_an_unknown_change_day_spans_both_years() -> None:
    (one,) = expand(cycle("a", 1631, 1631, change_month=None, change_day=None))

    assert (one.start, one.end) == ("1631-01-01", "1632-12-31")


def test_outer_ends_replace_the_change_day() -> None:
    one, two = expand(cycle("a b", 1, 2, first_start="0001-03-27", last_end="0002-12-31"))

    assert (one.start, one.end) == ("0001-03-27", "0002-05-28")
    assert (two.start, two.end) == ("0002-05-29", "0002-12-31")


@pytest.mark.parametrize(
    ("style", "styles"),
    [
        ("roman", ("roman",)),
        ("roman/italic", ("roman", "italic")),
        ("unknown", ()),
        ("mixed", ()),
        ("roman/unknown", ()),
    ],
)
def test_open_letterforms(style: str, styles: tuple[str, ...]) -> None:
    assert expand(cycle("A", 1, 1, style=style))[0].styles == styles


@pytest.mark.parametrize(
    ("letters", "last", "says"),
    [
        ("A B", 1778, "letters run to 1777, the cycle from 1776 to 1778"),
        ("A B C", 1777, "letters run to 1778"),
        ("A*0 B", 1777, "'A[*]0'"),
        ("A B!", 1777, "'B!'"),
        ("A //", 1777, "'//'"),
    ],
)
def test_what_cannot_be_written_out_is_told(letters: str, last: int, says: str) -> None:
    with pytest.raises(CycleError, match=says) as fault:
        expand(cycle(letters, 1776, last))

    assert str(fault.value).startswith("cycle T-1: ")


def test_a_change_day_that_does_not_exist_is_told() -> None:
    with pytest.raises(CycleError, match="2/30"):
        expand(cycle("A", 1776, 1776, change_month=2, change_day=30))


@given(
    st.lists(
        st.tuples(st.sampled_from("ABCDEFGHIKLMNOPQRSTV"), st.integers(1, 12), st.booleans()),
        min_size=1,
        max_size=26,
    ),
    st.integers(1300, 2000),
    st.integers(1, 12),
    st.integers(1, 28),
)
def test_letters_follow_each_other_day_by_day(
    tokens: list[tuple[str, int, bool]], first: int, month: int, day: int
) -> None:
    text = " ".join(f"{letter}{'?' if q else ''}*{n}" for letter, n, q in tokens)
    last = first + sum(n for _, n, _ in tokens) - 1

    found = expand(cycle(text, first, last, change_month=month, change_day=day))

    assert [(x.letters, x.doubtful) for x in found] == [((c,), q) for c, _, q in tokens]
    assert [x.last_year - x.first_year + 1 for x in found] == [n for _, n, _ in tokens]
    for before, after in pairwise(found):
        assert after.first_year == before.last_year + 1
        assert date.fromisoformat(before.end) + timedelta(days=1) == date.fromisoformat(after.start)


# -- turning points, each from outside the table --------------------------------------------------


def test_london_in_the_spring_of_1697() -> None:
    """t to 26 March, a to 28 May 1697. Source: Hayden 1915, London appendix."""
    t, a = shipped("LON-11")[-1], shipped("LON-12")[0]

    assert (t.letters, t.end) == (("t",), "1697-03-26")
    assert (a.letters, a.start, a.end) == (("a",), "1697-03-27", "1697-05-28")


def test_all_offices_change_on_new_years_day_of_1975() -> None:
    """Hallmarking Act 1973, in force 1 January 1975: one letter for all offices."""
    old = [shipped(f"{c}")[-1].end for c in ("LON-25", "BIR-08", "SHE-09", "EDI-12")]
    new = [shipped(f"UK01-{o}")[0].start for o in ("LON", "BIR", "SHE", "EDI")]

    assert old == ["1974-12-31"] * 4
    assert new == ["1975-01-01"] * 4
    tables = {
        tuple((x.letters, x.start) for x in shipped(f"UK01-{o}"))
        for o in ("LON", "BIR", "SHE", "EDI")
    }
    assert len(tables) == 1


def test_the_last_days_of_chester_and_glasgow() -> None:
    """Chester closed on 24 August 1962 (Antiques Trade Gazette), Glasgow on 31 March 1964."""
    assert shipped("CHE-12")[-1].end == "1962-08-24"
    assert shipped("GLA-06b")[-1].end == "1964-03-31"


def test_london_has_twenty_letters_a_cycle() -> None:
    """Chaffers 1922, page 170: twenty letters; the cycles cut short in 1697 and 1974 have 19."""
    counts = {c.id: len(expand(c)) for c in load().cycles if c.id.startswith("LON-")}

    assert len(counts) == 25
    assert {i: n for i, n in counts.items() if n != 20} == {"LON-11": 19, "LON-25": 19}


@pytest.mark.parametrize(
    ("office", "count", "first", "last"),
    [("LON", 497, 1478, 1974), ("BIR", 202, 1773, 1974), ("SHE", 202, 1773, 1974),
     ("CHE", 271, 1689, 1962), ("EXE", 182, 1701, 1882), ("NEW", 178, 1702, 1883),
     ("YOR", 230, 1559, 1856), ("NOR", 37, 1565, 1697), ("EDI", 294, 1681, 1974),
     ("GLA", 170, 1681, 1963), ("DUB", 381, 1638, 2018)],
)  # fmt: skip
def test_years_with_a_letter(office: str, count: int, first: int, last: int) -> None:
    """Assay years with a known letter to 1974 (Dublin to 2018), as counted in the source tables."""
    years = {
        year
        for c in load().cycles
        if c.office == office and not c.id.startswith("UK")
        for x in expand(c)
        if x.letters
        for year in range(x.first_year, x.last_year + 1)
    }

    assert (len(years), min(years), max(years)) == (count, first, last)
