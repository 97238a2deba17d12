"""Photographs made ready for print: upright, small, without what the camera told of the place."""

import io
import warnings
from pathlib import Path

import msgspec
from PIL import Image, ImageCms, ImageOps, UnidentifiedImageError

from planish.report.errors import PhotographError

#: longest side of a picture in the report [pixels]: 300 to the inch at the width of a column
LONGEST = 1100
_QUALITY = 84
#: larger pictures are refused before they are read [pixels]
MOST_PIXELS = 120_000_000


class Derived(msgspec.Struct, frozen=True, kw_only=True):
    """A copy for print. data: JPEG; width, height in pixels."""

    data: bytes
    width: int
    height: int


def derived(name: str, path: Path) -> Derived:
    """A copy of a photograph for print; the original is only read.

    The orientation that the camera noted is applied, colours are brought to sRGB, and no metadata
    is kept, so that neither place nor owner of the camera leaves the house.

    Raises:
        PhotographError: the file is missing, no picture, cut short, or too large.
    """
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore", Image.DecompressionBombWarning)
            with Image.open(path) as picture:
                width, height = picture.size
                if width * height > MOST_PIXELS:
                    raise PhotographError(
                        name,
                        f"it has {width * height / 1e6:.0f} megapixels, more than"
                        f" {MOST_PIXELS // 10**6}",
                        "save it smaller",
                    )
                picture.draft("RGB", (LONGEST, LONGEST))
                picture.load()
                ready = _plain(picture)
    except FileNotFoundError:
        raise PhotographError(name, "no such file", "mend its name in the case") from None
    except (UnidentifiedImageError, Image.DecompressionBombError):
        raise PhotographError(
            name, "it is no picture that can be read", "save it as JPEG, PNG or WebP"
        ) from None
    except (OSError, SyntaxError, ValueError, EOFError) as fault:
        if isinstance(fault, PhotographError):
            raise
        says = "it is cut short" if "truncated" in str(fault) else "it is damaged"
        raise PhotographError(name, says, "copy it again from the camera") from None
    store = io.BytesIO()
    ready.save(store, "JPEG", quality=_QUALITY, optimize=True, progressive=False)
    return Derived(data=store.getvalue(), width=ready.width, height=ready.height)


def _plain(picture: Image.Image) -> Image.Image:
    """An upright sRGB picture, at most ``LONGEST`` on its longest side, on white."""
    profile = picture.info.get("icc_profile")
    upright = ImageOps.exif_transpose(picture)
    upright.thumbnail((LONGEST, LONGEST), Image.Resampling.LANCZOS, reducing_gap=3.0)
    if upright.mode.startswith("I") or upright.mode == "F":
        upright = upright.point(lambda v: v / 256).convert("L")
    if "transparency" in upright.info or upright.mode in ("RGBA", "LA", "PA"):
        clear = upright.convert("RGBA")
        upright = Image.new("RGB", clear.size, "white")
        upright.paste(clear, mask=clear.getchannel("A"))
    elif profile and upright.mode in ("RGB", "L", "CMYK"):
        upright = _to_srgb(upright, profile)
    rgb = upright.convert("RGB")
    rgb.info.clear()
    return rgb


def _to_srgb(picture: Image.Image, profile: bytes) -> Image.Image:
    try:
        source = ImageCms.ImageCmsProfile(io.BytesIO(profile))
        target = ImageCms.createProfile("sRGB")
        changed = ImageCms.profileToProfile(picture, source, target, outputMode="RGB")
    except (ImageCms.PyCMSError, OSError, ValueError):
        return picture  # a broken profile: the figures as they stand
    return changed or picture
