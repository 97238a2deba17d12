"""Faults between fields: what each key alone cannot show."""

from collections.abc import Iterator, Mapping
from itertools import pairwise

from planish.case.faults import Steps, did_you_mean, quoted
from planish.case.kinds import EARLIEST, LATEST, ReportOption
from planish.case.quantities import money_pair, to_grams

Raw = tuple[Steps, str, str]
_Rows = Iterator[tuple[int, Mapping[str, object]]]


def cross_faults(raw: Mapping[str, object]) -> list[Raw]:
    """Duplicate numbers, empty cases, ranges upside down, mixed currencies, loose references.

    Looks at the raw tables, so that these faults are told beside faults of type.
    """
    return [*_pieces(raw), *_assignment(raw), *_identification(raw)]


def _rows(value: object) -> _Rows:
    for n, row in enumerate(value if isinstance(value, list) else []):
        if isinstance(row, dict):
            yield n, row


def _table(row: Mapping[str, object], key: str) -> Mapping[str, object]:
    value = row.get(key)
    return value if isinstance(value, dict) else {}


def _assignment(raw: Mapping[str, object]) -> Iterator[Raw]:
    case = _table(raw, "case")
    report, seen = case.get("report_date"), _table(case, "inspection").get("date")
    if isinstance(report, str) and isinstance(seen, str) and report[:10] < seen[: len(report)]:
        yield (
            ("case", "report_date"),
            f"the report ({report}) is older than the inspection ({seen})",
            "mend one of the two dates",
        )


def _identification(raw: Mapping[str, object]) -> Iterator[Raw]:
    """An identification states no value: whatever states one is told, not passed over."""
    case = _table(raw, "case")
    if case.get("report_option") != ReportOption.IDENTIFICATION.value:
        return
    given: list[Steps] = [("case", key) for key in ("type_of_value", "tax") if key in case]
    given += [("metal_price",)] if "metal_price" in raw else []
    for i, piece in _rows(raw.get("piece")):
        given += [("piece", i, key) for key in ("opinion", "comparable") if key in piece]
    for steps in given:
        yield (
            steps,
            "an identification states no value",
            "take this out, or choose another report_option",
        )


def _pieces(raw: Mapping[str, object]) -> Iterator[Raw]:
    pieces = raw.get("piece")
    if pieces is None and any(did_you_mean(key, ["piece"]) for key in raw):
        return  # told as an unknown key
    if pieces is None or pieces == []:
        yield (
            (),
            "the case holds no piece",
            "add a table [[piece]] with at least 'number = 1' and 'title = \"...\"'",
        )
        return
    currency = _table(raw, "case").get("currency")
    first: dict[int, int] = {}
    for i, piece in _rows(pieces):
        number = piece.get("number")
        if isinstance(number, int) and not isinstance(number, bool):
            if number in first:
                yield (
                    ("piece", i, "number"),
                    f"number {number} is already that of the piece in place {first[number] + 1}",
                    "give each piece a number of its own",
                )
            first.setdefault(number, i)
        here: Steps = ("piece", i)
        yield from _confirmed(_table(piece, "confirmed"), here)
        yield from _weight(_table(piece, "weight"), here)
        yield from _opinion(_table(piece, "opinion"), (*here, "opinion"), currency)
        yield from _comparables(piece, here)
        yield from _pictures_of_marks(piece, here)


def _confirmed(confirmed: Mapping[str, object], here: Steps) -> Iterator[Raw]:
    low, high = confirmed.get("year_from"), confirmed.get("year_to")
    if _is_year(low) and _is_year(high) and int(str(low)) > int(str(high)):
        yield (
            (*here, "confirmed", "year_to"),
            f"year_to {quoted(high)} is before year_from {quoted(low)}",
            "put the earlier year first",
        )


def _is_year(value: object) -> bool:
    """Whether the value is a year that the file may hold; one that is not is told by itself."""
    return type(value) is int and EARLIEST <= value <= LATEST


def _weight(weight: Mapping[str, object], here: Steps) -> Iterator[Raw]:
    gross = to_grams(weight.get("gross"))
    taken = 0.0
    for k, row in _rows(weight.get("deduction")):
        at = (*here, "weight", "deduction", k)
        given = [key for key in ("mass", "low", "share_low") if key in row]
        if len(given) != 1:
            yield (
                at,
                "the deduction says " + (" and ".join(given) if given else "no figure"),
                "give either mass, or low and high, or share_low and share_high",
            )
        for low_key, high_key in (("low", "high"), ("share_low", "share_high")):
            if (low_key in row) != (high_key in row):
                alone = low_key if low_key in row else high_key
                yield (at, f"'{alone}' stands alone", f"give both {low_key} and {high_key}")
        pairs = (
            (to_grams(row.get("low")), to_grams(row.get("high"))),
            (_number(row.get("share_low")), _number(row.get("share_high"))),
        )
        for low, high in pairs:
            if low is not None and high is not None and low > high:
                yield (at, "the lower limit is above the upper one", "put the smaller first")
        taken += to_grams(row.get("mass")) or to_grams(row.get("low")) or 0.0
    if gross is not None and taken > gross:
        yield (
            (*here, "weight"),
            f"the deductions ({taken:g} g) are more than the gross weight ({gross:g} g)",
            "check the units and figures",
        )


def _number(value: object) -> float | None:
    return float(value) if isinstance(value, int | float) and not isinstance(value, bool) else None


def _opinion(opinion: Mapping[str, object], here: Steps, currency: object) -> Iterator[Raw]:
    if opinion.get("computed") is True and any(k in opinion for k in ("low", "value", "high")):
        yield (here, "the figure is both given and computed", "take out computed or the figures")
    elif "value" in opinion and ("low" in opinion) != ("high" in opinion):
        alone = "low" if "low" in opinion else "high"
        yield ((*here, alone), f"'{alone}' stands alone", "give both low and high")
    amounts = []
    for key in ("low", "value", "high"):
        money = money_pair(opinion.get(key))
        if money is None:
            continue
        amounts.append((key, money))
        if isinstance(currency, str) and money[0] != currency:
            yield (
                (*here, key),
                f"{money[0]} stands here, the case is in {currency}",
                f"state all opinions in {currency}",
            )
    for (one, (code, less)), (other, (code2, more)) in pairwise(amounts):
        if code == code2 and less > more:
            yield (
                (*here, other),
                f"'{other}' is below '{one}'",
                "a range runs low, value, high",
            )


def _comparables(piece: Mapping[str, object], here: Steps) -> Iterator[Raw]:
    for k, row in _rows(piece.get("comparable")):
        for n, line in _rows(row.get("adjustment")):
            if ("percent" in line) == ("amount" in line):
                yield (
                    (*here, "comparable", k, "adjustment", n),
                    "an adjustment needs one figure",
                    "give either percent or amount",
                )
            percent = _number(line.get("percent"))
            if percent is not None and percent <= -100:
                yield (
                    (*here, "comparable", k, "adjustment", n, "percent"),
                    f"{quoted(percent)} percent leaves nothing of the price",
                    "write -10 for a tenth less",
                )


def _pictures_of_marks(piece: Mapping[str, object], here: Steps) -> Iterator[Raw]:
    files = [
        f for _, row in _rows(piece.get("photograph")) if isinstance(f := row.get("file"), str)
    ]
    for k, mark in _rows(piece.get("mark")):
        name = mark.get("photograph")
        if isinstance(name, str) and name not in files:
            yield (
                (*here, "mark", k, "photograph"),
                f"{quoted(name)} is not among the piece's photographs",
                did_you_mean(name, files) or "add it as [[piece.photograph]]",
            )
