"""A register of makers out of anybody's table (``marks/own_register`` says what a register is)."""

import re
from collections.abc import Sequence
from functools import lru_cache

import msgspec

from planish.intake.convert import Converted, as_csv, convert
from planish.intake.countries import country
from planish.intake.mapping import Columns
from planish.intake.schema import CellError, Field, Schema, as_it_stands, one_of
from planish.intake.table import Fault, IntakeError, Table
from planish.intake.years import Years, YearsError, years
from planish.marks.own_register import (
    COLUMNS,
    FIRST_YEAR,
    LAST_YEAR,
    REQUIRED,
    RegisterFaults,
    parse_register,
)
from planish.marks.own_register import Fault as RegisterFault

_KINDS = {
    "maker": "maker", "silversmith": "maker", "goldsmith": "maker", "smith": "maker",
    "manufacturer": "maker", "firm": "maker", "company": "maker", "workshop": "maker",
    "spoonmaker": "maker", "plateworker": "maker", "smallworker": "maker", "sponsor": "maker",
    "Silberschmied": "maker", "Goldschmied": "maker", "Hersteller": "maker", "Meister": "maker",
    "orfèvre": "maker", "fabricant": "maker", "argentiere": "maker", "orafo": "maker",
    "platero": "maker", "orfebre": "maker", "zilversmid": "maker", "goudsmid": "maker",
    "retailer": "retailer", "shop": "retailer", "dealer": "retailer", "jeweller": "retailer",
    "jeweler": "retailer", "Händler": "retailer", "Juwelier": "retailer", "marchand": "retailer",
    "détaillant": "retailer", "bijoutier": "retailer", "gioielliere": "retailer",
    "winkelier": "retailer",
    "designer": "designer", "Entwerfer": "designer", "dessinateur": "designer",
    "importer": "importer", "Importeur": "importer", "importateur": "importer",
}  # fmt: skip
_BRACKETS = re.compile(r"\s*[(\[{]([^()\[\]{}]*[a-z]{3}[^()\[\]{}]*)[)\]}]")
_PARTED = re.compile(r"\s*[;,|\n]\s*|\s+(?:and|or|und|oder|et|ou)\s+")
_YEAR_CELL = re.compile(r"\d{4}(?:\s*[-–/]\s*\d{2,4})?")


def _marks(text: str) -> dict[str, str]:
    """Marks parted by semicolons; words between brackets ("TW (star above)") go to the device."""
    devices = [" ".join(d.split()) for d in _BRACKETS.findall(text)]
    bare = _BRACKETS.sub("", text)
    marks = [" ".join(m.split()).strip("\"'“”„«»") for m in _PARTED.split(bare)]
    kept = "; ".join(dict.fromkeys(filter(None, marks)))
    return {"marks": kept, **({"device": "; ".join(devices)} if devices else {})}


@lru_cache(maxsize=10_000)  # the same years stand in many rows
def _years_of(text: str) -> Years:
    try:
        found = years(text)
    except YearsError as fault:
        raise CellError(fault.what, fault.mend) from None
    for year in (found.first, found.last):
        if year is not None and not FIRST_YEAR <= year <= LAST_YEAR:
            raise CellError(f"{year} is no year of a maker", f"{FIRST_YEAR} to {LAST_YEAR}")
    return found


def _both(text: str) -> dict[str, str]:
    found = _years_of(text)
    return {
        "year_from": str(found.first or ""),
        "year_to": str(found.last or ""),
        **({} if found.exact else {"note": f"years as written: {' '.join(text.split())}"}),
    }


def _from(text: str) -> dict[str, str]:
    found = _years_of(text)
    note = {} if found.exact else {"note": f"first year as written: {' '.join(text.split())}"}
    return {"year_from": str(found.first or ""), **note}


def _to(text: str) -> dict[str, str]:
    found = _years_of(text)
    note = {} if found.exact else {"note": f"last year as written: {' '.join(text.split())}"}
    return {"year_to": str(found.last or ""), **note}


def _country(text: str) -> dict[str, str]:
    return {"country": country(text)}


def _look_like_years(cells: Sequence[str]) -> bool:
    return sum(bool(_YEAR_CELL.fullmatch(c.strip())) for c in cells) > 0.8 * len(cells)


def _look_like_countries(cells: Sequence[str]) -> bool:
    try:
        return len({country(c) for c in cells if len(c) > 2 or c.isupper()}) > 0
    except CellError:
        return False


def _field(name: str, names: str, read: object = None, looks: object = None) -> Field:
    known = tuple(n.strip() for n in f"{name};{names}".split(";") if n.strip())
    return Field(name=name, names=known, read=read or as_it_stands(name), looks=looks)  # type: ignore[arg-type]  # a reader and a look


