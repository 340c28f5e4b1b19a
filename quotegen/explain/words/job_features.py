"""What a job has in it: a pool, a drive, stamped work. Pages of content/ apply by that."""

from collections.abc import Iterator

from quotegen.explain.results import Results
from quotegen.reading.content.content import When
from quotegen.reading.files.job import DRIVEN_ON, Use
from quotegen.reading.files.rate_book import FinishKind, Joints, Sealer, SteelKind
from quotegen.reading.files.shapes import EdgeKind
from quotegen.takeoff.slab.edges import runs_along

STAMPED = frozenset({FinishKind.STAMPED_TEXTURE, FinishKind.STAMPED_PATTERN})
WAYS = frozenset({Use.DRIVE, Use.APRON, Use.WALK})
"""What people come and go on, neighbors and mail among them."""
LAID_STEEL = frozenset({SteelKind.WIRE, SteelKind.BAR})


def features_of(results: Results) -> frozenset[When]:
    """The features of the job that a page may be about."""
    return frozenset((*_about_the_slab(results), *_about_the_work(results)))


def finish_kinds(results: Results) -> frozenset[FinishKind]:
    """The kinds of finish in the chosen price."""
    job = results.job
    return frozenset(job.finish_of(p, job.finish)[1].kind for p in job.placements)


def _about_the_slab(results: Results) -> Iterator[When]:
    job = results.job
    yield When.ALWAYS
    if has_edge(results, EdgeKind.POOL):
        yield When.POOL
    if has_edge(results, EdgeKind.HOUSE):
        yield When.HOUSE
    if any(p.use in DRIVEN_ON for p in job.placements):
        yield When.DRIVE
    if any(p.use in WAYS for p in job.placements):
        yield When.WAY
    if "steps" in results.scope_items():
        yield When.STEPS


def _about_the_work(results: Results) -> Iterator[When]:
    items, job = results.scope_items(), results.job
    steel = job.rate_book.reinforcement
    sawn = any(job.finish_of(p, job.finish)[1].joints is Joints.SAWN for p in job.placements)
    if ("joints" in items and sawn) or "demolition" in items:
        yield When.SAW
    if "dig_out" in items or "demolition" in items:
        yield When.DIGGING
    if any(job.finish_of(p, job.finish)[1].sealer is not Sealer.NONE for p in job.placements):
        yield When.SEALER
    if any(steel[p.reinforcement].kind in LAID_STEEL for p in job.placements):
        yield When.STEEL
    if finish_kinds(results) & STAMPED:
        yield When.STAMPED
    if FinishKind.EXPOSED_AGGREGATE in finish_kinds(results):
        yield When.EXPOSED


def has_edge(results: Results, edge: EdgeKind) -> bool:
    """Whether any edge of the job is of a kind."""
    return any(runs_along(p.edges, edge) for p in results.takeoff.placements)
