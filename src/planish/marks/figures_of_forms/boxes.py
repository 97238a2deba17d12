"""Drawings of boxes and cases: open where their marks sit inside."""

from planish.marks.figures_of_forms.sheet import Sheet


def _open_box(s: Sheet, *, depth: float = 44, wood: bool = False) -> None:
    """A rectangular box from the front and above, its lid thrown back."""
    s.body("M52,104L40,28H220L208,104Z")
    s.thin("M62,96L53,38H207L198,96Z")
    s.body("M52,104H208L224,144H36Z")
    s.dark("M60,108H200L212,138H48Z")
    if wood:
        s.thin("M58,114H204", "M54,122H207", "M51,130H210")
    s.body(f"M36,144H224V{144 + depth}H36Z")
    s.line("M118,104V98H142V104")
    s.note(130, 22, "lid, open")
    s.place("lid inside", 130, 66)
    s.place("inside base", 130, 124)
    s.place("rim", 196, 141)
    s.place("front edge", 96, 146)
    s.place("outside rim", 60, 148 + depth * 0.1)
    s.place("side", 180, 144 + depth * 0.6)


def box(s: Sheet) -> None:
    """A box with its lid open, and its underside."""
    _open_box(s)
    s.beneath(274, 174, 36, 0.9, ry=22)


def cigar_box(s: Sheet) -> None:
    """A large box lined with wood."""
    _open_box(s, depth=56, wood=True)
    s.note(130, 216, "wooden lining")
    s.box(238, 156, 74, 46, 3)
    s.box(244, 161, 62, 36, 2, "tone")
    s.note(275, 214, "from below")
    s.place("underside", 275, 179)


def _small_box(s: Sheet) -> None:
    """A shallow box with rounded corners, open, its lid up."""
    s.body("M66,116L58,44C58,38 62,34 68,34H192C198,34 202,38 202,44L194,116Z")
    s.thin("M76,108L69,46C69,44 70,43 72,43H188C190,43 191,44 191,46L184,108Z")
    s.body("M66,116H194L214,152C216,156 214,160 208,160H52C46,160 44,156 46,152Z")
    s.dark("M74,121H186L202,150H58Z")
    s.body(
        "M45,156V178C45,184 50,188 56,188H204C210,188 215,184 215,178V156C214,160 212,160 208,160H52C48,160 46,160 45,156Z"
    )
    for x in (86, 130, 174):
        s.oval(x, 116, 10, 4)
    s.place("lid inside", 130, 74)
    s.place("inside base", 130, 138)
    s.place("rim", 200, 158)


def snuff_box(s: Sheet) -> None:
    """A snuff box with its hinged lid open."""
    _small_box(s)


def compact(s: Sheet) -> None:
    """A powder compact, open: mirror in the lid."""
    s.oval(150, 70, 62, 54)
    s.oval(150, 72, 52, 45, "thin")
    s.thin("M124,84L150,52", "M140,96L176,52")
    s.body("M88,142C88,112 212,112 212,142V158C212,196 88,196 88,158Z")
    s.oval(150, 142, 62, 32)
    s.oval(150, 142, 51, 25, "tone")
    s.oval(150, 142, 51, 25, "thin")
    s.box(138, 110, 24, 8, 3)
    s.note(246, 60, "mirror")
    s.place("lid inside", 197, 96)
    s.place("inside base", 150, 170)


def card_case(s: Sheet) -> None:
    """A flat case for cards, its hinged cap open."""
    s.body(
        "M92,92C92,84 96,80 104,80H196C204,80 208,84 208,92V210C208,216 204,220 198,220H102C96,220 92,216 92,210Z"
    )
    s.dark("M100,80H200V92H100Z")
    s.oval(150, 150, 34, 42, "thin")
    s.thin("M150,122C172,136 172,164 150,178C128,164 128,136 150,122")
    s.body("M208,86L250,20L270,32C274,36 274,40 272,44L216,90Z")
    s.dark("M216,82L252,28L262,36L222,86Z")
    s.oval(210, 87, 5)
    s.note(268, 18, "cap")
    s.place("lid inside", 246, 48)
    s.place("inside body edge", 122, 86)


