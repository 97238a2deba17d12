"""A sheet to draw one form on: plain lines as SVG, and named places that pins may point to.

Lengths are the units of the drawing: a sheet is 320 wide and 240 high. A closed shape is filled with
the ground, so that what is drawn later stands before what was drawn earlier.
"""

from collections.abc import Callable, Iterable, Sequence

import msgspec

WIDTH, HEIGHT = 320, 240

Point = tuple[float, float]

# attributes for renderers without style sheets, and for print; the style sheet goes before them
_LOOKS = {
    "body": 'class="pf-body" fill="#FFF"',
    "line": 'class="pf-line"',
    "thin": 'class="pf-thin" stroke-width="1"',
    "tone": 'class="pf-tone" fill="currentColor" fill-opacity=".13" stroke="none"',
    "core": 'class="pf-core" stroke="#FFF"',
}


class Drawing(msgspec.Struct, frozen=True):
    """A finished drawing: SVG elements, places that a pin can point to, captions (x, y, text)."""

    name: str
    shapes: tuple[str, ...]
    places: dict[str, Point]
    notes: tuple[tuple[float, float, str], ...]


def number(value: float) -> str:
    """A coordinate, short."""
    return f"{value:.1f}".removesuffix(".0")


def _points(points: Iterable[Point]) -> str:
    return " ".join(f"{number(x)},{number(y)}" for x, y in points)


class Sheet:
    """Collects the lines of one drawing."""

    def __init__(self) -> None:
        self.shapes: list[str] = []
        self.places: dict[str, Point] = {}
        self.notes: list[tuple[float, float, str]] = []

    def place(self, name: str, x: float, y: float) -> None:
        """A spot that a pin may point to."""
        self.places[name] = (x, y)

    def body(self, *paths: str) -> None:
        """Closed outlines, filled with the ground."""
        self._paths("body", paths)

    def line(self, *paths: str) -> None:
        """Outlines without filling."""
        self._paths("line", paths)

    def thin(self, *paths: str) -> None:
        """Lines of detail."""
        self._paths("thin", paths)

    def dark(self, *paths: str) -> None:
        """Surfaces of another material, or the inside of something: a light tone."""
        self._paths("tone", paths)

    def _paths(self, kind: str, paths: Iterable[str]) -> None:
        self.shapes += [f'<path {_LOOKS[kind]} d="{d}"/>' for d in paths]

    def rod(self, path: str, width: float) -> None:
        """A handle, spout or wire of even thickness along a path."""
        self.shapes.append(f'<path d="{path}" stroke-width="{number(width + 2)}"/>')
        self.shapes.append(
            f'<path {_LOOKS["core"]} d="{path}" stroke-width="{number(width - 2)}"/>'
        )

    def oval(
        self, x: float, y: float, rx: float, ry: float | None = None, kind: str = "body"
    ) -> None:
        """An ellipse (a circle without ``ry``) of a kind: body, line, thin or tone."""
        ry = rx if ry is None else ry
        self.shapes.append(
            f'<ellipse {_LOOKS[kind]} cx="{number(x)}" cy="{number(y)}" rx="{number(rx)}" ry="{number(ry)}"/>'
        )

    def box(  # noqa: PLR0917  # as in SVG: x, y, width, height, radius
        self, x: float, y: float, w: float, h: float, r: float = 0, kind: str = "body"
    ) -> None:
        """A rectangle with corners of radius ``r``."""
        self.shapes.append(
            f'<rect {_LOOKS[kind]} x="{number(x)}" y="{number(y)}" width="{number(w)}" height="{number(h)}" rx="{number(r)}"/>'
        )

    def turned(self, x: float, *profile: Sequence[float], kind: str = "body") -> None:
        """A body turned on a lathe, seen from the side.

        profile: (half width, y) from the top down; a third number, 1, makes that point a corner.
        """
        right = _smooth([(x + p[0], p[1]) for p in profile], [len(p) > 2 for p in profile])
        left = _smooth(
            [(x - p[0], p[1]) for p in reversed(profile)], [len(p) > 2 for p in reversed(profile)]
        )
        d = f"M{_points([(x + profile[0][0], profile[0][1])])}{right}L{_points([(x - profile[-1][0], profile[-1][1])])}{left}Z"
        self.shapes.append(f'<path {_LOOKS[kind]} d="{d}"/>')

    def girdle(self, x: float, *rings: tuple[float, float]) -> None:
        """Thin lines round a turned body: (half width, y)."""
        for half, y in rings:
            bend = half * 0.09
            self.thin(
                f"M{number(x - half)},{number(y)}Q{number(x)},{number(y + 2 * bend)} {number(x + half)},{number(y)}"
            )

    def note(self, x: float, y: float, text: str) -> None:
        """A small caption, centred on x."""
        self.notes.append((x, y, text))

    def beneath(self, x: float, y: float, r: float, *rings: float, ry: float | None = None) -> None:
        """The piece from below: its outline, and rings as shares of it. Names underside and foot ring."""
        ry = r if ry is None else ry
        self.oval(x, y, r, ry)
        for share in rings:
            self.oval(x, y, r * share, ry * share, "thin")
        inner = rings[-1] if rings else 1
        self.oval(x, y, r * inner, ry * inner, "tone")
        self.note(x, y + ry + 12, "from below")
        self.place("underside", x, y)
        self.place("underside edge", x - r * 0.6, y + ry * 0.6)
        if rings:
            self.place("foot ring", x + r * (1 + inner) / 2 * 0.7, y - ry * (1 + inner) / 2 * 0.7)
            self.place("inside foot", x + r * inner * 0.62, y + ry * inner * 0.62)

    def lid_turned(
        self, x: float, y: float, rx: float, ry: float | None = None, text: str = "lid, inside"
    ) -> None:
        """The lid turned over: its rim, and the flange that goes into the body."""
        ry = rx * 0.42 if ry is None else ry
        self.oval(x, y, rx, ry)
        self.oval(x, y, rx * 0.8, ry * 0.74, "tone")
        self.oval(x, y, rx * 0.8, ry * 0.74, "thin")
        self.note(x, y + ry + 12, text)
        self.place("lid inside", x, y)
        self.place("lid flange", x - rx * 0.79, y + ry * 0.12)
        self.place("lid rim", x + rx * 0.9, y)

    def drawing(self, name: str) -> Drawing:
        """What was drawn."""
        return Drawing(name, tuple(self.shapes), dict(self.places), tuple(self.notes))


def _smooth(points: Sequence[Point], corners: Sequence[bool]) -> str:
    """Cubic Béziers through the points (Catmull and Rom), broken at the corners."""
    out = []
    last = len(points) - 1
    for i in range(last):
        (x1, y1), (x2, y2) = points[i], points[i + 1]
        x0, y0 = points[i - 1] if i and not corners[i] else (x1, y1)
        x3, y3 = points[i + 2] if i + 2 <= last and not corners[i + 1] else (x2, y2)
        out.append(
            "C"
            + _points(
                [
                    (x1 + (x2 - x0) / 6, y1 + (y2 - y0) / 6),
                    (x2 - (x3 - x1) / 6, y2 - (y3 - y1) / 6),
                    (x2, y2),
                ]
            )
        )
    return "".join(out)


Draw = Callable[[Sheet], None]


def drawn(draw: Draw) -> Drawing:
    """Run a drawing's function on a fresh sheet; the function's name is the drawing's."""
    sheet = Sheet()
    draw(sheet)
    return sheet.drawing(draw.__name__.strip("_").replace("_", " "))
