"""Alternates, colors, combinations and subtotals."""

from decimal import Decimal

from quotegen.money import ZERO
from tests.pricing import shop

COLORS = {
    "sand": shop.rate("$1.00 / sq ft", "finish", applies="with color", color="integral"),
    "clay": shop.rate("$1.25 / sq ft", "finish", applies="with color", color="hardener"),
    "walnut": shop.rate("$0.50 / sq ft", "finish", applies="with color", color="release"),
}
RATES = {
    **shop.RINSE_AND_FILM, **COLORS,
    "trip": shop.rate("$85 / visit", "travel"),
    "both": {**shop.rate("$2.00 / sq ft"), "covers": ["slab", "placing"]},
    "drain": shop.rate("$10 / ft", "drain", applies="asked"),
    "lawn": shop.rate("$50 lump", "protection", applies="asked"),
}  # fmt: skip
FINISHES = {"plain": shop.PLAIN, "fancy": {**shop.FANCY, "colors": list(COLORS)}}
BOOK = shop.book(RATES, FINISHES)


def _two(**more) -> str:
    """A deck that may be fancy, and a walk that stays plain."""
    deck = shop.placement("20 ft x 10 ft", "deck", alternates=["fancy"])
    return shop.job(deck, shop.placement("10 ft x 4 ft", "walk", at="40 ft", use="walk"), **more)


def test_one_placement_alone_changes(tmp_path):
    """Deck stamped, walk broom: 200 sq ft at $1.30 more, and one trip more."""
    (other,) = shop.quote(tmp_path, _two(), rate_book=BOOK).alternates
    assert (other.placement, other.finish, other.visits) == ("deck", "fancy", 3)
    assert other.amount == Decimal("1.30") * 200 + 85


def test_a_look_is_its_two_colors(tmp_path):
    """A base and a second tone cost the sum of their rates, on the finish that takes them."""
    looks = [{"base": "sand", "second": "walnut"}, {"base": "clay"}]
    job = shop.job(finish="fancy", compare=["plain"], colors=looks)
    first, second = shop.quote(tmp_path, job, rate_book=BOOK).color_choices
    assert (first.amount, second.amount) == (Decimal(300), Decimal(250))
    assert {line.rate_id for line in first.lines} == {"sand", "walnut"}


def test_another_look_takes_the_place_of_the_one_in_the_price(tmp_path):
    """Instead of sand at $1.00, clay at $1.25 adds a quarter."""
    job = shop.job(finish="fancy", color={"base": "sand"}, colors=[{"base": "clay"}])
    priced = shop.quote(tmp_path, job, rate_book=BOOK)
    assert "sand.patio" in shop.by_id(priced.chosen)
    assert priced.color_choices[0].amount == Decimal(50)


def test_every_combination_is_priced(tmp_path):
    """Each is what a job with just these choices costs, and its payments add up."""
    extras = {"drain": "12 ft", "lawn": "yes"}
    job = _two(compare=["fancy"], extras=extras, colors=[{"base": "clay"}])
    priced = shop.quote(tmp_path, job, rate_book=BOOK)
    # plain: 4 sets of extras; with a fancy deck and with fancy all over, each 4 with either look.
    assert len(priced.combinations) == 4 + 8 + 8 + 8
    first = priced.combinations[0]
    assert (first.total, first.extras, first.alternates) == (priced.chosen.total, (), ())
    for one in priced.combinations:
        assert sum(one.payments, ZERO) == one.total
    picked = next(
        c for c in priced.combinations
        if (c.finish, c.extras, c.alternates, c.colors)
        == ("plain", ("drain",), (("deck", "fancy"),), ("clay",))
    )  # fmt: skip
    assert picked.total == priced.chosen.total + priced.alternates[0].amount + 120 + 250


def test_the_minimum_is_in_each_combination(tmp_path):
    """Extras fill up the smallest job before they cost more."""
    book = shop.book(RATES, FINISHES, minimum="$1,000")
    job = shop.job(extras={"drain": "12 ft", "lawn": "yes"})
    priced = shop.quote(tmp_path, job, rate_book=book)
    assert [str(one.total) for one in priced.combinations] == ["1000.00"] * 4


def test_subtotals_add_up(tmp_path):
    """By placement and by scope; a line of two scope items counts once, under the first."""
    priced = shop.quote(tmp_path, _two(), rate_book=BOOK)
    for parts in (priced.by_placement, priced.by_scope):
        assert sum((part.amount for part in parts), ZERO) == priced.chosen.total
    assert [part.of for part in priced.by_placement] == ["deck", "walk", None]
    slab = next(part for part in priced.by_scope if part.of == "slab")
    assert (slab.also, slab.amount) == (("placing",), Decimal(480))
