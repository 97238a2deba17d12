"""The library's self-check: what is wrong with the facts, one line each.

Each check is a function ``(library) -> iterator of problems`` with its rule in its docstring; the
tuple at the end of the file names those that run. A problem names the row by its id, never by its
file, so that files may be split freely.
"""

from collections import Counter, defaultdict
from collections.abc import Callable, Iterable, Iterator
from itertools import pairwise

import msgspec

from planish.library import rows, stone_rows
from planish.library.check_stones import CHECKS as STONE_CHECKS
from planish.library.cycles import CycleError, expand
from planish.library.loader import TABLES, Library

#: kinds of sign, and whether each needs a value
SIGN_KINDS = {
    "device": True, "text": True, "number": True, "code": True, "cycle": False, "letter": False,
    "figures": False, "initials": False, "name": False, "year": False, "initials-year": False,
}  # fmt: skip
#: how a maker's role may be written
FORMS = frozenset({"device", "letter", "initials", "figures", "word", "name", "mixed"})
_OPEN = 9999
#: common practice: pieces of today are the newest that are read
_LAST_YEAR = 2028


def _years(row: msgspec.Struct) -> tuple[int | None, int | None]:
    """First and last year of any row; None where it has none or is open."""
    for low, high in (
        ("year_from", "year_to"), ("first_year", "last_year"), ("opened", "closed"),
    ):  # fmt: skip
        if hasattr(row, low):
            return getattr(row, low), getattr(row, high)
    return None, None


def _overlap(a: msgspec.Struct, b: msgspec.Struct) -> bool:
    (a_low, a_high), (b_low, b_high) = _years(a), _years(b)
    return (a_low or 0) <= (b_high or _OPEN) and (b_low or 0) <= (a_high or _OPEN)


def name_of(row: msgspec.Struct) -> str:
    """The row in a few words: its id, or the cells that tell it from others."""
    for field in ("id", "key"):
        if hasattr(row, field):
            return str(getattr(row, field))
    match row:
        case rows.Role():
            place = f"{row.system} {row.office}".strip()
            return f"{place} {row.role} {row.year_from}-{row.year_to or ''}"
        case rows.Weight():
            return f"{row.target} {row.year_from}-{row.year_to or ''}"
        case rows.Spot():
            return f"{row.form} {row.rank}"
        case stone_rows.Clue():
            return f"{row.test} {row.target}"
        case rows.Design():
            return f"{row.record} {row.key_1} {row.key_2}".strip()
        case rows.Layout():
            return f"{row.countries} {row.feature} {row.year_from}-{row.year_to}"
        case rows.Placement():
            return f"{row.countries} {row.forms[:20]} {row.year_from}-{row.year_to}"
    return type(row).__name__


def _tables(library: Library) -> Iterator[tuple[str, tuple[msgspec.Struct, ...]]]:
    for table in TABLES:
        yield table, getattr(library, table)


def sources(library: Library) -> Iterator[str]:
    """Every row names at least one source, and each is in the bibliography."""
    known = {source.key for source in library.sources}
    for table, found in _tables(library):
        for row in found:
            if not isinstance(row, rows.Row):
                continue
            if not row.sources:
                yield f"{table} {name_of(row)}: names no source"
            for key in row.sources:
                if key not in known:
                    yield f"{table} {name_of(row)}: source {key} is not in the bibliography"


def ids(library: Library) -> Iterator[str]:
    """An id stands once in its table."""
    for table, found in _tables(library):
        counted = Counter(name_of(row) for row in found if hasattr(row, "id") or table == "sources")
        for name, times in counted.items():
            if times > 1:
                yield f"{table} {name}: the id stands {times} times"


