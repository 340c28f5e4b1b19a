"""What is usual, in so wide a sense that an owner is asked to look again at what is not."""

from collections.abc import Iterable, Mapping
from datetime import date
from decimal import Decimal
from fractions import Fraction

from quotegen.quantity import NO_QUANTITY, Unit, decimal_of
from quotegen.trade.book import PER_CENT, Range, RuleBook
from quotegen.trade.wording import number_text, with_unit

_PRICES: Mapping[Unit, str] = {
    Unit.SQ_FT: "rate_usual_sqft",
    Unit.FT: "rate_usual_ft",
    Unit.CU_YD: "rate_usual_cuyd",
    Unit.EACH: "rate_usual_each",
    Unit.VISIT: "rate_usual_each",
    Unit.LUMP: "rate_usual_each",
}
_ON_THE_ROAD = (Unit.HOUR, Unit.MILE)


def usual_price(unit: Unit, items: Iterable[str], rules: RuleBook, on: date) -> Range | None:
    """Return the dollars that a price by one unit commonly is between. From memory.

    The common prices of all that it pays for are added; far outside is five times as much, or a
    fifth.

    Args:
        unit: what the price is for one of.
        items: the scope items that it pays for; a finish by its kind, such as `broom`.
        rules: the rule book.
        on: the day of the price.

    Returns:
        None where nothing is known of these items by this unit.
    """
    if unit in _ON_THE_ROAD:
        table, items = rules.table("rate_usual_road", on), (unit.value,)
    elif unit in _PRICES:
        table = rules.table(_PRICES[unit], on)
    else:
        return None
    middle = sum((table.get(item, NO_QUANTITY) for item in items), start=NO_QUANTITY)
    far = rules.number("rate_far", on)
    return Range(least=middle / far, most=middle * far) if middle else None


def usual_area_sqft(use: str, rules: RuleBook, on: date) -> Range:
    """Return the square feet that a placement of a use commonly has. Common practice."""
    least = rules.table("area_usual_least", on)
    most = rules.number("area_usual_most", on)
    return Range(least=least.get(use, least["other"]), most=most)


def usual_side_ft(rules: RuleBook, on: date) -> Range:
    """Return the feet that a placement commonly is wide, at least, and long. Common practice."""
    return rules.range("side_usual", on)


def usual_thickness_in(rules: RuleBook, on: date) -> Range:
    """Return the inches that an outdoor slab commonly is thick. Common practice."""
    return rules.range("thickness_usual_range", on)


def usual_base_in(rules: RuleBook, on: date) -> Range:
    """Return the inches that a base under it commonly is deep. Common practice."""
    return rules.range("base_usual_range", on)


def usual_material(rule: str, rules: RuleBook, on: date) -> Range:
    """Return what a dose of the rate book commonly is, by its rule. Common practice."""
    return rules.range(rule, on)


def in_words(rule: str, value: Decimal, rules: RuleBook, on: date) -> tuple[str, str]:
    """Return a value of a material and what is usual, each with the unit."""
    unit = rules.rule(rule).unit
    said = with_unit(number_text(value, unit), unit, one=value == 1)
    return said, rules.text(rule, on)


def digits_with_area_code(rules: RuleBook, on: date) -> Decimal:
    """Return how many digits a telephone number has with its area code. Common practice."""
    return rules.number("phone_digits", on)


def lacks_area_code(phone: str, rules: RuleBook, on: date) -> bool:
    """Say whether a telephone number is too short to have one.

    One of another country begins with +, and words alone are no number.
    """
    digits = sum(letter.isdigit() for letter in phone)
    return 0 < digits < digits_with_area_code(rules, on) and not phone.startswith("+")


def is_usual(value: Fraction | Decimal, usual: Range) -> bool:
    """Say whether a value is not far outside the usual."""
    return usual.least <= value <= usual.most


def days_to_start(rules: RuleBook, on: date) -> Decimal:
    """Return how many days after the quote work commonly starts at the latest. Common practice."""
    return rules.number("start_usual_most", on)


def days_of_a_book(rules: RuleBook, on: date) -> Decimal:
    """Return how many days a rate book is commonly quoted from at most. Common practice."""
    return rules.number("book_usual_age", on)


def share_at_signing(rules: RuleBook, on: date) -> Fraction:
    """Return the largest share of a price that is commonly asked at signing. Common practice."""
    return rules.exact("deposit_usual_most", on) * PER_CENT


def more_than_due(paid: Decimal, due: Decimal, rules: RuleBook, on: date) -> bool:
    """Say whether a payment is more than a check rounded up from what is due. From memory."""
    return paid > due * decimal_of(1 + rules.exact("paid_rounded_up", on) * PER_CENT)


def sqft_a_person_a_day(rules: RuleBook, on: date) -> Decimal:
    """Return the most square feet that one person commonly pours in a day. Common practice."""
    return rules.number("area_a_person_a_day", on)


def steepest_usual_in(rules: RuleBook, on: date) -> Decimal:
    """Return the inches in a foot that outdoor concrete falls at most. Common practice."""
    return rules.number("fall_usual_most", on)


def usual_in_forms(quoted_sqft: Decimal, rules: RuleBook, on: date) -> Range:
    """Return the square feet that a quoted area commonly has in the forms. Common practice."""
    times = rules.number("measured_far", on)
    return Range(least=quoted_sqft / times, most=quoted_sqft * times)
