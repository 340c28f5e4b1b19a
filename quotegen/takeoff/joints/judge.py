"""A part judged by the rules: its size, its corners, and how many panels it still needs."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date
from fractions import Fraction
from functools import lru_cache

from numpy import asarray
from shapely import buffer, is_empty, linearrings, polygons

from quotegen.quantity import Length
from quotegen.takeoff.joints.part import Part, interior_angles_rad, interior_rad, tight_box
from quotegen.takeoff.joints.records import PanelRule
from quotegen.takeoff.plan_geometry import Ring
from quotegen.trade.joints import governing_spacing
from quotegen.trade.rules import RuleBook

SLACK_FT = 0.02  # a quarter of an inch: nobody lays out a joint closer
_SLACK_TIMES = 0.005
_SLACK_RAD = math.radians(0.5)
_NO_TURN_RAD = 1e-5
_MOST_TILES = 4_000
_MARGIN_RAD = math.radians(3)


@dataclass(frozen=True, slots=True, kw_only=True)
class Limits:
    """What a panel may be.

    Attributes:
        most_ft: longest side.
        least_ft: least width.
        times: how many times the short side the long side may be.
        corner_rad: least angle that a joint may make.
        turn_rad: how far an edge may turn inward at one place without a joint.
        wrap_rad: how far one panel may follow the curve of a cut-out.
        place_ft: the length of edge that counts as one place.
        bend_rad: how far a joint may bend where another ends, and still go straight on there.
        side_ft: least length of a straight side of a pool that joints on both sides are seen from.
        in_line_ft: how far joints on both sides of a pool may be out of line.
    """

    most_ft: float
    least_ft: float
    times: float
    corner_rad: float
    turn_rad: float
    wrap_rad: float
    place_ft: float
    bend_rad: float
    side_ft: float
    in_line_ft: float

    def stricter(self, share: float = 1) -> "Limits":
        """Return slightly stricter limits to lay out by, since curves are drawn as few sides.

        Args:
            share: of the margin; half of it once a layout is only mended.
        """
        return replace(self, corner_rad=self.corner_rad + share * _MARGIN_RAD)


def limits_of(thickness: Length, rules: RuleBook, on: date) -> Limits:
    """Return the limits for a slab of some thickness on the quote date."""
    spacing_ft, _ = governing_spacing(thickness.inches, rules, on)
    ratio = rules.exact("panel_ratio_max", on)
    narrowest = Length.of_inches(Fraction(rules.range("panel_narrowest", on).least))
    return Limits(
        most_ft=Length(spacing_ft).ft,
        least_ft=narrowest.ft,
        times=ratio.numerator / ratio.denominator,
        corner_rad=math.radians(rules.exact("panel_corner_min", on)),
        turn_rad=math.radians(rules.exact("inside_corner_turn", on)),
        wrap_rad=math.radians(rules.exact("panel_wrap_max", on)),
        place_ft=Length(rules.exact("inside_corner_length", on)).ft,
        bend_rad=math.radians(rules.exact("joint_end_bend", on)),
        side_ft=Length(rules.exact("pool_side_straight", on)).ft,
        in_line_ft=Length.of_inches(rules.exact("joint_in_line", on)).ft,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Breach:
    """A rule that a part breaks, and by what: feet, times or radians."""

    rule: PanelRule
    value: float


def sides_ft(ring: Ring) -> tuple[float, float]:
    """Return the long and the short side of the smallest rectangle around a ring."""
    box = tight_box(ring)
    one, other = math.dist(box[0], box[1]), math.dist(box[1], box[2])
    return max(one, other), min(one, other)


def sharpest_rad(part: Part) -> float:
    """Return the smallest angle that a joint makes in a part; a half turn if it has no joint."""
    ring, cut = part.ring, part.cut
    count = len(ring)
    return min(
        (
            interior_rad(ring[n - 1], ring[n], ring[(n + 1) % count])
            for n in range(count)
            if cut[n] or cut[n - 1]
        ),
        default=math.pi,
    )


def is_sliver(part: Part, limits: Limits) -> bool:
    """Whether a part is nowhere as wide as a panel must be."""
    return slivers((part,), limits)[0]


def slivers(parts: Sequence[Part], limits: Limits) -> list[bool]:
    """Return the same for many parts at once: what takes long is to call the geometry library."""
    half = limits.least_ft / 2
    # A figure without room for a disc has less area than its edge times the radius of the disc.
    doubtful = [n for n, part in enumerate(parts) if part.area_sqft < half * part.around_ft]
    found = [False] * len(parts)
    if doubtful:
        rings = [parts[n].ring for n in doubtful]
        owners = [n for n, ring in enumerate(rings) for _ in ring]
        shapes = polygons(linearrings([point for ring in rings for point in ring], indices=owners))
        empty = asarray(is_empty(buffer(shapes, -half + SLACK_FT / 2))).tolist()
        for n, is_thin in zip(doubtful, empty, strict=True):
            found[n] = is_thin
    return found


def inward_rad(part: Part, bend_ft: float) -> tuple[float, float]:
    """Return the sharpest inward turn at one place of a part, and the most along one curve.

    A curve that a joint starts from has its joint, so that it is sharp nowhere.

    Args:
        part: its ring and its joints.
        bend_ft: the length of edge that counts as one place.
    """
    ring, cut = part.ring, part.cut
    count = len(ring)
    turns = [math.pi - inside for inside in interior_angles_rad(ring)]
    if min(turns) >= -_NO_TURN_RAD:
        return 0.0, 0.0
    first = max(range(count), key=lambda n: turns[n])
    sharpest = longest = sharp = run = along = 0.0
    joint_at = -math.inf
    is_served = False
    near: list[tuple[float, float]] = []
    for n in (*range(first, count), *range(first + 1)):
        along += math.dist(ring[n - 1], ring[n])
        turn = -turns[n]
        if turn > _NO_TURN_RAD:
            is_served = is_served or along - joint_at <= bend_ft
            run += turn
            near = [(at, by) for at, by in near if along - at <= bend_ft] + [(along, turn)]
            sharp = max(sharp, math.fsum(by for _, by in near))
        elif turn < -_NO_TURN_RAD:
            is_served = is_served or (cut[n] and bool(near) and along - near[-1][0] <= bend_ft)
            if not is_served:
                sharpest = max(sharpest, sharp)
            longest = max(longest, run)
            run = sharp = 0.0
            near, is_served = [], False
            joint_at = along if cut[n - 1] else -math.inf
    return sharpest, longest


def breaches(part: Part, limits: Limits) -> tuple[Breach, ...]:
    """Return every rule that a part breaks as it is."""
    checks = (_size, _inside_corners, _sharp_corner, _sliver)
    return tuple(breach for check in checks for breach in check(part, limits))


@lru_cache(maxsize=4_000)
def passes(part: Part, limits: Limits) -> bool:
    """Whether a part keeps every rule as it is."""
    quick_first = (_sharp_corner, _inside_corners, _size, _sliver)
    return not any(True for check in quick_first for _ in check(part, limits))


def _size(part: Part, limits: Limits) -> Iterator[Breach]:
    long_ft, short_ft = sides_ft(part.ring)
    if long_ft > limits.most_ft + SLACK_FT:
        yield Breach(rule=PanelRule.SPACING, value=long_ft)
    if long_ft > short_ft * (limits.times + _SLACK_TIMES):
        yield Breach(rule=PanelRule.RATIO, value=long_ft / short_ft)


def _inside_corners(part: Part, limits: Limits) -> Iterator[Breach]:
    sharpest, longest = inward_rad(part, limits.place_ft)
    if sharpest > limits.turn_rad + _SLACK_RAD:
        yield Breach(rule=PanelRule.INSIDE_CORNER, value=sharpest)
    if longest > limits.wrap_rad + _SLACK_RAD:
        yield Breach(rule=PanelRule.WRAP, value=longest)


def _sharp_corner(part: Part, limits: Limits) -> Iterator[Breach]:
    corner = sharpest_rad(part)
    if corner < limits.corner_rad - _SLACK_RAD:
        yield Breach(rule=PanelRule.CORNER, value=corner)


def _sliver(part: Part, limits: Limits) -> Iterator[Breach]:
    if is_sliver(part, limits):
        yield Breach(rule=PanelRule.SLIVER, value=sides_ft(part.ring)[1])


@lru_cache(maxsize=4_000)
def panels_wanted(part: Part, limits: Limits) -> float:
    """Estimate how many panels a part will become.

    The part is taken as a rectangle of the same area and perimeter, which is right for a straight
    strip and for a curved one. Each inside corner and long curve needs one joint more.
    """
    area, half = part.area_sqft, part.around_ft / 4
    spread = math.sqrt(max(0.0, half * half - area))
    tiles = tiled(half + spread, max(half - spread, 0.1), limits)
    sharpest, longest = inward_rad(part, limits.place_ft)
    corner = 1.0 if sharpest > limits.turn_rad + _SLACK_RAD else 0.0
    curve = max(0, math.ceil((longest - _SLACK_RAD) / limits.wrap_rad) - 1)
    across, down = tiles
    return max(across * down, 1 + corner + curve) + 0.2 * (corner + curve)


def tiled(long_ft: float, short_ft: float, limits: Limits) -> tuple[int, int]:
    """Return how many equal panels along and across divide a rectangle by the rules."""
    most = limits.most_ft + SLACK_FT
    return _tiled(long_ft, short_ft, most, limits.times + _SLACK_TIMES)


@lru_cache(maxsize=20_000)
def _tiled(long_ft: float, short_ft: float, most_ft: float, times: float) -> tuple[int, int]:
    across, down = math.ceil(long_ft / most_ft), math.ceil(short_ft / most_ft)
    while across + down < _MOST_TILES:
        wide, high = long_ft / across, short_ft / down
        if wide > high * times:
            across += 1
        elif high > wide * times:
            down += 1
        else:
            break
    return across, down
