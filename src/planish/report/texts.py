"""Standing texts: cautions called for by the case, and the words used."""

import functools
import tomllib
from collections.abc import Iterator
from pathlib import Path

from planish.case.kinds import DeductionKind, ReadingKind, TestKind
from planish.case.worked import PieceWork, Worked
from planish.report.view import Line


@functools.cache
def _texts() -> dict[str, list[dict[str, str]]]:
    texts: dict[str, list[dict[str, str]]] = tomllib.loads(
        (Path(__file__).parent / "texts.toml").read_text("utf-8")
    )
    return texts


def glossary(*, valued: bool = True) -> tuple[Line, ...]:
    """The words used; those of value only where one is stated."""
    return tuple(
        Line(label=w["label"], value=w["value"])
        for w in _texts()["word"]
        if valued or w.get("of") != "value"
    )


def cautions(worked: Worked) -> tuple[Line, ...]:
    """The cautions that the case calls for, in the order of the file."""
    called = set(_called(worked))
    return tuple(
        Line(label=c["label"], value=c["value"]) for c in _texts()["caution"] if c["when"] in called
    )


def _called(worked: Worked) -> Iterator[str]:
    yield "always"
    if worked.case.case.tax is not None:
        yield "tax"
    for work in worked.pieces:
        yield from _of_piece(work)


def _of_piece(work: PieceWork) -> Iterator[str]:
    piece = work.piece
    kind = piece.confirmed.kind.value if piece.confirmed else ""
    kind = kind or (work.reading.best.kind if work.reading.best else "")
    if kind in (ReadingKind.PLATED, ReadingKind.BASE):
        yield "plated"
    else:
        yield "silver"
    if work.metal is not None and work.metal.value is not None:
        yield "metal"
    if any(t.kind is TestKind.TOUCH for t in piece.tests):
        yield "touch"
    if piece.weight and any(d.kind is DeductionKind.FILLER for d in piece.weight.deductions):
        yield "filled"
    if is_restricted(work):
        yield "restricted"


def restrictions(work: PieceWork) -> tuple[str, ...]:
    """The case's own warnings on protected materials of a piece."""
    return tuple(w for w in work.warnings if "trade in it may be restricted" in w)


def is_restricted(work: PieceWork) -> bool:
    """Whether a piece holds a material that the law may protect."""
    return bool(work.piece.restricted) or bool(restrictions(work))
