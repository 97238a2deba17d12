"""Likelihood of test entries on histories, so that repeated tests do not count twice.

Figures of one group (one X-ray spot; all weighings of the piece) share what is wrong with the spot or
the method: the group is pooled to one mean whose uncertainty does not fall below that share. A group
is a slip as a whole (a solder spot, a bubble, a meter over iron) with a small chance. What a further
reading adds is the likelihood of the group with it over the likelihood without.

Readings in words: a further drop on the same spot repeats the first with chance ``COPIED_SPOT``, one
elsewhere with ``COPIED_TEST``, whatever the metal; only the rest is evidence. Judgments.
"""

import math
from collections.abc import Mapping, Sequence

import msgspec

from planish.library.rows import MetalTest
from planish.metal.composition_histories import History
from planish.metal.composition_physics import (
    iacs_shown,
    met,
    silver_of_all,
    xrf_percent,
)
from planish.metal.testlog import Entry, Where

COPIED_SPOT, COPIED_TEST = 0.8, 0.35
#: drops of another acid on the same spot meet the same grease, lacquer or plate
COPIED_ACID = 0.3
ACIDS = frozenset({"dichromate", "nitric", "touchstone"})
#: in the rest of the time an unsure reading is any reading
_UNSURE = 0.5
#: a chance that is never gone below, so that no single entry is infinite
_LEAST = 1e-9


class Figure(msgspec.Struct, frozen=True):
    """How a figure strays.

    shared: standard uncertainty that repeating does not lessen; by_spot: whether it is the spot's
    own or the whole method's. slip: chance that the group means nothing; span: over which it then
    lies. floor: least uncertainty of one reading.
    """

    shared: float
    by_spot: bool
    slip: float
    span: float
    floor: float


#: judgments, but for the floor of density, 0.03 g/cm³ in all, which is reckoned from its parts
FIGURES: Mapping[str, Figure] = {
    "xrf": Figure(0.6, True, 0.025, 100.0, 0.15),
    "density": Figure(0.03, False, 0.015, 10.0, 0.005),
    "conductivity": Figure(2.0, True, 0.015, 110.0, 0.5),
    "touchstone": Figure(15.0, False, 0.03, 1000.0, 10.0),
    "assay": Figure(0.7, False, 0.003, 1000.0, 0.3),
}


def expected(test: str, history: History, where: Where) -> tuple[float, float]:
    """Figure that a test would show on a history, and the spread of that in itself.

    The second keeps a set of histories from being gappy where they differ much.
    """
    match test:
        case "xrf":
            p = xrf_percent(history, where)
            rough = 14.0 if history.plate else 4.0
            return p, rough * (p / 100.0) * max(1.0 - p / 100.0, 0.0) + (
                0.3 if history.plate else 0.0
            )
        case "density":
            hollow = history.density < 9.9 if history.make == "solid" else False
            return history.density, 0.12 if hollow else 0.02
        case "conductivity":
            shown = iacs_shown(history)
            return shown, 0.5 + 0.02 * shown
        case "touchstone":
            if met(history, "streak", where).startswith("silver"):
                # plate mixes with what lies beneath it
                return history.fine - (
                    40.0 if history.plate else 0.0
                ), 30.0 if history.plate else 4.0
            return 0.0, 60.0
        case _:
            fine = silver_of_all(history)
            plate = 2.0 * history.plate / (history.wall + 2.0 * history.plate)
            return fine or 1000.0 * plate, 0.5 if fine else 5.0 + 300.0 * plate


class Shown(msgspec.Struct, frozen=True):
    """What a figure would be on one history: mean, variance beside its own, slip, density of a slip."""

    mean: float
    variance: float
    slip: float
    level: float


def shown(test: str, history: History, where: Where) -> Shown:
    """What a test would show on a history, with all that strays but the reading itself."""
    kind = FIGURES[test]
    mean, spread = expected(test, history, where)
    slip, span = kind.slip, kind.span
    if test == "xrf" and mean > 1.0:
        mean += history.x_bias
    if test == "conductivity" and history.core == "steel":
        # over iron a meter may show anything
        slip, span = 0.6, 40.0
    elif test == "conductivity" and history.core == "filled":
        slip = 0.3
    return Shown(mean, kind.shared**2 + spread**2, slip, slip / span)


def likelihood(at: Shown, pooled: tuple[float, float]) -> float:
    """Likelihood of a group's mean and its standard uncertainty, per unit."""
    variance = at.variance + pooled[1] ** 2
    off = (pooled[0] - at.mean) ** 2 / variance
    if off > 200.0:
        return at.level
    return (1.0 - at.slip) * math.exp(-0.5 * off) / math.sqrt(
        6.283185307179586 * variance
    ) + at.level


