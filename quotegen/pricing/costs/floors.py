"""The owner's floors: the least margin that a job must bring, and the price that reaches it."""

from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction
from math import ceil

from quotegen.money import Money, to_cents
from quotegen.pricing.costs.records import FinishCosts, Floor, FloorKind
from quotegen.problem import Problem, Severity
from quotegen.quantity import decimal_of
from quotegen.reading.files.costs import Costs
from quotegen.reading.records import JobSpec, OwnersJob

_CENTS = 100


def floors_of(
    costs: Costs | None, net_price: Money, margin: Money, crew_days: int, area_sqft: Decimal
) -> tuple[Floor, ...]:
    """Compare a price before tax and its margin with each floor that the owner set.

    A margin as a share of the price is reached at cost / (1 - share); the others at the cost and
    the floor for each day or square foot. Prices are rounded up to the cent, to reach the floor.
    """
    return tuple(_floors(costs, net_price, margin, crew_days, area_sqft)) if costs else ()


def _floors(
    costs: Costs, net_price: Money, margin: Money, crew_days: int, area_sqft: Decimal
) -> Iterator[Floor]:
    wanted, cost = costs.floors, Fraction(net_price - margin)
    if wanted.margin is not None and wanted.margin < 1:
        yield Floor(
            kind=FloorKind.MARGIN,
            wanted=wanted.margin,
            found=Fraction(margin) / Fraction(net_price or 1),
            price=_up(cost / (1 - wanted.margin)),
        )
    for kind, each, count in (
        (FloorKind.CREW_DAY, wanted.crew_day, Fraction(crew_days)),
        (FloorKind.SQ_FT, wanted.sq_ft, Fraction(area_sqft)),
    ):
        if each is not None and count:
            yield Floor(
                kind=kind,
                wanted=Fraction(each),
                found=Fraction(margin) / count,
                price=_up(cost + Fraction(each) * count),
            )


def _up(price: Fraction) -> Money:
    return to_cents(decimal_of(Fraction(ceil(price * _CENTS), _CENTS)))


def floor_problems(
    job: JobSpec, owners: OwnersJob, costs: tuple[FinishCosts, ...], *, to_package: bool
) -> tuple[Problem, ...]:
    """Return a problem for each offered finish whose price is under a floor of the owner's.

    Where a package is to be built it is an error, unless the job says why; else a warning.
    """
    why = owners.file.under_floor
    refused = to_package and why is None
    reason = f"; the job says why: {why}" if why else ""
    return tuple(
        Problem(
            code="under-floor",
            severity=Severity.ERROR if refused else Severity.WARNING,
            source=job.source("finish"),
            path="finish",
            message=f"at the finish `{one.finish}` the price is under your floor: {_said(one)}"
            f" (before tax ${one.net_price:,}; all floors hold from ${one.walk_away:,}){reason}",
            hint="raise the price, or say why under `under_floor`; a package is not built without",
        )
        for one in costs
        if not one.holds
    )


def _said(costs: FinishCosts) -> str:
    return ", ".join(_floor(floor) for floor in costs.floors if not floor.holds)


def _floor(floor: Floor) -> str:
    if floor.kind is FloorKind.MARGIN:
        found, wanted = (decimal_of(share * 100) for share in (floor.found, floor.wanted))
        return f"margin {found:.1f}%, floor {wanted:.1f}%"
    unit = floor.kind.value.replace("_", " ")
    found, wanted = (decimal_of(dollars) for dollars in (floor.found, floor.wanted))
    return f"margin per {unit} ${found:,.2f}, floor ${wanted:,.2f}"
