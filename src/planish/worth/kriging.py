"""Kriged adjusted comparables: scales, rates, makers, weights and value from one set of sales.

    K  covariance of the log prices, r = y - X b0 - m0
    P = K^-1 - K^-1 1 1' K^-1 / (1' K^-1 1),   a = P r
    scales: the largest of  -1/2 (log|K| + log 1'K^-1 1 + r'Pr) + log-normal priors
    rates b = b0 + k^2 L L' X' a,   makers m_g = m0_g + t_g^2 sum of a over the maker's sales
    left out one by one, without a new fit: residual_i = a_i / P_ii, sd_i = P_ii^-1/2

The restricted likelihood is Patterson and Thompson's (1971); its climb by average information is
Gilmour, Thompson and Cullis's (1995); leaving one out from one inverse is Dubrule's (1983); all
from memory. That the weighted grid equals the joint prediction follows from Henderson's identity
(1959, from memory): R^-1 (y - Xb - m - mu) = K^-1 (y - X b0 - m0 - mu).
"""

from dataclasses import dataclass

import numpy as np

from planish.worth.covariance import (
    Array,
    Belief,
    Codes,
    Parts,
    Rates,
    Sales,
    Scales,
    distances,
)

_STEPS = 40
_GOOD_ENOUGH = 1e-5


@dataclass(frozen=True, kw_only=True)
class Fit:
    """What a set of sales says.

    slope: rates [p]. slope_cov: their covariance after the sales [p, p].
    maker, maker_sd: effect of each code and its sd [g]. mean: mu.
    loo, loo_sd: residual and sd of each sale, predicted from the others [n].
    """

    sales: Sales
    rates: Rates
    scales: Scales
    parts: Parts
    inverse: Array
    projected: Array
    a: Array
    slope: Array
    slope_cov: Array
    maker: Array
    maker_sd: Array
    mean: float
    loo: Array
    loo_sd: Array

    def maker_of(self, code: int) -> float:
        """Effect of one maker; 0 for one not known."""
        return float(self.maker[code]) if 0 <= code < self.maker.size else 0.0


@dataclass(frozen=True, kw_only=True)
class Valued:
    """A subject's log value: weights of the sales, their adjusted logs, and how sure it is.

    sd: of the value itself. sd_sale: of one more sale of it.
    """

    log_value: float
    weights: Array
    adjusted: Array
    sd: float
    sd_sale: float


def scales_of(sales: Sales, rates: Rates, belief: Belief) -> Scales:
    """The scales that the sales and the belief together make most likely."""
    start = np.log(belief.centre.array())
    if sales.y.size < 2:
        return belief.centre
    stiffness = 1 / np.square(np.array(belief.spread))
    parts = Parts.of(sales, rates)
    residual = sales.y - sales.x @ rates.slope - rates.maker_mean(sales.maker)
    here = start.copy()
    loss, slope, curve = _climb(here, parts, residual, start, stiffness)
    for _ in range(_STEPS):
        move = -np.linalg.solve(curve, slope)
        # one scale never changes by more than a factor of e in one step
        move *= min(1.0, 1.0 / max(1e-12, float(np.abs(move).max())))
        if -float(slope @ move) < _GOOD_ENOUGH:
            break
        for _ in range(30):
            there = _climb(here + move, parts, residual, start, stiffness)
            if there[0] <= loss + 1e-4 * float(slope @ move):
                break
            move = move / 2
        else:
            break
        here = here + move
        loss, slope, curve = there
    return Scales.of(np.exp(here))


def _climb(
    at: Array, parts: Parts, residual: Array, start: Array, stiffness: Array
) -> tuple[float, Array, Array]:
    """Negative log of restricted likelihood and priors, its gradient, its average information."""
    scales = Scales.of(np.exp(at))
    likeness = scales.likeness**2 * np.exp(-parts.apart / scales.length)
    pulls = [
        2 * scales.slope**2 * parts.slopes,
        2 * scales.maker**2 * parts.makers,
        2 * likeness,
        likeness * (parts.apart / scales.length),
    ]
    whole = parts.whole(scales)
    inverse, log_det = _inverse(whole)
    projected, total = _projected(inverse)
    a = projected @ residual
    off = at - start
    loss = 0.5 * (log_det + np.log(total) + residual @ a) + 0.5 * float(off @ (stiffness * off))
    noise = 2 * scales.noise**2 * parts.noise
    pulled = np.stack([*(pull @ a for pull in pulls), noise * a], axis=1)
    traces = [float((projected * pull).sum()) for pull in pulls]
    traces.append(float(np.diagonal(projected) @ noise))
    slope = 0.5 * np.array(traces) - 0.5 * (a @ pulled) + stiffness * off
    curve = 0.5 * pulled.T @ projected @ pulled + np.diag(stiffness)
    return float(loss), slope, curve


def _inverse(matrix: Array) -> tuple[Array, float]:
    """Inverse and log determinant of a positive definite matrix."""
    root = np.linalg.cholesky(matrix)
    back = np.linalg.inv(matrix)
    return (back + back.T) / 2, 2 * float(np.log(np.diagonal(root)).sum())


