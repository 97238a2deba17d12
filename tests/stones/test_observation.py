import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.library import load
from planish.quantity import QuantityError
from planish.stones import observe


@pytest.mark.parametrize(
    ("text", "test", "answer"),
    [
        ("colour=Robin's egg", "colour", "blue"),
        ("color=teal", "colour", "blue-green"),
        ("lustre=glassy", "lustre", "vitreous"),
        ("seen with the loupe=Schreger", "loupe", "cross-lines"),
        ("salt water=swims", "float", "floats"),
        ("ri=over the limit", "ri", "over"),
        ("warmth=cool", "feel", "cold"),
    ],
)
def test_peoples_words(text: str, test: str, answer: str) -> None:
    found = observe(text)

    assert (found.test, found.answer) == (test, answer)


@pytest.mark.parametrize(
    ("text", "figures"),
    [
        ("sg=2.76±0.05", (2.76, 2.76, 0.05)),
        ("SG = 2.76 +/- 0.05", (2.76, 2.76, 0.05)),
        ("density=2.7-2.8", (2.7, 2.8, 0.05)),
        ("ri=1.544-1.553", (1.544, 1.553, 0.002)),
        ("ri=1.54", (1.54, 1.54, 0.01)),
    ],
)
def test_figures(text: str, figures: tuple[float, float, float]) -> None:
    found = observe(text)

    assert (found.low, found.high, found.u) == figures


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("blue", "it is not TEST=ANSWER"),
        ("colour=", "it is not TEST=ANSWER"),
        ("aura=blue", "test 'aura': this is not known"),
        ("colour=plaid", "'plaid' is no answer"),
        ("sg=heavy", "'heavy' is no figure"),
        ("sg=265", "is no specific gravity"),
        ("ri=0.5", "is no refractive index"),
        ("ri=1.6-1.5", "is no refractive index"),
        ("sg=2.7±0", "too little or too much"),
        ("sg=2.7±2", "too little or too much"),
    ],
)
def test_bad_observations_are_one_clear_line(text: str, says: str) -> None:
    with pytest.raises(QuantityError) as fault:
        observe(text)

    assert says in str(fault.value)
    assert "\n" not in str(fault.value)


@given(st.text(max_size=30))
def test_any_text_is_read_or_refused(text: str) -> None:
    try:
        found = observe(text)
    except QuantityError:
        return
    assert found.test in {t.id for t in load().gemtests}
