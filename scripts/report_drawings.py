"""Makes the drawings of devices that the report puts into marks: run by hand when one changes.

    python scripts/report_drawings.py

Needs numpy, Pillow and opencv-python-headless, which planish itself does not. The devices are our
own work: those of ``studio/devices.py`` and the simple ones below, turned into paths. Writes
src/planish/report/drawings.json.
"""

import json
import math
import sys
from collections.abc import Callable
from pathlib import Path

import cv2
import numpy as np

sys.path.insert(0, str(Path(__file__).parent))
from studio import devices
from studio.devices import Sketch

TO = Path(__file__).resolve().parents[1] / "src" / "planish" / "report" / "drawings.json"
_SIZE = 900
#: side of the unit square in the drawing [units]
UNITS = 500


def _star(points: int) -> Callable[[int], np.ndarray]:
    def drawn(size: int) -> np.ndarray:
        s = Sketch(size)
        inner = 0.19 if points == 5 else 0.27
        s.shape(
            [
                (
                    0.5 + r * math.cos(math.pi * k / points - math.pi / 2),
                    0.5 + r * math.sin(math.pi * k / points - math.pi / 2),
                )
                for k in range(2 * points)
                for r in (0.48 if k % 2 == 0 else inner,)
            ],
            smooth=False,
        )
        return s.done()

    return drawn


def _crescent(size: int) -> np.ndarray:
    s = Sketch(size)
    s.dot(0.5, 0.5, 0.46)
    s.dot(0.68, 0.5, 0.40, 0)
    return s.done()


def _sun(size: int) -> np.ndarray:
    s = Sketch(size)
    s.dot(0.5, 0.5, 0.24)
    for k in range(16):
        a = 2 * math.pi * k / 16
        far = 0.48 if k % 2 == 0 else 0.40
        s.stroke(
            [
                (0.5 + 0.27 * math.cos(a), 0.5 + 0.27 * math.sin(a), 0.06),
                (0.5 + far * math.cos(a), 0.5 + far * math.sin(a), 0.012),
            ]
        )
    return s.done()


def _heart(size: int) -> np.ndarray:
    s = Sketch(size)
    s.dot(0.29, 0.34, 0.22)
    s.dot(0.71, 0.34, 0.22)
    s.shape([(0.105, 0.46), (0.5, 0.30), (0.895, 0.46), (0.5, 0.94)], smooth=False)
    return s.done()


def _cross(size: int) -> np.ndarray:
    s = Sketch(size)
    for k in range(4):
        a = math.pi / 2 * k

        def at(x: float, y: float, a: float = a) -> tuple[float, float]:
            return 0.5 + x * math.cos(a) - y * math.sin(a), 0.5 + x * math.sin(a) + y * math.cos(a)

        s.shape([at(-0.05, 0), at(-0.19, -0.46), at(0.19, -0.46), at(0.05, 0)], smooth=False)
    return s.done()


def _fleur(size: int) -> np.ndarray:
    s = Sketch(size)
    s.shape([(0.5, 0.02), (0.62, 0.22), (0.60, 0.42), (0.53, 0.64), (0.47, 0.64), (0.40, 0.42),
             (0.38, 0.22)])  # fmt: skip
    for sign in (-1, 1):
        s.stroke([(0.5 + sign * 0.05, 0.66, 0.06), (0.5 + sign * 0.13, 0.44, 0.10),
                  (0.5 + sign * 0.27, 0.31, 0.13), (0.5 + sign * 0.40, 0.38, 0.09),
                  (0.5 + sign * 0.42, 0.50, 0.06), (0.5 + sign * 0.34, 0.54, 0.045)])  # fmt: skip
        s.stroke([(0.5 + sign * 0.03, 0.70, 0.06), (0.5 + sign * 0.10, 0.86, 0.07),
                  (0.5 + sign * 0.20, 0.91, 0.04)])  # fmt: skip
    s.stroke([(0.5, 0.70, 0.10), (0.5, 0.84, 0.12), (0.5, 0.97, 0.03)])
    s.shape([(0.28, 0.64), (0.72, 0.64), (0.72, 0.72), (0.28, 0.72)], smooth=False)
    return s.done()


def _harp(size: int) -> np.ndarray:
    s = Sketch(size)
    s.stroke([(0.20, 0.10, 0.05), (0.26, 0.40, 0.06), (0.42, 0.72, 0.075), (0.60, 0.92, 0.09)])
    s.stroke([(0.20, 0.10, 0.05), (0.34, 0.20, 0.055), (0.50, 0.20, 0.055), (0.64, 0.10, 0.055),
              (0.80, 0.12, 0.06)])  # fmt: skip
    s.stroke([(0.80, 0.12, 0.06), (0.84, 0.42, 0.06), (0.76, 0.72, 0.07), (0.60, 0.92, 0.09)])
    s.dot(0.19, 0.10, 0.045)
    for x, top, low in ((0.36, 0.21, 0.60), (0.46, 0.20, 0.76), (0.56, 0.16, 0.86),
                        (0.66, 0.12, 0.84), (0.75, 0.12, 0.70)):  # fmt: skip
        s.stroke([(x, top, 0.018), (x, low, 0.018)])
    return s.done()


