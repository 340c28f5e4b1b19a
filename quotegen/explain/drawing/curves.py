"""Points of an outline as path data: what lies on an arc is written as one arc (SVG 2, 9.3.8)."""

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import atan2, dist, fsum, pi, radians
from typing import TypeAlias

Pixel: TypeAlias = tuple[float, float]

STRAY_PX = 0.2
"""How far an arc may run from the points, and from the short sides between them."""

FEWEST_POINTS = 4
"""Three points always lie on a circle; a fourth shows that an arc is meant."""

SHARPEST_TURN = radians(25)
"""A sharper turn from side to side is a corner."""

LONGEST_SWEEP = radians(150)
"""A longer arc is written in parts, so that each is the smaller arc of its circle."""


def number(value: float) -> str:
    """Write a coordinate to a tenth of a pixel."""
    text = f"{value:.1f}".removesuffix(".0")
    return "0" if text == "-0" else text


def path_data(points: Sequence[Pixel], *, closed: bool) -> str:
    """Write points as path data: arcs where they lie on one, straight lines elsewhere."""
    run = [*points, points[0]] if closed else [*points]
    parts = [f"M{_at(run[0])}"]
    start = 0
    while start < len(run) - 1:
        end = _end_of_arc(run, start)
        parts.append(_arc_to(run[start : end + 1]) if end > start + 1 else f"L{_at(run[end])}")
        start = end
    if closed and parts[-1].startswith("L") and len(parts) > 1:
        parts.pop()  # the closing side is drawn by Z
    return " ".join((*parts, "Z") if closed else parts)


def length(points: Sequence[Pixel]) -> float:
    """The length of a line through points."""
    return fsum(dist(a, b) for a, b in pairwise(points))


def along(points: Sequence[Pixel], share: float) -> Pixel:
    """The point at a share of the length of a line."""
    left = share * length(points)
    for start, end in pairwise(points):
        side = dist(start, end)
        if left <= side and side:
            part = left / side
            return (start[0] + (end[0] - start[0]) * part, start[1] + (end[1] - start[1]) * part)
        left -= side
    return points[-1]


def _at(point: Pixel) -> str:
    return f"{number(point[0])} {number(point[1])}"


def _end_of_arc(run: Sequence[Pixel], start: int) -> int:
    """The last point on one arc with `start`; the next point where there is no arc."""
    ends = range(start + FEWEST_POINTS - 1, len(run))
    fitting = bisect_left(ends, x=1, key=lambda end: not _is_arc(run[start : end + 1]))
    return ends[fitting - 1] if fitting else start + 1


def _is_arc(points: Sequence[Pixel]) -> bool:
    turns = [*_turns(points)]
    if not all(0 < turn < SHARPEST_TURN for turn in turns) and not all(
        -SHARPEST_TURN < turn < 0 for turn in turns
    ):
        return False
    if abs(fsum(turns)) > LONGEST_SWEEP:
        return False
    center, radius = _circle(points)
    middles = [((a[0] + b[0]) / 2, (a[1] + b[1]) / 2) for a, b in pairwise(points)]
    return all(abs(dist(center, at) - radius) <= STRAY_PX for at in (*points, *middles))


def _turns(points: Sequence[Pixel]) -> Iterator[float]:
    """How far each side turns from the one before it, at most half a turn either way."""
    headings = [atan2(b[1] - a[1], b[0] - a[0]) for a, b in pairwise(points)]
    for before, after in pairwise(headings):
        yield (after - before + pi) % (2 * pi) - pi


def _circle(points: Sequence[Pixel]) -> tuple[Pixel, float]:
    """The center and radius of the circle through the first, the middle and the last point."""
    (ax, ay), (bx, by), (cx, cy) = points[0], points[len(points) // 2], points[-1]
    bx, by, cx, cy = bx - ax, by - ay, cx - ax, cy - ay
    twice = 2 * (bx * cy - by * cx)
    across, along = bx * bx + by * by, cx * cx + cy * cy
    x, y = (cy * across - by * along) / twice, (bx * along - cx * across) / twice
    return (ax + x, ay + y), dist((x, y), (0.0, 0.0))


def _arc_to(points: Sequence[Pixel]) -> str:
    _, radius = _circle(points)
    clockwise = int(next(_turns(points)) > 0)  # y runs down
    return f"A{number(radius)} {number(radius)} 0 0 {clockwise} {_at(points[-1])}"
