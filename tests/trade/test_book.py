"""Looking rules up by the quote date, and wording them."""

from datetime import date
from decimal import Decimal
from fractions import Fraction

import pytest

from quotegen.trade.rules import load_rules

RULES = load_rules()
ON = date(2026, 11, 24)


def test_the_quote_date_picks_the_value() -> None:
    """A value counts from its first day on, and the one before it until the day before."""
    assert RULES.number("deicer_strength", date(2019, 12, 31)) == Decimal(4000)
    assert RULES.number("deicer_strength", date(2020, 1, 1)) == Decimal(4500)


def test_a_date_before_the_first_value_is_refused() -> None:
    """A rule says nothing before it starts, and the message names rule and dates."""
    with pytest.raises(LookupError, match=r"deicer_strength starts on 2014-01-01.*2013-12-31"):
        RULES.number("deicer_strength", date(2013, 12, 31))


def test_an_unknown_rule_is_named() -> None:
    """A misspelt rule is named in the message."""
    with pytest.raises(LookupError, match="no trade rule named joint_spacin"):
        RULES.rule("joint_spacin")


def test_numbers_are_exact() -> None:
    """A number comes from its text, so 0.376 is 376/1000 and not near it."""
    assert RULES.table("bar_weight", ON)["#3"] == Decimal("0.376")
    assert RULES.exact("crack_width", ON) == Fraction(1, 4)


def test_a_rule_of_another_shape_is_refused() -> None:
    """Asking a range for a number, or a table for text, is a bug and says so."""
    with pytest.raises(TypeError, match="walk_wait is not a number"):
        RULES.number("walk_wait", ON)
    with pytest.raises(TypeError, match="crack_width is not a range"):
        RULES.range("crack_width", ON)
    with pytest.raises(TypeError, match="crack_width is not a table"):
        RULES.table("crack_width", ON)
    with pytest.raises(TypeError, match="crack_width is not steps"):
        RULES.step("crack_width", Fraction(4), ON)
    with pytest.raises(TypeError, match="bar_weight is not"):
        RULES.text("bar_weight", ON)


@pytest.mark.parametrize(
    ("rule_id", "text"),
    [
        ("slope_house_reach", "10 ft"),
        ("crack_width", "1/4 in"),
        ("riser_height_max", "7-3/4 in"),
        ("pool_deck_slope", "1/4 to 1/2 in per ft"),
        ("joint_depth_share", "1/4 of the thickness"),
        ("deicer_strength", "4,500 psi"),
        ("base_loose_density", "1.4 to 1.5 ton per cu yd"),
        ("panel_ratio_max", "1.5 times"),
        ("color_wait_cool", "1 month"),
        ("color_wait_warm", "2 weeks"),
        ("walk_wait", "24 to 48 hours"),
        ("slope_by_house", "2%"),
        ("salt_wait", "the first winter"),
        ("release_dose", "3 to 3.5 lb per 100 sq ft"),
    ],
)
def test_a_rule_reads_as_people_say_it(rule_id: str, text: str) -> None:
    """Tape units show fractions, counted units take an s, and a ratio stands alone."""
    assert RULES.text(rule_id, ON) == text


def test_every_rule_can_be_worded_or_looked_up() -> None:
    """Each rule that is not a table has a text without a gap."""
    for rule in RULES.rules.values():
        try:
            text = RULES.text(rule.rule_id, ON)
        except TypeError:
            continue
        assert text == text.strip() != ""


def test_a_number_of_ones_own_begins_on_its_day() -> None:
    """A company's figure holds from that day on; its source, the past and the book do not move."""
    before = date(2026, 11, 1)
    own = RULES.with_own({"crack_width": Decimal("0.125")}, ON)
    assert own.number("crack_width", ON) == Decimal("0.125")
    assert own.number("crack_width", before) == RULES.number("crack_width", before)
    assert own.rule("crack_width").at(ON).reference == RULES.rule("crack_width").at(ON).reference
    assert RULES.number("crack_width", ON) == Decimal("0.25")


def test_nothing_of_ones_own_is_the_same_book() -> None:
    """Without figures of its own a company has the published rules."""
    assert RULES.with_own({}, ON).rules == RULES.rules
