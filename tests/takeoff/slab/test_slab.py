"""Slabs of several shapes, with exact edges where they share parts of sides."""

import math

import pytest
from shapely import Polygon

from quotegen.reading.files.shapes import EdgeKind
from quotegen.takeoff.shapes.path import fine_ring, signed_area_sqft
from quotegen.takeoff.slab.slab import Slab
from tests.takeoff.plans import FLOAT_NOISE, Typed, edges, faults, feet, outline, slab

DECK: Typed = {"rectangle": "24 ft x 16 ft"}


def _box(size: str, at: tuple[float, float], **more: str) -> Typed:
    return {"rectangle": size, "at": feet(at), **more}


def _enclosed_sqft(measured: Slab) -> float:
    rings = (*measured.boundary.outer, *measured.boundary.inner)
    return math.fsum(signed_area_sqft(ring) for ring in rings)


def test_a_pool_inside():
    """A pool leaves an inner ring, which is pool edge and not formed edge."""
    pool = {"circle": {"radius": "4 ft"}, "at": feet((12, 8)), "is": "pool"}
    measured = slab(DECK, take_away=(pool,))
    found = edges(measured)
    assert found[EdgeKind.INNER] == pytest.approx(8 * math.pi)
    assert found[EdgeKind.POOL] == pytest.approx(8 * math.pi)
    assert found[EdgeKind.FORMED] == pytest.approx(80)
    assert found[EdgeKind.CURVED] == pytest.approx(8 * math.pi)
    assert _enclosed_sqft(measured) == pytest.approx(measured.area_sqft)


def test_a_pool_that_opens_to_the_edge():
    """A pool at the edge of the deck is part of the outer ring, where the deck's edge ends."""
    pool = {"rectangle": "6 ft x 8 ft", "at": feet((18, 4)), "is": "pool"}
    measured = slab(DECK, take_away=(pool,))
    found = edges(measured)
    assert not measured.boundary.inner
    assert found[EdgeKind.OUTER] == pytest.approx(80 + 12)
    assert found[EdgeKind.POOL] == pytest.approx(6 + 8 + 6)
    assert found[EdgeKind.FORMED] == pytest.approx(80 - 8)


def test_a_pool_against_a_shared_side():
    """Where a pool lies along the side that two pieces share, that side is pool edge."""
    pool = {"rectangle": "6 ft x 8 ft", "at": feet((24, 4)), "is": "pool"}
    other = {"rectangle": "10 ft x 16 ft", "at": feet((24, 0))}
    assert edges(slab(DECK, other, take_away=(pool,)))[EdgeKind.POOL] == pytest.approx(28)


def test_flush_pieces_have_one_run():
    """Two pieces in one line have one side together."""
    measured = slab(DECK, {"rectangle": "10 ft x 16 ft", "at": feet((24, 0))})
    assert [round(side.length_ft, 9) for side in measured.boundary.outer[0]] == [34, 16, 34, 16]


def test_part_of_a_side_may_be_shared():
    """A smaller piece on a longer side leaves the rest of that side, in two runs."""
    measured = slab(DECK, {"half_circle": {"radius": "5 ft"}, "at": feet((12, 16))})
    lengths = sorted(round(side.length_ft, 9) for side in measured.boundary.outer[0])
    assert lengths == [7, 7, round(5 * math.pi, 9), 16, 16, 24]


def test_half_circles_of_one_circle_are_one_run():
    """Two half circles make a circle without corners."""
    half = {"half_circle": {"radius": "5 ft"}}
    measured = slab(half, {**half, "turn": "180 deg"})
    assert [len(ring) for ring in measured.boundary.outer] == [1]
    assert edges(measured)[EdgeKind.OUTER] == pytest.approx(10 * math.pi)


def test_parts_that_do_not_touch_are_several_rings():
    """Separate pads of one placement each have their outer ring, in the order typed."""
    measured = slab({"rectangle": "2 ft x 2 ft", "at": feet((40, 0))}, DECK)
    assert [round(ring[0].length_ft) for ring in measured.boundary.outer] == [2, 24]


