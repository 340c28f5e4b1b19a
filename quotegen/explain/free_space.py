"""Free space on a drawing: where words can stand without covering lines or other words."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from math import dist

from quotegen.explain.curves import Pixel

STEP_PX = 7.0
NEAR_STEPS = (0, 1, -1, 2, -2, 3, -3, 4, -4)


@dataclass(frozen=True, slots=True)
class Box:
    """An upright rectangle on the paper."""

    left: float
    top: float
    right: float
    bottom: float

    @classmethod
    def around(cls, middle: Pixel, width: float, height: float) -> "Box":
        """Return the box of that size round a middle."""
        return cls(
            middle[0] - width / 2,
            middle[1] - height / 2,
            middle[0] + width / 2,
            middle[1] + height / 2,
        )

    def meets(self, other: "Box") -> bool:
        """Say whether two boxes share any space."""
        return (
            self.left < other.right
            and other.left < self.right
            and self.top < other.bottom
            and other.top < self.bottom
        )

    def probes(self) -> Iterator[Pixel]:
        """Yield the corners, the middles of the sides and the middle."""
        for x in (self.left, (self.left + self.right) / 2, self.right):
            for y in (self.top, (self.top + self.bottom) / 2, self.bottom):
                yield (x, y)


class FreeSpace:
    """What is taken on one drawing while it is made, and the search for what is free."""

    def __init__(self, paper: Box) -> None:
        self.paper = paper
        self._taken: list[Box] = []
        self._joints: list[Box] = []

    def take(self, box: Box) -> None:
        """Mark a box as taken."""
        self._taken.append(box)

    def take_joint(self, start: Pixel, end: Pixel) -> None:
        """Mark a joint as taken; what finds no other place may stand over it."""
        here = len(self._taken)
        self.take_line(start, end)
        self._joints += self._taken[here:]
        del self._taken[here:]

    def take_line(self, start: Pixel, end: Pixel, width: float = 3.0) -> None:
        """Mark a line as taken."""
        pieces = max(1, int(dist(start, end) / STEP_PX))
        for piece in range(pieces + 1):
            share = piece / pieces
            at = (start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share)
            self.take(Box.around(at, width, width))

    def is_free(self, box: Box, *, over_joints: bool = False) -> bool:
        """Say whether a box is on the paper and meets nothing that is taken."""
        on_paper = (
            box.left >= self.paper.left
            and box.right <= self.paper.right
            and box.top >= self.paper.top
            and box.bottom <= self.paper.bottom
        )
        clear = over_joints or not any(box.meets(other) for other in self._joints)
        return on_paper and clear and not any(box.meets(other) for other in self._taken)

    def find(
        self,
        near: Pixel,
        width: float,
        height: float,
        fits: Callable[[Box], bool],
        *,
        over_joints: bool = False,
    ) -> Box | None:
        """Return the free box nearest to a place that fits, and mark it as taken."""
        for middle in self._around(near):
            box = Box.around(middle, width, height)
            if self.is_free(box, over_joints=over_joints) and fits(box):
                self.take(box)
                return box
        return None

    def find_near(
        self, near: Pixel, width: float, height: float, fits: Callable[[Box], bool]
    ) -> Box | None:
        """Return a free box that fits, no farther off than its own size, and mark it as taken."""
        for down in NEAR_STEPS:
            for across in NEAR_STEPS:
                middle = (near[0] + across * width / 4, near[1] + down * height / 4)
                box = Box.around(middle, width, height)
                if fits(box) and self.is_free(box):
                    self.take(box)
                    return box
        return None

    def _around(self, near: Pixel) -> Iterable[Pixel]:
        columns = int((self.paper.right - self.paper.left) / STEP_PX) + 1
        rows = int((self.paper.bottom - self.paper.top) / STEP_PX) + 1
        grid = [near] + [
            (self.paper.left + column * STEP_PX, self.paper.top + row * STEP_PX)
            for column in range(columns)
            for row in range(rows)
        ]
        return sorted(grid, key=lambda at: (dist(at, near), at))
