"""Money: an amount in one currency. Two currencies never meet without a rate that the user gives."""

import re
from decimal import Decimal
from typing import Self, overload

import msgspec

from planish.quantity.currencies import MINOR_UNITS, SYMBOLS, minor_units, near
from planish.quantity.errors import QuantityError
from planish.quantity.numbers import EXACT, Number, decimal, fraction, plain, read, rounded

_WHAT = "money"
_AMOUNT = r"(?:[0-9]{1,3}(?:,[0-9]{3})+|[0-9]+)(?:\.[0-9]+)?|\.[0-9]+"
_FORM = re.compile(
    rf"(?P<sign>[-−])?\s*(?P<before>[^\d\s.,−-]{{1,5}})?\s*(?P<minus>[-−])?(?P<amount>{_AMOUNT})"
    r"\s*(?P<after>[^\d\s.,]{1,5})?"
)
_REMEDY = "write an ISO 4217 code and the amount, like USD 1,234.50"


class Money(msgspec.Struct, frozen=True):
    """An exact amount of a currency (ISO 4217 alpha-3).

    >>> Money.parse("USD 1,234.50") + Money.parse("$ 10", default="USD")
    Money(amount=Decimal('1244.5'), currency='USD')
    """

    amount: Decimal
    currency: str

    def __post_init__(self) -> None:
        if not isinstance(self.amount, Decimal):
            raise TypeError("amount must be a Decimal; use Money.of or Money.parse")
        if not self.amount.is_finite():
            raise QuantityError(_WHAT, self.amount, "this is not a finite amount", _REMEDY)
        if self.currency not in MINOR_UNITS:
            raise _unknown(self.currency, self.currency)

    @classmethod
    def of(cls, amount: Number, currency: str) -> Self:
        """So much of a currency.

        Raises:
            QuantityError: the currency is not known or the amount not finite.
        """
        return cls(decimal(fraction(amount, _WHAT)), currency)

    @classmethod
    def parse(cls, text: str, default: str | None = None) -> Self:
        """The money that a text states: "USD 1,234.50", "1234.50 USD", "£120", "US$ 40".

        ``default`` is the currency of a bare figure and decides between the currencies of a sign
        that several share ("$", "¥", "kr"). A named currency always stands.

        Raises:
            QuantityError: no amount, no currency, an unknown one, or a sign that several share.
        """
        whole = plain(text, _WHAT)
        match = _FORM.fullmatch(whole)
        if not match or (match["sign"] and match["minus"]):
            fault = "no amount of money can be read"
            if re.search(r"\d,\d{1,2}(?!\d)", whole):
                fault = "the comma does not group thousands"
            raise QuantityError(_WHAT, whole, fault, _REMEDY)
        words = [word for word in (match["before"], match["after"]) if word]
        named = {_currency(word, whole, default) for word in words}
        if len(named) > 1:
            fault = f"two currencies are named: {' and '.join(sorted(named))}"
            raise QuantityError(_WHAT, whole, fault, "keep one")
        if not named and default is None:
            raise QuantityError(_WHAT, whole, "no currency is named", _REMEDY)
        amount = decimal(read(match["amount"], _WHAT))
        negative = match["sign"] or match["minus"]
        return cls(EXACT.minus(amount) if negative else amount, next(iter(named), default or ""))

    def _same(self, other: "Money") -> Decimal:
        if other.currency != self.currency:
            fault = f"{self.currency} and {other.currency} cannot be reckoned together"
            remedy = "convert one at a dated rate first"
            raise QuantityError(_WHAT, f"{self}, {other}", fault, remedy)
        return other.amount

    def __add__(self, other: "Money") -> "Money":
        if not isinstance(other, Money):
            return NotImplemented
        return Money(EXACT.add(self.amount, self._same(other)), self.currency)

    def __sub__(self, other: "Money") -> "Money":
        if not isinstance(other, Money):
            return NotImplemented
        return Money(EXACT.subtract(self.amount, self._same(other)), self.currency)

    def __neg__(self) -> "Money":
        return Money(EXACT.minus(self.amount), self.currency)

    def __mul__(self, number: Number) -> "Money":
        return Money(EXACT.multiply(self.amount, decimal(number)), self.currency)

    __rmul__ = __mul__

    @overload
    def __truediv__(self, other: "Money") -> Decimal: ...
    @overload
    def __truediv__(self, other: Number) -> "Money": ...
    def __truediv__(self, other: "Money | Number") -> "Money | Decimal":
        by = self._same(other) if isinstance(other, Money) else decimal(other)
        if not by:
            raise ZeroDivisionError("money divided by zero")
        quotient = EXACT.divide(self.amount, by)
        return quotient if isinstance(other, Money) else Money(quotient, self.currency)

    def __lt__(self, other: "Money") -> bool:
        return self.amount < self._same(other)

    def __le__(self, other: "Money") -> bool:
        return self.amount <= self._same(other)

    def __gt__(self, other: "Money") -> bool:
        return self.amount > self._same(other)

    def __ge__(self, other: "Money") -> bool:
        return self.amount >= self._same(other)

    def rounded(self) -> "Money":
        """Rounded to the currency's minor unit, halves away from zero (common practice)."""
        return Money(rounded(self.amount, minor_units(self.currency)), self.currency)

    def converted(self, rate: Number, currency: str) -> "Money":
        """At ``rate`` units of ``currency`` for one unit of this currency; the rate is the user's.

        Raises:
            QuantityError: the rate is not above zero, or the currency not known.
        """
        if decimal(rate) <= 0:
            fault, remedy = "an exchange rate is above zero", f"give {currency} per {self.currency}"
            raise QuantityError("exchange rate", rate, fault, remedy)
        return Money(EXACT.multiply(self.amount, decimal(rate)), currency)

    def __str__(self) -> str:
        """Code and amount, rounded to the minor unit: ``USD 1,234.50``."""
        return f"{self.currency} {self.rounded().amount:,f}"


def _currency(word: str, whole: str, default: str | None) -> str:
    """The currency of a code or sign."""
    key = word.strip().upper()
    if key in MINOR_UNITS:
        return key
    meant = SYMBOLS.get(key)
    if meant is None:
        raise _unknown(word, whole)
    if len(meant) == 1:
        return meant[0]
    if default in meant:
        return default
    fault = f"'{word}' is the sign of several currencies"
    raise QuantityError(_WHAT, whole, fault, f"write a code such as {' or '.join(meant[:3])}")


def _unknown(word: str, whole: str) -> QuantityError:
    guess = near(word)
    remedy = f"did you mean {guess}?" if guess else _REMEDY
    return QuantityError(_WHAT, whole, f"currency '{word}' is not known", remedy)
