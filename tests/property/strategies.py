"""Slabs that hypothesis makes up: star-shaped outlines with straight and curved sides."""

import math
from dataclasses import dataclass

from hypothesis import strategies as st

from tests.takeoff.plans import Typed, feet, outline

TURNS_DEG = st.integers(min_value=-720, max_value=720)
SHIFTS_FT = st.tuples(
    st.floats(min_value=-200, max_value=200), st.floats(min_value=-200, max_value=200)
)
SIDES_FT = st.integers(min_value=16, max_value=16 * 60).map(lambda n: n / 16)


@dataclass(frozen=True, slots=True)
class Corner:
    """One corner of an outline, and how the side that follows it bows."""

    at: tuple[float, float]
    rise_ft: float
    bows: str


Corners = tuple[Corner, ...]


@st.composite
def corners(draw: st.DrawFn) -> Corners:
    """Corners around a middle point; their arcs are too flat to reach another side."""
    count = draw(st.integers(min_value=3, max_value=8))
    gap_rad = 2 * math.pi / count
    made: list[Corner] = []
    for n in range(count):
        angle = gap_rad * (n + draw(st.floats(min_value=-0.2, max_value=0.2)))
        far_ft = draw(st.floats(min_value=12, max_value=30))
        at = (far_ft * math.cos(angle), far_ft * math.sin(angle))
        rise_ft = draw(st.sampled_from([0.0, 0.0, 0.25, 0.5]))
        made.append(Corner(at, rise_ft, draw(st.sampled_from(["out", "in"]))))
    return tuple(made)


def as_outline(made: Corners) -> Typed:
    """The corners as a person types them, closed by the last side."""
    first, *rest = made
    ends = [*rest, first]
    return outline(first.at, *(_side(start, end) for start, end in zip(made, ends, strict=True)))


def reversed_order(made: Corners) -> Corners:
    """The same outline walked the other way round."""
    back = made[::-1]
    sides = [*back[1:], back[0]]
    return tuple(
        Corner(here.at, side.rise_ft, side.bows) for here, side in zip(back, sides, strict=True)
    )


def begun_at(made: Corners, first: int) -> Corners:
    """The same outline begun at another corner."""
    first %= len(made)
    return made[first:] + made[:first]


def mirrored(made: Corners) -> Corners:
    """The outline as in a mirror; what bows out still bows out."""
    return tuple(Corner((-c.at[0], c.at[1]), c.rise_ft, c.bows) for c in made)


def other_bows(made: Corners) -> Corners:
    """The outline with every arc bowing the other way."""
    return tuple(Corner(c.at, c.rise_ft, "in" if c.bows == "out" else "out") for c in made)


def _side(start: Corner, end: Corner) -> Typed:
    side: dict[str, object] = {"to": feet(end.at)}
    if start.rise_ft:
        side |= {"rise": f"{start.rise_ft} ft", "bows": start.bows}
    return side
