"""Drawings of what one eats and serves with; the face and the back lie side by side."""

from planish.marks.figures_of_forms.sheet import Sheet

# a stem lies level: the end to the left, the bowl to the right
_BOWL = "C196,{a} 222,{b} 262,{b}C296,{b} 308,{m} 308,{y}C308,{n} 296,{c} 262,{c}C222,{c} 196,{d} 180,{e}"


def _spoon(s: Sheet, y: float, *, back: bool, size: float = 1.0) -> None:
    """A spoon lying level, its bowl to the right."""
    h = 26 * size
    bowl = _BOWL.format(
        a=y - 5, b=y - h, m=y - h * 0.55, y=y, n=y + h * 0.55, c=y + h, d=y + 5, e=y + 3
    )
    s.body(
        f"M180,{y - 3}{bowl}L90,{y + 4}C60,{y + 6} 44,{y + 14} 26,{y + 14}C10,{y + 14} 10,{y - 14} 26,{y - 14}C44,{y - 14} 60,{y - 6} 90,{y - 4}Z"
    )
    if back:
        s.thin(
            f"M180,{y - 3}C200,{y - 7} 214,{y - 10} 222,{y}C214,{y + 10} 200,{y + 7} 180,{y + 3}"
        )
        s.thin(f"M30,{y}H120")
    else:
        s.oval(256, y, 40, h * 0.74, "tone")
        s.oval(256, y, 40, h * 0.74, "thin")


def _named(s: Sheet, front: float, back: float) -> None:
    s.note(120, front + 30, "front")
    s.note(120, back + 30, "back")


def spoon(s: Sheet) -> None:
    """A table spoon, front and back."""
    _spoon(s, 66, back=False)
    _spoon(s, 166, back=True)
    _named(s, 66, 166)
    s.place("back of stem by bowl", 164, 166)
    s.place("back of stem", 112, 166)
    s.place("back of bowl", 264, 166)
    s.place("edge of stem", 96, 162)
    s.place("front of stem", 60, 66)
    s.place("inside bowl", 260, 66)
    s.place("inside lip", 292, 66)
    s.place("end", 30, 166)


def salt_spoon(s: Sheet) -> None:
    """A small spoon with a round bowl."""
    for y, back in ((72, False), (164, True)):
        s.body(
            f"M196,{y - 3}C210,{y - 5} 216,{y - 24} 238,{y - 24}C268,{y - 24} 268,{y + 24} 238,{y + 24}C216,{y + 24} 210,{y + 5} 196,{y + 3}L110,{y + 4}C90,{y + 5} 82,{y + 10} 70,{y + 10}C56,{y + 10} 56,{y - 10} 70,{y - 10}C82,{y - 10} 90,{y - 5} 110,{y - 4}Z"
        )
        if not back:
            s.oval(238, y, 18, 18, "tone")
            s.oval(238, y, 18, 18, "thin")
        else:
            s.thin(
                f"M196,{y - 3}C212,{y - 6} 222,{y - 8} 226,{y}C222,{y + 8} 212,{y + 6} 196,{y + 3}"
            )
    _named(s, 72, 164)
    s.place("back of stem", 140, 164)


def souvenir_spoon(s: Sheet) -> None:
    """A spoon with a picture in the bowl and a figured end."""
    _spoon(s, 66, back=False, size=0.9)
    _spoon(s, 166, back=True, size=0.9)
    for y in (66, 166):
        s.body(
            f"M10,{y}L20,{y - 22}L30,{y - 12}L40,{y - 22}L50,{y}L40,{y + 22}L30,{y + 12}L20,{y + 22}Z"
        )
    s.thin("M236,74L246,60L254,70L262,56L276,74Z")
    _named(s, 66, 166)
    s.place("back of stem", 120, 166)
    s.place("back of bowl", 264, 166)


def sifter(s: Sheet) -> None:
    """A spoon with a pierced bowl."""
    _spoon(s, 66, back=False, size=1.2)
    _spoon(s, 166, back=True, size=1.2)
    for y in (66, 166):
        for dx, dy in (
            (0, 0),
            (-16, -8),
            (-16, 8),
            (16, -8),
            (16, 8),
            (0, -16),
            (0, 16),
            (30, 0),
            (-30, 0),
        ):
            s.oval(260 + dx, y + dy, 3, 3, "thin")
    _named(s, 66, 166)
    s.place("back of stem", 120, 166)
    s.place("back of bowl", 282, 184)


def caddy_spoon(s: Sheet) -> None:
    """A short spoon with a shell bowl."""
    for x, back in ((90, False), (230, True)):
        s.body(
            f"M{x - 8},120C{x - 12},100 {x - 22},80 {x - 22},60C{x - 22},36 {x + 22},36 {x + 22},60C{x + 22},80 {x + 12},100 {x + 8},120C{x + 44},116 {x + 56},150 {x + 44},178C{x + 30},204 {x - 30},204 {x - 44},178C{x - 56},150 {x - 44},116 {x - 8},120Z"
        )
        if back:
            s.thin(f"M{x - 8},120C{x - 6},136 {x + 6},136 {x + 8},120")
        for dx in (-32, -16, 0, 16, 32):
            s.thin(f"M{x + dx * 0.2},132L{x + dx},{190 - abs(dx) * 0.3}")
        s.note(x, 222, "back" if back else "front")
    s.place("back of handle", 230, 72)
    s.place("back of bowl", 230, 164)


