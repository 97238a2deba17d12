"""The self-check finds nothing in the shipped library, and finds each fault put into a copy."""

from collections.abc import Callable
from typing import Any

import msgspec
import pytest

from planish.library import Library, load
from planish.library.check import CHECKS, problems
from planish.library.rows import Confidence, Role, Sign, System, Weight

replace = msgspec.structs.replace


def first(table: str, **cells: object) -> Any:
    """The first row of a table with these cells."""
    return next(
        row
        for row in getattr(load(), table)
        if all(getattr(row, name) == value for name, value in cells.items())
    )


def broken(table: str, old: Any, **cells: object) -> Library:
    """A copy of the library with one row changed."""
    rows = getattr(load(), table)
    assert old in rows
    changed = tuple(replace(r, **cells) if r is old else r for r in rows)
    return replace(load(), **{table: changed})


def with_row(table: str, row: Any) -> Library:
    return replace(load(), **{table: (*getattr(load(), table), row)})


def role(**cells: Any) -> Role:
    rest = {
        "system": "GB-ENG", "office": "LON", "role": "town", "year_from": 1300, "year_to": 1310,
        "presence": 0.5, "source": "practice", "confidence": Confidence.PRACTICE, **cells,
    }  # fmt: skip
    return Role(**rest)


def sign(**cells: Any) -> Sign:
    rest = {
        "id": "T", "system": "GB-ENG", "office": "LON", "role": "town", "kind": "device",
        "value": "anchor", "year_from": 1800, "source": "practice",
        "confidence": Confidence.PRACTICE, **cells,
    }  # fmt: skip
    return Sign(**rest)


def test_the_shipped_library_is_sound() -> None:
    assert problems(load()) == []


TOWN = first("roles", system="GB-ENG", office="LON", role="town", year_from=1781)
ANCHOR = first("signs", system="GB-ENG", office="BIR", role="town", value="anchor")
STORR = first("makers", id="paul-storr")
STERLING = first("metals", id="silver-925")
AMBER = first("materials", id="amber")
RED = first("responses", test="dichromate", met="copper")
EPNS = first("compositions", id="plated-nickel-silver")

