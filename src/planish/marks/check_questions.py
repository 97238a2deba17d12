"""The questions, one function each: a reading in, checks out; none where it cannot be asked."""

import re
from collections.abc import Callable, Iterator

from planish.library.rows import Maker
from planish.marks.check_asked import Answer, Asked, Check
from planish.marks.explain import role_words
from planish.marks.letters import seen_given, style_given
from planish.marks.numbers import earliest_year
from planish.marks.observation import Mark
from planish.marks.plan import OPEN_END, Segment
from planish.marks.seen import Seen, digest, fold

#: a role that at least this share of full sets shows is asked for
REQUIRED = 0.9
_DUE = 0.8
#: ... and if it was looked for in vain, one that this share shows
_USUAL = 0.5
_FULLY_SEARCHED = 0.6
_LIKELY_MAKER, _MOST_MAKERS = 0.15, 3
_MAKER_ROLES = frozenset({"sponsor", "maker"})
#: a style this much rarer than the one on record is another style
_OTHER_STYLE = 0.03
_NAMED_SO = 0.3
#: a set that lacks one mark is no proof: the row that says so
_MISSING = "GB-MARK-MISSING"
_CROWN = "GB-PLATE-1896"
_LAST_CROWN = 1896


def _check(
    key: str, asks: str, said: tuple[Answer, str], rule: str, sources: tuple[str, ...]
) -> Check:
    return Check(key=key, asks=asks, answer=said[0], says=said[1], rule=rule, sources=sources)


def _office_open(asked: Asked) -> Iterator[Check]:
    office = asked.office
    if office is None:
        return
    closed = office.closed if office.closed is not None else OPEN_END
    span = f"from {office.opened}" + (f" to {office.closed}" if office.closed else "")
    inside = office.opened <= asked.low and asked.high <= closed
    outside = asked.high < office.opened or asked.low > closed
    answer = Answer.YES if inside else Answer.NO if outside else Answer.UNKNOWN
    verb = "marked" if office.kind.startswith("provincial") else "was open"
    says = f"{office.name} {verb} {span}"
    if answer is Answer.UNKNOWN:
        says += f", for a part of {asked.years} only"
    yield _check("office-open", f"Was {office.name} open in {asked.years}?", (answer, says),
                 "table of offices", office.sources)  # fmt: skip


def _standard_legal(asked: Asked) -> Iterator[Check]:
    fineness = asked.best.fineness
    if fineness is None or asked.best.kind != "solid":
        return
    known: list[tuple[int, int, set[float]]] = []
    sources: dict[str, None] = {}
    for g in _of_place(asked):
        found = {
            way.fineness if way.fineness is not None else g.system.fineness
            for e in g.expected
            if e.role in ("standard", "fineness", "assay-master")
            for way in e.ways
        } or {g.system.fineness}
        legal = {f for f in found if f is not None}
        if legal:
            known.append((g.year_from, g.year_to, legal))
            sources.update(dict.fromkeys(s for e in g.expected for w in e.ways
                                         if e.role == "standard" for s in w.sources))  # fmt: skip
            sources.update(dict.fromkeys(g.system.sources))
    rules = asked.rules("standard", "fineness")
    in_force = "; ".join(r.rule for r in rules)
    sources.update(dict.fromkeys(s for r in rules for s in r.sources))
    yes, no = set[int](), set[int]()
    for year in range(asked.low, min(asked.high, OPEN_END) + 1):
        here = [legal for low, high, legal in known if low <= year <= high]
        if here:
            fits = any(abs(f - fineness) < 1 for legal in here for f in legal)
            (yes if fits else no).add(year)
    both = "; ".join(sorted({f"{f:g}" for _, _, legal in known for f in legal}))
    if yes and not no:
        answer, says = Answer.YES, f"{fineness:g} was marked at {asked.where} in {asked.years}"
    elif no and not yes:
        answer, says = Answer.NO, f"{asked.where} marked {both} in {asked.years}, not {fineness:g}"
    elif yes:
        answer, says = Answer.UNKNOWN, f"{fineness:g} was marked in a part of {asked.years} only"
    else:
        answer, says = Answer.UNKNOWN, "no standard is on record there for those years"
    yield _check("standard-legal", f"Was {fineness:g} a standard of {asked.where} in {asked.years}?",
                 (answer, says), in_force or "table of signs by year", tuple(sources))  # fmt: skip


