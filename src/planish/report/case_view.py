"""The assignment around the pieces: cover, summary, scope, conditions, certification, gaps."""

from planish.case import grouped
from planish.case.complete import Gap
from planish.case.kinds import ReportOption
from planish.case.model import Assignment, Case
from planish.case.worked import PieceWork, Totals, Worked
from planish.report.piece_view import anchor, basis, span_of, subtitle
from planish.report.view import Cover, Line, Missing, Scheduled, Section, Summary
from planish.report.words import day, grams, joined, money, sentence, share
from planish.worth import Opinion

_MAY_AFFECT = "If it is false, the value may be other than stated."
_HYPOTHETICAL = (
    "It is contrary to fact and assumed for the analysis; its use may have affected the value."
)
_RESTRICTED = (
    "Restricted appraisal report: for the named client and users only. How the opinions were reached"
    " may not be understood properly without the workfile."
)


_NO_VALUE = (
    "Identification only: no opinion of value is stated here, and none may be drawn from it. It is no"
    " appraisal."
)


def _line(label: str, value: str | None) -> tuple[Line, ...]:
    return (Line(label=label, value=value),) if value else ()


def _yes(value: bool | None, what: str) -> str:  # noqa: FBT001  # the case's own true and false
    return "" if value is None else f"{what} {'included' if value else 'not included'}"


def cover(case: Case) -> Cover:
    """The first page."""
    a = case.case
    who = a.appraiser
    return Cover(
        kind=a.report_option.value,
        title=a.title,
        lines=(
            *_line("Case", a.number),
            *_line("Client", a.client),
            *_line("Type of value", a.type_of_value.value if a.type_of_value else None),
            *_line("Effective date", day(a.effective_date)),
            *_line("Report date", day(a.report_date)),
            *_line("Appraiser", joined(who.name, who.employer, who.address, sep="\n")),
        ),
        notices=_notices(a),
    )


def _notices(a: Assignment) -> tuple[str, ...]:
    notices = []
    if a.report_option is ReportOption.RESTRICTED:
        notices.append(_RESTRICTED)
    if a.identifies_only:
        notices.append(_NO_VALUE)
    if a.revision is not None:
        r = a.revision
        notices.append(
            f"This report replaces {r.of} of {day(r.date)}, which is kept. {sentence(r.reason)}"
        )
    notices += [
        f"Extraordinary assumption: {sentence(t)} {_MAY_AFFECT}"
        for t in a.extraordinary_assumptions
    ]
    notices += [
        f"Hypothetical condition: {sentence(t)} {_HYPOTHETICAL}" for t in a.hypothetical_conditions
    ]
    return tuple(notices)


def summary(worked: Worked) -> Summary:
    """The letter, the schedule of pieces and the total."""
    a, totals = worked.case.case, worked.totals
    count = len(worked.pieces)
    pieces = "the piece" if count == 1 else f"the {count} pieces"
    named = joined(
        f"This report states an opinion of the {a.type_of_value.value}" if a.type_of_value else "",
        "This report says" if a.identifies_only else "",
        f"of {pieces} listed below" if a.type_of_value else "",
        f"what {pieces} listed below {'is' if count == 1 else 'are'}" if a.identifies_only else "",
        f"at {day(a.effective_date)}" if a.type_of_value and a.effective_date else "",
        f"for {a.client}" if (a.type_of_value or a.identifies_only) and a.client else "",
        "and states no value" if a.identifies_only else "",
        sep=" ",
    )
    value = f"The total is {money(totals.value)}." if totals.value and count > 1 else ""
    market = joined(
        f"Figures are prices at the level of {a.market.level.value}" if a.market.level else "",
        _yes(a.market.premium_included, "buyer's premium"),
        _yes(a.market.tax_included, "sales tax"),
    )
    paragraphs = [
        sentence(named),
        joined(value, sentence(market), sep=" "),
        f"Intended use: {sentence(a.intended_use)}" if a.intended_use else "",
        _contents(worked),
    ]
    return Summary(
        paragraphs=tuple(p for p in paragraphs if p),
        schedule=tuple(_scheduled(w, valued=not a.identifies_only) for w in worked.pieces),
        total=money(totals.value) if totals.value and count > 1 else "",
        total_note=_total_note(totals, count),
        value_heading=a.type_of_value.value.capitalize() if a.type_of_value else "Value",
    )


