"""The metal: weight statement, fine silver, and its value at a dated price."""

from planish.metal.allowances import ALLOWANCES, Allowance, allowance
from planish.metal.deductions import (
    Ask,
    Deduction,
    Kind,
    Method,
    asks_for,
    by_allowance,
    by_share,
    method_of,
)
from planish.metal.lines import Line
from planish.metal.statement import Alloy, Weighing, WeightStatement, weigh
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

__all__ = [
    "ALLOWANCES",
    "PAYOUT_LEVELS",
    "STALE_DAYS",
    "Allowance",
    "Alloy",
    "Ask",
    "Charge",
    "Deduction",
    "Kind",
    "Line",
    "MetalPrice",
    "MetalValue",
    "Method",
    "PayoutLevel",
    "Terms",
    "Weighing",
    "WeightStatement",
    "allowance",
    "asks_for",
    "by_allowance",
    "by_share",
    "metal_value",
    "method_of",
    "weigh",
]
