"""Shapes as signed distance functions over arrays of points, units centimetres.

A shape takes an (N, 3) float32 array (x right, y up, z towards the viewer) and returns N distances.
The constructions are the usual ones of distance-field modelling (J. C. Hart, "Sphere tracing",
The Visual Computer 12, 1996): profiles are baked into small grids so that a curve of two hundred
points costs one look-up.
"""

from collections.abc import Callable, Sequence

import numpy as np

Points = np.ndarray
Shape = Callable[[Points], np.ndarray]


def smooth_curve(points: Sequence[tuple[float, ...]], count: int = 160) -> np.ndarray:
    """A centripetal-like Catmull-Rom curve through the points, as ``count`` samples."""
    p = np.asarray(points, dtype=np.float64)
    p = np.vstack([2 * p[0] - p[1], p, 2 * p[-1] - p[-2]])
    spans = len(p) - 3
    t = np.linspace(0, spans - 1e-9, count)
    i = t.astype(int)
    f = (t - i)[:, None]
    a, b, c, d = p[i], p[i + 1], p[i + 2], p[i + 3]
    return 0.5 * (
        2 * b + (c - a) * f + (2 * a - 5 * b + 4 * c - d) * f**2 + (3 * b - a - 3 * c + d) * f**3
    )


class Grid:
    """A function of two variables, baked on a grid and looked up with bilinear interpolation."""

    def __init__(self, low: Sequence[float], high: Sequence[float], values: np.ndarray) -> None:
        self.low = np.asarray(low, np.float32)
        self.scale = (np.array(values.shape[:2]) - 1) / (np.asarray(high) - np.asarray(low))
        self.scale = self.scale.astype(np.float32)
        self.values = values.astype(np.float32)

    def __call__(self, u: np.ndarray, v: np.ndarray) -> np.ndarray:
        """The values at (u, v); outside the grid, those of its edge."""
        n, m = self.values.shape[:2]
        a = np.clip((u - self.low[0]) * self.scale[0], 0, n - 1.001)
        b = np.clip((v - self.low[1]) * self.scale[1], 0, m - 1.001)
        i, j = a.astype(np.int32), b.astype(np.int32)
        f, g = a - i, b - j
        if self.values.ndim == 3:
            f, g = f[:, None], g[:, None]
        w = self.values
        return (w[i, j] * (1 - f) + w[i + 1, j] * f) * (1 - g) + (
            w[i, j + 1] * (1 - f) + w[i + 1, j + 1] * f
        ) * g