def _contents(worked: Worked) -> str:
    """What is said of each piece: only what is there."""
    works = worked.pieces
    told = [
        "what was seen",
        "what it is read as and how surely",
        "what it weighs" if any(w.weight for w in works) else "",
        "what its metal comes to" if any(w.metal for w in works) else "",
        "how the value was found" if any(w.opinion and w.opinion.value for w in works) else "",
    ]
    said = [t for t in told if t]
    text = f"For each piece the report says {', '.join(said[:-1])} and {said[-1]}."
    if any(w.observed.marks for w in works):
        text += " What speaks for and against each reading stands line by line in appendix A."
    return text


def _scheduled(work: PieceWork, *, valued: bool) -> Scheduled:
    opinion, weight = work.opinion, work.weight
    net = weight.net if weight and weight.net is not None else None
    span = ""
    if opinion and opinion.value and opinion.low is not None and opinion.high is not None:
        span = span_of(opinion.low, opinion.high)
    return Scheduled(
        number=str(work.piece.number),
        title=work.piece.title,
        reading=subtitle(work),
        weight=grams(net) if net is not None else "",
        value=_figure(opinion) if valued else "",
        range=span,
        anchor=anchor(work.piece),
    )


def _figure(opinion: Opinion | None) -> str:
    return money(opinion.value) if opinion and opinion.value else "not valued"


def _total_note(totals: Totals, count: int) -> str:
    notes = []
    if totals.value and count > 1:
        notes.append(
            "The total is the sum of the single opinions, not the value of the pieces sold together."
        )
    if totals.value and totals.without:
        notes.append(f"Without a value, and not in it: {grouped.numbered(totals.without)}.")
    if totals.metal:
        metal = f"The metal of the pieces that have a metal value comes to {money(totals.metal)}"
        metal += f", of which {money(totals.payable)} payable" if totals.payable else ""
        notes.append(f"{metal}; a floor, not a value.")
    if totals.without_metal:
        notes.append(f"No metal value is stated for {grouped.numbered(totals.without_metal)}.")
    return " ".join(notes)


def assignment(case: Case) -> tuple[Section, ...]:
    """Scope and assignment, in the order of a report."""
    a, price = case.case, case.metal_price
    sections = [
        Section(
            title="Client and users",
            lines=(
                *_line("Client", a.client),
                *_line("Intended users", "\n".join(a.intended_users)),
                *_line("Intended use", a.intended_use),
                *_line("Interest appraised", a.property_interest),
            ),
        ),
        Section(
            title="Dates" if a.identifies_only else "Value",
            lines=(
                *_line("Type", a.type_of_value.value if a.type_of_value else None),
                *_line("Definition", a.value_definition),
                *_line("Source", a.definition_source),
                *_line("Terms", a.terms),
                *_line("Exposure time", a.exposure_time),
                *_line("Effective date", day(a.effective_date)),
                *_line("Report date", day(a.report_date)),
                *_line("Currency", a.currency),
            ),
        ),
        Section(title="Market", lines=_market(a)),
        Section(
            title="Inspection",
            lines=(
                *_line("Date", day(a.inspection.date)),
                *_line("Place", a.inspection.place),
                *_line("Extent", a.inspection.extent),
            ),
        ),
        Section(
            title="Scope of work",
            lines=(
                *_line("Done", a.scope.work),
                *_line("Research", a.scope.research),
                *_line("Not done", a.scope.not_done),
                *_line("Competence", a.competence),
            ),
        ),
        Section(
            title="Approaches to value",
            lines=(
                *_line("Sales comparison", a.approaches.sales_comparison),
                *_line("Cost", a.approaches.cost),
                *_line("Income", a.approaches.income),
                *_line("Earlier sales and offers", a.prior_sales),
                *_line("Reconciliation", a.reconciliation),
            ),
        ),
    ]
    if price is not None:
        sections.append(
            Section(
                title="Metal price used",
                lines=(
                    Line(
                        label="Fine silver",
                        value=f"{price.price} per {price.per}, {day(price.date)}",
                    ),
                    *_line("Source", joined(price.source, price.quoted)),
                    *_line(
                        "Payable share",
                        joined(share(price.payout_share), price.payout_basis)
                        if price.payout_share < 1 or price.payout_basis
                        else None,
                    ),
                    *_line("Charges", price.charges),
                ),
            )
        )
    if a.tax is not None:
        t = a.tax
        sections.append(
            Section(
                title="Tax use",
                lines=(
                    *_line("Purpose", t.purpose.value),
                    *_line("Statement", t.statement),
                    *_line("Date of transfer", day(t.transfer_date)),
                    *_line("Restrictions", t.restrictions),
                    *_line("Penalties", t.penalties_known),
                ),
            )
        )
    sections.append(
        Section(
            title="Standards and file",
            lines=(
                *_line("Standards", "\n".join(a.standards)),
                *_line("Workfile", a.workfile),
            ),
        )
    )
    return tuple(s for s in sections if s.lines)


