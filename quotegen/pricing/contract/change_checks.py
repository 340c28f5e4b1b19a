"""Changes that take more off a price than it is."""

from quotegen.money import ZERO
from quotegen.pricing.contract.records import Contract
from quotegen.problem import Problem
from quotegen.reading.records import JobSpec


def change_faults(job: JobSpec, contract: Contract) -> tuple[Problem, ...]:
    """Return an error at the first change after which the price is under nothing."""
    for index, change in enumerate(contract.changes):
        if change.revised_total < ZERO:
            said = f"this change leaves a price of -${-change.revised_total:,}, under nothing"
            hint = "check the sum and its sign; what is given back on top is no change of the work"
            return (job.places.fault(("changes", index), "price-under-nothing", said, hint),)
    return ()
