"""Other bids on the same scope: parts that add up to the gap, and never a guess."""

from typing import Any

from quotegen.pricing.costs.bids import BidComparison, NearerFinish
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
    made = shop.figured(folder, job, rate_book=shop.book(**{"rates": RATES, **(book or {})}))
    assert made.owner is not None
    (bid,) = made.owner.bids
    return bid


def _parts(bid: BidComparison) -> tuple[str, ...]:
    parts = (bid.gap, bid.left_out, bid.not_stated, bid.at_their_numbers, bid.remains)
    return tuple(map(str, parts))


def test_the_parts(tmp_path):
    """Ours 1,600 of 200 sq ft: base 400 left out, finish 200 not stated, 100 remains."""
    scope = {**EVERYTHING, "base": "not included"}
    del scope["finish"]
    bid = _bid(tmp_path, "$900", scope)
    assert _parts(bid) == ("700.00", "400.00", "200.00", "0.00", "100.00")
    assert [(i.item, i.says) for i in bid.items if i.says is not Says.INCLUDED] == [
        ("base", Says.NOT_INCLUDED), ("finish", Says.NOT_STATED)]  # fmt: skip
    assert not bid.same_work


def test_half_of_a_line_has_no_money(tmp_path):
    """Forms are in and layout is not stated: none of their 200 is split, and it stays unknown."""
    scope = dict(EVERYTHING)
    del scope["layout"]
    bid = _bid(tmp_path, "$1,500", scope)
    assert _parts(bid) == ("100.00", "0.00", "0.00", "0.00", "100.00")
    assert not bid.not_stated_known
    (layout,) = bid.that(Says.NOT_STATED)
    assert (layout.amount, str(layout.at_most)) == (None, "200.00")


def test_a_line_left_out_as_a_whole(tmp_path):
    """Layout and forms are both out: the line of 200 is, though neither has a price of its own."""
    bid = _bid(
        tmp_path, "$1,500", {**EVERYTHING, "layout": "not included", "forms": "not included"}
    )
    assert (str(bid.left_out), bid.left_out_known) == ("200.00", True)
    assert [item.amount for item in bid.that(Says.NOT_INCLUDED)] == [None, None]


def test_no_scope_at_all(tmp_path):
    """Everything hangs on what is not stated, and nothing is said to be left out."""
    bid = _bid(tmp_path, "$1,000", {})
    assert _parts(bid) == ("600.00", "0.00", "1600.00", "0.00", "-1000.00")
    assert bid.states_nothing


def test_a_dearer_bid(tmp_path):
    """The gap is less than zero, and the parts still add up to it."""
    bid = _bid(tmp_path, "$2,000", EVERYTHING)
    assert _parts(bid) == ("-400.00", "0.00", "0.00", "0.00", "-400.00")


def test_the_same_work_is_all_of_it_at_the_same_numbers(tmp_path):
    """All items and all our numbers: the same work. One number less, or untold: not known to be."""
    same = {"thickness": "4 in", "base": "4 in", "reinforcement": "fiber", "strength_psi": "4500"}
    assert _bid(tmp_path, "$1,500", EVERYTHING, numbers=same).same_work
    for numbers in ({**same, "base": "3 in"}, {"thickness": "4 in"}):
        assert not _bid(tmp_path, "$1,500", EVERYTHING, numbers=numbers).same_work


ALL_IN = {**shop.PLAIN, "rate": "$9.40 / sq ft",
          "covers": ["base", "slab", "reinforcement", "joints", "sealing"],
          "of_which": {"sealing": "$1.105 / sq ft"}}  # fmt: skip
EDGE = {"edge": {"name": "Edge", "covers": ["cast_edge"], "rate": "$300 lump"}}


def _all_in(folder, total: str, scope: dict[str, str], **more: Any) -> BidComparison:
    return _bid(folder, total, scope, {"rates": EDGE, "finishes": {"plain": ALL_IN}}, **more)


def test_one_price_is_split_only_where_the_book_knows_a_part(tmp_path):
    """Ours 2,180 of 200 sq ft: edge 300 and sealing 221 are left out; base is open and unknown."""
    scope = {"slab": "included", "base": "not stated", "joints": "included", "finish": "included",
             "reinforcement": "included", "sealing": "not included",
             "cast_edge": "not included"}  # fmt: skip
    bid = _all_in(tmp_path, "$1,500", scope)
    assert _parts(bid) == ("680.00", "521.00", "0.00", "0.00", "159.00")
    assert (bid.left_out_known, bid.not_stated_known, bid.same_work) == (True, False, False)
    worth = {item.item: str(item.amount) for item in bid.items}
    assert worth == {"cast_edge": "300.00", "sealing": "221.00", **dict.fromkeys(
        ("finish", "base", "slab", "reinforcement", "joints"), "None")}  # fmt: skip
    assert {str(item.at_most) for item in bid.items if item.amount is None} == {"1659.00"}


def test_one_price_of_an_all_in_bid_that_states_nothing(tmp_path):
    """All of 2,180 is open, and the gap is 680; no part of it is told apart."""
    bid = _all_in(tmp_path, "$1,500", {})
    assert bid.states_nothing
    assert _parts(bid) == ("680.00", "0.00", "2180.00", "0.00", "-1500.00")


