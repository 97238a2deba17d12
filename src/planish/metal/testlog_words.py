"""Remarks in free words ("sticks to a magnet; copper shows at the rim") turned into test entries.

Only what was seen counts: remarks that say what to look for, or what might be, give nothing. A remark
that no rule knows is left alone; the user sees which entries were made and can leave them out.
"""

import re
from collections.abc import Callable, Iterator

from planish.metal.testlog import Entry, Where

_N = r"(\d+(?:\.\d+)?)"
#: water at 20 °C and air [g/cm³], for weighings told without a temperature; a degree moves 0.0002
_WATER, _AIR = 0.9982, 0.0012
#: standard uncertainty of a density from figures in a remark, the method not told [g/cm³]
_TOLD_U = 0.08
_NOT_SEEN = re.compile(
    r"\b(looks?|looking|watch|check|test|asks?) for\b|\bif\b|\bwhether\b|\bmethods?\b|\bshould\b"
    r"|\bcan(?:not)?\b|\bmay\b|\bmight\b",
    re.IGNORECASE,
)
_TESTED = re.compile(r"\b(test|assay|analys|xrf|x-?ray)", re.IGNORECASE)
_NO = re.compile(r"\b(no|not|never|without|isn't|doesn't|don't|non)\b[\w\s-]{0,12}$", re.IGNORECASE)
_DENIED = re.compile(r"\b(no|not|non|never|doesn't|don't|isn't)\b", re.IGNORECASE)
_BRIGHT = re.compile(r"\b(never|not|doesn't|no)\b[\w\s]{0,8}\btarnish", re.IGNORECASE)
_COLOURS = r"(black|grey|gray|green|brown)"
_TARNISH = re.compile(
    rf"\b{_COLOURS}\b[\w\s]{{0,12}}tarnish|tarnish\w*\s+{_COLOURS}", re.IGNORECASE
)
_DENSITY = re.compile(rf"\b(?:density|specific gravity|SG)\b[^\d]{{0,12}}{_N}", re.IGNORECASE)
_WEIGHED = re.compile(rf"{_N}\s*g\w*\s+in air\b.*?{_N}\s*g\w*\b", re.IGNORECASE)
_BEAKER = re.compile(r"\btared?\b|\brises?\b|\brose\b|\bdisplac|\bmore\b", re.IGNORECASE)
_OF_SILVER = re.compile(rf"{_N}\s*(?:%|per cent|percent)\s*(?:of\s+)?silver", re.IGNORECASE)
_PERCENT = re.compile(rf"{_N}\s*(?:%|per cent|percent)", re.IGNORECASE)
_ASSAYED = re.compile(r"\bassay(?:ed)?\b[^\d]{0,12}(\d{3}(?:\.\d)?)\b", re.IGNORECASE)
_XRF = re.compile(r"\bxrf\b|x-?ray", re.IGNORECASE)

_Rule = Callable[[str], Iterator[Entry]]


def _words(test: str, reading: str, pattern: str, where: Where = Where.SURFACE) -> _Rule:
    found = re.compile(pattern, re.IGNORECASE)

    def rule(text: str) -> Iterator[Entry]:
        match = found.search(text)
        if match and not _NO.search(text[: match.start()]):
            yield Entry(test=test, readings=(reading,), where=where, note=text)

    return rule


def _magnet(text: str) -> Iterator[Entry]:
    if not re.search(r"\bmagnet|\bnon-?magnet", text, re.IGNORECASE):
        return
    if _DENIED.search(text) or "nonmagnetic" in text.casefold():
        reading = "none"
    elif re.search(r"\b(slight|faint|weak)", text, re.IGNORECASE):
        reading = "weak"
    else:
        reading = "strong"
    yield Entry(test="magnet", readings=(reading,), note=text)


def _tarnish(text: str) -> Iterator[Entry]:
    if _BRIGHT.search(text):
        years = re.search(r"\b(never|years|decades)\b", text, re.IGNORECASE)
        yield Entry(test="tarnish", readings=("never" if years else "none",), note=text)
    elif match := _TARNISH.search(text):
        colour = (match[1] or match[2]).lower()
        reading = {"green": "green", "brown": "dull"}.get(colour, "black")
        yield Entry(test="tarnish", readings=(reading,), note=text)


