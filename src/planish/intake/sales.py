"""A file of sales out of anybody's table (``worth/table`` says what a file of sales is)."""

import datetime as dt
import re
from collections.abc import Iterable, Mapping
from decimal import Decimal

import msgspec

from planish.intake import salewords as words
from planish.intake.convert import Converted, convert
from planish.intake.mapping import Columns
from planish.intake.schema import CellError, Field, Read, Schema, as_it_stands, key, one_of
from planish.intake.table import Fault, IntakeError, Table
from planish.quantity.numbers import digits
from planish.worth.sales import Sale
from planish.worth.table import COLUMNS, RowFault, SalesFaults, numbered, read_row
from planish.worth.twins import Group, groups

#: fields that carry a price of one basis each, and that basis
PRICED = {
    "hammer": "hammer", "with_premium": "with-premium", "asked": "retail-asked",
    "paid": "retail-paid", "top_bid": "unsold",
}  # fmt: skip
_FAR_APART = Decimal("0.02")


def _field(name: str, names: str, read: Read | None = None, column: object = None) -> Field:
    known = tuple(n.strip() for n in f"{name};{names}".split(";") if n.strip())
    return Field(name=name, names=known, read=read or as_it_stands(name), column=column)  # type: ignore[arg-type]  # a maker of readers


def _several(text: str) -> dict[str, str]:
    """Faults of the piece, parted by commas or semicolons."""
    read = one_of("faults", words.FAULTS)
    parts = [p for p in re.split(r"[;,/\n]", text) if p.strip()]
    if [key(p) for p in parts] in (["none"], ["no"]):
        return {}
    return {"faults": "; ".join(dict.fromkeys(read(p)["faults"] for p in parts))}


def _status(text: str) -> dict[str, str]:
    said = key(text)
    if said in ("sold", "verkauft", "vendu", "venduto", "vendido", "verkocht"):
        return {}
    if one_of("status", words.BASES)(text)["status"] != "unsold":
        raise CellError(f"{text.strip()[:20]} is not known", "write sold or unsold")
    return {"status": "unsold"}


