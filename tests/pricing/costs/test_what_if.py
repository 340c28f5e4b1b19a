"""What if: one thing changed at a time, against the quote."""

from fractions import Fraction

from quotegen.pricing.costs.records import What
from tests.pricing import shop
from tests.pricing.costed import owner


def test_a_discount_comes_off_the_margin(tmp_path):
    """$500, $1,000, 5 % and 10 % of 6,200: the margin falls by just that."""
    made = owner(tmp_path)
    assert [str(-one.price_change) for one in made.discounts] == [
        "500.00", "1000.00", "310.00", "620.00"]  # fmt: skip
    for one in made.discounts:
        assert one.margin - made.chosen.margin == one.price_change
        assert one.price == made.chosen.net_price + one.price_change


def test_one_more_truck_and_a_day_of_rain(tmp_path):
    """A yard, its truck and a short load: 260. A lost day: 2 x 8 x 30, the road 70, 50."""
    found = {one.what: str(one.cost_change) for one in owner(tmp_path).sensitivity}
    assert (found[What.MORE_TRUCK], found[What.RAIN_DAY]) == ("260.00", "600.00")


def test_a_tenth_more_area_orders_more_concrete(tmp_path):
    """220 sq ft take 2.72 cu yd, ordered as 2.75, a quarter yard more: 27.50 and hours."""
    (more,) = (o for o in owner(tmp_path).sensitivity if o.change == Fraction(1, 10))
    assert str(more.price_change) == "620.00"
    assert str(more.cost_change) == "40.88"  # (0.25 cu yd and 0.3 h: 27.50 + 9) x 1.12


def test_base_by_others(tmp_path):
    """Neither the line, nor its hours, nor the plate: 170 direct, with shares 190.40."""
    (way,) = (o for o in owner(tmp_path).savings if o.what is What.BASE_BY_OWNER)
    assert (str(way.price_change), str(way.cost_change)) == ("-2000.00", "-190.40")


def test_no_way_down_raises_the_price(tmp_path):
    """A way down is less money, the largest step first."""
    changes = [one.price_change for one in owner(tmp_path).savings]
    assert changes
    assert all(change < 0 for change in changes)
    assert changes == sorted(changes)


def test_two_phases(tmp_path):
    """Two slabs, one each time: the price is the same here, the days and the cost double."""
    job = shop.job(shop.placement("10 ft x 10 ft", "a"),
                   shop.placement("10 ft x 10 ft", "b", at="40 ft"))  # fmt: skip
    first, both = owner(tmp_path, job).phases
    assert (str(first.price), str(both.price)) == ("3100.00", "6200.00")
    assert both.cost_change > 0
