"""Words of tables of sales in several languages, and cells of theirs that hold figures."""

import re
from collections.abc import Callable, Sequence
from decimal import Decimal

from planish.intake.forms import day, day_order, decimal_sign, number
from planish.intake.schema import CellError, Read
from planish.intake.years import YearsError, years
from planish.quantity import Fineness, Money, QuantityError, UncertainDate
from planish.quantity.currencies import MINOR_UNITS, SYMBOLS
from planish.quantity.numbers import digits
from planish.worth.paste import troy

BASES = {
    "hammer": "hammer", "hammer price": "hammer", "Zuschlag": "hammer", "Zuschlagspreis": "hammer",
    "adjugé": "hammer", "prix marteau": "hammer", "martello": "hammer", "remate": "hammer",
    "hamerprijs": "hammer", "klubbat": "hammer", "klubbat pris": "hammer",
    "with premium": "with-premium", "with-premium": "with-premium", "incl premium": "with-premium",
    "including premium": "with-premium", "including buyer's premium": "with-premium",
    "incl. buyer's premium": "with-premium", "price realised": "with-premium",
    "price realized": "with-premium", "inkl. Aufgeld": "with-premium", "mit Aufgeld": "with-premium",
    "frais inclus": "with-premium", "avec frais": "with-premium", "con diritti": "with-premium",
    "net to seller": "net-to-seller", "net-to-seller": "net-to-seller", "seller's net": "net-to-seller",
    "retail asked": "retail-asked", "retail-asked": "retail-asked", "asked": "retail-asked",
    "asking": "retail-asked", "asking price": "retail-asked", "offered": "retail-asked",
    "for sale": "retail-asked", "listed": "retail-asked",
    "retail paid": "retail-paid", "retail-paid": "retail-paid", "paid": "retail-paid",
    "retail": "retail-paid", "dealer": "retail-paid", "shop": "retail-paid",
    "private": "private", "private sale": "private", "privat": "private",
    "trade paid": "trade-paid", "trade-paid": "trade-paid", "trade": "trade-paid",
    "unsold": "unsold", "bought in": "unsold", "bought-in": "unsold", "passed": "unsold",
    "not sold": "unsold", "no sale": "unsold", "withdrawn": "unsold", "unverkauft": "unsold",
    "Rückgang": "unsold", "invendu": "unsold", "invenduto": "unsold", "onverkocht": "unsold",
}  # fmt: skip
ATTRIBUTIONS = {
    "marked": "marked", "maker's mark": "marked", "by": "marked", "signed": "marked",
    "attributed": "attributed", "attributed to": "attributed", "attr.": "attributed",
    "zugeschrieben": "attributed", "attribué": "attributed", "attribué à": "attributed",
    "workshop": "workshop", "workshop of": "workshop", "circle of": "workshop",
    "Werkstatt": "workshop", "atelier": "workshop",
    "manner": "manner", "manner of": "manner", "style of": "manner", "in the style of": "manner",
    "after": "manner", "unknown": "unknown", "unmarked": "unknown", "no maker's mark": "unknown",
}  # fmt: skip
METALS = {
    "solid": "solid", "silver": "solid", "sterling": "solid", "Silber": "solid", "argent": "solid",
    "argento": "solid", "plata": "solid", "zilver": "solid",
    "filled": "filled", "weighted": "filled", "loaded": "filled", "gefüllt": "filled",
    "fused-plate": "fused-plate", "fused plate": "fused-plate", "Sheffield plate": "fused-plate",
    "old Sheffield plate": "fused-plate",
    "electroplate": "electroplate", "plate": "electroplate", "plated": "electroplate",
    "silver plate": "electroplate", "EPNS": "electroplate", "versilbert": "electroplate",
    "métal argenté": "electroplate", "other": "other",
}  # fmt: skip
ENGRAVINGS = {
    "none": "none", "no": "none", "plain": "none", "unengraved": "none", "ohne": "none",
    "initials": "initials", "monogram": "initials", "monogrammed": "initials", "yes": "initials",
    "Monogramm": "initials", "monogramme": "initials", "crest": "crest", "crested": "crest",
    "armorial": "armorial", "arms": "armorial", "coat of arms": "armorial", "Wappen": "armorial",
    "armoiries": "armorial", "presentation": "presentation", "inscription": "presentation",
    "inscribed": "presentation", "erased": "erased", "removed": "erased", "later": "later",
}  # fmt: skip
GROUPINGS = {
    "single": "single", "one": "single", "Einzelstück": "single", "pair": "pair", "a pair": "pair",
    "Paar": "pair", "paire": "pair", "coppia": "pair", "par": "pair", "set": "set", "Satz": "set",
    "suite": "set", "serie": "set", "service": "service", "canteen": "service",
    "Besteck": "service", "assembled": "assembled", "matched": "assembled", "married": "assembled",
    "harlequin": "assembled", "mixed": "mixed", "mixed lot": "mixed", "Konvolut": "mixed",
    "lot": "mixed",
}  # fmt: skip
PROVENANCES = {
    "none": "none", "no": "none", "told": "told", "family tradition": "told", "named": "named",
    "private collection": "told", "documented": "documented", "with papers": "documented",
    "published": "documented", "exhibited": "documented",
}  # fmt: skip
CONDITIONS = {
    "fine": "4", "excellent": "4", "mint": "4", "crisp": "4", "sehr gut erhalten": "4",
    "very good": "3", "sehr gut": "3", "très bon": "3", "good": "2", "gut": "2", "bon": "2",
    "fair": "1", "mässig": "1", "moyen": "1", "poor": "0", "damaged": "0", "schlecht": "0",
    "0": "0", "1": "1", "2": "2", "3": "3", "4": "4",
}  # fmt: skip
FAULTS = {
    "repaired": "repaired", "repair": "repaired", "repairs": "repaired", "soldered": "repaired",
    "repariert": "repaired", "réparé": "repaired", "split": "split", "hole": "split",
    "patch": "split", "patched": "split", "worn": "worn", "wear": "worn", "rubbed": "worn",
    "thin": "worn", "replaced part": "replaced-part", "replaced-part": "replaced-part",
    "replaced": "replaced-part", "ergänzt": "replaced-part", "missing part": "missing-part",
    "missing-part": "missing-part", "lacking": "missing-part", "missing": "missing-part",
    "fehlt": "missing-part", "later decoration": "later-decoration",
    "later-decoration": "later-decoration", "later chased": "later-decoration",
    "later chasing": "later-decoration", "converted": "converted", "altered": "converted",
    "conversion": "converted", "rubbed marks": "rubbed-marks", "rubbed-marks": "rubbed-marks",
    "part marked": "part-marked", "part-marked": "part-marked",
}  # fmt: skip
_COUNTS = {
    "one": "1", "two": "2", "three": "3", "four": "4", "five": "5", "six": "6", "seven": "7",
    "eight": "8", "nine": "9", "ten": "10", "eleven": "11", "twelve": "12", "eighteen": "18",
    "twenty-four": "24", "pair": "2", "a pair": "2", "dozen": "12",
}  # fmt: skip
_GROUPED = re.compile(r"\d{1,3}([.,])\d{3}(?:\1\d{3})*")
_MONEY = re.compile(
    r"([^\d\s.,'’+−-][^\d\s+−-]*)?\s*([\d.,'’\s\u00a0\u202f]*\d)\s*([^\d\s.,'’+−-][^\d\s+−-]*)?-?"
)