def vinaigrette(s: Sheet) -> None:
    """A vinaigrette, open: lid, pierced grille lifted, base with its sponge."""
    s.body("M66,96L56,30H204L194,96Z")
    s.thin("M78,88L70,38H190L182,88Z")
    s.body("M66,96H194L208,116L184,108H76L52,116Z")
    s.body("M66,100L84,128H176L194,100Z")
    for x in range(92, 172, 13):
        s.oval(x, 112, 4, 4, "tone")
        s.oval(x, 112, 4, 4, "thin")
    s.body("M58,136H202L220,172H40Z")
    s.dark("M68,141H192L206,168H54Z")
    s.body("M40,172H220V192H40Z")
    s.note(244, 62, "lid")
    s.note(244, 116, "grille")
    s.note(258, 156, "base")
    s.place("lid inside", 130, 62)
    s.place("grille rim", 168, 122)
    s.place("inside base", 130, 156)


def scent_bottle(s: Sheet) -> None:
    """A cut-glass bottle with a silver collar and cap."""
    s.body(
        "M104,98C74,116 64,140 64,162C64,190 84,206 110,206C136,206 156,190 156,162C156,140 146,116 116,98Z"
    )
    s.thin(
        "M110,108L84,150L110,196L136,150Z",
        "M84,150H136",
        "M72,136L84,150L74,186",
        "M148,136L136,150L146,186",
    )
    s.box(94, 80, 32, 20, 2)
    s.thin("M94,86H126")
    s.turned(110, (10, 38), (17, 48), (17, 72, 1), (17, 76, 1))
    s.oval(240, 70, 30)
    s.oval(240, 70, 21, 21, "tone")
    s.oval(240, 70, 21, 21, "thin")
    s.note(240, 114, "cap, from below")
    s.note(110, 226, "glass")
    s.place("collar", 118, 93)
    s.place("cap underside", 264, 60)
    s.place("cap inside", 240, 72)


def cigarette_case(s: Sheet) -> None:
    """A cigarette case, open flat, with its elastic band."""
    s.box(26, 50, 128, 134, 10)
    s.box(158, 50, 128, 134, 10)
    s.box(34, 58, 112, 118, 5, "thin")
    s.box(166, 58, 112, 118, 5, "thin")
    for y in (66, 110, 154):
        s.box(151, y, 10, 16, 3)
    s.line("M46,104C80,110 110,110 136,104", "M46,130C80,124 110,124 136,130")
    s.box(282, 110, 10, 14, 3)
    s.note(156, 204, "open")
    s.place("inside edge", 222, 64)
    s.place("inside hinge edge", 168, 144)
    s.place("outside rim", 154, 182)


def vesta(s: Sheet) -> None:
    """A match case with a ring, its lid open and a striker below."""
    s.body(
        "M92,92C92,82 98,78 106,78H168C176,78 182,82 182,92V194C182,204 176,210 166,210H108C98,210 92,204 92,194Z"
    )
    s.dark("M102,78H172V88H102Z")
    for x in range(110, 170, 10):
        s.line(f"M{x},80V66")
        s.oval(x, 64, 2.5, 4)
    s.body("M182,84L206,28C210,22 218,22 224,26L234,34C238,38 238,44 234,50L190,92Z")
    s.dark("M192,82L212,36L226,44Z")
    s.oval(184, 86, 5)
    s.oval(84, 112, 10, 10, "line")
    s.thin(*(f"M106,{y}H168" for y in range(196, 208, 3)))
    s.note(137, 228, "striker")
    s.place("lid rim", 209, 74)
    s.place("lid inside", 215, 46)
    s.place("by striker", 112, 184)


def lighter(s: Sheet) -> None:
    """A pocket lighter, from the side and from below."""
    s.box(84, 90, 76, 120, 6)
    s.body("M84,90V62C84,48 110,44 122,44C142,44 160,50 160,62V90Z")
    s.line("M84,90H160")
    s.thin(*(f"M{x},98V204" for x in range(96, 156, 8)))
    s.box(156, 84, 10, 12, 2)
    s.box(222, 150, 76, 40, 6)
    s.oval(260, 170, 8)
    s.thin("M254,170H266")
    s.note(260, 208, "from below")
    s.place("base", 238, 170)
    s.place("side", 122, 150)


