"""The numbers of another bid: what our price would be at theirs, where our book depends on it."""

from typing import Any

from quotegen.pricing.costs.bids import BidComparison
from tests.pricing import shop

SLAB = {"name": "Slab", "covers": ["slab"], "by_thickness": [
    {"thickness": "3-1/2 in", "rate": "$3.75 / sq ft"},
    {"thickness": "4 in", "rate": "$4 / sq ft"},
    {"thickness": "6 in", "rate": "$5 / sq ft"},
]}  # fmt: skip
STEEL = {
    "fiber": shop.rate("$0.40 / sq ft", "reinforcement", reinforcement="fiber"),
    "bars": shop.rate("$1.55 / sq ft", "reinforcement", reinforcement="bars"),
}


def _bid(folder, numbers: dict[str, str], **scope: str) -> BidComparison:
    bid: dict[str, Any] = {"id": "first", "total": "$1,000", "numbers": numbers, "scope": scope}
    book = shop.book({"slab": SLAB, **STEEL})
    made = shop.figured(folder, shop.job(other_bids=[bid]), rate_book=book)
    assert made.owner is not None
    return made.owner.bids[0]


def _worth(bid: BidComparison) -> dict[str, str]:
    return {one.key: str(one.worth) for one in bid.numbers if one.theirs is not None}


def test_a_thicker_slab_at_our_prices(tmp_path):
    """At 6 in our slab is 5.00 a sq ft: 200 more on 200 sq ft. No price goes by the base."""
    bid = _bid(tmp_path, {"thickness": "6 in", "base": "6 in"})
    assert _worth(bid) == {"thickness": "200.00", "base": "None"}
    assert [one.key for one in bid.more_numbers] == ["thickness", "base"]
    assert (str(bid.at_their_numbers), str(bid.beyond_ours)) == ("-200.00", "200.00")


def test_lesser_numbers_add_up(tmp_path):
    """3-1/2 in is 50 less; our fiber is theirs: the same. What each is worth makes the part."""
    bid = _bid(tmp_path, {"thickness": "3-1/2 in", "reinforcement": "fiber"}, base="included")
    assert _worth(bid) == {"thickness": "-50.00", "reinforcement": "0.00"}
    assert str(bid.at_their_numbers) == str(bid.saved_at_less) == "50.00"


def test_other_steel_at_our_prices(tmp_path):
    """Bars are 1.55 a sq ft in place of 0.40: 230 more. Steel that we do not have has no worth."""
    assert _worth(_bid(tmp_path, {"reinforcement": "bars"})) == {"reinforcement": "230.00"}
    other = _bid(tmp_path, {"reinforcement": "basalt rods"})
    assert _worth(other) == {"reinforcement": "None"}
    assert [one.key for one in other.less_numbers] == ["reinforcement"]


def test_a_number_of_what_is_left_out_counts_for_nothing(tmp_path):
    """They leave the slab out, so its thickness is worth nothing and is not compared."""
    bid = _bid(tmp_path, {"thickness": "3-1/2 in"}, slab="not included")
    assert _worth(bid) == {}
    assert (str(bid.left_out), str(bid.at_their_numbers)) == ("800.00", "0.00")
