import math
import re
from xml.etree import ElementTree as ET

import msgspec
import pytest

from planish.library import load
from planish.marks.figures_of_forms import STYLE, figure, svg, ticked
from planish.marks.figures_of_forms.layout import RADIUS, discs
from planish.marks.figures_of_forms.sheet import HEIGHT, WIDTH, Drawing
from planish.marks.observation import Search
from planish.marks.where import ANY, forms

FORMS = forms(load())
SVG = "{http://www.w3.org/2000/svg}"


@pytest.mark.parametrize("form", FORMS)
def test_a_figure_is_whole_and_named(form: str) -> None:
    found = figure(form, load())
    root = ET.fromstring(svg(found, key=True))  # noqa: S314  # our own text

    assert root.get("role") == "img"
    assert root[0].tag == f"{SVG}title"
    assert root[0].text == f"Where to look: {'silver of any kind' if form == ANY else form}"
    description = root.findtext(f"{SVG}desc") or ""
    assert all(f"{pin.number} {pin.place} (not searched)" in description for pin in found.pins)
    numbers = [t.text for t in root.iter(f"{SVG}text") if t.get("font-weight") == "600"]
    assert numbers == [str(pin.number) for pin in found.pins]
    key = " ".join(" ".join(t.text or "" for t in root.iter(f"{SVG}text")).split())
    assert all(" ".join(pin.place.split()) in key for pin in found.pins)


@pytest.mark.parametrize("form", FORMS)
def test_discs_lie_on_the_sheet_apart_from_each_other_and_near_their_places(form: str) -> None:
    found = figure(form, load())
    at = [(pin.x, pin.y) for pin in found.pins]
    centres = discs(found.drawing, at)

    for n, (x, y) in enumerate(centres):
        assert RADIUS <= x <= WIDTH - RADIUS
        assert RADIUS <= y <= HEIGHT - RADIUS
        assert all(math.dist((x, y), other) >= 2 * RADIUS for other in centres[n + 1 :])
        assert math.dist((x, y), at[n]) <= 61
        assert all(math.dist((x, y), place) > RADIUS for place in at)


def test_the_same_figure_is_drawn_the_same() -> None:
    assert svg(figure("teapot", load())) == svg(figure("teapot", load()))


def test_states_differ_without_colour() -> None:
    plain = figure("teapot", load())

    def shapes(*searches: Search, look: tuple[str, ...] = ()) -> str:
        text = svg(ticked(plain, searches, look), style=False)
        bare = re.sub(r'(fill|stroke|class)="[^"]*"', "", text)
        return re.sub(r"<desc>.*</desc>", "", bare)

    states = {
        shapes(),
        shapes(Search(place="1", found=True)),
        shapes(Search(place="1", found=False)),
        shapes(look=("1",)),
    }

    assert len(states) == 4


def test_the_description_says_the_state_of_each_place() -> None:
    found = ticked(figure("spoon", load()), (Search(place="1", found=False),), look=("4",))

    assert "1 back of the stem, near the bowl (searched, nothing found)" in svg(found)
    assert "4 front of the stem near the top (not searched, look here next)" in svg(found)


def test_a_page_that_forbids_styles_within_gets_none() -> None:
    assert "<style>" not in svg(figure("bowl", load()), style=False)
    assert STYLE in svg(figure("bowl", load()))


def test_nothing_is_fetched_and_nothing_runs() -> None:
    text = svg(figure("bowl", load()), key=True, ground=True)

    assert text.count("http") == 1  # the name space
    assert not re.search(r"<script|href|url\(|\son\w+=|@import", text)


def test_what_a_place_says_is_no_markup() -> None:
    found = figure("bowl", load())
    pin = msgspec.structs.replace(found.pins[0], place='<script>"&')
    drawn = Drawing("x", found.drawing.shapes, found.drawing.places, ((10.0, 10.0, "<b>&"),))
    text = svg(type(found)(form="<i>", drawing=drawn, pins=(pin,)), key=True)

    ET.fromstring(text)  # noqa: S314  # our own text
    assert "<script>" not in text
    assert "<b>" not in text


# WCAG 2.2, success criteria 1.4.3 (text 4.5:1) and 1.4.11 (graphics 3:1)
@pytest.mark.parametrize(
    ("ink", "paper", "least"),
    [
        ("#1C1E21", "#F7F6F3", 7.0), ("#DADDE1", "#15171A", 7.0),
        ("#5B6672", "#F7F6F3", 4.5), ("#9AA4AF", "#15171A", 4.5),
        ("#8A5A00", "#F7F6F3", 4.5), ("#F2B544", "#15171A", 4.5),
        ("#8A5A00", "#FFFFFF", 4.5),
    ],
)  # fmt: skip
def test_colours_contrast(ink: str, paper: str, least: float) -> None:
    def light(colour: str) -> float:
        parts = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
        linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in parts]
        return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]

    high, low = sorted((light(ink), light(paper)), reverse=True)
    if paper != "#FFFFFF":
        assert {ink, paper} <= set(re.findall(r"#[0-9A-F]{6}", STYLE))
    assert (high + 0.05) / (low + 0.05) >= least
