"""The ten invented objects of the demo casebook, each as a scene on the table."""

import numpy as np
from studio.light import EBONY, NICKEL, PLATE, SILVER, STONE, Material, Part, Scene
from studio.shapes import (
    Shape,
    blend,
    box,
    cut,
    ellipsoid,
    moved,
    plate_along,
    ring,
    swept,
    turned,
    union,
)


def teapot() -> Scene:
    """A half-fluted teapot with ebonised handle."""
    body = turned(
        [(0.01, 0.35), (2.5, 0.4), (4.6, 1.5), (6.0, 3.8), (6.15, 5.3), (5.2, 7.2), (4.4, 7.9),
         (4.5, 8.2)],
        flutes=(28, 0.22, 5.2, 0.8),
    )  # fmt: skip
    foot = turned([(2.9, 0.0), (2.9, 0.25), (2.5, 0.55)], wall=0.12)
    lid = turned([(4.25, 8.15), (3.9, 8.6), (2.6, 9.3), (0.9, 9.75), (0.02, 9.85)])
    stem = turned([(0.45, 9.8), (0.25, 10.0), (0.5, 10.2)])
    knop = moved(ellipsoid(0.75, 0.62, 0.75), (0, 10.7, 0))
    spout = swept(
        [(4.6, 3.4, 1.25), (6.6, 3.5, 1.0), (8.2, 5.4, 0.7), (9.2, 7.5, 0.5), (10.2, 8.4, 0.45)]
    )
    sockets = union(
        swept([(-5.0, 7.0, 0.5), (-6.3, 7.9, 0.46)]), swept([(-5.2, 3.6, 0.5), (-6.6, 3.1, 0.42)])
    )
    handle = swept(
        [(-6.1, 7.8, 0.42), (-7.3, 8.6, 0.42), (-9.5, 8.3, 0.5), (-10.3, 6.2, 0.48),
         (-9.2, 3.9, 0.4), (-7.4, 3.0, 0.38), (-6.4, 3.15, 0.4)]
    )  # fmt: skip
    silver = union(blend(body, spout, 0.35), foot, lid, stem, sockets)
    return Scene(
        [Part(silver, SILVER), Part(knop, EBONY), Part(handle, EBONY)],
        middle=(0, 5.4, 0), radius=12.2, eye=(13, 20, 47), target=(0.2, 4.7, 0), angle=30,
        ruler_at=(0.5, 8.2),
    )  # fmt: skip


def bowl() -> Scene:
    """A shallow lobed bonbon bowl on a spreading foot."""

    def lobes(p: np.ndarray) -> np.ndarray:
        angle = np.arctan2(p[:, 2], p[:, 0])
        r = np.hypot(p[:, 0], p[:, 2])
        return (0.30 * np.cos(8 * angle) * np.clip((r - 4.0) / 4.5, 0, 1)).astype(np.float32)

    dish = turned(
        [(0.01, 2.3), (2.0, 2.4), (4.6, 3.0), (6.8, 4.0), (8.2, 5.2), (8.9, 5.5)],
        flutes=(16, 0.16, 6.0, 1.2), warp=lobes,
    )  # fmt: skip
    foot = turned(
        [(3.6, 0.02), (3.5, 0.35), (2.5, 0.75), (1.35, 1.3), (1.2, 1.8), (1.7, 2.35)], wall=0.09
    )
    return Scene(
        [Part(union(dish, foot), SILVER)],
        middle=(0, 3.0, 0), radius=9.7, eye=(-10, 22, 40), target=(0, 2.3, 0), angle=28,
        ruler_at=(0.0, 10.0),
    )  # fmt: skip


def _spoon(length: float = 14.4, wide: float = 1.55) -> Shape:
    """A fiddle-handled spoon along x: bowl to the left, lying face up."""
    h = length / 2
    outline = [
        (-h, 0.0), (-h + 0.25, 0.45 * wide), (-h + 1.5, 0.92 * wide), (-h + 2.9, wide),
        (-h + 4.2, 0.72 * wide), (-h + 4.95, 0.32), (-h + 5.6, 0.24), (-0.4, 0.20), (2.6, 0.26),
        (3.1, 0.62), (3.7, 0.66), (5.2, 0.78), (6.4, 0.98), (h - 0.25, 0.62), (h, 0.0),
    ]  # fmt: skip
    rise = [(-h, 0.85), (-h + 3, 0.80), (-h + 4.6, 1.0), (-2.0, 1.25), (2.5, 0.75), (5.5, 0.42),
            (h, 0.62)]  # fmt: skip
    return plate_along(outline, rise, 0.075, hollow=(-h + 2.6, 2.75, wide * 1.02, 0.72, 0.75))


