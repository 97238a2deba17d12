"""Words that writers use about marks, by what they say. Common practice of the trade.

Each table maps a phrase to its meaning; phrases are matched without case, accents, hyphens,
possessive or plural s. Devices, towns, makers and struck words come from the library instead.
"""

from planish.marks.observation import Case, Legibility, Style, Technique

MAKER = "maker's mark"
DATE = "date letter"
TOWN = "town mark"
DUTY = "duty mark"
FINENESS = "fineness"
STANDARD = "standard mark"
OWNER = "owner's initials"
PSEUDO = "pseudo-hallmark"


def word_set(text: str) -> frozenset[str]:
    """The words of a text."""
    return frozenset(text.split())


def each(meaning: str, phrases: str) -> dict[str, str]:
    """Each of the phrases, parted by ``;``, with the same meaning."""
    return dict.fromkeys((p.strip() for p in phrases.split(";")), meaning)


ROLES: dict[str, str] = {
    **each(
        MAKER,
        "maker's mark; makers mark; maker mark; marker's mark; maker's stamp; maker's initials; "
        "maker's name; maker's punch; maker's symbol; maker's trademark; sponsor's mark; sponsor mark; "
        "goldsmith's mark; silversmith's mark; master's mark; mark of the maker; mark of maker; "
        "manufacturer's mark; manufacturer mark; manufacturer's stamp; firm's mark; firm mark; "
        "meisterzeichen; meistermarke; poinçon de maître; workmaster's mark; workmaster mark; "
        "workmaster; workshop mark; workshop; artel mark; artel; factory mark; company mark; "
        "trade mark; trademark; maker; sponsor; touchmark of; maker's initials mark",
    ),
    **each(
        DATE,
        "date letter; date mark; dateletter; datemark; year letter; year mark; yearly mark; "
        "annual letter; annual mark; date letter mark; letter date; jahresbuchstabe; warden's letter; "
        "date/letter; year stamp; assay letter; date code; year code; date letter for; year letter mark",
    ),
    **each(
        TOWN,
        "town mark; city mark; assay office mark; office mark; burgh mark; beschauzeichen; "
        "stadtmarke; city emblem; town emblem; place mark; assay town mark; hall mark of the town",
    ),
    **each(
        DUTY,
        "duty mark; excise mark; tax mark; duty stamp; tax stamp; drawback mark; duty",
    ),
    **each(
        FINENESS,
        "fineness mark; fineness; fineness number; purity mark; purity; purity number; alloy mark; "
        "alloy number; alloy; silver alloy; silver alloy mark; alloy stamp; silver mark; "
        "silver content mark; zolotnik mark; quality mark; silver fineness; silver purity; hallmark number",
    ),
    **each(
        STANDARD,
        "standard mark; sterling mark; sterling standard mark; sterling standard; silver standard mark; "
        "britannia standard mark; metal mark; silver standard; standard stamp",
    ),
    **each(
        "assay master's mark",
        "assay master's mark; assay master; assay master's initials; assaymaster's mark; assaymaster; "
        "assayer's mark; assayer's initials; assayer; assayer mark",
    ),
    **each("assay mark", "assay mark; assay stamp; certification mark; control mark; id mark; "
            "identification mark; guarantee stamp; assay office stamp; recognition mark"),
    **each("deacon's mark", "deacon's mark; deacon's punch; deacon's initials; deacon"),
    **each("warden's mark", "warden's mark; warden; jurande mark; maison commune mark"),
    **each("charge mark", "charge mark"),
    **each("discharge mark", "discharge mark; décharge"),
    **each("guarantee mark", "guarantee mark; guaranty mark"),
    **each("countermark", "countermark; counter mark; bigorne; bigorne countermark"),
    **each("import mark", "import mark; foreign mark; import stamp; swan import mark"),
    **each("export mark", "export mark"),
    **each("commemorative mark", "jubilee mark; coronation mark; millennium mark; commemorative mark"),
    **each("journeyman's mark", "journeyman's mark; journeyman mark; tally mark; workman's mark"),
    **each(
        "retailer's mark",
        "retailer's mark; retailer mark; retailer; retailers; retailer's stamp; retailer's name; retail mark; "
        "retailed by",
    ),
    **each(
        "pattern number",
        "pattern number; pattern no.; model number; model no.; shape number; serial number; stock number; "
        "style number; number stamp; pattern; design number; order number",
    ),
    **each("registered design", "registered design; registration number; registry number; reg. no.; rd no.; "
            "registry mark; registration mark; kite mark; diamond registration mark; rd number; reg no"),
    **each("patent", "patent mark; patent number; patent date; patent"),
    **each(
        PSEUDO,
        "pseudo-hallmark; pseudo hallmark; pseudo mark; pseudomark; imitation hallmark; simulated hallmark; "
        "simulated hallmark; simulating hallmark; imitating hallmark; mock hallmark; faux hallmark; pseudo-hall mark",
    ),
    **each(
        OWNER,
        "owner's initials; owner initials; owner's monogram; owners' initials; family initials; "
        "ownership initials; initials of the owner; betrothal initials; marriage initials",
    ),
    **each("scratch weight", "scratch weight; scratchweight; engraved weight; weight mark"),
    **each("date", "date; year; dated"),
}  # fmt: skip

