"""Prices in a pasted text, each by the words beside it."""

import re
from collections.abc import Mapping
from decimal import Decimal

from planish.quantity.currencies import MINOR_UNITS, SYMBOLS
from planish.quantity.numbers import digits
from planish.worth import pastewords as words
from planish.worth.pastetext import Text


def money(t: Text) -> None:
    """Every amount by the words beside it; hammer and premium price together give the premium."""
    found: dict[str, tuple[Decimal, str]] = {}
    # what was read already, a day say, is no figure of an amount
    free = "".join(";" if used else c for c, used in zip(t.text, t.used, strict=True))
    matches = list(words.MONEY.finditer(free)) or list(words.BARE.finditer(free))
    at = [(m.start("amount"), m.end()) if "word" in m.re.groupindex else m.span() for m in matches]
    spans = [(0, 0), *at, (len(t.text), len(t.text))]
    for match, ((_, before), (start, end), (after, _)) in zip(
        matches, zip(spans, spans[1:], spans[2:], strict=False), strict=True
    ):
        group = match.groupdict()
        amount = _amount(group["amount"] or group.get("amount2") or "", group.get("thousand"))
        currency = _currency(t, group.get("before") or group.get("after") or "")
        kind, span = _kind(t.text, before, start, end, after)
        t.take(start, end)
        t.tail.append((start, end))
        if span:
            t.take(*span)
            t.tail.append(span)
        if group.get("to") or kind == "estimate":
            t.notes.append(f"{match.group().strip()} is taken as an estimate, and left out")
        elif kind in found:
            t.notes.append(f"{match.group().strip()} is a second price, and left out")
        else:
            found[kind] = (amount, currency)
    _priced(t, found)
    if unsold := t.find(dict(words.PHRASES)["unsold"]):
        t.take(*unsold.span())
        t.tail.append(unsold.span())
        t.cells["basis"] = "unsold"


def _priced(t: Text, found: Mapping[str, tuple[Decimal, str]]) -> None:
    hammer, total = found.get("hammer"), found.get("with-premium")
    kind = "hammer" if hammer else next((k for k in found if k != "sold"), "sold")
    if kind not in found:
        return
    amount, currency = found[kind]
    t.cells["price"] = digits(amount)
    if currency:
        t.cells["currency"] = currency
    if kind == "sold":
        t.notes.append("the text does not say whether the price includes the buyer's premium")
    else:
        t.cells["basis"] = kind
    if hammer and total:
        rate = total[0] / hammer[0] - 1 if hammer[0] else Decimal(-1)
        if 0 <= rate < 1:
            t.cells["premium"] = digits(round(rate, 6))
        else:
            t.notes.append(f"{digits(total[0])} with premium does not go with the hammer price")


def _kind(
    text: str, before: int, start: int, end: int, after: int
) -> tuple[str, tuple[int, int] | None]:
    """What an amount is, by the words in its own clause, after it or before it."""
    behind = re.match(r"[^;,()\n]*", text[end:after])
    ahead = re.search(r"[^;,()\n]*$", text[before:start])
    clauses = [
        (end, behind.group() if behind else ""),
        (start - len(ahead.group()) if ahead else start, ahead.group() if ahead else ""),
    ]
    for kind, pattern in words.PHRASES:
        for at, clause in clauses:
            if match := re.search(pattern, clause, re.IGNORECASE):
                return kind, (at + match.start(), at + match.end())
    return "sold", None


def _amount(text: str, thousand: str | None) -> Decimal:
    plain = re.sub(r"[\s\u00a0'’]", "", text)
    if match := re.fullmatch(r"(.*)[.,](\d{1,2})", plain):
        plain = f"{re.sub('[.,]', '', match[1])}.{match[2]}"
    else:
        plain = re.sub("[.,]", "", plain)
    return Decimal(plain) * (1000 if thousand else 1)


def _currency(t: Text, sign: str) -> str:
    plain = sign.strip().upper()
    if not plain or plain in MINOR_UNITS:
        return plain
    meant = SYMBOLS.get(plain, ())
    if len(meant) == 1 or t.cells.get("currency") in meant:
        return meant[0] if len(meant) == 1 else t.cells["currency"]
    t.notes.append(f"{sign.strip()} is the sign of several currencies; say which")
    return ""
