import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.intake.years import Years, YearsError, years


# Forms of dates in registers of makers; centuries by the calendar (the 18th is 1701 to 1800), their
# quarters, halves and thirds by common practice.
@pytest.mark.parametrize(
    ("text", "first", "last", "exact"),
    [
        ("1790", 1790, 1790, True),
        ("1790-1805", 1790, 1805, True),
        ("1790 – 1805", 1790, 1805, True),
        ("1790-95", 1790, 1795, True),
        ("1801-05", 1801, 1805, True),
        ("1894/95", 1894, 1895, True),
        ("c. 1850", 1850, 1850, False),
        ("ca 1850", 1850, 1850, False),
        ("um 1780", 1780, 1780, False),
        ("vers 1780", 1780, 1780, False),
        ("1790?", 1790, 1790, False),
        ("fl. 1820", 1820, 1820, True),
        ("fl 1820-35", 1820, 1835, True),
        ("active 1790–1805", 1790, 1805, True),
        ("tätig 1790-1805", 1790, 1805, True),
        ("1790s", 1790, 1799, True),
        ("1790-", 1790, None, True),
        ("1790 - present", 1790, None, True),
        ("-1805", None, 1805, True),
        ("?-1805", None, 1805, True),
        ("ab 1790", 1790, None, True),
        ("bis 1805", None, 1805, True),
        ("before 1838", None, 1837, True),
        ("12.05.1790", 1790, 1790, True),
        ("18th c.", 1701, 1800, False),
        ("18th century", 1701, 1800, False),
        ("18. Jh.", 1701, 1800, False),
        ("XVIIIe siècle", 1701, 1800, False),
        ("early 19th century", 1801, 1833, False),
        ("late 18th c.", 1768, 1800, False),
        ("first half of the 18th century", 1701, 1750, False),
        ("last quarter of the 19th century", 1876, 1900, False),
        ("17th/18th c.", 1601, 1800, False),
        ("late 18th - early 19th c.", 1768, 1833, False),
    ],
)
def test_years_are_read(text: str, first: int | None, last: int | None, *, exact: bool) -> None:
    assert years(text) == Years(first, last, exact=exact)


@pytest.mark.parametrize("text", ["foo", "", "99999", "Victorian", "b. 1790", "* 1790",
                                  "third half of the 18th century", "1805-1790", "x" * 500])  # fmt: skip
def test_what_has_no_single_meaning_is_refused_in_one_line(text: str) -> None:
    with pytest.raises(YearsError) as refused:
        years(text)
    assert "\n" not in str(refused.value)


@given(
    st.integers(1300, 2000),
    st.integers(0, 150),
    st.sampled_from(["{}-{}", "{} – {}", "{} to {}", "fl. {}-{}"]),
)
def test_any_run_of_years_comes_back(first: int, length: int, form: str) -> None:
    assert years(form.format(first, first + length)) == Years(first, first + length, exact=True)


@given(st.text(max_size=60))
def test_any_text_is_years_or_refused(text: str) -> None:
    try:
        found = years(text)
    except YearsError:
        return
    assert found.first is not None or found.last is not None
    if found.first is not None and found.last is not None:
        assert found.first <= found.last
