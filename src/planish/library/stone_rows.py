"""Rows about stones and the materials that stand in for them; ``docs/library.md`` explains them.

Lists of chances are written ``blue=6;green=2``: figures relative to each other, in words of the test.
"""

import msgspec

from planish.library.rows import Row


def chances(text: str) -> dict[str, float]:
    """The figures of ``blue=6;green=2`` by their word.

    Raises:
        ValueError: a part has no figure.

    >>> chances("blue=6;green=2")
    {'blue': 6.0, 'green': 2.0}
    """
    parts = (part.partition("=") for part in text.split(";") if part.strip())
    return {word.strip(): float(figure) for word, _, figure in parts}


def _listed(text: str) -> tuple[str, ...]:
    return tuple(word.strip() for word in text.split(";") if word.strip())


class Material(Row, frozen=True, kw_only=True):
    """A stone, organic material, glass or plastic that is set in silver or joined to it.

    sg_low, sg, sg_high: specific gravity, usual and limits. ri_low, ri_high: refractive index, lowest
    and highest; blank where none can be read. hardness: of Mohs. colour, lustre, transparency:
    chances. frequency: how often on silver, relative. settings: the same for one kind of silver.
    """

    id: str
    name: str
    words: str = ""
    kind: str
    sg_low: float
    sg: float
    sg_high: float
    ri_low: float | None = None
    ri_high: float | None = None
    hardness: str
    colour: str
    lustre: str
    transparency: str
    frequency: float = 1.0
    settings: str = ""
    met: str = ""
    care: str = ""

    @property
    def names(self) -> tuple[str, ...]:
        """Its name and other names."""
        return (self.name, *_listed(self.words))

    @property
    def mohs(self) -> tuple[float, float]:
        """Lower and upper hardness."""
        low, _, high = self.hardness.partition("-")
        return float(low), float(high or low)


class Cut(Row, frozen=True, kw_only=True):
    """A cut or solid whose weight follows from its measurements.

    kind: faceted, cabochon, old or solid. measures: what is measured, in order. spread: share by which
    19 of 20 stones differ from the formula, at most. depth_low, depth_high: depth as a share of the
    width where it cannot be measured.
    """

    id: str
    name: str
    words: str = ""
    kind: str
    measures: str
    spread: float
    depth_low: float | None = None
    depth_high: float | None = None

    @property
    def names(self) -> tuple[str, ...]:
        """Its name and other names."""
        return (self.name, *_listed(self.words))

    @property
    def measured(self) -> tuple[str, ...]:
        """The measurements in order."""
        return _listed(self.measures)


class Factor(Row, frozen=True, kw_only=True):
    """One author's constant of a cut: carats = factor x rule [mm³] x specific gravity.

    rule: product of measurements and their powers. sg: specific gravity already in the factor, blank
    where it is not. rank: 1 is used; the others are rivals that widen the interval.
    """

    id: str
    cut: str
    rule: str
    factor: float
    sg: float | None = None
    rank: int = 1


class GemTest(Row, frozen=True, kw_only=True):
    """A look or test that tells materials apart.

    values: answers parted by ``;``, each ``word`` or ``word:other|other``. harm: none, slight, harm.
    who: anyone, loupe, gemmologist. error: chance of an answer that is none of the material's.
    """

    id: str
    label: str
    words: str = ""
    values: str = ""
    harm: str
    who: str
    error: float = 0.05
    how: str = ""
    caution: str = ""

    @property
    def answers(self) -> dict[str, tuple[str, ...]]:
        """Other words for each answer, by the answer."""
        found = {}
        for value in _listed(self.values):
            word, _, other = value.partition(":")
            found[word] = tuple(w.strip() for w in other.split("|") if w.strip())
        return found


class Clue(Row, frozen=True, kw_only=True):
    """What a test shows on a material: ``target`` is an id, a kind, or ``*`` for all others."""

    test: str
    target: str
    chances: str


class LookAlike(Row, frozen=True, kw_only=True):
    """What is taken for a material, or is done to it.

    other: id of the other material, or words. kind: imitation, treatment, synthetic, composite.
    tell: what tells them apart. limits: what does not, or who must.
    """

    id: str
    material: str
    other: str
    kind: str
    tell: str = ""
    limits: str = ""


class Protection(Row, frozen=True, kw_only=True):
    """A rule of law on a material from the wild, as it stood when it was last looked at.

    words: that call for the rule, parted by ``;``. unless: words that say that it is another material.
    place: ISO 3166-1 code, EU, or blank for a treaty. regime: the law. allowed: exceptions, roughly.
    limits: figures of the exceptions, ``ivory volume<10 %``, parted by ``;``. checked: year and month.
    """

    id: str
    materials: str = ""
    words: str
    unless: str = ""
    place: str = ""
    regime: str
    rule: str
    allowed: str = ""
    limits: str = ""
    date_from: str = ""
    date_to: str = ""
    checked: str

    @property
    def about(self) -> tuple[str, ...]:
        """Ids of the materials."""
        return _listed(self.materials)


TABLES: dict[str, type[msgspec.Struct]] = {
    "materials": Material,
    "cuts": Cut,
    "factors": Factor,
    "gemtests": GemTest,
    "clues": Clue,
    "lookalikes": LookAlike,
    "protections": Protection,
}
