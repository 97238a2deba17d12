"""Density by weighing in water: formula, uncertainty, and what it can and cannot tell.

A balance adjusted with steel reads k (m - air x V) in air and k (m - water x V) in water, the same k
both times, so that it cancels:

    density = A / D x (water - air) + air,   D = A - W

A: reading in air; W: hanging in water; D: what the piece displaces. With the beaker on the balance,
tared, and the piece hung into it without touching, the balance shows D itself.
Source: Archimedes' principle with the buoyancy of the air, as in any handbook of weighing.
"""

import math
import re
import statistics
from decimal import Decimal
from enum import StrEnum

import msgspec

from planish.metal.air import USUAL, USUAL_HALF_WIDTH, air_density
from planish.metal.deductions import asks_for
from planish.metal.lines import Line, shown
from planish.metal.montecarlo import Input, Shape
from planish.metal.stated import Stated, effective_freedom, linear, state
from planish.metal.water import TAP_SALTS, water_density
from planish.quantity import Measured, QuantityError
from planish.quantity.numbers import decimal, rounded

#: surface tension of water [N/m] (from memory) and standard gravity [m/s²]
_TENSION, _GRAVITY = 0.0728, 9.80665
#: a thread or wire where none is given [mm]; common practice
WIRE = 0.2
#: bubble whose effect is told [mm³]
BUBBLE = 10.0

# what makes the density of the whole say nothing about the metal; common practice
_HOLLOW = re.compile(
    r"\b(hollow|filled|loaded|weighted|cement|pitch|tubes?|tubular|beads?|riveted|rivets?|jointed"
    r"|enamel\w*|lined|cored?)\b"
)
_DENIED = re.compile(r"\b(?:not|no|without|never)\s+\w+(?:\s+(?:or|nor)\s+\w+)*|\bunfilled\b")


class Arrangement(StrEnum):
    """How it was weighed in water."""

    HANGING = "hanging"
    BEAKER = "beaker"


class Rest(msgspec.Struct, frozen=True, kw_only=True):
    """What of the piece is not the metal asked about: stones, core, filler.

    mass [g], volume [cm³], each with its standard uncertainty.
    """

    what: str
    mass: float
    volume: float
    mass_plus_minus: float = 0.0
    volume_plus_minus: float = 0.0

    @classmethod
    def of(cls, what: str, mass: float, low: float, high: float, plus_minus: float = 0.0) -> "Rest":
        """By its mass and the limits of its density [g/cm³].

        Raises:
            QuantityError: the limits are upside down or not above zero.
        """
        if not 0 < low <= high:
            fault, remedy = "limits of a density are above zero", "put the smaller first"
            raise QuantityError("density", f"{low:g} to {high:g}", fault, remedy)
        density = Measured.between(low, high, "density")
        volume = Measured.of(mass) / density
        return cls(
            what=what,
            mass=mass,
            volume=volume.value,
            mass_plus_minus=plus_minus,
            volume_plus_minus=math.hypot(volume.uncertainty, plus_minus / density.value),
        )


class Immersion(msgspec.Struct, frozen=True, kw_only=True):
    """What was read.

    air: readings in air [g]. water: readings hanging in water, or with the beaker on the balance
    the rise [g]. harness_air, harness_water: of the wire alone, where it was not tared [g].
    celsius: the water's temperature, with its standard uncertainty.
    step: of the display [g]. repeatability: standard deviation of one reading [g].
    wire: thickness of wire or thread where it passes the surface [mm]; 0 leaves its pull out.
    bubbles: most air that may have stayed on the piece [mm³].
    tap: water of the tap, not distilled. hectopascal, humidity: of the air, where they were read.
    """

    air: tuple[float, ...]
    water: tuple[float, ...]
    celsius: float
    arrangement: Arrangement = Arrangement.HANGING
    harness_air: float = 0.0
    harness_water: float = 0.0
    celsius_plus_minus: float = 0.5
    step: float = 0.0
    repeatability: float | None = None
    wire: float = WIRE
    bubbles: float = 0.0
    tap: bool = False
    hectopascal: float | None = None
    humidity: float = 50.0

    def __post_init__(self) -> None:
        if not self.air or not self.water:
            lacking = "in air" if not self.air else "in water"
            raise QuantityError("weight", "", f"no reading {lacking}", "weigh both ways")
        for value in (self.step, self.wire, self.bubbles, self.celsius_plus_minus):
            if value < 0 or not math.isfinite(value):
                fault = "a step, width or volume is not below zero"
                raise QuantityError("figure", value, fault, "take off the sign")
        if self.in_air <= 0 or self.displaced <= 0:
            fault = (
                f"in air {self.in_air:g} g and displaced {self.displaced:g} g give no density:"
                " a piece weighs less in water than in air"
            )
            remedy = "look whether air and water, or hanging and beaker, were mixed up"
            raise QuantityError("weight", f"{self.water[0]:g} g", fault, remedy)

    @property
    def in_air(self) -> float:
        """The mean in air, harness off [g]."""
        return statistics.fmean(self.air) - self.harness_air

    @property
    def displaced(self) -> float:
        """What the piece displaces: the loss of weight in water, harness off [g]."""
        read = statistics.fmean(self.water) - self.harness_water
        return read if self.arrangement is Arrangement.BEAKER else self.in_air - read

    @property
    def air_kg(self) -> float:
        """Density of the air [kg/m³]."""
        if self.hectopascal is None:
            return USUAL
        return air_density(self.hectopascal, self.humidity, self.celsius)


