"""The composition finding: what tests of the metal say, and what they contradict.

Outside facts: densities of sterling (10.36 g/cm3) and nickel silver (8.4 to 8.9), conductivity of
silver and nickel silver (%IACS) from the metals table with its sources; colours of the dichromate
drop from Henley's Twentieth Century Formulas; that a magnet's silence proves nothing is common
practice.
"""

import math
from itertools import permutations

import pytest

from planish.metal.composition import (
    CompositionBench,
    CompositionFinding,
    shipped_composition_bench,
)
from planish.metal.composition_next import Advice, TestAdviser
from planish.metal.composition_prior import Claim
from planish.metal.testlog import Entry, parse_entry
from planish.quantity import QuantityError

STERLING = Claim(kind="solid", fineness=925.0, probability=0.9)


@pytest.fixture(scope="module")
def bench() -> CompositionBench:
    return shipped_composition_bench()


@pytest.fixture(scope="module")
def adviser(bench: CompositionBench) -> TestAdviser:
    return TestAdviser(bench)


def entries(bench: CompositionBench, *texts: str) -> tuple[Entry, ...]:
    return tuple(e for text in texts for e in parse_entry(text, bench.library.tests))


def weigh(
    bench: CompositionBench, *texts: str, claims: tuple[Claim, ...] = ()
) -> CompositionFinding:
    return bench.weigh(entries(bench, *texts), claims)


def probabilities(found: CompositionFinding) -> dict[str, float]:
    return {h.key: h.probability for h in found.finding.hypotheses}


@pytest.mark.parametrize(
    ("texts", "kind"),
    [
        (("density=10.36±0.03", "conductivity=96±3", "xrf=92.5±0.5@worn rim"), "solid"),
        (("xrf=92.5±0.8@rim", "density=8.7±0.05"), "plated"),
        (("xrf=0±0.5@rim", "density=8.7±0.05", "conductivity=6±1"), "base"),
        (("magnet=strong", "density=7.9±0.05", "xrf=0±0.5"), "base"),
    ],
)
def test_what_the_tests_together_say(
    bench: CompositionBench, texts: tuple[str, ...], kind: str
) -> None:
    found = weigh(bench, *texts)
    assert found.kinds[0][0] == kind
    assert found.kinds[0][1] > 0.9


def test_probabilities_add_up(bench: CompositionBench) -> None:
    found = weigh(bench, "xrf=92.5±0.8@rim", "density=10.3±0.1", claims=(STERLING,))
    assert math.fsum(probabilities(found).values()) == pytest.approx(1.0)
    assert math.fsum(h.prior for h in found.finding.hypotheses) == pytest.approx(1.0)
    assert math.fsum(p for _, p in found.kinds) == pytest.approx(1.0)


def test_the_ledger_leads_from_priors_to_probabilities(bench: CompositionBench) -> None:
    found = weigh(
        bench, "magnet=none", "xrf=92.5±0.8@rim", "conductivity=90±4", "density=10.3±0.1",
        claims=(STERLING,),
    )  # fmt: skip
    raw = {
        h.key: h.prior
        * 10 ** (sum(x.likelihood_db[h.key] for x in found.finding.ledger.lines) / 10)
        for h in found.finding.hypotheses
    }
    total = sum(raw.values())
    for h in found.finding.hypotheses:
        assert raw[h.key] / total == pytest.approx(h.probability, abs=1e-6)
    assert all(line.sources for line in found.finding.ledger.lines)


def test_a_mark_of_925_on_a_piece_of_8_7_is_a_contradiction(bench: CompositionBench) -> None:
    found = weigh(bench, "density=8.70±0.05", claims=(STERLING,))
    assert found.contradictions
    says = " ".join(str(c) for c in found.contradictions)
    assert "925" in says
    assert "8.7" in says
    assert found.kind("solid") < 0.2
    agreeing = weigh(bench, "density=10.36±0.05", claims=(STERLING,))
    assert not agreeing.contradictions


def test_silver_on_top_and_nickel_silver_beneath_is_a_contradiction(
    bench: CompositionBench,
) -> None:
    found = weigh(bench, "xrf=92.5±0.5@rim", "conductivity=6±1")
    assert found.contradictions
    assert found.kind("plated") > 0.9


def test_a_silent_magnet_proves_little_and_a_pull_much(bench: CompositionBench) -> None:
    before = weigh(bench).kind("solid")
    assert abs(weigh(bench, "magnet=none").kind("solid") - before) < 0.1
    assert weigh(bench, "magnet=strong").kind("solid") < before / 3


