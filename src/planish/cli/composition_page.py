"""A composition finding for the terminal and as plain data for JSON."""

from collections.abc import Iterable

from planish.cli.terminal import heading, percent, prose, table, tint
from planish.cli.wording import UNPRINTED
from planish.evidence import SETTLED, in_words
from planish.metal.composition import KINDS, CompositionBench, CompositionFinding, described
from planish.metal.composition_next import Advice, NextTest
from planish.metal.composition_prior import Claim

_RIVALS = 6
_LEAST_SHOWN = 0.01
_NEXT = 4
_HELD = 4
_OUTCOMES = 5
#: no caution is left out: these also stand where such a test is only advised
ACIDS = (
    "Acids: for trained persons only. No reagent is to be mixed or made from what stands here. Local"
    " law on dangerous substances, waste and the owner's property decides."
)


def page(found: CompositionFinding, advice: Advice, bench: CompositionBench) -> list[str]:
    """The lines of the page, at most 80 columns wide."""
    lines = _verdict(found)
    lines += _rivals(found)
    lines += _contradictions(found)
    lines += _ledger(found)
    lines += _log(found, bench)
    lines += _next(advice)
    lines += _cautions(found, advice)
    lines += _sources(found, advice, bench)
    return lines


def _verdict(found: CompositionFinding) -> list[str]:
    kind, chance = found.kinds[0]
    best = found.best
    words = f"{KINDS[kind].capitalize()}: {percent(chance)}"
    if chance < SETTLED:
        words = f"Not settled; likeliest: {KINDS[kind]}, {percent(chance)}"
    lines = [tint(line, "head") for line in prose(words, 0, 2)]
    lines += prose(f"Likeliest composition: {best.label}, {percent(best.probability)}.")
    if found.fineness and found.kind("solid") + found.kind("filled") >= SETTLED:
        f = found.fineness
        between = f"90 % between {f.low:g} and {f.high:g} ‰"
        lines += prose(f"Fineness of the silver: {f.middle:g}, {between}.")
    return lines + prose(f"Before the tests: {_said(found.claims)}.")


def _said(claims: Iterable[Claim]) -> str:
    told = [
        f"{c.kind}{f' {c.fineness:g}' if c.fineness else ''} {percent(c.probability)}"
        for c in claims
        if c.probability >= _LEAST_SHOWN and c.kind != "unknown"
    ]
    if not told:
        return "no marks that tell, so the shares of unmarked pieces (common practice)"
    return "the marks were read as " + ", ".join(told)


def _rivals(found: CompositionFinding) -> list[str]:
    kinds = [(percent(p), KINDS[k]) for k, p in found.kinds]
    rivals = [
        (percent(h.probability), h.label)
        for h in found.finding.hypotheses[:_RIVALS]
        if h.probability >= _LEAST_SHOWN
    ]
    lines = [*heading("Kinds"), *table(kinds, right=(0,))]
    return [*lines, *heading("Compositions"), *table(rivals, right=(0,))]


def _contradictions(found: CompositionFinding) -> list[str]:
    if not found.contradictions:
        return []
    lines = [*heading("Contradictions")]
    for c in found.contradictions:
        lines += [tint(line, "against") for line in prose(c.says, 2, 2)]
    return lines


def _ledger(found: CompositionFinding) -> list[str]:
    finding = found.finding
    if not finding.ledger.lines:
        return []
    top = finding.hypotheses[0]
    rows = []
    for line in finding.ledger.lines:
        weight = finding.ledger.weight(line, top.key, finding.hypotheses)
        word = in_words(weight)
        side = "" if word == "none" else " for" if weight > 0 else " against"
        rows.append((f"{weight:+.1f}", f"{word}{side}", f"{line.observed}; {line.because}"))
    title = prose(f"Why {top.label} (decibans against the others together)", 0, 2)
    return ["", *(tint(line, "head") for line in title), *table(rows, right=(0,))]


def _log(found: CompositionFinding, bench: CompositionBench) -> list[str]:
    lines: list[str] = []
    for n in found.log:
        if n.kind != "caution":
            lines += [tint(line, "against") for line in prose(n.says, 2, 2)]
    for e in found.unweighed:
        test = bench.tests[e.test]
        says = (
            described(e, test) if e.readings or e.value is not None else f"{test.label}: {e.note}"
        )
        lines += prose(f"Kept, but gives no weight: {says}", 2, 2)
    return [*heading("The log"), *lines] if lines else []


def _next(advice: Advice) -> list[str]:
    lines = [*heading("Next test")]
    if advice.enough:
        says = advice.enough[0].upper() + advice.enough[1:]
        lines += [tint(line, "look") for line in prose(f"{says}.", 2, 2)]
    for n, test in enumerate(advice.advised[:_NEXT], 1):
        says = f"{n}. {test.label}, {test.spot}: {test.information:.2f} bit expected"
        told = prose(says, 2, 3)
        lines += [tint(line, "look") for line in told] if n == 1 else told
        if n == 1:
            lines += prose(f"{test.done[0].upper()}{test.done[1:]}.", 5)
            lines += _outcomes(test)
    if advice.held_back:
        lines += [*heading("Held back")]
        for test in advice.held_back[:_HELD]:
            filed = " (filed)" if test.where == "cut" and test.test != "notch" else ""
            cost = f"{test.information:.2f} bit, cost {test.cost:.2f}"
            lines += prose(f"- {test.label}{filed}, {cost}: {test.held_back}", 2, 2)
    return lines


