"""What is observed: one mark as seen on the piece, and what was searched.

Terms follow the glossary of the design: transcription, device, style, outline, place, technique,
legibility. Nothing here is an interpretation; a ``hint`` is what the observer calls the mark.
"""

from enum import StrEnum

import msgspec


class Style(StrEnum):
    """Letterform of the letters in a punch."""

    ROMAN = "roman"
    ITALIC = "italic"
    BLACK_LETTER = "black-letter"
    LOMBARDIC = "lombardic"
    COURT_HAND = "court-hand"
    SCRIPT = "script"
    SANS = "sans"
    GAELIC = "gaelic"


class Case(StrEnum):
    """Capital or small letters."""

    CAPITAL = "capital"
    SMALL = "small"


class Technique(StrEnum):
    """How the mark was made."""

    RAISED = "raised"
    INCUSE = "incuse"
    ENGRAVED = "engraved"
    SCRATCHED = "scratched"
    CAST = "cast"
    PRINTED = "printed"


class Legibility(StrEnum):
    """How well the mark can be read."""

    CLEAR = "clear"
    WORN = "worn"
    OBSCURE = "obscure"
    ILLEGIBLE = "illegible"


class Mark(
    msgspec.Struct, frozen=True, kw_only=True, omit_defaults=True, forbid_unknown_fields=True
):
    """One mark as observed.

    text: transcription, Leiden conventions (``transcription.py``), or None for a pictorial mark.
    device: the pictorial subject in any words ("lion passant", "tent"), or None.
    style, case: letterform; None where not recorded. ``case_sure`` is False where a writer prints
        every letter as a capital, so that the case on paper says little.
    outline: shape of the punch, in words.
    charge: what stands beside the letters in the same punch, in words ("crown above").
    hint: what the observer calls it ("date letter", "maker's mark"); never more than evidence.
    part, place: the part of the piece and the place on it.
    times: how often the same punch was struck.
    doubtful: the observer is unsure of the reading as a whole.
    photograph: path or hash of the picture that shows it.
    """

    text: str | None = None
    device: str | None = None
    style: Style | None = None
    case: Case | None = None
    case_sure: bool = False
    outline: str | None = None
    charge: str | None = None
    hint: str | None = None
    part: str | None = None
    place: str | None = None
    technique: Technique | None = None
    legibility: Legibility | None = None
    times: int = 1
    doubtful: bool = False
    photograph: str | None = None
    note: str | None = None


class Search(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A place that was looked at, and what came of it."""

    place: str
    found: bool
    note: str | None = None


class Observed(msgspec.Struct, frozen=True, kw_only=True):
    """Everything observed on one piece.

    marks: in the order seen.
    searched: places looked at.
    complete: 0 to 1, how fully the piece was searched and the marks written down; 1 = every place
        searched and everything recorded.
    claims: what the writer says that the marks mean (``Claim``), kept apart from the marks.
    unread: words of a description that were not understood, returned and never dropped.
    """

    marks: tuple[Mark, ...] = ()
    searched: tuple[Search, ...] = ()
    complete: float = 0.8
    claims: tuple["Claim", ...] = ()
    unread: tuple[str, ...] = ()


class Claim(msgspec.Struct, frozen=True, kw_only=True):
    """What a writer or client claims: about = place, date, maker, metal or note."""

    about: str
    says: str
    year_from: int | None = None
    year_to: int | None = None
    doubtful: bool = False