#: struck roles that are often named without being written down
NAMED_ONLY = frozenset(
    (MAKER, DATE, TOWN, DUTY, FINENESS, STANDARD, "assay master's mark", "assay mark", "deacon's mark",
     "warden's mark", "charge mark", "discharge mark", "guarantee mark", "countermark", "import mark",
     "export mark", "commemorative mark", "journeyman's mark", "retailer's mark", "registered design")
)  # fmt: skip

STYLES: dict[str, Style] = {
    **dict.fromkeys(
        ("gothic", "black letter", "blackletter", "old english", "fraktur", "black letter letter",
         "gothic letter", "church text", "gothic script", "black letter script", "textura"),
        Style.BLACK_LETTER,
    ),
    **dict.fromkeys(
        ("script", "cursive", "flowing script", "copperplate", "handwriting", "feathered script",
         "ornate script", "script letter", "in script", "cursive script", "longhand"),
        Style.SCRIPT,
    ),
    **dict.fromkeys(
        ("roman", "serif", "block", "seriffed", "roman letter", "block letter", "serif letter",
         "block capital", "latin"),
        Style.ROMAN,
    ),
    **dict.fromkeys(("italic", "slanted", "sloping", "slanted roman", "italic roman",
                     "sloped"), Style.ITALIC),
    **dict.fromkeys(("lombardic", "lombard", "uncial"), Style.LOMBARDIC),
    **dict.fromkeys(("court hand", "court-hand", "secretary hand", "chancery hand"), Style.COURT_HAND),
    **dict.fromkeys(("sans serif", "sans-serif", "sans", "sanserif", "grotesque"), Style.SANS),
    **dict.fromkeys(("gaelic", "uncial irish", "irish letter"), Style.GAELIC),
}  # fmt: skip

CASES: dict[str, Case] = {
    **dict.fromkeys(
        ("lower case", "lowercase", "small letter", "minuscule", "lower-case"),
        Case.SMALL,
    ),
    **dict.fromkeys(
        ("upper case", "uppercase", "capital", "capital letter", "majuscule", "caps", "cap",
         "upper-case"),
        Case.CAPITAL,
    ),
}  # fmt: skip

