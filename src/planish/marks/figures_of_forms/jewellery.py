"""Drawings of what is worn."""

import math

from planish.marks.figures_of_forms.sheet import Sheet


def _links(s: Sheet, x1: float, x2: float, y: float, size: float = 9) -> None:
    """Oval links in a level row."""
    at, flat = x1, False
    while at < x2:
        s.oval(at, y, size, size * (0.3 if flat else 0.6), "line")
        at += size * 1.35
        flat = not flat


def ring(s: Sheet) -> None:
    """A ring with a stone, seen through the shank; and its outside."""
    s.body("M84,66L76,46L96,34H124L144,46L136,66Z")
    s.thin("M76,46H144L110,66Z", "M96,34L92,46L110,66L128,46L124,34")
    s.oval(110, 136, 70)
    s.oval(110, 136, 57)
    s.oval(110, 136, 57, 57, "tone")
    s.body("M84,66H136L126,84H94Z")
    s.thin("M102,68V82", "M118,68V82")
    s.body(
        "M216,120C216,98 224,84 238,78L246,62H270L278,78C292,84 300,98 300,120C300,172 216,172 216,120Z"
    )
    s.dark("M228,124C228,112 288,112 288,124C288,164 228,164 228,124Z")
    s.line("M228,124C228,112 288,112 288,124C288,164 228,164 228,124Z")
    s.note(110, 226, "through the ring")
    s.note(258, 182, "from the side")
    s.place("inside shank", 110, 192)
    s.place("inside shoulder", 59, 111)
    s.place("under bezel", 110, 86)
    s.place("outside shank", 288, 146)


def wedding_band(s: Sheet) -> None:
    """A plain band."""
    s.body("M66,92C66,44 254,44 254,92V140C254,196 66,196 66,140Z")
    s.oval(160, 92, 94, 40)
    s.oval(160, 96, 80, 31, "tone")
    s.oval(160, 96, 80, 31, "line")
    s.place("inside", 160, 73)
    s.place("edge", 160, 129)


def bangle(s: Sheet) -> None:
    """A hinged bangle, opened: tongue, catch, safety chain."""
    s.rod("M150,56C90,56 50,94 50,138C50,178 80,206 112,212", 16)
    s.rod("M150,56C214,60 254,94 258,140C260,166 250,190 232,206", 16)
    s.oval(150, 56, 10)
    s.oval(150, 56, 3, 3, "thin")
    s.body("M224,212L206,220L200,212L216,200Z")
    s.body("M110,204L126,208L122,224L108,220Z")
    s.thin("M118,214C140,236 180,236 214,214")
    for x, y in ((134, 225), (152, 231), (172, 231), (192, 226)):
        s.oval(x, y, 4, 3, "line")
    s.note(150, 36, "hinge")
    s.place("tongue", 210, 212)
    s.place("inside by hinge", 132, 62)
    s.place("safety chain ring", 152, 230)
    s.place("inner wall by catch", 72, 186)


def link_bracelet(s: Sheet) -> None:
    """A chain bracelet laid flat, with clasp and tag."""
    _links(s, 66, 250, 96, 13)
    s.body("M40,86H60V106H40Z", "M20,92H40V100H20Z")
    s.oval(258, 96, 7, 7, "line")
    s.line("M266,86C290,84 290,108 266,106")
    s.line("M250,104V120")
    s.body("M238,120H262V146L250,156L238,146Z")
    s.oval(160, 188, 40, 18)
    s.oval(160, 188, 28, 8)
    s.note(160, 222, "a link, from behind")
    s.note(40, 76, "clasp")
    s.note(286, 140, "tag")
    s.place("clasp tongue", 32, 96)
    s.place("jump ring", 258, 90)
    s.place("back of link", 126, 188)
    s.place("tag", 250, 136)


def cuff(s: Sheet) -> None:
    """An open cuff."""
    s.body(
        "M96,178C48,166 38,126 60,92C92,50 228,50 260,92C282,126 272,166 224,178L220,150C246,142 250,118 238,104C212,76 108,76 82,104C70,118 74,142 100,150Z"
    )
    s.dark(
        "M100,150C74,142 70,118 82,104C108,76 212,76 238,104C250,118 246,142 220,150L218,140C230,130 228,118 220,110C192,92 128,92 100,110C92,118 90,130 102,140Z"
    )
    s.line("M100,150C74,142 70,118 82,104C108,76 212,76 238,104C250,118 246,142 220,150")
    s.oval(70, 128, 7, 10, "thin")
    s.place("inside end", 226, 134)
    s.place("inside centre back", 160, 90)
    s.place("outer edge by opening", 98, 172)