def order_of_years(library: Library) -> Iterator[str]:
    """No row ends before it begins."""
    for table, found in _tables(library):
        for row in found:
            low, high = _years(row)
            if low is not None and high is not None and low > high:
                yield f"{table} {name_of(row)}: ends in {high}, before it begins in {low}"
    for rule in library.rules:
        if rule.date_from and rule.date_to and rule.date_to < rule.date_from[: len(rule.date_to)]:
            yield f"rules {rule.id}: ends on {rule.date_to}, before it begins on {rule.date_from}"


def numbers(library: Library) -> Iterator[str]:
    """Presence is a probability, shares and weights are above zero, fineness is per thousand."""
    for role in library.roles:
        if not 0.0 <= role.presence <= 1.0:
            yield f"roles {name_of(role)}: presence {role.presence:g} is not between 0 and 1"
    for sign in library.signs:
        if not sign.share > 0.0:
            yield f"signs {sign.id}: share {sign.share:g} is not above 0"
    weights: tuple[rows.System | rows.Weight, ...] = (*library.systems, *library.weights)
    for weighted in weights:
        if not weighted.weight > 0.0:
            yield f"{name_of(weighted)}: weight {weighted.weight:g} is not above 0"
    fine: tuple[rows.System | rows.Sign | rows.Word, ...]
    fine = (*library.systems, *library.signs, *library.words)
    for row in fine:
        if row.fineness is not None and not 0.0 <= row.fineness <= 1000.0:
            yield f"{row.id}: fineness {row.fineness:g} is not between 0 and 1000"
    for cycle in library.cycles:
        if cycle.slack < 0:
            yield f"cycles {cycle.id}: slack {cycle.slack} is below 0"


def devices(library: Library) -> Iterator[str]:
    """Wider devices and the devices of signs exist; no device is wider than itself."""
    known = {device.id: device for device in library.devices}
    for device in library.devices:
        seen, at = {device.id}, device.broader
        if at and at not in known:
            yield f"devices {device.id}: wider device {at} does not exist"
        while at in known:
            if at in seen:
                yield f"devices {device.id}: its wider devices run in a circle"
                break
            seen.add(at)
            at = known[at].broader
    for sign in library.signs:
        if sign.kind == "device" and sign.value not in known:
            yield f"signs {sign.id}: device {sign.value} does not exist"


def references(library: Library) -> Iterator[str]:
    """Systems, offices and targets that rows name exist."""
    systems = {system.id for system in library.systems}
    offices = {office.id for office in library.offices}
    for table, found in (("roles", library.roles), ("signs", library.signs)):
        for row in found:
            if row.system not in systems:
                yield f"{table} {name_of(row)}: system {row.system} does not exist"
            if row.office and row.office not in offices:
                yield f"{table} {name_of(row)}: office {row.office} does not exist"
    for cycle in library.cycles:
        if cycle.office not in offices:
            yield f"cycles {cycle.id}: office {cycle.office} does not exist"
    for weight in library.weights:
        if weight.target not in offices | systems:
            yield f"weights {name_of(weight)}: no office or system of that id"


def kinds(library: Library) -> Iterator[str]:
    """Words with a fixed list (kinds, forms, strengths) are of that list."""
    for sign in library.signs:
        if sign.kind not in SIGN_KINDS:
            yield f"signs {sign.id}: unknown kind {sign.kind}"
        elif SIGN_KINDS[sign.kind] and not sign.value:
            yield f"signs {sign.id}: kind {sign.kind} needs a value"
        elif sign.kind == "cycle" and sign.value:
            yield f"signs {sign.id}: kind cycle takes its letters from the table of cycles"
    for system in library.systems:
        if system.kind not in ("solid", "plated", "base"):
            yield f"systems {system.id}: unknown kind {system.kind}"
    for trait in library.traits:
        if trait.strength not in ("decisive", "strong", "medium", "weak"):
            yield f"traits {trait.id}: unknown strength {trait.strength}"
    for role in library.roles:
        yield from _forms(role)