LEGIBILITY: dict[str, Legibility] = {
    **dict.fromkeys(
        ("clear", "clearly", "crisp", "legible", "sharp", "well struck", "well-struck", "bright",
         "clearly struck", "good mark", "readable"),
        Legibility.CLEAR,
    ),
    **dict.fromkeys(
        ("worn", "rubbed", "partial", "partially", "partly struck", "effaced", "faint", "slightly worn",
         "slightly rubbed", "partly worn", "partly rubbed", "weak", "weakly struck", "poorly struck",
         "incomplete", "damaged", "double struck", "double-struck", "doublestruck", "blurred", "worn down",
         "heavily worn", "lightly struck", "lightly rubbed", "off struck", "slightly distorted", "distorted",
         "fair", "part struck", "badly struck", "a little worn", "a little rubbed", "stretched"),
        Legibility.WORN,
    ),
    **dict.fromkeys(
        ("obscure", "obscured", "unclear", "indistinct", "partly legible", "hard to read",
         "partially legible", "not clear", "very worn", "very rubbed", "poor", "half legible", "partly erased",
         "partially obscured", "partly obscured", "badly worn", "badly rubbed", "almost gone", "ambiguous",
         "much rubbed", "much worn", "not legible in full", "indeterminate", "hard to make out", "difficult to read", "barely legible",
         "barely visible", "just visible", "mostly gone", "half gone"),
        Legibility.OBSCURE,
    ),
    **dict.fromkeys(
        ("illegible", "indecipherable", "unreadable", "undecipherable", "erased", "worn away",
         "rubbed out", "not legible", "rubbed away", "cannot be read", "can't be read", "cannot read",
         "can't read", "not readable", "worn off", "obliterated", "lost", "unread", "undecipherable",
         "could not be read", "can't make out", "cannot make out", "can not make out", "could not make out",
         "couldn't make out", "unable to make out", "can't be made out", "cannot be made out", "too worn to read",
         "too rubbed to read", "too faint to read", "not possible to read", "impossible to read", "worn out", "polished away", "defaced", "polished out"),
        Legibility.ILLEGIBLE,
    ),
}  # fmt: skip

#: verbs and states that say how; None leaves the technique open
TECHNIQUES: dict[str, Technique | None] = {
    **dict.fromkeys(
        ("in relief", "raised", "relief", "cameo", "embossed", "in raised letter", "raised letter"),
        Technique.RAISED,
    ),
    **dict.fromkeys(("incuse", "intaglio", "sunk", "recessed", "in intaglio"), Technique.INCUSE),
    **dict.fromkeys(
        ("engraved", "inscribed", "incised", "bright cut", "bright-cut", "hand engraved", "engraving",
         "prick engraved", "inscription", "engraved inscription", "engraved with", "inscribed with",
         "monogrammed", "etched", "initialled", "engraved mark", "chased"),
        Technique.ENGRAVED,
    ),
    **dict.fromkeys(
        ("scratched", "pricked", "pounced", "graffito", "prick dotted", "pricked inscription", "stippled",
         "pricked with", "scratched with", "hand scratched"),
        Technique.SCRATCHED,
    ),
    **dict.fromkeys(("cast",), Technique.CAST),
    **dict.fromkeys(("printed", "transfer printed", "paper label", "label", "acid etched",
                     "acid-etched", "laser", "lasered", "laser marked"), Technique.PRINTED),
    **dict.fromkeys(
        ("stamped", "struck", "punched", "impressed", "imprinted", "stamp", "stamp reads", "marked",
         "hallmarked", "hall marked", "hall-marked", "hm", "marking", "stamped with", "struck with",
         "marked with", "bears", "bearing", "reads", "reading", "stamped mark", "mark reads", "marks read",
         "struck mark", "punched with", "impressed with", "it says", "says", "hallmarked with", "backstamp",
         "overstruck", "overstruck with", "overstriking", "overstamped", "backstamped", "back stamped", "signed", "marked as", "lettered", "overstamped with"),
        None,
    ),
}  # fmt: skip
#: of these, what names an assay office mark when a town follows
HALLMARKED = frozenset(
    (
        "hallmarked",
        "hallmark",
        "hall marked",
        "hm",
        "hall mark",
        "marked",
        "h.m.",
        "hallmarked with",
        "stamped",
    )
)

