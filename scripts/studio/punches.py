"""Struck marks close up: a height field of punches in worn metal, lit from one side.

Letters are set in DejaVu (its own free licence, after Bitstream Vera), found through Pillow's search
of the system's fonts; the devices are our own drawings.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from PIL import Image, ImageDraw, ImageFilter, ImageFont
from studio.devices import DRAWN
from studio.shapes import smooth_curve

SERIF = "DejaVuSerif-Bold.ttf"
SERIF_CONDENSED = "DejaVuSerifCondensed-Bold.ttf"
SANS = "DejaVuSans-Bold.ttf"
SANS_CONDENSED = "DejaVuSansCondensed-Bold.ttf"


@dataclass(frozen=True)
class Punch:
    """One mark.

    at: middle in millimetres from the picture's middle. size: width and height of the outline [mm].
    outline: see ``outlined``; "none" for incuse letters. text or device: what stands in it.
    worn: 0 fresh to 1 gone. turn: degrees. struck: tilt of the blow to left and top.
    """

    at: tuple[float, float]
    size: tuple[float, float]
    outline: str
    text: str = ""
    device: str = ""
    font: str = SERIF
    worn: float = 0.2
    turn: float = 0.0
    struck: tuple[float, float] = (0.0, 0.0)
    fill: float = 0.74


@dataclass(frozen=True)
class Surface:
    """The metal round the marks: brushed direction [degrees], scratches, curvature, tint, seed."""

    brush: float = 0.0
    scratches: int = 90
    bend: tuple[float, float] = (0.5, 0.25)
    colour: tuple[float, float, float] = (0.97, 0.955, 0.925)
    tarnish: float = 1.0
    hammered: float = 0.0
    seed: int = 3


def _shield(kind: str) -> list[tuple[float, float]]:
    """A shield in the unit square, straight above and drawn to a point below."""
    if kind == "pointed shield":
        low = [
            (1.0, 0.0),
            (1.0, 0.5),
            (0.93, 0.74),
            (0.5, 1.0),
            (0.07, 0.74),
            (0.0, 0.5),
            (0.0, 0.0),
        ]
    else:
        low = [
            (1.0, 0.0),
            (1.0, 0.62),
            (0.86, 0.88),
            (0.5, 1.0),
            (0.14, 0.88),
            (0.0, 0.62),
            (0.0, 0.0),
        ]
    return [(0.0, 0.0), *((float(x), float(y)) for x, y in smooth_curve(low, 160))]


def outlined(kind: str, w: int, h: int) -> Image.Image:
    """Mask of an outline that fills w by h pixels."""
    n = 4
    image = Image.new("L", (w * n, h * n), 0)
    pen = ImageDraw.Draw(image)
    x1, y1 = w * n - 1, h * n - 1
    if kind == "oval":
        pen.ellipse([0, 0, x1, y1], fill=255)
    elif kind == "rectangle":
        pen.rounded_rectangle([0, 0, x1, y1], radius=0.07 * y1, fill=255)
    elif kind == "octagon":
        c = 0.24 * min(x1, y1)
        pen.polygon(
            [(c, 0), (x1 - c, 0), (x1, c), (x1, y1 - c), (x1 - c, y1), (c, y1), (0, y1 - c),
             (0, c)], fill=255,
        )  # fmt: skip
    elif kind in ("shield", "pointed shield"):
        pen.polygon([(x * x1, y * y1) for x, y in _shield(kind)], fill=255)
    elif kind == "lobes":  # letters side by side in joined discs
        r = y1 / 2
        count = max(2, round(x1 / y1 / 0.86))
        for k in range(count):
            cx = r + (x1 - 2 * r) * k / (count - 1)
            pen.ellipse([cx - r, 0, cx + r, y1], fill=255)
        pen.rectangle([r, 0.12 * y1, x1 - r, 0.88 * y1], fill=255)
    elif kind == "diamond":
        pen.polygon([(x1 / 2, 0), (x1, y1 / 2), (x1 / 2, y1), (0, y1 / 2)], fill=255)
    elif kind == "canted":
        c = 0.2 * min(x1, y1)
        pen.polygon([(0, 0), (x1, 0), (x1, y1 - c), (x1 - c, y1), (c, y1), (0, y1 - c)], fill=255)
    return image.resize((w, h), Image.Resampling.LANCZOS)


def lettered(text: str, w: int, h: int, font: str) -> np.ndarray:
    """Letters stretched into w by h pixels."""
    face = ImageFont.truetype(font, 400)
    left, top, right, bottom = face.getbbox(text)
    image = Image.new("L", (right - left + 8, bottom - top + 8), 0)
    ImageDraw.Draw(image).text((4 - left, 4 - top), text, font=face, fill=255)
    ratio = image.width / image.height
    tw, th = (w, round(w / ratio)) if w / h < ratio else (round(h * ratio), h)
    # a punch cutter fills the space: some stretch is allowed
    tw, th = round(tw + (w - tw) * 0.5), round(th + (h - th) * 0.5)
    small = image.resize((max(1, tw), max(1, th)), Image.Resampling.LANCZOS)
    out = Image.new("L", (w, h), 0)
    out.paste(small, ((w - tw) // 2, (h - th) // 2))
    return np.asarray(out, np.float32) / 255


def blurred(field: np.ndarray, radius: float) -> np.ndarray:
    """Nearly a Gaussian blur: three box passes (Pillow blurs 8-bit pictures only)."""
    out = field.astype(np.float32)
    r = max(1, round(radius))
    for _ in range(3):
        for axis in (0, 1):
            padded = np.pad(out, [(r + 1, r) if a == axis else (0, 0) for a in (0, 1)], "edge")
            total = np.cumsum(padded, axis, dtype=np.float64)
            n = 2 * r + 1
            high = np.take(total, np.arange(n, total.shape[axis]), axis)
            low = np.take(total, np.arange(0, total.shape[axis] - n), axis)
            out = ((high - low) / n).astype(np.float32)
    return out


def streaks(rng: np.random.Generator, h: int, w: int, angle: float, length: int) -> np.ndarray:
    """Noise drawn out along a direction, as a brush or wheel leaves it."""
    size = int(np.hypot(h, w)) + 2 * length + 8
    noise = rng.normal(size=(size, size)).astype(np.float32)
    total = np.cumsum(np.pad(noise, ((0, 0), (length, 0))), axis=1)
    drawn = (total[:, length:] - total[:, :-length]) / np.sqrt(length)
    image = Image.fromarray(drawn.astype(np.float32)).rotate(angle, Image.Resampling.BILINEAR)
    top, left = (size - h) // 2, (size - w) // 2
    return np.asarray(image)[top : top + h, left : left + w]


def strike(height: np.ndarray, punch: Punch, scale: float, rng: np.random.Generator) -> None:
    """Press one punch into the height field (millimetres), in place."""
    rows, cols = height.shape
    w, h = round(punch.size[0] * scale), round(punch.size[1] * scale)
    pad = round(0.35 * scale)
    letters = np.zeros((h, w), np.float32)
    inner_w, inner_h = round(w * punch.fill), round(h * punch.fill)
    if punch.device:
        fill = min(0.95, punch.fill + 0.14)
        # the cutter drew a device out to fill its punch, within reason
        tall = round(min(h, w * 1.3) * fill)
        wide = round(min(w, h * 1.35) * fill)
        square = Image.fromarray(DRAWN[punch.device](max(w, h)))
        drawing = np.asarray(square.resize((wide, tall), Image.Resampling.BICUBIC))
        y, x = (h - tall) // 2, (w - wide) // 2
        letters[y : y + tall, x : x + wide] = np.clip(drawing, 0, 1)
    elif punch.text:
        drawing = lettered(punch.text, inner_w, inner_h, punch.font)
        y, x = (h - inner_h) // 2, (w - inner_w) // 2
        letters[y : y + inner_h, x : x + inner_w] = drawing
    field = np.pad(letters, pad)
    if punch.outline == "none":
        recess, raised = field, np.zeros_like(field)
    else:
        recess = np.pad(np.asarray(outlined(punch.outline, w, h), np.float32) / 255, pad)
        raised = field
    if punch.turn:
        recess, raised = (
            np.asarray(Image.fromarray(a).rotate(punch.turn, Image.Resampling.BICUBIC))
            for a in (recess, raised)
        )
    deep = 0.13
    soft = 0.012 + 0.05 * punch.worn
    edge = blurred(recess, soft * scale * 0.8)
    walls = blurred(raised, (0.010 + 0.055 * punch.worn) * scale * 0.75)
    yy, xx = np.mgrid[0 : field.shape[0], 0 : field.shape[1]]
    tilt = 1 + punch.struck[0] * (0.5 - xx / field.shape[1]) * 2
    tilt += punch.struck[1] * (0.5 - yy / field.shape[0]) * 2
    wear = blurred(rng.normal(size=field.shape).astype(np.float32), 0.22 * scale)
    wear = wear / (wear.std() + 1e-6)
    kept = np.clip(1 - punch.worn * (0.75 + 0.45 * wear), 0.04, 1)
    press = np.clip(tilt, 0.05, 1.7) * deep * (1 - 0.45 * punch.worn)
    # the letters' tops come back to just below the surface and are rubbed flat there
    relief = -press * edge + press * 0.93 * walls * kept * np.minimum(edge * 1.2, 1)
    rim = 0.018 * (1 - punch.worn) * (blurred(recess, 0.09 * scale) - blurred(recess, 0.03 * scale))
    relief = relief + rim
    cx = round(cols / 2 + punch.at[0] * scale)
    cy = round(rows / 2 + punch.at[1] * scale)
    y0, x0 = cy - field.shape[0] // 2, cx - field.shape[1] // 2
    y1, x1 = y0 + field.shape[0], x0 + field.shape[1]
    cut_y, cut_x = slice(max(0, y0), min(rows, y1)), slice(max(0, x0), min(cols, x1))
    height[cut_y, cut_x] += relief[
        cut_y.start - y0 : cut_y.stop - y0, cut_x.start - x0 : cut_x.stop - x0
    ]


def scratched(height: np.ndarray, surface: Surface, scale: float, rng: np.random.Generator) -> None:
    """Use leaves scratches and small dents, in place."""
    rows, cols = height.shape
    image = Image.new("F", (cols, rows), 0.0)
    pen = ImageDraw.Draw(image)
    for _ in range(surface.scratches):
        x, y = rng.uniform(0, cols), rng.uniform(0, rows)
        a = np.radians(surface.brush) + rng.normal() * 0.9
        length = rng.exponential(1.6) * scale
        bend = rng.normal() * 0.15
        pts = [
            (x + np.cos(a + bend * t) * length * t, y + np.sin(a + bend * t) * length * t)
            for t in np.linspace(0, 1, 12)
        ]
        pen.line(pts, fill=float(rng.uniform(0.2, 1.0)), width=int(rng.choice([1, 1, 1, 2])))
    height -= 0.006 * blurred(np.asarray(image), 1)
    for _ in range(5):
        x, y, r = rng.uniform(0, cols), rng.uniform(0, rows), rng.uniform(0.1, 0.35) * scale
        yy, xx = np.mgrid[0:rows, 0:cols]
        height -= 0.012 * np.exp(-((xx - x) ** 2 + (yy - y) ** 2) / r**2)


def room(nx: np.ndarray, ny: np.ndarray) -> np.ndarray:
    """Brightness that a mirror with this slope shows: a soft box at the upper left, a dark room."""
    u = (nx + 0.30) / 0.34
    v = (ny + 0.30) / 0.30
    lamp = 2.0 / (1 + (u * u + v * v) ** 2.2)
    strip = 0.8 * np.exp(-(((nx - 0.62) / 0.15) ** 2)) * np.exp(-((ny / 0.7) ** 2))
    low = 0.26 * np.clip(ny, 0, 1)
    fill = 0.36 * np.exp(-(nx**2 + ny**2) / 0.05)
    return 0.05 + lamp + strip + low + fill


def photograph(
    punches: Sequence[Punch],
    surface: Surface,
    width_mm: float,
    width: int = 1200,
    height: int = 640,
) -> np.ndarray:
    """The marks as (height, width, 3) linear light."""
    rng = np.random.default_rng(surface.seed)
    ss = 2
    cols, rows = width * ss, height * ss
    scale = cols / width_mm
    field = np.zeros((rows, cols), np.float32)
    for punch in punches:
        strike(field, punch, scale, rng)
    scratched(field, surface, scale, rng)
    if surface.hammered:
        lumps = blurred(rng.normal(size=field.shape).astype(np.float32), 0.75 * scale)
        field += surface.hammered * lumps / lumps.std()
    brush = streaks(rng, rows, cols, surface.brush, round(0.9 * scale))
    fine = streaks(rng, rows, cols, surface.brush + 4, round(0.25 * scale))
    field += 0.00055 * brush + 0.0004 * fine
    gy, gx = np.gradient(field * scale)
    yy, xx = np.mgrid[0:rows, 0:cols].astype(np.float32)
    nx = -gx + surface.bend[0] * (xx / cols - 0.5) * 0.55
    ny = -gy + surface.bend[1] * (yy / rows - 0.5) * 0.55
    norm = np.sqrt(1 + nx * nx + ny * ny)
    light = room(nx / norm, ny / norm)
    # deep places see less of the room, and keep the tarnish
    sunk = np.clip((blurred(field, 0.11 * scale) - field) / 0.05, -0.4, 1.6)
    light *= np.clip(1 - 0.42 * np.maximum(sunk, 0), 0.25, 1) * (1 + 0.10 * np.maximum(-sunk, 0))
    dirt = np.clip(sunk * 0.8 + 0.25 * np.clip(-field / 0.13, 0, 1), 0, 1) * surface.tarnish
    cloud = blurred(rng.normal(size=field.shape).astype(np.float32), 1.1 * scale)
    dirt = np.clip(dirt * 0.62 + 0.05 * cloud / cloud.std() * surface.tarnish, 0, 0.8)[..., None]
    tint = np.asarray(surface.colour, np.float32)
    brown = np.array([0.36, 0.29, 0.20], np.float32)
    colour = light[..., None] * (tint * (1 - dirt) + brown * dirt)
    r = np.hypot(xx / cols - 0.5, (yy / rows - 0.5) * 0.7)
    colour *= (1.05 - 0.75 * r**2)[..., None]
    small = colour.reshape(height, ss, width, ss, 3).mean((1, 3))
    small += rng.normal(size=small.shape[:2])[..., None].astype(np.float32) * 0.012
    return np.maximum(small, 0)


def softened(picture: np.ndarray, seed: int) -> np.ndarray:
    """Corners slightly out of focus, as a close-up has them."""
    image = Image.fromarray((np.clip(picture, 0, 1) * 255).astype(np.uint8))
    soft = np.asarray(image.filter(ImageFilter.GaussianBlur(2.2)), np.float32) / 255
    h, w = picture.shape[:2]
    yy, xx = np.mgrid[0:h, 0:w]
    r = np.hypot(xx / w - 0.5, (yy / h - 0.5) * 0.8) * (1 + 0.001 * seed)
    k = np.clip((r - 0.34) / 0.2, 0, 1)[..., None]
    return picture * (1 - k) + soft * k
