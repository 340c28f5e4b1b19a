"""A typed shape in its place on the plan: its exact loops and the polygon that stands for them."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from shapely import Polygon

from quotegen.reading.files.shapes import CutOut, Shape, Side
from quotegen.takeoff.plan_geometry import Against
from quotegen.takeoff.shapes.arcs import TAPE_SLACK_FT
from quotegen.takeoff.shapes.faults import Fault, shape_name, tape_of
from quotegen.takeoff.shapes.loops import area_of, crossings_of, loops_of
from quotegen.takeoff.shapes.overlay import is_wide
from quotegen.takeoff.shapes.path import (
    Loop,
    Segment,
    backwards,
    fine_ring,
    placed,
)
from quotegen.takeoff.shapes.segments import Line, Placing, point_ft

FARTHEST_FT = 10_000.0  # nearly two miles: a slip of the finger, not a slab


@dataclass(frozen=True, slots=True, kw_only=True)
class PlacedShape:
    """A shape on the plan.

    Attributes:
        name: what messages call it.
        index: its place in its group.
        shape: as typed.
        loops: the outer loop counter-clockwise, then holes clockwise.
        polygon: the same with curves as many short sides, close enough for every check.
        area_sqft: exact, or by the rule that the shape names.
    """

    name: str
    index: int
    shape: Shape
    loops: tuple[Loop, ...]
    polygon: Polygon
    area_sqft: float

    @property
    def pools(self) -> tuple[Loop, ...]:
        """The edges of the pools in it: a pool taken away, or the one inside a border."""
        if self.shape.border is not None:
            return self.loops[1:]
        return self.loops[:1] if self.shape.is_ is CutOut.POOL else ()

    def with_slab_outside(self) -> tuple[Loop, ...]:
        """Return the loops in the direction that has the outside of the shape on their left."""
        return tuple(backwards(loop) for loop in self.loops)


def place_shape(shape: Shape, group: str, index: int) -> PlacedShape | tuple[Fault, ...]:
    """Put a shape in its place, or return everything that is wrong with it.

    Args:
        shape: as typed.
        group: `add`, `take_away` or `obstacles`, for names and for what the edges meet.
        index: its place in the group, from zero.
    """
    loops, faults = loops_of(shape)
    faults = faults or crossings_of(shape, loops)
    if not faults and shape.border is not None:
        loops = (loops[0], *_against_cut_out(loops[1:], CutOut.POOL))
    for side, key, against in _sides_against(shape):
        if not faults:
            loops, faults = _against_side(loops, side, key, against)
    if not faults and group == "take_away":
        loops = _against_cut_out(loops, shape.is_)
    if group == "add" and shape.is_:
        faults = (*faults, _added_cut_out(shape.is_))
    if not faults:
        at = point_ft(shape.at) if shape.at else (0.0, 0.0)
        placing = Placing.of(at, shape.turn or Fraction(0))
        loops = tuple(placed(loop, placing) for loop in loops)
        faults = _too_far(loops)
    if not faults:
        rings = [fine_ring(loop) for loop in loops]
        polygon = Polygon(rings[0], rings[1:])
        faults = _too_thin(polygon)
    if faults:
        return tuple(fault.under(group, index) for fault in faults)
    return PlacedShape(
        name=shape_name(group, index, shape.kind),
        index=index,
        shape=shape,
        loops=loops,
        polygon=polygon,
        area_sqft=area_of(shape, loops),
    )


def _sides_against(shape: Shape) -> Iterator[tuple[Side, str, Against]]:
    if shape.against_house:
        yield shape.against_house, "against_house", Against.HOUSE
    for side, beside in shape.against.items():
        yield side, "against", Against(beside.value)


def _against_side(
    loops: tuple[Loop, ...], side: Side, key: str, against: Against
) -> tuple[tuple[Loop, ...], tuple[Fault, ...]]:
    """Mark the straight sides along one side of a shape, before it is turned."""
    axis = 1 if side in {Side.BOTTOM, Side.TOP} else 0
    values = [point[axis] for point in fine_ring(loops[0])]
    edge = max(values) if side in {Side.TOP, Side.RIGHT} else min(values)

    def lies_there(segment: Segment) -> bool:
        ends = (segment.start[axis], segment.end[axis])
        return isinstance(segment, Line) and all(abs(end - edge) < TAPE_SLACK_FT for end in ends)

    marked = tuple(
        replace(segment, against=against) if lies_there(segment) else segment
        for segment in loops[0]
    )
    if marked != loops[0] or any(lies_there(segment) for segment in marked):
        return (marked, *loops[1:]), ()
    named, typed = (
        ("the house", "yes") if key == "against_house" else (f"a {against.value}", against.value)
    )
    return loops, (Fault(
        code="house-side", path=(key,),
        message=f"the {side.value} of this shape has no straight side that could be"
        f" against {named}",
        hint=f"name another side, or type an `outline` with `{key}: {typed}` on one of"
        " its sides"),)  # fmt: skip


def _against_cut_out(loops: tuple[Loop, ...], cut_out: CutOut | None) -> tuple[Loop, ...]:
    against = Against.POOL if cut_out is CutOut.POOL else Against.OPENING
    return tuple(
        tuple(
            replace(segment, against=against) if segment.against is Against.OPEN else segment
            for segment in loop
        )
        for loop in loops
    )


def _added_cut_out(cut_out: CutOut) -> Fault:
    return Fault(
        code="cut-out-added",
        path=("is",),
        message=f"`is: {cut_out.value}` says what is taken away, but this shape is added",
        hint="move the shape under `take_away`, or leave `is` out",
    )


def _too_thin(polygon: Polygon) -> tuple[Fault, ...]:
    if is_wide(polygon):
        return ()
    return (Fault(
        code="shape-too-thin", path=(),
        message=f"this shape is nowhere as wide as {tape_of(TAPE_SLACK_FT)}, what a tape is"
        " read to",
        hint="check the sizes and their units"),)  # fmt: skip


def _too_far(loops: tuple[Loop, ...]) -> tuple[Fault, ...]:
    farthest_ft = max(max(map(abs, point)) for loop in loops for point in fine_ring(loop))
    if farthest_ft <= FARTHEST_FT:
        return ()
    return (Fault(
        code="shape-too-far", path=(),
        message=f"this shape reaches {tape_of(farthest_ft)} from the corner of the plan;"
        f" at most {tape_of(FARTHEST_FT)} is measured",
        hint="check the units:"
        " are these inches typed as feet, or millimeters as meters?"),)  # fmt: skip
