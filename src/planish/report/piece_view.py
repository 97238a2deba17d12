"""One piece, as printed."""

import msgspec

from planish.case.kinds import ProvenanceGrade
from planish.case.model import Case, Confirmed, Piece, Test
from planish.case.worked import PieceWork
from planish.library import Library
from planish.marks.where import where_to_look
from planish.quantity import Money
from planish.report import reading_view, weight_view, worth_view
from planish.report.citations import Citations
from planish.report.texts import restrictions
from planish.report.view import Line, Look, OpinionView, Picture, PieceView, ReadingView, Tested
from planish.report.words import day, joined, money, percent, sentence

_TESTS = {
    "magnet": "magnet",
    "density": "density by immersion",
    "touch": "touch",
    "xrf": "X-ray fluorescence",
    "sound": "sound",
    "other": "other",
}
_GRADES = {
    ProvenanceGrade.DOCUMENTED: "Documented",
    ProvenanceGrade.STATED: "Stated by the owner",
    ProvenanceGrade.TRADITION: "Family tradition",
}
_KINDS = {
    "solid": "solid silver",
    "plated": "plated",
    "base": "base metal",
    "unknown": "not settled",
}
_SPOTS = 2


def anchor(piece: Piece) -> str:
    """Name of the piece's place in the document."""
    return f"piece-{piece.number}"


def piece_view(work: PieceWork, case: Case, cite: Citations, library: Library) -> PieceView:
    """All that is printed of one piece."""
    piece = work.piece
    opinion = work.opinion
    shown_worth = worth_view.worth(opinion, piece.opinion) if opinion and opinion.grid else None
    return PieceView(
        number=str(piece.number),
        title=piece.title,
        subtitle=subtitle(work),
        anchor=anchor(piece),
        pictures=_pictures(piece),
        description=piece.description or "",
        identification=_identification(piece),
        marks=reading_view.mark_rows(work.observed.marks, work.reading.best),
        marks_text=f"As noted: {piece.marks_text}" if piece.marks_text else "",
        searched=reading_view.searched(work.observed),
        reading=_reading(work, cite, library),
        tests=tuple(_tested(t) for t in piece.tests),
        weight=weight_view.weighed(work.weight) if work.weight else (),
        weight_notes=_weight_notes(work),
        metal=weight_view.metal_steps(work.metal, work.weight)
        if work.metal and work.weight
        else (),
        metal_notes=tuple(sentence(n) for n in weight_view.metal_notes(work.metal))
        if work.metal
        else (),
        worth=shown_worth,
        opinion=_opinion(work, case),
        condition=_condition(piece),
        provenance=_provenance(piece),
        cautions=tuple(sentence(w) for w in restrictions(work)),
    )


def subtitle(work: PieceWork) -> str:
    """What the piece is read as, in one line."""
    confirmed = work.piece.confirmed
    if confirmed is not None:
        return confirmed.wording or _confirmed_details(confirmed)
    best = work.reading.best
    if not work.observed.marks:
        return "no marks recorded; not identified yet"
    if best is None or best.kind == "unknown":
        return "not settled; no reading of its marks stands out"
    if not reading_view.settled(best):
        return f"not settled; likeliest by its marks: {reading_view.labelled(best)}"
    return f"{reading_view.labelled(best)} (proposed, not confirmed)"


def _pictures(piece: Piece) -> tuple[Picture, ...]:
    return tuple(
        Picture(
            file=p.file,
            number=f"{piece.number}.{n}",
            caption=p.caption or "",
            alt=p.alt or p.caption or f"Photograph {n} of piece {piece.number}, {piece.title}",
            whole=p.shows.value == "whole",
        )
        for n, p in enumerate(piece.photographs, 1)
    )


def _lines(*rows: tuple[str, str | None]) -> tuple[Line, ...]:
    return tuple(Line(label=label, value=value) for label, value in rows if value)


def _identification(piece: Piece) -> tuple[Line, ...]:
    counted = piece.counted_as or (f"{piece.quantity} objects" if piece.quantity > 1 else None)
    return (
        *_lines(
            ("Form", piece.form),
            ("Counted as", counted),
            ("Materials", piece.materials),
            ("Technique", piece.technique),
            ("Dimensions", "; ".join(f"{d.name} {d.value}" for d in piece.dimensions)),
            ("Inscriptions", piece.inscriptions),
            ("Distinguishing features", piece.features),
            ("Owner's number", piece.inventory),
        ),
        *(
            Line(
                label=f"Part: {p.name}",
                value=joined(p.material, p.belongs.value, p.gross, p.note, sep="; "),
            )
            for p in piece.parts
        ),
        *_lines(("Note", piece.note)),
    )


def _reading(work: PieceWork, cite: Citations, library: Library) -> ReadingView | None:
    confirmed = work.piece.confirmed
    found = reading_view.reading(work.reading, cite) if work.observed.marks else ReadingView()
    if not work.observed.marks and confirmed is None:
        return None
    notes = list(found.notes)
    if work.agreement is not None:
        notes.insert(
            0,
            f"The marks alone give what is confirmed a probability of {percent(work.agreement)}.",
        )
    return msgspec.structs.replace(
        found,
        confirmed=sentence(confirmed.wording or _confirmed_details(confirmed)) if confirmed else "",
        reason=_because(confirmed) if confirmed else "",
        looks=tuple(_where(look, work.piece, library) for look in found.looks),
        notes=tuple(notes),
    )


