"""A town's name: the name of its mark, or a claim of place."""

from typing import TYPE_CHECKING

from planish.marks.describe import claims, places, world
from planish.marks.describe import vocabulary as v
from planish.marks.describe.draft import Draft
from planish.marks.observation import Claim

if TYPE_CHECKING:
    from planish.marks.describe.marks import Scanner

_LINKS = v.word_set("of the for city town from in at")


class Towns:
    """Rules for towns; part of the scanner."""

    def __init__(self, scanner: "Scanner") -> None:
        self.scanner = scanner

    def read(self) -> bool:
        """A town at this word: "Moscow city emblem", "[Edinburgh mark]", "hm Birmingham"."""
        s = self.scanner
        hit = s.lexicon.find(s.tokens, s.at, ("town",))
        if hit is None or self._is_text(hit[2]):
            return False
        town, size = str(hit[1]), hit[2]
        tail = self._tail(s.at + size)
        role = s.lexicon.find(s.tokens, s.at + size, ("role",))
        if role and role[1] == "import mark":
            s.state.mark(Draft(device=f"town mark of {town}", hint="import mark"))
            s.at += size + role[2]
            s.reset()
            return True
        if role is None and self._is_picture(size + tail):
            return False
        names_mark = any(
            u in world.OFFICE_MARKS
            for t in s.tokens[s.at + size : s.at + size + tail]
            for u in t.units
        )
        state = s.state
        if state.remark and state.current and state.current.device and state.pend.hint is None:
            gloss = state.current.hint == v.TOWN or names_mark
            if gloss:  # "(town mark, London)" or "(London mark)" explains the picture before it
                state.current.hint = v.TOWN
                state.claim(Claim(about="place", says=town))
                s.at += size + tail
                return True
        dated = self._dated_marks(size)
        if dated and not s.hallmarked:
            s.hallmarked = True
            self._claim(town, size)
        elif names_mark or s.of_mark or state.pend.hint in (v.TOWN, "import mark"):
            self._mark(town, size, tail)
        else:
            self._claim(town, size)
        return True

    def _tail(self, start: int) -> int:
        """Words after the town that belong to the name of its office or mark."""
        s = self.scanner
        size = 0
        while start + size < len(s.tokens):
            token = s.tokens[start + size]
            if token.kind != "word" or not token.units:
                break
            if not all(u in _OFFICE for u in token.units):
                break
            if s.lexicon.find(s.tokens, start + size, ("role",)) and not self._town_role(
                start + size
            ):
                break
            size += 1
        while size and s.tokens[start + size - 1].text.casefold() in ("of", "the", "city", "town"):
            size -= 1
        return size

    def _town_role(self, at: int) -> bool:
        s = self.scanner
        role = s.lexicon.find(s.tokens, at, ("role",))
        return role is not None and role[1] in (v.TOWN, "assay mark")

    def _is_text(self, size: int) -> bool:
        """Capitals in a text that has small letters are what is struck: PHILA., BOSTON."""
        s = self.scanner
        said = places.said(s.tokens, s.at, s.at + size)
        after = s.token(size)
        dated = after is not None and after.text[:4].isdigit() and len(after.text) >= 4
        beside = s.token(-1)
        in_name = beside is not None and beside.kind == "word" and beside.text.isupper()
        return (
            said.isupper()
            and not s.shouting
            and (in_name or not (s.hallmarked and dated))
            and not dated
            and len(said) > 2
        )

    def _is_picture(self, size: int) -> bool:
        """Whether the town is part of a picture's name: a Birmingham anchor is an anchor."""
        s = self.scanner
        picture = s.lexicon.find(s.tokens, s.at, ("device",))
        return picture is not None and picture[2] > size

    def _dated_marks(self, size: int) -> bool:
        """As in "London 2023 marks", "Chester hallmarks for 1905": that office's marks are there."""
        s = self.scanner
        found = claims.date(s.tokens, s.at + size) if s.token(size) is not None else None
        at = s.at + size + (found[1] if found else 0)
        return bool(found and at < len(s.tokens) and set(s.tokens[at].units) & world.OFFICE_MARKS)

    def _mark(self, town: str, size: int, tail: int) -> None:
        s = self.scanner
        state = s.state
        imported = state.pend.hint == "import mark"
        if state.pend.hint in (v.TOWN, "assay mark", v.STANDARD, "import mark"):
            state.pend.hint = None
        elif state.pend.hint:
            state.flush()
        named = [u for t in s.tokens[s.at + size : s.at + size + tail] for u in t.units]
        hint = "district mark" if "district" in named else v.TOWN
        hint = "import mark" if imported else hint
        draft = Draft(device=f"town mark of {town}", hint=hint)
        state.pend.hint = None
        state.mark(draft)
        s.at += size + tail
        s.reset()

    def _claim(self, town: str, size: int) -> None:
        s = self.scanner
        state = s.state
        s.letter = ""
        if s.hallmarked:
            pend = state.pend
            state.pend = Draft(doubtful=True, legibility=pend.legibility)
            state.mark(Draft(device=f"town mark of {town}", hint=v.TOWN))
            state.pend = pend
        state.claim(Claim(about="place", says=town, doubtful=state.pend.doubtful))
        state.pend.doubtful = False
        s.at += size


_OFFICE = v.word_set(
    "city town district assay office administration department mark emblem coat arm of hallmark hall "
    "certification the stamp punch symbol burgh guild inspectorate control administration's castle"
) - {"castle"}
