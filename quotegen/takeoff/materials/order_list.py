"""The order list of a job at its chosen finish; the strips at its edges are worked out here."""

from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction

from quotegen.quantity import rounded
from quotegen.reading.files.shapes import EdgeKind
from quotegen.reading.records import JobSpec
from quotegen.takeoff.materials.concrete import base, concrete
from quotegen.takeoff.materials.forms import forms
from quotegen.takeoff.materials.job_slabs import JobSlabs, material, with_waste
from quotegen.takeoff.materials.steel import steel
from quotegen.takeoff.materials.surface import surface
from quotegen.takeoff.records import Material, Takeoff
from quotegen.trade.rules import RuleBook
from quotegen.working import Step, given


def order_list(job: JobSpec, takeoff: Takeoff, rules: RuleBook) -> tuple[Material, ...]:
    """Return every material to order, concrete first, each with its waste."""
    slabs = JobSlabs(job=job, takeoff=takeoff, rules=rules)
    rows = (
        *concrete(slabs),
        *base(slabs),
        *forms(slabs),
        *steel(slabs),
        *surface(slabs),
        *_joint_filler(slabs),
    )
    return tuple(with_waste(slabs, row) for row in rows)


def _joint_filler(slabs: JobSlabs) -> Iterator[Material]:
    """Yield the filler strip at house and pool, and the sheet over the pool beam."""
    for spec, measured in slabs.each():
        house = measured.edges_ft[EdgeKind.HOUSE]
        pool = measured.edges_ft[EdgeKind.POOL]
        edges = tuple(_edges(house, pool))
        if edges:
            yield material(
                "joint_filler",
                spec,
                Fraction(house + pool),
                "ft",
                formula="length of edge at house and pool; as deep as the slab",
                inputs=(*edges, given("Depth", rounded(spec.thickness.inches, 4), "in")),
                rules=("isolation_joint_width",),
            )
        width = slabs.job.rate_book.order.bond_breaker
        if width and pool:
            yield material(
                "bond_breaker",
                spec,
                Fraction(pool),
                "ft",
                formula="length of edge at the pool",
                inputs=(
                    given("Pool edge", pool, "ft"),
                    given("Width", rounded(width.inches, 4), "in"),
                ),
            )


def _edges(house: Decimal, pool: Decimal) -> Iterator[Step]:
    if house:
        yield given("House edge", house, "ft")
    if pool:
        yield given("Pool edge", pool, "ft")
