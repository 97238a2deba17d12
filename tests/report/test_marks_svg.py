"""Marks drawn as seen: each thing observed shows, and nothing that was not observed."""

import re
from xml.etree import ElementTree as ET

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.marks.observation import Case, Legibility, Mark, Style, Technique
from planish.report.drawings import drawing
from planish.report.marks_svg import INK, PAPER, mark_in_words, mark_svg

SVG = "{http://www.w3.org/2000/svg}"
RAISED = Technique.RAISED


def tree_of(svg: str) -> ET.Element:
    return ET.fromstring(svg)  # noqa: S314  # a drawing of our own


def paths(svg: str) -> list[ET.Element]:
    root = tree_of(svg)
    return list(root.iter(f"{SVG}path"))


def dotted(svg: str) -> list[ET.Element]:
    return [p for p in paths(svg) if p.get("stroke-linecap") == "round"]


def hatched(svg: str) -> list[ET.Element]:
    return [p for p in paths(svg) if str(p.get("fill")).startswith("url(#")]


def test_a_sure_letter_is_solid_and_nothing_is_hatched_or_dotted() -> None:
    svg = mark_svg(Mark(text="AB", technique=Technique.INCUSE))
    assert [p.get("fill") for p in paths(svg)] == [INK, INK]
    assert not hatched(svg)
    assert not dotted(svg)


def test_an_unsure_letter_alone_is_hatched() -> None:
    assert len(hatched(mark_svg(Mark(text="W&[D]", outline="oval", technique=RAISED)))) == 1


def test_a_lost_letter_is_a_gap_as_wide_as_a_letter_and_an_unknown_number_a_wider_one() -> None:
    one = dotted(mark_svg(Mark(text="A[.]B")))
    many = dotted(mark_svg(Mark(text="A[---]B")))
    assert len(one) == len(many) == 1
    wide_one, wide_many = (
        max(float(v) for v in re.findall(r"H(\d+)", p[0].get("d", ""))) for p in (one, many)
    )
    assert wide_many > wide_one


def test_two_lost_letters_are_two_gaps() -> None:
    assert len(dotted(mark_svg(Mark(text="ST[..]L")))) == 2


def test_raised_is_light_on_dark_and_sunk_dark_on_light() -> None:
    raised = paths(mark_svg(Mark(text="A", outline="square", technique=RAISED)))
    assert (raised[0].get("fill"), raised[-1].get("fill")) == (INK, PAPER)
    sunk = paths(mark_svg(Mark(text="A", outline="square", technique=Technique.INCUSE)))
    assert (sunk[0].get("fill"), sunk[-1].get("fill")) == ("none", INK)


def test_raised_without_an_outline_claims_no_field() -> None:
    (letter,) = paths(mark_svg(Mark(text="A", technique=RAISED)))
    assert (letter.get("fill"), letter.get("stroke")) == (PAPER, INK)


def test_no_outline_recorded_draws_no_frame() -> None:
    assert len(paths(mark_svg(Mark(text="A")))) == 1


def test_an_outline_in_words_not_known_is_dashed() -> None:
    frame = paths(mark_svg(Mark(text="A", outline="like nothing else")))[0]
    assert frame.get("stroke-dasharray")


def test_a_doubtful_or_obscure_mark_is_hatched_in_a_dashed_frame() -> None:
    for mark in (
        Mark(text="AB", outline="oval", doubtful=True),
        Mark(text="AB", outline="oval", legibility=Legibility.OBSCURE),
    ):
        svg = mark_svg(mark)
        assert len(hatched(svg)) == 2
        assert paths(svg)[0].get("stroke-dasharray")


@pytest.mark.parametrize(
    "outline",
    ["rectangle", "oval", "shield", "lozenge", "heart", "trefoil", "circle", "two lobes"],
)
def test_outlines_differ_and_hold_their_letters(outline: str) -> None:
    svg = mark_svg(Mark(text="AB", outline=outline))
    frames = {
        mark_svg(Mark(text="AB", outline=o)).split("<path", 2)[1] for o in ("square", outline)
    }
    assert len(frames) == 2
    bare = mark_svg(Mark(text="AB"))
    for side in ("width", "height"):
        assert float(tree_of(svg).get(side, "")) > float(tree_of(bare).get(side, "")) + 50


