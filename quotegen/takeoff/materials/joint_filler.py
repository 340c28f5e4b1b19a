"""Joint filler and bond-breaker on the order list: strips by the foot of edge."""

from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction

from quotegen.quantity import rounded
from quotegen.reading.files.shapes import EdgeKind
from quotegen.takeoff.materials.shop import Shop, material
from quotegen.takeoff.records import Material
from quotegen.working import Step, given


def joints(shop: Shop) -> Iterator[Material]:
    """Yield the filler at house and pool, as deep as the slab, and the sheet over the pool beam."""
    for spec, measured in shop.slabs():
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
        width = shop.job.rate_book.order.bond_breaker
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
