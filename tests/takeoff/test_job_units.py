"""The working in the units of the job."""

from decimal import Decimal

from quotegen.quantity import Units
from quotegen.reading.files.shapes import EdgeKind
from quotegen.takeoff.job_units import JobUnits, area_m2, area_sqft, length_ft, length_m
from quotegen.takeoff.slab.edges import edge_runs
from tests.takeoff.plans import edges, slab


def test_places_of_each_unit():
    """Areas to 0.1 sq ft and 0.01 m2, lengths to 0.1 ft and 0.01 m, half up."""
    assert area_sqft(10.25) == Decimal("10.3")
    assert area_m2(10.25 * 10.763910416709722) == Decimal("10.25")
    assert length_ft(41.05) == Decimal("41.1")
    assert length_m(10 / 3.048 * 1.005) == Decimal("1.01")


def test_an_edge_is_the_sum_of_its_sides():
    """The step of an edge has a step for each of its sides."""
    measured = slab({"rectangle": "24 ft x 16 ft"})
    runs, total_ft = edge_runs(measured.boundary), edges(measured)[EdgeKind.OUTER]
    step = JobUnits(units=Units.US).edge(EdgeKind.OUTER, total_ft, runs)
    assert (step.name, step.value, step.unit) == ("Outer edge", Decimal("80.0"), "ft")
    assert [side.name for side in step.inputs] == ["Side A", "Side B", "Side C", "Side D"]
    metric = JobUnits(units=Units.METRIC).edge(EdgeKind.OUTER, total_ft, runs)
    assert (metric.value, metric.unit) == (Decimal("24.38"), "m")
