"""Towns, countries, metals, periods and struck words, beside those of the library."""

from planish.marks.describe.vocabulary import each as _each
from planish.marks.describe.vocabulary import word_set

METALS: dict[str, str] = {
    phrase: phrase
    for phrase in (
        "sterling silver", "sterling", "solid silver", "coin silver", "silver plate", "silver plated",
        "silverplate", "electroplate", "electroplated", "electroplated nickel silver", "old sheffield plate",
        "sheffield plate", "nickel silver", "german silver", "britannia metal", "britannia silver", "pewter",
        "fused plate", "silver gilt", "silver-gilt", "white metal", "fine silver", "plated", "alpacca", "alpaca",
        "silver", "plate", "gold", "brass", "copper", "britannia standard silver",
    )
}  # fmt: skip

#: reigns and styles that writers date by: years of the reign (from memory)
PERIODS: dict[str, tuple[int, int]] = {
    "elizabeth i": (1558, 1603), "james i": (1603, 1625), "charles i": (1625, 1649),
    "charles ii": (1660, 1685), "james ii": (1685, 1688), "william and mary": (1689, 1694),
    "william iii": (1694, 1702), "queen anne": (1702, 1714), "george i": (1714, 1727),
    "george ii": (1727, 1760), "george iii": (1760, 1820), "george iv": (1820, 1830),
    "william iv": (1830, 1837), "victorian": (1837, 1901), "queen victoria": (1837, 1901),
    "edwardian": (1901, 1910), "edward vii": (1901, 1910), "george v": (1910, 1936),
    "edward viii": (1936, 1936), "george vi": (1936, 1952), "elizabeth ii": (1952, 2022),
    "georgian": (1714, 1830), "regency": (1811, 1820),
}  # fmt: skip

#: towns beside the library's offices, and how they are shortened
TOWNS: dict[str, str] = {
    **_each("Birmingham", "birmingham; b'ham; bham; birm; birm.; b'hm; brum; birmingham assay office"),
    **_each("London", "london; ldn; lond; lon; lon."), **_each("Sheffield", "sheffield; sheff; sheff.; shef; shef.; shfd"),
    **_each("Edinburgh", "edinburgh; edin; edinb; edinr; edin.; ed'burgh; edinbro"), **_each("Glasgow", "glasgow; glas; glasg; glas."),
    **_each("Chester", "chester; ches; chest; chest."), **_each("Exeter", "exeter; exon"), **_each("York", "york"),
    **_each("Newcastle", "newcastle; newcastle upon tyne; n'castle; newcastle-upon-tyne"),
    **_each("Dublin", "dublin; dubl; dubl."), **_each("Canongate", "canongate"), **_each("Dundee", "dundee"),
    **_each("Norwich", "norwich"), **_each("Bristol", "bristol"), **_each("Cork", "cork"),
    **_each("Aberdeen", "aberdeen"), **_each("Perth", "perth"), **_each("Inverness", "inverness"),
    **_each("Limerick", "limerick"), **_each("Leith", "leith"), **_each("Greenock", "greenock"),
    **_each("Moscow", "moscow"), **_each("St. Petersburg", "st. petersburg; saint petersburg; st petersburg; "
            "petersburg; leningrad"),
    **_each("Warsaw", "warsaw"), **_each("Kiev", "kiev; kyiv"), **_each("Odessa", "odessa"),
    **_each("Riga", "riga"), **_each("Paris", "paris"), **_each("Vienna", "vienna; wien; wiener"),
    **_each("Prague", "prague"), **_each("Budapest", "budapest"), **_each("Augsburg", "augsburg"),
    **_each("Berlin", "berlin"), **_each("Hamburg", "hamburg"), **_each("Dresden", "dresden"),
    **_each("Nuremberg", "nuremberg; nürnberg"), **_each("Hanau", "hanau"), **_each("Copenhagen", "copenhagen; københavn; københavns; kjøbenhavn"),
    **_each("Stockholm", "stockholm"), **_each("Amsterdam", "amsterdam"), **_each("Rotterdam", "rotterdam"),
    **_each("The Hague", "the hague"), **_each("Lisbon", "lisbon"), **_each("Porto", "porto; oporto"),
    **_each("Madrid", "madrid"), **_each("Barcelona", "barcelona"), **_each("Milan", "milan"),
    **_each("Rome", "rome"), **_each("Florence", "florence"), **_each("Naples", "naples"),
    **_each("Venice", "venice"), **_each("Genoa", "genoa"), **_each("Turin", "turin"),
    **_each("Helsinki", "helsinki"), **_each("Turku", "turku; åbo"), **_each("Oslo", "oslo; christiania"),
    **_each("Bergen", "bergen"), **_each("Boston", "boston"), **_each("New York", "new york; n. york"),
    **_each("Philadelphia", "philadelphia; phila; phila.; philada"), **_each("Baltimore", "baltimore"),
    **_each("Providence", "providence"), **_each("Newport", "newport"), **_each("Charleston", "charleston"),
    **_each("Albany", "albany"), **_each("Hong Kong", "hong kong"), **_each("Shanghai", "shanghai"),
    **_each("Canton", "canton"), **_each("Mexico City", "mexico city"), **_each("Taxco", "taxco"),
    **_each("Melbourne", "melbourne"), **_each("Sydney", "sydney"), **_each("Montreal", "montreal"),
    **_each("Quebec", "quebec"), **_each("Toronto", "toronto"), **_each("Halifax", "halifax"),
}  # fmt: skip

