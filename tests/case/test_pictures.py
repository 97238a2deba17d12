import io
from pathlib import Path

import pytest
from PIL import Image

from planish.case.pictures import MOST_BYTES, fault_of, kind_of


# the reference for what a file of each kind begins with: the encoder of an image library
@pytest.mark.parametrize(
    ("form", "usable"),
    [("JPEG", True), ("PNG", True), ("WEBP", True), ("GIF", False), ("TIFF", False),
     ("BMP", False), ("PDF", False)],
)  # fmt: skip
def test_kinds_are_told_by_what_an_encoder_writes(form: str, *, usable: bool) -> None:
    stream = io.BytesIO()
    Image.new("RGB", (3, 2)).save(stream, form)
    name, can = kind_of(stream.getvalue()[:16])
    assert can is usable
    assert form.lower() in name.lower()


def test_a_picture_too_large_for_a_report_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "big.png"
    Image.new("RGB", (3, 2)).save(path)
    assert fault_of(tmp_path, "big.png") is None
    with path.open("r+b") as stream:
        stream.truncate(MOST_BYTES + 1)
    assert fault_of(tmp_path, "big.png") == ("the picture has 40 MB", "save it below 40 MB")


def test_a_backslash_is_mended() -> None:
    assert fault_of(Path(), "p\\marks.jpg") == (
        "the path has a backslash",
        "write 'p/marks.jpg'",
    )
