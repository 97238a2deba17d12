"""Uncertain dates: the format's own examples, the reference library, and catalogue words."""

import datetime as dt

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.quantity import Qualifier, QuantityError, UncertainDate

NOT_HERE = "the reference library is a development package"


@pytest.mark.parametrize(
    ("edtf", "earliest", "latest"),
    [
        # forms of the specification's levels 0 and 1 (Library of Congress, EDTF, 2019)
        ("1985", "1985-01-01", "1985-12-31"),
        ("1985-04", "1985-04-01", "1985-04-30"),
        ("1985-04-12", "1985-04-12", "1985-04-12"),
        ("1964/2008", "1964-01-01", "2008-12-31"),
        ("2004-06/2006-08", "2004-06-01", "2006-08-31"),
        ("2004-02-01/2005", "2004-02-01", "2005-12-31"),
        ("1984?", "1984-01-01", "1984-12-31"),
        ("2004-06~", "2004-06-01", "2004-06-30"),
        ("2004-06-11%", "2004-06-11", "2004-06-11"),
        ("201X", "2010-01-01", "2019-12-31"),
        ("20XX", "2000-01-01", "2099-12-31"),
        ("1985-04-12/..", "1985-04-12", None),
        ("1985/", "1985-01-01", None),
        ("../1985-04", None, "1985-04-30"),
        ("/1985", None, "1985-12-31"),
        ("1984~/2004-06", "1984-01-01", "2004-06-30"),
        ("1904-02", "1904-02-01", "1904-02-29"),
        ("1900-02", "1900-02-01", "1900-02-28"),
    ],
)
def test_bounds_of_the_format(edtf: str, earliest: str | None, latest: str | None) -> None:
    date = UncertainDate.parse(edtf)

    assert date.edtf == str(date) == edtf
    assert date.earliest == (dt.date.fromisoformat(earliest) if earliest else None)
    assert date.latest == (dt.date.fromisoformat(latest) if latest else None)


@pytest.mark.parametrize(
    ("text", "edtf"),
    [
        ("circa 1894", "1894~"),
        ("c.1894", "1894~"),
        ("c1894", "1894~"),
        ("ca. 1894", "1894~"),
        ("about 1894", "1894~"),
        ("c.1890s", "189X~"),
        ("1890s", "189X"),
        ("the 1890's", "189X"),
        ("19th century", "18XX"),
        ("probably 1894", "1894?"),
        ("possibly c. 1894", "1894%"),
        ("c. 1894?", "1894%"),
        ("before 1838", "../1837"),
        ("before c. 1838", "../1837~"),
        ("pre-1838", "../1837"),
        ("by 1838", "../1838"),
        ("1838 or earlier", "../1838"),
        ("after 1890", "1891/.."),
        ("after the 1890s", "1900/.."),
        ("from 1890", "1890/.."),
        ("1890 or later", "1890/.."),
        ("1890 onwards", "1890/.."),
        ("1894-95", "1894/1895"),
        ("1894/95", "1894/1895"),
        ("1894–95", "1894/1895"),
        ("1784-1821", "1784/1821"),
        ("1784 – 1821", "1784/1821"),
        ("1784 to 1821", "1784/1821"),
        ("from 1784 to 1821", "1784/1821"),
        ("between 1784 and 1821", "1784/1821"),
        ("c. 1890-1900", "1890~/1900~"),
        ("c. 1890-95", "1890~/1895~"),
        ("1880s-1890s", "188X/189X"),
        ("May 1894", "1894-05"),
        ("12 May 1894", "1894-05-12"),
        ("May 12th, 1894", "1894-05-12"),
        ("29 Sept. 1894", "1894-09-29"),
        # a hyphen before 01 to 12 is a month, other signs are not
        ("1909-10", "1909-10"),
        ("1909–10", "1909/1910"),
        ("1909/10", "1909/1910"),
    ],
)
def test_words_of_catalogues(text: str, edtf: str) -> None:
    assert UncertainDate.parse(text).edtf == edtf
    assert UncertainDate.parse(text.upper().replace("TH", "th")).edtf == edtf


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("late Victorian", "give the years you mean"),
        ("early 19th century", "give the years you mean"),
        ("George III", "give the years you mean"),
        ("17760", "did you mean 1776?"),
        ("17760/1800", "did you mean 1776?"),
        ("circa 17760", "did you mean 1776?"),
        ("9184", "not a year from 1 to 2200"),
        ("0000", "not a year from 1 to 2200"),
        ("1894-13", "no month 13"),
        ("1894-02-30", "no day 30"),
        ("1900-02-29", "no day 29"),
        ("1821/1784", "put the earlier date first"),
        ("../..", "both ends are open"),
        ("1784/1800/1821", "one '/'"),
        ("1800s", "write 180X or 18XX"),
        ("12/05/1894", "write year-month-day"),
        ("after May 1890", "is it included?"),
        ("n.d.", "leave it out"),
        ("undated", "leave it out"),
        ("", "nothing is written"),
        ("sometime", "write it like"),
        ("2nd century BC", "before our era"),
    ],
)
def test_what_cannot_be_read_is_told_in_one_line(text: str, says: str) -> None:
    with pytest.raises(QuantityError) as told:
        UncertainDate.parse(text)

    assert says in str(told.value)
    assert "\n" not in str(told.value)


