"""What the report prints: strings already formatted, nothing to reckon.

The template receives these structs as JSON and prints every string as it stands; none is ever read
as markup. A field that is empty is left out of the page, so that a draft prints from the first
minute. ``build.view`` makes them from a case.
"""

import msgspec


class _Sheet(msgspec.Struct, frozen=True, kw_only=True):
    """A part of the report."""


class Line(_Sheet, frozen=True, kw_only=True):
    """A label and what stands beside it; ``value`` may hold several paragraphs."""

    label: str
    value: str


class Section(_Sheet, frozen=True, kw_only=True):
    """A headed part made of labelled lines, paragraphs and items of a list."""

    title: str
    lines: tuple[Line, ...] = ()
    paragraphs: tuple[str, ...] = ()
    items: tuple[str, ...] = ()


class Cover(_Sheet, frozen=True, kw_only=True):
    """The first page.

    kind: appraisal report or restricted appraisal report. lines: number, client, dates, value.
    notices: what must be prominent: extraordinary assumptions, restrictions of use, revision.
    """

    kind: str
    title: str
    lines: tuple[Line, ...] = ()
    notices: tuple[str, ...] = ()


class Scheduled(_Sheet, frozen=True, kw_only=True):
    """One row of the schedule of pieces. anchor: name of the piece's place in the document."""

    number: str
    title: str
    reading: str = ""
    weight: str = ""
    value: str = ""
    range: str = ""
    anchor: str = ""


class Summary(_Sheet, frozen=True, kw_only=True):
    """The letter: what was asked, what is concluded, the schedule and its total.

    total_note: what the total holds and leaves out.
    """

    paragraphs: tuple[str, ...] = ()
    schedule: tuple[Scheduled, ...] = ()
    total: str = ""
    total_note: str = ""
    value_heading: str = "Value"


class Picture(_Sheet, frozen=True, kw_only=True):
    """A photograph. file: its name in the mapping given to ``write_pdf``."""

    file: str
    number: str
    caption: str = ""
    alt: str = ""
    whole: bool = False


class MarkRow(_Sheet, frozen=True, kw_only=True):
    """One mark: drawn as seen, written as seen, where, and what it is read as.

    svg: the drawing. height: of the drawing in millimetres. alt: the drawing in words.
    """

    number: str
    svg: str
    height: float
    width: float
    alt: str
    transcription: str = ""
    seen: str = ""
    place: str = ""
    read_as: str = ""
    sure: str = ""


class Rival(_Sheet, frozen=True, kw_only=True):
    """A reading with its probability in words, as a figure, and as a share for its bar."""

    sentence: str
    words: str
    percent: str
    share: float


class Against(_Sheet, frozen=True, kw_only=True):
    """A contradiction."""

    between: str
    says: str
    source: str = ""


class Look(_Sheet, frozen=True, kw_only=True):
    """What to look for next. settles: what each outcome would settle."""

    look_for: str
    where: str = ""
    settles: tuple[Line, ...] = ()


class ReadingView(_Sheet, frozen=True, kw_only=True):
    """The reading of the marks.

    confirmed: what the appraiser concludes, and why; it goes before the proposal. chance: the
    probability with what it is the probability of.
    """

    sentence: str = ""
    chance: str = ""
    confirmed: str = ""
    reason: str = ""
    makers: tuple[Rival, ...] = ()
    rivals: tuple[Rival, ...] = ()
    contradictions: tuple[Against, ...] = ()
    looks: tuple[Look, ...] = ()
    notes: tuple[str, ...] = ()


class Weighed(_Sheet, frozen=True, kw_only=True):
    """A line of the weight statement. kind: gross, off, net, fine or other."""

    kind: str
    what: str
    how: str = ""
    grams: str = ""
    plus_minus: str = ""
    ozt: str = ""
    dwt: str = ""


class Step(_Sheet, frozen=True, kw_only=True):
    """A step of a reckoning: its sign, what it is, its figure. kind: given, result or note."""

    sign: str
    what: str
    figure: str
    kind: str = "given"
    note: str = ""


class Tested(_Sheet, frozen=True, kw_only=True):
    """A test of the metal."""

    kind: str
    spot: str = ""
    reading: str = ""
    says: str = ""


class Compared(_Sheet, frozen=True, kw_only=True):
    """A comparable: as sold, each adjustment, as adjusted, its weight.

    adjustments: label (because, basis) and figure ("× 1.04" or "+ USD 31"), which multiply out.
    """

    number: str
    title: str
    details: str = ""
    sold: str = ""
    adjustments: tuple[Line, ...] = ()
    adjusted: str = ""
    weight: str = ""


