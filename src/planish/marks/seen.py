"""A mark digested for the engine: its form, letters, figures, devices, and what it was called.

Form is what kind of thing is in the punch, without any interpretation: device, letter, initials,
figures, word, name, mixed or illegible.
"""

import re
import unicodedata
from collections.abc import Sequence
from typing import NamedTuple

import msgspec

from planish.marks.observation import Legibility, Mark, Technique
from planish.marks.thesaurus import Thesaurus, words
from planish.marks.transcription import TranscriptionError, parse

FORMS = ("device", "letter", "initials", "figures", "word", "name", "mixed")

#: how often a mark taken at random on marked silver has this form (the bench's own count on the
#: records that docs/honesty.md names; used only as the yardstick for likelihood ratios)
FORM_AT_LARGE = {
    "device": 0.28,
    "letter": 0.12,
    "initials": 0.22,
    "figures": 0.10,
    "word": 0.10,
    "name": 0.12,
    "mixed": 0.06,
}  # fmt: skip

# What observers call marks -> roles of the library. Common practice.
_HINTS: dict[str, tuple[str, ...]] = {
    "date": ("date",),
    "year": ("date",),
    "town": ("town", "import", "office", "district"),
    "city": ("town", "import", "office", "district"),
    "district": ("district",),
    "office": ("town", "import", "office", "district"),
    "assay": ("town", "import", "office", "district", "standard", "assay-master", "control"),
    "assayer": ("assay-master",),
    "warden": ("date", "assay-master"),
    "deacon": ("assay-master",),
    "maker": ("sponsor", "maker"),
    "makers": ("sponsor", "maker"),
    "sponsor": ("sponsor", "maker"),
    "workshop": ("sponsor", "maker"),
    "artel": ("sponsor", "maker"),
    "retailer": ("retailer", "sponsor", "maker"),
    "duty": ("duty",),
    "tax": ("duty", "tax"),
    "excise": ("duty",),
    "standard": ("standard", "fineness"),
    "sterling": ("standard", "fineness"),
    "fineness": ("fineness", "standard"),
    "quality": ("fineness", "standard", "quality", "plate-quality"),
    "alloy": ("fineness",),
    "import": ("import",),
    "pseudo": ("pseudo",),
    "pattern": ("pattern",),
    "trademark": ("trademark",),
    "guild": ("guild",),
    "chop": ("chop",),
    "control": ("control", "district"),
    "charge": ("tax", "charge"),
    "discharge": ("tax", "discharge"),
}
_OWNER = re.compile(r"owner|presentation|inscription|armorial|engrav|initials of", re.IGNORECASE)
_TOWN = re.compile(r"^town mark of (.+)$", re.IGNORECASE)
_FIRM = frozenset(("CO", "SONS", "SON", "BROS", "LTD", "AND"))
_FIGURES = re.compile(r"^[.,]?\d[\d.,/ ]*(?:S|FINE)?$", re.IGNORECASE)


class Seen(msgspec.Struct, frozen=True, kw_only=True):
    """A digested mark.

    letters: (capital letter or None if lost, state) where state is clear, worn, obscure, unsure.
    plain: folded text, capitals, letters and figures only, ``?`` for a lost one.
    parts: ``plain`` by lines or separators. number: the figures. year: four figures if they may be
    a year. devices: chance of the words given each device. roles: what it was called.
    """

    mark: Mark
    form: str
    plain: str = ""
    parts: tuple[str, ...] = ()
    letters: tuple[tuple[str | None, str], ...] = ()
    number: str = ""
    year: int | None = None
    devices: dict[str, float] = {}
    town: str = ""
    roles: frozenset[str] = frozenset()
    lost: bool = False

    @property
    def key(self) -> str:
        """Content key: equal for two strikings of one punch."""
        mark = self.mark
        what = self.plain or (mark.device or "").casefold() or mark.note or ""
        return "|".join((self.form, what, mark.style or "", mark.case or "", *sorted(self.roles)))


def fold(text: str) -> str:
    """Capitals without accents; other scripts are kept.

    >>> fold("Rückert")
    'RUCKERT'
    """
    if text.isascii():
        return text.upper()
    plain = unicodedata.normalize("NFKD", text)
    return "".join(c for c in plain if not unicodedata.combining(c)).upper()


def _state(mark: Mark) -> str:
    if mark.legibility in (Legibility.OBSCURE, Legibility.ILLEGIBLE):
        return "obscure"
    if mark.legibility is Legibility.WORN:
        return "worn"
    return "unsure" if mark.doubtful else "clear"


def _roles(hint: str | None) -> frozenset[str]:
    found: set[str] = set()
    for word in words(hint or ""):
        found.update(_HINTS.get(word, ()))
    return frozenset(found)


def is_ownership(mark: Mark) -> bool:
    """Whether a mark is engraved or scratched by an owner and no part of the hallmarking."""
    called = " ".join(filter(None, (mark.hint, mark.note)))
    return mark.technique in (Technique.ENGRAVED, Technique.SCRATCHED) or bool(
        _OWNER.search(called)
    )


