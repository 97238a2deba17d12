"""Devices of the marks, drawn here by hand as strokes and shapes in a unit square (y downwards).

They follow the heraldic description only (lion passant: walking, right forepaw raised) and copy no
particular punch.
"""

from collections.abc import Sequence

import numpy as np
from PIL import Image, ImageDraw
from studio.shapes import smooth_curve

Pair = tuple[float, float]


class Sketch:
    """A mask to draw on, four times oversampled; white is raised metal."""

    def __init__(self, size: int) -> None:
        self.size, self.n = size, size * 4
        self.image = Image.new("L", (self.n, self.n), 0)
        self.pen = ImageDraw.Draw(self.image)

    def _px(self, points: np.ndarray) -> list[tuple[float, float]]:
        return [(float(x * self.n), float(y * self.n)) for x, y in points]

    def shape(self, points: Sequence[Pair], ink: int = 255, *, smooth: bool = True) -> None:
        """A closed shape, smooth or with corners."""
        p = np.asarray(points, float)
        if smooth:
            closed = np.vstack([p[-2:], p, p[:3]])
            curve = smooth_curve([tuple(q) for q in closed], 40 * len(closed))
            k = len(curve) // (len(closed) - 1)
            p = curve[2 * k : -2 * k]
        self.pen.polygon(self._px(p), fill=ink)

    def stroke(self, points: Sequence[tuple[float, float, float]], ink: int = 255) -> None:
        """A stroke of (x, y, width) points with round ends."""
        if len(points) == 2:
            a, b = np.asarray(points[0]), np.asarray(points[1])
            points = [tuple(a), tuple((a + b) / 2), tuple(b)]
        for x, y, w in smooth_curve(points, 90 * len(points)):
            r = w / 2
            self.pen.ellipse([(v * self.n) for v in (x - r, y - r, x + r, y + r)], fill=ink)

    def dot(self, x: float, y: float, r: float, ink: int = 255, tall: float = 1.0) -> None:
        """A disc, or an ellipse ``tall`` times as high as wide."""
        self.pen.ellipse([v * self.n for v in (x - r, y - r * tall, x + r, y + r * tall)], fill=ink)

    def done(self) -> np.ndarray:
        """The mask, 0 to 1."""
        small = self.image.resize((self.size, self.size), Image.Resampling.LANCZOS)
        return np.asarray(small, np.float32) / 255


def lion(size: int) -> np.ndarray:
    """Lion passant to the left, right forepaw raised, tail over the back."""
    s = Sketch(size)
    s.stroke([(0.80, 0.50, 0.16), (0.62, 0.47, 0.17), (0.46, 0.46, 0.22), (0.36, 0.42, 0.26)])
    s.stroke([(0.80, 0.50, 0.20), (0.84, 0.60, 0.15), (0.80, 0.70, 0.09), (0.86, 0.80, 0.07),
              (0.80, 0.845, 0.065)])  # fmt: skip
    s.stroke([(0.74, 0.54, 0.16), (0.70, 0.64, 0.11), (0.66, 0.71, 0.075), (0.70, 0.81, 0.065),
              (0.635, 0.845, 0.06)])  # fmt: skip
    s.stroke([(0.40, 0.52, 0.17), (0.42, 0.66, 0.09), (0.41, 0.80, 0.075), (0.34, 0.845, 0.07)])
    s.stroke([(0.33, 0.48, 0.14), (0.27, 0.58, 0.085), (0.18, 0.60, 0.07), (0.12, 0.54, 0.065),
              (0.07, 0.56, 0.055)])  # fmt: skip
    # mane and head
    for x, y in ((0.40, 0.20), (0.47, 0.26), (0.50, 0.34), (0.48, 0.42), (0.43, 0.50), (0.35, 0.55),
                 (0.28, 0.52), (0.33, 0.17)):  # fmt: skip
        s.dot(x, y, 0.062)
    s.dot(0.36, 0.33, 0.155)
    s.stroke([(0.30, 0.29, 0.17), (0.22, 0.30, 0.13), (0.165, 0.325, 0.085)])
    s.stroke([(0.25, 0.385, 0.07), (0.185, 0.39, 0.045)])
    s.dot(0.335, 0.185, 0.04)
    # tail
    s.stroke([(0.87, 0.46, 0.05), (0.95, 0.36, 0.045), (0.90, 0.22, 0.042), (0.76, 0.20, 0.042),
              (0.66, 0.27, 0.045), (0.60, 0.22, 0.07)])  # fmt: skip
    for x, y in ((0.57, 0.17), (0.545, 0.235), (0.60, 0.265)):
        s.dot(x, y, 0.035)
    # cut lines
    s.dot(0.262, 0.275, 0.017, 0)
    s.stroke([(0.15, 0.356, 0.014), (0.24, 0.355, 0.012)], 0)
    for a in ((0.375, 0.27, 0.40, 0.20), (0.415, 0.32, 0.48, 0.29), (0.42, 0.385, 0.49, 0.40),
              (0.385, 0.44, 0.43, 0.505), (0.33, 0.455, 0.33, 0.535)):  # fmt: skip
        s.stroke([(a[0], a[1], 0.014), (a[2], a[3], 0.010)], 0)
    s.stroke([(0.60, 0.43, 0.012), (0.63, 0.50, 0.012), (0.60, 0.56, 0.010)], 0)
    s.stroke([(0.75, 0.44, 0.012), (0.74, 0.52, 0.012), (0.78, 0.59, 0.010)], 0)
    return s.done()