def _of_place(asked: Asked) -> list[Segment]:
    """Segments of the reading's place and years, of every solid system; without an office, its own."""
    if asked.office is None:
        return list(asked.segments)
    return [
        g
        for g in asked.plan.segments
        if g.office is not None
        and g.office.id == asked.office.id
        and g.system.kind == "solid"
        and g.year_from <= asked.high
        and g.year_to >= asked.low
    ]


def _date_letter(asked: Asked) -> Iterator[Check]:
    if asked.office is None or asked.office.id not in asked.plan.letters:
        return
    name = next((a.shown for a in asked.best.assigned if a.role == "date"), None)
    seen = asked.seen().get(name) if name else None
    if seen is None or not seen.letters or seen.letters[0][0] is None:
        return
    said = seen.letters[0][0]
    known = [
        letter
        for year in range(asked.low, min(asked.high, OPEN_END) + 1)
        if (letter := asked.plan.letter_of(asked.office.id, year))
    ]
    sources = tuple(
        dict.fromkeys(s for at in known for s in asked.plan.cycles[at.cycle].sources)
    )  # fmt: skip
    asks = f"Did {asked.office.name} strike {name} in {asked.years}?"
    on_record = ", ".join(
        dict.fromkeys(f"{'/'.join(at.letters)} ({'/'.join(at.styles) or 'style not known'})"
                      for at in known[:4])
    )  # fmt: skip
    if not known:
        answer, says = Answer.UNKNOWN, "no letter of those years is on record"
    elif any(_is_letter(said, seen, at.letters, at.styles, at.case) for at in known):
        doubted = all(at.doubtful for at in known)
        answer = Answer.UNKNOWN if doubted else Answer.YES
        says = f"on record: {on_record}" + (", which the table doubts" if doubted else "")
    else:
        answer, says = Answer.NO, f"on record: {on_record}; look at the letter again"
    yield _check("date-letter", asks, (answer, says), "table of date letters", sources)


def _is_letter(
    said: str, seen: Seen, letters: tuple[str, ...], styles: tuple[str, ...], case: str
) -> bool:
    """Whether the letter, its case if sure, and its style if stated are those on record."""
    if not any(seen_given(said, fold(at)) > 0.3 for at in letters):
        return False
    mark = seen.mark
    if mark.case and mark.case_sure and case in ("capital", "small") and mark.case != case:
        return False
    if mark.style is None or not styles or mark.style in styles:
        return True
    usual = max(style_given(s, (s,)) for s in styles)
    return style_given(mark.style, styles) / usual > _OTHER_STYLE


