import re
import tomllib

import pytest

from planish.case import load, missing, parse, starting_file


def test_the_starting_file_loads_as_a_draft(tmp_path) -> None:  # noqa: ANN001  # pytest's own
    path = tmp_path / "case.toml"
    path.write_text(starting_file("Tea service"), encoding="utf-8")
    case = load(path)
    assert case.case.title == "Tea service"
    assert missing(case)


@pytest.mark.parametrize("title", ['A "quoted" one', "back\\slash", "Zürich · №7", "{braces}"])
def test_any_line_of_text_is_a_title(title: str) -> None:
    case = parse(starting_file(title, number=title))
    assert (case.case.title, case.case.number) == (title, title)


@pytest.mark.parametrize("title", ["", "  ", "two\nlines", "x" * 501, "\x1b[2J"])
def test_what_is_no_line_of_text_is_refused(title: str) -> None:
    with pytest.raises(
        ValueError, match=r"^the title .*; (give|shorten)|^the title .* shorten it$"
    ):
        starting_file(title)


def uncommented() -> str:
    """The starting file with every line used that is offered behind a # sign."""
    offered = re.compile(r"^# ?((\[{1,2}[a-z_.]+\]{1,2}|[a-z_]+ = ).*)$", re.MULTILINE)
    return offered.sub(r"\1", starting_file())


def test_every_line_that_the_starting_file_offers_is_right() -> None:
    text = uncommented()
    assert text.count("[[piece") > 6
    parse(text)


def test_with_every_line_used_few_gaps_are_left() -> None:
    # what is left needs an appraiser's own text or a second photograph
    left = {gap.rule for gap in missing(parse(uncommented()))}
    assert left == {"photograph-marks"}


def test_the_starting_file_names_every_table_of_the_demo(demo_folder) -> None:  # noqa: ANN001
    demo = tomllib.loads((demo_folder / "case.toml").read_text(encoding="utf-8"))
    offered = tomllib.loads(uncommented())
    # a test, a part and a tax use are not what a first case needs
    assert set(demo["piece"][0]) - set(offered["piece"][0]) <= {
        "features",
        "technique",
        "complete",
        "acquired",
        "test",
        "part",
    }
    assert set(demo["case"]) - set(offered["case"]) <= {
        "tax",
        "competence",
        "assumptions",
        "extraordinary_assumptions",
        "notice",
        "report_option",
        "standards",
    }
