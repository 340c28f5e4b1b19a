"""Outlines as typed."""

import math
from typing import Any

import pytest

from quotegen.reading.files.shapes import EdgeKind
from quotegen.takeoff.shapes.path import signed_area_sqft
from tests.takeoff.plans import Typed, edges, faults, feet, outline, slab

BOX = ((0, 0), (10, 0), (10, 8), (0, 8))


def _segment_sqft(chord_ft: float, rise_ft: float) -> float:
    radius = (chord_ft**2 / 4 + rise_ft**2) / (2 * rise_ft)
    angle = 4 * math.atan2(2 * rise_ft, chord_ft)
    return radius**2 * (angle - math.sin(angle)) / 2


def test_an_open_outline_is_closed_by_a_straight_side():
    """The last side may be left out."""
    assert slab(outline(*BOX)).area_sqft == pytest.approx(80)


def test_an_outline_may_return_to_its_start():
    """A last side that ends at the first corner adds no corner."""
    closed = slab(outline(*BOX, (0, 0)))
    assert closed.area_sqft == pytest.approx(80)
    assert len(closed.boundary.outer[0]) == 4


def test_the_first_item_may_hold_the_first_side_too():
    """`from` and `to` in the first item are the first side."""
    typed = {"outline": [{"from": feet((0, 0)), "to": feet((10, 0))}, {"to": feet((10, 8))}]}
    assert slab(typed).area_sqft == pytest.approx(40)


@pytest.mark.parametrize("corners", [BOX, BOX[::-1]], ids=["one way", "other way"])
@pytest.mark.parametrize(("bows", "sign"), [("out", 1), ("in", -1)])
def test_bows_are_seen_from_the_slab(corners: tuple[Any, ...], bows: str, sign: int):
    """An arc that bows out adds area whichever way round the corners were walked."""
    arc = {"to": feet(corners[1]), "rise": "2 ft", "bows": bows}
    measured = slab(outline(corners[0], arc, *corners[2:]))
    assert measured.area_sqft == pytest.approx(80 + sign * _segment_sqft(10, 2))


def test_a_rise_past_the_half_circle():
    """An arc may rise by more than half its chord, and is then more than a half circle."""
    arc = {"to": feet((10, 0)), "rise": "7 ft"}
    measured = slab(outline((0, 0), arc, (10, 8), (0, 8)))
    assert measured.area_sqft == pytest.approx(80 + _segment_sqft(10, 7))


def test_two_half_circles_make_a_circle():
    """Two corners with arcs between them are an outline."""
    back = {"to": feet((0, 0)), "rise": "5 ft"}
    measured = slab(outline((0, 0), {"to": feet((10, 0)), "rise": "5 ft"}, back))
    assert measured.area_sqft == pytest.approx(25 * math.pi)
    assert len(measured.boundary.outer[0]) == 1


def test_two_corners_run_counter_clockwise():
    """With two corners the slab lies on the left, so the arc that bows out is on the right."""
    measured = slab(outline((0, 0), {"to": feet((10, 0)), "rise": "5 ft"}))
    assert measured.region.bounds == pytest.approx((0, -5, 10, 0))


def test_the_through_point_says_which_way_an_arc_bows():
    """A through-point needs no `bows`, and counts as a corner for the arcs that need one."""
    arc = {"to": feet((10, 0)), "through": feet((5, 5))}
    out = {"to": feet((0, 0)), "rise": "2 ft"}
    measured = slab(outline((0, 0), arc, out))
    assert measured.area_sqft == pytest.approx(12.5 * math.pi + _segment_sqft(10, 2))


def test_a_side_may_be_against_the_shared():
    """The side that says so is the house edge."""
    side = {"to": feet((10, 0)), "against_house": "yes"}
    assert edges(slab(outline((0, 0), side, (10, 8), (0, 8))))[EdgeKind.HOUSE] == pytest.approx(10)


def test_loops_keep_the_order_typed():
    """A clockwise outline is measured all the same."""
    measured = slab(outline(*BOX[::-1]))
    assert signed_area_sqft(measured.added[0].loops[0]) == pytest.approx(80)


FAULTS: dict[str, tuple[Typed, str, tuple[str | int, ...], str]] = {
    "no start": (
        {"outline": [{"to": feet((10, 0))}, {"to": feet((10, 8))}, {"to": feet((0, 8))}]},
        "outline-start", (0,), "where it starts",
    ),
    "empty": ({"outline": []}, "outline-start", (0,), "where it starts"),
    "second from": (
        {"outline": [{"from": feet((0, 0))}, {"from": feet((9, 9)), "to": feet((10, 0))}]},
        "outline-start", (1, "from"), "again",
    ),
    "no end": (
        {"outline": [{"from": feet((0, 0))}, {"radius": "5 ft"}]},
        "outline-no-end", (1,), "goes to",
    ),
    "arc on the start": (
        {"outline": [{"from": feet((0, 0)), "rise": "5 ft"}, {"to": feet((5, 5))}]},
        "outline-no-end", (0,), "goes to",
    ),
    "two ways": (
        outline((0, 0), {"to": feet((10, 0)), "radius": "6 ft", "rise": "2 ft"}, (10, 8)),
        "outline-two-ways", (1, "rise"), "radius and rise",
    ),
    "two corners": (outline((0, 0), (10, 0)), "outline-short", (), "has 2 corners"),
    "one corner": (outline((0, 0)), "outline-short", (), "has one corner"),
    "same point": (
        outline((0, 0), (10, 0), (10, 0), (0, 8)),
        "outline-same-point", (2, "to"), "[10'-0\", 0\"]",
    ),
    "radius": (
        outline((0, 0), {"to": feet((24, 0)), "radius": "5 ft"}, (24, 9), (0, 9)),
        "arc-radius", (1, "radius"), "at least 12'-0\"",
    ),
    "through": (
        outline((0, 0), {"to": feet((24, 0)), "through": feet((6, 0))}, (24, 9), (0, 9)),
        "arc-through", (1, "through"), "straight line",
    ),
    "crosses": (
        outline((0, 0), (10, 8), (10, 0), (0, 8)),
        "outline-crosses", (), "sides 1 and 3 of the outline cross or touch near [5'-0\", 4'-0\"]",
    ),
    "arc crosses": (
        outline((0, 0), {"to": feet((10, 0)), "rise": "9 ft", "bows": "in"}, (10, 8), (0, 8)),
        "outline-crosses", (), "sides 1 and",
    ),
    "folds back": (
        outline((0, 0), (10, 0), (4, 0), (4, 8)), "outline-crosses", (), "sides 1 and 2",
    ),
}  # fmt: skip


@pytest.mark.parametrize("name", FAULTS)
def test_each_fault_says_what_and_where(name: str):
    """Each fault of an outline has its code, its place in the file and the numbers."""
    typed, code, path, said = FAULTS[name]
    (fault, *_) = faults(typed)
    assert fault.code == code
    assert fault.path == ("add", 0, "outline", *path)
    assert said in fault.message
    assert fault.hint


def test_all_faults_of_an_outline_come_at_once():
    """Two bad arcs are two faults."""
    bad = {"radius": "2 ft"}
    found = faults(outline((0, 0), {"to": feet((9, 0)), **bad}, {"to": feet((9, 9)), **bad}))
    assert [fault.code for fault in found] == ["arc-radius", "arc-radius"]
