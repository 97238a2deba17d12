"""Drawings of pots, jugs and bowls: vessels turned or raised, seen from the side."""

from planish.marks.figures_of_forms.sheet import Sheet


def teapot(s: Sheet) -> None:
    """A round teapot with spout, handle, domed lid and finial."""
    s.rod("M82,88C44,70 30,96 38,122C44,146 66,152 78,150", 8)
    s.body(
        "M168,150C192,146 200,112 206,88C210,76 220,72 228,70L232,80C222,86 220,98 216,114C208,146 196,172 164,172Z"
    )
    s.turned(
        125, (34, 82, 1), (56, 102), (62, 130), (50, 160), (30, 178, 1), (32, 184), (38, 190, 1)
    )
    s.turned(125, (4, 52), (7, 56), (3, 63, 1), (16, 67), (32, 76), (37, 82, 1))
    s.girdle(125, (36, 82), (48, 94), (32, 184))
    s.place("side by handle", 80, 98)
    s.place("finial", 125, 56)
    s.place("handle", 40, 130)
    s.place("handle socket", 81, 88)
    s.beneath(270, 190, 28, 0.72, 0.6)
    s.lid_turned(276, 40, 27)


def kettle(s: Sheet) -> None:
    """A kettle with swing handle on its stand, the lamp beneath."""
    s.line("M76,82C70,24 164,24 158,82")
    s.line("M82,82C78,34 156,34 152,82")
    s.body("M162,112C182,106 184,84 192,70L202,72C198,92 194,124 164,128Z")
    s.turned(117, (30, 72, 1), (48, 88), (50, 108), (36, 128, 1), (38, 132, 1))
    s.turned(117, (5, 48), (6, 54), (3, 58, 1), (18, 63), (32, 72, 1))
    s.line("M78,134L64,208", "M156,134L170,208", "M76,134L158,134", "M70,178L164,178")
    s.oval(62, 211, 6, 4)
    s.oval(172, 211, 6, 4)
    s.turned(117, (8, 158, 1), (20, 164), (20, 176), (12, 184, 1))
    s.line("M117,158C112,150 120,148 117,140")
    s.place("lid", 106, 64)
    s.place("stand", 64, 208)
    s.place("lamp", 126, 176)
    s.place("body", 117, 110)
    s.beneath(268, 184, 30, 0.7)
    s.lid_turned(270, 48, 28)


def coffee_pot(s: Sheet) -> None:
    """A tall pear-shaped coffee pot."""
    s.rod("M88,72C48,60 40,96 46,122C52,146 70,152 82,152", 8)
    s.body(
        "M150,150C176,146 174,104 180,80C183,66 190,60 200,56L204,66C196,74 198,92 194,116C190,150 176,170 148,170Z"
    )
    s.turned(
        118,
        (25, 60, 1),
        (30, 90),
        (40, 126),
        (42, 156),
        (28, 186),
        (18, 196, 1),
        (22, 202),
        (34, 210, 1),
        (34, 214, 1),
    )
    s.turned(118, (3, 26), (6, 31), (2, 38, 1), (12, 42), (22, 52), (28, 60, 1))
    s.girdle(118, (27, 60), (18, 196), (34, 209))
    s.place("side by handle", 94, 78)
    s.place("handle socket", 84, 150)
    s.place("finial", 118, 30)
    s.beneath(268, 186, 30, 0.74, 0.62)
    s.lid_turned(270, 48, 28)


def argyle(s: Sheet) -> None:
    """An argyle: a small pot with a spout for gravy and a hot-water jacket."""
    s.rod("M84,92C46,82 42,112 48,130C54,148 72,150 82,150", 7)
    s.body(
        "M152,158C178,158 176,118 186,98C190,92 196,90 202,88L205,95C196,102 196,116 192,132C186,158 172,170 152,168Z"
    )
    s.turned(118, (36, 80, 1), (36, 176, 1), (40, 184, 1))
    s.turned(118, (4, 48), (6, 53), (2, 59, 1), (16, 63), (34, 74), (38, 80, 1))
    s.line("M70,88C54,84 50,78 48,74")
    s.girdle(118, (36, 86), (36, 172))
    s.note(118, 130, "gravy")
    s.beneath(268, 184, 30, 0.88)
    s.lid_turned(270, 48, 28)


