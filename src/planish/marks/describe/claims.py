"""What a writer says that the marks mean: dates, periods, makers. Kept apart from the marks."""

import re
from collections.abc import Sequence

from planish.marks.describe import vocabulary as v
from planish.marks.describe.tokens import Token
from planish.marks.observation import Claim

_YEAR = re.compile(r"(1[3-9]\d\d|20[0-4]\d)")
_SPAN = re.compile(r"(1[3-9]\d\d|20[0-4]\d)[-–—/](\d{1,4})")
_DECADE = re.compile(r"(1[3-9]\d|20[0-4])0'?s")
_CENTURY = re.compile(r"(1[3-9]|2[01])(?:th|st)")
_ABOUT = frozenset(("c", "ca", "circa", "about", "around", "approx", "approximately"))
_BOUND: dict[str, tuple[int | None, int | None]] = {
    "before": (None, 0),
    "after": (0, None),
    "since": (0, None),
    "until": (None, 0),
}
#: common practice: the years on either side that "circa" stands for
_CIRCA = 5
_EARLY = {"early": (0, 33), "mid": (33, 67), "late": (67, 99)}
_COMPANY = v.word_set(
    "co co. company sons son bros bros. brothers ltd ltd. jr jr. sr & and de van von mfg"
)
_GLUED_ABOUT = re.compile(r"c\.?(1[3-9]\d\d|20[0-4]\d)(?:[-–](\d{2,4}))?", re.IGNORECASE)


def _end(first: int, last: str) -> int:
    """The last year of a span printed short: 1758-9, 1897/98."""
    if len(last) >= 4:
        return int(last)
    base = int(10 ** len(last))
    end = first - first % base + int(last)
    return end if end >= first else end + base


def _moved(year: int | None, by: int | None) -> int | None:
    return None if year is None or by is None else year + by


def date(tokens: Sequence[Token], at: int) -> tuple[Claim, int] | None:
    """A date claim at a word and the number of tokens it takes, or None."""
    word = tokens[at].text
    low = word.casefold().rstrip(".")
    if match := _GLUED_ABOUT.fullmatch(word):
        first = int(match.group(1))
        last = _end(first, match.group(2)) if match.group(2) else first
        return Claim(about="date", says=word, year_from=first - _CIRCA, year_to=last + _CIRCA), 1
    if (low in _ABOUT or low in _BOUND) and at + 1 < len(tokens):
        following = date(tokens, at + 1)
        if following is None or following[0].year_from is None:
            return None
        claim, size = following
        low_end, high_end = _BOUND.get(low, (-_CIRCA, _CIRCA))
        return Claim(
            about="date",
            says=f"{word} {claim.says}",
            year_from=_moved(claim.year_from, low_end),
            year_to=_moved(claim.year_to, high_end),
        ), size + 1
    if match := _SPAN.fullmatch(word):
        first = int(match.group(1))
        last = _end(first, match.group(2))
        if last - first < 120:
            return Claim(about="date", says=word, year_from=first, year_to=last), 1
    if _YEAR.fullmatch(word):
        return Claim(about="date", says=word, year_from=int(word), year_to=int(word)), 1
    if match := _DECADE.fullmatch(word):
        first = int(match.group(1)) * 10
        return Claim(about="date", says=word, year_from=first, year_to=first + 9), 1
    return _century(tokens, at, low)


def _century(tokens: Sequence[Token], at: int, low: str) -> tuple[Claim, int] | None:
    """Early 19th century, 18th c."""
    start = at
    part = next((p for p in _EARLY if low in {p, f"{p}-"} or low.startswith(p + "-")), None)
    if part and "-" not in low:
        at += 1
        if at >= len(tokens):
            return None
    match = _CENTURY.fullmatch(tokens[at].text.casefold().rpartition("-")[2])
    after = tokens[at + 1].text.casefold().rstrip(".") if at + 1 < len(tokens) else ""
    if not match or after not in ("century", "cent", "c"):
        return None
    first = (int(match.group(1)) - 1) * 100
    low_end, high_end = _EARLY[part] if part else (0, 99)
    says = " ".join(t.text for t in tokens[start : at + 2])
    claim = Claim(about="date", says=says, year_from=first + low_end, year_to=first + high_end)
    return claim, at + 2 - start


def _is_name(token: Token) -> bool:
    text = token.text
    return token.kind == "word" and text[:1].isupper() and any(c.isalpha() for c in text)


def name(tokens: Sequence[Token], at: int) -> tuple[str, int] | None:
    """A run of capitalised words that may be a person's or a firm's name: (name, tokens taken)."""
    end = at
    while end < len(tokens) and end - at < 8:
        token = tokens[end]
        joins = token.kind == "word" and token.text.casefold() in _COMPANY and end > at
        comma = (
            token.text == ","
            and end > at
            and end + 2 < len(tokens)
            and _is_name(tokens[end + 1])
            and tokens[end + 2].text == "&"
        )
        if not (_is_name(token) or joins or comma):
            break
        end += 1
        last = token.text.casefold().rstrip(".")
        after = tokens[end].text.casefold().rstrip(".") if end < len(tokens) else ""
        if last in ("ltd", "co", "company") and after not in ("ltd", "&", "and", "inc"):
            break
    while end > at and tokens[end - 1].text.casefold() in ("and", "&", "de", "van", "von"):
        end -= 1
    if end == at or not any(len(t.text) > 2 for t in tokens[at:end]):
        return None
    return " ".join(t.text for t in tokens[at:end]).replace(" ,", ","), end - at
