from collections import deque
from functools import cache
from io import BytesIO

import pytest
import typst
from PIL import Image

from planish.library import load
from planish.library.rows import Confidence, Spot
from planish.marks import Mark, Observed, shipped_reader
from planish.marks.figures_of_forms import State, figure, ticked
from planish.marks.figures_of_forms.figure import drawing, draws, pinned
from planish.marks.figures_of_forms.sheet import HEIGHT, WIDTH, Drawing
from planish.marks.observation import Search
from planish.marks.where import ANY, forms

FORMS = forms(load())


def test_every_place_of_the_library_has_its_pin_and_no_pin_is_left_over() -> None:
    places = {(spot.form, spot.place) for spot in load().spots}

    assert set(pinned()) == places


def test_every_pin_stands_at_a_named_place_of_its_drawing() -> None:
    wrong = [
        (form, place, name, pin)
        for (form, place), (name, pin) in pinned().items()
        if name not in draws() or pin not in drawing(name).places
    ]

    assert wrong == []


def test_a_form_has_one_drawing() -> None:
    by_form: dict[str, set[str]] = {}
    for (form, _), (name, _) in pinned().items():
        by_form.setdefault(form, set()).add(name)

    assert {form: names for form, names in by_form.items() if len(names) > 1} == {}


def test_every_drawing_is_used() -> None:
    assert {name for name, _ in pinned().values()} == set(draws())


# what the words of a place say, the name of the drawn place must say too
WORDS = {
    "underside": ("underside", "base", "bezel", "well", "stand"),
    "lid": ("lid", "part that comes off"),
    "cover": ("cover", "lid", "cuvette", "lower edge", "neck"),
    "finial": ("finial", "part that comes off"),
    "stem": ("stem", "ferrule"),
    "clasp": ("clasp", "tongue", "tag", "jump ring"),
    "hinge": ("hinge", "pin stem"),
    "collar": ("collar", "handle side", "handle back"),
    "nozzle": ("nozzle", "part that comes off"),
}


@pytest.mark.parametrize("word", WORDS)
def test_a_place_is_pinned_to_the_part_that_it_names(word: str) -> None:
    wrong = [
        (form, place, pin)
        for (form, place), (_, pin) in pinned().items()
        if word in place.split(",")[0].split()
        and not any(part in pin for part in WORDS[word])
        and not place.startswith("body")
    ]

    assert wrong == []


@pytest.mark.parametrize("part", ["underside", "foot ring", "inside foot"])
def test_what_is_seen_from_below_only_is_pinned_in_the_view_from_below(part: str) -> None:
    # a caption stands under each view: the pin must be nearer to "from below" than to any other
    for name in draws():
        drawn = drawing(name)
        views = [(x, y, text) for x, y, text in drawn.notes if "below" in text]
        if part in drawn.places and views and len(views) == 1:
            x, y = drawn.places[part]
            if name == "sauce boat" and part == "foot ring":
                continue  # it stands on three feet, seen from the side
            assert abs(x - views[0][0]) < 80, name
            assert y < views[0][1], name


@cache
def rendered() -> dict[str, Image.Image]:
    """Every drawing without pins, as a picture of half a pixel a unit, by typst's SVG renderer."""
    names = sorted(draws())
    pages = []
    for name in names:
        body = "".join(drawing(name).shapes).replace("\\", "").replace('"', '\\"')
        pages.append(
            f'#page(width: {WIDTH}pt, height: {HEIGHT}pt, margin: 0pt, image(bytes("'
            f"<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 {WIDTH} {HEIGHT}'>"
            "<g fill='none' stroke='black' stroke-width='2' stroke-linejoin='round' "
            "stroke-linecap='round'>"
            f'{body}</g></svg>"), format: "svg", width: 100%))'
        )
    found: list[bytes] = typst.compile("\n".join(pages).encode(), format="png", ppi=36)  # type: ignore[assignment]  # several pages
    return {n: Image.open(BytesIO(p)).convert("L") for n, p in zip(names, found, strict=True)}


