import tomllib
from collections.abc import Callable
from pathlib import Path

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from planish.case import Case, CaseFaults, load, parse

Fault = Callable[..., str]
Faults = Callable[..., list[str]]

JPEG = b"\xff\xd8\xff\xe0" + b"\0" * 40


def test_a_small_case_loads(small: str) -> None:
    case = parse(small)
    assert case.case.title == "Small"
    assert [p.number for p in case.pieces] == [1]


@pytest.mark.parametrize(
    ("added", "line"),
    [
        (
            'condtion = "worn"',
            "line 10, piece 1, condtion: unknown key; did you mean 'condition'?",
        ),
        (
            '[[piece.marks]]\ntext = "A"',
            "line 10, piece 1, marks: unknown key; did you mean 'mark'?",
        ),
        (
            '[[piece.mark]]\ntext = "A"\n[[piece.mark]]\nlegibility = "wron"',
            (
                "line 13, piece 1, mark 2, legibility: 'wron' is not a word known here;"
                " did you mean 'worn'?"
            ),
        ),
        (
            '[piece.weight]\ngross = "12 grans"',
            (
                "line 11, piece 1, weight, gross: '12 grans': unit 'grans' is not known;"
                " write g, kg, mg, ozt, dwt, gr, oz, lb, lbt or ct"
            ),
        ),
        (
            '[piece.weight]\ngross = "412.6"',
            (
                "line 11, piece 1, weight, gross: '412.6': the unit is missing;"
                " write g, kg, mg, ozt, dwt, gr, oz, lb, lbt or ct"
            ),
        ),
        (
            "[piece.weight]\ngross = 412.6",
            (
                "line 11, piece 1, weight, gross: 412.6 is a bare number where a mass with its unit"
                ' is expected; write it like "412.6 g"'
            ),
        ),
        (
            '[piece.weight]\ngross = "9 g"\nfineness = 9250',
            (
                "line 12, piece 1, weight, fineness: fineness 9250 is not in parts per thousand;"
                " did you mean 925?"
            ),
        ),
        (
            '[piece.weight]\ngross = "9 g"\nfineness = 0.925',
            (
                "line 12, piece 1, weight, fineness: fineness 0.925 is not in parts per thousand;"
                " did you mean 925?"
            ),
        ),
        (
            '[piece.confirmed]\nkind = "solid"\nreason = "marks"\nyear_from = 17760',
            (
                "line 13, piece 1, confirmed, year_from: 17760 is not a year between 1000 and 2200;"
                " did you mean 1776?"
            ),
        ),
        (
            '[piece.confirmed]\nkind = "solid"\nreason = "x"\nyear_from = 1885\nyear_to = 1884',
            (
                "line 14, piece 1, confirmed, year_to: year_to 1884 is before year_from 1885;"
                " put the earlier year first"
            ),
        ),
        (
            '[piece.acquired]\ndate = "17760"',
            (
                "line 11, piece 1, acquired, date: '17760': '17760' is not a year from 1 to 2200;"
                " did you mean 1776?"
            ),
        ),
        (
            '[piece.acquired]\ncost = "QQQ 120"',
            (
                "line 11, piece 1, acquired, cost: 'QQQ 120': currency 'QQQ' is not known;"
                " write an ISO 4217 code and the amount, like USD 1,234.50"
            ),
        ),
        (
            '[piece.opinion]\nvalue = "GBP 120"',
            (
                "line 11, piece 1, opinion, value: GBP stands here, the case is in USD;"
                " state all opinions in USD"
            ),
        ),
        (
            '[piece.opinion]\nlow = "USD 90"\nvalue = "USD 80"\nhigh = "USD 95"',
            (
                "line 12, piece 1, opinion, value: 'value' is below 'low';"
                " a range runs low, value, high"
            ),
        ),
        (
            '[piece.opinion]\nlow = "USD 90"\nvalue = "USD 95"',
            "line 11, piece 1, opinion, low: 'low' stands alone; give both low and high",
        ),
        (
            '[piece.opinion]\ncomputed = true\nvalue = "USD 95"',
            (
                "line 10, piece 1, opinion: the figure is both given and computed;"
                " take out computed or the figures"
            ),
        ),
        (
            'quantity = "six"',
            (
                "line 10, piece 1, quantity: 'six' is a text where a whole number is expected;"
                " take off quotes and unit"
            ),
        ),
        (
            "quantity = 0",
            "line 10, piece 1, quantity: 0 is out of bounds; write a number from 1 to 100000",
        ),
        (
            'note = ["a"]',
            ("line 10, piece 1, note: a list stands where a text is expected; write a text there"),
        ),
        (
            "complete = nan",
            "line 10, piece 1, complete: nan is not a finite number; write a plain number",
        ),
        (
            'provenance = "from an aunt"',
            (
                "line 10, piece 1, provenance: a text stands where a list is expected;"
                " write [[piece.provenance]]"
            ),
        ),
        (
            '[[piece.dimension]]\nname = "height"\nvalue = "14 feet"',
            (
                "line 12, piece 1, dimension 1, value: length '14 feet' has an unknown unit;"
                " write it like '14.2 cm'"
            ),
        ),
        (
            (
                '[piece.weight]\ngross = "10 g"\n[[piece.weight.deduction]]\nkind = "stone"\n'
                'what = "agate"\nmass = "12 g"'
            ),
            (
                "line 10, piece 1, weight: the deductions (12 g) are more than the gross weight (10 g);"
                " check the units and figures"
            ),
        ),
        (
            (
                '[piece.weight]\ngross = "10 g"\n[[piece.weight.deduction]]\nkind = "stone"\n'
                'what = "agate"\nmass = "2 g"\nlow = "1 g"\nhigh = "3 g"'
            ),
            (
                "line 12, piece 1, weight, deduction 1: the deduction says mass and low;"
                " give either mass, or low and high, or share_low and share_high"
            ),
        ),
        (
            'note = "\\u001b[2Jx"\nnote2 = "y"',
            "line 11, piece 1, note2: unknown key; did you mean 'note'?",
        ),
    ],
)
def test_one_fault_is_one_line_with_place_and_remedy(
    small: str, fault: Fault, added: str, line: str
) -> None:
    assert fault(f"{small}{added}\n") == line


