"""The metal cases of cases.py: what a piece is made of, and how much of it is silver.

The marks and the form go to the reading, what is told beside them to the test log
(``planish.metal.testlog_words``); nothing of a case is kept here. Compared are the kind, the fineness,
the share of silver in filled pieces against the rules of thumb, the payout, and for cases that ask how
a thing is tested, whether the tests on record are among those named. Where nothing was seen, the right
answer stops short.
"""

import re
from collections.abc import Iterable
from decimal import Decimal
from typing import Any, NamedTuple

from planish.case.claims import claims_of
from planish.marks import describe, shipped_reader
from planish.metal import ALLOWANCES, PAYOUT_LEVELS, Allowance
from planish.metal.composition import CompositionFinding, shipped_composition_bench
from planish.metal.composition_next import TestAdviser
from planish.metal.testlog_words import entries_of
from planish.quantity import Mass

#: as in cases.py: said at two thirds; stopping short is staying below 80 %
_SAID = 0.66
_SHORT = 0.8
#: words of a case -> tests that must be among those named
_ASKED = {
    "seam": "edges", "tinned": "inside", "applied edge": "edges", "x-ray": "xrf", "assay": "assay",
}  # fmt: skip
#: words of a form -> rule of thumb for the silver in it
_RULES = {"candelabr": "candelabrum", "candlestick": "candlestick-low"}


class Said(NamedTuple):
    """One field: what came out, and why."""

    field: str
    verdict: str
    why: str


def weighed(case: dict[str, Any], described: str) -> CompositionFinding:
    """The finding of a case: claims of its marks, tests told in its remarks."""
    told = ". ".join(t for t in (case.get("situation"), case.get("other_observations")) if t)
    read = shipped_reader().read(describe(described, case["form"]), case["form"])
    claims = claims_of(read) if case["observed_marks"] else ()
    return shipped_composition_bench().weigh(entries_of(told), claims)


def compare(case: dict[str, Any], found: CompositionFinding) -> Iterable[Said]:
    """The fields of a case that its answer settles."""
    answer = case["established_answer"]
    yield from _kind(answer, found)
    yield from _fineness(answer, found)
    yield from _share(case)
    yield from _payout(case)
    yield from _tests(case, found)
    kind, p = found.kinds[0]
    if not found.weighed and not found.claims:
        verdict = "disagreed" if p >= _SHORT else "agreed"
        yield Said("stops short", verdict, f"nothing was seen; likeliest {kind} {p:.0%}")
    elif "lead" in str(answer.get("note", "")).casefold():
        right = "agreed" if kind == "filled" else "disagreed"
        verdict = right if p >= _SAID else "silent"
        yield Said("kind", verdict, f"{kind} {p:.0%}; on record lead inside")


def _kind(answer: dict[str, Any], found: CompositionFinding) -> Iterable[Said]:
    words = str(answer.get("solid_or_plated", "")).casefold()
    if not words:
        return
    if "fill" in words:
        right = {"filled"}
    elif any(w in words for w in ("plated", "silvered", "electrotype")):
        right = {"plated"}
    elif "alloy" in words or "base" in words:
        right = {"base", "plated"}
    else:
        right = {"solid"}
    held = sum(p for k, p in found.kinds if k in right)
    kind, p = found.kinds[0]
    both = f", {' or '.join(sorted(right))} {held:.0%}" if len(right) > 1 else ""
    verdict = "agreed" if held >= _SAID else "disagreed" if p >= _SAID else "silent"
    yield Said("kind", verdict, f"{kind} {p:.0%}{both}; on record {words}")


def _fineness(answer: dict[str, Any], found: CompositionFinding) -> Iterable[Said]:
    fine = answer.get("fineness")
    if not isinstance(fine, int | float):
        return
    none = sum(p for k, p in found.kinds if k in ("base", "plated"))
    if fine < 100:
        told = f"no silver right through {none:.0%}"
        verdict = "agreed" if none >= _SAID else "disagreed" if 1 - none >= _SAID else "silent"
    elif found.fineness is None:
        told, verdict = "none stated", "silent"
    else:
        f = found.fineness
        told = f"{f.middle:g} ({f.low:g} to {f.high:g})"
        verdict = "agreed" if f.low <= fine <= f.high else "disagreed"
    yield Said("fineness", verdict, f"{told}; on record {fine:g}")


def _rule(form: str) -> Allowance | None:
    """The rule of thumb for a form."""
    key = next((k for w, k in _RULES.items() if w in form.casefold()), None)
    return next((a for a in ALLOWANCES if a.id == key), None)


def _share(case: dict[str, Any]) -> Iterable[Said]:
    told = re.findall(r"(\d+(?:\.\d+)?) oz", case.get("other_observations") or "")
    rule = _rule(case["form"])
    if len(told) != 2 or rule is None:
        return
    gross, silver = max(map(Decimal, told)), min(map(Decimal, told))
    # shares have no unit, so grams stand for whichever ounces these are
    low, high = (float(m.grams) for m in rule.silver(Mass.of(gross)))
    verdict = "agreed" if low <= silver <= high else "disagreed"
    yield Said("silver", verdict, f"{low:.2f} to {high:.2f} oz by {rule.id}; on record {silver}")


def _payout(case: dict[str, Any]) -> Iterable[Said]:
    """What a refiner would pay for what is told, at the price told."""
    words = str(case["established_answer"].get("value", ""))
    paid = re.search(r"USD (\d+)", words)
    price = re.search(r"at USD (\d+) per troy", words)
    ounces = re.search(r"(\d+\.\d+) troy oz", case.get("other_observations") or "")
    standard = case["established_answer"].get("fineness")
    if not (paid and price and ounces and standard):
        return
    metal = float(ounces[1]) * standard / 1000 * float(price[1])
    level = next(lv for lv in PAYOUT_LEVELS if "small" in lv.buyer)
    low, high = metal * float(level.low), metal * float(level.high)
    verdict = "agreed" if low <= float(paid[1]) <= high else "disagreed"
    told = f"metal {metal:.2f}, {low:.2f} to {high:.2f} from a refiner"
    yield Said("payout", verdict, f"{told}; on record {paid[1]}")


def _tests(case: dict[str, Any], found: CompositionFinding) -> Iterable[Said]:
    """Where the case asks how to test: the tests named."""
    told = (case.get("other_observations") or "").casefold()
    if not re.search(r"\blooks? for\b|\bmethods?\b", told):
        return
    wanted = sorted({test for word, test in _ASKED.items() if word in told})
    advice = TestAdviser(shipped_composition_bench()).advise(found)
    named = {t.test for t in (*advice.advised, *advice.held_back)}
    verdict = "agreed" if set(wanted) <= named else "silent"
    hit = ", ".join(sorted(named & set(wanted))) or "none"
    yield Said("tests", verdict, f"named {hit}; on record {', '.join(wanted)}")