def _duty(asked: Asked) -> Iterator[Check]:
    country = asked.best.country
    dutiable = [s for s in asked.library.signs if s.role == "duty" and s.kind == "device"]
    if asked.best.kind != "solid" or not asked.segments or country not in ("GB", "IE"):
        return
    presence = [
        next((e.presence for e in g.expected if e.role == "duty"), 0.0) for g in asked.segments
    ]
    values = {s.value for s in dutiable if s.system.startswith(country)}
    by_name = asked.seen()
    seen = next((a.shown for a in asked.best.assigned if a.role == "duty"), None) or next(
        (a.shown for a in asked.best.assigned
         if a.role == "stray" and a.shown in by_name
         and any(chance >= _NAMED_SO for d, chance in by_name[a.shown].devices.items()
                 if d in values)),
        None,
    )  # fmt: skip
    rules = asked.rules("duty")
    told = "; ".join(r.rule for r in rules) or "no duty mark was struck there in those years"
    sources = tuple(dict.fromkeys(s for r in (rules or dutiable[:1]) for s in r.sources))
    searched = asked.finding.observed.complete >= _FULLY_SEARCHED
    if min(presence) >= _DUE:
        due = "a duty mark was due"
        answer = Answer.YES if seen else Answer.NO if searched else Answer.UNKNOWN
        says = f"{due}, and {seen} is there" if seen else f"{due}, and none was seen"
        if not seen:
            says += "; small wares were exempt, and the punch wears"
    elif max(presence) == 0:
        answer = Answer.NO if seen else Answer.YES
        says = f"no duty mark was struck in {asked.years}, " + (
            f"yet {seen} is there" if seen else "and none was seen"
        )
    else:
        answer, says = Answer.UNKNOWN, f"in {asked.years} it was struck in a part of the time"
    yield _check("duty", f"Does the duty mark agree with {asked.where} in {asked.years}?", (answer, says), told, sources)  # fmt: skip


def _required(asked: Asked) -> Iterator[Check]:
    there = {a.role for a in asked.best.assigned}
    vain = _looked_for(asked)
    searched = asked.finding.observed.complete >= _FULLY_SEARCHED
    rule = next((r for r in asked.library.rules if r.id == _MISSING), None)
    roles: dict[str, list[float]] = {}
    sources: dict[str, tuple[str, ...]] = {}
    for g in asked.segments:
        for e in g.expected:
            roles.setdefault(e.role, []).append(e.presence)
            sources.setdefault(e.role, e.sources)
    for role, presence in roles.items():
        least = _USUAL if role in vain else REQUIRED
        if role == "duty" or len(presence) < len(asked.segments) or min(presence) < least:
            continue
        name = role_words(role)
        if role in there:
            answer, says = Answer.YES, f"the {name} is there"
        elif role in vain:
            answer, says = (
                Answer.NO,
                f"the {name} was looked for in vain; look again before trusting the set",
            )
        elif searched:
            answer, says = Answer.NO, f"no {name} was seen; one missing mark rules no year out"
        else:
            answer, says = Answer.UNKNOWN, "the piece was not fully searched"
        british = asked.best.country in ("GB", "IE") and rule is not None
        told = rule.rule if british and rule else f"{min(presence):.0%} of full sets show it"
        more = rule.sources if british and rule else ()
        yield _check(f"required:{role}", f"Is the {name} there?", (answer, says), told,
                     tuple(dict.fromkeys((*sources[role], *more))))  # fmt: skip


def _looked_for(asked: Asked) -> frozenset[str]:
    """Roles that the observer names as not there: "no town mark"."""
    roles: frozenset[str] = frozenset()
    for search in asked.finding.observed.searched:
        if not search.found and search.note:
            called = digest(Mark(hint=search.note), asked.plan.thesaurus, asked.plan.known_words)
            roles |= called.roles
    return roles


def _facing(asked: Asked) -> Iterator[Check]:
    """Whether a picture looks the way that the thesaurus has it: a lion passant walks to the left."""
    seen = asked.seen()
    rows = {d.id: d for d in asked.library.devices}
    for assigned in asked.best.assigned:
        one = seen.get(assigned.shown)
        said = _side(one.mark.note or "") if one is not None else None
        if one is None or said is None or assigned.role == "stray":
            continue
        told = [rows[i] for i, p in one.devices.items() if p >= _NAMED_SO and i in rows]
        sides = {side: d for d in told if (side := _feature(d.features))}
        if len(sides) != 1:
            continue
        side, row = next(iter(sides.items()))
        wrong = said == "wrong" or said != side
        says = f"the {row.label} looks to the {side}" + (
            "; one turned round is another maker's or an imitation" if wrong else ""
        )
        yield _check(f"facing:{row.id}", f"Does the {row.label} look the right way?",
                     (Answer.NO if wrong else Answer.YES, says), "thesaurus of pictures", row.sources)  # fmt: skip


