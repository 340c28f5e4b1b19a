"""Concrete and base on the order list: cubic yards, trucks, stone by loose volume and by weight."""

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from quotegen.quantity import Length, decimal_of, rounded
from quotegen.reading.files.order_parts import MaterialId
from quotegen.reading.files.shapes import EdgeKind
from quotegen.reading.records import PlacementSpec
from quotegen.takeoff.materials.job_slabs import (
    NEEDED_PLACES,
    JobSlabs,
    area_step,
    material,
    with_waste,
)
from quotegen.takeoff.records import Material, PlacementTakeoff
from quotegen.takeoff.slab.concrete_order import FLAT_VOLUME, UNEVEN_BASE, VOLUME
from quotegen.takeoff.slab.flight_volume import STEPS
from quotegen.trade.base import base_loose_cuyd, base_tons
from quotegen.trade.concrete import net_volume_cuyd, truck_loads
from quotegen.working import Step, given

_VOLUME_RULE = "sqft_inches_per_cubic_yard"
_LOOSE_RULE = "base_loose_density"
_PAST_RULE = "base_past_forms"
_DENSITY_RULE = "base_compacted_density"
_LOAD_RULE = "truck_load_full"
_DEEP = {
    FLAT_VOLUME: "flat_slab",
    "Thickened edge": "thickened_edge",
    "Turned down edge": "turned_down_edge",
}
_BESIDE = {STEPS: "steps_concrete", UNEVEN_BASE: "uneven_base"}


def concrete(slabs: JobSlabs) -> Iterator[Material]:
    """Yield the concrete of the whole job, its trucks, and a short load."""
    order, ordered = slabs.job.rate_book.order, Fraction(slabs.takeoff.order_cuyd)
    yield Material(
        id="concrete",
        placement=None,
        what=slabs.job.rate_book.mix.description,
        needed=rounded(slabs.takeoff.volume_cuyd, 2),
        unit="cu yd",
        buy=slabs.takeoff.order_cuyd,
        buy_unit="cu yd",
        working=slabs.takeoff.working[-1],
        bought_as=MaterialId.CONCRETE,
    )
    for spec, measured in slabs.each():
        yield from _parts(spec, measured)
    for step in slabs.takeoff.working[-1].inputs:
        if step.name in _BESIDE:
            yield _part(_BESIDE[step.name], None, step)
    typed = order.truck_load
    full = typed if typed is not None else slabs.rules.exact(_LOAD_RULE, slabs.on)
    pours = slabs.job.typed.pours
    loads, last = truck_loads(ordered / pours, full)
    full_step = (
        slabs.rule(_LOAD_RULE, "A full truck")
        if typed is None
        else given("A full truck", decimal_of(full), "cu yd")
    )
    to_order = given("Concrete to order", slabs.takeoff.order_cuyd, "cu yd")
    each_pour = (given("Pours", decimal_of(Fraction(pours)), "each"),) if pours > 1 else ()
    yield material(
        "truck_loads",
        None,
        Fraction(loads * pours),
        "load",
        formula="concrete to order over what a full truck brings, rounded up"
        + (" for each pour" if each_pour else ""),
        inputs=(to_order, *each_pour, full_step),
    )
    if order.short_load and last < order.short_load.under:
        short = material(
            "short_load",
            None,
            last,
            "cu yd",
            formula="concrete to order less the full trucks; so small a load costs extra"
            + (" at each pour" if each_pour else ""),
            inputs=(
                to_order,
                *each_pour,
                full_step,
                given("Short under", decimal_of(order.short_load.under), "cu yd"),
            ),
        )
        yield replace(short, buy=decimal_of(last))


def _parts(spec: PlacementSpec, measured: PlacementTakeoff) -> Iterator[Material]:
    """Yield the flat slab and each deep edge of a placement that has one."""
    volume = next(step for step in measured.working if step.name == VOLUME)
    for step in volume.inputs:
        if step.name in _DEEP:
            yield _part(_DEEP[step.name], spec, step)


def _part(material_id: str, spec: PlacementSpec | None, step: Step) -> Material:
    """List a part of the concrete, which is ordered with the rest."""
    return Material(
        id=material_id,
        placement=spec.id if spec else None,
        what="",
        needed=rounded(step.value, NEEDED_PLACES),
        unit=step.unit,
        buy=rounded(Fraction(0), 0),
        buy_unit="",
        working=step,
    )


def base(slabs: JobSlabs) -> Iterator[Material]:
    """Yield the stone under each slab: by weight, and the same by the yard.

    It goes on past each formed edge; at the house and at a pool no form stands, and it ends with
    the slab.
    """
    for spec, measured in slabs.each():
        area, formed = area_step(spec, measured), measured.edges_ft[EdgeKind.FORMED]
        past = slabs.rule(_PAST_RULE, "Past the forms")
        covered = (
            Fraction(area.value) + Fraction(formed) * Length.of_inches(Fraction(past.value)).feet
        )
        volume = net_volume_cuyd(covered, spec.base.inches, slabs.rules, slabs.on)
        stone = material(
            "base_tons",
            spec,
            base_tons(volume, slabs.rules, slabs.on),
            "ton",
            what=slabs.job.rate_book.base_material,
            formula="area, and formed edge x how far the base goes past it, x depth of the base,"
            " over the square feet that one cubic yard covers one inch deep; x density once"
            " compacted",
            inputs=(
                area,
                given("Formed edge", formed, "ft"),
                past,
                given("Depth of the base", rounded(spec.base.inches, 4), "in"),
                slabs.rule(_DENSITY_RULE, "Compacted density"),
            ),
            rules=(_VOLUME_RULE, _PAST_RULE, _DENSITY_RULE),
        )
        by_weight = with_waste(slabs, replace(stone, bought_as=MaterialId.STONE))
        yield by_weight
        lightest = slabs.rules.range(_LOOSE_RULE, slabs.on).least
        yield material(
            "base_loose",
            spec,
            base_loose_cuyd(Fraction(by_weight.buy), slabs.rules, slabs.on),
            "cu yd",
            what=slabs.job.rate_book.base_material,
            formula="tons to order over the least density of loose stone",
            inputs=(
                given("Stone to order", by_weight.buy, "ton"),
                Step(
                    name="Loose density", value=lightest, unit="ton per cu yd", rules=(_LOOSE_RULE,)
                ),
            ),
            rules=(_LOOSE_RULE,),
        )
