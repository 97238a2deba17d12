"""A reading for the terminal: verdict, rivals, reasons, contradictions, next look, sources."""

from collections.abc import Iterable, Iterator, Sequence

from planish.cli.terminal import heading, percent, prose, table, tint
from planish.cli.wording import UNPRINTED
from planish.evidence import SETTLED, Finding, in_words
from planish.library import Library, load
from planish.marks import Answer, Check, NumberFinding, Reading, ReadingFinding
from planish.marks.explain import NONE

_SHOWN_MAKERS = 4
_SHOWN_RIVALS = 6
_SLIGHTEST_DB = 0.5
_OWN = {"own": "your own register"}

_KINDS = {
    "solid": "silver",
    "plated": "plated, not solid silver",
    "base": "base metal, no silver",
    "unknown": "not known",
}


def page(
    found: ReadingFinding,
    form: str | None = None,
    library: Library | None = None,
    checks: Sequence[Check] = (),
    numbers: Sequence[NumberFinding] = (),
) -> list[str]:
    """The lines of the page, at most 80 columns wide."""
    library = library or load()
    best = found.best
    lines = _verdict(found)
    if best and best.makers:
        lines += _makers(best)
    lines += _rivals(found)
    lines += _parts(found)
    lines += _contradictions(found)
    lines += _reasons(found)
    lines += _checks(checks)
    lines += _numbers(numbers)
    lines += _next_look(found, form)
    lines += _left_out(found)
    lines += _sources(found, library)
    return lines


def _verdict(found: ReadingFinding) -> list[str]:
    best = found.best
    if best is None or best.kind == "unknown":
        lines = [tint("Not settled: no reading of these marks stands out.", "head")]
        if best:
            chance = percent(best.probability)
            lines += prose(f"That no system of the library explains them: {chance}.")
        return lines + prose("No match here is no proof that the marks are false.")
    verdict = f"{best.label}: {percent(best.probability)}"
    if best.probability < SETTLED:
        verdict = f"Not settled; likeliest of {len(found.readings)}: {verdict}"
    lines = [tint(line, "head") for line in prose(verdict, 0, 2)]
    detail = [_KINDS.get(best.kind, best.kind), best.system_label]
    return lines + prose("; ".join(d for d in detail if d))


def _makers(best: Reading) -> list[str]:
    rows = [
        (
            percent(m.probability),
            "; ".join(
                p for p in (m.name, ", ".join(x for x in (m.place, m.years) if x), m.why) if p
            ),
        )
        for m in best.makers[:_SHOWN_MAKERS]
    ]
    return [*heading("Maker or sponsor, if this reading is right"), *table(rows, right=(0,))]


def _rivals(found: ReadingFinding) -> list[str]:
    rest = found.readings[1:]
    if not rest:
        return []
    rows = [
        (
            percent(r.probability),
            r.label + ("" if r.kind in {"solid", "unknown"} else f" ({_KINDS[r.kind]})"),
        )
        for r in rest[:_SHOWN_RIVALS]
    ]
    lines = [*heading("Other readings"), *table(rows, right=(0,))]
    if more := rest[_SHOWN_RIVALS:]:
        lines += prose(
            f"and {len(more)} more, {percent(sum(r.probability for r in more))} together"
        )
    return lines


def _parts(found: ReadingFinding) -> list[str]:
    """The likeliest reading of each part alone, with the chance of its place."""
    rows = [(percent(p.place), f"{p.part}: {p.reading.label}") for p in found.parts]
    return (
        [*heading("Each part alone (chance of its office)"), *table(rows, right=(0,))]
        if rows
        else []
    )


def _contradictions(found: ReadingFinding) -> list[str]:
    if not found.contradictions:
        return []
    lines = [*heading("Contradictions")]
    for c in found.contradictions:
        body = prose(c.says, 2, 2)
        lines += [tint(line, "against") for line in body]
        if c.sources:
            lines += prose(f"source: {', '.join(c.sources)}", 4, 2)
    return lines


