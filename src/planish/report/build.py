"""From a case worked through to what is printed."""

import msgspec

from planish.case.worked import Worked
from planish.library import Library, load
from planish.report import case_view, reading_view
from planish.report.citations import Citations
from planish.report.piece_view import piece_view
from planish.report.texts import cautions, glossary
from planish.report.view import LedgerView, ReportView
from planish.report.words import joined, numbers


def view(worked: Worked, library: Library | None = None) -> ReportView:
    """The whole report of a case; a draft while anything that it must hold is missing."""
    library = library or load()
    cite = Citations(library)
    case, a = worked.case, worked.case.case
    pieces = tuple(piece_view(w, case, cite, library) for w in worked.pieces)
    ledgers = _ledgers(worked, cite)
    return ReportView(
        number=a.number,
        title=a.title,
        author=a.appraiser.name or "",
        date=_date(worked),
        draft=worked.draft,
        lacks=len(worked.gaps),
        subject="identification" if a.identifies_only else "appraisal",
        notice=a.notice or "",
        cover=case_view.cover(case),
        summary=case_view.summary(worked),
        assignment=case_view.assignment(case),
        pieces=pieces,
        ledgers=ledgers,
        sources=cite.sources(),
        source_notes=(*_consulted(worked), *cite.notes()),
        cautions=cautions(worked),
        conditions=case_view.conditions(case),
        certification=case_view.certification(case),
        signature=case_view.signature(case),
        appraiser=case_view.appraiser(case),
        missing=case_view.missing(worked),
        doubts=case_view.doubts(worked) if worked.draft else (),
        glossary=glossary(valued=not a.identifies_only),
    )


def _date(worked: Worked) -> tuple[int, ...]:
    """Date of the document: the report's, or in a draft the latest thing that the case dates."""
    a, price = worked.case.case, worked.case.metal_price
    given = (a.report_date, a.effective_date, a.inspection.date, price.date if price else None)
    return numbers(next((text for text in given if text), None))


def _ledgers(worked: Worked, cite: Citations) -> tuple[LedgerView, ...]:
    found = []
    for work in worked.pieces:
        if not work.observed.marks:
            continue
        ledger = reading_view.ledger(f"Piece {work.piece.number}", work.reading.finding, cite)
        if ledger is not None:
            found.append(msgspec.structs.replace(ledger, subtitle=work.piece.title))
    return tuple(found)


def _consulted(worked: Worked) -> tuple[str, ...]:
    """The tables that the readings were compared with: no match is no proof of falsehood."""
    tables = dict.fromkeys(t for w in worked.pieces for t in w.reading.consulted)
    if not tables:
        return ()
    return (
        (
            f"Tables consulted for the readings: {joined(*tables, sep='; ')}. That a mark has no match in"
            " them is no proof that it is false."
        ),
    )
