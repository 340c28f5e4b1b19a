"""Swatches: in the colors of the rate book."""

from quotegen.explain.pictures.swatches import finish_swatch, look_swatch
from tests.explain.pictures.two_finishes import two_finishes


def test_a_swatch_is_in_the_colors_of_its_look():
    """The base color fills it and the second one draws its lines; without colors it is gray."""
    look = str(look_swatch(two_finishes(), ("sand", "nut")).svg)
    assert 'fill="#d3bd94"' in look
    assert 'stroke="#6b4a32"' in look
    assert "#d3bd94" not in str(finish_swatch(two_finishes(), "plain").svg)
