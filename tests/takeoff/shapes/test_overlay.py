"""Polygons held against each other to within a tape's reading."""

import pytest
from shapely import box

from quotegen.takeoff.shapes import overlay

HAIR = 1 / 200  # ft, less than 1/16 in
INCH = 1 / 12


def test_a_shared_side_is_no_overlap():
    """Pieces that share a side do not overlap, nor do pieces that miss it by a hair."""
    deck = box(0, 0, 10, 8)
    assert overlay.overlap(deck, box(10, 0, 20, 8)) is None
    assert overlay.overlap(deck, box(10 - HAIR, 0, 20, 8)) is None


def test_an_inch_is_an_overlap():
    """What a tape can tell counts."""
    common = overlay.overlap(box(0, 0, 10, 8), box(10 - INCH, 0, 20, 8))
    assert common is not None
    assert common.area == pytest.approx(8 / 12, abs=1e-4)


def test_sticking_out_by_a_hair_is_inside():
    """A cut-out that ends at the edge to within a tape's reading is inside."""
    deck = box(0, 0, 10, 8)
    assert overlay.outside(box(5, 2, 10 + HAIR, 4), deck) is None
    assert overlay.outside(box(5, 2, 10 + INCH, 4), deck) is not None


def test_how_far_out():
    """The reach past the edge is measured to the farthest corner."""
    deck = box(0, 0, 10, 8)
    beyond = overlay.outside(box(5, 2, 13, 4), deck)
    assert beyond is not None
    assert overlay.farthest_out_ft(beyond, deck) == pytest.approx(3)


@pytest.mark.parametrize("gap", [0, 1e-9, 1e-7, 1e-5, 1e-3, HAIR])
def test_a_hairline_gap_is_closed(gap: float):
    """Two pieces with a hair between them are one part without a gap inside."""
    (part,) = overlay.polygons(overlay.put_together([box(0, 0, 10, 8), box(10 + gap, 2, 20, 6)]))
    assert part.length == pytest.approx(2 * (10 + 8) + 20, abs=0.03)
    assert not part.interiors


def test_a_gap_of_an_inch_stays():
    """A gap that a tape can tell is there on purpose."""
    parts = overlay.polygons(overlay.put_together([box(0, 0, 10, 8), box(10 + INCH, 0, 20, 8)]))
    assert len(parts) == 2


def test_a_corner_where_pieces_touch_is_not_filled():
    """Two pieces that touch at a corner stay two parts with sharp corners."""
    parts = overlay.polygons(overlay.put_together([box(0, 0, 10, 8), box(10, 8, 20, 16)]))
    assert sum(part.area for part in parts) == pytest.approx(160)
    assert sum(part.length for part in parts) == pytest.approx(72)


def test_a_strip_of_a_hair_beside_a_cut_out_goes_too():
    """A pool that ends a hair from the deck's edge opens to it."""
    left = overlay.taken_from(box(0, 0, 20, 10), [box(15, 2, 20 - HAIR, 8)])
    (part,) = overlay.polygons(left)
    assert not part.interiors
    assert part.length == pytest.approx(2 * (20 + 10) + 10, abs=0.03)


def test_nothing_taken_away_changes_nothing():
    """Without cut-outs the slab is what was added."""
    deck = box(0, 0, 20, 10)
    assert overlay.taken_from(deck, []) is deck