#: shorter words are left apart: initials in separate shields are no word
_JOINED_LEAST = 6
_PLATE_START = re.compile(r"^(EPNS|EPBM|EPGS|EPC|EPWM)(?=.)")


def pieces(mark: Mark, known_words: frozenset[str]) -> tuple[Mark, ...]:
    """A mark whose text joins a known word with others, parted; else the mark itself.

    >>> [m.text for m in pieces(Mark(text="PITCHER E.P.N.S. MELB"), frozenset({"EPNS"}))]
    ['PITCHER', 'E.P.N.S.', 'MELB']
    """
    if not mark.text or " " not in mark.text.strip() or mark.text[0] == "[":
        return (mark,)
    tokens = mark.text.split()
    keys = ["".join(c for c in fold(t) if c.isalnum()) for t in tokens]
    whole = "".join(keys)
    hits = [
        len(k) > 2 and (k in known_words or bool(_PLATE_START.match(k))) and not k.isdigit()
        for k in keys
    ]
    if whole in known_words or not any(hits) or all(hits):
        return (mark,)
    runs: list[list[str]] = []
    for token, hit in zip(tokens, hits, strict=True):
        if hit or not runs or runs[-1][0] == "":
            runs.append(["" if hit else "x", token])
        else:
            runs[-1].append(token)
    return tuple(msgspec.structs.replace(mark, text=" ".join(run[1:])) for run in runs)


def joined(marks: Sequence[Mark], known_words: frozenset[str]) -> list[Mark]:
    """Marks, with neighbours that only together make a known word put together.

    >>> rows = joined((Mark(text="MADE IN"), Mark(text="ENGLAND")), frozenset({"MADEINENGLAND"}))
    >>> [m.text for m in rows]
    ['MADE IN ENGLAND']
    """
    found: list[Mark] = []
    for mark in marks:
        last = found[-1] if found else None
        if last and last.text and mark.text and last.part == mark.part:
            both = f"{last.text} {mark.text}"
            key = "".join(c for c in fold(both) if c.isalnum())
            if len(key) >= _JOINED_LEAST and key in known_words and min(map(len, both.split())) > 1:
                found[-1] = msgspec.structs.replace(last, text=both)
                continue
        found.append(mark)
    return found


def digest(mark: Mark, thesaurus: Thesaurus, known_words: frozenset[str]) -> Seen:
    """The mark as the engine uses it. ``known_words`` are folded words of the library."""
    roles = _roles(mark.hint)
    if mark.device:
        town = _TOWN.match(mark.device)
        return Seen(
            mark=mark,
            form="device",
            devices={} if town else thesaurus.chances(mark.device),
            town=town.group(1).strip() if town else "",
            roles=roles,
        )
    if not mark.text:
        return Seen(mark=mark, form="illegible", roles=roles, lost=True)
    try:
        read = parse(mark.text)
    except TranscriptionError:
        return Seen(mark=mark, form="illegible", roles=roles, lost=True)
    base = _state(mark)
    letters = tuple(
        (fold(c)[:1] if c else None, base if sure else "unsure")
        for c, sure in read.letters
        if c is None or c.isalpha()
    )
    text = fold(read.plain)
    parts = tuple(
        p for p in (re.sub(r"[^\w?]", "", s) for s in re.split(r"[\s./·•∙*&-]+", text)) if p
    )
    plain = "".join(parts)
    figures = "".join(c for c in text if c.isdigit())
    year = int(figures) if len(figures) == 4 and 1300 <= int(figures) <= 2100 else None
    lost = "?" in plain or bool(re.search(r"\[-+\]", mark.text))
    read_as = _Text(mark.text, text, plain, parts, len(letters), figures)
    form, number = _form(read_as, roles, known_words)
    return Seen(
        mark=mark,
        form=form,
        plain=plain,
        parts=parts,
        letters=letters,
        number=figures if number else "",
        year=year if form in ("figures", "mixed") else None,
        roles=roles,
        lost=lost or form == "illegible",
    )


class _Text(NamedTuple):
    """A text as given, folded, and without separators."""

    raw: str
    text: str
    plain: str
    parts: tuple[str, ...]
    letters: int
    figures: str


def _form(read_as: _Text, roles: frozenset[str], known_words: frozenset[str]) -> tuple[str, bool]:
    """Form of a text, and whether its figures count."""
    raw, text, plain, parts, letters, figures = read_as
    if not plain.replace("?", ""):
        lone = len(plain) == 1 and ("date" in roles or not roles)
        return ("letter" if lone else "illegible"), False
    if _FIGURES.match(text.strip()) or (
        figures and not any(c.isalpha() for c in plain if c not in "SMF")
    ):
        return "figures", True
    if plain in known_words or _PLATE_START.match(plain):
        return "word", True
    if figures:
        return "mixed", True
    if letters == 1:
        return "letter", False
    short = [p for p in parts if p not in _FIRM]
    capitals = len(short) > 1 or raw.upper() == raw or len(plain) <= 2
    if short and max(map(len, short)) <= 3 and sum(map(len, short)) <= 7 and capitals:
        return "initials", False
    return "name", False
