"""Lays out the joints of 200 made-up decks and counts the panels that keep every rule.

It counts too where joints end badly: in the side of another, near a corner of the slab, and out of
line with those beyond a pool.

Run it with `./run bench joints`; `./run bench` does it last. The decks are the same every time.
What remains is named by rule and kind of deck.
"""

import math
import random
import time
from collections import Counter
from collections.abc import Callable, Iterator, Mapping
from datetime import date
from fractions import Fraction
from typing import Any

from quotegen.quantity import Length, Units
from quotegen.reading.files.job import Placement
from quotegen.reading.records import PlacementSpec
from quotegen.takeoff.job_units import JobUnits
from quotegen.takeoff.joints.ends import ends_of
from quotegen.takeoff.joints.judge import limits_of
from quotegen.takeoff.joints.plan import joint_plan
from quotegen.takeoff.joints.records import JointPlan
from quotegen.takeoff.shapes.overlay import polygons
from quotegen.takeoff.slab.slab import Slab, slab_of
from quotegen.trade.rules import load_rules

DECKS = 200
DAY = date(2026, 5, 14)
Typed = Mapping[str, Any]
Shapes = tuple[tuple[Typed, ...], tuple[Typed, ...]]


def decks(seed: int = 20260514) -> Iterator[tuple[str, str, Shapes]]:
    """Yield kind, thickness and shapes of each deck."""
    chance = random.Random(seed)  # noqa: S311 - decks, not secrets
    kinds = tuple(KINDS.items())
    for number in range(DECKS):
        kind, make = kinds[number % len(kinds)]
        yield kind, chance.choice(("4 in", "4 in", "5 in", "6 in")), make(chance)


def _feet(value: float) -> str:
    return f"{round(value * 12)} in"


def _at(along: float, out: float) -> list[str]:
    return [_feet(along), _feet(out)]


def _size(wide: float, high: float) -> str:
    return f"{_feet(wide)} x {_feet(high)}"


def _rectangle(chance: random.Random) -> Shapes:
    return ({"rectangle": _size(chance.uniform(8, 45), chance.uniform(6, 30))},), ()


def _l_shape(chance: random.Random) -> Shapes:
    wide, high = chance.uniform(16, 36), chance.uniform(8, 16)
    arm = chance.uniform(6, wide - 5)
    return (
        {"rectangle": _size(wide, high)},
        {"rectangle": _size(arm, chance.uniform(6, 16)), "at": _at(0, high)},
    ), ()


def _around(chance: random.Random, long: float, wide: float) -> tuple[Typed, tuple[float, float]]:
    """Return a deck that goes round a pool of that size, and where the pool's corner lies."""
    left, right, low, high = (chance.uniform(3.5, 10) for _ in range(4))
    deck = {"rectangle": _size(left + long + right, low + wide + high), "against_house": "bottom"}
    return deck, (left, low)


def _square_pool(chance: random.Random) -> Shapes:
    long, wide = chance.uniform(18, 36), chance.uniform(10, 18)
    deck, at = _around(chance, long, wide)
    return (deck,), ({"rectangle": _size(long, wide), "at": _at(*at), "is": "pool"},)


def _rounded_pool(chance: random.Random) -> Shapes:
    long, wide = chance.uniform(20, 36), chance.uniform(12, 18)
    deck, at = _around(chance, long, wide)
    radius = chance.choice((1.0, 2.0, 4.0, wide / 2 - 0.1))
    pool = {"rectangle": _size(long, wide), "corner_radius": _feet(radius), "at": _at(*at)}
    return (deck,), ({**pool, "is": "pool"},)


def _oval_pool(chance: random.Random) -> Shapes:
    long, wide = chance.uniform(18, 34), chance.uniform(12, 18)
    deck, at = _around(chance, long, wide)
    middle = _at(at[0] + long / 2, at[1] + wide / 2)
    return (deck,), ({"ellipse": _size(long, wide), "at": middle, "is": "pool"},)


def _kidney(chance: random.Random) -> Shapes:
    """A kidney of arcs that meet without a corner: two lobes, a flat back and a dent between."""
    lobe, other = chance.uniform(6, 8), chance.uniform(5, 7)
    apart, dent = lobe + other + chance.uniform(2, 5), chance.uniform(5, 9)
    deck, (left, low) = _around(chance, lobe + apart + other, 2 * lobe + 1)
    outline = _kidney_outline((left + lobe, low + lobe), (left + lobe + apart, low + lobe),
                              (lobe, other), dent)  # fmt: skip
    return (deck,), ({"outline": outline, "is": "pool"},)


def _kidney_outline(
    one: tuple[float, float], two: tuple[float, float], radii: tuple[float, float], dent: float
) -> list[dict[str, Any]]:
    (x1, y1), (x2, _) = one, two
    r1, r2 = radii
    apart = x2 - x1
    lean = math.asin((r1 - r2) / apart)
    # The dent is a circle outside both lobes, touching each of them.
    a, b = r1 + dent, r2 + dent
    along = (a * a - b * b + apart * apart) / (2 * apart)
    up = math.sqrt(a * a - along * along)
    touch1 = (x1 + along * r1 / a, y1 + up * r1 / a)
    touch2 = (x2 - (apart - along) * r2 / b, y1 + up * r2 / b)
    back1 = (x1 + r1 * math.sin(lean), y1 - r1 * math.cos(lean))
    back2 = (x2 + r2 * math.sin(lean), y1 - r2 * math.cos(lean))
    return [
        {"from": _exact(back1)},
        {"to": _exact(back2)},
        {"to": _exact(touch2), "through": _exact((x2 + r2, y1))},
        {"to": _exact(touch1), "through": _exact((x1 + along, y1 + up - dent))},
        {"to": _exact(back1), "through": _exact((x1 - r1, y1))},
    ]


