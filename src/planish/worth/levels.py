"""From what a price is to what the opinion needs, step by step, each with its reason.

    hammer = with premium / (1 + premium);  hammer = net to seller / (1 - commission)
    paid = asked x (1 - discount)

Nothing is assumed: a premium, commission, discount or passage between markets that the user has
not given leaves the comparable out, and says so.
"""

from collections.abc import Iterable, Mapping
from decimal import Decimal
from typing import Protocol

import msgspec

from planish.quantity import QuantityError
from planish.quantity.numbers import EXACT
from planish.worth.comparables import Basis, Comparable
from planish.worth.exchange import Exchange
from planish.worth.rates import FAR_DAYS, Rate, nearest

_MARKETS = {
    Basis.HAMMER: "auction",
    Basis.WITH_PREMIUM: "auction",
    Basis.NET_TO_SELLER: "auction",
    Basis.RETAIL_ASKED: "retail",
    Basis.RETAIL_PAID: "retail",
    Basis.PRIVATE: "private sale",
    Basis.TRADE_PAID: "trade",
    Basis.UNSOLD: "unsold",
}


class Crossing(msgspec.Struct, frozen=True, kw_only=True):
    """What a price of one basis is multiplied by to stand for another; the user's figure."""

    start: Basis
    end: Basis
    factor: Decimal
    source: str

    def __post_init__(self) -> None:
        if not (self.factor.is_finite() and self.factor > 0) or not self.source.strip():
            text, fault = f"{self.start.value} to {self.end.value}", "it has no factor or no source"
            raise QuantityError("crossing", text, fault, "give a factor above zero and its source")


class Premiums(Protocol):
    """A house's premium by slices of the hammer price, with what comes on top of it."""

    @property
    def source(self) -> str:
        """Where it was read."""

    def paid(self, hammer: Decimal, /) -> Decimal:
        """What the buyer pays in all at a hammer price."""

    def hammer(self, paid: Decimal, /) -> Decimal:
        """The hammer price at which the buyer pays so much."""


class Conversions(msgspec.Struct, frozen=True, kw_only=True):
    """What the user gives to bring prices together; what is None is not known.

    premium: buyer's premium as a share of hammer. commission: the seller's, as a share of hammer.
    asking_discount: what buyers get off asked prices, as a share, with ``asking_source``.
    crossings: passages between markets. rates: exchange rates; they go before ``exchange``, the
    user's dated table. schedules: premiums by slices, by venue (small letters) or "" for all; a
    premium of the sale's own goes before, and a schedule before the one share for all.
    """

    premium: Decimal | None = None
    commission: Decimal | None = None
    asking_discount: Decimal | None = None
    asking_source: str = ""
    crossings: tuple[Crossing, ...] = ()
    rates: tuple[Rate, ...] = ()
    exchange: Exchange | None = None
    schedules: Mapping[str, Premiums] = {}

    def schedule(self, venue: str) -> Premiums | None:
        """The premium by slices of a venue."""
        return self.schedules.get(" ".join(venue.casefold().split())) or self.schedules.get("")

    def __post_init__(self) -> None:
        for name in ("premium", "commission", "asking_discount"):
            share = getattr(self, name)
            if share is not None and not 0 <= share < 1:
                fault, remedy = f"{share} is no share from 0 to 1", "write 0.25 for 25 %"
                raise QuantityError("conversion", name.replace("_", " "), fault, remedy)


class Step(msgspec.Struct, frozen=True, kw_only=True):
    """One factor between the recorded price and the adjusted one."""

    because: str
    factor: Decimal
    source: str


class Unconverted(Exception):  # noqa: N818  # no error: it carries a reason to the list of those left out
    """The comparable cannot be brought to the opinion's terms; ``str()`` says why."""


def basis_steps(comparable: Comparable, target: Basis, given: Conversions) -> list[Step]:
    """Steps from the comparable's basis to the target's; none where they are the same.

    Raises:
        Unconverted: a figure is needed that the user has not given.
    """
    start = comparable.basis
    if start is Basis.UNSOLD:
        raise Unconverted(f"unsold: {comparable.price} was not reached, so it is no price")
    if start is target:
        return []
    for crossing in given.crossings:
        if (crossing.start, crossing.end) == (start, target):
            because = f"from {start.value} to {target.value}"
            return [Step(because=because, factor=crossing.factor, source=crossing.source)]
    if _MARKETS[start] != _MARKETS[target]:
        raise Unconverted(
            f"a {start.value} price is of another market than {target.value}: give a crossing"
        )
    if Basis.WITH_PREMIUM in (start, target) and comparable.premium is None:
        schedule = given.schedule(comparable.venue)
        if schedule is not None:
            return _by_slices(comparable, target, given, schedule)
    return [*_to_common(comparable, start, given), *_from_common(comparable, target, given)]


