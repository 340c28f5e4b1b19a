"""The order list of a job at its chosen finish."""

from quotegen.reading.records import JobSpec
from quotegen.takeoff.materials.concrete import base, concrete
from quotegen.takeoff.materials.edge_strips import edge_strips
from quotegen.takeoff.materials.forms import forms
from quotegen.takeoff.materials.job_slabs import JobSlabs, with_waste
from quotegen.takeoff.materials.steel import steel
from quotegen.takeoff.materials.surface import surface
from quotegen.takeoff.records import Material, Takeoff
from quotegen.trade.rules import RuleBook


def order_list(job: JobSpec, takeoff: Takeoff, rules: RuleBook) -> tuple[Material, ...]:
    """Return every material to order, concrete first, each with its waste."""
    slabs = JobSlabs(job=job, takeoff=takeoff, rules=rules)
    rows = (
        *concrete(slabs),
        *base(slabs),
        *forms(slabs),
        *steel(slabs),
        *surface(slabs),
        *edge_strips(slabs),
    )
    return tuple(with_waste(slabs, row) for row in rows)
