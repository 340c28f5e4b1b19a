"""What looks scattered and is the same each time: numbers, spots and stones from a fixed seed."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import islice
from math import cos, pi, sin

from quotegen.explain.drawing.curves import Pixel

_TRIES = 3
"""How often a place is looked for, for each stone of a size that the rectangle would hold."""


@dataclass(frozen=True, slots=True)
class Stone:
    """A stone: where it lies, and how far its corners reach."""

    middle: Pixel
    radius: float

    def outline(self, seed: int, *, corners: int = 7, flat: float = 1.0) -> list[Pixel]:
        """The corners of a rough ring, `flat` of its width high."""
        turns = numbers(seed)
        first = next(turns)
        reach = [0.78 + 0.26 * next(turns) for _ in range(corners)]
        x, y = self.middle
        return [
            (
                x + self.radius * share * cos(2 * pi * (index + first) / corners),
                y + flat * self.radius * share * sin(2 * pi * (index + first) / corners),
            )
            for index, share in enumerate(reach)
        ]


def numbers(seed: int) -> Iterator[float]:
    """Numbers from 0 up to 1 without order: a linear congruence of 2**32 (Numerical Recipes)."""
    state = (seed * 2654435761 + 1013904223) % 2**32
    while True:
        state = (1664525 * state + 1013904223) % 2**32
        yield state / 2**32


def spots(count: int, width: float, height: float, seed: int) -> Iterator[Pixel]:
    """Spots spread over a rectangle, no two of them close: steps of the plastic number."""
    start = next(numbers(seed))
    for index in range(count):
        x = (start + index * 0.7548776662466927) % 1
        y = (start + index * 0.5698402909980532) % 1
        yield x * width, y * height


def packed(
    width: float, height: float, radii: Sequence[float], seed: int, gap: float = 0.0
) -> tuple[Stone, ...]:
    """Lay stones into a rectangle, the large sizes first, none over another or over the rim."""
    draw, stones, side = numbers(seed), list[Stone](), 2 * max(radii) + gap
    cells: dict[tuple[int, int], list[Stone]] = {}
    for radius in radii:
        tries = int(_TRIES * width * height / (pi * radius * radius)) + 8
        for x, y in islice(zip(draw, draw, strict=False), tries):
            at = (radius + x * (width - 2 * radius), radius + y * (height - 2 * radius))
            column, row = int(at[0] // side), int(at[1] // side)
            beside = [cells.get((column + c, row + r), ()) for c in (-1, 0, 1) for r in (-1, 0, 1)]
            if all(_clear(at, radius + gap, other) for cell in beside for other in cell):
                stone = Stone(at, radius)
                stones.append(stone)
                cells.setdefault((column, row), []).append(stone)
    return tuple(stones)


def _clear(at: Pixel, radius: float, other: Stone) -> bool:
    across, down, apart = at[0] - other.middle[0], at[1] - other.middle[1], radius + other.radius
    return across * across + down * down >= apart * apart
