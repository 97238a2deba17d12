"""Comparables for the tests; all invented."""

from collections.abc import Callable
from decimal import Decimal
from typing import Any

import pytest

from planish.quantity import Money, UncertainDate
from planish.worth import Basis, Comparable


def _sale(key: str, price: str, **more: Any) -> Comparable:
    fields: dict[str, Any] = {
        "date": UncertainDate("2026-03-10"),
        "venue": f"saleroom {key}",
        "basis": Basis.WITH_PREMIUM,
        **more,
    }
    currency = fields.pop("currency", "USD")
    return Comparable(id=key, price=Money(Decimal(price), currency), **fields)


@pytest.fixture
def sale() -> Callable[..., Comparable]:
    """A comparable of that id and price."""
    return _sale