def _forms(role: rows.Role) -> Iterator[str]:
    total = 0.0
    for part in filter(None, (p.strip() for p in role.forms.split(";"))):
        form, _, share = part.partition("=")
        try:
            total += float(share)
        except ValueError:
            yield f"roles {name_of(role)}: form {part!r} is not word=number"
        if form.strip() not in FORMS:
            yield f"roles {name_of(role)}: unknown form {form.strip()}"
    if total > 1.001:
        yield f"roles {name_of(role)}: forms add up to {total:g}, above 1"


def roles_and_signs(library: Library) -> Iterator[str]:
    """A sign's role, and a role's sign or form, stand in overlapping years of the same office."""

    def pair(role: rows.Role, sign: rows.Sign) -> bool:
        same = not role.office or not sign.office or role.office == sign.office
        return same and _overlap(role, sign)

    roles: dict[tuple[str, str], list[rows.Role]] = defaultdict(list)
    signs: dict[tuple[str, str], list[rows.Sign]] = defaultdict(list)
    for role in library.roles:
        roles[role.system, role.role].append(role)
    for sign in library.signs:
        signs[sign.system, sign.role].append(sign)
    for sign in library.signs:
        if not any(pair(role, sign) for role in roles[sign.system, sign.role]):
            yield f"signs {sign.id}: no row says that {sign.role} is struck there in those years"
    for role in library.roles:
        if not role.forms and not any(pair(role, s) for s in signs[role.system, role.role]):
            yield f"roles {name_of(role)}: no sign and no form shows it"
    named = {role.system for role in library.roles}
    for system in library.systems:
        if system.id not in named:
            yield f"systems {system.id}: has no role"


def one_role_at_a_time(library: Library) -> Iterator[str]:
    """A role has one presence per office and year; so has a target one weight."""
    grouped: dict[tuple[str, ...], list[rows.Role | rows.Weight]] = defaultdict(list)
    for role in library.roles:
        grouped["roles", role.system, role.office, role.role].append(role)
    for weight in library.weights:
        grouped["weights", weight.target].append(weight)
    for (table, *_), found in grouped.items():
        found.sort(key=lambda row: row.year_from)
        for before, after in pairwise(found):
            if _overlap(before, after):
                yield f"{table} {name_of(after)}: overlaps {name_of(before)}"


def weights_cover(library: Library) -> Iterator[str]:
    """An office that has weights at all has one for each year in which it was open."""
    grouped: dict[str, list[rows.Weight]] = defaultdict(list)
    for weight in library.weights:
        grouped[weight.target].append(weight)
    for office in library.offices:
        found = sorted(grouped[office.id], key=lambda w: w.year_from)
        reached = office.opened
        for weight in found:
            if weight.year_from > reached:
                break
            reached = max(reached, (weight.year_to or _OPEN) + 1)
        # an open office needs weights for the years that the engine looks at
        if found and reached <= (office.closed or _LAST_YEAR):
            yield f"weights {office.id}: none for {reached}"


def cycles(library: Library) -> Iterator[str]:
    """Every cycle expands to its years; cycles of one office do not overlap.

    Two cycles may share an assay year where dates part them (London 1696: t ends on 26 March
    1697, a begins on 27 March).
    """
    by_office: dict[str, list[rows.Cycle]] = defaultdict(list)
    for cycle in library.cycles:
        by_office[cycle.office].append(cycle)
        try:
            letters = expand(cycle)
        except CycleError as fault:
            yield f"cycles {fault.cycle}: {fault.fault}"
            continue
        for letter in letters:
            if letter.start > letter.end:
                yield f"cycles {cycle.id}: {letter.first_year} ends before it begins"
    for found in by_office.values():
        found.sort(key=lambda c: (c.first_year, c.last_year))
        for before, after in pairwise(found):
            parted = before.last_end and after.first_start and before.last_end < after.first_start
            shared = before.last_year - after.first_year + 1
            if shared > (1 if parted else 0):
                yield f"cycles {after.id}: overlaps {before.id}"
    for sign in library.signs:
        if sign.kind == "cycle" and not any(_overlap(sign, c) for c in by_office[sign.office]):
            yield f"signs {sign.id}: the office has no date letters in those years"