def pool(test: str, entries: Sequence[Entry]) -> tuple[float, float]:
    """Weighted mean of the readings of a group, and its uncertainty from their scatter alone."""
    floor = FIGURES[test].floor
    weights = [1.0 / max(e.plus_minus * (1.0 if e.sure else 2.0), floor) ** 2 for e in entries]
    total = sum(weights)
    mean = sum(w * (e.value or 0.0) for w, e in zip(weights, entries, strict=True)) / total
    return mean, total**-0.5


def _group(entry: Entry, before: Sequence[Entry]) -> list[Entry]:
    by_spot = FIGURES[entry.test].by_spot
    return [
        e
        for e in before
        if e.test == entry.test and e.value is not None and (not by_spot or _same_spot(e, entry))
    ]


class Responses:
    """What each test shows on each history, reckoned once for each test and kind of place.

    tables: chances of readings by (test, what it met), from the table ``responses``.
    """

    def __init__(
        self,
        histories: Sequence[History],
        tables: Mapping[tuple[str, str], Mapping[str, float]],
    ) -> None:
        self.histories = histories
        self._tables = tables
        self._figures: dict[tuple[str, Where], tuple[Shown, ...]] = {}
        self._words: dict[tuple[str, Where], tuple[str, ...]] = {}

    def figures(self, test: str, where: Where) -> tuple[Shown, ...]:
        """What a figure would be on each history."""
        key = (test, where)
        if key not in self._figures:
            self._figures[key] = tuple(shown(test, h, where) for h in self.histories)
        return self._figures[key]

    def met(self, test: MetalTest, where: Where) -> tuple[str, ...]:
        """What a test in words meets on each history, as the table names it."""
        key = (test.id, where)
        if key not in self._words:
            self._words[key] = tuple(self._met(test, h, where) for h in self.histories)
        return self._words[key]

    def table(self, test: str, met: str) -> Mapping[str, float]:
        """Chances of the readings of a test on what it meets."""
        return self._tables[test, met]

    def _met(self, test: MetalTest, history: History, where: Where) -> str:
        at = met(history, test.meets, where)
        if test.id == "sound" and history.core == "tin":
            at = "tin"
        # the most particular row that there is: silver-800, else silver; a core unheard of is other
        for name in (at, at.split("-")[0], "silver" if at == "filled" else "other"):
            if (test.id, name) in self._tables:
                return name
        raise KeyError(test.id, at)

    def of(self, entry: Entry, before: Sequence[Entry], test: MetalTest) -> list[float]:
        """Likelihood of an entry on each history, given the entries before it."""
        figure = entry.value is not None
        found = self._figure(entry, before, test) if figure else self._word(entry, before, test)
        return _diluted(entry, before, found)

    def _word(self, entry: Entry, before: Sequence[Entry], test: MetalTest) -> list[float]:
        same = [e for e in before if e.test == entry.test and e.readings]
        here = [e for e in same if _same_spot(e, entry)]
        copied = chance = 0.0
        if same:
            first = (here or same)[-1]
            chance = COPIED_SPOT if here else COPIED_TEST
            copied = len(set(first.readings) & set(entry.readings)) / len(first.readings)
        places = self.met(test, entry.where)
        likely = {}
        for place in set(places):
            table = self._tables[test.id, place]
            p = sum(table[r] for r in entry.readings)
            if not entry.sure:
                p = (1.0 - _UNSURE) * p + _UNSURE * len(entry.readings) / len(test.choices)
            likely[place] = max(chance * copied + (1.0 - chance) * p, _LEAST)
        return [likely[place] for place in places]

    def _figure(self, entry: Entry, before: Sequence[Entry], test: MetalTest) -> list[float]:
        earlier = _group(entry, before)
        now = pool(entry.test, [*earlier, entry])
        expects = self.figures(entry.test, entry.where)
        found = [likelihood(at, now) for at in expects]
        if earlier:
            then = pool(entry.test, earlier)
            found = [p / likelihood(at, then) for p, at in zip(found, expects, strict=True)]
        elif test.choices:
            # a figure on the touchstone says first of all that the streak was silver
            places = self.met(test, entry.where)
            silver = {m: self._tables[test.id, m]["silver"] for m in set(places)}
            found = [p * silver[m] for p, m in zip(found, places, strict=True)]
        return [max(p, _LEAST) for p in found]


def _same_spot(one: Entry, other: Entry) -> bool:
    return (one.spot.casefold(), one.where) == (other.spot.casefold(), other.where)


def _diluted(entry: Entry, before: Sequence[Entry], found: list[float]) -> list[float]:
    """Another acid on the same spot is in part the same test over again."""
    others = ACIDS - {entry.test}
    if entry.test not in ACIDS or not any(
        e.test in others and _same_spot(e, entry) for e in before
    ):
        return found
    mean = sum(found) / len(found)
    return [COPIED_ACID * mean + (1.0 - COPIED_ACID) * p for p in found]
