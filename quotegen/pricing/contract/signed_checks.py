"""What was signed, issued and paid, held against what the files come to today."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from decimal import Decimal

from quotegen.money import ZERO, Money
from quotegen.pricing.contract.records import Contract
from quotegen.pricing.contract.revised_payments import revised_payments
from quotegen.pricing.contract.since_issued import since_issued
from quotegen.pricing.quoted.finish import accepted_of
from quotegen.pricing.quoted.records import PricedQuote
from quotegen.problem import Problem, Severity
from quotegen.reading.files.after_signing import Accepted
from quotegen.reading.ledger.ledger import Ledger
from quotegen.reading.records import JobSpec
from quotegen.reading.yaml.located import DocumentPath
from quotegen.trade.book import RuleBook
from quotegen.trade.sense import more_than_due

_PRICES_MOVED = (
    "if a price or a size was changed since, put it back as it was quoted (new prices go into a"
    " second rate book beside the first, `rate-book-YYYY-MM.yaml`, with its own `valid_from`)"
)
_PAID_AHEAD = "check the sum; if they paid ahead, leave it"


@dataclass(frozen=True, slots=True, kw_only=True)
class _Signed:
    """One total of the job file.

    Attributes:
        path: of the total.
        typed: None where it is left out.
        what: it is the price of, in words.
        comes_to: what today's files give, in dollars.
        or_else: what else may be wrong, in words.
    """

    path: DocumentPath
    typed: Decimal | None
    what: str
    comes_to: Money
    or_else: str


def signed_problems(job: JobSpec, contract: Contract) -> tuple[Problem, ...]:
    """Return what is to be said of the totals that both signed.

    The first total that does not come out is an error; those after it start from it, so they
    are not said beside it. An acceptance without its total is a warning.
    """
    accepted = job.typed.accepted
    if accepted is None:
        return ()
    drifted = tuple(_drifted(job, one) for one in _signed(job, accepted, contract) if _moved(one))
    if drifted:
        return drifted[:1]
    held = accepted.total is not None or accepted.revision is not None
    return () if held else (_without_total(job, accepted, contract),)


def _signed(job: JobSpec, accepted: Accepted, contract: Contract) -> Iterator[_Signed]:
    """Yield each total in the order in which the contract runs."""
    finish, extras = accepted_of(job)
    chosen = " with ".join((f"`{finish}`", *(f"`{extra}`" for extra in extras)))
    yield _Signed(
        path=("accepted", "total"),
        typed=accepted.total,
        what=f"the quote at {chosen}",
        comes_to=contract.quoted_total,
        or_else="correct the total, the finish or the extras that were accepted",
    )
    measured, adjusted = job.typed.measured, contract.remeasure
    changes = tuple(_changed(job, contract))
    earlier = len(adjusted.earlier) if adjusted is not None else len(changes)
    yield from changes[:earlier]
    if measured is not None and adjusted is not None:
        yield _Signed(
            path=("measured", "total"),
            typed=measured.total,
            what="the contract after measuring",
            comes_to=adjusted.revised_total,
            or_else="correct the total, or what was measured",
        )
    yield from changes[earlier:]


def _changed(job: JobSpec, contract: Contract) -> Iterator[_Signed]:
    for index, (change, made) in enumerate(zip(job.typed.changes, contract.changes, strict=True)):
        yield _Signed(
            path=("changes", index, "total"),
            typed=change.total,
            what=f"the contract after change {change.number}",
            comes_to=made.revised_total,
            or_else="correct the total, or the amount of the change",
        )


def _moved(one: _Signed) -> bool:
    return one.typed is not None and one.typed != one.comes_to


def _drifted(job: JobSpec, one: _Signed) -> Problem:
    said = f"{one.what} was signed for ${one.typed:,.2f}; today's files come to ${one.comes_to:,}"
    return job.places.fault(
        one.path, "signed-drifted", said, f"{_PRICES_MOVED}; else {one.or_else}"
    )


def _without_total(job: JobSpec, accepted: Accepted, contract: Contract) -> Problem:
    keys = [f"date: {accepted.date}"]
    if accepted.finish is not None:
        keys.append(f"finish: {accepted.finish}")
    if accepted.extras:
        keys.append(f"extras: [{', '.join(accepted.extras)}]")
    # a comma would end the value inside { }
    line = f"accepted: {{{', '.join((*keys, f'total: ${contract.quoted_total}'))}}}"
    said = "the quote is accepted without its total, so a later change of prices would move it"
    hint = f"today it is ${contract.quoted_total:,}; if both signed that, type `{line}`"
    return job.places.warning(("accepted",), "accepted-without-total", said, hint)


def revision_problems(
    job: JobSpec, quote: PricedQuote, ledger: Ledger, *, to_package: bool
) -> tuple[Problem, ...]:
    """Return what is to be said of a revision number that stands for other figures already.

    Two papers of one number must not differ: to figure with it is a warning, to package an error.
    """
    if job.typed.accepted is not None or not ledger.revisions:
        return ()
    last = max(one.facts.revision for one in ledger.revisions)
    if job.revision < last:
        said = f"this job is revision {job.revision}, and revision {last} was issued"
        hint = f"type `revision: {last + 1}` for what comes next"
        problem = job.places.warning(("revision",), "revision-behind", said, hint)
    elif (issued := ledger.revision(job.revision)) and not since_issued(issued, quote).is_same:
        on, price = issued.facts.on, Money(issued.facts.total)
        now = f"today's files come to ${quote.chosen.total:,}"
        if price == quote.chosen.total:
            now = "today's files come to other amounts"
        said = f"revision {last} was issued on {on} at ${price:,}; {now}"
        hint = f"type `revision: {last + 1}`, or put back what was changed"
        problem = job.places.warning(("revision",), "revision-spent", said, hint)
    else:
        return ()
    return (replace(problem, severity=Severity.ERROR) if to_package else problem,)


def drift_warnings(job: JobSpec, contract: Contract, ledger: Ledger) -> tuple[Problem, ...]:
    """Return a warning for each sum that was handed out after acceptance and is another today."""
    return tuple(_handed_out_otherwise(job, contract, ledger)) if ledger.after else ()


def _handed_out_otherwise(job: JobSpec, contract: Contract, ledger: Ledger) -> Iterator[Problem]:
    last = ledger.after[-1]
    hint = "if they signed it, put it back; if it is agreed anew, `issue` the job again"
    measured = contract.remeasure.revised_total if contract.remeasure else None
    if last.measured_total is not None and last.measured_total != measured:
        now = f"now comes to ${measured:,}" if measured is not None else "is now gone"
        said = f"the final measurement went out on {last.on} at ${last.measured_total:,} and {now}"
        yield job.places.warning(("measured",), "handed-out-otherwise", said, hint)
    amounts = {change.number: change.amount for change in contract.changes}
    for index, change in enumerate(last.changes):
        amount = amounts.get(change.number)
        if amount != change.amount:
            now = f"is now ${amount:,}" if amount is not None else "is now gone"
            said = f"change {change.number} went out on {last.on} at ${change.amount:,} and {now}"
            yield job.places.warning(("changes", index), "handed-out-otherwise", said, hint)


def today_warning(job: JobSpec, accepted: Money, today: Money | None) -> tuple[Problem, ...]:
    """Return a warning where today's files would give another price than the accepted one.

    Args:
        job: as accepted.
        accepted: the price of what was accepted.
        today: the same from today's files; None where they no longer price it.
    """
    if accepted == today:
        return ()
    now = f"would come to ${today:,}" if today is not None else "no longer price it"
    said = f"revision {job.revision} was accepted at ${accepted:,}; today's files {now}"
    hint = "nothing to do: this job goes by the files that were issued; new work is a change order"
    return (job.places.warning(("accepted",), "today-differs", said, hint),)


def change_faults(job: JobSpec, contract: Contract) -> tuple[Problem, ...]:
    """Return an error at the first change after which the price is under nothing."""
    for index, change in enumerate(contract.changes):
        if change.revised_total < ZERO:
            said = f"this change leaves a price of -${-change.revised_total:,}, under nothing"
            hint = "check the sum and its sign; what is given back on top is no change of the work"
            return (job.places.fault(("changes", index), "price-under-nothing", said, hint),)
    return ()


def paid_warnings(job: JobSpec, contract: Contract, rules: RuleBook) -> tuple[Problem, ...]:
    """Return a warning for each payment over what was due, or else for a sum over the price.

    A check that is rounded up a little is none.
    """
    return tuple(_over_the_due(job, contract, rules)) or tuple(
        _over_the_price(job, contract, rules)
    )


def _over_the_due(job: JobSpec, contract: Contract, rules: RuleBook) -> Iterator[Problem]:
    for index, paid in enumerate(job.typed.paid):
        due = _due(job, contract, paid.payment)
        if more_than_due(paid.amount, due, rules, job.quote_date):
            said = f"${paid.amount:,.2f} is paid for `{paid.payment}`, and ${due:,} is due"
            yield job.places.warning(("paid", index, "amount"), "paid-over", said, _PAID_AHEAD)


def _due(job: JobSpec, contract: Contract, payment: str) -> Money:
    """Return the most that a payment came to, as quoted or as if it were still open."""
    others = tuple(one for one in job.typed.paid if one.payment != payment)
    still_open = replace(job, typed=job.typed.model_copy(update={"paid": others}))
    plan = revised_payments(still_open, contract.quoted_total, contract.total)
    return next(max(one.before, one.after) for one in plan if one.id == payment)


def _over_the_price(job: JobSpec, contract: Contract, rules: RuleBook) -> Iterator[Problem]:
    if more_than_due(contract.paid, contract.total, rules, job.quote_date):
        said = f"${contract.paid:,} is paid in all, and the price is ${contract.total:,}"
        yield job.places.warning(("paid",), "paid-over-price", said, _PAID_AHEAD)
