"""Findings: rival hypotheses, and a ledger that says why."""

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
    "probability",
]
