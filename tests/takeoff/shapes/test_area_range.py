"""How sure an area is: it lies in its range."""

from pathlib import Path

import pytest

from tests.pricing import shop

EVERY_EXAMPLE = pytest.mark.parametrize("job_file", shop.JOBS, ids=lambda path: path.stem)


@EVERY_EXAMPLE
def test_an_area_lies_in_its_range(job_file: Path):
    """The printed area is between the printed ends, and they are not the same."""
    for placement in shop.example_results(job_file).takeoff.placements:
        found = placement.area_range
        assert found.low_sqft < placement.area_sqft < found.high_sqft
        assert found.low_m2 < placement.area_m2 < found.high_m2
