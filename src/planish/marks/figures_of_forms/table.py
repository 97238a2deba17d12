"""Drawings of what stands on the table beside pots and bowls: trays, dishes, condiments."""

import math

from planish.marks.figures_of_forms.sheet import Sheet


def _border(x: float, y: float, r: float, lobes: int, depth: float) -> str:
    """A wavy round border."""
    points = []
    for i in range(lobes * 8 + 1):
        a = 2 * math.pi * i / (lobes * 8)
        at = r - depth * abs(math.sin(a * lobes / 2)) ** 6
        points.append(f"{x + at * math.sin(a):.1f},{y - at * math.cos(a):.1f}")
    return "M" + "L".join(points) + "Z"


def tray(s: Sheet) -> None:
    """A salver, front and back."""
    for x, name in ((82, "front"), (238, "from below")):
        s.body(_border(x, 106, 74, 6, 9))
        s.oval(x, 106, 58, 58, "thin")
        s.note(x, 202, name)
    s.oval(82, 106, 54, 54, "thin")
    s.thin("M70,96H94V108C94,118 82,122 82,122C82,122 70,118 70,108Z")
    for a in (90, 210, 330):
        at = 238 + 58 * math.cos(math.radians(a)), 106 + 58 * math.sin(math.radians(a))
        s.oval(*at, 9, 9)
        s.oval(*at, 9, 9, "tone")
    s.place("underside near rim", 290, 106)
    s.place("front border", 82, 40)
    s.place("underside at feet", 238, 160)


def meat_dish(s: Sheet) -> None:
    """An oval dish, front and back."""
    for x, name in ((82, "front"), (238, "from below")):
        s.oval(x, 110, 74, 54)
        s.oval(x, 110, 68, 48, "thin")
        s.oval(x, 110, 52, 34, "thin")
        s.note(x, 186, name)
    s.oval(238, 110, 52, 34, "tone")
    s.place("underside rim", 294, 110)
    s.place("underside", 238, 110)


def plate(s: Sheet) -> None:
    """A round plate, front and back."""
    for x, name in ((82, "front"), (238, "from below")):
        s.body(_border(x, 106, 72, 5, 6))
        s.oval(x, 106, 64, 64, "thin")
        s.oval(x, 106, 44, 44, "thin")
        s.note(x, 198, name)
    s.oval(238, 106, 44, 44, "tone")
    s.place("underside rim", 292, 106)
    s.place("underside", 238, 114)


def entree_dish(s: Sheet) -> None:
    """A cushion-shaped dish with a cover; the handle unscrews."""
    s.line("M96,70C96,38 136,38 136,70")
    s.oval(116, 70, 24, 5)
    s.body("M38,118C44,92 64,74 92,72H140C168,74 188,92 194,118Z")
    s.body("M30,118H202V126H30Z")
    s.body("M34,126H198C198,152 184,168 160,172H72C48,168 34,152 34,126Z")
    s.thin("M46,112H186", "M40,138H192")
    s.place("side by rim", 158, 134)
    s.place("cover rim", 58, 121)
    s.place("handle plate", 128, 71)
    s.beneath(272, 178, 38, 0.8, ry=28)
    s.lid_turned(272, 50, 38, 24, "cover, inside")


def toast_rack(s: Sheet) -> None:
    """A rack with bars and a ring handle, on ball feet."""
    s.line("M126,60V150")
    s.oval(126, 46, 14, 14, "line")
    for i, x in enumerate((44, 77, 110, 142, 175, 208)):
        del i
        s.line(f"M{x - 13},160V104C{x - 13},84 {x + 13},84 {x + 13},104V160")
    s.body("M24,160H228V170H24Z")
    for x in (36, 216):
        s.oval(x, 178, 8)
    s.note(126, 214, "from the side")
    s.place("base bar", 126, 165)
    s.place("ball foot", 216, 179)
    s.body("M252,96H308V176H252Z")
    s.thin("M262,106H298V166H262Z", "M252,136H308")
    for x, y in ((256, 100), (304, 100), (256, 172), (304, 172)):
        s.oval(x, y, 6)
    s.note(280, 194, "from below")
    s.place("underside", 276, 136)


def mustard_pot(s: Sheet) -> None:
    """A drum mustard pot with a hinged lid, thumbpiece and spoon slot."""
    s.rod("M150,104C190,96 192,120 184,140C178,156 164,158 150,154", 7)
    s.turned(106, (46, 90, 1), (46, 166, 1), (50, 174, 1))
    s.turned(106, (4, 52), (7, 58), (3, 65, 1), (26, 70), (46, 84, 1), (50, 90, 1))
    s.body("M150,88C152,72 164,66 176,68C170,76 174,84 164,92Z")
    s.body("M70,84C60,70 44,60 30,62C20,64 22,74 32,76C46,78 58,82 66,88Z")
    for x in (78, 106, 134):
        s.thin(f"M{x},108L{x + 10},130L{x},152L{x - 10},130Z")
    s.place("handle by thumbpiece", 162, 101)
    s.place("lid", 88, 78)
    s.beneath(262, 172, 38, 0.9)