def test_how_sure_it_is() -> None:
    assert UncertainDate("1894").qualifier is Qualifier.NONE
    assert UncertainDate("1894?").qualifier is Qualifier.UNCERTAIN
    assert UncertainDate("1890~/1900~").qualifier is Qualifier.APPROXIMATE
    assert UncertainDate("1890?/1900~").qualifier is Qualifier.BOTH
    assert UncertainDate("1894%").qualifier.words == "about, uncertain"


def test_runs_of_years() -> None:
    assert UncertainDate.years(1784, 1821).edtf == "1784/1821"
    assert UncertainDate.years(1784, 1784).edtf == "1784"
    assert UncertainDate.years(None, 1821).edtf == "../1821"
    assert UncertainDate.years(1784, None).edtf == "1784/.."
    for first, last in ((None, None), (1821, 1784), (1784, 17760)):
        with pytest.raises(QuantityError):
            UncertainDate.years(first, last)


def test_a_date_cannot_hold_what_the_format_does_not() -> None:
    for text in ("circa 1894", "1894-95", "", "1894 ", "１８９４"):
        with pytest.raises(QuantityError):
            UncertainDate(text)


def test_it_is_stored_and_read_back_equal() -> None:
    date = UncertainDate.parse("c. 1890-1900")

    assert msgspec.json.decode(msgspec.json.encode(date), type=UncertainDate) == date
    with pytest.raises(msgspec.ValidationError):
        msgspec.json.decode(b'{"edtf":"17760"}', type=UncertainDate)


@pytest.mark.filterwarnings("ignore")  # the reference library's own affairs
@pytest.mark.parametrize(
    "edtf",
    [
        "1894", "1894-05", "1894-05-12", "1894~", "1894?", "1894%", "189X", "18XX", "1784/1821",
        "1890~/1900~", "1784-03/1821-11", "1900-02",
    ],
)  # fmt: skip
def test_bounds_agree_with_the_reference_library(edtf: str) -> None:
    """It is right for these; it invents ten years for an open start, so open ends are left out."""
    reference = pytest.importorskip("edtf", reason=NOT_HERE)
    theirs = reference.parse_edtf(edtf)
    mine = UncertainDate(edtf)

    assert mine.earliest == dt.date(*theirs.lower_strict()[:3])
    assert mine.latest == dt.date(*theirs.upper_strict()[:3])


@pytest.mark.filterwarnings("ignore")  # the reference library's own affairs
@pytest.mark.parametrize("text", ["circa 1894", "c.1890s", "c1894", "1890s", "1894-95"])
def test_words_agree_with_the_reference_library(text: str) -> None:
    reference = pytest.importorskip("edtf", reason=NOT_HERE)

    assert UncertainDate.parse(text).edtf == reference.text_to_edtf(text)


years = st.integers(min_value=1, max_value=2200)
dates = st.dates(min_value=dt.date(1, 1, 1), max_value=dt.date(2200, 12, 31))
marks = st.sampled_from(["", "?", "~", "%"])


@given(dates, marks)
def test_a_day_is_its_own_bounds(day: dt.date, mark: str) -> None:
    date = UncertainDate.parse(f"{day.isoformat()}{mark}")

    assert date.earliest == date.latest == day
    assert date.may_be(day)
    assert date.qualifier.value == mark


@given(st.one_of(st.none(), years), st.one_of(st.none(), years), dates)
def test_an_interval_holds_what_lies_between(a: int | None, b: int | None, day: dt.date) -> None:
    if a is None and b is None:
        return
    first, last = (a, b) if a is None or b is None else (min(a, b), max(a, b))
    date = UncertainDate.years(first, last)

    assert UncertainDate.parse(str(date)) == date
    inside = (first is None or first <= day.year) and (last is None or day.year <= last)
    assert date.may_be(day) == inside


@given(years.filter(lambda y: y > 10))
def test_before_and_by_differ_by_one_year(year: int) -> None:
    assert UncertainDate.parse(f"before {year:04d}") == UncertainDate.years(None, year - 1)
    assert UncertainDate.parse(f"by {year:04d}") == UncertainDate.years(None, year)


@given(st.text(alphabet="0123456789X?~%/-. circaend", max_size=25))
def test_any_text_is_read_or_refused(text: str) -> None:
    try:
        date = UncertainDate.parse(text)
    except QuantityError as told:
        line = str(told)
    else:
        line = ""
        assert UncertainDate.parse(date.edtf) == date
        if date.earliest and date.latest:
            assert date.earliest <= date.latest
    assert "\n" not in line
