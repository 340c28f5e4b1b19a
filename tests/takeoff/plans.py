"""Small plans for the tests: shapes as they are typed, put together to a slab or a job."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from fractions import Fraction
from typing import Any, cast

from quotegen.problem import Problem, Severity, Source
from quotegen.quantity import Length, Units
from quotegen.reading.files.job import Placement
from quotegen.reading.files.rate_book import Order
from quotegen.reading.files.shapes import EdgeKind, Shape
from quotegen.reading.records import JobSpec, PlacementSpec
from quotegen.takeoff.joints.records import JointPlan
from quotegen.takeoff.measure import measure
from quotegen.takeoff.plan_geometry import Point
from quotegen.takeoff.records import Takeoff
from quotegen.takeoff.shapes.faults import Fault
from quotegen.takeoff.slab.edges import edge_lengths_ft
from quotegen.takeoff.slab.slab import Slab, slab_of
from quotegen.trade.rules import load_rules

Typed = Mapping[str, Any]

FLOAT_NOISE = 1e-6  # ft or sq ft: what is left of float arithmetic on the overlay grid
DAY = date(2026, 5, 14)


@dataclass(frozen=True, slots=True, kw_only=True)
class BookPart:
    """The part of a rate book that the takeoff reads."""

    order: Order


@dataclass(frozen=True, slots=True, kw_only=True)
class JobPart:
    """The part of a job that the takeoff reads; every value stands on the line of its depth."""

    placements: tuple[PlacementSpec, ...]
    rate_book: BookPart
    units: Units = Units.US
    quote_date: date = DAY

    def source(self, *path: str | int) -> Source:
        return Source(file="job.yaml", line=len(path))


def shape(**typed: Any) -> Shape:
    """Return a shape as a person types it."""
    return Shape.model_validate(typed)


def shapes(typed: tuple[Typed, ...]) -> tuple[Shape, ...]:
    """Return several shapes."""
    return tuple(Shape.model_validate(each) for each in typed)


def slab(*add: Typed, take_away: tuple[Typed, ...] = ()) -> Slab:
    """Return a slab that must be without fault."""
    found, faults = slab_of(shapes(add), shapes(take_away))
    assert faults == ()
    assert found is not None
    return found


def faults(*add: Typed, take_away: tuple[Typed, ...] = ()) -> tuple[Fault, ...]:
    """Return what is wrong with a slab that must not pass."""
    found, wrong = slab_of(shapes(add), shapes(take_away))
    assert found is None
    return wrong


def edges(measured: Slab) -> dict[EdgeKind, float]:
    """Return the unrounded lengths of each kind of edge."""
    return dict(edge_lengths_ft(measured.boundary))


def outline(*corners: Any) -> Typed:
    """Return an outline from corners in feet; a side with more to say is a dict."""
    first, *rest = corners
    sides: list[Any] = [{"from": feet(first)}]
    sides += [each if isinstance(each, dict) else {"to": feet(each)} for each in rest]
    return {"outline": sides}


def feet(point: tuple[float, float]) -> tuple[str, str]:
    """Return a point as typed, in feet."""
    along, out = point
    return f"{along:.9f} ft", f"{out:.9f} ft"


def rounded_point(point: Point) -> Point:
    """Return a point without float dust, to compare it."""
    return round(point[0], 6), round(point[1], 6)


def placement(
    *add: Typed,
    take_away: tuple[Typed, ...] = (),
    name: str = "deck",
    number: int = 0,
    thickness_in: str = "4",
    lines: tuple[Typed, ...] | None = None,
) -> PlacementSpec:
    """Return a placement with nothing left open."""
    typed = Placement.model_validate(
        {"id": name, "use": "patio", "add": add, "take_away": take_away, "joints": lines}
    )
    return PlacementSpec(
        typed=typed,
        path=("placements", number),
        name=name.capitalize(),
        add=typed.add,
        take_away=typed.take_away,
        thickness=Length(Fraction(thickness_in) / 12),
        base=Length(Fraction(1, 3)),
        reinforcement="fiber",
        finish=None,
        include={},
    )


def job(
    *placements: PlacementSpec,
    units: Units = Units.US,
    allowance: str = "7 %",
    step: str = "0.25 cu yd",
) -> JobSpec:
    """Return a job that has what the takeoff reads."""
    order = Order.model_validate({"allowance": allowance, "round_up_to": step})
    part = JobPart(placements=placements, rate_book=BookPart(order=order), units=units)
    return cast(JobSpec, part)


def takeoff(*placements: PlacementSpec, units: Units = Units.US, **order: str) -> Takeoff:
    """Return the takeoff of a job that must be without fault."""
    found, problems = measure(job(*placements, units=units, **order), load_rules())
    assert problems == ()
    assert found is not None
    return found


def problems_of(*placements: PlacementSpec) -> tuple[Problem, ...]:
    """Return the problems of a job that must not pass."""
    found, problems = measure(job(*placements), load_rules())
    assert found is None
    return problems


def joints_of(
    *add: Typed,
    take_away: tuple[Typed, ...] = (),
    lines: tuple[Typed, ...] | None = None,
    thickness_in: str = "4",
) -> JointPlan:
    """Return the joint plan of one slab, whatever it warns of."""
    one = placement(*add, take_away=take_away, lines=lines, thickness_in=thickness_in)
    found, _ = measure(job(one), load_rules())
    assert found is not None
    return found.placements[0].joints


def warnings_of(
    *add: Typed, take_away: tuple[Typed, ...] = (), lines: tuple[Typed, ...]
) -> tuple[Problem, ...]:
    """Return what is said of the owner's own joints, all of it warnings."""
    found, problems = measure(job(placement(*add, take_away=take_away, lines=lines)), load_rules())
    assert found is not None
    assert {problem.severity for problem in problems} <= {Severity.WARNING}
    return problems


def line(start: tuple[float, float], end: tuple[float, float]) -> Typed:
    """Return a joint as the owner types it, in feet."""
    return {"from": feet(start), "to": feet(end)}