def leopard(size: int) -> np.ndarray:
    """Leopard's head: a lion's face to the front, without a crown."""
    s = Sketch(size)
    for k in range(24):
        a = np.radians(-28 + 236 * k / 23)
        s.stroke(
            [(0.5 + 0.30 * np.cos(a), 0.48 + 0.32 * np.sin(a), 0.10),
             (0.5 + 0.43 * np.cos(a), 0.49 + 0.445 * np.sin(a), 0.035)]
        )  # fmt: skip
    s.shape(
        [
            (0.5, 0.14),
            (0.70, 0.17),
            (0.83, 0.32),
            (0.82, 0.56),
            (0.72, 0.76),
            (0.60, 0.88),
            (0.5, 0.91),
            (0.40, 0.88),
            (0.28, 0.76),
            (0.18, 0.56),
            (0.17, 0.32),
            (0.30, 0.17),
        ]
    )
    for x in (0.235, 0.765):
        s.dot(x, 0.20, 0.075)
        s.dot(x, 0.21, 0.03, 0)
    for sign in (-1, 1):

        def x(v: float, sign: int = sign) -> float:
            return 0.5 + sign * v

        s.stroke([(x(0.05), 0.36, 0.02), (x(0.14), 0.30, 0.028), (x(0.25), 0.35, 0.018)], 0)
        s.dot(x(0.145), 0.405, 0.048, 0, 0.75)
        s.dot(x(0.145), 0.405, 0.024, 255)
        s.stroke([(x(0.065), 0.44, 0.016), (x(0.075), 0.56, 0.018), (x(0.12), 0.615, 0.016)], 0)
        s.stroke([(x(0.0), 0.70, 0.018), (x(0.07), 0.74, 0.022), (x(0.16), 0.71, 0.016)], 0)
        for k, (u, v) in enumerate(((0.20, 0.62), (0.25, 0.57), (0.28, 0.50))):
            s.stroke([(x(u), v, 0.012), (x(u + 0.07), v + 0.07 - 0.02 * k, 0.010)], 0)
        s.stroke([(x(0.05), 0.20, 0.012), (x(0.09), 0.27, 0.010)], 0)
    s.shape([(0.44, 0.59), (0.56, 0.59), (0.50, 0.655)], 0)
    s.stroke([(0.5, 0.65, 0.014), (0.5, 0.705, 0.014)], 0)
    s.stroke([(0.45, 0.82, 0.012), (0.5, 0.84, 0.012), (0.55, 0.82, 0.012)], 0)
    return s.done()


