"""Grids of joints straight across a slab."""

from fractions import Fraction

from shapely import Polygon

from quotegen.quantity import Length
from quotegen.takeoff.joints.grid import grid_lines
from quotegen.takeoff.joints.judge import limits_of
from quotegen.trade.rules import load_rules
from tests.takeoff.plans import DAY

LIMITS = limits_of(Length.of_inches(Fraction(4)), load_rules(), DAY)
TEN = (10.0, 10.0)


def _upright(region: Polygon, posts: tuple[tuple[float, float], ...] = ()) -> list[float]:
    """Where the upright lines of a grid stand."""
    lines = grid_lines(region, posts, TEN, LIMITS)
    return sorted({start[0] for start, end in lines if start[0] == end[0]})


def test_lines_divide_a_rectangle_evenly():
    """36 ft at 10 ft at the most: three lines, 9 ft apart."""
    assert _upright(Polygon([(0, 0), (36, 0), (36, 8), (0, 8)])) == [9, 18, 27]


def test_a_line_goes_through_an_inside_corner():
    """An L has a line at its inside corner, and the rest is divided evenly."""
    ell = Polygon([(0, 0), (22, 0), (22, 8), (14, 8), (14, 16), (0, 16)])
    assert _upright(ell) == [7, 14]


def test_a_line_goes_through_a_post():
    """Joints meet a post in its middle, though it stands off the even spacing."""
    assert _upright(Polygon([(0, 0), (18, 0), (18, 8), (0, 8)]), ((8.0, 4.0),)) == [8]


def test_a_line_stops_where_it_would_meet_the_edge_askew():
    """Under a side that leans by 37 degrees an upright line stops at the level one below it."""
    lines = grid_lines(Polygon([(0, 0), (18, 0), (0, 24)]), (), TEN, LIMITS)
    assert lines == (((9, 0), (9, 8)), ((0, 8), (9, 8)))