def test_plate_reads_as_silver_to_a_drop_on_its_skin(bench: CompositionBench) -> None:
    skin = weigh(bench, "dichromate=red@rim")
    filed = weigh(bench, "dichromate=red@foot rim, filed, owner agreed")
    assert filed.kind("solid") > skin.kind("solid")
    assert skin.kind("plated") > 0.1


@pytest.mark.parametrize("text", ["xrf=92.5±0.8@rim", "dichromate=red@rim", "density=8.7±0.1"])
def test_the_same_test_at_the_same_spot_does_not_count_twice(
    bench: CompositionBench, text: str
) -> None:
    def weight(*texts: str) -> float:
        p = weigh(bench, *texts).kind("base")
        start = weigh(bench).kind("base")
        return abs(math.log(max(p, 1e-12) / max(start, 1e-12)))

    assert weight(text, text) < 1.5 * weight(text) + 0.05


def test_the_order_of_the_tests_does_not_matter(bench: CompositionBench) -> None:
    texts = ("magnet=none", "xrf=92.5±0.8@rim", "xrf=91.9±0.8@foot", "density=10.3±0.1")
    answers = [probabilities(weigh(bench, *order)) for order in permutations(texts)]
    for other in answers[1:]:
        for key, p in answers[0].items():
            assert other[key] == pytest.approx(p, abs=0.02)


def test_density_alone_names_no_fineness(bench: CompositionBench) -> None:
    found = weigh(bench, "density=10.36±0.05")
    assert found.fineness is not None
    # 0.05 g/cm3 is 29 ‰ by the ideal rule, so 900, 925 and 950 all stay in view
    assert found.fineness.low <= 900
    assert found.fineness.high >= 950


def test_bad_entries_are_refused_with_what_and_how(bench: CompositionBench) -> None:
    with pytest.raises(QuantityError, match="no such test"):
        bench.weigh([Entry(test="xray", value=92.0)])
    with pytest.raises(QuantityError, match="no such reading"):
        bench.weigh([Entry(test="magnet", readings=("purple",))])


# -- the next test ------------------------------------------------------------------------------


def advice(
    bench: CompositionBench, adviser: TestAdviser, *texts: str, consent: bool = False
) -> Advice:
    return adviser.advise(weigh(bench, *texts), consent=consent)


HARMLESS_DONE = (
    "magnet=none", "look=same", "tarnish=black", "xrf=92.0±1@rim", "conductivity=95±4",
)  # fmt: skip


def test_harmless_tests_come_first(bench: CompositionBench, adviser: TestAdviser) -> None:
    for consent in (False, True):
        found = advice(bench, adviser, consent=consent)
        assert found.first is not None
        assert all(t.harm == 0.0 for t in found.advised)


def _harmful_alone(bench: CompositionBench, adviser: TestAdviser, *, consent: bool) -> Advice:
    """All tests that leave nothing are out of reach, so harm is the only way on."""
    gone = [t.id for t in bench.tests.values() if t.harm == 0.0]
    return adviser.advise(weigh(bench, "magnet=none"), without=gone, consent=consent)


def test_without_consent_no_harmful_test_is_advised(
    bench: CompositionBench, adviser: TestAdviser
) -> None:
    asked = _harmful_alone(bench, adviser, consent=False)
    assert not asked.advised
    assert any("consent" in t.held_back for t in asked.held_back)
    assert "consent" in asked.enough


def test_with_consent_a_harmful_test_carries_its_caution(
    bench: CompositionBench, adviser: TestAdviser
) -> None:
    given = _harmful_alone(bench, adviser, consent=True)
    assert given.advised
    for test in given.advised:
        assert test.harm > 0.0
        assert test.leaves
        if test.test in ("dichromate", "nitric"):
            assert "local law" in test.caution.lower() or "trained" in test.caution.lower()


def test_acids_carry_a_caution_in_the_library(bench: CompositionBench) -> None:
    for name in ("dichromate", "nitric"):
        caution = bench.tests[name].caution.lower()
        assert "trained" in caution
    assert "cancer" in bench.tests["dichromate"].caution.lower()


def test_a_test_worth_less_than_its_cost_is_held_back_and_says_so(
    bench: CompositionBench, adviser: TestAdviser
) -> None:
    found = advice(bench, adviser, *HARMLESS_DONE, "density=10.36±0.02", "assay=925±1")
    assert found.first is None
    assert "enough" in found.enough or "not settled" in found.enough
    assert all(t.held_back for t in found.held_back)


def test_a_test_that_cannot_be_made_is_not_advised(
    bench: CompositionBench, adviser: TestAdviser
) -> None:
    first = advice(bench, adviser).first
    assert first is not None
    left = adviser.advise(weigh(bench), without=[first.test])
    assert all(t.test != first.test for t in (*left.advised, *left.held_back))
