"""Drawings of what lies on a dressing table or in a work basket."""

from planish.marks.figures_of_forms.sheet import Sheet


def hand_mirror(s: Sheet) -> None:
    """A hand mirror, its glass and its back."""
    for x, back in ((88, False), (226, True)):
        s.body(f"M{x - 10},148L{x - 12},206C{x - 14},224 {x + 14},224 {x + 12},206L{x + 10},148Z")
        s.oval(x, 88, 58, 66)
        if back:
            s.oval(x, 88, 44, 52, "thin")
            s.thin(f"M{x},52C{x + 30},66 {x + 24},110 {x},124C{x - 24},110 {x - 30},66 {x},52")
            s.oval(x, 88, 9, 11, "thin")
        else:
            s.oval(x, 88, 47, 55, "tone")
            s.oval(x, 88, 47, 55, "line")
            s.thin(f"M{x - 24},108L{x + 8},60", f"M{x - 8},118L{x + 24},68")
    s.note(88, 16, "glass")
    s.note(226, 16, "back")
    s.place("edge by handle", 104, 149)
    s.place("back near rim", 270, 116)
    s.place("back of handle", 226, 190)


def hair_brush(s: Sheet) -> None:
    """A hair brush, from the side and from the back."""
    s.thin(*(f"M{x},92V128" for x in range(150, 290, 7)))
    s.body(
        "M20,80C20,70 60,74 120,78C150,72 270,66 296,78C302,84 300,92 292,92H146C120,90 60,94 30,92C22,90 20,86 20,80Z"
    )
    s.note(90, 118, "side")
    s.body(
        "M20,180C20,170 70,170 130,174C150,150 190,148 220,148C270,148 300,160 300,180C300,200 270,212 220,212C190,212 150,210 130,186C70,190 20,190 20,180Z"
    )
    s.oval(220, 180, 56, 22, "thin")
    s.note(84, 212, "back")
    s.place("edge by bristles", 200, 87)
    s.place("handle end", 32, 181)
    s.place("handle side", 60, 84)


def clothes_brush(s: Sheet) -> None:
    """A brush without a handle, from the side and from above."""
    s.thin(*(f"M{x},92V124" for x in range(56, 268, 7)))
    s.body("M44,92V80C44,66 90,60 160,60C230,60 276,66 276,80V92Z")
    s.line("M44,82H276")
    s.box(44, 150, 232, 62, 31)
    s.box(60, 162, 200, 38, 19, "thin")
    s.note(292, 96, "side")
    s.note(292, 218, "top")
    s.place("side of cover", 220, 76)
    s.place("top", 140, 181)


def comb(s: Sheet) -> None:
    """A comb with a silver spine."""
    s.thin(*(f"M{x},104V178" for x in range(40, 286, 6)))
    s.line("M36,104V180H284V104")
    s.body("M28,84C28,70 80,62 160,62C240,62 292,70 292,84V106H28Z")
    s.thin("M40,90C60,78 260,78 280,90")
    s.place("spine", 200, 98)
    s.place("end of spine", 38, 99)


def nail_buffer(s: Sheet) -> None:
    """A nail buffer: a silver back with a bow handle over a leather pad."""
    s.rod("M96,110C96,46 224,46 224,110", 10)
    s.body("M28,134C40,104 280,104 292,134Z")
    s.dark("M28,134H292C290,164 260,170 160,170C60,170 30,164 28,134Z")
    s.line("M28,134H292C290,164 260,170 160,170C60,170 30,164 28,134Z")
    s.note(160, 192, "leather")
    s.place("side", 250, 127)
    s.place("handle", 160, 62)


def dresser_set(s: Sheet) -> None:
    """Hand mirror, brush and comb."""
    s.body("M68,136L66,200C64,216 92,216 90,200L88,136Z")
    s.oval(78, 90, 46, 54)
    s.oval(78, 90, 37, 45, "tone")
    s.oval(78, 90, 37, 45, "thin")
    s.body(
        "M160,132L158,200C156,216 184,216 182,200L180,132C200,124 204,100 202,78C200,44 140,44 138,78C136,100 140,124 160,132Z"
    )
    s.oval(170, 88, 22, 32, "thin")
    s.thin(*(f"M256,{y}H294" for y in range(54, 202, 6)))
    s.line("M256,50H296V204H256")
    s.body("M236,46H252C260,46 260,208 252,208H236C228,208 228,46 236,46Z")
    s.place("each piece, mirror", 82, 140)
    s.place("each piece", 170, 192)


