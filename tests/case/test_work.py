from collections.abc import Callable
from decimal import Decimal

import msgspec
import pytest

from planish.case import Case, parse
from planish.case.doubts import agreement
from planish.case.model import Confirmed
from planish.case.work import observed, work
from planish.case.worked import PieceWork
from planish.evidence import Finding
from planish.marks import Mark, Observed, Reading, ReadingFinding, Search
from planish.quantity import Money

BASE = """\
[case]
number = "7"
title = "Small"
type_of_value = "fair market value"
effective_date = 2026-03-02
currency = "USD"
[case.market]
level = "auction"
premium_included = true
[metal_price]
price = "USD 30"
date = 2026-03-02
source = "invented"
payout_share = 0.85
"""
PIECE = """\
[[piece]]
number = 1
title = "Ring"
form = "ring"
"""
SALE = """\
[[piece.comparable]]
title = "Ring"
date = 2026-01-10
venue = "Invented rooms"
price = "USD 100"
basis = "hammer"
premium = 0.25
source = "invented"
"""


def reading(**given: object) -> Reading:
    """A reading of London, 1884, sterling, sure, save for what is given."""
    usual: dict[str, object] = {
        "key": "k", "kind": "solid", "country": "GB", "system": "s", "system_label": "S",
        "office": "London", "year_from": 1884, "year_to": 1884, "fineness": 925.0, "makers": (),
        "probability": 0.9, "label": "London, 1884",
    }  # fmt: skip
    return Reading(**(usual | given))  # type: ignore[arg-type]  # a record of many kinds


def reads(*readings: Reading) -> Callable[[Observed, str | None], ReadingFinding]:
    """A marks bench that always reads the same."""

    def read(seen: Observed, form: str | None) -> ReadingFinding:
        return ReadingFinding(
            observed=seen, readings=readings, finding=Finding(about=form or "", hypotheses=())
        )

    return read


def describes(text: str) -> Observed:
    """A describing bench that takes each word for a mark, and does not understand 'eh'."""
    words = text.split()
    return Observed(
        marks=tuple(Mark(text=w) for w in words if w != "eh"),
        searched=(Search(place="base", found=True),),
        unread=tuple(w for w in words if w == "eh"),
    )


def one(text: str, *readings: Reading) -> PieceWork:
    """The one piece of a text, worked through with a bench that reads so."""
    done = work(parse(text), read=reads(*(readings or (reading(),))), describe=describes)
    assert len(done.pieces) == 1
    return done.pieces[0]


def test_rows_of_marks_and_free_text_are_read_together() -> None:
    text = BASE + PIECE + 'marks_text = "925 eh"\n[[piece.mark]]\ntext = "JR"\n'
    seen = observed(parse(text).pieces[0], describes)
    assert [m.text for m in seen.marks] == ["JR", "925"]
    assert seen.unread == ("eh",)
    assert "not understood in the marks' text: eh" in one(text).warnings


@pytest.mark.parametrize(
    ("added", "complete"),
    [
        ("", 0.8),
        ('searched = [{ place = "base", found = false }]\n', 0.9),
        ("complete = 0.3\n", 0.3),
    ],
)
def test_how_fully_a_piece_was_searched(added: str, complete: float) -> None:
    assert observed(parse(BASE + PIECE + added).pieces[0]).complete == complete


WEIGHT = '[piece.weight]\ngross = "18.40 g"\n'
STONE = '[[piece.weight.deduction]]\nkind = "stone"\nwhat = "turquoise"\nmass = "12.0 ct"\nmethod = "measured"\n'


def test_metal_value_of_a_ring_with_a_stone() -> None:
    # (18.40 - 12 x 0.2) g x 0.925 / 31.1034768 x 30 = 14.2749...: worked by hand from exact units
    done = one(BASE + PIECE + WEIGHT + STONE)
    assert done.weight
    assert done.weight.net
    assert done.weight.net.grams == Decimal("16.0")
    assert done.metal
    assert done.metal.value
    assert done.metal.value.rounded() == Money.of(Decimal("14.27"), "USD")
    assert done.metal.payable
    assert done.metal.payable.rounded() == Money.of(Decimal("12.13"), "USD")


def test_a_stone_that_is_named_and_not_taken_off_leaves_no_metal_value() -> None:
    done = one(BASE + PIECE + 'materials = "silver and turquoise"\n' + WEIGHT)
    assert done.metal
    assert done.metal.value is None
    assert any("no metal value from gross weight alone" in w for w in done.warnings)


