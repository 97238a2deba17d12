"""What a stone is: a finding over the library's materials.

Priors say how often a material is met on silver of that kind (common practice); each observation is a
line of the ledger; the law is that of ``evidence/finding.py``. Observations are taken as independent
given the material. The finding names a material; natural or synthetic, treated or not, is beyond it.
"""

import math
from collections.abc import Sequence

import msgspec

from planish.evidence import (
    SETTLED,
    Contradiction,
    Finding,
    Hypothesis,
    Ledger,
    LedgerLine,
    decibans,
    normalise,
    percent,
)
from planish.library import Library, load
from planish.library.stone_rows import GemTest, LookAlike, Material, chances
from planish.quantity import QuantityError
from planish.stones.law import Flag, restricted
from planish.stones.likelihood import OTHER, Clues, clues_of, likelihood
from planish.stones.names import find_material
from planish.stones.nexttest import NextTest, next_tests
from planish.stones.observation import Observation, find_test

#: share of stones on silver that the library does not hold (judgment)
_OTHER_SHARE = 0.03
#: of a material that is not listed for a kind of silver, against its frequency at large (judgment)
_UNLISTED = 0.1
#: from here on a material's look-alikes, limits and law are told
_TOLD = 0.05
_UNLIKELY = 0.05


class MaterialFinding(msgspec.Struct, frozen=True, kw_only=True):
    """The finding, what to do next, and what stays open.

    next_tests: best first; those that harm last. look_alikes: what is taken for the likeliest
    materials, and how it is told. limits: what this cannot tell. flags: law on materials that it may
    be. cautions: of the tests made. notes: what was assumed.
    """

    finding: Finding
    setting: str
    next_tests: tuple[NextTest, ...]
    look_alikes: tuple[LookAlike, ...]
    limits: tuple[str, ...]
    flags: tuple[Flag, ...]
    care: tuple[str, ...]
    cautions: tuple[str, ...]
    notes: tuple[str, ...]

    @property
    def best(self) -> Hypothesis:
        """The likeliest hypothesis."""
        return self.finding.hypotheses[0]

    @property
    def settled(self) -> bool:
        """Whether one material of the library stands out."""
        return self.best.key != OTHER and self.best.probability >= SETTLED


def settings(library: Library | None = None) -> tuple[str, ...]:
    """Kinds of silver for which priors are held."""
    found = {word for m in (library or load()).materials for word in chances(m.settings)}
    return tuple(sorted(found))


def priors(setting: str = "", library: Library | None = None) -> dict[str, float]:
    """Prior probability of each material on silver of one kind, or of any kind; they add up to 1.

    Raises:
        QuantityError: no such kind of silver.
    """
    library = library or load()
    wanted = ""
    if setting.strip():
        # "Arts and Crafts" and "Art Deco" are written as people write them
        flat = "".join(c for c in setting.lower() if c.isalpha())
        kinds = settings(library)
        wanted = next((k for k in kinds if flat.endswith(k)), "")
        if not wanted:
            fault = "no priors are held for that kind of silver"
            raise QuantityError("setting", setting, fault, f"use one of {', '.join(kinds)}")
    raw = {m.id: m.frequency for m in library.materials}
    if wanted:
        for m in library.materials:
            listed = chances(m.settings).get(wanted)
            raw[m.id] = listed if listed is not None else _UNLISTED * m.frequency
    total = math.fsum(raw.values())
    found = {name: (1.0 - _OTHER_SHARE) * share / total for name, share in raw.items()}
    return {**found, OTHER: _OTHER_SHARE}


def identify(
    observations: Sequence[Observation],
    *,
    setting: str = "",
    mounted: bool = False,
    claimed: str = "",
    ahead: bool = True,
    library: Library | None = None,
) -> MaterialFinding:
    """The materials that observations speak for.

    setting: kind of silver, for the priors. mounted: the stone stays in its setting, so that tests
    of loose stones are not proposed. claimed: what it is said to be, compared with the finding.
    ahead: also work out which test to make next, which takes most of the time.

    Raises:
        QuantityError: a test is given twice, or setting or claim is not known.
    """
    library = library or load()
    prior = priors(setting, library)
    claim = find_material(claimed, library) if claimed else None
    by_id = {m.id: m for m in library.materials}
    clues = clues_of(library)
    lines = tuple(_line(seen, find_test(seen.test, library), by_id, clues) for seen in observations)
    tests = [seen.test for seen in observations]
    twice = next((t for t in tests if tests.count(t) > 1), "")
    if twice:
        fault = "the test is given twice"
        raise QuantityError("observation", twice, fault, "give the mean, or the answer you trust")
    logs = {
        name: math.log(share)
        + math.fsum(line.likelihood_db[name] for line in lines) * math.log(10) / 10
        for name, share in prior.items()
    }
    after = dict(zip(logs, normalise(list(logs.values())), strict=True))
    ranked = sorted(after, key=lambda name: -after[name])
    finding = Finding(
        about="what the stone is",
        hypotheses=tuple(
            Hypothesis(
                key=name,
                label=by_id[name].name if name in by_id else "none of the materials on record",
                probability=after[name],
                prior=prior[name],
            )
            for name in ranked
        ),
        ledger=Ledger(lines),
        contradictions=tuple(_contradictions(observations, by_id, after, claim, library)),
    )
    told = [by_id[name] for name in ranked if name in by_id and after[name] >= _TOLD]
    done = {seen.test for seen in observations}
    return MaterialFinding(
        finding=finding,
        setting=setting,
        next_tests=next_tests(after, done, library, mounted=mounted) if ahead else (),
        look_alikes=_look_alikes(told, after, library),
        limits=_limits(told, library),
        flags=_flags(told, claim, library),
        care=tuple(f"{m.name}: {m.care}" for m in told if m.care),
        cautions=tuple(
            f"{test.label}: {test.caution}"
            for test in (find_test(seen.test, library) for seen in observations)
            if test.caution and test.harm != "none"
        ),
        notes=tuple(seen.assumed for seen in observations if seen.assumed),
    )


