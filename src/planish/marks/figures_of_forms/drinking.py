"""Drawings of what one drinks from, and of what stands with the wine."""

from planish.marks.figures_of_forms.sheet import Sheet


def cup(s: Sheet) -> None:
    """A goblet: bowl, stem with a knop, foot."""
    s.turned(
        116,
        (44, 44, 1),
        (42, 84),
        (28, 116),
        (7, 130, 1),
        (5, 140),
        (10, 147),
        (5, 154),
        (8, 176),
        (38, 194, 1),
        (38, 200, 1),
    )
    s.oval(116, 44, 44, 9)
    s.oval(116, 45, 39, 7, "tone")
    s.place("side by rim", 142, 66)
    s.place("rim", 116, 53)
    s.place("stem", 116, 164)
    s.place("foot edge", 146, 197)
    s.beneath(258, 172, 38, 0.86)
    s.place("inside foot", 236, 184)


def chalice(s: Sheet) -> None:
    """A church chalice: wide foot, knop, plain bowl."""
    s.turned(
        110,
        (34, 36, 1),
        (34, 66),
        (24, 94),
        (8, 104, 1),
        (6, 114),
        (8, 120, 1),
        (20, 132),
        (8, 144, 1),
        (6, 158),
        (14, 176),
        (48, 196, 1),
        (48, 204, 1),
    )
    s.oval(110, 36, 34, 7)
    s.oval(110, 37, 30, 5, "tone")
    s.line("M110,172V190", "M103,178H117")
    s.place("rim", 132, 42)
    s.place("foot edge", 148, 200)
    s.beneath(256, 176, 40, 0.88)


def kiddush_cup(s: Sheet) -> None:
    """A kiddush cup: a footed beaker with a chased vine."""
    s.turned(
        112,
        (38, 50, 1),
        (32, 96),
        (22, 128),
        (6, 144, 1),
        (5, 158),
        (10, 178),
        (34, 194, 1),
        (34, 201, 1),
    )
    s.oval(112, 50, 38, 8)
    s.oval(112, 51, 33, 6, "tone")
    s.thin("M80,84C92,74 100,96 112,86C124,76 132,96 144,84")
    for x in (90, 112, 134):
        for dx, dy in ((-3, 0), (3, 0), (0, 5)):
            s.oval(x + dx, 100 + dy, 2.6, 2.6, "thin")
    s.place("rim", 134, 57)
    s.place("foot", 138, 198)
    s.beneath(258, 174, 36, 0.86)


def beaker(s: Sheet) -> None:
    """A straight beaker, wider at the lip."""
    s.turned(112, (48, 52, 1), (38, 90), (34, 150), (34, 182, 1), (40, 190, 1), (40, 196, 1))
    s.oval(112, 52, 48, 10)
    s.oval(112, 53, 43, 8, "tone")
    s.girdle(112, (34, 178))
    s.place("side by rim", 138, 80)
    s.place("rim", 112, 62)
    s.beneath(256, 170, 38, 0.88)


def tumbler_cup(s: Sheet) -> None:
    """A small round-bottomed cup that rights itself."""
    s.turned(112, (58, 88, 1), (56, 130), (42, 166), (16, 180), (0, 182, 1))
    s.oval(112, 88, 58, 12)
    s.oval(112, 89, 52, 9, "tone")
    s.girdle(112, (57, 104))
    s.place("side", 90, 140)
    s.beneath(262, 160, 40, 0.4)


def tankard(s: Sheet) -> None:
    """A lidded drinking vessel with thumbpiece and scroll handle."""
    s.rod("M150,80C206,70 206,120 194,148C186,170 172,176 152,172", 8)
    s.line("M170,176C174,188 182,188 184,182")
    s.turned(106, (46, 70, 1), (50, 120), (54, 188, 1), (60, 194, 1), (60, 202, 1))
    s.girdle(106, (53, 160), (54, 186))
    s.turned(106, (28, 46, 1), (32, 52), (34, 58, 1), (46, 64), (54, 68, 1), (54, 73, 1))
    s.body("M152,66C154,52 162,44 174,44C170,52 176,58 168,70Z")
    s.place("side by handle", 144, 94)
    s.place("handle", 198, 120)
    s.place("handle end", 182, 182)
    s.beneath(272, 182, 34, 0.86)
    s.lid_turned(276, 46, 34, 24)


