"""The test log: what was done to a piece, where, with what result, by whom, and who agreed.

Non-destructive tests come first. The log tells where a harmful test was made without the owner's
consent on record, and repeats the caution of each test that carries one.
"""

import re
from collections.abc import Iterable
from enum import StrEnum

import msgspec

from planish.library.rows import MetalTest
from planish.quantity import QuantityError, UncertainDate

_WHAT = "test"
_LONGEST = 300
#: standard uncertainty of a figure given without one, by test, in the unit of the test.
#: Judgment; touchstone from memory: 10 to 20 ‰ by a practised hand with gold, worse with silver
PLUS_MINUS = {
    "density": 0.1,
    "conductivity": 4.0,
    "xrf": 1.0,
    "touchstone": 30.0,
    "assay": 1.0,
}
#: figures that can be, by test, in the unit of the test
LIMITS = {
    "density": (0.5, 23.0),
    "conductivity": (0.0, 110.0),
    "xrf": (0.0, 100.0),
    "touchstone": (0.0, 1000.0),
    "assay": (0.0, 1000.0),
}
_DENIED = ("owner did not agree", "owner not asked", "no consent")
_AGREED = ("owner agreed", "owner agrees", "agreed", "consent")
_WORN = re.compile(r"\bworn|\bwear|\brubbed", re.IGNORECASE)
_CUT = re.compile(r"\bfiled|\bnotch|\bcut|\bscrap|\bdrilled|\bscratch", re.IGNORECASE)
_FIGURE = re.compile(
    r"(?P<v>\d*\.?\d+)\s*(?:(?:±|\+-|\+/-)\s*(?P<u>\d*\.?\d+))?\s*"
    r"(?:%\s*iacs|%|‰|g/cm3|g/cm³|g/ml)?",
    re.IGNORECASE,
)
_ELEMENT = re.compile(
    r"\b(ag|cu|zn|ni|sn|sb|fe|cr|pb)\s*(\d+(?:\.\d+)?(?:\s*±\s*\d+(?:\.\d+)?)?)", re.IGNORECASE
)
#: element beside silver -> reading of the test xrf-beside
_BESIDE = {
    "cu": "copper", "zn": "zinc-nickel", "ni": "zinc-nickel", "sn": "tin", "sb": "tin",
    "fe": "iron", "cr": "iron", "pb": "lead",
}  # fmt: skip


class Where(StrEnum):
    """What the test met: the skin as it is, a worn place, or metal laid bare by a file."""

    SURFACE = "surface"
    WORN = "worn"
    CUT = "cut"


class Entry(msgspec.Struct, frozen=True, kw_only=True):
    """One test as made.

    test: id of the table ``tests``.
    readings: ids of the test's readings that it may have been (one, or several where the word said
        does not tell them apart, as "red"); empty where a figure was read.
    value, plus_minus: figure and its standard uncertainty, in the unit of the test.
    spot: where on the piece, in words. where: what the test met there.
    sure: whether the reading is sure.
    by, on: who did it and when (a date of EDTF). agreed: the owner's consent; None = not recorded.
    """

    test: str
    readings: tuple[str, ...] = ()
    value: float | None = None
    plus_minus: float = 0.0
    spot: str = ""
    where: Where = Where.SURFACE
    sure: bool = True
    by: str = ""
    on: str = ""
    agreed: bool | None = None
    note: str = ""


class LogNote(msgspec.Struct, frozen=True):
    """What the log has to say about one of its tests. kind: consent, order or caution."""

    test: str
    kind: str
    says: str


def find_test(word: str, tests: Iterable[MetalTest]) -> MetalTest:
    """The test of that name.

    Raises:
        QuantityError: no test has the name.
    """
    wanted = " ".join(word.casefold().replace("_", " ").split())
    rows = tuple(tests)
    for test in rows:
        if wanted in {name.casefold() for name in test.names}:
            return test
    known = ", ".join(t.id for t in rows)
    raise QuantityError(_WHAT, word, "no such test", f"one of {known}")