def _reasons(found: ReadingFinding) -> list[str]:
    """Ledger lines by their weight for the first reading: against chance, and against the next."""
    finding = found.finding
    if not finding.hypotheses:
        return []
    top = finding.hypotheses[0]
    rival = next((h for h in finding.hypotheses[1:] if h.key != NONE), None)
    rows = []
    for line in finding.ledger.lines:
        weight = line.likelihood_db.get(top.key, 0.0)
        beside = weight - line.likelihood_db.get(rival.key, 0.0) if rival else 0.0
        if line.key.startswith("absent:") and max(abs(weight), abs(beside)) < _SLIGHTEST_DB:
            continue
        word = in_words(weight)
        side = "" if word == "none" else " for" if weight > 0 else " against"
        because = f": {line.because}" if line.because else ""
        rows.append(
            (
                f"{weight:+.1f}",
                f"{word}{side}",
                f"{beside:+.1f}" if rival else "",
                f"{line.observed}{because}",
            )
        )
    if not rows:
        return []
    note = "decibans against marks struck by chance"
    if rival:
        note += f", then against {rival.label}"
    title = [tint(line, "head") for line in prose(f"Why {top.label}", 0, 2)]
    return ["", *title, *prose(note), *table(rows, right=(0, 2))]


def _checks(checks: Sequence[Check]) -> list[str]:
    """The mechanical checks: what fails in full, then what holds and what cannot be told."""
    if not checks:
        return []
    order = {Answer.NO: 0, Answer.YES: 1, Answer.UNKNOWN: 2}
    rows = [
        (check.answer.value, check.says or check.asks)
        for check in sorted(checks, key=lambda c: order[c.answer])
    ]
    return [*heading("Checks of this reading, one by one"), *table(rows)]


def _numbers(numbers: Sequence[NumberFinding]) -> list[str]:
    rows = []
    for number in numbers:
        ranked = number.finding.hypotheses[:3]
        rows.append(
            (number.shown, "; ".join(f"{h.label} {percent(h.probability)}" for h in ranked))
        )
    return [*heading("Numbers, and what they may mean"), *table(rows)] if rows else []


def _next_look(found: ReadingFinding, form: str | None) -> list[str]:
    if not found.next_look:
        return []
    lines = [*heading("Next look")]
    for n, look in enumerate(found.next_look, 1):
        body = prose(f"{n}. {look.look_for} ({look.information:.1f} bits expected)", 2, 3)
        lines += [tint(line, "look") for line in body] if n == 1 else body
        for outcome in look.outcomes:
            lines += prose(f"{outcome.if_seen} ({percent(outcome.chance)}): {outcome.then}", 5, 2)
    where = found.next_look[0].where
    if where:
        lines += prose(f"where on a {form}: " + "; ".join(where), 2, 2)
    return lines


def _left_out(found: ReadingFinding) -> list[str]:
    rows = [*found.not_used, *(f"not understood: {u}" for u in found.observed.unread)]
    if not rows:
        return []
    return [*heading("Left out"), *(line for row in rows for line in prose(row, 2, 2))]


def _sources(found: ReadingFinding, library: Library) -> list[str]:
    keys = list(dict.fromkeys(_source_keys(found)))
    titles = {s.key: s.title for s in library.sources}
    rows = [
        (
            key,
            titles.get(key)
            or _OWN.get(key.partition(":")[0])
            or UNPRINTED.get(key, "not in the bibliography"),
        )
        for key in keys
    ]
    lines = [*heading("Sources"), *table(rows)] if rows else []
    if found.consulted:
        lines += ["", *prose("Consulted: " + "; ".join(found.consulted), 0, 2)]
    return lines


def _source_keys(found: ReadingFinding) -> Iterator[str]:
    yield from _of_ledger(found.finding)
    for c in found.contradictions:
        yield from c.sources
    if found.best:
        yield from found.best.sources
        for maker in found.best.makers[:_SHOWN_MAKERS]:
            yield from maker.sources


def _of_ledger(finding: Finding) -> Iterable[str]:
    return (s for line in finding.ledger.lines for s in line.sources)
