"""The opinion of value: sales comparison in its simplest honest form.

Every comparable is brought to one basis and currency and adjusted line by line (``grid``); the
opinion is their weighted median, or the appraiser's own figure set beside it; the range says how
far one more such sale might fall (``spread``). With no comparable there is no opinion.
"""

import datetime as dt
import math
from collections.abc import Iterable
from decimal import Decimal
from itertools import pairwise

import msgspec

from planish.quantity import Money, QuantityError
from planish.quantity.currencies import MINOR_UNITS
from planish.worth.comparables import Basis, Comparable
from planish.worth.grid import Grid, LeftOut, Row, build
from planish.worth.levels import Conversions
from planish.worth.spread import USUAL, Range, Spread, predicted, significant, weighted_median

#: probability that the range is meant to hold
LEVEL = 0.80
#: days after which a sale is told to be old; silver itself may move by a third in a year
STALE_DAYS = 365
#: fewer comparables than this are told aloud (no standard names a number: judgment)
FEW = 3

SALES_COMPARISON = "sales comparison"
NONE = "none"

_BELOW_METAL = (
    "sales below the metal's value are rare once the buyer's premium is counted (56 of 10,614"
    " lots of silver at auction; 690 by the hammer: Draper and others, Economics Letters 162, 2018)"
)


class Task(msgspec.Struct, frozen=True, kw_only=True):
    """Which value is asked for.

    type_of_value: by its name; the report prints its definition.
    date: effective date.
    market: in words.
    basis: what the opinion is a price of.
    currency: ISO 4217.
    """

    type_of_value: str
    date: dt.date
    market: str
    basis: Basis
    currency: str

    def __post_init__(self) -> None:
        for name in ("type_of_value", "market"):
            if not getattr(self, name).strip():
                fault, remedy = "it is not named", "name it before a figure is given"
                raise QuantityError("opinion", name.replace("_", " "), fault, remedy)
        if self.basis is Basis.UNSOLD:
            fault, remedy = "an unsold lot has no price", "choose the basis of a sale"
            raise QuantityError("opinion", self.basis.value, fault, remedy)
        if self.currency not in MINOR_UNITS:
            fault, remedy = "this currency is not known", "write an ISO 4217 code such as USD"
            raise QuantityError("opinion", self.currency, fault, remedy)


class Floor(msgspec.Struct, frozen=True, kw_only=True):
    """The metal's value, from the metal bench, and which date and price it rests on."""

    amount: Money
    note: str


class Concluded(msgspec.Struct, frozen=True, kw_only=True):
    """The appraiser's own conclusion, which stands above the reckoned one."""

    value: Money
    low: Money | None = None
    high: Money | None = None
    approach: str = SALES_COMPARISON
    reasons: tuple[str, ...]

    def __post_init__(self) -> None:
        if (self.low is None) != (self.high is None):
            fault, remedy = "one end of the range stands alone", "give both low and high"
            raise QuantityError("opinion", self.value, fault, remedy)
        ends = [m for m in (self.low, self.value, self.high) if m is not None]
        if any(a > b for a, b in pairwise(ends)):
            fault, remedy = "the range does not hold the value", "put low, value, high in order"
            raise QuantityError("opinion", self.value, fault, remedy)
        if not any(reason.strip() for reason in self.reasons):
            fault, remedy = "a figure of one's own needs a reason", "say why it is concluded"
            raise QuantityError("opinion", self.value, fault, remedy)


class Opinion(msgspec.Struct, frozen=True, kw_only=True):
    """The result. ``value`` is None where the bench declines to give one.

    value, low, high: rounded for print. computed: the weighted median, exact.
    level: probability that the range is meant to hold; None where the appraiser set the range.
    reasons: lines, in the order in which they were reached.
    grid: rows that multiply out. left_out: comparables not used, and why.
    """

    value: Money | None
    low: Money | None
    high: Money | None
    computed: Money | None
    level: float | None
    type_of_value: str
    date: dt.date
    market: str
    basis: Basis
    currency: str
    approach: str
    reasons: tuple[str, ...]
    grid: tuple[Row, ...]
    left_out: tuple[LeftOut, ...]
    floor: Floor | None
    warnings: tuple[str, ...]


