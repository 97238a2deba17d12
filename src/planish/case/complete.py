"""What a case still lacks before a report may be issued.

The rules are data: one row each, with the clause that asks for it and how sure that clause is
("seen" in a text of the standard, "memory" of it, or "practice"). A case with a gap is a draft.
"""

from collections.abc import Callable

import msgspec

from planish.case.kinds import Approach, ReadingKind, Shows, TypeOfValue
from planish.case.model import Case, Piece

#: types of value that assume a sale after some time on the market
_ASSUMES_SALE = frozenset(
    {
        TypeOfValue.FAIR_MARKET,
        TypeOfValue.MARKET,
        TypeOfValue.ORDERLY_LIQUIDATION,
        TypeOfValue.FORCED_LIQUIDATION,
    }
)


#: rules that ask for what only an opinion of value needs; not applied to an identification
VALUE_RULES = frozenset(
    {
        "property-interest", "type-of-value", "value-definition", "definition-source", "terms",
        "exposure-time", "effective-date", "currency", "market-level", "market-reason", "premium",
        "sales-tax", "sales-comparison", "cost", "income", "prior-sales", "reconciliation",
        "certify-fee", "metal-price", "tax-statement", "tax-date", "tax-restrictions",
        "tax-penalties", "acquired", "weight", "opinion", "opinion-value", "reasons",
        "comparables",
    }
)  # fmt: skip


class Gap(msgspec.Struct, frozen=True, kw_only=True):
    """One missing element.

    rule: stable id. key: where it goes in the file. piece: the piece's number, None for the case.
    what: what is missing. remedy: what to write. clause: who asks for it. sure: seen, memory or
    practice.
    """

    rule: str
    key: str
    what: str
    remedy: str
    clause: str
    sure: str
    piece: int | None = None

    def __str__(self) -> str:
        """The gap in one line."""
        where = f"piece {self.piece}: " if self.piece is not None else ""
        return f"{where}missing: {self.what} ({self.clause}); {self.remedy}"


class CaseRule(msgspec.Struct, frozen=True):
    """An element of the assignment; ``lacks`` is true where it is missing."""

    rule: str
    key: str
    what: str
    remedy: str
    clause: str
    sure: str
    lacks: Callable[[Case], bool]


class PieceRule(msgspec.Struct, frozen=True):
    """An element of each piece; ``lacks`` is true where it is missing."""

    rule: str
    key: str
    what: str
    remedy: str
    clause: str
    sure: str
    lacks: Callable[[Case, Piece], bool]


def missing(case: Case) -> list[Gap]:
    """All gaps, those of the assignment first, then piece by piece."""
    exempt = VALUE_RULES if case.case.identifies_only else frozenset()
    gaps = [_gap(r) for r in CASE_RULES if r.rule not in exempt and r.lacks(case)]
    for piece in case.pieces:
        gaps += [
            _gap(r, piece.number)
            for r in PIECE_RULES
            if r.rule not in exempt and r.lacks(case, piece)
        ]
    return gaps


def _gap(rule: CaseRule | PieceRule, piece: int | None = None) -> Gap:
    return Gap(
        rule=rule.rule,
        key=rule.key,
        what=rule.what,
        remedy=rule.remedy,
        clause=rule.clause,
        sure=rule.sure,
        piece=piece,
    )


def wants_metal(piece: Piece) -> bool:
    """Whether the value of this piece's metal is to be stated: solid silver, and not switched off."""
    kind = piece.confirmed.kind if piece.confirmed else ReadingKind.UNKNOWN
    return piece.use_metal_value and kind in (ReadingKind.SOLID, ReadingKind.UNKNOWN)


def _is_marked(piece: Piece) -> bool:
    return bool(piece.marks or piece.marks_text)


def _certified(name: str) -> Callable[[Case], bool]:
    return lambda case: getattr(case.case.certification, name) is None


def _approach(name: str) -> Callable[[Case], bool]:
    return lambda case: getattr(case.case.approaches, name) is None


def _stated(name: str) -> Callable[[Case], bool]:
    return lambda case: not getattr(case.case, name)


def _taxed(name: str) -> Callable[[Case], bool]:
    return lambda case: case.case.tax is not None and getattr(case.case.tax, name) is None


def _described(name: str) -> Callable[[Case, Piece], bool]:
    return lambda _case, piece: not getattr(piece, name)


