"""Checks of what happened since the quote was sent: it must fit the quote and the calendar."""

from collections.abc import Iterator
from itertools import pairwise

from quotegen.problem import Problem
from quotegen.reading.files.company import Company
from quotegen.reading.files.job import JobFile
from quotegen.reading.files.rate_book import RateBook
from quotegen.reading.yaml.located import DocumentPath
from quotegen.reading.yaml.near import near_miss
from quotegen.reading.yaml.typed_file import Typed

_ACCEPT = "add `accepted: {date: ..., total: ...}`"


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
        said = f"measured on {measured.date}, before the quote of {job.value.date}"
        hint = "correct the date; the forms are measured after the quote"
        yield job.fault(("measured", "date"), "measured-before-quote", said, hint)
    accepted = job.value.accepted
    if accepted is not None and measured.date < accepted.date:
        said = f"measured on {measured.date}, before the acceptance of {accepted.date}"
        hint = "correct one of the two dates; forms are set once the quote is accepted"
        yield job.fault(("measured", "date"), "measured-before-acceptance", said, hint)
    quoted = [placement.id for placement in job.value.placements]
    here = ("measured", "placements")
    for name in measured.placements:
        if name not in quoted:
            said = f"the quote has no placement `{name}`"
            yield job.fault((*here, name), "measured-not-quoted", said, near_miss(name, quoted))
    for name in quoted:
        if name not in measured.placements:
            said = f"the placement `{name}` of the quote is not measured here"
            hint = f"measure it too, or type what was quoted under `{name}`"
            yield job.fault(here, "measured-left-out", said, hint)


def _accepted(job: Typed[JobFile]) -> Iterator[Problem]:
    accepted, quote = job.value.accepted, job.value
    if accepted is None:
        return
    if accepted.date < quote.date:
        said = f"accepted on {accepted.date}, before the quote of {quote.date}"
        hint = "correct one of the two dates"
        yield job.fault(("accepted", "date"), "accepted-before-quote", said, hint)
    offered = (quote.finish, *quote.compare)
    if accepted.finish is not None and accepted.finish not in offered:
        said = f"the quote does not offer the finish `{accepted.finish}`"
        hint = near_miss(accepted.finish, offered)
        yield job.fault(("accepted", "finish"), "accepted-not-offered", said, hint)
    for index, extra in enumerate(accepted.extras):
        if extra not in quote.extras:
            said = f"the quote does not offer the extra `{extra}`"
            path, hint = ("accepted", "extras", index), near_miss(extra, quote.extras)
            yield job.fault(path, "accepted-not-offered", said, hint)


def _paid(job: Typed[JobFile], company: Company) -> Iterator[Problem]:
    known = [payment.id for payment in company.payments]
    seen: set[str] = set()
    for index, paid in enumerate(job.value.paid):
        here = ("paid", index, "payment")
        if paid.payment not in known:
            said = f"the company has no payment `{paid.payment}`"
            yield job.fault(here, "unknown-payment", said, near_miss(paid.payment, known))
        if paid.payment in seen:
            said = f"the payment `{paid.payment}` stands here a second time"
            yield job.fault(here, "paid-twice", said, "add the two sums into one line")
        seen.add(paid.payment)


def _changes(job: Typed[JobFile], book: RateBook) -> Iterator[Problem]:
    accepted = job.value.accepted
    for index, change in enumerate(job.value.changes):
        here: DocumentPath = ("changes", index)
        if accepted is None:
            said = f"change {change.number} is on a quote that is not accepted"
            hint = f"{_ACCEPT}, or change the quote itself and raise its revision"
            yield job.fault(here, "change-not-accepted", said, hint)
        elif change.date < accepted.date:
            said = (
                f"change {change.number} is dated {change.date}, before the acceptance of "
                f"{accepted.date}"
            )
            hint = "correct one of the two dates"
            yield job.fault((*here, "date"), "change-before-acceptance", said, hint)
        if change.number != index + 1:
            said = f"the change is number {change.number}; the next one is {index + 1}"
            hint = "number the changes 1, 2, 3 in the order in which they were agreed"
            yield job.fault((*here, "number"), "change-number", said, hint)
        if change.rate is not None and change.rate not in book.rates:
            said = f"the rate book has no rate `{change.rate}`"
            hint = near_miss(change.rate, book.rates)
            yield job.fault((*here, "rate"), "unknown-rate", said, hint)
        elif change.rate is not None and book.rates[change.rate].share is not None:
            said = f"`{change.rate}` is a share of other lines, which a change is none of"
            hint = "type the sum that both agreed as `amount`"
            yield job.fault((*here, "rate"), "change-by-share", said, hint)


def _completed(job: Typed[JobFile]) -> Iterator[Problem]:
    completed, accepted = job.value.completed, job.value.accepted
    if completed is None:
        return
    if accepted is None:
        said = "the job is completed, and its quote is not accepted"
        hint = f"{_ACCEPT}, which the warranty and the contract count from"
        yield job.fault(("completed",), "completed-not-accepted", said, hint)
    days = {
        "accepted": accepted.date if accepted else None,
        "poured": completed.poured,
        "sealed": completed.sealed,
        "date": completed.date,
    }
    known = [(name, day) for name, day in days.items() if day is not None]
    for (before, first), (name, day) in pairwise(known):
        if day < first:
            said = f"`{name}` is {day}, before `{before}` on {first}"
            hint = "a job is accepted, poured, sealed and handed over in this order"
            yield job.fault(("completed", name), "completed-out-of-order", said, hint)
