"""Shapes of punches, as paths around a block of letters.

The words are those in which people describe an outline; what is not understood is drawn as a
dashed frame, so that the drawing never claims a shape that nobody named.
"""

import math
import re

import msgspec


class Shape(msgspec.Struct, frozen=True, kw_only=True):
    """An outline ready to draw.

    path: SVG path data, None where the punch follows its letters.
    box: left, top, right, bottom of the path.
    known: whether the words named a shape known here.
    """

    path: str | None
    box: tuple[float, float, float, float]
    known: bool = True


#: words -> name of the shape, the first that fits wins (common practice of the trade's words)
_WORDS: tuple[tuple[str, str], ...] = (
    (r"follow|conform|contour|profile|shape of|own shape|silhouette", "conforming"),
    (
        r"two (joined |overlapping )?(lobe|oval|circle)|double (oval|circle)|bilobe|figure of eight",
        "twin",
    ),
    (r"quatrefoil|four.?foil|four.?lobe", "quatrefoil"),
    (r"trefoil|three.?foil|three.?lobe|clover", "trefoil"),
    (r"five.?foil|cinquefoil|lobed|scallop|foliate", "lobed"),
    (r"hexagon", "hexagon"),
    (r"pentagon", "pentagon"),
    (
        r"octagon|c(ut|lipped|anted|hamfered|ropped).{0,4}corner|corners? (cut|clipped|canted)",
        "cut",
    ),
    (r"shield|escutcheon", "shield"),
    (r"lozenge|diamond|rhomb", "lozenge"),
    (r"heart", "heart"),
    (r"triang", "triangle"),
    (r"star", "star"),
    (r"barrel|cask|tun\b", "barrel"),
    (r"pennant|flag|banner|ribbon|scroll", "banner"),
    (r"rounded (rect|square|corner|oblong)|round(ed)? (end|corner)|stadium|cartouche", "rounded"),
    (r"oval|ellip", "oval"),
    (r"circ|round|roundel|disc", "circle"),
    (r"square", "square"),
    (r"rect|oblong|block|bar\b|long", "rectangle"),
)


def name_of(outline: str) -> str | None:
    """The shape's name for an outline in words, None where none is known.

    >>> name_of("octagon (square with clipped corners)")
    'cut'
    """
    text = outline.lower()
    return next((name for pattern, name in _WORDS if re.search(pattern, text)), None)


def shape(outline: str, box: tuple[float, float, float, float], pad: float) -> Shape:
    """The outline in words, around ``box`` (left, top, right, bottom) with room ``pad``."""
    name = name_of(outline)
    if name == "conforming":
        left, top, right, bottom = box
        return Shape(path=None, box=(left - pad, top - pad, right + pad, bottom + pad))
    return _DRAWN[name or "rounded"](box, pad, known=name is not None)


def _polygon(points: list[tuple[float, float]], *, known: bool = True) -> Shape:
    path = "M" + "L".join(f"{x:.0f} {y:.0f}" for x, y in points) + "Z"
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return Shape(path=path, box=(min(xs), min(ys), max(xs), max(ys)), known=known)


_Box = tuple[float, float, float, float]


def _grown(box: _Box, pad: float) -> _Box:
    return box[0] - pad, box[1] - pad, box[2] + pad, box[3] + pad


def _squared(box: _Box) -> _Box:
    """The box made square about its centre."""
    side = max(box[2] - box[0], box[3] - box[1]) / 2
    x, y = (box[0] + box[2]) / 2, (box[1] + box[3]) / 2
    return x - side, y - side, x + side, y + side


def _rectangle(box: _Box, pad: float, *, known: bool) -> Shape:
    left, top, right, bottom = _grown(box, pad)
    return _polygon([(left, top), (right, top), (right, bottom), (left, bottom)], known=known)


def _square(box: _Box, pad: float, *, known: bool) -> Shape:
    return _rectangle(_squared(box), pad, known=known)


def _rounded(box: _Box, pad: float, *, known: bool) -> Shape:
    left, top, right, bottom = _grown(box, pad)
    r = min(right - left, bottom - top) * 0.3
    path = (
        f"M{left + r:.0f} {top:.0f}H{right - r:.0f}A{r:.0f} {r:.0f} 0 0 1 {right:.0f} {top + r:.0f}"
        f"V{bottom - r:.0f}A{r:.0f} {r:.0f} 0 0 1 {right - r:.0f} {bottom:.0f}"
        f"H{left + r:.0f}A{r:.0f} {r:.0f} 0 0 1 {left:.0f} {bottom - r:.0f}"
        f"V{top + r:.0f}A{r:.0f} {r:.0f} 0 0 1 {left + r:.0f} {top:.0f}Z"
    )
    return Shape(path=path, box=(left, top, right, bottom), known=known)


