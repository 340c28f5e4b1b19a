"""The kinds of edge that a price or a measurement may name."""

from enum import StrEnum


class EdgeName(StrEnum):
    """The edge that a price by the foot follows."""

    OUTER = "outer edge"
    INNER = "inner edge"
    FORMED = "formed edge"
    HOUSE = "house edge"
    POOL = "pool edge"
    STRAIGHT = "straight edge"
    CURVED = "curved edge"
    JOINT = "joint length"