def test_all_faults_are_told_at_once_in_the_order_of_the_file(small: str, faults: Faults) -> None:
    text = small.replace('title = "Small"', "titel = 3").replace("number = 1", 'number = "one"')
    lines = faults(text + "zzz = 1\n")
    assert lines[:2] == [
        "line 3, [case], titel: unknown key; did you mean 'title'?",
        (
            "line 7, piece 1, number: 'one' is a text where a whole number is expected;"
            " take off quotes and unit"
        ),
    ]
    assert lines[2].startswith("line 10, piece 1, zzz: unknown key; known here: number, title,")
    assert len(lines) == 3


def test_a_year_that_is_none_is_not_compared_with_another(small: str, fault: Fault) -> None:
    years = "year_from = 17760\nyear_to = 1885\n"
    assert fault(f'{small}[piece.confirmed]\nkind = "solid"\nreason = "x"\n{years}') == (
        "line 13, piece 1, confirmed, year_from: 17760 is not a year between 1000 and 2200;"
        " did you mean 1776?"
    )


def test_a_fault_holds_nothing_that_a_terminal_obeys(small: str, fault: Fault) -> None:
    told = fault(small + '[piece.weight]\ngross = "\\u001b[2J"\n')
    assert "\\x1b[2J" in told
    assert told.isprintable()


def test_a_key_that_is_mistyped_is_not_told_as_missing_too(small: str, fault: Fault) -> None:
    assert fault(small.replace("title =", "titel =", 1)) == (
        "line 3, [case], titel: unknown key; did you mean 'title'?"
    )
    assert fault(small.replace("[[piece]]", "[[pieces]]")) == (
        "line 6, pieces: unknown key; did you mean 'piece'?"
    )


IDENTIFIED = '[case]\nnumber = "1"\ntitle = "x"\nreport_option = "identification"\n'
ONE = '[[piece]]\nnumber = 1\ntitle = "x"\n'


@pytest.mark.parametrize(
    ("text", "where"),
    [
        (f'{IDENTIFIED}type_of_value = "market value"\n{ONE}', "line 5, [case], type_of_value"),
        (
            f'{IDENTIFIED}[metal_price]\nprice = "USD 3"\ndate = 2026-03-02\nsource = "x"\n{ONE}',
            "line 5, metal_price",
        ),
        (f'{IDENTIFIED}{ONE}[piece.opinion]\nvalue = "USD 3"\n', "line 8, piece 1, opinion"),
    ],
)
def test_an_identification_that_states_a_value_is_told(text: str, where: str, fault: Fault) -> None:
    assert fault(text) == (
        f"{where}: an identification states no value; take this out, or choose another report_option"
    )


def test_an_empty_file_lacks_a_case_and_a_piece(faults: Faults) -> None:
    assert faults("") == [
        "'case' is missing; add a table [case]",
        (
            "the case holds no piece; add a table [[piece]] with at least 'number = 1' and"
            " 'title = \"...\"'"
        ),
    ]


def test_piece_numbers_are_unique(small: str, fault: Fault) -> None:
    again = '\n[[piece]]\nnumber = 1\ntitle = "Fork"\n'
    assert fault(small + again) == (
        "line 12, piece 2, number: number 1 is already that of the piece in place 1;"
        " give each piece a number of its own"
    )


