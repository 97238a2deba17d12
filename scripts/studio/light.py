"""A small studio: rays are marched through distance fields and mirrored in soft boxes.

Nothing is random beyond one seeded generator, so a picture comes out the same again on the same
machine. Units are centimetres; the table is the plane y = 0.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace

import numpy as np
from studio.shapes import Shape

Colours = np.ndarray

TABLE = np.array([0.40, 0.385, 0.36], np.float32)


@dataclass(frozen=True)
class Material:
    """colour: reflectance of metal or paint. kind: metal, wood or stone. rough: spread of mirror."""

    colour: tuple[float, float, float]
    kind: str = "metal"
    rough: float = 0.008
    bump: Callable[[np.ndarray], np.ndarray] | None = None


SILVER = Material((0.97, 0.955, 0.925))
PLATE = Material((0.95, 0.95, 0.945), rough=0.012)
NICKEL = Material((0.86, 0.825, 0.765), rough=0.03)
EBONY = Material((0.045, 0.036, 0.03), "wood", 0.05)
STONE = Material((0.10, 0.52, 0.56), "stone", 0.02)


@dataclass(frozen=True)
class Part:
    """One shape of one material."""

    shape: Shape
    material: Material


@dataclass(frozen=True)
class Scene:
    """parts on the table; middle and radius of a sphere that holds them; the flat ruler's picture."""

    parts: Sequence[Part]
    middle: tuple[float, float, float]
    radius: float
    eye: tuple[float, float, float]
    target: tuple[float, float, float]
    angle: float = 26.0
    ruler: np.ndarray | None = None
    ruler_at: tuple[float, float] = (0.0, 0.0)
    ruler_size: tuple[float, float] = (10.0, 2.0)
    unit: float = 1.0  # size of the studio relative to a teapot's
    seed: int = 1
    _: object = field(default=None, repr=False)


@dataclass(frozen=True)
class Box:
    """A soft box: middle, two half axes, brightness and softness of its edge."""

    middle: tuple[float, float, float]
    u: tuple[float, float, float]
    v: tuple[float, float, float]
    light: float
    soft: float


LIGHTS = (
    Box((-22, 48, 14), (20, 5, -4), (2, 5, 20), 3.3, 0.28),
    Box((48, 22, 16), (3, 0, -9), (0, 18, 0), 2.0, 0.35),
    Box((-52, 20, 10), (3, 0, 7), (0, 15, 0), 1.25, 0.4),
    Box((5, 34, 70), (24, 0, 0), (0, 7, 0), 0.5, 0.6),
    Box((6, 46, -58), (40, 0, 0), (0, 15, 8), 1.15, 0.95),
)
KEY = np.array([-22, 48, 14], np.float32)


def unit(v: np.ndarray) -> np.ndarray:
    """Vectors of length one."""
    return v / np.maximum(np.linalg.norm(v, axis=-1, keepdims=True), 1e-9)


def surroundings(p: np.ndarray, r: np.ndarray, scale: float) -> np.ndarray:
    """Brightness seen from p along r, above the table."""
    up = r[:, 1]
    glow = 0.05 + 0.12 * np.clip(up, 0, 1) + 0.10 * np.exp(-((up - 0.03) ** 2) / 0.006)
    glow = glow * (0.75 + 0.25 * np.clip(r[:, 2], -1, 1))
    total = glow
    for box in LIGHTS:
        m = np.asarray(box.middle, np.float32) * scale
        u, v = np.asarray(box.u, np.float32) * scale, np.asarray(box.v, np.float32) * scale
        n = np.cross(u, v)
        n /= np.linalg.norm(n)
        towards = r @ n
        t = ((m - p) @ n) / np.where(np.abs(towards) < 1e-4, 1e-4, towards)
        q = p + t[:, None] * r - m
        a = np.abs(q @ u) / float(u @ u)
        b = np.abs(q @ v) / float(v @ v)
        edge = np.clip((1 + box.soft - np.maximum(a, b)) / (2 * box.soft), 0, 1)
        edge = edge * edge * (3 - 2 * edge)
        total = total + box.light * edge * (t > 0)
    return total


