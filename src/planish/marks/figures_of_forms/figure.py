"""The figure of a form: its drawing, and a pin for each place where its marks usually sit."""

import csv
import inspect
from collections.abc import Iterable
from enum import StrEnum
from functools import cache
from importlib.resources import files
from types import ModuleType

import msgspec

from planish.library.loader import Library
from planish.marks.figures_of_forms import (
    boxes,
    dressing,
    drinking,
    flatware,
    holloware,
    jewellery,
    light,
    other,
    table,
)
from planish.marks.figures_of_forms.sheet import Draw, Drawing, drawn
from planish.marks.observation import Search
from planish.marks.where import ANY, place_of, resolve, where_to_look

_FAMILIES: tuple[ModuleType, ...] = (
    holloware, drinking, table, light, flatware, boxes, dressing, jewellery, other,
)  # fmt: skip


class State(StrEnum):
    """What is known of a place; the words are those of every screen and report."""

    SEEN = "seen"
    NOTHING = "searched, nothing found"
    UNSEARCHED = "not searched"


class Pin(msgspec.Struct, frozen=True, kw_only=True):
    """A numbered place: its number is the rank in the list of places. x, y: units of the drawing."""

    number: int
    place: str
    how: str
    caution: str
    x: float
    y: float
    state: State = State.UNSEARCHED
    next: bool = False


class Figure(msgspec.Struct, frozen=True, kw_only=True):
    """A form with its drawing and pins. unpinned: places that the drawing does not show."""

    form: str
    drawing: Drawing
    pins: tuple[Pin, ...]
    unpinned: tuple[str, ...] = ()


@cache
def draws() -> dict[str, Draw]:
    """Every drawing's function by the drawing's name."""
    return {
        name.replace("_", " "): function
        for family in _FAMILIES
        for name, function in inspect.getmembers(family, inspect.isfunction)
        if function.__module__ == family.__name__ and not name.startswith("_")
    }


@cache
def drawing(name: str) -> Drawing:
    """A drawing by its name.

    Raises:
        KeyError: there is none of that name.
    """
    return drawn(draws()[name])


@cache
def pinned() -> dict[tuple[str, str], tuple[str, str]]:
    """(form, place) as in spots.csv: name of the drawing, and of the place on it."""
    text = (files(__package__) / "pins.csv").read_text(encoding="utf-8")
    rows = csv.DictReader(line for line in text.splitlines() if not line.startswith("#"))
    return {(r["form"], r["place"]): (r["drawing"], r["pin"]) for r in rows}


def figure(words: str, library: Library) -> Figure:
    """The figure of the form that a person's words mean.

    A form that is not known gets the figure of silver of any kind.
    """
    form = resolve(words, library) or ANY
    spots = where_to_look(form, library)
    rows = [(spot, pinned().get((form, spot.place))) for spot in spots]
    name = next((row[0] for _, row in rows if row), "anything")
    shown = drawing(name)
    pins = []
    for spot, row in rows:
        if row:
            x, y = shown.places[row[1]]
            pins.append(
                Pin(
                    number=spot.rank, place=spot.place, how=spot.how, caution=spot.caution, x=x, y=y
                )
            )
    return Figure(
        form=form,
        drawing=shown,
        pins=tuple(pins),
        unpinned=tuple(spot.place for spot, row in rows if row is None),
    )


def ticked(found: Figure, searched: Iterable[Search], look: Iterable[str] = ()) -> Figure:
    """The figure with the state of each place set.

    searched: places looked at, in a person's words or by the pin's number. look: places of the
    next look. What names no place of the form ticks no pin.
    """
    states: dict[str, State] = {}
    places = [(pin.number, pin.place) for pin in found.pins]
    for search in searched:
        place = place_of(search.place, places)
        if place and states.get(place) is not State.SEEN:
            states[place] = State.SEEN if search.found else State.NOTHING
    # the engine's next look writes "place (how)"
    wanted = {
        next((place for _, place in places if words.startswith(f"{place} (")), None)
        or place_of(words, places)
        for words in look
    }
    return msgspec.structs.replace(
        found,
        pins=tuple(
            msgspec.structs.replace(
                pin,
                state=states.get(pin.place, State.UNSEARCHED),
                next=pin.place in wanted,
            )
            for pin in found.pins
        ),
    )