def _cut(box: _Box, pad: float, *, known: bool) -> Shape:
    left, top, right, bottom = _grown(box, pad)
    c = min(right - left, bottom - top) * 0.22
    points = [
        (left + c, top), (right - c, top), (right, top + c), (right, bottom - c),
        (right - c, bottom), (left + c, bottom), (left, bottom - c), (left, top + c),
    ]  # fmt: skip
    return _polygon(points, known=known)


def _ellipse(x: float, y: float, rx: float, ry: float, *, known: bool) -> Shape:
    path = (
        f"M{x - rx:.0f} {y:.0f}A{rx:.0f} {ry:.0f} 0 1 1 {x + rx:.0f} {y:.0f}"
        f"A{rx:.0f} {ry:.0f} 0 1 1 {x - rx:.0f} {y:.0f}Z"
    )
    return Shape(path=path, box=(x - rx, y - ry, x + rx, y + ry), known=known)


def _oval(box: _Box, pad: float, *, known: bool) -> Shape:
    left, top, right, bottom = _grown(box, pad * 0.35)
    rx, ry = (right - left) / 2 * math.sqrt(2), (bottom - top) / 2 * math.sqrt(2)
    if rx < ry * 1.2 and right - left > 0:
        rx = ry * 1.2
    return _ellipse((left + right) / 2, (top + bottom) / 2, rx, ry, known=known)


def _circle(box: _Box, pad: float, *, known: bool) -> Shape:
    left, top, right, bottom = _grown(box, pad * 0.35)
    r = math.hypot(right - left, bottom - top) / 2
    return _ellipse((left + right) / 2, (top + bottom) / 2, r, r, known=known)


def _shield(box: _Box, pad: float, *, known: bool) -> Shape:
    left, top, right, bottom = _grown(box, pad)
    tip = bottom + max((bottom - top) * 0.22, (right - left) * 0.16)
    waist = bottom - (bottom - top) * 0.22
    middle = (left + right) / 2
    path = (
        f"M{left:.0f} {top:.0f}H{right:.0f}V{waist:.0f}"
        f"C{right:.0f} {bottom:.0f} {middle + (right - left) * 0.2:.0f} {tip - pad * 0.3:.0f} "
        f"{middle:.0f} {tip:.0f}"
        f"C{middle - (right - left) * 0.2:.0f} {tip - pad * 0.3:.0f} {left:.0f} {bottom:.0f} "
        f"{left:.0f} {waist:.0f}Z"
    )
    return Shape(path=path, box=(left, top, right, tip), known=known)


def _lozenge(box: _Box, pad: float, *, known: bool) -> Shape:
    left, top, right, bottom = _grown(box, pad * 0.2)
    x, y, w, h = (left + right) / 2, (top + bottom) / 2, right - left, bottom - top
    return _polygon([(x, y - h), (x + w, y), (x, y + h), (x - w, y)], known=known)


def _regular(box: _Box, pad: float, sides: int, turn: float, *, known: bool) -> Shape:
    left, top, right, bottom = _grown(box, pad * 0.35)
    x, y = (left + right) / 2, (top + bottom) / 2
    r = math.hypot(right - left, bottom - top) / 2 / math.cos(math.pi / sides)
    points = [
        (
            x + r * math.cos(turn + 2 * math.pi * k / sides),
            y + r * math.sin(turn + 2 * math.pi * k / sides),
        )
        for k in range(sides)
    ]
    return _polygon(points, known=known)


def _hexagon(box: _Box, pad: float, *, known: bool) -> Shape:
    left, top, right, bottom = _grown(box, pad)
    c, y = (bottom - top) * 0.3, (top + bottom) / 2
    points = [
        (left, top), (right, top), (right + c, y),
        (right, bottom), (left, bottom), (left - c, y),
    ]  # fmt: skip
    return _polygon(points, known=known)


def _pentagon(box: _Box, pad: float, *, known: bool) -> Shape:
    return _regular(box, pad, 5, -math.pi / 2, known=known)


def _triangle(box: _Box, pad: float, *, known: bool) -> Shape:
    left, top, right, bottom = _grown(box, pad * 0.5)
    w, h = right - left, bottom - top
    x = (left + right) / 2
    return _polygon([(x, top - h * 0.9), (x + w, bottom), (x - w, bottom)], known=known)


def _star(box: _Box, pad: float, *, known: bool) -> Shape:
    left, top, right, bottom = _grown(box, pad * 0.3)
    x, y = (left + right) / 2, (top + bottom) / 2
    inner = math.hypot(right - left, bottom - top) / 2
    points = [
        (
            x + (inner * (1.7 if k % 2 == 0 else 0.95)) * math.cos(math.pi * k / 5 - math.pi / 2),
            y + (inner * (1.7 if k % 2 == 0 else 0.95)) * math.sin(math.pi * k / 5 - math.pi / 2),
        )
        for k in range(10)
    ]
    return _polygon(points, known=known)


