"""Which mark, not yet seen, would tell most if it were found or found absent.

Expected information of looking for a role: the mutual information between what the look shows and
the cell (system, office, year), in bits; C. E. Shannon, "A Mathematical Theory of Communication",
Bell System Technical Journal 27 (1948).
"""

import math
from collections import defaultdict
from collections.abc import Sequence

from planish.evidence import percent
from planish.marks.explain import role_words
from planish.marks.plan import OPEN_END, Expected, Plan, Segment, presence
from planish.marks.reading import NextLook, Outcome
from planish.marks.spans import Posterior

_KEPT = 600
_LEAST = 1e-4
_LOOKABLE = (
    "standard",
    "town",
    "date",
    "duty",
    "import",
    "fineness",
    "assay-master",
    "plate-quality",
)
_WORTH_BITS = 0.2
_ABSENT = "absent"


def _outcomes(expected: Expected, segment: Segment, year: int, plan: Plan) -> dict[str, float]:
    """Chance of each thing that a look for the role may show."""
    p = presence(expected, 0.97)
    shown: dict[str, float] = defaultdict(float)
    shown[_ABSENT] = 1 - p
    for way in expected.ways:
        if way.kind == "cycle":
            letter = plan.letter_of(segment.office.id, year) if segment.office else None
            if letter is None:
                what = "a letter"
            else:
                style = "/".join(letter.styles) or "any style"
                what = f'letter "{letter.letters[0]}", {style} {letter.case}'
        elif way.kind == "code":
            code = plan.codes[expected.index][segment.letters[year - segment.year_from]]
            what = code.value.split("|")[0]
        elif way.kind == "device":
            device = plan.thesaurus.devices.get(way.value)
            what = device.label if device else way.value
        else:
            what = way.value.split("|")[0] or way.kind
        shown[what] += p * way.share
    return shown


def next_looks(
    post: Posterior, plan: Plan, seen_roles: frozenset[str], limit: int = 3
) -> tuple[NextLook, ...]:
    """The looks worth most, best first. seen_roles: roles that the marks already fill."""
    cells = _likeliest(post)
    if not cells:
        return ()
    roles = {e.role for s, _, _ in cells for e in s.expected if e.role in _LOOKABLE} - seen_roles
    alike = _alike(cells)
    found: list[tuple[float, str]] = []
    for role in sorted(roles):
        bits = _information(alike, role, plan)
        if bits >= _WORTH_BITS:
            found.append((bits, role))
    found.sort(key=lambda f: -f[0])
    return tuple(
        _look(role, bits, cells, _table(cells, role, plan)) for bits, role in found[:limit]
    )


_Cells = Sequence[tuple[Segment, int, float]]


def _table(cells: _Cells, role: str, plan: Plan) -> dict[str, list[tuple[int, float]]]:
    """For each outcome of a look for a role, the cells in which it may be had and their chances."""
    table: dict[str, list[tuple[int, float]]] = defaultdict(list)
    shown: dict[tuple[int, int], dict[str, float]] = {}
    for at, (segment, year, p) in enumerate(cells):
        key = _key(segment, year)
        if key not in shown:
            shown[key] = _shows(role, segment, year, plan)
        for what, chance in shown[key].items():
            if chance > 0:
                table[what].append((at, p * chance))
    return table


def _key(segment: Segment, year: int) -> tuple[int, int]:
    """What the outcomes of a look depend on: the segment, and the year's letter or code."""
    return segment.at, segment.letters[year - segment.year_from] if segment.letters else -1


def _alike(cells: _Cells) -> list[tuple[Segment, int, float]]:
    """The cells in which all looks show the same, put together."""
    found: dict[tuple[int, int], tuple[Segment, int, float]] = {}
    for segment, year, p in cells:
        key = _key(segment, year)
        before = found.get(key)
        found[key] = (segment, year, p + (before[2] if before else 0.0))
    return list(found.values())


def _shows(role: str, segment: Segment, year: int, plan: Plan) -> dict[str, float]:
    expected = next((e for e in segment.expected if e.role == role), None)
    return _outcomes(expected, segment, year, plan) if expected else {_ABSENT: 1.0}


def _likeliest(post: Posterior) -> list[tuple[Segment, int, float]]:
    """The likeliest years, with probabilities that sum to one."""
    years: list[tuple[Segment, int, float]] = []
    for cell in sorted(post.cells, key=lambda c: -c.probability):
        if len(years) >= _KEPT or cell.probability < _LEAST:
            break
        whole = cell.segment.mass(cell.year_from, cell.year_to)
        years += [
            (cell.segment, y, cell.probability * cell.segment.prior(y) / whole)
            for y in range(cell.year_from, cell.year_to + 1)
        ]
    total = math.fsum(p for _, _, p in years)
    return [(s, y, p / total) for s, y, p in years] if total > 0 else []


def _information(alike: _Cells, role: str, plan: Plan) -> float:
    """Mutual information of a look for the role and the cell [bit]."""
    joint: dict[str, list[tuple[float, float]]] = defaultdict(list)
    for segment, year, p in alike:
        for what, chance in _shows(role, segment, year, plan).items():
            if chance > 0:
                joint[what].append((p, chance))
    bits = 0.0
    for rows in joint.values():
        whole = math.fsum(p * chance for p, chance in rows)
        bits += math.fsum(p * chance * math.log2(chance / whole) for p, chance in rows if p > 0)
    return max(0.0, bits)


def _look(
    role: str,
    bits: float,
    cells: Sequence[tuple[Segment, int, float]],
    table: dict[str, list[tuple[int, float]]],
) -> NextLook:
    ranked = sorted(table.items(), key=lambda kv: -math.fsum(w for _, w in kv[1]))
    outcomes = []
    for what, joint in ranked[:4]:
        chance = math.fsum(w for _, w in joint)
        by_place: dict[str, float] = defaultdict(float)
        years: dict[str, list[int]] = defaultdict(list)
        for at, w in joint:
            segment, year, _ = cells[at]
            name = segment.office.name if segment.office else segment.system.label
            by_place[name] += w
            if w > 0.02 * chance:
                years[name].append(year)
        place = max(by_place, key=lambda n: by_place[n])
        when = _when(years[place])
        share = by_place[place] / chance if chance else 0.0
        outcomes.append(
            Outcome(
                if_seen="nothing there" if what == _ABSENT else what,
                chance=chance,
                then=f"{place}{when} ({percent(share)})",
            )
        )
    wanted = [what for what, _ in ranked if what != _ABSENT][:3]
    if role == "date":
        look_for = "date letter: which letter, its style and case, the shape of its punch"
    else:
        look_for = f"{role_words(role)}: {', '.join(wanted)}" if wanted else role_words(role)
    return NextLook(
        role=role,
        look_for=look_for,
        information=bits,
        outcomes=tuple(outcomes),
    )


def _when(years: list[int]) -> str:
    if not years:
        return ""
    low, high = min(years), max(years)
    return (
        f", {low}"
        if low == high
        else f", {low} or later"
        if high >= OPEN_END
        else f", {low}-{high}"
    )