def anchor(size: int) -> np.ndarray:
    """Anchor, upright, with ring and stock."""
    s = Sketch(size)
    s.dot(0.5, 0.15, 0.085)
    s.dot(0.5, 0.15, 0.042, 0)
    s.stroke([(0.5, 0.22, 0.055), (0.5, 0.55, 0.07), (0.5, 0.86, 0.075)])
    s.stroke([(0.27, 0.31, 0.05), (0.5, 0.29, 0.065), (0.73, 0.31, 0.05)])
    s.dot(0.26, 0.31, 0.038)
    s.dot(0.74, 0.31, 0.038)
    s.stroke([(0.5, 0.89, 0.08), (0.32, 0.84, 0.075), (0.19, 0.71, 0.055), (0.155, 0.58, 0.03)])
    s.stroke([(0.5, 0.89, 0.08), (0.68, 0.84, 0.075), (0.81, 0.71, 0.055), (0.845, 0.58, 0.03)])
    s.shape([(0.15, 0.50), (0.07, 0.67), (0.26, 0.66)], smooth=False)
    s.shape([(0.85, 0.50), (0.93, 0.67), (0.74, 0.66)], smooth=False)
    return s.done()


def crown(size: int) -> np.ndarray:
    """Crown with arches and a cross."""
    s = Sketch(size)
    s.shape([(0.16, 0.70), (0.84, 0.70), (0.82, 0.84), (0.18, 0.84)], smooth=False)
    s.stroke([(0.18, 0.70, 0.06), (0.10, 0.50, 0.06), (0.20, 0.33, 0.06), (0.36, 0.27, 0.06),
              (0.5, 0.30, 0.06)])  # fmt: skip
    s.stroke([(0.82, 0.70, 0.06), (0.90, 0.50, 0.06), (0.80, 0.33, 0.06), (0.64, 0.27, 0.06),
              (0.5, 0.30, 0.06)])  # fmt: skip
    s.stroke([(0.5, 0.30, 0.05), (0.5, 0.52, 0.055), (0.5, 0.72, 0.06)])
    s.dot(0.5, 0.24, 0.06)
    s.stroke([(0.5, 0.08, 0.045), (0.5, 0.22, 0.045)])
    s.stroke([(0.43, 0.135, 0.045), (0.57, 0.135, 0.045)])
    for x in (0.16, 0.30, 0.70, 0.84):
        s.dot(x, 0.60 if x in (0.30, 0.70) else 0.47, 0.045)
    for x in (0.33, 0.67):
        s.stroke([(x, 0.70, 0.06), (x, 0.55, 0.05)])
        s.dot(x, 0.53, 0.06)
    for x in (0.26, 0.38, 0.5, 0.62, 0.74):
        s.dot(x, 0.77, 0.022, 0)
    return s.done()


def castle(size: int) -> np.ndarray:
    """Castle with three towers on a rock."""
    s = Sketch(size)
    s.shape([(0.04, 0.93), (0.14, 0.80), (0.34, 0.83), (0.5, 0.78), (0.68, 0.83), (0.86, 0.80),
             (0.96, 0.93)])  # fmt: skip
    s.shape([(0.16, 0.55), (0.84, 0.55), (0.84, 0.84), (0.16, 0.84)], smooth=False)
    for x, top, w in ((0.21, 0.36, 0.17), (0.5, 0.18, 0.20), (0.79, 0.36, 0.17)):
        s.shape([(x - w / 2, top + 0.08), (x + w / 2, top + 0.08), (x + w / 2, 0.82),
                 (x - w / 2, 0.82)], smooth=False)  # fmt: skip
        for k in range(3):
            c = x - w / 2 + w * (0.5 + 2 * k) / 5 + 0.0
            s.shape([(c - w * 0.02, top), (c + w * 0.19, top), (c + w * 0.19, top + 0.10),
                     (c - w * 0.02, top + 0.10)], smooth=False)  # fmt: skip
    for k in range(3):
        for side in (0.325, 0.605):
            s.shape(
                [
                    (side + k * 0.03, 0.50),
                    (side + 0.018 + k * 0.03, 0.50),
                    (side + 0.018 + k * 0.03, 0.56),
                    (side + k * 0.03, 0.56),
                ],
                smooth=False,
            )
    s.shape([(0.43, 0.84), (0.43, 0.70), (0.5, 0.63), (0.57, 0.70), (0.57, 0.84)], 0, smooth=False)
    for x, y in ((0.21, 0.58), (0.79, 0.58), (0.5, 0.42)):
        s.stroke([(x, y - 0.035, 0.035), (x, y + 0.035, 0.035)], 0)
    for y in (0.66, 0.75):
        for x0, x1 in ((0.15, 0.40), (0.60, 0.85)):
            s.stroke([(x0, y, 0.008), (x1, y, 0.008)], 0)
    return s.done()