def _chain_loop(s: Sheet, bottom: float = 150) -> list[tuple[float, float]]:
    """A chain hanging in a loop, its clasp at the top."""
    points = []
    for i in range(41):
        t = i / 40
        x = 160 + 96 * math.sin(2 * math.pi * t)
        y = 40 + (bottom - 40) * (1 - math.cos(2 * math.pi * t)) / 2
        points.append((x, y))
        if 1 < i < 39:
            s.oval(x, y, 5, 3.4, "line")
    return points


def _clasp(s: Sheet) -> None:
    s.body("M148,33H172V47H148Z")
    s.thin("M160,33V47")
    s.oval(140, 40, 6, 6, "line")
    s.oval(180, 40, 6, 6, "line")
    s.note(160, 24, "clasp")


def necklace(s: Sheet) -> None:
    """A chain with a drop."""
    _chain_loop(s)
    _clasp(s)
    s.line("M184,46L190,58")
    s.body("M186,56H198V72H186Z")
    s.body("M160,156C180,176 188,196 160,214C132,196 140,176 160,156Z")
    s.note(212, 76, "tag")
    s.place("clasp", 154, 40)
    s.place("tag", 192, 64)
    s.place("end ring", 138, 40)
    s.place("back of drop", 160, 188)


def locket_chain(s: Sheet) -> None:
    """A plain chain."""
    _chain_loop(s, 190)
    _clasp(s)
    s.place("clasp", 160, 40)
    s.place("end ring", 138, 40)


def plaque_necklace(s: Sheet) -> None:
    """A necklace of plaques; the central one from behind."""
    s.line("M160,40C60,40 40,90 60,120", "M160,40C260,40 280,90 260,120")
    _clasp(s)
    for x, y, r in ((68, 132, 18), (252, 132, 18), (102, 160, 22), (218, 160, 22)):
        s.oval(x, y, r, r * 1.1)
        s.oval(x, y, r * 0.6, r * 0.7, "thin")
    s.oval(160, 172, 34, 38)
    s.oval(160, 172, 28, 32, "tone")
    s.note(160, 226, "central plaque, from behind")
    s.place("clasp tongue", 170, 40)
    s.place("back of plaque", 160, 172)
    s.place("edge of plaque", 193, 180)


def brooch(s: Sheet) -> None:
    """A brooch from behind: pin, hinge and catch."""
    s.body(
        "M160,46C220,46 268,80 268,124C268,168 220,202 160,202C100,202 52,168 52,124C52,80 100,46 160,46Z"
    )
    s.thin(
        "M160,58C212,58 256,86 256,124C256,162 212,190 160,190C108,190 64,162 64,124C64,86 108,58 160,58Z"
    )
    s.rod("M82,124L240,116", 5)
    s.body("M74,114H90V134H74Z")
    s.oval(82, 124, 4)
    s.line("M236,128C228,108 244,102 248,112")
    s.note(160, 222, "from behind")
    s.place("back of plate", 214, 148)
    s.place("edge", 104, 192)
    s.place("pin stem", 120, 122)
    s.place("hinge", 82, 124)


def stick_pin(s: Sheet) -> None:
    """A long pin, its head from the side and from behind."""
    s.rod("M120,84V222", 4)
    s.body("M112,84H128V98H112Z")
    s.body("M120,22L146,44V68L120,88L94,68V44Z")
    s.thin("M94,44H146", "M94,68H146", "M120,22V44")
    s.oval(236, 80, 42)
    s.oval(236, 80, 34, 34, "thin")
    s.oval(236, 80, 8)
    s.note(236, 142, "head, from behind")
    s.place("back of head", 256, 98)
    s.place("upper shaft", 120, 118)
    s.place("collar", 120, 91)


def earring(s: Sheet) -> None:
    """Earrings: a drop on a hook from the front and from behind, and a stud."""
    for x, back in ((70, False), (170, True)):
        s.line(f"M{x},88C{x - 22},64 {x - 16},26 {x + 4},26C{x + 22},26 {x + 20},56 {x + 14},70")
        s.oval(x, 96, 9, 9, "line")
        s.body(f"M{x},104C{x + 26},134 {x + 36},168 {x},190C{x - 36},168 {x - 26},134 {x},104Z")
        if not back:
            s.thin(f"M{x},120C{x + 14},140 {x + 20},162 {x},176C{x - 20},162 {x - 14},140 {x},120")
        s.note(x, 212, "back" if back else "front")
    s.body("M262,72L278,62H286V126H278L262,116Z")
    s.rod("M262,94H232", 4)
    s.body("M236,84H246V104H236Z")
    s.note(262, 148, "stud, from the side")
    s.place("hook", 172, 26)
    s.place("post", 254, 94)
    s.place("back of drop", 170, 156)
    s.place("back of collet", 266, 106)


