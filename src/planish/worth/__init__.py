"""Worth: comparables, their adjustment, and an opinion of value with its reasons."""

from planish.worth.comparables import Adjustment, Basis, Comparable
from planish.worth.grid import Grid, LeftOut, Row, build
from planish.worth.levels import Conversions, Crossing, Step
from planish.worth.opinion import Concluded, Floor, Opinion, Task, opinion
from planish.worth.rates import Rate
from planish.worth.spread import USUAL, Spread, predicted, significant, weighted_median

__all__ = [
    "USUAL",
    "Adjustment",
    "Basis",
    "Comparable",
    "Concluded",
    "Conversions",
    "Crossing",
    "Floor",
    "Grid",
    "LeftOut",
    "Opinion",
    "Rate",
    "Row",
    "Spread",
    "Step",
    "Task",
    "build",
    "opinion",
    "predicted",
    "significant",
    "weighted_median",
]