def succession(library: Library) -> Iterator[str]:
    """A maker follows makers that exist, does not begin before them, and never follows itself."""
    known = {maker.id: maker for maker in library.makers}
    for maker in library.makers:
        for before in maker.predecessors:
            if before not in known:
                yield f"makers {maker.id}: follows {before}, which does not exist"
                continue
            begins, began = maker.year_from, known[before].year_from
            if begins is not None and began is not None and begins < began:
                yield f"makers {maker.id}: begins in {begins}, but follows {before} of {began}"
        seen, ahead = set[str](), list(maker.predecessors)
        while ahead:
            at = ahead.pop()
            if at == maker.id:
                yield f"makers {maker.id}: those it follows run in a circle"
                break
            if at in known and at not in seen:
                seen.add(at)
                ahead.extend(known[at].predecessors)


#: what a magnet does
MAGNETIC = frozenset({"no", "faint", "yes", "varies"})


def metals(library: Library) -> Iterator[str]:
    """A metal's density lies within its limits, its ideal density follows from its composition."""
    pure = {
        next(iter(m.shares)): m.density
        for m in library.metals
        if m.group == "element" and len(m.shares) == 1
    }
    for metal in library.metals:
        if not 0.0 < metal.low <= metal.density <= metal.high:
            yield f"metals {metal.id}: density {metal.density:g} is outside its limits"
        if metal.magnetic not in MAGNETIC:
            yield f"metals {metal.id}: unknown word {metal.magnetic} for magnetic"
        if metal.solidus and metal.liquidus and metal.solidus > metal.liquidus:
            yield f"metals {metal.id}: begins to melt above the end of melting"
        if metal.ideal is not None:
            volume = sum(low / pure.get(symbol, 1.0) for symbol, (low, _) in metal.shares.items())
            share = sum(low for low, _ in metal.shares.values())
            if not volume or abs(share / volume - metal.ideal) > 0.001:
                yield f"metals {metal.id}: ideal {metal.ideal:g} does not follow from {metal.composition}"


def metal_tests(library: Library) -> Iterator[str]:
    """Chances add up to one over the readings of their test; compositions name known metals."""
    tests = {test.id: test for test in library.tests}
    metals = {metal.id for metal in library.metals}
    for row in library.responses:
        name = f"responses {row.test} {row.met}"
        if row.test not in tests:
            yield f"{name}: test {row.test} does not exist"
        elif tests[row.test].choices and set(row.table) != set(tests[row.test].choices):
            yield f"{name}: its readings are not those of the test"
        if abs(sum(row.table.values()) - 1.0) > 1e-6 or min(row.table.values()) <= 0.0:
            yield f"{name}: chances are not above 0 and adding up to 1"
    for colour in library.acids:
        if colour.reagent not in tests or colour.reading not in tests[colour.reagent].choices:
            yield f"acids {colour.metal}: {colour.reading} is no reading of {colour.reagent}"
    for made in library.compositions:
        for metal in made.cores:
            if metal not in metals:
                yield f"compositions {made.id}: metal {metal} does not exist"
        if made.kind not in ("solid", "plated", "base", "filled"):
            yield f"compositions {made.id}: unknown kind {made.kind}"
        if not made.share > 0.0:
            yield f"compositions {made.id}: share {made.share:g} is not above 0"


CHECKS: tuple[Callable[[Library], Iterable[str]], ...] = (
    sources,
    ids,
    order_of_years,
    numbers,
    devices,
    references,
    kinds,
    roles_and_signs,
    one_role_at_a_time,
    weights_cover,
    cycles,
    succession,
    metals,
    metal_tests,
    *STONE_CHECKS,
)


def problems(library: Library) -> list[str]:
    """All that is wrong with the library, one line each; empty if nothing is."""
    return [line for check in CHECKS for line in check(library)]
