"""What several pieces share, told once with their numbers."""

from collections.abc import Iterable, Sequence

from planish.case.complete import Gap
from planish.case.worked import Worked


def numbered(numbers: Sequence[int]) -> str:
    """Pieces by their numbers.

    >>> numbered([3]), numbered([1, 2, 3, 7])
    ('piece 3', 'pieces 1-3, 7')
    """
    runs: list[list[int]] = []
    for n in sorted(numbers):
        if runs and n == runs[-1][1] + 1:
            runs[-1][1] = n
        else:
            runs.append([n, n])
    text = ", ".join(str(low) if low == high else f"{low}-{high}" for low, high in runs)
    return f"{'piece' if len(numbers) == 1 else 'pieces'} {text}"


def gaps(found: Iterable[Gap]) -> list[tuple[str, Gap]]:
    """Each gap once, with the pieces that have it; those of the case first, with an empty text."""
    case: list[tuple[str, Gap]] = []
    about: dict[str, tuple[Gap, list[int]]] = {}
    for gap in found:
        if gap.piece is None:
            case.append(("", gap))
        else:
            about.setdefault(gap.rule, (gap, []))[1].append(gap.piece)
    return [*case, *((numbered(numbers), gap) for gap, numbers in about.values())]


def warnings(worked: Worked) -> list[tuple[str, str]]:
    """Each warning once, with the pieces that it is about; those of the case first."""
    about: dict[str, list[int]] = {}
    for done in worked.pieces:
        for says in done.warnings:
            about.setdefault(says, []).append(done.piece.number)
    return [
        *(("case", says) for says in worked.warnings),
        *((numbered(numbers), says) for says, numbers in about.items()),
    ]
