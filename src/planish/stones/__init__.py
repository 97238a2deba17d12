"""Stones and other materials set in silver: what they weigh, what they are, what law says."""

from planish.stones.names import find_cut, find_material
from planish.stones.sizes import Size, Sizes, read_sizes
from planish.stones.weight import Girdle, Part, StoneWeight, weigh

__all__ = [
    "Girdle",
    "Part",
    "Size",
    "Sizes",
    "StoneWeight",
    "find_cut",
    "find_material",
    "read_sizes",
    "weigh",
]
