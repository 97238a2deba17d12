"""Laws of text: a mark printed in words and described back is the same mark; an observation too."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planish.library import load
from planish.marks import Case, Legibility, Mark, Style, Technique, describe
from planish.marks.printing import PrintingError, print_mark
from planish.marks.transcription import (
    Gap,
    Letter,
    LineBreak,
    Separator,
    Transcription,
    parse,
    print_,
)

DEVICES = [d.label for d in load().devices]
#: labels that speak of letters, of years or of several things, so that words alone do not bring them
#: back: known, and held here so that the list cannot grow unseen
NOT_BROUGHT_BACK = {
    "tree with bird, bell and fish",
    "letter X crowned",
    "head of George III, incuse",
    "crowned head of Elizabeth II, coronation",
    "head of Elizabeth II, Silver Jubilee 1977",
    "head of Elizabeth II, Golden Jubilee 2002",
    "head of Elizabeth II, Diamond Jubilee 2012",
    "ER II over 70",
    "head of Charles III, coronation 2023",
    "Dublin millennium mark 2000",
    "two letters F, one reversed",
    "Convention mark: balance with figures",
    "letter C round a crown",
    "letter C round a lion's head",
    "head",
    "woman's head in a kokoshnik, to the left",
    "woman's head in a kokoshnik, to the right",
    "quartered circle (wheel mark)",
}
OUTLINES = (
    "oval", "shield", "rectangle", "square", "lozenge", "circle", "cartouche", "shaped shield", "trefoil",
    "rectangle with canted corners", "octagon", "two ovals", "heart", "oblong",
)  # fmt: skip
CAPITALS = "ABCDEFGHKLMNOPQRSTUVWXYZ"

circumstances = st.fixed_dictionaries(
    {
        "outline": st.none() | st.sampled_from(OUTLINES),
        "legibility": st.none() | st.sampled_from(Legibility),
        "technique": st.none() | st.sampled_from(Technique),
        "times": st.integers(1, 4),
        "doubtful": st.booleans(),
        "hint": st.none()
        | st.sampled_from(("maker's mark", "date letter", "duty mark", "town mark")),
    }
)
pictures = st.builds(
    lambda device, more: Mark(device=device, **more),
    st.sampled_from([d for d in DEVICES if d not in NOT_BROUGHT_BACK]),
    circumstances,
)
letters = st.builds(
    lambda char, small, sure, style, more: Mark(
        text=char.lower() if small else char,
        case=Case.SMALL if small else Case.CAPITAL,
        case_sure=small or sure,
        style=style,
        **more,
    ),
    st.sampled_from(CAPITALS),
    st.booleans(),
    st.booleans(),
    st.none() | st.sampled_from(Style),
    circumstances,
)
initials = st.builds(
    lambda text, more: Mark(text=text, **more),
    st.from_regex(r"[A-HK-Z]([·&*/.]?[A-HK-Z]){1,3}", fullmatch=True).filter(
        lambda t: sum(c.isalpha() for c in t) > 1
    ),
    circumstances,
)


@settings(max_examples=300)
@given(pictures | letters | initials)
def test_a_printed_mark_is_described_back(mark: Mark) -> None:
    found = describe(print_mark(mark))

    assert found.marks == (mark,)
    assert found.unread == ()
    assert found.claims == ()


@pytest.mark.parametrize("label", DEVICES)
def test_every_picture_is_described_back_or_known_not_to_be(label: str) -> None:
    mark = Mark(device=label)

    assert (describe(print_mark(mark)).marks == (mark,)) == (label not in NOT_BROUGHT_BACK)


@pytest.mark.parametrize(
    ("mark", "text"),
    [
        (Mark(device="lion passant", outline="oval"), "lion passant in an oval"),
        (Mark(text="k", style=Style.SCRIPT, case=Case.SMALL, case_sure=True),
         'small script letter "k"'),
        (Mark(text="W_H", outline="two ovals", times=2), '"W[H]" in two ovals, struck twice'),
        (Mark(device="cup", doubtful=True), 'probably "cup"'),
    ],
)  # fmt: skip
def test_how_it_reads(mark: Mark, text: str) -> None:
    assert print_mark(mark) == text
    assert describe(text).marks == (mark,)


def test_nothing_to_print() -> None:
    with pytest.raises(PrintingError, match="without letters or picture"):
        print_mark(Mark(outline="oval"))


# -- transcription ------------------------------------------------------------------------------

tokens = st.lists(
    st.builds(Letter, st.none() | st.sampled_from("ABCabcÆ7"), st.just(False))
    | st.builds(Letter, st.sampled_from("ABCabcÆ7"), st.just(True))
    | st.builds(Gap)
    | st.builds(Separator, st.sampled_from("·.*&-'"))
    | st.builds(LineBreak),
    max_size=12,
)


@given(tokens)
def test_a_printed_transcription_is_parsed_back(
    found: list[Letter | Gap | Separator | LineBreak],
) -> None:
    once = parse(print_(Transcription(tuple(found))))

    assert parse(print_(once)) == once
    # what is lost or doubted is never made sure, and no letter comes or goes
    assert [c for c, _ in once.letters if c] == [
        t.char for t in found if isinstance(t, Letter) and t.char
    ]


@given(st.text(max_size=60))
def test_printing_settles_whatever_was_read(text: str) -> None:
    try:
        once = parse(text)
    except ValueError:
        return

    assert parse(print_(once)) == once
