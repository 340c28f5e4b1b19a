"""The folded room of the phone sheet: floors and savings, and nothing of them without costs."""

from quotegen.explain.private.phone_sheet import phone_sheet
from quotegen.explain.private.the_room import the_room
from tests.explain.private.pencil import D, Deck, hours, least, materials
from tests.explain.private.phone import ALL_IN, all_in, deck, deck_sheet, section_of, words_of

OURS = Deck(D("833.0"))


def test_a_discount_is_asked_for():
    """C6: scope is traded for price. Ways with less work stand before what a discount does."""
    sheet = deck_sheet()
    order = [section.id for section in the_room(*deck()).sections]
    assert order.index("savings") < order.index("discounts")
    savings = section_of(sheet, "savings").table
    assert savings is not None
    names = [row.name for row in savings.rows]
    assert "Without: Cast edge at the pool" in names
    assert "Digging out and base by others, to our depths" in names
    assert "Trade scope for price first" in section_of(sheet, "discounts").lines[0]


def test_a_bid_under_the_floors_is_not_matched():
    """The first bid lies $1,444.21 under the walk-away line, and the room says not to match it."""
    assert max(least(OURS)) == D("16244.21")
    points = section_of(deck_sheet(), "walk-away").points
    assert points[0].startswith("Do not match bid first: it is $1,444.21 under $16,244.21")
    assert not [point for point in points if "match bid second" in point]


def test_our_price_is_looked_over_where_theirs_is_dearer():
    """Hours, days, materials and margin of our lower price: for the owner, folded."""
    (look,) = (one for one in section_of(deck_sheet(), "walk-away").points if "Look ours" in one)
    assert look.startswith("Bid second is above ours.")
    assert (sum(hours(OURS)), materials(OURS)) == (D("109.96"), D("3950.32"))
    assert "110.0 hours of the crew, 6 days on site, $3,950.32 of materials" in look


def test_who_types_no_costs_sees_no_margins():
    """One line says that costs are not typed; ways to a lower price stay, with prices alone."""
    results, owner = all_in(ALL_IN)
    sheet = phone_sheet(results, owner)
    assert sheet.folded is not None
    assert [one.id for one in sheet.folded.sections] == ["savings"]
    assert len(sheet.folded.lines) == 1
    assert sheet.folded.lines[0].startswith("Your costs are not typed")
    table = section_of(sheet, "savings").table
    assert table is not None
    assert table.head == ("If", "Price", "Price moves")
    said = words_of(sheet).lower()
    assert [word for word in ("margin", "floor", "walk away", "loses money") if word in said] == []
