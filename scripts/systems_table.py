"""Writes docs/systems.md: what the library holds on each marking system, and how it is checked.

python scripts/systems_table.py            writes the page
python scripts/systems_table.py --check    exits 1 if the page is not up to date
"""

import csv
import sys
from collections import Counter, defaultdict
from collections.abc import Iterable
from pathlib import Path

from planish.library.loader import Library, load
from planish.library.rows import Office, Row, System

ROOT = Path(__file__).parents[1]
PAGE = ROOT / "docs" / "systems.md"
SETS = ROOT / "tests" / "marks" / "outside"
#: a system with fewer outside checks is named as a gap
ENOUGH = 3
TRUST = ("document", "memory", "practice")
SURE = ("two-sources", "sourced", "memory", "practice")
#: more offices than this are counted, and only the first named
_NAMED = 6

COUNTRIES = {
    "AE": "United Arab Emirates", "AM": "Armenia", "AR": "Argentina", "AT": "Austria",
    "AU": "Australia", "AZ": "Azerbaijan", "BE": "Belgium", "BG": "Bulgaria", "BO": "Bolivia",
    "BR": "Brazil", "CA": "Canada", "CH": "Switzerland", "CL": "Chile", "CN": "China",
    "CO": "Colombia", "CU": "Cuba", "CY": "Cyprus", "CZ": "Czechia", "DE": "Germany",
    "DK": "Denmark", "DZ": "Algeria", "EE": "Estonia", "EG": "Egypt", "ES": "Spain",
    "ET": "Ethiopia", "FI": "Finland", "FR": "France", "GB": "United Kingdom", "GE": "Georgia",
    "GR": "Greece", "GT": "Guatemala", "HK": "Hong Kong", "HR": "Croatia", "HU": "Hungary",
    "ID": "Indonesia", "IE": "Ireland", "IL": "Israel", "IN": "India", "IQ": "Iraq",
    "IR": "Iran", "IS": "Iceland", "IT": "Italy", "JP": "Japan", "KH": "Cambodia",
    "KR": "Korea", "LB": "Lebanon", "LI": "Liechtenstein", "LK": "Sri Lanka", "LT": "Lithuania",
    "LU": "Luxembourg", "LV": "Latvia", "MA": "Morocco", "MM": "Myanmar", "MT": "Malta",
    "MX": "Mexico", "NL": "Netherlands", "NO": "Norway", "NP": "Nepal", "NZ": "New Zealand",
    "PE": "Peru", "PH": "Philippines", "PL": "Poland", "PT": "Portugal", "RO": "Romania",
    "RS": "Serbia and Yugoslavia", "RU": "Russia", "SE": "Sweden", "SG": "Singapore",
    "SI": "Slovenia", "SK": "Slovakia", "SY": "Syria", "TH": "Thailand", "TN": "Tunisia",
    "TR": "Turkey", "UA": "Ukraine", "US": "United States", "UY": "Uruguay", "VN": "Vietnam",
    "XX": "Vienna Convention", "YU": "Yugoslavia", "ZA": "South Africa",
}  # fmt: skip

HEAD = """\
# Marking systems: what is held and how it is checked

Written by `python scripts/systems_table.py` from the library and the outside checks; a test holds
that it is up to date.

- **period**: years in which marking began; "on" is still in use.
- **offices**: offices or towns with rows of their own; a system without any has one set of marks.
- **rows**: rows of roles and signs, and date letters of its offices, by how sure they are:
  two sources / one source / from memory / common practice.
- **checks**: sets of marks described elsewhere (`tests/marks/outside`): text seen / recalled / put
  together after a rule that the source states; in brackets those still read wrongly.

"""


def countries_word(code: str) -> str:
    """A country's name, or its code where no name is written down."""
    return COUNTRIES.get(code, code) if code else "Country not told"


def outside() -> dict[str, list[dict[str, str]]]:
    """The outside checks by system."""
    found: dict[str, list[dict[str, str]]] = defaultdict(list)
    for file in sorted(SETS.glob("*.csv")):
        with file.open(encoding="utf-8", newline="") as text:
            for row in csv.DictReader(text):
                found[row["system"]].append(row)
    return found


def offices_of(system: System, library: Library) -> list[Office]:
    """Offices with roles or signs of their own in a system."""
    named = {r.office for r in library.roles if r.system == system.id}
    named |= {r.office for r in library.signs if r.system == system.id}
    return [o for o in library.offices if o.id in named]


