"""Straight distances that a tape can check."""

from decimal import Decimal

import pytest

from quotegen.takeoff.plan_geometry import Ring, SpanOf
from quotegen.takeoff.slab.spans import label_point, spans_of

DECK: Ring = ((0.0, 0.0), (40.0, 0.0), (40.0, 26.0), (0.0, 26.0))
POOL: Ring = ((8.0, 6.0), (28.0, 6.0), (28.0, 16.0), (8.0, 16.0))


def _lengths(of: SpanOf) -> list[Decimal]:
    return [span.length_ft for span in spans_of((DECK,), (POOL,), (POOL,)) if span.of is of]


def test_a_deck_around_a_pool():
    """Overall 40 x 26, pool 20 x 10, and the deck right, left, above and below it."""
    assert _lengths(SpanOf.OVERALL) == [40, 26]
    assert _lengths(SpanOf.POOL) == [20, 10]
    assert _lengths(SpanOf.CLEAR) == [12, 8, 10, 6]


def test_a_pool_is_not_measured_across_its_waist():
    """20 ft long, and no width at the middle, where it draws in by 3 ft."""
    waisted: Ring = (*POOL[:2], POOL[2], (18.0, 13.0), POOL[3])
    spans = spans_of((DECK,), (waisted,), (waisted,))
    assert [span.length_ft for span in spans if span.of is SpanOf.POOL] == [20]


def test_a_pool_at_the_edge_has_no_deck_there():
    """Where the pool opens to the edge of the deck nothing is left to measure."""
    at_edge: Ring = ((20.0, 6.0), (40.0, 6.0), (40.0, 16.0), (20.0, 16.0))
    spans = spans_of((DECK,), (), (at_edge,))
    assert [span.length_ft for span in spans if span.of is SpanOf.CLEAR] == [20, 10, 6]


def test_the_label_stands_where_most_room_is():
    """Right of the pool the deck is 12 ft wide, so a label there is 6 ft from any edge or more."""
    (x, y), room_ft = label_point((DECK,), (POOL,))
    assert room_ft == pytest.approx(6.6, abs=0.5)
    assert x > 28
    assert 6 < y < 20