def _projected(inverse: Array) -> tuple[Array, float]:
    """P, which takes out the mean, and 1'K^-1 1."""
    ones = inverse.sum(axis=0)
    total = float(ones.sum())
    return inverse - np.outer(ones, ones) / total, total


def fit(sales: Sales, rates: Rates, scales: Scales) -> Fit:
    """Rates, makers and mean after the sales, at these scales.

    Raises:
        ValueError: there are no sales.
    """
    if not sales.y.size:
        raise ValueError("no sales, nothing to fit")
    parts = Parts.of(sales, rates)
    inverse, _ = _inverse(parts.whole(scales))
    projected, total = _projected(inverse)
    residual = sales.y - sales.x @ rates.slope - rates.maker_mean(sales.maker)
    a = projected @ residual
    spread = rates.root * scales.slope
    cross = spread @ (sales.x @ spread).T
    codes = int(max(rates.maker.size, sales.maker.max(initial=-1) + 1))
    members = (sales.maker[None, :] == np.arange(codes)[:, None]).astype(float)
    prior = scales.maker * rates.maker_share(np.arange(codes))
    pulled = (prior**2)[:, None] * members
    variance = prior**2 - np.einsum("gi,ij,gj->g", pulled, projected, pulled, optimize=True)
    left = np.diagonal(projected)
    sure = np.where(left > 1e-12, left, 1.0)
    return Fit(
        sales=sales,
        rates=rates,
        scales=scales,
        parts=parts,
        inverse=inverse,
        projected=projected,
        a=a,
        slope=rates.slope + cross @ a,
        slope_cov=spread @ spread.T - cross @ projected @ cross.T,
        maker=rates.maker_mean(np.arange(codes)) + pulled @ a,
        maker_sd=np.sqrt(np.maximum(variance, 0.0)),
        mean=float(inverse.sum(axis=0) @ residual) / total,
        # one sale alone is predicted by nothing
        loo=np.where(left > 1e-12, a / sure, 0.0),
        loo_sd=np.where(left > 1e-12, 1 / np.sqrt(sure), np.inf),
    )


def value(found: Fit, x: Array, maker: int) -> Valued:
    """The subject's value as a weighted grid of the fit's sales.

    x: its attributes [p]. maker: its code, below 0 where it is not known.
    """
    sales, scales, rates = found.sales, found.scales, found.rates
    code: Codes = np.array([maker])
    apart = distances(x[None, :], sales.x, rates.distance)[0]
    near = scales.likeness**2 * np.exp(-apart / scales.length)
    weights = kriging_weights(found.parts.residual(scales), near)
    effects = np.array([found.maker_of(int(c)) for c in sales.maker])
    unknown = sales.maker < 0
    # the one sale of a maker without a name holds that maker's effect too
    effects[unknown] += scales.maker**2 * found.a[unknown]
    adjusted = sales.y + (x - sales.x) @ found.slope + found.maker_of(maker) - effects
    share = rates.maker_share(code)[0] * scales.maker
    alike = (sales.maker == maker) & (maker >= 0)
    spread = rates.root * scales.slope
    mine = x @ spread
    joint = near + sales.x @ spread @ mine + share**2 * alike
    own = float(mine @ mine) + share**2 + scales.likeness**2
    solved = found.inverse @ joint
    ones = found.inverse.sum(axis=0)
    variance = own - float(joint @ solved) + (1 - float(ones @ joint)) ** 2 / float(ones.sum())
    variance = max(variance, 0.0)
    return Valued(
        log_value=float(weights @ adjusted),
        weights=weights,
        adjusted=adjusted,
        sd=variance**0.5,
        sd_sale=(variance + scales.noise**2) ** 0.5,
    )


def predicted(found: Fit, x: Array, maker: int) -> float:
    """The log value by the joint model, without any weights: what the grid must equal."""
    sales, scales, rates = found.sales, found.scales, found.rates
    apart = distances(x[None, :], sales.x, rates.distance)[0]
    share = rates.maker_share(np.array([maker]))[0] * scales.maker
    spread = rates.root * scales.slope
    joint = scales.likeness**2 * np.exp(-apart / scales.length)
    joint = joint + sales.x @ spread @ (x @ spread)
    joint = joint + share**2 * ((sales.maker == maker) & (maker >= 0))
    known = float(rates.maker_mean(np.array([maker]))[0])
    return found.mean + float(x @ rates.slope) + known + float(joint @ found.a)


def kriging_weights(residual: Array, near: Array) -> Array:
    """w = R^-1 c + o (1 - 1'R^-1 c) / (1'o), o = R^-1 1: they sum to 1.

    residual: R [n, n]. near: c, covariance of the subject with each sale [n].
    """
    both = np.linalg.solve(residual, np.stack([near, np.ones_like(near)], axis=1))
    weights = both[:, 0] + both[:, 1] * (1 - both[:, 0].sum()) / both[:, 1].sum()
    return np.asarray(weights / weights.sum())
