"""Numbers that stay on one line with their units; nothing else of a page is changed."""

import pytest

from quotegen.publish.web.no_break import NO_BREAK, tied_page, ties

UNITS = ("sq ft", "ft", "cu yd", "m²")


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
    assert ties("en_US", UNITS)(said) == shown.replace("_", NO_BREAK)


def test_months_and_units_are_those_of_the_language():
    """In German a day stands before its month, and the month is another word."""
    tied = ties("de_DE", ("laufende Meter",))
    assert tied("am 10 Juli") == f"am 10{NO_BREAK}Juli"
    assert tied("12 laufende Meter") == f"12{NO_BREAK}laufende{NO_BREAK}Meter"
    assert tied("12 sq ft") == f"12{NO_BREAK}sq ft"


def test_only_what_is_read_is_tied():
    """Scripts, styles, drawings, titles and attributes stay as they are written."""
    plain = (
        '<title>7 days</title><style>a{margin:0 2 px}</style><script>"7 days"</script>'
        '<svg><text x="1 m">7 days</text></svg><p title="7 days">'
    )
    assert tied_page(f"{plain}7 days</p>", ties("en_US", UNITS)) == f"{plain}7{NO_BREAK}days</p>"


@pytest.mark.parametrize("number", ["555-0117", "4-3/4", "2026-041", "1-800-555-0117"])
def test_a_number_with_a_hyphen_is_set_in_one_piece(number):
    """A telephone number, a mixed number and a number of a quote may not break at the hyphen."""
    page = tied_page(f"<p>Call {number}.</p>", ties("en_US", UNITS))
    assert page == f'<p>Call <span class="tie">{number}</span>.</p>'
    assert tied_page("<p>a follow-up</p>", ties("en_US", UNITS)) == "<p>a follow-up</p>"


def test_a_sum_in_a_sentence_keeps_its_sign():
    """Behind a plus or a minus no line ends; a sum that stands alone in its cell needs no help."""
    page = tied_page("<p>by −$27.67, or +$1,028.80.</p>", ties("en_US", UNITS))
    assert page == (
        '<p>by <span class="tie">−$27.67</span>, or <span class="tie">+$1,028.80</span>.</p>'
    )
    assert tied_page("<td>+$9.00</td>", ties("en_US", UNITS)) == "<td>+$9.00</td>"