#: nouns for a mark that say no more
GENERIC = (
    "mark; hallmark; hall mark; punch; stamp; touchmark; touch mark; punchmark; punch mark; impression; "
    "touch; marking; set of mark; full mark; full set of mark; full hallmark; set of hallmark; strike; "
    "silver hallmark; silver mark; english hallmark; british hallmark; symbol; emblem; device; image; "
    "silver stamp; stamped mark; struck mark; frame mark; full set; row of mark; row of punch; sign; logo; "
    "picture; figure of; shape of; form of; depiction of; image of; picture of; representation of; identical punch; "
    "hm; control; assay scratch"
)

LETTER_NOUNS = (
    "letter; initial; the letter; the initial; monogram; cipher; cypher; character; word; wording; "
    "name; numeral; number; figure; digit; no.; no; nr; nos.; text; legend; monogram of; the word; the name; #; "
    "abbreviation; lettering; surname; conjoined initial"
)

OUTLINES = (
    "rectangle; oblong; square; oval; ovoid; ellipse; circle; round; roundel; disc; disk; shield; escutcheon; "
    "lozenge; diamond; trefoil; quatrefoil; cinquefoil; heart; cartouche; hexagon; octagon; pentagon; triangle; "
    "reserve; punch; surround; panel; frame; field; outline; contour; border; band; banner; scroll; pennant; "
    "pennant flag; stamp; ground; cameo; depression; compartment; shaped punch; heart shape; ring; "
    "sunken crown shape; crown shape; shape; bar; ribbon; kidney; tablet; star shape; escallop; flag; lobes; "
    "serrated; conforming; conforming surround; conforming outline; box; circular; oval shaped; trapezoid; "
    "parallelogram; half circle; semicircle; arc; arch; bell shape; shaped shield; shaped outline; drop; "
    "cut-corner rectangle; window; garter; wreath; barrel; lozenge shape; "
    "shaped oval; engrailed oval; mantle; rectangular; oval frame; crescent shape; leaf shape; key shape; "
    "chamfered rectangle; curved band; beaded circle; beaded oval; twelve-sided figure; belt; bow tie shape"
)
OUTLINE_WORDS = word_set(
    "rectangular circular oval round square shaped shield shielded serrated dotted beaded engrailed "
    "canted chamfered clipped cut cornered corner corners conforming plain pointed lobed double single "
    "fitted raised sunken textured curvilinear curved straight sided rounded rounder bevelled beveled upper lower "
    "top bottom bottomed flat based ended notched indented triangular diamond lozenge heart trefoil "
    "quatrefoil separate two three four five six own individual same elaborate wavy scalloped small large "
    "long narrow partially fully semi half irregular ornate oblong horizontal vertical banded framed "
    "elongated heraldic pennant arched stepped octagonal hexagonal pentagonal baroque kidney "
    "matching similar shaped-sided shallow broad decorative decorated foliate zigzag bordered border "
    "incuse sunk recessed concave convex cusped crowned outlined tooth edged concentric simple "
    "angular angled trapezoidal kite bell crown flag ogee shield-like rough french english"
)
CONTAINERS = (
    "in; within; inside; on; contained in; contained within; enclosed in; enclosed by; enclosed within; set in; "
    "into; framed by; all in; all within; each in; both in; each within; "
    "in the shape of; placed in; struck in; of; shaped as"
)

