"""After the job: hours, yards and days as they came out, and which rates of the book drift."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction

from quotegen.pricing.costs.items import CostedJob, hours_of
from quotegen.pricing.costs.records import CostItem
from quotegen.pricing.quoted.finish import accepted_of, price_at
from quotegen.quantity import NO_QUANTITY, decimal_of, rounded
from quotegen.reading.files.after_signing import Actual
from quotegen.reading.files.costs import Costs
from quotegen.reading.files.rate_book import BookRate
from quotegen.reading.files.shapes import EdgeKind
from quotegen.reading.records import JobSpec, OwnersJob, PlacementSpec
from quotegen.takeoff.records import Takeoff

DRIFTS_FROM = Fraction(1, 10)
"""How far off all completed jobs together must be before a rate is said to drift."""

_PLACES = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class StepOutcome:
    """The crew hours of one step: as estimated, and as they came out."""

    id: str
    name: str
    estimated: Decimal
    actual: Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """One completed job; None where nothing was typed in.

    Attributes:
        steps: those with hours typed in.
        concrete: cubic yards to order by the estimate, and as delivered.
        days: on site by the estimate, and as they came out.
    """

    steps: tuple[StepOutcome, ...]
    concrete: tuple[Decimal, Decimal] | None
    days: tuple[int, int] | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Drift:
    """One step over all completed jobs.

    Attributes:
        jobs: how many of them have hours for it.
        ratio: actual over estimated.
        rate, better: crew hours in the book, and those that these jobs took; None where the book
            has fixed hours alone.
        of: what these hours are for, such as `100 sq ft`.
    """

    id: str
    name: str
    jobs: int
    estimated: Decimal
    actual: Decimal
    ratio: Fraction
    rate: Decimal | None
    better: Decimal | None
    of: str

    @property
    def drifts(self) -> bool:
        return abs(self.ratio - 1) >= DRIFTS_FROM


def outcome_of(job: JobSpec, owners: OwnersJob, takeoff: Takeoff) -> Outcome | None:
    """Compare what a job took with the estimate for the finish and the extras that were accepted.

    Returns:
        None where the owner has not typed how the job came out.
    """
    actual = owners.file.actual
    if actual is None:
        return None
    finish, extras = accepted_of(job)
    priced = price_at(job, takeoff, finish, extras)
    done = CostedJob(job=replace(job, finish=finish), owners=owners, priced=priced)
    hours = tuple(hours_of(done, owners.costs)) if owners.costs else ()
    concrete, days = actual.concrete, actual.days
    return Outcome(
        steps=tuple(_steps(actual, hours)),
        concrete=None if concrete is None else (takeoff.order_cuyd, decimal_of(concrete)),
        days=None if days is None else (done.days, days),
    )


def _steps(actual: Actual, estimated: tuple[CostItem, ...]) -> Iterator[StepOutcome]:
    for step, hours in actual.hours.items():
        mine = [item for item in estimated if item.id == step]
        yield StepOutcome(
            id=step,
            name=mine[0].name if mine else "",
            estimated=sum((item.quantity for item in mine), start=NO_QUANTITY),
            actual=rounded(hours, _PLACES),
        )


def without_joint_plan(job: JobSpec, owners: OwnersJob) -> JobSpec:
    """Return a finished job without joints to lay out, unless its hours depend on their length."""
    if any(rate.of is EdgeKind.JOINT for rate in _timed_rates(job, owners)):
        return job
    return replace(job, placements=tuple(map(_without_joints, job.placements)))


def _without_joints(placement: PlacementSpec) -> PlacementSpec:
    typed = placement.typed
    return replace(placement, typed=typed.model_copy(update={"joints": typed.joints or ()}))


def hours_go_by_access(job: JobSpec, owners: OwnersJob) -> bool:
    """Tell whether a finished job has hours for a step that the choice of access decides."""
    by_access = {method.rate for method in job.rate_book.access.values()}
    actual = owners.file.actual
    return actual is not None and not by_access.isdisjoint(actual.hours)


def _timed_rates(job: JobSpec, owners: OwnersJob) -> Iterator[BookRate]:
    actual, rates = owners.file.actual, job.rate_book.rates
    yield from (rates[step] for step in (actual.hours if actual else ()) if step in rates)


def drift_of(outcomes: tuple[Outcome, ...], costs: Costs | None) -> tuple[Drift, ...]:
    """Compare the hours of each step over all completed jobs, the farthest off first.

    The better rate is that of the book times actual over estimated hours.
    """
    steps = dict.fromkeys(step.id for outcome in outcomes for step in outcome.steps)
    drifts = (_drift(step, outcomes, costs) for step in steps)
    known = (drift for drift in drifts if drift is not None)
    return tuple(sorted(known, key=lambda drift: -abs(drift.ratio - 1)))


def _drift(step_id: str, outcomes: tuple[Outcome, ...], costs: Costs | None) -> Drift | None:
    mine = [s for outcome in outcomes for s in outcome.steps if s.id == step_id and s.estimated]
    if not mine:
        return None
    estimated = sum((step.estimated for step in mine), start=NO_QUANTITY)
    actual = sum((step.actual for step in mine), start=NO_QUANTITY)
    ratio = Fraction(actual) / Fraction(estimated)
    hours = costs.hours.get(step_id) if costs else None
    work = hours.work if hours else None
    size = f"{work.of} " if work and work.of != 1 else ""
    return Drift(
        id=step_id,
        name=mine[0].name,
        jobs=len(mine),
        estimated=estimated,
        actual=actual,
        ratio=ratio,
        rate=rounded(work.hours, 3) if work else None,
        better=rounded(work.hours * ratio, 3) if work else None,
        of=f"{size}{work.unit.value}" if work else "",
    )
