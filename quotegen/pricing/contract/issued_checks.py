"""What was issued, held against what the files say today."""

from collections.abc import Iterator
from dataclasses import replace

from quotegen.money import Money
from quotegen.pricing.contract.records import Contract
from quotegen.pricing.contract.since_issued import since_issued
from quotegen.pricing.quoted.records import PricedQuote
from quotegen.problem import Problem, Severity
from quotegen.reading.ledger.ledger import Ledger
from quotegen.reading.records import JobSpec


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
    return tuple(_drifted(job, contract, ledger)) if ledger.after else ()


def _drifted(job: JobSpec, contract: Contract, ledger: Ledger) -> Iterator[Problem]:
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