def test_a_piece_is_named_by_its_own_number(small: str, fault: Fault) -> None:
    text = small.replace("number = 1", "number = 40") + "quantity = 0\n"
    assert fault(text).startswith("line 10, piece 40, quantity:")


@pytest.mark.parametrize(
    ("text", "line"),
    [
        (
            "[case]\ntitle: 3\n",
            (
                "line 2: not TOML: Expected '=' after a key in a key/value pair;"
                " write 'key = value' with an equals sign"
            ),
        ),
        (
            "[case]\ntitle = Small\n",
            'line 2: not TOML: Invalid value; put texts in quotes: key = "..."',
        ),
        (
            "[case]\ntitle = “Small”\n",
            'line 2: not TOML: Invalid value; write straight quotes " instead of curly ones',
        ),
        (
            "[case]\nreport_date = 2026-13-01\n",
            (
                "line 2: not TOML: Expected newline or end of document after a statement;"
                " there is no such day: dates read 2026-05-14"
            ),
        ),
        (
            "[case]\n[case]\n",
            (
                "line 2: not TOML: Cannot declare ('case',) twice; the same key or table stands twice;"
                " repeated tables are written [[piece]]"
            ),
        ),
    ],
)
def test_a_fault_of_syntax_names_its_line_and_a_remedy(fault: Fault, text: str, line: str) -> None:
    assert fault(text) == line


def test_an_unfinished_text_is_placed_at_the_end(fault: Fault) -> None:
    assert fault('[case]\nnumber = "7\n').startswith("line 2: not TOML: ")
    assert fault('[case]\nnumber = """7\n') == (
        "line 3: not TOML: Unterminated string; close the text with the same quotes that open it"
    )


def test_deep_nesting_is_refused_and_does_not_crash(fault: Fault) -> None:
    says = fault("a = " + "[" * 100_000)
    assert says == (
        "brackets nested too deep, or a number too long to read; a case file needs neither"
    )


def test_a_number_of_many_figures_is_refused_in_a_short_line(small: str, faults: Faults) -> None:
    lines = faults(f"{small}quantity = {'9' * 5000}\n")
    assert len(lines) == 1
    assert len(lines[0]) < 200


def test_a_newer_format_is_named(small: str, fault: Fault) -> None:
    assert fault("format = 2\n" + small) == (
        "line 1, format: the file has format 2, this program knows format 1;"
        " use the program that wrote it, or a newer one"
    )


def load_faults(path: Path) -> list[str]:
    with pytest.raises(CaseFaults) as caught:
        load(path)
    return str(caught.value).splitlines()


def test_a_missing_file(tmp_path: Path) -> None:
    assert load_faults(tmp_path / "none.toml") == [
        "none.toml: no such file; check the name, or begin one with 'planish new'"
    ]


def test_a_folder_is_not_a_case_file(tmp_path: Path) -> None:
    assert load_faults(tmp_path) == [
        f"{tmp_path.name}: this is a folder; name the case file in it, usually case.toml"
    ]


def test_forty_megabytes_are_refused_before_parsing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "case.toml"
    with path.open("wb") as stream:
        stream.truncate(40_000_000)
    monkeypatch.setattr(tomllib, "loads", lambda _: pytest.fail("parsed"))
    monkeypatch.setattr(Path, "read_bytes", lambda _: pytest.fail("read"))
    assert load_faults(path) == [
        (
            "case.toml: the file has 40.0 MB, more than 5 MB;"
            " a case file holds words only: keep photographs beside it and name them"
        )
    ]


def test_a_file_that_is_not_utf8_names_the_line(tmp_path: Path, small: str) -> None:
    path = tmp_path / "case.toml"
    path.write_bytes(small.replace("Spoon", "Löffel").encode("latin-1"))
    assert load_faults(path) == [
        "case.toml: line 8: byte 0xf6 is not UTF-8; save the file as UTF-8"
    ]
    path.write_bytes(small.encode("utf-16"))
    assert load_faults(path) == ["case.toml: the text is UTF-16; save it as UTF-8"]


def test_a_byte_order_mark_and_windows_line_ends_do_no_harm(tmp_path: Path, small: str) -> None:
    path = tmp_path / "case.toml"
    path.write_bytes(b"\xef\xbb\xbf" + small.replace("\n", "\r\n").encode())
    assert load(path) == parse(small)


PICTURE = '[[piece.photograph]]\nfile = "{}"\n'


