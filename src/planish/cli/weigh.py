"""``planish weigh``: weight statement, fine silver and metal value."""

import datetime as dt
from pathlib import Path
from typing import TYPE_CHECKING

import click
import msgspec

from planish.cli.errors import Asked, BadInput
from planish.cli.terminal import say

if TYPE_CHECKING:
    from planish.metal import Alloy, MetalPrice, MetalValue, Scenario, Terms, Weighing
    from planish.metal.value import Statement
    from planish.quantity import Mass

#: a table of prices larger than this is something else [bytes]
_LARGEST = 8_000_000
_DAY = click.DateTime(["%Y-%m-%d"])


class _Asked(msgspec.Struct, frozen=True, kw_only=True):
    """The options as given."""

    gross: tuple[str, ...]
    piece: str
    count: int
    repeat: bool
    balance: str
    step: str | None
    repeatability: str | None
    calibration: str | None
    day: dt.date | None
    less: tuple[str, ...]
    parts: tuple[str, ...]
    fineness: str | None
    basis: str
    plated: bool


@click.command(short_help="Weight statement, fine silver, metal value.")
@click.argument("gross", nargs=-1)
@click.option("--piece", default="piece", help="What it is: decides what must come off.")
@click.option("--count", type=click.IntRange(1), default=1, help="Pieces weighed together.")
@click.option("--repeat", is_flag=True, help="The weights are repeats of one piece, not a set.")
@click.option("--balance", default="", help="Which balance, and how it was checked.")
@click.option("--step", metavar="MASS", help="Step of its display.")
@click.option("--repeatability", metavar="MASS", help="Standard deviation of one reading.")
@click.option("--calibration", metavar="MASS", help="Standard uncertainty of its calibration.")
@click.option("--date", "day", type=_DAY, metavar="DAY", help="Day of weighing.")
@click.option("--less", multiple=True, metavar="WHAT=FIGURE", help="What comes off; see below.")
@click.option("--part", "parts", multiple=True, metavar="NAME=MASS", help="A part; see below.")
@click.option("--fineness", metavar="FINENESS", help="925, sterling, '830 +- 5', 84 zolotnik ...")
@click.option("--basis", default="", help="Where the fineness comes from: mark, test.")
@click.option("--plated", is_flag=True, help="Silver over another metal.")
@click.option("--price", metavar="PRICE", help="'USD 30/ozt on 2026-05-14 from NAME'.")
@click.option(
    "--prices",
    type=click.Path(path_type=Path, exists=True, dir_okay=False),
    metavar="FILE.csv",
    help="A table of prices; the latest known on --on counts.",
)
@click.option("--column", metavar="HEADING", help="The column of prices in that table.")
@click.option("--on", "effective", type=_DAY, metavar="DAY", help="Effective date; today if left.")
@click.option("--payout", metavar="SHARE", help="Share that a buyer of metal pays: 0.85 or 85%.")
@click.option("--filled-payout", metavar="SHARE", help="The same for weighted or filled goods.")
@click.option("--refining", metavar="MONEY/UNIT", help="Charge by net weight: 'USD 0.50/ozt'.")
@click.option("--charge", "charges", multiple=True, metavar="WHAT=MONEY", help="A flat charge.")
@click.option("--minimum-lot", metavar="MASS", help="Smallest net weight that is bought.")
@click.option(
    "--case",
    "case_file",
    type=click.Path(path_type=Path, exists=True, dir_okay=False),
    metavar="CASE.toml",
    help="State the pieces of a case instead.",
)
@click.option("--fail-on", type=click.Choice(["asked"]), help="Exit 1 if something is asked.")
@click.option("--json", "as_json", is_flag=True, help="Print everything as JSON.")
def weigh(  # noqa: PLR0917  # click passes them by name
    gross: tuple[str, ...],
    piece: str,
    count: int,
    repeat: bool,  # noqa: FBT001  # as above
    balance: str,
    step: str | None,
    repeatability: str | None,
    calibration: str | None,
    day: dt.datetime | None,
    less: tuple[str, ...],
    parts: tuple[str, ...],
    fineness: str | None,
    basis: str,
    plated: bool,  # noqa: FBT001  # as above
    price: str | None,
    prices: Path | None,
    column: str | None,
    effective: dt.datetime | None,
    payout: str | None,
    filled_payout: str | None,
    refining: str | None,
    charges: tuple[str, ...],
    minimum_lot: str | None,
    case_file: Path | None,
    fail_on: str | None,
    as_json: bool,  # noqa: FBT001  # as above
) -> None:
    """State gross weight, what comes off, net, fine silver and metal value.

    Several GROSS weights are a set weighed piece by piece. Deductions:

    \b
    --less "steel blades=6 x 24g..30g by rule"   limits, for each of six
    --less "turquoise=2.4g +-0.1g weighed"       figure, uncertainty, how found
    --less "pitch=80%..90% by rule"              share of the gross weight
    --less "cement=12cm3 +-1cm3 of cement"       volume of a material
    --less "handles=12 x knife"                  all but a rule of thumb's silver
    --less "no filler=0g seen from below"        nothing, and why

    Parts take a fineness, or "plated", or "other" where they hold no silver:

    \b
    --part "lid=84.2g at 925" --part "blade=52g other"
    --less "lid: button=3g..5g by rule"

    \b
    planish weigh 312.4g --step 0.1g --fineness 925
    planish weigh 412g --piece knives --less "handles=6 x knife" --fineness 925
    planish weigh 41.8g 42.1g 43.0g --piece teaspoons --fineness 800
    planish weigh 312.4g --fineness 925 --price "USD 30/ozt" --payout 85%
    planish weigh --case mycase/case.toml
    """  # noqa: D301  # click reads the backspace
    from planish.cli import weighing_page as page
    from planish.cli import weighing_plain as plain
    from planish.quantity import QuantityError

    try:
        found: list[_One]
        if case_file is not None:
            if gross or parts:
                raise BadInput("a case has its own weights", "GROSS", "leave out one of the two")
            found = _of_case(case_file)
        else:
            asked = _Asked(
                gross=gross, piece=piece, count=count, repeat=repeat, balance=balance, step=step,
                repeatability=repeatability, calibration=calibration,
                day=day.date() if day else None, less=less, parts=parts, fineness=fineness,
                basis=basis, plated=plated,
            )  # fmt: skip
            on = effective.date() if effective else dt.datetime.now(tz=dt.UTC).date()
            stated = _stated(asked)
            quoted = _price(price, prices, column, on)
            terms = _terms(payout, filled_payout, refining, charges, minimum_lot, quoted)
            found = [_one(stated, quoted, on, terms)]
    except QuantityError as fault:
        raise BadInput(str(fault)) from None
    if as_json:
        rows = [
            {**plain.statement(f.statement), "metal": f.value and plain.value(f.value, f.scenarios)}
            for f in found
        ]
        told = {"pieces": rows} if case_file else rows[0]
        say(msgspec.json.format(msgspec.json.encode(plain.finite(told)), indent=2).decode())
    else:
        lines: list[str] = []
        for one in found:
            lines += ["", "-" * 80, ""] if lines else []
            lines += page.verdict(one.statement, one.value)
            lines += page.body(one.statement)
            lines += page.worth(one.value, one.scenarios) if one.value else []
            lines += page.closing(one.statement)
        say(lines)
    if fail_on and (asked_of := [f.statement.piece for f in found if f.statement.asks]):
        raise Asked(f"something is asked before silver is stated of: {', '.join(asked_of)}")