def outside(picture: Image.Image) -> set[tuple[int, int]]:
    """Blank pixels that reach the border: the paper round the drawing."""
    width, height = picture.size
    dots = picture.load()
    assert dots is not None
    seen = {(0, 0)}
    queue = deque(seen)
    while queue:
        x, y = queue.popleft()
        for near in ((x + 1, y), (x - 1, y), (x, y + 1), (x, y - 1)):
            inside = 0 <= near[0] < width and 0 <= near[1] < height
            if inside and near not in seen and dots[near] > 235:  # type: ignore[operator]  # grey
                seen.add(near)
                queue.append(near)
    return seen


def lost(drawn: Drawing, picture: Image.Image) -> list[str]:
    """Places that lie on bare paper: not within an outline, and no line within 4 units."""
    paper = outside(picture)
    reach = range(-2, 3)
    return [
        place
        for place, (x, y) in drawn.places.items()
        if all((round(x / 2) + dx, round(y / 2) + dy) in paper for dx in reach for dy in reach)
    ]


def test_no_pin_points_at_bare_paper() -> None:
    wrong = {name: found for name, p in rendered().items() if (found := lost(drawing(name), p))}

    assert wrong == {}


def test_a_place_beside_the_drawing_would_be_found() -> None:
    spoon = drawing("spoon")
    moved = Drawing("spoon", spoon.shapes, {"nowhere": (160.0, 120.0)}, ())

    assert lost(moved, rendered()["spoon"]) == ["nowhere"]


@pytest.mark.parametrize("name", sorted(draws()))
def test_places_and_captions_lie_on_the_sheet(name: str) -> None:
    drawn = drawing(name)

    assert all(4 <= x <= WIDTH - 4 and 4 <= y <= HEIGHT - 4 for x, y in drawn.places.values())
    # 5.6 units a letter is the width of the captions' type
    assert all(
        x - 2.8 * len(text) >= 0 and x + 2.8 * len(text) <= WIDTH and 8 <= y <= HEIGHT
        for x, y, text in drawn.notes
    )


def test_words_lead_to_a_figure_and_unknown_ones_to_that_of_any_silver() -> None:
    assert figure("pair of candlesticks", load()).form == "candlestick"
    assert figure("spoon warmer", load()).form == ANY
    assert figure("spoon warmer", load()).drawing.name == "anything"


def test_pins_are_numbered_by_rank() -> None:
    assert [pin.number for pin in figure("teapot", load()).pins] == [1, 2, 3, 4, 5]


def test_a_place_without_a_pin_is_told_and_breaks_nothing() -> None:
    library = load()
    more = Spot(form="teapot", family="", rank=9, place="behind the spout", source="practice",
                confidence=Confidence.PRACTICE)  # fmt: skip
    spots = (*library.spots, more)
    found = figure("teapot", type(library)(**{f: getattr(library, f) for f in
                   library.__struct_fields__ if f != "spots"}, spots=spots))  # fmt: skip

    assert found.unpinned == ("behind the spout",)


def test_searched_places_tick_their_pins() -> None:
    found = ticked(
        figure("teapot", load()),
        (
            Search(place="underside", found=False),
            Search(place="3", found=True),
            Search(place="moon", found=True),
        ),
        look=("side beside the handle, under the rim",),
    )

    assert [p.state for p in found.pins] == [
        State.NOTHING, State.UNSEARCHED, State.SEEN, State.UNSEARCHED, State.UNSEARCHED,
    ]  # fmt: skip
    assert [p.number for p in found.pins if p.next] == [2]


def test_a_place_seen_stays_seen_though_it_is_searched_again() -> None:
    searches = (Search(place="1", found=True), Search(place="1", found=False))

    assert ticked(figure("teapot", load()), searches).pins[0].state is State.SEEN


@pytest.mark.parametrize("form", FORMS)
def test_every_form_has_a_figure_with_all_its_places(form: str) -> None:
    found = figure(form, load())

    assert found.form == form
    assert found.pins
    assert found.unpinned == ()


def test_the_engines_next_look_is_pinned() -> None:
    found = shipped_reader().read(Observed(marks=(Mark(device="lion passant"),)), "teapot")
    shown = ticked(figure("teapot", load()), (), found.next_look[0].where)

    assert [p.number for p in shown.pins if p.next] == [1, 2, 3]
