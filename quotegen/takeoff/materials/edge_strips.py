"""What stands or lies along an edge: filler, dowels, and the sheet and mastic of a cast one."""

from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction
from math import ceil

from quotegen.quantity import rounded
from quotegen.reading.files.shapes import EdgeKind
from quotegen.reading.records import PlacementSpec
from quotegen.takeoff.materials.job_slabs import JobSlabs, material
from quotegen.takeoff.plan_geometry import Against, EdgeRun
from quotegen.takeoff.records import Material, PlacementTakeoff
from quotegen.takeoff.slab.edges import runs_along
from quotegen.working import given


def edge_strips(slabs: JobSlabs) -> Iterator[Material]:
    """Yield what each placement needs along its edges, in whole feet or pieces."""
    for spec, measured in slabs.each():
        yield from _filler(spec, measured)
        yield from _dowels(slabs, spec, measured)
        if spec.casts_pool_edge:
            yield from _at_the_beam(slabs, spec, measured.edges_ft[EdgeKind.POOL])


def _filler(spec: PlacementSpec, measured: PlacementTakeoff) -> Iterator[Material]:
    isolated = measured.edges_ft[EdgeKind.ISOLATED]
    if isolated:
        runs = runs_along(measured.edges, EdgeKind.ISOLATED)
        yield material(
            "joint_filler",
            spec,
            Fraction(isolated),
            "ft",
            formula="length of the edges at what stands there; as deep as the slab",
            inputs=(
                *(given(_at(run), run.length_ft, "ft") for run in runs),
                given("Depth", rounded(spec.thickness.inches, 4), "in"),
            ),
            rules=("isolation_joint_width",),
        )


def _dowels(slabs: JobSlabs, spec: PlacementSpec, measured: PlacementTakeoff) -> Iterator[Material]:
    """Yield the dowels of each edge: one each spacing, and half a spacing left at both ends."""
    runs = tuple(run for run in measured.edges if run.against is Against.DOWELED)
    apart = slabs.rule("dowel_spacing", "Spacing")
    number = sum(ceil(Fraction(run.length_ft) * 12 / Fraction(apart.value)) for run in runs)
    if number:
        yield material(
            "dowels",
            spec,
            Fraction(number),
            "each",
            formula="length of the edge / spacing, rounded up",
            inputs=(*(given(_at(run), run.length_ft, "ft") for run in runs), apart),
            rules=apart.rules,
        )


def _at(run: EdgeRun) -> str:
    """Name an edge by what stands there: its letter is another one on the plan of the whole job."""
    beside = run.against in {Against.BESIDE, Against.DOWELED}
    return "At the next slab" if beside else f"At the {run.against.value}"


def _at_the_beam(slabs: JobSlabs, spec: PlacementSpec, pool_ft: Decimal) -> Iterator[Material]:
    """Yield the sheet that the slab slides on, and the mastic under its nose."""
    if not pool_ft:
        return
    edge, width = given("Pool edge", pool_ft, "ft"), slabs.job.rate_book.order.bond_breaker
    wide = (given("Width", rounded(width.inches, 4), "in"),) if width else ()
    for material_id, inputs in (("bond_breaker", (edge, *wide)), ("mastic", (edge,))):
        formula = "length of edge at the pool"
        yield material(material_id, spec, Fraction(pool_ft), "ft", formula=formula, inputs=inputs)
