"""What speaks for and against each meaning of a number: one function a line of evidence.

How often each meaning is met, and how much each circumstance weighs, is the bench's own judgment
(common practice); what is listed comes from the library's rows.
"""

import math
import re
from collections.abc import Callable

import msgspec

from planish.library.rows import Word
from planish.marks.designs import registered_year
from planish.marks.figures import Figures
from planish.marks.number_tables import FINE, GRAMS, MEANINGS, Line, Tables
from planish.marks.observation import Mark, Technique

PRACTICE = ("practice",)
#: how often each meaning is met among numbers on silver and plate (common practice)
PRIOR = {
    "fineness": 0.15, "zolotnik": 0.03, "lot": 0.04, "plating": 0.05, "other-metal": 0.01, "pattern": 0.45,
    "year": 0.02, "patent": 0.04, "design": 0.05, "weight": 0.10, "size": 0.05,
}  # fmt: skip
#: share of pattern numbers by their number of figures (common practice)
_PATTERN = {1: 0.08, 2: 0.15, 3: 0.27, 4: 0.30, 5: 0.15, 6: 0.04, 7: 0.01}
_NEVER = 1e-8
FIRST_YEAR, LAST_YEAR = 1500, 2035
_RD = re.compile(
    r"\b(?:R\.?\s?D|REGD?|REGISTERED|REGISTRATION|DESIGN)\.?\s*(?:DESIGN|N[O0°º]|NUMBER|NR)?[\s.:]*$"
)
_PAT = re.compile(
    r"\bPAT(?:D|ENT|ENTED|S)?\.?\s*(?:N[O0]S?|NUMBER|APPL\w*)?[\s.:]*[A-Z]{0,3}\.?\s*(?:[\d,./\s&]|AND)*$"
    r"|\bD\.?\s?R\.?\s?(?:G\.?\s?M|P)\.?(?:\s*N[OR])?[\s.:]*$"
)
ORNAMENT = re.compile(r"\bDES(?:IGN)?\.?\s*PAT|PAT\.?\s*(?:N[O0]\.?)?\s*D\.?\s*$|DESIGN PAT")
_COUNT = re.compile(r"(?:\bN[O0R]\.?|NUMBER|MODEL|PATTERN|STYLE|#|№)[\s.:]*$")
_WEIGHT_UNIT = re.compile(r"^(?:OZS?|OZT|DWTS?|G|GR|GMS?|GRAMS?|GRAMM|KG)$")
_SIZE_UNIT = re.compile(r"^(?:PINTS?|PT|QTS?|CL|ML|CM|MM|IN|INS|INCH|INCHES|DL|LTR)$")
_HINTS: tuple[tuple[str, dict[str, float]], ...] = (
    ("pattern", {"pattern": 12}),
    ("scratch weight", {"weight": 18}),
    ("weight", {"weight": 12}),
    ("registered", {"design": 12}),
    ("patent", {"patent": 12}),
    ("fineness", {"fineness": 9, "zolotnik": 9, "lot": 9}),
    ("standard", {"fineness": 6, "zolotnik": 6, "lot": 6}),
    ("date", {"year": 10}),
    ("year", {"year": 10}),
)
_TECHNIQUES = {
    Technique.SCRATCHED: ("scratched", {"weight": 10, "pattern": -3}),
    Technique.ENGRAVED: ("engraved", {"year": 10, "weight": 5, "pattern": -5}),
}


class Asked(msgspec.Struct, frozen=True):
    """One number with all that is weighed for it."""

    figures: Figures
    mark: Mark
    beside: frozenset[str]
    tables: Tables
    country: str | None

    @property
    def rows(self) -> list[tuple[str, Word]]:
        """Rows that list the number, each with the meaning that it gives."""
        return self.tables.rows(self.figures)