def _lobes(box: _Box, pad: float, count: int, *, known: bool) -> Shape:
    """A foil: arcs bulging outwards between points on a circle."""
    left, top, right, bottom = _grown(box, pad * 0.2)
    x, y = (left + right) / 2, (top + bottom) / 2
    r = math.hypot(right - left, bottom - top) / 2
    turn = -math.pi / 2 - math.pi / count
    points = [
        (
            x + r * math.cos(turn + 2 * math.pi * k / count),
            y + r * math.sin(turn + 2 * math.pi * k / count),
        )
        for k in range(count)
    ]
    chord = r * math.sin(math.pi / count)
    path = f"M{points[0][0]:.0f} {points[0][1]:.0f}" + "".join(
        f"A{chord:.0f} {chord:.0f} 0 0 1 {px:.0f} {py:.0f}" for px, py in (*points[1:], points[0])
    )
    reach = r * math.cos(math.pi / count) + chord
    return Shape(path=path + "Z", box=(x - reach, y - reach, x + reach, y + reach), known=known)


def _trefoil(box: _Box, pad: float, *, known: bool) -> Shape:
    return _lobes(box, pad, 3, known=known)


def _quatrefoil(box: _Box, pad: float, *, known: bool) -> Shape:
    return _lobes(box, pad, 4, known=known)


def _lobed(box: _Box, pad: float, *, known: bool) -> Shape:
    return _lobes(box, pad, 5, known=known)


def _heart(box: _Box, pad: float, *, known: bool) -> Shape:
    left, top, right, bottom = _grown(_squared(box), pad)
    x, w, h = (left + right) / 2, right - left, bottom - top
    tip = bottom + h * 0.32
    path = (
        f"M{x:.0f} {top:.0f}C{x + w * 0.2:.0f} {top - h * 0.3:.0f} {right + w * 0.12:.0f} "
        f"{top - h * 0.2:.0f} {right + w * 0.1:.0f} {top + h * 0.3:.0f}"
        f"C{right:.0f} {top + h * 0.8:.0f} {x + w * 0.2:.0f} {bottom:.0f} {x:.0f} {tip:.0f}"
        f"C{x - w * 0.2:.0f} {bottom:.0f} {left:.0f} {top + h * 0.8:.0f} "
        f"{left - w * 0.1:.0f} {top + h * 0.3:.0f}"
        f"C{left - w * 0.12:.0f} {top - h * 0.2:.0f} {x - w * 0.2:.0f} {top - h * 0.3:.0f} "
        f"{x:.0f} {top:.0f}Z"
    )
    return Shape(
        path=path, box=(left - w * 0.12, top - h * 0.2, right + w * 0.12, tip), known=known
    )


def _barrel(box: _Box, pad: float, *, known: bool) -> Shape:
    left, top, right, bottom = _grown(box, pad)
    bulge = (bottom - top) * 0.16
    x = (left + right) / 2
    path = (
        f"M{left:.0f} {top:.0f}Q{x:.0f} {top - bulge:.0f} {right:.0f} {top:.0f}"
        f"V{bottom:.0f}Q{x:.0f} {bottom + bulge:.0f} {left:.0f} {bottom:.0f}Z"
    )
    return Shape(path=path, box=(left, top - bulge / 2, right, bottom + bulge / 2), known=known)


def _banner(box: _Box, pad: float, *, known: bool) -> Shape:
    left, top, right, bottom = _grown(box, pad)
    notch, y = (bottom - top) * 0.3, (top + bottom) / 2
    points = [(left, top), (right + notch * 1.4, top), (right + notch * 0.4, y),
              (right + notch * 1.4, bottom), (left, bottom)]  # fmt: skip
    return _polygon(points, known=known)


def _twin(box: _Box, pad: float, *, known: bool) -> Shape:
    """Two discs side by side that run into each other."""
    left, top, right, bottom = _grown(box, pad * 0.6)
    x, y = (left + right) / 2, (top + bottom) / 2
    r = max((bottom - top) / 2 * 1.12, (right - left) / 3.4)
    apart = max((right - left) / 2 - r * 0.78, r * 0.55)
    waist = math.sqrt(max(r * r - apart * apart, (r * 0.45) ** 2))
    path = (
        f"M{x:.0f} {y - waist:.0f}A{r:.0f} {r:.0f} 0 1 1 {x:.0f} {y + waist:.0f}"
        f"A{r:.0f} {r:.0f} 0 1 1 {x:.0f} {y - waist:.0f}Z"
    )
    return Shape(path=path, box=(x - apart - r, y - r, x + apart + r, y + r), known=known)


_DRAWN = {
    "rectangle": _rectangle, "square": _square, "rounded": _rounded, "cut": _cut, "oval": _oval,
    "circle": _circle, "shield": _shield, "lozenge": _lozenge, "hexagon": _hexagon,
    "pentagon": _pentagon, "triangle": _triangle, "star": _star, "trefoil": _trefoil,
    "quatrefoil": _quatrefoil, "lobed": _lobed, "heart": _heart, "barrel": _barrel,
    "banner": _banner, "twin": _twin,
}  # fmt: skip