def _density(text: str) -> Iterator[Entry]:
    """A density told, or two weighings of which the second hangs in water."""
    if match := _DENSITY.search(text):
        value = float(match[1])
    elif match := _WEIGHED.search(text):
        air, second = float(match[1]), float(match[2])
        lost = second if _BEAKER.search(text) else air - second
        if not 0 < lost < air:
            return
        value = air / lost * (_WATER - _AIR) + _AIR
    else:
        return
    if 0.5 <= value <= 23.0:
        yield Entry(test="density", value=round(value, 3), plus_minus=_TOLD_U, note=text)


def _silver_share(text: str) -> Iterator[Entry]:
    """A share of silver that somebody found, by X-rays where the words say so, else by assay."""
    by_xrf = _XRF.search(text)
    if (match := _OF_SILVER.search(text)) or (by_xrf and (match := _PERCENT.search(text))):
        percent = float(match[1])
    elif match := _ASSAYED.search(text):
        percent = float(match[1]) / 10.0
    else:
        return
    if percent > 100.0:
        return
    if by_xrf:
        yield Entry(test="xrf", value=percent, plus_minus=1.5, note=text)
    else:
        yield Entry(test="assay", value=10.0 * percent, plus_minus=10.0, note=text)


_SHOWS = r"\b.{0,20}\b(shows?|showing|shines?|glows?|where worn|worn|wear)"
_RULES: tuple[_Rule, ...] = (
    _magnet,
    _tarnish,
    _density,
    _words("look", "pink", r"\b(copper|pink|red)\w*" + _SHOWS, Where.WORN),
    _words("look", "yellow", r"\b(brass|yellow)\w*" + _SHOWS, Where.WORN),
    _words("look", "grey", r"\b(grey|gray)\b.{0,12}\b(where worn|metal shows)", Where.WORN),
    _words("edges", "copper-line", r"\bcopper\b.{0,10}\b(line|edges?)|\bred line\b"),
    _words("edges", "applied-wire", r"\bapplied (silver )?(edges?|wire)|\blet-in shield"),
    _words("inside", "granular", r"\b(granular|crystalline|granulated)\b"),
    _words("inside", "tinned", r"\btinned\b"),
    _words("filling", "rattles", r"\brattl(?:es|ing)\b"),
    _words(
        "filling",
        "seen",
        r"\bfilled with\b|\b(pitch|cement|plaster|wax)\b.{0,12}\b(fill|inside|core)|\blead in\b",
    ),
    _words("dichromate", "green", r"\bacid\b.{0,25}\bgreen"),
    _words("dichromate", "blue", r"\bacid\b.{0,25}\bblue"),
    _words("dichromate", "dark-red", r"\bacid\b.{0,25}\bred"),
    _words("notch", "pink", r"\b(filed|notch)\b.{0,25}\b(copper|pink|red)"),
    _words("notch", "yellow", r"\b(filed|notch)\b.{0,25}\b(brass|yellow)"),
)


def entries_of(remarks: str) -> tuple[Entry, ...]:
    """Test entries that remarks tell of, each with its remark as note; one entry a test.

    >>> [(e.test, e.readings) for e in entries_of("both stick to a magnet; no mark")]
    [('magnet', ('strong',))]
    """
    found: dict[str, Entry] = {}
    # "925 silver" alone is what somebody claims, no test
    rules = (_silver_share, *_RULES) if _TESTED.search(remarks) else _RULES
    for part in _parts(remarks):
        if _NOT_SEEN.search(part):
            continue
        for rule in rules:
            for entry in rule(part):
                found.setdefault(entry.test, entry)
    return tuple(found.values())


def _parts(remarks: str) -> Iterator[str]:
    """Clauses; a weighing in air and its fellow in water stay together."""
    held = ""
    for clause in (c.strip() for c in re.split(r"[;\n]|\.\s", remarks)):
        if not clause:
            continue
        if held:
            yield f"{held}; {clause}"
            held = ""
        elif re.search(r"\bin air\b", clause, re.IGNORECASE) and "water" not in clause.casefold():
            held = clause
        else:
            yield clause
    if held:
        yield held
