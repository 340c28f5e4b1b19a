"""How many sheets of wire cover a slab."""

from fractions import Fraction

import pytest

from quotegen.takeoff.materials.steel import sheets_needed


@pytest.mark.parametrize(
    ("area", "lap_in", "sheets"),
    [(50, 0, 1), (51, 0, Fraction("1.02")), (600, 8, Fraction(600 * 9, 364))],
)
def test_sheets_of_5_by_10_ft(area: int, lap_in: int, sheets: Fraction):
    """Without laps a sheet covers 50 sq ft, lapped 8 in only 9-1/3 x 4-1/3 = 40.4 sq ft."""
    lap_ft = Fraction(lap_in, 12)
    assert sheets_needed(Fraction(area), Fraction(10), Fraction(5), lap_ft) == sheets
