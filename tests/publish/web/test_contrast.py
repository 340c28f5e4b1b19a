"""Contrast ratio, WCAG 2.2, success criterion 1.4.3 and its definitions."""

import pytest

from quotegen.publish.web.contrast import LEAST_FOR_TEXT, accent_ink, contrast


@pytest.mark.parametrize(
    ("one", "other", "ratio"),
    [
        ("#000000", "#ffffff", 21.0),
        ("#ffffff", "#ffffff", 1.0),
        ("#777777", "#ffffff", 4.48),
        ("#767676", "#ffffff", 4.54),
        ("#ffffff", "#767676", 4.54),
        ("#ff0000", "#ffffff", 4.00),
        ("#0000ff", "#ffffff", 8.59),
    ],
)
def test_published_ratios(one, other, ratio):
    """The ratios are those that WCAG's own pages and checkers state, to two places."""
    assert contrast(one, other) == pytest.approx(ratio, abs=0.005)


@pytest.mark.parametrize(
    "accent", ["#7a4a1e", "#ffd400", "#ffffff", "#00ff00", "#87ceeb", "#ff69b4", "#777777"]
)
def test_words_in_the_accent_can_be_read(accent):
    """Any accent comes out dark enough for text on white."""
    assert contrast(accent_ink(accent), "#ffffff") >= LEAST_FOR_TEXT


@pytest.mark.parametrize("accent", ["#7a4a1e", "#1f4e79", "#767676", "#000000"])
def test_a_dark_accent_stays_as_it_is(accent):
    """An accent that can be read is not touched."""
    assert accent_ink(accent) == accent