def rows_of(system: System, library: Library) -> Iterable[Row]:
    """Rows of a system: roles, signs, and cycles of its offices where it has date letters."""
    yield from (r for r in library.roles if r.system == system.id)
    yield from (r for r in library.signs if r.system == system.id)
    dated = {r.office for r in library.signs if r.system == system.id and r.kind == "cycle"}
    if "" in dated:
        dated |= {o.id for o in offices_of(system, library)}
    last = system.year_to or 9999
    yield from (
        c
        for c in library.cycles
        if c.office in dated and c.first_year <= last and c.last_year >= system.year_from
    )


def period(system: System) -> str:
    """Its years."""
    return f"{system.year_from} on" if system.year_to is None else (
        f"{system.year_from}-{system.year_to}"
    )  # fmt: skip


def line(system: System, library: Library, checks: list[dict[str, str]]) -> str:
    """One row of the table."""
    offices = [o.name for o in offices_of(system, library)]
    named = ", ".join(offices[:_NAMED]) + (" ..." if len(offices) > _NAMED else "")
    told = f"{len(offices)}: {named}" if offices else ""
    sure = Counter(str(r.confidence) for r in rows_of(system, library))
    trust = Counter(c["trust"] for c in checks)
    wrong = sum(1 for c in checks if c.get("wrong"))
    done = " / ".join(str(trust[t]) for t in TRUST) + (f" ({wrong} wrong)" if wrong else "")
    cells = (
        f"`{system.id}`",
        system.label,
        system.kind,
        period(system),
        told,
        " / ".join(str(sure[s]) for s in SURE),
        done if checks else "none",
    )
    return "| " + " | ".join(cells) + " |"


def page(library: Library) -> str:
    """The whole page."""
    checks = outside()
    by_country: dict[str, list[System]] = defaultdict(list)
    for system in library.systems:
        by_country[system.country].append(system)
    every = [c for rows in checks.values() for c in rows]
    trust = Counter(c["trust"] for c in every)
    parts = [HEAD]
    parts.append(
        f"{len(library.systems)} systems, {len(every)} outside checks: "
        + ", ".join(f"{trust[t]} {t}" for t in TRUST)
        + f"; {sum(1 for c in every if c.get('wrong'))} still read wrongly.\n"
    )
    for code in sorted(by_country, key=lambda c: (not c, countries_word(c))):
        parts += [
            f"\n## {countries_word(code)}\n",
            "| system | what | kind | period | offices | rows | checks |",
            "| --- | --- | --- | --- | --- | --- | --- |",
            *(line(s, library, checks[s.id]) for s in by_country[code]),
        ]
    parts.append("\n## Gaps\n")
    thin = [s for s in library.systems if len(checks[s.id]) < ENOUGH]
    parts.append(
        f"Fewer than {ENOUGH} outside checks ({len(thin)} systems): "
        + (", ".join(f"`{s.id}` ({len(checks[s.id])})" for s in thin) or "none")
        + ".\n"
    )
    unseen = [
        s
        for s in library.systems
        if checks[s.id] and all(c["trust"] != "document" for c in checks[s.id])
    ]
    parts.append(
        f"No check whose text was seen ({len(unseen)} systems with checks): "
        + (", ".join(f"`{s.id}`" for s in unseen) or "none")
        + ".\n"
    )
    weak = {"memory", "practice"}
    recalled = [
        s for s in library.systems if all(str(r.confidence) in weak for r in rows_of(s, library))
    ]
    parts.append(
        f"Every row from memory or practice ({len(recalled)} systems): "
        + (", ".join(f"`{s.id}`" for s in recalled) or "none")
        + ".\n"
    )
    wrong = [c for c in every if c.get("wrong")]
    if wrong:
        parts.append("Sets still read wrongly:\n")
        parts += [
            f"- `{c['system']}`: {c['marks'].replace(' | ', '; ')}: {c['wrong']}" for c in wrong
        ]
    return "\n".join(parts).rstrip("\n") + "\n"


def main() -> None:
    """Write the page, or check it."""
    text = page(load())
    if "--check" in sys.argv[1:]:
        if not PAGE.is_file() or PAGE.read_text(encoding="utf-8") != text:
            sys.exit("docs/systems.md is not up to date: run python scripts/systems_table.py")
        return
    PAGE.write_text(text, encoding="utf-8")


if __name__ == "__main__":
    main()
