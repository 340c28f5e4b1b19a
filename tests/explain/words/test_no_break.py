"""Numbers that stay on one line with their units; nothing else of a text is changed."""

import pytest

from quotegen.explain.wording import Words
from quotegen.explain.words.no_break import NO_BREAK, in_one_piece, on_page, ties
from quotegen.quantity import Units
from tests.explain.drawn import FONT


def _words(locale: str, *units: str) -> Words:
    labels = {f"unit_{number}": unit for number, unit in enumerate(units)}
    return Words(labels=labels, locale=locale, units=Units.US, font=FONT)


ENGLISH = ties(_words("en_US", "sq ft", "ft", "cu yd", "m²"))


@pytest.mark.parametrize(
    ("said", "shown"),
    [
        ("it takes 7 days", "it takes 7_days"),
        ("340.0 sq ft of patio", "340.0_sq_ft of patio"),
        ("for 12 cu yd", "for 12_cu_yd"),
        ("below 50 °F, or 95 % of it", "below 50_°F, or 95_% of it"),
        ("Fri, Jul 10", "Fri, Jul_10"),
        ("by June 13, 2026.", "by June_13, 2026."),
        ("4-3/4 in thick", "4-3/4_in thick"),
        ("$96.00 / cu yd", "$96.00_/_cu_yd"),
        ("and / or", "and / or"),
        ("95 times in 100.", "95_times in 100."),
        ("finished in 2024 · Ashwick", "finished in 2024 · Ashwick"),
        ("two sq ft", "two sq ft"),
    ],
)
def test_a_number_keeps_to_its_unit_and_a_month_to_its_day(said, shown):
    """What follows a number stays with it, a unit of two words whole; no other blank is touched."""
    assert ENGLISH(said) == shown.replace("_", NO_BREAK)


def test_months_and_units_are_those_of_the_language():
    """In German a day stands before its month, and the month is another word."""
    tied = ties(_words("de_DE", "laufende Meter"))
    assert tied("am 10 Juli") == f"am 10{NO_BREAK}Juli"
    assert tied("12 laufende Meter") == f"12{NO_BREAK}laufende{NO_BREAK}Meter"
    assert tied("12 sq ft") == f"12{NO_BREAK}sq ft"


@pytest.mark.parametrize("number", ["555-0117", "4-3/4", "2026-041", "1-800-555-0117"])
def test_a_number_with_a_hyphen_is_set_in_one_piece(number):
    """A telephone number, a mixed number and a number of a quote may not break at the hyphen."""
    assert in_one_piece(f"Call {number}.") == f'Call <span class="tie">{number}</span>.'
    assert in_one_piece("a follow-up") == "a follow-up"


def test_a_sum_keeps_its_sign():
    """Behind a plus or a minus no line ends, in a sentence and where the sum stands alone."""
    assert in_one_piece("by −$27.67, or +$1,028.80.") == (
        'by <span class="tie">−$27.67</span>, or <span class="tie">+$1,028.80</span>.'
    )
    assert in_one_piece("+$9.00") == '<span class="tie">+$9.00</span>'


def test_a_text_on_a_page_is_escaped_before_it_is_tied():
    """What was typed stays a text, whatever is in it; both kinds of ties come to stand in it."""
    assert on_page('<b>7 days</b> & 4-3/4"', ENGLISH) == (
        f'&lt;b&gt;7{NO_BREAK}days&lt;/b&gt; &amp; <span class="tie">4-3/4</span>&#34;'
    )
