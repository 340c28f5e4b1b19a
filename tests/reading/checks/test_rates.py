"""Single rates of the book, on both sides of each line that a check draws."""

from pathlib import Path

import pytest

from tests.reading.changed import codes_after


@pytest.mark.parametrize(
    ("before", "after", "codes"),
    [
        ("rate: $4.20 / sq ft", "rate: $4.20 / sq ft, cost: $3 / sq ft", []),
        ("rate: $4.20 / sq ft", "rate: $4.20 / sq ft, cost: $3 / ft", ["cost-unit"]),
        ("rate: $4.20 / sq ft", "rate: $4.20 / ft", ["rate-of"]),
        ("rate: $4.20 / sq ft", "rate: $4.20 / ft, of: outer edge", []),
        ("rate: $4.20 / sq ft", "rate: $45 / m2", ["metric-rate"]),
        ("covers: [slab]", "covers: [slab, moat]", ["unknown-scope-item"]),
        ("covers: [slab]", "covers: [slab], reinforcement: bar", ["unknown-reinforcement"]),
    ],
)
def test_a_rate_agrees_with_itself_and_the_book(
    tmp_path: Path, before: str, after: str, codes: list[str]
):
    """Price and cost are for one of the same thing, and what a rate names is there."""
    assert codes_after(tmp_path, rate_book=(before, after)) == codes