class _One(msgspec.Struct, frozen=True):
    """A statement with its value."""

    statement: "Statement"
    value: "MetalValue | None"
    scenarios: "tuple[Scenario, ...]"


def _one(
    stated: "Statement", price: "MetalPrice | None", on: dt.date, terms: "Terms | None"
) -> _One:
    from planish.metal import STALE_DAYS, metal_value, scenarios
    from planish.metal.series import STALE_MONTHLY

    if price is None:
        return _One(stated, None, ())
    days = STALE_MONTHLY if price.quoted.startswith("average of the month") else STALE_DAYS
    value = metal_value(
        stated, price, effective=on, terms=terms, stale_days=days, with_interval=True
    )
    return _One(stated, value, scenarios(stated, price, terms=terms))


def _stated(asked: _Asked) -> "Statement":
    from planish.library import load
    from planish.metal import weigh as weigh_piece
    from planish.metal import weigh_parts
    from planish.metal.entry import read_deduction, read_part, split_off
    from planish.quantity import QuantityError

    offs = [split_off(text) for text in asked.less]
    materials = load().metals
    alloy = _alloy(asked.fineness, asked.basis)
    if not asked.parts:
        if strays := [o.part for o in offs if o.part]:
            raise QuantityError("part", strays[0], "no part of that name", "give it with --part")
        if not asked.gross:
            raise BadInput("no weight given", "after 'planish weigh'", "write it like 312.4g")
        weighing = _weighing(asked)
        return weigh_piece(
            asked.piece,
            weighing,
            words=asked.piece,
            deductions=tuple(read_deduction(o, weighing.gross, materials) for o in offs),
            alloy=alloy,
            plated=asked.plated,
        )
    parts = []
    for text in asked.parts:
        part = read_part(text, alloy, lambda mass: _read(asked, (mass,), 1))
        own = [o for o in offs if o.part.casefold() == part.name.casefold()]
        off = tuple(read_deduction(o, part.weighing.gross, materials) for o in own)
        parts.append(msgspec.structs.replace(part, deductions=off, words=part.name))
    names = {p.name.casefold() for p in parts}
    if lost := [o for o in offs if o.part.casefold() not in names]:
        fault = f"it comes off no part; parts are {', '.join(p.name for p in parts)}"
        raise QuantityError("deduction", lost[0].what, fault, "write it like 'lid: button=4g'")
    whole = _weighing(asked) if asked.gross else None
    return weigh_parts(asked.piece, parts, words=asked.piece, whole=whole)


