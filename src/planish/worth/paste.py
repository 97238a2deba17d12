"""Facts about the market that a person pastes as text, read into rows that wait to be confirmed.

One line, or one paragraph, is one sale: "Saleroom, Town, 12 June 2019 lot 45, George II coffee pot,
A. Maker 1738, 28 oz, hammer £42,000 (£52,500 with premium)". What is understood becomes cells of the
file of sales; what is not is listed word by word. Nothing is stored here, and a figure whose basis
the text does not say has none.
"""

import datetime as dt
import re
from collections.abc import Iterable, Mapping
from itertools import pairwise

import msgspec

from planish.quantity import Mass, QuantityError, UncertainDate
from planish.quantity.numbers import digits
from planish.worth import pastewords as words
from planish.worth.pastemoney import money
from planish.worth.pastetext import Text
from planish.worth.table import REQUIRED

MAX_CHARACTERS, MAX_LINES = 200_000, 2_000


class Draft(msgspec.Struct, frozen=True, kw_only=True):
    """One sale as read from a text.

    text: as pasted. cells: by column of the file of sales. missing: columns that it needs and the
    text does not give. notes: how words of two meanings were taken. unread: words of no use.
    """

    text: str
    cells: Mapping[str, str]
    missing: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()
    unread: tuple[str, ...] = ()


def drafts(text: str, given: Mapping[str, str] | None = None) -> tuple[Draft, ...]:
    """The sales that a text tells of, in its order.

    given: cells for every sale that does not tell them, as a currency or a venue.

    Raises:
        QuantityError: the text is far too long.
    """
    if len(text) > MAX_CHARACTERS or text.count("\n") > MAX_LINES:
        fault = f"more than {MAX_CHARACTERS:,} characters or {MAX_LINES:,} lines"
        raise QuantityError("pasted text", text[:40], fault, "import it as a table, or part it")
    return tuple(_draft(part, given or {}) for part in _parts(text))


def troy(text: str, bare: str = "g") -> Mass:
    """A weight as the silver trade writes it: an ounce is the troy ounce (common practice).

    bare: unit of a figure without one.

    Raises:
        QuantityError: it is none.

    >>> print(troy("28 oz"), troy("28.5oz 10dwt"), troy("870"))
    870.897 g (28.00 ozt) 902.001 g (29.00 ozt) 870 g (27.97 ozt)
    """
    said = " ".join(text.split()).rstrip(".")
    if re.fullmatch(r"[-−]?[\d.,]+", said):
        said = f"{said} {bare}"
    said = re.sub(r"(?i)(?<=\d)(?=[a-z])", " ", said)
    said = re.sub(r"(?i)\b(?:ozs?|ounces?)\b\.?(?!\s*(?:t\b|troy|av))", "ozt", said)
    return Mass.parse(said)


def _parts(text: str) -> list[str]:
    """Paragraphs; lines, where every line of a paragraph has an amount of its own."""
    found = []
    for block in re.split(r"\n\s*\n", text.replace("\r\n", "\n").replace("\r", "\n")):
        lines = [
            " ".join(re.sub(r"^\s*(?:[-*•]|\d+[.)])\s+", "", s).split()) for s in block.split("\n")
        ]
        lines = [s for s in lines if s]
        each = all(words.MONEY.search(s) or words.BARE.search(s) for s in lines)
        found += lines if each else [", ".join(s.rstrip(",;") for s in lines)]
    return [s for s in found if s]


def _draft(text: str, given: Mapping[str, str]) -> Draft:
    t = Text(text)
    t.cells.update({"currency": given["currency"]} if given.get("currency") else {})
    for reader in (
        _day, money, _places, _year, _weight, _plain, _made, _venue, _group, _form, _maker,
    ):  # fmt: skip
        reader(t)
    for column, value in given.items():
        t.set(column, value)
    _title(t)
    missing = tuple(c for c in REQUIRED if not t.cells.get(c))
    return Draft(
        text=text,
        cells=t.cells,
        missing=missing,
        notes=tuple(dict.fromkeys(t.notes)),
        unread=_unread(t),
    )


def _places(t: Text) -> None:
    """Numbers of lot and sale."""
    for pattern, column in ((words.LOT, "lot"), (words.SALE, "sale")):
        if match := t.find(pattern):
            groups = [g for g in match.groups() if g]
            t.set(column, " ".join(groups[0].split()))
            t.take(*match.span())
            t.head.append(match.span())


