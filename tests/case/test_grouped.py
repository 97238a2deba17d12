from planish.case import Case, missing
from planish.case.grouped import gaps, numbered, warnings
from planish.case.load import parse
from planish.case.work import work

BARE = '[case]\nnumber = "1"\ntitle = "x"\n' + "".join(
    f'[[piece]]\nnumber = {n}\ntitle = "x"\n' for n in (7, 1, 2)
)


def test_numbers_of_pieces_are_written_as_people_do() -> None:
    assert numbered([3]) == "piece 3"
    assert numbered([2, 1, 3, 7, 9, 10]) == "pieces 1-3, 7, 9-10"


def test_each_gap_stands_once_and_none_is_lost() -> None:
    found = missing(parse(BARE))
    told = gaps(found)

    assert {gap.rule for _, gap in told} == {gap.rule for gap in found}
    assert len({gap.rule for _, gap in told}) == len(told)
    assert {where for where, gap in told if gap.piece is not None} == {"pieces 1-2, 7"}
    assert all(gap.piece is None for where, gap in told if not where)


def test_each_warning_stands_once_with_its_pieces(demo_case: Case) -> None:
    worked = work(demo_case)
    told = warnings(worked)

    assert len({says for _, says in told}) == len(told)
    assert {says for _, says in told} == {
        *worked.warnings, *(says for w in worked.pieces for says in w.warnings)
    }  # fmt: skip
