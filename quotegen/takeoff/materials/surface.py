"""Color and surface on the order list: pigment, hardener, release, curing compound, sealer."""

from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

from quotegen.quantity import decimal_of, rounded
from quotegen.reading.files.order_parts import MaterialId
from quotegen.reading.files.rate_book import Finish, FinishKind, Sealer
from quotegen.reading.records import PlacementSpec
from quotegen.takeoff.materials.job_slabs import JobSlabs, area_step, material
from quotegen.takeoff.records import Material, PlacementTakeoff
from quotegen.trade.mix import pigment_lb_per_cuyd
from quotegen.working import Step, given

_HUNDRED = 100
_STAMPED = {FinishKind.STAMPED_TEXTURE, FinishKind.STAMPED_PATTERN}


def surface(slabs: JobSlabs) -> Iterator[Material]:
    """Yield what each slab needs for its color and surface."""
    for spec, measured in slabs.each():
        finish = slabs.finish(spec)
        yield from _pigment(slabs, spec, measured, finish)
        if finish.hardener:
            dose = _given_dose(finish.hardener)
            yield _by_area("hardener", spec, measured, dose)
        yield from _release(slabs, spec, measured, finish)
        if slabs.job.rate_book.order.curing_coverage:
            coverage = given("Coverage", slabs.job.rate_book.order.curing_coverage, "sq ft per gal")
            area = area_step(spec, measured)
            yield _gallons("curing", spec, area, coverage)
        yield from _sealer(slabs, spec, measured, finish)


def _given_dose(dose: Decimal) -> Step:
    """Return a dose from the rate book as an input of the working."""
    return given("Dose", dose, "lb per 100 sq ft")


def _pigment(
    slabs: JobSlabs, spec: PlacementSpec, measured: PlacementTakeoff, finish: Finish
) -> Iterator[Material]:
    cement = slabs.job.rate_book.mix.cement
    if finish.pigment is None or cement is None:
        return
    yield material(
        "pigment",
        spec,
        pigment_lb_per_cuyd(finish.pigment, cement) * Fraction(measured.order_cuyd),
        "lb",
        what=finish.color or "",
        formula="share of the cement x cement in a cubic yard x concrete to order",
        inputs=(
            given("Share of the cement", rounded(finish.pigment * _HUNDRED, 2), "%"),
            given("Cement", cement, "lb per cu yd"),
            given("Concrete to order", measured.order_cuyd, "cu yd"),
            slabs.rule("pigment_limit", "Most that is allowed"),
        ),
        rules=("pigment_limit",),
    )


def _release(
    slabs: JobSlabs, spec: PlacementSpec, measured: PlacementTakeoff, finish: Finish
) -> Iterator[Material]:
    if finish.release:
        yield _by_area("release", spec, measured, _given_dose(finish.release))
    elif finish.kind in _STAMPED:
        usual = slabs.rules.range("release_dose", slabs.on).most
        dose = Step(name="Dose", value=usual, unit="lb per 100 sq ft", rules=("release_dose",))
        yield _by_area("release", spec, measured, dose)


def _by_area(
    material_id: str, spec: PlacementSpec, measured: PlacementTakeoff, dose: Step
) -> Material:
    return material(
        material_id,
        spec,
        Fraction(measured.area_sqft) * Fraction(dose.value) / _HUNDRED,
        "lb",
        formula="area x dose on 100 sq ft, over 100",
        inputs=(area_step(spec, measured), dose),
        rules=dose.rules,
    )


def _sealer(
    slabs: JobSlabs, spec: PlacementSpec, measured: PlacementTakeoff, finish: Finish
) -> Iterator[Material]:
    if finish.sealer is Sealer.NONE:
        return
    film = finish.sealer is Sealer.FILM
    coats_rule = "sealer_coats" if film else "penetrating_coats"
    coats = (
        given("Coats", decimal_of(Fraction(finish.sealer_coats)), "coat")
        if finish.sealer_coats
        else slabs.rule(coats_rule, "Coats")
    )
    coverage_rule = "sealer_coverage" if film else "penetrating_coverage"
    least = slabs.rules.range(coverage_rule, slabs.on).least
    coverage = (
        given("Coverage of one coat", finish.sealer_coverage, "sq ft per gal")
        if finish.sealer_coverage
        else Step(
            name="Coverage of one coat, at least",
            value=least,
            unit="sq ft per gal",
            rules=(coverage_rule,),
        )
    )
    sealer = MaterialId.SEALER_FILM if film else MaterialId.SEALER_PENETRATING
    row = _gallons("sealer", spec, area_step(spec, measured), coverage, coats)
    yield replace(row, bought_as=sealer)


def _gallons(
    material_id: str,
    spec: PlacementSpec,
    area: Step,
    coverage: Step,
    coats: Step | None = None,
) -> Material:
    number = Fraction(coats.value) if coats else Fraction(1)
    return material(
        material_id,
        spec,
        Fraction(area.value) * number / Fraction(coverage.value),
        "gal",
        formula="area x coats, over the coverage" if coats else "area over the coverage",
        inputs=(area, *((coats,) if coats else ()), coverage),
        rules=(*(coats.rules if coats else ()), *coverage.rules),
    )
