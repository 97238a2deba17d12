"""A reckoner that works printed formulas again, apart from the code that printed them."""

import re
from collections.abc import Callable
from fractions import Fraction

import pytest

_TOKEN = re.compile(r"\s*([0-9]+(?:\.[0-9]+)?|[-+×/()])")


def _tokens(text: str) -> list[str]:
    found, at = [], 0
    while at < len(text):
        match = _TOKEN.match(text, at)
        assert match, f"'{text[at:]}' is no arithmetic"
        found.append(match[1])
        at = match.end()
    return found


def _value(text: str) -> Fraction:
    tokens = _tokens(text)

    def atom() -> Fraction:
        first = tokens.pop(0)
        if first == "(":
            inner = total()
            assert tokens.pop(0) == ")"
            return inner
        return Fraction(first)

    def product() -> Fraction:
        value = atom()
        while tokens and tokens[0] in "×/":
            sign, by = tokens.pop(0), atom()
            value = value * by if sign == "×" else value / by
        return value

    def total() -> Fraction:
        value = product()
        while tokens and tokens[0] in "+-":
            sign, by = tokens.pop(0), product()
            value = value + by if sign == "+" else value - by
        return value

    result = total()
    assert not tokens
    return result


@pytest.fixture
def worked() -> Callable[[str], float]:
    """The value of a printed formula."""
    return lambda text: float(_value(text))