def _spread(asked: Asked) -> dict[str, float]:
    """Chance of these very figures under each meaning."""
    found, tables = asked.figures, asked.tables
    value = found.value
    digits = len(str(value))
    chance = dict.fromkeys(MEANINGS, _NEVER)
    for meaning in (*FINE, "plating", "other-metal", "weight"):
        rows = [row for kind, row in asked.rows if kind == meaning]
        if rows:
            chance[meaning] = 0.9 * len(rows) / tables.totals[meaning]
    if len(found.groups) == 2 and value is None:
        first, second = int(found.groups[0]), int(found.groups[1])
        chance["pattern"] = 0.03 / 10_000
        chance["size"] = max(chance["size"], 0.05 / 200 if found.sign == "/" else _NEVER)
        if found.sign in "-:=oz" and second < 20:
            chance["weight"] = 0.5 / (60 * 20)
        if found.sign in "-/" and {first, second} <= {*GRAMS, 40, 60, 90, 100, 120, 150}:
            chance["plating"] = max(chance["plating"], 0.1 / 50)
    if value is None:
        return chance
    chance["pattern"] = _PATTERN.get(digits, 1e-3) / (9 * 10 ** (digits - 1))
    if 600 <= value <= 999:
        chance["fineness"] = max(chance["fineness"], 0.02 / 400)
    if value in GRAMS:
        chance["plating"] = max(chance["plating"], 0.4 / len(GRAMS))
    if digits == 4 and FIRST_YEAR <= value <= LAST_YEAR:
        chance["year"] = 0.9 / (LAST_YEAR - FIRST_YEAR)
        chance["patent"] = 0.05 / 200 if value >= 1836 else _NEVER
    if 4 <= digits <= 7:
        chance["patent"] = max(chance["patent"], 0.2 / (9 * 10 ** (digits - 1)))
    if registered_year(value, tables.library.designs):
        share = {6: 0.8, 5: 0.15, 7: 0.04}.get(digits, 0.01)
        chance["design"] = share / (9 * 10 ** (digits - 1))
    if value < 5000:
        chance["weight"] = max(chance["weight"], 0.1 / 5000)
        chance["size"] = max(chance["size"], 0.6 / 300 if value < 100 else 0.2 / 5000)
    return chance


def _by_figures(asked: Asked) -> Line:
    rows = asked.rows
    told = "; ".join(dict.fromkeys(f"{row.meaning or row.text}" for _, row in rows))
    sources = tuple(dict.fromkeys(s for _, row in rows for s in row.sources)) or PRACTICE
    return Line(
        f"the figures {asked.figures.number}",
        f"listed: {told}" if told else "in no list of figures here",
        {m: 10 * math.log10(p) for m, p in _spread(asked).items()},
        sources,
    )


def _by_writing(asked: Asked) -> Line | None:
    found = asked.figures
    if found.fraction and len(found.fraction) in (3, 4):
        return Line("written as a fraction", "so fineness is written", {"fineness": 20}, PRACTICE)
    if found.unit in ("S", "H") and any(k in FINE for k, _ in asked.rows):
        return Line(f"{found.unit} stands after it", "marks the figure as silver",
                    {"fineness": 15}, asked.rows[0][1].sources)  # fmt: skip
    if asked.tables.whole(found):
        return Line(
            "listed with the letters that stand with it",
            "figures and letters are one mark",
            {kind: 15 for kind, _ in asked.rows},
            asked.rows[0][1].sources,
        )
    if re.fullmatch(r"LOTH?|LOD|LODIG", found.unit):
        return Line(f"{found.unit} stands after it", "sixteenths", {"lot": 25}, PRACTICE)
    if (found.sign == "oz" or _WEIGHT_UNIT.match(found.unit)) and not any(
        k in (*FINE, "plating") for k, _ in asked.rows
    ):
        return Line("a unit of weight stands with it", "so weights are written",
                    {"weight": 25}, PRACTICE)  # fmt: skip
    if _SIZE_UNIT.match(found.unit):
        return Line("a unit of size stands with it", "so sizes and capacities are written",
                    {"size": 25}, PRACTICE)  # fmt: skip
    return None


def _by_words_before(asked: Asked) -> Line | None:
    before = asked.figures.before + (" " if asked.figures.glued else "")
    if _PAT.search(before.strip()):
        return Line("PAT stands before it", "a patent, by year or number",
                    {"patent": 25}, _word_sources(asked, "PATENT"))  # fmt: skip
    if _RD.search(before.strip()) and not asked.figures.fraction:
        return Line("Rd stands before it", "a registered design",
                    {"design": 25, "pattern": 2}, _word_sources(asked, "RDNO"))  # fmt: skip
    if _COUNT.search(before):
        return Line("a word for a number stands before it", "so pattern and shape are numbered",
                    {"pattern": 14}, _word_sources(asked, "NO"))  # fmt: skip
    return None


def _word_sources(asked: Asked, key: str) -> tuple[str, ...]:
    rows = asked.tables.words.get(key, [])
    return rows[0].sources if rows else PRACTICE


def _by_glued(asked: Asked) -> Line | None:
    """Letters that stand right before the figures, as one number has them."""
    glued = asked.figures.glued
    if not glued or asked.rows or _PAT.search(asked.figures.before) or glued in ("RD", "D", "NO"):
        return None
    return Line(f"{glued} stands right before it, without a space", "so stock numbers are made up",
                {"pattern": 6, **dict.fromkeys(FINE, -6.0), "year": -6}, PRACTICE)  # fmt: skip


