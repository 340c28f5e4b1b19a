"""What the phone sheet says of another bid, in situations that owners of small crews meet.

The questions are those of homeowners and contractors in public forums and trade magazines, told
in our own words; common practice answers them.
"""

import re

import pytest

from quotegen.explain.papers.compare_bids import compare_sheet
from quotegen.explain.private.owners_sheet import OwnersSheet, Sums
from quotegen.explain.private.phone_sheet import phone_sheet
from tests.explain.papers.unkind import UNKIND
from tests.explain.private.phone import (
    ALL_IN,
    DECK,
    SMALL,
    THREE,
    deck,
    deck_sheet,
    figured,
    section_of,
    table_of,
    with_bids,
    words_of,
)

NAMED = "scope: {slab: included, finish: included, joints: included, sealing: not included}"
THIN, DEEP = "numbers: {thickness: 3-1/2 in}", "numbers: {base: 6 in}"
CHEAP = f'  - {{id: one, total: "$11,200", finish: FINISH, {NAMED}, {THIN}}}\n'
DEAR = f'  - {{id: one, total: "$29,000", finish: FINISH, {NAMED}, {DEEP}}}\n'
LOW_TOTAL, HIGH_TOTAL = (f'  - {{id: one, total: "{price}"}}\n' for price in ("$9,000", "$29,000"))
SITUATIONS = [
    (job, bid.replace("FINISH", finish))
    for job, finish in ((ALL_IN, "plank"), (DECK, "ashlar"))
    for bid in (
        CHEAP,
        DEAR,
        '  - {id: one, total: "$9,000"}\n',
        '  - {id: one, total: "$29,000"}\n',
    )
]


def _rows(block: Sums) -> dict[str, str]:
    return {row.name: row.cells[0] for row in block.rows}


def _cents(text: str) -> int:
    amount = int(re.sub(r"[^0-9]", "", text))
    return -amount if text.startswith("−") else amount


@pytest.mark.parametrize(("job", "bid"), SITUATIONS)
def test_the_rows_add_up_on_every_sheet(tmp_path, job, bid: str):
    """All-in and itemized; cheaper, dearer, a mere total: parts make the gap, and none is zero."""
    sheet = with_bids(tmp_path, job, bid)
    rows = [(row.name, _cents(row.cells[0])) for row in sheet.sums[0].rows]
    (_, theirs), (_, ours), (_, gap), *parts = rows
    assert gap == abs(ours - theirs)
    assert not parts or sum(amount for _, amount in parts) == gap
    assert "$0.00" not in words_of(sheet)
    assert "None" not in words_of(sheet)


@pytest.mark.parametrize(("job", "bid"), SITUATIONS)
def test_nobody_is_run_down(tmp_path, job, bid: str):
    """Whatever they bid, no unkind word, and “on the same work” is not said of other work."""
    said = words_of(with_bids(tmp_path, job, bid)).lower()
    assert [word for word in UNKIND if word in said] == []
    assert "same work, we are" not in said


def test_a_cheaper_bid_for_an_all_in_price(tmp_path):
    """The edge and the sealing have money, base and joints have none: a question stands there."""
    sheet = with_bids(tmp_path, ALL_IN, CHEAP.replace("FINISH", "plank"))
    assert _rows(sheet.sums[0]) == {
        "Their price": "$11,200.00", "Our price": "$13,660.00", "We are higher by": "$2,460.00",
        "They leave out, at our prices": "$646.25",  # 587.5 sq ft at 1.10
        "They do not state, where it has a price of its own": "$2,981.60",
        "Discount in our price": "−$250.00",
        "More than the gap": "−$917.85",  # $0.90 of it are what makes our total round
    }  # fmt: skip
    asked = [row.cells[0] for row in table_of(sheet, "one-ask").rows]
    assert asked[:3] == ["part of $10,281.25", "part of the same $10,281.25", "$2,546.10"]
    said = section_of(sheet, "one-ours").points
    assert said[0] == "“The other price leaves out sealing. In ours that is $646.25.”"
    assert said[1] == "“Theirs has a slab of 3-1/2 in where ours has 4 in.”"
    ours = {row.name: row.cells[0] for row in table_of(sheet, "one-ours").rows}
    assert ours["Thickness of the slab: 4 in, theirs 3-1/2 in"] == "no price of its own"


def test_a_cheaper_bid_for_an_itemized_price(tmp_path):
    """The same bid: thickness has its price too, and every question its money."""
    sheet = with_bids(tmp_path, DECK, CHEAP.replace("FINISH", "ashlar"))
    said = section_of(sheet, "one-ours").points
    assert said[0] == "“The other price leaves out sealing. In ours that is $874.65.”"  # at 1.05
    assert said[1] == (
        "“Theirs has a slab of 3-1/2 in where ours has 4 in. At our prices that is $291.55.”"
    )
    asked = [row.cells[0] for row in table_of(sheet, "one-ask").rows]
    # 65.7 ft of edge at 38, 833 sq ft of base at 1.75 and of digging out at 1.35
    assert asked[:3] == ["$2,496.60", "$1,457.75", "$1,124.55"]


def test_a_mere_total_for_an_all_in_price(tmp_path):
    """$8,900 is nearer to broom than to planks: that is asked first; then what carries the slab."""
    sheet = with_bids(tmp_path, ALL_IN, '  - {id: one, total: "$8,900"}\n')
    (block,) = sheet.sums
    assert [row.name for row in block.rows] == ["Their price", "Our price", "We are higher by"]
    (first,) = block.verdict
    assert first.startswith("Ask first: “Which finish is the other price for?")
    assert first.endswith("Ours is $13,660.00 in Wood-plank stamp, and $8,250.00 in Broom.”")
    asked = [row.name.split(" the ")[0] for row in table_of(sheet, "one-ask").rows]
    assert asked[:2] == ["How deep is", "How thick is"]
    ask = section_of(sheet, "one-ask")
    assert ask.lines[0].startswith("“I cannot tell what it covers")
    assert ask.lines[1] == "10 more questions are on the sheet to compare bids: send it."
    assert not [one for one in sheet.sections if one.id == "one-ours"]


