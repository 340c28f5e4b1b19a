"""The font of the drawings: the width of a text, and its lines."""

from quotegen.explain.font import Font

FONT = Font(
    family="Steps", plain={"i": 0.25, "m": 1.0, " ": 0.5}, bold={"i": 0.5, "m": 1.5, " ": 0.5}
)


def test_a_text_is_the_sum_of_its_letters():
    """Each letter counts with its own width, in the weight that is asked for."""
    assert FONT.width("mi im", 10) == 30
    assert FONT.width("mi im", 10, face="bold") == 45


def test_a_letter_that_the_font_lacks_counts_as_its_widest():
    """So a text in another alphabet is given too much room rather than too little."""
    assert FONT.width("ж", 10) == 10


def test_a_text_is_broken_where_its_line_is_full():
    """A word goes on the next line where it would run over, and not before."""
    assert FONT.wrapped("mm mm mm", 45, 10) == ("mm mm", "mm")
    assert FONT.wrapped("mm mm mm", 44.9, 10) == ("mm", "mm", "mm")
    assert FONT.wrapped("mm mm", 45, 10, face="bold") == ("mm", "mm")


def test_a_word_wider_than_the_line_stays_whole():
    """It is never cut, and it begins no empty line."""
    assert FONT.wrapped("mmmm i", 20, 10) == ("mmmm", "i")
