"""The piece and what is recorded of it: table ``[[piece]]`` of the file."""

from collections.abc import Mapping

import msgspec

from planish.case.kinds import (
    Approach,
    Belonging,
    Content,
    Count,
    CountryCode,
    DateText,
    DeductionKind,
    EdtfText,
    Fineness,
    LengthText,
    MassText,
    MoneyText,
    ProvenanceGrade,
    ReadingKind,
    Share,
    Shows,
    Table,
    TestKind,
    Text,
    Weighting,
    Year,
)
from planish.marks.observation import Mark, Search
from planish.worth.comparables import Basis


class Photograph(Table, frozen=True, kw_only=True):
    """A picture beside the case file.

    file: path relative to the case file, inside its folder.
    caption: what the report prints below it.
    alt: the picture in words, for those who cannot see it.
    shows: whole, marks, damage, detail or paper.
    scale: whether a scale lies in the picture.
    """

    file: Text
    caption: Text | None = None
    alt: Text | None = None
    shows: Shows = Shows.WHOLE
    scale: bool = False


class Dimension(Table, frozen=True, kw_only=True):
    """One measurement.

    name: height, length over handle, diameter of foot.
    value: the length with its unit.
    """

    name: Text
    value: LengthText


class Part(Table, frozen=True, kw_only=True):
    """A part of the piece: lid, handle, blade, base, stone.

    name: the word used in ``mark.part``.
    material: what it is made of.
    belongs: original, replaced, associated or unsure.
    gross: its own weight, where it comes off.
    condition: its condition, where it differs.
    note: anything else.
    """

    name: Text
    material: Text | None = None
    belongs: Belonging = Belonging.ORIGINAL
    gross: MassText | None = None
    condition: Text | None = None
    note: Text | None = None


class Provenance(Table, frozen=True, kw_only=True):
    """One statement about the piece's history.

    says: the statement.
    grade: documented, stated by the owner or family tradition.
    document: the paper that supports it.
    """

    says: Text
    grade: ProvenanceGrade = ProvenanceGrade.STATED
    document: Text | None = None


class Acquired(Table, frozen=True, kw_only=True):
    """How the owner came by the piece; tax reports ask for it.

    date: when.
    cost: what was paid.
    source: from whom.
    how: bought, given, inherited.
    """

    date: EdtfText | None = None
    cost: MoneyText | None = None
    source: Text | None = None
    how: Text | None = None


class Deduction(Table, frozen=True, kw_only=True):
    """Something that is not silver and comes off the gross weight.

    kind: stone, steel, filler, wood, glass or other.
    what: in words.
    mass: the best figure; or leave it out and give ``low`` and ``high``, or the shares.
    plus_minus: standard uncertainty of ``mass``.
    low, high: limits between which it lies.
    share_low, share_high: limits as shares of the gross weight, for filled pieces.
    method: weighed apart, measured, estimated from like pieces.
    """

    kind: DeductionKind
    what: Text
    mass: MassText | None = None
    plus_minus: MassText | None = None
    low: MassText | None = None
    high: MassText | None = None
    share_low: Share | None = None
    share_high: Share | None = None
    method: Text | None = None


class Weight(Table, frozen=True, kw_only=True):
    """The weight statement as observed, table ``[piece.weight]``.

    gross: reading of the balance, all parts together.
    resolution: step of the balance's display.
    plus_minus: standard uncertainty of the balance beyond its step, as calibrated.
    balance: which balance, and how it was checked.
    date: when weighed.
    fineness: fineness to reckon with; where left out, that of the reading is used.
    fineness_plus_minus: its standard uncertainty in parts per thousand.
    fineness_basis: why this fineness: mark, test, or both.
    note: anything else.
    """

    gross: MassText
    resolution: MassText | None = None
    plus_minus: MassText | None = None
    balance: Text | None = None
    date: DateText | None = None
    fineness: Fineness | None = None
    fineness_plus_minus: float | None = None
    fineness_basis: Text | None = None
    deductions: tuple[Deduction, ...] = msgspec.field(default=(), name="deduction")
    note: Text | None = None


class Test(Table, frozen=True, kw_only=True):
    """One test of the metal.

    kind: magnet, density, touch, xrf, sound or other.
    spot: where on the piece.
    reading: what was seen or read off, with its unit.
    in_air, in_water: balance readings of a density test.
    water_temperature: of a density test, in degrees Celsius.
    fineness: silver in parts per thousand, where the test gives it.
    plus_minus: its standard uncertainty in parts per thousand.
    instrument: which.
    date: when.
    consent: the owner's consent, where the test leaves a trace.
    note: anything else.
    """

    __test__ = False  # pytest would collect a class of this name

    kind: TestKind
    spot: Text | None = None
    reading: Text
    in_air: MassText | None = None
    in_water: MassText | None = None
    water_temperature: float | None = None
    fineness: Content | None = None
    plus_minus: float | None = None
    instrument: Text | None = None
    date: DateText | None = None
    consent: Text | None = None
    note: Text | None = None