_SR8 = "USPAP SR 8-2(a)"
_SR83 = "USPAP SR 8-3"
_REG = "26 CFR 1.170A-17(a)"

# fmt: off
CASE_RULES: tuple[CaseRule, ...] = (
    CaseRule("client", "case.client", "the client", "name who engaged you",
             f"{_SR8}(i)", "seen", _stated("client")),
    CaseRule("intended-users", "case.intended_users", "the intended users",
             "name them, or their type: the client, the insurer", f"{_SR8}(i)", "seen",
             _stated("intended_users")),
    CaseRule("intended-use", "case.intended_use", "the intended use",
             "say what the report is for", f"{_SR8}(ii)", "seen", _stated("intended_use")),
    CaseRule("property-interest", "case.property_interest", "the interest appraised",
             "say whose title is valued and what lies on it", f"{_SR8}(iv)", "seen",
             _stated("property_interest")),
    CaseRule("type-of-value", "case.type_of_value", "the type of value",
             "choose one type for the whole case", f"{_SR8}(v)", "seen",
             _stated("type_of_value")),
    CaseRule("value-definition", "case.value_definition", "the definition of the value",
             "write the definition in full", f"{_SR8}(v)", "seen", _stated("value_definition")),
    CaseRule("definition-source", "case.definition_source", "the source of the definition",
             "name the law, standard or policy it is taken from", f"{_SR8}(v)", "seen",
             _stated("definition_source")),
    CaseRule("terms", "case.terms", "the terms of payment",
             "say whether the value means cash or other terms", "USPAP SR 7-2(c)", "seen",
             lambda c: c.case.type_of_value in _ASSUMES_SALE and c.case.terms is None),
    CaseRule("exposure-time", "case.exposure_time", "the exposure time",
             "say how long the pieces would stand on the market", "USPAP SR 7-2(c)", "seen",
             lambda c: c.case.type_of_value in _ASSUMES_SALE and c.case.exposure_time is None),
    CaseRule("effective-date", "case.effective_date", "the effective date",
             "give the day at which the values hold", f"{_SR8}(vi)", "seen",
             _stated("effective_date")),
    CaseRule("report-date", "case.report_date", "the report date",
             "give the day of the report", f"{_SR8}(vi)", "seen", _stated("report_date")),
    CaseRule("currency", "case.currency", "the currency", "give one ISO 4217 code",
             "IVS 106 and common practice", "memory", _stated("currency")),
    CaseRule("scope", "case.scope.work", "the scope of work", "say what was done",
             f"{_SR8}(vii)", "seen", lambda c: c.case.scope.work is None),
    CaseRule("research", "case.scope.research", "the research",
             "say where sales, marks and history were looked up", f"{_SR8}(vii)", "seen",
             lambda c: c.case.scope.research is None),
    CaseRule("inspection-date", "case.inspection.date", "the date of inspection",
             "give the day on which the pieces were examined", _SR83, "memory",
             lambda c: c.case.inspection.date is None),
    CaseRule("inspection-extent", "case.inspection.extent", "the extent of the inspection",
             "say what was handled, opened, weighed and tested, and what was not", _SR83,
             "memory", lambda c: c.case.inspection.extent is None),
    CaseRule("market-level", "case.market.level", "the market level",
             "choose auction, dealer retail, private sale, dealer buying or scrap",
             "USPAP SR 7-3", "memory", lambda c: c.case.market.level is None),
    CaseRule("market-reason", "case.market.reason", "the reason for this market",
             "say why this is where such pieces are sold for this purpose", "USPAP SR 7-3",
             "memory", lambda c: c.case.market.reason is None),
    CaseRule("premium", "case.market.premium_included", "whether buyer's premium is included",
             "write true or false", "RICS VPGA 7", "memory",
             lambda c: c.case.market.premium_included is None),
    CaseRule("sales-tax", "case.market.tax_included", "whether sales tax is included",
             "write true or false", "RICS VPGA 7", "memory",
             lambda c: c.case.market.tax_included is None),
    CaseRule("sales-comparison", "case.approaches.sales_comparison",
             "the sales comparison approach, used or left out", "say which, and why",
             "USPAP SR 7-4", "memory", _approach("sales_comparison")),
    CaseRule("cost", "case.approaches.cost", "the cost approach, used or left out",
             "say which, and why", "USPAP SR 7-4", "memory", _approach("cost")),
    CaseRule("income", "case.approaches.income", "the income approach, used or left out",
             "say which, and why", "USPAP SR 7-4", "memory", _approach("income")),
    CaseRule("prior-sales", "case.prior_sales", "earlier sales, offers and agreements",
             "state those of a reasonable period, or that none are known", "USPAP SR 7-5",
             "memory", _stated("prior_sales")),
    CaseRule("reconciliation", "case.reconciliation", "the reconciliation",
             "say how data and approaches were weighed against each other", "USPAP SR 7-6",
             "memory", _stated("reconciliation")),
    CaseRule("appraiser", "case.appraiser.name", "the appraiser's name",
             "name who gives the opinion", _SR83, "memory",
             lambda c: c.case.appraiser.name is None),
    CaseRule("qualifications", "case.appraiser.qualifications", "the appraiser's qualifications",
             "give education and experience with this kind of object",
             "USPAP Competency Rule; 26 USC 170(f)(11)(E)", "memory",
             lambda c: not c.case.appraiser.qualifications),
    CaseRule("certify-facts", "case.certification.facts", "the certification that facts are true",
             "write it in your own words", _SR83, "memory", _certified("facts")),
    CaseRule("certify-limits", "case.certification.limits",
             "the certification that the analyses are your own and limited only as reported",
             "write it in your own words", _SR83, "memory", _certified("limits")),
    CaseRule("certify-interest", "case.certification.interest",
             "the certification on your interest in pieces and parties",
             "state none, or which; one who may buy a piece states it or declines", _SR83,
             "memory", _certified("interest")),
    CaseRule("certify-services", "case.certification.earlier_services",
             "the certification on services of the last three years", "state none, or which",
             _SR83, "memory", _certified("earlier_services")),
    CaseRule("certify-bias", "case.certification.bias", "the certification that there is no bias",
             "write it in your own words", _SR83, "memory", _certified("bias")),
    CaseRule("certify-engagement", "case.certification.engagement",
             "the certification that no result was agreed beforehand",
             "write it in your own words", _SR83, "memory", _certified("engagement")),
    CaseRule("certify-fee", "case.certification.fee",
             "the certification that the fee does not depend on the value",
             "write it in your own words", _SR83, "memory", _certified("fee")),
    CaseRule("certify-standards", "case.certification.standards",
             "the certification on the standards followed", "name standards and editions",
             _SR83, "memory", _certified("standards")),
    CaseRule("certify-inspected", "case.certification.inspected",
             "the certification whether you inspected in person", "state it", _SR83, "memory",
             _certified("inspected")),
    CaseRule("certify-help", "case.certification.help",
             "the certification on significant help by others", "name them and their part, or none",
             _SR83, "memory", _certified("help")),
    CaseRule("certify-date", "case.certification.date", "the date of signature",
             "give the day on which you sign", f"{_SR8}(xii)", "memory", _certified("date")),
    CaseRule("workfile", "case.workfile", "where the workfile is kept",
             "say where, by whom and until when: at least five years, and two years after a court"
             " case ends", "USPAP Record Keeping Rule", "seen", _stated("workfile")),
    CaseRule("metal-price", "metal_price", "the price of fine silver",
             "add [metal_price] with price, date and source", "common practice", "practice",
             lambda c: c.metal_price is None
             and any(p.weight is not None and wants_metal(p) for p in c.pieces)),
    CaseRule("tax-statement", "case.tax.statement", "the statement of the tax use",
             "say for which tax the report is made", f"{_REG}(3)", "memory", _taxed("statement")),
    CaseRule("tax-date", "case.tax.transfer_date", "the date of gift, death or sale",
             "give the day", f"{_REG}(3)", "memory", _taxed("transfer_date")),
    CaseRule("tax-restrictions", "case.tax.restrictions", "restrictions on use or sale",
             "state their terms, or that there are none", f"{_REG}(3)", "memory",
             _taxed("restrictions")),
    CaseRule("tax-penalties", "case.tax.penalties_known", "the declaration on penalties",
             "declare that you know the penalties for misstatement", f"{_REG}(3); 26 USC 6695A",
             "memory", _taxed("penalties_known")),
)

