"""“Why are you so low?”: one sentence with figures, and what theirs has more."""

from quotegen.explain.private.phone_sheet import phone_sheet
from tests.explain.private.phone import (
    ALL_IN,
    SMALL,
    deck_sheet,
    figured,
    section_of,
    table_of,
    with_bids,
)


def test_what_theirs_has_more():
    """A drain, 16 ft at $46, and bars for wire at $0.75: $1,360.75 of the $2,473.87 between us."""
    rows = {row.name: row.cells[0] for row in table_of(deck_sheet(), "second-why-low").rows}
    assert rows["Trench drain"] == "$736.00"
    assert rows["Depth of the base: 4 in, theirs 6 in"] == "no price of its own"
    (said,) = section_of(deck_sheet(), "second-why-low").points
    assert said.startswith("“Theirs has more in it, trench drain and #4 bar")
    assert said.endswith("and at our prices that is $1,360.75 of the $2,473.87 between us.”")
    assert not [one.id for one in deck_sheet().sections if one.id == "first-why-low"]


def test_what_our_book_has_no_price_for(tmp_path):
    """A deeper base in an all-in price: no sum is made up, and it is offered to be priced."""
    bid = '  - {id: one, total: "$16,900", finish: plank, numbers: {base: 6 in}}\n'
    (said,) = section_of(with_bids(tmp_path, ALL_IN, bid), "one-why-low").points
    assert "a base of 6 in where ours has 4 in, and I can price that for you" in said
    assert "$3,240.00 above ours" in said  # ours is $13,660


def test_work_that_is_worth_more_than_the_gap(tmp_path):
    """Theirs is $1 dearer and 2 in thicker: at our prices that is more than the gap."""
    results, _ = figured(tmp_path, SMALL)
    asked = results.quote.chosen.total + 1
    bid = f"other_bids: [{{id: one, total: ${asked}, numbers: {{thickness: 6 in}}}}]\n"
    results, owner = figured(tmp_path, SMALL + bid)
    (said,) = section_of(phone_sheet(results, owner), "one-why-low").points
    assert "more than the $1.00 between us" in said


def test_nothing_is_made_up(tmp_path):
    """A dearer bid that has nothing more than ours: no table, and a question."""
    bid = "other_bids: [{id: dear, total: $9900, scope: {slab: included}}]\n"
    results, owner = figured(tmp_path, SMALL + bid)
    low = section_of(phone_sheet(results, owner), "dear-why-low")
    assert low.table is not None
    assert low.table.rows == ()
    assert "I know of nothing in theirs that ours lacks" in low.points[0]
