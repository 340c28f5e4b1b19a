"""After the job: hours, yards and days as they came out, and which rates of the book drift."""

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from quotegen.pricing.costs.records import CostKind, FinishCosts
from quotegen.quantity import decimal_of, rounded
from quotegen.reading.files.after_signing import Actual
from quotegen.reading.files.costs import DRIVE, Costs
from quotegen.takeoff.records import Takeoff

DRIFTS_FROM = Fraction(1, 10)
"""How far all completed jobs together must be off before a rate is said to drift."""

_PLACES = 2

NONE = decimal_of(Fraction(0))


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
        concrete: cubic yards ordered by the estimate, and delivered.
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
        rate, better: crew hours in the book, and what these jobs took; None where all is fixed.
        of: for how much of what, such as `100 sq ft`.
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


def outcome_of(takeoff: Takeoff, actual: Actual, costs: FinishCosts) -> Outcome:
    """Set what was typed in after the job against its costs at the finish that was done."""
    return Outcome(
        steps=tuple(_steps(actual, costs)),
        concrete=None
        if actual.concrete is None
        else (takeoff.order_cuyd, decimal_of(actual.concrete)),
        days=None if actual.days is None else (costs.crew_days, actual.days),
    )


def _steps(actual: Actual, costs: FinishCosts) -> Iterator[StepOutcome]:
    counted = [
        item for item in costs.items
        if item.kind is CostKind.LABOUR or (item.kind is CostKind.TRAVEL and item.id == DRIVE)
    ]  # fmt: skip
    for step, hours in actual.hours.items():
        mine = [item for item in counted if item.id == step]
        yield StepOutcome(
            id=step,
            name=mine[0].name if mine else "",
            estimated=sum((item.quantity for item in mine), start=NONE),
            actual=rounded(hours, _PLACES),
        )


def drift_of(outcomes: tuple[Outcome, ...], costs: Costs | None) -> tuple[Drift, ...]:
    """Return how the hours of each step came out over all completed jobs, the farthest off first.

    The better rate is the one in the book times what was taken over what was estimated.
    """
    steps = dict.fromkeys(step.id for outcome in outcomes for step in outcome.steps)
    drifts = (_drift(step, outcomes, costs) for step in steps)
    known = (drift for drift in drifts if drift is not None)
    return tuple(sorted(known, key=lambda drift: -abs(drift.ratio - 1)))


def _drift(step_id: str, outcomes: tuple[Outcome, ...], costs: Costs | None) -> Drift | None:
    mine = [s for outcome in outcomes for s in outcome.steps if s.id == step_id and s.estimated]
    if not mine:
        return None
    estimated = sum((step.estimated for step in mine), start=NONE)
    actual = sum((step.actual for step in mine), start=NONE)
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
