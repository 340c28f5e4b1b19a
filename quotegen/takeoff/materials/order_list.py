"""The whole order list of a job at its chosen finish."""

from quotegen.reading.records import JobSpec
from quotegen.takeoff.materials.concrete import base, concrete
from quotegen.takeoff.materials.joint_filler import joints
from quotegen.takeoff.materials.shop import Shop
from quotegen.takeoff.materials.steel import steel
from quotegen.takeoff.materials.surface import surface
from quotegen.takeoff.records import Material, Takeoff
from quotegen.trade.rules import RuleBook


def order_list(job: JobSpec, takeoff: Takeoff, rules: RuleBook) -> tuple[Material, ...]:
    """Return every material to order, concrete first."""
    shop = Shop(job=job, takeoff=takeoff, rules=rules)
    return (*concrete(shop), *base(shop), *steel(shop), *surface(shop), *joints(shop))