def amounts(name: str) -> Callable[[Sequence[str]], Read]:
    """Amounts of money, with or without a currency's code or sign, as ``name`` and ``currency``."""

    def made(cells: Sequence[str]) -> Read:
        bare = [m[2] for c in cells if (m := _MONEY.fullmatch(c.strip()))]
        column = decimal_sign(bare) or _thousands(bare)

        def read(text: str) -> dict[str, str]:
            match = _MONEY.fullmatch(text.strip())
            shown = " ".join(text.split())[:40]
            if not match:
                raise CellError(f"{shown} is no amount", "write it like GBP 1,250.00, above zero")
            figure = match[2].strip()
            whole = not re.search(r"[.,]", figure)
            sign = column or decimal_sign([figure]) or ("." if whole else None)
            if sign is None:
                raise CellError(f"{shown} is no amount", "write it like 1250.00")
            try:
                amount = number(figure, sign)
            except ValueError:
                raise CellError(f"{shown} is no amount", f"decimals follow '{sign}'") from None
            money = {_currency(word, shown) for word in (match[1], match[3]) if word} - {""}
            if len(money) > 1:
                raise CellError(f"{shown} names two currencies", "keep one")
            return {name: digits(amount), **({"currency": money.pop()} if money else {})}

        return read

    return made