def opinion(
    comparables: Iterable[Comparable],
    task: Task,
    given: Conversions | None = None,
    *,
    floor: Floor | None = None,
    concluded: Concluded | None = None,
    spread: Spread = USUAL,
    level: float = LEVEL,
    stale_days: int = STALE_DAYS,
) -> Opinion:
    """The opinion from comparables; their order is of no account.

    Raises:
        QuantityError: ids are not unique, currencies are mixed, or an adjustment is impossible.
        ValueError: the level is not inside 0 to 1.
    """
    grid = build(comparables, task.basis, task.currency, given or Conversions())
    for money in (floor.amount if floor else None, concluded.value if concluded else None):
        if money is not None and money.currency != task.currency:
            fault, remedy = f"the opinion is in {task.currency}", "convert it at a dated rate first"
            raise QuantityError("opinion", money, fault, remedy)
    reasons: list[str] = []
    warnings = [*grid.warnings, *_age_warnings(grid, task.date, stale_days), *_set_aside(grid)]
    computed = low = high = None
    if grid.rows:
        values = [(row.adjusted.amount, row.comparable.weight) for row in grid.rows]
        computed = Money(weighted_median(values), task.currency)
        found = predicted(values, level, spread)
        low = computed * Decimal(repr(math.exp(-found.half_width)))
        high = computed * Decimal(repr(math.exp(found.half_width)))
        reasons += _method(grid, task, computed, found, level)
        if len(grid.rows) < FEW:
            warnings.append(
                f"only {len(grid.rows)} of the comparables can be used, so the range rests mostly"
                " on what is believed of the market's spread"
            )
        warnings.append(f"spread believed beforehand: {100 * spread.sd:.0f} %, {spread.source}")
    else:
        reasons.append("no comparable can be used, so no value is reckoned from sales")
    figures = 2 if computed is None or found.half_width > 0.10 else 3
    value, low, high = (_printed(money, figures) for money in (computed, low, high))
    approach, shown = (SALES_COMPARISON if computed else NONE), (level if computed else None)
    if concluded:
        reasons += _beside(concluded, computed, low, high, warnings)
        value, approach = concluded.value, concluded.approach
        if concluded.low is not None:
            low, high, shown = concluded.low, concluded.high, None
    reasons += _floor_lines(floor, value, low, warnings)
    return Opinion(
        value=value,
        low=low,
        high=high,
        computed=computed,
        level=shown,
        type_of_value=task.type_of_value,
        date=task.date,
        market=task.market,
        basis=task.basis,
        currency=task.currency,
        approach=approach,
        reasons=tuple(reasons),
        grid=grid.rows,
        left_out=grid.left_out,
        floor=floor,
        warnings=tuple(warnings),
    )


def _printed(money: Money | None, figures: int) -> Money | None:
    """Two significant figures, three where the range is narrow (common practice)."""
    return None if money is None else Money(significant(money.amount, figures), money.currency)


def _method(grid: Grid, task: Task, computed: Money, found: Range, level: float) -> list[str]:
    adjusted = sorted(row.adjusted.amount for row in grid.rows)
    ends = [str(Money(amount, task.currency)) for amount in (adjusted[0], adjusted[-1])]
    count = len(grid.rows)
    brought = (
        f"{count} comparable{'s' if count > 1 else ''} brought to {task.basis.value} prices in"
        f" {task.currency} ({task.market}) and adjusted line by line"
    )
    middle = f"adjusted prices run from {ends[0]} to {ends[1]}; their weighted median is {computed}"
    width = (
        f"the range is meant to hold {100 * level:.0f} % of such sales: Student's t on log prices,"
        f" {found.dof:.3g} degrees of freedom, spread {100 * found.sd:.0f} %"
    )
    return [brought, middle, width]


def _beside(
    concluded: Concluded,
    computed: Money | None,
    low: Money | None,
    high: Money | None,
    warnings: list[str],
) -> list[str]:
    if computed is None or low is None or high is None:
        warnings.append("no comparable supports the appraiser's figure")
        return [f"concluded by the appraiser: {concluded.value}", *concluded.reasons]
    percent = 100 * (float(concluded.value / computed) - 1)
    if not low <= concluded.value <= high:
        warnings.append(f"the concluded figure {concluded.value} lies outside {low} to {high}")
    return [
        f"concluded by the appraiser: {concluded.value}, {percent:+.1f} % from the weighted median",
        *concluded.reasons,
    ]


def _floor_lines(
    floor: Floor | None, value: Money | None, low: Money | None, warnings: list[str]
) -> list[str]:
    if floor is None:
        return []
    lines = [f"lower bound by its metal: {floor.amount} ({floor.note})"]
    if value is not None and value < floor.amount:
        warnings.append(f"the value {value} is below the metal's {floor.amount}: {_BELOW_METAL}")
    elif low is not None and low < floor.amount:
        warnings.append(f"the range reaches below the metal's {floor.amount}: {_BELOW_METAL}")
    return lines


def _age_warnings(grid: Grid, effective: dt.date, stale_days: int) -> list[str]:
    old, later = [], []
    for row in grid.rows:
        date = row.comparable.date
        if date.earliest is not None and date.earliest > effective:
            later.append(row.comparable.id)
        elif date.latest is None or (effective - date.latest).days > stale_days:
            old.append(row.comparable.id)
    warnings = []
    if old:
        warnings.append(
            f"more than {stale_days} days old: {', '.join(old)}; adjust for time and the metal's"
            " price, or say why not"
        )
    if later:
        warnings.append(f"sold after the effective date {effective}: {', '.join(later)}")
    return warnings


def _set_aside(grid: Grid) -> list[str]:
    unsold = [o.comparable.id for o in grid.left_out if o.comparable.basis is Basis.UNSOLD]
    warnings = [f"{o.comparable.id} is left out: {o.because}" for o in grid.left_out]
    if unsold:
        warnings.append("unsold lots are in the record: sold prices alone run high")
    return warnings
