"""Weight statements and metal values as plain data, ready for JSON."""

import math
from collections.abc import Sequence
from typing import Any

from planish.metal import (
    Deduction,
    Line,
    MetalValue,
    PieceStatement,
    Scenario,
    Stated,
    Weighing,
    WeightStatement,
)
from planish.quantity import Mass, Money

Plain = dict[str, Any]


def mass(value: Mass | None) -> Plain | None:
    """A mass in grams, troy ounces and pennyweights."""
    if value is None:
        return None
    return {unit: float(value.to(unit)) for unit in ("g", "ozt", "dwt")}


def money(value: Money | None) -> Plain | None:
    """An amount and its currency."""
    return None if value is None else {"amount": float(value.amount), "currency": value.currency}


def stated(value: Stated | None, unit: str) -> Plain | None:
    """A result with its interval, rule and budget."""
    if value is None:
        return None
    drawn = value.sample
    return {
        "value": value.value,
        "unit": unit,
        "uncertainty": value.uncertainty,
        "low": value.low,
        "high": value.high,
        "coverage": 0.95,
        "rule": value.rule.value,
        "because": value.because,
        "budget": [
            {"component": c.name, "uncertainty": c.uncertainty, "share": c.share}
            for c in value.budget
        ],
        "simulation": drawn
        and {
            "mean": drawn.mean,
            "uncertainty": drawn.uncertainty,
            "low": drawn.low,
            "high": drawn.high,
            "draws": drawn.draws,
            "seed": drawn.seed,
            "refused": drawn.refused,
        },
    }


def lines(found: Sequence[Line]) -> list[Plain]:
    """The lines of a reckoning."""
    return [
        {
            "label": line.label,
            "figure": float(line.figure),
            "unit": line.unit,
            "formula": line.formula or None,
            "note": line.note or None,
        }
        for line in found
    ]


def statement(found: WeightStatement | PieceStatement) -> Plain:
    """A weight statement, its parts with it where it has any."""
    alloy = found.alloy
    plain: Plain = {
        "piece": found.piece,
        "gross": mass(found.gross),
        "net": mass(found.net),
        "fine": mass(found.fine),
        "net_stated": stated(found.net_stated, "g"),
        "fine_stated": stated(found.fine_stated, "g"),
        "fineness": alloy
        and {
            "permille": float(alloy.fineness.permille),
            "plus_minus": float(alloy.plus_minus),
            "basis": alloy.basis or None,
        },
        "asks": [
            {
                "kind": a.kind.value,
                "because": a.because,
                "says": a.says,
                "rules_of_thumb": list(a.allowances),
            }
            for a in found.asks
        ],
        "lines": lines(found.lines),
        "notes": list(found.notes),
    }
    if isinstance(found, WeightStatement):
        plain["weighing"] = _weighing(found.weighing)
        plain["deductions"] = [_deduction(d) for d in found.deductions]
    else:
        plain["parts"] = [statement(part) for part in found.parts]
    return plain


def _weighing(found: Weighing) -> Plain:
    spread = found.spread
    return {
        "count": found.count,
        "balance": found.balance or None,
        "date": found.date and found.date.isoformat(),
        "step": mass(found.resolution),
        "repeatability": mass(found.repeatability),
        "calibration": mass(found.plus_minus),
        "buoyancy_left_out": mass(found.buoyancy),
        "mean": mass(found.mean),
        "each": [mass(m) for m in found.each],
        "spread": spread
        and {
            "least": mass(spread.least),
            "greatest": mass(spread.greatest),
            "deviation": mass(spread.deviation),
            "odd": list(spread.odd),
        },
    }


def _deduction(found: Deduction) -> Plain:
    return {
        "kind": found.kind.value,
        "what": found.what,
        "mass": mass(found.best),
        "plus_minus": mass(found.plus_minus),
        "low": mass(found.low),
        "high": mass(found.high),
        "method": found.method.value,
        "source": found.source,
    }


def value(found: MetalValue, table: Sequence[Scenario]) -> Plain:
    """A metal value with its table of other prices."""
    return {
        "value": money(found.value),
        "payable": money(found.payable),
        "stated": stated(found.interval, found.price.price.currency),
        "price": {
            **(money(found.price.price) or {}),
            "per": found.price.per,
            "date": found.price.date.isoformat(),
            "source": found.price.source,
            "quoted": found.price.quoted or None,
        },
        "effective": found.effective.isoformat(),
        "stale": found.stale,
        "lines": lines(found.lines),
        "scenarios": [
            {
                "change": float(s.change),
                "price": money(s.price),
                "value": money(s.value),
                "payable": money(s.payable),
            }
            for s in table
        ],
        "warnings": list(found.warnings),
    }


def finite(plain: object) -> object:
    """The same without figures that JSON cannot hold."""
    if isinstance(plain, dict):
        return {k: finite(v) for k, v in plain.items()}
    if isinstance(plain, list):
        return [finite(v) for v in plain]
    return None if isinstance(plain, float) and not math.isfinite(plain) else plain