def tea_caddy(s: Sheet) -> None:
    """A caddy with a slip-on cap, the cap lifted."""
    s.body("M56,92C56,82 70,78 88,78H144C162,78 176,82 176,92V202H56Z")
    s.girdle(116, (60, 196))
    s.oval(116, 78, 26, 6)
    s.body("M92,54H140V78C140,84 92,84 92,78Z")
    s.oval(116, 54, 24, 5)
    s.oval(116, 54, 19, 3.5, "tone")
    s.turned(116, (20, 16), (26, 22), (27, 30, 1), (27, 42, 1))
    s.thin("M116,46V50")
    s.thin("M96,112H136V134C136,150 116,158 116,158C116,158 96,150 96,134Z")
    s.place("neck", 122, 70)
    s.beneath(264, 176, 38, 0.88, ry=24)
    s.lid_turned(264, 56, 32, 26, "cap, inside")


def purse(s: Sheet) -> None:
    """A mesh bag hanging from its frame."""
    s.line("M76,66C90,10 190,10 204,66")
    s.body("M80,74C54,120 60,190 92,208H188C220,190 226,120 200,74Z")
    for i in range(9):
        x = 72 + i * 17
        s.thin(f"M{x},84C{x + 4},120 {x + 2},160 {x + 4},202")
    for y in range(98, 206, 16):
        inset = max(0, (y - 160) * 0.5)
        s.thin(f"M{70 + inset},{y}C104,{y + 8} 176,{y + 8} {210 - inset},{y}")
    s.body("M66,64C100,46 180,46 214,64V80C180,64 100,64 66,80Z")
    s.oval(140, 47, 6)
    s.oval(70, 70, 6)
    s.oval(210, 70, 6)
    s.oval(76, 60, 7, 7, "line")
    s.oval(204, 60, 7, 7, "line")
    s.oval(76, 60, 7, 7, "line")
    s.place("inside frame", 120, 66)
    s.place("frame hinge", 210, 70)
    s.place("chain ring", 76, 58)


def toilet_box(s: Sheet) -> None:
    """A glass jar with a silver cover, the cover turned over beside it."""
    s.body("M56,118L50,190C50,202 182,202 182,190L176,118Z")
    s.thin("M84,122L80,196", "M116,122V198", "M148,122L152,196")
    s.body("M52,118V104C52,84 84,78 116,78C148,78 180,84 180,104V118Z")
    s.oval(116, 88, 30, 5, "thin")
    s.note(116, 222, "glass")
    s.place("rim", 152, 112)
    s.lid_turned(256, 130, 48, 34, "cover, from below")
    s.place("cover underside", 256, 130)


def dutch_small(s: Sheet) -> None:
    """Small wares: a box and a spoon."""
    s.body("M40,96H140V142C140,158 40,158 40,142Z")
    s.oval(90, 96, 50, 18)
    s.oval(90, 96, 40, 13, "thin")
    s.rod("M190,40C194,80 200,110 206,140", 6)
    s.oval(212, 172, 24, 34)
    s.oval(212, 172, 17, 26, "tone")
    s.oval(188, 30, 10)
    s.oval(90, 196, 34, 14)
    s.oval(90, 196, 28, 10, "tone")
    s.note(90, 226, "from below")
    s.place("maker's mark", 90, 196)


def japanese(s: Sheet) -> None:
    """A lidded jar, its body from below."""
    s.turned(116, (50, 92, 1), (66, 120), (62, 156), (40, 188, 1), (42, 198, 1))
    s.turned(116, (6, 54), (8, 60), (4, 66, 1), (30, 72), (54, 88), (56, 94, 1))
    s.thin("M66,150C90,110 110,170 140,130C150,118 160,130 172,120", "M86,140l8,-8l8,8l-8,8z")
    s.place("body", 150, 150)
    s.beneath(264, 176, 36, 0.84)
    s.lid_turned(264, 50, 34, 24, "lid: seldom marked")
