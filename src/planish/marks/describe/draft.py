"""Marks while they are being read: what may still change before a ``Mark`` is made."""

from dataclasses import dataclass, field

from planish.marks.describe import vocabulary as v
from planish.marks.describe.struck import clean
from planish.marks.observation import Case, Legibility, Mark, Style, Technique
from planish.marks.transcription import parse


@dataclass(slots=True)
class Where:
    """A part of the piece and the place on it, in the writer's words."""

    part: str | None = None
    place: str | None = None

    def __bool__(self) -> bool:
        return bool(self.part or self.place)


@dataclass(slots=True)
class Draft:
    """A mark, or the words said before it (``text`` and ``device`` are then None)."""

    text: str | None = None
    device: str | None = None
    style: Style | None = None
    case: Case | None = None
    outline: str | None = None
    hint: str | None = None
    where: Where = field(default_factory=Where)
    own_place: bool = False
    technique: Technique | None = None
    legibility: Legibility | None = None
    times: int = 1
    doubtful: bool = False
    notes: list[str] = field(default_factory=list)
    charges: list[str] = field(default_factory=list)
    span: tuple[int, int] | None = None  # where a picture stands in the text

    def note(self, text: str) -> None:
        """Add words to the note once."""
        if text and text not in self.notes:
            self.notes.append(text)

    def take(self, said: "Draft") -> None:
        """Take over what was said before the mark."""
        self.style = self.style or said.style
        self.case = self.case or said.case
        self.outline = self.outline or said.outline
        self.hint = self.hint or said.hint
        self.technique = self.technique or said.technique
        self.legibility = self.legibility or said.legibility
        self.times = max(self.times, said.times)
        self.doubtful = self.doubtful or said.doubtful
        self.notes += [n for n in said.notes if n not in self.notes]
        if said.where and not self.own_place:
            self.where, self.own_place = said.where, said.own_place

    def finish(self) -> Mark | None:
        """The mark, or None where its letters cannot be transcribed."""
        text = clean(self.text) if self.text is not None else None
        if text is None and self.device is None:
            return None
        case, sure = self.case, self.case is not None
        letters = parse(text).letters if text else ()
        if case is None and text and len(letters) == 1 and "[---]" not in text:
            # a small letter is printed small on purpose; a capital is how any letter is printed
            char = letters[0][0] or ""
            sure = char.islower()
            if sure or char.isupper():
                case = Case.SMALL if sure else Case.CAPITAL
        return Mark(
            text=text,
            device=self.device,
            style=self.style,
            case=case,
            case_sure=sure,
            outline=self.outline,
            charge=" and ".join(c.removeprefix("with ") for c in self.charges) or None,
            hint=self.hint,
            part=self.where.part,
            place=self.where.place,
            technique=self.technique,
            legibility=self.legibility,
            times=self.times,
            doubtful=self.doubtful,
            note="; ".join(self.notes) or None,
        )


def unread(role: str, said: Draft) -> Draft:
    """The mark of a role that the writer names without giving its letters."""
    obscure = role == v.DATE
    draft = Draft(text="?" if obscure else "[---]", hint=role)
    draft.take(said)
    draft.hint = role
    draft.legibility = said.legibility or (
        Legibility.OBSCURE if obscure else Legibility.ILLEGIBLE if role == v.MAKER else None
    )
    return draft