def spoons() -> Scene:
    """Six coin silver teaspoons side by side."""
    one = _spoon()
    step = 3.6

    def six(p: np.ndarray) -> np.ndarray:
        k = np.clip(np.round(p[:, 2] / step - 0.5), -3, 2)
        q = p.copy()
        q[:, 2] = p[:, 2] - (k + 0.5) * step
        # each lies a little differently
        q[:, 0] = p[:, 0] - 0.14 * np.sin(k * 2.3)
        q[:, 2] += 0.006 * q[:, 0] * np.cos(k * 1.7)
        return one(q) * 0.95

    return Scene(
        [Part(moved(six, (0, 0, 0), turn=-90), SILVER)],
        middle=(0, 0.6, 0), radius=12.8, eye=(4, 44, 43), target=(0, 0, 1.6), angle=27,
        ruler_at=(0.0, 9.6),
    )  # fmt: skip


def salver() -> Scene:
    """A plated salver with a shaped rim on ball feet."""
    profile = [(0.01, 1.6), (6.0, 1.6), (8.8, 1.6), (9.4, 1.75), (10.2, 2.15), (10.9, 2.2)]
    flat = turned(profile, wall=0.09)
    edge = turned([(10.75, 2.15), (11.05, 2.42), (11.25, 2.2)], wall=0.16)

    def shaped(p: np.ndarray) -> np.ndarray:
        angle = np.arctan2(p[:, 2], p[:, 0])
        r = np.hypot(p[:, 0], p[:, 2])
        scale = 1 + 0.035 * (np.abs(np.cos(4 * angle)) ** 0.7 - 0.5) * np.clip((r - 7) / 4, 0, 1)
        q = p.copy()
        q[:, 0] /= scale
        q[:, 2] /= scale
        return np.minimum(flat(q), edge(q)) * 0.9

    feet = union(
        *(
            moved(ellipsoid(0.75, 0.8, 0.75), (7.6 * np.cos(a), 0.8, 7.6 * np.sin(a)))
            for a in (0.5, 2.6, 4.7)
        )
    )
    ring_ = turned([(6.9, 1.68), (7.0, 1.74), (7.1, 1.68)], wall=0.03)
    return Scene(
        [Part(union(shaped, feet, ring_), PLATE)],
        middle=(0, 1.5, 0), radius=12.4, eye=(8, 33, 44), target=(0, 0.6, 0.6), angle=27,
        ruler_at=(0.0, 13.6),
    )  # fmt: skip


def case_() -> Scene:
    """A cigarette case of white base metal with engine-turned lid."""
    lower = moved(box((5.9, 0.62, 4.0), 0.42), (0, 0.62, 0))
    upper = moved(box((5.9, 0.62, 4.0), 0.42), (0, 1.42, 0))
    seam = moved(box((6.4, 0.03, 4.4), 0.01), (0, 1.02, 0))
    clasp = moved(ellipsoid(0.7, 0.28, 0.25), (0.0, 1.08, 4.0))
    hinge = swept([(-4.6, 1.02, 0.2), (4.6, 1.02, 0.2)])
    shield = moved(ellipsoid(1.35, 0.07, 1.0), (0, 2.05, 0))
    whole = union(cut(union(lower, upper), seam), clasp, moved(hinge, (0, 0, -4.0)), shield)

    def turned_lines(p: np.ndarray) -> np.ndarray:
        top = np.clip((p[:, 1] - 1.96) / 0.05, 0, 1)
        inside = (np.abs(p[:, 0]) < 5.3) & (np.abs(p[:, 2]) < 3.4)
        clear = ((p[:, 0] / 1.5) ** 2 + (p[:, 2] / 1.15) ** 2) > 1
        phase = p[:, 2] * 21 + 1.1 * np.sin(p[:, 0] * 5.2)
        out = np.zeros_like(p)
        strength = 0.17 * top * inside * clear
        out[:, 2] = strength * np.cos(phase)
        out[:, 0] = strength * 0.3 * np.cos(phase) * np.cos(p[:, 0] * 5.2)
        return out

    metal = Material(NICKEL.colour, "metal", NICKEL.rough, turned_lines)
    return Scene(
        [Part(moved(whole, (0, 0, 0), turn=-14), Material(metal.colour, "metal", metal.rough,
              lambda p: _turned(turned_lines, p, -14)))],
        middle=(0, 1.1, 0), radius=7.6, eye=(-7, 19, 27), target=(0, 0.6, 0.5), angle=27,
        ruler_at=(0.4, 6.9), unit=0.75,
    )  # fmt: skip


