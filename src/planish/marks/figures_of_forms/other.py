"""Drawings of ritual wares, figures and the rest, and of any piece at all."""

import math

from planish.marks.figures_of_forms.sheet import Sheet


def torah_pointer(s: Sheet) -> None:
    """A pointer with a small hand."""
    s.oval(26, 112, 11, 11, "line")
    s.rod("M40,112H236", 12)
    s.oval(110, 112, 14)
    s.oval(180, 112, 12)
    s.body("M236,100H248V124H236Z")
    s.body(
        "M248,102H268C276,102 278,106 300,105C308,105 308,111 300,111H280L278,116C282,120 278,126 270,124L248,122Z"
    )
    s.thin("M278,116H262")
    s.place("shaft by hand", 218, 112)
    s.place("end ring", 18, 104)


def icon_cover(s: Sheet) -> None:
    """A chased icon cover with openings for faces and hands."""
    s.box(56, 14, 150, 210, 2)
    s.box(68, 26, 126, 186, 0, "thin")
    s.oval(131, 84, 34, 36, "thin")
    s.oval(131, 86, 17, 22, "tone")
    s.oval(131, 86, 17, 22)
    s.oval(131, 86, 17, 22, "tone")
    s.body("M84,212C84,150 104,124 131,116C158,124 178,150 178,212Z")
    s.thin("M112,122C116,160 118,190 112,212", "M150,122C146,160 144,190 150,212")
    s.dark("M118,160L126,146L132,150L128,168H118Z")
    s.line("M118,160L126,146L132,150L128,168H118Z")
    for y in (40, 196):
        s.box(206, y, 12, 10, 2)
        s.box(44, y, 12, 10, 2)
    s.note(264, 48, "clasp")
    s.place("lower edge", 156, 219)
    s.place("side edge", 206, 120)
    s.place("clasp", 212, 45)


def crucifix(s: Sheet) -> None:
    """An altar cross on its foot."""
    s.body("M124,18H140V62H190V78H140V170H124V78H74V62H124Z")
    s.oval(132, 44, 6)
    s.line("M132,50V112", "M94,66L132,58L170,66", "M132,112L126,140", "M132,112L138,140")
    s.turned(132, (12, 168, 1), (16, 180), (40, 196, 1), (48, 206, 1), (48, 214, 1))
    s.body("M233,172V78H206V64H233V18H247V64H274V78H247V172Z")
    s.body("M206,198C214,182 226,178 240,170C254,178 266,182 274,198V214H206Z")
    s.note(132, 232, "front")
    s.note(240, 232, "back")
    s.place("back of foot", 240, 198)
    s.place("edge of arm", 189, 70)


def figurine(s: Sheet) -> None:
    """A figure of a bird on a hollow base."""
    s.line("M108,160L104,184", "M124,160L128,184")
    s.body(
        "M64,92C60,74 72,56 90,60C104,64 104,80 112,92C126,102 156,108 188,96C184,126 156,160 116,162C88,162 74,140 76,112C76,104 68,100 64,92Z"
    )
    s.line("M66,78L46,84L64,90")
    s.oval(82, 76, 3)
    s.thin("M108,112C120,138 150,136 166,118", "M116,108C126,124 144,124 158,112")
    s.body("M60,184H176L184,206H52Z")
    s.oval(258, 166, 44, 32)
    s.oval(258, 166, 34, 23, "tone")
    s.oval(258, 166, 34, 23, "thin")
    s.note(258, 212, "from below")
    s.place("underside", 298, 168)
    s.place("back of base", 168, 196)
    s.place("inside base", 258, 166)


