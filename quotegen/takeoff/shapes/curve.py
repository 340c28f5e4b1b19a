"""A smooth curve through measured points: the shape of a thin form board bent past stakes.

It is the cubic spline by chord length: natural (with free ends) between two ends, periodic where
it closes on itself. Each span between two points is a cubic, so its area is exact; its length is
accurate far beyond what a tape can tell.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from quotegen.takeoff.plan_geometry import Against, Point
from quotegen.takeoff.shapes.segments import Placing

_SAME_FT = 1e-4
_STRIPS = 32  # even; Simpson over one span is then good to about 1e-7 of its length
_VELOCITY_SHARES = tuple(
    (3 * (1 - t) ** 2, 6 * t * (1 - t), 3 * t**2) for t in (n / _STRIPS for n in range(_STRIPS + 1))
)
"""The weight of each leg between control points in the velocity, at each end of a strip."""
_TRIES = 24  # places on a span where a nearest point is first looked for
_HALVINGS = 40
_STEPS_PER_SPAN = 8  # the least sides for a span to look smooth


def slopes_at(values: Sequence[float], lengths: Sequence[float], *, closed: bool) -> list[float]:
    """Return the slope at each value.

    Args:
        values: one at each point; a closed spline repeats the first as the last.
        lengths: of the spans between them, above zero.
        closed: whether the end continues into the start; else the ends do not bend.
    """
    rises = [(b - a) / h for a, b, h in zip(values, values[1:], lengths, strict=False)]
    if not closed:
        return _natural(rises, lengths)
    slopes = _periodic(rises, lengths)
    return [*slopes, slopes[0]]


def _natural(rises: Sequence[float], lengths: Sequence[float]) -> list[float]:
    count = len(lengths)
    below = [*lengths[1:], 1.0]
    above = [1.0, *lengths[:-1]]
    middle = [2.0, *(2 * (lengths[n - 1] + lengths[n]) for n in range(1, count)), 2.0]
    right = [3 * rises[0], *(_bend(rises, lengths, n) for n in range(1, count)), 3 * rises[-1]]
    return _tridiagonal([0.0, *below], middle, [*above, 0.0], right)


def _periodic(rises: Sequence[float], lengths: Sequence[float]) -> list[float]:
    """Solve the ring of equations as a chain, then correct for the link that closes it.

    Sherman and Morrison's formula, for a matrix that differs by the product of two vectors.
    """
    count = len(lengths)
    below = [lengths[n] for n in range(count)]
    above = [lengths[n - 1] for n in range(count)]
    middle = [2 * (lengths[n - 1] + lengths[n]) for n in range(count)]
    right = [_bend(rises, lengths, n) for n in range(count)]
    gamma = -middle[0]
    chain = [middle[0] - gamma, *middle[1:-1], middle[-1] - above[-1] * below[0] / gamma]
    plain = _tridiagonal([0.0, *below[1:]], chain, [*above[:-1], 0.0], right)
    link = [gamma, *([0.0] * (count - 2)), above[-1]]
    turned = _tridiagonal([0.0, *below[1:]], chain, [*above[:-1], 0.0], link)
    share = (plain[0] + plain[-1] * below[0] / gamma) / (
        1 + turned[0] + turned[-1] * below[0] / gamma
    )
    return [value - share * other for value, other in zip(plain, turned, strict=True)]


def _bend(rises: Sequence[float], lengths: Sequence[float], n: int) -> float:
    return 3 * (lengths[n] * rises[n - 1] + lengths[n - 1] * rises[n])


def _tridiagonal(
    below: Sequence[float], middle: Sequence[float], above: Sequence[float], right: Sequence[float]
) -> list[float]:
    pivots, sums = [middle[0]], [right[0]]
    for n in range(1, len(middle)):
        factor = below[n] / pivots[-1]
        pivots.append(middle[n] - factor * above[n - 1])
        sums.append(right[n] - factor * sums[-1])
    solved = [sums[-1] / pivots[-1]]
    for n in range(len(middle) - 2, -1, -1):
        solved.append((sums[n] - above[n] * solved[-1]) / pivots[n])
    return solved[::-1]


@dataclass(frozen=True, slots=True)
class Span:
    """A cubic between two points, by its four control points."""

    p0: Point
    p1: Point
    p2: Point
    p3: Point

    @property
    def green_sqft(self) -> float:
        """Half the integral of x dy less y dx, exact for a cubic."""
        a, b, c, d = self.p0, self.p1, self.p2, self.p3
        return (
            6 * _cross(a, b) + 3 * _cross(a, c) + _cross(a, d)
            + 3 * _cross(b, c) + 3 * _cross(b, d) + 6 * _cross(c, d)
        ) / 20  # fmt: skip

    @property
    def length_ft(self) -> float:
        """Simpson's rule over the speed."""
        corners = (self.p0, self.p1, self.p2, self.p3)
        (ax, ay), (bx, by), (cx, cy) = ((q[0] - p[0], q[1] - p[1]) for p, q in pairwise(corners))
        speeds = [math.hypot(a * ax + b * bx + c * cx, a * ay + b * by + c * cy)
                  for a, b, c in _VELOCITY_SHARES]  # fmt: skip
        inner = 4 * math.fsum(speeds[1::2]) + 2 * math.fsum(speeds[2:-1:2])
        return (speeds[0] + inner + speeds[-1]) / (3 * _STRIPS)

    @property
    def turned_rad(self) -> float:
        """How far the legs between its control points turn, an upper bound for the span."""
        corners = (self.p0, self.p1, self.p2, self.p3)
        legs = [(q[0] - p[0], q[1] - p[1]) for p, q in pairwise(corners)]
        dots = [u[0] * v[0] + u[1] * v[1] for u, v in pairwise(legs)]
        turns = zip(pairwise(legs), dots, strict=True)
        return math.fsum(abs(math.atan2(_cross(u, v), dot)) for (u, v), dot in turns)

    def point_at(self, t: float) -> Point:
        """Return the point at a share of the span (Bernstein form)."""
        s = 1 - t
        a, b, c, d = s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t
        (x0, y0), (x1, y1), (x2, y2), (x3, y3) = self.p0, self.p1, self.p2, self.p3
        return (
            math.fsum((a * x0, b * x1, c * x2, d * x3)),
            math.fsum((a * y0, b * y1, c * y2, d * y3)),
        )

    def split(self, t: float) -> tuple["Span", "Span"]:
        """Return the parts before and after a share of the span (de Casteljau)."""
        ab, bc, cd = (_mix(p, q, t) for p, q in pairwise((self.p0, self.p1, self.p2, self.p3)))
        abc, bcd = _mix(ab, bc, t), _mix(bc, cd, t)
        middle = _mix(abc, bcd, t)
        return Span(self.p0, ab, abc, middle), Span(middle, bcd, cd, self.p3)

    def backwards(self) -> "Span":
        """Return the same span in the other direction."""
        return Span(self.p3, self.p2, self.p1, self.p0)

    def placed(self, placing: Placing) -> "Span":
        """Return the span turned and moved."""
        return Span(
            placing.point(self.p0), placing.point(self.p1),
            placing.point(self.p2), placing.point(self.p3),
        )  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class Curve:
    """Spans in a row. A share of it counts spans: half of four spans is the end of the second."""

    spans: tuple[Span, ...]
    against: Against = Against.OPEN

    @property
    def start(self) -> Point:
        return self.spans[0].p0

    @property
    def end(self) -> Point:
        return self.spans[-1].p3

    @property
    def is_closed(self) -> bool:
        return math.dist(self.start, self.end) < _SAME_FT

    @property
    def length_ft(self) -> float:
        return math.fsum(span.length_ft for span in self.spans)

    @property
    def green_sqft(self) -> float:
        """The part of half the integral of x dy less y dx, which sums to the area of a loop."""
        return math.fsum(span.green_sqft for span in self.spans)

    def point_at(self, share: float) -> Point:
        """Return the point at a share of the spans."""
        index, t = self._place(share)
        return self.spans[index].point_at(t)

    def share_at(self, point: Point) -> float:
        """Return the share of the nearest place to a point."""
        count = len(self.spans)
        shares = [n / (_TRIES * count) for n in range(_TRIES * count + 1)]
        best = min(shares, key=lambda share: math.dist(self.point_at(share), point))
        low, high = max(0.0, best - shares[1]), min(1.0, best + shares[1])
        for _ in range(_HALVINGS):
            third = (high - low) / 3
            first, second = low + third, high - third
            if math.dist(self.point_at(first), point) < math.dist(self.point_at(second), point):
                high = second
            else:
                low = first
        return (low + high) / 2

    def between(self, first: float, last: float) -> "Curve":
        """Return the part from one share to another; a closed curve may pass its own start."""
        if self.is_closed and last <= first:
            return replace(self, spans=(*self._part(first, 1.0), *self._part(0.0, last)))
        return replace(self, spans=tuple(self._part(first, last)))

    def backwards(self) -> "Curve":
        """Return the same curve in the other direction."""
        return replace(self, spans=tuple(span.backwards() for span in reversed(self.spans)))

    def placed(self, placing: Placing) -> "Curve":
        """Return the curve turned and moved."""
        return replace(self, spans=tuple(span.placed(placing) for span in self.spans))

    def corners(self, step_rad: float) -> tuple[Point, ...]:
        """Return the points to draw the curve by, without the last."""
        points: list[Point] = []
        for span in self.spans:
            steps = max(_STEPS_PER_SPAN, math.ceil(span.turned_rad / step_rad))
            points += [span.point_at(n / steps) for n in range(steps)]
        return tuple(points)

    def continues_into(self, other: "Curve") -> bool:
        """Whether another curve starts where this one ends, in the same direction."""
        (ax, ay), (bx, by) = self.spans[-1].p2, self.end
        (cx, cy), (dx, dy) = other.start, other.spans[0].p1
        ending, starting = (bx - ax, by - ay), (dx - cx, dy - cy)
        straight = math.hypot(*ending) * math.hypot(*starting)
        along = ending[0] * starting[0] + ending[1] * starting[1]
        return math.dist(self.end, other.start) < _SAME_FT and along > straight * (1 - _SAME_FT)

    def _place(self, share: float) -> tuple[int, float]:
        index = max(0, min(len(self.spans) - 1, math.floor(share * len(self.spans))))
        return index, share * len(self.spans) - index

    def _part(self, first: float, last: float) -> Iterator[Span]:
        (begin, t0), (end, t1) = self._place(first), self._place(last)
        for index in range(begin, end + 1):
            span = self.spans[index]
            upto = t1 if index == end else 1.0
            since = t0 if index == begin else 0.0
            if upto - since > 0:
                before = span.split(upto)[0] if upto < 1 else span
                yield before.split(since / upto)[1] if since > 0 else before


def curve_through(points: Sequence[Point], *, closed: bool = False) -> Curve:
    """Return the smooth curve through at least two points, or around at least three.

    Args:
        points: in order; a closed curve does not repeat the first.
        closed: whether it continues smoothly from the last to the first.
    """
    ring = [*points, points[0]] if closed else list(points)
    lengths = [math.dist(p, q) for p, q in pairwise(ring)]
    along = slopes_at([p[0] for p in ring], lengths, closed=closed)
    out = slopes_at([p[1] for p in ring], lengths, closed=closed)
    spans = tuple(
        Span(
            ring[n],
            (ring[n][0] + along[n] * third, ring[n][1] + out[n] * third),
            (ring[n + 1][0] - along[n + 1] * third, ring[n + 1][1] - out[n + 1] * third),
            ring[n + 1],
        )
        for n, third in enumerate(length / 3 for length in lengths)
    )
    return Curve(spans=spans)


def _cross(u: Point, v: Point) -> float:
    return u[0] * v[1] - u[1] * v[0]


def _mix(p: Point, q: Point, t: float) -> Point:
    return p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t
