"""Color and surface on the order list: pigment, hardener, release, retarder, curing, sealer."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from decimal import Decimal
from fractions import Fraction

from quotegen.quantity import decimal_of, rounded
from quotegen.reading.files.job import ROUND_A_POOL
from quotegen.reading.files.order_parts import MaterialId
from quotegen.reading.files.rate_book import Finish, FinishKind, Sealer
from quotegen.reading.records import PlacementSpec
from quotegen.takeoff.materials.job_slabs import JobSlabs, area_step, material
from quotegen.takeoff.records import Material, PlacementTakeoff
from quotegen.trade.curing import Cure, usual_cure
from quotegen.trade.mix import pigment_lb_per_cuyd
from quotegen.trade.rules import RuleBook
from quotegen.working import Step, given

_HUNDRED = 100
_COATS = {Sealer.FILM: "sealer_coats", Sealer.PENETRATING: "penetrating_coats"}
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
        if finish.kind is FinishKind.EXPOSED_AGGREGATE:
            coverage = _least(slabs, "retarder_coverage", "Coverage, at least")
            yield _gallons("retarder", spec, area_step(spec, measured), coverage)
            yield _by_area("seed_stone", spec, measured, _most(slabs, "seed_stone_dose"))
        yield from _curing(slabs, spec, measured, finish)
        yield from _sealer(slabs, spec, measured, finish)


def cure_of(finish: Finish, rules: RuleBook, on: date) -> Cure:
    """Return how a finish is cured: as the book says, or what is usual under its sealer."""
    bare = finish.kind is FinishKind.BROOM and finish.sealer is Sealer.NONE
    return finish.cure or usual_cure(rules, on, covered=not bare)


def has_grit(spec: PlacementSpec, finish: Finish) -> bool:
    """Return whether grit is mixed into the sealer: as the book says, or on a deck at a pool."""
    asked = spec.use in ROUND_A_POOL if finish.grit is None else finish.grit
    return asked and finish.sealer is Sealer.FILM


def coats_of(finish: Finish, rules: RuleBook, on: date) -> Decimal:
    """Return how many coats of its sealer a finish has: as the book says, or the usual."""
    if finish.sealer_coats:
        return decimal_of(Fraction(finish.sealer_coats))
    return rules.number(_COATS[finish.sealer], on)


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
        yield _by_area("release", spec, measured, _most(slabs, "release_dose"))


def _most(slabs: JobSlabs, rule_id: str) -> Step:
    """Return the larger end of a rule's dose."""
    usual = slabs.rules.range(rule_id, slabs.on).most
    return Step(name="Dose", value=usual, unit="lb per 100 sq ft", rules=(rule_id,))


def _least(slabs: JobSlabs, rule_id: str, name: str) -> Step:
    """Return the smaller end of a rule's coverage."""
    usual = slabs.rules.range(rule_id, slabs.on).least
    return Step(name=name, value=usual, unit="sq ft per gal", rules=(rule_id,))


def _curing(
    slabs: JobSlabs, spec: PlacementSpec, measured: PlacementTakeoff, finish: Finish
) -> Iterator[Material]:
    """Yield the compound or the sheets; what is kept wet, or sealed at once, needs neither."""
    how, area = cure_of(finish, slabs.rules, slabs.on), area_step(spec, measured)
    if how is Cure.COVER:
        yield material(
            "cover", spec, Fraction(measured.area_sqft), "sq ft",
            formula="area, and more for laps", inputs=(area,),
        )  # fmt: skip
    elif how is Cure.COMPOUND:
        typed = slabs.job.rate_book.order.curing_coverage
        coverage = (
            given("Coverage", typed, "sq ft per gal")
            if typed
            else slabs.rule("curing_coverage", "Coverage")
        )
        yield _gallons("curing", spec, area, coverage)


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
    coats = (
        given("Coats", coats_of(finish, slabs.rules, slabs.on), "coat")
        if finish.sealer_coats
        else slabs.rule(_COATS[finish.sealer], "Coats")
    )
    film = finish.sealer is Sealer.FILM
    coverage = (
        given("Coverage of one coat", finish.sealer_coverage, "sq ft per gal")
        if finish.sealer_coverage
        else _least(
            slabs,
            "sealer_coverage" if film else "penetrating_coverage",
            "Coverage of one coat, at least",
        )
    )
    bought = MaterialId.SEALER_FILM if film else MaterialId.SEALER_PENETRATING
    sealer = _gallons("sealer", spec, area_step(spec, measured), coverage, coats)
    yield replace(sealer, bought_as=bought)
    if has_grit(spec, finish):
        dose = slabs.rule("grit_dose", "Grit in a gallon")
        yield material(
            "grit", spec, Fraction(sealer.needed) * Fraction(dose.value), "lb",
            formula="sealer x grit in a gallon",
            inputs=(given("Sealer", sealer.needed, "gal"), dose), rules=dose.rules,
        )  # fmt: skip


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