def readings_of(test: MetalTest, words: str) -> tuple[str, ...]:
    """Ids of the readings that the words may mean; those whose id or words end in a word said.

    Raises:
        QuantityError: no reading of the test is meant.
    """
    said = " ".join(words.casefold().replace("_", " ").split())
    choices = test.choices
    for exact in (said, said.replace(" ", "-")):
        if exact in choices:
            return (exact,)
    named = tuple(k for k, also in choices.items() if said in {w.casefold() for w in also})
    if named:
        return named
    # "red" is bright red or dark red
    loose = tuple(k for k in choices if said in k.split("-"))
    if loose:
        return loose
    raise QuantityError(
        f"reading of {test.label}", words, "no such reading", f"one of {', '.join(choices)}"
    )


def parse_entry(text: str, tests: Iterable[MetalTest]) -> tuple[Entry, ...]:
    """An entry as ``TEST=READING@SPOT, REMARK, REMARK``; X-ray shots with other metals give two.

    A reading is a word of the test, or a figure with its standard uncertainty (``92.3±0.8``; X-ray
    shots also ``Ag 92.3±0.8 Cu 7.1 Ni 0.4``). Remarks: ``filed`` or ``worn``, ``unsure``,
    ``owner agreed``, ``by NAME``, a date as 2026-05-01; anything else is kept as a note.

    Raises:
        QuantityError: what, where in the text, how to mend it.
    """
    rows = tuple(tests)
    name, sign, rest = text.partition("=")
    if not sign or not rest.strip():
        example = "write TEST=READING@SPOT, as in magnet=none or xrf=92.3±0.8@rim"
        raise QuantityError(_WHAT, text, "no reading given", example)
    test = find_test(name, rows)
    reading, at, placed = rest.partition("@")
    if at and not placed.strip():
        raise QuantityError(_WHAT, text, "no spot after the @", "name the spot, or leave the @ out")
    if at:
        spot, *remarks = (part.strip() for part in placed.split(","))
    else:
        reading, *remarks = (part.strip() for part in rest.split(","))
        spot = ""
    if re.fullmatch(r"\d+", reading.strip()) and remarks and re.match(r"\d+(?!\d*-)", remarks[0]):
        raise QuantityError(_WHAT, text, "a decimal comma", "write a point")
    beside: tuple[str, ...] = ()
    if test.id == "xrf":
        reading, beside = _shot(reading)
    entry = _remarked(Entry(test=test.id, spot=spot), remarks, text)
    if test.unit and (not test.choices or re.match(r"\s*[.\d]", reading)):
        value, plus_minus = _figure(reading, test)
        return _both(msgspec.structs.replace(entry, value=value, plus_minus=plus_minus), beside)
    if not test.choices:
        notes = "; ".join(n for n in (reading.strip(), entry.note) if n)
        return (msgspec.structs.replace(entry, note=notes),)
    return (msgspec.structs.replace(entry, readings=readings_of(test, reading)),)


def _both(entry: Entry, beside: tuple[str, ...]) -> tuple[Entry, ...]:
    if not beside:
        return (entry,)
    second = msgspec.structs.replace(
        entry, test="xrf-beside", readings=beside, value=None, plus_minus=0.0
    )
    return entry, second


def _shot(reading: str) -> tuple[str, tuple[str, ...]]:
    """Silver's share of a shot, and the chief metal beside it, where metals are named."""
    found = {e.lower(): share for e, share in _ELEMENT.findall(reading)}
    if not found:
        return reading, ()
    shares = {e: float(s.split("±")[0]) for e, s in found.items() if e != "ag"}
    # nickel and zinc are told together: either beside silver is foreign to it
    told: dict[str, float] = {}
    for element, share in shares.items():
        told[_BESIDE[element]] = told.get(_BESIDE[element], 0.0) + share
    # copper is expected beside silver, so half a per cent of another metal says more
    foreign = {
        k: v for k, v in told.items() if k != "copper" and v >= max(0.5, 0.08 * sum(told.values()))
    }
    best = max(foreign or told, key=lambda k: told[k]) if told else "none"
    return found.get("ag", "0"), (best,)