def test_numbers_of_one_price_are_known_and_have_no_worth(tmp_path):
    """3-1/2 in, fiber and 3,500 psi: slab and reinforcement are in, and no sum is made up."""
    numbers = {"thickness": "3-1/2 in", "reinforcement": "bars", "strength_psi": "3500"}
    bid = _all_in(tmp_path, "$1,500", {}, numbers=numbers)
    assert {item.item for item in bid.that(Says.INCLUDED)} == {"slab", "reinforcement"}
    assert [one.key for one in bid.less_numbers] == ["thickness", "reinforcement", "strength_psi"]
    assert {one.worth for one in bid.numbers} == {None}
    assert (str(bid.at_their_numbers), str(bid.saved_at_less)) == ("0.00", "0.00")


def test_a_finish_whose_price_is_nearer(tmp_path):
    """Ours is 1,600 plain and 1,860 fancy: a bid of 1,800 for no named finish may be for fancy."""
    rates = {**RATES, **shop.RINSE_AND_FILM}
    book = shop.book(rates, {"plain": shop.PLAIN, "fancy": shop.FANCY})

    def nearer(**bid: str) -> NearerFinish | None:
        job = shop.job(compare=["fancy"], other_bids=[{"id": "first", **bid}])
        made = shop.figured(tmp_path, job, rate_book=book)
        assert made.owner is not None
        return made.owner.bids[0].nearer

    found = nearer(total="$1,800")
    assert found is not None
    assert (found.id, str(found.total)) == ("fancy", "1860.00")
    assert nearer(total="$1,730") is None  # half-way: not nearer
    assert nearer(total="$1,800", finish="plain") is None


def test_tax_goes_with_what_is_taxed(tmp_path):
    """10 % on everything: the base left out is worth 440 of our price of 1,760."""
    company = (EXAMPLES / "company.yaml").read_text(encoding="utf-8")
    tax = "tax: [{id: s, name: Tax, rate: 10 %, covers: [everything], round: whole invoice}]\n"
    job = shop.job(other_bids=[{"id": "first", "total": "$1,000",
                                "scope": {**EVERYTHING, "base": "not included"}}])  # fmt: skip
    made = shop.figured(tmp_path, job, rate_book=shop.book(RATES), company=company + tax)
    assert made.owner is not None
    assert _parts(made.owner.bids[0]) == ("760.00", "440.00", "0.00", "0.00", "320.00")


def test_the_minimum_is_no_work(tmp_path):
    """A job topped up to 5,000: what tops it up remains, whatever the bid says."""
    bid = _bid(tmp_path, "$1,000", {}, {"minimum": "$5,000"})
    assert _parts(bid) == ("4000.00", "0.00", "1600.00", "0.00", "2400.00")


def test_a_share_goes_with_its_lines(tmp_path):
    """10 % fuel on the base: leaving the base out lowers 1,640 by 440, its 40 of fuel included."""
    scope = {**EVERYTHING, "base": "not included", "surcharge": "included"}
    job = shop.job(other_bids=[{"id": "first", "total": "$1,000", "scope": scope}])
    book = shop.book({**RATES, "fuel": shop.share("10 %", "base")})
    made = shop.figured(tmp_path, job, rate_book=book)
    assert made.owner is not None
    assert _parts(made.owner.bids[0]) == ("640.00", "440.00", "0.00", "0.00", "200.00")


def test_a_discount_is_a_part_and_rounding_stays_in_what_remains(tmp_path):
    """1,600 less 45 are rounded to 1,560, 560 more than theirs: the base 400, less 45, and 205."""
    job = shop.job(
        other_bids=[{"id": "first", "total": "$1,000",
                     "scope": {**EVERYTHING, "base": "not included"}}],
        discount={"name": "Neighbors", "amount": "$45"},
    )  # fmt: skip
    made = shop.figured(tmp_path, job, rate_book=shop.book(RATES),
                        company=shop.company(round_total_to="$10"))  # fmt: skip
    assert made.owner is not None
    bid = made.owner.bids[0]
    assert _parts(bid) == ("560.00", "400.00", "0.00", "0.00", "205.00")
    assert str(bid.discount) == "-45.00"


def test_a_discount_by_share_is_that_of_the_finish_they_bid_for(tmp_path):
    """10 % off is 160 of the plain finish at 1,600, and 186 of the fancy one at 1,860."""
    rates = {**RATES, **shop.RINSE_AND_FILM}
    bids = [{"id": finish, "total": "$1,000", "finish": finish} for finish in ("plain", "fancy")]
    job = shop.job(compare=["fancy"], other_bids=bids,
                   discount={"name": "Neighbors", "share": "10 %"})  # fmt: skip
    book = shop.book(rates, {"plain": shop.PLAIN, "fancy": shop.FANCY})
    made = shop.figured(tmp_path, job, rate_book=book)
    assert made.owner is not None
    assert [str(bid.discount) for bid in made.owner.bids] == ["-160.00", "-186.00"]


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


def test_a_bid_under_our_materials(tmp_path):
    """Concrete alone is 5,000 here; a bid of 1,000 is under it, one of 5,001 is not."""
    costs = {"wage": "$20 / hour", "burden": "0 %", "day": "8 hours", "crew": "2",
             "materials": {"concrete": {"price": "$2,000 / cu yd"}}}  # fmt: skip
    assert _bid(tmp_path, "$1,000", {}, {"costs": costs}).under_materials
    assert not _bid(tmp_path, "$5,001", {}, {"costs": costs}).under_materials
