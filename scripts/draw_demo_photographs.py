"""Draw the pictures of the demo casebook: ten objects and their marks. Nothing is photographed.

    python scripts/draw_demo_photographs.py [NAME ...] [--small] [--out FOLDER]

Needs numpy and Pillow and the DejaVu fonts (their own free licence, after Bitstream Vera); none of
them is needed to run planish itself. The same machine draws the same bytes again; other versions of
numpy or Pillow may round differently. All twenty pictures take some ten minutes on one core.
"""

import argparse
import io
from dataclasses import replace
from pathlib import Path

import numpy as np
from PIL import Image, ImageDraw, ImageFont
from studio.forms import FORMS
from studio.light import developed, framed, render
from studio.plates import MARKS
from studio.punches import photograph, softened

OUT = Path(__file__).resolve().parents[1] / "src/planish/case/demo/photographs"
WIDTH, HEIGHT, MARKS_HEIGHT = 1200, 800, 620
NOTE = "drawn, not photographed"
SANS, SANS_BOLD = "DejaVuSans.ttf", "DejaVuSans-Bold.ttf"
MOST_BYTES = 150_000


def ruler(width_cm: float, height_cm: float) -> np.ndarray:
    """A ruler lying on the table: linear colours, drawn to scale."""
    k = 2200 / width_cm
    w, h = 2200, round(height_cm * k)
    image = Image.new("RGB", (w, h), (236, 231, 214))
    pen = ImageDraw.Draw(image)
    face = ImageFont.truetype(SANS, round(0.22 * h))
    margin = 0.5 * (width_cm - int(width_cm - 0.2)) * k
    count = int(width_cm - 0.2)
    for mm in range(count * 10 + 1):
        x = margin + mm * k / 10
        long = 0.46 if mm % 10 == 0 else 0.34 if mm % 5 == 0 else 0.22
        pen.line([(x, 0), (x, long * h)], fill=(40, 38, 34), width=max(2, round(k / 60)))
        if mm % 10 == 0:
            pen.text((x, 0.50 * h), str(mm // 10), font=face, fill=(40, 38, 34), anchor="ma")
    pen.text((margin, 0.96 * h), "cm", font=face, fill=(120, 60, 30), anchor="ls")
    pen.rectangle([0, 0, w - 1, h - 1], outline=(150, 145, 130), width=6)
    srgb = np.asarray(image, np.float32) / 255
    return np.where(srgb <= 0.04045, srgb / 12.92, ((srgb + 0.055) / 1.055) ** 2.4) * 0.85


def labelled(image: Image.Image, text: str, *, dark: bool) -> None:
    """The note in the lower left corner, on a quiet patch."""
    face = ImageFont.truetype(SANS, 17)
    pen = ImageDraw.Draw(image, "RGBA")
    box = pen.textbbox((22, image.height - 20), text, font=face, anchor="ls")
    patch = (20, 20, 20, 120) if dark else (255, 255, 255, 130)
    pen.rectangle([box[0] - 8, box[1] - 6, box[2] + 8, box[3] + 6], fill=patch)
    ink = (235, 233, 228, 255) if dark else (30, 28, 26, 255)
    pen.text((22, image.height - 20), text, font=face, fill=ink, anchor="ls")


def scale_bar(image: Image.Image, width_mm: float, bar_mm: int) -> None:
    """A bar of so many millimetres in the lower right corner."""
    k = image.width / width_mm
    x1, y = image.width - 34, image.height - 30
    x0 = x1 - bar_mm * k
    face = ImageFont.truetype(SANS_BOLD, 18)
    pen = ImageDraw.Draw(image, "RGBA")
    pen.rectangle([x0 - 12, y - 40, x1 + 12, y + 14], fill=(255, 255, 255, 150))
    pen.rectangle([x0, y - 4, x1, y + 4], fill=(25, 24, 22, 255))
    for n in range(bar_mm):
        if n % 2:
            pen.rectangle([x0 + n * k, y - 3, x0 + (n + 1) * k, y + 3], fill=(245, 244, 240, 255))
    pen.text(((x0 + x1) / 2, y - 12), f"{bar_mm} mm", font=face, fill=(25, 24, 22), anchor="ms")


def whole(name: str, *, small: bool) -> Image.Image:
    """The object on the table."""
    scene = FORMS[name]()
    scene = framed(replace(scene, ruler=ruler(*scene.ruler_size)))
    w, h, samples = (420, 280, 1) if small else (WIDTH, HEIGHT, 2)
    image = Image.fromarray(developed(render(scene, w, h, samples)))
    labelled(image, f"{NOTE} · {name[:2]}", dark=True)
    return image


def marks(name: str, *, small: bool) -> Image.Image:
    """The marks close up."""
    plate = MARKS[name]
    w, h = (600, 310) if small else (WIDTH, MARKS_HEIGHT)
    picture = photograph(plate.punches, plate.surface, plate.width_mm, w, h)
    image = Image.fromarray(developed(softened(picture, plate.surface.seed)))
    labelled(image, f"{NOTE} · {name[:2]}", dark=False)
    scale_bar(image, plate.width_mm, plate.bar_mm)
    return image


def saved(image: Image.Image, path: Path) -> None:
    """JPEG at the best quality that keeps below the limit."""
    for quality in range(90, 40, -4):
        stream = io.BytesIO()
        image.save(stream, "JPEG", quality=quality, optimize=True, progressive=True)
        if stream.tell() <= MOST_BYTES:
            break
    path.parent.mkdir(parents=True, exist_ok=True)
    # whole or not at all: a test may look at the folder meanwhile
    half = path.with_suffix(".part")
    half.write_bytes(stream.getvalue())
    half.replace(path)
    print(f"{path.name}: {stream.tell() / 1000:.0f} kB at quality {quality}", flush=True)


def main() -> None:
    """Draw the pictures named, or all."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("names", nargs="*", help="01-teapot, 01-teapot-marks, ...")
    parser.add_argument("--small", action="store_true", help="quick and coarse, for trying out")
    parser.add_argument("--out", type=Path, default=OUT)
    args = parser.parse_args()
    for name in FORMS:
        if not args.names or name in args.names:
            saved(whole(name, small=args.small), args.out / f"{name}.jpg")
        if not args.names or f"{name}-marks" in args.names:
            saved(marks(name, small=args.small), args.out / f"{name}-marks.jpg")


if __name__ == "__main__":
    main()
