"""The readings in a typed shape, and the shape with one of them changed."""

from fractions import Fraction

import pytest

from quotegen.quantity import Length
from quotegen.takeoff.shapes.area_range import area_sd_sqft
from quotegen.takeoff.shapes.readings import accuracy_of, method_of, readings_of, with_reading
from quotegen.trade.rules import load_rules
from tests.takeoff.plans import DAY, Typed, feet, outline, shape

RULES = load_rules()
TIES: Typed = {"ties": {"apart": "26 ft", "points": [{"a": "11 ft", "b": "24 ft"}] * 3}}


def _typed(typed: Typed) -> list[Length | Fraction]:
    return [reading.value for reading in readings_of(shape(**typed), RULES, DAY)]


@pytest.mark.parametrize(
    ("typed", "method"),
    [
        ({"rectangle": "24 ft x 16 ft"}, "pieces"),
        (outline((0, 0), (24, 0), (24, 16)), "outline"),
        (TIES, "ties"),
    ],
)
def test_the_method_decides_the_accuracy(typed: Typed, method: str):
    """A shape without an accuracy of its own has that of its method."""
    found = shape(**typed)
    assert method_of(found) == method
    by_rule = RULES.table("tape_accuracy", DAY)[method]
    assert accuracy_of(found, RULES, DAY).inches == Fraction(by_rule)


def test_a_job_may_say_its_own_accuracy():
    """Twice as fine a reading is half the deviation."""
    typed = {"rectangle": "24 ft x 16 ft"}
    by_rule, finer = (
        area_sd_sqft((shape(**typed, **more),), RULES, DAY) for more in ({}, {"accuracy": "1/8 in"})
    )
    assert by_rule == pytest.approx(2 * finer)


def test_zero_and_the_place_are_not_read():
    """A corner at the start of the tape is no reading, nor is where a shape is put."""
    corners = outline((0, 0), (24, 0), (24, 16), (0, 16))
    assert len(_typed(corners)) == 4
    assert len(_typed({**corners, "at": feet((3, 4)), "turn": "10 deg"})) == 4


def test_a_corner_typed_again_is_one_reading():
    """A first corner that closes the outline again moves in both places."""
    typed = shape(**outline((1, 1), (25, 1), (25, 17), (1, 1)))
    readings = readings_of(typed, RULES, DAY)
    assert len(readings) == 6
    moved = with_reading(typed, readings[0], Fraction(1))
    assert moved is not None
    assert moved.outline is not None
    assert (
        moved.outline[0].from_ == moved.outline[-1].to == (Length(Fraction(2)), Length(Fraction(1)))
    )


def test_an_even_spacing_is_one_tape():
    """The end of a tape of three strips is off by the deviation, each strip by a third."""
    typed = {"offsets": {"every": "3 ft", "far": ["8 ft"] * 4}}
    every, *far = readings_of(shape(**typed), RULES, DAY)
    assert every.deviation * 3 == far[0].deviation


def test_a_length_does_not_vanish():
    """A reading that would shrink to nothing leaves no shape."""
    typed = shape(rectangle="24 ft x 16 ft")
    length = readings_of(typed, RULES, DAY)[0]
    assert with_reading(typed, length, Fraction(-24)) is None
    assert with_reading(typed, length, Fraction(-23)) is not None
