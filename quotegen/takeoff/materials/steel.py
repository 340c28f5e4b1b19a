"""Reinforcement on the order list: sheets or rolls with laps, bars, fiber."""

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from quotegen.quantity import Length, decimal_of, rounded
from quotegen.reading.files.order_parts import Bar, MaterialId, Wire
from quotegen.reading.records import PlacementSpec
from quotegen.takeoff.materials.job_slabs import JobSlabs, area_step, material, with_waste
from quotegen.takeoff.records import Material, PlacementTakeoff
from quotegen.trade.reinforcement import (
    bar_lap_in,
    bar_weight_lb,
    supports_needed,
    tie_wire_lb,
    wire_lap_in,
    wire_weight_lb_per_100_sqft,
)
from quotegen.working import given

_HUNDRED = 100


def steel(slabs: JobSlabs) -> Iterator[Material]:
    """Yield the reinforcement of each slab, as the rate book describes it."""
    for spec, measured in slabs.each():
        choice = slabs.job.rate_book.reinforcement[spec.reinforcement]
        if choice.wire:
            yield from _wire(slabs, spec, measured, choice.wire)
        if choice.bar:
            yield from _bar(slabs, spec, measured, choice.bar)
        if choice.fiber:
            dose = choice.fiber
            yield material(
                "fiber",
                spec,
                Fraction(dose) * Fraction(measured.order_cuyd),
                "lb",
                what=choice.name,
                formula="dose x concrete to order for this slab",
                inputs=(
                    given("Dose", dose, "lb per cu yd"),
                    given("Concrete to order", measured.order_cuyd, "cu yd"),
                ),
            )


def sheets_needed(
    area_sqft: Fraction, length_ft: Fraction, width_ft: Fraction, lap_ft: Fraction
) -> Fraction:
    """Return how many sheets or rolls cover an area when each laps its neighbors, not rounded.

    Each covers its size less one lap in each direction. What is cut off is waste on top.
    """
    return area_sqft / ((length_ft - lap_ft) * (width_ft - lap_ft))


def _wire(
    slabs: JobSlabs, spec: PlacementSpec, measured: PlacementTakeoff, wire: Wire
) -> Iterator[Material]:
    size, unit = (wire.sheet, "sheet") if wire.sheet else (wire.roll, "roll")
    if size is None:
        return
    lap_in = (
        wire.lap.inches if wire.lap else wire_lap_in(_mesh_in(wire.style), slabs.rules, slabs.on)
    )
    length_ft, width_ft = size.length.feet, size.width.feet
    area_sqft, lap_ft = Fraction(measured.area_sqft), Length.of_inches(lap_in).feet
    inputs = (
        area_step(spec, measured),
        given(f"Length of a {unit}", rounded(length_ft, 2), "ft"),
        given(f"Width of a {unit}", rounded(width_ft, 2), "ft"),
        given("Lap", rounded(lap_in, 2), "in"),
    )
    sheets = with_waste(
        slabs,
        material(
            "wire",
            spec,
            sheets_needed(area_sqft, length_ft, width_ft, lap_ft),
            unit,
            what=wire.style,
            formula=f"area over what one {unit} covers once its laps are off",
            inputs=inputs,
            rules=() if wire.lap else ("wire_lap_past_mesh",),
        ),
    )
    yield sheets
    weight = Fraction(wire_weight_lb_per_100_sqft(wire.style, slabs.rules, slabs.on))
    yield material(
        "wire_weight",
        spec,
        Fraction(sheets.buy) * length_ft * width_ft * weight / _HUNDRED,
        "lb",
        what=wire.style,
        formula=f"{unit}s x their area x published weight of 100 sq ft, over 100",
        inputs=(
            given(f"Number of {unit}s", sheets.buy, unit),
            given("Weight of 100 sq ft", decimal_of(weight), "lb"),
        ),
        rules=("wire_weight",),
    )
    yield _supports(slabs, spec, measured, "wire_supports", "wire_support_spacing")


def _supports(
    slabs: JobSlabs, spec: PlacementSpec, measured: PlacementTakeoff, material_id: str, rule_id: str
) -> Material:
    """List the chairs that hold steel up, one for each square of the widest spacing."""
    spacing_ft = slabs.rules.exact(rule_id, slabs.on)
    row = material(
        material_id,
        spec,
        Fraction(supports_needed(measured.area_sqft, spacing_ft)),
        "each",
        formula="area over the square of the widest spacing, rounded up",
        inputs=(area_step(spec, measured), slabs.rule(rule_id, "Widest spacing")),
        rules=(rule_id,),
    )
    return replace(row, bought_as=MaterialId.CHAIRS)


def _bar(
    slabs: JobSlabs, spec: PlacementSpec, measured: PlacementTakeoff, bar: Bar
) -> Iterator[Material]:
    lap_in = bar.lap.inches if bar.lap else bar_lap_in(bar.size, slabs.rules, slabs.on)
    lap_ft = Length.of_inches(lap_in).feet
    run_ft = 2 * Fraction(measured.area_sqft) / bar.spacing.feet
    bars = with_waste(
        slabs,
        material(
            "bar",
            spec,
            run_ft / (bar.stock.feet - lap_ft),
            "bar",
            what=bar.size,
            formula="area over the spacing, for both ways, over what one bar reaches once its lap"
            " is off",
            inputs=(
                area_step(spec, measured),
                given("Spacing", rounded(bar.spacing.inches, 2), "in"),
                given("Length of a bar", rounded(bar.stock.feet, 2), "ft"),
                given("Lap", rounded(lap_in, 2), "in"),
            ),
            rules=() if bar.lap else ("bar_lap_diameters", "bar_diameter"),
        ),
    )
    yield bars
    weight_lb = bar_weight_lb(bar.size, Fraction(bars.buy) * bar.stock.feet, slabs.rules, slabs.on)
    weight = material(
        "bar_weight",
        spec,
        weight_lb,
        "lb",
        what=bar.size,
        formula="bars x their length x weight of a foot",
        inputs=(
            given("Number of bars", bars.buy, "bar"),
            given("Length of a bar", rounded(bar.stock.feet, 2), "ft"),
        ),
        rules=("bar_weight",),
    )
    yield weight
    yield _supports(slabs, spec, measured, "bar_supports", "bar_support_spacing")
    yield material(
        "tie_wire",
        spec,
        tie_wire_lb(weight_lb, slabs.rules, slabs.on),
        "lb",
        formula="weight of the bars in tons x wire for a ton of bars",
        inputs=(weight.working, slabs.rule("tie_wire_dose", "Wire for a ton of bars")),
        rules=("tie_wire_dose",),
    )


def _mesh_in(style: str) -> Fraction:
    """Return the wider opening of a mesh such as `6x6 W2.9`, in inches."""
    return max(Fraction(side) for side in style.split(maxsplit=1)[0].split("x"))
