"""What the benches found, as printed: every figure follows from those printed beside it."""

import datetime as dt
import math
import re
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.evidence import Finding, Hypothesis, Ledger, LedgerLine, decibans
from planish.library import load
from planish.marks.observation import Mark, Observed
from planish.marks.reading import Assigned, Reading, ReadingFinding
from planish.metal import Alloy, Deduction, Kind, MetalPrice, Method, Terms, Weighing, weigh
from planish.metal import metal_value as value_of
from planish.quantity import Fineness, Mass, Money, UncertainDate
from planish.report.citations import Citations
from planish.report.reading_view import ledger, mark_rows, reading
from planish.report.weight_view import metal_notes, metal_steps, weighed
from planish.report.worth_view import strip, worth
from planish.worth import Adjustment, Basis, Comparable, Conversions, Floor, Task, opinion

NUMBER = re.compile(r"[−-]?[\d,]*\.?\d+")
KEYS = ("a", "b", "c")


def number(text: str) -> Decimal:
    match = NUMBER.search(text)
    assert match, text
    return Decimal(match[0].replace(",", "").replace("−", "-"))


@pytest.fixture
def cite() -> Citations:
    return Citations(load())


# --- the ledger ---------------------------------------------------------------------------------

weights = st.floats(-30, 30, allow_nan=False)


@given(
    lines=st.lists(st.fixed_dictionaries(dict.fromkeys(KEYS, weights)), min_size=1, max_size=12),
    priors=st.lists(st.floats(0.01, 1), min_size=3, max_size=3),
    absent=st.booleans(),
)
def test_the_lines_of_a_ledger_add_up_to_the_probability(
    *, lines: list[dict[str, float]], priors: list[float], absent: bool
) -> None:
    finding = Finding(
        about="marks",
        hypotheses=tuple(
            Hypothesis(key=k, label=k, probability=0.0, prior=p)
            for k, p in zip(KEYS, priors, strict=True)
        ),
        ledger=Ledger(
            tuple(
                LedgerLine(
                    key=f"{'absent' if absent and n % 2 else 'mark'}:{n}",
                    observed=f"x{n}: seen or not",
                    likelihood_db=db,
                )
                for n, db in enumerate(lines)
            )
        ),
    )
    shown = ledger("Piece 1", finding, Citations(load()))
    assert shown is not None
    figures = [number(shown.before), *(number(e.decibans) for e in shown.lines)]
    # each figure is rounded to a tenth
    assert abs(sum(figures) - number(shown.after)) <= Decimal("0.051") * (len(figures) + 1)
    p = finding.recomputed()["a"]  # Bayes' rule from priors and likelihoods, reckoned elsewhere
    if 1e-9 < p < 1 - 1e-9:
        assert float(number(shown.after)) == pytest.approx(
            decibans(math.log(p / (1 - p))), abs=0.051
        )


def test_bars_point_right_for_and_left_against_and_never_leave_the_column(cite: Citations) -> None:
    finding = Finding(
        about="marks",
        hypotheses=tuple(Hypothesis(key=k, label=k, probability=0.5, prior=0.5) for k in "ab"),
        ledger=Ledger(
            (
                LedgerLine(key="mark:0", observed="o", likelihood_db={"a": 90, "b": 0},
                           sources=("practice",)),
                LedgerLine(key="mark:1", observed="p", likelihood_db={"a": 0, "b": 7}),
            )
        ),
    )  # fmt: skip
    shown = ledger("Piece 1", finding, cite)
    assert shown is not None
    assert [(e.share, e.word) for e in shown.lines] == [(1.0, "decisive"), (-0.35, "some")]
    assert shown.lines[0].sources == "practice"


def test_a_finding_with_one_hypothesis_states_no_balance(cite: Citations) -> None:
    alone = Finding(
        about="marks",
        hypotheses=(Hypothesis(key="a", label="a", probability=1, prior=1),),
        ledger=Ledger((LedgerLine(key="mark:0", observed="o", likelihood_db={"a": 3}),)),
    )
    shown = ledger("Piece 1", alone, cite)
    assert shown is not None
    assert (shown.before, shown.after) == ("", "")
    assert ledger("Piece 1", Finding(about="marks", hypotheses=()), cite) is None


# --- marks and reading ----------------------------------------------------------------------------


