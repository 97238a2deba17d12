from collections.abc import Callable
from typing import Any

import msgspec
import pytest

from planish.case import Case, missing
from planish.case.complete import CASE_RULES, PIECE_RULES, VALUE_RULES
from planish.case.kinds import TypeOfValue

Raw = dict[str, Any]


def changed(case: Case, change: Callable[[Raw], None]) -> Case:
    """The case after a change to its plain tables."""
    raw = msgspec.json.decode(msgspec.json.encode(case))
    change(raw)
    return msgspec.convert(raw, Case)


def without(*path: str) -> Callable[[Raw], None]:
    """A change that takes one key out."""

    def change(raw: Raw) -> None:
        for step in path[:-1]:
            raw = raw[step]
        del raw[path[-1]]

    return change


def in_piece(change: Callable[[Raw], None], place: int = 0) -> Callable[[Raw], None]:
    return lambda raw: change(raw["piece"][place])


def no_scale(piece: Raw) -> None:
    for picture in piece["photograph"]:
        picture.pop("scale", None)


def only(shows: str) -> Callable[[Raw], None]:
    """Photographs that show only this, as many as there were."""

    def change(piece: Raw) -> None:
        for picture in piece["photograph"]:
            picture["shows"] = shows

    return change


CASE_CHANGES: dict[str, Callable[[Raw], None]] = {
    rule.rule: without(*rule.key.split(".")) for rule in CASE_RULES
}
PIECE_CHANGES: dict[str, Callable[[Raw], None]] = {
    "form": without("form"),
    "description": without("description"),
    "materials": without("materials"),
    "dimensions": without("dimension"),
    "condition": without("condition"),
    "provenance": without("provenance"),
    "photograph": only("marks"),
    "photograph-scale": no_scale,
    "photograph-marks": only("whole"),
    "caption": lambda piece: piece["photograph"][1].pop("caption"),
    "alt": lambda piece: piece["photograph"][1].pop("alt"),
    "searched": without("searched"),
    # without marks, their photograph is not asked for either
    "marks": without("mark"),
    "confirmed": without("confirmed"),
    "weight": without("weight"),
    "balance": lambda piece: piece["weight"].pop("balance"),
    "acquired": without("acquired"),
    "opinion": without("opinion"),
    "opinion-value": lambda piece: piece["opinion"].pop("value"),
    "reasons": lambda piece: piece["opinion"].pop("reasons"),
    "comparables": without("comparable"),
}


def test_the_demo_case_is_complete(demo_case: Case) -> None:
    assert missing(demo_case) == []


def test_every_rule_of_a_piece_is_tried_here() -> None:
    assert set(PIECE_CHANGES) == {rule.rule for rule in PIECE_RULES}


@pytest.mark.parametrize("rule", [r.rule for r in CASE_RULES])
def test_each_rule_of_the_case_fires_alone(demo_case: Case, rule: str) -> None:
    gaps = missing(changed(demo_case, CASE_CHANGES[rule]))
    assert [(g.rule, g.piece) for g in gaps] == [(rule, None)]


@pytest.mark.parametrize("rule", [r.rule for r in PIECE_RULES])
def test_each_rule_of_a_piece_fires_alone(demo_case: Case, rule: str) -> None:
    gaps = missing(changed(demo_case, in_piece(PIECE_CHANGES[rule])))
    assert [(g.rule, g.piece) for g in gaps] == [(rule, 1)]


def test_a_gap_is_one_line_that_says_what_who_asks_and_what_to_do(demo_case: Case) -> None:
    (gap,) = missing(changed(demo_case, in_piece(without("condition"), 2)))
    assert str(gap) == (
        "piece 3: missing: the condition (USPAP SR 7-2(e));"
        " describe wear, damage, repairs and alterations"
    )
    (gap,) = missing(changed(demo_case, without("case", "client")))
    assert str(gap) == "missing: the client (USPAP SR 8-2(a)(i)); name who engaged you"


def test_rules_have_ids_of_their_own_and_say_how_sure_the_clause_is() -> None:
    rules = (*CASE_RULES, *PIECE_RULES)
    assert len({r.rule for r in rules}) == len(rules)
    assert {r.sure for r in rules} == {"seen", "memory", "practice"}
    assert all(r.what and r.remedy and r.clause for r in rules)


def test_what_only_a_sale_needs_is_not_asked_of_a_replacement_value(demo_case: Case) -> None:
    def replacement(raw: Raw) -> None:
        raw["case"]["type_of_value"] = TypeOfValue.RETAIL_REPLACEMENT.value
        del raw["case"]["terms"], raw["case"]["exposure_time"]

    assert missing(changed(demo_case, replacement)) == []


def identification(raw: Raw) -> None:
    """The case as an identification: nothing in it that only a value needs."""
    raw["case"]["report_option"] = "identification"
    for key in (
        "property_interest", "type_of_value", "value_definition", "definition_source", "terms",
        "exposure_time", "effective_date", "currency", "market", "approaches", "prior_sales",
        "reconciliation", "tax",
    ):  # fmt: skip
        del raw["case"][key]
    del raw["case"]["certification"]["fee"], raw["metal_price"]
    for piece in raw["piece"]:
        for key in ("opinion", "comparable", "acquired", "weight"):
            piece.pop(key, None)


def test_an_identification_is_asked_for_nothing_that_only_a_value_needs(demo_case: Case) -> None:
    assert missing(changed(demo_case, identification)) == []


@pytest.mark.parametrize("rule", [r.rule for r in CASE_RULES if r.rule not in VALUE_RULES])
def test_an_identification_is_asked_for_all_the_rest(demo_case: Case, rule: str) -> None:
    def change(raw: Raw) -> None:
        identification(raw)
        CASE_CHANGES[rule](raw)

    assert [g.rule for g in missing(changed(demo_case, change))] == [rule]


def test_the_rules_of_value_are_rules() -> None:
    assert {r.rule for r in (*CASE_RULES, *PIECE_RULES)} >= VALUE_RULES


def test_without_a_tax_use_nothing_of_it_is_asked(demo_case: Case) -> None:
    def private(raw: Raw) -> None:
        del raw["case"]["tax"]
        for piece in raw["piece"]:
            del piece["acquired"]

    assert missing(changed(demo_case, private)) == []


@pytest.mark.parametrize("piece", [3, 4])
def test_plate_and_base_metal_need_no_weight(demo_case: Case, piece: int) -> None:
    assert demo_case.pieces[piece].weight is None
    assert missing(demo_case) == []


def test_silver_whose_metal_is_not_to_be_stated_needs_no_weight(demo_case: Case) -> None:
    def unweighed(piece: Raw) -> None:
        del piece["weight"]
        piece["use_metal_value"] = False

    assert missing(changed(demo_case, in_piece(unweighed))) == []


def test_an_unmarked_piece_needs_no_photograph_of_marks(demo_case: Case) -> None:
    jug = demo_case.pieces[5]
    assert not jug.marks
    assert not any(p.shows == "marks" for p in jug.photographs)