def fork(s: Sheet) -> None:
    """A fork, front and back."""
    for y, back in ((66, False), (166, True)):
        s.body(
            f"M180,{y - 4}C200,{y - 6} 206,{y - 22} 224,{y - 22}H304L308,{y - 19}L304,{y - 15}H250C240,{y - 15} 240,{y - 9} 250,{y - 9}H304L308,{y - 6}L304,{y - 3}H250C242,{y - 3} 242,{y + 3} 250,{y + 3}H304L308,{y + 6}L304,{y + 9}H250C240,{y + 9} 240,{y + 15} 250,{y + 15}H304L308,{y + 19}L304,{y + 22}H224C206,{y + 22} 200,{y + 6} 180,{y + 4}L90,{y + 4}C60,{y + 6} 44,{y + 14} 26,{y + 14}C10,{y + 14} 10,{y - 14} 26,{y - 14}C44,{y - 14} 60,{y - 6} 90,{y - 4}Z"
        )
        if back:
            s.thin(f"M30,{y}H110")
    _named(s, 66, 166)
    s.place("back of stem", 128, 166)
    s.place("back of tines", 236, 166)
    s.place("edge of stem", 90, 162)


def serving_fork(s: Sheet) -> None:
    """A broad fork with three tines."""
    for y in (66, 166):
        s.body(
            f"M170,{y - 4}C196,{y - 6} 196,{y - 30} 220,{y - 30}C260,{y - 30} 290,{y - 26} 304,{y - 18}C280,{y - 18} 256,{y - 18} 246,{y - 14}C240,{y - 10} 246,{y - 6} 256,{y - 6}H308V{y + 6}H256C246,{y + 6} 240,{y + 10} 246,{y + 14}C256,{y + 18} 280,{y + 18} 304,{y + 18}C290,{y + 26} 260,{y + 30} 220,{y + 30}C196,{y + 30} 196,{y + 6} 170,{y + 4}L90,{y + 5}C60,{y + 7} 44,{y + 16} 26,{y + 16}C8,{y + 16} 8,{y - 16} 26,{y - 16}C44,{y - 16} 60,{y - 7} 90,{y - 5}Z"
        )
    _named(s, 66, 166)
    s.place("back of stem", 128, 166)
    s.place("back of tines", 228, 166)


def ladle(s: Sheet) -> None:
    """A soup ladle, from the side and from the back."""
    s.rod("M60,20C40,16 40,40 56,60C84,96 92,120 88,148", 7)
    s.body("M56,140H130C130,176 112,190 93,190C74,190 56,176 56,140Z")
    s.oval(93, 140, 37, 8)
    s.oval(93, 141, 32, 5, "tone")
    s.note(93, 212, "side")
    s.body(
        "M224,24C216,24 212,32 214,44L222,124C224,134 236,134 238,124L246,44C248,32 244,24 236,24Z"
    )
    s.oval(230, 160, 44, 38)
    s.thin("M222,124C222,142 238,142 238,124")
    s.note(230, 218, "back")
    s.place("back of stem", 230, 84)
    s.place("underside of bowl", 230, 170)
    s.place("inside lip", 120, 143)
    s.place("bowl by rim", 118, 150)


def punch_ladle(s: Sheet) -> None:
    """A ladle with a twisted whalebone stem and a coin in the bowl."""
    s.rod("M28,44C100,56 150,84 186,120", 6)
    s.thin(
        "M44,44L50,52",
        "M62,47L68,56",
        "M80,52L86,61",
        "M98,58L104,67",
        "M116,66L122,75",
        "M132,75L138,84",
    )
    s.body("M150,92L158,84L196,116L186,128Z")
    s.body("M176,124C196,112 260,112 280,124C282,160 262,180 228,180C194,180 174,160 176,124Z")
    s.oval(228, 124, 52, 12)
    s.oval(228, 126, 46, 9, "tone")
    s.oval(228, 128, 16, 4.5)
    s.note(80, 98, "stem")
    s.note(228, 204, "bowl")
    s.place("bowl under rim", 262, 140)
    s.place("ferrule", 172, 104)
    s.place("coin", 228, 128)


def marrow_scoop(s: Sheet) -> None:
    """A double scoop, front and back."""
    for y, back in ((76, False), (166, True)):
        s.body(
            f"M14,{y}C14,{y - 12} 30,{y - 12} 100,{y - 10}C124,{y - 8} 134,{y - 4} 150,{y - 4}C176,{y - 4} 186,{y - 8} 210,{y - 9}H296C310,{y - 9} 310,{y + 9} 296,{y + 9}H210C186,{y + 8} 176,{y + 4} 150,{y + 4}C134,{y + 4} 124,{y + 8} 100,{y + 10}C30,{y + 12} 14,{y + 12} 14,{y}Z"
        )
        if not back:
            s.box(24, y - 6, 82, 12, 6, "tone")
            s.box(208, y - 5, 90, 10, 5, "tone")
    _named(s, 76, 166)
    s.place("back of stem", 152, 166)