def test_style_and_case_change_the_letters() -> None:
    drawn = {
        mark_svg(Mark(text="k", style=style, case=Case.SMALL)).split("<path")[-1] for style in Style
    }
    # lombardic and gaelic share one source of outlines
    assert len(drawn) == len(Style) - 1
    small, capital = (mark_svg(Mark(text="K", case=c)) for c in (Case.SMALL, Case.CAPITAL))
    assert small.split("<path")[-1] != capital.split("<path")[-1]


def test_a_device_with_a_drawing_is_drawn_and_without_one_named() -> None:
    drawn = paths(mark_svg(Mark(device="anchor", outline="shield", technique=RAISED)))
    assert drawn[-1].get("fill-rule") == "evenodd"
    named = mark_svg(Mark(device="a griffin", outline="shield", technique=RAISED))
    assert len(paths(named)) == 1 + len("agriffin")


def test_a_bare_lion_is_not_drawn_as_a_lion_passant() -> None:
    assert len(paths(mark_svg(Mark(device="lion")))) == len("lion")


@pytest.mark.parametrize(
    ("said", "same"),
    [
        ("crowned leopard", "leopard's head crowned"),
        ("lion passant gardant", None),
        ("king's head", None),  # names several heads
        ("leopard", None),  # the animal or its head
        ("horse's head over a shield", None),  # says more than the thesaurus knows
    ],
)
def test_a_synonym_is_drawn_where_it_names_one_device(said: str, same: str | None) -> None:
    assert drawing(said) == (drawing(same) if same else None)


@pytest.mark.parametrize(
    ("mark", "word"),
    [
        (Mark(text="[---]", legibility=Legibility.ILLEGIBLE), "illegible"),
        (Mark(text="[---]", outline="shield"), "illegible"),
        (Mark(legibility=Legibility.ILLEGIBLE, outline="follows the letter"), "illegible"),
        (Mark(outline="oval"), "not read"),
    ],
)
def test_a_mark_of_which_nothing_is_read_is_a_hatched_frame_and_a_word(
    mark: Mark, word: str
) -> None:
    svg = mark_svg(mark)
    frame, *letters = paths(svg)
    assert str(frame.get("fill")).startswith("url(#")
    assert frame.get("stroke-dasharray")
    assert len(letters) == len(word.replace(" ", ""))
    assert {p.get("fill") for p in letters} == {INK}


def test_rows_stand_one_below_the_other() -> None:
    one, two = (
        float(tree_of(mark_svg(Mark(text=t))).get("height", "0")) for t in ("PBAB", "PB/AB")
    )
    assert two > 1.8 * one


def test_a_script_without_outlines_is_set_as_one_text_so_that_it_joins_and_turns() -> None:
    texts = list(tree_of(mark_svg(Mark(text="פסח", outline="circle"))).iter(f"{SVG}text"))
    assert [t.text for t in texts] == ["פסח"]


def test_words_name_what_is_seen() -> None:
    mark = Mark(text="W·[.]", style=Style.SCRIPT, outline="oval", technique=Technique.INCUSE)
    assert mark_in_words(mark) == "letters W·?, script, sunk, in oval"


@given(
    st.builds(
        Mark,
        text=st.none() | st.text(max_size=30),
        device=st.none() | st.text(max_size=60),
        style=st.none() | st.sampled_from(Style),
        outline=st.none()
        | st.text(max_size=20)
        | st.sampled_from(["shield", "follows the letter"]),
        technique=st.none() | st.sampled_from(Technique),
        doubtful=st.booleans(),
    )
)
def test_any_mark_gives_well_formed_svg_without_script(mark: Mark) -> None:
    svg = mark_svg(mark)
    cleaned = re.sub("[\x00-\x08\x0b\x0c\x0e-\x1f\ud800-\udfff\ufffe\uffff]", "", svg)
    assert cleaned == svg, "signs that XML forbids are left out"
    root = tree_of(svg)
    assert {e.tag.removeprefix(SVG) for e in root.iter()} <= {
        "svg", "title", "defs", "pattern", "rect", "path", "g", "text",
    }  # fmt: skip
    assert float(root.get("width", "0")) > 0