#: Names of columns in English, German, French, Italian, Spanish and Dutch.
SALES = Schema(
    kind="sales",
    columns=COLUMNS,
    required=("date", "venue"),
    rest="note",
    fields=(
        _field("id", "record; record number; number; no; Nr; key"),
        _field("date", "sale date; date of sale; date sold; sold on; auction date; sold; Datum; "
               "Auktionsdatum; Verkaufsdatum; date de vente; data; fecha; day", column=words.sold_on),
        _field("venue", "auction house; house; saleroom; auctioneer; seller; where; dealer; shop; market; "
               "Auktionshaus; Ort; maison; maison de vente; casa d'asta; casa de subastas; veilinghuis"),
        _field("sale", "sale number; sale no; auction; auction number; sale title; Auktion; vente; asta; "
               "subasta; veiling"),
        _field("lot", "lot number; lot no; stock number; stock no; item number; Los; Losnummer; Katalognr; "
               "numéro de lot; lotto; lote; kavel"),
        _field("title", "description; lot title; object; item; text; Beschreibung; Objekt; Titel; "
               "désignation; titre; descrizione; oggetto; descripción; omschrijving; lot description"),
        _field("price", "amount; result; price realised; price realized; Preis; Ergebnis; Erlös; prix; "
               "résultat; prezzo; precio; prijs", column=words.amounts("price")),
        _field("hammer", "hammer price; Zuschlag; Zuschlagspreis; prix marteau; adjudication; martello; "
               "remate; hamerprijs", column=words.amounts("hammer")),
        _field("with_premium", "price with premium; with premium; incl premium; including premium; total; "
               "total price; premium price; price incl premium; Endpreis; mit Aufgeld; frais inclus; "
               "con diritti", column=words.amounts("with_premium")),
        _field("asked", "asking price; asked price; retail price; list price; offer; Angebot; Angebotspreis",
               column=words.amounts("asked")),
        _field("paid", "price paid; paid price; retail paid; bought for", column=words.amounts("paid")),
        _field("top_bid", "top bid; highest bid; last bid; Höchstgebot", column=words.amounts("top_bid")),
        _field("currency", "currency code; Währung; devise; monnaie; valuta; moneda; curr; ccy",
               words.money_code),
        _field("basis", "price basis; price type; kind of price; type of price; Preisart; type de prix; "
               "sale type; type of sale", one_of("basis", words.BASES)),
        _field("status", "sold or unsold; outcome; sold unsold; Status", _status),
        _field("premium", "buyer's premium; buyers premium; premium rate; premium %; Aufgeld; frais; BP",
               words.share),
        _field("form", "object type; type; category; kind; form of piece; Form; Art; forme; catégorie; "
               "forma; tipo; vorm"),
        _field("maker", "silversmith; goldsmith; manufacturer; firm; maker's name; artist; Meister; "
               "Hersteller; Silberschmied; orfèvre; fabricant; argentiere; platero; zilversmid"),
        _field("attribution", "attribution wording; maker certainty; how attributed; Zuschreibung",
               one_of("attribution", words.ATTRIBUTIONS)),
        _field("pattern", "pattern name; design; Muster; modèle; modello; modelo; patroon"),
        _field("style", "period; reign; era; Epoche; Stil; Zeit; époque; epoca; época; periode"),
        _field("made", "year; date made; year made; date of piece; dated; Jahr; Entstehung; Datierung; "
               "année; anno; año; jaar; hallmark year; circa", words.made_in),
        _field("place", "town; assay office; office; city; origin; Herkunft; Stadt; ville; città; ciudad; "
               "stad"),
        _field("metal", "material; medium; Material; matière; materiale; materiaal",
               one_of("metal", words.METALS)),
        _field("fineness", "standard; purity; silver standard; Feingehalt; titre argent; titolo; ley; gehalte",
               words.standard),
        _field("gross_g", "gross weight; gross grams; weight; weight g; weight grams; grams; Gewicht; "
               "Gewicht g; Bruttogewicht; poids; poids brut; peso; gewicht; wt",
               words.weight("gross_g", "g")),
        _field("gross_ozt", "weight oz; weight ozt; gross oz; gross ozt; ounces; oz; ozt; troy ounces; "
               "weight troy ounces", words.weight("gross_ozt", "ozt")),
        _field("net_g", "net weight; net grams; net weight g; silver weight; weight of silver; "
               "Nettogewicht; Silbergewicht; poids net; peso netto", words.weight("net_g", "g")),
        _field("net_ozt", "net oz; net ounces; net weight oz; net troy ounces",
               words.weight("net_ozt", "ozt")),
        _field("condition", "state; condition grade; Zustand; état; stato; estado; staat",
               one_of("condition", words.CONDITIONS)),
        _field("engraving", "monogram; engraved; initials; crest; arms; Gravur; Monogramm; monogramme; "
               "monogramma; monograma", one_of("engraving", words.ENGRAVINGS)),
        _field("faults", "damage; damages; defects; repairs; Schäden; défauts; difetti", _several),
        _field("pieces", "count; quantity; qty; number of pieces; pcs; Anzahl; Stück; quantité; quantità; "
               "cantidad; aantal", words.count),
        _field("grouping", "pair or set; set; pair; Paar oder Satz", one_of("grouping", words.GROUPINGS)),
        _field("provenance", "provenance grade; history; Provenienz; provenienza; procedencia",
               one_of("provenance", words.PROVENANCES)),
        _field("piece", "same piece; object id; piece id"),
        _field("source", "reference; ref; catalogue; url; link; page; Quelle; référence; fonte; fuente; bron"),
        _field("note", "notes; remark; remarks; comment; comments; Bemerkung; remarque; nota; opmerking"),
    ),
)  # fmt: skip


_OWN = Schema(
    kind="sales",
    columns=COLUMNS,
    required=("date", "venue"),
    rest="note",
    fields=tuple(_field(column, "") for column in COLUMNS),
)


class ImportedSales(msgspec.Struct, frozen=True, kw_only=True):
    """Sales of a table, in its order; what was set aside; which records are one sale."""

    sales: tuple[Sale, ...]
    converted: Converted
    groups: tuple[Group, ...]