#: countries and peoples that a writer claims the piece to be from
COUNTRIES = (
    "england; english; scotland; scottish; ireland; irish; britain; great britain; british; france; french; "
    "germany; german; russia; russian; usa; u.s.a.; soviet period; united states; american; america; denmark; danish; sweden; swedish; "
    "norway; norwegian; finland; finnish; netherlands; holland; dutch; belgium; belgian; italy; italian; spain; "
    "spanish; portugal; portuguese; austria; austrian; hungary; hungarian; poland; polish; china; chinese; "
    "japan; japanese; india; indian; mexico; mexican; peru; peruvian; turkey; turkish; ottoman; persia; persian; iran; "
    "iranian; egypt; egyptian; canada; canadian; australia; australian; switzerland; swiss; soviet; "
    "new zealand; south africa; thailand; siam; siamese; chinese export; continental"
)

#: words that make a town's name the name of its mark
OFFICE_WORDS = word_set(
    "city town district assay office administration department mark marks emblem coat arms of hallmark "
    "hallmarks certification the stamp punch symbol burgh guild inspectorate chamber control"
)
OFFICE_MARKS = word_set("mark emblem arm hallmark stamp punch symbol assay")

#: struck words, beside those of the library: what they are does not matter here
STRUCK = (
    "STERLING; STERLING SILVER; STER; STG; COIN; PURE COIN; COIN SILVER; PURE SILVER COIN; STANDARD SILVER; "
    "EPNS; E.P.N.S.; EPNS A1; E.P.N.S.AI.; EPBM; E.P.B.M.; EPCA; EPWM; EPC; EP; E.P.; A1; A 1; QUADRUPLE PLATE; TRIPLE PLATE; "
    "DOUBLE PLATE; SILVER SOLDERED; SILVER PLATE; SILVERPLATE; NICKEL SILVER; GERMAN SILVER; BRITANNIA METAL; "
    "SILVER FINISH; WARRANTED; SOLID SILVER; MADE IN ENGLAND; MADE IN ITALY; MADE IN MEXICO; "
    "MADE IN U.S.A.; MADE IN USA; MADE IN GERMANY; MADE IN DENMARK; MADE IN FRANCE; MADE IN JAPAN; ENGLAND; ITALY; "
    "GERMANY; DENMARK; NORWAY; SWEDEN; FRANCE; MEXICO; U.S.A.; USA; JAPAN; CHINA; AUSTRIA; HOLLAND; "
    "HANDWROUGHT; HAND WROUGHT; HAND MADE; HANDMADE; WEIGHTED; REINFORCED; "
    "WEIGHTED STERLING; STERLING WEIGHTED; CEMENT FILLED; ALPACCA; ALPACA; ARGENT; BRITANNIA; SILVER; "
    "& OTHER METALS; SHEFFIELD PLATE; HARD SOLDERED; TRADE MARK; PURE SILVER; FINE SILVER; "
    "SECTIONAL; ALPACCA SILBER; NEUSILBER; GOLDIN; NS; BP; METAL BLANC; XII; XII EP; OZ; ARGENTINE"
)
FINENESSES = word_set(
    "72 74 78 82 84 88 91 94 96 12 13 14 15 16 500 585 650 700 720 750 800 803 812 813 820 826 830 833 835 "
    "840 850 870 875 880 890 892 900 903 913 916 917 925 930 934 935 940 947 950 958 960 970 980 985 990 999 1000 1110"
)

COMPANY = word_set(
    "CO CO. COMPANY MFG MFG. CORP CORP. LTD LTD. INC INC. WORKS BROS BROS. & AND SONS"
)
