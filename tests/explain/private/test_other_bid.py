"""What the phone sheet says of another bid, in situations that owners of small crews meet.

The questions are those of homeowners and contractors in public forums and trade magazines, told
in our own words; common practice answers them.
"""

import re

from quotegen.explain.papers.compare_bids import compare_sheet
from quotegen.explain.private.phone_sheet import phone_sheet
from tests.explain.papers.unkind import UNKIND
from tests.explain.private.phone import SMALL, THREE, deck, figured, section_of, table_of, words_of


def test_three_bids_from_3200_to_7200_for_one_patio(tmp_path):
    """H1: is the dear one greedy or the cheap one short? Each gap is told by scope, and asked."""
    results, owner = figured(tmp_path, SMALL + THREE)
    sheet = phone_sheet(results, owner)
    assert len(sheet.sums) == 3
    for bid, block in zip(owner.bids, sheet.sums, strict=True):
        assert bid.gap == bid.left_out + bid.not_stated + bid.remains
        assert block.rows[0].cells == (results.words.money(bid.theirs),)
    low = table_of(sheet, "low-ask").rows
    assert low[0].name.startswith("How thick is the slab, and what strength")  # the dearest line
    assert len(low) == len(owner.bids[0].items)
    middle = section_of(sheet, "middle-say").points
    assert "does not have sealing in it" in middle[1]


def test_a_bid_with_nothing_stated_still_helps(tmp_path):
    """Everything is asked, nothing is held against it, and the sheet to compare bids is offered."""
    results, owner = figured(tmp_path, SMALL + THREE)
    sheet = phone_sheet(results, owner)
    said = section_of(sheet, "low-say").points
    assert len(said) == 2
    assert "I cannot tell what it covers" in said[1]
    asked = [row.cells for row in table_of(sheet, "low-ask").rows]
    assert {says for says, _ in asked} == {"not stated"}
    dollars = [float(amount.replace(",", "").lstrip("$")) for _, amount in asked]
    assert dollars == sorted(dollars, reverse=True)  # the first question is worth the most
    assert all(dollars)


def test_the_first_block_is_sums_and_a_verdict():
    """Five seconds: their price, ours, the gap, its parts, what remains; then whether to match."""
    results, owner = deck()
    first, second = phone_sheet(results, owner).sums
    assert [row.name for row in first.rows] == [
        "Their price", "Our price", "We are higher by", "They leave out, at our prices",
        "They do not state, at our prices", "On what both cover, we are lower by",
    ]  # fmt: skip
    assert [row.strong for row in first.rows] == [False] * 5 + [True]
    assert all(len(row.cells) == 1 for row in first.rows)
    assert first.verdict[0].startswith("Do not match it: it is $521.70 under $17,971.70")
    said = "Walk away below $17,971.70 before tax: your floors hold down to there."
    assert second.verdict == (said,)


def test_a_part_that_is_zero_is_left_out(tmp_path):
    """The second bid states everything, so no row tells of nothing; no parts, and no remainder."""
    results, owner = deck()
    names = [row.name for row in phone_sheet(results, owner).sums[1].rows]
    assert "They do not state, at our prices" not in names
    assert "$0.00" not in words_of(phone_sheet(results, owner))
    items = ", ".join(f"{item}: included" for item in results.scope_items())
    bid = f"other_bids: [{{id: all, total: $9000, scope: {{{items}}}}}]\n"
    alone, full = figured(tmp_path, SMALL + bid)
    (block,) = phone_sheet(alone, full).sums
    assert [row.name for row in block.rows] == ["Their price", "Our price", "We are lower by"]


def test_a_bid_for_another_finish_is_held_against_its_own_floors(tmp_path):
    """A bid for stamped work under the floors of stamped work, though over those of broom."""
    job = SMALL + "other_bids: [{id: one, total: $6200, finish: slate}]\n"
    results, owner = figured(tmp_path, job)
    slate = next(one for one in owner.finishes if one.finish == "slate")
    assert owner.chosen.walk_away < 6200 < slate.walk_away
    (block,) = phone_sheet(results, owner).sums
    assert block.verdict[0].startswith("Do not match it")
    assert block.rows[1].note == "for Slate texture, stamped, which is what they bid for"