def _turned(bump: object, p: np.ndarray, turn: float) -> np.ndarray:
    a = np.radians(turn)
    m = np.array([[np.cos(a), 0, np.sin(a)], [0, 1, 0], [-np.sin(a), 0, np.cos(a)]], np.float32)
    return bump(p @ m) @ m.T  # type: ignore[operator]


def jug() -> Scene:
    """An unmarked helmet cream jug on a square foot."""

    def lip(p: np.ndarray) -> np.ndarray:
        high = np.clip((p[:, 1] - 6.0) / 4.0, 0, 1)
        x = p[:, 0]
        return (high * (0.055 * np.clip(x, 0, 9) ** 1.75 + 0.22 * np.clip(-x, 0, 9) - 0.1)).astype(
            np.float32
        )

    body = turned(
        [(0.01, 3.1), (1.2, 3.2), (2.6, 4.2), (3.35, 6.0), (3.5, 7.4), (3.2, 8.8), (3.6, 10.0)],
        wall=0.075, warp=lip,
    )  # fmt: skip

    def drawn_out(p: np.ndarray) -> np.ndarray:
        # pull the mouth towards the lip
        high = np.clip((p[:, 1] - 6.5) / 5.0, 0, 1)
        q = p.copy()
        q[:, 0] = np.where(p[:, 0] > 0, p[:, 0] / (1 + 0.42 * high), p[:, 0])
        q[:, 2] = p[:, 2] * (1 + 0.16 * high * np.clip(p[:, 0] / 3, -0.3, 1))
        return body(q) * 0.72

    stem = turned([(1.9, 0.75), (1.75, 1.0), (0.95, 1.6), (0.75, 2.4), (1.1, 3.1)], wall=0.1)
    foot = moved(box((2.3, 0.36, 2.3), 0.1), (0, 0.36, 0), turn=45)
    bead = turned([(0.85, 2.35), (1.0, 2.42), (0.85, 2.5)], wall=0.09)
    handle = swept(
        [(-3.2, 10.3, 0.26), (-4.6, 12.3, 0.24), (-6.2, 11.4, 0.27), (-6.3, 8.4, 0.25),
         (-5.2, 6.0, 0.22), (-3.1, 4.9, 0.2)],
        flat=0.7,
    )  # fmt: skip
    return Scene(
        [Part(union(drawn_out, stem, foot, bead, handle), SILVER)],
        middle=(-0.4, 6.1, 0), radius=8.6, eye=(9, 20, 50), target=(-0.4, 6.0, 0), angle=28,
        ruler_at=(0.0, 6.2), unit=0.85,
    )  # fmt: skip


def candlestick() -> Scene:
    """A filled candlestick: thin metal over a weight."""
    profile = [
        (5.0, 0.05), (5.05, 0.5), (4.6, 0.95), (3.6, 1.25), (3.2, 1.7), (1.7, 2.3), (1.1, 3.0),
        (0.95, 3.8), (1.35, 4.5), (1.0, 5.1), (0.9, 6.0), (1.05, 9.0), (1.35, 12.2), (1.5, 13.2),
        (1.1, 13.7), (1.0, 14.1), (1.75, 14.6), (1.7, 15.2), (1.35, 15.6), (1.4, 17.2),
        (1.55, 17.9), (2.5, 18.25), (2.55, 18.4), (1.45, 18.3), (1.15, 18.0), (1.1, 16.6),
    ]  # fmt: skip
    stick = turned(profile, wall=0.06, flutes=(16, 0.10, 2.1, 0.6))
    beads = union(
        *(
            moved(
                ellipsoid(0.2, 0.2, 0.2),
                (4.72 * np.cos(k * np.pi / 18), 0.92, 4.72 * np.sin(k * np.pi / 18)),
            )
            for k in range(36)
        )
    )
    return Scene(
        [Part(union(stick, beads), SILVER)],
        middle=(0, 9.2, 0), radius=10.7, eye=(12, 30, 68), target=(0, 8.6, 0), angle=31,
        ruler_at=(0.4, 8.8),
    )  # fmt: skip


