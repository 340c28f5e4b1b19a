"""Everything that pricing works out for the owner alone: costs, savings, other bids, outcome."""

from dataclasses import dataclass

from quotegen.pricing.costs.bids import BidComparison, compare
from quotegen.pricing.costs.costs import costs_at
from quotegen.pricing.costs.outcome import Outcome, outcome_of
from quotegen.pricing.costs.records import FinishCosts, WhatIf
from quotegen.pricing.costs.what_if import (
    QuotedJob,
    discounts,
    extras_of,
    in_two_phases,
    savings,
    sensitivity,
)
from quotegen.pricing.quoted.finish import price_at
from quotegen.pricing.quoted.records import PricedQuote
from quotegen.reading.files.other_bids import OtherBid
from quotegen.reading.records import JobSpec, OwnersJob
from quotegen.takeoff.records import Takeoff
from quotegen.trade.rules import RuleBook


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnersFigures:
    """What never leaves the truck.

    Attributes:
        job: what the files hold for the owner alone.
        finishes: price against cost at each finish that is offered, the chosen one first.
        extras: the job with each extra by itself.
        sensitivity: one more truck, a day lost to rain, the area a tenth less and more.
        discounts: the same work for less.
        savings: less work at the same rates, the largest saving first.
        phases: the first of two phases, and both together.
        bids: other bids, in the order of the job file.
        outcome: what the job took, where that has been typed in.
    """

    job: OwnersJob
    finishes: tuple[FinishCosts, ...]
    extras: tuple[WhatIf, ...]
    sensitivity: tuple[WhatIf, ...]
    discounts: tuple[WhatIf, ...]
    savings: tuple[WhatIf, ...]
    phases: tuple[WhatIf, WhatIf]
    bids: tuple[BidComparison, ...]
    outcome: Outcome | None

    @property
    def chosen(self) -> FinishCosts:
        return self.finishes[0]


def owners_figures(
    job: JobSpec, owners: OwnersJob, takeoff: Takeoff, rules: RuleBook, quote: PricedQuote
) -> OwnersFigures:
    """Work out all that is for the owner alone."""
    finishes = tuple(costs_at(job, owners, takeoff, rules, finish) for finish in quote.finishes)
    quoted = QuotedJob(
        job=job,
        owners=owners,
        takeoff=takeoff,
        rules=rules,
        costs=finishes[0],
        lines=quote.chosen.lines,
    )
    return OwnersFigures(
        job=owners,
        finishes=finishes,
        extras=tuple(extras_of(quoted)),
        sensitivity=tuple(sensitivity(quoted)),
        discounts=tuple(discounts(quoted)),
        savings=savings(quoted, finishes[1:]),
        phases=in_two_phases(quoted),
        bids=tuple(
            compare(job, takeoff, bid, quote.finishes, _costs_for(quoted, bid, finishes))
            for bid in owners.file.other_bids
        ),
        outcome=outcome_of(job, owners, takeoff),
    )


def _costs_for(
    quoted: QuotedJob, bid: OtherBid, finishes: tuple[FinishCosts, ...]
) -> FinishCosts | None:
    """Return our costs at the finish that a bid is for, where the book has any."""
    if quoted.owners.costs is None:
        return None
    job, finish = quoted.job, bid.finish or quoted.job.finish
    for known in finishes:
        if known.finish == finish:
            return known
    priced = price_at(job, quoted.takeoff, finish)
    return costs_at(job, quoted.owners, quoted.takeoff, quoted.rules, priced)
