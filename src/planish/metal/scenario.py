"""What the metal would be worth at other prices."""

from decimal import Decimal

import msgspec

from planish.metal.value import MetalPrice, Statement, Terms, metal_value
from planish.quantity import Money, QuantityError

#: changes of the price that a table shows
CHANGES = tuple(Decimal(c) / 100 for c in (-25, -10, 0, 10, 25))


class Scenario(msgspec.Struct, frozen=True, kw_only=True):
    """One line of the table.

    change: of the price, as a share. price: the changed price. value, payable: as in the value.
    """

    change: Decimal
    price: Money
    value: Money
    payable: Money | None


def scenarios(
    statement: Statement,
    price: MetalPrice,
    *,
    terms: Terms | None = None,
    changes: tuple[Decimal, ...] = CHANGES,
) -> tuple[Scenario, ...]:
    """The metal's value at changed prices; empty where the statement has no value.

    A table of what would follow, no forecast. Charges stay as they are.

    Raises:
        QuantityError: a change leaves no price, or a charge is in another currency.
    """
    found = []
    for change in changes:
        if change <= -1:
            fault, remedy = "the change leaves no price", "write -0.25 for 25 % less"
            raise QuantityError("change of price", change, fault, remedy)
        moved = msgspec.structs.replace(price, price=price.price * (1 + change))
        result = metal_value(statement, moved, effective=price.date, terms=terms)
        if result.value is None:
            return ()
        found.append(
            Scenario(change=change, price=moved.price, value=result.value, payable=result.payable)
        )
    return tuple(found)