def _line(seen: Observation, test: GemTest, by_id: dict[str, Material], clues: Clues) -> LedgerLine:
    rows: dict[str, Material | None] = {**by_id, OTHER: None}
    db = {n: decibans(math.log(likelihood(seen, test, row, clues))) for n, row in rows.items()}
    top = max(db.values())
    return LedgerLine(
        key=seen.test,
        observed=seen.shown,
        because=_because(seen, db, by_id),
        likelihood_db={name: value - top for name, value in db.items()},
        sources=tuple(dict.fromkeys((*test.sources, *_figures_from(seen, db, by_id)))),
    )


def _figures_from(seen: Observation, db: dict[str, float], by_id: dict[str, Material]) -> list[str]:
    """Sources of the figures that a measured figure is compared with."""
    if seen.test not in ("sg", "ri"):
        return []
    return [source for name in _best(db, by_id) for source in by_id[name].sources]


def _best(db: dict[str, float], by_id: dict[str, Material]) -> list[str]:
    """The three materials that an observation fits best."""
    return sorted((n for n in db if n in by_id), key=lambda n: (-round(db[n], 1), n))[:3]


def _because(seen: Observation, db: dict[str, float], by_id: dict[str, Material]) -> str:
    """Which materials it fits best, and their own figures."""
    best = _best(db, by_id)
    if seen.test == "sg":
        said = [f"{by_id[n].name} {by_id[n].sg_low:g}-{by_id[n].sg_high:g}" for n in best]
    elif seen.test == "ri":
        said = [
            f"{by_id[n].name}"
            + (f" {by_id[n].ri_low:g}-{by_id[n].ri_high:g}" if by_id[n].ri_low else "")
            for n in best
        ]
    else:
        alike = sum(db[n] > max(db.values()) - 1.0 for n in db)
        if alike > len(best):
            return f"fits {alike} of {len(db) - 1} materials alike"
        said = [by_id[n].name for n in best]
    return f"fits best: {', '.join(said)}"


def _contradictions(
    observations: Sequence[Observation],
    by_id: dict[str, Material],
    after: dict[str, float],
    claim: Material | None,
    library: Library,
) -> list[Contradiction]:
    found = []
    if claim is not None and observations and after[claim.id] < _UNLIKELY:
        says = f"said to be {claim.name}; the observations leave it {percent(after[claim.id])}"
        found.append(Contradiction(between=(claim.id, *(o.test for o in observations)), says=says))
    best = max(after, key=lambda n: after[n])
    clues = clues_of(library)
    for seen in observations:
        test = find_test(seen.test, library)
        rivals = [by_id[best]] if best in by_id else list(by_id.values())
        own = max(likelihood(seen, test, row, clues) for row in rivals)
        # then two thirds of its chance and more come from the test's own error
        if own < 1.5 * test.error * likelihood(seen, test, None, clues):
            fits = f"does not fit {rivals[0].name}, the likeliest by all"
            says = f"{seen.shown} {fits if best in by_id else 'fits no material on record'}"
            found.append(Contradiction(between=(seen.test, best), says=says))
    return found


def _look_alikes(
    told: list[Material], after: dict[str, float], library: Library
) -> tuple[LookAlike, ...]:
    """Imitations of the likeliest materials, and of what they imitate, the likeliest first."""
    ids = {m.id for m in told}
    found = [
        look
        for look in library.lookalikes
        if look.tell and (look.material in ids or look.other in ids)
    ]
    weight = {look.id: after.get(look.material, 0.0) + after.get(look.other, 0.0) for look in found}
    return tuple(sorted(found, key=lambda look: -weight[look.id]))


def _limits(told: list[Material], library: Library) -> tuple[str, ...]:
    names = {m.id: m.name for m in library.materials}
    out = []
    for m in told:
        for look in library.lookalikes:
            if look.material == m.id and look.limits:
                other = names.get(look.other, look.other)
                out.append(f"{m.name}, or {other} ({look.kind}): {look.limits}")
    out.append("natural or grown in a laboratory, treated or not: a gem laboratory decides")
    return tuple(out)


def _flags(told: list[Material], claim: Material | None, library: Library) -> tuple[Flag, ...]:
    found: dict[str, Flag] = {}
    for m in (*told, *((claim,) if claim else ())):
        for flag in restricted(m.id, library=library):
            found.setdefault(flag.id, flag)
    return tuple(found.values())