def nef(s: Sheet) -> None:
    """A model ship on wheels or a foot."""
    s.line("M150,30V134", "M92,50V132", "M206,54V132")
    s.body(
        "M152,40C190,44 196,66 190,84C176,78 166,78 152,80Z",
        "M94,58C124,60 130,78 126,92C114,88 106,88 94,90Z",
        "M208,62C234,66 238,80 234,92C226,90 218,90 208,92Z",
    )
    s.body("M150,22L172,28L150,34Z")
    s.body("M34,112L66,134H216L224,104H266C268,140 246,172 206,176H96C62,170 42,144 34,112Z")
    s.thin("M50,134C80,148 220,148 260,126", "M232,112V122", "M246,112V122")
    for x in (92, 120, 148, 176, 204):
        s.oval(x, 154, 4, 4, "thin")
    s.body("M140,176H160V192H140Z", "M96,206C96,194 204,194 204,206V212H96Z")
    s.place("hull by keel", 118, 172)
    s.place("base", 176, 206)


def spurs(s: Sheet) -> None:
    """A spur with its yoke, neck and rowel."""
    s.rod("M36,66C110,56 170,80 172,112C170,146 110,168 36,158", 9)
    s.oval(32, 66, 10)
    s.oval(32, 158, 10)
    s.body("M172,104L236,104V120L172,120Z")
    s.body("M236,104L262,100V124L236,120Z")
    pts = []
    for i in range(16):
        r = 34 if i % 2 == 0 else 16
        a = math.pi * i / 8
        pts.append(f"{266 + r * math.cos(a):.1f},{112 + r * math.sin(a):.1f}")
    s.body("M" + "L".join(pts) + "Z")
    s.oval(266, 112, 5)
    s.note(208, 146, "neck")
    s.place("neck", 206, 112)


def rattle(s: Sheet) -> None:
    """A baby's rattle with a whistle, bells and a coral or teether."""
    s.body("M18,108L58,100V132L18,124Z")
    s.dark("M36,98L50,96V102L36,104Z")
    s.turned(84, (26, 94, 1), (30, 116), (26, 138, 1))
    s.body("M110,102H150V130H110Z")
    s.oval(160, 116, 28)
    s.rod("M188,116H208", 12)
    for x, y in ((142, 152), (162, 160), (182, 150), (142, 80), (182, 80)):
        s.line(f"M{160 + (x - 160) * 0.6},{116 + (y - 116) * 0.6}L{x},{y}")
        s.oval(x, y, 9)
        s.thin(f"M{x - 6},{y + 2}H{x + 6}")
    s.dark("M208,104C240,96 286,100 300,112C304,122 270,130 208,128Z")
    s.line("M208,104C240,96 286,100 300,112C304,122 270,130 208,128Z")
    s.note(38, 152, "whistle")
    s.note(256, 152, "coral")
    s.place("mouthpiece", 30, 116)
    s.place("bell mount", 162, 151)


def anything(s: Sheet) -> None:
    """A covered cup, taken apart: every part that comes off; a patch and a polished hollow."""
    s.turned(92, (6, 16), (9, 22), (4, 30, 1), (16, 36), (36, 48), (42, 60, 1))
    s.oval(92, 60, 42, 7)
    s.oval(92, 60, 34, 5, "tone")
    s.turned(92, (42, 88, 1), (42, 120), (30, 150), (8, 164, 1))
    s.oval(92, 88, 42, 8)
    s.oval(92, 88, 36, 6, "tone")
    s.turned(92, (7, 180, 1), (8, 190), (36, 204, 1), (36, 214, 1))
    s.thin("M92,66V78", "M92,168V176")
    s.rod("M156,96C186,92 186,136 158,140", 6)
    s.note(176, 156, "handle")
    s.note(30, 54, "lid")
    s.note(38, 206, "foot")
    s.oval(256, 130, 48)
    s.oval(256, 130, 40, 40, "thin")
    s.oval(270, 118, 14, 11, "tone")
    s.oval(270, 118, 14, 11, "line")
    s.thin("M224,144C234,136 246,136 252,144C246,152 234,152 224,144")
    s.note(256, 196, "from below")
    s.place("whole surface", 112, 122)
    s.place("part that comes off", 92, 40)
    s.place("trough", 238, 144)
    s.place("patch", 276, 124)
