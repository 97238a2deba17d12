"""Codes of single years: signs that stand one a year, in a row, laid out as one sign that changes.

Sweden and Finland count years by a letter and a figure, the Danish towers stand over two figures of
the year. The library has one row a year; apart they would be hundreds of segments of one year each.
"""

from collections import defaultdict
from collections.abc import Sequence

import msgspec

from planish.library.rows import Sign

_STATIC = frozenset({"text", "number", "letter"})
#: fewer codes than this stay apart
_LEAST = 8


class Codes(msgspec.Struct, frozen=True):
    """The signs of one office with their codes joined. by_year: year -> the sign of that year."""

    signs: list[Sign]
    by_year: dict[int, Sign]


def join_codes(signs: Sequence[Sign]) -> Codes:
    """Signs of one office, with the codes of single years joined to signs of the kind ``code``.

    Joined are the codes of one role, those of the date where there are such, that stand alone in
    their year.
    """
    by_role: dict[str, dict[int, list[Sign]]] = defaultdict(lambda: defaultdict(list))
    for sign in signs:
        if sign.kind in _STATIC and sign.year_from == sign.year_to:
            by_role[sign.role][sign.year_from].append(sign)
    codes = {y: rows[0] for y, rows in by_role["date"].items() if len(rows) == 1}
    if len(codes) < _LEAST or any(s.kind == "cycle" and s.role == "date" for s in signs):
        return Codes(list(signs), {})
    joined: list[Sign] = []
    for year in sorted(codes):
        sign, last = codes[year], joined[-1] if joined else None
        if last and last.year_to == year - 1 and _alike(last, sign):
            joined[-1] = msgspec.structs.replace(last, year_to=year)
        else:
            joined.append(msgspec.structs.replace(sign, kind="code", value=""))
    apart = {id(s) for s in codes.values()}
    return Codes([*(s for s in signs if id(s) not in apart), *joined], codes)


def _alike(a: Sign, b: Sign) -> bool:
    return (a.office, a.share, a.fineness, a.source) == (b.office, b.share, b.fineness, b.source)
