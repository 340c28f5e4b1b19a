"""The panels that joints leave, measured and held against the rules."""

import math
from collections.abc import Sequence

from shapely import Polygon, maximum_inscribed_circle

from quotegen.quantity import rounded
from quotegen.takeoff.joints.cutting import Segment, cut_along, parts_of
from quotegen.takeoff.joints.judge import Found, broken_hard, broken_soft, sides_ft
from quotegen.takeoff.joints.limits import Limits
from quotegen.takeoff.joints.part import Part
from quotegen.takeoff.joints.records import Broken, Panel, PanelRule

_LABEL_FT = 0.5
_DRAWN_FT = 0.02
_ROW_FT = 2.0  # panels whose middles lie within this of each other are counted as one row
_SIZE_PLACES, _AREA_PLACES, _DEGREE_PLACES = 2, 1, 0


def divided(region: Polygon, joints: Sequence[Segment]) -> tuple[Part, ...]:
    """Return the parts that joints divide a region into, row by row from the lower left."""
    parts = parts_of(cut_along(region, joints), region)
    return tuple(sorted(parts, key=_reading_order))


def panel_of(number: int, part: Part, posts: tuple[Polygon, ...], limits: Limits) -> Panel:
    """Return a part as a panel with its number."""
    long_ft, short_ft = sides_ft(part.ring)
    shape = Polygon(part.ring)
    label = maximum_inscribed_circle(shape, _LABEL_FT).coords[0]
    found = (*broken_soft(part, limits), *broken_hard(part, limits))
    if posts:
        found = tuple(
            one for one in found if one.rule not in _OF_POSTS or not _at_post(part, posts)
        )
    return Panel(
        number=number,
        outline_ft=tuple((x, y) for x, y in shape.simplify(_DRAWN_FT).boundary.coords[:-1]),
        long_ft=rounded(long_ft, _SIZE_PLACES),
        short_ft=rounded(short_ft, _SIZE_PLACES),
        ratio=rounded(long_ft / short_ft, _SIZE_PLACES),
        area_sqft=rounded(part.area_sqft, _AREA_PLACES),
        broken=tuple(_broken(one, limits) for one in found),
        label_ft=(label[0], label[1]),
    )


_OF_POSTS = frozenset({PanelRule.INSIDE_CORNER, PanelRule.WRAP})


def _at_post(part: Part, posts: tuple[Polygon, ...]) -> bool:
    """Say whether a panel has a small opening at its edge: joints meet that in its middle."""
    return any(Polygon(part.ring).distance(post) < _DRAWN_FT for post in posts)


def _broken(found: Found, limits: Limits) -> Broken:
    allowed = {
        PanelRule.SPACING: limits.most_ft,
        PanelRule.RATIO: limits.times,
        PanelRule.CORNER: limits.corner_rad,
        PanelRule.SLIVER: limits.least_ft,
        PanelRule.INSIDE_CORNER: limits.turn_rad,
        PanelRule.WRAP: limits.wrap_rad,
    }[found.rule]
    if found.rule in _ANGLES:
        return Broken(
            rule=found.rule,
            found=rounded(math.degrees(found.value), _DEGREE_PLACES),
            allowed=rounded(math.degrees(allowed), _DEGREE_PLACES),
        )
    return Broken(
        rule=found.rule,
        found=rounded(found.value, _SIZE_PLACES),
        allowed=rounded(allowed, _SIZE_PLACES),
    )


_ANGLES = frozenset({PanelRule.CORNER, PanelRule.INSIDE_CORNER, PanelRule.WRAP})


def _reading_order(part: Part) -> tuple[int, float, float]:
    middle = Polygon(part.ring).centroid
    return math.floor(middle.y / _ROW_FT), middle.x, middle.y