def _nearest(curve: np.ndarray, grid: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """Distance to the curve's segments, and position along it (in samples), per grid point."""
    best = np.full(len(grid), np.inf)
    at = np.zeros(len(grid))
    for k in range(len(curve) - 1):
        a, ab = curve[k], curve[k + 1] - curve[k]
        h = np.clip(((grid - a) @ ab) / max(float(ab @ ab), 1e-12), 0, 1)
        d = np.hypot(*(grid - a - h[:, None] * ab).T)
        near = d < best
        best = np.where(near, d, best)
        at = np.where(near, k + h, at)
    return best, at


def _box(curve: np.ndarray, pad: float) -> tuple[np.ndarray, np.ndarray]:
    return curve.min(0) - pad, curve.max(0) + pad


def _mesh(low: np.ndarray, high: np.ndarray, size: int) -> np.ndarray:
    axes = [np.linspace(low[i], high[i], size) for i in range(2)]
    return np.stack(np.meshgrid(*axes, indexing="ij"), -1).reshape(-1, 2)


def _outside(u: np.ndarray, v: np.ndarray, low: np.ndarray, high: np.ndarray) -> np.ndarray:
    """Distance from the box of a grid, so that far points still see a true lower bound."""
    du = np.maximum(np.maximum(low[0] - u, u - high[0]), 0)
    dv = np.maximum(np.maximum(low[1] - v, v - high[1]), 0)
    return np.hypot(du, dv)


def turned(
    profile: Sequence[tuple[float, float]],
    wall: float = 0.07,
    flutes: tuple[int, float, float, float] | None = None,
    warp: Callable[[Points], np.ndarray] | None = None,
    *,
    smooth: bool = True,
) -> Shape:
    """A wall of revolution about y through (radius, height) points.

    flutes: (number, depth, height up to which they run, softness). warp: height offset by point.
    """
    curve = smooth_curve(profile, 200) if smooth else np.asarray(profile, float)
    low, high = _box(curve, 1.0)
    low[0] = min(low[0], -0.5)
    size = 320
    d, _ = _nearest(curve, _mesh(low, high, size))
    grid = Grid(low, high, d.reshape(size, size))

    def shape(p: Points) -> np.ndarray:
        r = np.hypot(p[:, 0], p[:, 2])
        y = p[:, 1] if warp is None else p[:, 1] - warp(p)
        if flutes:
            count, depth, top, soft = flutes
            angle = np.arctan2(p[:, 2], p[:, 0])
            fade = np.clip((top - y) / soft, 0, 1) * np.clip(r / 1.5, 0, 1)
            r = r + depth * (1 - np.abs(np.cos(angle * count / 2))) * fade
        return grid(r, y) + _outside(r, y, low, high) - wall

    return shape


def swept(
    points: Sequence[tuple[float, float, float]], flat: float = 1.0, plane: str = "xy"
) -> Shape:
    """A rod along (u, v, radius) points in a plane; ``flat`` above 1 makes it thin across."""
    curve = smooth_curve(points, 140)
    low, high = _box(curve[:, :2], 1.2)
    size = 260
    d, at = _nearest(curve[:, :2], _mesh(low, high, size))
    radius = np.interp(at, np.arange(len(curve)), curve[:, 2])
    grid = Grid(low, high, np.stack([d, radius], -1).reshape(size, size, 2))
    iu, iv, iw = {"xy": (0, 1, 2), "zy": (2, 1, 0), "xz": (0, 2, 1)}[plane]

    def shape(p: Points) -> np.ndarray:
        u, v, w = p[:, iu], p[:, iv], p[:, iw]
        g = grid(u, v)
        away = g[:, 0] + _outside(u, v, low, high)
        return (np.hypot(away, w * flat) - g[:, 1]) / max(flat, 1.0) ** 0.5

    return shape


def plate_along(
    outline: Sequence[tuple[float, float]],
    rise: Sequence[tuple[float, float]],
    thick: float = 0.09,
    hollow: tuple[float, float, float, float, float] | None = None,
) -> Shape:
    """A plate cut to an outline in x-z and bent along x; the outline is one half, mirrored in z.

    rise: (x, height). hollow: centre x, half length, half width, depth and sharpness of a bowl.
    """
    half = smooth_curve(outline, 220)
    half[:, 1] = np.maximum(half[:, 1], 0)
    ring = np.vstack([half, half[::-1] * [1, -1]])
    low, high = _box(ring, 0.8)
    size = 360
    mesh = _mesh(low, high, size)
    d, _ = _nearest(ring, mesh)
    inside = _inside(ring, mesh)
    grid = Grid(low, high, np.where(inside, -d, d).reshape(size, size))
    line = smooth_curve(rise, 200)
    order = np.argsort(line[:, 0])
    xs, ys = line[order, 0], line[order, 1]

    def shape(p: Points) -> np.ndarray:
        x, z = p[:, 0], p[:, 2]
        edge = grid(x, z) + _outside(x, z, low, high)
        y = np.interp(x, xs, ys)
        if hollow:
            cx, a, b, depth, power = hollow
            q = ((x - cx) / a) ** 2 + (z / b) ** 2
            y = y - depth * np.clip(1 - q, 0, 1) ** power
        face = np.abs(p[:, 1] - y) - thick
        return (smooth_max(edge, face, 0.06)) * 0.62

    return shape


def _inside(ring: np.ndarray, mesh: np.ndarray) -> np.ndarray:
    """Even-odd rule."""
    inside = np.zeros(len(mesh), bool)
    x, y = mesh.T
    for (x0, y0), (x1, y1) in zip(ring, np.roll(ring, -1, 0), strict=True):
        if y0 == y1:
            continue
        crosses = ((y0 > y) != (y1 > y)) & (x < (x1 - x0) * (y - y0) / (y1 - y0) + x0)
        inside ^= crosses
    return inside


def box(size: Sequence[float], round_: float = 0.15) -> Shape:
    """A box with rounded edges, half sizes given."""
    half = np.asarray(size, np.float32) - round_

    def shape(p: Points) -> np.ndarray:
        q = np.abs(p) - half
        return (
            np.linalg.norm(np.maximum(q, 0), axis=1) + np.minimum(q.max(1), 0) - np.float32(round_)
        )

    return shape


def ellipsoid(a: float, b: float, c: float) -> Shape:
    """An ellipsoid, distances approximate."""
    s = np.array([a, b, c], np.float32)

    def shape(p: Points) -> np.ndarray:
        k0 = np.linalg.norm(p / s, axis=1)
        k1 = np.linalg.norm(p / (s * s), axis=1)
        return k0 * (k0 - 1) / np.maximum(k1, 1e-6)

    return shape


def ring(radius: float, wide: float, thick: float) -> Shape:
    """A band about the z axis, ``wide`` along z and ``thick`` radially (half sizes)."""

    def shape(p: Points) -> np.ndarray:
        r = np.abs(np.hypot(p[:, 0], p[:, 1]) - radius) - thick * 0.4
        z = np.abs(p[:, 2]) - wide * 0.7
        out = np.hypot(np.maximum(r, 0), np.maximum(z, 0)) + np.minimum(np.maximum(r, z), 0)
        return out - thick * 0.6

    return shape


def moved(shape: Shape, by: Sequence[float], turn: float = 0.0, tilt: float = 0.0) -> Shape:
    """The shape turned about y, tilted about x (degrees), then moved."""
    offset = np.asarray(by, np.float32)
    a, b = np.radians(turn), np.radians(tilt)
    about_y = np.array([[np.cos(a), 0, np.sin(a)], [0, 1, 0], [-np.sin(a), 0, np.cos(a)]])
    about_x = np.array([[1, 0, 0], [0, np.cos(b), -np.sin(b)], [0, np.sin(b), np.cos(b)]])
    matrix = (about_y @ about_x).astype(np.float32)
    return lambda p: shape((p - offset) @ matrix)


def union(*shapes: Shape) -> Shape:
    """All of the shapes."""

    def shape(p: Points) -> np.ndarray:
        d = shapes[0](p)
        for other in shapes[1:]:
            d = np.minimum(d, other(p))
        return d

    return shape


def blend(one: Shape, other: Shape, k: float = 0.25) -> Shape:
    """Two shapes with a soft joint."""

    def shape(p: Points) -> np.ndarray:
        a, b = one(p), other(p)
        h = np.clip(0.5 + 0.5 * (b - a) / k, 0, 1)
        return b * (1 - h) + a * h - k * h * (1 - h)

    return shape


def smooth_max(a: np.ndarray, b: np.ndarray, k: float) -> np.ndarray:
    """A maximum with a rounded edge."""
    h = np.clip(0.5 - 0.5 * (b - a) / k, 0, 1)
    return b * (1 - h) + a * h + k * h * (1 - h)


def cut(shape: Shape, away: Shape) -> Shape:
    """The shape without the other."""
    return lambda p: np.maximum(shape(p), -away(p))
