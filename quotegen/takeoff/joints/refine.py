"""Dividing a part until every panel passes: the best cut first, others if that leads nowhere."""

import math
from dataclasses import dataclass

from quotegen.takeoff.joints.candidates import candidates
from quotegen.takeoff.joints.judge import (
    Limits,
    panels_wanted,
    passes,
    slivers,
)
from quotegen.takeoff.joints.part import Chord, Part, Spot, interior_rad, split
from quotegen.takeoff.plan_geometry import Point

_PARTS = 40  # so many parts are searched; the rest are cut by the best cut alone
_TRIES = 3  # cuts of one part that are followed to the end
_SLACK_RAD = math.radians(0.5)
_SAME_FT = 1e-4
_OFFSET, _LENGTH, _SKEW, _UNEVEN = 2.0, 0.012, 0.35, 0.25
"""What a cut costs, in panels: an end that meets nothing, a foot of joint, a radian off square,
and how much larger one side's panels are than the other's."""


@dataclass(slots=True, frozen=True, kw_only=True)
class Cut:
    """One cut of a part and its cost: the panels it leaves, and a little for anything unsightly."""

    cost: float
    parts: tuple[Part, Part]


class Refiner:
    """Divides parts; `left` is how many more are searched before only the best cut is tried."""

    def __init__(self, limits: Limits, left: int = _PARTS) -> None:
        self.limits = limits
        self.left = left

    def refine(self, part: Part, joint_ends: tuple[Point, ...]) -> tuple[Part, ...]:
        """Return the panels of a part; some may fail where no cut does better.

        Args:
            part: to be divided.
            joint_ends: where joints around it end.
        """
        if passes(part, self.limits):
            return (part,)
        best: tuple[Part, ...] = (part,)
        least = math.inf
        tries = _TRIES if self.left > 0 else 1
        self.left -= 1
        for cut in self._cuts(part, joint_ends)[:tries]:
            first = self.refine(cut.parts[0], joint_ends)
            ends = tuple(point for one in first for point in one.ring)
            panels = (*first, *self.refine(cut.parts[1], (*joint_ends, *ends)))
            failing = sum(not passes(one, self.limits) for one in panels)
            if failing * 100 + len(panels) < least and failing == 0:
                return panels
            if failing * 100 + len(panels) < least:
                best, least = panels, failing * 100 + len(panels)
        return best

    def _cuts(self, part: Part, joint_ends: tuple[Point, ...]) -> list[Cut]:
        """Return every cut that leaves neither a sharp corner nor a sliver, the best first."""
        seen: set[tuple[float, ...]] = set()
        found: list[tuple[Chord, float, tuple[Part, Part]]] = []
        joint_ends = _near(part, joint_ends)
        for chord in candidates(part, joint_ends, self.limits):
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
            self._cut(part, chord, sharpest, parts, joint_ends)
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
        joint_ends: tuple[Point, ...],
    ) -> Cut:
        wanted = [panels_wanted(one, self.limits) for one in parts]
        areas = [one.area_sqft / want for one, want in zip(parts, wanted, strict=True)]
        cost = (
            math.fsum(wanted)
            + _OFFSET * sum(_is_offset(part, spot, joint_ends) for spot in chord)
            + _LENGTH * math.dist(chord[0].point, chord[1].point)
            + _SKEW * max(0.0, math.pi / 2 - sharpest)
            + _UNEVEN * (max(areas) / min(areas) - 1)
        )  # fmt: skip
        return Cut(cost=cost, parts=parts)


def _near(part: Part, joint_ends: tuple[Point, ...]) -> tuple[Point, ...]:
    """Return the joint ends that can lie on the ring of a part, each once."""
    xs, ys = [x for x, _ in part.ring], [y for _, y in part.ring]
    left, right, low, high = (
        min(xs) - _SAME_FT, max(xs) + _SAME_FT, min(ys) - _SAME_FT, max(ys) + _SAME_FT
    )  # fmt: skip
    return tuple(
        (x, y) for x, y in dict.fromkeys(joint_ends) if left <= x <= right and low <= y <= high
    )


def _meets_at(part: Part, here: Spot, there: Spot) -> float:
    """Return the smaller of the two angles that a chord makes where it meets the ring."""
    ring = part.ring
    before = ring[here.side - 1] if here.share == 0 else ring[here.side]
    after = ring[(here.side + 1) % len(ring)]
    return min(
        interior_rad(before, here.point, there.point), interior_rad(there.point, here.point, after)
    )


def _is_offset(part: Part, spot: Spot, joint_ends: tuple[Point, ...]) -> bool:
    """Whether a chord would end in the middle of a joint with no joint to continue it beyond."""
    if not part.cut[spot.side] or spot.share == 0:
        return False
    return all(math.dist(spot.point, end) > _SAME_FT for end in joint_ends)