def _weighing(asked: _Asked) -> "Weighing":
    from planish.quantity import Mass

    return _read(asked, tuple(Mass.parse(text) for text in asked.gross), asked.count)


def _read(asked: _Asked, masses: "tuple[Mass, ...]", count: int) -> "Weighing":
    """What the balance showed.

    Raises:
        QuantityError: it cannot be.
        BadInput: a set and a count do not go together.
    """
    from planish.metal import Weighing
    from planish.quantity import Mass

    def mass(text: str | None) -> "Mass | None":
        return Mass.parse(text) if text else None

    step, calibration = mass(asked.step), mass(asked.calibration)
    if len(masses) > 1 and count > 1:
        mend = "give one weight with --count, or each weight by itself"
        raise BadInput("several weights and a count", "--count", mend)
    if len(masses) > 1 and asked.repeat:
        return Weighing.repeated(
            masses, resolution=step, plus_minus=calibration, balance=asked.balance, date=asked.day
        )
    if len(masses) > 1:
        return Weighing.one_by_one(
            masses,
            resolution=step,
            plus_minus=calibration,
            balance=asked.balance,
            repeatability=mass(asked.repeatability),
            date=asked.day,
        )
    return Weighing(
        gross=masses[0],
        resolution=step,
        plus_minus=calibration,
        balance=asked.balance,
        repeatability=mass(asked.repeatability),
        date=asked.day,
        count=count,
    )


def _alloy(text: str | None, basis: str) -> "Alloy | None":
    from planish.metal.entry import read_alloy

    return read_alloy(text, basis) if text else None


def _price(
    text: str | None, file: Path | None, column: str | None, on: dt.date
) -> "MetalPrice | None":
    """The price typed in, or the latest in a table.

    Raises:
        BadInput: both are given, or the table cannot be read.
        QuantityError: it is no price.
    """
    from planish.metal.entry import read_price
    from planish.metal.series import read_series

    if text and file:
        raise BadInput("a price and a table of prices", "--prices", "give one of the two")
    if text:
        return read_price(text, today=dt.datetime.now(tz=dt.UTC).date())
    if file is None:
        return None
    if file.stat().st_size > _LARGEST:
        raise BadInput("too large for a table of prices", str(file), "give the silver prices only")
    try:
        table = file.read_text(encoding="utf-8-sig")
    except (OSError, UnicodeDecodeError):
        raise BadInput("not a text in UTF-8", str(file), "save it as CSV in UTF-8") from None
    return read_series(table, source=file.name, column=column).at(on)


def _terms(  # noqa: PLR0917  # each is an option
    payout: str | None,
    filled: str | None,
    refining: str | None,
    charges: tuple[str, ...],
    minimum: str | None,
    price: "MetalPrice | None",
) -> "Terms | None":
    from planish.metal import Charge, Terms
    from planish.metal.entry import share_of
    from planish.quantity import Mass, Money

    if not (payout or filled or refining or charges or minimum):
        return None
    if price is None:
        raise BadInput("terms without a price", "--payout", "give --price or --prices as well")
    currency = price.price.currency
    flat = []
    for text in charges:
        label, sign, amount = text.partition("=")
        if not sign or not label.strip():
            raise BadInput("no charge", f"--charge '{text}'", "write it like 'assay=USD 45'")
        flat.append(Charge(label.strip(), Money.parse(amount, default=currency)))
    by_weight, _, per = (refining or "").partition("/")
    return Terms(
        payout=share_of(payout or "1"),
        charges=tuple(flat),
        source="as typed in",
        refining=Money.parse(by_weight, default=currency) if refining else None,
        refining_per=per.strip() or "ozt",
        minimum=Mass.parse(minimum) if minimum else None,
        filled_payout=share_of(filled) if filled else None,
    )


def _of_case(file: Path) -> list[_One]:
    """Every weighed piece of a case.

    Raises:
        BadInput: the case cannot be read, or no piece of it was weighed.
    """
    from planish.case.faults import CaseFaults
    from planish.case.load import load
    from planish.case.work import work
    from planish.metal import scenarios

    try:
        worked = work(load(file, photographs=False))
    except CaseFaults as faults:
        raise BadInput.several(str(faults).splitlines()) from None
    found = []
    for n, piece in enumerate(worked.pieces, 1):
        if piece.weight is None:
            continue
        told = msgspec.structs.replace(piece.weight, piece=f"{n}. {piece.piece.title}")
        value = piece.metal
        table = scenarios(told, value.price) if value and value.payable is None else ()
        found.append(_One(told, value, table))
    if not found:
        raise BadInput("no piece of it was weighed", str(file), "give a piece its weight")
    return found
