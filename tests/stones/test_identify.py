import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.evidence import likelihood_ratio
from planish.library import load
from planish.quantity import QuantityError
from planish.stones import MaterialFinding, identify, observe, priors, settings
from planish.stones.likelihood import OTHER


def seen(*texts: str, **more: object) -> MaterialFinding:
    return identify([observe(t) for t in texts], ahead=False, **more)  # type: ignore[arg-type]


def chance(found: MaterialFinding, *names: str) -> float:
    return math.fsum(h.probability for h in found.finding.hypotheses if h.key in names)


TEXTS = [
    "sg=2.65±0.02", "ri=1.54", "colour=blue", "lustre=waxy", "transparency=opaque",
    "loupe=bubbles", "feel=warm", "uv=none", "float=sinks", "magnet=nothing", "scratch=not",
]  # fmt: skip


@given(st.lists(st.sampled_from(TEXTS), unique=True), st.sampled_from(["", *settings()]))
def test_the_probabilities_follow_from_what_is_printed(texts: list[str], setting: str) -> None:
    finding = seen(*texts, setting=setting).finding

    # apart from Finding.recomputed: priors times powers of ten
    weights = {
        h.key: h.prior
        * math.prod(likelihood_ratio(line.likelihood_db[h.key]) for line in finding.ledger.lines)
        for h in finding.hypotheses
    }
    total = math.fsum(weights.values())
    for h in finding.hypotheses:
        assert h.probability == pytest.approx(weights[h.key] / total, rel=1e-6, abs=1e-12)
        assert finding.recomputed()[h.key] == pytest.approx(h.probability, abs=1e-9)
    assert math.fsum(h.probability for h in finding.hypotheses) == pytest.approx(1.0)


@given(st.permutations(TEXTS[:5]))
def test_the_order_of_observations_does_not_matter(texts: list[str]) -> None:
    one, other = seen(*texts), seen(*sorted(texts))

    assert one.best.key == other.best.key
    assert one.best.probability == pytest.approx(other.best.probability)


def test_without_observations_the_priors_stand() -> None:
    found = seen(setting="southwest")

    assert {h.key: h.probability for h in found.finding.hypotheses} == pytest.approx(
        priors("southwest")
    )
    assert found.best.key == "turquoise"
    assert not found.settled


# Limits of identification as the handbooks tell them (facts, stones_formulas.md, section 4).
@pytest.mark.parametrize(
    ("texts", "more_likely", "than"),
    [
        # amber floats in saturated salt water, Bakelite, celluloid and casein sink
        (["colour=yellow", "float=floats"], "amber", ("bakelite", "celluloid", "casein")),
        (["colour=yellow", "float=sinks", "feel=warm"], "bakelite", ("amber", "copal")),
        # jet is warm and light, black glass cold and heavy
        (["colour=black", "feel=warm", "sg=1.32±0.03"], "jet", ("french-jet", "onyx", "vulcanite")),
        (["colour=black", "feel=cold", "sg=2.5±0.03"], "french-jet", ("jet", "vulcanite")),
        # turquoise against what imitates it, by gravity and index
        (["colour=blue", "sg=2.76±0.04", "ri=1.61"], "turquoise",
         ("variscite", "howlite-dyed", "magnesite-dyed", "plastic-turquoise")),
        (["colour=green", "sg=2.50±0.03", "ri=1.57"], "variscite", ("turquoise",)),
        # paste is heavier and reads higher than quartz
        (["colour=colourless", "ri=1.544-1.553", "sg=2.65±0.02"], "quartz-rock",
         ("paste-lead", "glass-crown", "topaz")),
        (["colour=colourless", "ri=1.63", "sg=3.6±0.05", "optic=single"], "paste-lead",
         ("quartz-rock",)),
        # ivory shows crossing lines, bone dots and canals, celluloid straight lines
        (["colour=white", "loupe=cross-lines"], "ivory", ("bone", "celluloid", "tagua")),
        (["colour=white", "loupe=pits"], "bone", ("ivory", "celluloid")),
        (["colour=white", "loupe=straight-grain", "sg=1.38±0.05"], "celluloid", ("ivory", "bone")),
        # cubic zirconia is far heavier than diamond; only diamond passes a heat probe
        (["colour=colourless", "ri=over", "sg=5.8±0.1"], "cz", ("diamond", "zircon")),
        (["colour=colourless", "ri=over", "probe=diamond"], "diamond", ("cz", "zircon", "yag")),
        # cut steel is drawn by a magnet
        (["lustre=metallic", "colour=grey", "magnet=drawn"], "cut-steel", ("pyrite-marcasite",)),
        (["lustre=metallic", "colour=brassy", "magnet=nothing"], "pyrite-marcasite",
         ("cut-steel", "hematite")),
    ],
)  # fmt: skip
def test_what_handbooks_tell_apart(
    texts: list[str], more_likely: str, than: tuple[str, ...]
) -> None:
    found = seen(*texts)

    assert all(chance(found, more_likely) > 3 * chance(found, rival) for rival in than)


