"""The case: one assignment, its pieces, and the findings of the benches joined."""

from planish.case.complete import Gap, missing
from planish.case.faults import CaseFaults, Fault
from planish.case.load import load, parse
from planish.case.model import Assignment, Case, Piece
from planish.case.new import starting_file
from planish.case.schema import json_schema

__all__ = [
    "Assignment",
    "Case",
    "CaseFaults",
    "Fault",
    "Gap",
    "Piece",
    "json_schema",
    "load",
    "missing",
    "parse",
    "starting_file",
]