def _day(t: Text) -> None:
    """The day or month of the sale."""
    for pattern in words.DAYS:
        match = t.find(pattern)
        if match is None:
            continue
        t.take(*match.span())
        t.head.append(match.span())
        said = match.group()
        if figures := re.fullmatch(r"(\d{1,2})([./-])(\d{1,2})[./-](\d{4})", said):
            first, second, year = (int(figures[n]) for n in (1, 3, 4))
            # where days are parted by full stops, the day stands first
            if first <= 12 and second <= 12 and first != second and figures[2] != ".":
                t.notes.append(f"{said} may be read either way round; write year-month-day")
                return
            month, day = (second, first) if second <= 12 else (first, second)
            try:
                said = dt.date(year, month, day).isoformat()
            except ValueError:
                t.notes.append(f"{said} is no day")
                return
        try:
            t.set("date", UncertainDate.parse(re.sub(r"[,.]", " ", said)).edtf)
        except QuantityError as fault:
            t.notes.append(f"{said}: {fault.fault}")
        return


def _year(t: Text) -> None:
    """The year of a sale without a day; only where the text has two, the later of our time."""
    if t.cells.get("date") or any("either way" in note for note in t.notes):
        return
    years = [m for m in re.finditer(r"\b(?:19[5-9]\d|20[0-4]\d)\b(?!\s*[-–/]\d|s)", t.text)
             if not any(t.used[m.start() : m.end()])]  # fmt: skip
    every = [m for m in re.finditer(words.MADE, t.text) if not any(t.used[m.start() : m.end()])]
    sold = re.search(r"\bsold (?:in )?$", t.text[: years[0].start()]) if years else None
    if years and (len(every) > 1 or sold):
        last = max(years, key=lambda m: m.group())
        t.set("date", last.group())
        t.take(*last.span())
        t.head.append(last.span())
        t.notes.append(f"{last.group()} is taken as the year of the sale")


def _weight(t: Text) -> None:
    """Weights: net where the text says so, else gross."""
    while (match := t.find(words.WEIGHT)) is not None:
        t.take(*match.span())
        t.tail.append(match.span())
        said = match["mass"].strip()
        if re.search(r"(?i)\d\s*grs?\.?$", said):
            said = re.sub(r"(?i)grs?\.?$", "g", said)
            t.notes.append(f"{match['mass'].strip()}: gr is taken as grams, not grains")
        try:
            mass = troy(re.sub(r"(?<=\d),(?=\d{1,2}\b)", ".", said))
        except QuantityError as fault:
            t.notes.append(f"{said}: {fault.fault}; {fault.remedy}")
            continue
        label = f"{match['first'] or ''} {match['last'] or ''}".casefold()
        net = "net" in label or "weighable" in label
        if re.search(r"(?i)oz|ounce", said) and not re.search(r"(?i)troy|ozt|oz t|dwt", said):
            t.notes.append(f"{said}: the ounce is taken as the troy ounce")
        if not net and not re.search("gross|all", label):
            t.notes.append(f"{said}: taken as gross weight, since the text does not say net")
        t.set("net_g" if net else "gross_g", digits(mass.grams.normalize()))


def _plain(t: Text) -> None:
    """Traits that one phrase tells."""
    for column, table in (("metal", words.METALS), ("engraving", words.ENGRAVINGS)):
        for value, pattern in table:
            if match := t.find(pattern):
                t.set(column, value)
                t.take(*match.span())
    faults = []
    for value, pattern in words.FAULTS:
        if match := t.find(pattern):
            faults.append(value)
            t.take(*match.span())
    t.set("faults", "; ".join(faults))
    if match := t.find(words.FINENESS):
        named = {"sterling": "925", "britannia": "958.4"}
        t.set("fineness", match["figure"] or named[match["word"].casefold()])
        t.take(*match.span())
    if match := t.find(words.STYLE, 0):
        t.set("style", match.group())
        t.take(*match.span())


def _made(t: Text) -> None:
    match = t.find(words.MADE)
    if match is None:
        return
    said = match.group().replace("–", "-")
    try:
        t.set("made", UncertainDate.parse(_dated(said)).edtf)
        t.take(*match.span())
    except QuantityError as fault:
        t.notes.append(f"{said}: {fault.fault}")


def _dated(said: str) -> str:
    """Without "dated"; about in other languages in ours."""
    return re.sub(r"(?i)^(?:um|gegen|vers|verso)\s+", "c. ", re.sub(r"(?i)^dated\s*", "", said))


