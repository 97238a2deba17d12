"""Which test to make next: what it would settle, against what it would harm.

Expected information is the mutual information of a test's answer and the material, in bits (Shannon
1948). A test that harms is told last and with its caution, and one that is dangerous on what the
stone may be (a hot point on celluloid) is withheld.
"""

import math
from collections.abc import Iterator, Mapping

import msgspec

from planish.library import Library
from planish.library.stone_rows import GemTest, Material, chances
from planish.stones.likelihood import OTHER, Clues, clues_of, likelihood
from planish.stones.observation import EDGE_U, OVER, SG_U, SPOT_U, Observation

#: what a test costs against a look, by who can make it and by its harm (judgment)
_COST = {"anyone": 1.0, "loupe": 1.0, "gemmologist": 1.4}
_HARM_COST = {"none": 1.0, "slight": 2.0, "harm": 5.0}
_ORDER = {"none": 0, "slight": 0, "harm": 1}
#: less than this is not worth the time
_LEAST_BITS = 0.02
#: tests for which a stone must be loose
LOOSE = frozenset({"sg", "float", "tooth", "static"})
#: tests that need light through the stone, not made where it is likelier than this to be opaque
_THROUGH, _OPAQUE = frozenset({"optic"}), 0.6
#: words of a material's care that speak against a test's liquid
_WATER = ("liquid", "water", "dry", "wet", "soak", "joined")
_SPIRIT = (*_WATER, "solvent", "spirit", "dye")
_LIQUIDS = {"sg": _WATER, "float": _WATER, "ri": _SPIRIT, "acetone": _SPIRIT}
#: from this chance on that a liquid harms the stone, a test counts as one that may mark it
_RISK, _RISK_COST = 0.3, 3.0
_DOUBT = 0.05
_DANGER = 0.005
#: materials on which a test is dangerous
_DANGEROUS = {"hotpoint": frozenset({"celluloid"})}
_SHOWN_CHANCE = 0.1


class Outcome(msgspec.Struct, frozen=True, kw_only=True):
    """One answer: how likely it is, and what the stone then most likely is."""

    answer: str
    chance: float
    then: str
    probability: float


class NextTest(msgspec.Struct, frozen=True, kw_only=True):
    """A test not made yet.

    information_bits: that it is expected to give. harm: none, slight, harm. who: anyone, loupe,
    gemmologist. withheld: why it must not be made on this stone; blank if it may.
    """

    test: str
    label: str
    information_bits: float
    harm: str
    who: str
    how: str
    caution: str
    outcomes: tuple[Outcome, ...]
    withheld: str = ""
    sources: tuple[str, ...] = ()


def next_tests(
    after: Mapping[str, float], done: set[str], library: Library, *, mounted: bool = False
) -> tuple[NextTest, ...]:
    """Tests not made yet, best first: by information against cost; harmful ones after all others.

    after: probability of each material's id.
    """
    found, worth, clues = [], dict[str, float](), clues_of(library)
    opaque = math.fsum(
        after[m.id] * answers.get("opaque", 0.0) / math.fsum(answers.values())
        for m in library.materials
        for answers in [chances(m.transparency)]
    )
    for test in library.gemtests:
        if test.id in done or (mounted and test.id in LOOSE):
            continue
        if test.id in _THROUGH and opaque > _OPAQUE:
            continue
        bits, outcomes = _information(test, after, library, clues)
        if bits < _LEAST_BITS:
            continue
        hurt = _hurt(test, after, library)
        risk = math.fsum(after[m.id] for m in hurt) >= _RISK
        names = ", ".join(m.name for m in hurt[:3])
        warned = f"liquids may harm {names}" if hurt else ""
        found.append(
            NextTest(
                test=test.id,
                label=test.label,
                information_bits=bits,
                harm="slight" if risk and test.harm == "none" else test.harm,
                who=test.who,
                how=test.how,
                caution="; ".join(part for part in (warned, test.caution) if part),
                outcomes=outcomes,
                withheld=_withheld(test, after, library),
                sources=test.sources,
            )
        )
        cost = _COST[test.who] * _HARM_COST[test.harm] * (_RISK_COST if risk else 1.0)
        worth[test.id] = bits / cost
    return tuple(sorted(found, key=lambda t: (bool(t.withheld), _ORDER[t.harm], -worth[t.test])))


def _answers(test: GemTest) -> Iterator[tuple[str, Observation, float]]:
    """Every answer with what a density must be multiplied with."""
    if test.id == "sg":
        for i in range(9, 80):
            at = i / 10
            seen = Observation(test="sg", low=at, high=at, u=SG_U, shown=f"about {at:g}")
            yield f"about {at:g}", seen, 0.1
    elif test.id == "ri":
        for i in range(135, 181):
            at = i / 100
            u = math.hypot(SPOT_U, EDGE_U)
            seen = Observation(test="ri", low=at, high=at, u=u, shown=f"about {at:g}")
            yield f"about {at:.2f}", seen, 0.01 * 0.8
        yield OVER, Observation(test="ri", answer=OVER, shown="over the scale"), 1.0
    else:
        for answer in test.answers:
            yield answer, Observation(test=test.id, answer=answer, shown=answer), 1.0


def _information(
    test: GemTest, after: Mapping[str, float], library: Library, clues: Clues
) -> tuple[float, tuple[Outcome, ...]]:
    rows = {m.id: m for m in library.materials}
    # what has next to no probability gives next to no information
    kept = {name: p for name, p in after.items() if p > 1e-5}
    table = {
        answer: {n: width * likelihood(seen, test, rows.get(n), clues) for n in kept}
        for answer, seen, width in _answers(test)
    }
    # answers of one material add up to one
    totals = {n: math.fsum(row[n] for row in table.values()) for n in kept}
    bits, outcomes = 0.0, []
    whole = math.fsum(kept.values())
    for answer, row in table.items():
        joint = {n: kept[n] / whole * row[n] / totals[n] for n in kept}
        chance = math.fsum(joint.values())
        for n, both in joint.items():
            if both > 0.0:
                bits += both * math.log2(both / (chance * kept[n] / whole))
        then = max(joint, key=lambda n: joint[n])
        name = rows[then].name if then != OTHER else "none of the materials on record"
        outcomes.append(
            Outcome(answer=answer, chance=chance, then=name, probability=joint[then] / chance)
        )
    outcomes.sort(key=lambda o: -o.chance)
    shown = [o for o in outcomes if o.chance >= _SHOWN_CHANCE] or outcomes[:2]
    return bits, tuple(shown[:4])


def _hurt(test: GemTest, after: Mapping[str, float], library: Library) -> list[Material]:
    """Materials that the stone may be and that the test's liquid harms, the likeliest first."""
    words = _LIQUIDS.get(test.id, ())
    hurt = [
        m
        for m in library.materials
        if after.get(m.id, 0.0) >= _DOUBT and any(w in m.care for w in words)
    ]
    return sorted(hurt, key=lambda m: -after[m.id])


def _withheld(test: GemTest, after: Mapping[str, float], library: Library) -> str:
    danger = _DANGEROUS.get(test.id, frozenset())
    names = [m.name for m in library.materials if m.id in danger and after[m.id] >= _DANGER]
    return f"not on what may be {', '.join(names)}: it bursts into flame" if names else ""
