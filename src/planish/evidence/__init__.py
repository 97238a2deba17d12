"""Findings: rival hypotheses, and a ledger that says why."""

from planish.evidence.chance import SETTLED, percent
from planish.evidence.finding import Contradiction, Finding, Hypothesis, Ledger, LedgerLine
from planish.evidence.weights import (
    decibans,
    in_words,
    likelihood_ratio,
    log_sum_exp,
    normalise,
    probability,
)

__all__ = [
    "SETTLED",
    "Contradiction",
    "Finding",
    "Hypothesis",
    "Ledger",
    "LedgerLine",
    "decibans",
    "in_words",
    "likelihood_ratio",
    "log_sum_exp",
    "normalise",
    "percent",
    "probability",
]