def _venue(t: Text) -> None:
    """What stands before the day, the lot and the sale."""
    if not t.head:
        return
    first = min(start for start, _ in t.head)
    lead = t.text[:first]
    said = re.sub(
        r"(?i)^(?:sold\s+)?(?:at|by|with|from)\s+|[\s,;:(–—-]+$|\s+(?:on|in|,)\s*$",
        "",
        lead.strip(),
    )
    said = re.sub(r"(?i)[\s,]+(?:on|in)$", "", said).strip(" ,;:")
    if re.fullmatch(r"(?i)(?:sold|auctioned|offered)?", said) or re.search(
        r"\b(?:at|by) [A-Z]", said
    ):
        said = ""  # the house comes after that word
    if said and len(said.split()) <= 8 and not any(t.used[: len(lead.rstrip(" ,"))]):
        t.set("venue", said)
        t.take(0, first)
        return
    name = rf"{words.NAME}(?:,\s*{words.NAME})?"
    for match in re.finditer(
        rf"\b(?:at|by)\s+(?P<name>{name})|(?P<last>{name})[\s,]*(?=$|\|)", t.text
    ):
        if _beside(t, match) and not any(t.used[match.start() : match.end()]):
            t.set("venue", (match["name"] or match["last"]).strip(" ,"))
            t.take(*match.span())
            t.head.append(match.span())
            return
    for start, _ in t.head:  # a name right before the day or the lot
        before = re.search(rf"(?:^|[,;:|(]\s*)(?P<name>{name})[\s,]*$", t.text[:start])
        if before is not None and not any(t.used[before.start("name") : start]):
            t.set("venue", before["name"].strip(" ,"))
            t.take(before.start("name"), start)
            return


def _beside(t: Text, match: re.Match[str]) -> bool:
    """Whether a name stands next to the day, the lot or the sale."""
    return any(
        abs(match.start() - end) < 4 or abs(match.end() - start) < 4 for start, end in t.head
    )


def _group(t: Text) -> None:
    for value, pieces, pattern in words.GROUPS:
        if match := t.find(pattern):
            count = match.groupdict().get("count")
            number = words.COUNTS.get((count or "").casefold()) or (
                int(count) if count and count.isdigit() and len(count) < 5 else None
            )
            if count and number is None:
                continue
            t.set("grouping", value)
            t.set("pieces", str(number or pieces or ""))
            t.take(*match.span())
            return


def _form(t: Text) -> None:
    for form in sorted(words.FORMS, key=len, reverse=True):
        plural = rf"\b{re.escape(form)}(?:e?s)?\b"
        if match := t.find(plural):
            t.set("form", form)
            before = t.text[: match.start()].rstrip()
            count = re.search(r"(?i)\b([\w-]+)$", before)
            if count and not t.cells.get("pieces") and match.group().casefold() != form:
                number = words.COUNTS.get(count[1].casefold())
                if number:
                    t.set("pieces", str(number))
                    t.take(*count.span(1))
            t.take(*match.span())
            return


def _maker(t: Text) -> None:
    """A name after "by" and the like; else the first clause that is a name and nothing else."""
    if match := t.find(words.PLACES, 0):
        t.set("place", match.group())
        t.take(*match.span())
    for value, pattern in words.ATTRIBUTIONS:
        match = t.find(rf"(?i:{pattern})(?P<name>{words.NAME})", 0)
        if match:
            t.set("maker", match["name"].strip(" .,"))
            t.set("attribution", value)
            t.take(*match.span())
            return
    free = "".join("," if used else c for c, used in zip(t.text, t.used, strict=True))
    for clause in re.finditer(r"[^,;()]+", free):
        said = clause.group().strip(" .:-")
        if re.match(r"(?:An?|The)\b", said):
            continue
        if len(said.split()) >= 2 and re.fullmatch(words.NAME, said):
            t.set("maker", said)
            t.take(*clause.span())
            t.notes.append(f"{said} is taken as the maker")
            return


def _title(t: Text) -> None:
    """The longest stretch between venue, day, lot, weights and prices, as it was written."""
    venue = t.cells.get("venue", "")
    marks = sorted([(0, 0), *t.head, *t.tail, (len(t.text), len(t.text))])
    longest, reached = "", 0
    for start, end in marks:
        said = t.text[reached:start].strip(" .,;:-–—()")
        said = re.sub(r"(?i)[\s,]+(?:sold|for|at|sold at|sold for)$", "", said)
        if len(said) > len(longest) and venue not in (said, said.removeprefix("Sold at ")):
            longest = said
        reached = max(reached, end)
    t.set("title", longest)


def _unread(t: Text) -> tuple[str, ...]:
    bounds = [0, *(i for i, (a, b) in enumerate(pairwise(t.used), 1) if a != b), len(t.text)]
    free: Iterable[str] = (t.text[a:b] for a, b in pairwise(bounds) if a < b and not t.used[a])
    found = [w for part in free for w in re.findall(r"[^\W_][\w'’.-]*", part)]
    return tuple(
        dict.fromkeys(w.rstrip(".") for w in found if w.casefold().rstrip(".") not in words.STOP)
    )
