"""What looks scattered and is the same each time: numbers, spots and stones from a fixed seed."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import islice
from math import cos, pi, sin

from quotegen.explain.drawing.curves import Pixel

_TRIES = 1500
"""How often a place is looked for, for stones of one size."""


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
    draw, stones = numbers(seed), list[Stone]()
    for radius in radii:
        for x, y in islice(zip(draw, draw, strict=False), _TRIES):
            at = (radius + x * (width - 2 * radius), radius + y * (height - 2 * radius))
            if all(_clear(at, radius + gap, other) for other in stones):
                stones.append(Stone(at, radius))
    return tuple(stones)


def _clear(at: Pixel, radius: float, other: Stone) -> bool:
    across, down, apart = at[0] - other.middle[0], at[1] - other.middle[1], radius + other.radius
    return across * across + down * down >= apart * apart