#: Names of columns in English, German, French, Italian, Spanish, Dutch and Swedish.
REGISTER = Schema(
    kind="register",
    columns=COLUMNS,
    required=REQUIRED,
    rest="note",
    fields=(
        _field("name", "maker; makers; maker's name; maker name; silversmith; goldsmith; firm; company; "
               "smith; sponsor; manufacturer; Name des Meisters; Meister; Hersteller; Goldschmied; "
               "Silberschmied; Firma; nom; orfèvre; maître orfèvre; fabricant; maison; nome; argentiere; "
               "orafo; nombre; platero; fabricante; naam; zilversmid; meester; namn; mästare; silversmed; "
               "full name; person"),
        _field("marks", "mark; maker's mark; makers mark; punch; punches; initials; stamp; struck; "
               "sponsor's mark; transcription; Marke; Marken; Meistermarke; Meisterzeichen; Punze; "
               "Stempel; Initialen; poinçon; poinçons; poinçon de maître; initiales; marque; marchio; "
               "punzone; bollo; iniziali; marca; punzón; iniciales; merk; meesterteken; keur; initialen; "
               "stämpel; mästarstämpel", _marks),
        _field("country", "land; state; nation; country code; ISO; pays; paese; nazione; país; Staat; "
               "origin; country of work", _country, _look_like_countries),
        _field("place", "town; city; location; where; place of work; Ort; Stadt; Werkstattort; lieu; "
               "ville; luogo; città; lugar; ciudad; plaats; stad; ort; centre; center"),
        _field("year_from", "from; start; first year; year from; begin; since; earliest; date from; "
               "first recorded; von; ab; Beginn; erstes Jahr; de; début; depuis; dal; inizio; desde; "
               "inicio; vanaf; från; registered; date registered; date entered; entered", _from),
        _field("year_to", "to; end; last year; year to; until; latest; date to; last recorded; bis; "
               "Ende; letztes Jahr; à; fin; jusqu'à; al; fine; hasta; tot; till", _to),
        _field("years", "year; date; dates; active; working dates; working years; years active; "
               "activity; period; floruit; fl; Jahr; Jahre; Datierung; Zeit; tätig; Wirkungszeit; "
               "année; années; dates d'activité; activité; période; anno; anni; attività; periodo; "
               "año; años; actividad; jaar; jaren; werkzaam; datering; år; verksam", _both,
               _look_like_years),
        _field("device", "symbol; picture; pictorial; emblem; figure; Bild; Bildmarke; Zeichen; "
               "différent; symbole; simbolo; figura; símbolo; beeldmerk; symbool"),
        _field("kind", "type; role; trade; occupation; profession; Art; Beruf; Gewerbe; métier; "
               "profession; tipo; professione; oficio; beroep; soort; yrke", one_of("kind", _KINDS)),
        _field("wares", "ware; products; product; work; specialty; speciality; output; Waren; Ware; "
               "Erzeugnisse; productions; produits; produzione; productos; waren; producten; category"),
        _field("note", "notes; remark; remarks; comment; comments; description; Bemerkung; Bemerkungen; "
               "Notiz; Anmerkung; remarque; remarques; nota; note; osservazioni; observaciones; "
               "opmerking; opmerkingen; anmärkning"),
        _field("source", "reference; references; ref; bibliography; literature; book; citation; page; "
               "Quelle; Quellen; Literatur; référence; bibliographie; fonte; riferimento; bibliografia; "
               "fuente; referencia; bron; literatuur; källa"),
    ),
)  # fmt: skip


class Imported(msgspec.Struct, frozen=True, kw_only=True):
    """The register as CSV, how many rows it has, and what was set aside."""

    text: str
    count: int
    converted: Converted


def import_register(table: Table, columns: Columns) -> Imported:
    """The register of a table; every row that a register would refuse is set aside with its fault."""
    first = convert(table, columns, REGISTER)
    rows = list(first.rows)
    names = [c for c in COLUMNS if c in REQUIRED or any(values.get(c) for _, values in rows)]
    faults = list(first.faults)
    bad: set[int] = set()
    while True:  # a row may have a second fault that the first one hid; each turn takes rows out
        kept = [(n, values) for n, values in rows if n not in bad]
        text = as_csv(({c: values.get(c, "") for c in names} for _, values in kept), names)
        try:
            if kept:
                parse_register(text, table.name)
            break
        except RegisterFaults as found:
            for fault in found.faults:
                if fault.line < 2:
                    raise IntakeError(table.name, fault.what, fault.mend) from None
                number, _values = kept[fault.line - 2]
                bad.add(number)
                faults.append(_as_theirs(fault, number, columns, kept))
    by_number = {row.number: row for row in table.rows}
    rejects = (*first.rejects, *(by_number[n] for n in bad))
    return Imported(
        text=text,
        count=len(kept),
        converted=Converted(
            rows=tuple(kept),
            rejects=tuple(sorted(rejects, key=lambda r: r.number)),
            faults=tuple(sorted(faults, key=lambda f: f.row)),
        ),
    )


def _as_theirs(
    fault: RegisterFault,
    number: int,
    columns: Columns,
    kept: Sequence[tuple[int, dict[str, str]]],
) -> Fault:
    """A fault of the register in terms of the person's own columns and rows."""
    what, column = fault.what, fault.column
    if match := re.fullmatch(r"the same maker and marks as in line (\d+)", what):
        what = f"the same maker and marks as in row {kept[int(match[1]) - 2][0]}"
    years_column = columns.of("years") if column in ("year_from", "year_to") else None
    theirs = columns.of(column) or years_column or column
    return Fault(row=number, column=theirs, what=what, mend=fault.mend)
