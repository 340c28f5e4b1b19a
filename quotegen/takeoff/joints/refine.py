"""Dividing a part until every panel passes: the best cut first, others where that leads nowhere."""

import math
from dataclasses import dataclass

from quotegen.takeoff.joints.candidates import candidates
from quotegen.takeoff.joints.judge import (
    panels_wanted,
    passes,
    slivers,
)
from quotegen.takeoff.joints.limits import Limits
from quotegen.takeoff.joints.part import Chord, Part, Spot, interior_rad, split
from quotegen.takeoff.plan_geometry import Point

_PARTS = 40
_TRIES = 3  # cuts of one part that are followed to their end
_SLACK_RAD = math.radians(0.5)
_SAME_FT = 1e-4
_OFFSET, _LENGTH, _SKEW, _UNEVEN = 0.6, 0.012, 0.35, 0.25


@dataclass(slots=True, frozen=True, kw_only=True)
class Cut:
    """One way to cut a part, and what it costs: panels, and a little for each thing unlovely."""

    cost: float
    parts: tuple[Part, Part]


class Refiner:
    """Divides parts; `left` is how many more parts are looked into before it hurries."""

    def __init__(self, limits: Limits, left: int = _PARTS) -> None:
        self.limits = limits
        self.left = left

    def refine(self, part: Part, nodes: tuple[Point, ...]) -> tuple[Part, ...]:
        """Return the panels of a part; some may fail where no cut does better."""
        if passes(part, self.limits):
            return (part,)
        best: tuple[Part, ...] = (part,)
        least = math.inf
        tries = _TRIES if self.left > 0 else 1
        self.left -= 1
        for cut in self._cuts(part, nodes)[:tries]:
            first = self.refine(cut.parts[0], nodes)
            ends = tuple(point for one in first for point in one.ring)
            panels = (*first, *self.refine(cut.parts[1], (*nodes, *ends)))
            failing = sum(not passes(one, self.limits) for one in panels)
            if failing * 100 + len(panels) < least and failing == 0:
                return panels
            if failing * 100 + len(panels) < least:
                best, least = panels, failing * 100 + len(panels)
        return best

    def _cuts(self, part: Part, nodes: tuple[Point, ...]) -> list[Cut]:
        """Return every cut of a part that leaves no sharp corner and no sliver, the best first."""
        seen: set[tuple[float, ...]] = set()
        found: list[tuple[Chord, float, tuple[Part, Part]]] = []
        for chord in candidates(part, nodes, self.limits):
            key = tuple(sorted((chord[0].side + chord[0].share, chord[1].side + chord[1].share)))
            if key in seen:
                continue
            seen.add(key)
            sharpest = min(_meets_at(part, *chord), _meets_at(part, *chord[::-1]))
            if sharpest < self.limits.corner_rad - _SLACK_RAD:
                continue
            parts = split(part, chord)
            if parts is not None:
                found.append((chord, sharpest, parts))
        thin = slivers([one for _, _, parts in found for one in parts], self.limits)
        cuts = [
            self._cut(part, chord, sharpest, parts, nodes)
            for n, (chord, sharpest, parts) in enumerate(found)
            if not (thin[2 * n] or thin[2 * n + 1])
        ]
        return sorted(cuts, key=lambda cut: cut.cost)

    def _cut(
        self,
        part: Part,
        chord: Chord,
        sharpest: float,
        parts: tuple[Part, Part],
        nodes: tuple[Point, ...],
    ) -> Cut:
        wanted = [panels_wanted(one, self.limits) for one in parts]
        areas = [one.area_sqft / want for one, want in zip(parts, wanted, strict=True)]
        cost = (
            math.fsum(wanted)
            + _OFFSET * sum(_is_offset(part, spot.point, spot.side, spot.share, nodes)
                            for spot in chord)
            + _LENGTH * math.dist(chord[0].point, chord[1].point)
            + _SKEW * max(0.0, math.pi / 2 - sharpest)
            + _UNEVEN * (max(areas) / min(areas) - 1)
        )  # fmt: skip
        return Cut(cost=cost, parts=parts)


def _meets_at(part: Part, here: Spot, there: Spot) -> float:
    """Return the smaller of the two angles that a chord makes where it meets the ring."""
    ring = part.ring
    before = ring[here.side - 1] if here.share == 0 else ring[here.side]
    after = ring[(here.side + 1) % len(ring)]
    return min(
        interior_rad(before, here.point, there.point), interior_rad(there.point, here.point, after)
    )


def _is_offset(part: Part, point: Point, side: int, share: float, nodes: tuple[Point, ...]) -> bool:
    """Say whether a chord would end in the middle of a joint, with no joint beyond to meet it."""
    if not part.cut[side] or share == 0:
        return False
    return all(math.dist(point, node) > _SAME_FT for node in nodes)
