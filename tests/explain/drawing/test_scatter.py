"""What looks scattered: apart, inside, and the same each time."""

from itertools import combinations
from math import dist

from quotegen.explain.drawing.scatter import packed


def test_stones_lie_apart_and_inside():
    """No stone over another or over the rim, whatever their sizes."""
    stones = packed(200, 60, (12, 7, 3), 5, gap=1)
    assert len(stones) > 30
    for one, other in combinations(stones, 2):
        assert dist(one.middle, other.middle) >= one.radius + other.radius + 1 - 1e-9
    for stone in stones:
        assert stone.radius <= stone.middle[0] <= 200 - stone.radius
        assert stone.radius <= stone.middle[1] <= 60 - stone.radius


def test_a_seed_gives_the_same_stones():
    """Same input, same bytes; another seed, other stones."""
    assert packed(90, 40, (6,), 3) == packed(90, 40, (6,), 3) != packed(90, 40, (6,), 4)