def _by_plate(asked: Asked) -> Line | None:
    """Plate words, or a maker known for plate, among the other marks."""
    against = dict.fromkeys(FINE, -20.0)
    for word in sorted(asked.beside):
        rows = [r for r in asked.tables.words.get(word, ()) if r.kind in ("plate", "base")]
        if rows:
            return Line(f"{word} stands beside it", "the body is no silver, so no fineness of it",
                        {**against, "plating": 8}, rows[0].sources)  # fmt: skip
    for word in sorted(asked.beside):
        if maker := asked.tables.platers.get(word):
            return Line(f"{word} stands beside it", f"{maker.name}, known for plate",
                        {**dict.fromkeys(FINE, -8.0), "plating": 8}, maker.sources)  # fmt: skip
    return None


def _by_fine_words(asked: Asked) -> Line | None:
    """A word of fineness among the other marks: the same said twice, or no need of a figure."""
    for word in sorted(asked.beside):
        rows = [r for r in asked.tables.words.get(word, ()) if r.kind == "fineness"]
        if not rows or len(word) < 3:
            continue
        finenesses = {row.fineness for kind, row in asked.rows if kind in FINE}
        if finenesses & {r.fineness for r in rows} or any(r.fineness is None for r in rows):
            return Line(f"{word} stands beside it", "the word and the figure agree",
                        {"fineness": 3, "plating": -15}, rows[0].sources)  # fmt: skip
        return Line(f"{word} stands beside it", "the word says the fineness already",
                    {"fineness": -8, "zolotnik": -15, "lot": -12, "plating": -15},
                    rows[0].sources)  # fmt: skip
    return None


def _by_time(asked: Asked) -> Line | None:
    """A year before the time of a word beside it is no year of making."""
    value = asked.figures.value
    if value is None or not FIRST_YEAR <= value <= LAST_YEAR:
        return None
    latest: tuple[int, Word, str] | None = None
    for word in sorted(asked.beside):
        first = asked.tables.first_year(word)
        if first and (latest is None or first[0] > latest[0]):
            latest = (*first, word)
    if latest is None or value >= latest[0]:
        return None
    year, row, word = latest
    return Line(f"{word} stands beside it", f"that word is not met before {year}: {value} is no "
                "year of making", {"year": -20, "patent": -5}, row.sources)  # fmt: skip


def _by_script(asked: Asked) -> Line | None:
    """Letters of other alphabets among the marks say which figures are usual."""
    said = "".join(asked.beside)
    if any("\u0400" <= c <= "\u04ff" for c in said):
        return Line("Cyrillic letters stand beside it", "fineness by zolotnik is usual there",
                    {"zolotnik": 10, "fineness": 3, "lot": -5}, PRACTICE)  # fmt: skip
    return None


def _by_hint(asked: Asked) -> Line | None:
    said = (asked.mark.hint or "").casefold()
    for word, weights in _HINTS:
        if word in said:
            return Line(f"the observer calls it {asked.mark.hint}", "an opinion, not the mark",
                        weights, PRACTICE)  # fmt: skip
    return None


def _by_technique(asked: Asked) -> Line | None:
    if asked.mark.technique not in _TECHNIQUES:
        return None
    word, weights = _TECHNIQUES[asked.mark.technique]
    struck = dict.fromkeys((*FINE, "plating", "design", "patent"), -12.0)
    return Line(
        f"it is {word}", "official and trade figures are struck", struck | weights, PRACTICE
    )


def _by_outline(asked: Asked) -> Line | None:
    outline = (asked.mark.outline or "").casefold()
    if "oval" in outline and (signs := asked.tables.ovals.get(asked.figures.number)):
        return Line("it stands in an oval", f"{asked.figures.number} in an oval is a fineness mark "
                    "of law", {"fineness": 10, "pattern": -6}, signs[0].sources)  # fmt: skip
    if any(w in outline for w in ("square", "circle")) and any(
        k == "plating" for k, _ in asked.rows
    ):
        return Line(f"it stands in a {outline}", "grams are often framed so", {"plating": 4},
                    PRACTICE)  # fmt: skip
    return None


def _by_country(asked: Asked) -> Line | None:
    if asked.country is None:
        return None
    here: dict[str, float] = {}
    sources: dict[str, None] = {}
    for meaning in (*FINE, "plating"):
        rows = [row for kind, row in asked.rows if kind == meaning]
        told = [r for r in rows if r.countries]
        mine = [r for r in told if asked.country in r.countries.split(";")]
        if told:
            here[meaning] = 6.0 if mine else (-6.0 if len(told) == len(rows) else 0.0)
            sources.update(dict.fromkeys(s for r in (mine or told) for s in r.sources))
    if not here:
        return None
    return Line(f"country: {asked.country}", "where the figure is listed", here, tuple(sources))


RULES: tuple[Callable[[Asked], Line | None], ...] = (
    _by_figures, _by_writing, _by_words_before, _by_glued, _by_plate, _by_fine_words, _by_time, _by_script, _by_hint,
    _by_technique, _by_outline, _by_country,
)  # fmt: skip