def _side(note: str) -> str | None:
    """left, right or wrong, as an observer says that a picture looks."""
    words = set(re.findall(r"[a-z]+", note.casefold()))
    if words & {"reversed", "mirrored", "backwards"} or {"wrong", "way"} <= words:
        return "wrong"
    if not words & {"facing", "looking", "to", "profile", "walking", "turned"}:
        return None
    # heraldry names sides from behind the shield: dexter is the viewer's left
    left, right = bool(words & {"left", "dexter"}), bool(words & {"right", "sinister"})
    return None if left == right else "left" if left else "right"


def _feature(features: str) -> str:
    found = re.search(r"\bfacing=(left|right)\b", features)
    return found.group(1) if found else ""


def _makers(asked: Asked) -> Iterator[Check]:
    rows: dict[str, list[Maker]] = {}
    for row in asked.library.makers:
        rows.setdefault(row.name, []).append(row)
    likely = [m for m in asked.best.makers if m.probability >= _LIKELY_MAKER][:_MOST_MAKERS]
    for guess in likely:
        here = [r for r in rows.get(guess.name, ()) if not guess.place or r.place == guess.place]
        if not here:
            continue
        row = here[0]
        asks = f"Was {guess.name} at work in {asked.years}?"
        span = f"{row.year_from or '?'} to {row.year_to or '?'}"
        place = f", at {row.place}" if row.place else ""
        says = f"known from {span}{place}"
        if row.year_from is None and row.year_to is None:
            answer, says = Answer.UNKNOWN, f"no years on record{place}"
        elif asked.high < (row.year_from or 0) or asked.low > (row.year_to or OPEN_END):
            answer = Answer.NO
        else:
            answer = Answer.YES
        yield _check(f"maker:{row.id}", asks, (answer, says), "register of makers", row.sources)


def _crown_on_plate(asked: Asked) -> Iterator[Check]:
    if asked.best.kind not in ("plated", "base") or asked.best.country not in ("GB", None):
        return
    crown = next((s for s in asked.seen().values() if s.devices.get("crown", 0) >= _NAMED_SO), None)
    rule = next((r for r in asked.library.rules if r.id == _CROWN), None)
    if crown is None or rule is None:
        return
    if asked.high <= _LAST_CROWN:
        answer, says = Answer.YES, f"a crown on plate of {asked.years} was not yet forbidden"
    elif asked.low > _LAST_CROWN:
        answer, says = Answer.NO, f"a crown was no longer to be struck on plate in {asked.years}"
    else:
        answer, says = Answer.UNKNOWN, f"lawful in a part of {asked.years}: the earlier is likelier"
    yield _check("crown-on-plate", "Was a crown allowed on plated ware then?", (answer, says),
                 rule.rule, rule.sources)  # fmt: skip


def _registered(asked: Asked) -> Iterator[Check]:
    observed = asked.finding.observed
    # a passage not understood may still hold a number of registration
    texts = (Mark(text=u) for u in observed.unread if any(c.isdecimal() for c in u))
    found = earliest_year((*observed.marks, *texts), asked.library)
    if found is None:
        return
    year, reason, sources = found
    answer = Answer.YES if asked.high >= year else Answer.NO
    yield _check("not-before", f"Do registrations allow {asked.years}?", (answer, f"made in {year} or later. {reason}"),

                 "a registration or patent is the earliest date of making", sources)  # fmt: skip


#: in the order in which they are shown
QUESTIONS: tuple[Callable[[Asked], Iterator[Check]], ...] = (
    _office_open, _standard_legal, _date_letter, _duty, _required, _facing, _makers, _crown_on_plate, _registered,
)  # fmt: skip
