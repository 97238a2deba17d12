"""The metal: weight statement, density, fine silver, and its value at a dated price."""

from planish.metal.allowances import ALLOWANCES, Allowance, allowance
from planish.metal.deductions import (
    Ask,
    Deduction,
    Kind,
    Method,
    asks_for,
    by_allowance,
    by_share,
    by_volume,
    kind_of,
    method_of,
)
from planish.metal.densitysays import Conclusion, Verdict, conclude
from planish.metal.hydro import Arrangement, Density, Immersion, Rest, density
from planish.metal.lines import Line
from planish.metal.materials import Fit, Fits, not_excluded
from planish.metal.parts import Part, PieceStatement, weigh_parts
from planish.metal.scenario import Scenario, scenarios
from planish.metal.series import PriceSeries, read_series
from planish.metal.stated import Rule, Stated
from planish.metal.statement import WeightStatement, weigh
from planish.metal.value import (
    PAYOUT_LEVELS,
    STALE_DAYS,
    Charge,
    MetalPrice,
    MetalValue,
    PayoutLevel,
    Terms,
    metal_value,
)
from planish.metal.weighing import Alloy, Spread, Weighing

__all__ = [
    "ALLOWANCES",
    "PAYOUT_LEVELS",
    "STALE_DAYS",
    "Allowance",
    "Alloy",
    "Arrangement",
    "Ask",
    "Charge",
    "Conclusion",
    "Deduction",
    "Density",
    "Fit",
    "Fits",
    "Immersion",
    "Kind",
    "Line",
    "MetalPrice",
    "MetalValue",
    "Method",
    "Part",
    "PayoutLevel",
    "PieceStatement",
    "PriceSeries",
    "Rest",
    "Rule",
    "Scenario",
    "Spread",
    "Stated",
    "Terms",
    "Verdict",
    "Weighing",
    "WeightStatement",
    "allowance",
    "asks_for",
    "by_allowance",
    "by_share",
    "by_volume",
    "conclude",
    "density",
    "kind_of",
    "metal_value",
    "method_of",
    "not_excluded",
    "read_series",
    "scenarios",
    "weigh",
    "weigh_parts",
]