def test_a_pool_filled_by_its_own_deck():
    """A ring and a circle in its hole are a whole circle with no inner edge."""
    ring = {"ring": {"outer_radius": "9 ft", "width": "4 ft", "sweep": "360 deg"}}
    measured = slab(ring, {"circle": {"radius": "5 ft"}})
    assert not measured.boundary.inner
    assert edges(measured)[EdgeKind.OUTER] == pytest.approx(18 * math.pi)


def test_an_oval_pool():
    """An oval pool's edge is the perimeter of the ellipse (Ramanujan's second form, 1914)."""
    oval = {"ellipse": "12 ft x 8 ft", "at": feet((12, 8)), "is": "pool"}
    measured = slab(DECK, take_away=(oval,))
    h = ((6 - 4) / (6 + 4)) ** 2
    perimeter_ft = math.pi * (6 + 4) * (1 + 3 * h / (10 + math.sqrt(4 - 3 * h)))
    assert measured.area_sqft == pytest.approx(384 - 24 * math.pi)
    assert edges(measured)[EdgeKind.POOL] == pytest.approx(perimeter_ft, abs=FLOAT_NOISE)


@pytest.mark.parametrize(
    ("kind", "turn"),
    [
        ({"circle": {"radius": "4 ft"}}, "0 deg"),
        ({"circle": {"radius": "4 ft"}}, "30 deg"),
        ({"ellipse": "8 ft x 6 ft"}, "0 deg"),
        ({"ellipse": "6 ft x 8 ft"}, "90 deg"),
    ],
)
def test_a_pool_that_touches_the_edge_in_one_point(kind: Typed, turn: str):
    """A pool that only just reaches the edge keeps its whole edge, and so does the deck."""
    pool = {**kind, "at": feet((20, 8)), "turn": turn, "is": "pool"}
    measured = slab(DECK, take_away=(pool,))
    found = edges(measured)
    assert found[EdgeKind.FORMED] == pytest.approx(80, abs=0.01)
    round_it = edges(slab(kind))[EdgeKind.OUTER]
    assert found[EdgeKind.POOL] == pytest.approx(round_it, abs=0.01)


def test_a_piece_set_into_an_arc_of_the_same_circle():
    """A pool that fits a curved side exactly leaves no sliver and no false edge."""
    curve = {"to": feet((24, 16)), "radius": "8 ft", "bows": "in"}
    beside = {"half_circle": {"radius": "8 ft"}, "at": feet((24, 8)), "turn": "90 deg"}
    measured = slab(outline((0, 0), (24, 0), curve, (0, 16)), beside)
    assert measured.area_sqft == pytest.approx(384)
    assert edges(measured)[EdgeKind.OUTER] == pytest.approx(80, abs=1e-4)
    assert edges(measured)[EdgeKind.CURVED] == 0


@pytest.mark.parametrize("turn", [0, 10, 45, 81.7])
@pytest.mark.parametrize("miss_ft", [0, 0.004, -0.004])
def test_pieces_that_meet_to_within_a_tape_reading(turn: float, miss_ft: float):
    """Pieces whose shared side was typed a hair off leave no edge between them."""
    angle = math.radians(turn)
    place = ((24 + miss_ft) * math.cos(angle), (24 + miss_ft) * math.sin(angle))
    measured = slab(
        {"rectangle": "24 ft x 16 ft", "turn": f"{turn} deg"},
        {"rectangle": "10 ft x 8 ft", "at": feet(place), "turn": f"{turn} deg"},
    )
    assert measured.area_sqft == pytest.approx(464)
    assert edges(measured)[EdgeKind.OUTER] == pytest.approx(100, abs=0.02)