class Dot(_Sheet, frozen=True, kw_only=True):
    """A comparable on the axis; places are shares of the axis, size a share of the largest."""

    number: str
    sold: float | None = None
    adjusted: float | None = None
    size: float = 1.0


class Strip(_Sheet, frozen=True, kw_only=True):
    """The strip of dots on one money axis. ticks: label and place. alt: all of it in words."""

    dots: tuple[Dot, ...]
    ticks: tuple[tuple[str, float], ...]
    alt: str
    unit: str = ""
    floor: float | None = None
    low: float | None = None
    high: float | None = None
    value: float | None = None


class Worth(_Sheet, frozen=True, kw_only=True):
    """The comparables, the strip and how they come to the figure. sums: the closing lines."""

    compared: tuple[Compared, ...] = ()
    strip: Strip | None = None
    sums: tuple[Step, ...] = ()
    notes: tuple[str, ...] = ()


class OpinionView(_Sheet, frozen=True, kw_only=True):
    """The opinion on one piece."""

    figure: str = ""
    range: str = ""
    basis: str = ""
    lines: tuple[Line, ...] = ()
    reasons: tuple[str, ...] = ()


class PieceView(_Sheet, frozen=True, kw_only=True):
    """One piece, in the order in which it is printed."""

    number: str
    title: str
    subtitle: str = ""
    anchor: str = ""
    pictures: tuple[Picture, ...] = ()
    description: str = ""
    identification: tuple[Line, ...] = ()
    marks: tuple[MarkRow, ...] = ()
    marks_text: str = ""
    searched: tuple[Line, ...] = ()
    reading: ReadingView | None = None
    tests: tuple[Tested, ...] = ()
    weight: tuple[Weighed, ...] = ()
    weight_notes: tuple[str, ...] = ()
    metal: tuple[Step, ...] = ()
    metal_notes: tuple[str, ...] = ()
    worth: Worth | None = None
    opinion: OpinionView | None = None
    condition: tuple[Line, ...] = ()
    provenance: tuple[Line, ...] = ()
    cautions: tuple[str, ...] = ()


class Evidence(_Sheet, frozen=True, kw_only=True):
    """One line of a ledger.

    decibans: signed figure. share: its bar, -1 (against) to 1 (for). word: decisive, strong, some,
    slight or none. sources: as cited in the list of sources.
    """

    observed: str
    because: str = ""
    sources: str = ""
    decibans: str = ""
    word: str = ""
    share: float = 0.0


class LedgerView(_Sheet, frozen=True, kw_only=True):
    """The ledger behind one finding. before, after: the balance before and after the lines."""

    title: str
    subtitle: str = ""
    hypothesis: str
    against: str
    lines: tuple[Evidence, ...]
    before: str = ""
    after: str = ""


class Source(_Sheet, frozen=True, kw_only=True):
    """A work cited. mark: as it stands in the text."""

    mark: str
    title: str
    note: str = ""


class Missing(_Sheet, frozen=True, kw_only=True):
    """Something that the report lacks."""

    where: str
    what: str
    remedy: str = ""
    clause: str = ""


class ReportView(_Sheet, frozen=True, kw_only=True):
    """The whole report.

    date: year, month, day of the document, () where the case gives none.
    draft: printed across every page while ``missing`` is not empty. lacks: how many elements are
    missing, each piece counted for itself. subject: a word for the document's keywords.
    doubts: what the appraiser should look at again; in a draft only.
    notice: a sentence at the foot of every page.
    """

    number: str
    title: str
    author: str = ""
    language: str = "en"
    date: tuple[int, ...] = ()
    draft: bool = True
    lacks: int = 0
    subject: str = "appraisal"
    notice: str = ""
    cover: Cover
    summary: Summary = Summary()
    assignment: tuple[Section, ...] = ()
    pieces: tuple[PieceView, ...] = ()
    ledgers: tuple[LedgerView, ...] = ()
    sources: tuple[Source, ...] = ()
    source_notes: tuple[str, ...] = ()
    cautions: tuple[Line, ...] = ()
    conditions: tuple[Section, ...] = ()
    certification: Section | None = None
    signature: tuple[Line, ...] = ()
    appraiser: Section | None = None
    missing: tuple[Missing, ...] = ()
    doubts: tuple[Line, ...] = ()
    glossary: tuple[Line, ...] = ()