def _key(size: int) -> np.ndarray:
    s = Sketch(size)
    s.dot(0.5, 0.20, 0.18)
    s.dot(0.5, 0.20, 0.09, 0)
    s.stroke([(0.5, 0.36, 0.075), (0.5, 0.65, 0.075), (0.5, 0.96, 0.075)])
    s.shape([(0.5, 0.72), (0.74, 0.72), (0.74, 0.94), (0.64, 0.94), (0.64, 0.85), (0.60, 0.85),
             (0.60, 0.94), (0.5, 0.94)], smooth=False)  # fmt: skip
    return s.done()


def _crowned(under: Callable[[int], np.ndarray], lap: float) -> Callable[[int], np.ndarray]:
    """A device with a crown above it."""

    def drawn(size: int) -> np.ndarray:
        top, low = devices.crown(size), under(size)
        tall = int(size * (1 + lap))
        out = np.zeros((tall, size), np.float32)
        wide = int(size * 0.8)
        small = cv2.resize(top, (wide, int(size * lap * 1.25)), interpolation=cv2.INTER_AREA)
        h, x = small.shape[0], (size - wide) // 2
        out[tall - size :] = low
        out[:h, x : x + wide] = np.maximum(out[:h, x : x + wide], small)
        return out

    return drawn


#: drawing -> words for it, as people write the device; only these are drawn
DRAWN: dict[str, tuple[Callable[[int], np.ndarray], tuple[str, ...]]] = {
    "lion": (devices.lion, ("lion passant", "lion passant to left", "walking lion")),
    "leopard": (
        devices.leopard,
        ("leopard's head", "leopard's head uncrowned", "uncrowned leopard's head",
         "leopard head", "leopard's face"),
    ),
    "leopard-crowned": (
        _crowned(devices.leopard, 0.36),
        ("leopard's head crowned", "crowned leopard's head"),
    ),
    "anchor": (devices.anchor, ("anchor",)),
    "crown": (devices.crown, ("crown",)),
    "castle": (devices.castle, ("castle", "castle with three towers", "three-towered castle")),
    "thistle": (devices.thistle, ("thistle",)),
    "head": (devices.head, ("head of victoria", "queen victoria's head", "victoria's head")),
    "star-5": (_star(5), ("star", "five-pointed star")),
    "star-6": (_star(6), ("six-pointed star", "star of david")),
    "crescent": (_crescent, ("crescent", "crescent moon")),
    "sun": (_sun, ("sun", "sun in splendour")),
    "heart": (_heart, ("heart",)),
    "cross": (_cross, ("cross pattée", "cross pattee", "maltese cross")),
    "fleur-de-lis": (_fleur, ("fleur-de-lis", "fleur de lis", "fleur-de-lys", "lily")),
    "harp": (_harp, ("harp",)),
    "harp-crowned": (_crowned(_harp, 0.36), ("harp crowned", "crowned harp")),
    "key": (_key, ("key",)),
}  # fmt: skip


def path_of(mask: np.ndarray) -> tuple[str, int, int]:
    """The outline of a mask as one path (even-odd), and its width and height [units]."""
    scale = UNITS / _SIZE
    grey = (np.clip(mask, 0, 1) * 255).astype(np.uint8)
    _, flat = cv2.threshold(cv2.GaussianBlur(grey, (0, 0), 1.2), 127, 255, cv2.THRESH_BINARY)
    found, _ = cv2.findContours(flat, cv2.RETR_CCOMP, cv2.CHAIN_APPROX_NONE)
    box = np.concatenate(found).reshape(-1, 2)
    left, top = box.min(axis=0)
    right, bottom = box.max(axis=0)
    parts = []
    for contour in sorted(found, key=cv2.contourArea, reverse=True):
        if cv2.contourArea(contour) < 12:
            continue
        points = (cv2.approxPolyDP(contour, 0.9, True).reshape(-1, 2) - (left, top)) * scale
        parts.append("M" + "L".join(f"{x:.0f} {y:.0f}" for x, y in points) + "Z")
    return "".join(parts), round((right - left) * scale), round((bottom - top) * scale)


def main() -> None:
    """Write all drawings."""
    drawings, words = {}, {}
    for name, (draw, said) in DRAWN.items():
        path, width, height = path_of(draw(_SIZE))
        drawings[name] = [width, height, path]
        words.update(dict.fromkeys(said, name))
        print(f"{name:>16} {len(path):>6,} characters")
    TO.write_text(
        json.dumps({"words": words, "drawings": drawings}, ensure_ascii=False, indent=0) + "\n",
        encoding="utf-8",
    )


if __name__ == "__main__":
    main()
