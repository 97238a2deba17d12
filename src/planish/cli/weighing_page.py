"""Weight statements and metal values printed for a terminal: the verdict first."""

from collections.abc import Iterable, Sequence
from decimal import Decimal

from planish.cli.terminal import heading, prose, table, tint
from planish.metal import (
    MetalValue,
    PieceStatement,
    Scenario,
    Stated,
    Weighing,
    WeightStatement,
)
from planish.metal.stated import Rule
from planish.quantity import Mass
from planish.quantity.numbers import digits, rounded

Statement = WeightStatement | PieceStatement
_UNIT = "1 ozt = 20 dwt = 31.1034768 g"


def verdict(found: Statement, value: MetalValue | None) -> list[str]:
    """What comes of it, in a few lines."""
    lines = [tint(line, "head") for line in prose(f"{found.piece}: {_says(found)}", 0)]
    if value and value.value is not None:
        price = value.price
        said = f"Metal: {value.value} at {price.price} per {price.per} of {price.date}"
        said += f"; payable {value.payable}" if value.payable is not None else ""
        lines += prose(f"{said}. Not an opinion of value.", 0)
    elif value:
        lines += prose(f"{value.warnings[0][:1].upper()}{value.warnings[0][1:]}.", 0)
    return lines


def _says(found: Statement) -> str:
    if found.asks:
        return "nothing is stated from gross weight alone, see what is asked"
    if found.fine is not None and found.fine_stated is not None:
        return f"fine silver {_three(found.fine)}, ± {_size(found.fine_stated.uncertainty)} g"
    if found.net is not None and found.net_stated is not None:
        return f"net {_three(found.net)}, ± {_size(found.net_stated.uncertainty)} g, no fineness"
    return f"gross {_three(found.gross)}; no silver is stated"


def _three(value: Mass) -> str:
    """A mass in grams, troy ounces and pennyweights."""
    ozt, dwt = rounded(value.to("ozt"), 3), rounded(value.to("dwt"), 2)
    return f"{_grams(value)} g ({ozt} ozt, {dwt} dwt)"


def _grams(value: Mass) -> str:
    return f"{rounded(value.grams, 2)}"


def _size(u: float) -> str:
    """A standard uncertainty to two figures (GUM 7.2.6)."""
    if not u:
        return "0"
    return f"{Decimal(f'{u:.2g}'):f}"


def body(found: Statement) -> list[str]:
    """The statement: what was weighed, what comes off, what stays, and how sure it is."""
    lines = []
    if found.asks:
        lines += heading("Asked before silver is stated")
        for ask in found.asks:
            rules = f"; rules of thumb: {', '.join(ask.allowances)}" if ask.allowances else ""
            lines += prose(f"{ask.because}: {ask.says}{rules}", 2, 2)
    if isinstance(found, PieceStatement):
        for part in found.parts:
            title = [tint(line, "head") for line in prose(f"Part: {part.piece}", 0)]
            lines += ["", *title, *_statement(part)]
        lines += [*heading("All parts"), *_sums(found)]
    else:
        lines += [*heading("Weight statement"), *_statement(found)]
    for label, stated in (("net weight", found.net_stated), ("fine silver", found.fine_stated)):
        if stated is not None and stated.uncertainty:
            lines += [*heading(f"How sure: {label}"), *sure(stated, "g")]
    notes = dict.fromkeys([*found.notes, *_part_notes(found)])
    if notes:
        lines += [*heading("Mind"), *(s for n in notes for s in prose(f"- {n}", 2, 2))]
    return lines


def _part_notes(found: Statement) -> Iterable[str]:
    if isinstance(found, PieceStatement):
        for part in found.parts:
            yield from (f"{part.piece}: {note}" for note in part.notes)


def _row(label: str, value: Mass, u: float | None, how: str) -> tuple[str, ...]:
    ozt, dwt = rounded(value.to("ozt"), 3), rounded(value.to("dwt"), 2)
    return (label, _grams(value), _size(u) if u else "", str(ozt), str(dwt), how)


_HEAD = ("", "g", "± g", "ozt", "dwt", "how")


def _statement(found: WeightStatement) -> list[str]:
    weighing = found.weighing
    budget = (
        {c.name: c.uncertainty for c in found.net_measured.budget()} if found.net_measured else {}
    )
    own = sum(u * u for name, u in budget.items() if not name[:1].isdigit()) ** 0.5
    rows = [_HEAD, _row("gross", weighing.gross, own, _how(weighing))]
    for n, off in enumerate(found.deductions, 1):
        limits = f"{_grams(off.low)} to {_grams(off.high)} g; " if off.low and off.high else ""
        how = f"{off.what}; {limits}{off.method.value}: {off.source}"
        rows.append(_row(f"less {n}", off.best, budget.get(f"{n}: {off.what}"), how))
    if found.net is not None and found.net_measured is not None:
        rows.append(_row("net", found.net, found.net_measured.uncertainty, "gross less the above"))
    if found.fine is not None and found.fine_measured is not None and found.alloy is not None:
        doubt = f" ± {digits(found.alloy.plus_minus)}" if found.alloy.plus_minus else ""
        how = f"at {digits(found.alloy.fineness.permille)}{doubt} ‰; {found.alloy.basis}".rstrip(
            "; "
        )
        rows.append(_row("fine", found.fine, found.fine_measured.uncertainty, how))
    return [*table(rows, right=(1, 2, 3, 4)), *_set(weighing)]


