"""How alike sales are, as numbers: arrays of sales, prior rates, and the covariance of log prices.

The model for log prices (formulas of Bayesian kriging and of restricted likelihood as in Cressie,
Statistics for Spatial Data, 1993, chapters 2 and 3, from memory):

    y = mu + x'b + m(maker) + s(x) + e
    b ~ N(b0, k^2 L L')    rates, about those of the adjustment book
    m ~ N(m0, t^2)         makers, about what was learned of each before
    s ~ Gaussian process   likeness, covariance ss^2 exp(-d / l)
    e ~ N(0, sn^2 v)       noise of the market, v above 1 for a doubtful sale
"""

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
Codes = NDArray[np.int64]

#: added to every variance of a sale, so that two sales alike to the last digit can be solved
JITTER = 1e-8


@dataclass(frozen=True, kw_only=True)
class Scales:
    """The five scales: slope (k), maker (t), likeness (ss), length (l), noise (sn)."""

    slope: float = 1.0
    maker: float = 0.25
    likeness: float = 0.15
    length: float = 1.0
    noise: float = 0.2

    def array(self) -> Array:
        """The scales in the order above."""
        return np.array([self.slope, self.maker, self.likeness, self.length, self.noise])

    @classmethod
    def of(cls, values: Array) -> "Scales":
        """From an array in the order above."""
        slope, maker, likeness, length, noise = (float(v) for v in values)
        return cls(slope=slope, maker=maker, likeness=likeness, length=length, noise=noise)


@dataclass(frozen=True, kw_only=True)
class Belief:
    """Log-normal priors of the scales: where each is centred, and the sd of its logarithm."""

    centre: Scales = Scales()
    spread: tuple[float, float, float, float, float] = (0.5, 0.6, 0.6, 0.6, 0.6)

    def from_file(self, learned: Scales, sales: int) -> "Belief":
        """Centred on what the user's own file gave; the tighter, the more sales it had."""
        tighter = tuple(s / (1 + sales / 100) ** 0.5 for s in self.spread)
        return replace(self, centre=learned, spread=tighter)


@dataclass(frozen=True, kw_only=True)
class Sales:
    """Sales as arrays, in one order.

    y: log prices [n]. x: attributes [n, p]. maker: code of each sale's maker, below 0 where it is
    not known [n]. noise: v, the variance of a sale relative to a plain one [n].
    """

    y: Array
    x: Array
    maker: Codes
    noise: Array

    def take(self, which: NDArray[np.int64] | NDArray[np.bool_]) -> "Sales":
        """Those sales only."""
        return Sales(
            y=self.y[which], x=self.x[which], maker=self.maker[which], noise=self.noise[which]
        )


@dataclass(frozen=True, kw_only=True)
class Rates:
    """What is believed of rates and makers before the sales are seen.

    slope: mean of each rate [p]. root: L, with L L' the covariance of the rates [p, q].
    maker: mean effect of each maker, by code [g]. maker_sd: how far it may be off, as a share of
    the scale of makers (1 where nothing was learned) [g].
    distance: what the squared difference of each attribute counts in a distance [p].
    """

    slope: Array
    root: Array
    maker: Array
    maker_sd: Array
    distance: Array

    @classmethod
    def plain(cls, slope: Array, sd: Array, distance: Array, makers: int = 0) -> "Rates":
        """Rates each with its own sd, makers of whom nothing is known."""
        return cls(
            slope=np.asarray(slope, float),
            root=np.diag(np.asarray(sd, float)),
            maker=np.zeros(makers),
            maker_sd=np.ones(makers),
            distance=np.asarray(distance, float),
        )

    def maker_mean(self, codes: Codes) -> Array:
        """Mean effect of these makers; 0 for one not known."""
        return self._of(self.maker, codes, 0.0)

    def maker_share(self, codes: Codes) -> Array:
        """Share of the scale of makers for these; 1 for one not known."""
        return self._of(self.maker_sd, codes, 1.0)

    @staticmethod
    def _of(values: Array, codes: Codes, otherwise: float) -> Array:
        if not values.size:
            return np.full(codes.shape, otherwise)
        known = (codes >= 0) & (codes < values.size)
        return np.where(known, values[np.where(known, codes, 0)], otherwise)


def distances(one: Array, other: Array, weights: Array) -> Array:
    """sqrt(sum_j w_j (x_j - z_j)^2) of every row of one to every row of the other [n, m]."""
    if not one.shape[1]:
        return np.zeros((one.shape[0], other.shape[0]))
    root = np.sqrt(weights)
    # about the middle, so that large plain figures (years, grams) lose no digits
    middle = other.mean(axis=0)
    a, b = (one - middle) * root, (other - middle) * root
    squares = (a * a).sum(1)[:, None] + (b * b).sum(1)[None, :] - 2 * a @ b.T
    return np.sqrt(np.maximum(squares, 0.0))


def same_maker(one: Codes, other: Codes) -> Array:
    """1 where both are by one known maker, else 0 [n, m]."""
    return ((one[:, None] == other[None, :]) & (one[:, None] >= 0)).astype(float)


@dataclass(frozen=True, kw_only=True)
class Parts:
    """The parts of a covariance that do not depend on the scales."""

    slopes: Array
    makers: Array
    apart: Array
    noise: Array

    @classmethod
    def of(cls, sales: Sales, rates: Rates) -> "Parts":
        """For these sales."""
        spread = sales.x @ rates.root
        share = rates.maker_share(sales.maker)
        alike = same_maker(sales.maker, sales.maker)
        # a sale by nobody known has a maker all the same: an effect of its own
        np.fill_diagonal(alike, 1.0)
        apart = distances(sales.x, sales.x, rates.distance)
        np.fill_diagonal(apart, 0.0)
        return cls(
            slopes=spread @ spread.T,
            makers=alike * share[:, None] * share[None, :],
            apart=apart,
            noise=sales.noise,
        )

    def residual(self, scales: Scales) -> Array:
        """Likeness and noise: R = ss^2 exp(-d / l) + diag(sn^2 v)."""
        found = scales.likeness**2 * np.exp(-self.apart / scales.length)
        found[np.diag_indices_from(found)] += scales.noise**2 * self.noise + JITTER
        return np.asarray(found)

    def whole(self, scales: Scales) -> Array:
        """K: rates, makers, likeness and noise together."""
        return (
            self.residual(scales) + scales.slope**2 * self.slopes + scales.maker**2 * self.makers
        )