def _figure(text: str, test: MetalTest) -> tuple[float, float]:
    what = test.label
    found = _FIGURE.fullmatch(text.strip())
    if not found:
        remedy = f"write a figure in {test.unit}, as in {_example(test)}"
        raise QuantityError(what, text, "not a figure", remedy)
    value = float(found["v"])
    low, high = LIMITS[test.id]
    if not low <= value <= high:
        fault = f"outside {low:g} to {high:g} {test.unit}"
        raise QuantityError(what, text, fault, "check figure and unit")
    if found["u"] is not None and float(found["u"]) <= 0:
        raise QuantityError(what, text, "an uncertainty is above zero", "leave it out if unknown")
    return value, float(found["u"]) if found["u"] else PLUS_MINUS[test.id]


def _example(test: MetalTest) -> str:
    shown = {"density": "10.31±0.05", "xrf": "92.3±0.8", "conductivity": "94±3"}
    return f"{test.id}={shown.get(test.id, '900±25')}"


def _remarked(entry: Entry, remarks: list[str], text: str) -> Entry:
    """The entry with what the remarks behind the spot say."""
    if len(text) > _LONGEST:
        fault = f"longer than {_LONGEST} characters"
        raise QuantityError(_WHAT, text, fault, "keep one test to one entry")
    agreed, sure, by, on = entry.agreed, entry.sure, "", ""
    notes: list[str] = []
    for remark in remarks:
        said = remark.casefold()
        if said in _DENIED:
            agreed = False
        elif said in _AGREED:
            agreed = True
        elif said in ("unsure", "perhaps", "doubtful"):
            sure = False
        elif said.startswith("by "):
            by = remark[3:].strip()
        elif re.match(r"(on )?\d{4}(-\d\d)*$", said):
            on = str(UncertainDate.parse(said.removeprefix("on ")))
        elif remark:
            notes.append(remark)
    where = entry.where
    whole = " ".join([entry.spot, *notes])
    if _CUT.search(whole):
        where = Where.CUT
    elif _WORN.search(whole):
        where = Where.WORN
    kept = [n for n in notes if n.casefold() not in ("filed", "notched", "cut", "worn")]
    return msgspec.structs.replace(
        entry, agreed=agreed, sure=sure, by=by, on=on, where=where, note="; ".join(kept)
    )


def log_notes(entries: Iterable[Entry], tests: Iterable[MetalTest]) -> tuple[LogNote, ...]:
    """What the log has to say: consent missing, harm before what does none, cautions."""
    rows = {test.id: test for test in tests}
    notes: list[LogNote] = []
    harmless: set[str] = set()
    told: set[str] = set()
    for entry in entries:
        test = rows[entry.test]
        harmful = test.harm > 0 or entry.where is Where.CUT
        if harmful:
            leaves = test.leaves if test.harm > 0 else "a notch for good"
            if entry.agreed is None:
                says = f"{test.label}: leaves {leaves}; the owner's consent is not on record"
                notes.append(LogNote(test.id, "consent", says))
            elif not entry.agreed:
                says = f"{test.label}: leaves {leaves}; made although the owner did not agree"
                notes.append(LogNote(test.id, "consent", says))
            if not harmless:
                says = f"{test.label}: made before any test that leaves nothing"
                notes.append(LogNote(test.id, "order", says))
        else:
            harmless.add(test.id)
        if test.caution and test.id not in told and (test.harm > 0 or test.id.startswith("xrf")):
            told.add(test.id)
            notes.append(LogNote(test.id, "caution", f"{test.label}: {test.caution}"))
    return tuple(notes)
