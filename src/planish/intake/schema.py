"""What a table is to become: fields, their names in several languages, and how a cell is read."""

import re
import unicodedata
from collections.abc import Callable, Mapping, Sequence

import msgspec

from planish.intake.forms import day, day_order, decimal_sign, number

#: reads a cell into columns of the result; raises ``CellError``
Read = Callable[[str], Mapping[str, str]]


class CellError(ValueError):
    """A cell that cannot be taken: what, and how to mend it."""

    def __init__(self, what: str, mend: str) -> None:
        self.what, self.mend = what, mend
        super().__init__(f"{what}; {mend}")


class Field(msgspec.Struct, frozen=True, kw_only=True):
    """One field. names: what people call its column; read: cell to columns of the result.

    column: makes the reader from all cells of the column, where one cell alone does not tell how it
    is meant (``figures``, ``days``); goes before ``read``.
    """

    name: str
    names: tuple[str, ...]
    read: Read
    #: whether the cells of a column look like this field, for columns with an unknown name
    looks: Callable[[Sequence[str]], bool] | None = None
    column: Callable[[Sequence[str]], Read] | None = None

    def reader(self, cells: Sequence[str]) -> Read:
        """The reader for the cells of a column."""
        return self.column(cells) if self.column else self.read


class Schema(msgspec.Struct, frozen=True, kw_only=True):
    """The fields of a kind of table. required: columns of the result that must be filled.

    rest: the column of the result that keeps what no field takes, or None.
    """

    kind: str
    fields: tuple[Field, ...]
    columns: tuple[str, ...]
    required: tuple[str, ...]
    rest: str | None = None

    def field(self, name: str) -> Field | None:
        """The field of a name."""
        return next((f for f in self.fields if f.name == name), None)


def key(header: str) -> str:
    """A header without case, accents, punctuation and doubled space.

    >>> key("  Maître-orfèvre (nom) ")
    'maitre orfevre nom'
    """
    plain = unicodedata.normalize("NFKD", header.casefold())
    plain = "".join(c for c in plain if not unicodedata.combining(c)).replace("ß", "ss")
    return " ".join(re.sub(r"[^\w]+|_", " ", plain).split())


def as_it_stands(name: str) -> Read:
    """A reader that takes the cell as one line of text."""

    def read(text: str) -> dict[str, str]:
        return {name: " ".join(text.split())}

    return read


def figures(name: str) -> Callable[[Sequence[str]], Read]:
    """Numbers, the sign before their decimals found from the whole column."""

    def made(cells: Sequence[str]) -> Read:
        found = decimal_sign(cells)

        def read(text: str) -> dict[str, str]:
            sign = found or decimal_sign([text]) or ("." if text.strip().isdigit() else None)
            shown = " ".join(text.split())[:40]
            if sign is None:
                raise CellError(
                    f"{shown} may be thousands or decimals, or is no number",
                    "write figures with two decimals, as 1250.00",
                )
            try:
                return {name: str(number(text, sign))}
            except ValueError:
                mend = f"write figures with decimals after '{sign}'"
                raise CellError(f"{shown} is no number", mend) from None

        return read

    return made


def days(name: str) -> Callable[[Sequence[str]], Read]:
    """Days in figures, whether day or month stands first found from the whole column; ISO 8601 out."""

    def made(cells: Sequence[str]) -> Read:
        order = day_order(cells)

        def read(text: str) -> dict[str, str]:
            try:
                return {name: day(text, order).isoformat()}
            except ValueError as fault:
                shown = " ".join(str(fault).split())[:80]
                raise CellError(shown, "write year-month-day, as 1884-05-30") from None

        return read

    return made


def one_of(name: str, words: Mapping[str, str]) -> Read:
    """A reader that takes one of some words; words: as people write it, to how we do."""
    known = {key(word): meant for word, meant in words.items()}

    def read(text: str) -> dict[str, str]:
        found = known.get(key(text))
        if found is None:
            raise CellError(
                f"{' '.join(text.split())[:40]} is not known",
                f"write one of {', '.join(dict.fromkeys(known.values()))}",
            )
        return {name: found}

    return read