def locket(s: Sheet) -> None:
    """A locket: open, and its back."""
    for x in (66, 142):
        s.oval(x, 124, 38, 48)
        s.oval(x, 124, 30, 40, "tone")
        s.oval(x, 124, 30, 40, "line")
    s.box(100, 108, 8, 32, 2)
    s.line("M66,76V70")
    s.oval(66, 62, 8, 9, "line")
    s.oval(246, 128, 44, 54)
    s.oval(246, 128, 34, 44, "thin")
    s.body("M240,74H252V64H240Z")
    s.oval(246, 52, 9, 12, "line")
    s.note(104, 194, "open")
    s.note(246, 202, "back")
    s.place("bail", 254, 50)
    s.place("back near bail", 246, 88)
    s.place("inside rim", 68, 164)


def charm(s: Sheet) -> None:
    """A small heart charm, front, back and edge."""
    for x, name in ((74, "front"), (186, "back")):
        s.oval(x, 60, 10, 10, "line")
        s.body(
            f"M{x},86C{x + 14},66 {x + 46},76 {x + 40},106C{x + 36},130 {x + 14},146 {x},160C{x - 14},146 {x - 36},130 {x - 40},106C{x - 46},76 {x - 14},66 {x},86Z"
        )
        s.note(x, 184, name)
    s.body("M270,74H284V158H270Z")
    s.oval(277, 60, 4, 10, "line")
    s.note(277, 184, "edge")
    s.place("edge", 277, 118)
    s.place("back", 186, 112)
    s.place("loop", 186, 50)


def cufflink(s: Sheet) -> None:
    """A cufflink from the side, and the back of its face."""
    s.body("M56,70C48,70 48,166 56,166H72V70Z")
    s.body("M72,104L138,112V124L72,132Z")
    s.body("M138,88H158C166,88 166,148 158,148H138Z")
    s.oval(146, 118, 4)
    s.note(60, 188, "face")
    s.note(148, 170, "toggle")
    s.oval(248, 118, 48)
    s.oval(248, 118, 40, 40, "thin")
    s.oval(248, 118, 12)
    s.note(248, 188, "back of the face")
    s.place("stem", 104, 118)
    s.place("toggle", 152, 136)
    s.place("back of face", 272, 140)
    s.place("swivel bar", 146, 106)


def tie_clip(s: Sheet) -> None:
    """A tie clip from the side, and a stud."""
    s.body("M40,96C28,96 28,128 44,128L214,122V114L48,116C42,114 42,110 48,108H220V96Z")
    s.note(120, 152, "clip, from the side")
    s.oval(270, 106, 22, 30)
    s.oval(270, 106, 14, 20, "thin")
    s.oval(270, 106, 6)
    s.note(268, 152, "stud, back")
    s.place("spring", 160, 118)
    s.place("inside bend", 46, 112)
    s.place("back", 278, 124)


def buckle(s: Sheet) -> None:
    """A shoe buckle from behind, with its steel chape."""
    s.body(
        "M70,48H250C266,48 274,58 274,74V170C274,186 266,196 250,196H70C54,196 46,186 46,170V74C46,58 54,48 70,48ZM88,82C82,82 78,86 78,92V152C78,158 82,162 88,162H232C238,162 242,158 242,152V92C242,86 238,82 232,82Z"
    )
    s.dark("M154,70H166V174H154Z")
    s.line(
        "M154,66H166V178H154Z",
        "M166,104H208C222,104 222,140 208,140H166",
        "M154,112H104L92,108",
        "M154,132H104L92,136",
    )
    s.note(160, 218, "from behind; chape of steel")
    s.place("back by chape", 132, 64)
    s.place("inside of frame", 240, 128)


def medal(s: Sheet) -> None:
    """A medal with its ring: front, back and rim."""
    for x, name in ((72, "front"), (178, "reverse")):
        s.oval(x, 56, 10, 10, "line")
        s.oval(x, 114, 48)
        s.oval(x, 114, 41, 41, "thin")
        s.note(x, 184, name)
    s.thin("M72,88L79,106H98L83,117L89,136L72,124L55,136L61,117L46,106H65Z")
    s.thin("M150,106H206", "M156,118H200")
    s.body("M262,66H280V162H262Z")
    s.thin(*(f"M262,{y}H280" for y in range(72, 162, 5)))
    s.oval(271, 56, 4, 10, "line")
    s.note(271, 184, "rim")
    s.place("rim", 271, 120)
    s.place("reverse near bottom", 178, 148)
    s.place("suspension ring", 188, 56)


