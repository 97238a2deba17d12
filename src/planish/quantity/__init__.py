"""Quantities with their units inside: mass, fineness, money, uncertain dates, uncertainty."""

from planish.quantity.dates import Qualifier, UncertainDate
from planish.quantity.errors import QuantityError
from planish.quantity.fineness import Fineness
from planish.quantity.mass import Mass, MassRead, read_mass
from planish.quantity.money import Money
from planish.quantity.uncertain import Component, Measured

__all__ = [
    "Component",
    "Fineness",
    "Mass",
    "MassRead",
    "Measured",
    "Money",
    "Qualifier",
    "QuantityError",
    "UncertainDate",
    "read_mass",
]