@pytest.mark.parametrize(
    ("added", "fineness"),
    [
        ('fineness = 950\n[piece.confirmed]\nkind = "solid"\nfineness = 800\nreason = "x"\n', 950),
        ('[piece.confirmed]\nkind = "solid"\nfineness = 800\nreason = "x"\n', 800),
        ("", 925),
    ],
)  # fmt: skip
def test_fineness_is_that_weighed_in_then_confirmed_then_read(added: str, fineness: int) -> None:
    done = one(BASE + PIECE + WEIGHT + added)
    assert done.weight
    assert done.weight.alloy
    assert done.weight.alloy.fineness.permille == fineness


def test_rival_readings_that_agree_on_the_fineness_lend_it() -> None:
    rivals = [reading(key=str(y), year_from=y, year_to=y, probability=0.25) for y in (1, 2, 3)]
    done = one(BASE + PIECE + WEIGHT, *rivals, reading(key="o", fineness=800.0, probability=0.25))
    assert done.weight
    assert done.weight.alloy
    assert done.weight.alloy.fineness.permille == 925
    assert "75 %" in done.weight.alloy.basis


def test_an_unlikely_reading_lends_no_fineness() -> None:
    done = one(BASE + PIECE + WEIGHT, reading(probability=0.4))
    assert done.metal
    assert done.metal.value is None
    assert "no metal value without a fineness" in done.warnings


@pytest.mark.parametrize("kind", ["plated", "base"])
def test_what_is_not_silver_has_a_weight_and_no_metal_value(kind: str) -> None:
    done = one(BASE + PIECE + WEIGHT + f'[piece.confirmed]\nkind = "{kind}"\nreason = "x"\n')
    assert done.weight
    assert done.weight.fine is None
    assert done.metal is None


def test_filler_by_share_of_the_gross_weight() -> None:
    text = PIECE.replace("Ring", "Candlestick") + '[piece.weight]\ngross = "500 g"\n'
    filler = (
        '[[piece.weight.deduction]]\nkind = "filler"\nwhat = "filling"\n'
        "share_low = 0.8\nshare_high = 0.9\n"
    )
    done = one(BASE + text + filler)
    assert done.weight
    assert done.weight.net
    assert done.weight.net.grams == Decimal(75)


def test_a_hammer_price_is_brought_to_what_was_paid_and_adjusted() -> None:
    added = '[[piece.comparable.adjustment]]\nbecause = "worn"\npercent = -10\n'
    done = one(BASE + PIECE + SALE + added + "[piece.opinion]\ncomputed = true\n")
    assert done.opinion
    # 100 x 1.25 x 0.9
    assert done.opinion.computed == Money.of(Decimal("112.5"), "USD")
    assert done.opinion.grid[0].comparable.id == "1.1"


def test_a_foreign_price_needs_its_rate() -> None:
    foreign = SALE.replace("USD 100", "GBP 100").replace(
        'basis = "hammer"\npremium = 0.25', 'basis = "with-premium"'
    )
    done = one(BASE + PIECE + foreign + "[piece.opinion]\ncomputed = true\n")
    assert done.opinion
    assert done.opinion.value is None
    assert "no rate from GBP to USD is given" in " ".join(done.warnings)
    rated = foreign + "rate = 1.3\n[piece.opinion]\ncomputed = true\n"
    done = one(BASE + PIECE + rated)
    assert done.opinion
    assert done.opinion.computed == Money.of(130, "USD")


def test_the_appraisers_figure_stands_above_the_computed_one_and_both_are_kept() -> None:
    own = '[piece.opinion]\nvalue = "USD 120"\nlow = "USD 110"\nhigh = "USD 130"\nreasons = ["x"]\n'
    done = one(BASE + PIECE + SALE + own)
    assert done.opinion
    assert done.opinion.value == Money.of(120, "USD")
    assert done.opinion.computed == Money.of(125, "USD")


def test_a_case_that_names_no_value_has_no_opinion_and_says_why() -> None:
    text = BASE.replace('type_of_value = "fair market value"\n', "")
    done = work(parse(text + PIECE + SALE), read=reads(reading()), describe=describes)
    assert done.pieces[0].opinion is None
    assert done.warnings == ("no opinion is formed before the case names the type of value",)


def test_an_identification_is_not_asked_for_a_value() -> None:
    text = '[case]\nnumber = "7"\ntitle = "x"\nreport_option = "identification"\n'
    done = work(parse(text + PIECE + WEIGHT), read=reads(reading()), describe=describes)
    assert done.warnings == ()
    assert done.totals.value is None
    assert done.totals.without_metal == ()
    assert done.pieces[0].weight
    assert done.pieces[0].metal is None


