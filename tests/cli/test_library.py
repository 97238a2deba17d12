import json

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planish.cli import main
from planish.cli.lookup import letters, near, search
from planish.library import load
from planish.library.rows import Source


def source(key: str, title: str) -> Source:
    return Source(key=key, title=title, kind="book")


ROWS = [source("A", "Old silver"), source("OLD", "Plate"), source("B", "Golden silverware")]
LOOK_UPS = ["system", "cycle", "device", "maker", "fineness", "word", "form", "spot", "rule", "trait",
            "design", "source"]  # fmt: skip


def test_a_name_comes_before_words_and_words_before_parts() -> None:
    assert [r.key for r in search(ROWS, ("key", "title"), "old")] == ["OLD", "A", "B"]


def test_every_word_must_occur() -> None:
    assert [r.key for r in search(ROWS, ("title",), "silver old")] == ["A", "B"]
    assert search(ROWS, ("title",), "silver plate") == []


def test_a_near_name_is_offered() -> None:
    assert near(ROWS, ("key", "title"), "old silvr") == ["Old silver"]
    assert near(ROWS, ("key", "title"), "tankard") == []


@settings(max_examples=30, deadline=None)
@given(st.text(max_size=30))
def test_any_query_is_answered(query: str) -> None:
    search(ROWS, ("key", "title"), query)
    letters(load(), query)


# London's letter of 1756-57 is a black-letter capital A: Hayden, "Chats on Old Silver" (1915),
# appendix, table of London.
def test_a_year_and_a_place_give_the_letter() -> None:
    found, place = letters(load(), "London 1756")

    assert place == "London"
    assert [f.letter.letters for f in found] == [("A",)]


def test_a_letter_gives_its_years_in_order() -> None:
    years = [f.letter.first_year for f in letters(load(), "london k")[0]]

    assert len(years) > 5
    assert years == sorted(years)


