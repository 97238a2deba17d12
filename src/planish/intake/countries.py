"""Names of countries, as registers write them, to the two letters of ISO 3166-1."""

from functools import lru_cache

from planish.intake.schema import CellError, key

_NAMES = {
    "GB": "Great Britain; United Kingdom; UK; U.K.; Britain; England; Scotland; Wales; English; "
          "British; Scottish; Großbritannien; Vereinigtes Königreich; Schottland; Angleterre; "
          "Royaume-Uni; Grande-Bretagne; Écosse; Inghilterra; Gran Bretagna; Regno Unito; "
          "Inglaterra; Reino Unido; Engeland; Storbritannien",
    "IE": "Ireland; Eire; Irish; Irland; Irlande; Irlanda; Ierland",
    "US": "United States; United States of America; USA; U.S.A.; U.S.; America; American; "
          "Vereinigte Staaten; États-Unis; Stati Uniti; Estados Unidos; Verenigde Staten; Amerika",
    "CA": "Canada; Canadian; Kanada",
    "AU": "Australia; Australian; Australien; Australie",
    "NZ": "New Zealand; Neuseeland; Nouvelle-Zélande",
    "FR": "France; French; Frankreich; Francia; Frankrijk; Frankrike",
    "DE": "Germany; German; Deutschland; Allemagne; Germania; Alemania; Duitsland; Tyskland",
    "AT": "Austria; Austrian; Österreich; Autriche; Oostenrijk",
    "CH": "Switzerland; Swiss; Schweiz; Suisse; Svizzera; Suiza; Zwitserland",
    "NL": "Netherlands; The Netherlands; Holland; Dutch; Niederlande; Pays-Bas; Paesi Bassi; "
          "Países Bajos; Nederland; Hollande; Olanda",
    "BE": "Belgium; Belgian; Belgien; Belgique; Belgio; Bélgica; België",
    "IT": "Italy; Italian; Italien; Italie; Italia; Italië",
    "ES": "Spain; Spanish; Spanien; Espagne; Spagna; España; Spanje",
    "PT": "Portugal; Portuguese; Portogallo",
    "DK": "Denmark; Danish; Dänemark; Danemark; Danimarca; Dinamarca; Denemarken; Danmark",
    "SE": "Sweden; Swedish; Schweden; Suède; Svezia; Suecia; Zweden; Sverige",
    "NO": "Norway; Norwegian; Norwegen; Norvège; Norvegia; Noruega; Noorwegen; Norge",
    "FI": "Finland; Finnish; Finnland; Finlande; Finlandia; Suomi",
    "IS": "Iceland; Island; Islande",
    "RU": "Russia; Russian; Russland; Russie; Rusia; Rusland; Россия",
    "PL": "Poland; Polish; Polen; Pologne; Polonia; Polska",
    "CZ": "Czechia; Czech Republic; Bohemia; Tschechien; Böhmen; Tchéquie; Česko",
    "SK": "Slovakia; Slowakei; Slovaquie", "HU": "Hungary; Hungarian; Ungarn; Hongrie; Magyarország",
    "RO": "Romania; Rumänien; Roumanie", "GR": "Greece; Greek; Griechenland; Grèce; Grecia",
    "TR": "Turkey; Turkish; Ottoman Empire; Türkei; Turquie; Turchia; Türkiye",
    "LV": "Latvia; Lettland; Lettonie", "EE": "Estonia; Estland; Estonie",
    "LT": "Lithuania; Litauen; Lituanie", "UA": "Ukraine; Ukraina", "MT": "Malta; Malte",
    "IN": "India; Indian; Indien; Inde", "CN": "China; Chinese; Chine; Cina",
    "JP": "Japan; Japanese; Japon; Giappone; Japón", "HK": "Hong Kong", "SG": "Singapore; Singapur",
    "TH": "Thailand; Siam; Thaïlande", "IR": "Iran; Persia; Persien; Perse",
    "EG": "Egypt; Egyptian; Ägypten; Égypte; Egitto", "ZA": "South Africa; Südafrika; Afrique du Sud",
    "MX": "Mexico; Mexican; Mexiko; Mexique; Messico; México", "PE": "Peru; Perú; Pérou",
    "BR": "Brazil; Brasilien; Brésil; Brasil", "AR": "Argentina; Argentinien; Argentine",
    "CL": "Chile; Chili", "BO": "Bolivia; Bolivien", "CO": "Colombia; Kolumbien",
    "GT": "Guatemala", "CU": "Cuba; Kuba", "JM": "Jamaica; Jamaika", "IL": "Israel",
}  # fmt: skip
_CODES = {key(name): code for code, names in _NAMES.items() for name in names.split(";")}
# not of the standard, but common
_CODES |= {"uk": "GB", "eng": "GB", "sco": "GB", "gbr": "GB", "usa": "US", "fra": "FR",
           "deu": "DE", "ger": "DE", "brd": "DE", "ned": "NL", "nld": "NL", "ita": "IT"}  # fmt: skip


@lru_cache(maxsize=1_000)  # a table names few countries
def country(text: str) -> str:
    """The code of a country's name, or the code itself.

    Raises:
        CellError: no name known here.

    >>> country("Deutschland"), country("gb")
    ('DE', 'GB')
    """
    name = key(text)
    if code := _CODES.get(name):
        return code
    plain = text.strip().upper()
    if len(plain) == 2 and plain.isascii() and plain.isalpha():
        return plain
    raise CellError(
        f"{' '.join(text.split())[:40]} is no country known here",
        "write the two letters of ISO 3166-1, as GB, US, DE",
    )