def a_reading(**changes: object) -> Reading:
    values: dict[str, object] = {
        "key": "k", "kind": "solid", "country": "GB", "system": "s", "system_label": "England",
        "office": "London", "year_from": 1765, "year_to": 1766, "fineness": 925.0, "makers": (),
        "probability": 0.83, "label": "London, 1765-1766, 925 fine",
    }  # fmt: skip
    return Reading(**{**values, **changes})  # type: ignore[arg-type]


def test_each_mark_says_what_the_likeliest_reading_takes_it_for() -> None:
    marks = (Mark(device="lion passant", outline="square"), Mark(text="X"), Mark(text="Y"))
    best = a_reading(
        assigned=(
            Assigned(mark=0, shown="lion passant (in square)", role="standard", probability=0.95),
            Assigned(mark=1, shown='"X"', role="stray", probability=1.0),
        )
    )
    rows = mark_rows(marks, best)
    assert [(r.read_as, r.sure) for r in rows] == [
        ("standard mark", "extremely likely"),
        ("explained by no role of this reading", ""),
        ("", ""),
    ]
    assert rows[0].svg.startswith("<svg ")
    assert rows[0].alt == "lion passant, in square"


def test_a_reading_that_settles_nothing_says_so(cite: Citations) -> None:
    unknown = a_reading(kind="unknown", probability=0.9, label="marks of no system")
    found = ReadingFinding(
        observed=Observed(), readings=(unknown,), finding=Finding(about="m", hypotheses=())
    )
    shown = reading(found, cite)
    assert shown.sentence == "Not settled: no reading of these marks stands out."
    assert shown.chance == (
        "Probability that no system of the library explains the marks: 90 % (very likely)"
    )


@pytest.mark.parametrize("chance", [0.4, 0.79])
def test_a_reading_below_four_in_five_is_not_settled(cite: Citations, chance: float) -> None:
    found = ReadingFinding(
        observed=Observed(),
        readings=(a_reading(probability=chance), a_reading(probability=0.2)),
        finding=Finding(about="m", hypotheses=()),
    )
    shown = reading(found, cite)
    assert shown.sentence == "Not settled; the likeliest: London, 1765-1766, 925 fine."


def test_plate_is_named_as_plate(cite: Citations) -> None:
    plated = a_reading(kind="plated", label="British electroplate, 1860-1900")
    found = ReadingFinding(
        observed=Observed(),
        readings=(plated, a_reading(probability=0.1)),
        finding=Finding(about="m", hypotheses=()),
    )
    shown = reading(found, cite)
    assert shown.sentence == "British electroplate, 1860-1900 (plated)."
    assert shown.chance == "Probability of this reading: 83 % (likely)"
    assert [r.sentence for r in shown.rivals] == ["London, 1765-1766, 925 fine"]


# --- sources --------------------------------------------------------------------------------------


def test_sources_are_numbered_as_cited_and_unprinted_ones_are_shown(cite: Citations) -> None:
    one, two = (s.key for s in load().sources[:2])
    assert cite.cite((two, "memory")) == "[1] memory"
    assert cite.cite((one, two, two)) == "[1] [2]"
    assert cite.cite(("practice",)) == "practice"
    assert [s.mark for s in cite.sources()] == ["[1]", "[2]"]
    assert cite.sources()[1].title == load().sources[0].title
    assert len(cite.notes()) == 2


# --- weight and metal -----------------------------------------------------------------------------


def test_the_weight_statement_reads_like_a_balance() -> None:
    statement = weigh(
        "Teapot",
        Weighing(gross=Mass.parse("612.4 g"), resolution=Mass.parse("0.1 g"), balance="K-3"),
        deductions=(
            Deduction(kind=Kind.WOOD, what="handle", low=Mass.parse("22 g"),
                      high=Mass.parse("30 g"), method=Method.MEASURED, source="its size"),
        ),
        alloy=Alloy(fineness=Fineness.of(925), plus_minus=Decimal(3), basis="mark"),
    )  # fmt: skip
    lines = weighed(statement)
    assert [w.kind for w in lines] == ["gross", "off", "net", "fine"]
    gross, off, net, fine = (number(w.grams) for w in lines)
    assert gross - off == net == Decimal("586.4")
    assert abs(net * Decimal("0.925") - fine) < Decimal("0.051")
    # between two limits: (30 - 22) / sqrt(12) = 2.3 (GUM 4.3.7)
    assert lines[1].plus_minus == "2.3"
    assert "22.0 to 30.0 g" in lines[1].how


