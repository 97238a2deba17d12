"""Currencies: the codes of ISO 4217 with their minor units, and signs.

Codes in use and their minor units are those of list one of ISO 4217 as published on 1 January 2026
(the tests compare with it); codes of funds, metals and tests are left out. Codes no longer in use
(list three) are kept for old sales, from memory, with two decimals.
"""

from difflib import get_close_matches

_TWO = """
AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BMD BND BOB BRL BSD BTN BWP BYN BZD CAD CDF CHF
CNY COP CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG
HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU
MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR
SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD UYU UZS VED
VES WST XAD XCD XCG YER ZAR ZMW ZWG
"""
_NONE = "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX VND VUV XAF XOF XPF"
_THREE = "BHD IQD JOD KWD LYD OMR TND"
_FORMER = """
ANG ATS BEF BGN CSK CUC CYP DEM EEK ESP FIM FRF GRD HRK IEP ITL LTL LUF LVL MTL NLG PTE ROL SIT SKK SUR
TRL VEF YUM ZWL
"""

#: code -> decimals of the minor unit
MINOR_UNITS: dict[str, int] = {
    code: places
    for places, codes in ((2, _TWO), (0, _NONE), (3, _THREE), (2, _FORMER))
    for code in codes.split()
}

_DOLLARS = ("USD", "CAD", "AUD", "NZD", "HKD", "SGD", "TWD", "BSD", "BBD", "BMD", "JMD", "TTD")

#: sign, in capitals -> the currencies that it may stand for
SYMBOLS: dict[str, tuple[str, ...]] = {
    "£": ("GBP",),
    "€": ("EUR",),
    "US$": ("USD",),
    "C$": ("CAD",),
    "CA$": ("CAD",),
    "A$": ("AUD",),
    "AU$": ("AUD",),
    "NZ$": ("NZD",),
    "HK$": ("HKD",),
    "S$": ("SGD",),
    "R$": ("BRL",),
    "₹": ("INR",),
    "₽": ("RUB",),
    "₩": ("KRW",),
    "₪": ("ILS",),
    "฿": ("THB",),
    "DM": ("DEM",),
    "STG": ("GBP",),
    "$": (*_DOLLARS, "MXN", "ARS", "CLP", "COP"),
    "¥": ("JPY", "CNY"),
    "KR": ("SEK", "NOK", "DKK", "ISK"),
    "FR": ("CHF", "FRF", "BEF"),
    "RS": ("INR", "PKR", "LKR"),
}


def minor_units(currency: str) -> int:
    """Decimals of the currency's minor unit.

    >>> minor_units("JPY"), minor_units("GBP")
    (0, 2)
    """
    return MINOR_UNITS[currency]


def near(word: str) -> str | None:
    """The code that a mistyped one most resembles."""
    if len(word) != 3:
        return None
    turned = [code for code in MINOR_UNITS if sorted(code) == sorted(word.upper())]
    if turned:
        return turned[0]
    found = get_close_matches(word.upper(), MINOR_UNITS, n=1, cutoff=0.6)
    return found[0] if found else None