def _how(weighing: Weighing) -> str:
    words = [
        f"{weighing.count} pieces" if weighing.count > 1 else "",
        "one by one" if weighing.each else "",
        weighing.balance,
        f"read to {weighing.resolution.written()}" if weighing.resolution else "step not given",
        str(weighing.date) if weighing.date else "",
    ]
    return "; ".join(word for word in words if word)


def _set(weighing: Weighing) -> list[str]:
    """A set: the piece, and how the pieces differ."""
    if weighing.count == 1:
        return []
    lines = prose(f"Each on average {_three(weighing.mean)}.")
    spread = weighing.spread
    if spread is None:
        return lines
    said = f"From {_grams(spread.least)} to {_grams(spread.greatest)} g"
    said += (
        f", standard deviation {_size(float(spread.deviation.grams))} g" if spread.deviation else ""
    )
    lines += prose(f"{said}.")
    if spread.odd:
        odd = ", ".join(str(n) for n in spread.odd)
        lines += prose(
            f"Number {odd} differs by more than a tenth: look whether it belongs to the set."
        )
    return lines


def _sums(found: PieceStatement) -> list[str]:
    rows = [_HEAD, _row("gross", found.gross, None, "")]
    for label, value, measured in (
        ("net", found.net, found.net_measured),
        ("fine", found.fine, found.fine_measured),
    ):
        if value is not None and measured is not None:
            rows.append(_row(label, value, measured.uncertainty, "the parts of silver"))
    return table(rows, right=(1, 2, 3, 4))


def sure(stated: Stated, unit: str, places: int = 2) -> list[str]:
    """Interval, rule and budget of a result."""
    said = f"95 %: {stated.low:.{places}f} to {stated.high:.{places}f} {unit}"
    if stated.rule is Rule.SIMULATED:
        said += f", mean {stated.value:.{places}f}"
    lines = prose(f"{said}; {stated.rule.value}: {stated.because}.", 2, 2)
    rows = [
        (c.name, _size(c.uncertainty), unit, f"{100 * c.share:.1f} % of the variance")
        for c in stated.budget
        if c.share >= 0.0005
    ]
    return [*lines, *table(rows, 4, right=(1,))]


def worth(value: MetalValue, scenarios: Sequence[Scenario]) -> list[str]:
    """The metal's value worked out, and at other prices."""
    lines = []
    if value.value is not None:
        lines += heading("Metal value")
        shown = [line for line in value.lines if line.unit == value.value.currency]
        for line in shown:
            lines += prose(f"{line.label} {rounded(line.figure, 2):,} {line.unit}", 2, 4)
            formula = f"= {line.formula}" if line.formula else ""
            words = "; ".join(word for word in (formula, line.note) if word)
            lines += prose(words, 4, 2) if words else []
        if value.interval is not None and value.interval.uncertainty:
            low, high = value.interval.low, value.interval.high
            lines += prose(
                f"95 % by weight and fineness, price as given: {low:,.2f} to {high:,.2f}"
            )
    if scenarios:
        lines += heading("At other prices")
        rows = [("change", "price", "metal", "payable")] + [
            (
                f"{100 * s.change:+.0f} %" if s.change else "as given",
                str(s.price),
                str(s.value),
                str(s.payable) if s.payable is not None else "no terms given",
            )
            for s in scenarios
        ]
        lines += table(rows, right=(0, 1, 2))
    if value.warnings:
        lines += [*heading("Mind, of the value")]
        lines += [s for w in value.warnings for s in prose(f"- {w}", 2, 2)]
    return lines


def closing(found: Statement) -> list[str]:
    """Units and what was left out."""
    if isinstance(found, WeightStatement):
        buoyancy = abs(found.weighing.buoyancy.grams)
    else:
        buoyancy = sum((abs(p.weighing.buoyancy.grams) for p in found.parts), Decimal(0))
    return [
        *heading("Sources"),
        *prose(f"{_UNIT} (NIST Handbook 44). Uncertainty: JCGM 100 and 101."),
        *prose(f"Left out: the air's buoyancy, {_size(float(buoyancy))} g of the gross weight."),
    ]