PARTS = (
    "lid; cover; body; bodice; handle; bowl; stem; foot; foot rim; footrim; foot-rim; finial; spout; base; blade; "
    "neck; collar; terminal; shank; knop; drip pan; nozzle; liner; stand; frame; mount; thumbpiece; thumb piece; "
    "hinge; sconce; column; tine; prong; hilt; shell; guard; knuckle-guard; pommel; washer; rib; arm; back plate; "
    "foot-ring; foot ring; plinth; tray; box; cup; glass holder; holder; plug; handle stem; cover bezel; bezel; "
    "bezel of cover; cover flange; flange; cover foot; pull; grip; shell grip; handle grip; ferrule; link; pierced cover; "
    "interior; flat; insert; drawer; cap; stopper; burner; wick; chain; clasp; finger rest; socket; pin; "
    "each piece; hinged lid; hinged cover; hinged support; detachable lid; saucer; ladle; spoon; fork; knife; "
    "shaker; teapot; coffeepot; coffee pot; sugar bowl; cream jug; jug; sleeve; bail; ring; sauce boat; "
    "knife handle; knife blade; bowl of spoon; pan; shade; feet; leg; apron; gallery; hilt arm; lock; vessel; tankard; beaker; porringer; caster; creamer; can; cann; urn; piece; object; salver; waiter; candlestick; sauceboat; pitcher; ewer; snuffbox;  rear arm; "
    "shoulder of fork; shoulder; neck rim; outer case; inner case; case; dust cover; cuvette; tube; barrel; cage; "
    "spout cover; strap; tongs; inkwell; dish; plate; mirror; brush; buckle; button; band; pot; pourer"
)
SPOTS = (
    "underside; underneath; bottom; reverse; back; front; rim; side; edge; center; centre; center punch; centre punch; "
    "centerpunch; centrepunch; center point; centerpoint; centrepoint; middle; lip; bend; inside; outside; obverse; exterior; "
    "corner; end; heel; drop; face; below rim; under the base; table; border; marly; well; upper end; "
    "either side; each side; one side; both side; other side; opposite side; opposite; end of handle; "
    "base rim; base edge; base plate; undersurface; under surface; verso; recto; top edge; left side; right side; "
    "left; right; centerpiece; centrepiece; handle back; handle end; finger end; in the bowl; surface; angle; heel of bowl; "
    "near the rim; top; top side; front side; neck side; point of balance; shoulders; flat bottom; stem back; undersides; fleur de lys; outer rim; inner rim"
)
SPOT_WORDS = word_set(
    "the a an of and each both either its their one other upper lower inner outer near by at to on in left right "
    "top bottom front back under beneath below above higher inside interior exterior outside underneath rounded inset flat "
    "hinged rear side sides edge reverse underside metal main detachable matching opposite same all every this "
    "that from along towards toward around round over across between beside also again outer centre center "
    "central small large great handle's piece part first second third two three four pair hind applied "
    "separate upside"
)
PREPOSITIONS = word_set(
    "higher lower on in under beneath at to near below above inside underneath along by over from around within behind "
    "outside across beside upon through off against onto towards between"
)

COUNTS: dict[str, int] = {
    "once": 1, "one time": 1, "twice": 2, "two times": 2, "x two": 2, "x2": 2, "struck twice": 2, "in two places": 2,
    "three times": 3, "thrice": 3, "x three": 3, "x3": 3, "in three places": 3, "four times": 4, "x four": 4,
    "x4": 4, "five times": 5, "six times": 6, "repeated": 2, "struck again": 2, "duplicated": 2, "doubled": 2,
    "stamped twice": 2, "struck three times": 3, "repeated three times": 3, "repeated four times": 4,
    "repeated twice": 3, "in four places": 4, "punched twice": 2, "struck four times": 4,
    "2x": 2, "3x": 3, "4x": 4, "twice on each": 2, "stamped three times": 3, "marked twice": 2,
}  # fmt: skip

NUMBERS: dict[str, int] = {
    "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9,
    "a pair of": 2, "pair of": 2, "several": 0, "various": 0, "some": 0, "other": 0, "numerous": 0, "traces of": 0,
    "a set of": 0, "another": 1, "the other": 1, "one other": 1,
}  # fmt: skip

DOUBTS = (
    "possibly; probably; perhaps; maybe; apparently; likely; tentatively; seemingly; presumably; "
    "looks like; look like; appears to be; appear to be; might be; may be; could be; seems to be; possible; probable; "
    "what looks like; what appears to be; i think; i believe; uncertain; doubtful; some sort of; some kind of; "
    "a kind of; resembling; not sure; unsure; like a; tentatively read; something like; questionable; presumed; "
    "attributed; spurious; may be spurious; possibly spurious; most likely; very likely; looking like; or similar; maybe a; seems like; misread"
)
ALTERNATIVES = (
    "or; or possibly; or maybe; or perhaps; alternatively; or else; or probably; or is it; or even"
)

