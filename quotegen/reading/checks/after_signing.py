"""Checks of what happened since the quote was sent: it must fit the quote and the calendar."""

from collections.abc import Iterator
from itertools import pairwise

from quotegen.problem import Problem
from quotegen.reading.files.company import Company
from quotegen.reading.files.job import JobFile
from quotegen.reading.files.rate_book import RateBook
from quotegen.reading.yaml.located import DocumentPath
from quotegen.reading.yaml.typed_file import Typed
from quotegen.reading.yaml.validate import near_miss


def after_signing_faults(
    job: Typed[JobFile], company: Company, book: RateBook
) -> Iterator[Problem]:
    """Yield what has happened since the quote and does not fit it, or the calendar."""
    yield from _measured(job)
    yield from _accepted(job)
    yield from _paid(job, company)
    yield from _changes(job, book)
    yield from _completed(job)


def _measured(job: Typed[JobFile]) -> Iterator[Problem]:
    measured = job.value.measured
    if measured is None:
        return
    if measured.date < job.value.date:
        yield job.fault(
            ("measured", "date"),
            "measured-before-quote",
            f"measured on {measured.date}, before the quote of {job.value.date}",
            "correct the date; the forms are measured after the quote",
        )
    quoted = [placement.id for placement in job.value.placements]
    for name in measured.placements:
        if name not in quoted:
            yield job.fault(
                ("measured", "placements", name),
                "measured-not-quoted",
                f"the quote has no placement `{name}`",
                near_miss(name, quoted),
            )
    for name in quoted:
        if name not in measured.placements:
            yield job.fault(
                ("measured", "placements"),
                "measured-left-out",
                f"the placement `{name}` of the quote is not measured here",
                f"measure it too, or type what was quoted under `{name}`",
            )


def _accepted(job: Typed[JobFile]) -> Iterator[Problem]:
    accepted, quote = job.value.accepted, job.value
    if accepted is None:
        return
    if accepted.date < quote.date:
        yield job.fault(
            ("accepted", "date"),
            "accepted-before-quote",
            f"accepted on {accepted.date}, before the quote of {quote.date}",
            "correct one of the two dates",
        )
    offered = (quote.finish, *quote.compare)
    if accepted.finish is not None and accepted.finish not in offered:
        yield job.fault(
            ("accepted", "finish"),
            "accepted-not-offered",
            f"the quote does not offer the finish `{accepted.finish}`",
            near_miss(accepted.finish, offered),
        )
    for index, extra in enumerate(accepted.extras):
        if extra not in quote.extras:
            yield job.fault(
                ("accepted", "extras", index),
                "accepted-not-offered",
                f"the quote does not offer the extra `{extra}`",
                near_miss(extra, quote.extras),
            )


def _paid(job: Typed[JobFile], company: Company) -> Iterator[Problem]:
    known = [payment.id for payment in company.payments]
    seen: set[str] = set()
    for index, paid in enumerate(job.value.paid):
        if paid.payment not in known:
            yield job.fault(
                ("paid", index, "payment"),
                "unknown-payment",
                f"the company has no payment `{paid.payment}`",
                near_miss(paid.payment, known),
            )
        if paid.payment in seen:
            yield job.fault(
                ("paid", index, "payment"),
                "paid-twice",
                f"the payment `{paid.payment}` stands here a second time",
                "add the two sums into one line",
            )
        seen.add(paid.payment)


def _changes(job: Typed[JobFile], book: RateBook) -> Iterator[Problem]:
    for index, change in enumerate(job.value.changes):
        here: DocumentPath = ("changes", index)
        if job.value.accepted is None:
            yield job.fault(
                here,
                "change-not-accepted",
                f"change {change.number} is on a quote that is not accepted",
                "add `accepted: {date: ...}`, or change the quote itself and raise its revision",
            )
        elif change.date < job.value.accepted.date:
            yield job.fault(
                (*here, "date"),
                "change-before-acceptance",
                f"change {change.number} is dated {change.date}, before the acceptance of "
                f"{job.value.accepted.date}",
                "correct one of the two dates",
            )
        if change.number != index + 1:
            yield job.fault(
                (*here, "number"),
                "change-number",
                f"the change is number {change.number}; the next one is {index + 1}",
                "number the changes 1, 2, 3 in the order in which they were agreed",
            )
        if change.rate is not None and change.rate not in book.rates:
            yield job.fault(
                (*here, "rate"),
                "unknown-rate",
                f"the rate book has no rate `{change.rate}`",
                near_miss(change.rate, book.rates),
            )


def _completed(job: Typed[JobFile]) -> Iterator[Problem]:
    completed, accepted = job.value.completed, job.value.accepted
    if completed is None:
        return
    if accepted is None:
        yield job.fault(
            ("completed",),
            "completed-not-accepted",
            "the job is completed, and its quote is not accepted",
            "add `accepted: {date: ...}`, which the warranty and the contract count from",
        )
    days = {
        "accepted": accepted.date if accepted else None,
        "poured": completed.poured,
        "sealed": completed.sealed,
        "date": completed.date,
    }
    known = [(name, day) for name, day in days.items() if day is not None]
    for (before, first), (name, day) in pairwise(known):
        if day < first:
            yield job.fault(
                ("completed", name),
                "completed-out-of-order",
                f"`{name}` is {day}, before `{before}` on {first}",
                "a job is accepted, poured, sealed and handed over in this order",
            )
