"""``planish stones identify``: what a stone is."""

from typing import TYPE_CHECKING

import click
import msgspec

from planish.cli.library.common import cited, titles
from planish.cli.stones.common import law_lines, plain_flag, print_json, told
from planish.cli.terminal import heading, percent, prose, say, table, tint

if TYPE_CHECKING:
    from planish.stones import MaterialFinding, NextTest

_RIVALS = 6
_TESTS = 3
_LOOKS = 6
_LEAST = 0.005


@click.command(short_help="What a stone is, by what was seen.")
@click.argument("observations", nargs=-1, metavar="TEST=ANSWER...")
@click.option("--setting", default="", metavar="KIND", help="Kind of silver: southwest, deco ...")
@click.option("--mounted", is_flag=True, help="The stone stays in its setting.")
@click.option("--claimed", default="", metavar="NAME", help="What it is said to be.")
@click.option("--json", "as_json", is_flag=True, help="Print the whole finding as JSON.")
def identify(
    observations: tuple[str, ...],
    *,
    setting: str,
    mounted: bool,
    claimed: str,
    as_json: bool,
) -> None:
    """Say what a stone is by what was seen and measured, and what to test next.

    Each observation is TEST=ANSWER; 'planish stones list tests' shows all. A
    figure may bear its standard uncertainty. Without any, the finding rests on
    how often materials are met.

    \b
    planish stones identify sg=2.76±0.05 colour=blue lustre=waxy
    planish stones identify --setting southwest --mounted colour=blue loupe=matrix
    planish stones identify --claimed amber colour=honey float=sinks
    planish stones identify ri=1.544-1.553 colour=purple
    """  # noqa: D301  # click reads the backspace
    from planish.stones import identify as identified
    from planish.stones import observe

    with told():
        found = identified(
            [observe(text) for text in observations],
            setting=setting,
            mounted=mounted,
            claimed=claimed,
        )
    if as_json:
        print_json(_plain(found))
    else:
        say(_page(found))


def _plain(found: "MaterialFinding") -> dict[str, object]:
    finding = found.finding
    return {
        "hypotheses": msgspec.to_builtins(finding.hypotheses),
        "settled": found.settled,
        "setting": found.setting or None,
        "contradictions": msgspec.to_builtins(finding.contradictions),
        "ledger": [
            {
                **msgspec.to_builtins(line),
                "weight_db": {
                    h.key: finding.ledger.weight(line, h.key, finding.hypotheses)
                    for h in finding.hypotheses
                },
            }
            for line in finding.ledger.lines
        ],
        "next_tests": msgspec.to_builtins(found.next_tests),
        "look_alikes": msgspec.to_builtins(found.look_alikes),
        "limits": list(found.limits),
        "care": list(found.care),
        "law": [plain_flag(flag) for flag in found.flags],
        "cautions": list(found.cautions),
        "notes": list(found.notes),
        "sources": cited(sorted({s for line in finding.ledger.lines for s in line.sources})),
    }


def _page(found: "MaterialFinding") -> list[str]:
    from planish.evidence import in_words

    finding, best = found.finding, found.best
    verdict = f"{best.label}: {percent(best.probability)}"
    if not found.settled:
        verdict = f"Not settled; likeliest: {verdict}"
    lines = [tint(verdict[:1].upper() + verdict[1:], "head")]
    rest = [h for h in finding.hypotheses[1:_RIVALS] if h.probability >= _LEAST]
    lines += table([(percent(h.probability), h.label) for h in rest], right=(0,))
    for contradiction in finding.contradictions:
        lines += [tint(s, "against") for s in prose(f"Contradiction: {contradiction.says}", 2, 2)]
    if finding.ledger.lines:
        lines += heading(f"Why {best.label}")
    for line in finding.ledger.lines:
        weight = finding.ledger.weight(line, best.key, finding.hypotheses)
        word = in_words(weight)
        side = "" if word == "none" else " for" if weight > 0 else " against"
        lines += prose(f"{weight:+6.1f} dB  {word}{side}: {line.observed}", 2, 11)
        lines += prose(line.because, 13)
    lines += _next(found.next_tests)
    lines += _told(found)
    lines += law_lines(found.flags)
    remarks = [*found.cautions, *found.notes]
    kind = f"on {found.setting} silver" if found.setting else "on silver of any kind"
    remarks.append(
        f"common practice and memory, not counts: how often materials are met {kind},"
        " and what each test shows on them"
    )
    lines += [*heading("Mind"), *(s for r in remarks for s in prose(f"- {r}", 2, 2))]
    return [*lines, *titles(s for line in finding.ledger.lines for s in line.sources)]


def _next(tests: "tuple[NextTest, ...]") -> list[str]:
    safe = [t for t in tests if t.harm != "harm" and not t.withheld][:_TESTS]
    harmful = [t for t in tests if t.harm == "harm" and not t.withheld][:2]
    withheld = [t for t in tests if t.withheld]
    lines = heading("Next test") if tests else []
    for test in safe:
        who = "" if test.who == "anyone" else f", {test.who}"
        title = f"{test.label}{who} ({test.information_bits:.2f} bits)"
        lines += [tint(s, "look") for s in prose(title, 2, 2)]
        lines += prose(test.how, 4) if test.how else []
        for outcome in test.outcomes[:3]:
            says = f"{outcome.answer} ({percent(outcome.chance)})"
            lines += prose(f"{says}: {outcome.then} {percent(outcome.probability)}", 4, 2)
        lines += prose(f"Mind: {test.caution}", 4, 2) if test.caution else []
    for test in harmful:
        lines += prose(f"Only if it must be, {test.label}: {test.caution}", 2, 2)
    for test in withheld:
        lines += prose(f"Do not make, {test.label}: {test.withheld}", 2, 2)
    return lines


def _told(found: "MaterialFinding") -> list[str]:
    from planish.library import load

    names = {m.id: m.name for m in load().materials}
    lines = heading("Look-alikes") if found.look_alikes else []
    for look in found.look_alikes[:_LOOKS]:
        other = names.get(look.other, look.other)
        lines += prose(f"- {other} for {names[look.material]} ({look.kind}): {look.tell}", 2, 2)
    lines += [*heading("What this cannot tell")]
    lines += [s for limit in found.limits for s in prose(f"- {limit}", 2, 2)]
    if found.care:
        lines += [*heading("Care"), *(s for c in found.care for s in prose(f"- {c}", 2, 2))]
    return lines
