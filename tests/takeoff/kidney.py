"""One kidney-shaped pool, measured in three ways.

It is part of a ring of radii 8 and 22 ft with half circles of 7 ft at its ends, so its area is
known in closed form, and its corners are whole tenths of a foot.
"""

import math

from tests.takeoff.plans import Typed, feet, outline

AREA_SQFT = (22**2 - 8**2) * math.atan2(9, 12) + math.pi * 7**2
PIN_A, PIN_B = (-16.0, 12.0), (16.0, 12.0)
SWEEP_RAD = math.atan2(9, 12)


def read(length_ft: float) -> str:
    """Return a length as a tape is read: to 1/16 in."""
    sixteenths = round(length_ft * 12 * 16)
    whole, part = divmod(abs(sixteenths), 16)
    return f"{'-' if sixteenths < 0 else ''}{whole} {part}/16 in"


def by_outline() -> Typed:
    """Four corners and four arcs, each measured another way."""
    return outline(
        (-4.8, -5.6),
        {"to": feet((4.8, -5.6)), "rise": "1.6 ft", "bows": "in"},
        {"to": feet((13.2, 5.6)), "through": feet((14.6, -4.2))},
        {"to": feet((-13.2, 5.6)), "radius": "22 ft"},
        {"to": feet((-4.8, -5.6)), "arc_length": read(7 * math.pi)},
    )


def by_offsets(strips: int = 24) -> tuple[Typed, ...]:
    """Both edges off a line through the middle, and what is round at the ends as segments."""
    every_ft = 26.4 / strips
    places = [-13.2 + every_ft * n for n in range(strips + 1)]
    middle = {
        "every": f"{every_ft:.9f} ft",
        "far": [read(_far(x)) for x in places],
        "near": [read(_near(x)) for x in places],
        "rule": "simpson",
    }
    cap = {"segment": {"chord": read(11.2), "rise": read(2.8)}}
    return (
        {"offsets": middle, "at": feet((-13.2, 0))},
        {**cap, "at": feet((13.2, 5.6)), "turn": "270 deg"},
        {**cap, "at": feet((-13.2, -5.6)), "turn": "90 deg"},
    )


def by_ties() -> Typed:
    """Points round the edge, each by two tapes from pins beyond the pool."""
    points = [
        {"a": read(math.dist(PIN_A, point)), "b": read(math.dist(PIN_B, point))}
        for point in edge_points()
    ]
    ties = {"apart": "32 ft", "side": "bottom", "edge": "smooth", "points": points}
    return {"ties": ties, "at": feet(PIN_A)}


def edge_points() -> list[tuple[float, float]]:
    """Return points every 3 to 4 ft round the edge, counter-clockwise."""
    start_rad = math.pi / 2
    arcs = (
        ((0.0, -12.0), 8.0, start_rad + SWEEP_RAD, -2 * SWEEP_RAD, 4),
        ((9.0, 0.0), 7.0, start_rad - SWEEP_RAD - math.pi, math.pi, 7),
        ((0.0, -12.0), 22.0, start_rad - SWEEP_RAD, 2 * SWEEP_RAD, 8),
        ((-9.0, 0.0), 7.0, start_rad + SWEEP_RAD, math.pi, 7),
    )
    return [
        (center[0] + radius * math.cos(first + sweep * n / count),
         center[1] + radius * math.sin(first + sweep * n / count))
        for center, radius, first, sweep, count in arcs
        for n in range(count)
    ]  # fmt: skip


def _far(x: float) -> float:
    return math.sqrt(22**2 - x**2) - 12


def _near(x: float) -> float:
    if abs(x) <= 4.8:
        return math.sqrt(8**2 - x**2) - 12
    return -math.sqrt(7**2 - (abs(x) - 9) ** 2)