def _outcomes(test: NextTest) -> list[str]:
    rows = [
        (o.shows, percent(o.chance), f"{o.then} {percent(o.probability)}")
        for o in test.outcomes[:_OUTCOMES]
    ]
    return table([("if it shows", "chance", "then"), *rows], 5, right=(1,))


def _cautions(found: CompositionFinding, advice: Advice) -> list[str]:
    """Cautions of tests made, advised first, or held back: none is told without its caution."""
    told = [n.says.partition(": ") for n in found.log if n.kind == "caution"]
    shown = [*advice.advised[:_NEXT], *advice.held_back[:_HELD]]
    told += [(t.label, ": ", t.caution) for t in shown if t.caution]
    by_caution: dict[str, list[str]] = {}
    for label, _, caution in dict.fromkeys(told):
        by_caution.setdefault(caution, []).append(label)
    if not by_caution:
        return []
    lines = [*heading("Mind")]
    for caution, labels in by_caution.items():
        lines += prose(f"{', '.join(labels)}: {caution}", 2, 2)
    if any("acid" in c for c in by_caution):
        lines += prose(ACIDS, 2, 2)
    return lines


def _sources(found: CompositionFinding, advice: Advice, bench: CompositionBench) -> list[str]:
    titles = {s.key: s.title for s in bench.library.sources}
    first = advice.first.sources if advice.first else ()
    keys = sorted({k for line in found.finding.ledger.lines for k in line.sources} | {*first})
    lines = [*heading("Sources"), *table([(k, UNPRINTED.get(k, titles.get(k, k))) for k in keys])]
    says = "Chances of readings and shares of compositions are judgments: common practice."
    return lines + prose(says)


def list_page(bench: CompositionBench) -> list[str]:
    """The tests with their readings."""
    lines = [tint("Tests of the metal, those that leave nothing first", "head")]
    for test in sorted(bench.tests.values(), key=lambda t: t.harm):
        shown = ", ".join(test.choices)
        if test.unit:
            shown = f"a figure in {test.unit}" + (f", or {shown}" if shown else "")
        misses = f"; not {test.misses}" if test.misses else ""
        lines += ["", *(tint(line, "head") for line in prose(f"{test.id}: {test.label}", 2, 2))]
        lines += prose(f"shows {shown or 'a remark'}", 4, 2)
        lines += prose(f"{test.done}; {test.where}", 4, 2)
        lines += prose(f"tells {test.detects}{misses}", 4, 2)
        lines += prose(f"misled by {test.fooled_by}", 4, 2) if test.fooled_by else []
        lines += prose(f"leaves {test.leaves}", 4, 2) if test.harm else []
        lines += prose(f"mind: {test.caution}", 4, 2) if test.caution else []
    return [*lines, "", *prose(ACIDS, 0)]


def plain(found: CompositionFinding, advice: Advice, bench: CompositionBench) -> dict[str, object]:
    """Everything, ready for JSON."""
    finding = found.finding
    rows = {row.id: row for row in bench.compositions}
    silver = ("solid", "filled")
    return {
        "verdict": found.kinds[0][0],
        "settled": found.kinds[0][1] >= SETTLED,
        "kinds": [{"kind": k, "label": KINDS[k], "probability": p} for k, p in found.kinds],
        "compositions": [
            {
                "key": h.key,
                "label": h.label,
                "kind": rows[h.key].kind,
                "fineness": rows[h.key].fineness if rows[h.key].kind in silver else 0.0,
                "probability": h.probability,
                "prior": h.prior,
            }
            for h in finding.hypotheses
        ],
        "fineness": found.fineness,
        "marks": found.claims,
        "contradictions": finding.contradictions,
        "ledger": [
            {
                "key": line.key,
                "observed": line.observed,
                "because": line.because,
                "likelihood_db": line.likelihood_db,
                "weight_db": {
                    h.key: finding.ledger.weight(line, h.key, finding.hypotheses)
                    for h in finding.hypotheses
                },
                "sources": line.sources,
            }
            for line in finding.ledger.lines
        ],
        "tests": [*found.weighed, *found.unweighed],
        "log": found.log,
        "next": [_test(t) for t in advice.advised],
        "held_back": [_test(t) for t in advice.held_back],
        "enough": advice.enough,
        "caution": ACIDS,
    }


def _test(test: NextTest) -> dict[str, object]:
    return {
        "test": test.test,
        "label": test.label,
        "where": test.where,
        "spot": test.spot,
        "done": test.done,
        "information_bits": test.information,
        "cost_bits": test.cost,
        "leaves": test.leaves,
        "caution": test.caution,
        "held_back": test.held_back,
        "outcomes": test.outcomes,
        "sources": test.sources,
    }