def test_the_library_agrees_on_a_mixed_slab():
    """The polygon inside the traced boundary is the one that the geometry library made."""
    pools: tuple[Typed, ...] = (
        {"ellipse": "8 ft x 5 ft", "at": feet((9, 8)), "turn": "20 deg", "is": "pool"},
        {"rectangle": "3 ft x 3 ft", "at": feet((21, 0))},
    )
    measured = slab(
        DECK, {"half_circle": {"radius": "5 ft"}, "at": feet((12, 16))},
        {"quarter_circle": {"radius": "6 ft"}, "at": feet((24, 10))}, take_away=pools,
    )  # fmt: skip
    rings = [fine_ring(ring) for ring in measured.boundary.outer]
    holes = [fine_ring(ring) for ring in measured.boundary.inner]
    assert Polygon(rings[0], holes).symmetric_difference(measured.region).area < 1e-3
    assert _enclosed_sqft(measured) == pytest.approx(measured.area_sqft)


def test_pieces_that_overlap_are_named_with_the_area():
    """The overlap counts twice, so it says of which shapes and how much."""
    (fault,) = faults(DECK, _box("10 ft x 5 ft", (20, 3)))
    assert (fault.code, fault.path) == ("pieces-overlap", ("add", 1))
    assert "shape 1 of `add` (rectangle) and shape 2 of `add` (rectangle)" in fault.message
    assert "20.0 sq ft near [22'-0\", 5'-6\"]" in fault.message


def test_the_same_piece_twice_overlaps_all_over():
    """A piece typed twice is told."""
    assert [fault.code for fault in faults(DECK, DECK)] == ["pieces-overlap"]


def test_a_pool_larger_than_its_deck_sticks_out():
    """It says how much area sticks out and how far."""
    (fault,) = faults(DECK, take_away=(_box("26 ft x 8 ft", (0, 4), **{"is": "pool"}),))
    assert (fault.code, fault.path) == ("cut-out-outside", ("take_away", 0))
    assert "shape 1 of `take_away` (rectangle)" in fault.message
    assert "16.0 sq ft" in fault.message
    assert "up to 2'-0\" past its edge" in fault.message


def test_a_cut_out_beside_the_slab_sticks_out_whole():
    """A pool that was placed elsewhere is told with its whole area."""
    (fault,) = faults(DECK, take_away=(_box("6 ft x 8 ft", (40, 0)),))
    assert "48.0 sq ft" in fault.message


def test_a_cut_out_over_two_pieces_is_inside():
    """A pool may lie over the side that two pieces share."""
    pool = _box("6 ft x 8 ft", (21, 4))
    assert slab(DECK, _box("24 ft x 16 ft", (24, 0)), take_away=(pool,)).area_sqft == 768 - 48


def test_cut_outs_that_overlap():
    """Two cut-outs over each other would take the area twice."""
    (fault,) = faults(DECK, take_away=(_box("6 ft x 8 ft", (2, 2)), _box("6 ft x 8 ft", (7, 2))))
    assert (fault.code, fault.path) == ("cut-outs-overlap", ("take_away", 1))
    assert "8.0 sq ft" in fault.message


def test_nothing_left():
    """A slab that is all taken away is told."""
    (fault,) = faults(DECK, take_away=(DECK,))
    assert (fault.code, fault.path) == ("nothing-left", ("add",))


def test_a_slab_too_small_to_print():
    """A slab of 0.0 sq ft is a slip of the unit."""
    (fault,) = faults({"rectangle": "2 in x 2 in"})
    assert fault.code == "nothing-left"


def test_faults_of_the_plan_come_with_faults_of_the_shapes():
    """An overlap is told beside a bad radius of a third shape; a false one is not."""
    bad = {"rectangle": "9 ft x 9 ft", "corner_radius": "5 ft", "at": feet((50, 0))}
    pool = _box("6 ft x 8 ft", (51, 1))
    found = faults(DECK, _box("9 ft x 9 ft", (20, 0)), bad, take_away=(pool,))
    assert {fault.code for fault in found} == {"corner-radius", "pieces-overlap"}
