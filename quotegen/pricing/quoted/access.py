"""The access line: the cheapest method that reaches the whole deck, unless the job names one."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from quotegen.money import ZERO, Money, total
from quotegen.pricing.quoted.finish import price_at
from quotegen.pricing.quoted.rates import AS_TAKEN_OFF
from quotegen.problem import Problem, Severity
from quotegen.reading.files.order_parts import AccessMethod
from quotegen.reading.records import JobSpec
from quotegen.reading.yaml.located import path_text
from quotegen.takeoff.records import MethodReach, Takeoff

_PATH = ("access",)


@dataclass(frozen=True, slots=True, kw_only=True)
class AccessChoice:
    """The access method of a job, and what it adds to the price.

    Attributes:
        method: its id in the rate book.
        named: whether the job named it.
        amount: the access line.
        others: the amount of every other method that reaches the whole deck, by its name.
    """

    method: str
    named: bool
    amount: Money
    others: Mapping[str, Money]


def with_access(
    job: JobSpec, takeoff: Takeoff
) -> tuple[JobSpec, AccessChoice | None, tuple[Problem, ...]]:
    """Return the job with its access line asked for, the choice, and a warning that explains it."""
    reach = takeoff.reach
    if reach is None or not reach.methods:
        return job, None, ()
    named = _named(job)
    workable = {m.id: _amount(job, takeoff, m.id) for m in reach.methods if m.covers}
    if named is not None:
        choice = _choice(job, takeoff, named, workable, named=True)
        by_id = {m.id: m for m in reach.methods}
        problems = () if by_id[named].covers else (_too_short(job, by_id[named], workable),)
        return _asking(job, named), choice, problems
    if not workable:
        return job, None, (_nothing_reaches(job, reach.methods),)
    cheapest = min(workable, key=lambda method: workable[method])
    choice = _choice(job, takeoff, cheapest, workable, named=False)
    explained = () if choice.amount == 0 else (_chosen(job, choice, reach.methods),)
    return _asking(job, cheapest), choice, explained


def _named(job: JobSpec) -> str | None:
    """Return the method that the job names, by `method` or by asking for its rate."""
    if job.access is not None and job.access.method is not None:
        return job.access.method
    asked = set(job.include)
    return next((i for i, m in job.rate_book.access.items() if m.rate in asked), None)


def _asking(job: JobSpec, method: str) -> JobSpec:
    rate = job.rate_book.access[method].rate
    if rate is None or rate in job.include:
        return job
    return replace(job, include={**job.include, rate: AS_TAKEN_OFF})


def _amount(job: JobSpec, takeoff: Takeoff, method: str) -> Money:
    """Return what the line of an access method adds at the chosen finish."""
    rate = job.rate_book.access[method].rate
    if rate is None:
        return ZERO
    lines = price_at(_asking(job, method), takeoff, job.finish).lines
    return total(tuple(line.amount for line in lines if line.rate_id == rate))


def _choice(
    job: JobSpec, takeoff: Takeoff, method: str, workable: Mapping[str, Money], *, named: bool
) -> AccessChoice:
    names = {i: m.name for i, m in job.rate_book.access.items()}
    return AccessChoice(
        method=method,
        named=named,
        amount=_amount(job, takeoff, method),
        others={names[i]: amount for i, amount in workable.items() if i != method},
    )


def _chosen(job: JobSpec, choice: AccessChoice, methods: tuple[MethodReach, ...]) -> Problem:
    method: AccessMethod = job.rate_book.access[choice.method]
    shorter = [f"{m.name} {m.share}%" for m in methods if not m.covers]
    dearer = [f"{name} ${amount:,}" for name, amount in choice.others.items()]
    because = [
        *([f"short of the whole deck: {', '.join(shorter)}"] if shorter else []),
        *([f"not cheaper: {', '.join(dearer)}"] if dearer else []),
    ]
    return _fault(
        job,
        "access-chosen",
        f"the access line is {method.name}, ${choice.amount:,}: the cheapest way that reaches the"
        f" whole deck ({'; '.join(because) or 'the only one in the rate book'})",
        "to use another way, name it with `method` under `access`",
    )


def _too_short(job: JobSpec, named: MethodReach, workable: Mapping[str, Money]) -> Problem:
    enough = ", ".join(workable) or "none in the rate book"
    return _fault(
        job,
        "access-too-short",
        f"{named.name} reaches {named.share}% of the deck, {named.reach_ft} ft from the truck",
        f"ways that reach all of it: {enough}; or move a truck stand",
    )


def _nothing_reaches(job: JobSpec, methods: tuple[MethodReach, ...]) -> Problem:
    reached = ", ".join(f"{m.name} {m.share}%" for m in methods)
    return _fault(
        job,
        "nothing-reaches",
        f"no way of access in the rate book reaches the whole deck: {reached}",
        "move a truck stand, or name two ways in the price by hand under `include`",
    )


def _fault(job: JobSpec, code: str, message: str, hint: str) -> Problem:
    return Problem(
        code=code,
        source=job.source(*_PATH),
        path=path_text(_PATH),
        severity=Severity.WARNING,
        message=message,
        hint=hint,
    )
