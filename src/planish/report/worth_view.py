"""Comparables, their strip of dots, and how they come to a figure, as printed."""

import math
from decimal import Decimal

from planish.case.model import Opinion as Concluded
from planish.quantity import Money
from planish.quantity.numbers import digits, rounded
from planish.report.view import Compared, Dot, Line, Step, Strip, Worth
from planish.report.words import amount, day, joined, money, sentence
from planish.worth import Opinion
from planish.worth.grid import Row

_BASIS = {
    "hammer": "hammer price",
    "with-premium": "with buyer's premium",
    "net-to-seller": "net to seller",
    "retail-asked": "asked",
    "retail-paid": "paid",
    "private": "private sale",
    "trade-paid": "paid by the trade",
    "unsold": "unsold",
}
_TICKS = 6


def worth(opinion: Opinion, given: Concluded | None = None) -> Worth:
    """The comparables of an opinion; ``given`` is what the appraiser concluded, if anything."""
    total = sum((row.comparable.weight for row in opinion.grid), Decimal(0)) or Decimal(1)
    left = tuple(
        f"Left out: {o.comparable.title or o.comparable.id}"
        f" ({money(o.comparable.price)}), because {o.because}."
        for o in opinion.left_out
    )
    return Worth(
        compared=tuple(
            _compared(str(n), row, row.comparable.weight / total)
            for n, row in enumerate(opinion.grid, 1)
        ),
        strip=strip(opinion),
        sums=_sums(opinion, concluded=given is not None and given.value is not None),
        notes=(*left, *(sentence(n) for n in (*_method(opinion, given), *opinion.warnings))),
    )


def _method(opinion: Opinion, given: Concluded | None) -> tuple[str, ...]:
    """How the bench came to its figure, without the reasons that the opinion prints itself."""
    own = set(given.reasons) if given else set()
    return tuple(r for r in opinion.reasons if r not in own)


def _compared(number: str, row: Row, weight: Decimal) -> Compared:
    c = row.comparable
    lines = [Line(label=_told(s.because, s.source), value=_factor(s.factor)) for s in row.steps]
    lines += [
        Line(label=_told(a.because, a.source), value=_added(a.amount))
        for a in row.amounts
        if a.amount
    ]
    lines += [
        Line(label=_told(a.because, a.source), value=_factor(a.factor))
        for a in row.factors
        if a.factor
    ]
    return Compared(
        number=number,
        title=c.title or c.id,
        details=joined(
            day(c.date.edtf),
            c.venue,
            f"lot {c.lot}" if c.lot else "",
            _BASIS.get(c.basis.value, c.basis.value),
            c.note,
        ),
        sold=str(c.price),
        adjustments=tuple(lines),
        adjusted=str(row.adjusted),
        weight=f"{float(weight):.2f}",
    )


def _told(because: str, source: str) -> str:
    return f"{because} ({source})" if source else because


def _factor(factor: Decimal) -> str:
    """A factor that multiplies out from what is printed: as a divisor where that is the round one."""
    if rounded(factor, 4) == factor:
        return f"× {digits(factor)}"
    by = 1 / factor
    if abs(rounded(by, 4) - by) < Decimal("1e-12"):
        return f"÷ {digits(rounded(by, 4))}"
    return f"× {digits(rounded(factor, 6))}"


def _added(value: Money) -> str:
    sign = "−" if value.amount < 0 else "+"
    return f"{sign} {money(Money(abs(value.amount), value.currency))}"


def _sums(opinion: Opinion, *, concluded: bool) -> tuple[Step, ...]:
    if opinion.computed is None:
        return ()
    steps = [
        Step(
            sign="",
            what="Weighted median of the adjusted prices",
            figure=str(opinion.computed),
            note="as many by weight are below it as above it",
        )
    ]
    if opinion.value is not None:
        steps.append(
            Step(
                sign="" if concluded else "≈",
                what="Concluded by the appraiser" if concluded else "Rounded for print",
                figure=money(opinion.value),
                kind="result",
            )
        )
    return tuple(steps)


def strip(opinion: Opinion) -> Strip | None:
    """The strip of dots; None without a comparable."""
    if not opinion.grid:
        return None
    marks = [m.amount for m in (opinion.low, opinion.high, opinion.value) if m is not None]
    if opinion.floor is not None:
        marks.append(opinion.floor.amount.amount)
    for row in opinion.grid:
        marks.append(row.adjusted.amount)
        if row.comparable.price.currency == opinion.currency:
            marks.append(row.comparable.price.amount)
    low, high, step = _axis(float(min(marks)), float(max(marks)))

    def at(value: Money | None) -> float | None:
        return None if value is None else round((float(value.amount) - low) / (high - low), 5)

    heaviest = max(row.comparable.weight for row in opinion.grid)
    ticks = []
    k = 0
    while low + k * step <= high * (1 + 1e-9):
        ticks.append(
            (
                f"{low + k * step:,.0f}" if step >= 1 else f"{low + k * step:,.2f}",
                round(k * step / (high - low), 5),
            )
        )
        k += 1
    return Strip(
        dots=tuple(
            Dot(
                number=str(n),
                sold=at(row.comparable.price)
                if row.comparable.price.currency == opinion.currency
                else None,
                adjusted=at(row.adjusted),
                size=float(row.comparable.weight / heaviest),
            )
            for n, row in enumerate(opinion.grid, 1)
        ),
        ticks=tuple(ticks),
        alt=_in_words(opinion),
        unit=opinion.currency,
        floor=at(opinion.floor.amount) if opinion.floor else None,
        low=at(opinion.low),
        high=at(opinion.high),
        value=at(opinion.value),
    )


def _axis(low: float, high: float) -> tuple[float, float, float]:
    """Ends and step of an axis in round figures that holds both; from nought where that is near."""
    span = max(high - low, high * 0.2, 1e-6)
    if low > 0 and low < span * 0.6:
        low, span = 0.0, max(high, 1e-6)
    raw = span / _TICKS
    power = 10.0 ** math.floor(math.log10(raw))
    step = next(m * power for m in (1, 2, 5, 10) if m * power >= raw)
    start = math.floor(low / step) * step
    end = math.ceil(high / step + 0.02) * step
    return start, max(end, start + step), step


def _in_words(opinion: Opinion) -> str:
    rows = "; ".join(
        f"{n}: sold {money(row.comparable.price)}, adjusted {amount(row.adjusted)}"
        for n, row in enumerate(opinion.grid, 1)
    )
    parts = [f"Comparables on an axis of {opinion.currency}. {rows}"]
    if opinion.floor is not None:
        parts.append(f"metal {amount(opinion.floor.amount)}")
    if opinion.low is not None and opinion.high is not None:
        parts.append(f"range {amount(opinion.low)} to {amount(opinion.high)}")
    if opinion.value is not None:
        parts.append(f"opinion {amount(opinion.value)}")
    return "; ".join(parts) + "."
