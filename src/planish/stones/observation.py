"""What was seen or measured on a stone, as people write it: ``sg=2.76±0.05``, ``colour=blue``."""

import re

import msgspec

from planish.library import Library, load
from planish.library.stone_rows import GemTest
from planish.quantity import QuantityError
from planish.stones.names import key

_WHAT = "observation"
_FIGURE = r"\d+(?:\.\d+)?"
_VALUE = re.compile(
    rf"(?P<low>{_FIGURE})(?:\s*(?:-|–|to)\s*(?P<high>{_FIGURE}))?"
    rf"(?:\s*(?:±|\+/-|\+-)\s*(?P<u>{_FIGURE}))?",
    re.ASCII,
)
#: standard uncertainty where none is written (common practice): gravity of a small stone on a balance
#: that shows the milligram; index by both edges; index of a dome by the spot
SG_U, EDGE_U, SPOT_U = 0.05, 0.002, 0.01
_BOUNDS = {"sg": (0.5, 25.0), "ri": (1.2, 3.5)}
OVER = "over"
#: where the scale of a refractometer ends, by its liquid
SCALE_END = 1.80


class Observation(msgspec.Struct, frozen=True, kw_only=True):
    """One answer of one test.

    test: its id. answer: the library's word, or ``over``; blank for a figure. low, high: the figure,
    or both ends of it. u: standard uncertainty. shown: in words. assumed: what was not written.
    """

    test: str
    answer: str = ""
    low: float = 0.0
    high: float = 0.0
    u: float = 0.0
    shown: str
    assumed: str = ""


def find_test(words: str, library: Library | None = None) -> GemTest:
    """The test of that id or name.

    Raises:
        QuantityError: none goes by that name.
    """
    wanted = key(words)
    tests = (library or load()).gemtests
    for test in tests:
        if wanted in {key(n) for n in (test.id, test.label, *test.words.split(";")) if n}:
            return test
    known = ", ".join(t.id for t in tests)
    raise QuantityError("test", words, "this is not known", f"use one of {known}")


def observe(text: str, library: Library | None = None) -> Observation:
    """The observation that ``TEST=ANSWER`` states.

    Raises:
        QuantityError: the test or its answer is not known, or a figure is impossible.

    >>> observe("lustre=glassy").answer
    'vitreous'
    """
    name, sign, value = text.partition("=")
    value = value.strip()
    if not sign or not value:
        fault = "it is not TEST=ANSWER"
        raise QuantityError(_WHAT, text, fault, "write it like sg=2.76±0.05 or colour=blue")
    test = find_test(name, library)
    return _figure(test, value, text) if test.id in _BOUNDS else _answer(test, value, text)


def _figure(test: GemTest, value: str, text: str) -> Observation:
    if test.id == "ri" and key(value) in ("over", "otl", "over the limit", "above"):
        shown = f"{test.label} over the scale, about {SCALE_END:.2f}"
        return Observation(test="ri", answer=OVER, shown=shown)
    match = _VALUE.fullmatch(value.strip())
    if not match:
        raise QuantityError(_WHAT, text, f"'{value}' is no figure", "write it like 2.76±0.05")
    low, high = float(match["low"]), float(match["high"] or match["low"])
    floor, ceiling = _BOUNDS[test.id]
    if not floor <= low <= high <= ceiling:
        fault = f"{value} is no {test.label} of a stone"
        raise QuantityError(_WHAT, text, fault, f"figures lie between {floor:g} and {ceiling:g}")
    usual = SG_U if test.id == "sg" else EDGE_U if low < high else SPOT_U
    u = float(match["u"]) if match["u"] else usual
    if u <= 0.0 or u > low / 3:
        fault = f"± {u:g} says too little or too much"
        raise QuantityError(_WHAT, text, fault, "give the standard uncertainty")
    figures = f"{low:g}" if low == high else f"{low:g} to {high:g}"
    return Observation(
        test=test.id,
        low=low,
        high=high,
        u=u,
        shown=f"{test.label} {figures} ± {u:g}",
        assumed="" if match["u"] else f"± {usual:g} assumed for the {test.label}",
    )


def _answer(test: GemTest, value: str, text: str) -> Observation:
    wanted = key(value)
    for answer, others in test.answers.items():
        if wanted in {key(word) for word in (answer, *others)}:
            return Observation(test=test.id, answer=answer, shown=f"{test.label}: {answer}")
    fault = f"'{value}' is no answer of the {test.label}"
    raise QuantityError(_WHAT, text, fault, f"use one of {', '.join(test.answers)}")
