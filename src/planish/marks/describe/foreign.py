"""Words about marks in other languages of the trade, by what they say. Common practice.

German, French, Italian, Spanish and Portuguese, Dutch, Danish, Swedish, Norwegian, Finnish, Polish
and Czech. What the marks show (tête de Minerve, tre kronor) is the thesaurus's, not ours.
"""

from planish.marks.describe import vocabulary as v
from planish.marks.describe.vocabulary import each
from planish.marks.observation import Legibility

ROLES: dict[str, str] = {
    **each(
        v.MAKER,
        "meisterpunze; meisterstempel; herstellermarke; herstellerzeichen; firmenpunze; firmenstempel; "
        "poinçon du maître; poinçon d'orfèvre; poinçon de fabricant; poinçon de l'orfèvre; maître orfèvre; "
        "punzone del maestro; punzone dell'argentiere; punzone del fabbricante; marchio di fabbrica; "
        "punzone di bottega; marca de platero; punzón del platero; punzón de platero; marca de orfebre; "
        "marca de fabricante; marca del artífice; marca de ourives; punção do ourives; "
        "meesterteken; meestersteken; mesterstempel; mestermærke; mestermerke; mästarstämpel; "
        "mästarmärke; mästarstämplar; mestarileima; valmistajan leima; imiennik; mistrovská značka; "
        "mkr; mkr's mark; mkrs mark; mkr's; mkr mark; makers; mkrs",
    ),
    **each(
        v.DATE,
        "jahreszeichen; jahrbuchstabe; lettre date; lettre-date; poinçon annuel; millésime; "
        "lettera annuale; letra anual; marca de año; jaarletter; årsbokstav; årsstämpel; årsmärke; "
        "årsmerke; årstempel; vuosikirjain; d/l; dl",
    ),
    **each(
        v.TOWN,
        "stadtpunze; stadtzeichen; stadtstempel; ortszeichen; stadsteken; stadskeur; stadsmerk; "
        "stadsstämpel; stadsmärke; bymærke; bystempel; bymerke; poinçon de ville; marca de localidad; "
        "marca de ciudad; punzón de ciudad; bollo di città; kaupunginleima",
    ),
    **each(
        v.FINENESS,
        "feingehalt; feingehaltspunze; feingehaltsstempel; feingehaltszeichen; lötigkeit; titre; "
        "poinçon de titre; titolo; punzone del titolo; ley; marca de ley; gehalteteken; gehaltemerk; "
        "finhalt; finhedsmærke; lødighed; lødighetsmerke; próba; ryzost",
    ),
    **each("guarantee mark", "poinçon de garantie; garantie; waarborg; waarborgteken; keurteken; punzón de garantía"),
    **each("assay mark", "kontrollstämpel; kontrollmärke; kontrolmærke; kontrollstempel; amtspunze; amtszeichen; "
           "contraste; contrastes; marca de contraste; contraste del marcador; bollo camerale; saggio"),
    **each("assay master's mark", "guardein; guardeinsmærke; guardeinmærke; wardein; marcador; essayeur; assaggiatore; "
           "ensaiador; keurmeesterteken; keurmeester; kantorletter"),
    **each("discharge mark", "poinçon de décharge; poinçon de decharge; décharge"),
    **each("charge mark", "poinçon de charge"),
    **each("warden's mark", "poinçon de jurande; lettre de jurande; maison commune"),
    **each("import mark", "importstempel; einfuhrstempel; importpunze; poinçon d'importation; poinçon d'import; "
           "invoerteken; importstämpel"),
    **each("registered design", "rd; r.d.; regd; regd no; regd. no.; registered number; registered no; registered no.; "
           "reg'd; reg design; regd design; deposé; déposé no; gesetzlich geschützt no"),
}  # fmt: skip

#: verbs that say only that something is struck
STRUCK_VERBS = (
    "gestempelt; gestempelt mit; gepunzt; punziert; gemarkt; poinçonné; poinçonnée; poinçons; "
    "punzonato; punzonata; bollato; marcato; punzonado; punzonada; contrasteado; contrasteada; marcado; "
    "marcada; gekeurd; gemerkt; gestempeld; stemplet; stämplad; stämplat; merket; leimattu; sygnowany; "
    "puncováno; hallmks; hallmkd; h/m; mkd; stpd"
)

#: nouns for a mark that say no more
GENERIC = (
    "punze; punzen; stempel; marke; marken; silberpunze; silberstempel; poinçon; contremarque; punzone; "
    "punzoni; bollo; bolli; marchio; punzón; punzones; sello; punção; keur; keuren; merk; merken; "
    "zilvermerk; zilverkeur; zilvermerken; keurmerk; keurmerken; stämpel; stämplar; mærke; mærker; "
    "sølvmærke; merke; stempler; leima; hopealeima; hopealeimat; znak; hallmk; mks"
)

