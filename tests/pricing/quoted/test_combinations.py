"""Combinations: what each one holds, so that a page can show it without a sum."""

from decimal import Decimal

from quotegen.money import ZERO
from tests.pricing import offers, shop

RATES = {
    **shop.RINSE_AND_FILM,
    "drain": shop.rate("$10 / ft", "drain", applies="asked"),
    "lawn": shop.rate("$50 lump", "protection", applies="asked"),
}
FINISHES = {"plain": shop.PLAIN, "fancy": shop.FANCY}
EXTRAS = {"drain": "12 ft", "lawn": "yes"}


def test_a_combination_holds_its_lines_and_visits(tmp_path):
    """The lines add up to the total; a finish with one visit more has one visit more."""
    job = shop.job(compare=["fancy"], extras=EXTRAS)
    priced = shop.quote(tmp_path, job, rate_book=shop.book(RATES, FINISHES))
    assert len(priced.combinations) == 8
    for one in priced.combinations:
        assert sum((line.amount for line in one.lines), ZERO) == one.total
        assert one.visits == (3 if one.finish == "fancy" else 2)
        assert {line.rate_id for line in one.lines} & set(EXTRAS) == set(one.extras)


def test_an_extra_adds_the_difference_of_two_totals(tmp_path):
    """Under a minimum of $500 a drain of $120 to 200 sq ft at $1 adds nothing, with lawn or not."""
    book = shop.book(RATES, FINISHES, minimum="$500")
    combinations = shop.quote(tmp_path, shop.job(extras=EXTRAS), rate_book=book).combinations
    assert {one.adds for one in combinations} == {(ZERO, ZERO)}
    book = shop.book(RATES, FINISHES, minimum="$300")
    adds = {
        one.extras: one.adds
        for one in shop.quote(tmp_path, shop.job(extras=EXTRAS), rate_book=book).combinations
    }
    # 200 alone is lifted to 300; with the lawn 250 still is; with the drain it is 320, both 370.
    assert adds[()] == (Decimal(20), ZERO)
    assert adds["lawn",] == (Decimal(70), ZERO)
    assert adds["drain",] == (Decimal(20), Decimal(50))
    assert adds["drain", "lawn"] == (Decimal(70), Decimal(50))


def test_a_foot_of_area_costs_what_its_finish_does(tmp_path):
    """$1.00 plain; $2.00 fancy with 10 cents of rinsing and 20 of film."""
    priced = shop.quote(tmp_path, shop.job(compare=["fancy"]),
                        rate_book=shop.book(RATES, FINISHES))  # fmt: skip
    rates = {one.finish: one.area_price[0].rate for one in priced.combinations}
    assert rates == {"plain": Decimal("1.00"), "fancy": Decimal("2.30")}


def test_every_combination_is_priced(tmp_path):
    """Each is what a job with just these choices costs, and its payments add up."""
    extras = {"drain": "12 ft", "lawn": "yes"}
    job = offers.two_placements(compare=["fancy"], extras=extras, colors=[{"base": "clay"}])
    priced = shop.quote(tmp_path, job, rate_book=offers.BOOK)
    # plain: 4 sets of extras; with a fancy deck and with fancy all over, each 4 with either color.
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
    book = shop.book(offers.RATES, offers.FINISHES, minimum="$1,000")
    job = shop.job(extras={"drain": "12 ft", "lawn": "yes"})
    priced = shop.quote(tmp_path, job, rate_book=book)
    assert [str(one.total) for one in priced.combinations] == ["1000.00"] * 4