@pytest.mark.parametrize(
    "arguments",
    [
        *([name] for name in LOOK_UPS),
        ["system", "england"],
        ["system", "--country", "SE", "--year", "1890"],
        ["device", "lion"],
        ["device", "--feature", "sunk"],
        ["fineness", "925"],
        ["form", "teapot"],
        ["source", "chaffers"],
        ["cycle", "Birmingham"],
        ["design", "631976"],
        ["design", "--diamond", "K", "H", "7", "5"],
    ],
)
def test_pages_fit_80_columns(arguments: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["library", *arguments]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert lines
    assert lines[0]
    assert all(len(line) <= 80 for line in lines)


@pytest.mark.parametrize(
    "arguments",
    [["system", "GB-ENG"], ["cycle", "London 1756"], ["rule", "duty"], ["trait", "EPNS"]],
)
def test_the_sources_stand_last_with_their_titles(
    arguments: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["library", *arguments]) == 0
    out = capsys.readouterr().out
    _, _, tail = out.partition("\nSources\n")
    titles = {s.key: s.title for s in load().sources}
    first = tail.split()[0]

    assert titles[first].split()[0] in tail
    assert "not in the bibliography" not in tail


def told(arguments: list[str], capsys: pytest.CaptureFixture[str]) -> list[dict[str, object]]:
    assert main(["library", *arguments, "--json"]) == 0
    found = json.loads(capsys.readouterr().out)
    assert isinstance(found, list)
    return found


@pytest.mark.parametrize("name", LOOK_UPS)
def test_json_is_complete(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    tables = {
        "cycle": "offices", "fineness": "words", "word": "words",
    }  # fmt: skip
    rows = getattr(load(), tables.get(name, f"{name}s"))
    fields = set(rows[0].__struct_fields__)
    found = told([name], capsys)

    if name != "cycle":
        assert len(found) == len(rows)
    for one in found:
        assert fields <= set(one)
        if name != "source":
            assert one["sources"]
            assert all(s["title"] for s in one["sources"])  # type: ignore[attr-defined]


def test_json_of_a_letter_names_office_and_cycle(capsys: pytest.CaptureFixture[str]) -> None:
    (one,) = told(["cycle", "London", "1756"], capsys)

    assert one["office_name"] == "London"
    assert one["cycle"]["sources"]  # type: ignore[index]


def test_more_than_twenty_are_counted(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["library", "source"]) == 0
    short = capsys.readouterr().out
    assert main(["library", "source", "--all"]) == 0
    assert len(capsys.readouterr().out) > len(short)
    assert f"{len(load().sources) - 20} more" in short


# Systems


def test_a_country_and_a_year_give_what_was_struck_there(
    capsys: pytest.CaptureFixture[str],
) -> None:
    found = told(["system", "--country", "se", "--year", "1890"], capsys)
    solid = next(s for s in found if s["kind"] == "solid")

    assert all(s["country"] == "SE" for s in found)
    assert all(s["year_from"] <= 1890 <= (s["year_to"] or 9999) for s in found)  # type: ignore[operator]
    # Sweden's date mark of 1890 is M6: Swedish Assay Office, published list of year letters
    assert "M6" in {s["value"] for s in solid["signs"]}  # type: ignore[attr-defined]


def test_a_country_is_two_letters(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["library", "system", "--country", "Sweden"]) == 2
    assert "write two letters" in capsys.readouterr().err


# Devices


def test_ordinary_words_lead_to_a_device_and_say_why(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["library", "device", "tent"]) == 0
    out = capsys.readouterr().out

    assert out.startswith("tent [tent]\n")
    assert "worn, looks like tent" in out
    assert "GB-IMPORT Birmingham import" in out


def test_features_narrow_down_and_what_is_not_on_record_is_said(
    capsys: pytest.CaptureFixture[str],
) -> None:
    found = told(["device", "--feature", "facing left", "--feature", "crowned"], capsys)
    ids = [f["id"] for f in found]

    assert ids.index("lion-passant-crowned") < ids.index("st-eriks-head")
    assert "coronation-1953-head" not in ids  # faces right
    assert "lion-passant" not in ids  # on record as not crowned
    st_erik = found[ids.index("st-eriks-head")]
    assert "not on record: facing left" in str(st_erik["why"])


def test_an_unknown_feature_names_those_on_record(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["library", "device", "--feature", "smells nice"]) == 2
    err = capsys.readouterr().err
    assert "facing" in err
    assert "posture" in err


def test_no_row_is_no_proof(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["library", "device", "helicopter"]) == 2
    err = capsys.readouterr().err
    assert err.startswith("planish: device 'helicopter': not in the library, which proves nothing")


def test_a_misspelt_word_is_read_and_said(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["library", "device", "lion pasant"]) == 0
    out = capsys.readouterr().out
    assert out.startswith("Perhaps misspelt: 'pasant' read as 'passant'.\n")
    assert "lion passant [lion-passant]" in out


def test_what_is_not_named_so_is_not_passed_off_as_it(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert main(["library", "device", "zebra"]) == 0
    assert capsys.readouterr().out.startswith("No device is named 'zebra'; the nearest")
    assert main(["library", "device", "tiger"]) == 0
    assert capsys.readouterr().out.startswith("tiger [tiger]\n")


def test_a_fact_of_common_practice_says_so_once(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["library", "device", "lion"]) == 0
    assert "practice (common practice" not in capsys.readouterr().out


# Makers


def test_lost_letters_of_a_mark(capsys: pytest.CaptureFixture[str]) -> None:
    found = told(["maker", "W[.]", "--place", "London", "--year", "1780"], capsys)

    assert found
    for one in found:
        letters_of = [m for m in str(one["marks"]).split(";") if m.strip().startswith("W")]
        assert any(sum(c.isalpha() for c in m) == 2 for m in letters_of)
        assert "London" in str(one["place"])
        assert (one["year_from"] or 0) <= 1780 <= (one["year_to"] or 9999)  # type: ignore[operator]


def test_a_gap_is_any_number_of_letters(capsys: pytest.CaptureFixture[str]) -> None:
    one = {m["id"] for m in told(["maker", "H[.]", "--country", "GB"], capsys)}
    several = {m["id"] for m in told(["maker", "H[---]", "--country", "GB"], capsys)}

    assert one < several


# Hester Bateman entered HB in script: Grimwade, "London Goldsmiths" (from memory)
def test_a_whole_mark_and_a_name(capsys: pytest.CaptureFixture[str]) -> None:
    by_mark = told(["maker", "HB", "--place", "London"], capsys)
    by_name = told(["maker", "Hester Bateman"], capsys)

    assert any(m["name"] == "Hester Bateman" and m["by"] == "mark" for m in by_mark)
    assert by_name[0]["name"] == "Hester Bateman"
    assert by_name[0]["by"] == "name"


def test_a_maker_elsewhere_is_said_to_be_elsewhere(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["library", "maker", "Hester Bateman", "--year", "1900"]) == 2
    assert "on record, none of this place, country and year" in capsys.readouterr().err


def test_a_mark_that_cannot_be_read_says_how_to_write_it(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert main(["library", "maker", "W[."]) == 2
    assert "[.] is one lost letter" in capsys.readouterr().err


def test_succession_is_told_both_ways() -> None:
    from planish.cli.library.makers import succession  # noqa: PLC0415
    from planish.library.rows import Confidence, Maker  # noqa: PLC0415

    def maker(id_: str, succeeds: str = "", family: str = "") -> Maker:
        return Maker(id=id_, name=id_, country="GB", succeeds=succeeds, family=family,
                     source="memory", confidence=Confidence.MEMORY)  # fmt: skip

    kin = succession((maker("a", family="A"), maker("b", "a", "A"), maker("c", "b;x")))

    assert kin["a"] == {"carried_on_from": [], "carried_on_by": ["b"], "of_the_family": ["b"]}
    assert kin["b"] == {"carried_on_from": ["a"], "carried_on_by": ["c"], "of_the_family": ["a"]}
    assert kin["c"]["of_the_family"] == []


# Plain tables


def test_a_number_finds_the_words_whose_limits_hold_it(
    capsys: pytest.CaptureFixture[str],
) -> None:
    ids = {w["id"] for w in told(["fineness", "922"], capsys)}

    assert ids
    assert all(
        (w.low is not None and w.high is not None and w.low <= 922 <= w.high)
        or w.fineness == 922 or "922" in f"{w.text} {w.also} {w.meaning} {w.caution} {w.note}"
        for w in load().words if w.id in ids
    )  # fmt: skip


# Diamond marks: the worked example of the library's own decoder, from The National Archives' guide
def test_a_diamond_and_a_number_are_answered_with_their_year(
    capsys: pytest.CaptureFixture[str],
) -> None:
    (one,) = told(["design", "--diamond", "K", "H", "7", "5", "--class", "IV"], capsys)
    assert one["days"] == ["1857-04-07"]
    number = told(["design", "631976"], capsys)
    assert number[0]["year"] == 1914


def test_bad_points_of_a_diamond(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["library", "design", "--diamond", "K", "H", "?", "5"]) == 2
    assert capsys.readouterr().err.startswith("planish: diamond mark, right point")


def test_rules_of_a_year(capsys: pytest.CaptureFixture[str]) -> None:
    rules = {r["id"]: r for r in told(["rule", "duty", "--year", "1790"], capsys)}

    assert "GB-DUTY-1784" in rules  # the sovereign's head, 1784-1890: Morgan (1852)
    assert all(str(r["date_from"])[:4] <= "1790" for r in rules.values())


def test_a_source_says_what_rests_on_it(capsys: pytest.CaptureFixture[str]) -> None:
    (one,) = told(["source", "HAYDEN1915"], capsys)
    cycles = sum("HAYDEN1915" in c.sources for c in load().cycles)

    assert one["resting"]["cycles"] == cycles > 0  # type: ignore[index]


def test_a_form_tells_years_and_places(capsys: pytest.CaptureFixture[str]) -> None:
    tables = {r["table"] for r in told(["form", "teapot"], capsys)}

    assert tables == {"forms", "spots"}


def test_the_shipped_library_is_sound(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["library", "check"]) == 0
    assert "sound" in capsys.readouterr().out


def test_a_damaged_library_is_named(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr("planish.library.check.problems", lambda _: ["row x: no source", "row y"])

    assert main(["library", "check"]) == 2
    assert capsys.readouterr().err == "planish: row x: no source\nplanish: row y\n"
