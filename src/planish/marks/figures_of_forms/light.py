"""Drawings of candlesticks and lamps, and of what stands on a desk."""

from planish.marks.figures_of_forms.sheet import Sheet

_STICK = (
    (17, 50, 1),
    (10, 58),
    (14, 76),
    (8, 82, 1),
    (6, 100),
    (15, 112, 1),
    (9, 122),
    (7, 150),
    (18, 166, 1),
    (26, 178),
    (44, 190, 1),
    (44, 204, 1),
)


def candlestick(s: Sheet) -> None:
    """A candlestick with a loose nozzle, a stem with a knop and a spread base."""
    s.dark("M110,20H122V46H110Z")
    s.turned(116, *_STICK)
    s.oval(116, 50, 22, 5)
    s.oval(116, 49, 7, 2, "tone")
    s.girdle(116, (10, 84), (44, 190))
    s.place("nozzle", 134, 50)
    s.place("stem knop", 116, 112)
    s.place("base edge", 146, 199)
    s.beneath(262, 168, 42, 0.84, 0.4)
    s.note(262, 233, "well, under the felt")
    s.place("well", 262, 168)


def candelabrum(s: Sheet) -> None:
    """A candlestick that carries branches with nozzles."""
    s.rod("M110,98C96,116 56,112 56,82", 5)
    s.rod("M110,98C124,116 164,112 164,82", 5)
    s.rod("M110,104C80,140 20,118 20,98", 5)
    s.rod("M110,104C140,140 200,118 200,98", 5)
    s.turned(
        110,
        (8, 84, 1),
        (5, 96),
        (12, 110, 1),
        (7, 120),
        (6, 150),
        (16, 166, 1),
        (24, 178),
        (42, 192, 1),
        (42, 204, 1),
    )
    for x, y in ((20, 80), (56, 62), (110, 58), (164, 62), (200, 80)):
        s.dark(f"M{x - 4},{y - 34}H{x + 4}V{y}H{x - 4}Z")
        s.turned(x, (8, y, 1), (6, y + 10), (9, y + 18, 1))
        s.oval(x, y + 19, 14, 4)
        s.oval(x, y, 8, 2.5)
    s.place("base edge", 140, 199)
    s.place("branch collar", 56, 84)
    s.place("nozzle", 204, 90)
    s.beneath(268, 178, 36, 0.84, 0.4)
    s.place("well", 268, 178)


def menorah(s: Sheet) -> None:
    """A Hanukkah lamp with a back plate and a row of burners."""
    s.body(
        "M56,156V76C56,60 78,66 86,50C92,38 116,34 130,20C144,34 168,38 174,50C182,66 204,60 204,76V156Z"
    )
    s.line("M130,56V112", "M112,112H148")
    for r in (14, 26, 38):
        s.line(f"M{130 - r},74C{130 - r},{86 + r / 2} {130 + r},{86 + r / 2} {130 + r},74")
    s.body("M40,156H220V172H40Z")
    for x in range(56, 216, 21):
        s.body(f"M{x - 8},156C{x - 8},148 {x + 8},148 {x + 8},156Z")
        s.line(f"M{x},149C{x - 3},144 {x + 1},142 {x},136")
    s.body(
        "M48,172L38,204H54L62,172Z",
        "M212,172L222,204H206L198,172Z",
        "M172,98L184,92L194,98V106H172Z",
    )
    s.oval(183, 92, 4)
    s.place("base", 130, 166)
    s.place("back plate", 78, 112)
    s.place("burner", 203, 152)


def inkstand(s: Sheet) -> None:
    """A tray with two ink pots and a pen trough, on feet."""
    for x, lid in ((86, True), (194, True)):
        s.box(x - 28, 88, 56, 54, 4)
        s.thin(f"M{x - 14},92V140", f"M{x + 14},92V140")
        if lid:
            s.turned(x, (4, 56), (5, 61), (2, 66, 1), (20, 72), (26, 84, 1), (26, 90, 1))
    s.turned(140, (12, 104, 1), (12, 140, 1))
    s.oval(140, 104, 12, 4)
    s.body("M26,142H254L240,172C200,180 80,180 40,172Z")
    s.line("M60,158C100,166 180,166 220,158")
    for x in (58, 222):
        s.line(
            f"M{x - 8},174C{x - 12},184 {x - 8},192 {x},192C{x + 8},192 {x + 12},184 {x + 8},174"
        )
    s.place("foot", 58, 190)
    s.place("pot lid", 206, 78)
    s.place("tray", 140, 172)
    s.places["underside or feet"] = (58, 188)