def test_the_table_figures_of_a_material_do_not_speak_against_it() -> None:
    # less than 3 dB, which a span as wide as that of plastics may cost
    for row in load().materials:
        texts = [f"sg={row.sg}±0.03"]
        if row.ri_low is not None and row.ri_high is not None and row.ri_high < 1.8:
            texts.append(f"ri={(row.ri_low + row.ri_high) / 2:.3f}")
        finding = seen(*texts).finding
        for line in finding.ledger.lines:
            assert finding.ledger.weight(line, row.id, finding.hypotheses) > -3.0, (row.id, texts)


def test_quartz_of_any_colour_is_told_by_colour_alone() -> None:
    # one mineral: gravity and index cannot part amethyst from citrine
    found = seen("sg=2.65±0.02", "ri=1.544-1.553")

    assert chance(found, "amethyst", "citrine", "quartz-rock", "smoky", "rose-quartz") > 0.7
    assert not found.settled
    assert seen("sg=2.65±0.02", "ri=1.544-1.553", "colour=purple").best.key == "amethyst"


def test_nothing_on_record_is_an_answer() -> None:
    found = seen("sg=9.5±0.1")

    assert found.best.key == OTHER
    assert not found.settled
    assert "fits no material on record" in found.finding.contradictions[0].says


def test_two_observations_that_no_material_joins_are_a_contradiction() -> None:
    found = seen("colour=colourless", "ri=1.544-1.553", "sg=4.0±0.03")

    assert any(
        "does not fit" in c.says or "fits no" in c.says for c in found.finding.contradictions
    )


def test_a_claim_that_the_observations_rule_out_is_a_contradiction() -> None:
    found = seen("colour=honey", "sg=1.28±0.02", claimed="amber")
    fits = seen("colour=honey", "sg=1.08±0.02", claimed="amber")

    assert any("said to be amber" in c.says for c in found.finding.contradictions)
    assert fits.finding.contradictions == ()


def test_a_claim_alone_is_contradicted_by_nothing() -> None:
    assert seen(claimed="conch pearl").finding.contradictions == ()


def test_a_wide_uncertainty_tells_less() -> None:
    sharp, blunt = (seen(f"sg=2.76±{u}", "colour=blue") for u in (0.03, 0.6))

    assert chance(sharp, "turquoise") > chance(blunt, "turquoise")


def test_treatments_are_left_to_a_laboratory() -> None:
    found = seen("sg=2.76±0.04", "ri=1.62", "colour=blue", "lustre=waxy", "loupe=matrix")

    assert found.best.key == "turquoise"
    assert any("laboratory" in limit for limit in found.limits)
    assert any("howlite" in look.other for look in found.look_alikes)


def test_protected_materials_carry_their_law() -> None:
    assert {"uk-ivory", "us-ivory-ban"} <= {f.id for f in seen("loupe=schreger").flags}
    assert {"cites-turtle"} <= {f.id for f in seen("colour=blue", claimed="tortoiseshell").flags}


def test_harm_of_a_test_that_was_made_is_said() -> None:
    assert "harms" in seen("hotpoint=pine").cautions[0]


def test_what_was_not_written_is_told() -> None:
    assert seen("sg=2.76").notes == ("± 0.05 assumed for the specific gravity",)


def test_a_test_given_twice_is_refused() -> None:
    with pytest.raises(QuantityError, match="given twice"):
        seen("colour=blue", "color=green")


def test_an_unknown_kind_of_silver_is_refused() -> None:
    with pytest.raises(QuantityError, match="use one of artsandcrafts"):
        seen("colour=blue", setting="martian")


def test_settings_are_read_in_peoples_spelling() -> None:
    assert priors("Arts and Crafts") == priors("artsandcrafts")
    assert priors("Art Deco") == priors("deco")


def test_the_weights_of_lines_are_those_of_the_ledger() -> None:
    finding = seen("sg=2.76±0.05", "colour=blue").finding
    rivals = finding.hypotheses[1:]
    for line in finding.ledger.lines:
        mean = math.fsum(
            r.prior * likelihood_ratio(line.likelihood_db[r.key]) for r in rivals
        ) / math.fsum(r.prior for r in rivals)
        own = likelihood_ratio(line.likelihood_db[finding.hypotheses[0].key])
        weight = finding.ledger.weight(line, finding.hypotheses[0].key, finding.hypotheses)
        assert weight == pytest.approx(10 * math.log10(own / mean))
