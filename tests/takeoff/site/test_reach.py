"""How much of a deck a chute, a conveyor, barrows and a pump line reach."""

import math
from pathlib import Path

import pytest

from quotegen.takeoff.records import MethodReach, Reach
from tests.takeoff.site_world import figured

ACCESS = "access: {{note: By the gate., truck_stand: [{at}]{more}}}\n"
PATIO = """\
quote: T-1
date: 2026-05-14
start: 2026-06-08
title: Patio
customer: {{name: Wren Abernathy}}
site: {{address: 1 Test Lane, town: Harrow Bend}}
finish: broom
access: {{note: By the gate., truck_stand: [0, 0]{more}}}
placements: [{{id: patio, use: patio, add: [{{rectangle: 30 ft x 20 ft}}]}}]
"""


def _reach(folder: Path, more: str = "") -> Reach:
    """The reach of each method from one corner of a patio of 30 x 20 ft."""
    found = figured(folder, head=PATIO.format(more=more), falls="")
    assert found.results is not None
    assert found.results.takeoff.reach is not None
    return found.results.takeoff.reach


def _by_id(reach: Reach) -> dict[str, MethodReach]:
    return {method.id: method for method in reach.methods}


def test_share_of_a_deck_by_hand(tmp_path: Path):
    """A chute of 16 ft at the corner of a patio reaches a quarter disc of it."""
    reach = _reach(tmp_path)
    methods = _by_id(reach)
    share = 100 * math.pi * 16**2 / 4 / 600
    assert float(methods["chute"].share) == pytest.approx(share, abs=0.1)
    assert methods["conveyor"].share == 100
    assert float(reach.route_ft or 0) == pytest.approx(math.hypot(30, 20), abs=0.1)


def test_a_third_of_a_deck_is_not_covered(tmp_path: Path):
    """A chute that reaches a third of the patio does not cover it; the conveyor does."""
    methods = _by_id(_reach(tmp_path))
    assert not methods["chute"].covers
    assert methods["conveyor"].covers


@pytest.mark.parametrize(
    ("chute", "share", "covers"),
    [("27 ft", "80.9", False), ("34 ft", "99.2", False), ("34 ft 6 in", "99.6", True)],
)
def test_what_a_rake_pulls_counts_as_covered(tmp_path: Path, chute: str, share: str, covers: bool):
    """A method covers a deck from 99.5 % on: the far corner is pulled over with a rake."""
    method = _by_id(_reach(tmp_path, f", chute: {chute}"))["chute"]
    assert (str(method.share), method.covers) == (share, covers)


def test_the_cheapest_that_reaches_all_is_the_access_line(tmp_path: Path):
    """A pool deck out of a conveyor's reach is poured by barrows, and a message says so."""
    found = figured(tmp_path, ACCESS.format(at="54 ft, 10 ft", more=""))
    assert found.results is not None
    assert found.results.access is not None
    assert found.results.access.method == "barrows"
    assert "access-chosen" in {p.code for p in found.problems}
    line = next(one for one in found.results.quote.chosen.lines if one.rate_id == "barrows")
    assert line.amount == found.results.access.amount


def test_a_job_may_name_its_method(tmp_path: Path):
    """The named method is priced though a cheaper one reaches all, and there is no message."""
    found = figured(tmp_path, ACCESS.format(at="54 ft, 10 ft", more=", method: pump"))
    assert found.results is not None
    rates = [line.rate_id for line in found.results.quote.chosen.lines]
    assert "pump" in rates
    assert "barrows" not in rates
    assert found.problems == ()


def test_a_longer_chute_reaches_more(tmp_path: Path):
    """The length of this truck's chute takes the place of the one in the book."""
    shares = []
    for more in (", chute: 10 ft", ", chute: 18 ft"):
        found = figured(tmp_path, ACCESS.format(at="50 ft, 10 ft", more=more))
        assert found.results is not None
        assert found.results.takeoff.reach is not None
        shares.append(found.results.takeoff.reach.methods[0].share)
    assert shares[0] < shares[1]
