import math

from planish.library import load
from planish.stones import identify, observe, priors
from planish.stones.nexttest import LOOSE, next_tests

LIBRARY = load()


def seen(*texts: str, **more: object) -> list[str]:
    found = identify([observe(t) for t in texts], **more)  # type: ignore[arg-type]
    return [t.test for t in found.next_tests]


def test_harmful_tests_come_after_all_that_do_no_harm() -> None:
    order = [t.harm == "harm" for t in next_tests(priors(), set(), LIBRARY) if not t.withheld]

    assert order == sorted(order)
    assert True in order
    assert False in order


def test_a_test_that_harms_says_so() -> None:
    for t in next_tests(priors(), set(), LIBRARY):
        assert t.harm != "harm" or "harms" in t.caution


def test_a_hot_point_is_withheld_where_the_stone_may_be_celluloid() -> None:
    white = identify([observe("colour=white"), observe("feel=warm")])
    hot = next(t for t in white.next_tests if t.test == "hotpoint")

    assert "bursts into flame" in hot.withheld
    assert white.next_tests[-1].withheld


def test_a_liquid_that_may_harm_the_stone_is_told_and_counts() -> None:
    blue = identify([observe("colour=blue"), observe("lustre=waxy")], setting="southwest")
    gravity = next(t for t in blue.next_tests if t.test == "sg")

    assert "liquids may harm turquoise" in gravity.caution
    assert gravity.harm == "slight"


def test_no_test_is_proposed_twice_and_none_of_a_loose_stone_for_a_mounted_one() -> None:
    assert "colour" not in seen("colour=blue")
    assert not LOOSE & set(seen("colour=blue", mounted=True))


def test_light_is_not_sent_through_what_is_opaque() -> None:
    assert "optic" not in seen("transparency=opaque", "lustre=metallic")


def test_information_is_what_the_outcomes_would_change() -> None:
    # a magnet on marcasite or cut steel: mutual information worked out by hand
    after = dict.fromkeys(priors(), 0.0)
    after |= {"pyrite-marcasite": 0.5, "cut-steel": 0.5}
    magnet = next(t for t in next_tests(after, set(), LIBRARY) if t.test == "magnet")
    error = 0.03
    steel = (1 - error) * 0.98 + error / 2
    marcasite = (1 - error) * 0.002 + error / 2
    drawn = (steel + marcasite) / 2

    def entropy(p: float) -> float:
        return -p * math.log2(p) - (1 - p) * math.log2(1 - p)

    expected = entropy(drawn) - (entropy(steel) + entropy(marcasite)) / 2
    assert abs(magnet.information_bits - expected) < 1e-6
    assert magnet.outcomes[0].then in ("cut steel", "marcasite (pyrite)")


def test_a_settled_stone_needs_little_more() -> None:
    open_, settled = (
        identify([observe(t) for t in texts]).next_tests
        for texts in (["colour=purple"], ["colour=purple", "ri=1.544-1.553", "sg=2.65±0.02"])
    )

    assert max((t.information_bits for t in settled), default=0.0) < max(
        t.information_bits for t in open_
    )
