"""The assignment and the metal price: tables ``[case]`` and ``[metal_price]`` of the file."""

import msgspec

from planish.case.kinds import (
    CurrencyCode,
    DateText,
    MarketLevel,
    MoneyText,
    ReportOption,
    Share,
    Table,
    TaxPurpose,
    Text,
    TypeOfValue,
)
from planish.worth.comparables import Basis


class Appraiser(Table, frozen=True, kw_only=True):
    """Who gives the opinion.

    name: as signed.
    address: place of business.
    employer: firm, where the appraiser acts for one.
    qualifications: education, experience and memberships for this kind of object, one a line.
    """

    name: Text | None = None
    address: Text | None = None
    employer: Text | None = None
    qualifications: tuple[Text, ...] = ()


class Certification(Table, frozen=True, kw_only=True):
    """The appraiser's own statements, printed as written; the program never signs.

    facts: that the statements of fact are true and correct.
    limits: that the analyses are limited only by the reported assumptions, and are personal.
    interest: present or future interest in the pieces or the parties: none, or which.
    earlier_services: services on the same pieces in the last three years: none, or which.
    bias: that there is no bias towards the pieces or the parties.
    engagement: that the engagement does not depend on a result agreed beforehand.
    fee: that the fee depends neither on the value nor on its direction.
    standards: the standards in line with which the work was done.
    inspected: whether the appraiser inspected the pieces in person.
    help: who gave significant help and with what; or that nobody did.
    other: further statements.
    place, date: where and when signed.
    """

    facts: Text | None = None
    limits: Text | None = None
    interest: Text | None = None
    earlier_services: Text | None = None
    bias: Text | None = None
    engagement: Text | None = None
    fee: Text | None = None
    standards: Text | None = None
    inspected: Text | None = None
    help: Text | None = None
    other: tuple[Text, ...] = ()
    place: Text | None = None
    date: DateText | None = None


class Inspection(Table, frozen=True, kw_only=True):
    """How the pieces were examined.

    date: day of the inspection.
    place: where.
    extent: what was handled, opened, weighed, tested, and in what light; what was not.
    """

    date: DateText | None = None
    place: Text | None = None
    extent: Text | None = None


class Scope(Table, frozen=True, kw_only=True):
    """Scope of work.

    work: what the problem asked for and what was done.
    research: where sales, marks and history were looked up.
    not_done: what was left out, and why that does not mislead.
    """

    work: Text | None = None
    research: Text | None = None
    not_done: Text | None = None


class Crossing(Table, frozen=True, kw_only=True):
    """What a price of one market is multiplied by to stand for another; the user's figure.

    start: kind of price it starts from, for example trade-paid.
    end: kind of price it stands for, for example with-premium.
    factor: the multiplier.
    source: where it comes from.
    """

    start: Basis
    end: Basis
    factor: float
    source: Text


class Market(Table, frozen=True, kw_only=True):
    """The market in which the value is asked.

    level: auction, dealer retail, private sale, dealer buying or scrap.
    reason: why this market is the right one.
    premium_included, tax_included: whether the values hold the buyer's premium and sales tax.
    buyers_premium: premium on top of the hammer price, as a share, for sales that name none.
    sellers_commission: commission off the hammer price, as a share.
    asking_discount: what buyers get off asked prices, as a share.
    asking_source: where that figure comes from.
    crossing: passages from one market to another.
    """

    level: MarketLevel | None = None
    reason: Text | None = None
    premium_included: bool | None = None
    tax_included: bool | None = None
    buyers_premium: Share | None = None
    sellers_commission: Share | None = None
    asking_discount: Share | None = None
    asking_source: Text | None = None
    crossings: tuple[Crossing, ...] = msgspec.field(default=(), name="crossing")


class Approaches(Table, frozen=True, kw_only=True):
    """The three approaches to value: for each, how it was used or why it was left out.

    sales_comparison: sales of similar objects.
    cost: cost of making or replacing.
    income: income that the object brings.
    """

    sales_comparison: Text | None = None
    cost: Text | None = None
    income: Text | None = None


