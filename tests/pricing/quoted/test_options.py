"""Options: another finish on one placement, and other colors."""

from decimal import Decimal

from tests.pricing import shop
from tests.pricing.offers import BOOK, two_placements


def test_one_placement_alone_changes(tmp_path):
    """Deck stamped, walk broom: 200 sq ft at $1.30 more, and one trip more."""
    (other,) = shop.quote(tmp_path, two_placements(), rate_book=BOOK).alternates
    assert (other.placement, other.finish, other.visits) == ("deck", "fancy", 3)
    assert other.amount == Decimal("1.30") * 200 + 85


def test_a_choice_of_two_colors(tmp_path):
    """A base and a second tone cost the sum of their rates, on the finish that takes them."""
    colors = [{"base": "sand", "second": "walnut"}, {"base": "clay"}]
    job = shop.job(finish="fancy", compare=["plain"], colors=colors)
    first, second = shop.quote(tmp_path, job, rate_book=BOOK).color_choices
    assert (first.amount, second.amount) == (Decimal(300), Decimal(250))
    assert {line.rate_id for line in first.lines} == {"sand", "walnut"}


def test_other_colors_replace_those_in_the_price(tmp_path):
    """Instead of sand at $1.00, clay at $1.25 adds a quarter."""
    job = shop.job(finish="fancy", color={"base": "sand"}, colors=[{"base": "clay"}])
    priced = shop.quote(tmp_path, job, rate_book=BOOK)
    assert "sand.patio" in shop.by_id(priced.chosen)
    assert priced.color_choices[0].amount == Decimal(50)
