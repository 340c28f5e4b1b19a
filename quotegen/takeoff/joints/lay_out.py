"""The joints of a slab: several layouts are made and the best one is chosen."""

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import partial

from shapely import Polygon

from quotegen.takeoff.joints.cutting import Segment, cut_along, joints_of, parts_of
from quotegen.takeoff.joints.ends import ends_of
from quotegen.takeoff.joints.grid import grid_lines
from quotegen.takeoff.joints.judge import Limits, passes, tiled
from quotegen.takeoff.joints.main_directions import Axis, Frame, axes_of
from quotegen.takeoff.joints.mend import mended
from quotegen.takeoff.joints.part import Part
from quotegen.takeoff.joints.refine import Refiner
from quotegen.takeoff.joints.ring_of_panels import spokes_round
from quotegen.takeoff.plan_geometry import Point
from quotegen.takeoff.shapes.path import Loop

_STRAY_FT = 0.01
_FAILING, _JOINT_FT, _END, _UNMATCHED, _LOPSIDED = 40.0, 0.02, 4.0, 0.5, 0.4
"""What a layout costs, in panels: a failing panel, a foot of joint, a joint that dies into another
or ends near a corner, one that is not in line with those beyond a pool, and, for each panel, joints
that are no mirror image though the slab is one."""
_LARGEST = 250  # panels of full size: a larger slab gets a plain grid
_SAME_COST = 1e-6
_NEVER, _CLEAN, _KEEPS_RULES, _FAILS = -1, 0, 1, 2
"""Ranks of layouts, the best first; no layout ranks `_NEVER`."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Layout:
    """Joints that divide a slab, their cost, and their rank: clean, keeping the rules, or failing.

    A layout is lopsided where the slab is its own mirror image and the joints are not.
    """

    cost: float
    rank: int
    joints: tuple[Segment, ...]
    dying: tuple[Point, ...]
    panels: tuple[Part, ...]


def lay_out(
    region: Polygon, posts: tuple[Point, ...], loops: Sequence[Loop], limits: Limits
) -> tuple[Segment, ...]:
    """Return the joints of one separate part of a slab, as straight lines on the plan.

    The package docstring of `joints` describes the search.

    Args:
        region: the part, its small openings filled.
        posts: the middles of the small openings, which joints should pass through.
        loops: its exact rings, perhaps among others.
        limits: of the panels.
    """
    frame = Frame.of(region, loops)
    level = frame.levelled(region, loops)
    middles = tuple(frame.level(post) for post in posts)
    looser, limits = limits.stricter(1 / 2), limits.stricter()
    left, bottom, right, top = level.bounds
    if (right - left) * (top - bottom) > _LARGEST * limits.most_ft**2 or _is_ribbon(level, limits):
        plain = grid_lines(level, middles, (limits.most_ft, limits.most_ft), limits)
        return tuple(frame.back(line) for line in plain)
    axes = () if middles else axes_of(level)
    best: Layout | None = None
    for enough, lines in _families(level, middles, limits, axes):
        if best is not None and best.rank <= enough:
            break
        layout = _layout(_panels(cut_along(level, lines()), level, limits), level, limits, axes)
        if best is None or layout.cost < best.cost - _SAME_COST:
            best = layout
    if best is None:
        return ()
    joints = _mended(best, level, middles, looser, axes)
    return tuple(frame.back(line) for line in joints)


def _mended(
    best: Layout,
    level: Polygon,
    posts: tuple[Point, ...],
    limits: Limits,
    axes: tuple[Axis, ...],
) -> tuple[Segment, ...]:
    failing = _failing(best.panels, limits)

    def priced(joints: tuple[Segment, ...]) -> Layout | None:
        panels = parts_of(cut_along(level, joints), level)
        if _failing(panels, limits) > failing:
            return None
        return _layout(panels, level, limits, axes)

    images = [axis.image for axis in axes if axis.mirrors(best.joints)]
    looser = priced(best.joints)
    return best.joints if looser is None else mended(looser, priced, images, posts, limits)


def _failing(panels: tuple[Part, ...], limits: Limits) -> int:
    return sum(not passes(panel, limits) for panel in panels)


def _families(
    level: Polygon, posts: tuple[Point, ...], limits: Limits, axes: tuple[Axis, ...]
) -> Iterator[tuple[int, Callable[[], tuple[Segment, ...]]]]:
    """Yield lines to start from, each with a rank: a layout that has it already is good enough."""
    most = limits.most_ft
    enough = _NEVER
    if len(level.interiors) == 1:
        yield _NEVER, partial(spokes_round, level, limits, axes)
        enough = _CLEAN
    yield enough, partial(grid_lines, level, posts, (most, most), limits)
    yield enough, lambda: grid_lines(level, posts, _by_ratio(level, limits), limits)
    if not level.interiors and not posts:
        yield _CLEAN, tuple


def _is_ribbon(level: Polygon, limits: Limits) -> bool:
    """Whether a slab is nowhere as wide as a panel must be: a curb, a mowing strip."""
    return bool(level.buffer(-limits.least_ft / 2).is_empty)


def _by_ratio(level: Polygon, limits: Limits) -> tuple[float, float]:
    """Return spacings for a slab that is narrow one way; the other way follows from the ratio."""
    left, bottom, right, top = level.bounds
    wide, high = right - left, top - bottom
    across, down = tiled(wide, high, limits)
    return wide / across + _STRAY_FT, high / down + _STRAY_FT


def _panels(pieces: tuple[Polygon, ...], level: Polygon, limits: Limits) -> tuple[Part, ...]:
    refiner = Refiner(limits)
    nodes: tuple[Point, ...] = ()
    panels: list[Part] = []
    for part in parts_of(pieces, level):
        made = refiner.refine(part, nodes)
        if len(made) > 1:
            nodes = (*nodes, *(point for one in made for point in one.ring))
        panels += made
    return tuple(panels)


def _layout(
    panels: tuple[Part, ...], level: Polygon, limits: Limits, axes: tuple[Axis, ...]
) -> Layout:
    joints = joints_of(panels)
    failing = _failing(panels, limits)
    long = math.fsum(math.dist(*joint) for joint in joints)
    ends = ends_of(joints, level, limits)
    loose = len(ends.dying) + len(ends.near_corner)
    lopsided = bool(axes) and not any(axis.mirrors(joints) for axis in axes)
    each = 1 + _LOPSIDED * lopsided
    return Layout(
        cost=_FAILING * failing
        + each * len(panels)
        + _JOINT_FT * long
        + _END * loose
        + _UNMATCHED * len(ends.unmatched),
        rank=_FAILS if failing else _KEEPS_RULES if loose or lopsided or ends.unmatched else _CLEAN,
        joints=joints,
        dying=ends.dying,
        panels=panels,
    )