def skewer(s: Sheet) -> None:
    """A meat skewer with a ring."""
    s.oval(42, 120, 24)
    s.oval(42, 120, 15, 15)
    s.body("M64,110H84L304,120L84,130H64Z")
    s.place("by the ring", 92, 120)


def strainer(s: Sheet) -> None:
    """A strainer with a pierced bowl and two handles, from above, and from the side."""
    for x, d in ((64, -1), (204, 1)):
        s.body(
            f"M{x - 4 * d},74C{x + 14 * d},60 {x + 36 * d},64 {x + 44 * d},80C{x + 36 * d},96 {x + 14 * d},100 {x - 4 * d},86Z"
        )
        s.oval(x + 22 * d, 80, 9, 8, "tone")
        s.oval(x + 22 * d, 80, 9, 8, "thin")
    s.oval(134, 80, 70, 60)
    s.oval(134, 80, 58, 49, "thin")
    for dx in range(-36, 37, 12):
        for dy in range(-36, 37, 12):
            if dx * dx + dy * dy < 1700:
                s.oval(134 + dx, 80 + dy, 1.8, 1.8, "thin")
    s.body("M66,172H202C202,200 176,216 134,216C92,216 66,200 66,172Z", "M22,168H246V174H22Z")
    s.place("rim", 176, 40)
    s.place("handle", 226, 64)
    s.place("underside of bowl", 134, 212)


def fish_slice(s: Sheet) -> None:
    """A fish slice: pierced blade riveted to its handle, from the back."""
    s.body("M20,112C10,112 10,136 20,136H40C80,134 90,128 120,128V120C90,120 80,114 40,112Z")
    s.body(
        "M112,118C130,96 160,80 200,80C250,80 300,100 310,130C290,150 240,164 190,164C150,164 130,146 112,130Z"
    )
    for x in (178, 204, 230, 256):
        s.thin(f"M{x},100C{x + 18},112 {x + 18},134 {x},148C{x + 6},132 {x + 6},116 {x},100")
    s.oval(122, 124, 3)
    s.oval(140, 124, 3)
    s.note(220, 190, "back")
    s.place("blade at joint", 152, 124)
    s.place("back of handle", 62, 124)


def tongs(s: Sheet) -> None:
    """Sugar tongs, from the side and laid open."""
    s.body(
        "M40,120C40,96 84,90 140,92L220,102C230,98 250,96 250,106C250,114 232,114 220,108L140,100C90,98 52,104 52,120C52,136 90,142 140,140L220,132C232,126 250,126 250,134C250,144 230,142 220,138L140,148C84,150 40,144 40,120Z"
    )
    s.note(146, 172, "side")
    s.place("inside arm", 132, 99)
    s.place("outside bend", 40, 120)
    s.place("back of tips", 240, 99)
    s.body(
        "M88,206C64,206 50,200 20,204C8,206 8,222 20,224C50,228 64,222 88,222H160C210,222 240,228 290,224C306,222 306,206 290,204C240,200 210,206 160,206Z"
    )
    s.note(164, 199, "inside, laid open")
    s.places["inside arm"] = (112, 214)


def knife_hollow(s: Sheet) -> None:
    """A knife with a hollow silver handle and a steel blade."""
    s.body("M150,106L160,102C220,94 280,96 308,120C280,128 220,128 160,128L150,128Z")
    s.body("M26,106C10,108 10,128 26,130C70,136 110,128 144,128V106C110,106 70,100 26,106Z")
    s.body("M144,104H154V130H144Z")
    s.thin("M34,112C70,108 100,112 136,112", "M34,124C70,128 100,122 136,122")
    s.note(80, 152, "silver shell, filled")
    s.note(230, 152, "steel")
    s.place("handle by collar", 132, 117)
    s.place("handle side", 84, 117)
    s.place("butt", 18, 118)
    s.place("blade face", 200, 114)
    s.place("collar", 149, 117)


def knife_fruit(s: Sheet) -> None:
    """A fruit knife with a silver blade and a handle of another material."""
    s.body("M144,104C190,92 250,90 306,112C260,126 200,128 144,128Z")
    s.dark("M26,106C12,110 12,126 26,128H136V106Z")
    s.line("M26,106C12,110 12,126 26,128H136V106Z")
    s.body("M134,104H146V130H134Z")
    s.note(80, 152, "mother of pearl")
    s.note(226, 152, "silver blade")
    s.place("blade by handle", 164, 116)
    s.place("collar", 140, 118)


def butter_knife(s: Sheet) -> None:
    """A butter knife with a broad blade."""
    s.body(
        "M24,104C8,106 8,130 24,132C70,130 110,126 150,122H170C200,140 250,144 280,136C300,128 308,110 296,98C286,108 270,108 250,100C220,92 190,100 170,112H150C110,110 70,106 24,104Z"
    )
    s.place("blade near handle", 196, 118)
    s.place("handle back", 64, 118)