@pytest.mark.parametrize("job", [ALL_IN, DECK])
def test_one_question_a_row(tmp_path, job):
    """A bid that states nothing: seven questions at most, each of one scope item."""
    sheet = with_bids(tmp_path, job, '  - {id: one, total: "$9,000", finish: broom}\n')
    rows = table_of(sheet, "one-ask").rows
    assert len(rows) == 7
    assert all(row.name.count("?") == 1 for row in rows)


def test_a_dearer_mere_total(tmp_path):
    """Why are you so low? One sentence, with the gap in it, and no reason made up."""
    sheet = with_bids(tmp_path, ALL_IN, '  - {id: one, total: "$14,900"}\n')
    low = section_of(sheet, "one-why-low")
    (said,) = low.points
    assert said.startswith("“Ours names the 18 things that it pays for; please ask them")
    assert "$1,240.00" in said
    assert low.table is not None
    assert low.table.rows == ()


def test_the_same_work(tmp_path):
    """All is stated, at our numbers: then, and only then, it is the same work."""
    results, _ = deck()
    items = ", ".join(f"{item}: included" for item in results.scope_items())
    numbers = "thickness: 4 in, base: 4 in, reinforcement: wire_sheets, strength_psi: 4500"
    bid = f'{{id: one, total: "$19,000", finish: ashlar, scope: {{{items}}}, numbers: {{{numbers}'
    coats = results.job.rate_book.finishes["ashlar"].sealer_coats
    told = f", sealer_coats: {coats}" if coats else ""
    sheet = with_bids(tmp_path, DECK, f"  - {bid}{told}}}}}\n")
    assert [row.name for row in sheet.sums[0].rows] == [
        "Their price", "Our price", "On the same work, we are higher by"]  # fmt: skip
    assert sheet.sums[0].rows[-1].cells == ("$1,126.13",)
    assert not [one for one in sheet.sections if one.id.startswith("one-")]


def test_three_bids_from_3200_to_7200_for_one_patio(tmp_path):
    """H1: is the dear one greedy or the cheap one short? Each gap is told by scope, and asked."""
    results, owner = figured(tmp_path, SMALL + THREE)
    sheet = phone_sheet(results, owner)
    assert len(sheet.sums) == 3
    for bid, block in zip(owner.bids, sheet.sums, strict=True):
        assert block.rows[0].cells == (results.words.money(bid.theirs),)
    assert table_of(sheet, "low-ask").rows[0].name.startswith("How thick is the slab")
    assert "leaves out sealing" in section_of(sheet, "middle-ours").points[0]


def test_a_bid_for_another_finish_is_held_against_its_own_floors(tmp_path):
    """A bid for stamped work under the floors of stamped work, though over those of broom."""
    job = SMALL + "other_bids: [{id: one, total: $6200, finish: slate}]\n"
    results, owner = figured(tmp_path, job)
    slate = next(one for one in owner.finishes if one.finish == "slate")
    assert owner.chosen.walk_away < 6200 < slate.walk_away
    sheet = phone_sheet(results, owner)
    assert section_of(sheet, "walk-away").points[0].startswith("Do not match bid one")
    assert sheet.sums[0].rows[1].note == "for Slate texture, stamped, which is what they bid for"


def test_thickness_is_a_number(tmp_path):
    """H2: is 6 in usual? Ours is a number with a way to check it, theirs is set beside it."""
    results, owner = figured(tmp_path, SMALL + THREE)
    (slab,) = (row for row in compare_sheet(results).rows if row.title == "Slab")
    assert slab.ours.startswith("4 in thick")
    check = results.content.scope["slab"].front.check
    assert check.startswith("Tape down from a string")
    (row,) = table_of(phone_sheet(results, owner), "high-why-low").rows
    assert row.name == "Thickness of the slab: 4 in, theirs 6 in"
    assert row.cells[0].startswith("$")
    # What a 2x4 form gives is explained on the quote.
    assert "nominal" in results.content.scope["slab"].markdown


def test_why_are_you_higher():
    """C9: what is in, what the other sheet says line by line, and nobody is run down."""
    first = section_of(deck_sheet(), "first-ours").points
    assert "leaves out cast edge, sealing, and wash. In ours that is $3,746.10" in first[0]
    assert first[1].startswith("“Theirs has a slab of 3-1/2 in where ours has 4 in, short fibers")
    assert "it is $624.75" in first[1]  # strength has no price of its own
    rows = table_of(deck_sheet(), "first-ask").rows
    dollars = [float(row.cells[0].replace(",", "").lstrip("$")) for row in rows]
    assert dollars == sorted(dollars, reverse=True)
    assert [word for word in UNKIND if word in _spoken(deck_sheet())] == []


def _spoken(sheet: OwnersSheet) -> str:
    shown = (one for one in sheet.sections if one.id != "not-say")
    return "\n".join(text for one in shown for text in (*one.lines, *one.points)).lower()


def test_a_dearer_bid_gets_the_same_questions():
    """A bid above ours: we say so, ask the same of both, and what they have and we lack."""
    ask = section_of(deck_sheet(), "second-ask")
    assert ask.lines[0].startswith("“We are lower. Before you decide, ask us both the same")
    asked = {row.name: row for row in table_of(deck_sheet(), "second-ask").rows}
    drain = asked["They include this, and our price does not: Drain. Is it wanted?"]
    assert drain.cells == ("not in it",)