def test_why_are_you_so_low():
    """What theirs has more, at our prices where we have one; what is left; ours, for the owner."""
    results, owner = deck()
    sheet = phone_sheet(results, owner)
    low = section_of(sheet, "second-why-low")
    rows = {row.name: row.cells[0] for row in table_of(sheet, "second-why-low").rows}
    assert rows["Trench drain"] == "+$1,104.00"  # 24 ft at $46
    assert rows["Depth of the base: theirs 6 in, ours 4 in"] == "no price in our book"
    assert rows["All that has a price, at our prices"] == "$1,893.15"
    assert rows["Left over, and we know of no reason"] == "$1,232.66"
    assert "$4,743.20 of materials" in low.lines[0]
    assert "127.3 hours of the crew, 6 days on site" in low.lines[0]
    spoken = "\n".join(low.points)
    assert "$1,893.15" in spoken
    assert "hours" not in spoken
    assert "margin" not in spoken
    assert [s.id for s in sheet.sections if s.id == "first-why-low"] == []  # that one is below ours


def test_nothing_is_made_up_for_a_dearer_bid(tmp_path):
    """A dearer bid that says nothing more than ours: no table, and a question."""
    results, owner = figured(tmp_path, SMALL + "other_bids: [{id: dear, total: $9900}]\n")
    low = section_of(phone_sheet(results, owner), "dear-why-low")
    assert low.table is not None
    assert low.table.rows == ()
    assert "I know of nothing in the other price that ours lacks" in low.points[1]


def test_thickness_is_a_number(tmp_path):
    """H2: is 6 in usual? Ours is a number with a way to check it, theirs is set beside it."""
    results, owner = figured(tmp_path, SMALL + THREE)
    (slab,) = (row for row in compare_sheet(results).rows if row.title == "Slab")
    assert slab.ours.startswith("4 in thick")
    assert slab.check.startswith("Tape down from a string")
    rows = section_of(phone_sheet(results, owner), "high-numbers").table
    assert rows is not None
    thick = rows.rows[0]
    assert thick.cells[:2] == ("4 in", "6 in")
    assert thick.cells[2].startswith("+$")
    # What a 2x4 form gives is explained on the quote.
    assert "nominal" in results.content.scope["slab"].markdown


def test_why_are_you_higher():
    """C9: what is in, what the other sheet says line by line, and nobody is run down."""
    results, owner = deck()
    sheet = phone_sheet(results, owner)
    first = section_of(sheet, "first-say").points
    assert len(first) == 3
    assert "every part of it is on your quote" in first[0]
    asked = [row.cells[1] for row in table_of(sheet, "first-ask").rows]
    worth = [amount for line in asked for amount in re.findall(r"\$([\d,]+\.\d\d)", line)]
    dollars = [float(amount.replace(",", "")) for amount in worth]
    assert dollars == sorted(dollars, reverse=True)
    spoken = "\n".join(
        point for s in sheet.sections if s.id != "not-say" for point in (*s.lines, *s.points)
    ).lower()
    assert [word for word in UNKIND if word in spoken] == []


def test_a_dearer_bid_gets_the_same_questions():
    """A bid above ours: we say so, ask the same of both, and what they have and we lack."""
    results, owner = deck()
    said = section_of(phone_sheet(results, owner), "second-say").points
    assert "We are lower" in said[1]
    asked = {row.name: row for row in table_of(phone_sheet(results, owner), "second-ask").rows}
    drain = asked["They include this, and our price does not: Drain. Is it wanted?"]
    assert drain.cells == ("included", "not in it")


def test_a_bid_under_the_floors_is_not_matched():
    """Private: the first bid lies under the walk-away line, and the sheet says not to match it."""
    results, owner = deck()
    assert owner.bids[0].under_floors > 0
    sheet = phone_sheet(results, owner)
    assert "Do not match it" in sheet.sums[0].verdict[0]
    assert sheet.sections[0].id == "walk-away"
