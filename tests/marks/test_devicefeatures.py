"""Plain features: what is on record agrees, contradicts or is silent."""

import pytest

from planish.library.rows import Confidence, Device
from planish.marks.devicefeatures import UnknownFeatureError, by_features, parse_feature


def device(id_: str, features: str) -> Device:
    return Device(id=id_, label=id_, features=features, source="practice",
                  confidence=Confidence.PRACTICE)  # fmt: skip


LION = device("lion", "facing=left;crowned=no;posture=walking")
CROWNED = device("crowned", "facing=left;crowned=yes;holds=axe")
SILENT = device("silent", "facing=left")
RIGHT = device("right", "facing=right;crowned=yes;iconclass=25F")
ALL = [LION, CROWNED, SILENT, RIGHT]


def ids(asked: list[str], outline: str = "") -> list[str]:
    shapes = {"lion": frozenset({"oval"}), "right": frozenset({"lozenge"})}
    return [f.device.id for f in by_features(ALL, asked, outline, shapes)]


def test_what_contradicts_is_left_out_and_what_is_silent_comes_last() -> None:
    assert ids(["facing left", "crowned"]) == ["crowned", "silent"]
    fit = by_features(ALL, ["facing left", "crowned"])[1]
    assert fit.agrees == ("facing left",)
    assert fit.unrecorded == ("crowned",)


def test_words_of_the_same_meaning() -> None:
    assert ids(["holding a hatchet"]) == ["crowned"]
    assert ids(["passant"]) == ids(["walking"]) == ["lion"]


def test_an_outline_by_any_of_its_names() -> None:
    assert ids([], "diamond") == ["right"]


# dexter is the bearer's right and the viewer's left: Parker, "A Glossary of Terms used in Heraldry"
# (from memory)
@pytest.mark.parametrize(
    ("said", "feature"),
    [
        ("dexter", ("facing", "left")),
        ("Sunken", ("raised", "no")),
        ("pair", ("count", "2")),
        ("with a crown", ("crowned", "yes")),
        ("heads=2", ("heads", "2")),
        ("holds axe", None),
    ],
)
def test_features_in_words(said: str, feature: tuple[str, str] | None) -> None:
    assert parse_feature(said) == feature


@pytest.mark.parametrize("said", ["purple", "iconclass=25F", "swimming"])
def test_what_no_device_records_is_refused(said: str) -> None:
    with pytest.raises(UnknownFeatureError, match=said):
        by_features([LION, SILENT] if said == "swimming" else ALL, [said])


def test_an_outline_that_no_mark_has_is_refused() -> None:
    with pytest.raises(UnknownFeatureError, match="outline star"):
        ids([], "star")