FAULTS: list[tuple[Callable[[], Library], str]] = [
    # sources
    (lambda: broken("cycles", first("cycles", id="LON-10"), source="HAYDEN1915;NOBODY"),
     "cycles LON-10: source NOBODY is not in the bibliography"),
    (lambda: broken("rules", load().rules[0], source=" ; "),
     f"rules {load().rules[0].id}: names no source"),
    # ids
    (lambda: with_row("devices", first("devices", id="anchor")),
     "devices anchor: the id stands 2 times"),
    (lambda: with_row("sources", load().sources[0]),
     f"sources {load().sources[0].key}: the id stands 2 times"),
    # order of years
    (lambda: broken("roles", TOWN, year_to=1780),
     "roles GB-ENG LON town 1781-1780: ends in 1780, before it begins in 1781"),
    (lambda: broken("offices", first("offices", id="CHE"), closed=1600),
     "offices CHE: ends in 1600, before it begins in 1686"),
    (lambda: broken("rules", first("rules", id="GB-BRIT-1697"), date_to="1697-03-26"),
     "rules GB-BRIT-1697: ends on 1697-03-26, before it begins on 1697-03-27"),
    # numbers
    (lambda: broken("roles", TOWN, presence=1.01),
     "roles GB-ENG LON town 1781-1974: presence 1.01 is not between 0 and 1"),
    (lambda: broken("roles", TOWN, presence=-0.1),
     "roles GB-ENG LON town 1781-1974: presence -0.1 is not between 0 and 1"),
    (lambda: broken("signs", ANCHOR, share=0.0), f"signs {ANCHOR.id}: share 0 is not above 0"),
    (lambda: broken("signs", ANCHOR, fineness=9250.0),
     f"{ANCHOR.id}: fineness 9250 is not between 0 and 1000"),
    (lambda: broken("systems", first("systems", id="IE-DUB"), weight=0.0),
     "IE-DUB: weight 0 is not above 0"),
    (lambda: broken("cycles", first("cycles", id="LON-10"), slack=-1),
     "cycles LON-10: slack -1 is below 0"),
    # devices
    (lambda: broken("devices", first("devices", id="lion-passant"), broader="lyon"),
     "devices lion-passant: wider device lyon does not exist"),
    (lambda: broken("devices", first("devices", id="lion"), broader="lion-passant-guardant"),
     "devices lion: its wider devices run in a circle"),
    (lambda: broken("signs", ANCHOR, value="ancor"),
     f"signs {ANCHOR.id}: device ancor does not exist"),
    # references
    (lambda: broken("signs", ANCHOR, system="GB-ENGLAND"),
     f"signs {ANCHOR.id}: system GB-ENGLAND does not exist"),
    (lambda: broken("roles", TOWN, office="LDN"),
     "roles GB-ENG LDN town 1781-1974: office LDN does not exist"),
    (lambda: broken("cycles", first("cycles", id="LON-10"), office="LDN"),
     "cycles LON-10: office LDN does not exist"),
    (lambda: with_row("weights", Weight(target="LDN", year_from=1, weight=1.0, source="practice",
                                        confidence=Confidence.PRACTICE)),
     "weights LDN 1-: no office or system of that id"),
    # kinds
    (lambda: broken("signs", ANCHOR, kind="picture"), f"signs {ANCHOR.id}: unknown kind picture"),
    (lambda: broken("signs", ANCHOR, value=""), f"signs {ANCHOR.id}: kind device needs a value"),
    (lambda: broken("signs", ANCHOR, kind="cycle", value="A"),
     f"signs {ANCHOR.id}: kind cycle takes its letters from the table of cycles"),
    (lambda: broken("systems", first("systems", id="GB-EP"), kind="plate"),
     "systems GB-EP: unknown kind plate"),
    (lambda: broken("traits", first("traits", id="epns"), strength="sure"),
     "traits epns: unknown strength sure"),
    (lambda: broken("roles", TOWN, forms="initials"),
     "roles GB-ENG LON town 1781-1974: form 'initials' is not word=number"),
    (lambda: broken("roles", TOWN, forms="cypher=0.5"),
     "roles GB-ENG LON town 1781-1974: unknown form cypher"),
    (lambda: broken("roles", TOWN, forms="initials=0.7;name=0.7"),
     "roles GB-ENG LON town 1781-1974: forms add up to 1.4, above 1"),
    # roles and signs
    (lambda: with_row("signs", sign(role="retailer")),
     "signs T: no row says that retailer is struck there in those years"),
    (lambda: with_row("signs", sign(year_from=1300, year_to=1310)),
     "signs T: no row says that town is struck there in those years"),
    (lambda: with_row("roles", role()),
     "roles GB-ENG LON town 1300-1310: no sign and no form shows it"),
    (lambda: with_row("systems", System(id="T", country="GB", label="none", kind="solid",
                                        year_from=1, source="practice",
                                        confidence=Confidence.PRACTICE)),
     "systems T: has no role"),
    # one role at a time
    (lambda: broken("roles", TOWN, year_from=1780),
     "roles GB-ENG LON town 1780-1974: overlaps GB-ENG LON town 1478-1780"),
    (lambda: with_row("weights", Weight(target="LON", year_from=1900, year_to=1901, weight=1.0,
                                        source="practice", confidence=Confidence.PRACTICE)),
     "weights LON 1900-1901: overlaps LON 1900-1939"),
    # weights cover
    (lambda: broken("weights", first("weights", target="EXE", year_from=1701), year_to=1790),
     "weights EXE: none for 1791"),
    (lambda: broken("weights", first("weights", target="LON", year_from=1940), year_to=2000),
     "weights LON: none for 2001"),
    # cycles
    (lambda: broken("cycles", first("cycles", id="LON-10"), letters="A B C"),
     "cycles LON-10: letters run to 1660, the cycle from 1658 to 1677"),
    (lambda: broken("cycles", first("cycles", id="LON-10"), first_year=1657,
                    letters="? " + first("cycles", id="LON-10").letters),
     "cycles LON-10: cannot read the letter '?'"),
    (lambda: broken("cycles", first("cycles", id="LON-10"), first_year=1657,
                    letters="Z " + first("cycles", id="LON-10").letters),
     "cycles LON-10: overlaps LON-09"),
    (lambda: broken("cycles", first("cycles", id="LON-12"), first_start=""),
     "cycles LON-12: overlaps LON-11"),
    (lambda: broken("cycles", first("cycles", id="CHE-12"), last_end="1962-01-01"),
     "cycles CHE-12: 1962 ends before it begins"),
    (lambda: with_row("signs", sign(role="date", kind="cycle", value="", office="ABD")),
     "signs T: the office has no date letters in those years"),
    # succession
    (lambda: broken("makers", STORR, succeeds="nobody"),
     "makers paul-storr: follows nobody, which does not exist"),
    (lambda: broken("makers", STORR, succeeds="weir-and-sons"),
     f"makers paul-storr: begins in {STORR.year_from}, but follows weir-and-sons of 1869"),
    (lambda: broken("makers", STORR, succeeds="thomas-robins; paul-storr"),
     "makers paul-storr: those it follows run in a circle"),
    # metals
    (lambda: broken("metals", STERLING, density=10.6),
     "metals silver-925: density 10.6 is outside its limits"),
    (lambda: broken("metals", STERLING, magnetic="perhaps"),
     "metals silver-925: unknown word perhaps for magnetic"),
    (lambda: broken("metals", STERLING, liquidus=700.0),
     "metals silver-925: begins to melt above the end of melting"),
    (lambda: broken("metals", STERLING, ideal=10.366),
     "metals silver-925: ideal 10.366 does not follow from Ag=92.5;Cu=7.5"),
    # tests of the metal
    (lambda: broken("responses", RED, chances="bright-red=0.5;dark-red=0.5"),
     "responses dichromate copper: its readings are not those of the test"),
    (lambda: broken("responses", RED, chances=RED.chances.replace("blue=0.73", "blue=0.63")),
     "responses dichromate copper: chances are not above 0 and adding up to 1"),
    (lambda: broken("responses", RED, test="oracle"),
     "responses oracle copper: test oracle does not exist"),
    (lambda: broken("acids", load().acids[0], reading="purple"),
     f"acids {load().acids[0].metal}: purple is no reading of dichromate"),
    (lambda: broken("compositions", EPNS, metals="unobtainium"),
     "compositions plated-nickel-silver: metal unobtainium does not exist"),
    (lambda: broken("compositions", EPNS, kind="silvery"),
     "compositions plated-nickel-silver: unknown kind silvery"),
    (lambda: broken("compositions", EPNS, share=0.0),
     "compositions plated-nickel-silver: share 0 is not above 0"),
    # stones
    (lambda: broken("materials", AMBER, sg=1.2),
     "materials amber: gravity 1.2 is outside its limits"),
    (lambda: broken("materials", AMBER, ri_low=1.6),
     "materials amber: index 1.6 to 1.54 is out of order"),
    (lambda: broken("materials", AMBER, hardness="soft"),
     "materials amber: hardness soft is no figure"),
    (lambda: broken("materials", AMBER, colour="yellow=5;plaid=1"),
     "materials amber: colour: plaid is no answer of the test"),
    (lambda: broken("materials", AMBER, settings="baltic=0"),
     "materials amber: a frequency is not above 0"),
    (lambda: broken("cuts", first("cuts", id="pear"), spread=0.0),
     "cuts pear: spread 0 is not between 0 and 1"),
    (lambda: broken("factors", first("factors", id="pear.product"), rank=2),
     "cuts pear: needs one factor of rank 1 for any material"),
    (lambda: broken("factors", first("factors", id="pear.product"), rule="length*girth"),
     "factors pear.product: girth is not measured"),
    (lambda: broken("factors", first("factors", id="pear.product"), cut="paer"),
     "factors pear.product: cut paer does not exist"),
    (lambda: broken("gemtests", first("gemtests", id="hotpoint"), caution="mind"),
     "gemtests hotpoint: harms, and its caution does not say so"),
    (lambda: broken("gemtests", first("gemtests", id="uv"), who="everybody"),
     "gemtests uv: unknown word everybody for who"),
    (lambda: broken("clues", first("clues", test="float", target="amber"), target="umber"),
     "clues float umber: no material or kind of that name"),
    (lambda: broken("clues", first("clues", test="float", target="amber"), chances="flies=1"),
     "clues float amber: flies is no answer of the test"),
    (lambda: broken("lookalikes", load().lookalikes[0], material="torquoise"),
     f"lookalikes {load().lookalikes[0].id}: material torquoise does not exist"),
    (lambda: broken("protections", first("protections", id="uk-ivory"), limits="a little"),
     "protections uk-ivory: limit 'a little' cannot be read"),
    (lambda: broken("protections", first("protections", id="uk-ivory"), materials="evory"),
     "protections uk-ivory: material evory does not exist"),
]  # fmt: skip


@pytest.mark.parametrize(("make", "says"), FAULTS, ids=[says for _, says in FAULTS])
def test_a_fault_is_found(make: Callable[[], Library], says: str) -> None:
    found = problems(make())

    assert says in found
    assert all("\n" not in line for line in found)


def test_every_check_finds_a_fault() -> None:
    """No check passes whatever stands in the library."""
    silent = {check.__name__ for check in CHECKS}
    for make, _ in FAULTS:
        library = make()
        silent -= {check.__name__ for check in CHECKS if list(check(library))}

    assert silent == set()


def test_all_faults_are_told_at_once() -> None:
    library = broken("signs", ANCHOR, value="ancor", share=0.0, source="NOBODY")

    assert len(problems(library)) == 3