def import_sales(table: Table, columns: Columns, today: dt.date) -> ImportedSales:
    """The sales of a table; every row that cannot be one is set aside with its faults.

    today: a sale after it is refused. A table with the very columns of a file of sales is taken to
    be one: its figures have a decimal point.

    Raises:
        IntakeError: no column holds a price.
    """
    mapped = set(columns.columns.values()) | {c for c, value in columns.fixed.items() if value}
    if not mapped & {"price", *PRICED}:
        raise IntakeError(
            table.name,
            f"no column is mapped to price, {', '.join(PRICED)}",
            'say which: --map "Their column=hammer"',
        )
    own = table.headers == COLUMNS and all(h == c for h, c in columns.columns.items())
    first = convert(table, columns, _OWN if own else SALES)
    faults = list(first.faults)
    sales: list[Sale] = []
    bad: set[int] = set()
    used: set[str] = set()
    for number, values in first.rows:
        try:
            sale = read_row(said_of(values), number, today)
        except CellError as fault:
            faults.append(Fault(row=number, column="", what=fault.what, mend=fault.mend))
            bad.add(number)
            continue
        except SalesFaults as found:
            bad.add(number)
            faults += [
                Fault(row=number, column=_theirs(f.column, columns), what=f.what, mend=f.mend)
                for f in _told(found.faults)
            ]
            continue
        if values.get("id") and sale.id in used:
            bad.add(number)
            faults.append(Fault(row=number, column=columns.of("id") or "id",
                                what=f"the id {sale.id} is in use", mend="give it another"))  # fmt: skip
            continue
        sale = numbered(sale, used)
        used.add(sale.id)
        sales.append(sale)
    by_number = {row.number: row for row in table.rows}
    rejects = (*first.rejects, *(by_number[n] for n in bad))
    converted = Converted(
        rows=tuple((n, v) for n, v in first.rows if n not in bad),
        rejects=tuple(sorted(rejects, key=lambda r: r.number)),
        faults=tuple(sorted(faults, key=lambda f: f.row)),
    )
    return ImportedSales(sales=tuple(sales), converted=converted, groups=groups(sales))


def _told(faults: Iterable[RowFault]) -> list[RowFault]:
    """Faults without those that an empty price brings along: its column tells currency and basis."""
    told = list(faults)
    if any(f.column == "price" and f.what == "is empty" for f in told):
        told = [f for f in told if f.column not in ("currency", "basis")]
    return told


def _theirs(column: str, columns: Columns) -> str:
    """What the person calls the column of a fault."""
    near = {"price": list(PRICED), "net_g": ["net_ozt"], "gross_g": ["gross_ozt"]}.get(column, [])
    return next((h for name in (column, *near) if (h := columns.of(name))), column)


def said_of(values: Mapping[str, str]) -> dict[str, str]:
    """Cells of one row of the file, out of fields that say one thing in two ways.

    Raises:
        CellError: they contradict each other.
    """
    said = {column: values[column] for column in COLUMNS if values.get(column)}
    priced = [name for name in PRICED if values.get(name)]
    unsold = values.get("status") == "unsold"
    hammer, total = values.get("hammer"), values.get("with_premium")
    if hammer and total and not unsold:
        rate = Decimal(total) / Decimal(hammer) - 1 if Decimal(hammer) else Decimal(-1)
        if not 0 <= rate < 1:
            raise CellError(
                f"{total} with premium does not go with a hammer price of {hammer}",
                "look which is which",
            )
        said.setdefault("premium", digits(round(rate, 6)))
        priced.remove("with_premium")
    if "price" not in said and priced:
        name = "top_bid" if unsold and "top_bid" in priced else priced[0]
        said["price"] = values[name]
        said["basis"] = PRICED[name]
    elif said.get("basis") == "hammer" and total and "price" in said:
        said.setdefault("note", f"with premium: {total}")
    if unsold:
        said["basis"] = "unsold"
    for name in ("gross", "net"):
        grams, other = said.get(f"{name}_g"), values.get(f"{name}_ozt")
        if grams and other and abs(Decimal(grams) / Decimal(other) - 1) > _FAR_APART:
            raise CellError(
                f"two {name} weights that disagree: {grams} g and {other} g", "mend one of them"
            )
        if other and not grams:
            said[f"{name}_g"] = other
    if said.get("grouping") == "pair":
        said.setdefault("pieces", "2")
    return said
