"""The part of the library's self-check that is about stones; see ``library/check.py``."""

import re
from collections import Counter
from collections.abc import Iterator

from planish.library.loader import Library
from planish.library.stone_rows import Clue, Material, chances

#: how much a test harms, and who can make it
HARMS = ("none", "slight", "harm")
WHO = ("anyone", "loupe", "gemmologist")
CUT_KINDS = ("faceted", "cabochon", "old", "solid")
LOOK_KINDS = ("imitation", "treatment", "synthetic", "composite")
#: what may stand in a factor's rule beside the measurements
MEAN = "mean"
LIMIT = re.compile(r"[a-z ]+(?:<=|>=|<)\d[\d.-]*(?: (?:%|g|kg|cm2|years))?")


def _words(text: str, answers: set[str]) -> Iterator[str]:
    """What is wrong with a list of chances."""
    try:
        found = chances(text)
    except ValueError:
        yield f"{text!r} is not word=number"
        return
    if not found or min(found.values()) < 0 or sum(found.values()) <= 0:
        yield f"{text!r} has no figure above 0"
    for word in found.keys() - answers:
        yield f"{word} is no answer of the test"


def materials(library: Library) -> Iterator[str]:
    """A material's figures lie in order, and its looks are answers of the tests of that name."""
    answers = {t.id: set(t.answers) for t in library.gemtests}
    for row in library.materials:
        yield from (f"materials {row.id}: {fault}" for fault in _figures(row))
        for column in ("colour", "lustre", "transparency"):
            for fault in _words(getattr(row, column), answers[column]):
                yield f"materials {row.id}: {column}: {fault}"


def _figures(row: Material) -> Iterator[str]:
    if not 0.0 < row.sg_low <= row.sg <= row.sg_high:
        yield f"gravity {row.sg:g} is outside its limits"
    if (row.ri_low is None) != (row.ri_high is None):
        yield "one end of the refractive index is missing"
    elif row.ri_low is not None and row.ri_high is not None and not 1.0 < row.ri_low <= row.ri_high:
        yield f"index {row.ri_low:g} to {row.ri_high:g} is out of order"
    try:
        low, high = row.mohs
    except ValueError:
        yield f"hardness {row.hardness} is no figure"
    else:
        if not 1.0 <= low <= high <= 10.0:
            yield f"hardness {row.hardness} is not between 1 and 10"
    try:
        shares = chances(row.settings)
    except ValueError:
        shares = {"": -1.0}
    if row.frequency <= 0.0 or min(shares.values(), default=1.0) <= 0.0:
        yield "a frequency is not above 0"


def cuts(library: Library) -> Iterator[str]:
    """Every cut has its constant, every constant its cut, and rules are made of what is measured."""
    known = {cut.id: cut for cut in library.cuts}
    first = Counter((f.cut, f.sg) for f in library.factors if f.rank == 1)
    for cut in library.cuts:
        if cut.kind not in CUT_KINDS:
            yield f"cuts {cut.id}: unknown kind {cut.kind}"
        if not 0.0 < cut.spread < 1.0:
            yield f"cuts {cut.id}: spread {cut.spread:g} is not between 0 and 1"
        if first[cut.id, None] != 1:
            yield f"cuts {cut.id}: needs one factor of rank 1 for any material"
        if (cut.depth_low or 0.0) > (cut.depth_high or 0.0):
            yield f"cuts {cut.id}: depths are out of order"
    for factor in library.factors:
        if factor.cut not in known:
            yield f"factors {factor.id}: cut {factor.cut} does not exist"
            continue
        measured = set(known[factor.cut].measured)
        measured |= {MEAN} if {"length", "width"} <= measured else set()
        for part in factor.rule.split("*"):
            word, _, power = part.partition("^")
            if word not in measured or power not in ("", "2", "3"):
                yield f"factors {factor.id}: {part} is not measured"
        if not factor.factor > 0.0:
            yield f"factors {factor.id}: factor {factor.factor:g} is not above 0"


def gem_tests(library: Library) -> Iterator[str]:
    """Words of a fixed list are of that list; a test that harms has its caution."""
    for test in library.gemtests:
        if test.harm not in HARMS:
            yield f"gemtests {test.id}: unknown word {test.harm} for harm"
        if test.who not in WHO:
            yield f"gemtests {test.id}: unknown word {test.who} for who"
        if test.harm == "harm" and "harms" not in test.caution:
            yield f"gemtests {test.id}: harms, and its caution does not say so"
        if not 0.0 < test.error < 1.0:
            yield f"gemtests {test.id}: error {test.error:g} is not between 0 and 1"


def clues(library: Library) -> Iterator[str]:
    """A clue is about a test and a material that exist, and stands once."""
    answers = {t.id: set(t.answers) for t in library.gemtests}
    targets = {m.id for m in library.materials} | {m.kind for m in library.materials} | {"*"}
    for (test, target), times in Counter((c.test, c.target) for c in library.clues).items():
        if times > 1:
            yield f"clues {test} {target}: stands {times} times"
    for clue in library.clues:
        yield from (f"clues {clue.test} {clue.target}: {f}" for f in _of(clue, answers, targets))


def _of(clue: Clue, answers: dict[str, set[str]], targets: set[str]) -> Iterator[str]:
    if clue.test not in answers:
        yield "no such test"
        return
    if clue.target not in targets:
        yield "no material or kind of that name"
    yield from _words(clue.chances, answers[clue.test])


def stone_references(library: Library) -> Iterator[str]:
    """Look-alikes and rules of law are about materials that exist; limits can be read."""
    known = {m.id for m in library.materials}
    for look in library.lookalikes:
        if look.material not in known:
            yield f"lookalikes {look.id}: material {look.material} does not exist"
        if look.kind not in LOOK_KINDS:
            yield f"lookalikes {look.id}: unknown kind {look.kind}"
    for rule in library.protections:
        for material in rule.about:
            if material not in known:
                yield f"protections {rule.id}: material {material} does not exist"
        for limit in filter(None, (part.strip() for part in rule.limits.split(";"))):
            if not LIMIT.fullmatch(limit):
                yield f"protections {rule.id}: limit {limit!r} cannot be read"


CHECKS = (materials, cuts, gem_tests, clues, stone_references)
