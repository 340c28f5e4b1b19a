"""A placement so small, large, narrow or long that it is asked about."""

from pathlib import Path

import pytest

from quotegen.pipeline import figure
from tests.pricing import shop
from tests.world import write_world


@pytest.mark.parametrize(
    ("size", "use", "codes"),
    [
        ("24 in x 16 in", "patio", ["area-unusual"]),
        ("5 ft x 2 ft", "patio", []),  # 10 sq ft
        ("3 ft x 3 ft", "patio", ["area-unusual"]),
        ("3 ft x 3 ft", "pad", []),  # under a heat pump
        ("200 ft x 100 ft", "patio", []),
        ("200 ft x 100 ft 1 in", "patio", ["area-unusual"]),
        ("44 ft x 1 ft", "walk", []),
        ("44 ft x 11-1/2 in", "walk", ["side-unusual"]),
        ("400 ft x 10 ft", "drive", []),
        ("401 ft x 10 ft", "drive", ["side-unusual"]),
        ("1000 ft x 6 in", "walk", ["side-unusual"]),  # one cause, said once
    ],
)
def test_sizes_at_each_edge(tmp_path: Path, size: str, use: str, codes: list[str]):
    """From 10 sq ft (a pad from 4) to 20,000, from 1 ft wide to 400 ft long: common practice."""
    book = shop.book(usual={use: {"thickness": "4 in", "base": "4 in", "reinforcement": "fiber"}})
    job = write_world(tmp_path, shop.job({**shop.placement(size), "use": use}), rate_book=book)
    found = [problem.code for problem in figure(job, shop.shared()).problems]
    assert [code for code in found if code in {"area-unusual", "side-unusual"}] == codes


@pytest.mark.parametrize(
    ("area", "asked"), [("100", 0), ("99.9", 1), ("400", 0), ("400.1", 1), ("99,999,999", 1)]
)
def test_forms_far_from_the_quote(tmp_path: Path, area: str, asked: int):
    """200 sq ft were quoted; forms move it to half or twice as much at most: common practice."""
    measured = {"date": "2026-06-09", "placements": {"patio": {"area": f"{area} sq ft"}}}
    accepted = {"date": "2026-05-20"}
    typed = shop.job(shop.placement("20 ft x 10 ft"), accepted=accepted, measured=measured)
    job = write_world(tmp_path, typed, rate_book=shop.book())
    found = [problem.code for problem in figure(job, shop.shared()).problems]
    assert found.count("measured-far-off") == asked
