import tomllib

from hypothesis import given
from hypothesis import strategies as st

from planish.case.faults import Steps
from planish.case.places import Places

TEXT = '''\
# [[piece]] in a note is no table
format = 1
[case]
title = """
[[piece]]
not = "a table"
"""
note = 'it''s'
[[piece]] # one
number = 1
[[piece.mark]]
text = "a # b"
[[piece.mark]]
text = "B"
[piece.weight]
gross = "1 g"
[[piece.weight.deduction]]
kind = "stone"
[[piece]]
dimension = [
  { name = "h", value = "1 cm" }, # ]
  { name = "w" },
]
"quoted key".deep = 3
provenance = []
'''.replace("'it''s'", "'its'")


def test_tables_and_keys_have_their_lines() -> None:
    tomllib.loads(TEXT)
    line = Places(TEXT).line
    assert line(("format",)) == 2
    assert line(("case", "title")) == 4
    assert line(("case", "note")) == 8
    assert line(("piece", 0)) == 9
    assert line(("piece", 0, "mark", 1, "text")) == 14
    assert line(("piece", 0, "weight", "gross")) == 16
    assert line(("piece", 0, "weight", "deduction", 0, "kind")) == 18
    assert line(("piece", 1)) == 19
    assert line(("piece", 1, "quoted key", "deep")) == 24
    assert line(("piece", 1, "provenance")) == 25


def test_what_stands_inside_a_value_is_placed_at_its_key() -> None:
    assert Places(TEXT).line(("piece", 1, "dimension", 1, "name")) == 20


def test_what_is_not_in_the_text_has_the_line_of_the_table_above_it_or_none() -> None:
    line = Places(TEXT).line
    assert line(("piece", 0, "weight", "resolution")) == 15
    assert line(("metal_price",)) is None


NAMES = st.sampled_from(["a", "b-1", "c_2"])
VALUES = st.one_of(
    st.integers().map(str),
    st.booleans().map(lambda b: str(b).lower()),
    st.text("ab #[]{}='\n", max_size=9).filter(lambda s: "'" not in s).map(lambda s: f"'''{s}'''"),
    st.text("ab #[]{}='", max_size=9).map(lambda s: f'"{s}"'),
    st.lists(st.integers(), max_size=3).map(lambda v: "[\n" + ",\n".join(map(str, v)) + "\n]"),
)


@given(st.lists(st.dictionaries(NAMES, VALUES, min_size=1), min_size=1, max_size=4))
def test_every_key_of_a_written_file_is_found_on_its_line(
    tables: list[dict[str, str]],
) -> None:
    lines: list[str] = []
    expected: dict[Steps, int] = {}
    for n, table in enumerate(tables):
        lines.append("[[t]]")
        expected["t", n] = len(lines)
        for key, value in table.items():
            expected["t", n, key] = len(lines) + 1
            lines += f"{key} = {value}".split("\n")
    text = "\n".join(lines)
    tomllib.loads(text)
    places = Places(text)
    assert {steps: places.line(steps) for steps in expected} == expected
