"""Materials, cuts and tests by the words that people use for them."""

import difflib
import re
import unicodedata
from collections.abc import Iterable
from functools import lru_cache
from typing import Protocol, TypeVar

from planish.library import Library, load
from planish.library.stone_rows import Cut, Material
from planish.quantity import QuantityError


class _Named(Protocol):
    @property
    def id(self) -> str: ...
    @property
    def name(self) -> str: ...
    @property
    def names(self) -> tuple[str, ...]: ...


N = TypeVar("N", bound=_Named)


@lru_cache(maxsize=4096)
def key(words: str) -> str:
    """Words without case, accents, hyphens and plural.

    >>> key("Piqué  Tortoise-shells")
    'pique tortoise shell'
    """
    flat = unicodedata.normalize("NFKD", words).encode("ascii", "ignore").decode().lower()
    flat = re.sub(r"[^a-z0-9]+", " ", flat.replace("'s", "s"))
    return " ".join(re.sub(r"(?<=[a-z]{3})(?<!s)s$", "", w) for w in flat.split())


def _find(rows: Iterable[N], words: str, what: str) -> N:
    rows = tuple(rows)
    wanted = key(words)
    # its own name goes before another's nickname: glass is glass, not paste
    for row in rows:
        if wanted in (key(row.id), key(row.name)):
            return row
    for row in rows:
        if wanted in {key(name) for name in row.names}:
            return row
    known = sorted({key(n) for row in rows for n in row.names})
    near = difflib.get_close_matches(wanted, known, n=3, cutoff=0.6)
    near += [n for n in known if wanted and wanted in n and n not in near][: 3 - len(near)]
    mend = (
        f"did you mean {' or '.join(near)}?" if near else f"'planish stones list' shows each {what}"
    )
    raise QuantityError(what, words, "this is not known", mend)


def find_material(words: str, library: Library | None = None) -> Material:
    """The material of that id or name.

    Raises:
        QuantityError: none goes by that name.

    >>> find_material("Whitby jet").id
    'jet'
    """
    return _find((library or load()).materials, words, "material")


def find_cut(words: str, library: Library | None = None) -> Cut:
    """The cut or solid of that id or name.

    Raises:
        QuantityError: none goes by that name.

    >>> find_cut("navette").id
    'marquise'
    """
    rows = (library or load()).cuts
    try:
        return _find(rows, words, "cut")
    except QuantityError:
        shorter = re.sub(r"(?i)\s+cut\s*$", "", words)
        if shorter == words:
            raise
        return _find(rows, shorter, "cut")
