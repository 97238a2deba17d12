"""A reading as plain data: the shape that tools read (see docs/cli.md)."""

from collections.abc import Sequence

from planish.evidence import Contradiction, Finding
from planish.marks.check_asked import Check
from planish.marks.numbers import NumberFinding
from planish.marks.reading import NextLook, Reading, ReadingFinding


def as_plain(
    found: ReadingFinding,
    checks: Sequence[Check] = (),
    numbers: Sequence[NumberFinding] = (),
) -> dict[str, object]:
    """The readings, contradictions, next looks, ledger, checks and numbers, ready for JSON."""
    return {
        "readings": [_reading(r, found.finding) for r in found.readings],
        "contradictions": [_contradiction(c) for c in found.contradictions],
        "next_look": [_next_look(n) for n in found.next_look],
        "ledger": _ledger(found.finding),
        "parts": [
            {"part": p.part, "place_probability": round(p.place, 4), "label": p.reading.label}
            for p in found.parts
        ],
        "checks": [_check(c) for c in checks],
        "numbers": [_number(n) for n in numbers],
        "not_used": [*found.not_used, *(f"not understood: {u}" for u in found.observed.unread)],
    }


def _check(check: Check) -> dict[str, object]:
    return {
        "key": check.key,
        "asks": check.asks,
        "answer": check.answer,
        "says": check.says,
        "rule": check.rule,
        "sources": list(check.sources),
    }


def _number(number: NumberFinding) -> dict[str, object]:
    return {
        "shown": number.shown,
        "meaning": number.best.key,
        "label": number.best.label,
        "probability": round(number.best.probability, 4),
        "year": number.year,
    }


def _reading(reading: Reading, finding: Finding) -> dict[str, object]:
    prior = next((h.prior for h in finding.hypotheses if h.key == reading.key), None)
    return {
        "kind": reading.kind,
        "country": reading.country,
        "system": reading.system or None,
        "office": reading.office,
        "year_from": reading.year_from,
        "year_to": reading.year_to,
        "fineness": reading.fineness,
        "makers": [
            {"name": m.name, "probability": round(m.probability, 4)} for m in reading.makers
        ],
        "probability": round(reading.probability, 6),
        "label": reading.label,
        "key": reading.key,
        "prior": prior,
        "sources": list(reading.sources),
    }


def _contradiction(found: Contradiction) -> dict[str, object]:
    return {
        "between": list(found.between),
        "says": found.says,
        "rule": found.rule,
        "sources": list(found.sources),
    }


def _next_look(look: NextLook) -> dict[str, object]:
    return {
        "role": look.role,
        "look_for": look.look_for,
        "information_bits": round(look.information, 3),
        "where": list(look.where),
        "outcomes": [
            {"if_seen": o.if_seen, "chance": round(o.chance, 3), "then": o.then}
            for o in look.outcomes
        ],
    }


def _ledger(finding: Finding) -> list[dict[str, object]]:
    return [
        {
            "key": line.key,
            "observed": line.observed,
            "because": line.because,
            # log-likelihood up to a constant per line: prior and lines multiply out to the whole
            "likelihood_db": {k: round(v, 3) for k, v in line.likelihood_db.items()},
            "weight_db": {
                h.key: round(finding.ledger.weight(line, h.key, finding.hypotheses), 2)
                for h in finding.hypotheses
            },
            "sources": list(line.sources),
        }
        for line in finding.ledger.lines
    ]