class Confirmed(Table, frozen=True, kw_only=True):
    """The reading that the appraiser confirms; it stands above the computed one, both are shown.

    kind: solid, plated, base or unknown.
    country: ISO 3166 alpha-2.
    office: assay office or town.
    year_from, year_to: first and last calendar year.
    fineness: in parts per thousand.
    maker: the maker or sponsor.
    wording: the words for the report: "marked ...", "tests as ...", "attributed to ...".
    reason: why, and with what the marks were compared.
    date: when confirmed.
    """

    kind: ReadingKind
    country: CountryCode | None = None
    office: Text | None = None
    year_from: Year | None = None
    year_to: Year | None = None
    fineness: Fineness | None = None
    maker: Text | None = None
    wording: Text | None = None
    reason: Text
    date: DateText | None = None


class Adjustment(Table, frozen=True, kw_only=True):
    """One line between a comparable and the piece.

    because: the difference, in words.
    percent: change of the price in percent; negative where the comparable is the better.
    amount: change in money; give this or ``percent``.
    basis: where the figure comes from: paired sales, the file, common practice, judgment.
    """

    because: Text
    percent: float | None = None
    amount: MoneyText | None = None
    basis: Text | None = None


class Comparable(Table, frozen=True, kw_only=True):
    """One sale or offer of a similar object.

    title: what was sold.
    date: when.
    venue: where and by whom.
    lot: lot or stock number.
    price: as recorded.
    basis: hammer, with-premium, net-to-seller, retail-asked, retail-paid, private, trade-paid or
        unsold. Nothing is assumed to pass from one to another: ``[case.market]`` says how.
    premium: buyer's premium of that sale as a share of the hammer price.
    source: where this was read.
    condition: in words.
    gross: weight, where known.
    fineness: parts per thousand, where known.
    metal_price: price of fine silver at that time, per the unit of ``[metal_price]``.
    rate: units of the case's currency for one unit of this price's currency.
    rate_date: day of the rate; where left out, the day of the sale.
    rate_source: where the rate was read.
    attributes: measured traits that the adjustment uses, by name.
    maker: as described.
    counts: how much it counts beside the others, 1 in full; less for a doubtful or unlike one.
    note: anything else.
    """

    title: Text
    date: DateText
    venue: Text
    lot: Text | None = None
    price: MoneyText
    basis: Basis
    premium: Share | None = None
    source: Text
    condition: Text | None = None
    gross: MassText | None = None
    fineness: Fineness | None = None
    metal_price: MoneyText | None = None
    rate: float | None = None
    rate_date: DateText | None = None
    rate_source: Text | None = None
    attributes: Mapping[str, float] = {}
    maker: Text | None = None
    counts: Weighting = 1.0
    adjustments: tuple[Adjustment, ...] = msgspec.field(default=(), name="adjustment")
    note: Text | None = None


class Opinion(Table, frozen=True, kw_only=True):
    """The conclusion on one piece, table ``[piece.opinion]``.

    value: the concluded figure; leave it out with ``computed = true``.
    low, high: the range.
    computed: take the figure that the adjusted comparables give.
    approach: sales comparison, cost, income or metal content.
    reasons: why this figure, one a line.
    """

    value: MoneyText | None = None
    low: MoneyText | None = None
    high: MoneyText | None = None
    computed: bool = False
    approach: Approach = Approach.SALES_COMPARISON
    reasons: tuple[Text, ...] = ()


class Piece(Table, frozen=True, kw_only=True):
    """What is appraised as one, table ``[[piece]]``.

    number: unlike any other in the case, never used again.
    title: what it is called.
    form: the kind of object: teapot, tablespoon, candlestick.
    quantity: how many objects it holds.
    counted_as: a pair, a set of six.
    inventory: the owner's own number.
    description: enough for a stranger to recognise it.
    materials: what it is made of, all materials.
    technique: raised, cast, die-struck, plated.
    inscriptions: crests, initials, presentation texts.
    features: damage, repairs and defects that tell it from its like.
    condition: state, wear, alterations.
    marks_text: the marks in free words; or give ``[[piece.mark]]`` rows; both are used.
    searched: places looked at, "nothing found" included.
    complete: 0 to 1, how fully the piece was searched; left out, it is judged from the rest.
    restricted: materials that the law may restrict: ivory, tortoiseshell, coral.
    attributes: measured traits that the adjustment of comparables uses, by name.
    use_metal_value: whether the metal's value is stated for this piece.
    note: anything else.
    """

    number: Count
    title: Text
    form: Text | None = None
    quantity: Count = 1
    counted_as: Text | None = None
    inventory: Text | None = None
    description: Text | None = None
    materials: Text | None = None
    technique: Text | None = None
    inscriptions: Text | None = None
    features: Text | None = None
    condition: Text | None = None
    marks_text: Text | None = None
    complete: Share | None = None
    restricted: tuple[Text, ...] = ()
    attributes: Mapping[str, float] = {}
    use_metal_value: bool = True
    note: Text | None = None
    dimensions: tuple[Dimension, ...] = msgspec.field(default=(), name="dimension")
    provenance: tuple[Provenance, ...] = ()
    acquired: Acquired | None = None
    photographs: tuple[Photograph, ...] = msgspec.field(default=(), name="photograph")
    marks: tuple[Mark, ...] = msgspec.field(default=(), name="mark")
    searched: tuple[Search, ...] = ()
    parts: tuple[Part, ...] = msgspec.field(default=(), name="part")
    weight: Weight | None = None
    tests: tuple[Test, ...] = msgspec.field(default=(), name="test")
    confirmed: Confirmed | None = None
    comparables: tuple[Comparable, ...] = msgspec.field(default=(), name="comparable")
    opinion: Opinion | None = None