def _by_slices(
    comparable: Comparable, target: Basis, given: Conversions, schedule: Premiums
) -> list[Step]:
    """Steps where the premium's share depends on the price itself."""
    price = comparable.price.amount
    if comparable.basis is Basis.WITH_PREMIUM:
        share = EXACT.divide(schedule.hammer(price), price)
        because = "buyer's premium and charges by slices off"
        off = _step(because, share, schedule.source)
        return [off, *_from_common(comparable, target, given)]
    steps = _to_common(comparable, comparable.basis, given)
    hammer = price
    for step in steps:
        hammer = EXACT.multiply(hammer, step.factor)
    share = EXACT.divide(schedule.paid(hammer), hammer)
    return [*steps, _step("buyer's premium and charges by slices on", share, schedule.source)]


def _to_common(comparable: Comparable, basis: Basis, given: Conversions) -> list[Step]:
    """To hammer within auctions, to the price paid within retail."""
    if basis in (Basis.HAMMER, Basis.RETAIL_PAID):
        return []
    share, because, source = _share(comparable, basis, given)
    if basis is Basis.WITH_PREMIUM:
        return [_step(f"{because} off", EXACT.divide(Decimal(1), 1 + share), source)]
    if basis is Basis.NET_TO_SELLER:
        return [_step(f"{because} back on", EXACT.divide(Decimal(1), 1 - share), source)]
    return [_step(f"{because} off", 1 - share, source)]


def _from_common(comparable: Comparable, basis: Basis, given: Conversions) -> list[Step]:
    if basis in (Basis.HAMMER, Basis.RETAIL_PAID):
        return []
    share, because, source = _share(comparable, basis, given)
    if basis is Basis.WITH_PREMIUM:
        return [_step(f"{because} on", 1 + share, source)]
    if basis is Basis.NET_TO_SELLER:
        return [_step(f"{because} off", 1 - share, source)]
    return [_step(f"{because} back on", EXACT.divide(Decimal(1), 1 - share), source)]


def _step(because: str, factor: Decimal, source: str) -> Step:
    return Step(because=because, factor=factor, source=source)


def _share(comparable: Comparable, basis: Basis, given: Conversions) -> tuple[Decimal, str, str]:
    """The share that parts this basis from the common one, its name, and who gave it."""
    if basis is Basis.WITH_PREMIUM:
        own = comparable.premium is not None
        share, name = comparable.premium if own else given.premium, "buyer's premium"
        source = "of that sale" if own else "given for all sales"
    elif basis is Basis.NET_TO_SELLER:
        share, name, source = given.commission, "seller's commission", "given for all sales"
    else:
        share, name = given.asking_discount, "discount on asked prices"
        source = given.asking_source or "given for all offers"
    if share is None:
        raise Unconverted(f"the {name} is not given, so a {comparable.basis.value} price stays out")
    return share, f"{name} of {100 * share:.4g} %", source


def currency_steps(
    comparable: Comparable, currency: str, given: Conversions
) -> tuple[list[Step], list[str]]:
    """The step into the opinion's currency at the time of the sale, and warnings on its date.

    Raises:
        Unconverted: no rate is given for the pair.
    """
    base = comparable.price.currency
    if base == currency:
        return [], []
    own = (comparable.rate,) if comparable.rate else ()
    rate = nearest(own, base, currency, comparable.date) or nearest(
        given.rates, base, currency, comparable.date
    )
    factor = rate.factor(base, currency) if rate else None
    if (rate is None or factor is None) and given.exchange is not None:
        try:
            rate = given.exchange.rate(base, currency, comparable.date)
        except QuantityError as fault:
            raise Unconverted(f"{fault.what} {fault.text}: {fault.fault}; {fault.remedy}") from None
        factor = rate.rate
    if rate is None or factor is None:
        raise Unconverted(f"no rate from {base} to {currency} is given")
    step = _step(f"{base} to {currency}, rate of {rate.date}", factor, rate.source)
    days = rate.days_from(comparable.date)
    far = f"{comparable.id}: its exchange rate is {days} days from the sale"
    return [step], [far] if days > FAR_DAYS else []


class Refusal(msgspec.Struct, frozen=True, kw_only=True):
    """A comparable that cannot be brought to the grid's level or currency, and why."""

    id: str
    because: str

    def __str__(self) -> str:
        return f"{self.id}: {self.because}"


def refusals(
    comparables: Iterable[Comparable], target: Basis, currency: str, given: Conversions
) -> tuple[Refusal, ...]:
    """Every comparable that stands at another level or in another currency and stays there.

    For whoever would rather stop than leave rows out; a grid leaves them out and says so.
    """
    found = []
    for comparable in sorted(comparables, key=lambda c: c.id):
        try:
            basis_steps(comparable, target, given)
            currency_steps(comparable, currency, given)
        except Unconverted as why:
            found.append(Refusal(id=comparable.id, because=str(why)))
    return tuple(found)
