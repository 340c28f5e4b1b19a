"""Falls that are missing, pools that would not be level, drains that are not low or not paid."""

from pathlib import Path

import pytest

from quotegen.pipeline import figure
from quotegen.problem import Problem
from tests.pricing.shop import shared
from tests.takeoff.site_world import FALLING, HEAD
from tests.world import write_world

WALK = HEAD[: HEAD.index("  - id")] + "  - id: walk\n    use: {use}\n    add: [{shape}]\n"


def _codes(folder: Path, text: str) -> list[str]:
    return [problem.code for problem in _said(folder, text)]


def _said(folder: Path, text: str) -> tuple[Problem, ...]:
    problems = figure(write_world(folder, text), shared()).problems
    return tuple(one for one in problems if one.path.startswith("placements"))


@pytest.mark.parametrize(
    ("use", "at_house", "codes"),
    [
        ("apron", "", ["fall-missing"]),
        ("pool deck", "", ["fall-missing"]),
        ("patio", ", against_house: left", ["fall-missing"]),
        ("apron", ", against: {left: garage}", ["fall-missing"]),
        ("patio", "", []),
        ("walk", "", []),
        ("walk", ", against_house: left", ["fall-missing"]),
        ("pad", "", []),
    ],
)
def test_a_fall_is_asked_for(tmp_path: Path, use: str, at_house: str, codes: list[str]):
    """An apron, a pool deck and what touches a building are never level; a walk or pad may be."""
    shape = f"{{rectangle: 20 ft x 10 ft{at_house}}}"
    assert _codes(tmp_path, WALK.replace("{use}", use).replace("{shape}", shape)) == codes


@pytest.mark.parametrize(
    ("fall", "toward", "codes"),
    [
        ("1/4 in per ft", "top", ["pool-edge-not-level"]),  # 14 ft drop 3-1/2 in
        ("1/100 in per ft", "top", []),  # 0.14 in over 14 ft, within 1/4 in
        ("1/100 in per ft", "right", ["pool-edge-not-level"]),  # 0.28 in over 28 ft
    ],
)
def test_a_pool_is_level(tmp_path: Path, fall: str, toward: str, codes: list[str]):
    """The edge of a pool may drop 1/4 in from its highest to its lowest point, and no more."""
    falls = f"    fall: {fall}\n    falls_toward: {toward}\n"
    found = _codes(tmp_path, HEAD + falls)
    assert [code for code in found if code == "pool-edge-not-level"] == codes


def test_water_from_pool_and_house_meets_at_a_drain(tmp_path: Path):
    """Half way between pool and house stands a drain; without it the low line is warned of."""
    assert _codes(tmp_path, HEAD + FALLING) == []
    without = "".join(line for line in FALLING.splitlines(keepends=True) if "drains" not in line)
    assert _codes(tmp_path, HEAD + without) == ["low-line-not-drained"]


@pytest.mark.parametrize(
    ("drain", "codes"),
    [
        ("{from: [8 ft, 2 ft], to: [36 ft, 2 ft], by: others}", []),  # the house lies lower
        ("{from: [8 ft, 4 ft], to: [36 ft, 6 ft], by: others}", ["drain-not-low"]),
        ("{from: [8 ft, 4 ft], to: [50 ft, 4 ft], by: others}", ["drain-off-slab"]),
        ("{from: [8 ft, 4 ft], to: [36 ft, 4 ft]}", ["drain-not-priced"]),
    ],
)
def test_a_drain_is_low_on_the_slab_and_paid(tmp_path: Path, drain: str, codes: list[str]):
    """A drain lies in its slab and on its low line, and we or somebody named supplies it."""
    falls = f"    fall: 1/4 in per ft\n    falls_away_from: [pool, house]\n    drains: [{drain}]\n"
    assert _codes(tmp_path, HEAD + falls) == codes


def test_a_drain_in_the_price_needs_no_name(tmp_path: Path):
    """Where the price has a drain, it is ours and nobody else is named."""
    falls = FALLING.replace(", by: the pool builder", "")
    assert _codes(tmp_path, HEAD + falls + "    include: {trench_drain: 28 ft}\n") == []


def test_a_border_knows_its_pool(tmp_path: Path):
    """A deck of one width round a pool may fall away from it without a shape taken away."""
    ring = "{border: {pool: {rectangle: 28 ft x 14 ft}, width: 5 ft}}"
    text = WALK.replace("{use}", "pool deck").replace("{shape}", ring)
    assert _codes(tmp_path, text + "    fall: 1/4 in per ft\n    falls_away_from: pool\n") == []


def test_a_slab_falls_away_from_the_floor_of_a_garage(tmp_path: Path):
    """A garage is a building: a slab at it falls away from it, by the rule of the house."""
    shape = "{rectangle: 20 ft x 10 ft, against: {left: garage}}"
    text = WALK.replace("{use}", "apron").replace("{shape}", shape)
    fall = "    fall: 1/4 in per ft\n"
    assert _codes(tmp_path, text + fall + "    falls_away_from: house\n") == []
    assert _codes(tmp_path, text + fall + "    falls_toward: left\n") == ["falls-to-house"]
