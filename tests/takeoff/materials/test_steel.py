"""How many sheets of wire cover a slab."""

from fractions import Fraction

import pytest

from quotegen.takeoff.materials.steel import sheets_needed


@pytest.mark.parametrize(
    ("area", "lap_in", "sheets"), [(50, 0, 1), (51, 0, 2), (600, 0, 12), (600, 8, 15)]
)
def test_sheets_of_5_by_10_ft(area: int, lap_in: int, sheets: int):
    """Without laps a sheet covers 50 sq ft, lapped 8 in only 40.4 sq ft."""
    lap_ft = Fraction(lap_in, 12)
    assert sheets_needed(Fraction(area), Fraction(10), Fraction(5), lap_ft) == sheets