def dress_clip(s: Sheet) -> None:
    """A dress clip, from behind, the flap raised on its hinge."""
    s.body("M96,48H224C232,90 216,160 160,206C104,160 88,90 96,48Z")
    s.body("M128,60H192V76H128Z")
    s.body("M132,76H188L182,140H170V158L164,140H156L150,158V140H138Z")
    s.note(160, 226, "from behind")
    s.place("back by hinge", 112, 70)
    s.place("prong", 167, 148)


def fob(s: Sheet) -> None:
    """A fob seal with its ring."""
    s.oval(116, 42, 18, 18, "line")
    s.body("M104,60H128L124,76H108Z")
    s.turned(116, (10, 76, 1), (16, 92), (30, 120), (44, 160), (48, 172, 1), (48, 190, 1))
    s.thin("M100,100C90,124 90,140 84,168", "M132,100C142,124 142,140 148,168")
    s.girdle(116, (47, 172))
    s.oval(252, 150, 40)
    s.oval(252, 150, 30, 30, "tone")
    s.note(252, 206, "stone, from below")
    s.place("edge of mount", 140, 184)
    s.place("ring", 133, 40)


def tribal(s: Sheet) -> None:
    """A pectoral with bells on chains."""
    s.line("M80,66C90,24 230,24 240,66")
    s.body(
        "M62,62H258C262,62 264,66 262,72C246,126 210,146 160,148C110,146 74,126 58,72C56,66 58,62 62,62Z"
    )
    for x, y in ((100, 86), (160, 92), (220, 86), (130, 118), (190, 118)):
        s.oval(x, y, 8, 8, "thin")
        s.oval(x, y, 3, 3, "thin")
    for x, y in ((84, 118), (110, 136), (136, 145), (160, 148), (184, 145), (210, 136), (236, 118)):
        s.thin(f"M{x},{y}V{y + 40}")
        s.body(f"M{x - 7},{y + 54}C{x - 7},{y + 36} {x + 7},{y + 36} {x + 7},{y + 54}Z")
    s.place("outside", 160, 72)


def concho(s: Sheet) -> None:
    """A belt plate, front and back."""
    for x, back in ((84, False), (236, True)):
        points = []
        for i in range(97):
            a = 2 * math.pi * i / 96
            r = 1 - 0.06 * abs(math.sin(a * 8))
            points.append(f"{x + 68 * r * math.sin(a):.1f},{110 - 56 * r * math.cos(a):.1f}")
        s.body("M" + "L".join(points) + "Z")
        if back:
            s.rod(f"M{x},66V154", 8)
        else:
            s.oval(x, 110, 50, 40, "thin")
            s.body(f"M{x},88L{x + 18},110L{x},132L{x - 18},110Z")
        s.note(x, 188, "back" if back else "front")
    s.place("back", 264, 128)
    s.place("edge", 290, 84)


def watch_case(s: Sheet) -> None:
    """A hunter or open watch with its back lids open."""
    s.oval(110, 36, 15, 13, "line")
    s.box(102, 46, 16, 12, 3)
    s.oval(110, 122, 64)
    s.oval(110, 122, 54, 54, "thin")
    s.oval(110, 122, 44, 44, "tone")
    s.oval(110, 104, 14, 14, "thin")
    s.oval(132, 138, 10, 10, "thin")
    s.oval(88, 140, 12, 12, "thin")
    s.oval(224, 74, 52, 46)
    s.oval(224, 74, 44, 38, "thin")
    s.oval(228, 172, 52, 46)
    s.oval(228, 172, 44, 38, "thin")
    s.line("M168,100L178,94", "M164,156L180,162")
    s.note(224, 24, "back lid, inside")
    s.note(228, 230, "cuvette")
    s.note(110, 206, "movement")
    s.place("back lid inside", 224, 78)
    s.place("cuvette", 228, 172)
    s.place("bow", 122, 28)
    s.place("bezel rim", 60, 150)


def watch_chain(s: Sheet) -> None:
    """A watch chain: swivel, links, T-bar and fob."""
    _links(s, 62, 262, 88, 12)
    s.oval(44, 88, 12, 9, "line")
    s.body("M34,88L20,82V94Z")
    s.line("M20,88C4,70 4,106 20,92")
    s.body("M270,50H282V126H270Z")
    s.oval(266, 88, 7, 7, "line")
    s.thin("M158,96V126")
    s.oval(158, 130, 6, 6, "line")
    s.body("M138,138H178V182L158,196L138,182Z")
    s.thin("M146,146H170V178L158,186L146,178Z")
    s.note(40, 124, "swivel")
    s.note(276, 146, "T-bar")
    s.note(158, 214, "fob")
    s.place("T-bar", 276, 66)
    s.place("swivel tongue", 26, 90)
    s.place("fob plate", 158, 164)
    s.place("link", 112, 88)
