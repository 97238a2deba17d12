"""``--searched``: places looked at, in and out."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from planish.cli.errors import BadInput
from planish.cli.terminal import heading, percent, prose, table, tint

if TYPE_CHECKING:
    from planish.evidence import Finding
    from planish.library import Library
    from planish.marks.observation import Search
    from planish.marks.searched import Searched

_FOUND = {"found": True, "nothing": False}


def searches(said: Sequence[str], where: str = "--searched") -> tuple["Search", ...]:
    """Each ``PLACE``, ``PLACE:nothing`` or ``PLACE:found`` as a search.

    Raises:
        BadInput: a place is empty or too long.
    """
    from planish.marks.observation import Search

    found = []
    for text in said:
        place, _, ending = text.rpartition(":")
        if place and ending.strip().casefold() in _FOUND:
            seen = _FOUND[ending.strip().casefold()]
        else:
            place, seen = text, False
        place = " ".join(place.split())
        if not place or len(place) > 200:
            raise BadInput(
                "no place" if not place else "longer than 200 characters",
                where,
                'write a place of the form, as "inside of the lid:nothing", or its number',
            )
        found.append(Search(place=place, found=seen))
    return tuple(found)


def searched_of(
    said: Sequence[str], form: str | None, library: "Library", *, marked: bool
) -> "Searched | None":
    """The usual places of the form with what was searched; None where nothing is said of it.

    Raises:
        BadInput: no form, none that the library knows, or marks found that are not given.
    """
    from planish.marks.searched import searched

    found = searches(said)
    if not found:
        return None
    if not form:
        raise BadInput("--searched needs a form", "--form", "say what the piece is: --form teapot")
    result = searched(found, form, library)
    if result is None:
        raise BadInput(
            "not a form that the library knows", f"'{form}'", "'planish look' lists the forms"
        )
    if not marked and any(s.found for s in result.searches()):
        raise BadInput(
            "a mark was found, and none is given", "--searched", "write the mark down as a MARK"
        )
    return result


def state_words(found: bool | None) -> str:  # noqa: FBT001  # three states
    """The state of a place in the words of every screen."""
    return "not searched" if found is None else "seen" if found else "searched, nothing found"


def searched_lines(found: "Searched") -> list[str]:
    """The places of the form with their states."""
    rows = [(f"{p.number}.", state_words(p.found), p.place) for p in found.places]
    rows += [
        ("", state_words(s.found), f"{s.place} (on no list of this form)") for s in found.beside
    ]
    return [*heading(f"Places searched on this {found.form}"), *table(rows, right=(0,))]


def unmarked_page(found: "Searched", finding: "Finding") -> list[str]:
    """The page for a piece on which no mark was found."""
    from planish.evidence import SETTLED

    best = finding.hypotheses[0]
    settled = "likeliest" if best.probability >= SETTLED else "not settled; likeliest"
    verdict = f"No mark found; {settled}: {best.label}: {percent(best.probability)}"
    lines = prose(verdict, 0, 2)
    lines = [tint(line, "head") for line in lines]
    lines += prose("That no mark was found is no proof of plate, and none of silver.")
    rest = [(percent(h.probability), h.label) for h in finding.hypotheses[1:]]
    lines += [*heading("Otherwise"), *table(rest, right=(0,))]
    lines += searched_lines(found)
    lines += _next(found)
    if finding.ledger.lines:
        rows = [
            (f"{line.likelihood_db['marked']:+.1f}", line.observed) for line in finding.ledger.lines
        ]
        lines += [*heading("Why (decibans for a mark that was missed)"), *table(rows, right=(0,))]
    lines += [*heading("Sources"), *table([("practice", "common practice in the trade")])]
    return lines


def _next(found: "Searched") -> list[str]:
    place = found.next
    lines = [*heading("Next look")]
    if place:
        how = f" ({place.how})" if place.how else ""
        lines += [tint(t, "look") for t in prose(f"{place.number}. {place.place}{how}", 2, 3)]
        return lines
    return lines + [
        tint(t, "look")
        for t in prose(
            "every usual place is searched: only a test of the metal tells silver from plate here"
        )
    ]


def searched_plain(found: "Searched | None", finding: "Finding | None") -> dict[str, object]:
    """What was searched, and what finding nothing means, ready for JSON."""
    if found is None:
        return {}
    place = found.next
    plain: dict[str, object] = {
        "searched": {
            "form": found.form,
            "complete": round(found.complete, 3),
            "places": [
                {"number": p.number, "place": p.place, "state": state_words(p.found)}
                for p in found.places
            ],
            "beside": [{"place": s.place, "state": state_words(s.found)} for s in found.beside],
            "next": place.place if place else None,
        }
    }
    if finding:
        plain["unmarked"] = [
            {"key": h.key, "label": h.label, "probability": round(h.probability, 4),
             "prior": h.prior}
            for h in finding.hypotheses
        ]  # fmt: skip
    return plain
