"""Warnings where the work of a visit, by the book's own hours, does not fit its days and crew."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction
from math import ceil

from quotegen.pricing.costs.items import CostedJob, hours_of
from quotegen.pricing.costs.records import CostItem, CostKind
from quotegen.pricing.quoted.records import PricedFinish
from quotegen.pricing.quoted.visits_needed import NeededVisit
from quotegen.problem import Problem
from quotegen.quantity import NO_QUANTITY, Units, decimal_of, rounded
from quotegen.reading.files.costs import Costs
from quotegen.reading.files.rate_book import POUR
from quotegen.reading.records import JobSpec, OwnersJob
from quotegen.takeoff.records import Takeoff
from quotegen.trade.book import RuleBook
from quotegen.trade.sense import sqft_a_person_a_day

_ON_THE_POUR_DAY = {"slab", "placing", "curing", "finish", "color", "release"}
"""The scope items that are worked on while the concrete is soft."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Said:
    """What does not fit, and in how many pours it would; 1 where more pours are no help."""

    message: str
    pours: int = 1


def crew_warnings(
    job: JobSpec,
    owners: OwnersJob,
    takeoff: Takeoff,
    finishes: tuple[PricedFinish, ...],
    rules: RuleBook,
) -> tuple[Problem, ...]:
    """Return at most one warning: of the first offered finish whose days and crew do not suffice.

    The pour is looked at first, then all days on site together, since the book does not say on
    which visit an hour falls.
    """
    for finish in finishes:
        costed = CostedJob(job=replace(job, finish=finish.id), owners=owners, priced=finish)
        said = next(_said(costed, takeoff, rules), None)
        if said is not None:
            path = ("finishes", finish.id, "visits")
            hint = "check its `days` and `crew`, and any hours under `costs`; if right, leave it"
            if said.pours > job.typed.pours:
                hint = f"{hint}; to pour in parts, type `pours: {said.pours}` in the job"
            return (job.book_places.warning(path, "crew-too-small", said.message, hint),)
    return ()


def _said(costed: CostedJob, takeoff: Takeoff, rules: RuleBook) -> Iterator[_Said]:
    costs, finish = costed.costs, costed.priced.id
    hours = tuple(i for i in hours_of(costed, costs) if i.kind is CostKind.LABOR) if costs else ()
    pour = next((visit for visit in costed.visits if visit.id == POUR), None)
    if pour is not None:  # all its parts together
        pour = replace(pour, days=pour.days * pour.parts)
    if pour is not None:
        yield from _pour(costed, pour, hours)
        yield from _area(costed, pour, takeoff, rules)
    if costs is not None:
        held = sum((_held(costed, visit, costs) for visit in costed.visits), start=Fraction(0))
        whole = _hours(hours)
        if whole > held:
            yield _Said(
                message=f"all work at the finish `{finish}` takes {whole:,} crew hours by your"
                f" book; the days of its visits hold {_shown(held)}"
            )


def _pour(costed: CostedJob, pour: NeededVisit, hours: tuple[CostItem, ...]) -> Iterator[_Said]:
    costs = costed.costs
    if costs is None:
        return
    lines = {line.id for line in costed.priced.lines if _ON_THE_POUR_DAY.issuperset(line.scope)}
    poured = (one for one in hours if one.lines and lines.issuperset(one.lines))
    needed, held = _hours(poured), _held(costed, pour, costs)
    if needed > held:
        yield _Said(
            message=f"the pour at the finish `{costed.priced.id}` takes {needed:,} crew hours by"
            f" your book; {_crew(costed.people_on(pour, costs), pour)} have {_shown(held)}",
            pours=ceil(Fraction(needed) * pour.parts / held),
        )


def _area(
    costed: CostedJob, pour: NeededVisit, takeoff: Takeoff, rules: RuleBook
) -> Iterator[_Said]:
    people = costed.people_on(pour, costed.costs) if costed.costs else pour.crew
    if people is None:
        return
    area, each = takeoff.area(Units.US), sqft_a_person_a_day(rules, costed.job.quote_date)
    if area > each * people * pour.days:
        yield _Said(
            message=f"at the finish `{costed.priced.id}` {area:,} sq ft are poured by"
            f" {_crew(people, pour)}; at most {each:f} sq ft a day for each is usual",
            pours=ceil(Fraction(area) * pour.parts / (Fraction(each) * people * pour.days)),
        )


def _held(costed: CostedJob, visit: NeededVisit, costs: Costs) -> Fraction:
    return visit.days * costed.people_on(visit, costs) * costs.day


def _crew(people: int, visit: NeededVisit) -> str:
    named = "1 person" if people == 1 else f"{people} people"
    return f"{named} on {'1 day' if visit.days == 1 else f'{visit.days} days'}"


def _hours(items: Iterable[CostItem]) -> Decimal:
    """Add up crew hours to whole ones: less than half an hour over is no matter."""
    return rounded(sum((one.quantity for one in items), start=NO_QUANTITY), 0)


def _shown(hours: Fraction) -> str:
    return f"{decimal_of(hours):,.4g}"