def _market(a: Assignment) -> tuple[Line, ...]:
    m = a.market
    given = joined(
        f"buyer's premium {share(m.buyers_premium)}" if m.buyers_premium is not None else "",
        f"seller's commission {share(m.sellers_commission)}"
        if m.sellers_commission is not None
        else "",
        f"off asked prices {share(m.asking_discount)}" if m.asking_discount is not None else "",
        m.asking_source,
    )
    crossings = "\n".join(
        f"from {c.start} to {c.end}: × {c.factor:g} ({c.source})" for c in m.crossings
    )
    return (
        *_line("Level", m.level.value if m.level else None),
        *_line("Reason", m.reason),
        *_line(
            "Included",
            joined(_yes(m.premium_included, "buyer's premium"), _yes(m.tax_included, "sales tax")),
        ),
        *_line("Given for sales that name none", given),
        *_line("Between markets", crossings),
    )


def conditions(case: Case) -> tuple[Section, ...]:
    """Assumptions and limiting conditions."""
    a = case.case
    rows = (
        ("Assumptions", tuple(sentence(t) for t in a.assumptions)),
        (
            "Extraordinary assumptions",
            tuple(f"{sentence(t)} {_MAY_AFFECT}" for t in a.extraordinary_assumptions),
        ),
        (
            "Hypothetical conditions",
            tuple(f"{sentence(t)} {_HYPOTHETICAL}" for t in a.hypothetical_conditions),
        ),
        ("Limiting conditions", tuple(sentence(t) for t in a.limiting_conditions)),
    )
    return tuple(Section(title=title, items=items) for title, items in rows if items)


def certification(case: Case) -> Section | None:
    """The appraiser's own statements, as written."""
    c = case.case.certification
    items = [
        text
        for text in (
            c.facts, c.limits, c.interest, c.earlier_services, c.bias, c.engagement, c.fee,
            c.standards, c.inspected, c.help, *c.other,
        )
        if text
    ]  # fmt: skip
    return Section(title="Certification", items=tuple(items)) if items else None


def signature(case: Case) -> tuple[Line, ...]:
    """Where the appraiser signs; the program never does."""
    c, who = case.case.certification, case.case.appraiser
    return (
        Line(label=joined("Signature", who.name, sep=" of "), value=""),
        Line(label="Place and date", value=joined(c.place, day(c.date))),
    )


def appraiser(case: Case) -> Section | None:
    """Who gives the opinion, and with what experience."""
    lines = case.case.appraiser.qualifications
    return Section(title="Qualifications", items=lines) if lines else None


def missing(worked: Worked) -> tuple[Missing, ...]:
    """What the report lacks, pieces that lack the same together."""
    return tuple(
        Missing(
            where=_capital(where) or "Assignment",
            what=_capital(gap.what),
            remedy=sentence(gap.remedy),
            clause=_asked_by(gap),
        )
        for where, gap in grouped.gaps(worked.gaps)
    )


def _asked_by(gap: Gap) -> str:
    """The clause, and whether it is recalled; common practice names itself."""
    return gap.clause + (" (from memory)" if gap.sure == "memory" else "")


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def doubts(worked: Worked) -> tuple[Line, ...]:
    """What the appraiser should look at again before the report is issued, told once each."""
    return tuple(
        Line(label=_capital(where), value=sentence(says))
        for where, says in grouped.warnings(worked)
    )


def heading_of(worked: Worked) -> str:
    """Type of value, date and market, as they stand beside every figure."""
    return basis(worked.case)
