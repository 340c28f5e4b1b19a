"""Laws of ties, offsets, smooth curves and borders."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quotegen.reading.files.shapes import Corners, EdgeKind
from quotegen.takeoff.plan_geometry import Point
from quotegen.takeoff.shapes.border import grown
from quotegen.takeoff.shapes.curve import curve_through
from quotegen.takeoff.shapes.path import signed_area_sqft
from tests.property import strategies as made
from tests.property.effort import one_in
from tests.takeoff.plans import Typed, edges, feet, outline, slab

NOISE = 1e-4
FEWER = one_in(3)  # each example measures several slabs with curves
Points = list[Point]


@st.composite
def rounds(draw: st.DrawFn) -> Points:
    """Points around the middle of a freeform slab, counterclockwise, no two close together."""
    count = draw(st.integers(min_value=4, max_value=9))
    return [
        (far * math.cos(2 * math.pi * n / count), far * math.sin(2 * math.pi * n / count))
        for n in range(count)
        for far in [draw(st.floats(min_value=14, max_value=18))]
    ]


ROUNDS = rounds()


def _tied(points: Points, apart_ft: float, edge: str, side: str = "top", turn: str = "0 deg"):
    """Tie points to pins along a line 30 ft below their middle."""
    pins = ((-apart_ft / 2, -30.0), (apart_ft / 2, -30.0))
    tapes = [
        {"a": f"{math.dist(pins[0], p):.9f} ft", "b": f"{math.dist(pins[1], p):.9f} ft"}
        for p in points
    ]
    ties = {"apart": f"{apart_ft} ft", "side": side, "edge": edge, "points": tapes}
    return {"ties": ties, "at": feet(pins[0]), "turn": turn}


def _smooth(points: Points) -> Typed:
    return outline(
        points[0], {"to": feet(points[0]), "smooth_through": list(map(feet, points[1:]))}
    )


class TestTiesGiveBackTheShapeTheyWereTakenFrom:
    """Two tapes fix each point, so ties worked out from a known shape give it back."""

    @FEWER
    @given(ROUNDS, st.integers(min_value=8, max_value=60), st.booleans())
    def test_area_and_edge(self, points: Points, apart_ft: int, smooth: bool):
        """Straight or smooth, whatever the distance between the pins."""
        tied = slab(_tied(points, apart_ft, "smooth" if smooth else "straight"))
        known = slab(_smooth(points) if smooth else outline(*points))
        assert tied.area_sqft == pytest.approx(known.area_sqft, abs=NOISE)
        assert edges(tied) == pytest.approx(edges(known), abs=NOISE)

    @FEWER
    @given(ROUNDS, st.integers(min_value=0, max_value=8))
    def test_order_mirror_and_turn(self, points: Points, first: int):
        """Another first point, the other way round, the other side, a turned base line: all one."""
        whole = slab(_tied(points, 24, "smooth")).area_sqft
        begun = points[first % len(points) :] + points[: first % len(points)]
        for again in (
            _tied(begun, 24, "smooth"),
            _tied(points[::-1], 24, "smooth"),
            _tied(points, 24, "smooth", side="bottom"),
            _tied(points, 24, "smooth", turn=f"{17 * first} deg"),
        ):
            assert slab(again).area_sqft == pytest.approx(whole, abs=NOISE)


class TestOffsetsFollowTheirRule:
    """Both rules are exact where their textbook says so."""

    @FEWER
    @given(st.lists(st.integers(min_value=0, max_value=48), min_size=3, max_size=12), st.booleans())
    def test_mirror_and_order(self, sixteenths: list[int], smooth: bool):
        """Read from the other end, the same readings enclose the same area."""
        far = [f"{n + 128}/16 ft" for n in sixteenths]
        edge = {"every": "3 ft", "edge": "smooth" if smooth else "straight"}
        one, other = (slab({"offsets": {**edge, "far": f}}) for f in (far, far[::-1]))
        assert one.area_sqft == pytest.approx(other.area_sqft, abs=NOISE)
        if not smooth:
            enclosed = signed_area_sqft(one.boundary.outer[0])
            assert enclosed == pytest.approx(one.area_sqft, abs=NOISE)

    @FEWER
    @given(*(st.floats(min_value=0, max_value=0.02) for _ in range(3)),
           st.integers(min_value=1, max_value=6))  # fmt: skip
    def test_simpson_is_exact_for_a_cubic(self, a: float, b: float, c: float, pairs: int):
        """Textbook: Simpson's rule has no error up to the third power."""
        far = [f"{5 + a * x + b * x**2 + c * x**3:.9f} ft" for x in range(2 * pairs + 1)]
        found = slab({"offsets": {"every": "1 ft", "far": far, "rule": "simpson"}}).area_sqft
        end = 2 * pairs
        exact = 5 * end + a * end**2 / 2 + b * end**3 / 3 + c * end**4 / 4
        assert found == pytest.approx(exact, abs=NOISE)


class TestASmoothCurveIsWhereverItLies:
    """Turn, mirror and order change nothing."""

    @FEWER
    @given(ROUNDS, made.TURNS_DEG, made.SHIFTS_FT)
    def test_turn_shift_and_mirror(self, points: Points, turn: int, at: tuple[float, float]):
        """A smooth slab that is turned and moved, or seen in a mirror, keeps area and edge."""
        typed = _smooth(points)
        known = slab(typed)
        mirrored = _smooth([(-x, y) for x, y in points])
        for other in (slab({**typed, "turn": f"{turn} deg", "at": feet(at)}), slab(mirrored)):
            assert other.area_sqft == pytest.approx(known.area_sqft, abs=NOISE)
            assert edges(other)[EdgeKind.OUTER] == pytest.approx(
                edges(known)[EdgeKind.OUTER], abs=NOISE
            )

    @FEWER
    @given(ROUNDS, st.floats(min_value=1, max_value=6))
    def test_a_border_round_it(self, points: Points, width_ft: float):
        """Steiner: a band beside a smooth closed curve is width x edge and pi x width squared."""
        pool = curve_through(points, closed=True)
        outside = grown((pool,), width_ft, Corners.ROUNDED)
        assert isinstance(outside, tuple)
        band = signed_area_sqft(outside) - pool.green_sqft
        assert band == pytest.approx(width_ft * pool.length_ft + math.pi * width_ft**2, rel=1e-3)
