"""Stones and other materials set in silver: what they weigh, what they are, what law says."""

from planish.stones.identify import MaterialFinding, identify, priors, settings
from planish.stones.law import Flag, Limit, restricted
from planish.stones.names import find_cut, find_material
from planish.stones.nexttest import NextTest, Outcome
from planish.stones.observation import Observation, find_test, observe
from planish.stones.sizes import Size, Sizes, read_sizes
from planish.stones.weight import Girdle, Part, StoneWeight, weigh

__all__ = [
    "Flag",
    "Girdle",
    "Limit",
    "MaterialFinding",
    "NextTest",
    "Observation",
    "Outcome",
    "Part",
    "Size",
    "Sizes",
    "StoneWeight",
    "find_cut",
    "find_material",
    "find_test",
    "identify",
    "observe",
    "priors",
    "read_sizes",
    "restricted",
    "settings",
    "weigh",
]
