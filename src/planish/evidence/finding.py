"""The one type that every bench returns.

A finding is a set of rival hypotheses with probabilities and a ledger. The ledger keeps, for each
line of evidence and each hypothesis, the log-likelihood in decibans up to a constant per line, so
that the law

    posterior(h)  is proportional to  prior(h) * product over lines of 10 ** (line[h] / 10)

can be recomputed by anybody from what is printed (``Finding.recomputed``).
"""

import math
from collections.abc import Mapping, Sequence

import msgspec

from planish.evidence.weights import decibans, likelihood_ratio, log_sum_exp, normalise


class Hypothesis(msgspec.Struct, frozen=True, kw_only=True):
    """One rival.

    key: stable name within the finding.
    label: a sentence for people.
    probability: between 0 and 1, given all evidence in the ledger.
    prior: probability before the ledger's lines (only ratios between hypotheses matter).
    """

    key: str
    label: str
    probability: float
    prior: float


class LedgerLine(msgspec.Struct, frozen=True, kw_only=True):
    """One line of evidence.

    observed: what was seen (or looked for and not seen), in words.
    because: the fact that gives it its weight, in words.
    likelihood_db: per hypothesis key, decibans up to a constant common to the line.
    sources: keys of the bibliography, or ``memory`` or ``practice``.
    """

    key: str
    observed: str
    because: str = ""
    likelihood_db: Mapping[str, float]
    sources: tuple[str, ...] = ()


class Ledger(msgspec.Struct, frozen=True):
    """The lines, in the order in which they were observed."""

    lines: tuple[LedgerLine, ...] = ()

    def weight(self, line: LedgerLine, key: str, hypotheses: Sequence[Hypothesis]) -> float:
        """Weight of evidence [dB] of a line for ``key`` against its rivals together.

        The rivals count by their prior: 10*log10( P(E|h) / sum q(r) P(E|r) ), q normalised over
        the rivals. Zero where there is no rival.
        """
        rivals = [h for h in hypotheses if h.key != key and h.prior > 0]
        if not rivals:
            return 0.0
        total = log_sum_exp(math.log(h.prior) for h in rivals)
        mean = log_sum_exp(
            math.log(h.prior) - total + line.likelihood_db.get(h.key, 0.0) * math.log(10) / 10
            for h in rivals
        )
        return line.likelihood_db.get(key, 0.0) - decibans(mean)

    def without(self, key: str) -> "Ledger":
        """The ledger with one line switched off."""
        return Ledger(tuple(line for line in self.lines if line.key != key))


class Contradiction(msgspec.Struct, frozen=True, kw_only=True):
    """Two things that no single history explains, or a claim that the evidence rules out."""

    between: tuple[str, ...]
    says: str
    rule: str = ""
    sources: tuple[str, ...] = ()


class Finding(msgspec.Struct, frozen=True, kw_only=True):
    """Rival hypotheses, best first, with the ledger behind them."""

    about: str
    hypotheses: tuple[Hypothesis, ...]
    ledger: Ledger = Ledger()
    contradictions: tuple[Contradiction, ...] = ()

    def recomputed(self) -> dict[str, float]:
        """Probabilities recomputed from the priors and the ledger alone."""
        logs = [
            (math.log(h.prior) if h.prior > 0 else -math.inf)
            + math.fsum(
                math.log(likelihood_ratio(line.likelihood_db.get(h.key, 0.0)))
                for line in self.ledger.lines
            )
            for h in self.hypotheses
        ]
        return dict(zip((h.key for h in self.hypotheses), normalise(logs), strict=True))
