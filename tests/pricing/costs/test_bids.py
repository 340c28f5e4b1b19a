"""Other bids on the same scope: three parts that add up to the gap, and never a guess."""

from typing import Any

from quotegen.pricing.costs.bids import BidComparison
from quotegen.reading.files.other_bids import Says
from tests.pricing import shop
from tests.world import EXAMPLES

RATES = {
    "base": shop.rate("$2.00 / sq ft", "base"),
    "slab": shop.rate("$4.00 / sq ft", "slab", cost="$3.00 / sq ft"),
    "edge": {"name": "Forms", "covers": ["layout", "forms"], "rate": "$1.00 / sq ft"},
}
EVERYTHING = dict.fromkeys(("base", "slab", "layout", "forms", "finish"), "included")


def _bid(folder, total: str, scope: dict[str, str], book: dict[str, Any] | None = None,
         **more: Any) -> BidComparison:  # fmt: skip
    job = shop.job(other_bids=[{"id": "first", "total": total, "scope": scope, **more}])
    made = shop.figured(folder, job, rate_book=shop.book(RATES, **(book or {})))
    assert made.owner is not None
    (bid,) = made.owner.bids
    return bid


def _parts(bid: BidComparison) -> tuple[str, ...]:
    return tuple(str(part) for part in (bid.gap, bid.left_out, bid.not_stated, bid.remains))


def test_three_parts(tmp_path):
    """Ours 1,600 of 200 sq ft: base 400 left out, finish 200 not stated, 100 remains."""
    scope = {**EVERYTHING, "base": "not included"}
    del scope["finish"]
    bid = _bid(tmp_path, "$900", scope)
    assert _parts(bid) == ("700.00", "400.00", "200.00", "100.00")
    assert str(bid.if_all_in) == "300.00"
    assert [(i.scope, i.says) for i in bid.items if i.says is not Says.INCLUDED] == [
        (("base",), Says.NOT_INCLUDED), (("finish",), Says.NOT_STATED)]  # fmt: skip


def test_a_line_for_two_items_hangs_on_both(tmp_path):
    """Forms are in and layout is not stated: the line is neither included nor left out."""
    scope = dict(EVERYTHING)
    del scope["layout"]
    assert _parts(_bid(tmp_path, "$1,500", scope)) == ("100.00", "0.00", "200.00", "-100.00")


def test_no_scope_at_all(tmp_path):
    """Everything hangs on what is not stated, and nothing is said to be left out."""
    bid = _bid(tmp_path, "$1,000", {})
    assert _parts(bid) == ("600.00", "0.00", "1600.00", "-1000.00")
    assert {item.says for item in bid.items} == {Says.NOT_STATED}


def test_a_dearer_bid(tmp_path):
    """The gap is less than zero, and the parts still add up to it."""
    assert _parts(_bid(tmp_path, "$2,000", EVERYTHING)) == ("-400.00", "0.00", "0.00", "-400.00")


def test_tax_goes_with_what_is_taxed(tmp_path):
    """10 % on everything: the base left out is worth 440 of our price of 1,760."""
    company = (EXAMPLES / "company.yaml").read_text(encoding="utf-8")
    tax = "tax: [{id: s, name: Tax, rate: 10 %, covers: [everything], round: whole invoice}]\n"
    job = shop.job(other_bids=[{"id": "first", "total": "$1,000",
                                "scope": {**EVERYTHING, "base": "not included"}}])  # fmt: skip
    made = shop.figured(tmp_path, job, rate_book=shop.book(RATES), company=company + tax)
    assert made.owner is not None
    assert _parts(made.owner.bids[0]) == ("760.00", "440.00", "0.00", "320.00")


def test_the_minimum_is_no_work(tmp_path):
    """A job topped up to 5,000: what tops it up remains, whatever the bid says."""
    bid = _bid(tmp_path, "$1,000", {}, {"minimum": "$5,000"})
    assert _parts(bid) == ("4000.00", "0.00", "1600.00", "2400.00")


def test_a_share_goes_with_its_lines(tmp_path):
    """10 % fuel on the base: leaving the base out lowers 1,640 by 440, its 40 of fuel included."""
    scope = {**EVERYTHING, "base": "not included", "surcharge": "included"}
    job = shop.job(other_bids=[{"id": "first", "total": "$1,000", "scope": scope}])
    book = shop.book({**RATES, "fuel": shop.share("10 %", "base")})
    made = shop.figured(tmp_path, job, rate_book=book)
    assert made.owner is not None
    assert _parts(made.owner.bids[0]) == ("640.00", "440.00", "0.00", "200.00")


def test_discount_and_rounding_stay_in_what_remains(tmp_path):
    """1,600 less 45 are rounded to 1,560: the base is worth its 400, and 160 remain."""
    job = shop.job(
        other_bids=[{"id": "first", "total": "$1,000",
                     "scope": {**EVERYTHING, "base": "not included"}}],
        discount={"name": "Neighbors", "amount": "$45"},
    )  # fmt: skip
    made = shop.figured(tmp_path, job, rate_book=shop.book(RATES),
                        company=shop.company(round_total_to="$10"))  # fmt: skip
    assert made.owner is not None
    assert _parts(made.owner.bids[0]) == ("560.00", "400.00", "0.00", "160.00")


def test_an_item_that_the_book_has_no_price_for(tmp_path):
    """They include a drain and steps; no rate of the book covers either, and none is made up."""
    bid = _bid(tmp_path, "$1,000", {**EVERYTHING, "drain": "included", "steps": "not included"})
    assert (bid.only_theirs, bid.unpriced) == (("drain",), ("drain",))


def test_a_bid_for_another_finish_is_compared_at_it(tmp_path):
    """They bid for the fancy finish: ours is 1,860 there, 200 sq ft at 2.00 and what it brings."""
    rates = {**RATES, **shop.RINSE_AND_FILM}
    job = shop.job(other_bids=[{"id": "first", "total": "$1,000", "finish": "fancy"}])
    book = shop.book(rates, {"plain": shop.PLAIN, "fancy": shop.FANCY})
    made = shop.figured(tmp_path, job, rate_book=book)
    assert made.owner is not None
    assert (made.owner.bids[0].finish, str(made.owner.bids[0].ours)) == ("fancy", "1860.00")


def test_their_thickness_at_our_prices(tmp_path):
    """At 6 in our slab is 5.00 a sq ft: 200 more. A number that no price goes by has no worth."""
    slab = {
        "name": "Slab",
        "covers": ["slab"],
        "by_thickness": [
            {"thickness": "4 in", "rate": "$4 / sq ft"},
            {"thickness": "6 in", "rate": "$5 / sq ft"},
        ],
    }
    job = shop.job(other_bids=[{"id": "first", "total": "$1,000",
                                "numbers": {"thickness": "6 in", "base": "2 in"}}])  # fmt: skip
    made = shop.figured(tmp_path, job, rate_book=shop.book({"slab": slab}))
    assert made.owner is not None
    worth = {number.key: number.worth for number in made.owner.bids[0].numbers}
    assert str(worth["thickness"]) == "200.00"
    assert worth["base"] is None


def test_a_bid_under_our_materials(tmp_path):
    """Concrete alone is 5,000 here; a bid of 1,000 is under it, one of 5,001 is not."""
    costs = {"wage": "$20 / hour", "burden": "0 %", "day": "8 hours", "crew": "2",
             "materials": {"concrete": {"price": "$2,000 / cu yd"}}}  # fmt: skip
    assert _bid(tmp_path, "$1,000", {}, {"costs": costs}).under_materials
    assert not _bid(tmp_path, "$5,001", {}, {"costs": costs}).under_materials
