"""Free space on a drawing: where words can stand without covering lines or other words."""

from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from math import dist

from quotegen.explain.drawing.curves import Pixel, along

STEP_PX = 7.0
FIELD_PX = 24.0
BESIDE_PX = 4.0
SHARES = (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9)
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
        """The box of a size around a point."""
        return cls(
            middle[0] - width / 2,
            middle[1] - height / 2,
            middle[0] + width / 2,
            middle[1] + height / 2,
        )

    @property
    def middle(self) -> Pixel:
        """The middle of the box."""
        return ((self.left + self.right) / 2, (self.top + self.bottom) / 2)

    def meets(self, other: "Box") -> bool:
        """Whether two boxes overlap."""
        return (
            self.left < other.right
            and other.left < self.right
            and self.top < other.bottom
            and other.top < self.bottom
        )

    def probes(self) -> Iterator[Pixel]:
        """The corners, the middles of the sides and the middle."""
        for x in (self.left, (self.left + self.right) / 2, self.right):
            for y in (self.top, (self.top + self.bottom) / 2, self.bottom):
                yield (x, y)


class FreeSpace:
    """What is taken on one drawing while it is made, and the search for what is free."""

    def __init__(self, paper: Box) -> None:
        self.paper = paper
        self._taken: defaultdict[tuple[int, int], list[Box]] = defaultdict(list)

    def take(self, box: Box) -> None:
        """Mark a box as taken."""
        for field in _fields(box):
            self._taken[field].append(box)

    def take_line(self, start: Pixel, end: Pixel, width: float = 3.0) -> None:
        """Mark a line as taken."""
        for piece in _pieces(start, end, width):
            self.take(piece)

    def take_ring(self, ring: Sequence[Pixel]) -> None:
        """Mark the line around a shape as taken."""
        for start, end in zip(ring, (*ring[1:], ring[0]), strict=True):
            self.take_line(start, end)

    def is_free_line(self, start: Pixel, end: Pixel) -> bool:
        """Whether a line stays on the paper and meets nothing between its ends."""
        return all(map(self.is_free, _pieces(start, end, 2 * STEP_PX)[2:-2]))

    def is_free(self, box: Box) -> bool:
        """Whether a box is on the paper and meets nothing that is taken."""
        on_paper = (
            box.left >= self.paper.left
            and box.right <= self.paper.right
            and box.top >= self.paper.top
            and box.bottom <= self.paper.bottom
        )
        if not on_paper:
            return False
        # Plain loops: this is asked a million times for a package.
        for field in _fields(box):
            for other in self._taken.get(field, ()):
                if box.meets(other):
                    return False
        return True

    def rightmost(self, box: Box) -> float:
        """Take a box as far right on the paper as it is free, and return its left side."""
        wide, (least, most) = box.right - box.left, (self.paper.left, self.paper.right)
        places = [
            most - wide - STEP_PX * n for n in range(int((most - wide - least) / STEP_PX) + 1)
        ]
        shifted = [Box(left, box.top, left + wide, box.bottom) for left in (*places, least)]
        found = next(filter(self.is_free, shifted), shifted[0])
        self.take(found)
        return found.left

    def find(
        self,
        near: Pixel,
        width: float,
        height: float,
        fits: Callable[[Box], bool],
    ) -> Box | None:
        """Take the free box nearest to a point that fits; None where there is none."""
        for middle in self._around(near):
            box = Box.around(middle, width, height)
            if self.is_free(box) and fits(box):
                self.take(box)
                return box
        return None

    def find_at(
        self, middle: Pixel, width: float, height: float, fits: Callable[[Box], bool]
    ) -> Box | None:
        """Take the box around a point if it is free and fits; else None."""
        box = Box.around(middle, width, height)
        if not fits(box) or not self.is_free(box):
            return None
        self.take(box)
        return box

    def find_near(
        self, near: Pixel, width: float, height: float, fits: Callable[[Box], bool]
    ) -> Box | None:
        """Take a free box that fits, no farther off than its own size; else None."""
        for down in NEAR_STEPS:
            for across in NEAR_STEPS:
                middle = (near[0] + across * width / 4, near[1] + down * height / 4)
                box = self.find_at(middle, width, height, fits)
                if box is not None:
                    return box
        return None

    def find_beside(
        self, line: Sequence[Pixel], width: float, height: float, fits: Callable[[Box], bool]
    ) -> Box | None:
        """Take a free box that fits right beside a line, near its middle if it can; else None."""
        for share in SHARES:
            at, ahead = along(line, share), along(line, min(1, share + 0.01))
            behind = along(line, max(0, share - 0.01))
            long = dist(behind, ahead) or 1
            across, down = (behind[1] - ahead[1]) / long, (ahead[0] - behind[0]) / long
            off = BESIDE_PX + (abs(across) * width + abs(down) * height) / 2
            for side in (off, -off):
                middle = (at[0] + across * side, at[1] + down * side)
                box = self.find_at(middle, width, height, fits)
                if box is not None:
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


def _fields(box: Box) -> Iterator[tuple[int, int]]:
    """Each field of a net over the paper that a box touches; boxes that meet share one."""
    for column in range(int(box.left // FIELD_PX), int(box.right // FIELD_PX) + 1):
        for row in range(int(box.top // FIELD_PX), int(box.bottom // FIELD_PX) + 1):
            yield column, row


def _pieces(start: Pixel, end: Pixel, width: float) -> list[Box]:
    """Boxes along a line, closer together than any text is wide."""
    pieces = max(1, int(dist(start, end) / STEP_PX))
    shares = (piece / pieces for piece in range(pieces + 1))
    (x, y), (across, down) = start, (end[0] - start[0], end[1] - start[1])
    return [Box.around((x + across * n, y + down * n), width, width) for n in shares]