class Density(msgspec.Struct, frozen=True, kw_only=True):
    """The result.

    measured: density [g/cm³] by the linear rule, with its budget.
    stated: with its 95 % interval, and by which rule.
    lines: how it was worked out. cautions: what may have gone wrong, with its size.
    """

    given: Immersion
    rest: Rest | None
    measured: Measured
    stated: Stated
    lines: tuple[Line, ...]
    cautions: tuple[str, ...]


def density(given: Immersion, *, words: str = "", rest: Rest | None = None) -> Density:
    """The density of a piece, or of its metal where the rest is given.

    words: form and materials; a hollow, filled or set piece is refused unless ``rest`` is given.

    Raises:
        QuantityError: the piece cannot be tested so, or the figures cannot be.
    """
    if rest is None and (reason := refusal(words)):
        remedy = "give mass and volume of what is not that metal, or test it another way"
        raise QuantityError("density", words, reason, remedy)
    if rest is not None and (rest.mass >= given.in_air or rest.volume >= given.displaced):
        fault = f"'{rest.what}' leaves nothing of {given.in_air:g} g and {given.displaced:g} cm³"
        raise QuantityError("density", f"{rest.mass:g} g", fault, "check mass and volume")
    inputs = _inputs(given, rest)
    hanging = given.arrangement is Arrangement.HANGING

    def model(*drawn: float) -> float:
        a, w, pull, celsius, salts, air, bubble, mass, volume = drawn
        water = (water_density(celsius) + salts) / 1000
        loss = (a - w if hanging else w) + pull - bubble / 1000 * water
        body = loss / (water - air / 1000)
        return (a + air / 1000 * body - mass) / (body - volume)

    measured = linear(model, inputs)
    stated = state(measured, inputs, model, floor=0.0, freedom=effective_freedom(measured, inputs))
    return Density(
        given=given,
        rest=rest,
        measured=measured,
        stated=stated,
        lines=_lines(given, rest),
        cautions=tuple(_cautions(given, measured.value)),
    )


def refusal(words: str) -> str:
    """Why the density of such a piece says nothing about its metal; empty where it may."""
    low = _DENIED.sub(" ", " ".join(words.lower().split()))
    if found := _HOLLOW.search(low):
        return f"'{found[0]}': the density of the whole says nothing about the metal"
    if asks := asks_for(low, ()):
        return f"'{asks[0].because}': it holds more than one material"
    return ""


def _inputs(given: Immersion, rest: Rest | None) -> tuple[Input, ...]:
    salts = TAP_SALTS / 2 if given.tap else 0.0
    known = given.hectopascal is not None
    celsius = Input(
        name="temperature of the water",
        middle=given.celsius,
        spread=given.celsius_plus_minus,
        low=0.0,
        high=40.0,
    )
    return (
        _reading("reading in air", given.air, given.harness_air, given),
        _reading("reading in water", given.water, given.harness_water, given),
        _limits("pull of the surface on the wire", 0.0, wire_pull(given.wire)),
        celsius,
        _limits("salts in the water", salts, salts),
        _limits("density of the air", given.air_kg, 0.005 if known else USUAL_HALF_WIDTH),
        _limits("air on the piece", given.bubbles / 2, given.bubbles / 2),
        Input(
            name="mass of the rest",
            middle=rest.mass if rest else 0.0,
            spread=rest.mass_plus_minus if rest else 0.0,
        ),
        Input(
            name="volume of the rest",
            middle=rest.volume if rest else 0.0,
            spread=rest.volume_plus_minus if rest else 0.0,
        ),
    )


def _limits(name: str, middle: float, half: float) -> Input:
    return Input(name=name, middle=middle, spread=half, shape=Shape.RECTANGULAR)


def _reading(name: str, readings: tuple[float, ...], harness: float, given: Immersion) -> Input:
    """The mean of readings, harness off: step and scatter, GUM 4.2 and F.2.2.1."""
    number = len(readings)
    middle = statistics.fmean(readings) - harness
    steps = 2 if harness else 1  # the harness was read as well
    rounding = given.step * math.sqrt(steps / 12)
    if given.repeatability is not None:
        scatter = given.repeatability * math.sqrt((1 / number) + (steps - 1))
        return Input(name=name, middle=middle, spread=math.hypot(rounding, scatter))
    if number > 1:
        scatter = statistics.stdev(readings) / math.sqrt(number)
        both = math.hypot(rounding, scatter)
        if not scatter:
            return Input(name=name, middle=middle, spread=both)
        # the scatter's degrees of freedom, spread over both (GUM G.2b)
        freedom = (number - 1) * (both / scatter) ** 4
        return Input(name=name, middle=middle, spread=both, shape=Shape.STUDENT, freedom=freedom)
    if steps == 1:
        return _limits(name, middle, given.step / 2)
    return Input(name=name, middle=middle, spread=rounding)


