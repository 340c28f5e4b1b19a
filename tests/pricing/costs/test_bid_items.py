"""Scope items of a bid: what it says of each, and what each is worth in our price."""

import pytest

from quotegen.pricing.costs.bid_items import BidItem, answers, bid_items, is_known, less, with_tax
from quotegen.reading.files.other_bids import OtherBid, Says
from quotegen.reading.records import JobSpec
from tests.pricing import shop
from tests.world import EXAMPLES

COVERS = ["base", "joints", "sealing"]


def _priced(folder, of_which: dict[str, str], **files: str):
    one = {**shop.PLAIN, "rate": "$9.00 / sq ft", "covers": COVERS, "of_which": of_which}
    by_barrow = {"name": "Barrows", "covers": ["base"], "rate": "$275.50 lump", "applies": "asked"}
    book = shop.book({"barrows": by_barrow}, {"plain": {**one, "covers": ["slab", *COVERS]}})
    made = shop.results(folder, shop.job(include={"barrows": "yes"}), rate_book=book, **files)
    return made.job, made.quote.chosen.lines


def _items(job: JobSpec, lines, bid: OtherBid) -> dict[str, BidItem]:
    return {one.item: one for one in bid_items(job, lines, answers(bid, lines))}


def _bid(**more: object) -> OtherBid:
    return OtherBid.model_validate({"id": "x", "total": "$1", **more})


@pytest.mark.parametrize(("typed", "says"), [
    ({}, Says.NOT_STATED),
    ({"numbers": {"base": "6 in"}}, Says.INCLUDED),
    ({"scope": {"base": "not stated"}, "numbers": {"base": "6 in"}}, Says.INCLUDED),
    ({"scope": {"base": "not included"}, "numbers": {"base": "6 in"}}, Says.NOT_INCLUDED),
])  # fmt: skip
def test_what_a_bid_says_of_the_base(tmp_path, typed, says: Says):
    """A number that was told is an answer; what is said in so many words goes before it."""
    _, lines = _priced(tmp_path, {})
    assert answers(_bid(**typed), lines)["base"] is says


def test_no_coat_is_no_sealing(tmp_path):
    """No coat of sealer was told: the sealing is left out; one coat has it in."""
    _, lines = _priced(tmp_path, {})
    assert answers(_bid(numbers={"sealer_coats": "0"}), lines)["sealing"] is Says.NOT_INCLUDED
    assert answers(_bid(numbers={"sealer_coats": "1"}), lines)["sealing"] is Says.INCLUDED


def test_a_finish_that_is_named_is_stated(tmp_path):
    """Who bids for a finish has the finish in the price."""
    _, lines = _priced(tmp_path, {})
    assert answers(_bid(finish="plain"), lines)["finish"] is Says.INCLUDED
    assert answers(_bid(), lines)["finish"] is Says.NOT_STATED


def test_a_part_and_what_may_be_more(tmp_path):
    """Of 1,800 and barrows: sealing is 220, joints at most 1,580, base 275.50 and up."""
    job, lines = _priced(tmp_path, {"sealing": "$1.10 / sq ft"})
    found = _items(job, lines, _bid())
    bounds = {name: (str(one.at_least), str(one.at_most)) for name, one in found.items()}
    assert bounds["sealing"] == ("220.00", "220.00")
    assert bounds["joints"] == ("0.00", "1580.00")
    assert bounds["base"] == ("275.50", "1855.50")
    assert found["base"].amount is None


def test_what_the_parts_leave_is_known(tmp_path):
    """All but the slab and finish have a part: 4.50 of the 9.00 are left for those two together."""
    parts = {"base": "$2.00 / sq ft", "joints": "$1.40 / sq ft", "sealing": "$1.10 / sq ft"}
    job, lines = _priced(tmp_path, parts)
    both = frozenset(("slab", "finish"))
    assert is_known(job, lines, both)
    assert not is_known(job, lines, frozenset(("slab",)))
    gone = with_tax(job, lines) - with_tax(job, less(job, lines, both))
    assert str(gone) == "900.00"


def test_tax_goes_with_a_part(tmp_path):
    """10 % on everything: sealing at 220 is 242 of our price, to the cent."""
    company = (EXAMPLES / "company.yaml").read_text(encoding="utf-8")
    tax = "tax: [{id: s, name: Tax, rate: 10 %, covers: [everything], round: whole invoice}]\n"
    job, lines = _priced(tmp_path, {"sealing": "$1.10 / sq ft"}, company=company + tax)
    work = tuple(line for line in lines if "tax" not in line.scope)
    assert str(_items(job, work, _bid())["sealing"].amount) == "242.00"