def inkwell(s: Sheet) -> None:
    """A glass well with a silver mount and a hinged lid."""
    s.body("M76,122L62,196C62,206 170,206 170,196L156,122Z")
    s.thin("M92,124L84,202", "M116,124V204", "M140,124L148,202")
    s.box(82, 104, 68, 20, 3)
    s.body("M82,100C82,66 150,66 150,100Z")
    s.oval(116, 70, 5)
    s.box(148, 96, 12, 10, 2)
    s.note(116, 224, "glass")
    s.place("mount", 134, 114)
    s.place("lid", 132, 84)
    s.lid_turned(252, 110, 34, 26)


def desk_seal(s: Sheet) -> None:
    """A seal for wax with a turned shaft."""
    s.turned(
        116,
        (14, 36, 1),
        (22, 54),
        (14, 76),
        (8, 90, 1),
        (12, 96),
        (8, 104),
        (12, 130),
        (24, 158, 1),
        (30, 168, 1),
        (30, 186, 1),
    )
    s.girdle(116, (8, 90), (24, 158), (30, 170))
    s.oval(252, 150, 34)
    s.oval(252, 150, 27, 27, "thin")
    s.line("M238,164V140L252,152L266,140V164")
    s.note(252, 200, "face")
    s.place("shaft", 120, 126)
    s.place("base ring", 138, 180)


def menu_holder(s: Sheet) -> None:
    """A clip for a card, on a base."""
    s.dark("M66,22H186V92H66Z")
    s.box(66, 22, 120, 70, 0, "thin")
    s.note(126, 40, "menu")
    s.body("M104,92C84,78 92,54 126,48C160,54 168,78 148,92C140,100 112,100 104,92Z")
    s.body("M120,98L118,150H134L132,98Z")
    s.turned(126, (10, 150, 1), (44, 162), (58, 174, 1), (58, 184, 1))
    s.place("base", 166, 178)
    s.place("stem", 126, 128)
    s.beneath(262, 168, 36, 0.86, ry=20)


def photograph_frame(s: Sheet) -> None:
    """A standing frame, front and back."""
    s.body("M36,40C60,24 132,24 156,40C160,80 160,160 156,204H36C32,160 32,80 36,40Z")
    s.oval(96, 116, 36, 52, "tone")
    s.oval(96, 116, 36, 52)
    s.oval(96, 102, 11, 13, "line")
    s.line("M74,152C76,126 116,126 118,152")
    s.thin("M48,54C70,42 122,42 144,54V192H48Z")
    s.box(206, 36, 92, 168, 8, "tone")
    s.box(206, 36, 92, 168, 8, "line")
    s.body("M242,60H262L274,210H232Z")
    s.line("M240,66H264")
    s.note(96, 224, "front")
    s.note(252, 228, "back, with strut")
    s.place("front lower edge", 122, 198)
    s.place("side edge", 158, 120)
    s.place("strut", 252, 150)


def pen(s: Sheet) -> None:
    """A pen or propelling pencil with a cap and clip."""
    s.body("M24,128L60,112H180V140H60Z", "M180,108H286C296,108 296,144 286,144H180Z")
    s.thin("M60,112V140", "M82,112V140", "M194,108V144", "M202,108V144")
    s.thin("M24,128H44")
    for x in range(92, 176, 10):
        s.thin(f"M{x},114V138")
    s.body("M282,108C282,96 240,98 222,100C214,102 214,108 222,108L274,110Z")
    s.note(120, 172, "barrel")
    s.note(240, 172, "cap")
    s.place("barrel end", 70, 126)
    s.place("clip", 248, 103)
    s.place("cap rim", 187, 126)


def cane_handle(s: Sheet) -> None:
    """The crook of a walking stick, its collar and the shaft."""
    s.dark("M150,118H170L166,236H154Z")
    s.line("M150,118L154,236", "M170,118L166,236")
    s.body(
        "M146,96V70C146,44 118,40 108,56C100,70 106,84 98,92C88,100 72,94 72,80C72,34 100,12 128,12C160,12 174,34 174,66V96Z"
    )
    s.box(143, 96, 34, 24, 3)
    s.thin("M143,103H177", "M143,113H177")
    s.place("collar", 160, 108)
    s.place("inside crook", 110, 58)
    s.note(220, 112, "collar")
    s.note(216, 190, "wooden shaft")


def bookmark(s: Sheet) -> None:
    """A bookmark of trowel form with its handle."""
    s.body("M132,104C132,160 150,200 160,216C170,200 188,160 188,104C188,92 132,92 132,104Z")
    s.thin("M140,108C142,154 154,186 160,200C166,186 178,154 180,108")
    s.line("M160,94V80")
    s.body("M154,80C146,60 148,36 160,20C172,36 174,60 166,80Z")
    s.place("near top", 160, 104)
    s.place("face", 160, 150)