def wire_pull(millimetres: float) -> float:
    """The most that the water's surface pulls on a wire of a thickness [g].

    Surface tension times the wire's girth; taring takes off most of it, and the angle at which the
    water meets the wire may change all of it. 0.2 mm: 0.0047 g.
    """
    return _TENSION * math.pi * millimetres / 1000 / _GRAVITY * 1000


def _figure(value: float, places: int) -> Decimal:
    return rounded(decimal(value), places)


def _lines(given: Immersion, rest: Rest | None) -> tuple[Line, ...]:
    """The reckoning without corrections for bubbles and salts, from rounded figures as printed."""
    a, d = _figure(given.in_air, 5), _figure(given.displaced, 5)
    water = _figure(water_density(given.celsius) / 1000, 7)
    air = _figure(given.air_kg / 1000, 7)
    w = a - d
    beaker = given.arrangement is Arrangement.BEAKER
    lines = [
        Line(label="in air", figure=a, unit="g", note=_note(given.air, given.harness_air)),
        Line(
            label="displaced",
            figure=d,
            unit="g",
            formula="" if beaker else f"{shown(a)} - {shown(w)}",
            note=_note(given.water, given.harness_water),
        ),
        Line(
            label="density of water",
            figure=water,
            unit="g/cm³",
            note=f"{given.celsius:g} °C; Tanaka and others, Metrologia 38 (2001)",
        ),
        Line(
            label="density of air",
            figure=air,
            unit="g/cm³",
            note="OIML R 111-1, from memory" if given.hectopascal else "usual, common practice",
        ),
    ]
    chain = f"{shown(a)} / {shown(d)} × ({shown(water)} - {shown(air)}) + {shown(air)}"
    whole = a / d * (water - air) + air
    lines.append(Line(label="density", figure=whole, unit="g/cm³", formula=chain))
    if rest is not None:
        volume = d / (water - air)
        body = f"{shown(d)} / ({shown(water)} - {shown(air)})"
        mass, taken = _figure(rest.mass, 5), _figure(rest.volume, 6)
        top = f"({shown(a)} + {shown(air)} × {body} - {shown(mass)})"
        figure = (a + air * volume - mass) / (volume - taken)
        lines.append(
            Line(
                label=f"density without {rest.what}",
                figure=figure,
                unit="g/cm³",
                formula=f"{top} / ({body} - {shown(taken)})",
            )
        )
    return tuple(lines)


def _note(readings: tuple[float, ...], harness: float) -> str:
    many = f"mean of {len(readings)} readings" if len(readings) > 1 else ""
    off = f"harness of {harness:g} g off" if harness else ""
    return "; ".join(word for word in (many, off) if word)


def _cautions(given: Immersion, value: float) -> list[str]:
    lost = value * (BUBBLE / 1000) / (given.displaced + BUBBLE / 1000)
    bubble = f"a bubble of {BUBBLE:g} mm³ left on the piece lowers the figure by {lost:.2g} g/cm³"
    delicate = "ivory, pearl, coral, turquoise, opal, glue, enamel, pitch or plaster"
    found = [
        f"{bubble}: wet it with a drop of detergent, brush it under water, turn it",
        f"dry the piece at once; no water on {delicate}",
    ]
    rising = given.water if given.arrangement is Arrangement.HANGING else given.water[::-1]
    climbs = len(rising) > 2 and list(rising) == sorted(rising)
    if climbs and rising[-1] - rising[0] > 2 * given.step:
        found.insert(0, "the weight in water rose from reading to reading: bubbles were leaving it")
    if not given.step:
        found.insert(0, "no step of the balance is given: the figure looks surer than it is")
    return found


def by_step(mass: float, step: float, body: float, celsius: float = 20.0) -> float:
    """Standard uncertainty of density that the step alone brings [g/cm³], to choose a balance by.

    mass: of the piece [g]. step: of the display [g]. body: density expected [g/cm³].

    Formula: density x 0.408 step / D, two readings rounded to the step (GUM F.2.2.1). It takes the
    reading in air in the numerator as exact, and so is some 5 % too large for silver.
    """
    return body * step * math.sqrt(2 / 12) / displacement(mass, body, celsius)


def displacement(mass: float, body: float, celsius: float = 20.0) -> float:
    """Difference of the readings in air and water that a piece will show [g]."""
    air = USUAL / 1000
    return mass * (water_density(celsius) / 1000 - air) / (body - air)
