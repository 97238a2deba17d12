"""Mechanical checks of the likeliest reading against the library, shown one by one.

The engine weighs; these ask. Each check takes the reading as it stands and puts one plain question to
one table: was the office open, was the standard legal, was duty due, did the office use that letter,
is a required mark there, was the maker at work, was a crown lawful on plate, is the piece younger than
its registration. A check that says no is a reason to look again, not a verdict.
"""

from planish.library.loader import Library
from planish.marks.check_asked import Answer, Asked, Check
from planish.marks.check_questions import QUESTIONS
from planish.marks.plan import OPEN_END, Plan
from planish.marks.reading import ReadingFinding


def checks(
    finding: ReadingFinding, library: Library, plan: Plan | None = None
) -> tuple[Check, ...]:
    """The checks of the likeliest reading; none where no reading stands out.

    plan: the library laid out, if it is at hand (``Reader.plan``).
    """
    best = finding.best
    if best is None or best.kind == "unknown" or best.year_from is None:
        return ()
    plan = plan or Plan(library)
    low, high = best.year_from, best.year_to if best.year_to is not None else OPEN_END
    office = next(
        (o for o in library.offices if o.name == best.office and best.country in (None, o.country)),
        None,
    )
    line = next((s.line for s in library.systems if s.id == best.system), "")
    segments = tuple(
        g
        for g in plan.segments
        if (g.office.name if g.office else None) == best.office
        and (g.system.id == best.system or (line and g.system.line == line))
        and g.year_from <= high
        and g.year_to >= low
    )
    asked = Asked(finding, best, library, plan, office, low, high, segments)
    return tuple(check for ask in QUESTIONS for check in ask(asked))


__all__ = ["Answer", "Check", "checks"]
