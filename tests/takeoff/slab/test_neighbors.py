"""Edges that two placements share, edges at what stands there, and a pool's edge cast or not."""

from dataclasses import replace
from decimal import Decimal
from typing import Any

import pytest

from quotegen.reading.files.shapes import EdgeKind
from quotegen.reading.files.site_parts import Between
from quotegen.reading.records import PlacementSpec
from quotegen.takeoff.plan_geometry import Against
from quotegen.takeoff.records import PlacementTakeoff
from tests.takeoff.plans import placement, takeoff

PATIO = {"rectangle": "20 ft x 10 ft"}
POOL = {"rectangle": "8 ft x 4 ft", "at": ["6 ft", "3 ft"], "is": "pool"}


def _second(between: Between, **shape: Any) -> PlacementSpec:
    spec = placement(shape, name="walk", number=1)
    return replace(spec, typed=spec.typed.model_copy(update={"between": between}))


def _both(
    between: Between = Between.FILLER, **shape: Any
) -> tuple[PlacementTakeoff, PlacementTakeoff]:
    first, second = takeoff(placement(PATIO), _second(between, **shape)).placements
    return first, second


def _ft(measured: PlacementTakeoff) -> tuple[str, str, str]:
    kinds = (EdgeKind.OUTER, EdgeKind.FORMED, EdgeKind.ISOLATED)
    outer, formed, isolated = (str(measured.edges_ft[kind]) for kind in kinds)
    return outer, formed, isolated


@pytest.mark.parametrize(
    ("between", "first", "second"),
    [
        (Between.FILLER, ("60.0", "60.0", "4.0"), ("28.0", "24.0", "0.0")),
        (Between.DOWELS, ("60.0", "60.0", "0.0"), ("28.0", "24.0", "0.0")),
        (Between.NOTHING, ("60.0", "56.0", "0.0"), ("28.0", "24.0", "0.0")),
    ],
)
def test_a_shared_edge_is_formed_once(
    between: Between, first: tuple[str, ...], second: tuple[str, ...]
):
    """4 ft are shared: formed and parted with the first placement, or not formed where poured
    in one; all of both is outer edge."""
    patio, walk = _both(between, rectangle="4 ft x 10 ft", at=["3 ft", "10 ft"])
    assert (_ft(patio), _ft(walk)) == (first, second)


def test_a_shared_edge_has_its_letter_and_its_length():
    """A side is cut where the other slab begins and ends: 13, 4 and 3 ft of the patio's top."""
    patio, walk = _both(rectangle="4 ft x 10 ft", at=["3 ft", "10 ft"])
    top = [(run.against, run.length_ft) for run in patio.edges[2:5]]
    assert top == [
        (Against.OPEN, Decimal("13.00")),
        (Against.BESIDE, Decimal("4.00")),
        (Against.OPEN, Decimal("3.00")),
    ]
    assert [run.against for run in walk.edges].count(Against.JOINED) == 1


def test_slabs_that_touch_at_a_corner_share_nothing():
    """A slab whose corner meets the corner of another is formed all round."""
    patio, walk = _both(rectangle="4 ft x 10 ft", at=["20 ft", "10 ft"])
    assert (_ft(patio)[1:], _ft(walk)[1:]) == (("60.0", "0.0"), ("28.0", "0.0"))


def test_a_curve_shares_an_edge_with_a_straight_side():
    """The straight end of a walk that turns meets the patio; its arcs meet nothing."""
    ring = {"outer_radius": "14 ft", "width": "4 ft", "sweep": "90 deg"}
    patio, walk = _both(ring=ring, at=["20 ft", "-6 ft"])
    assert patio.edges_ft[EdgeKind.ISOLATED] == Decimal("4.0")
    assert walk.edges_ft[EdgeKind.OUTER] - walk.edges_ft[EdgeKind.FORMED] == Decimal("4.0")


@pytest.mark.parametrize("beside", ["garage", "slab", "curb", "wall"])
def test_what_stands_there_needs_a_strip_and_no_form(beside: str):
    """The 10 ft side at a garage floor, an old slab, a curb or a wall is isolated, not formed."""
    (patio,) = takeoff(placement({**PATIO, "against": {"left": beside}})).placements
    assert _ft(patio) == ("60.0", "50.0", "10.0")
    assert [run.against.value for run in patio.edges].count(beside) == 1


def test_a_pool_edge_is_isolated_unless_it_is_cast():
    """24 ft round a pool have a strip at its coping, and none where the slab is cast over its beam;
    both are pool edge."""
    spec = placement(PATIO, take_away=(POOL,))
    cast = replace(spec, casts_pool_edge=True)
    (coping,), (beam,) = takeoff(spec).placements, takeoff(cast).placements
    assert (coping.edges_ft[EdgeKind.POOL], beam.edges_ft[EdgeKind.POOL]) == (Decimal("24.0"),) * 2
    assert coping.edges_ft[EdgeKind.ISOLATED] == Decimal("24.0")
    assert beam.edges_ft[EdgeKind.ISOLATED] == Decimal("0.0")
