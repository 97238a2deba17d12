"""Where the numbered discs of the pins go: near their place, off the lines, off each other."""

import math
import re
from collections.abc import Sequence
from itertools import pairwise

from planish.marks.figures_of_forms.sheet import HEIGHT, WIDTH, Drawing, Point

#: radius of a disc
RADIUS = 8.5
# the small sign at a disc needs room too
_MARGIN = RADIUS + 4
_REACHES = (15, 19, 24, 30, 38, 48, 60)
_ANGLES = tuple(2 * math.pi * i / 24 for i in range(24))
_NUMBER = re.compile(r"-?\d+(?:\.\d+)?")
_PATH = re.compile(r' d="([^"]+)"')


def discs(drawing: Drawing, at: Sequence[Point]) -> tuple[Point, ...]:
    """Centres of the discs for the places ``at``, in order; the same for the same drawing.

    Each is put where it costs least: overlap with discs, places and captions costs most, then
    lines of the drawing beneath it, then distance.
    """
    ink = _ink(drawing)
    boxes = [(x, y - 4, 2.7 * len(text) + 3) for x, y, text in drawing.notes]
    found: list[Point] = []
    for n, (x, y) in enumerate(at):
        others = [p for i, p in enumerate(at) if i != n]
        best, least = (x, y), math.inf
        for reach in _REACHES:
            for angle in _ANGLES:
                spot = (x + reach * math.cos(angle), y + reach * math.sin(angle))
                if not (
                    _MARGIN <= spot[0] <= WIDTH - _MARGIN and _MARGIN <= spot[1] <= HEIGHT - _MARGIN
                ):
                    continue
                cost = 0.6 * reach + _cost(spot, (x, y), found, others, ink, boxes)
                if cost < least - 1e-9:
                    best, least = spot, cost
        found.append(best)
    return tuple((round(x, 1), round(y, 1)) for x, y in found)


def _cost(  # noqa: PLR0917  # called in one place, in the order of its sums
    spot: Point,
    place: Point,
    discs_so_far: Sequence[Point],
    others: Sequence[Point],
    ink: Sequence[Point],
    boxes: Sequence[tuple[float, float, float]],
) -> float:
    cost = 0.0
    for other in discs_so_far:
        cost += 1000 if math.dist(spot, other) < 2 * RADIUS + 2 else 0
        cost += 150 if _away(other, place, spot) < RADIUS + 2 else 0
    cost += sum(250 for other in others if math.dist(spot, other) < RADIUS + 3)
    for x, y, half in boxes:
        inside = abs(spot[0] - x) < half + RADIUS and abs(spot[1] - y) < 6 + RADIUS
        cost += 200 if inside else 0
    return cost + sum(4 for dot in ink if math.dist(spot, dot) < RADIUS + 3)


def _away(dot: Point, start: Point, end: Point) -> float:
    """Distance of a dot from a segment."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    long = dx * dx + dy * dy
    t = 0.0 if not long else ((dot[0] - start[0]) * dx + (dot[1] - start[1]) * dy) / long
    t = min(1.0, max(0.0, t))
    return math.dist(dot, (start[0] + t * dx, start[1] + t * dy))


def _ink(drawing: Drawing) -> list[Point]:
    """Points near which the drawing has lines: what its paths, ellipses and boxes name."""
    found: list[Point] = []
    for shape in drawing.shapes:
        if match := _PATH.search(shape):
            found += _of_path(match[1])
        elif shape.startswith("<ellipse"):
            cx, cy, rx, ry = (float(v) for v in _NUMBER.findall(shape[shape.index(" cx=") :])[:4])
            found += [(cx + rx * math.cos(a), cy + ry * math.sin(a)) for a in _ANGLES[::2]]
        elif shape.startswith("<rect"):
            x, y, w, h = (float(v) for v in _NUMBER.findall(shape[shape.index(" x=") :])[:4])
            found += [(x + w * i / 4, y + h * j) for i in range(5) for j in (0, 1)]
            found += [(x + w * i, y + h * j / 4) for i in (0, 1) for j in range(1, 4)]
    return found


def _of_path(d: str) -> list[Point]:
    """Points of a path, with the middle of each long piece; H and V keep the other coordinate."""
    found: list[Point] = []
    x = y = 0.0
    for command, rest in re.findall(r"([A-Za-z])([^A-Za-z]*)", d):
        values = [float(v) for v in _NUMBER.findall(rest)]
        if command == "H" and values:
            points = [(values[0], y)]
        elif command == "V" and values:
            points = [(x, values[0])]
        elif command in "MLCQ":
            points = list(zip(values[::2], values[1::2], strict=False))
            if command in "CQ":  # control points lie off the line: sample the curve
                points = [
                    _bezier([(x, y), *points[: 3 if command == "C" else 2]], t / 4)
                    for t in range(1, 5)
                ]
        else:
            continue
        for point in points:
            steps = int(math.dist((x, y), point) // 12) if command in "LHV" else 0
            found += [
                (x + (point[0] - x) * i / (steps + 1), y + (point[1] - y) * i / (steps + 1))
                for i in range(1, steps + 1)
            ]
            found.append(point)
            x, y = point
    return found


def _bezier(points: Sequence[Point], t: float) -> Point:
    """A point of a Bézier curve (de Casteljau)."""
    left = list(points)
    while len(left) > 1:
        left = [(a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t) for a, b in pairwise(left)]
    return left[0]