@pytest.mark.parametrize(
    ("name", "says"),
    [
        ("Marks.jpeg", "no such file beside the case file; did you mean 'marks.jpg'?"),
        ("zzz.png", "no such file beside the case file; add it or mend it"),
        ("../marks.jpg", "the path leaves the case's folder; put the picture beside the case file"),
        ("link.jpg", "the path leaves the case's folder by a link; copy the picture into the folder"),
        ("/etc/passwd", ("the path is absolute; put the picture beside the case file and name it"
         " from there")),
        ("C:/marks.jpg", ("the path is absolute; put the picture beside the case file and name it"
         " from there")),
        ("text.jpg", "the file is no picture; save the picture as JPEG, PNG or WebP"),
        ("phone.heic", ("the file is a HEIC or other camera container;"
         " save the picture as JPEG, PNG or WebP")),
        ("empty.jpg", "the file is an empty file; save the picture as JPEG, PNG or WebP"),
        ("sub", "this is not a file; name the picture itself"),
    ],
)  # fmt: skip
def test_a_photograph_is_looked_for_and_looked_at(
    tmp_path: Path, small: str, fault: Fault, name: str, says: str
) -> None:
    home = tmp_path / "case"
    (home / "sub").mkdir(parents=True)
    (tmp_path / "outside.jpg").write_bytes(JPEG)
    (home / "marks.jpg").write_bytes(JPEG)
    (home / "text.jpg").write_text("not a picture")
    (home / "phone.heic").write_bytes(b"\0\0\0\x18ftypheic" + b"\0" * 20)
    (home / "empty.jpg").write_bytes(b"")
    (home / "link.jpg").symlink_to(tmp_path / "outside.jpg")
    line = fault(small + PICTURE.format(name), home)
    assert line == f"line 11, piece 1, photograph 1, file: photograph '{name}': {says}"


def test_a_photograph_in_the_folder_is_accepted(tmp_path: Path, small: str) -> None:
    (tmp_path / "p").mkdir()
    (tmp_path / "p/marks.jpg").write_bytes(JPEG)
    path = tmp_path / "case.toml"
    path.write_text(small + PICTURE.format("p/marks.jpg"))
    assert load(path).pieces[0].photographs[0].file == "p/marks.jpg"


def test_a_mark_shows_in_a_photograph_of_its_piece(small: str, fault: Fault) -> None:
    text = small + PICTURE.format("marks.jpg") + '[[piece.mark]]\nphotograph = "mark.jpg"\n'
    assert fault(text) == (
        "line 13, piece 1, mark 1, photograph: 'mark.jpg' is not among the piece's photographs;"
        " did you mean 'marks.jpg'?"
    )


def test_a_case_comes_back_from_plain_data_as_it_was(demo_case: Case) -> None:
    again = msgspec.convert(msgspec.json.decode(msgspec.json.encode(demo_case)), Case)
    assert again == demo_case


def test_dates_may_stand_with_or_without_quotes(small: str) -> None:
    bare = small.replace("[case]", "[case]\neffective_date = 2026-05-14")
    assert parse(bare) == parse(bare.replace("2026-05-14", '"2026-05-14"'))


SCALARS = st.one_of(
    st.integers(),
    st.floats(),
    st.booleans(),
    st.text(max_size=8),
    st.lists(st.integers(), max_size=2),
)
KEYS = st.sampled_from(
    [
        "number",
        "title",
        "form",
        "quantity",
        "mark",
        "weight",
        "confirmed",
        "opinion",
        "comparable",
        "photograph",
        "searched",
        "test",
        "part",
        "provenance",
        "acquired",
        "attributes",
        "complete",
        "restricted",
        "dimension",
        "case",
        "currency",
        "inspection",
        "report_date",
        "gross",
        "fineness",
        "value",
        "low",
        "high",
        "kind",
        "year_from",
        "deduction",
        "percent",
        "basis",
    ]
)
TREES = st.recursive(SCALARS, lambda inner: st.dictionaries(KEYS, inner, max_size=5), max_leaves=25)


@given(raw=st.dictionaries(KEYS, TREES, max_size=4), rows=st.lists(TREES, max_size=3))
def test_whatever_the_tables_hold_there_is_a_case_or_faults(
    raw: dict[str, object], rows: list[object], monkeypatch_loads: "Loads"
) -> None:
    monkeypatch_loads({"case": raw, "piece": rows})


Loads = Callable[[dict[str, object]], None]


@pytest.fixture(scope="module")
def monkeypatch_loads() -> Loads:
    """Put raw tables where the TOML parser's result stands and parse them."""

    def loads(raw: dict[str, object]) -> None:
        with pytest.MonkeyPatch.context() as patch:
            patch.setattr(tomllib, "loads", lambda _: raw)
            try:
                parse("")
            except CaseFaults as told:
                lines = str(told).splitlines()
            else:
                return
        assert lines
        assert all(len(line) < 1500 and line.isprintable() for line in lines)

    return loads
