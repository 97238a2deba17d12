"""Copies of photographs for print: upright, small, without place; bad files told in one line."""

import io
from pathlib import Path

import pytest
from PIL import Image

from planish.report.errors import PhotographError
from planish.report.pictures import LONGEST, Derived, derived

GPS, ORIENTATION = 0x8825, 0x0112


def saved(path: Path, picture: Image.Image, **options: object) -> Path:
    picture.save(path, **options)
    return path


def opened(copy: Derived) -> Image.Image:
    return Image.open(io.BytesIO(copy.data))


def test_orientation_is_applied_and_no_metadata_is_kept(tmp_path: Path) -> None:
    picture = Image.new("RGB", (400, 200), "white")
    picture.paste("black", (0, 0, 200, 200))
    exif = picture.getexif()
    exif[ORIENTATION] = 6  # turn by 90 degrees clockwise to see it upright (Exif 2.3, table 4)
    exif.get_ifd(GPS)[1] = "N"
    file = saved(tmp_path / "a.jpg", picture, exif=exif)

    copy = derived("a.jpg", file)

    shown = opened(copy)
    assert (copy.width, copy.height) == shown.size == (200, 400)
    assert shown.getpixel((100, 50))[0] < 60, "the left half comes to the top"
    assert not dict(shown.getexif())
    assert "exif" not in shown.info


def test_the_original_is_not_touched(tmp_path: Path) -> None:
    file = saved(tmp_path / "a.png", Image.new("RGB", (3000, 100), "grey"))
    before = file.read_bytes()
    assert derived("a.png", file).width == LONGEST
    assert file.read_bytes() == before


def test_small_pictures_are_not_blown_up(tmp_path: Path) -> None:
    copy = derived("a.png", saved(tmp_path / "a.png", Image.new("L", (40, 30), 128)))
    assert (copy.width, copy.height) == (40, 30)


@pytest.mark.parametrize("mode", ["L", "LA", "P", "RGBA", "I;16", "CMYK", "1"])
def test_every_mode_comes_out_as_colour_on_white(tmp_path: Path, mode: str) -> None:
    suffix = "tif" if mode == "CMYK" else "png"
    picture = Image.new("RGBA", (50, 50), (255, 255, 255, 0)).convert(
        "RGB" if mode in ("CMYK", "I;16") else "RGBA"
    )
    picture = Image.new("I;16", (50, 50), 65535) if mode == "I;16" else picture.convert(mode)
    shown = opened(derived("a", saved(tmp_path / f"a.{suffix}", picture)))
    assert shown.mode == "RGB"
    assert min(shown.getpixel((25, 25))) > 240


def test_a_picture_cut_short_is_told(tmp_path: Path) -> None:
    file = saved(tmp_path / "a.jpg", Image.effect_noise((600, 600), 90), quality=90)
    file.write_bytes(file.read_bytes()[:4000])
    with pytest.raises(
        PhotographError, match=r"photograph 'a.jpg': it is cut short; copy it again"
    ):
        derived("a.jpg", file)


def test_what_is_no_picture_is_told(tmp_path: Path) -> None:
    (tmp_path / "a.jpg").write_text("words")
    with pytest.raises(PhotographError, match="no picture that can be read"):
        derived("a.jpg", tmp_path / "a.jpg")
    with pytest.raises(PhotographError, match="no such file"):
        derived("b.jpg", tmp_path / "b.jpg")


def test_an_oversized_picture_is_refused_before_it_is_read(tmp_path: Path) -> None:
    file = saved(tmp_path / "a.png", Image.new("1", (20_000, 7_000)))
    with pytest.raises(PhotographError, match="it has 140 megapixels"):
        derived("a.png", file)


def test_the_same_picture_gives_the_same_bytes(tmp_path: Path) -> None:
    file = saved(tmp_path / "a.png", Image.effect_noise((500, 300), 50))
    assert derived("a", file).data == derived("a", file).data