def cream_jug(s: Sheet) -> None:
    """A helmet or pear-shaped jug with a lip."""
    s.rod("M76,92C36,80 34,118 44,138C52,152 68,156 78,154", 7)
    s.body(
        "M70,86C90,98 124,98 146,88C160,80 172,72 182,70C176,84 164,94 160,110C156,132 160,146 146,166C138,178 128,182 118,182C96,182 78,168 76,144C74,120 80,104 70,86Z"
    )
    s.line("M70,86C88,78 120,76 140,78C156,78 168,72 182,70")
    s.turned(116, (16, 182, 1), (13, 192), (30, 202, 1), (30, 206, 1))
    s.place("rim by lip", 157, 84)
    s.place("inside handle", 49, 130)
    s.place("handle", 40, 112)
    s.beneath(264, 176, 32, 0.8, 0.66)


def sugar_bowl(s: Sheet) -> None:
    """A sugar bowl with two handles."""
    s.rod("M66,104C32,88 30,128 46,142C54,148 64,148 74,146", 7)
    s.rod("M174,104C208,88 210,128 194,142C186,148 176,148 166,146", 7)
    s.turned(
        120, (58, 92, 1), (56, 116), (50, 142), (28, 168, 1), (22, 178), (36, 188, 1), (36, 193, 1)
    )
    s.oval(120, 92, 58, 11)
    s.oval(120, 93, 51, 8, "tone")
    s.place("rim", 120, 103)
    s.beneath(268, 170, 34, 0.72, 0.6)


def bowl(s: Sheet) -> None:
    """An open bowl on a foot ring."""
    s.turned(116, (86, 92, 1), (78, 130), (54, 162), (30, 174, 1), (26, 182), (34, 192, 1))
    s.oval(116, 92, 86, 16)
    s.oval(116, 93, 78, 12, "tone")
    s.thin("M44,140C84,156 148,156 188,140")
    s.place("side by rim", 156, 114)
    s.place("rim", 116, 108)
    s.place("side", 90, 140)
    s.beneath(268, 176, 36, 0.5, 0.4)


def porringer(s: Sheet) -> None:
    """A shallow round bowl with one flat pierced handle, from above."""
    s.body(
        "M148,96C160,88 166,74 184,78C190,68 206,70 208,84C222,84 228,96 220,106C230,116 222,130 208,128C206,142 190,144 184,134C166,138 160,124 148,116Z"
    )
    for x, y in ((178, 94), (178, 118), (196, 88), (196, 124), (206, 106), (190, 106)):
        s.oval(x, y, 5, 5, "tone")
        s.oval(x, y, 5, 5, "thin")
    s.oval(88, 106, 66)
    s.oval(88, 106, 60, 60, "thin")
    s.oval(88, 106, 40, 40, "thin")
    s.oval(88, 106, 7, 7, "thin")
    s.note(120, 190, "from above")
    s.place("handle", 166, 106)
    s.place("side by handle", 140, 94)
    s.beneath(272, 176, 34, 0.66)


def quaich(s: Sheet) -> None:
    """A shallow Scottish drinking bowl with two flat lugs."""
    s.body(
        "M52,108C30,98 14,102 12,112C12,122 34,126 56,124Z",
        "M180,108C202,98 218,102 220,112C220,122 198,126 176,124Z",
    )
    s.turned(116, (66, 104, 1), (58, 136), (34, 158, 1), (30, 166), (36, 172, 1))
    s.oval(116, 104, 66, 13)
    s.oval(116, 105, 59, 10, "tone")
    s.thin("M24,112H44", "M188,112H208")
    s.place("handle", 30, 112)
    s.beneath(272, 176, 34, 0.6, 0.5)


