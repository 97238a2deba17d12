"""Contents of signs: what a mark may show, and how well."""

from planish.library import load
from planish.marks import Mark
from planish.marks.contents import NEVER, Contents
from planish.marks.seen import digest
from planish.marks.thesaurus import Thesaurus

THESAURUS = Thesaurus(load().devices)
KNOWN = frozenset({"STERLING", "EPNS"})


def ratio(contents: Contents, number: int, mark: Mark) -> float:
    return contents.ratios(digest(mark, THESAURUS, KNOWN)).get(number, NEVER)


def test_equal_contents_share_a_number() -> None:
    contents = Contents()
    assert contents.add("text", "STERLING") == contents.add("text", "STERLING")
    assert contents.add("text", "STERLING") != contents.add("text", "COIN")


def test_a_word_speaks_for_its_sign_however_it_is_spelled() -> None:
    contents = Contents()
    epns = contents.add("text", "EPNS|E.P.N.S.")
    assert ratio(contents, epns, Mark(text="E.P.N.S.")) > 100
    assert ratio(contents, epns, Mark(text="STERLING")) <= NEVER


def test_a_worn_word_still_speaks() -> None:
    contents = Contents()
    sterling = contents.add("text", "STERLING")
    assert ratio(contents, sterling, Mark(text="ST[.]RLI[..]")) > 10


def test_figures_in_thousandths_are_the_number() -> None:
    contents = Contents()
    number = contents.add("number", "925")
    for text in ("925", ".925", "925/1000"):
        assert ratio(contents, number, Mark(text=text)) > 100, text
    assert ratio(contents, number, Mark(text="800")) <= NEVER


def test_a_wider_word_speaks_less_than_the_exact_one() -> None:
    contents = Contents()
    crowned = contents.add("device", "leopards-head-crowned")
    exact = ratio(contents, crowned, Mark(device="leopard's head crowned"))
    wide = ratio(contents, crowned, Mark(device="leopard's head"))
    assert exact > wide > 1


def test_a_mark_that_cannot_be_read_says_nothing() -> None:
    contents = Contents()
    lion = contents.add("device", "lion-passant")
    assert ratio(contents, lion, Mark()) == 1.0


def test_rare_spellings_share_what_the_usual_one_has() -> None:
    contents = Contents()
    alone = contents.add("text", "COIN")
    listed = contents.add("text", "PURE COIN|COIN")
    mark = Mark(text="COIN")
    known = frozenset({"COIN", "PURECOIN"})
    ratios = contents.ratios(digest(mark, THESAURUS, known))
    assert ratios[alone] > ratios[listed]
