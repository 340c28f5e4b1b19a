"""Warnings about water, steps and heights."""

from datetime import date
from pathlib import Path

import pytest

from quotegen.problem import Problem
from quotegen.trade.rules import load_rules
from tests.takeoff.site_world import figured

HEAD = """\
quote: T-1
date: 2026-05-14
start: 2026-06-08
title: Patio and walk
customer: {name: Wren Abernathy}
site: {address: 1 Test Lane, town: Harrow Bend}
finish: broom
placements:
"""
PATIO = """\
  - id: patio
    use: patio
    add: [{rectangle: 30 ft x 6 ft, against_house: bottom}]
"""
DRAINED = "    drained_edges: [house edge]\n"


def _warnings(folder: Path, *placements: str) -> tuple[Problem, ...]:
    """What is said of the placements; so small a job is also under the company's floor."""
    found = figured(folder, head=HEAD + "".join(placements), falls="").problems
    return tuple(problem for problem in found if problem.path.startswith("placements"))


def _falls(fall: str, toward: str) -> str:
    return f"    fall: {fall}\n    falls_toward: {toward}\n"


def _codes(problems: tuple[Problem, ...]) -> list[str]:
    return [problem.code for problem in problems]


@pytest.mark.parametrize(
    ("fall", "toward", "codes"),
    [
        ("1/4 in per ft", "top", []),
        ("1/8 in per ft", "top", ["fall-at-house"]),
        ("1/4 in per ft", "bottom", ["falls-to-house"]),
        ("1/4 in per ft", "left", ["fall-at-house"]),
    ],
)
def test_a_patio_must_fall_away_from_the_house(
    tmp_path: Path, fall: str, toward: str, codes: list[str]
):
    """2 % away from the house passes; less, along the wall, or toward it does not."""
    assert _codes(_warnings(tmp_path, PATIO, _falls(fall, toward))) == codes


def test_a_drain_at_the_house_takes_the_water(tmp_path: Path):
    """Where the house edge has a drain, a patio may fall toward it."""
    assert _warnings(tmp_path, PATIO, _falls("1/4 in per ft", "bottom"), DRAINED) == ()


@pytest.mark.parametrize(("away", "codes"), [("9 ft 11 in", ["fall-at-house"]), ("10 ft 1 in", [])])
def test_the_rule_of_the_house_ends_at_its_distance(tmp_path: Path, away: str, codes: list[str]):
    """A walk of little fall is warned of within 10 ft of the house (IRC R401.3), not beyond."""
    assert load_rules().text("slope_house_reach", date(2026, 5, 14)) == "10 ft"
    walk = f"  - id: walk\n    use: walk\n    add: [{{rectangle: 30 ft x 4 ft, at: [0, {away}]}}]\n"
    falls = (_falls("1/4 in per ft", "top"), walk, _falls("1/8 in per ft", "top"))
    assert _codes(_warnings(tmp_path, PATIO, *falls)) == codes


def test_a_steep_fall_reads_as_on_a_tape(tmp_path: Path):
    """Nine eighths of an inch are printed as 1-1/8."""
    (problem,) = _warnings(tmp_path, PATIO, _falls("1-1/8 in per ft", "bottom"))
    assert "falls toward the house, 1-1/8 in per ft;" in problem.message
