"""What wear and handwriting do to letters: the chance of reading one letter for another.

The pairs are common practice (palaeography of punches: open c, e and o; I for J and l; long s for f;
u and n, V and U ...). The rates are the bench's own and are described in docs/honesty.md.
"""

from functools import cache

# Common practice; each group holds letters read for one another when worn.
_CONFUSED: tuple[str, ...] = (
    "CEGO", "OQDU", "IJLT", "HBKN", "NUMW", "FTEP", "SFZ", "UVY", "MNW", "PRBF", "AR", "KR", "XY", "DOB", "GQ",
)  # fmt: skip
# Printing and catalogue conventions, not wear: one form stands for the other.
_SAME: tuple[str, ...] = ("IJ", "UV")

# Shapes that become one another when the punch is read upside down, sideways or mirrored.
_TURNED = frozenset(
    frozenset(pair)
    for pair in (
        "NU",
        "DP",
        "BQ",
        "BD",
        "PQ",
        "MW",
        "NZ",
        "EM",
        "EW",
        "CU",
        "CN",
        "HI",
        "LV",
        "TI",
        "YH",
    )
)
#: chance that a mark was read turned (common practice: loupe work is done from all sides)
_READ_TURNED = 0.004
#: what a capital becomes upside down
_UPSIDE_DOWN = str.maketrans("HINOSXZMWU", "HINOSXZWMN")

#: chance of a misreading of a letter called clear, worn, obscure
MISREAD = {"clear": 0.012, "worn": 0.06, "obscure": 0.30, "unsure": 0.35}
_SHARE_CONFUSED = 0.7
_ALPHABET = 24


@cache
def _partners(letter: str) -> frozenset[str]:
    return frozenset("".join(g for g in _CONFUSED if letter in g)) - {letter}


@cache
def seen_given(seen: str | None, true: str, state: str = "clear") -> float:
    """Chance of writing down ``seen`` where the punch has ``true`` (capitals; case is apart).

    ``seen`` None is a lost letter and says nothing: the chance is that of a blind guess.

    >>> seen_given("C", "C") > 0.9 > seen_given("C", "E") > seen_given("C", "X")
    True
    """
    if seen is None:
        return 1.0 / _ALPHABET
    wrong = MISREAD[state]
    if seen == true:
        return 1.0 - wrong
    if any(seen in pair and true in pair for pair in _SAME):
        return 0.45 * (1.0 - wrong)
    partners = _partners(true)
    floor = wrong * (1.0 - _SHARE_CONFUSED) / _ALPHABET
    if frozenset((seen, true)) in _TURNED:
        floor += _READ_TURNED
    if seen in partners:
        return wrong * _SHARE_CONFUSED / len(partners) + floor
    return floor


def upside_down(letters: str) -> str | None:
    """What a row of capitals reads upside down; None if a letter has no such reading.

    >>> upside_down("SHW"), upside_down("PB")
    ('MHS', None)
    """
    if not all(ord(c) in _UPSIDE_DOWN for c in letters):
        return None
    return letters[::-1].translate(_UPSIDE_DOWN)


#: chance that a writer's style word is used for the true style, and that no style is stated
_STYLES = ("roman", "italic", "black-letter", "lombardic", "court-hand", "script", "sans", "gaelic")
_CLOSE = {
    ("roman", "sans"), ("sans", "roman"), ("roman", "italic"), ("italic", "script"), ("script", "italic"),
    ("black-letter", "lombardic"), ("lombardic", "black-letter"), ("court-hand", "black-letter"),
    ("court-hand", "script"), ("black-letter", "court-hand"), ("gaelic", "black-letter"),
    ("italic", "roman"), ("lombardic", "roman"),
}  # fmt: skip
_UNSTATED = {
    "roman": 0.9,
    "sans": 0.9,
    "italic": 0.65,
    "script": 0.55,
    "black-letter": 0.72,
    "lombardic": 0.75,
    "court-hand": 0.75,
    "gaelic": 0.7,
}  # fmt: skip


@cache
def style_given(seen: str | None, true: tuple[str, ...]) -> float:
    """Chance of the stated style (None = not stated) given the true styles it may have.

    An empty ``true`` is unknown and gives the average.
    """
    if not true:
        true = ("roman", "italic", "black-letter", "script")
    total = 0.0
    for style in true:
        silent = _UNSTATED.get(style, 0.7)
        if seen is None:
            total += silent
        elif seen == style:
            total += (1 - silent) * 0.85
        elif (seen, style) == ("script", "italic"):
            # curators call the italic capitals of Edinburgh and others script or cursive
            total += (1 - silent) * 0.35
        elif (seen, style) in _CLOSE:
            total += (1 - silent) * 0.06
        else:
            total += (1 - silent) * 0.01
    return total / len(true)


#: average chance of each statement over marks of every style: what a chance mark would show
STYLE_AT_LARGE = {
    style: sum(style_given(style, (s,)) for s in _STYLES) / len(_STYLES) for style in _STYLES
} | {None: sum(style_given(None, (s,)) for s in _STYLES) / len(_STYLES)}


def case_given(seen: str | None, true: str, *, sure: bool) -> float:
    """Chance, relative to a blind guess, of the case seen given the true case of the letter.

    A letter printed small is small; a letter printed as a capital may be a small one that the
    catalogue capitalised, unless the writer says so.
    """
    if seen is None or true not in ("capital", "small"):
        return 1.0
    if sure:
        return 1.9 if seen == true else 0.1
    if seen == "small":
        return 1.8 if true == "small" else 0.2
    return 1.3 if true == "capital" else 0.7