def _thousands(bare: Sequence[str]) -> str | None:
    """The sign before decimals where a column holds whole prices grouped in threes by one sign."""
    signs = {m[1] for c in bare if (m := _GROUPED.fullmatch(c.strip()))}
    plain = all(c.strip().isdigit() or _GROUPED.fullmatch(c.strip()) for c in bare)
    return {".": ",", ",": "."}[signs.pop()] if plain and len(signs) == 1 else None


def _currency(word: str, shown: str) -> str:
    """The code of a word; none for a sign of several currencies, which a column must tell."""
    plain = word.strip(".,:-").upper()
    if plain in MINOR_UNITS:
        return plain
    if plain in SYMBOLS:
        return SYMBOLS[plain][0] if len(SYMBOLS[plain]) == 1 else ""
    raise CellError(f"{shown}: {word} is no currency known here", "write a code of ISO 4217")


def money_code(text: str) -> dict[str, str]:
    """A currency by code or sign."""
    code = _currency(text.strip(), " ".join(text.split())[:20])
    if not code:
        raise CellError(f"{text.strip()[:10]} is the sign of several", "write a code, as USD")
    Money(Decimal(0), code)
    return {"currency": code}


def sold_on(cells: Sequence[str]) -> Read:
    """Days of sales, in figures of one order or in words."""
    order = day_order(cells)

    def read(text: str) -> dict[str, str]:
        text = re.sub(r"[ T]\d{1,2}:\d{2}(:\d{2})?$", "", " ".join(text.split()))
        try:
            return {"date": day(text, order).isoformat()}
        except ValueError:
            if re.fullmatch(r"\d{1,2}[./-]\d{1,2}[./-]\d{4}", text):
                mend = "write year-month-day, as 2019-06-12"
                raise CellError(f"{text[:40]} is no day, or reads two ways", mend) from None
        try:
            return {"date": UncertainDate.parse(text).edtf}
        except QuantityError as fault:
            raise CellError(f"{text[:40]}: {fault.fault}", fault.remedy) from None

    return read


def made_in(text: str) -> dict[str, str]:
    """When the piece was made; a reign or style in words goes to ``style``."""
    whole = " ".join(text.split())
    try:
        return {"made": UncertainDate.parse(whole).edtf}
    except QuantityError:
        pass
    try:
        found = years(whole)
    except YearsError as fault:
        if re.search(r"\d", whole):
            raise CellError(fault.what, fault.mend) from None
        return {"style": whole}
    made = UncertainDate.years(found.first, found.last).edtf
    return {"made": made, **({} if found.exact else {"note": f"made: {whole}"})}


def weight(name: str, bare: str) -> Read:
    """A weight; ``bare`` is the unit of a figure without one. The ounce of silver is troy."""

    def read(text: str) -> dict[str, str]:
        try:
            return {name: digits(troy(text, bare).grams.normalize())}
        except QuantityError as fault:
            raise CellError(f"{' '.join(text.split())[:40]}: {fault.fault}", fault.remedy) from None

    return read


def standard(text: str) -> dict[str, str]:
    """A fineness."""
    try:
        return {"fineness": digits(Fineness.parse(text).permille)}
    except QuantityError as fault:
        raise CellError(f"{' '.join(text.split())[:40]}: {fault.fault}", fault.remedy) from None


def share(text: str) -> dict[str, str]:
    """A buyer's premium: 25 %, 25 or 0.25."""
    plain = text.replace(" ", "").removesuffix("%").replace(",", ".")
    try:
        value = Decimal(plain)
    except ArithmeticError:
        raise CellError(f"{text.strip()[:20]} is no share", "write 25 % or 0.25") from None
    value = value / 100 if "%" in text or value >= 1 else value
    return {"premium": digits(value)}


def count(text: str) -> dict[str, str]:
    """How many pieces, in figures or words."""
    plain = " ".join(text.casefold().split())
    return {"pieces": _COUNTS.get(plain, plain)}
