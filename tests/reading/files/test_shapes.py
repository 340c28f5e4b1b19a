"""Shapes as typed: exactly one kind, and what belongs to it."""

import pytest
from pydantic import ValidationError

from quotegen.reading.files.shapes import KINDS, Shape

GOOD: dict[str, object] = {
    "outline": [{"from": ["0", "0"]}, {"to": ["9 ft", "0"]}, {"to": ["0", "9 ft"]}],
    "rectangle": "24 ft x 16 ft",
    "right_triangle": "24 ft x 16 ft",
    "triangle": {"base": "9 ft", "height": "4 ft"},
    "trapezoid": {"bottom": "9 ft", "top": "4 ft", "height": "4 ft"},
    "parallelogram": {"base": "9 ft", "height": "4 ft", "offset": "2 ft"},
    "regular_polygon": {"sides": "6", "side": "4 ft"},
    "circle": {"radius": "8 ft"},
    "half_circle": {"diameter": "16 ft"},
    "quarter_circle": {"radius": "8 ft"},
    "segment": {"chord": "12 ft", "rise": "3 ft"},
    "ellipse": "24 ft x 16 ft",
    "ring": {"outer_radius": "14 ft", "width": "4 ft", "sweep": "90 deg"},
    "offsets": {"every": "2 ft", "far": ["4 ft", "5 ft", "4 ft"]},
    "ties": {"apart": "10 ft", "side": "top", "points": [{"a": "6 ft", "b": "8 ft"}] * 3},
    "border": {"pool": {"circle": {"radius": "8 ft"}}, "width": "4 ft"},
}


def _types(typed: dict[str, object]) -> set[str]:
    with pytest.raises(ValidationError) as fault:
        Shape.model_validate(typed)
    return {error["type"] for error in fault.value.errors()}


@pytest.mark.parametrize("kind", KINDS)
def test_each_kind_alone_is_a_shape(kind: str):
    """A shape knows of which kind it is."""
    assert Shape.model_validate({kind: GOOD[kind]}).kind == kind


@pytest.mark.parametrize("kind", KINDS[1:])
def test_two_kinds_are_not_one_shape(kind: str):
    """Two kinds in one shape are two shapes, and typed so."""
    assert _types({"outline": GOOD["outline"], kind: GOOD[kind]}) == {"exactly-one"}


@pytest.mark.parametrize("kind", ["circle", "half_circle", "quarter_circle"])
@pytest.mark.parametrize("typed", [{}, {"radius": "8 ft", "diameter": "16 ft"}])
def test_a_circle_has_one_size(kind: str, typed: dict[str, str]):
    """Radius or diameter, not both and not neither."""
    assert _types({kind: typed}) == {"exactly-one"}


@pytest.mark.parametrize("kind", [kind for kind in KINDS if kind != "rectangle"])
def test_only_a_rectangle_has_rounded_corners(kind: str):
    """A corner radius elsewhere would be left out of the area without a word."""
    assert _types({kind: GOOD[kind], "corner_radius": "1 ft"}) == {"corner-radius-place"}