def sauce_boat(s: Sheet) -> None:
    """A boat with a lip, a flying handle and three feet."""
    s.rod("M78,112C66,90 54,68 36,78C22,88 34,108 46,104", 7)
    s.body(
        "M60,108C90,120 130,116 158,104C182,94 200,88 214,86C208,106 190,122 176,140C160,162 130,170 108,168C76,166 62,140 60,108Z"
    )
    s.line("M60,108C84,98 124,100 150,94C178,88 198,84 214,86")
    for x in (84, 118, 152):
        s.line(f"M{x},164C{x + 2},176 {x - 3},182 {x - 6},188C{x - 2},194 {x + 8},194 {x + 9},187")
    s.place("rim below lip", 190, 100)
    s.place("foot", 152, 190)
    s.beneath(268, 178, 40, 0.55, ry=24)
    s.places["foot ring"] = (118, 190)


def soup_tureen(s: Sheet) -> None:
    """A great covered bowl with two handles."""
    s.rod("M44,110C10,96 10,132 32,142C42,146 52,144 58,142", 7)
    s.rod("M196,110C230,96 230,132 208,142C198,146 188,144 182,142", 7)
    s.turned(
        120, (80, 98, 1), (76, 124), (62, 150), (32, 170, 1), (24, 178), (48, 190, 1), (48, 196, 1)
    )
    s.turned(120, (6, 36), (10, 43), (4, 51, 1), (34, 60), (66, 78), (80, 94, 1), (84, 98, 1))
    s.girdle(120, (80, 96), (76, 112), (46, 189))
    s.place("cover rim", 66, 98)
    s.place("handle", 26, 136)
    s.beneath(272, 186, 34, 0.74, 0.62, ry=26)
    s.lid_turned(276, 46, 36, text="cover, inside")


def sauce_tureen(s: Sheet) -> None:
    """A small boat-shaped tureen on a stand."""
    s.rod("M56,106C34,72 30,66 52,88", 6)
    s.rod("M184,106C206,72 210,66 188,88", 6)
    s.turned(120, (68, 104, 1), (56, 132), (28, 154, 1), (16, 162), (18, 176), (32, 184, 1))
    s.turned(120, (4, 52), (7, 58), (3, 66, 1), (26, 74), (52, 90), (70, 104, 1))
    s.body("M22,182C60,196 180,196 218,182L206,198C160,206 80,206 34,198Z")
    s.girdle(120, (64, 102))
    s.place("cover rim", 66, 103)
    s.place("stand", 198, 192)
    s.beneath(274, 180, 32, 0.7, ry=24)


def cake_basket(s: Sheet) -> None:
    """A pierced basket with a swing handle."""
    s.rod("M54,106C54,16 186,16 186,106", 6)
    s.turned(120, (98, 104, 1), (80, 136), (50, 160, 1), (44, 168), (54, 184, 1))
    s.oval(120, 104, 98, 18)
    s.oval(120, 105, 88, 13, "tone")
    for x in (62, 86, 120, 154, 178):
        s.thin(
            f"M{120 + (x - 120) * 0.98},128C{x - 8},136 {x - 2},146 {120 + (x - 120) * 0.8},150C{x + 12},146 {x + 8},134 {120 + (x - 120) * 0.98},128"
        )
    s.oval(54, 106, 6)
    s.oval(186, 106, 6)
    s.place("handle hinge", 186, 106)
    s.place("rim", 96, 121)
    s.beneath(276, 190, 34, 0.6, ry=26)


def wine_cooler(s: Sheet) -> None:
    """A bucket for a bottle, with two handles and a liner."""
    s.rod("M66,92C34,92 36,132 72,128", 7)
    s.rod("M168,92C200,92 198,132 162,128", 7)
    s.turned(
        117, (54, 72, 1), (50, 110), (42, 158), (26, 178, 1), (22, 186), (38, 196, 1), (38, 202, 1)
    )
    s.oval(117, 72, 54, 11)
    s.oval(117, 72, 40, 7, "tone")
    s.oval(117, 72, 40, 7, "thin")
    s.turned(117, (6, 18, 1), (6, 24, 1), (5, 26, 1), (5, 44), (15, 58), (16, 74, 1))
    s.girdle(117, (41, 158))
    s.place("side by base", 138, 156)
    s.place("liner and rim", 78, 73)
    s.beneath(270, 186, 34, 0.74)