def _exact(point: tuple[float, float]) -> list[str]:
    return [f"{value:.6f} ft" for value in point]


def _freeform(chance: random.Random) -> Shapes:
    """Round a middle, arcs bowing out between corners that hardly show."""
    count = chance.randint(5, 7)
    turns = [(n + chance.uniform(-0.12, 0.12)) * 2 * math.pi / count for n in range(count)]
    far = chance.uniform(9, 17)
    reach = [far * chance.uniform(0.85, 1.15) for _ in range(count)]
    points = [
        (20 + r * math.cos(t), 20 + r * math.sin(t)) for r, t in zip(reach, turns, strict=True)
    ]
    outline: list[dict[str, Any]] = [{"from": _exact(points[0])}]
    for start, end in zip(points, (*points[1:], points[0]), strict=True):
        rise = math.dist(start, end) * chance.uniform(0.08, 0.16)
        outline.append({"to": _exact(end), "rise": f"{rise:.4f} ft"})
    return ({"outline": outline},), ()


def _ring(chance: random.Random) -> Shapes:
    width = chance.uniform(3, 9)
    ring = {"outer_radius": _feet(width + chance.uniform(6, 20)), "width": _feet(width),
            "sweep": f"{chance.randint(40, 200)} deg"}  # fmt: skip
    return ({"ring": ring},), ()


def _walk(chance: random.Random) -> Shapes:
    return ({"rectangle": _size(chance.uniform(15, 60), chance.uniform(2.5, 5))},), ()


KINDS: Mapping[str, Callable[[random.Random], Shapes]] = {
    "rectangle": _rectangle,
    "L": _l_shape,
    "square pool": _square_pool,
    "rounded pool": _rounded_pool,
    "oval pool": _oval_pool,
    "kidney": _kidney,
    "freeform": _freeform,
    "ring": _ring,
    "narrow walk": _walk,
}


def spec_of(thickness: str, shapes: Shapes) -> PlacementSpec:
    """Return a placement of these shapes."""
    add, take_away = shapes
    typed = Placement.model_validate(
        {"id": "deck", "use": "patio", "add": add, "take_away": take_away}
    )
    inches = Fraction(thickness.removesuffix(" in"))
    return PlacementSpec(
        typed=typed,
        path=("placements", 0),
        name="Deck",
        add=typed.add,
        take_away=typed.take_away,
        thickness=Length.of_inches(inches),
        base=Length(Fraction(1, 3)),
        reinforcement="none",
        finish=None,
        include={},
    )


def plan_of(spec: PlacementSpec) -> tuple[Slab, JointPlan]:
    """Lay out the joints of one placement."""
    slab, faults = slab_of(spec.add, spec.take_away)
    if slab is None:
        message = f"a made-up deck is at fault: {faults}"
        raise ValueError(message)
    return slab, joint_plan(spec, slab, JobUnits(units=Units.US), load_rules(), DAY)


def badly_ended(spec: PlacementSpec, slab: Slab, plan: JointPlan) -> Counter[str]:
    """Count the joint ends of a plan that a finisher would not saw, by what is wrong with them."""
    limits = limits_of(spec.thickness, load_rules(), DAY)
    joints = [(joint.start_ft, joint.end_ft) for joint in plan.joints]
    found: Counter[str] = Counter()
    for region in polygons(slab.region):
        ends = ends_of(joints, region, limits)
        found["dying"] += len(ends.dying)
        found["near a corner"] += len(ends.near_corner)
        found["out of line"] += len(ends.unmatched)
    return +found


def main() -> None:
    """Lay out every deck and print the table."""
    panels: Counter[str] = Counter()
    kept: Counter[str] = Counter()
    broken: Counter[tuple[str, str]] = Counter()
    ends: dict[str, Counter[str]] = {kind: Counter() for kind in KINDS}
    plans_without: Counter[str] = Counter()
    spent: list[float] = []
    for kind, thickness, shapes in decks():
        began = time.process_time()
        spec = spec_of(thickness, shapes)
        slab, plan = plan_of(spec)
        spent.append(time.process_time() - began)
        bad = badly_ended(spec, slab, plan)
        ends[kind] += bad
        plans_without[kind] += not bad["dying"]
        panels[kind] += len(plan.panels)
        kept[kind] += len(plan.panels) - len(plan.exceptions)
        for panel in plan.exceptions:
            broken.update((kind, one.rule.value) for one in panel.broken)
    print(f"Joint plans of {DECKS} decks\n")
    for kind in KINDS:
        print(f"  {kind:<14}{kept[kind]:6} of {panels[kind]:5} panels keep every rule")
    share = kept.total() / panels.total()
    print(f"  {'all':<14}{kept.total():6} of {panels.total():5}, {share:.2%}\n")
    for kind in KINDS:
        said = ", ".join(f"{count} {what}" for what, count in ends[kind].items()) or "none"
        print(f"  {kind:<14}{said}; {plans_without[kind]} plans without a joint that dies")
    print(f"  {'all':<14}{plans_without.total()} of {DECKS} plans without a joint that dies\n")
    for (kind, rule), count in sorted(broken.items()):
        print(f"  {count} x {rule}, {kind}")
    spent.sort()
    print(f"\n  median {spent[len(spent) // 2]:.3f} s, slowest {spent[-1]:.3f} s a deck")


if __name__ == "__main__":
    main()
