"""Words for pictures: wider, narrower and unlike devices."""

from planish.library.rows import Confidence, Device
from planish.marks.thesaurus import UNRELATED, Thesaurus, words


def device(id_: str, label: str, said: str = "", broader: str = "", worn: str = "") -> Device:
    return Device(
        id=id_, label=label, words=said, broader=broader, worn_as=worn,
        source="practice", confidence=Confidence.PRACTICE,
    )  # fmt: skip


LIONS = Thesaurus(
    [
        device("leopards-head", "leopard's head", "leopard; leopard face"),
        device("crowned", "leopard's head crowned", "crowned leopard", "leopards-head"),
        device("uncrowned", "leopard's head uncrowned", "", "leopards-head"),
        device("tent", "tent", "tepee", worn="mountain"),
        device("mountain", "mountain", "mount; peak"),
        device("anchor", "anchor"),
    ]
)


def test_words_drop_filler_and_possessive() -> None:
    assert words("The Leopard’s head, crowned") == ("leopard", "head", "crowned")


def test_order_of_words_does_not_matter() -> None:
    assert LIONS.chances("crowned leopard's head") == LIONS.chances("leopard's head crowned")


def test_a_wider_word_speaks_for_each_narrower_device() -> None:
    said = LIONS.chances("leopard's head")
    assert said["leopards-head"] > said["crowned"] == said["uncrowned"] > 100 * UNRELATED


def test_a_narrow_word_speaks_against_its_sibling() -> None:
    said = LIONS.chances("leopard's head crowned")
    assert said["crowned"] > 20 * said["uncrowned"]


def test_what_a_worn_shape_is_taken_for() -> None:
    assert LIONS.chances("peak")["tent"] > 20 * UNRELATED
    assert "anchor" not in LIONS.chances("peak")


def test_unknown_words_name_nothing() -> None:
    assert LIONS.chances("helicopter") == {}


def test_a_plural_names_what_its_singular_names() -> None:
    assert LIONS.named("anchors") == {"anchor": 1.0}


def test_wider_devices_come_nearest_first_and_a_circle_ends() -> None:
    chain = Thesaurus([device("a", "a", broader="b"), device("b", "b", broader="c"),
                       device("c", "c", broader="a")])  # fmt: skip

    assert chain.ancestors("a") == ("b", "c", "a")
    assert chain.ancestors("unknown") == ()