def march(
    shape: Shape,
    start: np.ndarray,
    ray: np.ndarray,
    low: np.ndarray,
    far: np.ndarray,
    *,
    steps: int,
) -> np.ndarray:
    """Distance to the surface along each ray, or infinity. Sphere tracing after Hart (1996)."""
    t = low.copy()
    hit = np.full(len(t), np.inf, np.float32)
    active = np.flatnonzero(far > low)
    for step in range(steps):
        if not len(active):
            break
        d = shape(start[active] + t[active, None] * ray[active])
        near = d < 0.0012 * (1 + step / 60)
        hit[active[near]] = t[active[near]]
        t[active] += np.maximum(d, 0.0008) * 0.92
        active = active[~near & (t[active] < far[active])]
    return hit


def sphere(scene: Scene, start: np.ndarray, ray: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """Where rays enter and leave the scene's sphere (far below near where they miss it)."""
    m = start - np.asarray(scene.middle, np.float32)
    b = np.sum(m * ray, 1)
    c = np.sum(m * m, 1) - scene.radius**2
    inner = b * b - c
    root = np.sqrt(np.maximum(inner, 0))
    return np.maximum(-b - root, 0), np.where(inner > 0, -b + root, -1.0)


def normals(shape: Shape, p: np.ndarray, e: float) -> np.ndarray:
    """Gradient by four points of a tetrahedron."""
    n = np.zeros_like(p)
    for k in ((1, -1, -1), (-1, -1, 1), (-1, 1, -1), (1, 1, 1)):
        o = np.asarray(k, np.float32)
        n += o * shape(p + o * e)[:, None]
    return unit(n)


def openness(shape: Shape, p: np.ndarray, n: np.ndarray, reach: float) -> np.ndarray:
    """How open the place is, 0 to 1: distances along the normal compared with a free surface."""
    closed = np.zeros(len(p), np.float32)
    weight = 1.0
    for h in np.array([0.06, 0.16, 0.34, 0.62, 1.0]) * reach:
        closed += weight * np.maximum(h - shape(p + n * h), 0) / h
        weight *= 0.72
    return np.clip(1 - 0.36 * closed, 0, 1)


def shadow(
    shape: Shape, p: np.ndarray, target: np.ndarray, scene: Scene, soft: float = 7.0
) -> np.ndarray:
    """Soft shadow of one lamp: the narrowest passage met on the way."""
    ray = unit(target - p)
    near, far = sphere(scene, p, ray)
    t = np.maximum(near, 0.03)
    seen = np.ones(len(p), np.float32)
    active = np.flatnonzero(far > t)
    for _ in range(42):
        if not len(active):
            break
        d = shape(p[active] + t[active, None] * ray[active])
        # the penumbra widens with the way behind the edge, counted from the receiver
        seen[active] = np.minimum(seen[active], 0.5 + 0.5 * soft * d / np.maximum(t[active], 0.3))
        t[active] += np.clip(np.abs(d), 0.05, 1.2)
        active = active[(seen[active] > 0) & (t[active] < far[active])]
    seen = np.clip(seen, 0, 1)
    return seen * seen * (3 - 2 * seen)


def table_colour(scene: Scene, p: np.ndarray) -> Colours:
    """Colour of the table and the ruler at points on it, with the fall of the light."""
    s = scene.unit
    grain = 0.5 + 0.5 * np.sin(p[:, 0] * 9.1 / s) * np.sin(p[:, 2] * 8.7 / s)
    colour = TABLE * (0.985 + 0.02 * grain)[:, None]
    if scene.ruler is not None:
        (cx, cz), (w, h) = scene.ruler_at, scene.ruler_size
        u, v = (p[:, 0] - cx) / w + 0.5, (p[:, 2] - cz) / h + 0.5
        on = (u > 0) & (u < 1) & (v > 0) & (v < 1)
        rows, cols = scene.ruler.shape[:2]
        j = np.clip((u * cols).astype(int), 0, cols - 1)
        i = np.clip((v * rows).astype(int), 0, rows - 1)
        colour = np.where(on[:, None], scene.ruler[i, j], colour)
    fall = np.exp(-((p[:, 0] + 4 * s) ** 2 + (p[:, 2] - 2 * s) ** 2) / (38 * s) ** 2)
    return colour * (0.30 + 0.78 * fall)[:, None]


def table_shade(scene: Scene, shape: Shape, p: np.ndarray, *, full: bool) -> np.ndarray:
    """How much light the piece leaves on the table, 0 to 1."""
    s = scene.unit
    up = np.zeros_like(p)
    up[:, 1] = 1
    away = np.linalg.norm(p - np.asarray(scene.middle, np.float32), axis=1) / scene.radius
    near = away < 3.4
    shade = np.ones(len(p), np.float32)
    if full and near.any():
        q = p[near]
        key = shadow(shape, q, KEY * s, scene)
        side = shadow(shape, q, np.array([48, 26, 16], np.float32) * s, scene, 5.0)
        closed = openness(shape, q, up[near], 2.6 * s)
        shade[near] = (0.30 + 0.48 * key + 0.22 * side) * (0.35 + 0.65 * closed)
    elif near.any():
        shade[near] = 0.25 + 0.75 * openness(shape, p[near], up[near], 2.4 * s) ** 1.5
    # far off the shadow is let go, softly
    kept = np.clip((3.4 - away) / 1.4, 0, 1)
    return 1 - (1 - shade) * kept


def backdrop(ray: np.ndarray) -> Colours:
    """What stands behind the table: a sweep that grows darker upwards."""
    h = np.clip(ray[:, 1] * 2.2 + 0.12, 0, 1)
    return TABLE * (0.30 * (1 - h) + 0.10 * h)[:, None]


def mirror(d: np.ndarray, n: np.ndarray) -> np.ndarray:
    """Directions mirrored at normals."""
    return d - 2 * np.sum(d * n, 1, keepdims=True) * n


def seen_along(scene: Scene, shape: Shape, p: np.ndarray, r: np.ndarray, bounces: int) -> Colours:
    """What a mirror at p shows along r."""
    near, far = sphere(scene, p, r)
    t = march(shape, p, r, np.maximum(near, 0.02 * scene.unit), far, steps=44 if bounces else 0)
    down = np.where(r[:, 1] < -1e-4, -p[:, 1] / np.minimum(r[:, 1], -1e-4), np.inf)
    out = np.repeat(surroundings(p, r, scene.unit)[:, None], 3, 1)
    on_table = (down < t) & (down < 260 * scene.unit)
    if on_table.any():
        q = p[on_table] + down[on_table, None] * r[on_table]
        far_off = np.clip(down[on_table] / (120 * scene.unit), 0, 1)[:, None]
        lit = table_colour(scene, q) * table_shade(scene, shape, q, full=False)[:, None]
        seen = lit * (1 - far_off) + 0.10 * far_off
        # the table ends: the dark room in front of it draws the outlines that silver needs
        z, x = q[:, 2] / scene.unit, np.abs(q[:, 0]) / scene.unit
        ends = np.maximum(np.clip((z - 15) / 9, 0, 1), np.clip((x - 34) / 12, 0, 1))[:, None]
        out[on_table] = seen * (1 - ends) + 0.055 * ends
    on_piece = t < down
    if on_piece.any():
        q = p[on_piece] + t[on_piece, None] * r[on_piece]
        n = normals(shape, q, 0.004 * scene.unit)
        onward = mirror(r[on_piece], n)
        light = surroundings(q, onward, scene.unit)
        below = onward[:, 1] < 0
        light = np.where(below, 0.33, light)
        light *= 0.25 + 0.75 * openness(shape, q, n, 0.8 * scene.unit)
        tint = np.asarray(scene.parts[0].material.colour, np.float32)
        out[on_piece] = light[:, None] * tint * 0.93
    return out


def piece(scene: Scene, whole: Shape, p: np.ndarray, ray: np.ndarray, noise: np.ndarray) -> Colours:
    """Colour of the piece at points on its surface."""
    distances = np.stack([part.shape(p) for part in scene.parts])
    which = distances.argmin(0)
    n = normals(whole, p, 0.0035 * scene.unit)
    out = np.zeros((len(p), 3), np.float32)
    open_ = openness(whole, p, n, 1.1 * scene.unit)
    for k, part in enumerate(scene.parts):
        mine = np.flatnonzero(which == k)
        if not len(mine):
            continue
        material, q, m, d = part.material, p[mine], n[mine], ray[mine]
        colour = np.asarray(material.colour, np.float32)
        if material.bump is not None:
            m = unit(m + material.bump(q))
        facing = np.clip(-np.sum(m * d, 1), 0, 1)
        grazing = (1 - facing) ** 5
        rough = unit(m + noise[mine] * material.rough)
        shown = seen_along(scene, whole, q + m * 0.01 * scene.unit, mirror(d, rough), 1)
        o = open_[mine][:, None]
        if material.kind == "metal":
            fresnel = colour + (1 - colour) * grazing[:, None]
            # tarnish lies where a cloth does not reach
            tarnish = np.clip((0.80 - o) / 0.6, 0, 1) * 0.65
            dark = np.array([0.62, 0.55, 0.45], np.float32)
            out[mine] = shown * fresnel * (1 - tarnish + tarnish * dark) * (0.35 + 0.65 * o)
        else:
            lamp = unit(KEY * scene.unit - q)
            lit = np.clip(np.sum(m * lamp, 1), 0, 1) * 1.25 + 0.35
            f0 = 0.045 if material.kind == "wood" else 0.06
            gloss = (f0 + (1 - f0) * grazing)[:, None]
            out[mine] = colour * (lit[:, None] * (0.4 + 0.6 * o)) + shown * gloss * (0.5 + 0.5 * o)
    return out


def camera_rays(scene: Scene, width: int, height: int, x: np.ndarray, y: np.ndarray) -> np.ndarray:
    """Unit rays through picture points (pixels, fractions allowed)."""
    eye, target = np.asarray(scene.eye, np.float32), np.asarray(scene.target, np.float32)
    forward = unit(target - eye)
    right = unit(np.cross(forward, np.array([0, 1, 0], np.float32)))
    up = np.cross(right, forward)
    k = np.tan(np.radians(scene.angle) / 2) * 2 / width
    return unit(
        forward + right * ((x - width / 2) * k)[:, None] + up * ((height / 2 - y) * k)[:, None]
    ).astype(np.float32)


def framed(scene: Scene, margin: float = 0.07, aspect: float = 1.5) -> Scene:
    """The scene with target and angle set so that piece and ruler fill the picture."""

    def whole(p: np.ndarray) -> np.ndarray:
        return np.min([part.shape(p) for part in scene.parts], axis=0)

    w, h = 150, round(150 / aspect)
    scene = replace(scene, angle=scene.angle * 1.6)
    for _ in range(3):
        ys, xs = np.mgrid[0:h, 0:w]
        x, y = xs.ravel() + np.float32(0.5), ys.ravel() + np.float32(0.5)
        ray = camera_rays(scene, w, h, x.astype(np.float32), y.astype(np.float32))
        eye = np.asarray(scene.eye, np.float32)
        start = np.broadcast_to(eye, ray.shape).copy()
        near, far = sphere(scene, start, ray)
        hit = np.isfinite(march(whole, start, ray, near, far, steps=60))
        spots = np.stack([x[hit], y[hit]], 1)
        (cx, cz), (rw, rh) = scene.ruler_at, scene.ruler_size
        corners = np.array(
            [(cx + a * rw / 2, 0, cz + b * rh / 2) for a in (-1, 1) for b in (-1, 1)], np.float32
        )
        forward = unit(np.asarray(scene.target, np.float32) - eye)
        right = unit(np.cross(forward, np.array([0, 1, 0], np.float32)))
        up = np.cross(right, forward)
        k = np.tan(np.radians(scene.angle) / 2) * 2 / w
        to = corners - eye
        depth = to @ forward
        spots = np.vstack(
            [spots, np.stack([w / 2 + (to @ right) / depth / k, h / 2 - (to @ up) / depth / k], 1)]
        )
        low, high = spots.min(0), spots.max(0)
        middle = (low + high) / 2
        away = float(np.linalg.norm(np.asarray(scene.target, np.float32) - eye))
        shift = right * (middle[0] - w / 2) * k * away - up * (middle[1] - h / 2) * k * away
        size = max((high[0] - low[0]) / w, (high[1] - low[1]) / h) / (1 - 2 * margin)
        angle = 2 * np.degrees(np.arctan(np.tan(np.radians(scene.angle) / 2) * size))
        target = tuple(float(v) for v in np.asarray(scene.target, np.float32) + shift)
        scene = replace(scene, target=target, angle=float(angle))
    return scene


def render(scene: Scene, width: int, height: int, samples: int = 2) -> np.ndarray:
    """The picture as (height, width, 3) linear light; ``samples`` squared rays a pixel."""
    rng = np.random.default_rng(scene.seed)
    shapes = [part.shape for part in scene.parts]

    def whole(p: np.ndarray) -> np.ndarray:
        d = shapes[0](p)
        for other in shapes[1:]:
            d = np.minimum(d, other(p))
        return d

    picture = np.zeros((height, width, 3), np.float32)
    band = max(1, 160_000 // width)
    for top in range(0, height, band):
        rows = min(band, height - top)
        shades = np.full(rows * width, np.nan, np.float32)
        for k in range(samples * samples):
            dx, dy = (k % samples + 0.5) / samples, (k // samples + 0.5) / samples
            ys, xs = np.mgrid[top : top + rows, 0:width]
            x = (xs.ravel() + dx).astype(np.float32)
            y = (ys.ravel() + dy).astype(np.float32)
            ray = camera_rays(scene, width, height, x, y)
            start = np.broadcast_to(np.asarray(scene.eye, np.float32), ray.shape).copy()
            near, far = sphere(scene, start, ray)
            down = np.where(ray[:, 1] < -1e-3, -start[:, 1] / np.minimum(ray[:, 1], -1e-3), np.inf)
            t = march(whole, start, ray, near, np.minimum(far, down), steps=90)
            colour = backdrop(ray)
            on_table = np.flatnonzero((down < t) & (down < 400 * scene.unit))
            if len(on_table):
                q = start[on_table] + down[on_table, None] * ray[on_table]
                haze = np.clip(down[on_table] / (170 * scene.unit) - 0.45, 0, 1)[:, None]
                # the shadow is smooth: one sample a pixel is enough
                new = np.isnan(shades[on_table])
                shades[on_table[new]] = table_shade(scene, whole, q[new], full=True)
                lit = table_colour(scene, q) * shades[on_table, None]
                colour[on_table] = lit * (1 - haze) + colour[on_table] * haze
            on_piece = np.flatnonzero(np.isfinite(t) & (t < down))
            if len(on_piece):
                q = start[on_piece] + t[on_piece, None] * ray[on_piece]
                noise = rng.normal(size=(len(q), 3)).astype(np.float32)
                colour[on_piece] = piece(scene, whole, q, ray[on_piece], noise)
            picture[top : top + rows] += colour.reshape(rows, width, 3) / (samples * samples)
    return picture


def developed(picture: np.ndarray, exposure: float = 1.0) -> np.ndarray:
    """Linear light as 8-bit sRGB (IEC 61966-2-1), highlights rolled off."""
    v = np.maximum(picture * exposure, 0)
    v = v * (1 + v / 6.0) / (1 + v * 0.62)  # a soft shoulder
    v = np.clip(v, 0, 1)
    srgb = np.where(v <= 0.0031308, 12.92 * v, 1.055 * v ** (1 / 2.4) - 0.055)
    return (np.clip(srgb, 0, 1) * 255 + 0.5).astype(np.uint8)