def thimble(s: Sheet) -> None:
    """A thimble, standing and from below."""
    s.turned(110, (22, 48), (38, 62), (48, 120), (54, 176, 1), (58, 180, 1), (58, 194, 1))
    for row in range(6):
        y = 76 + row * 13
        for col in range(-3, 4):
            s.oval(110 + col * (10 + row * 0.8), y + 3 - abs(col) * 0.8, 2.4, 2.4, "thin")
    s.girdle(110, (53, 160), (54, 174))
    s.place("band", 132, 169)
    s.place("above rim", 92, 155)
    s.oval(246, 130, 48)
    s.oval(246, 130, 42, 42, "tone")
    s.oval(246, 130, 42, 42, "thin")
    s.oval(246, 130, 18, 18, "thin")
    s.note(246, 194, "from below")
    s.place("inside rim", 214, 150)


def needle_case(s: Sheet) -> None:
    """A needle case, pulled apart."""
    s.body("M24,108H136V136H24C14,136 14,108 24,108Z")
    s.body("M166,106H288C300,106 300,138 288,138H166Z")
    s.body("M136,112H152V132H136Z")
    s.oval(166, 122, 5, 16)
    s.oval(166, 122, 3, 12, "tone")
    for x in range(180, 286, 18):
        s.thin(f"M{x},106C{x + 8},116 {x + 8},128 {x},138")
    s.line("M152,118H162", "M152,124H160")
    s.place("inside open end", 166, 120)
    s.place("outside near rim", 176, 130)


def scissors(s: Sheet) -> None:
    """Scissors with silver bows, open."""
    s.body("M150,116L296,56C300,60 296,66 292,68L160,132Z")
    s.body("M150,124L296,184C300,180 296,174 292,172L160,108Z")
    s.rod("M152,120L106,96", 10)
    s.rod("M152,120L106,144", 10)
    s.oval(72, 76, 40, 28)
    s.oval(72, 76, 28, 17)
    s.oval(72, 164, 40, 28)
    s.oval(72, 164, 28, 17)
    s.oval(156, 120, 5)
    s.note(238, 124, "steel")
    s.place("inside bow or shank", 118, 102)
    s.place("bow", 40, 164)


def tape_measure(s: Sheet) -> None:
    """A round tape measure with its crank and tape."""
    s.turned(112, (50, 92, 1), (54, 100), (54, 150), (50, 158, 1))
    s.turned(112, (8, 64), (14, 72), (6, 78, 1), (36, 82), (50, 92, 1))
    s.girdle(112, (54, 126))
    s.dark("M160,112H290V132H160Z")
    s.line("M164,112H290V132H164")
    s.thin(*(f"M{x},112V122" for x in range(178, 286, 12)))
    s.oval(292, 122, 6)
    s.place("rim or base", 130, 156)
    s.place("seam", 84, 127)


def chatelaine(s: Sheet) -> None:
    """A chatelaine: hook plate with chains and tools; the plate's back beside it."""
    for x, y in ((56, 150), (100, 172), (144, 150)):
        s.thin(f"M100,84C{x},100 {x},110 {x},{y - 12}")
    s.body("M60,26C72,14 128,14 140,26C152,52 132,88 100,92C68,88 48,52 60,26Z")
    s.oval(100, 50, 18, 20, "thin")
    s.body("M48,138H64V190L56,204L48,190Z", "M88,160H112V204H88Z")
    s.line("M144,138V150", "M144,150L132,200", "M144,150L156,200")
    s.oval(134, 140, 7, 6, "line")
    s.oval(154, 140, 7, 6, "line")
    s.body("M210,26C222,14 278,14 290,26C302,52 282,88 250,92C218,88 198,52 210,26Z")
    s.rod("M250,34V108C250,124 232,124 232,108", 8)
    s.note(250, 146, "back of the hook plate")
    s.place("hook plate back", 272, 46)
    s.place("pendant", 100, 182)
