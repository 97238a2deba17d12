"""The marks of each object of the demo casebook, as plates of punches."""

from collections.abc import Sequence
from dataclasses import dataclass

from studio.punches import SANS, SANS_CONDENSED, SERIF, SERIF_CONDENSED, Punch, Surface


@dataclass(frozen=True)
class Plate:
    """Punches on a surface; width of the picture and length of the scale bar [mm]."""

    punches: Sequence[Punch]
    surface: Surface
    width_mm: float = 16.0
    bar_mm: int = 2


MARKS = {
    "01-teapot": Plate(
        (
            Punch((-5.3, 0.0), (2.7, 1.6), "lobes", "JR", font=SERIF, worn=0.22, fill=0.68, turn=-2),
            Punch((-2.15, -0.1), (1.9, 2.15), "pointed shield", device="leopard", worn=0.25,
                  fill=0.70),
            Punch((0.55, 0.1), (2.5, 1.9), "rectangle", device="lion", worn=0.15, turn=3, fill=0.76),
            Punch((3.1, -0.1), (1.65, 2.0), "shield", "I", worn=0.15, fill=0.6, turn=-1),
            Punch((5.35, 0.1), (1.6, 2.05), "oval", device="head", worn=0.38, struck=(0.4, 0.1)),
        ),
        Surface(brush=2, seed=11),
    ),
    "02-bowl": Plate(
        (
            Punch((-2.6, -1.5), (2.0, 2.0), "octagon", device="lion", worn=0.2, fill=0.66),
            Punch((0.0, -1.45), (1.8, 2.1), "shield", device="anchor", worn=0.2, fill=0.66),
            Punch((2.55, -1.5), (2.0, 2.0), "octagon", "G", worn=0.15, fill=0.56),
            Punch((0.0, 0.75), (7.6, 1.05), "none", "STERLING", font=SANS, worn=0.1, fill=0.98,
                  turn=0.6),
            Punch((0.05, 2.45), (3.9, 0.95), "none", "A2204", font=SANS, worn=0.1, fill=0.98),
        ),
        Surface(brush=78, seed=12, scratches=60, bend=(0.35, 0.5)),
    ),
    "03-spoons": Plate(
        (
            Punch((-3.2, 0.05), (6.3, 1.25), "rectangle", "N.HARDING", font=SERIF_CONDENSED,
                  worn=0.30, fill=0.90, turn=1.2, struck=(-0.3, 0)),
            Punch((3.9, -0.05), (5.4, 1.2), "rectangle", "PURE COIN", font=SERIF_CONDENSED,
                  worn=0.22, fill=0.90, turn=-0.8),
        ),
        Surface(brush=-1, seed=13, scratches=150, bend=(0.1, 1.3)),
    ),
    "04-salver": Plate(
        (
            Punch((-5.2, 0), (1.8, 2.1), "shield", "B", font=SERIF, worn=0.15, fill=0.6),
            Punch((-2.9, 0.05), (1.8, 2.1), "shield", "A", font=SERIF, worn=0.15, fill=0.6),
            Punch((-0.5, -0.05), (2.1, 2.1), "shield", "&S", font=SERIF_CONDENSED, worn=0.2,
                  fill=0.72),
            Punch((2.75, 0.05), (3.3, 1.3), "rectangle", "EPNS", font=SANS_CONDENSED, worn=0.12,
                  fill=0.78),
            Punch((5.7, 0), (1.5, 1.1), "none", "A1", font=SANS, worn=0.1, fill=0.98),
        ),
        Surface(brush=35, seed=14, scratches=160, colour=(0.95, 0.95, 0.94), tarnish=0.8),
    ),
    "05-case": Plate(
        (
            Punch((0, -0.5), (8.4, 1.35), "none", "ALPACCA", font=SANS, worn=0.08, fill=0.98,
                  turn=-0.8),
            Punch((0.1, 1.7), (5.2, 0.75), "none", "GERMANY", font=SANS_CONDENSED, worn=0.2,
                  fill=0.98, turn=-0.4),
        ),
        Surface(brush=0, seed=15, scratches=110, colour=(0.86, 0.82, 0.75), tarnish=1.3),
    ),
    "06-jug": Plate(
        (Punch((0.3, 0.2), (0.35, 0.35), "oval", worn=0.5),),
        Surface(brush=20, seed=16, scratches=220, hammered=0.020, bend=(0.2, 0.2)),
        width_mm=30.0, bar_mm=5,
    ),
    "07-candlestick": Plate(
        (
            Punch((-4.6, 0.0), (2.5, 2.0), "diamond", "QV", font=SERIF_CONDENSED, worn=0.25,
                  fill=0.5),
            Punch((1.6, -0.85), (8.2, 1.1), "none", "STERLING", font=SANS, worn=0.12, fill=0.98,
                  turn=0.5),
            Punch((1.65, 0.95), (8.6, 0.9), "none", "CEMENT FILLED", font=SANS_CONDENSED, worn=0.15,
                  fill=0.98, turn=0.3),
        ),
        Surface(brush=88, seed=17, scratches=120, bend=(0.4, 0.6)),
    ),
    "08-ring": Plate(
        (Punch((0.2, 0.0), (1.9, 0.72), "none", "925", font=SANS, worn=0.12, fill=0.98, turn=-2),),
        Surface(brush=0, seed=18, scratches=90, bend=(0.0, 2.6), tarnish=1.2),
        width_mm=7.0, bar_mm=1,
    ),
    "09-ladle": Plate(
        (
            Punch((-5.5, 0.05), (3.4, 1.35), "rectangle", "JMcK", font=SERIF_CONDENSED, worn=0.3,
                  fill=0.80, turn=1),
            Punch((-2.3, 0), (1.8, 2.0), "oval", device="castle", worn=0.25, fill=0.62),
            Punch((0.15, -0.1), (1.6, 2.05), "oval", device="thistle", worn=0.2, fill=0.72),
            Punch((2.6, 0.05), (1.7, 2.0), "shield", "Q", worn=0.18, fill=0.6),
            Punch((5.0, -0.05), (1.6, 2.05), "oval", device="head", worn=0.45, struck=(0.3, 0.2)),
        ),
        Surface(brush=1, seed=19, scratches=130, bend=(0.1, 1.2)),
    ),
    "10-mustard": Plate(
        (
            Punch((-5.6, 0.0), (2.5, 1.4), "rectangle", "TH", worn=0.2, fill=0.72),
            Punch((-2.7, 0.05), (2.4, 1.85), "rectangle", device="lion", worn=0.35, fill=0.76,
                  turn=-4),
            Punch((-0.1, -0.05), (1.7, 2.05), "shield", device="anchor", worn=0.3, fill=0.66,
                  turn=-3),
            Punch((2.25, 0.05), (1.6, 1.9), "shield", "b", worn=0.25, fill=0.6, turn=-4),
            Punch((5.2, -0.05), (3.1, 1.2), "rectangle", "EPNS", font=SANS_CONDENSED, worn=0.15,
                  fill=0.80, turn=6),
        ),
        Surface(brush=60, seed=20, scratches=190, tarnish=1.1),
    ),
}  # fmt: skip
