"""Uncertain figures: linear propagation of named components of standard uncertainty.

Method: JCGM 100:2008 (GUM), section 5, first-order Taylor series. Each component is carried with
its signed contribution c = (df/dx) u(x), so that a component met twice, as the same balance in two
weighings, counts once and fully correlated. First order only: where a function bends strongly
within its uncertainty, or a limit is near, simulate instead.
"""

import math
from collections.abc import Mapping
from decimal import Decimal
from typing import Self

import msgspec

from planish.quantity.errors import QuantityError
from planish.quantity.numbers import Number, fraction

_WHAT = "figure"


class Component(msgspec.Struct, frozen=True):
    """One line of an uncertainty budget.

    name: of the input.
    uncertainty: its contribution to the result's standard uncertainty, in the result's unit.
    share: of the result's variance, 0 to 1.
    """

    name: str
    uncertainty: float
    share: float


class Measured(msgspec.Struct, frozen=True):
    """A value with independent components of standard uncertainty, each under its name.

    value: the best figure.
    parts: (name, signed contribution in the unit of the value); the same name in two figures
        means the same error in both.

    >>> gross = Measured.of(412.6, balance=0.06)
    >>> stones = Measured.of(2.4, stones=0.2)
    >>> print((gross - stones).short(), [c.name for c in (gross - stones).budget()])
    410.20(21) ['stones', 'balance']
    """

    value: float
    parts: tuple[tuple[str, float], ...] = ()

    def __post_init__(self) -> None:
        figures = (self.value, *(u for _, u in self.parts))
        if not all(math.isfinite(figure) for figure in figures):
            fault = "the figure or its uncertainty is not finite"
            raise QuantityError(_WHAT, self.value, fault, "check the inputs")

    @classmethod
    def of(cls, value: Number, /, **uncertainty: Number) -> Self:
        """A value with standard uncertainties by name.

        Raises:
            QuantityError: an uncertainty is negative or a figure is not finite.
        """
        return cls.with_parts(value, uncertainty)

    @classmethod
    def with_parts(cls, value: Number, uncertainty: Mapping[str, Number]) -> Self:
        """As ``of``, with names that need not be identifiers."""
        parts = []
        for name, u in uncertainty.items():
            if fraction(u) < 0:
                fault = f"the uncertainty '{name}' is negative"
                raise QuantityError(_WHAT, u, fault, "give its size")
            parts.append((name, float(u)))
        return cls(float(fraction(value)), tuple(sorted(parts)))

    @classmethod
    def between(cls, low: Number, high: Number, name: str) -> Self:
        """Anything between two limits alike: middle, and u = (high - low) / sqrt(12).

        Source: GUM 4.3.7, rectangular distribution.

        Raises:
            QuantityError: the limits are upside down.
        """
        if low > high:
            fault = f"the lower limit {low} is above the upper one {high}"
            raise QuantityError(_WHAT, low, fault, "put the smaller first")
        width = float(high) - float(low)
        return cls.with_parts(float(low) + width / 2, {name: width / math.sqrt(12)})

    @classmethod
    def read_off(cls, value: Number, step: Number, name: str) -> Self:
        """A reading of a display with a step: u = step / sqrt(12). Source: GUM F.2.2.1."""
        return cls.with_parts(value, {name: abs(float(step)) / math.sqrt(12)})

    @property
    def uncertainty(self) -> float:
        """Combined standard uncertainty (GUM equation 10)."""
        return math.hypot(*(u for _, u in self.parts))

    @property
    def relative(self) -> float:
        """Standard uncertainty as a share of the value's size; infinite at zero."""
        return self.uncertainty / abs(self.value) if self.value else math.inf

    def budget(self) -> tuple[Component, ...]:
        """The components, the weightiest first; their shares add up to one where there is any."""
        total = self.uncertainty
        lines = [Component(n, abs(u), (u / total) ** 2 if total else 0.0) for n, u in self.parts]
        return tuple(sorted(lines, key=lambda line: (-line.share, line.name)))

    def through(self, value: float, slope: float) -> "Measured":
        """The result ``value`` of a function with derivative ``slope`` at this figure."""
        return Measured(value, tuple((n, u * slope) for n, u in self.parts))

    def _joined(self, other: "Measured", value: float, here: float, there: float) -> "Measured":
        """``value`` with derivative ``here`` by this figure and ``there`` by the other."""
        parts = {name: u * here for name, u in self.parts}
        for name, u in other.parts:
            parts[name] = parts.get(name, 0.0) + u * there
        return Measured(value, tuple(sorted(parts.items())))

    def __add__(self, other: "Measured | Number") -> "Measured":
        by = _measured(other)
        return self._joined(by, self.value + by.value, 1.0, 1.0)

    __radd__ = __add__

    def __neg__(self) -> "Measured":
        return self.through(-self.value, -1.0)

    def __sub__(self, other: "Measured | Number") -> "Measured":
        by = _measured(other)
        return self._joined(by, self.value - by.value, 1.0, -1.0)

    def __rsub__(self, other: Number) -> "Measured":
        return _measured(other) - self

    def __mul__(self, other: "Measured | Number") -> "Measured":
        by = _measured(other)
        return self._joined(by, self.value * by.value, by.value, self.value)

    __rmul__ = __mul__

    def __truediv__(self, other: "Measured | Number") -> "Measured":
        by = _measured(other)
        quotient = self.value / by.value
        return self._joined(by, quotient, 1.0 / by.value, -quotient / by.value)

    def __rtruediv__(self, other: Number) -> "Measured":
        return _measured(other) / self

    def short(self) -> str:
        """The figure with its standard uncertainty in its last places (GUM 7.2.2, form 2).

        Two figures of uncertainty: ``10.290(19)``; without any, the figure alone.
        """
        u = self.uncertainty
        if u == 0.0:
            return f"{self.value:g}"
        places = 1 - Decimal(f"{u:.1e}").adjusted()
        value = Decimal(repr(self.value)).quantize(Decimal(1).scaleb(-places))
        size = Decimal(f"{u:.1e}")
        if places <= 0:
            return f"{value:f}({size:f})"
        inside = f"{size:.{places}f}"
        # within the decimals the point is left out: 10.290(19), but 1234.0(1.2)
        inside = inside if size >= 1 else inside.replace(".", "").lstrip("0")
        return f"{value:f}({inside})"


def _measured(other: Measured | Number) -> Measured:
    return other if isinstance(other, Measured) else Measured(float(fraction(other)))
