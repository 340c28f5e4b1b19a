"""Jobs for the tests of the site: the example company, and a deck round a pool."""

from pathlib import Path

from quotegen.pipeline import PricedJob, figure
from quotegen.takeoff.records import Material
from tests.pricing.shop import shared
from tests.world import write_world

HEAD = """\
quote: T-1
date: 2026-05-14
start: 2026-06-08
title: Deck
customer: {name: Wren Abernathy}
site: {address: 1 Test Lane, town: Harrow Bend}
finish: slate
placements:
  - id: deck
    use: pool deck
    add: [{rectangle: 44 ft x 30 ft, against_house: bottom}]
    take_away: [{rectangle: 28 ft x 14 ft, at: [8 ft, 8 ft], is: pool}]
"""
FALLING = """\
    fall: 1/4 in per ft
    falls_away_from: [pool, house]
    drains: [{from: [8 ft, 4 ft], to: [36 ft, 4 ft], by: the pool builder}]
"""
"""How the water of that deck runs: away from pool and house to a drain between them."""


def figured(
    folder: Path, more: str = "", head: str = HEAD, falls: str = FALLING, **files: str
) -> PricedJob:
    """Figure a job that must be without error; `files` take the place of the company's."""
    found = figure(write_world(folder, head + falls + more, **files), shared())
    assert found.results is not None, [str(problem) for problem in found.problems]
    return found


def by_id(found: PricedJob) -> dict[str, Material]:
    """Return the materials of a job with one placement."""
    assert found.results is not None
    return {material.id: material for material in found.results.takeoff.materials}
