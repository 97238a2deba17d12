import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.quantity import QuantityError
from planish.stones import read_sizes
from planish.stones.sizes import HANDLING


def values(text: str) -> list[float | None]:
    return [part.value if part else None for part in read_sizes(text).parts]


@pytest.mark.parametrize(
    ("text", "millimetres"),
    [
        ("6.5x6.4x3.9mm", [6.5, 6.4, 3.9]),
        ("6.5 × 6.4 × 3.9 mm", [6.5, 6.4, 3.9]),
        ("14 by 10 by 4.5", [14.0, 10.0, 4.5]),
        ("1.4x1.0x0.45cm", [14.0, 10.0, 4.5]),
        ("1.2cm x 8mm", [12.0, 8.0]),
        ("0.5in", [12.7]),
        ("14x10x?mm", [14.0, 10.0, None]),
        ("14x10x3-6mm", [14.0, 10.0, 4.5]),
    ],
)
def test_ways_of_writing(text: str, millimetres: list[float | None]) -> None:
    assert values(text) == pytest.approx(millimetres)


def test_the_last_decimal_written_counts_for_all() -> None:
    # GUM F.2.2.1: a step of 0.1 mm has u = 0.1 / sqrt(12)
    for part in read_sizes("14x10x4.5mm").parts:
        assert part is not None
        assert part.u == pytest.approx(math.hypot(0.1 / math.sqrt(12), HANDLING))


def test_plus_minus_after_the_last_counts_for_all_and_is_told() -> None:
    read = read_sizes("6.5 x 6.4 x 3.9 mm ± 0.1")

    assert [p.u for p in read.parts if p] == pytest.approx([0.1, 0.1, 0.1])
    assert "read as that of each" in read.notes[0]


def test_plus_minus_after_each_is_its_own() -> None:
    read = read_sizes("6.5±0.1x6.4±0.2mm")

    assert [p.u for p in read.parts if p] == pytest.approx([0.1, 0.2])


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "a measurement is missing"),
        ("6.5xx4mm", "a measurement is missing"),
        ("big", "'big' is no measurement"),
        ("6,5x4mm", "comma"),
        ("6.5x0mm", "nought"),
        ("6.5x4 furlong", "unit 'furlong' is not known"),
        ("6-5mm", "upside down"),
        ("2±1mm", "says too little"),
        ("6.5±0.1x4x3±0.1mm", "some measurements have a ±"),
        ("6.5mm±0.1cm", "mixed"),
    ],
)
def test_bad_sizes_say_what_is_wrong(text: str, says: str) -> None:
    with pytest.raises(QuantityError) as fault:
        read_sizes(text)

    assert says in str(fault.value)
    assert "\n" not in str(fault.value)


@given(st.integers(100, 9999), st.integers(100, 9999))
def test_the_unit_of_entry_does_not_matter(a: int, b: int) -> None:
    tenths = read_sizes(f"{a / 100:.2f}x{b / 100:.2f}mm").parts
    centi = read_sizes(f"{a / 1000:.3f}x{b / 1000:.3f}cm").parts

    for one, other in zip(tenths, centi, strict=True):
        assert one is not None
        assert other is not None
        assert one.value == pytest.approx(other.value)
        assert one.u == pytest.approx(other.u)


@given(st.text(max_size=30))
def test_any_text_is_read_or_refused(text: str) -> None:
    try:
        parts = read_sizes(text).parts
    except QuantityError:
        return
    assert all(p is None or p.low > 0 for p in parts)