NEGATIONS = (
    "no; without; lacking; lacks; not; missing; absent; no visible; without any; no other; not any; there is no; "
    "there are no; does not have; has no; have no; not marked with; no trace of; never had"
)
UNMARKED = (
    "unmarked; no mark; no marks; not marked; without mark; no hallmark; not hallmarked; no visible mark; "
    "apparently unmarked; unhallmarked; no hallmarks; no other mark; no other marks; no mark visible; "
    "without hallmarks; no marks found; no stamps; blank; others blank; the rest blank"
)
PARTIAL = (
    "record continues; not in the excerpt; not in this excerpt; letter not given; not given; not read in the record; "
    "not transcribed; not recorded; one of the mark; one of a line; as transcribed; excerpt end; "
    "not reproduced; text break off; and other hallmark; various hallmark; other hallmark; and other mark; and more; "
    "remaining mark not described; etc; among other; among other mark; with hallmark; full hallmark; "
    "not described; not listed; marks not given; some mark; several mark; letter not read; only part; partly recorded; "
    "one of a line of five impression; not in the record; not stated; letter not stated; not visible in the photograph"
)
JOINED = (
    "conjoined; joined; ligatured; in monogram; interlaced; intertwined; ligature; entwined; conjoined letter; "
    "as a monogram; in ligature"
)
ORDER = (
    "left to right; from left to right; l to r; right to left; r to l; clockwise; anticlockwise; from top to bottom; "
    "top to bottom; in that order; in this order; in a row; in a line; either side of; flanked by; circled with; "
    "encircled by; surrounded with; side by side; all around; arched; curved; right side up; right-side up; left right-side up; upside down"
)
OVER = "over; above; surmounting; on top of"
CHARGE_JOINS = (
    "with; beneath; below; under; above; over; between; flanked by; crowned; surmounted by; surmounting; within; "
    "enclosing; around; below a; crowned above; and; separated by; below which; topped by; under a; beside; inside; "
    "atop; framing; charged with; holding; supporting; above which; conjoined with; either side of; mullet"
)
CHARGE_WORDS = word_set(
    "crown crowned coronet pellet pellets mullet star stars annulet crescent rose shell escallop scallop fleur "
    "de lys lis fleurs cinquefoil quatrefoil trefoil bird sun heart device dot dots grain grains cross bar "
    "leaf pendant ring above below between beneath under over one two three four five six and a an the crude small large with "
    "chevron chevrons sun's ermine roundel flame key anchor lion eagle pointed point cup bear hand flower lys sprig"
)

FACING = word_set(
    "facing left right profile in to the side sinister dexter looking forward forwards face full affronty "
    "guardant regardant standing spreadwing spread-wing displayed walking upside down up sideways reversed "
    "right-side right-facing left-facing view viewed turned backwards inverted bearded laureate wrong way "
    "lying full-length rotated degrees"
)

#: words with no weight of their own
FILLERS = word_set(
    "a an the of with and is are was were be been has have had it its this that these those there which as "
    "for from to by in on at into onto also then both each all other only too very quite just own here so "
    "but plus comprising including include showing shows show shown together along alongside followed next beside "
    "mark marks single same any fully bearing bears having has contains containing consisting consists "
    "respectively namely viz being either itself again further additional another others one "
    "set sets row group line lines series first second third fourth fifth last beside adjacent left right "
    "separate individual full usual i we my our your his her their they you me mine found see seen "
    "addition order followed then recorded period zolotnik zolotniki provincial visible overlapping identical can do does did will would may might could should not even still "
    "where when what who whose while after before between during above below over under up down out off "
    "large small tiny little big somewhat rather slightly"
)
