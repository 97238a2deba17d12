"""Rows of the library: one typed record per fact, each with its source and how sure it is.

The files stand in ``data/``; ``docs/library.md`` explains each column. Years are calendar years in
which an assay or calendar year of marking begins; a blank ``year_to`` is open.
"""

from enum import StrEnum

import msgspec


class Confidence(StrEnum):
    """How sure a row is."""

    TWO_SOURCES = "two-sources"
    SOURCED = "sourced"
    MEMORY = "memory"
    PRACTICE = "practice"


class Row(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """What every row carries: ``source`` is one or more keys of sources.csv parted by ``;``."""

    source: str
    confidence: Confidence
    note: str = ""

    @property
    def sources(self) -> tuple[str, ...]:
        """The source keys."""
        return tuple(s.strip() for s in self.source.split(";") if s.strip())


class Source(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """An entry of the bibliography."""

    key: str
    title: str
    kind: str
    note: str = ""


class Device(Row, frozen=True, kw_only=True):
    """A pictorial subject of the thesaurus.

    words: other names people use, parted by ``;``. broader: id of the wider term, or blank.
    group: shape group. worn_as: ids or plain words it is taken for when worn, parted by ``;``.
    features: plain features, ``facing=left;crowned=yes``.
    """

    id: str
    label: str
    words: str = ""
    broader: str = ""
    group: str = ""
    worn_as: str = ""
    features: str = ""


class Office(Row, frozen=True, kw_only=True):
    """An assay office or a town that marked. country: ISO 3166-1 alpha-2."""

    id: str
    name: str
    country: str
    nation: str = ""
    kind: str = "assay office"
    opened: int
    closed: int | None = None


class System(Row, frozen=True, kw_only=True):
    """How one jurisdiction marks in one period.

    kind: solid, plated or base. weight: prior weight of a year of the system relative to others.
    maker: id of the maker where the system is one firm's own marks. country: blank = not told.
    line: systems of one line follow one another; a reading may run from one into the next.
    """

    id: str
    country: str = ""
    label: str
    kind: str
    year_from: int
    year_to: int | None = None
    weight: float = 1.0
    fineness: float | None = None
    maker: str = ""
    line: str = ""


class Role(Row, frozen=True, kw_only=True):
    """A role that a set of marks of this system carries.

    office: blank for all offices of the system. presence: probability that a fully marked, fully
    searched piece shows it. forms: how a maker's role is written, ``initials=0.9;name=0.1``.
    """

    system: str
    office: str = ""
    role: str
    year_from: int
    year_to: int | None = None
    presence: float
    forms: str = ""


class Sign(Row, frozen=True, kw_only=True):
    """One way in which a role is shown.

    kind: device (value = device id), text (value = spellings parted by ``|``), number (value = the
    figures), cycle (date letters of the office, value blank), code (value = rule id),
    letter (any one letter), initials, name, year (four figures), initials-year.
    share: how often this way among the ways of the role in the same years, relative.
    """

    id: str
    system: str
    office: str = ""
    role: str
    kind: str
    value: str = ""
    year_from: int
    year_to: int | None = None
    share: float = 1.0
    fineness: float | None = None
    outline: str = ""


class Weight(Row, frozen=True, kw_only=True):
    """How many marked pieces per year of an office or system survive, relative to the others.

    target: an office id or a system id; an office's row goes before its system's.
    """

    target: str
    year_from: int
    year_to: int | None = None
    weight: float


class Cycle(Row, frozen=True, kw_only=True):
    """A cycle of date letters.

    letters: one token per assay year from first_year, parted by spaces: ``X*n`` stood n years,
    ``X?`` doubtful, ``X/Y`` two readings, ``_`` none known.
    slack: years either side that the order of letters may be out (0 where well known).
    """

    id: str
    office: str
    first_year: int
    last_year: int
    letters: str
    style: str
    case: str
    outline: str = ""
    change_month: int | None = None
    change_day: int | None = None
    first_start: str = ""
    last_end: str = ""
    slack: int = 0


class Word(Row, frozen=True, kw_only=True):
    """A word, number or sign for fineness, or one that looks like it and is not.

    kind: fineness, plate, base, origin, patent, weight, pattern, quality, other.
    also: other spellings parted by ``;``. countries: ISO codes parted by ``;``, blank = anywhere.
    """

    id: str
    text: str
    also: str = ""
    kind: str
    fineness: float | None = None
    low: float | None = None
    high: float | None = None
    countries: str = ""
    year_from: int | None = None
    year_to: int | None = None
    meaning: str = ""
    caution: str = ""


class Maker(Row, frozen=True, kw_only=True):
    """A maker, sponsor or retailer and the marks.

    marks: transcriptions parted by ``;``; blank where the mark is the device alone. device:
    pictorial part of the mark, in words.
    ``mark_confidence`` is about the mark, ``confidence`` about existence, place and years.
    family: the family or house, in words; the same words in all its rows. succeeds: ids of the
    makers whose business this one carried on, parted by ``;``.
    """

    id: str
    name: str
    marks: str = ""
    device: str = ""
    place: str = ""
    country: str
    year_from: int | None = None
    year_to: int | None = None
    kind: str = "maker"
    wares: str = ""
    family: str = ""
    succeeds: str = ""
    mark_confidence: Confidence = Confidence.MEMORY

    @property
    def predecessors(self) -> tuple[str, ...]:
        """The ids in ``succeeds``."""
        return tuple(s.strip() for s in self.succeeds.split(";") if s.strip())


class Spot(Row, frozen=True, kw_only=True):
    """Where a form is usually marked; rank 1 is looked at first."""

    form: str
    family: str
    rank: int
    place: str
    how: str = ""
    caution: str = ""


class Form(Row, frozen=True, kw_only=True):
    """When a form of piece was in use. words: names of the form parted by ``;``.

    later: chance, relative to the years of use, of a later copy or survival. countries: ISO codes
    parted by ``;`` where the form is at home there and rare elsewhere; blank = anywhere.
    """

    id: str
    words: str
    year_from: int
    year_to: int
    later: float
    countries: str = ""


class Rule(Row, frozen=True, kw_only=True):
    """A rule of law or practice with its dates (ISO dates or years)."""

    id: str
    topic: str
    rule: str
    date_from: str = ""
    date_to: str = ""
    applies_to: str = ""


class Trait(Row, frozen=True, kw_only=True):
    """A trait that tells plate from solid. strength: decisive, strong, medium, weak."""

    id: str
    trait: str
    plate_type: str = ""
    points_to: str
    strength: str
    year_from: int | None = None
    year_to: int | None = None
    detail: str = ""


class Design(Row, frozen=True, kw_only=True):
    """A row of the registered-design tables: record says which table, key_1 and key_2 look up."""

    record: str
    key_1: str
    key_2: str = ""
    value: str = ""
    detail: str = ""


class Metal(Row, frozen=True, kw_only=True):
    """A metal, alloy or filler that silver wares are made of, or that is taken for silver.

    words: other names parted by ``;``. composition: ``Ag=92.5;Cu=7.5``, per cent by mass, a range
    as ``45-70``; blank = not known. density, low, high: as measured or printed [g/cm³], with the
    limits between which prints and kinds differ. ideal: density if the volumes of its parts add up
    [g/cm³]. iacs: conductivity [% of annealed copper]. magnetic: no, faint, yes, varies.
    solidus, liquidus: where melting begins and ends [°C].
    """

    id: str
    name: str
    words: str = ""
    group: str
    composition: str = ""
    density: float
    low: float
    high: float
    ideal: float | None = None
    iacs: float | None = None
    hardness: str = ""
    colour: str = ""
    magnetic: str
    solidus: float | None = None
    liquidus: float | None = None

    @property
    def names(self) -> tuple[str, ...]:
        """Its name and other names."""
        return (self.name, *(w.strip() for w in self.words.split(";") if w.strip()))

    @property
    def shares(self) -> dict[str, tuple[float, float]]:
        """Lower and upper share of each element [% by mass], by symbol."""
        found = {}
        for part in filter(None, self.composition.split(";")):
            symbol, _, share = part.partition("=")
            low, _, high = share.partition("-")
            found[symbol.strip()] = (float(low), float(high or low))
        return found


def _words(text: str, apart: str = ";") -> tuple[str, ...]:
    return tuple(w.strip() for w in text.split(apart) if w.strip())


class MetalTest(Row, frozen=True, kw_only=True):
    """A test of the metal. words: other names of it parted by ``;``.

    readings: what may be seen, ``id=words|words`` parted by ``;``; blank where a figure in ``unit``
    is read. meets: which part of the piece answers. harm, effort: bits that it must bring at least.
    leaves: what it does to the piece.
    """

    id: str
    label: str
    words: str = ""
    readings: str = ""
    meets: str
    unit: str = ""
    done: str
    where: str
    detects: str
    misses: str = ""
    fooled_by: str = ""
    harm: float
    effort: float
    leaves: str
    caution: str = ""

    @property
    def names(self) -> tuple[str, ...]:
        """Its id, label and other names."""
        return (self.id, self.label, *_words(self.words))

    @property
    def choices(self) -> dict[str, tuple[str, ...]]:
        """Each reading's id, with other words for it."""
        parts = (part.partition("=") for part in _words(self.readings))
        return {name.strip(): _words(said, "|") for name, _, said in parts}


class AcidColour(Row, frozen=True, kw_only=True):
    """What a drop of a reagent shows on a metal. reading: id of a reading of the test ``reagent``."""

    reagent: str
    metal: str
    liquid: str
    stain: str
    reading: str


class EscapeDepth(Row, frozen=True, kw_only=True):
    """How deep an X-ray line comes from. energy [keV]; depth (1/e), escape (1 % left, 45°) [µm]."""

    line: str
    energy: float
    matrix: str
    depth: float
    escape: float


class Response(Row, frozen=True, kw_only=True):
    """Chances of the readings of a test on what it meets, ``reading=0.9;reading=0.1``."""

    test: str
    met: str
    chances: str

    @property
    def table(self) -> dict[str, float]:
        """Chance of each reading."""
        parts = (part.partition("=") for part in _words(self.chances))
        return {name.strip(): float(chance) for name, _, chance in parts}


class Composition(Row, frozen=True, kw_only=True):
    """A hypothesis of what a piece is made of.

    kind: solid, plated, base or filled. make: how it is made. core: what lies beneath; metals: ids
    of the table of metals, parted by ``;``. fineness: as named, low, high: of its silver [‰].
    plate_low, plate_high: thickness of plate [µm]. share: of unmarked pieces, relative.
    """

    id: str
    label: str
    kind: str
    make: str
    core: str
    metals: str = ""
    fineness: float | None = None
    low: float | None = None
    high: float | None = None
    plate_low: float | None = None
    plate_high: float | None = None
    share: float

    @property
    def cores(self) -> tuple[str, ...]:
        """The ids in ``metals``."""
        return _words(self.metals)


class Layout(Row, frozen=True, kw_only=True):
    """How common a layout of makers' initials was: a charge, an outline, a letter style, rows.

    countries: ISO codes parted by ``;``. feature: ``charge``, ``outline-oval``, ``style-script`` …
    share: of makers' marks of initials in those years that show it, 0 to 1.
    """

    countries: str
    feature: str
    year_from: int
    year_to: int
    share: float


class Placement(Row, frozen=True, kw_only=True):
    """How common marks at a place of a form were.

    countries: ISO codes parted by ``;``. forms: regular expression of words for the form. places:
    regular expression that the place of a mark matches whole. share: of pieces of those years, 0
    to 1.
    """

    countries: str
    forms: str
    places: str
    year_from: int
    year_to: int
    share: float