def test_the_metal_value_multiplies_out() -> None:
    # 100 ozt of 900, price 30 an ounce, payout 85 %: 100 x 0.9 x 30 = 2700, x 0.85 = 2295
    statement = weigh(
        "Bars", Weighing(gross=Mass.parse("100 ozt")), alloy=Alloy(fineness=Fineness.of(900))
    )
    price = MetalPrice(
        price=Money.parse("USD 30"), per="ozt", date=dt.date(2026, 5, 14), source="a fix"
    )
    value = value_of(
        statement,
        price,
        effective=dt.date(2026, 5, 14),
        terms=Terms(payout=Decimal("0.85"), source="an offer"),
    )
    steps = metal_steps(value, statement)
    assert [(s.sign, s.figure) for s in steps] == [
        ("", "90.0000 ozt"), ("×", "USD 30.00"), ("=", "USD 2,700.00"), ("×", "85 %"),
        ("=", "USD 2,295.00"),
    ]  # fmt: skip
    assert "14 May 2026" in steps[1].what
    assert any("no opinion of value" in n for n in metal_notes(value))


# --- worth ----------------------------------------------------------------------------------------

TASK = Task(
    type_of_value="fair market value", date=dt.date(2026, 5, 14), market="auction",
    basis=Basis.HAMMER, currency="USD",
)  # fmt: skip


def sale(n: int, price: str, **changes: object) -> Comparable:
    values: dict[str, object] = {
        "id": f"1.{n}", "title": f"Sale {n}", "date": UncertainDate("2026-01-02"), "venue": "a room",
        "price": Money.parse(price), "basis": Basis.WITH_PREMIUM, "premium": Decimal("0.2"),
    }  # fmt: skip
    return Comparable(**{**values, **changes})  # type: ignore[arg-type]


@given(
    st.decimals("1", "99999", places=2),
    st.decimals("0.05", "0.4", places=3),
    st.lists(st.decimals("-40", "60", places=1), max_size=4),
    st.decimals("0.5", "90", places=2) | st.none(),
)
def test_each_comparable_multiplies_out_from_what_is_printed(
    price: Decimal, premium: Decimal, percents: list[Decimal], extra: Decimal | None
) -> None:
    lines = [Adjustment.percent(p, f"reason {n}", "judgment") for n, p in enumerate(percents)]
    if extra is not None:
        lines.append(
            Adjustment(because="metal", amount=Money.of(extra, "USD"), source="price of the day")
        )
    found = opinion(
        [sale(1, f"USD {price}", premium=premium, adjustments=tuple(lines))], TASK, Conversions()
    )
    (shown,) = worth(found).compared
    result = number(shown.sold)
    for line in shown.adjustments:
        figure = number(line.value[1:])
        result = {
            "×": lambda a, b: a * b,
            "÷": lambda a, b: a / b,
            "+": lambda a, b: a + b,
            "−": lambda a, b: a - b,
        }[line.value[0]](result, figure)
    assert float(result) == pytest.approx(float(number(shown.adjusted)), rel=3e-6, abs=0.0051)


def test_the_strip_puts_everything_on_one_axis() -> None:
    found = opinion(
        [sale(1, "USD 600"), sale(2, "USD 900"), sale(3, "USD 720", weight=Decimal("0.5"))],
        TASK,
        floor=Floor(amount=Money.parse("USD 300"), note="metal"),
    )
    drawn = strip(found)
    assert drawn is not None
    places = [p for d in drawn.dots for p in (d.sold, d.adjusted)]
    places += [drawn.floor, drawn.low, drawn.high, drawn.value, *(at for _, at in drawn.ticks)]
    assert all(p is not None and 0 <= p <= 1 for p in places)
    assert [d.size for d in drawn.dots] == [1.0, 1.0, 0.5]
    # sold 600 with a premium of 0.2 is 500 by the hammer: left of where it was sold
    first = drawn.dots[0]
    assert first.sold is not None
    assert first.adjusted is not None
    assert first.adjusted < first.sold
    low, high = (number(drawn.ticks[k][0]) for k in (0, -1))
    span = (drawn.ticks[-1][1] - drawn.ticks[0][1]) or 1
    assert float(low) + first.adjusted / span * float(high - low) == pytest.approx(500, rel=1e-3)
    assert "1: sold USD 600, adjusted 500" in drawn.alt


def test_what_is_left_out_is_told_with_its_reason() -> None:
    unsold = sale(2, "USD 400", basis=Basis.UNSOLD)
    shown = worth(opinion([sale(1, "USD 600"), unsold], TASK))
    assert any(n.startswith("Left out: Sale 2 (USD 400), because unsold") for n in shown.notes)