def vase(s: Sheet) -> None:
    """A flower vase with a flared mouth."""
    s.turned(
        110,
        (34, 40, 1),
        (20, 62),
        (16, 96),
        (34, 134),
        (32, 162),
        (14, 186, 1),
        (12, 194),
        (34, 208, 1),
        (34, 213, 1),
    )
    s.oval(110, 40, 34, 7)
    s.oval(110, 40, 29, 5, "tone")
    s.girdle(110, (18, 66), (14, 186))
    s.place("foot edge", 138, 210)
    s.place("side by base", 92, 176)
    s.place("rim", 110, 47)
    s.beneath(256, 180, 34, 0.8)


def trophy(s: Sheet) -> None:
    """A two-handled prize cup with a cover."""
    s.rod("M72,84C30,60 24,112 78,128", 6)
    s.rod("M148,84C190,60 196,112 142,128", 6)
    s.turned(
        110,
        (42, 72, 1),
        (40, 108),
        (26, 140),
        (8, 154, 1),
        (6, 168),
        (10, 180),
        (34, 194, 1),
        (34, 206, 1),
    )
    s.turned(110, (4, 26), (8, 34), (3, 42, 1), (18, 50), (38, 62), (44, 72, 1))
    s.girdle(110, (42, 71), (40, 84), (34, 195))
    s.place("side by rim", 128, 92)
    s.place("cover rim", 72, 71)
    s.place("foot edge", 138, 202)
    s.beneath(262, 184, 32, 0.84)


def epergne(s: Sheet) -> None:
    """A centrepiece: a column with a great basket and small ones on branches."""
    s.line(
        "M120,120C90,128 70,118 60,104",
        "M120,120C150,128 170,118 180,104",
        "M120,138C86,156 60,150 46,140",
        "M120,138C154,156 180,150 194,140",
    )
    s.turned(120, (12, 86, 1), (8, 110), (14, 140), (8, 164), (34, 184), (50, 194, 1), (50, 202, 1))
    for x, y in ((60, 94), (180, 94), (40, 130), (200, 130)):
        s.turned(x, (24, y, 1), (16, y + 10), (6, y + 14, 1))
        s.oval(x, y, 24, 5)
    s.turned(120, (56, 60, 1), (40, 78), (12, 88, 1))
    s.oval(120, 60, 56, 11)
    s.oval(120, 61, 49, 8, "tone")
    s.place("base", 146, 198)
    s.place("basket", 190, 102)
    s.place("column", 122, 150)


def tea_set(s: Sheet) -> None:
    """Teapot, cream jug and sugar bowl side by side."""
    s.rod("M52,104C24,92 20,132 50,136", 5)
    s.body("M108,140C128,136 128,110 136,96L144,99C140,116 136,148 108,152Z")
    s.turned(80, (22, 96, 1), (36, 114), (36, 136), (20, 156, 1), (26, 162, 1))
    s.turned(80, (3, 76), (4, 80), (2, 84, 1), (12, 88), (24, 96, 1))
    s.rod("M178,116C158,112 158,140 180,142", 4)
    s.body(
        "M174,110C190,116 206,112 218,104C214,124 218,140 206,152C196,160 184,158 178,148C174,138 178,122 174,110Z"
    )
    s.line("M182,157L178,164H208L204,156", "M174,110C186,104 204,106 218,104")
    s.rod("M246,120C228,116 230,140 250,144", 4)
    s.rod("M300,120C316,116 314,140 296,144", 4)
    s.turned(273, (30, 112, 1), (28, 132), (16, 152, 1), (20, 162, 1))
    s.oval(273, 112, 30, 6)
    s.oval(273, 112, 26, 4, "tone")
    for name, x in (("teapot", 80), ("jug", 196), ("bowl", 273)):
        s.note(x, 186, name)
    s.place("each piece", 80, 140)
    s.place("each piece, jug", 194, 140)