class Tax(Table, frozen=True, kw_only=True):
    """What a report for a tax use holds besides; local law and the form's instructions decide.

    purpose: gift to charity, estate, gift, capital gain or other.
    statement: that the report is made for that tax.
    transfer_date: day of the gift, death or sale.
    restrictions: terms that restrict use or sale; or that there are none.
    penalties_known: the appraiser's declaration on the penalties for misstatement.
    """

    purpose: TaxPurpose
    statement: Text | None = None
    transfer_date: DateText | None = None
    restrictions: Text | None = None
    penalties_known: Text | None = None


class Revision(Table, frozen=True, kw_only=True):
    """The earlier report that this one replaces; the earlier one is kept.

    of: its number.
    date: its report date.
    reason: what changed and why.
    """

    of: Text
    date: DateText
    reason: Text


class Assignment(Table, frozen=True, kw_only=True):
    """The assignment, table ``[case]``.

    number: the case's permanent number.
    title: what the case is called.
    client: who engaged the appraiser.
    intended_use: what the report is for.
    intended_users: who may rely on it, by name or type.
    report_option: appraisal report, restricted appraisal report, or identification: what the pieces
        are, with no value stated and nothing asked for that only a value needs.
    type_of_value: fair market value, market value, retail replacement value, ...
    value_definition: the definition of that value, in full.
    definition_source: where the definition is taken from.
    terms: terms of payment assumed, usually cash.
    exposure_time: time on the market that the value assumes, where it assumes a sale.
    property_interest: the interest appraised, usually outright ownership, and known encumbrances.
    effective_date: the day at which the value holds.
    report_date: the day of the report.
    currency: the one currency of all values.
    competence: what was done where this kind of object lay outside the appraiser's experience.
    prior_sales: sales, offers and agreements about the pieces within a reasonable time.
    reconciliation: how the data and approaches were weighed against each other.
    assumptions: ordinary assumptions.
    extraordinary_assumptions: taken as true though uncertain; may affect the value.
    hypothetical_conditions: contrary to fact, assumed for analysis; may affect the value.
    limiting_conditions: limits on reliance.
    standards: standards and editions followed.
    workfile: where the workfile is kept, by whom and until when.
    notice: a sentence printed on every page of the report.
    """

    number: Text
    title: Text
    client: Text | None = None
    intended_use: Text | None = None
    intended_users: tuple[Text, ...] = ()
    report_option: ReportOption = ReportOption.APPRAISAL
    type_of_value: TypeOfValue | None = None
    value_definition: Text | None = None
    definition_source: Text | None = None
    terms: Text | None = None
    exposure_time: Text | None = None
    property_interest: Text | None = None
    effective_date: DateText | None = None
    report_date: DateText | None = None
    currency: CurrencyCode | None = None
    competence: Text | None = None
    prior_sales: Text | None = None
    reconciliation: Text | None = None
    assumptions: tuple[Text, ...] = ()
    extraordinary_assumptions: tuple[Text, ...] = ()
    hypothetical_conditions: tuple[Text, ...] = ()
    limiting_conditions: tuple[Text, ...] = ()
    standards: tuple[Text, ...] = ()
    workfile: Text | None = None
    notice: Text | None = None
    scope: Scope = Scope()
    inspection: Inspection = Inspection()
    market: Market = Market()
    approaches: Approaches = Approaches()
    appraiser: Appraiser = Appraiser()
    certification: Certification = Certification()
    tax: Tax | None = None
    revision: Revision | None = None

    @property
    def identifies_only(self) -> bool:
        """Whether the report says what the pieces are and states no value."""
        return self.report_option is ReportOption.IDENTIFICATION


class MetalPrice(Table, frozen=True, kw_only=True):
    """The price of fine silver that the user enters, table ``[metal_price]``.

    price: the amount for one unit of fine silver.
    per: the unit of mass, for example ozt, g or kg.
    date: day (and hour, in ``source``) of the price.
    source: whose price.
    quoted: which: bid, offer, fix or average.
    payout_share: share of the metal's value that a buyer of scrap would pay.
    payout_basis: where the share is taken from.
    charges: flat charges for assay, freight or a small lot, for the whole case.
    """

    price: MoneyText
    per: Text = "ozt"
    date: DateText
    source: Text
    quoted: Text | None = None
    payout_share: Share = 1.0
    payout_basis: Text | None = None
    charges: MoneyText | None = None