def salt_cellar(s: Sheet) -> None:
    """A round salt on three feet, with its spoon."""
    s.turned(112, (52, 98, 1), (56, 116), (48, 142), (22, 158), (0, 160, 1))
    s.oval(112, 98, 52, 13)
    s.oval(112, 99, 45, 10, "tone")
    for x, d in ((74, -1), (112, 0), (150, 1)):
        s.body(
            f"M{x - 9},{146 + 6 * (d == 0)}C{x - 6},160 {x - 4 + 8 * d},168 {x - 8 + 10 * d},182H{x + 8 + 10 * d}C{x + 6 + 8 * d},168 {x + 8},158 {x + 9},{146 + 6 * (d == 0)}Z"
        )
    s.place("rim", 132, 110)
    s.beneath(260, 160, 38, 0.6)
    s.place("inside foot", 260, 145)
    for a in (90, 210, 330):
        s.oval(260 + 26 * math.cos(math.radians(a)), 160 + 26 * math.sin(math.radians(a)), 6)


def caster(s: Sheet) -> None:
    """A pepper pot or sugar caster with a pierced, lift-off cover."""
    s.turned(
        108,
        (24, 106, 1),
        (30, 130),
        (34, 152),
        (22, 178),
        (12, 188, 1),
        (14, 194),
        (30, 204, 1),
        (30, 210, 1),
    )
    s.turned(
        108,
        (4, 24),
        (7, 32),
        (3, 40, 1),
        (14, 48),
        (24, 70),
        (26, 98, 1),
        (28, 100, 1),
        (28, 110, 1),
    )
    for x, y in ((108, 56), (98, 66), (118, 66), (108, 74), (94, 84), (122, 84), (108, 92)):
        s.oval(x, y, 2.6, 3.6, "thin")
    s.girdle(108, (28, 100), (33, 146), (12, 188))
    s.place("side near foot", 120, 178)
    s.place("cover rim", 86, 105)
    s.place("body", 118, 142)
    s.beneath(258, 180, 32, 0.86)
    s.lid_turned(258, 66, 32, 22, "cover, inside")


def cruet_frame(s: Sheet) -> None:
    """A stand with a ring handle and bottles."""
    s.line("M120,48V178")
    s.oval(120, 36, 15, 12, "line")
    for x, cap in ((58, 0), (182, 0), (92, 1), (150, 1)):
        top = 74 if cap else 62
        s.turned(x, (9, top + 24, 1), (10, top + 36), (20, top + 52), (20, 174, 1))
        s.thin(f"M{x - 8},{top + 56}V168", f"M{x + 8},{top + 56}V168")
        s.turned(x, (3, top - 4), (5, top), (2, top + 5, 1), (9, top + 12), (11, top + 24, 1))
    s.body("M28,140H212V146H28Z", "M24,174C24,168 216,168 216,174V188H24Z")
    for x in (40, 200):
        s.body(f"M{x - 8},188L{x - 12},204H{x + 12}L{x + 8},188Z")
    s.place("cover", 182, 76)
    s.place("handle", 107, 40)
    s.beneath(272, 172, 38, 0.86, ry=24)


def egg_frame(s: Sheet) -> None:
    """A frame with egg cups round a handle."""
    s.line("M120,44V170")
    s.oval(120, 32, 14, 12, "line")
    for x in (54, 120, 186):
        s.body(f"M{x - 14},88C{x - 12},62 {x + 12},62 {x + 14},88Z")
        s.turned(x, (18, 86, 1), (18, 100), (8, 118), (4, 128), (14, 142, 1))
        s.oval(x, 86, 18, 4, "thin")
    s.body("M26,142H214V148H26Z", "M34,168H206V176H34Z")
    s.line("M40,148V168", "M200,148V168")
    for x in (46, 194):
        s.oval(x, 183, 7)
    s.place("frame", 86, 145)
    s.place("cup", 186, 104)
    s.beneath(272, 172, 38, 0.86, ry=26)


def napkin_ring(s: Sheet) -> None:
    """A napkin ring, standing and lying."""
    s.turned(84, (52, 78, 1), (48, 106), (52, 136, 1), (52, 138, 1))
    s.body(
        "M32,138C32,156 136,156 136,138L136,136C134,116 134,96 136,78C136,96 32,96 32,78C34,96 34,116 32,136Z"
    )
    s.oval(84, 78, 52, 14)
    s.oval(84, 78, 52, 14, "tone")
    s.thin("M34,90C44,106 124,106 134,90", "M33,130C44,148 124,148 135,130")
    s.body("M206,120A46,46 0 1 0 298,120A46,46 0 1 0 206,120Z")
    s.oval(252, 120, 38, 38, "tone")
    s.oval(252, 120, 38, 38, "line")
    s.oval(262, 124, 34, 34, "thin")
    s.note(84, 182, "standing")
    s.note(252, 190, "inside")
    s.place("outside edge", 120, 92)
    s.place("inside", 222, 126)
