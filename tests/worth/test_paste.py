import datetime as dt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planish.quantity import QuantityError
from planish.worth.paste import MAX_CHARACTERS, Draft, drafts, troy
from planish.worth.table import COLUMNS, read_row

WHOLE = (
    "Christie's London 12 June 2019 lot 45, George II coffee pot, Paul de Lamerie 1738, 28 oz,"
    " hammer £42,000 (£52,500 with premium)"
)


def one(text: str, **given: str) -> Draft:
    (draft,) = drafts(text, given)
    return draft


def test_a_whole_line_is_read() -> None:
    draft = one(WHOLE)

    assert dict(draft.cells) == {
        "date": "2019-06-12", "venue": "Christie's London", "lot": "45",
        "title": "George II coffee pot, Paul de Lamerie 1738", "price": "42000", "currency": "GBP",
        "basis": "hammer", "premium": "0.25", "form": "coffee pot", "maker": "Paul de Lamerie",
        "style": "George II", "made": "1738", "gross_g": "870.8973504",
    }  # fmt: skip
    assert (draft.missing, draft.unread) == ((), ())
    assert any("troy ounce" in note for note in draft.notes)
    sale = read_row(draft.cells, 1, dt.date(2026, 1, 1))
    assert sale.premium is not None
    assert sale.price * (1 + sale.premium) == sale.price * 5 / 4


@pytest.mark.parametrize(
    ("said", "basis"),
    [
        ("hammer £500", "hammer"),
        ("knocked down at £500", "hammer"),
        ("£500 hammer", "hammer"),
        ("£500 including buyer's premium", "with-premium"),
        ("£500 incl. premium", "with-premium"),
        ("asked £500", "retail-asked"),
        ("offered at £500", "retail-asked"),
        ("paid £500", "retail-paid"),
        ("private sale £500", "private"),
        ("unsold, top bid £500", "unsold"),
        ("bought in at £500", "unsold"),
        ("net to seller £500", "net-to-seller"),
        ("sold for £500", None),
        ("£500", None),
    ],
)
def test_the_basis_comes_from_words_and_never_from_nothing(said: str, basis: str | None) -> None:
    draft = one(f"A. Saleroom, 12 June 2019, lot 4, salver, {said}")
    assert draft.cells.get("basis") == basis
    assert draft.cells["price"] == "500"
    assert ("basis" in draft.missing) == (basis is None)


@pytest.mark.parametrize(
    ("said", "date"),
    [
        ("12th June 2019", "2019-06-12"),
        ("June 12, 2019", "2019-06-12"),
        ("2019-06-12", "2019-06-12"),
        ("25/06/2019", "2019-06-25"),
        ("06/25/2019", "2019-06-25"),
        ("June 2019", "2019-06"),
        ("05/06/2019", None),
        ("31/13/2019", None),
    ],
)
def test_the_day_of_the_sale(said: str, date: str | None) -> None:
    draft = one(f"A. Saleroom, {said}, lot 4, salver, hammer £500")
    assert draft.cells.get("date") == date
    assert ("date" in draft.missing) == (date is None)


@pytest.mark.parametrize(
    ("said", "column", "value"),
    [
        ("870 g", "gross_g", "870"),
        ("870g net", "net_g", "870"),
        ("weighable 870 g", "net_g", "870"),
        ("gross weight 1,250 g", "gross_g", "1250"),
        ("28oz 10dwt", "gross_g", "886.4490888"),
        ("130 gr", "gross_g", "130"),
        ("1.2 kg", "gross_g", "1200"),
        ("925 silver", "fineness", "925"),
        ("sterling silver", "fineness", "925"),
        ("Britannia standard", "fineness", "958.4"),
        ("800/1000", "fineness", "800"),
        ("a pair of candlesticks", "pieces", "2"),
        ("set of twelve teaspoons", "pieces", "12"),
        ("five-piece tea service", "grouping", "service"),
        ("six table spoons", "pieces", "6"),
        ("engraved with a crest", "engraving", "crest"),
        ("monogrammed", "engraving", "initials"),
        ("erased arms", "engraving", "erased"),
        ("Sheffield plate", "metal", "fused-plate"),
        ("weighted base", "metal", "filled"),
        ("replaced finial", "faults", "replaced-part"),
        ("attributed to Ann Smith", "attribution", "attributed"),
        ("by Ann Smith, London", "maker", "Ann Smith"),
        ("c. 1760", "made", "1760~"),
        ("Victorian", "style", "Victorian"),
    ],
)
def test_traits(said: str, column: str, value: str) -> None:
    draft = one(f"A. Saleroom, 12 June 2019, lot 4, {said}, hammer £500")
    assert draft.cells[column] == value
    assert draft.missing == ()