def mug(s: Sheet) -> None:
    """A small mug with one handle and no lid."""
    s.rod("M144,96C190,78 188,128 180,146C172,164 160,164 146,160", 7)
    s.turned(
        102, (44, 74, 1), (42, 110), (50, 150), (44, 178), (36, 186, 1), (42, 192, 1), (42, 198, 1)
    )
    s.oval(102, 74, 44, 9)
    s.oval(102, 75, 39, 7, "tone")
    s.place("side by handle", 136, 100)
    s.place("handle base", 158, 161)
    s.place("handle", 184, 120)
    s.beneath(262, 170, 36, 0.8, 0.7)


def wine_coaster(s: Sheet) -> None:
    """A round bottle stand with pierced silver sides and a wooden base."""
    s.turned(116, (78, 104, 1), (76, 128), (78, 168, 1), (74, 178, 1))
    s.oval(116, 104, 78, 18)
    s.oval(116, 106, 72, 14, "tone")
    s.oval(116, 108, 14, 4)
    for x in range(56, 186, 20):
        y = 146 + 12 * (1 - ((x - 116) / 78) ** 2)
        s.thin(
            f"M{x},{y - 14:.0f}C{x + 12},{y - 8:.0f} {x - 12},{y + 8:.0f} {x},{y + 14:.0f}C{x - 12},{y + 8:.0f} {x + 12},{y - 8:.0f} {x},{y - 14:.0f}"
        )
    s.thin("M38,162C60,184 172,184 194,162")
    s.place("rim", 156, 119)
    s.place("gallery base", 116, 180)
    s.place("side", 70, 150)
    s.beneath(264, 160, 40, 0.92)


def wine_label(s: Sheet) -> None:
    """A label on its chain, front and back."""
    for x, name in ((80, "front"), (240, "back")):
        s.thin(f"M{x - 46},104C{x - 70},30 {x + 70},30 {x + 46},104")
        for at in range(9):
            t = at / 8
            cx = x + (
                -46 * (1 - t) ** 3 - 210 * t * (1 - t) ** 2 + 210 * t * t * (1 - t) + 46 * t**3
            )
            cy = 104 * (1 - t) ** 3 + 90 * t * (1 - t) ** 2 + 90 * t * t * (1 - t) + 104 * t**3
            s.oval(cx, cy, 4, 3)
        s.body(
            f"M{x - 62},104C{x - 40},92 {x - 20},112 {x},98C{x + 20},112 {x + 40},92 {x + 62},104C{x + 70},124 {x + 66},150 {x + 50},156C{x + 20},150 {x + 10},166 {x},166C{x - 10},166 {x - 20},150 {x - 50},156C{x - 66},150 {x - 70},124 {x - 62},104Z"
        )
        s.note(x, 188, name)
    s.note(80, 135, "PORT")
    s.place("front lower edge", 52, 148)
    s.place("back lower edge", 268, 148)
    s.place("chain", 80, 49)


def corkscrew(s: Sheet) -> None:
    """A corkscrew with a silver handle, and a bottle opener."""
    s.body(
        "M44,66C44,52 60,50 72,56C90,62 106,62 124,56C136,50 152,52 152,66C152,80 136,82 124,76C106,70 90,70 72,76C60,82 44,80 44,66Z"
    )
    s.turned(98, (7, 68, 1), (10, 74), (6, 82, 1), (4, 112, 1))
    s.line(
        "M98,112C114,118 82,128 98,134C114,140 84,148 98,154C110,160 86,168 98,174C106,179 94,186 98,196"
    )
    s.body(
        "M240,60C222,60 212,74 214,88C216,100 232,104 236,96H244C248,104 264,100 266,88C268,74 258,60 240,60Z"
    )
    s.oval(240, 80, 13, 10, "tone")
    s.body("M233,98H247L250,186C250,196 230,196 230,186Z")
    s.thin("M231,112H249", "M230,180H250")
    s.place("handle edge", 138, 76)
    s.place("cap", 98, 77)
    s.note(98, 216, "corkscrew")
    s.note(240, 216, "opener")


def flask(s: Sheet) -> None:
    """A hip flask with a bayonet cap, its lower half in a drinking cup."""
    s.body(
        "M62,86C62,66 84,62 94,58H130C140,62 162,66 162,86V190C162,200 154,204 146,204H78C70,204 62,200 62,190Z"
    )
    s.line("M62,142H162")
    s.box(98, 34, 28, 24, 3)
    s.thin("M98,40H126", "M98,46H126", "M98,52H126")
    s.line("M126,40C140,40 142,58 132,60")
    s.place("side by neck", 134, 72)
    s.place("side", 90, 110)
    s.oval(256, 56, 20, 20)
    s.oval(256, 56, 14, 14, "tone")
    s.oval(256, 56, 14, 14, "thin")
    s.note(256, 90, "cap, inside")
    s.place("cap inside", 256, 56)
    s.beneath(256, 160, 42, 0.86, ry=18)
