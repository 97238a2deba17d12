"""Before any test: what the marks say, or, without marks, how often pieces turn out to be what.

The reading of the marks comes in as plain claims, made by whoever joins the benches. A mark is no
proof: with what chance a piece of each composition bears such a mark is a judgment, below.
"""

from collections.abc import Iterable

import msgspec

from planish.library import Library
from planish.library.rows import Composition
from planish.quantity import QuantityError


class Claim(msgspec.Struct, frozen=True, kw_only=True):
    """What a reading of the marks says.

    kind: solid, plated, base, filled or unknown. fineness: in ‰, where told. probability: 0 to 1.
    """

    kind: str
    fineness: float | None = None
    probability: float = 1.0


#: kind of the claim -> kind of the piece -> chance that such a piece bears such marks (judgments:
#: false, transposed and misread marks are rare, but plate and base metal are common)
_BEARS = {
    "solid": {"solid": 0.85, "plated": 0.012, "base": 0.015, "filled": 0.3},
    "plated": {"solid": 0.003, "plated": 0.7, "base": 0.05, "filled": 0.01},
    "base": {"solid": 0.001, "plated": 0.03, "base": 0.4, "filled": 0.005},
    "filled": {"solid": 0.004, "plated": 0.006, "base": 0.003, "filled": 0.5},
}
KINDS = ("solid", "plated", "base", "filled", "unknown")
#: a silver of another fineness than the mark says, relative to one that keeps to it
_OFF = 0.012
#: marks of plate are rare on fused plate ("about three quarters are unmarked", OLD-SHEFFIELD)
_FUSED = 0.3


def priors(library: Library, claims: Iterable[Claim] = ()) -> dict[str, float]:
    """Probability of each composition, by id, adding up to one.

    claims: what the marks say; their probabilities may add up to less than one, the rest and what
    is ``unknown`` being unmarked. Without claims, the shares of unmarked pieces.

    Raises:
        QuantityError: a kind is unknown, or probabilities are negative or add up to more than one.
    """
    total = sum(row.share for row in library.compositions)
    shares = {row.id: row.share / total for row in library.compositions}
    found = dict.fromkeys(shares, 0.0)
    left = 1.0
    for claim in claims:
        if claim.kind not in KINDS:
            raise QuantityError("marks", claim.kind, "no such kind", f"one of {', '.join(KINDS)}")
        if claim.probability < 0.0 or claim.probability > left + 1e-6:
            fault = "probabilities are negative or add up to more than one"
            raise QuantityError("marks", claim.probability, fault, "check them")
        if claim.kind == "unknown":
            continue
        left -= claim.probability
        borne = {r.id: shares[r.id] * _bears(r, claim, library) for r in library.compositions}
        whole = sum(borne.values())
        for key, p in borne.items():
            found[key] += claim.probability * p / whole
    left = max(left, 0.0)
    return {key: found[key] + left * shares[key] for key in shares}


def _bears(row: Composition, claim: Claim, library: Library) -> float:
    chance = _BEARS[claim.kind][row.kind]
    if claim.kind == "plated" and row.make == "fused":
        return chance * _FUSED
    if claim.fineness is None or claim.kind not in ("solid", "filled") or row.kind != "solid":
        return chance
    near = min(
        (r for r in library.compositions if r.kind == "solid"),
        key=lambda r: _off(r, claim.fineness or 0.0),
    )
    return chance if row.id == near.id else chance * _OFF


def _off(row: Composition, fineness: float) -> float:
    """How far a fineness lies outside a composition's limits, and then from its name [‰]."""
    outside = max((row.low or 0.0) - fineness, fineness - (row.high or 0.0), 0.0)
    return outside + abs((row.fineness or 0.0) - fineness) / 1000.0
