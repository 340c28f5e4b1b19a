"""Warnings of money that has come in and is more than was due."""

from collections.abc import Iterator
from dataclasses import replace

from quotegen.money import Money
from quotegen.pricing.contract.records import Contract
from quotegen.pricing.contract.revised_payments import revised_payments
from quotegen.problem import Problem
from quotegen.reading.records import JobSpec
from quotegen.trade.book import RuleBook
from quotegen.trade.sense import more_than_due

_HINT = "check the sum; if they paid ahead, leave it"


def paid_warnings(job: JobSpec, contract: Contract, rules: RuleBook) -> tuple[Problem, ...]:
    """Return a warning for each payment over what was due, or else for a sum over the price.

    A check that is rounded up a little is none.
    """
    return tuple(_each(job, contract, rules)) or tuple(_all(job, contract, rules))


def _each(job: JobSpec, contract: Contract, rules: RuleBook) -> Iterator[Problem]:
    for index, paid in enumerate(job.typed.paid):
        due = _due(job, contract, paid.payment)
        if more_than_due(paid.amount, due, rules, job.quote_date):
            said = f"${paid.amount:,.2f} is paid for `{paid.payment}`, and ${due:,} is due"
            yield job.places.warning(("paid", index, "amount"), "paid-over", said, _HINT)


def _due(job: JobSpec, contract: Contract, payment: str) -> Money:
    """Return the most that a payment came to, as quoted or as if it were still open."""
    others = tuple(one for one in job.typed.paid if one.payment != payment)
    still_open = replace(job, typed=job.typed.model_copy(update={"paid": others}))
    plan = revised_payments(still_open, contract.quoted_total, contract.total)
    return next(max(one.before, one.after) for one in plan if one.id == payment)


def _all(job: JobSpec, contract: Contract, rules: RuleBook) -> Iterator[Problem]:
    if more_than_due(contract.paid, contract.total, rules, job.quote_date):
        said = f"${contract.paid:,} is paid in all, and the price is ${contract.total:,}"
        yield job.places.warning(("paid",), "paid-over-price", said, _HINT)