def test_totals_add_what_there_is_and_name_what_is_not() -> None:
    other = PIECE.replace("number = 1", "number = 2")
    own = '[piece.opinion]\nvalue = "USD 120"\nlow = "USD 110"\nhigh = "USD 130"\nreasons = ["x"]\n'
    third = (
        PIECE.replace("number = 1", "number = 3")
        + '[piece.opinion]\nvalue = "USD 30"\nreasons = ["x"]\n'
    )
    text = BASE.replace("payout_share", 'charges = "USD 5"\npayout_share')
    done = work(
        parse(text + PIECE + own + WEIGHT + other + third),
        read=reads(reading()),
        describe=describes,
    )
    totals = done.totals
    assert (totals.value, totals.low, totals.high) == tuple(
        Money.of(n, "USD") for n in (150, 140, 160)
    )
    assert totals.without == (2,)
    assert totals.without_metal == (2, 3)
    metal = done.pieces[0].metal
    assert metal
    assert metal.payable
    assert totals.metal == metal.value
    assert totals.payable == metal.payable - Money.of(5, "USD")


def test_a_figure_that_cannot_be_is_a_warning_of_its_piece_and_the_rest_goes_on() -> None:
    far = STONE.replace('mass = "12.0 ct"', 'low = "10 g"\nhigh = "40 g"')
    other = PIECE.replace("number = 1", "number = 2") + SALE
    done = work(
        parse(BASE + PIECE + WEIGHT + far + other), read=reads(reading()), describe=describes
    )
    first, second = done.pieces
    assert first.weight is None
    assert any("leave nothing of the gross weight" in w for w in first.warnings)
    assert second.opinion


@pytest.mark.parametrize(
    ("given", "agrees"),
    [
        ({}, True),
        ({"year_from": 1870, "year_to": 1883}, True),  # the assay year 1883 runs into 1884
        ({"year_from": 1870, "year_to": 1882}, False),
        ({"year_from": 1886, "year_to": 1890}, False),
        ({"office": "Chester"}, False),
        ({"office": None}, True),
        ({"country": "US"}, False),
        ({"kind": "plated"}, False),
    ],
)
def test_agreement_of_a_reading_with_what_was_confirmed(
    given: dict[str, object],
    agrees: bool,  # noqa: FBT001  # a column of the table
) -> None:
    finding = reads(reading(**given))(Observed(marks=(Mark(text="I"),)), None)
    confirmed = parse_confirmed(
        'kind = "solid"\ncountry = "GB"\noffice = "London"\nyear_from = 1884\nyear_to = 1885\n'
    )
    assert agreement(confirmed, finding) == (0.9 if agrees else 0.0)


def parse_confirmed(keys: str) -> Confirmed | None:
    return parse(BASE + PIECE + f'[piece.confirmed]\nreason = "x"\n{keys}').pieces[0].confirmed


def test_plate_and_base_are_one_side_for_the_marks() -> None:
    finding = reads(reading(kind="plated"))(Observed(marks=(Mark(text="ALPACCA"),)), None)
    assert agreement(parse_confirmed('kind = "base"\n'), finding) == 0.9


def test_what_the_marks_do_not_bear_out_is_told() -> None:
    text = (
        BASE
        + PIECE
        + '[[piece.mark]]\ntext = "I"\n[piece.confirmed]\nkind = "plated"\nreason = "x"\n'
    )
    assert (
        "the confirmed reading (plated) has a probability of <1 % by the marks;"
        " likeliest by the marks: solid, London, 1884 (90 %)"
    ) in one(text).warnings


def test_a_test_far_from_the_stated_fineness_is_told() -> None:
    weight = WEIGHT + "fineness = 925\nfineness_plus_minus = 4\n"
    test = '[[piece.test]]\nkind = "xrf"\nreading = "r"\nfineness = {}\nplus_minus = 3\n'
    far = one(BASE + PIECE + weight + test.format(914))
    near = one(BASE + PIECE + weight + test.format(916))
    told = "the xrf test gives 914 parts per thousand, 925 is stated: say which holds, and why"
    assert told in far.warnings
    assert not any("xrf" in w for w in near.warnings)


def test_a_touch_test_asks_for_consent_and_names_the_acid() -> None:
    test = '[[piece.test]]\nkind = "touch"\nreading = "red"\n'
    asked = "a touch test leaves a trace and uses acid: record the owner's consent"
    assert asked in one(BASE + PIECE + test).warnings
    assert asked not in one(BASE + PIECE + test + 'consent = "in writing"\n').warnings


def test_materials_that_the_law_may_restrict_are_told() -> None:
    done = one(BASE + PIECE + 'materials = "silver, ivory insulators"\n')
    assert any(w.startswith("ivory: trade in it may be restricted") for w in done.warnings)


def test_the_order_of_the_pieces_changes_no_figure(demo_case: Case) -> None:
    pieces = tuple(reversed(demo_case.pieces))
    turned = work(msgspec.structs.replace(demo_case, pieces=pieces), read=reads(reading()))
    straight = work(demo_case, read=reads(reading()))
    assert turned.totals.value == straight.totals.value
    assert {w.piece.number: w.opinion for w in turned.pieces} == {
        w.piece.number: w.opinion for w in straight.pieces
    }