def finger_ring() -> Scene:
    """A ring with a blue-green cabochon; the studio is small."""
    band = ring(0.95, 0.24, 0.16)
    collar = moved(cut(ellipsoid(0.72, 0.40, 0.56), moved(box((1, 0.3, 1), 0.01), (0, 0.36, 0))),
                   (0, 1.14, 0))  # fmt: skip
    stone = moved(ellipsoid(0.60, 0.36, 0.45), (0, 1.24, 0))
    grains = union(
        *(
            moved(ellipsoid(0.06, 0.06, 0.06),
                  (0.69 * np.cos(k * np.pi / 12), 1.20, 0.53 * np.sin(k * np.pi / 12)))
            for k in range(24)
        )
    )  # fmt: skip
    turn, tilt = 28.0, -22.0
    place = (0.0, 1.10, 0.0)

    def posed(shape: Shape) -> Shape:
        return moved(shape, place, turn, tilt)

    metal = posed(blend(union(band, grains), collar, 0.08))
    return Scene(
        [Part(metal, SILVER), Part(posed(stone), STONE)],
        middle=(0, 1.25, 0), radius=2.1, eye=(1.9, 5.6, 9.6), target=(0, 1.12, 0.1), angle=30,
        ruler_at=(0.0, 1.7), ruler_size=(4.0, 0.62), unit=0.14,
    )  # fmt: skip


def ladle() -> Scene:
    """A toddy ladle with a deep round bowl and a fiddle handle."""
    h = 8.4
    bowl_ = turned([(0.01, 0.1), (1.0, 0.2), (2.1, 0.85), (2.65, 1.8), (2.8, 2.4)], wall=0.07)
    outline = [
        (-6.2, 0.0), (-6.1, 0.34), (-5.0, 0.30), (-1.0, 0.22), (3.0, 0.26), (4.0, 0.36),
        (4.35, 0.72), (5.0, 0.76), (6.4, 0.92), (7.5, 1.12), (h - 0.2, 0.7), (h, 0.0),
    ]  # fmt: skip
    rise = [(-6.2, 2.2), (-5.2, 3.0), (-3.0, 3.5), (1.0, 2.7), (5.0, 1.25), (7.6, 0.28), (h, 0.3)]
    handle = plate_along(outline, rise, 0.085)
    ladle_ = blend(moved(bowl_, (-8.2, 0, 0)), handle, 0.25)
    size = np.float32(0.85)

    def shrunk(p: np.ndarray) -> np.ndarray:
        return ladle_(p / size) * size

    return Scene(
        [Part(moved(shrunk, (1.0, 0, 0), turn=9), SILVER)],
        middle=(-0.2, 1.4, 0), radius=9.2, eye=(3, 26, 42), target=(-0.2, 0.9, 0.8), angle=28,
        ruler_at=(0.6, 6.2), unit=0.85,
    )  # fmt: skip


def mustard() -> Scene:
    """A drum mustard pot with domed lid, thumbpiece and scroll handle."""
    body = turned(
        [(3.3, 0.05), (3.45, 0.25), (3.2, 0.5), (3.15, 0.9), (3.15, 5.2), (3.25, 5.6), (3.1, 5.7)],
        wall=0.08,
    )
    lid = turned(
        [(3.2, 5.95), (3.25, 6.1), (2.7, 6.6), (1.4, 7.15), (0.5, 7.35), (0.4, 7.6), (0.65, 7.95),
         (0.4, 8.3), (0.02, 8.4)],
    )  # fmt: skip
    bands = union(
        turned([(3.2, 1.1), (3.32, 1.2), (3.2, 1.3)], wall=0.05),
        turned([(3.2, 4.9), (3.32, 5.0), (3.2, 5.1)], wall=0.05),
    )
    handle = swept(
        [(-3.1, 5.2, 0.24), (-4.6, 5.9, 0.24), (-5.9, 4.9, 0.26), (-5.7, 3.0, 0.24),
         (-4.4, 1.5, 0.22), (-3.1, 1.5, 0.24)],
        flat=0.7,
    )  # fmt: skip
    thumb = moved(
        union(ellipsoid(0.42, 0.16, 0.75), moved(ellipsoid(0.16, 0.6, 0.5), (-0.25, 0.5, 0))),
        (-3.5, 6.15, 0),
    )
    return Scene(
        [Part(union(body, lid, bands, handle, thumb), SILVER)],
        middle=(-0.9, 4.2, 0), radius=6.7, eye=(7, 15, 34), target=(-0.9, 3.6, 0), angle=28,
        ruler_at=(-0.2, 6.0), unit=0.7,
    )  # fmt: skip


FORMS = {
    "01-teapot": teapot,
    "02-bowl": bowl,
    "03-spoons": spoons,
    "04-salver": salver,
    "05-case": case_,
    "06-jug": jug,
    "07-candlestick": candlestick,
    "08-ring": finger_ring,
    "09-ladle": ladle,
    "10-mustard": mustard,
}