def _where(look: Look, piece: Piece, library: Library) -> Look:
    """The look with the places where this form is usually marked."""
    if look.where or not piece.form:
        return look
    spots = where_to_look(piece.form, library)[:_SPOTS]
    places = "; ".join(joined(s.place, s.how) for s in spots)
    return msgspec.structs.replace(look, where=sentence(places)) if places else look


def _confirmed_details(confirmed: Confirmed) -> str:
    years = [str(y) for y in (confirmed.year_from, confirmed.year_to) if y is not None]
    return joined(
        _KINDS[confirmed.kind.value],
        confirmed.office or confirmed.country,
        " to ".join(dict.fromkeys(years)),
        f"{confirmed.fineness:g} parts per thousand" if confirmed.fineness else "",
        confirmed.maker,
    )


def _because(confirmed: Confirmed) -> str:
    details = sentence(_confirmed_details(confirmed)) if confirmed.wording else ""
    when = f"Confirmed {day(confirmed.date)}." if confirmed.date else ""
    return joined(details, sentence(confirmed.reason), when, sep=" ")


def _tested(test: Test) -> Tested:
    found = ""
    if test.fineness is not None:
        doubt = f" ± {test.plus_minus:g}" if test.plus_minus is not None else ""
        found = f"{test.fineness:g}{doubt} parts per thousand of silver"
    density = joined(
        f"in air {test.in_air}" if test.in_air else "",
        f"in water {test.in_water}" if test.in_water else "",
        f"water at {test.water_temperature:g} °C" if test.water_temperature is not None else "",
    )
    return Tested(
        kind=_TESTS[test.kind.value],
        spot=test.spot or "",
        reading=joined(test.reading, density, sep="; "),
        says=joined(
            found,
            test.instrument,
            day(test.date),
            f"consent: {test.consent}" if test.consent else "",
            test.note,
            sep="; ",
        ),
    )


def _weight_notes(work: PieceWork) -> tuple[str, ...]:
    weight = work.piece.weight
    own = [weight.note, f"Weighed {day(weight.date)}." if weight.date else ""] if weight else []
    asks = [
        f"Net weight is not stated: {a.because}; {a.says}"
        for a in (work.weight.asks if work.weight else ())
    ]
    bench = list(work.weight.notes) if work.weight else []
    return tuple(sentence(n) for n in (*own, *asks, *bench) if n)


def _opinion(work: PieceWork, case: Case) -> OpinionView | None:
    opinion, given = work.opinion, work.piece.opinion
    if opinion is None or opinion.value is None:
        return None
    span = ""
    if opinion.low is not None and opinion.high is not None:
        span = span_of(opinion.low, opinion.high)
    reasons = given.reasons if given and given.reasons else opinion.reasons
    meant = (
        f"meant to hold {100 * opinion.level:.0f} % of such sales"
        if opinion.level is not None
        else "set by the appraiser"
    )
    return OpinionView(
        figure=money(opinion.value),
        range=span,
        basis=basis(case),
        lines=_lines(("Approach", opinion.approach), ("Range", meant if span else "")),
        reasons=tuple(sentence(r) for r in reasons),
    )


def span_of(low: Money, high: Money) -> str:
    """A range in one currency.

    >>> span_of(Money.parse("USD 580"), Money.parse("USD 680"))
    'USD 580 to 680'
    """
    return f"{money(low)} to {money(high).partition(' ')[2]}"


def basis(case: Case) -> str:
    """Type of value, date and market of every figure, in one line."""
    a = case.case
    included = {True: "included", False: "not included"}
    premium = (
        included.get(a.market.premium_included) if a.market.premium_included is not None else ""
    )
    tax = included.get(a.market.tax_included) if a.market.tax_included is not None else ""
    text = joined(
        joined(
            a.type_of_value.value if a.type_of_value else "",
            f"at {day(a.effective_date)}" if a.effective_date else "",
            sep=" ",
        ),
        f"{a.market.level.value} level" if a.market.level else "",
        f"buyer's premium {premium}" if premium else "",
        f"sales tax {tax}" if tax else "",
    )
    return text[:1].upper() + text[1:]


def _condition(piece: Piece) -> tuple[Line, ...]:
    return (
        *_lines(("As a whole", piece.condition)),
        *(
            Line(label=p.name[:1].upper() + p.name[1:], value=p.condition)
            for p in piece.parts
            if p.condition
        ),
    )


def _provenance(piece: Piece) -> tuple[Line, ...]:
    rows = [
        Line(
            label=_GRADES[p.grade],
            value=joined(p.says, f"document: {p.document}" if p.document else "", sep="; "),
        )
        for p in piece.provenance
    ]
    got = piece.acquired
    if got is not None:
        value = joined(
            got.how,
            day(got.date),
            f"from {got.source}" if got.source else "",
            f"for {got.cost}" if got.cost else "",
        )
        rows += _lines(("Acquired", value))
    return tuple(rows)