def thistle(size: int) -> np.ndarray:
    """Thistle: flower head, two leaves and stem."""
    s = Sketch(size)
    for x in np.linspace(0.34, 0.66, 7):
        s.stroke([(0.5 + (x - 0.5) * 0.5, 0.34, 0.05), (x + (x - 0.5) * 0.5, 0.08, 0.032)])
    s.shape([(0.40, 0.30), (0.60, 0.30), (0.68, 0.40), (0.63, 0.52), (0.5, 0.57), (0.37, 0.52),
             (0.32, 0.40)])  # fmt: skip
    for k in range(-2, 3):
        s.stroke([(0.5 + 0.06 * k - 0.08, 0.54, 0.010), (0.5 + 0.06 * k + 0.08, 0.34, 0.010)], 0)
        s.stroke([(0.5 + 0.06 * k + 0.08, 0.54, 0.010), (0.5 + 0.06 * k - 0.08, 0.34, 0.010)], 0)
    s.stroke([(0.5, 0.55, 0.055), (0.49, 0.75, 0.055), (0.52, 0.95, 0.06)])
    for sign in (-1, 1):
        s.shape([(0.5, 0.84), (0.5 + sign * 0.16, 0.80), (0.5 + sign * 0.20, 0.66),
                 (0.5 + sign * 0.28, 0.70), (0.5 + sign * 0.33, 0.54), (0.5 + sign * 0.40, 0.62),
                 (0.5 + sign * 0.45, 0.50), (0.5 + sign * 0.45, 0.70), (0.5 + sign * 0.35, 0.84),
                 (0.5 + sign * 0.18, 0.92)], smooth=False)  # fmt: skip
        s.stroke([(0.5, 0.88, 0.014), (0.5 + sign * 0.22, 0.79, 0.012),
                  (0.5 + sign * 0.41, 0.62, 0.008)], 0)  # fmt: skip
    return s.done()


def head(size: int) -> np.ndarray:
    """Sovereign's head in profile to the left, hair bound in a knot."""
    s = Sketch(size)
    s.shape(
        [
            (0.40, 0.12),
            (0.55, 0.08),
            (0.70, 0.14),
            (0.78, 0.28),
            (0.75, 0.44),
            (0.66, 0.54),
            (0.64, 0.66),
            (0.72, 0.80),
            (0.66, 0.92),
            (0.44, 0.90),
            (0.36, 0.84),
            (0.44, 0.76),
            (0.42, 0.68),
            (0.33, 0.68),
            (0.27, 0.64),
            (0.29, 0.595),
            (0.255, 0.57),
            (0.275, 0.535),
            (0.25, 0.51),
            (0.215, 0.49),
            (0.265, 0.39),
            (0.28, 0.30),
            (0.31, 0.20),
        ]
    )
    s.dot(0.82, 0.36, 0.085)
    s.dot(0.87, 0.41, 0.05)
    s.stroke([(0.29, 0.385, 0.016), (0.35, 0.375, 0.014)], 0)
    s.dot(0.335, 0.405, 0.017, 0)
    s.stroke([(0.275, 0.555, 0.014), (0.335, 0.555, 0.010)], 0)
    for k in range(5):
        y = 0.18 + 0.055 * k
        s.stroke([(0.40 + 0.02 * k, y - 0.02, 0.013), (0.56, y + 0.0, 0.012),
                  (0.73, y + 0.09 - 0.02 * k, 0.010)], 0)  # fmt: skip
    s.stroke([(0.36, 0.235, 0.022), (0.52, 0.235, 0.022), (0.76, 0.31, 0.020)], 0)
    s.dot(0.53, 0.45, 0.03, 0)
    s.stroke([(0.77, 0.32, 0.014), (0.80, 0.40, 0.012)], 0)
    return s.done()


DRAWN = {
    "lion": lion,
    "leopard": leopard,
    "anchor": anchor,
    "crown": crown,
    "castle": castle,
    "thistle": thistle,
    "head": head,
}