LEGIBILITY: dict[str, Legibility] = {
    **dict.fromkeys(
        ("unleserlich", "nicht lesbar", "illisible", "illeggibile", "ilegible", "onleesbaar", "oläslig",
         "oläsliga", "ulæselig", "uleselig", "nieczytelny", "nečitelný"),
        Legibility.ILLEGIBLE,
    ),
    **dict.fromkeys(("undeutlich", "schwer lesbar", "peu lisible", "poco leggibile", "poco legible",
                     "onduidelijk", "otydlig", "utydelig"), Legibility.OBSCURE),
    **dict.fromkeys(("berieben", "abgenutzt", "verrieben", "verschlagen", "usé", "usée", "frotté", "consunto",
                     "gastado", "frustra", "gesleten", "slitt", "sliten", "slidt"), Legibility.WORN),
    **dict.fromkeys(("deutlich", "lisible", "leggibile", "legible", "duidelijk", "tydlig", "tydelig"),
                    Legibility.CLEAR),
}  # fmt: skip

CONTAINERS = (
    "in einem; im; dans un; dans une; en un; en una; in un; in una; in een; i en; i et; i ett"
)
OUTLINES = (
    "rechteck; quadrat; kreis; raute; achteck; sechseck; schild; ovaal; losange; rettangolo; ovale; "
    "scudo; cerchio; rombo; rectángulo; óvalo; escudo; achthoek; zeshoek; rechthoek; ruit; schildje; "
    "rektangel; sköld; skjold; cirkel; sirkel; rombe; écusson; ottagono; octógono; rhombus"
)
FILLERS = (
    "und; mit; über; unter; der; das; ein; eine; et; avec; une; du; della; dello; del; con; och; og; "
    "med; een; het; met; van; la; le; les; el; los; il; de la; zeichen"
)
#: pictures as writers of those countries name them -> a name of the thesaurus
DEVICES: dict[str, str] = {
    **each("eagle", "adler; águila; aguila; aquila; águia; ørn; örn; kotka; orzeł; orel"),
    **each("eagle's head", "adlerkopf; tête d'aigle; cabeza de águila; testa d'aquila"),
    **each("lion", "löwe; leone; león; leeuw; leeuwtje; lejon; løve; leijona; lew; leão"),
    **each(
        "lion passant",
        "schreitender löwe; lopende leeuw; gaande leeuw; lion marchant; leeuw met 2; "
        "leeuwtje met 2; leeuw met een 2; leeuw met cijfer 2; gaand lejon",
    ),
    **each(
        "lion rampant",
        "steigender löwe; klimmende leeuw; staande leeuw; leeuw met 1; leeuwtje met 1; "
        "leeuw met een 1; leeuw met cijfer 1; lion rampant français; stående lejon",
    ),
    **each("crescent", "halbmond; croissant; mezzaluna; media luna; halve maan; halvmåne"),
    **each(
        "crescent and crown",
        "halbmond und krone; halbmond und reichskrone; halbmond mit krone; "
        "halbmond krone; krone und halbmond; reichskrone und halbmond; krone halbmond; "
        "mond und krone; sonne und krone",
    ),
    **each(
        "crown",
        "reichskrone; krone; couronne; corona; kroon; kroontje; krona; kruunu; korona; coroa",
    ),
    **each(
        "head of Minerva",
        "minervakopf; minervakop; tête de minerve; testa di minerva; cabeza de minerva; "
        "minervahoofd; minervahuvud; minerve",
    ),
    **each("head of Mercury", "merkurkopf; tête de mercure; testa di mercurio"),
    **each("head of Diana", "dianakopf; tête de diane; testa di diana"),
    **each("boar's head", "tête de sanglier; javali; cabeça de javali; eberkopf"),
    **each("old man's head", "tête de vieillard"),
    **each("horse's head", "tête de cheval; pferdekopf; paardenhoofd"),
    **each("greyhound's head", "windhundkopf; tête de lévrier"),
    **each("hoopoe", "wiedehopf; wiedehopfkopf"),
    **each("anchor", "anker; ancre; ancora; ancla; ankare"),
    **each("key", "schlüssel; clé; clef; chiave; llave; sleutel; nyckel"),
    **each("star", "stern; étoile; stella; estrella; ster; stjärna; stjerne"),
    **each("swan", "schwan; cisne; zwaan"),
    **each("owl", "eule; hibou; chouette"),
    **each("axe", "bijl; axt; hache"),
    **each("dolphin", "dolfijn; delphin; dauphin"),
    **each("tower", "turm; toren; torre; torn"),
    **each("castle", "castillo; burcht; château"),
    **each("three towers", "tre tårne; tre tårn; tre torn; tretårnet; drei türme"),
    **each("two towers", "to tårne; to tårn; zwei türme"),
    **each("three crowns in a trefoil", "kattfoten; kattfots; kattfotsstämpel"),
    **each("three crowns", "tre kronor; trekronor"),
    **each("crown in a heart", "kruunu sydämessä"),
    **each("pine cone", "pinienzapfen; zapfen"),
    **each("fasces", "fascio littorio; faisceau; rutenbündel"),
    **each("turreted head of Italy", "testa turrita; italia turrita; testa d'italia turrita"),
    **each("sword", "zwaardje; schwert"),
    **each("wheel", "mainzer rad; wiel"),
    **each("cock", "coq; hahn"),
    **each("wheatsheaf", "ähre; garbe"),
    **each("kokoshnik", "kokoschnik; kokosjnik"),
}

__all__ = [
    "CONTAINERS",
    "DEVICES",
    "FILLERS",
    "GENERIC",
    "LEGIBILITY",
    "OUTLINES",
    "ROLES",
    "STRUCK_VERBS",
]