@pytest.mark.parametrize(
    ("text", "venue"),
    [
        (
            "Sold 14 November 2022 at A. Rooms, Leeds (lot 231): salver, hammer £5",
            "A. Rooms, Leeds",
        ),
        ("Lot 88, pair of candlesticks, hammer £5, D. Auctions 3.4.2023", "D. Auctions"),
        ("salver, sold at A. House, Bath, June 2018, lot 7, £5 with premium", "A. House, Bath"),
        ("E. Auktionen Köln, 17. November 2021, Los 4, Zuschlag 4.200 €", "E. Auktionen Köln"),
    ],
)
def test_a_venue_before_or_beside_the_day(text: str, venue: str) -> None:
    draft = one(text)
    assert draft.cells["venue"] == venue
    assert draft.missing == ()


def test_the_figures_of_a_day_are_no_amount() -> None:
    draft = one("A. Shop 2024-03-02 EUR 95 asked, cream jug, Birmingham 1902")
    assert (draft.cells["price"], draft.cells["date"]) == ("95", "2024-03-02")
    assert draft.cells["made"] == "1902"


def test_words_that_are_not_understood_are_shown() -> None:
    draft = one("A. Saleroom, 12 June 2019, lot 4, salver with gadrooned rim, hammer £500")
    assert draft.unread == ("gadrooned", "rim")
    assert draft.cells["title"] == "salver with gadrooned rim"


def test_estimates_are_no_prices() -> None:
    draft = one("A, 12 June 2019, lot 4, salver, est. £300-500, hammer £450")
    assert draft.cells["price"] == "450"
    assert "£300-500 is taken as an estimate" in draft.notes[0]


def test_a_sign_of_several_currencies_is_asked_about_unless_given() -> None:
    text = "A. Saleroom, 12 June 2019, lot 4, salver, hammer $500"
    assert one(text).missing == ("currency",)
    assert one(text, currency="USD").cells["currency"] == "USD"
    assert one("A, 12 June 2019, lot 4, salver, hammer 500").missing == ("currency",)
    assert one(text.replace("$", "£"), currency="USD").cells["currency"] == "GBP"


def test_lines_and_paragraphs() -> None:
    lines = "A, 12 June 2019, lot 4, salver, hammer £5\n- B, 13 June 2019, lot 5, tray, hammer £6"
    assert [d.cells["lot"] for d in drafts(lines)] == ["4", "5"]
    paragraph = (
        "A. Saleroom, 12 June 2019, lot 4\nsalver by Ann Smith\nhammer £5\n\nB, lot 5, hammer £6"
    )
    first, second = drafts(paragraph)
    assert (first.cells["maker"], second.cells["lot"]) == ("Ann Smith", "5")


def test_a_price_that_does_not_go_with_the_hammer_is_said() -> None:
    draft = one("A, 12 June 2019, lot 4, salver, hammer £500 (£400 with premium)")
    assert "premium" not in draft.cells
    assert any("does not go" in note for note in draft.notes)


def test_the_silver_trades_ounce_is_troy() -> None:
    assert troy("28 oz").to("ozt") == 28
    assert troy("28", "ozt").to("ozt") == 28
    assert str(troy("10 oz av").grams)[:7] == "283.495"


def test_a_text_far_too_long_is_refused() -> None:
    with pytest.raises(QuantityError, match="import it as a table"):
        drafts("x" * (MAX_CHARACTERS + 1))


@settings(max_examples=150, deadline=None)
@given(
    st.text(max_size=120)
    | st.lists(st.sampled_from([*WHOLE.split(), "$", "(", ",", "gr"])).map(" ".join)
)
def test_any_text_gives_drafts_of_known_columns_and_nothing_else(text: str) -> None:
    for draft in drafts(text):
        assert set(draft.cells) <= set(COLUMNS)
        assert all(word in draft.text for word in draft.unread)