PIECE_RULES: tuple[PieceRule, ...] = (
    PieceRule("form", "form", "the kind of object", "name it: teapot, tablespoon, candlestick",
              "ICOM Object ID", "seen", _described("form")),
    PieceRule("description", "description", "the description",
              "describe it so that a stranger would recognise it", f"{_SR8}(iii)", "seen",
              _described("description")),
    PieceRule("materials", "materials", "the materials", "name all of them", "ICOM Object ID",
              "seen", _described("materials")),
    PieceRule("dimensions", "dimension", "the dimensions", "add [[piece.dimension]]",
              "ICOM Object ID", "seen", _described("dimensions")),
    PieceRule("condition", "condition", "the condition",
              "describe wear, damage, repairs and alterations", "USPAP SR 7-2(e)", "seen",
              _described("condition")),
    PieceRule("provenance", "provenance", "the provenance", "say what is known, or that nothing is",
              "USPAP SR 7-2(e)", "seen", _described("provenance")),
    PieceRule("photograph", "photograph", "a photograph of the whole piece",
              "add [[piece.photograph]]", "ICOM Object ID", "seen",
              lambda _, p: not any(f.shows is Shows.WHOLE for f in p.photographs)),
    PieceRule("photograph-scale", "photograph.scale", "a photograph with a scale",
              "lay a ruler beside the piece and write scale = true", "ICOM Object ID", "seen",
              lambda _, p: bool(p.photographs) and not any(f.scale for f in p.photographs)),
    PieceRule("photograph-marks", "photograph.shows", "a photograph of the marks",
              'add one with shows = "marks"', "ICOM Object ID", "seen",
              lambda _, p: _is_marked(p)
              and not any(f.shows is Shows.MARKS for f in p.photographs)),
    PieceRule("caption", "photograph.caption", "the caption of a photograph",
              "say what it shows", "common practice", "practice",
              lambda _, p: any(f.caption is None for f in p.photographs)),
    PieceRule("alt", "photograph.alt", "a photograph's description in words",
              "describe it for those who cannot see it", "PDF/UA (ISO 14289-1) 7.3", "memory",
              lambda _, p: any(f.alt is None for f in p.photographs)),
    PieceRule("searched", "searched", "the statement where marks were searched",
              "list the places looked at, also those without marks",
              "USPAP SR 7-2(e) and common practice", "practice", _described("searched")),
    PieceRule("marks", "mark", "the marks found", "record them: marks_text or [[piece.mark]]",
              "ICOM Object ID", "seen",
              lambda _, p: any(s.found for s in p.searched) and not _is_marked(p)),
    PieceRule("confirmed", "confirmed", "the appraiser's confirmed reading",
              "confirm what the piece is and why: the program only proposes", "USPAP SR 7-2(e)",
              "seen", _described("confirmed")),
    PieceRule("weight", "weight", "the weight, from which the metal's value is stated",
              "add [piece.weight], or write use_metal_value = false", "common practice",
              "practice", lambda _, p: wants_metal(p) and p.weight is None),
    PieceRule("balance", "weight.balance", "the balance used",
              "name it and how it was checked", "common practice", "practice",
              lambda _, p: p.weight is not None and p.weight.balance is None),
    PieceRule("acquired", "acquired", "how, when and at what cost the owner acquired it",
              "add [piece.acquired]", "Form 8283 instructions", "memory",
              lambda c, p: c.case.tax is not None and p.acquired is None),
    PieceRule("opinion", "opinion", "the opinion of value", "add [piece.opinion]",
              f"{_SR8}(viii)", "seen", lambda _, p: p.opinion is None),
    PieceRule("opinion-value", "opinion.value", "the concluded figure",
              "give a value, or write computed = true", f"{_SR8}(viii)", "seen",
              lambda _, p: p.opinion is not None
              and p.opinion.value is None and not p.opinion.computed),
    PieceRule("reasons", "opinion.reasons", "the reasons for the opinion",
              "say in a few lines why this figure", f"{_SR8}(viii)", "seen",
              lambda _, p: p.opinion is not None and not p.opinion.reasons),
    PieceRule("comparables", "comparable", "comparable sales",
              "add [[piece.comparable]], or name another approach", "USPAP SR 7-5", "memory",
              lambda _, p: p.opinion is not None and not p.comparables
              and (p.opinion.approach is Approach.SALES_COMPARISON or p.opinion.computed)),
)
# fmt: on
