"""Words by which a pasted line about a sale is read: shapes of figures, and the trade's phrases."""

import re

_CODES = "GBP|USD|EUR|CHF|CAD|AUD|NZD|HKD|SGD|JPY|CNY|INR|DKK|SEK|NOK|DEM|FRF|ITL|NLG|BEF|ATS|ESP|IEP|ZAR|MXN|PLN|CZK|HUF"
SIGN = rf"(?:US\$|CA?\$|AU?\$|NZ\$|HK\$|S\$|£|€|\$|¥|(?:{_CODES})\b)"
_AMOUNT = r"\d{1,3}(?:[,.'’ \u00a0]\d{3})+(?:[.,]\d{2})?(?!\d)|\d+(?:[.,]\d{1,2})?(?!\d)"
#: an amount with its currency on either side, perhaps the first of a range
MONEY = re.compile(
    rf"(?P<before>{SIGN})\s?(?P<amount>{_AMOUNT})(?P<thousand>k\b)?(?:\s*[-–—]\s*(?:{SIGN})?\s?(?P<to>{_AMOUNT})(?P<tok>k\b)?)?"
    rf"|(?P<amount2>{_AMOUNT})\s?(?P<after>{SIGN})"
)
#: an amount without a currency, where a word says that it is a price
BARE = re.compile(
    rf"\b(?P<word>hammer(?: price)?|hammered at|knocked down (?:at|for)|sold for|made|fetched|realised|realized)"
    rf"[ :]+(?P<amount>{_AMOUNT})",
    re.IGNORECASE,
)
#: basis -> phrases, the narrow ones first
PHRASES = (
    ("estimate", r"\best(?:imates?|imated|\.)?\b"),
    ("unsold", r"\b(?:unsold|bought[- ]in|passed|not sold|failed to sell|no sale|withdrawn|top bid)\b"),
    ("net-to-seller", r"\b(?:net to (?:the )?seller|seller (?:received|got)|seller's net)\b"),
    ("with-premium", (r"(?:\b(?:with|incl\.?|inclusive of|including|inc\.?|plus)\s*(?:the\s+)?(?:buyer[’']?s?[’']?\s+)?"
                     r"(?:premium|bp|fees|charges)\b|\bpremium[- ]inclusive\b|\bw/ ?bp\b|\b(?:mit|inkl\.?) Aufgeld\b|\bfrais (?:inclus|compris)\b|\bwith bp\b)")),
    ("hammer", r"\b(?:hammer(?: price)?|hammered at|knocked down (?:at|for)|under the hammer|Zuschlag|adjugé)\b"),
    ("private", r"\b(?:private(?:ly)?(?: treaty| sale)?)\b"),
    ("trade-paid", r"\b(?:trade price|paid by (?:a|the) dealer)\b"),
    ("retail-asked", r"\b(?:asked|asking(?: price)?|offered (?:at|for)|listed (?:at|for)|for sale at|priced at)\b"),
    ("retail-paid", r"\b(?:paid|bought for|bought at)\b"),
    ("sold", r"\b(?:sold(?: for)?|made|fetched|realised|realized|price)\b"),
)  # fmt: skip
_MONTH = r"(?:jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)"
#: days and months of a sale, surest first
DAYS = (
    rf"\b\d{{1,2}}(?:st|nd|rd|th|\.)?\s+(?:of\s+)?{_MONTH}\.?,?\s+\d{{4}}\b",
    rf"\b{_MONTH}\.?\s+\d{{1,2}}(?:st|nd|rd|th)?,?\s+\d{{4}}\b",
    r"\b\d{4}-\d{2}-\d{2}\b",
    r"\b\d{1,2}[./-]\d{1,2}[./-]\d{4}\b",
    rf"\b{_MONTH}\.?,?\s+\d{{4}}\b",
)
LOT = r"\b(?:lots?|los)\b\.?\s*(?:no\.?|number|nr\.?|#)?\s*(?P<lot>\d+[A-Za-z]?(?:\s*[-–]\s*\d+)?)\b|#(?P<hash>\d+)\b"
SALE = r"\b(?:sale|auction)\s*(?:no\.?|number|nr\.?|#)?\s*(?P<sale>[A-Z]{0,3}\d{2,}[A-Z]{0,3})\b"
_UNIT = r"(?:troy\s+ounces?|oz\.?\s*t(?:roy)?\b|ozs?t?\b|ounces?\b|kg\b|kilos?\b|g\b|gms?\b|grs?\b|grams?\b|grammes?\b)"
_FIGURE = r"\d+(?:[.,]\d+)*\s*[½¼¾]?"
WEIGHT = (
    rf"(?P<first>\b(?:gross|net|all[- ]in|weighable|total)\b)?(?:\s*(?:weight|wt\.?|weighing|approx\.?|about|ca?\.))*[\s:]*"
    rf"(?P<mass>{_FIGURE}\s*{_UNIT}\.?(?:\s*{_FIGURE}\s*dwts?\b\.?)?|{_FIGURE}\s*dwts?\b\.?)"
    r"\s*(?P<last>\(?\b(?:gross|net|all[- ]in|weighable)\b\)?)?"
)
FINENESS = (
    r"\b(?P<word>sterling|britannia(?= (?:silver|standard)))(?:\s+(?:silver|standard))?\b"
    r"|(?<![\d£$€,.])(?P<figure>999|980|958(?:\.4)?|950|935|930|925|916|900|875|835|833|830|826|813|800|750)"
    r"(?:\s*(?:/\s*1000|‰|silver|standard|fine)\b)"
)
MADE = r"\b(?:(?:c\.?|ca\.?|circa|about|dated|um|gegen|vers|verso)\s*)?(?:1[3-9]\d\d|20[0-4]\d)(?:\s*[-–/]\s*(?:\d{4}|\d{2})\b|s\b)?(?!\d)"
STYLE = (
    r"\b(?:George\s+(?:IV|III|II|I)|William\s+(?:IV|III|and Mary|& Mary)|Queen\s+Anne|Charles\s+(?:II|I)|"
    r"James\s+(?:II|I)|Elizabeth(?:\s+(?:II|I))?|Edward\s+VII|Georgian|Victorian|Edwardian|Regency|Louis\s+X[VI]+|"
    r"Restauration|Empire|Biedermeier|Commonwealth|Federal|Rococo|Baroque|Neoclassical|Arts (?:and|&) Crafts|"
    r"Art\s+Deco|Art\s+Nouveau|Jugendstil|Aesthetic|modernist)\b"
)
PLACES = (
    r"\b(?:London|Birmingham|Sheffield|Edinburgh|Glasgow|Dublin|Cork|Limerick|Chester|Exeter|Newcastle|York|Norwich|"
    r"Aberdeen|Paris|Lyon|Strasbourg|Bordeaux|Augsburg|Nuremberg|Berlin|Hamburg|Dresden|Hanau|Vienna|Prague|Budapest|"
    r"Amsterdam|The Hague|Rotterdam|Utrecht|Brussels|Antwerp|Ghent|Milan|Rome|Venice|Naples|Turin|Genoa|Madrid|"
    r"Barcelona|Lisbon|Porto|Copenhagen|Stockholm|Oslo|Bergen|Helsinki|St\.? Petersburg|Moscow|Riga|Warsaw|New York|"
    r"Boston|Philadelphia|Baltimore|Providence|Newport|Charleston|Canton|Hong Kong|Calcutta|Madras|Malta)\b"
)
FORMS = (
    "coffee pot", "chocolate pot", "teapot", "tea pot", "tea caddy", "caddy spoon", "tea service", "tea set",
    "coffee service", "hot water jug", "cream jug", "milk jug", "beer jug", "claret jug", "ewer", "sugar bowl",
    "sugar basin", "sugar basket", "sugar tongs", "sugar caster", "caster", "punch bowl", "punch ladle",
    "soup ladle", "sauce ladle", "ladle", "monteith", "bowl", "porringer", "quaich", "tankard", "mug", "beaker",
    "goblet", "tumbler cup", "two-handled cup", "loving cup", "cup and cover", "chalice", "cup", "salver", "waiter",
    "tray", "meat dish", "entree dish", "entrée dish", "dish ring",
    "dish", "charger", "plate", "sauceboat", "sauce boat",
    "sauce tureen", "soup tureen", "tureen", "argyle", "cake basket", "bread basket", "basket", "epergne",
    "centrepiece", "centerpiece", "candlestick", "candelabrum", "candelabra", "chamberstick", "taperstick",
    "snuffer tray", "inkstand", "standish", "snuff box", "snuffbox", "vinaigrette", "vesta case", "card case",
    "cigarette case", "cigarette box", "box", "nutmeg grater", "wine label", "wine coaster", "wine funnel",
    "wine cooler", "cocktail shaker", "mustard pot", "salt cellar", "salt", "pepper", "cruet", "toast rack",
    "fish slice", "asparagus tongs", "marrow scoop", "skewer", "canteen", "flatware service", "table spoon",
    "tablespoon", "dessert spoon", "teaspoon", "spoon", "fork", "knife", "dressing table set", "mirror", "frame",
    "photograph frame", "kettle", "tea urn", "coffee urn", "urn", "vase", "flask", "decanter", "buckle", "bell",
)  # fmt: skip
GROUPS = (
    (
        "assembled",
        None,
        r"\b(?:assembled|matched|harlequin|married) (?:pair|set|service)\b(?:\s+of)?",
    ),
    ("pair", "2", r"\b(?:a |an )?pairs? of\b|\bpair\b"),
    ("set", None, r"\b(?:a )?set of (?P<count>[\w-]+)\b"),
    ("service", None, r"\b(?P<count>\w+)[- ]pieces?\b"),
)
COUNTS = {
    "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9,
    "ten": 10, "eleven": 11, "twelve": 12, "eighteen": 18, "twenty-four": 24,
}  # fmt: skip
ENGRAVINGS = (
    ("erased", r"\b(?:erased|removed) (?:arms|crest|initials|monogram|engraving|armorial)s?\b"),
    ("none", r"\b(?:no monogram|without monogram|unengraved|no engraving)\b"),
    ("presentation", r"\b(?:presentation inscription|inscribed|inscription)\b"),
    ("armorial", r"\b(?:engraved with )?(?:an? )?(?:armorials?|coat of arms|coats of arms|arms)\b"),
    ("crest", r"\b(?:engraved with )?(?:an? )?(?:crests?|crested)\b"),
    ("initials", r"\b(?:engraved with )?(?:monogram(?:med|s)?|initials?|initialled)\b"),
)
ATTRIBUTIONS = (
    ("attributed", r"\b(?:attributed to|attr\.? to|probably by|possibly by)\s+"),
    ("workshop", r"\b(?:workshop of|circle of|studio of)\s+"),
    ("manner", r"\b(?:in the (?:style|manner) of|manner of|style of|after)\s+"),
    ("marked", r"\b(?:maker'?s mark of|mark of|maker:?|by)\s+"),
)
FAULTS = (
    ("repaired", r"\b(?:repair(?:ed|s)?|solder(?:ed)? repair|old repairs?)\b"),
    ("split", r"\b(?:splits?|holes?|patch(?:ed)?)\b"),
    ("worn", r"\b(?:worn|wear|thin)\b"),
    ("replaced-part", r"\b(?:replaced|replacement|later) (?:handle|finial|lid|cover|foot|hinge|knop|insulators?)\b"),
    ("missing-part", r"\b(?:lacking|missing|without) (?:its |the |a )?(?:handle|finial|lid|cover|liner|stopper|burner)\b"),
    ("later-decoration", r"\blater (?:chas(?:ed|ing)|decorat(?:ed|ion)|embossed)\b"),
    ("converted", r"\b(?:converted|conversion|altered)\b"),
    ("rubbed-marks", r"\b(?:rubbed|worn|indistinct) marks?\b|\bmarks? (?:rubbed|worn)\b"),
)  # fmt: skip
METALS = (
    ("fused-plate", r"\b(?:old )?sheffield plate\b"),
    ("electroplate", r"\b(?:electroplated?|silver[- ]plated?|EPNS|EPBM)\b"),
    ("filled", r"\b(?:weighted|loaded|filled)(?: bases?)?\b"),
)
#: a name: capitalised words, with the small words within names
NAME = (
    r"[A-Z][\w'’.-]*(?:\s+(?:(?:de|du|der|den|van|von|la|le|and|&|et|of)\s+)*(?:[A-Z&][\w'’.-]*))*"
)
#: words that carry no fact of their own
STOP = frozenset({
    "a", "an", "and", "at", "the", "of", "in", "on", "for", "with", "by", "to", "from", "was", "were",
    "it", "its", "is", "as", "silver", "lot", "lots", "sale", "sold", "hammer", "price", "premium",
    "weight", "weighing", "each", "approx", "about", "total", "standard", "circa", "c", "ca", "no",
    "number", "realised", "realized", "made", "fetched", "pieces", "piece", "hallmarked", "dated",
})  # fmt: skip
