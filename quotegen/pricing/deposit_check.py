"""The first payment against the law of the state: a warning that names the statute."""

from collections.abc import Iterator

from quotegen.pricing.payments import payments_of
from quotegen.pricing.records import PricedFinish, PricedQuote
from quotegen.problem import Problem, Severity
from quotegen.spec.records import JobSpec
from quotegen.trade.deposits import deposit_cap
from quotegen.trade.rules import RuleBook


def deposit_problems(job: JobSpec, quote: PricedQuote, rules: RuleBook) -> tuple[Problem, ...]:
    """Return a warning for each offered finish at which the first payment passes the cap."""
    return tuple(_problems(job, quote.finishes, rules))


def _problems(
    job: JobSpec, finishes: tuple[PricedFinish, ...], rules: RuleBook
) -> Iterator[Problem]:
    for finish in finishes:
        cap = deposit_cap(
            job.site.state or "", finish.total, job.special_order, rules, job.quote_date
        )
        deposit = payments_of(job, finish.total)[0].amount
        if cap is not None and deposit > cap.most:
            yield Problem(
                code="deposit-cap",
                severity=Severity.WARNING,
                source=job.source("site", "state"),
                path="site.state",
                message=f"the first payment at the finish `{finish.id}` is ${deposit:,}; in "
                f"{job.site.state} at most ${cap.most:,} may be asked ({cap.reference})",
                hint="ask for less at signing in company.yaml; this is not legal advice",
            )
