"""A rate book beside its rates, on both sides of each line that a check draws."""

from pathlib import Path

import pytest

from tests.reading.changed import codes_after


@pytest.mark.parametrize(
    ("before", "after", "codes"),
    [
        ("rate: $1.90 / sq ft", "rate: $1.90 / sq ft, cost: $30 lump", ["cost-unit"]),
        ("rate: $1.90 / sq ft", "rate: $1.90 / ft", ["finish-unit"]),
        ("sealer: none", "sealer: none, brings: [slab]", ["brings-not-with-finish"]),
        ("sealer: none", "sealer: none, brings: [wash]", ["missing-rate"]),
        ("visit: pour", "visit: seal", ["unknown-visit"]),
    ],
)
def test_a_book_has_what_its_finishes_name(
    tmp_path: Path, before: str, after: str, codes: list[str]
):
    """A finish is priced by area, and brings rates and visits that the book has."""
    assert codes_after(tmp_path, rate_book=(before, after)) == codes
