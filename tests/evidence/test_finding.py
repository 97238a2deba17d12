"""A finding can be recomputed from its priors and its ledger."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.evidence import Finding, Hypothesis, Ledger, LedgerLine


def finding(priors: list[float], lines: list[list[float]]) -> Finding:
    keys = [f"h{i}" for i in range(len(priors))]
    logs = [p * math.prod(10 ** (row[i] / 10) for row in lines) for i, p in enumerate(priors)]
    total = math.fsum(logs)
    return Finding(
        about="a test",
        hypotheses=tuple(
            Hypothesis(key=k, label=k, prior=p, probability=w / total)
            for k, p, w in zip(keys, priors, logs, strict=True)
        ),
        ledger=Ledger(
            tuple(
                LedgerLine(
                    key=f"l{n}", observed="x", likelihood_db=dict(zip(keys, row, strict=True))
                )
                for n, row in enumerate(lines)
            )
        ),
    )


@given(
    st.lists(st.floats(0.01, 5), min_size=3, max_size=3),
    st.lists(st.lists(st.floats(-30, 30), min_size=3, max_size=3), max_size=5),
)
def test_recomputed_equals_stated(priors: list[float], lines: list[list[float]]) -> None:
    made = finding(priors, lines)
    again = made.recomputed()
    for h in made.hypotheses:
        assert again[h.key] == pytest.approx(h.probability, abs=1e-9)


def test_weight_for_two_rivals_is_the_likelihood_ratio() -> None:
    # With one rival the weight of evidence is 10 log10 of the plain ratio (Good 1950)
    made = finding([0.5, 0.5], [[12.0, 2.0]])
    line = made.ledger.lines[0]
    assert made.ledger.weight(line, "h0", made.hypotheses) == pytest.approx(10.0)
    assert made.ledger.weight(line, "h1", made.hypotheses) == pytest.approx(-10.0)


def test_weight_over_several_rivals_is_the_exact_bayes_factor() -> None:
    made = finding([0.2, 0.3, 0.5], [[9.0, 3.0, 0.0]])
    line = made.ledger.lines[0]
    for h in made.hypotheses:
        prior_share = h.prior / math.fsum(x.prior for x in made.hypotheses)
        prior_odds = 10 * math.log10(prior_share / (1 - prior_share))
        odds = 10 * math.log10(h.probability / (1 - h.probability))
        assert made.ledger.weight(line, h.key, made.hypotheses) == pytest.approx(odds - prior_odds)


def test_a_line_switched_off_is_gone() -> None:
    made = finding([1.0, 1.0], [[10.0, 0.0], [0.0, 10.0]])
    assert [line.key for line in made.ledger.without("l0").lines] == ["l1"]
