"""Points tied to two pins by two tapes."""

import math
from typing import Any

import pytest

from quotegen.reading.files.shapes import Ties
from quotegen.takeoff.shapes.curve import Curve
from quotegen.takeoff.shapes.faults import Fault
from quotegen.takeoff.shapes.segments import Line
from quotegen.takeoff.shapes.two_pins import tied_point, ties_loop


def _ties(*tapes: tuple[str, str], **more: Any) -> Ties:
    points = [{"a": a, "b": b} for a, b in tapes]
    return Ties.model_validate({"apart": "20 ft", "side": "top", "points": points, **more})


def test_two_tapes_meet_by_trilateration():
    """Tapes of 12 and 16 ft from pins 20 ft apart meet in a right angle: 7.2 along, 9.6 off."""
    assert tied_point(_ties(("12 ft", "16 ft")), 0) == pytest.approx((7.2, 9.6))
    assert tied_point(_ties(("12 ft", "16 ft"), side="bottom"), 0) == pytest.approx((7.2, -9.6))


def test_a_point_may_name_its_own_side():
    """One point below the line of the pins among others above it."""
    ties = Ties.model_validate(
        {"apart": "20 ft", "side": "top",
         "points": [{"a": "12 ft", "b": "16 ft", "side": "bottom"}]})  # fmt: skip
    assert tied_point(ties, 0) == pytest.approx((7.2, -9.6))


@pytest.mark.parametrize(
    ("tapes", "what"),
    [(("9 ft", "10 ft"), "1'-0\" short of"), (("31 ft", "10 ft"), "1'-0\" more than")],
)
def test_tapes_that_cannot_meet_are_told(tapes: tuple[str, str], what: str):
    """Too short together, or too far apart, by how much is said."""
    fault = tied_point(_ties(tapes), 0)
    assert isinstance(fault, Fault)
    assert fault.code == "ties-apart"
    assert what in fault.message


def test_tapes_that_miss_by_a_hair_meet_on_the_line():
    """10 ft and 10 ft less 1/16 in from pins 20 ft apart are within what a tape can tell."""
    found = tied_point(_ties(("10 ft", "9 ft 11-15/16 in")), 0)
    assert not isinstance(found, Fault)
    assert found[1] == 0


def test_a_point_without_a_side_fits_twice():
    """Without a side, a point off the line may lie above it or below."""
    fault = tied_point(_ties(("12 ft", "16 ft"), side=None), 0)
    assert isinstance(fault, Fault)
    assert fault.code == "ties-side"


def test_corners_part_a_smooth_edge():
    """Between two points that are corners the edge is straight, the rest is one curve."""
    angles = [2 * math.pi * n / 8 for n in range(8)]
    spots = [(10 + 5 * math.cos(a), 9 + 5 * math.sin(a)) for a in angles]
    points = [
        {"a": f"{math.hypot(x, y):.9f} ft", "b": f"{math.hypot(x - 20, y):.9f} ft",
         "corner": "yes" if n < 2 else "no"}
        for n, (x, y) in enumerate(spots)
    ]  # fmt: skip
    typed = {"apart": "20 ft", "side": "top", "edge": "smooth", "points": points}
    loop = ties_loop(Ties.model_validate(typed))
    assert [type(segment) for segment in loop] == [Line, Curve]
